/** Why the next capacitor stands behind the first. */
import { expect, test } from 'vitest';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { DEFAULT_PITCH, type Drawer } from '../../src/design/pitch.ts';
import { nextCapacitor } from '../../src/plan/rivals.ts';
import { type Ranked, search } from '../../src/plan/search.ts';
import { chipOf } from '../../src/plan/timing.ts';

const stock = { quantity: null, price: null };
const drawer: Drawer = {
  use: 'have',
  resistors: [10e3, 15e3, 22e3].map((ohms) => ({ ohms, tolerance: 0.01, ...stock })),
  trimmers: [{ ohms: 20e3, part: 'single-turn', tolerance: 0.1, ...stock }],
  capacitors: [
    { farads: 68e-9, dielectric: 'polyester', tolerance: 0.05, ...stock },
    { farads: 68e-9, dielectric: 'polyester', tolerance: 0.2, ...stock },
  ],
  order: { resistors: null, trimmers: null, capacitors: null },
};

function ranked(): readonly Ranked[] {
  const searching = search({ chip: chipOf(DEFAULT_DESIGN), pitch: { wish: DEFAULT_PITCH.wish, drawer } });
  for (;;) {
    const step = searching.next();
    if (!step.done) continue;
    if (step.value.kind !== 'found') throw new Error('Nothing found.');
    return step.value.ranked;
  }
}

test('a capacitor of four times the tolerance comes behind, and is told to miss more kits', () => {
  const list = ranked();
  const rival = nextCapacitor(list, DEFAULT_PITCH.wish.weights)!;
  expect(list[rival.place]).toBe(rival.ranked);
  const tolerances = (one: Ranked) =>
    [one.candidate.parts.A, one.candidate.parts.B].map((p) => p.capacitor.tolerance);
  expect(tolerances(list[0]!)).toEqual([0.05, 0.05]);
  expect(tolerances(rival.ranked)).toContain(0.2);
  expect(rival.worse).toContain('reach');
  expect(rival.ranked.drawnReach).toBeLessThan(list[0]!.drawnReach);
});

test('a reason whose preference does not count is not given, and one capacitor alone has no rival', () => {
  const list = ranked();
  const none = { fewerParts: 0, easierTuning: 0, surerReach: 0, cheaper: 0 };
  expect(nextCapacitor(list, none)?.worse).toEqual([]);
  expect(nextCapacitor([list[0]!, list[0]!], DEFAULT_PITCH.wish.weights)).toBeNull();
  expect(nextCapacitor([], DEFAULT_PITCH.wish.weights)).toBeNull();
});
