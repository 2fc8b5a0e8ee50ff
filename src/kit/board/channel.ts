/**
 * One wing of the board as a channel: what is taken, and whether something more fits. Columns `k` are counted from
 * the row of chip pins outward, rows downward; lengths in holes.
 */
import type { Stance } from './bodies.ts';

/** A rectangle, in rows and columns. */
export interface Box {
  readonly rows: readonly [number, number];
  readonly columns: readonly [number, number];
}

export interface WingHole {
  readonly row: number;
  readonly k: number;
}

export interface WingLead extends WingHole {
  readonly name: string;
}

export interface WingItem {
  readonly kind: 'part' | 'link';
  /** Reference of a part; name of the net of a link. */
  readonly ref: string;
  readonly stance: Stance | 'edge' | 'pin' | 'link';
  readonly leads: readonly WingLead[];
  readonly body: Box;
  /** All it takes up, wires and legs too. */
  readonly taken: readonly Box[];
}

/** Bodies may touch. */
const TOUCH = 0.03;
const WIRE = 0.1;

/** Rows and columns that are told apart: from so many before the first one; of rows, so many. */
const ROWS_BEFORE = 8;
const ROWS = 72;
const COLUMNS_BEFORE = 64;
/** Bodies at the edge reach no further beyond it. */
const COLUMNS_BEYOND = 8;
/** Numbers kept of a box: first and last row, first and last column. */
const BOX = 4;

export class Channel {
  readonly items: WingItem[] = [];
  /** By column: the boxes that reach into it, number after number. */
  readonly #columns: number[][] = [];
  /** A bit for each hole that is taken. */
  readonly #holes: Int32Array;
  /** Numbers of 32 bits to a row. */
  readonly #words: number;
  /** By row: the column of the cut that ends a chip's short copper, once known. */
  readonly #cuts = new Map<number, number>();
  /** Columns beyond this are not on the board. */
  readonly edge: number;
  /** First column: between the rows of pins there are some of both wings. */
  readonly first: number;
  /** Bodies reach no nearer to the other wing than this. */
  readonly #innermost: number;

  constructor(edge: number, first: number, innermost: number) {
    this.edge = edge;
    this.first = first;
    this.#innermost = innermost;
    this.#words = Math.ceil((COLUMNS_BEFORE + edge + COLUMNS_BEYOND) / 32);
    this.#holes = new Int32Array(ROWS * this.#words);
  }

  /** Another channel in which the same lies. */
  copy(): Channel {
    const copy = new Channel(this.edge, this.first, this.#innermost);
    copy.items.push(...this.items);
    for (let at = 0; at < this.#columns.length; at++) copy.#columns[at] = this.#columns[at]?.slice() ?? [];
    copy.#holes.set(this.#holes);
    for (const [row, k] of this.#cuts) copy.#cuts.set(row, k);
    return copy;
  }

  /** Takes room without being an item: chips, kept holes. */
  block(box: Box, holes: readonly WingHole[] = []): void {
    this.#stand(box);
    this.take(holes);
  }

  /** Holes that nothing else may use. */
  take(holes: readonly WingHole[]): void {
    for (const { row, k } of holes) this.#setHole(row, k, true);
  }

  put(item: WingItem): void {
    this.items.push(item);
    for (const box of item.taken) this.#stand(box);
    this.take(item.leads);
  }

  /** Takes back what was put last, down to a number of items. */
  takeBack(count: number): void {
    while (this.items.length > count) {
      const { taken, leads } = this.items.pop()!;
      for (const { columns } of taken)
        for (let at = columnOf(columns[0]); at <= columnOf(columns[1]); at++)
          this.#columns[at]!.length -= BOX;
      for (const { row, k } of leads) this.#setHole(row, k, false);
    }
  }

  cut(row: number, k: number): void {
    this.#cuts.set(row, k);
    this.#setHole(row, k, true);
  }

  isTaken(row: number, k: number): boolean {
    const word = this.#wordOf(row, k);
    return word >= 0 && (this.#holes[word]! & (1 << (k & 31))) !== 0;
  }

  cutAt(row: number): number | null {
    return this.#cuts.get(row) ?? null;
  }

  get cuts(): { row: number; k: number }[] {
    return [...this.#cuts].map(([row, k]) => ({ row, k }));
  }

  /** Whether an item fits so many columns further out than it says. */
  fits({ leads, taken }: WingItem, out = 0): boolean {
    for (let i = 0; i < leads.length; i++) {
      const { row } = leads[i]!;
      const k = leads[i]!.k + out;
      if (k < this.first || k > this.edge || this.isTaken(row, k) || this.#isCovered(row, k)) return false;
    }
    for (let i = 0; i < taken.length; i++) {
      const { rows, columns } = taken[i]!;
      if (!this.#isFree(rows[0], rows[1], columns[0] + out, columns[1] + out)) return false;
    }
    return true;
  }

  #isCovered(row: number, k: number): boolean {
    const boxes = this.#columns[columnOf(k)];
    if (boxes === undefined) return false;
    for (let i = 0; i < boxes.length; i += BOX)
      if (
        row > boxes[i]! + TOUCH &&
        row < boxes[i + 1]! - TOUCH &&
        k > boxes[i + 2]! + TOUCH &&
        k < boxes[i + 3]! - TOUCH
      )
        return true;
    return false;
  }

  #isFree(top: number, bottom: number, near: number, far: number): boolean {
    if (near < this.#innermost) return false;
    const last = columnOf(far);
    for (let at = columnOf(near); at <= last; at++) {
      const boxes = this.#columns[at];
      if (boxes === undefined) continue;
      for (let i = 0; i < boxes.length; i += BOX)
        if (
          top < boxes[i + 1]! - TOUCH &&
          boxes[i]! < bottom - TOUCH &&
          near < boxes[i + 3]! - TOUCH &&
          boxes[i + 2]! < far - TOUCH
        )
          return false;
    }
    for (let row = Math.ceil(top + TOUCH); row <= bottom - TOUCH; row++)
      for (let k = Math.ceil(near + TOUCH); k <= far - TOUCH; k++)
        // A body may lie over a cut: that is on the other side of the board.
        if (this.isTaken(row, k) && this.#cuts.get(row) !== k) return false;
    return true;
  }

  #stand({ rows, columns }: Box): void {
    for (let at = columnOf(columns[0]); at <= columnOf(columns[1]); at++) {
      const column = this.#columns[at];
      if (column) column.push(rows[0], rows[1], columns[0], columns[1]);
      else this.#columns[at] = [rows[0], rows[1], columns[0], columns[1]];
    }
  }

  #setHole(row: number, k: number, isTaken: boolean): void {
    const word = this.#wordOf(row, k);
    // So far away stands nothing.
    if (word < 0) return;
    if (isTaken) this.#holes[word]! |= 1 << (k & 31);
    else this.#holes[word]! &= ~(1 << (k & 31));
  }

  /** Place of a hole's bit; −1 where it is of no interest. */
  #wordOf(row: number, k: number): number {
    const [down, across] = [row + ROWS_BEFORE, (k + COLUMNS_BEFORE) >> 5];
    if (down < 0 || down >= ROWS || across < 0 || across >= this.#words) return -1;
    return down * this.#words + across;
  }
}

/** An item so many columns further out. */
export function movedOut(item: WingItem, out: number): WingItem {
  const moved = ({ rows, columns }: Box): Box => ({ rows, columns: [columns[0] + out, columns[1] + out] });
  return {
    ...item,
    leads: item.leads.map((lead) => ({ ...lead, k: lead.k + out })),
    body: moved(item.body),
    taken: item.taken.map(moved),
  };
}

/** Place in the list of columns; far beyond the other wing there is nothing to tell apart. */
const columnOf = (k: number): number => Math.max(0, Math.round(k) + 8);

/** A bare wire down a column. */
export function wireBox(from: number, to: number, k: number): Box {
  return { rows: [Math.min(from, to) - WIRE, Math.max(from, to) + WIRE], columns: [k - WIRE, k + WIRE] };
}

/** A body on a column, centred on a row. */
export function bodyBox(row: number, k: number, length: number, width: number): Box {
  return {
    rows: [row - length / 2, row + length / 2],
    columns: [k - width / 2, k + width / 2],
  };
}
