/**
 * Words of the connection list, the board plan and the build cards, and the names they are kept under. Short names
 * as they stand beside a hole or a lead; the trade's own where it has one.
 */
import type { VoiceId } from '../quantity/units.ts';
import { spoken } from './spoken.ts';

/** Nets there is one of. */
export type CommonNet =
  | 'rail'
  | 'ground'
  | 'supply'
  | 'mix'
  | 'volume'
  | 'jack'
  | 'reference'
  | 'above threshold'
  | 'below threshold';
/** Nets each voice has one of. */
export type VoiceNet =
  | 'discharge'
  | 'between'
  | 'capacitor'
  | 'control'
  | 'gate'
  | 'out'
  | 'node'
  | 'plus'
  | 'reference'
  | 'above threshold'
  | 'below threshold';
export type NetId = CommonNet | `${VoiceNet} ${VoiceId}`;

const NET: Readonly<Record<CommonNet | VoiceNet, string>> = spoken('nets', {
  rail: 'V+',
  ground: '0 V',
  supply: 'SUPPLY +',
  mix: 'MIX',
  volume: 'VOLUME',
  jack: 'JACK',
  reference: 'REF',
  'above threshold': 'REF TOP',
  'below threshold': 'REF BOTTOM',
  discharge: 'DIS',
  between: 'BETWEEN',
  capacitor: 'CAP',
  control: 'CONT',
  gate: 'GATE',
  out: 'OUT',
  node: 'NODE',
  plus: 'PLUS',
});

/** `V+`, `CAP A`. */
export function netName(net: NetId): string {
  const voice = / [AB]$/.exec(net)?.[0] ?? '';
  return NET[net.slice(0, net.length - voice.length) as CommonNet | VoiceNet] + voice;
}

/** A net or a part by its name. */
export const netOrPart = (name: string): string => {
  const [, net = '', voice = ''] = /^(.*?)( [AB])?$/.exec(name) ?? [];
  const known = (NET as Readonly<Record<string, string>>)[net];
  return known === undefined ? partName(name) : known + voice;
};

export type PartRole =
  | 'timer'
  | 'comparator'
  | 'charge'
  | 'fixed rb'
  | 'pitch'
  | 'timing'
  | 'control bypass'
  | 'control lead'
  | 'cell'
  | 'divider'
  | 'above threshold'
  | 'threshold'
  | 'below threshold'
  | 'input'
  | 'hysteresis'
  | 'pull-up'
  | 'mixing'
  | 'shunt'
  | 'volume'
  | 'coupling'
  | 'jack'
  | 'diode'
  | 'reservoir'
  | 'timer bypass'
  | 'comparator bypass'
  | 'supply'
  | 'test pin';

/** What each part is for, as the lists say it. */
export const ROLE: Readonly<Record<PartRole, string>> = spoken('part roles', {
  timer: 'dual timer, 14 pins',
  comparator: 'dual comparator, 8 pins',
  charge: 'RA, charges the capacitor',
  'fixed rb': 'RB, fixed part',
  pitch: 'pitch trimmer',
  timing: 'timing capacitor',
  'control bypass': 'steadies the control pin',
  'control lead': 'lead to your control voltage',
  cell: 'light cell on leads',
  divider: 'divider resistor of the light cell',
  'above threshold': 'end resistor above the threshold trimmer',
  threshold: 'threshold trimmer',
  'below threshold': 'end resistor below the threshold trimmer',
  input: 'in series with the + input',
  hysteresis: 'hysteresis resistor',
  'pull-up': 'pulls the gate up',
  mixing: 'mixing resistor',
  shunt: 'mix to 0 V',
  volume: 'volume trimmer',
  coupling: 'coupling capacitor to the jack',
  jack: 'jack',
  diode: 'diode against a reversed supply',
  reservoir: 'reservoir on the rail',
  'timer bypass': 'decoupling at the timer',
  'comparator bypass': 'decoupling at the comparator',
  supply: 'leads to the supply',
  'test pin': 'test pin',
});

/** Parts whose reference is a word. */
const PART: Readonly<Record<string, string>> = spoken('part names', { Supply: 'Supply', Jack: 'Jack' });

/** A part as it is named beside its drawing: `R3`, `Jack`. */
export const partName = (ref: string): string => PART[ref] ?? ref;

/** Names of leads that are no plain numbers. */
const LEAD: Readonly<Record<string, string>> = spoken('leads', {
  plus: '+',
  minus: '−',
  anode: 'anode',
  cathode: 'cathode (band)',
  wiper: 'wiper',
  tip: 'tip',
  sleeve: 'sleeve',
});

/** `R3.1`, `U1 pin 4`, `VR1 wiper`. A part with one lead is named by itself. */
export function leadName(ref: string, lead: string, only: boolean): string {
  if (only) return partName(ref);
  if (/^U\d/.test(ref)) return kitWords.pin(ref, lead);
  return /^\d+$/.test(lead) ? `${ref}.${lead}` : `${partName(ref)} ${LEAD[lead] ?? lead}`;
}

export const kitWords = spoken('kit lists', {
  pin: (ref: string, pin: string): string => `${ref} pin ${pin}`,
  connectionList: 'Connection list',
  parts: 'Parts',
  nets: 'Nets',
  underChip: (ref: string): string => `under ${ref}`,
  betweenNets: (left: string, right: string): string => `between ${left} and ${right}`,
  cutList: 'Cut list',
  linkList: 'Link list',
  linkLength: (millimetres: string): string => `${millimetres}, bare wire`,
} as const);
