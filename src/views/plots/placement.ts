/**
 * Where labels go so that none covers another: above the light axis (rows, with stems that must not be crossed), below
 * it (rows), and along a row of ticks (some left out). Pixels in, pixels out; no drawing.
 */

/** A label that stands over a line at `x`, with a stem down to the line. */
export interface Standing {
  readonly key: string;
  readonly x: number;
  /** Half the width of the stem and its marker. */
  readonly half: number;
  readonly width: number;
  /** Rows the text takes. */
  readonly lines: number;
  /** Begin the search next to the line, or at the top. */
  readonly prefer: 'low' | 'high';
}

export type Side = 'right' | 'left' | 'over';

export interface Stood {
  readonly key: string;
  /** The lowest row of the text, 0 = next to the line. */
  readonly row: number;
  readonly side: Side;
  /** Left edge of the text. */
  readonly left: number;
  /** The row the stem reaches up to. */
  readonly stemRow: number;
}

export interface Rect {
  readonly left: number;
  readonly right: number;
  readonly row: number;
}

const GAP = 6;

function candidates(item: Standing, width: number, rows: number): Stood[] {
  const found: Stood[] = [];
  const top = rows - item.lines;
  for (let n = 0; n <= top; n++) {
    const row = item.prefer === 'low' ? n : top - n;
    const right = item.x + item.half + GAP;
    const left = item.x - item.half - GAP - item.width;
    // Beside the stem, the stem reaches the text's upper row, so that the marker sits at its first line.
    const stemRow = row + item.lines - 1;
    if (right + item.width <= width) found.push({ key: item.key, row, side: 'right', left: right, stemRow });
    if (left >= 0) found.push({ key: item.key, row, side: 'left', left, stemRow });
    if (row > 0 && item.width <= width) {
      const middle = Math.min(Math.max(0, item.x - item.width / 2), width - item.width);
      found.push({ key: item.key, row, side: 'over', left: middle, stemRow: row - 1 });
    }
  }
  return found;
}

interface Taken {
  readonly at: Stood;
  readonly item: Standing;
}

function overlaps(a: Taken, b: Taken): boolean {
  const sameRows = a.at.row < b.at.row + b.item.lines && b.at.row < a.at.row + a.item.lines;
  const apart = a.at.left >= b.at.left + b.item.width + GAP || b.at.left >= a.at.left + a.item.width + GAP;
  return sameRows && !apart;
}

/** Does `a`'s stem run through `b`'s text? */
function crosses(a: Taken, b: Taken): boolean {
  if (a.at.stemRow < b.at.row) return false;
  return a.item.x + a.item.half > b.at.left - 2 && a.item.x - a.item.half < b.at.left + b.item.width + 2;
}

/** Does a placed label, or its stem, touch something that stands still? */
export function touches(item: Standing, at: Stood, rect: Rect): boolean {
  const inRow = rect.row >= at.row && rect.row < at.row + item.lines;
  const text = inRow && at.left < rect.right + GAP && at.left + item.width > rect.left - GAP;
  const stem = at.stemRow >= rect.row && item.x + item.half > rect.left && item.x - item.half < rect.right;
  return text || stem;
}

/**
 * Finds a place for every label. Where it stood before (`previous`) is tried first, so that a label does not hop about
 * while its value moves. `fixed` is kept clear if at all possible. If no arrangement is free of stems through text, only
 * texts over texts are ruled out; if even that fails, each label takes its first candidate.
 */
export function placeAbove(
  items: readonly Standing[],
  width: number,
  rows: number,
  fixed: readonly Rect[] = [],
  previous: ReadonlyMap<string, Stood> = new Map(),
): Stood[] {
  const choices = items.map((item) => {
    const all = candidates(item, width, rows);
    const before = previous.get(item.key);
    const same = all.find((one) => one.row === before?.row && one.side === before.side);
    return same === undefined ? all : [same, ...all.filter((one) => one !== same)];
  });
  const search = (
    index: number,
    taken: readonly Taken[],
    strict: boolean,
    clear: readonly Rect[],
  ): readonly Taken[] | null => {
    const item = items[index];
    if (item === undefined) return taken;
    for (const at of choices[index] ?? []) {
      const mine: Taken = { at, item };
      const free = taken.every(
        (other) => !overlaps(mine, other) && !(strict && (crosses(mine, other) || crosses(other, mine))),
      );
      if (!free || clear.some((rect) => touches(item, at, rect))) continue;
      const rest = search(index + 1, [...taken, mine], strict, clear);
      if (rest !== null) return rest;
    }
    return null;
  };
  const found = search(0, [], true, fixed) ?? search(0, [], true, []) ?? search(0, [], false, []);
  if (found !== null) return found.map((one) => one.at);
  return items.map(
    (item, index) =>
      choices[index]?.[0] ?? {
        key: item.key,
        row: index % rows,
        side: 'over',
        left: 0,
        stemRow: index % rows,
      },
  );
}

export interface Hanging {
  readonly x: number;
  readonly width: number;
}

/** Centres each label under its x, inside 0…width, in the first row where it touches no other. In the order given. */
export function placeBelow(
  items: readonly Hanging[],
  width: number,
  gap = GAP * 2,
): { readonly row: number; readonly left: number }[] {
  const rows: { left: number; right: number }[][] = [];
  return items.map((item) => {
    const left = Math.max(0, Math.min(item.x - item.width / 2, width - item.width));
    const right = left + item.width;
    let row = 0;
    while (rows[row]?.some((other) => left < other.right + gap && right > other.left - gap)) row++;
    const line = rows[row] ?? [];
    rows[row] = line;
    line.push({ left, right });
    return { row, left };
  });
}

/** Which labels of an ordered row to print so that none touches: both ends first, then from the left. */
export function keepApart(items: readonly Hanging[], gap = GAP): boolean[] {
  const kept = items.map(() => false);
  const edges = (index: number) => {
    const item = items[index];
    return item === undefined ? null : { left: item.x - item.width / 2, right: item.x + item.width / 2 };
  };
  const fits = (index: number) => {
    const mine = edges(index);
    return (
      mine !== null &&
      kept.every((yes, other) => {
        const theirs = yes ? edges(other) : null;
        return theirs === null || mine.left >= theirs.right + gap || mine.right <= theirs.left - gap;
      })
    );
  };
  for (const index of [0, items.length - 1, ...items.keys()]) {
    if (kept[index] === false && fits(index)) kept[index] = true;
  }
  return kept;
}
