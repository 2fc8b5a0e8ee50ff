/** The order list against the binomial law, published spares and the model itself. */
import { expect, test } from 'vitest';
import { astableFrom, cycleOf } from '../../src/circuit/astable.ts';
import { DEFAULT_BATCH } from '../../src/design/batch.ts';
import { alternatesFor, neighbours } from '../../src/kit/alternates.ts';
import { planBoard, USUAL_WISHES } from '../../src/kit/board/plan-board.ts';
import { connectionsOf } from '../../src/kit/connections.ts';
import { csvRows, csvText } from '../../src/kit/csv.ts';
import { BASKET_SAFETY, needsOf, orderOf } from '../../src/kit/order.ts';
import { orderCsv } from '../../src/kit/order-table.ts';
import type { Body } from '../../src/kit/parts.ts';
import { countFor, enoughChance, lineSafety, packsFor } from '../../src/kit/spares.ts';
import { TIMERS } from '../../src/parts/timers.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { cautionsAt } from '../../src/words/cautions.ts';
import { lineWords, type OrderSpec, orderWords } from '../../src/words/order.ts';
import { BENCH_DESIGN, designWith } from '../circuit/building.ts';
import { designOf, seededChoices } from './any-kit.ts';

test.each([
  [10, [11, 12, 13, 14]],
  [20, [22, 23, 24, 27]],
  [30, [32, 34, 35, 39]],
  [60, [63, 66, 68, 74]],
  [120, [124, 129, 133, 143]],
])('%i good parts at 99 %% need the published numbers for 1, 3, 5 and 10 %% loss', (needed, counts) => {
  expect([0.01, 0.03, 0.05, 0.1].map((loss) => countFor(needed, loss, 0.99))).toEqual(counts);
});

test('the chance that enough survive is what fifty thousand drawn boxes show (seed 11)', () => {
  const uniform = uniformFrom(11);
  const boxes = 50_000;
  let enough = 0;
  for (let i = 0; i < boxes; i++) {
    let left = 0;
    for (let part = 0; part < 23; part++) if (uniform() >= 0.1) left++;
    if (left >= 20) enough++;
  }
  const chance = enoughChance(23, 20, 0.1);
  expect(Math.abs(enough / boxes - chance)).toBeLessThan(4 * Math.sqrt((chance * (1 - chance)) / boxes));
});

test('a large class does not lose its digits: one minus the tail is the head', () => {
  // Losing none of 3000 at 30 % underflows; the count found must still be the least one.
  const count = countFor(3000, 0.3, 0.999)!;
  expect(enoughChance(count, 3000, 0.3)).toBeGreaterThanOrEqual(0.999);
  expect(enoughChance(count - 1, 3000, 0.3)).toBeLessThan(0.999);
  expect(countFor(30, 1, 0.99)).toBeNull();
  expect(countFor(30, 0, 0.99)).toBe(30);
});

test('every line at 1 − 0.01/lines makes the whole basket safe at 99 %', () => {
  const order = orderOf(BENCH_DESIGN, DEFAULT_BATCH);
  const pieces = order.lines.filter(({ unit }) => unit === 'piece');
  expect(order.lineSafety).toBeCloseTo(1 - 0.01 / pieces.length, 12);
  expect(lineSafety(20, BASKET_SAFETY)).toBeCloseTo(0.9995, 12);
  for (const line of pieces) {
    expect(line.chance, line.key).toBeGreaterThanOrEqual(order.lineSafety);
    // One piece fewer would not do.
    expect(enoughChance(line.withSpares! - 1, line.needed, line.lossRate), line.key).toBeLessThan(
      order.lineSafety,
    );
  }
  expect(order.chance).toBeGreaterThanOrEqual(BASKET_SAFETY);
});

test('stock is used up first, packs are whole, and prices add up', () => {
  const [plain] = orderOf(BENCH_DESIGN, DEFAULT_BATCH).lines;
  const lines = [{ key: plain!.key, stock: 7, packSize: 25, packPrice: 3.5 }];
  const order = orderOf(BENCH_DESIGN, { ...DEFAULT_BATCH, lines });
  const line = order.lines[0]!;
  expect(line.packs).toBe(Math.ceil((plain!.withSpares! - 7) / 25));
  expect(line.cost).toBe(line.packs * 3.5);
  expect(order.cost).toBe(line.cost);
  expect(order.unpriced).toBe(order.lines.length - 1);
  expect(line.chance).toBeGreaterThanOrEqual(plain!.chance);
  const plenty = orderOf(BENCH_DESIGN, {
    ...DEFAULT_BATCH,
    lines: [{ ...lines[0]!, stock: 1000 }],
  });
  expect(plenty.lines[0]!.packs).toBe(0);
  expect(packsFor(-3, 10)).toBe(0);
});

test('equal parts share a line, and every resistor of the design is counted once', () => {
  const needs = needsOf(BENCH_DESIGN, true);
  const resistors = needs.filter(({ spec }) => spec.kind === 'resistor');
  // Each voice: RA, RBf, divider, input, hysteresis, pull-up, mixing, two at the threshold; one shunt for both.
  expect(resistors.reduce((sum, { perKit }) => sum + perKit, 0)).toBe(2 * 9 + 1);
  expect(needs.find(({ key }) => key === 'resistor 12000')?.perKit).toBe(4);
  expect(new Set(needs.map(({ key }) => key)).size).toBe(needs.length);
  for (const { key, perKit, uses, spec } of needs)
    if (spec.kind === 'resistor') expect(perKit, key).toBe(uses.length);
});

test('over sixty drawn designs the order counts what the connection list holds, test pins too (seed 31)', () => {
  const kindOf = (kind: OrderSpec['kind']): Body['kind'] | null => {
    switch (kind) {
      case 'timer':
      case 'comparator':
        return 'chip';
      case 'timing capacitor':
        return 'capacitor';
      case 'volume':
        return 'trimmer';
      case 'supply lead':
        return 'supply';
      case 'resistor':
      case 'capacitor':
      case 'trimmer':
      case 'cell':
      case 'diode':
      case 'jack':
      case 'test pin':
        return kind;
      default:
        return null;
    }
  };
  const draw = seededChoices(31);
  for (let i = 0; i < 60; i++) {
    const design = designOf(...draw());
    const counted = (kinds: readonly (readonly [string | null, number])[]) => {
      const sums: Record<string, number> = {};
      // A forced control voltage comes in on a wire of the bench's: nothing to order.
      for (const [kind, count] of kinds)
        if (kind !== null && kind !== 'control lead') sums[kind] = (sums[kind] ?? 0) + count;
      return sums;
    };
    expect(counted(needsOf(design, false).map(({ spec, perKit }) => [kindOf(spec.kind), perKit]))).toEqual(
      counted(connectionsOf(design).parts.map(({ body }) => [body.kind, 1])),
    );
  }
});

test('options change the list: one threshold, no hysteresis, no diode, no capacitor at the jack', () => {
  const bare = designWith({
    voices: { hysteresisOhms: null, rbFixedOhms: 0 },
    output: { mixOhms: null, shuntOhms: null, coupling: null },
    threshold: { arrangement: 'shared' },
    supply: { decoupled: false },
  });
  const needs = needsOf(bare, false);
  const roles = new Set(needs.flatMap(({ uses }) => uses.map(({ role }) => role)));
  for (const role of ['hysteresis', 'input', 'mixing', 'shunt', 'coupling', 'fixed rb', 'reservoir', 'diode'])
    expect(roles, role).not.toContain(role);
  expect(needs.some(({ spec }) => spec.kind === 'socket')).toBe(false);
  const trimmers = needs.filter(({ spec }) => spec.kind === 'trimmer');
  expect(trimmers.reduce((sum, { perKit }) => sum + perKit, 0)).toBe(3);
  const guarded = needsOf(designWith({ supply: { diode: true, kind: 'four-aa', volts: 6 } }), false);
  expect(guarded.find(({ key }) => key === 'supply four-aa')?.perKit).toBe(4);
  expect(guarded.some(({ spec }) => spec.kind === 'diode')).toBe(true);
});

test('the E12 neighbours of a capacitor move the pitch as the handbook formula says', () => {
  const { A } = BENCH_DESIGN.voices;
  const line = needsOf(BENCH_DESIGN, false).find(
    ({ spec }) => spec.kind === 'timing capacitor' && spec.farads === A.capacitor.farads,
  )!;
  const [down, up] = alternatesFor(BENCH_DESIGN, line.spec, line.uses);
  const centsOf = (alternate: typeof down) =>
    alternate!.effects.find((effect) => effect.kind === 'pitch' && effect.voice === 'A');
  // f is as 1/C: 82 → 68 nF and 82 → 100 nF.
  expect(centsOf(down)).toMatchObject({ cents: expect.closeTo(1200 * Math.log2(82 / 68), 6) });
  const rise = centsOf(up)!;
  expect(rise).toMatchObject({ cents: expect.closeTo(1200 * Math.log2(82 / 100), 6) });
  // Turned to the place it names, the trimmer gives the old pitch back.
  if (rise.kind !== 'pitch' || rise.rotation === null) throw new Error('within reach');
  const ohms = 12_000 + 500 + rise.rotation * 49_500;
  const plain = { raOhms: 3900, railVolts: 9, controlVolts: null, discharge: TIMERS.bipolar.discharge };
  const before = cycleOf(astableFrom({ ...plain, rbOhms: 12_000 + 500 + 0.55 * 49_500, farads: 82e-9 }));
  const after = cycleOf(astableFrom({ ...plain, rbOhms: ohms, farads: 100e-9 }));
  expect(after.frequency / before.frequency).toBeCloseTo(1, 6);
});

test('an alternate out of the trimmer’s reach, a chip that wants more volts and a stiffer grade are told', () => {
  const high = designWith({ A: { trimmer: { ...BENCH_DESIGN.voices.A.trimmer, rotation: 0.999 } } });
  const line = needsOf(high, false).find(
    ({ spec }) => spec.kind === 'timing capacitor' && spec.farads === 82e-9,
  )!;
  const [smaller] = alternatesFor(high, line.spec, line.uses);
  expect(smaller!.effects).toContainEqual(expect.objectContaining({ kind: 'pitch', rotation: null }));
  const low = designWith({ timer: 'cmos', supply: { kind: 'four-aa', volts: 4 } });
  const timer = needsOf(low, false)[0]!;
  expect(alternatesFor(low, timer.spec, timer.uses)[0]!.effects).toEqual([
    { kind: 'supply too low', leastVolts: 4.5 },
  ]);
  const cells = needsOf(BENCH_DESIGN, false).find(({ spec }) => spec.kind === 'cell')!;
  const effects = alternatesFor(BENCH_DESIGN, cells.spec, cells.uses).flatMap((other) => other.effects);
  expect(effects).toContainEqual(expect.objectContaining({ kind: 'light', voice: 'B' }));
  expect(neighbours(1e-8, [1, 1.2, 8.2])).toEqual([8.2e-9, 1.2e-8]);
});

test('cautions follow the region and the supply, and every place has words', () => {
  const eu = orderOf(BENCH_DESIGN, DEFAULT_BATCH).cautions;
  expect(eu).toContain('order in the eu');
  expect(eu).toContain('battery transport');
  const mains = designWith({ supply: { kind: 'five-volt', volts: 5 } });
  const uk = orderOf(mains, { ...DEFAULT_BATCH, region: 'uk' }).cautions;
  expect(uk).toContain('order in the uk');
  expect(uk).not.toContain('battery transport');
  for (const place of [...eu, ...uk]) expect(cautionsAt(place).length, place).toBeGreaterThan(0);
});

test('no cell of a table is a formula, and what was written is read back', () => {
  const rows = [
    ['=1+1', '+4', '-2', '@x', '\tz', ' =2'],
    ['say "no"', 'a,b', 'two\nlines', '', 'plain', "it's"],
  ];
  const text = csvText(rows);
  for (const row of text.split('\r\n').slice(0, 1))
    for (const cell of row.split(',')) expect(cell).not.toMatch(/^"?\s*[=+\-@\t]/);
  expect(csvRows(text)).toEqual(rows);
  expect(csvRows('a;b\n"open')).toEqual([['a;b'], ['open']]);
  expect(csvText([[-3, 0.1, null]])).toBe('-3,0.1,\r\n');
});

test('the order as CSV has one row a line between its headings and the total', () => {
  const order = orderOf(BENCH_DESIGN, DEFAULT_BATCH);
  const rows = csvRows(orderCsv(order));
  expect(rows).toHaveLength(order.lines.length + 2);
  expect(rows[0]).toEqual(orderWords.columns);
  for (const row of rows) expect(row).toHaveLength(orderWords.columns.length);
  expect(rows.map(([name]) => name!.replaceAll('\u00A0', ' '))).toContain(
    'Capacitor 82 nF, polyester film, ±10 %, 50 V or more',
  );
});

test('wire is ordered by the metre: each link of the plan with its ends, leads and sleeving of the cells, and offcuts', () => {
  const planned = planBoard(connectionsOf(BENCH_DESIGN), { ...USUAL_WISHES, board: null, effort: 1 });
  if (!planned.ok) throw new Error(planned.refusal.kind);
  const { plan } = planned;
  const lines = [{ key: 'wire leads', stock: 3, packSize: 10, packPrice: 2 }];
  const order = orderOf(BENCH_DESIGN, { ...DEFAULT_BATCH, lines }, plan);
  const line = (key: string) => order.lines.find((one) => one.key === key)!;
  // 2.54 mm a hole, and 6 mm at each end.
  const links = plan.links.reduce(
    (sum, { from, to }) => sum + Math.abs(to.strip - from.strip) * 2.54 + 12,
    0,
  );
  expect(line('wire links').perKit).toBeCloseTo(links / 1000, 9);
  expect(line('wire links').withSpares).toBe(Math.ceil(((30 * links) / 1000) * 1.2));
  // Two cells of two leads; 30 cm and 25 mm each.
  expect(line('wire leads')).toMatchObject({ perKit: 1.2, needed: 36, withSpares: 44, packs: 5, cost: 10 });
  expect(line('wire sleeve').withSpares).toBe(4);
  expect(order.lines.find(({ key }) => key === 'board')!.spec).toEqual({ kind: 'board', size: plan.board });
  const rows = csvRows(orderCsv(order));
  const name = lineWords({ kind: 'wire', wire: 'links' }).name;
  const row = rows.find(([cell]) => cell === name)!;
  expect(row[orderWords.columns.indexOf('With spares')]).toBe(String(line('wire links').withSpares));
  // Without a plan nobody knows the links.
  expect(orderOf(BENCH_DESIGN, DEFAULT_BATCH).lines.some(({ key }) => key === 'wire links')).toBe(false);
});
