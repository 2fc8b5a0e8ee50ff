/**
 * Every joint of a board in the order in which it is soldered: low things first, so that the board lies flat on what
 * is being soldered. Links, flat parts, chips or their sockets, then what stands, and at last what hangs on leads.
 */
import type { NetId } from '../words/kit.ts';
import type { Hole } from './board-extract.ts';
import type { BoardPlan, PlacedPart } from './board-plan.ts';

export type Joint =
  | { readonly kind: 'link'; readonly at: Hole; readonly net: NetId; readonly id: string }
  | {
      readonly kind: 'lead';
      readonly at: Hole;
      readonly net: NetId;
      readonly ref: string;
      readonly lead: string;
      /** The part has no other lead. */
      readonly isOnly: boolean;
    };

function heightRank({ part: { body }, stance }: PlacedPart): number {
  switch (body.kind) {
    case 'resistor':
    case 'diode':
      return stance === 'flat' ? 1 : 3;
    case 'chip':
      return 2;
    case 'test pin':
      return 4;
    case 'capacitor':
      return body.polarised ? 7 : 5;
    case 'trimmer':
      return 6;
    case 'jack':
      return 8;
    case 'cell':
    case 'control lead':
      return 9;
    case 'supply':
      return 10;
  }
}

/** Parts in the order in which they are soldered. */
export function solderingOrder(plan: BoardPlan): readonly PlacedPart[] {
  return plan.parts.toSorted((a, b) => heightRank(a) - heightRank(b));
}

export function jointsOf(plan: BoardPlan): readonly Joint[] {
  const links = plan.links.flatMap(({ id, net, from, to }): Joint[] => [
    { kind: 'link', at: from, net, id },
    { kind: 'link', at: to, net, id },
  ]);
  const leads = solderingOrder(plan).flatMap(({ part, leads: placed }) =>
    placed.map(
      ({ at, ref, lead }): Joint => ({
        kind: 'lead',
        at,
        // Each lead of a placed part is one of its leads.
        net: part.leads.find(({ name }) => name === lead)!.net,
        ref,
        lead,
        isOnly: part.leads.length === 1,
      }),
    ),
  );
  return [...links, ...leads];
}
