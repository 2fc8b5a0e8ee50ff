/** The connection list, cut list and link list as plain text: what is printed beside the drawing. */
import { formatFixed, formatQuantity } from '../../quantity/format.ts';
import { kitWords, leadName, netName, partName, ROLE } from '../../words/kit.ts';
import type { Body, Connections } from '../parts.ts';
import { type BoardPlan, holeName } from './plan.ts';

/** Value of a part that has one, with its unit. */
export function valueText(body: Body): string {
  switch (body.kind) {
    case 'resistor':
    case 'trimmer':
      return formatQuantity(body.ohms, 'Ω');
    case 'capacitor':
      return formatQuantity(body.farads, 'F');
    case 'supply':
    case 'control lead':
      return formatQuantity(body.volts, 'V');
    case 'chip':
    case 'diode':
    case 'cell':
    case 'jack':
    case 'test pin':
      return '';
  }
}

export function connectionText({ parts, nets }: Connections): string {
  const leadCount = new Map(parts.map(({ ref, leads }) => [ref, leads.length]));
  const voiceOf = (voice: string | null): string => (voice === null ? '' : `, ${voice}`);
  return [
    kitWords.connectionList,
    '',
    kitWords.parts,
    ...parts.map(({ ref, role, voice, body }) =>
      [partName(ref).padEnd(7), valueText(body).padEnd(8), `${ROLE[role]}${voiceOf(voice)}`]
        .join('  ')
        .trimEnd(),
    ),
    '',
    kitWords.nets,
    ...nets.map(({ id, joins }) => {
      const names = joins.map(({ ref, lead }) => leadName(ref, lead, leadCount.get(ref) === 1));
      return `${netName(id).padEnd(12)}  ${names.join(' · ')}`;
    }),
    '',
  ].join('\n');
}

export function cutText({ cuts }: BoardPlan): string {
  return [
    kitWords.cutList,
    ...cuts.map((cut, i) => {
      const why =
        cut.under === null
          ? kitWords.betweenNets(netName(cut.nets[0]), netName(cut.nets[1]))
          : kitWords.underChip(cut.under);
      return `X${`${i + 1}`.padEnd(3)} ${holeName(cut).padEnd(5)} ${why}`;
    }),
    '',
  ].join('\n');
}

export function linkText({ links }: BoardPlan): string {
  return [
    kitWords.linkList,
    ...links.map(({ id, from, to, millimetres, net }) => {
      const length = kitWords.linkLength(formatFixed(millimetres, 1, 'mm'));
      return `${id.padEnd(4)} ${holeName(from).padEnd(5)} ${holeName(to).padEnd(5)} ${netName(net).padEnd(9)} ${length}`;
    }),
    '',
  ].join('\n');
}
