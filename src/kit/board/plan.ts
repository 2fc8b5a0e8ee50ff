/**
 * A board plan as data, for drawings, lists and build cards. Strips run along the board and are counted from the
 * marked corner, and so are the holes on a strip, seen from the component side: strip 1 is `A`, hole `A1` lies at the
 * corner. Outlines are in holes too: x along the strips, y across them, (1, 1) is hole A1.
 */
import type { NetId } from '../../words/kit.ts';
import type { Connections, Part } from '../parts.ts';
import type { Stance } from './bodies.ts';
import type { BoardSize, Copper, Hole, LeadInHole, StripPiece } from './extract.ts';

/** Sizes stripboard is commonly sold in, strips × holes (mm, from memory): 25×64, 64×95, 95×127, 100×160. */
export const BOARD_SIZES: readonly BoardSize[] = [
  { strips: 9, holes: 25 },
  { strips: 24, holes: 37 },
  { strips: 36, holes: 50 },
  { strips: 39, holes: 62 },
];

export interface Outline {
  readonly shape: 'box' | 'circle';
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

/** What tells one end of a part from the other. */
export type Mark =
  /** The notch at a chip's upper end; pin 1 is left of it. */
  | { readonly kind: 'notch'; readonly pin1: Hole }
  /** The lead that is + of a polarised capacitor. */
  | { readonly kind: 'plus'; readonly at: Hole }
  /** The banded end of a diode. */
  | { readonly kind: 'band'; readonly at: Hole }
  /** Legs of a trimmer: which is which. */
  | { readonly kind: 'legs'; readonly one: Hole; readonly wiper: Hole; readonly three: Hole };

export interface PlacedPart {
  readonly part: Part;
  readonly stance: Stance | 'chip' | 'edge' | 'pin';
  readonly leads: readonly LeadInHole[];
  /** Null for flying leads. */
  readonly outline: Outline | null;
  readonly mark: Mark | null;
  /** Strips between the leads of a part with two. */
  readonly span: number | null;
  /** An upright part's body stands over this hole. */
  readonly standsAt: Hole | null;
}

export interface Link {
  readonly id: string;
  readonly net: NetId;
  readonly from: Hole;
  readonly to: Hole;
  readonly millimetres: number;
}

export type Cut = Hole & {
  /** The chip it lies under; null = elsewhere. */
  readonly under: string | null;
  /** Nets left and right of it. */
  readonly nets: readonly [NetId, NetId];
};

export interface NetPiece extends StripPiece {
  /** Null = unused copper. */
  readonly net: NetId | null;
}

/** A hole to be widened for a lug. */
export interface Widened {
  readonly at: Hole;
  readonly ref: string;
  readonly lead: string;
  readonly millimetres: number;
}

export interface BoardPlan {
  readonly connections: Connections;
  readonly board: BoardSize;
  readonly pieces: readonly NetPiece[];
  /** By strip, then by hole. */
  readonly cuts: readonly Cut[];
  readonly links: readonly Link[];
  readonly parts: readonly PlacedPart[];
  readonly widened: readonly Widened[];
  readonly kept: readonly Hole[];
}

/** Outlines are given to a thousandth of a hole. */
export function rounded(holes: number): number {
  return Math.round(holes * 1000) / 1000;
}

/** The plan's copper as the proof reads it. */
export function copperOf({ board, cuts, links, parts }: Omit<BoardPlan, 'connections'>): Copper {
  return { board, cuts, links, leads: parts.flatMap(({ leads }) => leads) };
}

/** Letters of strips: without I and O, which read as figures; AA after Z. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** `A1`, `Q17`, `AB3`. */
export function holeName({ strip, hole }: Hole): string {
  return `${stripName(strip)}${hole}`;
}

export function stripName(strip: number): string {
  const count = LETTERS.length;
  const round = Math.floor((strip - 1) / count);
  const letter = LETTERS[(strip - 1) % count]!;
  return round === 0 ? letter : LETTERS[round - 1]! + letter;
}

/** Reads a hole's name back; null = no such name. */
export function holeNamed(text: string): Hole | null {
  const match = /^([A-HJ-NP-Z]{1,2})([1-9]\d{0,2})$/.exec(text.trim().toUpperCase());
  if (!match) return null;
  const letters = match[1]!;
  const strip = [...letters].reduce((sum, each) => sum * LETTERS.length + LETTERS.indexOf(each) + 1, 0);
  return { strip, hole: Number(match[2]) };
}

const mirroredHole = <T extends Hole>(board: BoardSize, at: T): T => ({
  ...at,
  hole: board.holes + 1 - at.hole,
});

/**
 * The plan as the copper side shows it: left and right exchanged. Names of holes stay those of the component side,
 * so draw with these and print those. Mirrored twice it is the same.
 */
export function mirrored(plan: BoardPlan): BoardPlan {
  const { board } = plan;
  const at = <T extends Hole>(hole: T): T => mirroredHole(board, hole);
  const turn = (x: number): number => rounded(board.holes + 1 - x);
  return {
    ...plan,
    pieces: plan.pieces.map((piece) => ({ ...piece, from: turn(piece.to), to: turn(piece.from) })),
    cuts: plan.cuts.map((cut) => ({ ...at(cut), nets: [cut.nets[1], cut.nets[0]] })),
    links: plan.links.map((link) => ({ ...link, from: at(link.from), to: at(link.to) })),
    parts: plan.parts.map((placed) => ({
      ...placed,
      leads: placed.leads.map((lead) => ({ ...lead, at: at(lead.at) })),
      outline: placed.outline && {
        ...placed.outline,
        x: [turn(placed.outline.x[1]), turn(placed.outline.x[0])],
      },
      mark: placed.mark && mirroredMark(placed.mark, at),
      standsAt: placed.standsAt && at(placed.standsAt),
    })),
    widened: plan.widened.map((each) => ({ ...each, at: at(each.at) })),
    kept: plan.kept.map(at),
  };
}

function mirroredMark(mark: Mark, at: (hole: Hole) => Hole): Mark {
  switch (mark.kind) {
    case 'notch':
      return { ...mark, pin1: at(mark.pin1) };
    case 'plus':
    case 'band':
      return { ...mark, at: at(mark.at) };
    case 'legs':
      return { ...mark, one: at(mark.one), wiper: at(mark.wiper), three: at(mark.three) };
  }
}

/** Where to hold the probe: hole of the pin of each test point. */
export function testPointHoles(plan: BoardPlan): readonly { id: string; net: NetId; at: Hole }[] {
  const pins = new Map(plan.parts.map(({ part, leads }) => [part.ref, leads[0]!.at]));
  return plan.connections.testPoints.map(({ id, net, pin }) => ({ id, net, at: pins.get(pin)! }));
}
