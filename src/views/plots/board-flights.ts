/**
 * Flying leads on the board drawing: the way each wire takes from its hole off the board, and where its words stand. A
 * wire runs straight out along its strip; where a body, another lead or a sign is in the way it goes round, between
 * strips where it can. Units as in `board-shapes.ts`. Pure; no drawing.
 */
import type { PlacedPart } from '../../kit/board/plan.ts';
import { type Box, boxAt, common, type Obstacle } from './board-labels.ts';

export interface Line {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** One lead of a part that hangs on wires. */
export interface Flight {
  readonly placed: PlacedPart;
  readonly lead: number;
  /** Of its hole. */
  readonly x: number;
  readonly y: number;
}

export interface Flown extends Flight {
  readonly wires: readonly Line[];
  /** Where its words begin, beside the board. */
  readonly end: { readonly x: number; readonly y: number; readonly isLeft: boolean };
}

/** How far a wire runs off the board, and the room of the strips' letters left of it. */
const FLIGHT = 8;
export const RULER = 11;
/** Half a hole: from the middle of a strip to between two. */
const STEP = 5;
const MOST_BEND = 120;
/** Words of two ends stand at least this far apart; those of the largest text are hardly smaller. */
const APART = 9.5;
const ROUNDS = 3;
/** Room about a wire. */
const CLEAR = 1;
/** Wires and bodies are not drawn over each other; crossing a link is hardly worth a bend. */
const COST = { body: 1000, hole: 120, end: 60, crossed: 2, bent: 2.5, along: 3, unit: 0.1 } as const;

export const lineBox = ({ x1, y1, x2, y2 }: Line, half: number): Box => ({
  left: Math.min(x1, x2) - half,
  right: Math.max(x1, x2) + half,
  top: Math.min(y1, y2) - half,
  bottom: Math.max(y1, y2) + half,
});

/** What lies on the board already. */
export interface InTheWay {
  readonly bodies: readonly Box[];
  /** Soldered leads with their places, and signs beside them. */
  readonly holes: readonly Box[];
  readonly lines: readonly Line[];
}

/** A way off the board for every lead, the outermost first; whoever stands in another's way then looks once more. */
export function flown(flights: readonly Flight[], board: Box, way: InTheWay): readonly Flown[] {
  const middle = (board.left + board.right) / 2;
  const outward = ({ x }: Flight): number => Math.abs(x - middle);
  const inTurn = flights.toSorted((a, b) => outward(b) - outward(a));
  let done: readonly Ranked[] = [];
  for (let round = 0; round < ROUNDS && (round === 0 || done.some(({ cost }) => cost >= COST.end)); round++)
    for (const flight of inTurn) {
      const others = done.filter(({ placed, lead }) => placed !== flight.placed || lead !== flight.lead);
      done = [...others, cheapest(flight, others, board, flight.x <= middle, way)];
    }
  return done;
}

interface Ranked extends Flown {
  readonly cost: number;
}

function cheapest(
  flight: Flight,
  others: readonly Flown[],
  board: Box,
  isLeft: boolean,
  { bodies, holes, lines }: InTheWay,
): Ranked {
  const own = boxAt(flight.x, flight.y, CLEAR);
  const ends = others.filter(({ end }) => end.isLeft === isLeft).map(({ end }) => end.y);
  const solid = [
    ...holes.filter((hole) => common(hole, own) === 0),
    ...others.flatMap(({ wires }) => wires.map((wire) => lineBox(wire, CLEAR))),
  ];
  const thin = lines.filter((line) => !endsAt(line, flight)).map((line) => lineBox(line, 0.5));
  let best: Ranked | null = null;
  for (const { wires, endY, bend } of waysOf(flight, board, isLeft)) {
    const length = bend > 0 ? COST.bent + COST.unit * bend : 0;
    // Ways come shortest first.
    if (best !== null && length >= best.cost) break;
    const boxes = wires.map((wire) => lineBox(wire, CLEAR));
    const hits = (all: readonly Box[]): number =>
      all.filter((box) => boxes.some((part) => common(part, box) > 0)).length;
    const words = { ...besideOf(board, isLeft), top: endY - APART / 2, bottom: endY + APART / 2 };
    const cost =
      length +
      (bend > 0 && isInStrip(endY) ? COST.along : 0) +
      COST.end * ends.filter((y) => Math.abs(y - endY) < APART).length +
      COST.body * (hits(bodies) + bodies.filter((body) => common(body, words) > 0).length) +
      COST.hole * hits(solid) +
      COST.crossed * hits(thin);
    if (best === null || cost < best.cost) {
      const end = { x: isLeft ? board.left - RULER - 4 : board.right + FLIGHT + 1.5, y: endY, isLeft };
      best = { ...flight, wires, end, cost };
    }
  }
  return best!;
}

const endsAt = ({ x1, y1, x2, y2 }: Line, { x, y }: Flight): boolean =>
  (x1 === x && y1 === y) || (x2 === x && y2 === y);

/** At the height of a strip's holes, not between two. */
const isInStrip = (y: number): boolean => Math.abs(y / STEP) % 2 === 1;

/** The strip of paper beside the board where words of leads stand. */
const besideOf = (board: Box, isLeft: boolean): Pick<Box, 'left' | 'right'> =>
  isLeft ? { left: board.left - 100, right: board.left } : { left: board.right, right: board.right + 100 };

/** How far beside its hole a wire may turn, the nearest first. */
const ASIDE = [0, STEP, -STEP, 3 * STEP, -3 * STEP];

/** Straight out; or first up or down, in the hole's own column or between two beside it; the shortest first. */
function* waysOf(
  { x, y }: Flight,
  board: Box,
  isLeft: boolean,
): Iterable<{ readonly wires: readonly Line[]; readonly endY: number; readonly bend: number }> {
  yield { wires: out(x, y, board, isLeft), endY: y, bend: 0 };
  for (let bend = STEP; bend <= MOST_BEND; bend += STEP)
    for (const aside of ASIDE)
      for (const way of [1, -1]) {
        const rise = bend - 2 * Math.abs(aside);
        const endY = y + way * rise;
        if (rise <= 0 || endY <= board.top || endY >= board.bottom) continue;
        const at = x + aside;
        const stub = aside === 0 ? [] : [{ x1: x, y1: y, x2: at, y2: y }];
        const upright = { x1: at, y1: y, x2: at, y2: endY };
        yield { wires: [...stub, upright, ...out(at, endY, board, isLeft)], endY, bend };
      }
}

/** Off the board; on the left past the ruler's letter. */
function out(x: number, y: number, board: Box, isLeft: boolean): readonly Line[] {
  if (!isLeft) return [{ x1: x, y1: y, x2: board.right + FLIGHT, y2: y }];
  const past = board.left - RULER;
  if (!isInStrip(y)) return [{ x1: x, y1: y, x2: past - 3, y2: y }];
  return [
    { x1: x, y1: y, x2: board.left - 2, y2: y },
    { x1: past + 1, y1: y, x2: past - 3, y2: y },
  ];
}

/** Words that stand where leads leave the board; leads that could not but leave side by side share a line. */
export interface FlightEnd {
  /** The first one's. */
  readonly ref: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly isLeft: boolean;
}

export function flightEnds(
  flights: readonly Flown[],
  textOf: (flight: Flown) => string,
): readonly FlightEnd[] {
  const ends = new Map<string, FlightEnd>();
  for (const flight of flights) {
    const { end, placed } = flight;
    const key = `${end.isLeft} ${end.y}`;
    const before = ends.get(key);
    const own = textOf(flight);
    ends.set(key, {
      ref: before?.ref ?? placed.part.ref,
      text: before === undefined ? own : `${before.text}, ${own}`,
      ...end,
    });
  }
  return [...ends.values()];
}

/** Which pole a lead is; '' = it fits either way, or has one only. */
export const poleOf = (lead: string): string => (lead === 'plus' ? '+' : lead === 'minus' ? '−' : '');

/** Half the length of a plus or minus. */
export const POLE = 1.4;

export interface Pole {
  readonly ref: string;
  readonly isPlus: boolean;
  readonly x: number;
  readonly y: number;
}

/** Signs above the holes of leads that must not be changed over. */
export function polesOf(flights: readonly Flight[], dot: number): readonly Pole[] {
  return flights.flatMap(({ placed, lead, x, y }) => {
    const text = poleOf(placed.part.leads[lead]!.name);
    const at = { x, y: y - dot - POLE - 0.7 };
    return text === '' ? [] : [{ ref: placed.part.ref, isPlus: text === '+', ...at }];
  });
}

export const obstacleOf = ({ x, y }: Pole): Obstacle => ({
  box: boxAt(x, y, POLE + 0.4),
  weight: 3,
  key: null,
});
