/** Parts, leads and holes of a plan in words. */
import { type BoardPlan, holeName, type PlacedPart } from '../../kit/board/plan.ts';
import { valueText } from '../../kit/board/text.ts';
import { type FaultPlace, faultPlaces, type NamedFault } from '../../kit/fault-places.ts';
import type { Joint } from '../../kit/joints.ts';
import type { Body } from '../../kit/parts.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { leadName, netName, partName } from '../../words/kit.ts';

const words = kitViewWords;

export function valueWords(body: Body): string {
  switch (body.kind) {
    case 'chip':
      return words.body.chip(body.pins);
    case 'diode':
      return words.body.diode;
    case 'cell':
      return words.body.cell;
    case 'jack':
      return words.body.jack;
    default:
      return valueText(body);
  }
}

export function jointWords(joint: Joint): string {
  const [hole, net] = [holeName(joint.at), netName(joint.net)];
  return joint.kind === 'link'
    ? words.board.linkEnd(joint.ref, hole, net)
    : words.board.lead(leadName(joint.ref, joint.lead, joint.isOnly), hole, net);
}

/** Where a fault is looked for: `C1: 1 L9, 2 N9`, `U1 pin 4 in Q12`, `cut at D10`, `link L1 from A7 to Q7`. */
export function placesWords(fault: NamedFault, plan: BoardPlan): string {
  return faultPlaces(fault, plan).map(placeWords).join('; ');
}

function placeWords(place: FaultPlace): string {
  switch (place.kind) {
    case 'part':
      return words.faults.partIn(partName(place.placed.part.ref), holesWords(place.placed));
    case 'lead':
      return words.faults.inHole(leadName(place.ref, place.lead, false), holeName(place.at));
    case 'cut':
      return words.faults.cutAt(holeName(place.at));
    case 'link':
      return words.faults.linkAt(place.link.id, holeName(place.link.from), holeName(place.link.to));
  }
}

/** How a part sits and which way round. */
export function stanceWords({ stance, standsAt, mark }: PlacedPart): string {
  const all: string[] = [words.board.stances[stance]];
  if (standsAt !== null) all.push(words.board.standsOn(holeName(standsAt)));
  if (mark !== null) all.push(markWords(mark));
  return all.join(', ');
}

function markWords(mark: NonNullable<PlacedPart['mark']>): string {
  switch (mark.kind) {
    case 'notch':
      return words.board.pin1At(holeName(mark.pin1));
    case 'plus':
      return words.board.plusAt(holeName(mark.at));
    case 'band':
      return words.board.bandAt(holeName(mark.at));
    case 'legs':
      return words.board.wiperAt(holeName(mark.wiper));
  }
}

/** `1 in C4, 2 in G4`. */
export function holesWords({ part, leads }: PlacedPart): string {
  return leads
    .map(({ lead, at }) =>
      part.leads.length === 1
        ? holeName(at)
        : `${leadName(part.ref, lead, false)
            .replace(`${partName(part.ref)} `, '')
            .replace(`${part.ref}.`, '')} ${holeName(at)}`,
    )
    .join(', ');
}
