/** Where on the board a fault is to be looked for: parts with their holes, pins of a chip, cuts, links. */
import { COMPARATOR_PINS, TIMER_PINS } from '../circuit/network/netlist.ts';
import type { VoiceId } from '../quantity/units.ts';
import type { FaultKind } from '../words/faults.ts';
import type { PartRole } from '../words/kit.ts';
import type { Hole } from './board/extract.ts';
import type { BoardPlan, Link, PlacedPart } from './board/plan.ts';

export type FaultPlace =
  | { readonly kind: 'part'; readonly placed: PlacedPart }
  | { readonly kind: 'lead'; readonly ref: string; readonly lead: string; readonly at: Hole }
  | { readonly kind: 'cut'; readonly at: Hole }
  | { readonly kind: 'link'; readonly link: Link };

export interface NamedFault {
  readonly kind: FaultKind | null;
  readonly voice: VoiceId | null;
  readonly link: string | null;
}

/** Empty when nothing is wrong, or it is no place of the board. */
export function faultPlaces({ kind, voice, link }: NamedFault, plan: BoardPlan): readonly FaultPlace[] {
  if (kind === null) return [];
  if (kind === 'link missing')
    return plan.links.filter(({ id }) => id === link).map((one) => ({ kind: 'link', link: one }));
  const uncut = /^uncut (556|393) (\d+)–\d+$/.exec(kind);
  if (uncut) return cutAt(plan, uncut[1] === '556' ? 'timer' : 'comparator', uncut[2]!);
  const parts = (...roles: readonly PartRole[]): readonly FaultPlace[] =>
    roles.flatMap((role) => partsOf(plan, role, voice).map((placed) => ({ kind: 'part', placed }) as const));
  const pins = (role: 'timer' | 'comparator', ...names: readonly string[]): readonly FaultPlace[] =>
    names.flatMap((name) => leadOf(plan, role, null, name));
  const timer = TIMER_PINS[voice ?? 'A'];
  const comparator = COMPARATOR_PINS[voice ?? 'A'];
  switch (kind) {
    case 'battery flat':
    case 'no supply':
      return parts('supply', 'diode');
    case 'timer unpowered':
      return pins('timer', '14', '7');
    case 'comparator pin 8 open':
      return pins('comparator', '8');
    case 'comparator pin 4 open':
      return pins('comparator', '4');
    case 'cell open':
    case 'cell shorted':
    case 'cells exchanged':
    case 'cell of another grade':
    case 'hum on the lead':
      return parts('cell');
    case 'divider open':
    case 'divider a tenth':
    case 'divider ten times':
      return parts('divider');
    case 'threshold at one end':
    case 'threshold at the other end':
      return parts('threshold');
    case 'wiper open':
      return leadOf(plan, 'threshold', voice, 'wiper');
    case 'above threshold open':
      return parts('above threshold', 'threshold');
    case 'below threshold open':
      return parts('below threshold', 'threshold');
    case 'polarity crossed':
      return pins('comparator', comparator.plus, comparator.minus);
    case 'pull-up missing':
    case 'pull-up a tenth':
    case 'pull-up ten times':
      return parts('pull-up');
    case 'reset joint open':
      return pins('timer', timer.rst);
    case 'bridge comparator output to input':
      return pins('comparator', comparator.out, comparator.minus);
    case 'bridge reset to output':
      return pins('timer', timer.rst, timer.out);
    case 'bridge output to trigger':
      return pins('timer', timer.out, timer.trg);
    case 'bridge discharge to threshold':
      return pins('timer', timer.dis, timer.thr);
    case 'capacitor open':
    case 'capacitor a tenth':
    case 'capacitor ten times':
      return parts('timing');
    case 'charge resistor open':
      return parts('charge');
    case 'rb open':
    case 'rb zero':
      return parts('fixed rb', 'pitch');
    case 'timer reversed':
      return pins('timer', '1');
    case 'comparator reversed':
      return pins('comparator', '1');
    case 'mixing resistor open':
      return parts('mixing');
    case 'output open':
      return parts('coupling', 'jack');
    case 'no decoupling':
      return parts('reservoir', 'timer bypass', 'comparator bypass');
    case 'timer dead':
      return pins('timer', timer.out, timer.dis);
    case 'hysteresis a tenth':
    case 'hysteresis missing':
      return parts('hysteresis');
    default:
      return [];
  }
}

/** Of one voice; of both, or of none in particular, where the fault names none. */
const partsOf = (plan: BoardPlan, role: PartRole, voice: VoiceId | null): readonly PlacedPart[] =>
  plan.parts.filter(
    ({ part }) => part.role === role && (voice === null || part.voice === null || part.voice === voice),
  );

function leadOf(
  plan: BoardPlan,
  role: PartRole,
  voice: VoiceId | null,
  lead: string,
): readonly (FaultPlace & { readonly kind: 'lead' })[] {
  return partsOf(plan, role, voice).flatMap(({ part, leads }) => {
    const at = leads.find((one) => one.lead === lead)?.at;
    return at === undefined ? [] : [{ kind: 'lead', ref: part.ref, lead, at } as const];
  });
}

/** The cut under a chip on the strip of one of its pins. */
function cutAt(plan: BoardPlan, role: 'timer' | 'comparator', pin: string): readonly FaultPlace[] {
  const [found] = leadOf(plan, role, null, pin);
  return plan.cuts
    .filter(({ under, strip }) => under !== null && under === found?.ref && strip === found.at.strip)
    .map(({ strip, hole }) => ({ kind: 'cut', at: { strip, hole } }));
}
