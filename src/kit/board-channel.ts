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

export interface WingLead {
  readonly name: string;
  readonly row: number;
  readonly k: number;
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
  readonly #boxes: Box[] = [];
  readonly #holes = new Set<number>();
  /** By row: the column of the cut that ends a chip's short copper, once known. */
  readonly #cuts = new Map<number, number>();
  /** Columns beyond this are not on the board. */
  readonly edge: number;
  /** First column: on the right the strips between the chips begin one hole before the pins. */
  readonly first: number;
  /** Bodies reach no nearer to the middle than this, where the other wing begins. */
  readonly #innermost: number;

  constructor(edge: number, first: number, innermost: number) {
    this.edge = edge;
    this.first = first;
    this.#innermost = innermost;
  }

  /** Takes room without being an item: chips, kept holes. */
  block(box: Box, leads: readonly WingLead[] = []): void {
    this.#boxes.push(box);
    for (const { row, k } of leads) this.#holes.add(keyOf(row, k));
  }

  put(item: WingItem): void {
    this.items.push(item);
    this.#boxes.push(...item.taken);
    for (const { row, k } of item.leads) this.#holes.add(keyOf(row, k));
  }

  /** Takes back what was put last, down to a number of items. */
  takeBack(count: number): void {
    for (const item of this.items.splice(count)) {
      this.#boxes.length -= item.taken.length;
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
      for (const box of this.#boxes) if (covers(box, row, k)) return false;
    }
    for (const taken of item.taken) {
      if (taken.columns[0] < this.#innermost) return false;
      for (const box of this.#boxes) if (overlap(taken, box)) return false;
      const [top, bottom] = taken.rows;
      const [near, far] = taken.columns;
      for (let row = Math.ceil(top + TOUCH); row <= bottom - TOUCH; row++)
        for (let k = Math.ceil(near + TOUCH); k <= far - TOUCH; k++)
          if (this.#holes.has(keyOf(row, k)) && !this.#cutIs(row, k)) return false;
    }
    return true;
  }

  /** A body may lie over a cut: that is on the other side of the board. */
  #cutIs(row: number, k: number): boolean {
    return this.#cuts.get(row) === k;
  }
}

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
