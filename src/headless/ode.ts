/**
 * The instrument's equations handed to a general-purpose solver (odex: extrapolation after Gragg, Bulirsch and
 * Stoer), with the same events: a cell that passes a trip point, a capacitor that passes a switching level. Slow,
 * and knowing no closed form: something to hold the engine against.
 */

import type { Astable } from '../circuit/astable.ts';
import type { CellSpeed } from '../circuit/cell.ts';
import { type LightProgram, luxAt, luxBefore, nextBreak } from '../light/program.ts';
import type { Seconds, VoiceId, Volts } from '../quantity/units.ts';
import { Solver } from './odex.ts';

/** A state from a moment on: sounding or silent, high or low. */
export interface Turn {
  readonly time: Seconds;
  readonly on: boolean;
}

/** A cell and its comparator; conductances relative to that at 10 lx. */
export interface OdeGate {
  readonly speed: CellSpeed;
  /** Where a silent voice starts, and where a sounding one stops. */
  readonly onAt: number;
  readonly offAt: number;
  /** +1: sounds above the trip points; −1: below. */
  readonly soundsAbove: 1 | -1;
}

/** No step is longer than this, so that no event hides within one. */
const LONGEST_STEP: Seconds = 0.005;

/** Integrates until `level` is passed upward (direction 1) or downward (−1), or until `to`. */
function advance(
  solver: Solver,
  slope: (t: number, x: number) => number,
  from: Seconds,
  start: number,
  to: Seconds,
  level: number,
  direction: 1 | -1,
): { readonly time: Seconds; readonly value: number; readonly passed: boolean } {
  let hit: Seconds | null = null;
  const { y } = solver.solve(
    (t, [x]) => [slope(t, x!)],
    from,
    [start],
    to,
    (step, t0, t1, [x], within) => {
      if (step === 1 || direction * (x! - level) <= 0) return undefined;
      let low = t0;
      let high = t1;
      while (high - low > 1e-16 + 1e-15 * high) {
        const middle = (low + high) / 2;
        if (middle === low || middle === high) break;
        if (direction * (within(0, middle) - level) > 0) high = middle;
        else low = middle;
      }
      hit = high;
      return false;
    },
  );
  return hit === null ? { time: to, value: y[0]!, passed: false } : { time: hit, value: level, passed: true };
}

function solverFor(tolerance: number, scale: Seconds): Solver {
  const solver = new Solver(1);
  solver.absoluteTolerance = solver.relativeTolerance = tolerance;
  solver.denseOutput = true;
  solver.maxStepSize = Math.min(LONGEST_STEP, scale);
  solver.initialStepSize = solver.maxStepSize / 20;
  return solver;
}

/** A voice's state at time 0, settled in the light, and each change. */
export function gateTurns(
  gate: OdeGate,
  program: LightProgram,
  voice: VoiceId,
  seconds: Seconds,
  tolerance: number,
): readonly Turn[] {
  const { gamma, riseTau, fallTau } = gate.speed;
  const solver = solverFor(tolerance, LONGEST_STEP);
  // A sine needs no cutting into pieces here: the solver chooses its own steps.
  const rough = program.kind === 'ripple' && program.shape === 'sine' ? program.of : program;
  let value = (luxAt(program, voice, 0) / 10) ** gamma;
  let on = gate.soundsAbove * (value - gate.onAt) > 0;
  const turns: Turn[] = [{ time: 0, on }];
  let time = 0;
  while (time < seconds) {
    const end = Math.min(seconds, nextBreak(rough, time));
    const slope = (t: number, y: number) => {
      // At the end of a piece the light just before a possible jump counts.
      const lux = t < end ? luxAt(program, voice, t) : luxBefore(program, voice, end);
      const gap = lux / 10 - Math.max(0, y) ** (1 / gamma);
      return gap / (gap > 0 ? riseTau : fallTau);
    };
    while (time < end) {
      const level = on ? gate.offAt : gate.onAt;
      const direction = on ? (-gate.soundsAbove as 1 | -1) : gate.soundsAbove;
      const reached = advance(solver, slope, time, value, end, level, direction);
      ({ time, value } = reached);
      if (reached.passed) {
        on = !on;
        turns.push({ time, on });
      }
    }
  }
  return turns;
}

/** A timer's output at time 0, its capacitor at `startVolts`, and each change, for given turns of its reset pin. */
export function outputTurns(
  a: Astable,
  pins: readonly Turn[],
  startVolts: Volts,
  seconds: Seconds,
  tolerance: number,
): readonly Turn[] {
  const chargeTau = a.chargeOhms * a.farads;
  const sinkTau = a.sinkOhms * a.farads;
  const solver = solverFor(tolerance, Math.min(chargeTau, sinkTau));
  const charging = (_t: number, v: number) => (a.chargeVolts - v) / chargeTau;
  const sinking = (_t: number, v: number) => (a.sinkVolts - v) / sinkTau;
  let volts = startVolts;
  let high = false;
  const turns: Turn[] = [];
  const turn = (time: Seconds, on: boolean) => {
    if (on !== high || turns.length === 0) turns.push({ time, on });
    high = on;
  };
  for (const [i, { time: from, on: released }] of pins.entries()) {
    let time = from;
    const end = Math.min(seconds, pins[i + 1]?.time ?? seconds);
    turn(time, released && (high || volts <= a.lowerVolts));
    while (time < end) {
      // Held in reset, nothing stops the capacitor on its way down.
      const level = high ? a.upperVolts : released ? a.lowerVolts : Number.NEGATIVE_INFINITY;
      const reached = advance(solver, high ? charging : sinking, time, volts, end, level, high ? 1 : -1);
      time = reached.time;
      volts = reached.value;
      if (reached.passed) turn(time, !high);
    }
  }
  return turns;
}
