/** The board drawing: where its shapes lie, that its two sides are mirror images, and that its words stay apart. */
import { expect, test } from 'vitest';
import { holeNamed } from '../../src/kit/board/plan.ts';
import { planBoard, USUAL_WISHES } from '../../src/kit/board/plan-board.ts';
import { connectionsOf } from '../../src/kit/connections.ts';
import { lineBox, POLE } from '../../src/views/plots/board-flights.ts';
import { type Box, boxAt, common, coveredBy, placeLabels } from '../../src/views/plots/board-labels.ts';
import { boardShapes, DOT, fitFor, HOLE, pitchOnPaper, pointOf } from '../../src/views/plots/board-shapes.ts';
import { shortValue } from '../../src/words/en-kit.ts';
import { designWith } from '../circuit/building.ts';

const designs = [
  designWith(),
  designWith({ threshold: { arrangement: 'shared' } }),
  designWith({ supply: { diode: true }, output: { coupling: { farads: 10e-6, kind: 'electrolytic' } } }),
];
const plans = designs.map((design) => {
  const planned = planBoard(connectionsOf(design), { ...USUAL_WISHES, board: null, effort: 1 });
  if (!planned.ok) throw new Error(planned.refusal.kind);
  return planned.plan;
});
const NONE = new Map<string, number>();

test('hole C7 lies in the middle of the third strip, seven holes along', () => {
  expect(pointOf(holeNamed('C7')!)).toEqual({ x: 6.5 * HOLE, y: 2.5 * HOLE });
});

test('copper is drawn from end to end but for each cut, which leaves a gap of one hole between its bars', () => {
  for (const plan of plans) {
    const { strips, cuts, board } = boardShapes(plan, 'component', 4, NONE);
    const drawn = strips.reduce((sum, box) => sum + box.right - box.left, 0);
    expect(drawn).toBeCloseTo(plan.board.strips * board.right - plan.cuts.length * HOLE, 6);
    const { wholeStrips } = boardShapes(plan, 'component', 4, NONE);
    expect(wholeStrips.map(({ right, left }) => right - left)).toEqual(
      Array.from({ length: plan.board.strips }, () => board.right),
    );
    for (const { bars } of cuts) expect(bars[1].x1 - bars[0].x1).toBeCloseTo(HOLE, 9);
  }
});

test('the copper side is the component side with left and right exchanged, its rulers still naming the same holes', () => {
  for (const plan of plans) {
    const front = boardShapes(plan, 'component', 4, NONE);
    const back = boardShapes(plan, 'copper', 4, NONE);
    const turned = (x: number) => front.board.right - x;
    for (const [i, { line }] of front.links.entries()) {
      expect(back.links[i]!.line.x1).toBeCloseTo(turned(line.x1), 9);
      expect(back.links[i]!.line.y1).toBe(line.y1);
    }
    for (const [i, { body }] of front.parts.entries()) {
      if (body === null) continue;
      expect(back.parts[i]!.body!.left).toBeCloseTo(turned(body.right), 1);
    }
    for (const { text, x } of front.rulers.holes)
      expect(back.rulers.holes.find((one) => one.text === text)!.x).toBeCloseTo(turned(x), 9);
    expect(back.corner.x).toBe(turned(front.corner.x));
  }
});

test('every part and every link is named, and the words cover one another nowhere at the size they are read at', () => {
  for (const plan of plans) {
    const shapes = boardShapes(plan, 'component', 4, NONE);
    const keys = new Set(shapes.labels.map(({ key }) => key));
    for (const { part } of plan.parts) expect(keys).toContain(part.ref);
    for (const { id } of plan.links) expect(keys).toContain(id);
    // Square units; a hole is 100 of them.
    expect(coveredBy(shapes.labels)).toBeLessThan(2);
    for (const { box } of shapes.labels) {
      expect(box.left).toBeGreaterThanOrEqual(shapes.bounds.left);
      expect(box.right).toBeLessThanOrEqual(shapes.bounds.right);
    }
  }
});

test('the supply’s plus and minus stand at their holes', () => {
  for (const plan of plans) {
    const { poles } = boardShapes(plan, 'component', 4, NONE);
    const supply = plan.parts.find(({ part }) => part.body.kind === 'supply')!;
    expect(poles).toHaveLength(2);
    for (const [i, { name }] of supply.part.leads.entries()) {
      const { x, y } = pointOf(supply.leads[i]!.at);
      const sign = poles.find(({ isPlus }) => isPlus === (name === 'plus'))!;
      expect(Math.hypot(sign.x - x, sign.y - y)).toBeLessThan(HOLE / 2);
    }
  }
});

test('a flying lead leaves the board over no body, no other hole and no other lead, and is named where it ends', () => {
  for (const plan of plans) {
    const { parts, poles, labels } = boardShapes(plan, 'component', 4, NONE);
    const bodies = parts.flatMap(({ body }) => (body === null ? [] : [body]));
    const holes = [
      ...plan.parts.flatMap(({ leads }) => leads.map(({ at }) => pointOf(at))),
      ...plan.links.flatMap(({ from, to }) => [pointOf(from), pointOf(to)]),
    ];
    const wires = parts.flatMap((part) =>
      part.body === null ? part.wires.map((wire) => ({ part, wire })) : [],
    );
    for (const { part, wire } of wires) {
      const box = lineBox(wire, 0.3);
      for (const body of bodies) expect(common(box, body), part.ref).toBe(0);
      const own = part.placed.leads.map(({ at }) => pointOf(at));
      for (const { x, y } of holes)
        if (!own.some((one) => one.x === x && one.y === y))
          expect(common(box, boxAt(x, y, DOT)), part.ref).toBe(0);
      for (const { x, y } of poles) expect(common(box, boxAt(x, y, POLE)), part.ref).toBe(0);
      for (const other of wires)
        if (other.part !== part) expect(common(box, lineBox(other.wire, 0.3)), part.ref).toBe(0);
    }
    for (const { part, leads, outline } of plan.parts) {
      if (outline !== null) continue;
      const written = labels
        .filter(({ lines }) => lines[0]!.includes(part.ref))
        .map(({ lines }) => lines[0]!);
      expect(written, part.ref).toHaveLength(leads.length);
      if (part.body.kind === 'supply')
        expect(written.map((text) => /[+−]/.exec(text)![0]).toSorted()).toEqual(['+', '−']);
    }
  }
});

test('a text that fits goes inside its body; one that does not goes beside it, clear of what stands there', () => {
  const body: Box = { left: 0, top: 0, right: 20, bottom: 20 };
  const bounds: Box = { left: -100, top: -100, right: 100, bottom: 100 };
  const wanted = { key: 'R1', body, own: [], texts: [['R1', '12k']], isOutside: false };
  const [inside] = placeLabels([wanted], [{ box: body, weight: 1, key: 'R1' }], bounds, 4);
  expect(inside!.x).toBe(10);
  const small = { ...wanted, body: { left: 0, top: 0, right: 4, bottom: 4 } };
  const right = { box: { left: 4, top: -20, right: 60, bottom: 20 }, weight: 5, key: null };
  const [beside] = placeLabels([small], [right], bounds, 4);
  expect(beside!.box.right).toBeLessThanOrEqual(4);
});

test('a drawing fits the width it is given where its words allow, on screen and on paper', () => {
  const plan = plans[0]!;
  const widthOf = ({ pitch, textSize }: ReturnType<typeof fitFor>): number => {
    const { bounds } = boardShapes(plan, 'component', (textSize / pitch) * HOLE, NONE);
    return ((bounds.right - bounds.left) * pitch) / HOLE;
  };
  for (const width of [900, 1200]) {
    expect(widthOf(fitFor(plan, width, 12))).toBeLessThanOrEqual(width);
    expect(fitFor(plan, width, 12).textSize).toBe(12);
  }
  // Narrower than the words allow: all of it shrinks, but never to words too small to read.
  const least = widthOf(fitFor(plan, 1, 12)) / (10 / 12);
  const close = fitFor(plan, least * 0.9, 12);
  expect(widthOf(close)).toBeLessThanOrEqual(least * 0.9 + 1e-6);
  expect(close.textSize).toBeCloseTo(12 * 0.9, 6);
  expect(fitFor(plan, 320, 12).textSize).toBeCloseTo(10, 6);
  const pitch = pitchOnPaper(plan, 90, 2.2);
  const { bounds } = boardShapes(plan, 'component', (2.2 / pitch) * HOLE, NONE);
  expect(((bounds.right - bounds.left) * pitch) / HOLE).toBeLessThanOrEqual(90.001);
});

test.each([
  [3900, '3k9'],
  [12_000, '12k'],
  [470, '470'],
  [6.8e-8, '68n'],
  [4.7e-9, '4n7'],
  [1e-6, '1µ'],
  [1e-4, '100µ'],
  [1_500_000, '1M5'],
])('%d is written %s', (value, text) => {
  expect(shortValue(value)).toBe(text);
});
