/**
 * One wing of the board as a channel: what is taken, and whether something more fits. Columns `k` are counted from
 * the row of chip pins outward, rows downward; lengths in holes.
 */
import type { Stance } from './board-bodies.ts';

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

export class Channel {
  readonly items: WingItem[] = [];
  /** By column: what reaches into it. */
  readonly #columns: Box[][] = [];
  readonly #holes = new Set<number>();
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
  }

  /** Takes room without being an item: chips, kept holes. */
  block(box: Box, holes: readonly WingHole[] = []): void {
    this.#stand(box);
    this.take(holes);
  }

  /** Holes that nothing else may use. */
  take(holes: readonly WingHole[]): void {
    for (const { row, k } of holes) this.#holes.add(keyOf(row, k));
  }

  put(item: WingItem): void {
    this.items.push(item);
    for (const box of item.taken) this.#stand(box);
    this.take(item.leads);
  }

  /** Takes back what was put last, down to a number of items. */
  takeBack(count: number): void {
    for (const item of this.items.splice(count).reverse()) {
      for (const box of item.taken)
        for (let at = columnOf(box.columns[0]); at <= columnOf(box.columns[1]); at++)
          this.#columns[at]!.splice(this.#columns[at]!.lastIndexOf(box), 1);
      for (const { row, k } of item.leads) this.#holes.delete(keyOf(row, k));
    }
  }

  cut(row: number, k: number): void {
    this.#cuts.set(row, k);
    this.#holes.add(keyOf(row, k));
  }

  isTaken(row: number, k: number): boolean {
    return this.#holes.has(keyOf(row, k));
  }

  cutAt(row: number): number | null {
    return this.#cuts.get(row) ?? null;
  }

  get cuts(): { row: number; k: number }[] {
    return [...this.#cuts].map(([row, k]) => ({ row, k }));
  }

  fits(item: WingItem): boolean {
    for (const { row, k } of item.leads) {
      if (k < this.first || k > this.edge || this.#holes.has(keyOf(row, k))) return false;
      for (const box of this.#columns[columnOf(k)] ?? []) if (covers(box, row, k)) return false;
    }
    for (const taken of item.taken) {
      const [near, far] = taken.columns;
      if (near < this.#innermost) return false;
      for (let at = columnOf(near); at <= columnOf(far); at++)
        for (const box of this.#columns[at] ?? []) if (overlap(taken, box)) return false;
      const [top, bottom] = taken.rows;
      for (let row = Math.ceil(top + TOUCH); row <= bottom - TOUCH; row++)
        for (let k = Math.ceil(near + TOUCH); k <= far - TOUCH; k++)
          if (this.#holes.has(keyOf(row, k)) && !this.#cutIs(row, k)) return false;
    }
    return true;
  }

  #stand(box: Box): void {
    for (let at = columnOf(box.columns[0]); at <= columnOf(box.columns[1]); at++) {
      const column = this.#columns[at];
      if (column) column.push(box);
      else this.#columns[at] = [box];
    }
  }

  /** A body may lie over a cut: that is on the other side of the board. */
  #cutIs(row: number, k: number): boolean {
    return this.#cuts.get(row) === k;
  }
}

/** Place in the list of columns; far beyond the other wing there is nothing to tell apart. */
const columnOf = (k: number): number => Math.max(0, Math.round(k) + 8);

const keyOf = (row: number, k: number): number => row * 256 + k;

function covers({ rows, columns }: Box, row: number, k: number): boolean {
  return row > rows[0] + TOUCH && row < rows[1] - TOUCH && k > columns[0] + TOUCH && k < columns[1] - TOUCH;
}

function overlap(a: Box, b: Box): boolean {
  return (
    a.rows[0] < b.rows[1] - TOUCH &&
    b.rows[0] < a.rows[1] - TOUCH &&
    a.columns[0] < b.columns[1] - TOUCH &&
    b.columns[0] < a.columns[1] - TOUCH
  );
}

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
