/** A drawer written as text reads back as the drawer it was. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csvText } from '../../src/app/table-csv.ts';
import type { Drawer } from '../../src/design/pitch.ts';
import { DIELECTRICS, type DielectricId } from '../../src/parts/capacitors.ts';
import { TRIMMERS, type TrimmerId } from '../../src/parts/trimmers.ts';
import { readDrawer } from '../../src/plan/drawer-file.ts';
import { drawerLines, drawerText } from '../../src/plan/drawer-text.ts';

const keys = <T extends string>(record: Readonly<Record<T, unknown>>): fc.Arbitrary<T> =>
  fc.constantFrom(...(Object.keys(record) as T[]));
const three = fc.integer({ min: 100, max: 999 });
const stock = {
  quantity: fc.option(fc.integer({ min: 0, max: 500 })),
  price: fc.option(fc.integer({ min: 0, max: 9999 }).map((n) => Number(`${n}e-2`))),
  tolerance: fc.constantFrom(0.01, 0.02, 0.025, 0.05, 0.1, 0.2),
};
const decades = (least: number, most: number) =>
  fc.tuple(three, fc.integer({ min: least, max: most })).map(([n, power]) => Number(`${n}e${power}`));
const drawers: fc.Arbitrary<Pick<Drawer, 'resistors' | 'trimmers' | 'capacitors'>> = fc.record({
  resistors: fc.array(fc.record({ ohms: decades(0, 4), ...stock }), { maxLength: 5 }),
  trimmers: fc.array(fc.record({ ohms: decades(0, 4), part: keys<TrimmerId>(TRIMMERS), ...stock }), {
    maxLength: 5,
  }),
  capacitors: fc.array(
    fc.record({ farads: decades(-12, -7), dielectric: keys<DielectricId>(DIELECTRICS), ...stock }),
    { maxLength: 5 },
  ),
});

test('any drawer written a part a line reads back the same (seed 5)', () => {
  fc.assert(
    fc.property(drawers, (drawer) => {
      expect(readDrawer(drawerText(drawer))).toEqual({ ...drawer, bad: [] });
    }),
    { seed: 5, numRuns: 100 },
  );
});

test('any drawer written as a table reads back the same (seed 6)', () => {
  fc.assert(
    fc.property(drawers, (drawer) => {
      const rows = drawerLines(drawer).map((line) => [
        line.value,
        line.tolerance,
        line.kind,
        line.quantity,
        line.price,
      ]);
      const text = csvText(['value', 'tolerance', 'kind', 'quantity', 'price'], rows);
      expect(readDrawer(text)).toEqual({ ...drawer, bad: [] });
    }),
    { seed: 6, numRuns: 100 },
  );
});
