/**
 * What a rippling lamp leaves in the conductance of a cell once everything has settled: the periodic course of y over
 * one cycle, and its lowest and highest value. Found by following the cell's own rate equation until a cycle ends as
 * it began, with Aitken's extrapolation between cycles. Relative conductance, lux, hertz.
 */
import { type CellSpeed, MovingCell, steadyConductance } from '../circuit/cell.ts';
import { type Ripple, rippleAt, rippleBefore } from '../light/ripple.ts';
import type { Lux, Seconds } from '../quantity/units.ts';

export interface ConductanceBand {
  readonly low: number;
  readonly high: number;
}

/** Steps of one cycle, shared out over the stretches between a shape's kinks and jumps. */
const STEPS = 40;
const MOST_CYCLES = 400;
/** A cycle that ends this near to its beginning, relative to it, is taken as closed. */
const CLOSED = 1e-10;

/** Lowest and highest conductance in a light of this mean; both the steady one without ripple or light. */
export function rippledBand(speed: CellSpeed, lux: Lux, ripple: Ripple | null): ConductanceBand {
  const still = steadyConductance(speed.gamma, lux);
  if (ripple === null || ripple.depth === 0 || lux <= 0) return { low: still, high: still };
  const start = closedStart(speed, lux, ripple);
  let low = start;
  let high = start;
  const reach = (y: number) => {
    if (y < low) low = y;
    if (y > high) high = y;
  };
  cycle(speed, lux, ripple, start, (y0, y1, m0, m1) => {
    reach(y1);
    // Between two values the course is their cubic: its turning point lies where its slope is 0.
    if (m0 * m1 < 0) reach(turningValue(y0, y1, m0, m1));
  });
  return { low, high };
}

/** The settled course of a cycle at evenly spaced times, the first at phase 0; `count` values. */
export function rippledCourse(speed: CellSpeed, lux: Lux, ripple: Ripple, count: number): Float64Array {
  const course = new Float64Array(count);
  const cell = new MovingCell(speed, closedStart(speed, lux, ripple));
  for (let i = 0; i < count; i++) {
    course[i] = cell.y;
    const from = i / count;
    const parts = [
      ...kinksOf(ripple).filter((kink) => kink > from && kink < (i + 1) / count),
      (i + 1) / count,
    ];
    let at = from;
    for (const to of parts) {
      for (let n = 0; n < 2; n++)
        move(cell, lux, ripple, at + ((to - at) * n) / 2, at + ((to - at) * (n + 1)) / 2);
      at = to;
    }
  }
  return course;
}

/** Mean light in which the low or the high end of the settled conductance stands at `y`; Infinity where none does it. */
export function luxForBand(
  speed: CellSpeed,
  ripple: Ripple | null,
  end: keyof ConductanceBand,
  y: number,
): Lux {
  if (y <= 0) return 0;
  let lux = 10 * y ** (1 / speed.gamma);
  if (ripple === null || ripple.depth === 0) return lux;
  lux = Math.min(BRIGHTEST, Math.max(FAINTEST, lux));
  const table = tableFor(speed, ripple);
  // The logarithms run nearly in parallel with slope gamma: each turn takes nearly the whole of the miss away.
  for (let turn = 0; turn < 60; turn++) {
    const miss = speed.gamma * Math.log(lux / 10) + table.read(end, lux) - Math.log(y);
    lux *= Math.exp(-miss / speed.gamma);
    // A deep ripple leaves an end that no mean light brings any further.
    if (lux < FAINTEST || lux > BRIGHTEST) return lux < FAINTEST ? 0 : Number.POSITIVE_INFINITY;
    if (Math.abs(miss) < 1e-11) break;
  }
  return lux;
}

/** Far below starlight, and ten times the brightest sun. */
const FAINTEST: Lux = 1e-9;
const BRIGHTEST: Lux = 1e6;

/** Nodes of a table stand this far apart in the logarithm of the light. */
const SPACING = 0.4;
/** Between nodes the polynomial through this many of them is read; off by less than 1e-6 of the conductance. */
const POINTS = 8;

/** How far the ends of the band are from the steady conductance, as logarithms over the light; filled where asked. */
class BandTable {
  readonly #speed: CellSpeed;
  readonly #ripple: Ripple;
  readonly #nodes = new Map<number, { readonly low: number; readonly high: number }>();

  constructor(speed: CellSpeed, ripple: Ripple) {
    this.#speed = speed;
    this.#ripple = ripple;
  }

  read(end: keyof ConductanceBand, lux: Lux): number {
    const place = Math.log(lux) / SPACING;
    const first = Math.floor(place) - POINTS / 2 + 1;
    let sum = 0;
    for (let i = 0; i < POINTS; i++) {
      let weight = 1;
      for (let k = 0; k < POINTS; k++) if (k !== i) weight *= (place - first - k) / (i - k);
      sum += weight * this.#node(first + i)[end];
    }
    return sum;
  }

  #node(index: number): { readonly low: number; readonly high: number } {
    const known = this.#nodes.get(index);
    if (known) return known;
    const lux = Math.exp(index * SPACING);
    const still = steadyConductance(this.#speed.gamma, lux);
    const { low, high } = rippledBand(this.#speed, lux, this.#ripple);
    const node = { low: Math.log(low / still), high: Math.log(high / still) };
    this.#nodes.set(index, node);
    return node;
  }
}

/** The last tables used, by what they depend on: a cell's speed and a lamp. */
const tables = new Map<string, BandTable>();
const MOST_TABLES = 32;

function tableFor(speed: CellSpeed, ripple: Ripple): BandTable {
  const { hertz, depth, shape, duty } = ripple;
  const key = [speed.gamma, speed.riseTau, speed.fallTau, hertz, depth, shape, duty].join();
  let table = tables.get(key);
  if (!table) {
    table = new BandTable(speed, ripple);
    const [oldest] = tables.keys();
    if (tables.size >= MOST_TABLES && oldest !== undefined) tables.delete(oldest);
    tables.set(key, table);
  }
  return table;
}

function closedStart(speed: CellSpeed, lux: Lux, ripple: Ripple): number {
  let y0 = steadyConductance(speed.gamma, lux);
  for (let turn = 0; turn < MOST_CYCLES; turn++) {
    const y1 = cycle(speed, lux, ripple, y0);
    if (Math.abs(y1 - y0) <= CLOSED * y1) return y1;
    const y2 = cycle(speed, lux, ripple, y1);
    const bend = y2 - 2 * y1 + y0;
    const leap = bend === 0 ? y2 : y0 - (y1 - y0) ** 2 / bend;
    y0 = leap > 0 && Number.isFinite(leap) ? leap : y2;
  }
  return y0;
}

type Stretch = (y0: number, y1: number, m0: number, m1: number) => void;

/** One cycle from y0; gives its end. Each stretch is told with values and slopes (times its length) at its ends. */
function cycle(speed: CellSpeed, lux: Lux, ripple: Ripple, y0: number, tell?: Stretch): number {
  const cell = new MovingCell(speed, y0);
  let at = 0;
  for (const to of [...kinksOf(ripple), 1]) {
    const count = Math.max(4, Math.round(STEPS * (to - at)));
    for (let i = 0; i < count; i++)
      move(cell, lux, ripple, at + ((to - at) * i) / count, at + ((to - at) * (i + 1)) / count, tell);
    cell.bend();
    at = to;
  }
  return cell.y;
}

/** From one phase to another within a smooth stretch of the shape, in pieces short enough for the cell. */
function move(cell: MovingCell, mean: Lux, ripple: Ripple, from: number, to: number, tell?: Stretch): void {
  let phase = from;
  while (phase < to) {
    setLight(cell, mean, ripple, phase, to);
    const whole: Seconds = (to - phase) / ripple.hertz;
    const reach = cell.reach(whole);
    const end = reach < whole ? phase + reach * ripple.hertz : to;
    if (end < to) setLight(cell, mean, ripple, phase, end);
    const length = (end - phase) / ripple.hertz;
    const y0 = cell.y;
    const m0 = cell.startSlope * length;
    cell.step(length);
    tell?.(y0, cell.y, m0, cell.endSlope * length);
    phase = end;
  }
}

function setLight(cell: MovingCell, mean: Lux, ripple: Ripple, from: number, to: number): void {
  const { hertz } = ripple;
  cell.setLight(
    mean * rippleAt(ripple, from / hertz),
    mean * rippleAt(ripple, (from + to) / 2 / hertz),
    mean * rippleBefore(ripple, to / hertz),
  );
}

/** Phases within a cycle where the light bends or jumps. */
function kinksOf({ shape, duty = 0.5 }: Ripple): readonly number[] {
  return shape === 'pulse' ? [duty] : shape === 'triangle' ? [0.5] : [];
}

/** Value at the turning point between the ends of a cubic whose slopes there have different signs. */
function turningValue(y0: number, y1: number, m0: number, m1: number): number {
  const a = 3 * (2 * y0 + m0 - 2 * y1 + m1);
  const b = 2 * (-3 * y0 - 2 * m0 + 3 * y1 - m1);
  const root = Math.sqrt(Math.max(0, b * b - 4 * a * m0));
  const q = -(b + Math.sign(b || 1) * root) / 2;
  const places = [q / a, m0 / q];
  const x = places.find((place) => place >= 0 && place <= 1) ?? 1;
  const rest = 1 - x;
  return y0 * (1 + 2 * x) * rest * rest + m0 * x * rest * rest + y1 * x * x * (3 - 2 * x) - m1 * x * x * rest;
}
