/** The test slip against the table of a reference board at 9 V and 5 V, and its judgements. */
import { expect, test } from 'vitest';
import { impossibleAs, judge, readMeter, type Slip, slipOf } from '../../src/kit/slip.ts';
import { type SlipLight, type SlipPoint, slipPointWords, verdictWords } from '../../src/words/bench.ts';
import { designWith, pitchTurned, thresholdTurned } from '../circuit/building.ts';

const film = (farads: number) => ({
  capacitor: { farads, dielectric: 'polyester' as const, tolerance: 0.1 },
});

/** 47 and 68 nF, pitch trimmers half way, thresholds at 27 %; so many volts right at the rail. */
const boardAt = (volts: number, polarity: 'light' | 'shade' = 'light') =>
  designWith({
    voices: { polarity },
    A: { ...film(47e-9), ...pitchTurned('A', 0.495) },
    B: { ...film(68e-9), ...pitchTurned('B', 0.495) },
    supply: { volts, sourceOhms: 0 },
    threshold: { arrangement: 'each', trimmers: { A: thresholdTurned(0.27), B: thresholdTurned(0.27) } },
    output: { loadOhms: 1e6 },
  });

const [NINE, FIVE] = [slipOf(boardAt(9)), slipOf(boardAt(5))];

const readingOf = (slip: Slip, point: SlipPoint, voice: 'A' | 'B' | null, light: SlipLight): number =>
  slip.rows.find((row) => row.point === point && row.voice === voice && row.light === light)!.value;

test.each([
  [9, 'node', 'lit', 0.76, 0.01],
  [9, 'node', 'shade', 2.85, 0.01],
  [9, 'node', 'unplugged', 9, 0.01],
  [9, 'reference', 'shade', 1.54, 0.02],
  [9, 'gate', 'lit', 8.3, 0.1],
  [9, 'gate', 'shade', 0.06, 0.02],
  [9, 'capacitor', 'lit', 4.5, 0.1],
  [9, 'capacitor', 'shade', 0, 0.1],
  [9, 'control', 'any', 6, 0.01],
  [9, 'out', 'lit', 4, 0.1],
  [9, 'out', 'shade', 0.1, 0.1],
  [5, 'node', 'lit', 0.42, 0.01],
  [5, 'node', 'shade', 1.58, 0.01],
  [5, 'reference', 'shade', 0.86, 0.02],
  [5, 'gate', 'lit', 4.3, 0.1],
  [5, 'gate', 'shade', 0.04, 0.02],
  [5, 'capacitor', 'lit', 2.5, 0.05],
  [5, 'control', 'any', 3.33, 0.01],
  [5, 'out', 'lit', 1.9, 0.1],
] as const)(
  'reference board at %i V: %s, %s: %f V (job:E, test points)',
  (volts, point, light, volts2, off) => {
    const slip = volts === 9 ? NINE : FIVE;
    expect(Math.abs(readingOf(slip, point, 'A', light) - volts2)).toBeLessThanOrEqual(off);
  },
);

test('reference board: mix, jack, current and pitches (job:E)', () => {
  const slip = NINE;
  expect(readingOf(slip, 'mix', null, 'B shaded')).toBeCloseTo(0.34, 1);
  expect(Math.abs(readingOf(slip, 'mix', null, 'lit') - 0.67)).toBeLessThan(0.02);
  expect(Math.abs(readingOf(slip, 'mix', null, 'shade') - 0.02)).toBeLessThan(0.02);
  // 0.625 Vpp of one voice is half of that rms, at half a period high.
  expect(readingOf(slip, 'jack ac', null, 'B shaded')).toBeCloseTo(0.625 / 2, 1);
  expect(readingOf(slip, 'jack dc', null, 'any')).toBe(0);
  // Printed as 15, 18.5 and 22 mA, with the timers' share interpolated: within a tenth.
  for (const [light, amperes] of [
    ['lit', 0.015],
    ['A shaded', 0.0185],
    ['shade', 0.022],
  ] as const)
    expect(Math.abs(readingOf(slip, 'current', null, light) / amperes - 1), light).toBeLessThan(0.1);
  for (const [light, amperes] of [
    ['lit', 0.0078],
    ['A shaded', 0.01],
    ['shade', 0.012],
  ] as const) {
    expect(Math.abs(readingOf(FIVE, 'current', null, light) / amperes - 1), light).toBeLessThan(0.1);
  }
  for (const [voice, low, middle, high] of [
    ['A', 240, 394, 1100],
    ['B', 166, 272, 760],
  ] as const) {
    expect(Math.abs(readingOf(slip, 'pitch at low end', voice, 'any') / low - 1)).toBeLessThan(0.03);
    expect(Math.abs(readingOf(slip, 'pitch at target', voice, 'any') / middle - 1)).toBeLessThan(0.01);
    expect(Math.abs(readingOf(slip, 'pitch at high end', voice, 'any') / high - 1)).toBeLessThan(0.04);
  }
});

test('the shade version has the same node and reference, and its gate and outputs exchanged', () => {
  const [light, shade] = [NINE, slipOf(boardAt(9, 'shade'))];
  expect(readingOf(shade, 'node', 'A', 'lit')).toBeCloseTo(readingOf(light, 'node', 'A', 'lit'), 1);
  for (const point of ['gate', 'capacitor', 'out'] as const) {
    expect(readingOf(shade, point, 'A', 'shade')).toBeCloseTo(readingOf(light, point, 'A', 'lit'), 1);
    expect(readingOf(shade, point, 'A', 'lit')).toBeCloseTo(readingOf(light, point, 'A', 'shade'), 1);
  }
});

test('worst-case gates lie within the limits: 6.3 V high and 0.28 V low at 9 V (job:E)', () => {
  const rows = NINE.rows.filter((row) => row.point === 'gate' && row.voice === 'A');
  const [lit, shade] = rows as [(typeof rows)[0], (typeof rows)[0]];
  expect(Math.abs(lit.least - 6.3)).toBeLessThan(0.15);
  expect(Math.abs(shade.most - 0.28)).toBeLessThan(0.06);
});

test('a measured rail moves every row with it', () => {
  const slip = slipOf(boardAt(9), undefined, 8.1);
  expect(slip.railVolts).toBe(8.1);
  expect(readingOf(slip, 'node', 'A', 'lit')).toBeCloseTo(0.762 * 0.9, 2);
  expect(readingOf(slip, 'control', 'B', 'any')).toBeCloseTo(5.4, 6);
});

test('a tuned pitch is good within ten cents or so of its own, and not half a tone off (common practice)', () => {
  for (const row of NINE.rows.filter(({ point }) => point === 'pitch at target')) {
    expect(judge(row, row.value * 2 ** (9 / 1200), 9)).toEqual({ kind: 'good' });
    expect(judge(row, row.value * 2 ** (-9 / 1200), 9)).toEqual({ kind: 'good' });
    expect(judge(row, row.value * 2 ** (50 / 1200), 9)).toEqual({ kind: 'off', way: 'high' });
    expect(judge(row, row.value * 2 ** (-50 / 1200), 9)).toEqual({ kind: 'off', way: 'low' });
  }
});

test('readings are judged at once: good, off, and impossible', () => {
  const slip = NINE;
  const row = slip.rows.find(({ point, light }) => point === 'node' && light === 'lit')!;
  expect(judge(row, 0.76, 9)).toEqual({ kind: 'good' });
  expect(judge(row, 8.9, 9)).toEqual({ kind: 'off', way: 'high' });
  expect(judge(row, 0.01, 9)).toEqual({ kind: 'off', way: 'low' });
  expect(judge(row, 90, 9)).toEqual({ kind: 'impossible', why: 'above the supply' });
  expect(judge(row, -3, 9)).toEqual({ kind: 'impossible', why: 'negative' });
  expect(judge(row, Number.NaN, 9)).toEqual({ kind: 'impossible', why: 'not a number' });
  expect(impossibleAs('A', 'current', 22, 9)).toBe('too large');
  expect(impossibleAs('Hz', 'pitch at target', 440, 9)).toBeNull();
  for (const each of slip.rows) {
    expect(judge(each, each.value, 9), each.key).toEqual({ kind: 'good' });
    expect(slipPointWords(each.point, each.voice, each.light)).not.toContain('undefined');
  }
  expect(verdictWords(judge(row, 90, 9))).toContain('measure again');
});

test('readings are read as meters show them', () => {
  expect(readMeter('1,54', 'V')).toEqual({ ok: true, value: 1.54 });
  expect(readMeter('760 mV', 'V')).toEqual({ ok: true, value: 0.76 });
  expect(readMeter('22', 'A')).toEqual({ ok: true, value: 0.022 });
  expect(readMeter('0.394kHz', 'Hz')).toEqual({ ok: true, value: 394 });
  expect(readMeter('a lot', 'V')).toEqual({ ok: false, read: 'a lot' });
  expect(readMeter('3 Hz', 'V').ok).toBe(false);
});
