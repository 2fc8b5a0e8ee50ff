/**
 * Eight hours of sound, as fast as they can be made: no edge too many or too few, the last one where the network's
 * closed form puts it, nothing louder than the jack allows, no number that is none, nothing kept.
 */
import { expect, test } from 'vitest';
import type { Astable } from '../../src/circuit/astable.ts';
import type { Jack } from '../../src/circuit/output.ts';
import { type Pair, VOICES } from '../../src/quantity/units.ts';
import { REACH } from '../../src/sound/bandlimit.ts';
import { Engine } from '../../src/sound/engine.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';
import { countOf } from '../fuzz/count.ts';
import { heapInUse } from '../heap.ts';
import { DARK, jumps, LIT, ONLY_A, settingsFrom, steady } from './playing.ts';

const RATE = 48_000;
const SECONDS = countOf(8 * 3600);
const PATIENCE = 1_800_000;

const ONLY: Pair<Jack> = {
  A: ONLY_A,
  B: { ...ONLY_A, sources: [0, 0, 1, 1].map((volts) => ({ volts, ohms: 0 })) },
};

/**
 * Charge and discharge through resistors (TI SLFS022, "A-stable operation", with levels of its own): when the n-th
 * high begins, the first of them from an empty capacitor at time 0.
 */
function highBegins(a: Astable, n: number): number {
  const rise = (from: number) =>
    a.chargeOhms * a.farads * Math.log((a.chargeVolts - from) / (a.chargeVolts - a.upperVolts));
  const fall = a.sinkOhms * a.farads * Math.log((a.upperVolts - a.sinkVolts) / (a.lowerVolts - a.sinkVolts));
  return n === 0 ? 0 : rise(0) + fall + (n - 1) * (rise(a.lowerVolts) + fall);
}

/** What a stretch of sound holds, and by how many bytes its last two thirds made the heap grow. */
interface Played {
  /** The smallest magnitude but zero, and the largest. */
  readonly least: number;
  readonly most: number;
  /** How many samples are no number, or infinite. */
  readonly wrong: number;
  readonly grown: number;
}

/** Renders one second after another. */
function play(engine: Engine, listen: (samples: Float32Array, second: number) => void): Played {
  const samples = new Float32Array(RATE);
  let least = 1;
  let most = 0;
  let wrong = 0;
  let early = 0;
  for (let second = 0; second < SECONDS; second += 1) {
    engine.render(samples);
    for (let i = 0; i < RATE; i += 1) {
      const size = Math.abs(samples[i]!);
      if (size > most) most = size;
      if (size < least && size > 0) least = size;
      if (!(size < Number.POSITIVE_INFINITY)) wrong += 1;
    }
    listen(samples, second);
    if (second === Math.floor(SECONDS / 3)) early = heapInUse();
  }
  return { least, most, wrong, grown: heapInUse() - early };
}

/** An edge is read between two samples, seconds. */
const READING = 2e-6;
/** So many times of events added up, each rounded to double precision at the end of the stretch: 60 µs in eight hours. */
const roundings = (events: number): number => events * SECONDS * 2 ** -53;
/** No number so small that processors slow down over it (IEEE 754, single precision). */
const SMALLEST_NORMAL = 2 ** -126;
/** What a test runner itself may keep meanwhile. */
const FLAT = 256 * 1024;

test.each(VOICES)(
  'voice %s neither gains nor loses an edge',
  (voice) => {
    const base = settingsFrom(BENCH_DESIGN);
    const engine = new Engine(RATE, { ...base, jack: ONLY[voice] }, steady(LIT, LIT));
    let count = 0;
    let last = 0;
    let before = 0;
    const { least, most, wrong, grown } = play(engine, (samples, second) => {
      for (let i = 0; i < RATE; i += 1) {
        const now = samples[i]!;
        if (before < 0.5 && now >= 0.5) {
          count += 1;
          last = second + (i - 1 + (0.5 - before) / (now - before) - REACH) / RATE;
        }
        before = now;
      }
    });
    const heard = SECONDS - REACH / RATE;
    const a = base.astables[voice];
    const period = highBegins(a, 2) - highBegins(a, 1);
    const wanted = Math.floor((heard - highBegins(a, 1)) / period) + 2;
    expect(Math.abs(count - wanted)).toBeLessThanOrEqual(1);
    expect(Math.abs(last - highBegins(a, count - 1)), 'seconds').toBeLessThan(READING + roundings(2 * count));
    expect(wrong).toBe(0);
    expect(least).toBeGreaterThanOrEqual(SMALLEST_NORMAL);
    expect(most).toBeLessThan(1.25);
    expect(grown).toBeLessThan(FLAT);
  },
  PATIENCE,
);

test(
  'light that comes and goes and parts that change leave nothing behind',
  () => {
    const base = settingsFrom(BENCH_DESIGN);
    const other = settingsFrom({ ...BENCH_DESIGN, noise: { voltsRms: 0.01, seed: 3 } });
    const light = jumps([0, LIT, LIT], [2, DARK, LIT], [4, LIT, DARK], [6, DARK, DARK], [9, LIT, LIT]);
    const engine = new Engine(RATE, base, light);
    const { least, most, wrong, grown } = play(engine, (_samples, second) => {
      if (second % 10 === 9) engine.play(light, 0);
      if (second % 60 === 30) engine.setSettings(second % 120 === 30 ? other : base);
    });
    expect(wrong).toBe(0);
    expect(least).toBeGreaterThanOrEqual(SMALLEST_NORMAL);
    expect(most).toBeGreaterThan(0.1 * base.jack.boundVolts);
    expect(most).toBeLessThan(1.25 * base.jack.boundVolts);
    expect(grown).toBeLessThan(FLAT);
  },
  PATIENCE,
);
