/**
 * Reads the nets back from the copper alone: strips, cuts, links, bridges, and the leads in their holes. It knows
 * nothing of the connection list; `differencesFrom` holds the two against each other. Strips run along the board;
 * strip 1, hole 1 lies at the marked corner.
 */
import type { Connections, Join } from '../parts.ts';

export interface Hole {
  readonly strip: number;
  readonly hole: number;
}

/** A board's copper: that many strips of that many holes. */
export interface BoardSize {
  readonly strips: number;
  readonly holes: number;
}

export interface LeadInHole extends Join {
  readonly at: Hole;
}

export interface Copper {
  readonly board: BoardSize;
  /** Each removes the copper at one hole. */
  readonly cuts: readonly Hole[];
  readonly leads: readonly LeadInHole[];
  readonly links: readonly { readonly from: Hole; readonly to: Hole }[];
  /** Solder from a strip to the next one at a hole: none on a good board. */
  readonly bridges?: readonly Hole[];
}

/** A stretch of copper without a cut, first and last hole counted. */
export interface StripPiece {
  readonly strip: number;
  readonly from: number;
  readonly to: number;
}

/** All stretches, strip by strip. A strip cut at its end hole has none there. */
export function stripPieces(board: BoardSize, cuts: readonly Hole[]): StripPiece[] {
  const byStrip = new Map<number, number[]>();
  for (const { strip, hole } of cuts) byStrip.set(strip, [...(byStrip.get(strip) ?? []), hole]);
  const pieces: StripPiece[] = [];
  for (let strip = 1; strip <= board.strips; strip++) {
    let from = 1;
    const ends = [...(byStrip.get(strip) ?? []).sort((a, b) => a - b), board.holes + 1];
    for (const cut of ends) {
      if (cut > from) pieces.push({ strip, from, to: cut - 1 });
      from = cut + 1;
    }
  }
  return pieces;
}

/**
 * Groups of leads that are joined, each sorted, the groups sorted. Leads or links in a hole that is cut or outside
 * the board join nothing.
 */
export function extractNets(copper: Copper): string[][] {
  const { board, cuts, leads, links, bridges = [] } = copper;
  const width = board.holes + 2;
  const indexOf = ({ strip, hole }: Hole): number =>
    strip >= 1 && strip <= board.strips && hole >= 1 && hole <= board.holes ? strip * width + hole : 0;
  // The piece at each hole; 0 = none.
  const pieceAt = new Int32Array((board.strips + 1) * width);
  const pieces = stripPieces(board, cuts);
  for (const [i, { strip, from, to }] of pieces.entries())
    pieceAt.fill(i + 1, strip * width + from, strip * width + to + 1);
  const parent = Int32Array.from({ length: pieces.length + 1 }, (_, i) => i);
  const rootOf = (piece: number): number => {
    let root = piece;
    while (parent[root] !== root) root = parent[root]!;
    return root;
  };
  const join = (a: Hole, b: Hole): void => {
    const [one, other] = [pieceAt[indexOf(a)]!, pieceAt[indexOf(b)]!];
    if (one > 0 && other > 0) parent[rootOf(one)] = rootOf(other);
  };
  for (const { from, to } of links) join(from, to);
  for (const at of bridges) join(at, { strip: at.strip + 1, hole: at.hole });
  const groups = new Map<number, string[]>();
  for (const [i, { ref, lead, at }] of leads.entries()) {
    const piece = pieceAt[indexOf(at)]!;
    const key = piece === 0 ? -1 - i : rootOf(piece);
    const group = groups.get(key);
    if (group) group.push(joinName({ ref, lead }));
    else groups.set(key, [joinName({ ref, lead })]);
  }
  return sorted([...groups.values()]);
}

/** The connection list in the same form. */
export function netsAsGroups(connections: Connections): string[][] {
  return sorted(connections.nets.map(({ joins }) => joins.map(joinName)));
}

export interface Difference {
  readonly kind: 'missing' | 'extra';
  readonly group: readonly string[];
}

/** Groups that only one side has; empty when the copper is what the list says. */
export function differencesFrom(connections: Connections, copper: Copper): Difference[] {
  const wanted = netsAsGroups(connections);
  const found = extractNets(copper);
  const key = (group: readonly string[]): string => group.join('|');
  const [wants, finds] = [new Set(wanted.map(key)), new Set(found.map(key))];
  return [
    ...wanted.filter((group) => !finds.has(key(group))).map((group) => ({ kind: 'missing' as const, group })),
    ...found.filter((group) => !wants.has(key(group))).map((group) => ({ kind: 'extra' as const, group })),
  ];
}

/** A lead as a net's group names it. */
export const joinName = ({ ref, lead }: Join): string => `${ref}.${lead}`;

function sorted(groups: string[][]): string[][] {
  for (const group of groups) group.sort();
  return groups.sort((a, b) => (a[0]! < b[0]! ? -1 : 1));
}
