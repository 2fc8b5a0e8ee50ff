/** What comes apart when a link is forgotten, or dry at an end: bare wire is what is missed most easily. */
import type { PartPin } from '../circuit/network/netlist.ts';
import type { Hole } from './board/extract.ts';
import type { BoardPlan, Link } from './board/plan.ts';
import { type Joint, jointsOf } from './joints.ts';
import { circuitPin } from './mistakes.ts';

export interface MissingLink {
  readonly id: string;
  /** Pins of the circuit that are cut off from the rest of their net. */
  readonly pins: readonly PartPin[];
}

/** Links that a board cannot do without; one that closes a ring of copper, or leads to a test pin alone, is none. */
export function missingLinks(plan: BoardPlan): readonly MissingLink[] {
  const joints = jointsOf(plan).filter((joint) => joint.kind === 'lead');
  return plan.links.flatMap((link): MissingLink[] => {
    const sides = sidesOf(plan, link);
    if (sides === null) return [];
    const [one, other] = sides.map((isThere) =>
      joints.filter(({ net, at }) => net === link.net && isThere(at)),
    ) as [Lead[], Lead[]];
    const away = weight(plan, one) < weight(plan, other) ? one : other;
    const pins = away.flatMap((joint) => circuitPin(plan, joint) ?? []);
    return pins.length === 0 ? [] : [{ id: link.id, pins }];
  });
}

type Lead = Joint & { readonly kind: 'lead' };

/** The side that is listened to and measured keeps the net's name: where the jack is, then the test pin, then the more. */
function weight(plan: BoardPlan, leads: readonly Lead[]): number {
  const roles = leads.map(({ ref }) => plan.connections.parts.find((part) => part.ref === ref)!.role);
  return leads.length + (roles.includes('jack') ? 1e6 : 0) + (roles.includes('test pin') ? 1e3 : 0);
}

/** Which holes hang on either end of a link once it is gone; null = both ends are still joined. */
function sidesOf(
  plan: BoardPlan,
  link: Link,
): readonly [(at: Hole) => boolean, (at: Hole) => boolean] | null {
  const pieces = plan.pieces.filter(({ net }) => net === link.net);
  const pieceAt = ({ strip, hole }: Hole): number =>
    pieces.findIndex((piece) => piece.strip === strip && piece.from <= hole && hole <= piece.to);
  const others = plan.links.filter(({ net, id }) => net === link.net && id !== link.id);
  const reached = (from: Hole): ReadonlySet<number> => {
    const found = new Set([pieceAt(from)]);
    for (let before = 0; before < found.size; ) {
      before = found.size;
      for (const other of others) {
        const ends = [pieceAt(other.from), pieceAt(other.to)];
        if (ends.some((end) => found.has(end))) for (const end of ends) found.add(end);
      }
    }
    return found;
  };
  const [one, other] = [reached(link.from), reached(link.to)];
  if (one.has(pieceAt(link.to))) return null;
  return [(at) => one.has(pieceAt(at)), (at) => other.has(pieceAt(at))];
}
