/** The search against a plain nested loop over whole kits, and against a drawer in another order. */
import { describe, expect, test } from 'vitest';
import { astableFrom, cycleOf } from '../../src/circuit/astable.ts';
import {
  DEFAULT_PITCH,
  type Drawer,
  type Pitch,
  type VoiceParts,
  type Wish,
} from '../../src/design/pitch.ts';
import { DIELECTRICS } from '../../src/parts/capacitors.ts';
import { TIMERS } from '../../src/parts/timers.ts';
import { endOhms, TRIMMERS } from '../../src/parts/trimmers.ts';
import { firstOrderReachOf } from '../../src/plan/reach.ts';
import { RANKING_KITS, type SearchResult, search, stockOf } from '../../src/plan/search.ts';
import { cheapestPairs, sharedParts } from '../../src/plan/search-pairs.ts';
import { type Places, tuningCost, UNIT, type VoiceFits } from '../../src/plan/search-voice.ts';
import { partsOf } from '../../src/plan/stock.ts';
import { chipOf, lawOf } from '../../src/plan/timing.ts';
import { targetsOf } from '../../src/plan/wish.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

const chip = chipOf(BENCH_DESIGN);

function finish(pitch: Pick<Pitch, 'wish' | 'drawer'>): Extract<SearchResult, { kind: 'found' }> {
  const steps = search({ chip, pitch });
  let step = steps.next();
  while (!step.done) step = steps.next();
  if (step.value.kind !== 'found') throw new Error(JSON.stringify(step.value));
  return step.value;
}

/** A small drawer drawn by a seed. */
function drawerOf(seed: number, limited: boolean): Drawer {
  const uniform = uniformFrom(seed);
  const some = <T>(all: readonly T[], count: number): readonly T[] =>
    all
      .map((value) => ({ value, at: uniform() }))
      .toSorted((a, b) => a.at - b.at)
      .slice(0, count)
      .map(({ value }) => value);
  const stock = () => ({
    quantity: limited ? Math.floor(uniform() * 90) : null,
    price: uniform() < 0.3 ? null : Math.round(100 * uniform()) / 100,
  });
  return {
    use: 'have',
    resistors: some([470, 1000, 3900, 8200, 12e3, 18e3, 27e3, 47e3, 82e3], 5).map((ohms) => ({
      ohms,
      tolerance: 0.01,
      ...stock(),
    })),
    trimmers: some([5e3, 20e3, 50e3, 100e3], 2).map((ohms) => ({
      ohms,
      part: uniform() < 0.5 ? 'carbon' : 'multi-turn',
      tolerance: 0.2,
      ...stock(),
    })),
    capacitors: some([10e-9, 22e-9, 33e-9, 47e-9, 68e-9, 100e-9], 3).map((farads) => ({
      farads,
      dielectric: uniform() < 0.2 ? 'electrolytic' : 'polyester',
      tolerance: 0.1,
      ...stock(),
    })),
    order: DEFAULT_PITCH.drawer.order,
  };
}

/** What one voice's parts cost by the sentences of the ranking; null where they do not fit. Written out plainly. */
function plainCost(wish: Wish, drawer: Drawer, p: VoiceParts, voice: 'A' | 'B'): number | null {
  const { ra, rbFixed, trimmer, capacitor } = p;
  const timer = TIMERS.bipolar;
  const end = endOhms(trimmer.part, trimmer.ohms);
  const wanted = targetsOf(wish);
  if (!wanted.ok) return null;
  const target = wanted.targets[voice];
  const cycleAt = (rbOhms: number) =>
    cycleOf(
      astableFrom({
        raOhms: ra.ohms,
        rbOhms,
        farads: capacitor.farads,
        railVolts: 9,
        controlVolts: null,
        discharge: timer.discharge,
      }),
    );
  if (ra.ohms < 1000 || rbFixed.ohms + end < 1000) return null;
  if (ra.ohms + rbFixed.ohms + trimmer.ohms > 9 / 6 / 250e-9) return null;
  if (DIELECTRICS[capacitor.dielectric].polarised && !wish.polarised) return null;
  const [slow, fast] = [cycleAt(rbFixed.ohms + trimmer.ohms), cycleAt(rbFixed.ohms + end)];
  if (fast.frequency < target.highHertz || slow.frequency > target.lowHertz) return null;
  // The turn for the middle of the target, by halving.
  const middle = Math.sqrt(target.lowHertz * target.highHertz);
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const half = (low + high) / 2;
    if (cycleAt(rbFixed.ohms + end + half * (trimmer.ohms - end)).frequency > middle) low = half;
    else high = half;
  }
  const rb = rbFixed.ohms + end + low * (trimmer.ohms - end);
  const { dutyCycle } = cycleAt(rb);
  if (wish.duty && (dutyCycle < wish.duty.least || dutyCycle > wish.duty.most)) return null;
  const law = lawOf(chip, null, ra.ohms)!;
  const reach = firstOrderReachOf('bipolar', law, p, target, wish.law);
  const step = 1e-6 * (trimmer.ohms - end);
  const perTurn = (1200 * Math.log2(cycleAt(rb - step).frequency / cycleAt(rb + step).frequency)) / 2e-6;
  const touch = tuningCost(perTurn / TRIMMERS[trimmer.part].degrees);
  const dearest = (list: readonly { price: number | null }[]) =>
    Math.max(0, ...list.map((x) => x.price ?? 0));
  const [r, t, c] = [drawer.resistors, drawer.trimmers, drawer.capacitors].map(dearest) as [
    number,
    number,
    number,
  ];
  const priceOf = (list: readonly { price: number | null }[], at: number) => list[at]!.price ?? dearest(list);
  const price =
    (priceOf(
      drawer.resistors,
      drawer.resistors.findIndex((x) => x.ohms === ra.ohms),
    ) +
      priceOf(
        drawer.resistors,
        drawer.resistors.findIndex((x) => x.ohms === rbFixed.ohms),
      ) +
      priceOf(
        drawer.trimmers,
        drawer.trimmers.findIndex((x) => x.ohms === trimmer.ohms),
      ) +
      priceOf(
        drawer.capacitors,
        drawer.capacitors.findIndex((x) => x.farads === capacitor.farads),
      )) /
    (4 * r + 2 * t + 2 * c);
  const w = wish.weights;
  return w.surerReach * (1 - reach) + w.easierTuning * touch + w.cheaper * price;
}

/** Every pair of whole kits, one after another: keys and costs of all that fit. */
function plainLoop(wish: Wish, drawer: Drawer): readonly { key: string; cost: number }[] {
  const have = <T extends { quantity: number | null }>(list: readonly T[]) =>
    list.filter(({ quantity }) => quantity !== 0);
  const singles = (voice: 'A' | 'B') => {
    const found: { key: string; cost: number; used: readonly string[] }[] = [];
    for (const a of have(drawer.resistors))
      for (const b of have(drawer.resistors))
        for (const p of have(drawer.trimmers))
          for (const c of have(drawer.capacitors)) {
            const parts: VoiceParts = {
              ra: { ohms: a.ohms, tolerance: a.tolerance },
              rbFixed: { ohms: b.ohms, tolerance: b.tolerance },
              trimmer: { part: p.part, ohms: p.ohms, tolerance: p.tolerance },
              capacitor: { farads: c.farads, dielectric: c.dielectric, tolerance: c.tolerance },
            };
            const cost = plainCost(wish, drawer, parts, voice);
            if (cost !== null)
              found.push({
                key: JSON.stringify(parts),
                cost,
                used: [`r${a.ohms}`, `r${b.ohms}`, `t${p.ohms}`, `c${c.farads}`],
              });
          }
    return found;
  };
  const stock = new Map<string, number | null>([
    ...drawer.resistors.map((x) => [`r${x.ohms}`, x.quantity] as const),
    ...drawer.trimmers.map((x) => [`t${x.ohms}`, x.quantity] as const),
    ...drawer.capacitors.map((x) => [`c${x.farads}`, x.quantity] as const),
  ]);
  const all: { key: string; cost: number }[] = [];
  const bs = singles('B');
  for (const a of singles('A'))
    for (const b of bs) {
      const counts = new Map<string, number>();
      for (const used of [...a.used, ...b.used]) counts.set(used, (counts.get(used) ?? 0) + 1);
      const runsShort = [...counts].some(
        ([used, n]) => (stock.get(used) ?? Number.POSITIVE_INFINITY) < n * wish.kits,
      );
      if (!runsShort)
        all.push({
          key: a.key + b.key,
          cost: a.cost + b.cost + (wish.weights.fewerParts * (counts.size - 3)) / 5,
        });
    }
  return all;
}

const WISHES: readonly Partial<Wish>[] = [
  {},
  { weights: { fewerParts: 3, easierTuning: 0.5, surerReach: 1, cheaper: 1 } },
  { weights: { fewerParts: 0, easierTuning: 1, surerReach: 3, cheaper: 2 }, polarised: true },
  { way: 'sweep', sweep: { A: { lowHertz: 300, highHertz: 500 }, B: { lowHertz: 200, highHertz: 260 } } },
  { duty: { least: 0.5, most: 0.56 }, law: 'normal-2' },
];

describe.each([2, 3, 4])('a small drawer (seed %d), every pair of kits tried one after another', (seed) => {
  test.each([
    ['enough of everything', false],
    ['quantities', true],
  ])('with %s, the best five hundred are the same', (_, limited) => {
    const drawer = drawerOf(seed, limited);
    let compared = 0;
    for (const change of WISHES) {
      const wish = { ...DEFAULT_PITCH.wish, kits: 12, ...change };
      const steps = search({ chip, pitch: { wish, drawer } });
      let step = steps.next();
      while (!step.done) step = steps.next();
      const plain = plainLoop(wish, drawer).toSorted((a, b) => a.cost - b.cost);
      if (step.value.kind !== 'found') {
        expect(plain).toEqual([]);
        continue;
      }
      const { ranked, voices } = step.value;
      compared += ranked.length;
      expect(ranked.length).toBe(Math.min(500, plain.length));
      const costs = new Map(plain.map(({ key, cost }) => [key, cost]));
      const inOrder = ranked.toSorted((a, b) => a.firstOrderPlace - b.firstOrderPlace);
      for (const [i, { candidate }] of inOrder.entries()) {
        const cost = costs.get(JSON.stringify(candidate.parts.A) + JSON.stringify(candidate.parts.B));
        expect(cost, `place ${i} of ${plain.length}`).toBeDefined();
        // Rounding of both voices' costs to whole units, and of the plain loop's slopes.
        expect(Math.abs(cost! - plain[i]!.cost)).toBeLessThan(8 * UNIT);
      }
      // Everything is accounted for: what fits and what does not make up all there is.
      for (const { tried, fit, misses } of [voices.A, voices.B])
        expect(fit + misses.reduce((sum, { count }) => sum + count, 0)).toBe(tried);
    }
    if (!limited) expect(compared).toBeGreaterThan(100);
  });
});

test('the cheapest pairs of invented costs are those of a nested loop, ties and all (seeds 1 to 30)', () => {
  for (let seed = 1; seed <= 30; seed++) {
    const uniform = uniformFrom(seed);
    const n = { resistors: 3, trimmers: 2, capacitors: 2 };
    const fits = (): VoiceFits => {
      const codes = Array.from({ length: 36 }, (_, i) => i).filter(() => uniform() < 0.8);
      const steps = 1 + Math.floor(uniform() * 40);
      const costs = codes.map(() => Math.floor(uniform() * steps));
      return { codes: Float64Array.from(codes), costs: Float64Array.from(costs), tried: 36, misses: [] };
    };
    const [a, b] = [fits(), fits()];
    const perPart = Math.floor(uniform() * 12);
    const places = (code: number): Places => [
      Math.floor(code / 12),
      Math.floor(code / 4) % 3,
      Math.floor(code / 2) % 2,
      code % 2,
    ];
    // A voice's cost holds its own different parts, as the search makes it.
    for (const { codes, costs } of [a, b])
      for (const [i, code] of codes.entries()) {
        const [ra, rb] = places(code);
        costs[i] = costs[i]! + perPart * (ra === rb ? 3 : 4);
      }
    const forbidden = Math.floor(uniform() * 6);
    const allowed = (x: Places, y: Places) => (x[0] + y[1] + x[3]) % 6 !== forbidden;
    const all: { a: number; b: number; cost: number }[] = [];
    for (const [i, x] of a.codes.entries())
      for (const [j, y] of b.codes.entries()) {
        const kinds = new Set([
          ...[places(x), places(y)].flatMap(([ra, rb, p, c]) => [`r${ra}`, `r${rb}`, `p${p}`, `c${c}`]),
        ]);
        const own = [x, y].map((code) => (places(code)[0] === places(code)[1] ? 3 : 4));
        expect(own[0]! + own[1]! - kinds.size).toBe(sharedParts(places(x), places(y)));
        if (allowed(places(x), places(y)))
          all.push({
            a: x,
            b: y,
            cost: a.costs[i]! + b.costs[j]! - perPart * (own[0]! + own[1]! - kinds.size),
          });
      }
    all.sort((x, y) => x.cost - y.cost || x.a - y.a || x.b - y.b);
    const most = 1 + Math.floor(uniform() * 120);
    const steps = cheapestPairs(a, b, n, perPart, most, allowed);
    let step = steps.next();
    while (!step.done) step = steps.next();
    expect(step.value, `seed ${seed}`).toEqual(all.slice(0, most));
  }
});

test('the order of the drawer, and lines of the same part, change nothing (seed 6)', () => {
  const drawer = drawerOf(6, false);
  const turned: Drawer = {
    ...drawer,
    resistors: [...drawer.resistors.toReversed(), drawer.resistors[0]!],
    trimmers: drawer.trimmers.toReversed(),
    capacitors: [...drawer.capacitors.slice(1), drawer.capacitors[0]!],
  };
  const { wish } = DEFAULT_PITCH;
  const found = finish({ wish, drawer });
  expect(found.ranked.length).toBeGreaterThan(5);
  expect(finish({ wish, drawer: turned })).toEqual(found);
});

test('lines of the same part are added up, and what is not there is no part', () => {
  const line = { ohms: 4700, tolerance: 0.01, price: null };
  const drawer: Drawer = {
    ...DEFAULT_PITCH.drawer,
    use: 'have',
    resistors: [
      { ...line, quantity: 30, price: 0.2 },
      { ...line, quantity: 12, price: 0.1 },
      { ...line, tolerance: 0.05, quantity: 5 },
      { ...line, ohms: 3900, quantity: 0 },
    ],
  };
  expect(partsOf(drawer).resistors).toEqual([
    { ...line, quantity: 42, price: 0.1 },
    { ...line, tolerance: 0.05, quantity: 5 },
  ]);
  // Four places of one value for ten kits take forty of it.
  const same: Places = [0, 0, 0, 0];
  const unlimited = { ...drawer, trimmers: [], capacitors: [] };
  const parts = {
    ...partsOf(unlimited),
    trimmers: partsOf(DEFAULT_PITCH.drawer).trimmers,
    capacitors: partsOf(DEFAULT_PITCH.drawer).capacitors,
  };
  expect(stockOf(parts, 10)(same, same)).toBe(true);
  expect(stockOf(parts, 11)(same, same)).toBe(false);
});

test('why nothing fits is counted, with what comes nearest', () => {
  const drawer: Drawer = {
    ...DEFAULT_PITCH.drawer,
    use: 'have',
    resistors: [
      { ohms: 820, tolerance: 0.01, quantity: null, price: null },
      { ohms: 3900, tolerance: 0.01, quantity: null, price: null },
    ],
    trimmers: [{ ohms: 10_000, part: 'carbon', tolerance: 0.2, quantity: null, price: null }],
    capacitors: [
      { farads: 10e-9, dielectric: 'polyester', tolerance: 0.1, quantity: null, price: null },
      { farads: 1e-6, dielectric: 'electrolytic', tolerance: 0.2, quantity: null, price: null },
    ],
  };
  const wish = { ...DEFAULT_PITCH.wish, notes: { A: 'E4', B: 'C4' } };
  const { ranked, voices } = finish({ wish, drawer });
  expect(ranked).toEqual([]);
  const kinds = Object.fromEntries(voices.A.misses.map(({ kind, count }) => [kind, count]));
  expect(kinds).toEqual({ 'ra-too-small': 4, polarised: 1, 'rb-near-zero': 2, 'too-high': 1 });
  const nearest = voices.A.misses.find(({ kind }) => kind === 'too-high')!.nearest!;
  // 3.9 kΩ, 3.9 kΩ + 10 kΩ and 10 nF: as low as the circuit's own astable goes.
  const lowest = cycleOf(
    astableFrom({
      raOhms: 3900,
      rbOhms: 13_900,
      farads: 10e-9,
      railVolts: 9,
      controlVolts: null,
      discharge: TIMERS.bipolar.discharge,
    }),
  ).frequency;
  expect(nearest.by).toBeCloseTo(1200 * Math.log2(lowest / 329.6276), 3);
});

test('a wish that cannot be met is refused with every reason, and nothing is searched', () => {
  const pitch = { ...DEFAULT_PITCH, wish: { ...DEFAULT_PITCH.wish, notes: { A: 'Q', B: 'C4' } } };
  const step = search({ chip, pitch: { ...pitch, drawer: { ...pitch.drawer, use: 'have' } } }).next();
  expect(step.done).toBe(true);
  expect(step.value).toMatchObject({
    kind: 'refused',
    problems: [
      { kind: 'note', voice: 'A' },
      { kind: 'empty drawer', missing: 'resistors' },
      { kind: 'empty drawer', missing: 'trimmers' },
      { kind: 'empty drawer', missing: 'capacitors' },
    ],
  });
});

test('a full E12 drawer holds more than a million combinations, and the best of them reach both notes', () => {
  const { combinations, ranked } = finish(DEFAULT_PITCH);
  expect(combinations).toBeGreaterThan(1e6);
  expect(ranked).toHaveLength(500);
  expect(ranked[0]!.drawnReach).toBeGreaterThan(0.99);
  for (const { drawnReach } of ranked) {
    const kits = drawnReach * RANKING_KITS;
    expect(kits).toBeCloseTo(Math.round(kits), 6);
  }
  for (const [i, { cost }] of ranked.entries())
    if (i > 0) expect(cost).toBeGreaterThanOrEqual(ranked[i - 1]!.cost);
});
