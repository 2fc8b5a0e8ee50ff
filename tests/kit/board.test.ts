import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { decodeText } from '../../src/design/decode.ts';
import type { Design } from '../../src/design/design.ts';
import {
  type Copper,
  differencesFrom,
  extractNets,
  type Hole,
  netsAsGroups,
  stripPieces,
} from '../../src/kit/board/extract.ts';
import { plainLayout, ratiosOf } from '../../src/kit/board/plain.ts';
import {
  type BoardPlan,
  copperOf,
  holeName,
  holeNamed,
  mirrored,
  stripName,
  testPointHoles,
} from '../../src/kit/board/plan.ts';
import { planBoard, USUAL_WISHES } from '../../src/kit/board/plan-board.ts';
import { cutText, linkText } from '../../src/kit/board/text.ts';
import { connectionsOf } from '../../src/kit/connections.ts';
import { BENCH_DESIGN, designWith } from '../circuit/building.ts';
import { isSoak } from '../fuzz/count.ts';
import { designOf, pairwiseChoices, seededChoices, singleChoices } from './any-kit.ts';

const SEED = 7;

/** One kit in so many is searched for as long as on the page; the others with one search, which leaves more to chance. */
const LONG_EVERY = 40;

/** In `npm run soak` every pair of choices, and two thousand seeded mixtures; otherwise every choice once, and some. */
const kits = ((): readonly { readonly design: Design; readonly plan: BoardPlan }[] => {
  const next = seededChoices(SEED);
  const choices = [...(isSoak ? pairwiseChoices() : singleChoices())];
  const designs = [
    ...choices.map((choice) => designOf(choice)),
    ...Array.from({ length: isSoak ? 2000 : 65 }, () => designOf(...next())),
  ];
  return designs.map((design, i) => {
    const { resistors } = design.batch.board;
    const effort = i % LONG_EVERY === 0 ? USUAL_WISHES.effort : 1;
    const planned = planBoard(connectionsOf(design), { ...USUAL_WISHES, board: null, resistors, effort });
    if (!planned.ok) throw new Error(`kit ${i}: ${JSON.stringify(planned.refusal)}`);
    return { design, plan: planned.plan };
  });
})();
const plans = kits.map(({ plan }) => plan);
const KITS = plans.length;

const key = ({ strip, hole }: Hole): string => `${strip}.${hole}`;
const holesOf = (plan: BoardPlan): Hole[] => [
  ...plan.parts.flatMap(({ leads }) => leads.map(({ at }) => at)),
  ...plan.links.flatMap(({ from, to }) => [from, to]),
  ...plan.cuts,
];

/** What a look at every plan finds wrong; each as a sentence. */
const faults = (look: (plan: BoardPlan) => readonly string[], some: readonly BoardPlan[] = plans): string[] =>
  some.flatMap((plan, i) => look(plan).map((fault) => `kit ${i}: ${fault}`));

/** Does changed copper still hold the nets of the list? */
function reader(plan: BoardPlan): (change: Partial<Copper>) => boolean {
  const copper = copperOf(plan);
  const wanted = JSON.stringify(netsAsGroups(plan.connections));
  return (change) => JSON.stringify(extractNets({ ...copper, ...change })) === wanted;
}

const everyTenth = plans.filter((_, i) => i % 10 === 0);
const everyTwentieth = plans.filter((_, i) => i % 20 === 0);

test(`the nets read back from the copper are those of the connection list: ${KITS} kits, seed ${SEED}`, () => {
  expect(KITS).toBeGreaterThanOrEqual(90);
  expect(faults((plan) => (reader(plan)({}) ? [] : ['other nets']))).toEqual([]);
  expect(plans.flatMap((plan) => differencesFrom(plan.connections, copperOf(plan)))).toEqual([]);
});

test(`every cut left out is detected, but under a chip between two pins of one net: ${KITS} kits`, () => {
  const look = (plan: BoardPlan): string[] => {
    const isHealthy = reader(plan);
    return plan.cuts
      .filter((cut) => {
        const isIdle = isHealthy({ cuts: plan.cuts.filter((each) => each !== cut) });
        return isIdle !== (cut.under !== null && cut.nets[0] === cut.nets[1]);
      })
      .map((cut) => `cut ${holeName(cut)} does nothing`);
  };
  expect(faults(look)).toEqual([]);
});

test(`every link left out is detected: ${KITS} kits`, () => {
  const look = (plan: BoardPlan): string[] => {
    const isHealthy = reader(plan);
    return plan.links
      .filter((link) => isHealthy({ links: plan.links.filter((each) => each !== link) }))
      .map(({ id }) => `link ${id} does nothing`);
  };
  expect(faults(look)).toEqual([]);
});

test(`a bridge between neighbouring strips is detected wherever it joins two nets: every tenth of ${KITS} kits`, () => {
  let found = 0;
  const look = (plan: BoardPlan): string[] => {
    const isHealthy = reader(plan);
    return neighbours(plan).flatMap(([one, other]) => {
      const [a, b] = [netAt(plan, one), netAt(plan, other)];
      const joinsTwo = a !== null && b !== null && a !== b;
      if (joinsTwo) found++;
      return isHealthy({ bridges: [one] }) === joinsTwo ? [`bridge at ${holeName(one)}`] : [];
    });
  };
  expect(faults(look, everyTenth)).toEqual([]);
  expect(found).toBeGreaterThan(2 * KITS);
});

test(`a lead moved to the next strip or past a cut is detected wherever that is another net: every twentieth of ${KITS} kits`, () => {
  let found = 0;
  const look = (plan: BoardPlan): string[] => {
    const isHealthy = reader(plan);
    const copper = copperOf(plan);
    const alone = new Set(
      plan.connections.nets.flatMap(({ joins }) =>
        joins.length === 1 ? [`${joins[0]!.ref} ${joins[0]!.lead}`] : [],
      ),
    );
    return copper.leads.flatMap((lead, i) =>
      [
        [1, 0],
        [-1, 0],
        [0, 2],
        [0, -2],
      ].flatMap(([down, along]) => {
        const at = { strip: lead.at.strip + down!, hole: lead.at.hole + along! };
        const there = netAt(plan, at);
        // A pin that is joined to nothing may lie on any copper that holds nothing.
        const isSame =
          there === netAt(plan, lead.at) || (there === null && alone.has(`${lead.ref} ${lead.lead}`));
        if (!isSame) found++;
        const leads = copper.leads.map((each, j) => (j === i ? { ...each, at } : each));
        return isHealthy({ leads }) === isSame ? [] : [`${lead.ref} ${lead.lead} at ${holeName(at)}`];
      }),
    );
  };
  expect(faults(look, everyTwentieth)).toEqual([]);
  expect(found).toBeGreaterThan(5 * KITS);
});

test(`the eleven cuts under the chips are there, between facing pins: ${KITS} kits`, () => {
  const look = ({ cuts, parts }: BoardPlan): string[] => {
    const under = cuts.filter((cut) => cut.under !== null);
    const bare = parts
      .filter(({ stance }) => stance === 'chip')
      .flatMap(({ part, leads }) =>
        leads.slice(0, leads.length / 2).flatMap(({ at }, i) => {
          const facing = leads[leads.length - 1 - i]!.at;
          const between = under.filter(
            (cut) =>
              cut.under === part.ref &&
              cut.strip === at.strip &&
              cut.hole > at.hole &&
              cut.hole < facing.hole,
          );
          const isRight = facing.strip === at.strip && facing.hole === at.hole + 3 && between.length === 1;
          return isRight ? [] : [`${part.ref} row ${i + 1}`];
        }),
      );
    return under.length === 11 ? bare : [...bare, `${under.length} cuts under the chips`];
  };
  expect(faults(look)).toEqual([]);
});

test(`no hole is used twice and all lie on the board: ${KITS} kits`, () => {
  const look = (plan: BoardPlan): string[] => {
    const { strips, holes } = plan.board;
    const used = holesOf(plan);
    const outside = used.filter(({ strip, hole }) => strip < 1 || strip > strips || hole < 1 || hole > holes);
    const twice = used.length - new Set(used.map(key)).size;
    return [
      ...outside.map((hole) => `${holeName(hole)} is outside`),
      ...(twice > 0 ? [`${twice} used twice`] : []),
    ];
  };
  expect(faults(look)).toEqual([]);
});

test(`bodies do not lie on one another, and no lead stands under another part's body: ${KITS} kits`, () => {
  const slack = 0.05;
  const look = ({ parts, links }: BoardPlan): string[] => {
    const holes = [
      ...parts.flatMap(({ part, leads }) => leads.map(({ at }) => ({ at, ref: part.ref }))),
      ...links.flatMap(({ id: ref, from, to }) => [
        { at: from, ref },
        { at: to, ref },
      ]),
    ];
    return parts.flatMap((one, i) => {
      const a = one.outline;
      if (a === null) return [];
      const onBodies = parts
        .slice(i + 1)
        .filter(
          ({ outline: b }) =>
            b !== null &&
            a.x[1] > b.x[0] + slack &&
            b.x[1] > a.x[0] + slack &&
            a.y[1] > b.y[0] + slack &&
            b.y[1] > a.y[0] + slack,
        );
      const foreign = holes.filter(
        ({ ref, at: { strip, hole } }) =>
          hole > a.x[0] + slack &&
          hole < a.x[1] - slack &&
          strip > a.y[0] + slack &&
          strip < a.y[1] - slack &&
          ref !== one.part.ref,
      );
      return [
        ...onBodies.map(({ part }) => `${one.part.ref} lies on ${part.ref}`),
        ...foreign.map(({ at, ref }) => `${ref} at ${holeName(at)} is under ${one.part.ref}`),
      ];
    });
  };
  expect(faults(look)).toEqual([]);
});

test(`flat bodies fit between their leads and links lie straight: ${KITS} kits`, () => {
  const look = ({ parts, links }: BoardPlan): string[] => [
    ...parts
      .filter(({ stance, outline, leads }) => {
        const strips = leads.map(({ at }) => at.strip);
        return (
          stance === 'flat' &&
          (outline!.y[0] < Math.min(...strips) + 0.3 || outline!.y[1] > Math.max(...strips) - 0.3)
        );
      })
      .map(({ part }) => `${part.ref} is longer than its leads`),
    ...links
      .filter(
        ({ from, to, millimetres }) =>
          from.hole !== to.hole || Math.abs(millimetres - (to.strip - from.strip) * 2.54) > 1e-9,
      )
      .map(({ id }) => id),
  ];
  expect(faults(look)).toEqual([]);
});

test(`resistors lie as the board is wished: ${KITS} kits`, () => {
  const count = { 'as they fit': [0, 0], flat: [0, 0], upright: [0, 0] };
  for (const { design, plan } of kits)
    for (const { part, stance, span } of plan.parts)
      if (part.body.kind === 'resistor') {
        count[design.batch.board.resistors][stance === 'upright' ? 1 : 0]!++;
        // Quarter-watt bodies of 6.3 mm: flat from four strips of 2.54 mm, else on end.
        expect(stance).toBe(span! >= 4 ? 'flat' : 'upright');
      }
  expect(count.flat[1]).toBe(0);
  expect(count.flat[0]).toBeGreaterThan(100);
  const share = ([flat, upright]: readonly number[]) => upright! / (flat! + upright!);
  // The others would take links to reach.
  expect(share(count.upright)).toBeGreaterThan(0.65);
  expect(share(count.upright)).toBeGreaterThan(share(count['as they fit']) + 0.2);
});

test(`trimmers have their ends two strips apart and the wiper on the strip between: ${KITS} kits`, () => {
  const look = ({ parts }: BoardPlan): string[] =>
    parts
      .filter(
        ({ mark }) =>
          mark?.kind === 'legs' &&
          (Math.abs(mark.one.strip - mark.three.strip) !== 2 ||
            mark.one.hole !== mark.three.hole ||
            mark.wiper.strip * 2 !== mark.one.strip + mark.three.strip),
      )
      .map(({ part }) => part.ref);
  expect(faults(look)).toEqual([]);
});

test(`the jack hangs over the right edge, its two lugs in the holes to be widened: ${KITS} kits`, () => {
  const look = ({ parts, widened, board }: BoardPlan): string[] => {
    const jack = parts.find(({ part }) => part.ref === 'Jack')!;
    const isRight =
      jack.leads.every(({ at }) => at.hole === board.holes) &&
      jack.outline!.x[1] > board.holes + 1 &&
      widened.map(({ at }) => key(at)).join() === jack.leads.map(({ at }) => key(at)).join();
    return isRight ? [] : ['jack'];
  };
  expect(faults(look)).toEqual([]);
});

test(`mirrored twice a plan is the same, and mirrored it holds the same nets: every tenth of ${KITS} kits`, () => {
  for (const plan of everyTenth) {
    const once = mirrored(plan);
    expect(JSON.stringify(mirrored(once))).toBe(JSON.stringify(plan));
    expect(reader(once)({})).toBe(true);
    const [here, there] = [plan, once].map(({ parts }) => parts[0]!.leads[0]!.at);
    expect(there).toEqual({ strip: here!.strip, hole: plan.board.holes + 1 - here!.hole });
  }
});

test(`every printed coordinate reads back as the hole that is drawn: every tenth of ${KITS} kits`, () => {
  const look = (plan: BoardPlan): string[] => {
    const wrong = holesOf(plan).filter((hole) => {
      const read = holeNamed(holeName(hole));
      return read === null || key(read) !== key(hole);
    });
    const column = (text: string, letter: string, at: number): string =>
      text
        .split('\n')
        .filter((line) => new RegExp(`^${letter}\\d`).test(line))
        .map((line) => line.split(/\s+/)[at])
        .join();
    const [cuts, links] = [cutText(plan), linkText(plan)];
    const isPrinted =
      column(cuts, 'X', 1) === plan.cuts.map(holeName).join() &&
      column(links, 'L', 1) === plan.links.map(({ from }) => holeName(from)).join() &&
      column(links, 'L', 2) === plan.links.map(({ to }) => holeName(to)).join();
    return [...wrong.map((hole) => key(hole)), ...(isPrinted ? [] : ['lists'])];
  };
  expect(faults(look, everyTenth)).toEqual([]);
});

/** The bench design, looked at a little longer. */
const careful = ((): BoardPlan => {
  const planned = planBoard(connectionsOf(BENCH_DESIGN), { ...USUAL_WISHES, board: null, effort: 12 });
  if (!planned.ok) throw new Error(planned.refusal.kind);
  return planned.plan;
})();

test("in the careful build each decoupling capacitor is within five strips of its chip's supply pin", () => {
  const find = (role: string) => careful.parts.find(({ part }) => part.role === role)!;
  for (const chip of ['timer', 'comparator']) {
    const supply = find(chip).leads.at(-1)!.at;
    const rail = find(`${chip} bypass`).leads[0]!.at;
    expect(Math.abs(rail.strip - supply.strip)).toBeLessThanOrEqual(5);
  }
});

test(`each test point has a hole on its net: ${KITS} kits`, () => {
  const look = (plan: BoardPlan): string[] =>
    testPointHoles(plan)
      .filter(({ net, at }) => netAt(plan, at) !== net)
      .map(({ id }) => id);
  expect(faults(look)).toEqual([]);
});

test('strips are lettered without I and O and go on with AA', () => {
  expect([1, 8, 9, 24, 25, 48, 49].map((strip) => holeName({ strip, hole: 3 }))).toEqual([
    'A3',
    'H3',
    'J3',
    'Z3',
    'AA3',
    'AZ3',
    'BA3',
  ]);
  expect([...'ABCDEFGHJKLMNPQRSTUVWXYZ'].map((_, i) => stripName(i + 1)).join('')).toBe(
    'ABCDEFGHJKLMNPQRSTUVWXYZ',
  );
  expect(holeNamed('I4')).toBeNull();
  expect(holeNamed('A0')).toBeNull();
});

test('the same list gives the same plan', () => {
  const once = planBoard(connectionsOf(BENCH_DESIGN), { ...USUAL_WISHES, effort: 2 });
  expect(planBoard(connectionsOf(BENCH_DESIGN), { ...USUAL_WISHES, effort: 2 })).toEqual(once);
});

// By hand: 26 nets; 19 resistors, 8 capacitors and 4 trimmers, four holes for each chip and one at each edge; 22 chip
// pins, of which those on the right first meet V+, DIS B, CAP B, CONT B, GATE B, OUT B, NODE B and PLUS B.
test('the plain layout of the careful build is what its rule gives by hand', () => {
  expect(plainLayout(connectionsOf(BENCH_DESIGN))).toEqual({ strips: 26, holes: 31 + 8 + 2, links: 22 - 8 });
});

test('the careful build takes less board and fewer links than a plain layout', () => {
  const { area, links } = ratiosOf(careful);
  expect(area).toBeLessThan(0.55);
  expect(links).toBeLessThan(0.8);
});

test('the ready designs take, on average, less than seven tenths of a plain layout’s board, and eight of ten links', () => {
  const files = readdirSync('presets').filter((file) => file.endsWith('.json'));
  const ratios = files.map((file) => {
    const decoded = decodeText(readFileSync(`presets/${file}`, 'utf8'));
    if (!decoded.ok) throw new Error(file);
    const planned = planBoard(connectionsOf(decoded.design), { ...USUAL_WISHES, board: null, effort: 6 });
    if (!planned.ok) throw new Error(planned.refusal.kind);
    return ratiosOf(planned.plan);
  });
  const mean = (of: 'area' | 'links'): number =>
    ratios.reduce((sum, each) => sum + each[of], 0) / ratios.length;
  // A ninth of the usual effort; with all of it the bench tells less than six tenths.
  expect(mean('area')).toBeLessThan(0.7);
  expect(mean('links')).toBeLessThan(0.82);
});

test('on a larger board the jack and the leads go out to its edges', () => {
  const planned = planBoard(connectionsOf(BENCH_DESIGN), { ...USUAL_WISHES, effort: 1 });
  if (!planned.ok) throw new Error(planned.refusal.kind);
  const { parts, board } = planned.plan;
  expect(board).toEqual({ strips: 24, holes: 37 });
  const edge = (ref: string): number[] =>
    parts.find(({ part }) => part.ref === ref)!.leads.map(({ at }) => at.hole);
  expect(edge('Jack')).toEqual([37, 37]);
  expect(Math.max(...edge('LDR A'))).toBeLessThanOrEqual(2);
  expect(Math.min(...edge('LDR B'))).toBeGreaterThanOrEqual(36);
});

test('kept holes stay free of leads, cuts and bodies', () => {
  const kept = [
    { strip: 3, hole: 4 },
    { strip: 12, hole: 30 },
    { strip: 22, hole: 8 },
    { strip: 10, hole: 19 },
  ];
  const planned = planBoard(connectionsOf(BENCH_DESIGN), { ...USUAL_WISHES, kept, effort: 2 });
  if (!planned.ok) throw new Error(JSON.stringify(planned.refusal));
  const used = new Set(holesOf(planned.plan).map(key));
  for (const hole of kept) {
    expect(used.has(key(hole))).toBe(false);
    for (const { outline } of planned.plan.parts)
      if (outline)
        expect(
          hole.hole > outline.x[0] &&
            hole.hole < outline.x[1] &&
            hole.strip > outline.y[0] &&
            hole.strip < outline.y[1],
        ).toBe(false);
  }
});

test('a board that is too small is refused with what is needed and the next size that will do', () => {
  const planned = planBoard(connectionsOf(BENCH_DESIGN), {
    ...USUAL_WISHES,
    board: { strips: 9, holes: 25 },
    effort: 1,
  });
  if (planned.ok || planned.refusal.kind !== 'board too small') throw new Error('not refused');
  const { needs, change } = planned.refusal;
  expect(needs.strips).toBeGreaterThan(18);
  expect(change).toEqual({ kind: 'board', size: { strips: 24, holes: 37 } });
});

test('a capacitor that is not made is refused with the kind that is', () => {
  const { coupling } = { coupling: { farads: 100e-6, kind: 'film' as const } };
  const planned = planBoard(connectionsOf(designWith({ output: { coupling } })));
  expect(planned).toMatchObject({
    ok: false,
    refusal: { kind: 'part missing', why: 'too large for film', change: { to: 'electrolytic' } },
  });
});

test('a mark where a chip has to stand is refused with the mark to free, and a whole line of them without one', () => {
  const connections = connectionsOf(BENCH_DESIGN);
  const fitted = planBoard(connections, { ...USUAL_WISHES, board: null, effort: 1 });
  if (!fitted.ok) throw new Error(fitted.refusal.kind);
  const { board, parts } = fitted.plan;
  const wishes = { ...USUAL_WISHES, board, effort: 1 };
  const pin = parts[0]!.leads[3]!.at;
  expect(planBoard(connections, { ...wishes, kept: [pin] })).toMatchObject({
    ok: false,
    refusal: { kind: 'in the way', change: { kind: 'free hole', hole: pin } },
  });
  const line = Array.from({ length: board.strips }, (_, i) => ({ strip: i + 1, hole: pin.hole }));
  expect(planBoard(connections, { ...wishes, kept: line })).toMatchObject({
    ok: false,
    refusal: { kind: 'in the way', change: { kind: 'board' } },
  });
});

/** What the plan says lies at a hole; null = unused copper, or none. */
function netAt(plan: BoardPlan, { strip, hole }: Hole): string | null {
  return (
    plan.pieces.find((each) => each.strip === strip && hole >= each.from && hole <= each.to)?.net ?? null
  );
}

/** One place to bridge for each two stretches of copper that lie side by side. */
function neighbours(plan: BoardPlan): (readonly [Hole, Hole])[] {
  const pieces = stripPieces(plan.board, plan.cuts);
  return pieces.flatMap((one) =>
    pieces
      .filter((other) => other.strip === one.strip + 1 && other.from <= one.to && other.to >= one.from)
      .map((other): readonly [Hole, Hole] => {
        const hole = Math.max(one.from, other.from);
        return [
          { strip: one.strip, hole },
          { strip: other.strip, hole },
        ];
      }),
  );
}
