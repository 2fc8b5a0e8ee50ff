/** Colour bands and capacitor codes against the rows of IEC 60062 and makers' samples. */
import { expect, test } from 'vitest';
import {
  BANDS,
  bandsOf,
  capacitorCode,
  checkResistor,
  checkValue,
  codeTolerance,
  readBands,
  readCapacitorCode,
} from '../../src/kit/codes.ts';
import type { BandColour } from '../../src/words/bench.ts';

test.each([
  ['el:D6', 'brown black red gold', 1000, 0.05, null],
  ['el:D7', 'yellow violet red gold', 4700, 0.05, null],
  ['el:D8', 'yellow violet orange gold', 47_000, 0.05, null],
  ['el:D9', 'red red orange gold', 22_000, 0.05, null],
  ['el:D10', 'red red gold gold', 2.2, 0.05, null],
  ['el:D11', 'brown black black gold brown', 10, 0.01, null],
  ['el:D12', 'brown black black red brown', 10_000, 0.01, null],
  ['el:D13', 'yellow violet green orange brown', 475_000, 0.01, null],
  ['el:D15', 'brown green black brown brown red', 1500, 0.01, 50e-6],
  ['the trade', 'brown black black brown brown', 1000, 0.01, null],
])('%s: %s', (_id, words, ohms, tolerance, perKelvin) => {
  const reading = readBands(words);
  expect(reading).toMatchObject({ ok: true, value: { ohms, tolerance } });
  if (!reading.ok) return;
  if (perKelvin !== null) expect(reading.value.perKelvin).toBeCloseTo(perKelvin, 12);
  const count = words.split(' ').length as 4 | 5 | 6;
  expect(bandsOf(ohms, count, tolerance, perKelvin)).toEqual({ ok: true, bands: words.split(' ') });
});

test('every five-band part read from either end is told with both values (el:D16)', () => {
  const reading = readBands('brown black black red brown');
  expect(reading).toMatchObject({ ok: true, value: { ohms: 10_000 }, reversed: { ohms: 1.2e2 * 1 } });
  expect(readBands('orange orange black black gold')).toMatchObject({
    ok: true,
    value: { ohms: 330 },
    reversed: null,
  });
  if (reading.ok) expect(checkResistor(120, reading)).toEqual({ kind: 'other end', ohms: 120 });
});

test('a decade slip is named as one', () => {
  const reading = readBands('yellow violet orange gold');
  if (!reading.ok) throw new Error('reads');
  expect(checkResistor(4700, reading)).toEqual({ kind: 'decades', decades: 1 });
  expect(checkResistor(47_000, reading)).toEqual({ kind: 'matches' });
  expect(checkValue(1e-7, 1e-8)).toEqual({ kind: 'decades', decades: -1 });
  expect(checkValue(1e-7, 3.3e-7)).toMatchObject({ kind: 'other value', ratio: expect.closeTo(3.3, 9) });
});

test('what is no reading is refused with its place', () => {
  expect(readBands('gold red red')).toEqual({
    ok: false,
    problem: { kind: 'misplaced', colour: 'gold', place: 1 },
  });
  expect(readBands('brown black mauve')).toEqual({
    ok: false,
    problem: { kind: 'not a colour', read: 'mauve' },
  });
  expect(readBands('brown black')).toEqual({ ok: false, problem: { kind: 'band count', count: 2 } });
  expect(readBands('red red red white')).toMatchObject({ ok: false, problem: { place: 4 } });
  expect(readBands('Brown, black, red').ok).toBe(true);
  expect(readBands('gray red brown gold')).toMatchObject({ ok: true, value: { ohms: 820 } });
  expect(bandsOf(4990, 4, 0.05)).toEqual({ ok: false, reason: 'figures' });
  expect(bandsOf(4990, 5, 0.07)).toEqual({ ok: false, reason: 'tolerance' });
});

test('every value of E24 and every value of E96 from 1 Ω to 9.76 MΩ is written and read back', () => {
  const e24 = [
    10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
  ];
  const e96 = Array.from({ length: 96 }, (_, i) => Math.round(100 * 10 ** (i / 96)));
  for (const [figures, count] of [
    [e24, 4],
    [e96, 5],
  ] as const)
    for (const figure of figures)
      for (let power = -1; power <= 5; power++) {
        const ohms = Number(`${figure}e${power - (count === 5 ? 1 : 0)}`);
        const written = bandsOf(ohms, count, 0.01);
        if (!written.ok) throw new Error(`${ohms} is not written`);
        expect(readBands(written.bands)).toMatchObject({ ok: true, value: { ohms, tolerance: 0.01 } });
      }
  expect((Object.keys(BANDS) as BandColour[]).filter((colour) => BANDS[colour].figure !== null)).toHaveLength(
    10,
  );
});

test.each([
  ['el:D17', '104K', 100e-9, 0.1],
  ['el:D18', '103J', 10e-9, 0.05],
  ['el:D19', '473K', 47e-9, 0.1],
  ['el:D20', '223', 22e-9, null],
  ['el:D21', '222M', 2.2e-9, 0.2],
  ['el:D22', '101J', 100e-12, 0.05],
  ['el:D22', '100', 10e-12, null],
])('%s: a capacitor marked %s, read and written', (_id, code, farads, tolerance) => {
  expect(readCapacitorCode(code)).toBeCloseTo(farads, 18);
  expect(codeTolerance(code)).toBe(tolerance);
  expect(capacitorCode(farads, tolerance)).toBe(code);
});

test('the other ways of printing a capacitance (el:D23 to el:D25)', () => {
  expect(readCapacitorCode('4R7C')).toBeCloseTo(4.7e-12, 18);
  expect(readCapacitorCode('2n2')).toBeCloseTo(2.2e-9, 15);
  expect(readCapacitorCode('0µ47')).toBeCloseTo(0.47e-6, 12);
  expect(readCapacitorCode('2A104K')).toBeCloseTo(100e-9, 15);
  expect(readCapacitorCode('47K')).toBeCloseTo(47e-12, 18);
  expect(readCapacitorCode('no code')).toBeNull();
  expect(capacitorCode(4.7e-12)).toBe('4R7');
  expect(capacitorCode(123e-9)).toBeNull();
});
