/** How people write component values, and what is said of the rest. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatQuantity } from '../../src/quantity/format.ts';
import { parseQuantity, type QuantityKind } from '../../src/quantity/parse.ts';

const readAs = (text: string, quantity: QuantityKind) => {
  const reading = parseQuantity(text, quantity);
  if (!reading.ok) throw new Error(`"${text}" was refused: ${reading.problem.kind}`);
  return reading.value;
};
const problemOf = (text: string, quantity: QuantityKind) => {
  const reading = parseQuantity(text, quantity);
  return reading.ok ? `read as ${reading.value}` : reading.problem.kind;
};

test.each<[string, QuantityKind, number]>([
  ['4k7', 'resistance', 4700],
  ['4K7', 'resistance', 4700],
  ['4,7k', 'resistance', 4700],
  ['4.7k', 'resistance', 4700],
  ['4.7 kΩ', 'resistance', 4700],
  ['4.7 k\u2126', 'resistance', 4700],
  ['4.7\u00A0kohm', 'resistance', 4700],
  ['4.7 kOhms', 'resistance', 4700],
  ['4700', 'resistance', 4700],
  ['4700 Ω', 'resistance', 4700],
  ['4700R', 'resistance', 4700],
  ['4R7', 'resistance', 4.7],
  ['4Ω7', 'resistance', 4.7],
  ['0R22', 'resistance', 0.22],
  ['1M0', 'resistance', 1e6],
  ['2M2', 'resistance', 2.2e6],
  ['1G', 'resistance', 1e9],
  ['4k7Ω', 'resistance', 4700],
  ['47K', 'resistance', 47_000],
  ['0,680 k', 'resistance', 680],
  ['4.7e3', 'resistance', 4700],
  ['.5k', 'resistance', 500],
  // Printed codes el:D23, D24, D25 (Murata part numbering; on a disc 47K is 47 pF ± 10 %).
  ['4R7C', 'capacitance', 4.7e-12],
  ['2A104K', 'capacitance', 100e-9],
  ['47K', 'capacitance', 47e-12],
  ['100n', 'capacitance', 100e-9],
  ['100nF', 'capacitance', 100e-9],
  ['100 nF', 'capacitance', 100e-9],
  ['0µ1', 'capacitance', 100e-9],
  ['0\u03BC1', 'capacitance', 100e-9],
  ['0u1', 'capacitance', 100e-9],
  ['0µ47', 'capacitance', 470e-9],
  ['0.1 \u03BCF', 'capacitance', 100e-9],
  ['0,1µF', 'capacitance', 100e-9],
  ['2n2', 'capacitance', 2.2e-9],
  ['4p7', 'capacitance', 4.7e-12],
  ['1e-7 F', 'capacitance', 100e-9],
  ['1e-7', 'capacitance', 100e-9],
  ['47 %', 'share', 0.47],
  ['47%', 'share', 0.47],
  ['12,5 %', 'share', 0.125],
  ['1.54 V', 'voltage', 1.54],
  ['4V5', 'voltage', 4.5],
  ['150 mV', 'voltage', 0.15],
  ['\u2212 0.3 V', 'voltage', -0.3],
  ['300 lx', 'illuminance', 300],
  ['300 LUX', 'illuminance', 300],
  ['1k5', 'illuminance', 1500],
  ['45 cm', 'length', 0.45],
  ['85mm', 'length', 0.085],
  ['1m2', 'length', 1.2],
  ['0.3', 'number', 0.3],
])('%j as %s is %d', (text, quantity, expected) => {
  expect(readAs(text, quantity)).toBe(expected);
});

// Murata radial-lead part numbering: two figures and the zeros, in pF, then the tolerance letter.
test.each<[string, string, number]>([
  ['el:D17', '104K', 100e-9],
  ['el:D18', '103J', 10e-9],
  ['el:D19', '473K', 47e-9],
  ['el:D20', '223', 22e-9],
  ['el:D21', '222M', 2.2e-9],
  ['el:D22', '101J', 100e-12],
  ['el:D22', '100', 10e-12],
  ['el:D24', '2n2', 2.2e-9],
  ['el:D24', '0µ47', 0.47e-6],
  ['the spelling of the field', '104', 100e-9],
])('%s: a capacitor printed %s', (_id, text, expected) => {
  expect(readAs(text, 'capacitance')).toBe(expected);
});

test.each<[string, QuantityKind, string]>([
  ['', 'resistance', 'unreadable'],
  ['high', 'resistance', 'unreadable'],
  ['4k7k', 'resistance', 'unreadable'],
  ['4..7k', 'resistance', 'unreadable'],
  ['1e999', 'resistance', 'unreadable'],
  ['NaN', 'resistance', 'unreadable'],
  ['Infinity', 'resistance', 'unreadable'],
  ['0x10', 'resistance', 'unreadable'],
  ['4,700', 'resistance', 'ambiguous comma'],
  ['10,000 Ω', 'resistance', 'ambiguous comma'],
  ['1,234.5', 'resistance', 'unreadable'],
  ['100 nF', 'resistance', 'other unit'],
  ['12 V', 'resistance', 'other unit'],
  ['47 %', 'resistance', 'other unit'],
  ['10 kΩ', 'capacitance', 'other unit'],
  ['300 lx', 'voltage', 'other unit'],
  ['0.1', 'capacitance', 'unreadable'],
  ['4k7', 'capacitance', 'unreadable'],
  ['47', 'share', 'unreadable'],
  ['5 k', 'share', 'unreadable'],
  ['5 k', 'number', 'unreadable'],
])('%j as %s: %s', (text, quantity, expected) => {
  expect(problemOf(text, quantity)).toBe(expected);
});

describe('a refusal', () => {
  test('carries the text as typed and the quantity asked for', () => {
    expect(parseQuantity('  about 5  ', 'resistance')).toEqual({
      ok: false,
      problem: { kind: 'unreadable', read: 'about 5', quantity: 'resistance' },
    });
  });

  test('names the unit that was typed instead', () => {
    expect(parseQuantity('10 kΩ', 'capacitance')).toMatchObject({ problem: { unit: 'Ω' } });
    expect(parseQuantity('100 nF', 'resistance')).toMatchObject({ problem: { unit: 'F' } });
  });

  test('of a value outside its limits carries the value and the limits', () => {
    const limits = { min: 100, max: 10e6 };
    expect(parseQuantity('47', 'resistance', limits)).toEqual({
      ok: false,
      problem: { kind: 'outside', read: '47', quantity: 'resistance', value: 47, limits },
    });
    expect(parseQuantity('100', 'resistance', limits)).toEqual({ ok: true, value: 100 });
    expect(parseQuantity('10M', 'resistance', limits)).toEqual({ ok: true, value: 10e6 });
  });
});

describe('round trips', () => {
  const positive = fc.double({ min: 1e-11, max: 1e9, noNaN: true });

  test.each<[QuantityKind, string]>([
    ['resistance', 'Ω'],
    ['capacitance', 'F'],
    ['voltage', 'V'],
    ['illuminance', 'lx'],
  ])('%s printed is read back as the same figure', (quantity, unit) => {
    // Only the prefixes that people use with a quantity are read: pico to micro for farads, and so on.
    const range = {
      resistance: [1e-3, 1e9],
      capacitance: [1e-12, 0.99e-3],
      voltage: [1e-6, 1e5],
      illuminance: [1e-3, 9e5],
    }[quantity as 'resistance' | 'capacitance' | 'voltage' | 'illuminance'] as [number, number];
    fc.assert(
      fc.property(fc.double({ min: range[0], max: range[1], noNaN: true }), (value) => {
        const rounded = Number(value.toPrecision(4));
        expect(readAs(formatQuantity(value, unit), quantity) / rounded).toBeCloseTo(1, 12);
      }),
      { seed: 4, numRuns: 400 },
    );
  });

  test('letter codes of any length are read without added rounding', () => {
    fc.assert(
      fc.property(fc.nat(999), fc.nat(99), fc.constantFrom('k', 'M'), (whole, part, letter) => {
        const exact = Number(`${whole}.${part}e${letter === 'k' ? 3 : 6}`);
        expect(readAs(`${whole}${letter}${part}`, 'resistance')).toBe(exact);
      }),
      { seed: 6 },
    );
  });

  test('no text makes it throw, and what it reads is a finite number', () => {
    const texts = fc.oneof(fc.string(), fc.stringMatching(/^[\d.,eE+\- kKMGmnpuµΩFVRlx%]{0,12}$/));
    fc.assert(
      fc.property(
        texts,
        fc.constantFrom<QuantityKind>('resistance', 'capacitance', 'share', 'length'),
        (text, kind) => {
          const reading = parseQuantity(text, kind);
          if (reading.ok) expect(Number.isFinite(reading.value)).toBe(true);
        },
      ),
      { seed: 7, numRuns: 2000 },
    );
  });

  test('limits hold for whatever is read', () => {
    fc.assert(
      fc.property(positive, (value) => {
        const reading = parseQuantity(String(value), 'resistance', { min: 100, max: 1e6 });
        expect(reading.ok).toBe(value >= 100 && value <= 1e6);
      }),
      { seed: 8 },
    );
  });
});
