/**
 * The lines and words of a trimmer's paper ring, at its own size in mm: a ring to lay around a trimmer of one turn,
 * centred on (0, 0), straight up in the middle of its travel; a straight scale of turns for one of many. Pure.
 */
import type { TrimmerRing } from '../../kit/trimmer-ring.ts';
import type { TrimmerId } from '../../parts/trimmers.ts';

export interface RingLine {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly isBold: boolean;
}

export interface RingText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** Clockwise. */
  readonly turned: number;
  readonly size: number;
}

export interface RingShapes {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly lines: readonly RingLine[];
  readonly texts: readonly RingText[];
  /** Along the electrical travel: drawn as the voice is. */
  readonly travel: string;
  /** Where to cut the paper; null for a straight scale. */
  readonly cut: { readonly hole: number; readonly rim: number } | null;
  readonly now: { readonly x: number; readonly y: number };
}

/** Radii, mm. Holes let the trimmer through: across the corners of a 6.6 mm square, and a 10 mm round one (from memory). */
const HOLE: Readonly<Record<TrimmerId, number>> = { 'single-turn': 5, 'multi-turn': 0, carbon: 6.5 };
const NOW = 18.5;
const TRAVEL = 22;
const TICKS = 23;
const NAMES = 29.5;
const RIM = 33;
/** Of the word at each stop. */
const STOPS = TRAVEL + 3;
/** By rank. */
const LENGTH = [4, 4, 2.6, 1.5] as const;
const NAME_SIZE = 2.7;
/** Width of a letter, as a share of its size; and room between two names. */
const LETTER = 0.62;
const BETWEEN = 0.8;
const widthOf = (text: string): number => text.length * LETTER * NAME_SIZE;
/** Two ticks nearer than this cannot be told apart, mm. */
const APART = 0.55;

/** A straight scale: what the widest margins of A4 and Letter leave, and what stands above and below its line. */
const LONG = 175;
const ABOVE = 11;
const BELOW = 9;
const ASIDE = 5;

/** How near ticks may stand, in degrees of the trimmer. */
export function leastDegreesFor({
  turns,
  degrees,
}: {
  readonly turns: number;
  readonly degrees: number;
}): number {
  return turns > 1 ? (APART / LONG) * degrees : (APART / TICKS) * (180 / Math.PI);
}

export function ringShapes(ring: TrimmerRing, shown: (name: string) => string, stop: string): RingShapes {
  return ring.turns > 1 ? straightShapes(ring, shown) : roundShapes(ring, shown, stop);
}

const point = (radius: number, degrees: number) => ({
  x: radius * Math.sin((degrees * Math.PI) / 180),
  y: -radius * Math.cos((degrees * Math.PI) / 180),
});

function roundShapes(ring: TrimmerRing, shown: (name: string) => string, stop: string): RingShapes {
  const radial = (from: number, to: number, degrees: number, isBold = false): RingLine => {
    const [a, b] = [point(from, degrees), point(to, degrees)];
    return { x1: a.x, y1: a.y, x2: b.x, y2: b.y, isBold };
  };
  const hole = HOLE[ring.part];
  const half = ring.stopDegrees / 2;
  // The word begins just beyond the stop, however long it is.
  const beyond = ((widthOf(stop) / 2 + BETWEEN) / STOPS) * (180 / Math.PI);
  const named = namedTicks(ring, shown, (degrees) => (degrees * NAMES * Math.PI) / 180);
  const [from, to] = [point(TRAVEL, -ring.degrees / 2), point(TRAVEL, ring.degrees / 2)];
  return {
    left: -RIM - 0.5,
    top: -RIM - 0.5,
    width: 2 * RIM + 1,
    height: 2 * RIM + 1,
    lines: [
      ...ring.ticks.map(({ degrees, rank }) => radial(TICKS, TICKS + LENGTH[rank], degrees, rank === 0)),
      radial(hole, TRAVEL, -half),
      radial(hole, TRAVEL, half),
      radial(hole, NOW, ring.now.degrees, true),
    ],
    texts: [
      ...named.map(({ text, degrees }) => ({
        text,
        ...point(NAMES, degrees),
        turned: degrees,
        size: NAME_SIZE,
      })),
      ...[-1, 1].map((side) => ({
        text: stop,
        ...point(STOPS, side * (half + beyond)),
        turned: side * (half + beyond) + 180,
        size: NAME_SIZE,
      })),
    ],
    travel: `M${from.x} ${from.y}A${TRAVEL} ${TRAVEL} 0 ${ring.degrees > 180 ? 1 : 0} 1 ${to.x} ${to.y}`,
    cut: { hole, rim: RIM },
    now: point(NOW, ring.now.degrees),
  };
}

function straightShapes(ring: TrimmerRing, shown: (name: string) => string): RingShapes {
  const xOf = (degrees: number): number => (degrees / ring.degrees + 0.5) * LONG;
  const named = namedTicks(ring, shown, xOf);
  const turns = Array.from({ length: ring.turns + 1 }, (_, turn) => (turn * LONG) / ring.turns);
  const line = (x: number, y1: number, y2: number, isBold = false): RingLine => ({
    x1: x,
    y1,
    x2: x,
    y2,
    isBold,
  });
  return {
    left: -ASIDE,
    top: -ABOVE,
    width: LONG + 2 * ASIDE,
    height: ABOVE + BELOW,
    lines: [
      ...ring.ticks.map(({ degrees, rank }) => line(xOf(degrees), -1, -1 - LENGTH[rank], rank === 0)),
      ...turns.map((x, turn) => line(x, 1, turn % 5 === 0 ? 3.5 : 2.2)),
    ],
    texts: [
      ...named.map(({ text, degrees }) => ({ text, x: xOf(degrees), y: -7, turned: 0, size: NAME_SIZE })),
      ...turns.map((x, turn) => ({ text: String(turn), x, y: 5.6, turned: 0, size: NAME_SIZE })),
    ],
    travel: `M0 0H${LONG}`,
    cut: null,
    now: { x: xOf(ring.now.degrees), y: 0 },
  };
}

/** From so many names on the finer ones are left out: a few of them among the others would only mislead. */
const ENOUGH = 4;

/** The ticks that have room for their name: the first rank before the next. */
function namedTicks(
  { ticks }: TrimmerRing,
  shown: (name: string) => string,
  placeOf: (degrees: number) => number,
): { readonly text: string; readonly degrees: number }[] {
  const taken: { readonly at: number; readonly half: number }[] = [];
  return [0, 1, 2].flatMap((rank) =>
    (rank === 2 && taken.length >= ENOUGH ? [] : ticks).flatMap((tick) => {
      if (tick.rank !== rank || tick.name === null) return [];
      const text = shown(tick.name);
      const [at, half] = [placeOf(tick.degrees), widthOf(text) / 2];
      if (taken.some((other) => Math.abs(at - other.at) < half + other.half + BETWEEN)) return [];
      taken.push({ at, half });
      return [{ text, degrees: tick.degrees }];
    }),
  );
}
