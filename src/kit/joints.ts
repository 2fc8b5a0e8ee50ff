/** Every joint of a board, numbered in the order of the build steps, with what lies in its hole. */
import type { NetId } from '../words/kit.ts';
import type { Hole } from './board/extract.ts';
import type { BoardPlan, PlacedPart } from './board/plan.ts';
import { buildSteps } from './build-steps.ts';

export type Joint =
  | {
      readonly kind: 'link';
      readonly number: number;
      readonly at: Hole;
      readonly net: NetId;
      readonly ref: string;
    }
  | {
      readonly kind: 'lead';
      readonly number: number;
      readonly at: Hole;
      readonly net: NetId;
      readonly ref: string;
      readonly lead: string;
      /** The part has no other lead. */
      readonly isOnly: boolean;
    };

const keyOf = ({ strip, hole }: Hole): string => `${strip}.${hole}`;

export function jointsOf(plan: BoardPlan): readonly Joint[] {
  const links = new Map(plan.links.map((link) => [link.id, link]));
  const leads = new Map(
    plan.parts.flatMap(({ part, leads: placed }) =>
      placed.map(({ at, lead }) => [keyOf(at), { part, lead }] as const),
    ),
  );
  return buildSteps(plan).flatMap(({ joints }) =>
    joints.map(({ number, at, ref }): Joint => {
      const link = links.get(ref);
      if (link) return { kind: 'link', number, at, net: link.net, ref };
      // No two leads share a hole, and every joint that is no link's is a lead's.
      const { part, lead } = leads.get(keyOf(at))!;
      const { net } = part.leads.find(({ name }) => name === lead)!;
      return { kind: 'lead', number, at, net, ref, lead, isOnly: part.leads.length === 1 };
    }),
  );
}

/** Parts in the order in which they are soldered. */
export function solderingOrder(plan: BoardPlan): readonly PlacedPart[] {
  const placed = new Map(plan.parts.map((one) => [one.part.ref, one]));
  const refs = jointsOf(plan).flatMap(({ kind, ref }) => (kind === 'lead' ? [ref] : []));
  return [...new Set(refs)].map((ref) => placed.get(ref)!);
}
