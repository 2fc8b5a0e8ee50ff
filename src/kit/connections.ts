/**
 * Every net of a design by chip pin and part lead. Pin numbers: TI SLFS023 (NE556) and TI SLCS005 (LM393), the same
 * for every maker's dual timer and dual comparator in these packages.
 *
 * A value of 0 (no fixed RB, no end resistor), outputs joined without resistors and a comparator without hysteresis
 * leave parts out: the two nets beside the missing part are then one. Without a hysteresis resistor the one in series
 * with the + input does nothing and is left out too. Control-pin capacitors belong to the decoupling (10 nF to 0 V,
 * common practice); a forced control voltage comes in on a lead of its own, against the supply's 0 V.
 */

import { plusIsSensor } from '../circuit/gate.ts';
import { type Design, type ThresholdTrimmer, thresholdFor, trimmersOf } from '../design/design.ts';
import { DIELECTRICS } from '../parts/capacitors.ts';
import type { Farads, Ohms, Pair, VoiceId } from '../quantity/units.ts';
import { pairOf, VOICES } from '../quantity/units.ts';
import type { NetId, PartRole } from '../words/kit.ts';
import type { Body, Connections, Join, Lead, Net, Part, TestPoint } from './parts.ts';

const RESERVOIR_FARADS: Farads = 100e-6;
const BYPASS_FARADS: Farads = 100e-9;
const CONTROL_FARADS: Farads = 10e-9;

const TIMER_PINS: Pair<Readonly<Record<'dis' | 'thr' | 'cont' | 'rst' | 'out' | 'trg', number>>> = {
  A: { dis: 1, thr: 2, cont: 3, rst: 4, out: 5, trg: 6 },
  B: { dis: 13, thr: 12, cont: 11, rst: 10, out: 9, trg: 8 },
};
const TIMER_GROUND = 7;
const TIMER_SUPPLY = 14;
const COMPARATOR_PINS: Pair<Readonly<Record<'out' | 'minus' | 'plus', number>>> = {
  A: { out: 1, minus: 2, plus: 3 },
  B: { out: 7, minus: 6, plus: 5 },
};
const COMPARATOR_GROUND = 4;
const COMPARATOR_SUPPLY = 8;

/** The nets a voice's parts hang on, once what the design leaves out has joined its neighbours. */
interface VoiceNets {
  readonly discharge: NetId;
  readonly between: NetId;
  readonly capacitor: NetId;
  readonly control: NetId;
  readonly gate: NetId;
  readonly out: NetId;
  readonly node: NetId;
  readonly reference: NetId;
  /** What the + input weighs, before its series resistor, and the + input itself. */
  readonly plusSource: NetId;
  readonly plus: NetId;
  readonly minus: NetId;
}

function voiceNets(design: Design, id: VoiceId): VoiceNets {
  const voice = design.voices[id];
  const reference: NetId = design.threshold.arrangement === 'shared' ? 'reference' : `reference ${id}`;
  const node: NetId = `node ${id}`;
  const sensorIsPlus = plusIsSensor(voice.divider.cell, voice.polarity);
  const plusSource = sensorIsPlus ? node : reference;
  return {
    discharge: `discharge ${id}`,
    between: voice.rbFixedOhms === 0 ? `discharge ${id}` : `between ${id}`,
    capacitor: `capacitor ${id}`,
    control: `control ${id}`,
    gate: `gate ${id}`,
    out: design.output.mixOhms === null ? 'mix' : `out ${id}`,
    node,
    reference,
    plusSource,
    plus: voice.hysteresisOhms === null ? plusSource : `plus ${id}`,
    minus: sensorIsPlus ? reference : node,
  };
}

/** Numbers parts by their letter as they come. */
class PartList {
  readonly parts: Part[] = [];
  #counts = new Map<string, number>();

  add(letter: string, role: PartRole, voice: VoiceId | null, body: Body, leads: readonly Lead[]): void {
    const count = (this.#counts.get(letter) ?? 0) + 1;
    this.#counts.set(letter, count);
    this.parts.push({ ref: `${letter}${count}`, role, voice, body, leads });
  }

  named(ref: string, role: PartRole, voice: VoiceId | null, body: Body, leads: readonly Lead[]): void {
    this.parts.push({ ref, role, voice, body, leads });
  }

  /** Nothing is added for 0 Ω or for none: the two nets are then one. */
  resistor(role: PartRole, voice: VoiceId | null, ohms: Ohms | null, from: NetId, to: NetId): void {
    if (ohms !== null && ohms > 0 && from !== to)
      this.add('R', role, voice, { kind: 'resistor', ohms }, [lead('1', from), lead('2', to)]);
  }

  capacitor(
    role: PartRole,
    voice: VoiceId | null,
    { farads, type }: { farads: Farads; type: (Body & { kind: 'capacitor' })['type'] },
    plus: NetId,
    minus: NetId,
  ): void {
    const polarised = type === 'electrolytic';
    const [first, second] = polarised ? ['plus', 'minus'] : ['1', '2'];
    this.add('C', role, voice, { kind: 'capacitor', farads, type, polarised }, [
      lead(first!, plus),
      lead(second!, minus),
    ]);
  }

  trimmer(role: PartRole, voice: VoiceId | null, body: Body, first: NetId, wiper: NetId, last: NetId): void {
    this.add('VR', role, voice, body, [lead('1', first), lead('wiper', wiper), lead('3', last)]);
  }
}

const lead = (name: string, net: NetId): Lead => ({ name, net });

/** The connection list of a design. Pure; the same design gives equal lists. */
export function connectionsOf(design: Design): Connections {
  const nets = pairOf((id) => voiceNets(design, id));
  const list = new PartList();
  addChips(list, nets);
  for (const id of VOICES) addVoice(list, design, id, nets[id]);
  for (const id of trimmersOf(design)) addThreshold(list, design, id, nets[id].reference);
  const jack = addOutput(list, design, nets);
  addSupply(list, design);
  const testPoints = addTestPins(list, design, nets, jack);
  return { parts: list.parts, nets: netsOf(list.parts), testPoints };
}

function addChips(list: PartList, nets: Pair<VoiceNets>): void {
  const timer: Lead[] = [lead(`${TIMER_GROUND}`, 'ground'), lead(`${TIMER_SUPPLY}`, 'rail')];
  const comparator: Lead[] = [lead(`${COMPARATOR_GROUND}`, 'ground'), lead(`${COMPARATOR_SUPPLY}`, 'rail')];
  for (const id of VOICES) {
    const pins = TIMER_PINS[id];
    const its = nets[id];
    timer.push(
      lead(`${pins.dis}`, its.discharge),
      lead(`${pins.thr}`, its.capacitor),
      lead(`${pins.cont}`, its.control),
      lead(`${pins.rst}`, its.gate),
      lead(`${pins.out}`, its.out),
      lead(`${pins.trg}`, its.capacitor),
    );
    const weighs = COMPARATOR_PINS[id];
    comparator.push(
      lead(`${weighs.out}`, its.gate),
      lead(`${weighs.minus}`, its.minus),
      lead(`${weighs.plus}`, its.plus),
    );
  }
  const byPin = (a: Lead, b: Lead): number => Number(a.name) - Number(b.name);
  list.add('U', 'timer', null, { kind: 'chip', pins: 14 }, timer.sort(byPin));
  list.add('U', 'comparator', null, { kind: 'chip', pins: 8 }, comparator.sort(byPin));
}

function addVoice(list: PartList, design: Design, id: VoiceId, nets: VoiceNets): void {
  const voice = design.voices[id];
  list.resistor('charge', id, voice.raOhms, 'rail', nets.discharge);
  list.resistor('fixed rb', id, voice.rbFixedOhms, nets.discharge, nets.between);
  // A rheostat: the wiper is tied to the end that goes to the fixed part, so that clockwise lowers the pitch.
  const pitch: Body = { kind: 'trimmer', part: voice.trimmer.part, ohms: voice.trimmer.ohms };
  list.trimmer('pitch', id, pitch, nets.capacitor, nets.between, nets.between);
  const type = DIELECTRICS[voice.capacitor.dielectric].kind;
  list.capacitor('timing', id, { farads: voice.capacitor.farads, type }, nets.capacitor, 'ground');
  if (design.supply.decoupled)
    list.capacitor('control bypass', id, { farads: CONTROL_FARADS, type: 'ceramic' }, nets.control, 'ground');
  if (voice.controlVolts !== null)
    list.named(`CV ${id}`, 'control lead', id, { kind: 'control lead', volts: voice.controlVolts }, [
      lead('1', nets.control),
    ]);
  const onTop = voice.divider.cell === 'top';
  list.named(`LDR ${id}`, 'cell', id, { kind: 'cell' }, [
    lead('1', nets.node),
    lead('2', onTop ? 'rail' : 'ground'),
  ]);
  list.resistor('divider', id, voice.divider.fixedOhms, nets.node, onTop ? 'ground' : 'rail');
  if (voice.hysteresisOhms !== null) {
    list.resistor('input', id, voice.inputOhms, nets.plusSource, nets.plus);
    list.resistor('hysteresis', id, voice.hysteresisOhms, nets.plus, nets.gate);
  }
  list.resistor('pull-up', id, voice.pullUpOhms, 'rail', nets.gate);
}

function addThreshold(list: PartList, design: Design, id: VoiceId, reference: NetId): void {
  const part: ThresholdTrimmer = thresholdFor(design, id);
  const shared = design.threshold.arrangement === 'shared';
  const above: NetId = part.topOhms === 0 ? 'rail' : shared ? 'above threshold' : `above threshold ${id}`;
  const below: NetId =
    part.bottomOhms === 0 ? 'ground' : shared ? 'below threshold' : `below threshold ${id}`;
  const voice = shared ? null : id;
  list.resistor('above threshold', voice, part.topOhms, 'rail', above);
  const body: Body = { kind: 'trimmer', part: part.trimmer.part, ohms: part.trimmer.ohms };
  // Clockwise raises the reference.
  list.trimmer('threshold', voice, body, below, reference, above);
  list.resistor('below threshold', voice, part.bottomOhms, below, 'ground');
}

/** Gives the net of the jack's tip. */
function addOutput(list: PartList, design: Design, nets: Pair<VoiceNets>): NetId {
  const { mixOhms, shuntOhms, volume, coupling } = design.output;
  for (const id of VOICES) list.resistor('mixing', id, mixOhms?.[id] ?? null, nets[id].out, 'mix');
  list.resistor('shunt', null, shuntOhms, 'mix', 'ground');
  if (volume !== null)
    // Clockwise is louder. A single-turn part, as nothing else makes sense for a hand.
    list.trimmer(
      'volume',
      null,
      { kind: 'trimmer', part: 'single-turn', ohms: volume.ohms },
      'ground',
      'volume',
      'mix',
    );
  const before: NetId = volume === null ? 'mix' : 'volume';
  const tip: NetId = coupling === null ? before : 'jack';
  if (coupling !== null)
    list.capacitor('coupling', null, { farads: coupling.farads, type: coupling.kind }, before, tip);
  list.named('Jack', 'jack', null, { kind: 'jack' }, [lead('tip', tip), lead('sleeve', 'ground')]);
  return tip;
}

function addSupply(list: PartList, { supply }: Design): void {
  const from: NetId = supply.diode ? 'supply' : 'rail';
  list.named('Supply', 'supply', null, { kind: 'supply', volts: supply.volts }, [
    lead('plus', from),
    lead('minus', 'ground'),
  ]);
  if (supply.diode)
    list.add('D', 'diode', null, { kind: 'diode' }, [lead('anode', 'supply'), lead('cathode', 'rail')]);
  if (!supply.decoupled) return;
  list.capacitor('reservoir', null, { farads: RESERVOIR_FARADS, type: 'electrolytic' }, 'rail', 'ground');
  list.capacitor('timer bypass', null, { farads: BYPASS_FARADS, type: 'ceramic' }, 'rail', 'ground');
  list.capacitor('comparator bypass', null, { farads: BYPASS_FARADS, type: 'ceramic' }, 'rail', 'ground');
}

function addTestPins(list: PartList, design: Design, nets: Pair<VoiceNets>, jack: NetId): TestPoint[] {
  const wanted: [string, NetId, VoiceId | null][] = [
    ['TP0', 'ground', null],
    ['TP1', 'rail', null],
  ];
  for (const id of VOICES) wanted.push([`TP2 ${id}`, nets[id].node, id]);
  for (const id of trimmersOf(design))
    wanted.push(
      design.threshold.arrangement === 'shared'
        ? ['TP3', nets[id].reference, null]
        : [`TP3 ${id}`, nets[id].reference, id],
    );
  for (const id of VOICES) wanted.push([`TP4 ${id}`, nets[id].gate, id]);
  for (const id of VOICES) wanted.push([`TP5 ${id}`, nets[id].capacitor, id]);
  for (const id of VOICES) wanted.push([`TP6 ${id}`, nets[id].out, nets[id].out === 'mix' ? null : id]);
  wanted.push(['TP7', 'mix', null], ['TP8', jack, null]);
  const pins = new Map<NetId, string>();
  return wanted.map(([id, net, voice]) => {
    const pin = pins.get(net) ?? id;
    if (pin === id) {
      pins.set(net, id);
      list.named(id, 'test pin', voice, { kind: 'test pin' }, [lead('1', net)]);
    }
    return { id, net, pin };
  });
}

function netsOf(parts: readonly Part[]): Net[] {
  const joins = new Map<NetId, Join[]>();
  for (const { ref, leads } of parts)
    for (const { name, net } of leads) {
      const list = joins.get(net) ?? [];
      list.push({ ref, lead: name });
      joins.set(net, list);
    }
  return [...joins].map(([id, all]) => ({ id, joins: all }));
}
