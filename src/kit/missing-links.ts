/** What comes apart when a link is forgotten, or dry at an end: bare wire is what is missed most easily. */
import type { PartPin } from '../circuit/network/netlist.ts';
import { type Copper, extractNets, joinName } from './board/extract.ts';
import { type BoardPlan, copperOf, type Link } from './board/plan.ts';
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
  const copper = copperOf(plan);
  return plan.links.flatMap((link): MissingLink[] => {
    const sides = sidesOf(copper, link);
    if (sides === null) return [];
    const [one, other] = sides.map((names) => joints.filter((joint) => names.has(joinName(joint)))) as [
      Lead[],
      Lead[],
    ];
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

/** Names of the leads on either end of a link once it is gone; null = both ends are still joined. */
function sidesOf(copper: Copper, link: Link): readonly [ReadonlySet<string>, ReadonlySet<string>] | null {
  const ends = [link.from, link.to].map((at, i) => ({ ref: link.id, lead: `end ${i}`, at }));
  const nets = extractNets({
    ...copper,
    links: copper.links.filter((each) => each !== link),
    leads: [...copper.leads, ...ends],
  });
  const [one, other] = ends.map((end) => nets.find((net) => net.includes(joinName(end)))!);
  return one === other ? null : [new Set(one), new Set(other)];
}
