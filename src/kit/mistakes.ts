/** The places of a plan where one mistake can be made, and what each does to the circuit. */

import type { PartPin } from '../circuit/network/netlist.ts';
import type { NetId, PartRole } from '../words/kit.ts';
import type { Hole } from './board/extract.ts';
import type { BoardPlan } from './board/plan.ts';
import { type Joint, jointsOf } from './joints.ts';
import type { Trouble } from './kit-tasks.ts';
import type { Body } from './parts.ts';

/** Two nets that come together at a place. */
export interface Meeting {
  readonly at: Hole;
  readonly nets: readonly [NetId, NetId];
}

export const asTrouble = ({ nets: [one, other] }: Meeting): Trouble => ({ kind: 'joined', one, other });

/** Cuts that join two nets when they are forgotten, by strip and hole. */
export function forgottenCuts(plan: BoardPlan): readonly Meeting[] {
  return plan.cuts
    .filter(({ nets: [left, right] }) => left !== right)
    .map(({ strip, hole, nets }) => ({ at: { strip, hole }, nets }));
}

/** Neighbouring pieces of copper of two nets, once for each pair of nets: solder runs where two joints are near. */
export function bridges(plan: BoardPlan): readonly Meeting[] {
  const joints = jointsOf(plan);
  const found = new Map<string, { readonly meeting: Meeting; readonly gap: number }>();
  for (const above of plan.pieces)
    for (const below of plan.pieces) {
      if (below.strip !== above.strip + 1) continue;
      const [from, to] = [Math.max(above.from, below.from), Math.min(above.to, below.to)];
      if (from > to || above.net === null || below.net === null || above.net === below.net) continue;
      const at = { strip: above.strip, hole: nearestPair(joints, above.strip, from, to) };
      const nets = [above.net, below.net] as const;
      const key = [...nets].sort().join('|');
      const gap = gapAt(joints, at);
      const known = found.get(key);
      if (known === undefined || gap < known.gap) found.set(key, { meeting: { at, nets }, gap });
    }
  return [...found.values()]
    .map(({ meeting }) => meeting)
    .sort((a, b) => a.at.strip - b.at.strip || a.at.hole - b.at.hole);
}

/** Holes from a place to the nearest joints on its strip and on the next, added. */
function gapAt(joints: readonly Joint[], { strip, hole }: Hole): number {
  const nearest = (row: number): number =>
    Math.min(...joints.flatMap(({ at }) => (at.strip === row ? [Math.abs(at.hole - hole)] : [])));
  return nearest(strip) + nearest(strip + 1);
}

/** The hole between two where the joints above and below lie nearest. */
function nearestPair(joints: readonly Joint[], strip: number, from: number, to: number): number {
  let best = { hole: from, gap: Number.POSITIVE_INFINITY };
  for (let hole = from; hole <= to; hole++) {
    const gap = gapAt(joints, { strip, hole });
    if (gap < best.gap) best = { hole, gap };
  }
  return best.hole;
}

export interface DryJoint {
  readonly joint: Joint & { readonly kind: 'lead' };
  readonly trouble: Trouble;
}

/** Joints of parts that do something in the circuit; the part is named as the circuit names it: what it does, and for whom. */
export function dryJoints(plan: BoardPlan): readonly DryJoint[] {
  return jointsOf(plan).flatMap((joint) => {
    if (joint.kind !== 'lead') return [];
    const pin = circuitPin(plan, joint);
    return pin === null ? [] : [{ joint, trouble: { kind: 'opened', ...pin } as const }];
  });
}

/** A lead as the circuit names it; null = the circuit does without: a test pin, the jack. */
export function circuitPin(plan: BoardPlan, { ref, lead }: DryJoint['joint']): PartPin | null {
  const { role, voice, body } = plan.connections.parts.find((part) => part.ref === ref)!;
  if (role === 'test pin' || role === 'jack') return null;
  return { part: voice === null ? role : `${role} ${voice}`, pin: pinOf(body, role, lead) };
}

/** The circuit numbers the leads of all capacitors but the reservoir, and has a control lead's voltage behind `plus`. */
function pinOf(body: Body, role: PartRole, lead: string): string {
  if (body.kind === 'control lead') return 'plus';
  if (body.kind !== 'capacitor' || role === 'reservoir') return lead;
  return lead === 'plus' ? '1' : lead === 'minus' ? '2' : lead;
}
