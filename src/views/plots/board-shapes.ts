/**
 * A board plan as shapes: where each strip, cut, link, part and text lies. A hole is 10 units; (0, 0) is the board's
 * marked corner, half a hole from hole A1. Seen from either side; from the copper side it is mirrored. Pure; no drawing.
 */
import type { Hole } from '../../kit/board/extract.ts';
import { type BoardPlan, mirrored, type PlacedPart, stripName } from '../../kit/board/plan.ts';
import type { Body } from '../../kit/parts.ts';
import { formatNumber } from '../../quantity/format.ts';
import { shortValue } from '../../words/en-kit.ts';
import { partName } from '../../words/kit.ts';
import {
  type Flown,
  flightEnds,
  flown,
  type Line,
  lineBox,
  obstacleOf,
  type Pole,
  poleOf,
  polesOf,
  RULER,
} from './board-flights.ts';
import {
  type Box,
  boxAt,
  type Obstacle,
  type Placed,
  placeLabels,
  textWidth,
  type Wanted,
} from './board-labels.ts';

export const HOLE = 10;
export type Side = 'component' | 'copper';

export interface PartShape {
  readonly placed: PlacedPart;
  /** Key in `ref` and in labels. */
  readonly ref: string;
  readonly body: Box | null;
  readonly isRound: boolean;
  /** Wires from the body to its holes; flying leads run off the board. */
  readonly wires: readonly Line[];
}

export interface BoardShapes {
  readonly side: Side;
  readonly board: Box;
  /** All that is drawn, texts and overhanging parts too. */
  readonly bounds: Box;
  /** Copper between cuts; and as it is bought, before any cut. */
  readonly strips: readonly Box[];
  readonly wholeStrips: readonly Box[];
  readonly cuts: readonly {
    readonly bars: readonly [Line, Line];
    readonly isUnderChip: boolean;
  }[];
  readonly links: readonly { readonly id: string; readonly line: Line }[];
  readonly parts: readonly PartShape[];
  readonly kept: readonly { readonly x: number; readonly y: number }[];
  readonly widened: readonly { readonly x: number; readonly y: number }[];
  readonly labels: readonly Placed[];
  /** Plus or minus at the holes of the supply's leads. */
  readonly poles: readonly Pole[];
  /** Of strips down the left, of holes along the top. */
  readonly rulers: {
    readonly holesAt: number;
    readonly strips: readonly { readonly text: string; readonly y: number }[];
    readonly holes: readonly { readonly text: string; readonly x: number; readonly isFifth: boolean }[];
  };
  readonly corner: { readonly x: number; readonly y: number };
}

const xOf = (hole: number): number => (hole - 0.5) * HOLE;
const yOf = (strip: number): number => (strip - 0.5) * HOLE;
export const pointOf = ({ strip, hole }: Hole): { readonly x: number; readonly y: number } => ({
  x: xOf(hole),
  y: yOf(strip),
});

/** Half the height of a strip's copper. */
const COPPER = 3.4;
/** Half the length of a cut's end bars. */
const BAR = 3.4;
/** Radius of a soldered lead. */
export const DOT = 1.7;

/** What is written on or beside a part. */
function bodyText(body: Body): string {
  switch (body.kind) {
    case 'resistor':
    case 'trimmer':
      return shortValue(body.ohms);
    case 'capacitor':
      return shortValue(body.farads);
    case 'chip':
    case 'diode':
    case 'cell':
    case 'jack':
    case 'test pin':
      return '';
    case 'supply':
    case 'control lead':
      return `${formatNumber(body.volts, 3)} V`;
  }
}

/** Shapes of a plan; `size` of the texts in units (a hole is 10). */
export function boardShapes(
  plan: BoardPlan,
  side: Side,
  size: number,
  numbers: ReadonlyMap<string, number>,
): BoardShapes {
  const seen = side === 'component' ? plan : mirrored(plan);
  const { strips, holes } = seen.board;
  const board: Box = { left: 0, top: 0, right: holes * HOLE, bottom: strips * HOLE };
  const drawn = drawnParts(seen, board);
  const { parts, flights } = drawn;
  const links = seen.links.map(({ id, from, to }) => ({ id, line: lineBetween(from, to) }));
  const cuts = seen.cuts.map(({ strip, hole, under }) => ({
    bars: [barAt(hole - 0.5, strip), barAt(hole + 0.5, strip)] as const,
    isUnderChip: under !== null,
  }));
  const bounds = boundsOf(board, drawn, size);
  const labels =
    side === 'component'
      ? componentLabels(seen, drawn, { ...bounds, left: board.left - 1, top: board.top - 2 }, size)
      : copperLabels(seen, board, size, numbers);
  return {
    side,
    board,
    bounds,
    strips: seen.pieces.map(({ strip, from, to }) => copperBox(strip, from, to)),
    wholeStrips: Array.from({ length: strips }, (_, i) => copperBox(i + 1, 1, holes)),
    cuts,
    links,
    parts,
    kept: seen.kept.map(pointOf),
    widened: seen.widened.map(({ at }) => pointOf(at)),
    labels,
    poles: side === 'component' ? polesOf(flights, DOT) : [],
    rulers: {
      holesAt: rulerTop(board, parts),
      strips: Array.from({ length: strips }, (_, i) => ({ text: stripName(i + 1), y: yOf(i + 1) })),
      holes: Array.from({ length: holes }, (_, i) => {
        const named = side === 'component' ? i + 1 : holes - i;
        return { text: String(named), x: xOf(i + 1), isFifth: named % 5 === 0 };
      }),
    },
    corner: { x: side === 'component' ? board.left : board.right, y: board.top },
  };
}

const copperBox = (strip: number, from: number, to: number): Box => ({
  left: (from - 1) * HOLE,
  right: to * HOLE,
  top: yOf(strip) - COPPER,
  bottom: yOf(strip) + COPPER,
});

const barAt = (hole: number, strip: number): Line => ({
  x1: xOf(hole),
  x2: xOf(hole),
  y1: yOf(strip) - BAR,
  y2: yOf(strip) + BAR,
});

function lineBetween(from: Hole, to: Hole): Line {
  const [a, b] = [pointOf(from), pointOf(to)];
  return { x1: a.x, y1: a.y, x2: b.x, y2: b.y };
}

interface DrawnParts {
  readonly parts: readonly PartShape[];
  readonly flights: readonly Flown[];
}

const drawn = new WeakMap<BoardPlan, DrawnParts>();

/** All parts, those that hang on wires with the ways their wires take between the others. Asked for again and again. */
function drawnParts(plan: BoardPlan, board: Box): DrawnParts {
  const known = drawn.get(plan) ?? partsDrawn(plan, board);
  drawn.set(plan, known);
  return known;
}

function partsDrawn(plan: BoardPlan, board: Box): DrawnParts {
  const parts = plan.parts.map(partShape);
  const hung = parts
    .filter(({ body }) => body === null)
    .flatMap(({ placed }) => placed.leads.map(({ at }, lead) => ({ placed, lead, ...pointOf(at) })));
  const flights = flown(hung, board, {
    bodies: parts.flatMap(({ body }) => (body === null ? [] : [body])),
    holes: [
      ...jointsOf(plan).map((at) => dotBox(at, DOT + 0.4)),
      ...polesOf(hung, DOT).map((pole) => obstacleOf(pole).box),
    ],
    lines: [
      ...plan.links.map(({ from, to }) => lineBetween(from, to)),
      ...parts.flatMap(({ wires }) => wires),
    ],
  });
  return {
    parts: parts.map((part) =>
      part.body === null
        ? {
            ...part,
            wires: flights.filter(({ placed }) => placed === part.placed).flatMap(({ wires }) => wires),
          }
        : part,
    ),
    flights,
  };
}

const jointsOf = (plan: BoardPlan): readonly Hole[] => [
  ...plan.parts.flatMap(({ leads }) => leads.map(({ at }) => at)),
  ...plan.links.flatMap(({ from, to }) => [from, to]),
];

function dotBox(at: Hole, half: number): Box {
  const { x, y } = pointOf(at);
  return boxAt(x, y, half);
}

function partShape(placed: PlacedPart): PartShape {
  const { outline, leads, part, standsAt } = placed;
  const ref = part.ref;
  const body: Box | null = outline && {
    left: xOf(outline.x[0]),
    right: xOf(outline.x[1]),
    top: yOf(outline.y[0]),
    bottom: yOf(outline.y[1]),
  };
  const isRound = outline?.shape === 'circle';
  if (body === null) return { placed, ref, body, isRound, wires: [] };
  if (standsAt !== null) {
    const foot = pointOf(standsAt);
    const wires = leads.flatMap(({ at }) => {
      const { x, y } = pointOf(at);
      return x === foot.x && y === foot.y ? [] : [{ x1: foot.x, y1: foot.y, x2: x, y2: y }];
    });
    return { placed, ref, body, isRound, wires };
  }
  const hasWires = placed.stance === 'flat' || placed.stance === 'standing';
  const wires = hasWires ? leads.flatMap(({ at }) => wireTo(body, at)) : [];
  return { placed, ref, body, isRound, wires };
}

/** From the body's edge to a hole outside it. */
function wireTo(body: Box, at: Hole): readonly Line[] {
  const { x, y } = pointOf(at);
  if (y < body.top) return [{ x1: x, y1: y, x2: x, y2: body.top }];
  if (y > body.bottom) return [{ x1: x, y1: body.bottom, x2: x, y2: y }];
  return [];
}

/** The words at the end of one flying lead: the part's value once, its pole next to the board. */
function flyingText({ placed, lead, end }: Flown): string {
  const { ref, body, leads } = placed.part;
  const pole = poleOf(leads[lead]!.name);
  const words = [partName(ref), lead === 0 ? bodyText(body) : ''];
  return (end.isLeft ? [...words, pole] : [pole, ...words]).filter((word) => word !== '').join(' ');
}

function boundsOf(board: Box, { parts, flights }: DrawnParts, size: number): Box {
  let left = board.left - RULER;
  let right = board.right + HOLE;
  for (const { text, x, isLeft } of flightEnds(flights, flyingText)) {
    const room = textWidth(text, size) + size;
    if (isLeft) left = Math.min(left, x - room);
    else right = Math.max(right, x - 1.5 + room);
  }
  const bodies = parts.flatMap(({ body }) => (body === null ? [] : [body]));
  return {
    left: Math.min(left, ...bodies.map((body) => body.left - 2)),
    right: Math.max(right, ...bodies.map((body) => body.right + 2)),
    top: rulerTop(board, parts) - size - 5,
    bottom: Math.max(board.bottom + 4, ...bodies.map((body) => body.bottom + 2)),
  };
}

/** Where the numbers of holes stand: above the board, and above what overhangs it. */
const rulerTop = (board: Box, parts: readonly PartShape[]): number =>
  Math.min(board.top, ...parts.flatMap(({ body }) => (body === null ? [] : [body.top]))) - 6;

function obstaclesOf(plan: BoardPlan, { parts, flights }: DrawnParts): Obstacle[] {
  const dots = jointsOf(plan).map((at): Obstacle => ({ box: dotBox(at, DOT + 0.4), weight: 3, key: null }));
  const bodies = parts.flatMap(({ ref, body }): Obstacle[] =>
    body ? [{ box: body, weight: 1, key: ref }] : [],
  );
  const lines = [
    ...plan.links.map(({ from, to }) => lineBetween(from, to)),
    ...parts.flatMap(({ wires }) => wires),
  ].map((line): Obstacle => ({ box: lineBox(line, 0.8), weight: 2, key: null }));
  const bars = plan.cuts
    .filter(({ under }) => under === null)
    .map(({ strip, hole }): Obstacle => {
      const { x, y } = pointOf({ strip, hole });
      return { box: { left: x - 6, right: x + 6, top: y - BAR, bottom: y + BAR }, weight: 1, key: null };
    });
  return [...dots, ...bodies, ...lines, ...bars, ...polesOf(flights, DOT).map(obstacleOf)];
}

function componentLabels(plan: BoardPlan, drawn: DrawnParts, bounds: Box, size: number): readonly Placed[] {
  const wanted: Wanted[] = [];
  const placed = flyingLabels(drawn.flights, size);
  for (const shape of drawn.parts) {
    const { ref, body } = shape;
    const own = shape.placed.leads.map(({ at }) => dotBox(at, DOT + 0.3));
    if (body === null) continue;
    const value = bodyText(shape.placed.part.body);
    const name = partName(ref);
    const texts = value === '' ? [[name]] : [[name, value], [`${name} ${value}`], [name]];
    wanted.push({ key: ref, body, own, texts, isOutside: shape.isRound && shape.placed.standsAt !== null });
  }
  for (const { id, from, to, millimetres } of plan.links) {
    const line = lineBetween(from, to);
    wanted.push({
      key: id,
      body: { left: line.x1 - 0.8, right: line.x1 + 0.8, top: line.y1 + DOT, bottom: line.y2 - DOT },
      own: [],
      texts: [[String(Math.round(millimetres))]],
      isOutside: true,
    });
  }
  const flying: Obstacle[] = placed.map(({ box }) => ({ box, weight: 6, key: null }));
  const sorted = wanted.toSorted((a, b) => urgency(b) - urgency(a));
  return [...placed, ...placeLabels(sorted, [...obstaclesOf(plan, drawn), ...flying], bounds, size)];
}

/** Big bodies hold their own text and go first; links can be written anywhere along them and go last. */
function urgency({ body, isOutside }: Wanted): number {
  const area = (body.right - body.left) * (body.bottom - body.top);
  return isOutside && body.right - body.left < 3 ? -1 : area;
}

/** Beyond the end of each wire, outside the board. */
function flyingLabels(flights: readonly Flown[], size: number): readonly Placed[] {
  return flightEnds(flights, flyingText).map(({ ref, text, x: end, y, isLeft }) => {
    const width = textWidth(text, size);
    const x = end + (isLeft ? -width / 2 : width / 2);
    return {
      key: ref,
      lines: [text],
      x,
      y,
      isUpright: false,
      box: { left: x - width / 2, right: x + width / 2, top: y - size / 2, bottom: y + size / 2 },
    };
  });
}

/** Numbers of joints beside them. Keys are `strip.hole` as seen. */
function copperLabels(
  plan: BoardPlan,
  bounds: Box,
  size: number,
  numbers: ReadonlyMap<string, number>,
): readonly Placed[] {
  const joints = jointsOf(plan);
  const obstacles = [
    ...joints.map((at) => ({ ...pointOf(at), half: DOT + 0.3 })),
    ...plan.cuts.flatMap(({ strip, hole }) =>
      [hole - 0.5, hole + 0.5].map((end) => ({ ...pointOf({ strip, hole: end }), half: 1.2 })),
    ),
  ].map(({ x, y, half }): Obstacle => ({ box: boxAt(x, y, half), weight: 3, key: null }));
  const wanted = joints.map((at): Wanted => {
    const { x, y } = pointOf(at);
    const key = keyOf(at);
    const named = { strip: at.strip, hole: plan.board.holes + 1 - at.hole };
    return {
      key,
      body: boxAt(x, y, DOT + 0.2),
      own: [],
      texts: [[String(numbers.get(keyOf(named)) ?? '')]],
      isOutside: true,
    };
  });
  return placeLabels(wanted, obstacles, bounds, size);
}

export const keyOf = ({ strip, hole }: Hole): string => `${strip}.${hole}`;

/** Words may shrink to this share of their size before a drawing scrolls instead: 10 px of 12. */
const LEAST_TEXT = 10 / 12;

/** From hole to hole and the texts' size, px. */
export interface Fit {
  readonly pitch: number;
  readonly textSize: number;
}

/**
 * A drawing fitted to a width: wider or closer holes at the wished text size where the words have room, then all of it
 * smaller, down to words that are still read; else it scrolls.
 */
export function fitFor(plan: BoardPlan, width: number, textSize: number): Fit {
  const { strips, holes } = plan.board;
  const board: Box = { left: 0, top: 0, right: holes * HOLE, bottom: strips * HOLE };
  const drawn = drawnParts(plan, board);
  const wide = (pitch: number): number => {
    const { left, right } = boundsOf(board, drawn, (textSize / pitch) * HOLE);
    return ((right - left) * pitch) / HOLE;
  };
  for (let pitch = textSize * 2.5; pitch > textSize * 1.75; pitch -= 0.5)
    if (wide(pitch) <= width) return { pitch, textSize };
  const least = textSize * 1.75;
  const share = Math.min(1, Math.max(LEAST_TEXT, width / wide(least)));
  return { pitch: least * share, textSize: textSize * share };
}

/** How tall a drawing of such a pitch and text is, mm; either side. */
export function heightOnPaper(plan: BoardPlan, pitch: number, textSize: number): number {
  const { strips, holes } = plan.board;
  const board: Box = { left: 0, top: 0, right: holes * HOLE, bottom: strips * HOLE };
  const { top, bottom } = boundsOf(board, drawnParts(plan, board), (textSize / pitch) * HOLE);
  return ((bottom - top) * pitch) / HOLE;
}

/** From hole to hole in mm, so that a drawing is no wider than a width; a centred one, from either side. */
export function pitchOnPaper(
  plan: BoardPlan,
  width: number,
  textSize: number,
  { isCentred = false, most = width / plan.board.holes } = {},
): number {
  const { strips, holes } = plan.board;
  const board: Box = { left: 0, top: 0, right: holes * HOLE, bottom: strips * HOLE };
  const sides = (isCentred ? [plan, mirrored(plan)] : [plan]).map((side) => drawnParts(side, board));
  let pitch = most;
  const wide = (): number => {
    const all = sides.map((drawn) => boundsOf(board, drawn, (textSize / pitch) * HOLE));
    const beside = Math.max(...all.flatMap(({ left, right }) => [-left, right - board.right]));
    const units = isCentred ? board.right + 2 * beside : all[0]!.right - all[0]!.left;
    return (units * pitch) / HOLE;
  };
  while (wide() > width && pitch > 0.5) pitch *= 0.98;
  return pitch;
}
