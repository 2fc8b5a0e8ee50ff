/**
 * What the board plan has to house, wing by wing: chips stand in the middle, one above the other across their cuts,
 * voice A in the left wing and voice B in the right, as the pins of both chips lie. What serves both may stand in
 * either; where, the search for rows decides.
 */

import type { Lie } from '../../design/batch.ts';
import type { NetId } from '../../words/kit.ts';
import type { Connections, Part } from '../parts.ts';
import {
  CHIP_COLUMNS,
  chipStrips,
  type NoBody,
  TRIMMER_BODY,
  type TrimmerBody,
  type TwoLeads,
  twoLeadsOf,
} from './bodies.ts';

/** 0 = left of the chips (voice A), 1 = right (voice B). */
export type Wing = 0 | 1;

export interface TwoLeadDemand {
  readonly part: Part;
  readonly wing: Wing;
  readonly nets: readonly [number, number];
  readonly body: TwoLeads;
  /** Capacitors may use the short copper beside a chip where the strip goes on as another net. */
  readonly mayBeInner: boolean;
  /** Place in the demand's chips of the one it decouples; null = none. */
  readonly decouples: 0 | 1 | null;
}

export interface TrimmerDemand {
  readonly part: Part;
  readonly wing: Wing;
  /** End 1, wiper, end 3. */
  readonly nets: readonly [number, number, number];
  readonly body: TrimmerBody;
}

/** Leads soldered at the board's edge. */
export interface EdgeDemand {
  readonly part: Part;
  readonly wing: Wing;
  readonly nets: readonly number[];
}

export interface PinDemand {
  readonly part: Part;
  /** Null = in either wing. */
  readonly wing: Wing | null;
  readonly net: number;
}

export interface Chip {
  readonly part: Part;
  readonly strips: number;
  /** Net of each pin, by side and strip from the notch down. */
  readonly pins: readonly [readonly number[], readonly number[]];
}

export interface Demand {
  readonly nets: readonly NetId[];
  readonly chips: readonly [Chip, Chip];
  readonly twos: readonly TwoLeadDemand[];
  readonly trimmers: readonly TrimmerDemand[];
  readonly edges: readonly EdgeDemand[];
  readonly jack: EdgeDemand;
  readonly pins: readonly PinDemand[];
  /** Chip nets whose strip may go on as another net beyond their few leads. */
  readonly splittable: readonly boolean[];
}

export type Demanded =
  | { readonly ok: true; readonly demand: Demand }
  | { readonly ok: false; readonly part: Part; readonly why: NoBody };

/** Sorts a connection list for the board; refuses parts that are not made. */
export function demandOf(
  connections: Connections,
  lie: Lie = 'as they fit',
  sides: Sides = { threshold: 0, supply: 0 },
): Demanded {
  const nets = connections.nets.map(({ id }) => id);
  const indices = new Map(nets.map((id, i) => [id, i]));
  const indexOf = (id: NetId): number => indices.get(id)!;
  const twos: TwoLeadDemand[] = [];
  const trimmers: TrimmerDemand[] = [];
  const edges: EdgeDemand[] = [];
  const pins: PinDemand[] = [];
  const chips: Chip[] = [];
  for (const part of connections.parts) {
    const { body, leads } = part;
    const wing = wingOf(part, sides);
    const its = leads.map(({ net }) => indexOf(net));
    switch (body.kind) {
      case 'chip':
        chips.push(chipOf(part, its));
        break;
      case 'trimmer':
        trimmers.push({ part, wing, nets: [its[0]!, its[1]!, its[2]!], body: TRIMMER_BODY[body.part] });
        break;
      case 'cell':
      case 'supply':
      case 'control lead':
      case 'jack':
        edges.push({ part, wing, nets: its });
        break;
      case 'test pin':
        pins.push({ part, wing: part.voice === null ? null : wing, net: its[0]! });
        break;
      case 'resistor':
      case 'capacitor':
      case 'diode': {
        const sits = twoLeadsOf(body, lie);
        if (typeof sits === 'string') return { ok: false, part, why: sits };
        if (sits !== null)
          twos.push({
            part,
            wing,
            nets: [its[0]!, its[1]!],
            body: sits,
            mayBeInner: body.kind === 'capacitor',
            decouples: part.role === 'timer bypass' ? 0 : part.role === 'comparator bypass' ? 1 : null,
          });
      }
    }
  }
  const jack = edges.find(({ part }) => part.role === 'jack')!;
  const forced = new Set(
    connections.parts.flatMap(({ role, leads }) => (role === 'control lead' ? leads[0]!.net : [])),
  );
  return {
    ok: true,
    demand: {
      nets,
      chips: [chips[0]!, chips[1]!],
      twos,
      trimmers,
      edges: edges.filter((edge) => edge !== jack),
      jack,
      pins,
      splittable: nets.map(
        (id) => (id === 'rail' || id === 'ground' || id.startsWith('control')) && !forced.has(id),
      ),
    },
  };
}

/** Where what serves both voices stands; the jack and what leads to it on the right. */
export interface Sides {
  readonly threshold: Wing;
  readonly supply: Wing;
}

const SIDE_OF: Readonly<Partial<Record<Part['role'], keyof Sides>>> = {
  'above threshold': 'threshold',
  threshold: 'threshold',
  'below threshold': 'threshold',
  supply: 'supply',
  diode: 'supply',
  reservoir: 'supply',
};

function wingOf({ voice, role }: Part, sides: Sides): Wing {
  if (voice !== null) return voice === 'A' ? 0 : 1;
  const side = SIDE_OF[role];
  return side === undefined ? 1 : sides[side];
}

function chipOf(part: Part, nets: readonly number[]): Chip {
  const strips = chipStrips(part);
  return { part, strips, pins: [nets.slice(0, strips), nets.slice(strips).reverse()] };
}

/** Columns from the left row of pins to the right one. */
export const ACROSS_CHIP = CHIP_COLUMNS;
