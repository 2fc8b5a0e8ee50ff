/**
 * A board plan as shapes: where each strip, cut, link, part and text lies. A hole is 10 units; (0, 0) is the board's
 * marked corner, half a hole from hole A1. Seen from either side; from the copper side it is mirrored. Pure; no drawing.
 */
import type { Hole } from '../../kit/board-extract.ts';
import { type BoardPlan, mirrored, type PlacedPart, stripName } from '../../kit/board-plan.ts';
import type { Body } from '../../kit/parts.ts';
import { formatNumber } from '../../quantity/format.ts';
import { shortValue } from '../../words/en-kit.ts';
import { partName } from '../../words/kit.ts';
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

export interface Line {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

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
  readonly poles: readonly {
    readonly ref: string;
    readonly isPlus: boolean;
    readonly x: number;
    readonly y: number;
  }[];
  /** Of strips down the left, of holes along the top. */
  readonly rulers: {
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
/** How far a flying lead runs off the board. */
const FLIGHT = 8;
const RULER = 11;
/** Half the length of a plus or minus. */
export const POLE = 1.4;

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
  const parts = partShapes(seen, board);
  const links = seen.links.map(({ id, from, to }) => ({ id, line: lineBetween(from, to) }));
  const cuts = seen.cuts.map(({ strip, hole, under }) => ({
    bars: [barAt(hole - 0.5, strip), barAt(hole + 0.5, strip)] as const,
    isUnderChip: under !== null,
  }));
  const bounds = boundsOf(board, parts, size);
  const labels =
    side === 'component'
      ? componentLabels(seen, parts, board, { ...bounds, left: board.left - 1, top: board.top - 2 }, size)
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
    poles: side === 'component' ? polesOf(parts) : [],
    rulers: {
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

const bodyOf = ({ outline }: PlacedPart): Box | null =>
  outline && {
    left: xOf(outline.x[0]),
    right: xOf(outline.x[1]),
    top: yOf(outline.y[0]),
    bottom: yOf(outline.y[1]),
  };

/** Where a lead that leaves at a height is off the board and out from under what overhangs its edge. */
interface Shores {
  readonly board: Box;
  readonly leftAt: (y: number) => number;
  readonly rightAt: (y: number) => number;
}

function shoresOf(parts: readonly PlacedPart[], board: Box): Shores {
  const bodies = parts.flatMap((placed) => bodyOf(placed) ?? []);
  const across = (y: number) => bodies.filter(({ top, bottom }) => y > top && y < bottom);
  return {
    board,
    leftAt: (y) => Math.min(board.left - RULER, ...across(y).map(({ left }) => left)),
    rightAt: (y) => Math.max(board.right, ...across(y).map(({ right }) => right)),
  };
}

function partShapes({ parts }: BoardPlan, board: Box): readonly PartShape[] {
  const shores = shoresOf(parts, board);
  return parts.map((placed) => partShape(placed, shores));
}

function partShape(placed: PlacedPart, shores: Shores): PartShape {
  const { outline, leads, part, standsAt } = placed;
  const ref = part.ref;
  const body = bodyOf(placed);
  const isRound = outline?.shape === 'circle';
  if (body === null) {
    return { placed, ref, body, isRound, wires: leads.flatMap(({ at }) => flightFrom(at, shores)) };
  }
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

/** Off the board to the nearer side; on the left past the ruler's letter. */
function flightFrom(at: Hole, { board, leftAt, rightAt }: Shores): readonly Line[] {
  const { x, y } = pointOf(at);
  if (!isLeftward({ x }, board)) return [{ x1: x, y1: y, x2: rightAt(y) + FLIGHT, y2: y }];
  const past = leftAt(y);
  return [
    { x1: x, y1: y, x2: board.left - 2, y2: y },
    { x1: past + 1, y1: y, x2: past - 3, y2: y },
  ];
}

/** From the body's edge to a hole outside it. */
function wireTo(body: Box, at: Hole): readonly Line[] {
  const { x, y } = pointOf(at);
  if (y < body.top) return [{ x1: x, y1: y, x2: x, y2: body.top }];
  if (y > body.bottom) return [{ x1: x, y1: body.bottom, x2: x, y2: y }];
  return [];
}

const isLeftward = ({ x }: { readonly x: number }, board: Box): boolean =>
  x <= (board.left + board.right) / 2;

/** The ends of flying leads beside the board, and what is written there; leads that leave side by side share a line. */
interface FlightEnd {
  /** The first one's. */
  readonly ref: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly isLeft: boolean;
}

function flightEnds(parts: readonly PartShape[], board: Box): readonly FlightEnd[] {
  const { leftAt, rightAt } = shoresOf(
    parts.map(({ placed }) => placed),
    board,
  );
  const ends = new Map<string, FlightEnd>();
  for (const shape of parts.filter(({ body }) => body === null))
    for (const [i, { at }] of shape.placed.leads.entries()) {
      const { x, y } = pointOf(at);
      const isLeft = isLeftward({ x }, board);
      const key = `${isLeft} ${y}`;
      const before = ends.get(key);
      const own = flyingText(shape, i, isLeft);
      ends.set(key, {
        ref: before?.ref ?? shape.ref,
        text: before === undefined ? own : `${before.text}, ${own}`,
        x: isLeft ? leftAt(y) - 4 : rightAt(y) + FLIGHT + 1.5,
        y,
        isLeft,
      });
    }
  return [...ends.values()];
}

/** Which pole a lead is; '' = it fits either way, or has one only. */
const poleOf = (lead: string): string => (lead === 'plus' ? '+' : lead === 'minus' ? '−' : '');

/** The words at the end of one flying lead: the part's value once, its pole next to the board. */
function flyingText({ placed }: PartShape, lead: number, isLeft: boolean): string {
  const { ref, body, leads } = placed.part;
  const pole = poleOf(leads[lead]!.name);
  const words = [partName(ref), lead === 0 ? bodyText(body) : ''];
  return (isLeft ? [...words, pole] : [pole, ...words]).filter((word) => word !== '').join(' ');
}

/** Signs beside the holes of leads that must not be changed over. */
function polesOf(parts: readonly PartShape[]): BoardShapes['poles'] {
  return parts.flatMap(({ ref, body, placed }) =>
    body === null
      ? placed.leads.flatMap(({ at }, i) => {
          const text = poleOf(placed.part.leads[i]!.name);
          const { x, y } = pointOf(at);
          return text === '' ? [] : [{ ref, isPlus: text === '+', x, y: y - DOT - POLE - 0.7 }];
        })
      : [],
  );
}

function boundsOf(board: Box, parts: readonly PartShape[], size: number): Box {
  let left = board.left - RULER;
  let right = board.right + HOLE;
  for (const { text, x, isLeft } of flightEnds(parts, board)) {
    const room = textWidth(text, size) + size;
    if (isLeft) left = Math.min(left, x - room);
    else right = Math.max(right, x + room);
  }
  for (const { body } of parts) {
    if (body === null) continue;
    left = Math.min(left, body.left - 2);
    right = Math.max(right, body.right + 2);
  }
  const head = RULER + size;
  return { left, right, top: board.top - head, bottom: board.bottom + 4 };
}

function obstaclesOf(plan: BoardPlan, parts: readonly PartShape[]): Obstacle[] {
  const dots = [
    ...plan.parts.flatMap(({ leads }) => leads.map(({ at }) => at)),
    ...plan.links.flatMap(({ from, to }) => [from, to]),
  ].map((at): Obstacle => {
    const { x, y } = pointOf(at);
    return { box: boxAt(x, y, DOT + 0.4), weight: 3, key: null };
  });
  const bodies = parts.flatMap(({ ref, body }): Obstacle[] =>
    body ? [{ box: body, weight: 1, key: ref }] : [],
  );
  const lines = [
    ...plan.links.map(({ from, to }) => lineBetween(from, to)),
    ...parts.flatMap(({ wires }) => wires),
  ].map(
    ({ x1, y1, x2, y2 }): Obstacle => ({
      box: {
        left: Math.min(x1, x2) - 0.8,
        right: Math.max(x1, x2) + 0.8,
        top: Math.min(y1, y2) - 0.8,
        bottom: Math.max(y1, y2) + 0.8,
      },
      weight: 2,
      key: null,
    }),
  );
  const bars = plan.cuts
    .filter(({ under }) => under === null)
    .map(({ strip, hole }): Obstacle => {
      const { x, y } = pointOf({ strip, hole });
      return { box: { left: x - 6, right: x + 6, top: y - BAR, bottom: y + BAR }, weight: 1, key: null };
    });
  const poles = polesOf(parts).map(
    ({ x, y }): Obstacle => ({ box: boxAt(x, y, POLE + 0.4), weight: 3, key: null }),
  );
  return [...dots, ...bodies, ...lines, ...bars, ...poles];
}

function componentLabels(
  plan: BoardPlan,
  parts: readonly PartShape[],
  board: Box,
  bounds: Box,
  size: number,
): readonly Placed[] {
  const wanted: Wanted[] = [];
  const placed = flyingLabels(parts, board, size);
  for (const shape of parts) {
    const { ref, body } = shape;
    const own = shape.placed.leads.map(({ at }) => {
      const { x, y } = pointOf(at);
      return boxAt(x, y, DOT + 0.3);
    });
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
  return [...placed, ...placeLabels(sorted, [...obstaclesOf(plan, parts), ...flying], bounds, size)];
}

/** Big bodies hold their own text and go first; links can be written anywhere along them and go last. */
function urgency({ body, isOutside }: Wanted): number {
  const area = (body.right - body.left) * (body.bottom - body.top);
  return isOutside && body.right - body.left < 3 ? -1 : area;
}

/** Beyond the end of each wire, outside the board. */
function flyingLabels(parts: readonly PartShape[], board: Box, size: number): readonly Placed[] {
  return flightEnds(parts, board).map(({ ref, text, x: end, y, isLeft }) => {
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
  const joints = [
    ...plan.parts.flatMap(({ leads }) => leads.map(({ at }) => at)),
    ...plan.links.flatMap(({ from, to }) => [from, to]),
  ];
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
  const parts = partShapes(plan, board);
  const wide = (pitch: number): number => {
    const { left, right } = boundsOf(board, parts, (textSize / pitch) * HOLE);
    return ((right - left) * pitch) / HOLE;
  };
  for (let pitch = textSize * 2.5; pitch > textSize * 1.75; pitch -= 0.5)
    if (wide(pitch) <= width) return { pitch, textSize };
  const least = textSize * 1.75;
  const share = Math.min(1, Math.max(LEAST_TEXT, width / wide(least)));
  return { pitch: least * share, textSize: textSize * share };
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
  const sides = (isCentred ? [plan, mirrored(plan)] : [plan]).map((side) => partShapes(side, board));
  let pitch = most;
  const wide = (): number => {
    const all = sides.map((parts) => boundsOf(board, parts, (textSize / pitch) * HOLE));
    const beside = Math.max(...all.flatMap(({ left, right }) => [-left, right - board.right]));
    const units = isCentred ? board.right + 2 * beside : all[0]!.right - all[0]!.left;
    return (units * pitch) / HOLE;
  };
  while (wide() > width && pitch > 0.5) pitch *= 0.98;
  return pitch;
}
