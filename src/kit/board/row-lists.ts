/** Which rows carry which net, kept up to date move by move for the search for rows. */
import type { Wing } from './demand.ts';

/** Rows of one net in one wing that are told apart. */
export const MOST_PIECES = 8;

/** Rows in memory: by wing and row. Content is a free row's net, or that of the copper beyond a stub cut short. */
export type RowNets = readonly [Int8Array, Int8Array];

/** Keys are `wing · nets + net`. */
export interface RowLists {
  readonly stub: RowNets;
  readonly content: RowNets;
  /** From `key · MOST_PIECES` on the rows of a key: first those that reach the edge, then those cut short at a chip. */
  readonly rows: Int8Array;
  /** By key, how many reach the edge, and how many there are. */
  readonly regular: Int8Array;
  readonly all: Int8Array;
  /** Nets whose copper has changed; who counts changes sets it back to 0. At first all have. */
  readonly touched: Uint8Array;
  /** By wing a bit for each row with content. */
  readonly usedBits: Int32Array;
  /** Puts a net on a row of a wing; −1 takes away what lies there. */
  readonly put: (wing: Wing, row: number, net: number) => void;
  readonly putAll: (content: RowNets) => void;
  /** Brings the lists up to date. */
  readonly list: () => void;
}

/** At most 31 rows: a row is a bit. */
export function rowLists(stub: RowNets, content: RowNets, nets: number): RowLists {
  const total = stub[0].length;
  const rows = new Int8Array(2 * nets * MOST_PIECES);
  const regular = new Int8Array(2 * nets);
  const all = new Int8Array(2 * nets);
  const keyOf = (wing: Wing, net: number): number => wing * nets + net;
  // Rows as bits: of the content by key, of the chip pins by key, and of all content by wing.
  const contentBits = new Int32Array(2 * nets);
  const pinBits = new Int32Array(2 * nets);
  const usedBits = new Int32Array(2);
  for (const wing of [0, 1] as const)
    for (const [row, net] of stub[wing].entries()) if (net >= 0) pinBits[keyOf(wing, net)]! |= 1 << row;

  const touched = new Uint8Array(nets).fill(1);
  /** Nets whose rows are not listed as they lie now. */
  const unlisted = new Uint8Array(nets).fill(1);

  function touch(net: number): void {
    if (net >= 0) touched[net] = unlisted[net] = 1;
  }

  function put(wing: Wing, row: number, net: number): void {
    const before = content[wing][row]!;
    // A pin's net reaches further or less far with what lies beyond it.
    touch(stub[wing][row]!);
    touch(before);
    touch(net);
    content[wing][row] = net;
    const bit = 1 << row;
    if (before >= 0) contentBits[keyOf(wing, before)]! &= ~bit;
    if (net >= 0) {
      contentBits[keyOf(wing, net)]! |= bit;
      usedBits[wing]! |= bit;
    } else usedBits[wing]! &= ~bit;
  }

  function putAll(from: RowNets): void {
    for (const wing of [0, 1] as const)
      for (let row = 0; row < total; row++) put(wing, row, from[wing][row]!);
    touched.fill(1);
  }

  /** Rows of a net in a wing, from the first one down: those that reach the edge, then those cut short at a chip. */
  function listOne(key: number, used: number): void {
    const start = key * MOST_PIECES;
    let at = 0;
    for (
      let bits = contentBits[key]! | (pinBits[key]! & ~used);
      bits !== 0 && at < MOST_PIECES;
      bits &= bits - 1
    )
      rows[start + at++] = 31 - Math.clz32(bits & -bits);
    regular[key] = at;
    for (let bits = pinBits[key]! & used; bits !== 0 && at < MOST_PIECES; bits &= bits - 1)
      rows[start + at++] = 31 - Math.clz32(bits & -bits);
    all[key] = at;
  }

  function list(): void {
    for (let net = 0; net < nets; net++) {
      if (unlisted[net] === 0) continue;
      unlisted[net] = 0;
      listOne(net, usedBits[0]!);
      listOne(nets + net, usedBits[1]!);
    }
  }

  return { stub, content, rows, regular, all, touched, usedBits, put, putAll, list };
}
