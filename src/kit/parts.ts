/** What a kit is made of, as the connection list and the board plan know it: bodies, leads, nets. SI units. */
import type { CapacitorKindId } from '../parts/capacitors.ts';
import type { TrimmerId } from '../parts/trimmers.ts';
import type { Farads, Ohms, VoiceId, Volts } from '../quantity/units.ts';
import type { NetId, PartRole } from '../words/kit.ts';

export type Body =
  | { readonly kind: 'chip'; readonly pins: 8 | 14 }
  | { readonly kind: 'resistor'; readonly ohms: Ohms }
  | {
      readonly kind: 'capacitor';
      readonly farads: Farads;
      readonly type: CapacitorKindId;
      readonly polarised: boolean;
    }
  | { readonly kind: 'trimmer'; readonly part: TrimmerId; readonly ohms: Ohms }
  | { readonly kind: 'diode' }
  | { readonly kind: 'cell' }
  | { readonly kind: 'supply'; readonly volts: Volts }
  | { readonly kind: 'control lead'; readonly volts: Volts }
  | { readonly kind: 'jack' }
  | { readonly kind: 'test pin' };

/**
 * One lead of a part and the net it belongs to. Names: pin numbers of chips; `1`, `2` of parts that fit either way;
 * `plus`, `minus`; `anode`, `cathode`; of trimmers `1`, `wiper`, `3`, the wiper moving from 1 to 3 when turned
 * clockwise; of the jack `tip`, `sleeve`.
 */
export interface Lead {
  readonly name: string;
  readonly net: NetId;
}

export interface Part {
  /** `R1`, `C2`, `VR1`, `U1`, `LDR A`, `TP2 A` … */
  readonly ref: string;
  readonly role: PartRole;
  /** Null = serves both voices. */
  readonly voice: VoiceId | null;
  readonly body: Body;
  readonly leads: readonly Lead[];
}

export interface Join {
  readonly ref: string;
  readonly lead: string;
}

export interface Net {
  readonly id: NetId;
  readonly joins: readonly Join[];
}

/** A place to hold a meter's probe. Where two points are one net they share a pin. */
export interface TestPoint {
  /** `TP1` the rail, `TP2 A` the node of A … */
  readonly id: string;
  readonly net: NetId;
  /** The pin fitted for it. */
  readonly pin: string;
}

export interface Connections {
  readonly parts: readonly Part[];
  readonly nets: readonly Net[];
  readonly testPoints: readonly TestPoint[];
}
