/** Drawers typed and pasted: what reads is kept, what does not is named by its row and its kind. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decode } from '../../src/design/decode.ts';
import { DEFAULT_PITCH, MOST_LINES } from '../../src/design/pitch.ts';
import { readDrawer } from '../../src/plan/drawer-file.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

test('lines as a person types them, the words in any order', () => {
  const read = readDrawer(
    [
      '# what is in the tin',
      '10n film 5% x40',
      '',
      '4k7 1% x200 @0,02',
      '4,7k',
      '50k carbon trimmer'.replace(' trimmer', ''),
      'x12 multi-turn 100k ±10%',
      '47 nF C0G',
      '104 x7r',
      '10 µF electrolytic 20 %',
    ].join('\n'),
  );
  expect(read.bad).toEqual([]);
  expect(read.resistors).toEqual([
    { ohms: 4700, tolerance: 0.01, quantity: 200, price: 0.02 },
    { ohms: 4700, tolerance: 0.01, quantity: null, price: null },
  ]);
  expect(read.trimmers).toEqual([
    { ohms: 50_000, part: 'carbon', tolerance: 0.2, quantity: null, price: null },
    { ohms: 100_000, part: 'multi-turn', tolerance: 0.1, quantity: 12, price: null },
  ]);
  expect(read.capacitors).toEqual([
    { farads: 10e-9, dielectric: 'polyester', tolerance: 0.05, quantity: 40, price: null },
    { farads: 47e-9, dielectric: 'c0g', tolerance: 0.05, quantity: null, price: null },
    { farads: 100e-9, dielectric: 'x7r', tolerance: 0.1, quantity: null, price: null },
    { farads: 10e-6, dielectric: 'electrolytic', tolerance: 0.2, quantity: null, price: null },
  ]);
});

test.each([
  ['commas', ',', '4.7k'],
  ['semicolons and decimal commas', ';', '4,7k'],
  ['tabs', '\t', '4,7k'],
  ['commas and quoted cells', ',', '"4,7k"'],
])('a table with %s, its columns in any order, unknown ones passed over', (_, mark, value) => {
  const rows = [
    ['Price', 'value', 'shelf', 'tolerance', 'dielectric', 'quantity'],
    ['0.10', value, 'top', '1', '', '40'],
    ['€0.30', '22n', 'low', '10%', 'MKP', '12'],
    ['', '50k', '', '', 'trimmer', ''],
  ];
  const read = readDrawer(rows.map((row) => row.join(mark)).join('\r\n'));
  expect(read).toEqual({
    resistors: [{ ohms: 4700, tolerance: 0.01, quantity: 40, price: 0.1 }],
    capacitors: [{ farads: 22e-9, dielectric: 'polypropylene', tolerance: 0.1, quantity: 12, price: 0.3 }],
    trimmers: [{ ohms: 50_000, part: 'single-turn', tolerance: 0.1, quantity: null, price: null }],
    bad: [],
  });
});

test('bad rows are named by number and kind, and the rest is kept', () => {
  const read = readDrawer(
    [
      '10n film',
      'film 5%',
      '10n oilpaper',
      '10n film x7 x8',
      '99x9k',
      '22n film 300%',
      '1.2.3 film',
      '33n film',
      'value,tolerance,dielectric,quantity,price',
      '4700,1%,,many,',
      '4700,1%,,4,cheap',
      '10000,1%,,4,0.02',
    ].join('\n'),
  );
  expect(read.capacitors.map(({ farads }) => farads)).toEqual([10e-9, 33e-9]);
  expect(read.resistors.map(({ ohms }) => ohms)).toEqual([10_000]);
  expect(read.bad.map(({ line, problem }) => [line, problem.kind])).toEqual([
    [2, 'no value'],
    [3, 'unknown word'],
    [4, 'twice'],
    [5, 'value'],
    [6, 'value'],
    [7, 'value'],
    [10, 'not a count'],
    [11, 'not a price'],
  ]);
  expect(read.bad[1]).toMatchObject({ read: '10n oilpaper', problem: { read: 'oilpaper' } });
});

test('a drawer that is too long keeps as much as a document holds', () => {
  const read = readDrawer('4k7\n'.repeat(MOST_LINES + 3));
  expect(read.resistors).toHaveLength(MOST_LINES);
  expect(read.bad.map(({ line, problem }) => [line, problem.kind])).toEqual(
    [1, 2, 3].map((n) => [MOST_LINES + n, 'too many']),
  );
});

test('whatever is pasted, nothing is thrown, and what is kept a document takes (seed 5)', () => {
  const word = fc.constantFrom(
    '10n',
    '4k7',
    'film',
    '5%',
    'x3',
    '@2',
    ',',
    ';',
    'value',
    '9e9',
    '-1',
    '"',
    '±',
  );
  const line = fc.oneof(
    fc.string(),
    fc.array(word, { maxLength: 6 }).map((words) => words.join(' ')),
  );
  fc.assert(
    fc.property(fc.array(line, { maxLength: 8 }), (lines) => {
      const { bad: _, ...lists } = readDrawer(lines.join('\n'));
      const drawer = { ...DEFAULT_PITCH.drawer, ...lists };
      expect(decode({ ...BENCH_DESIGN, pitch: { ...DEFAULT_PITCH, drawer } }).ok).toBe(true);
    }),
    { seed: 5 },
  );
});
