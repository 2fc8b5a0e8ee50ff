/**
 * Moves nets from strip to strip until the board is cheap: a seeded cooling search from a start that puts each net
 * somewhere. The same demand always gives the same rows.
 */
import { uniformFrom } from '../../quantity/random.ts';
import type { Demand, Wing } from './demand.ts';
import type { LinkRows } from './links.ts';
import type { RowNets } from './row-lists.ts';
import { type RowSpace, rowSpace, type Stack } from './rows.ts';

const HOT = 10;
const COLD = 0.5;
/** Sums of costs differ by less than this when added in another order. */
const ROUNDING = 1e-6;

export interface Rows {
  /** Rows in use, counted from the first one. */
  readonly count: number;
  /** First row of the timer, and of the comparator. */
  readonly chipRows: readonly [number, number];
  /** By wing and row: net beside the chip pin, −1 where there is no chip. */
  readonly stub: readonly [readonly number[], readonly number[]];
  /** By wing and row: net of a free row, or of the copper beyond a stub that is cut short; −1 = none. */
  readonly content: readonly [readonly number[], readonly number[]];
  readonly links: readonly LinkRows[];
  readonly cost: number;
  /** References and nets that nothing was found for; empty when the rows can be built. */
  readonly broken: readonly string[];
}

/** How hot it is at each step; the same for one search after another, so kept. */
function heatsOf(steps: number, hot: number): Float64Array {
  if (heatsKept.steps !== steps || heatsKept.hot !== hot) {
    const heats = Float64Array.from({ length: steps }, (_, step) => hot * (COLD / hot) ** (step / steps));
    heatsKept = { steps, hot, heats };
  }
  return heatsKept.heats;
}
let heatsKept = { steps: 0, hot: 0, heats: new Float64Array() };

/** A search for rows that can be asked to go on. */
export class RowSearch {
  readonly #space: RowSpace;
  readonly #moves: Moves;
  readonly #uniform: () => number;

  /** Rows for a demand, within a number of strips. `seed` is the search's, not the design's. */
  constructor(demand: Demand, mostRows: number, stack: Stack, seed: number) {
    this.#uniform = uniformFrom(seed);
    this.#space = rowSpace(demand, mostRows, stack);
    start(this.#space, demand, stack);
    this.#moves = movesIn(this.#space, demand, this.#uniform);
  }

  /** Cools down once more, over so many moves. */
  cool(steps: number, hot: number = HOT): void {
    const space = this.#space;
    let cost = space.cost();
    space.accept();
    let best = cost;
    const kept: RowNets = [space.content[0].slice(), space.content[1].slice()];
    const heats = heatsOf(steps, hot);
    let heat = hot;
    /** Drawn at most once a move, as soon as it is sure that the move makes the board dearer. */
    let luck = 1;
    let isDrawn = false;
    const isTooDear = (atLeast: number): boolean => {
      if (atLeast <= cost + ROUNDING) return false;
      if (!isDrawn) luck = this.#uniform();
      isDrawn = true;
      return atLeast > cost - heat * Math.log(luck) + ROUNDING;
    };
    for (let step = 0; step < steps; step++) {
      if (!this.#moves.move()) continue;
      heat = heats[step]!;
      isDrawn = false;
      const next = space.cost(isTooDear);
      if (next <= cost || (isDrawn ? luck : this.#uniform()) < Math.exp((cost - next) / heat)) {
        cost = next;
        space.accept();
        if (cost < best - 1e-9) {
          best = cost;
          for (const wing of [0, 1] as const) kept[wing].set(space.content[wing]);
        }
      } else this.#moves.undo();
    }
    space.putAll(kept);
  }

  get cost(): number {
    return this.#space.cost();
  }

  get rows(): Rows {
    return cropped(this.#space);
  }
}

/** Nets that both wings share get whole rows; then each wing's own; then what tied trimmers need besides. */
function start(space: RowSpace, demand: Demand, { between, upper }: Stack): void {
  const { content, stub, wanted, chipRows, total } = space;
  const first = upper === 'timer' ? chipRows[0] + demand.chips[0].strips : chipRows[0] - between;
  const middle = first + between / 2;
  // From the rows between the chips outward.
  const order = Array.from({ length: total }, (_, row) => row)
    .filter((row) => stub[0][row]! < 0)
    .sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  const isFree = (wing: Wing, row: number): boolean => content[wing][row]! < 0;
  const present = (wing: Wing, net: number): boolean => wanted[wing][net]! || stub[wing].includes(net);
  const whole = (net: number, row: number | undefined): void => {
    if (row === undefined) return;
    space.put(0, row, net);
    space.put(1, row, net);
  };
  whole(demand.nets.indexOf('ground'), first + between - 1);
  whole(demand.nets.indexOf('mix'), first + between - 2);
  whole(demand.nets.indexOf('rail'), first);
  for (const [net] of demand.nets.entries())
    if (present(0, net) && present(1, net) && !content[0].includes(net))
      whole(
        net,
        order.find((row) => isFree(0, row) && isFree(1, row)),
      );
  for (const wing of [0, 1] as const) {
    const put = (net: number): void => {
      const row = order.find((each) => isFree(wing, each));
      if (row !== undefined) space.put(wing, row, net);
    };
    // A rheostat's tied wiper and end go below the timer, beside its lower capacitor pin (6 on the left, 8 on the right).
    const pitch = demand.trimmers.find((each) => each.wing === wing && each.part.role === 'pitch')!;
    const timerEnd = chipRows[0] + demand.chips[0].strips;
    for (const row of wing === 0 ? [timerEnd - 1, timerEnd] : [timerEnd, timerEnd + 1])
      space.put(wing, row, pitch.nets[1]);
    for (const [net] of demand.nets.entries())
      if (wanted[wing][net] && !stub[wing].includes(net) && !content[wing].includes(net)) put(net);
  }
}

interface Moves {
  /** Makes a move at random; false when it changed nothing. */
  readonly move: () => boolean;
  readonly undo: () => void;
}

function movesIn(space: RowSpace, demand: Demand, uniform: () => number): Moves {
  const { content, stub, wanted } = space;
  const rows = Array.from({ length: space.total }, (_, row) => row);
  const freeRows = rows.filter((row) => stub[0][row]! < 0);
  const movableIn = (wing: Wing): number[] =>
    rows.filter((row) => stub[wing][row]! < 0 || demand.splittable[stub[wing][row]!]);
  const movable = [movableIn(0), movableIn(1)] as const;
  const undo: number[] = [];
  const set = (wing: Wing, row: number, net: number): void => {
    const before = content[wing][row]!;
    if (before === net) return;
    undo.push(wing, row, before);
    space.put(wing, row, net);
  };
  const pick = (from: readonly number[]): number => from[Math.floor(uniform() * from.length)]!;

  const swapRows = (): void => {
    const [one, other] = [pick(freeRows), pick(freeRows)];
    for (const wing of [0, 1] as const) {
      const held = content[wing][one]!;
      set(wing, one, content[wing][other]!);
      set(wing, other, held);
    }
  };
  /** Takes a free row out and puts it in elsewhere; the free rows between move up by one. */
  const insertRow = (): void => {
    const [from, to] = [Math.floor(uniform() * freeRows.length), Math.floor(uniform() * freeRows.length)];
    const step = from < to ? 1 : -1;
    for (const wing of [0, 1] as const) {
      const held = content[wing][freeRows[from]!]!;
      for (let i = from; i !== to; i += step) set(wing, freeRows[i]!, content[wing][freeRows[i + step]!]!);
      set(wing, freeRows[to]!, held);
    }
  };
  const swapInWing = (wing: Wing): void => {
    const [one, other] = [pick(movable[wing]), pick(movable[wing])];
    const held = content[wing][one]!;
    if (held === content[wing][other]) return;
    set(wing, one, content[wing][other]!);
    set(wing, other, held);
  };
  /** Another strip for a net that has one, or one strip of several away. */
  const addOrDrop = (wing: Wing): void => {
    const row = pick(movable[wing]);
    const held = content[wing][row]!;
    if (held < 0) {
      const net = Math.floor(uniform() * demand.nets.length);
      if (wanted[wing][net]) set(wing, row, net);
    } else if (stub[wing].includes(held) || content[wing].indexOf(held) !== content[wing].lastIndexOf(held))
      set(wing, row, -1);
  };
  /** A strip of a net, away from a row, that is not one copper with the other wing's. */
  const spareCell = (wing: Wing, net: number, middle: number): number | null => {
    for (let row = 0; row < space.total; row++) {
      if (content[wing][row] !== net || Math.abs(row - middle) <= 1) continue;
      if (content[wing === 0 ? 1 : 0][row] !== net) return row;
    }
    return null;
  };
  const emptyCell = (wing: Wing, middle: number): number | null => {
    const empty = movable[wing].filter(
      (row) => content[wing][row]! < 0 && stub[wing][row]! < 0 && Math.abs(row - middle) > 1,
    );
    return empty.length === 0 ? null : pick(empty);
  };
  /** Gives a trimmer three rows in a row, and what lay there the places its nets had. */
  const moveTrimmer = (): void => {
    const { wing, nets } = demand.trimmers[Math.floor(uniform() * demand.trimmers.length)]!;
    const middle = pick(movable[wing]);
    const turned = uniform() < 0.5 ? 1 : -1;
    for (let leg = -1; leg <= 1; leg++) {
      const row = middle + leg * turned;
      const net = nets[leg + 1]!;
      if (space.netAt(wing, row) === net || !movable[wing].includes(row)) continue;
      const held = content[wing][row]!;
      const from = spareCell(wing, net, middle) ?? (held < 0 ? null : emptyCell(wing, middle));
      set(wing, row, net);
      if (from !== null) set(wing, from, held);
    }
  };

  return {
    move: () => {
      undo.length = 0;
      const kind = uniform();
      const wing: Wing = uniform() < 0.5 ? 0 : 1;
      if (kind < 0.15) swapRows();
      else if (kind < 0.25) insertRow();
      else if (kind < 0.4) moveTrimmer();
      else if (kind < 0.8) swapInWing(wing);
      else addOrDrop(wing);
      return undo.length > 0;
    },
    undo: () => {
      for (let i = undo.length - 3; i >= 0; i -= 3) space.put(undo[i] as Wing, undo[i + 1]!, undo[i + 2]!);
      space.refuse();
    },
  };
}

function cropped(space: RowSpace): Rows {
  const { stub, content, chipRows, total } = space;
  const isUsed = (row: number): boolean =>
    stub[0][row]! >= 0 || content[0][row]! >= 0 || content[1][row]! >= 0;
  const used = Array.from({ length: total }, (_, row) => row).filter(isUsed);
  const [first, last] = [used[0]!, used[used.length - 1]!];
  const part = (values: Int8Array): number[] => Array.from(values.subarray(first, last + 1));
  return {
    count: last - first + 1,
    chipRows: [chipRows[0] - first, chipRows[1] - first],
    stub: [part(stub[0]), part(stub[1])],
    content: [part(content[0]), part(content[1])],
    links: space.links().map((link) => ({ ...link, from: link.from - first, to: link.to - first })),
    cost: space.cost(),
    broken: space.broken(),
  };
}
