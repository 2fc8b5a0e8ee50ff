/**
 * Where along a line its name stands freest: tried above and beneath it at many places, away from every other line and
 * from the names that stand already. Pixels in, pixels out; y grows downwards; no drawing.
 */

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Height of a line at an x; null where it is not drawn. */
export type Course = (x: number) => number | null;

export interface Named {
  readonly course: Course;
  /** Where the line runs. */
  readonly from: number;
  readonly to: number;
  readonly width: number;
  readonly height: number;
}

const PLACES = 24;
const SAMPLES = 9;
/** From the line to the name's nearest edge. */
const AWAY = 5;
/** More room than this is no better. */
const ENOUGH = 26;

/** The freest box for a name, within `frame`; null where the line is too short for any. */
export function calmPlace(
  { course, from, to, width, height }: Named,
  others: readonly Course[],
  taken: readonly Box[],
  frame: Box,
): Box | null {
  const first = Math.max(from, frame.left);
  const last = Math.min(to, frame.right) - width;
  if (last < first) return null;
  let best: Box | null = null;
  let most = Number.NEGATIVE_INFINITY;
  for (let place = 0; place <= PLACES; place++) {
    const left = first + ((last - first) * place) / PLACES;
    const heights = spots(left, width).flatMap((x) => course(x) ?? []);
    if (heights.length === 0) continue;
    const tops = [Math.min(...heights) - AWAY - height, Math.max(...heights) + AWAY];
    for (const top of tops) {
      const box = { left, right: left + width, top, bottom: top + height };
      if (box.top < frame.top || box.bottom > frame.bottom) continue;
      const free = Math.min(ENOUGH, clearance(box, others), ...taken.map((other) => apart(box, other)));
      if (free > most + 1e-9) {
        most = free;
        best = box;
      }
    }
  }
  return best;
}

/** Whether nothing runs through a box and nothing stands in it. */
export const isFree = (box: Box, others: readonly Course[], taken: readonly Box[]): boolean =>
  clearance(box, others) > 0 && taken.every((other) => apart(box, other) > 0);

function spots(left: number, width: number): readonly number[] {
  return Array.from({ length: SAMPLES }, (_, i) => left + (width * i) / (SAMPLES - 1));
}

/** From a box to the nearest line, up or down; negative where one runs through it. */
function clearance(box: Box, courses: readonly Course[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const x of spots(box.left, box.right - box.left))
    for (const course of courses) {
      const y = course(x);
      if (y === null) continue;
      least = Math.min(least, y < box.top ? box.top - y : y > box.bottom ? y - box.bottom : -1);
    }
  return least;
}

function apart(a: Box, b: Box): number {
  const across = Math.max(a.left - b.right, b.left - a.right);
  const down = Math.max(a.top - b.bottom, b.top - a.bottom);
  return Math.max(across, down);
}
