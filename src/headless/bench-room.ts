/** How fast a room is answered: windows, batches, and recorded days. */
import { designWith } from '../../tests/circuit/building.ts';
import { steadyConductance } from '../circuit/cell.ts';
import { cellSiemens, gatesOf, nodeVolts, overdriveVolts, stateIndex } from '../circuit/gate.ts';
import { turnThreshold } from '../design/commands.ts';
import type { Design } from '../design/design.ts';
import { DEFAULT_ROOM } from '../design/room.ts';
import type { LogPoints } from '../light/log-file.ts';
import { drawKits } from '../plan/batch-room.ts';
import { replayLog } from '../plan/replay.ts';
import { type Extremes, windowsFor } from '../plan/window.ts';
import { gaussianFrom } from '../quantity/random.ts';
import { type Pair, pairOf, VOICES } from '../quantity/units.ts';
import { fastest, timesLonger } from './bench-clock.ts';

const DESIGN = designWith({ threshold: { arrangement: 'shared' }, noise: { voltsRms: 0.001, seed: 1 } });
const LEVELS: Pair<Extremes> = pairOf(() => ({ lit: { lux: 300, hour: 10 }, shade: { lux: 60, hour: 14 } }));
const DISTURBANCE = { ripple: null, noiseVolts: 0 } as const;

/** Kits drawn and solved in a second, one trimmer for both voices. */
export function roomBatchKitsPerSecond(): number {
  const kits = 2000;
  return kits / fastest(() => drawKits(DESIGN, DEFAULT_ROOM.batch, LEVELS, DISTURBANCE, 0, kits), 5);
}

/** A day of rows a second apart: the sun's arc, unrest of 3 %, and a shadow over each sensor every five minutes. */
function dayOfRows(): LogPoints {
  const rows = 86_400;
  const next = gaussianFrom(7);
  const times = Float64Array.from({ length: rows }, (_, i) => i);
  const lux = pairOf((voice) =>
    times.map((t) => {
      const sun = 60 + 500 * Math.max(0, Math.sin((Math.PI * (t - 21_600)) / 43_200));
      const shaded = (t + (voice === 'A' ? 0 : 7)) % 300 < 3;
      return sun * (1 + 0.03 * next()) * (shaded ? 0.1 : 1);
    }),
  );
  return { times, lux };
}

/** Seconds of that day replayed through both channels in a second. */
export function dayReplayTimesRealtime(): number {
  const points = dayOfRows();
  return 86_400 / fastest(() => replayLog(DESIGN, points), 5);
}

/** Milliseconds for the window and the recommended place, and how many times longer a plain sweep takes for the edges alone. */
export function windowSolve(): { readonly milliseconds: number; readonly sweepRatio: number } {
  const times = 200;
  const solve = () => void windowsFor(DESIGN, LEVELS, DISTURBANCE);
  const milliseconds =
    (1000 *
      fastest(() => {
        for (let i = 0; i < times; i++) solve();
      })) /
    times;
  return { milliseconds, sweepRatio: timesLonger(() => void sweptWindow(DESIGN, LEVELS, 10_000), solve, 5) };
}

/**
 * The window of a shared trimmer by trying every place: both voices, both states of both outputs, held against lit and
 * shaded light. Its edges are off by up to a step.
 */
export function sweptWindow(
  design: Design,
  extremes: Pair<Extremes>,
  places: number,
): { readonly low: number; readonly high: number } | null {
  let low: number | null = null;
  let high = 0;
  for (let place = 0; place <= places; place++) {
    const rotation = place / places;
    if (!gatesRightlyAt(turnThreshold('A', rotation)(design), extremes)) continue;
    low ??= rotation;
    high = rotation;
  }
  return low === null ? null : { low, high };
}

function gatesRightlyAt(design: Design, extremes: Pair<Extremes>): boolean {
  const gates = gatesOf(design, design.supply.volts);
  return VOICES.every((voice) => {
    const gate = gates[voice];
    const { cell, polarity } = design.voices[voice];
    return [false, true].every((A) =>
      [false, true].every((B) => {
        const state = gate.states[stateIndex({ A, B })]!;
        if (state.otherVolts >= state.limitVolts) return false;
        const isHighAt = (lux: number) =>
          overdriveVolts(state, nodeVolts(state, cellSiemens(gate, steadyConductance(cell.gamma, lux)))) > 0;
        const lit = isHighAt(extremes[voice].lit.lux) === (polarity === 'light');
        return lit && isHighAt(extremes[voice].shade.lux) === (polarity === 'shade');
      }),
    );
  });
}
