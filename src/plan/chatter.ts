/**
 * How often a gate starts anew in a light that stands near its trip points, from ripple, from noise, or both. The
 * noise is what the engine plays: independent Gaussian values 3000 times a second, joined by lines. Between two of
 * them the comparator can go one way only, so its state is a chain of chances: off to on with the chance that the
 * node with its noise is past the upper trip point, on to off with that of being past the lower one. Starts a second.
 */
import { cellSpeed } from '../circuit/cell.ts';
import {
  cellSiemens,
  type Gate,
  type GateState,
  gatesOf,
  nodeVolts,
  overdriveVolts,
  stateIndex,
} from '../circuit/gate.ts';
import { railVolts } from '../circuit/supply.ts';
import { type Design, thresholdFor } from '../design/design.ts';
import type { Hertz, Lux, VoiceId, Volts } from '../quantity/units.ts';
import { GRID } from '../sound/gating.ts';
import { rippledBand, rippledCourse } from './ripple-band.ts';
import { settingsFor } from './setting.ts';
import { type Disturbance, tripLuxAt } from './trip-lux.ts';

/** Starts a second of a voice of the design as it is set, in a light of this mean; the other comparator stays low. */
export function chatterHertz(
  design: Design,
  voice: VoiceId,
  lux: Lux,
  { ripple, noiseVolts }: Disturbance,
): Hertz {
  const gate = gatesOf(design, railVolts(design.supply))[voice];
  const speed = cellSpeed(design.voices[voice].cell);
  const low = gate.states[0]!;
  const high = gate.states[stateIndex({ A: voice === 'A', B: voice === 'B' })]!;
  if (noiseVolts <= 0) {
    if (ripple === null) return 0;
    const band = rippledBand(speed, lux, ripple);
    const ends = [cellSiemens(gate, band.low), cellSiemens(gate, band.high)];
    const starts = ends.some((siemens) => overdrive(low, siemens) > 0);
    const stops = ends.some((siemens) => overdrive(high, siemens) <= 0);
    return starts && stops ? ripple.hertz : 0;
  }
  const chances = chancesOver(gate, low, high, courseOf(), noiseVolts);
  return GRID * startsPerStep(chances);

  function courseOf(): readonly number[] {
    if (ripple === null) return [rippledBand(speed, lux, null).low];
    const { cycles, steps } = wholeSteps(ripple.hertz);
    // Phases of the engine's steps over as many cycles as make a whole number of them.
    const fine = rippledCourse(speed, lux, ripple, steps);
    return Array.from({ length: steps }, (_, i) => fine[(i * cycles) % steps]!);
  }
}

/** The light near the trip points in which the voice chatters most, and how often. */
export function worstChatter(
  design: Design,
  voice: VoiceId,
  disturbance: Disturbance,
): { readonly lux: Lux; readonly hertz: Hertz } {
  const setting = settingsFor(design)[voice];
  const rotation = thresholdFor(design, voice).trimmer.rotation;
  const { upper, lower } = tripLuxAt(setting, rotation, disturbance);
  if (!(upper > 0 && lower > 0 && Number.isFinite(upper) && Number.isFinite(lower)))
    return { lux: Number.isFinite(upper) ? upper : lower, hertz: 0 };
  const [from, to] = [Math.min(upper, lower), Math.max(upper, lower)];
  const count = 24;
  const tried = Array.from({ length: count + 1 }, (_, i) => {
    const lux = from * (to / from) ** (i / count);
    return { lux, hertz: chatterHertz(design, voice, lux, disturbance) };
  });
  const most = Math.max(...tried.map(({ hertz }) => hertz));
  // Ripple alone chatters alike over a stretch of light: its middle stands for it.
  const alike = tried.filter(({ hertz }) => hertz >= most * (1 - 1e-9));
  return alike[alike.length >> 1]!;
}

function overdrive(state: GateState, siemens: number): Volts {
  return overdriveVolts(state, nodeVolts(state, siemens));
}

interface Chances {
  readonly on: number;
  readonly off: number;
}

function chancesOver(
  gate: Gate,
  low: GateState,
  high: GateState,
  course: readonly number[],
  noiseVolts: Volts,
): readonly Chances[] {
  return course.map((y) => {
    const siemens = cellSiemens(gate, y);
    return {
      on: normalShare(overdrive(low, siemens) / noiseVolts),
      off: normalShare(-overdrive(high, siemens) / noiseVolts),
    };
  });
}

/** Mean chance of a start in one step once the chain has settled; the steps repeat. */
function startsPerStep(chances: readonly Chances[]): number {
  // Over a whole round the chance of being on goes to k·p + c: settled where that is p.
  let k = 1;
  let c = 0;
  for (const { on, off } of chances) {
    k *= 1 - on - off;
    c = c * (1 - on - off) + on;
  }
  let p = k === 1 ? 0 : c / (1 - k);
  let starts = 0;
  for (const { on, off } of chances) {
    starts += (1 - p) * on;
    p = p * (1 - on - off) + on;
  }
  return starts / chances.length;
}

/** The fewest cycles of the light that fill a whole number of steps, to the nearest step. */
function wholeSteps(hertz: Hertz): { readonly cycles: number; readonly steps: number } {
  let best = { cycles: 1, steps: Math.round(GRID / hertz), miss: Number.POSITIVE_INFINITY };
  for (let cycles = 1; cycles <= 12; cycles++) {
    const exact = (GRID * cycles) / hertz;
    const miss = Math.abs(exact - Math.round(exact)) / cycles;
    if (miss < best.miss - 1e-9) best = { cycles, steps: Math.round(exact), miss };
  }
  return best;
}

/** Share of a normal law below m, Φ(m): by its series near 0, by the continued fraction in the tails. */
export function normalShare(m: number): number {
  const x = Math.abs(m);
  const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  const tail = x < 3 ? 0.5 - density * seriesOf(x) : density * millsRatio(x);
  return m < 0 ? tail : 1 - tail;
}

function seriesOf(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 3; term > 1e-17 * sum; n += 2) {
    term *= (x * x) / n;
    sum += term;
  }
  return sum;
}

/** (1 − Φ(x))/density for x from 3 on, by its continued fraction. */
function millsRatio(x: number): number {
  let under = x;
  for (let k = 60; k >= 1; k--) under = x + k / under;
  return 1 / under;
}
