/** A design in a steady light, drawn out as parts on nets: the healthy board that faults are made of. */
import type { Design } from '../../design/design.ts';
import { trimmersOf } from '../../design/design.ts';
import { COMPARATORS } from '../../parts/comparators.ts';
import { TIMERS } from '../../parts/timers.ts';
import { endOhms } from '../../parts/trimmers.ts';
import {
  type Lux,
  type Ohms,
  type Pair,
  pairOf,
  VOICES,
  type VoiceId,
  type Volts,
} from '../../quantity/units.ts';
import { rbOhms } from '../astable.ts';
import { cellOhms } from '../cell.ts';
import { plusIsSensor } from '../gate.ts';
import { railVolts } from '../supply.ts';
import {
  COMPARATOR_GROUND,
  COMPARATOR_PINS,
  COMPARATOR_SUPPLY,
  type ComparatorModel,
  type Element,
  GROUND,
  type Netlist,
  TIMER_GROUND,
  TIMER_PINS,
  TIMER_SUPPLY,
  type TimerModel,
} from './netlist.ts';

/** A source without resistance would be infinite: a milliohm is a lead's. */
const LEAST_OHMS: Ohms = 1e-3;

/** Capacitors at the chips; common practice. The small ones at the rail stand beside 100 µF and are left out. */
const CONTROL_FARADS = 10e-9;
const RESERVOIR_FARADS = 100e-6;

/** Three resistors of 5 kΩ in a bipolar timer (TI SLFS022); 100 kΩ each in a CMOS one, from memory. */
const DIVIDER_OHMS = { bipolar: 15_000, cmos: 300_000 } as const;

/** Input bias of a 393, 25 nA (TI SLCS005), as a pull from about 8 V. */
const BIAS_OHMS: Ohms = 8 / 25e-9;

/** Schottky diode: its drop is that of `supply.ts`, all of it at the instrument's small current. */
const DIODE_OHMS: Ohms = 0.5;

/** The netlist of a design with so much light at each sensor. Nets are named as on the connection list. */
export function netlistOf(design: Design, lux: Pair<Lux>): Netlist {
  return [
    ...supplyParts(design),
    ...chips(design),
    ...VOICES.flatMap((voice) => voiceParts(design, voice, lux[voice])),
    ...trimmersOf(design).flatMap((voice) => thresholdParts(design, voice)),
    ...outputParts(design),
  ];
}

function resistor(name: string, one: string, other: string, ohms: Ohms | null): readonly Element[] {
  if (ohms === null || one === other) return [];
  return [{ kind: 'resistor', name, pins: { 1: one, 2: other }, ohms }];
}

function supplyParts({ supply }: Design): readonly Element[] {
  const plus = supply.diode ? 'supply' : 'rail';
  const parts: Element[] = [
    {
      kind: 'source',
      name: 'supply',
      pins: { plus, minus: GROUND },
      volts: supply.volts,
      ohms: Math.max(LEAST_OHMS, supply.sourceOhms),
    },
  ];
  if (supply.diode) {
    const dropVolts = supply.volts - railVolts(supply);
    parts.push({
      kind: 'diode',
      name: 'diode',
      pins: { anode: 'supply', cathode: 'rail' },
      dropVolts,
      ohms: DIODE_OHMS,
    });
  }
  if (supply.decoupled)
    parts.push({
      kind: 'capacitor',
      name: 'reservoir',
      pins: { plus: 'rail', minus: GROUND },
      farads: RESERVOIR_FARADS,
    });
  return parts;
}

const netsOf = (design: Design, id: VoiceId) => {
  const v = design.voices[id];
  const reference = design.threshold.arrangement === 'shared' ? 'reference' : `reference ${id}`;
  const sensor = plusIsSensor(v.divider.cell, v.polarity);
  const weighed = sensor ? `node ${id}` : reference;
  return {
    between: v.rbFixedOhms === 0 ? `discharge ${id}` : `between ${id}`,
    out: design.output.mixOhms === null ? 'mix' : `out ${id}`,
    weighed,
    plus: v.hysteresisOhms === null ? weighed : `plus ${id}`,
    minus: sensor ? reference : `node ${id}`,
  };
};

function chips(design: Design): readonly Element[] {
  const timer: Record<string, string> = { [TIMER_GROUND]: GROUND, [TIMER_SUPPLY]: 'rail' };
  const comparator: Record<string, string> = { [COMPARATOR_GROUND]: GROUND, [COMPARATOR_SUPPLY]: 'rail' };
  for (const id of VOICES) {
    const nets = netsOf(design, id);
    const pins = TIMER_PINS[id];
    timer[pins.dis] = `discharge ${id}`;
    timer[pins.thr] = `capacitor ${id}`;
    timer[pins.trg] = `capacitor ${id}`;
    timer[pins.cont] = `control ${id}`;
    timer[pins.rst] = `gate ${id}`;
    timer[pins.out] = nets.out;
    const weighs = COMPARATOR_PINS[id];
    comparator[weighs.out] = `gate ${id}`;
    comparator[weighs.plus] = nets.plus;
    comparator[weighs.minus] = nets.minus;
  }
  return [
    { kind: 'timer', name: 'timer', pins: timer, model: timerModel(design) },
    { kind: 'comparator', name: 'comparator', pins: comparator, model: comparatorModel(design) },
  ];
}

function timerModel(design: Design): TimerModel {
  const family = TIMERS[design.timer];
  const rail = railVolts(design.supply);
  const dividerOhms = DIVIDER_OHMS[design.timer];
  const idle = (points: readonly (readonly [Volts, number])[]): Ohms => {
    const [v0, i0] = points[0]!;
    const [v1, i1] = points.at(-1)!;
    const amperes = i0 + ((rail - v0) * (i1 - i0)) / (v1 - v0) - rail / dividerOhms;
    return rail / Math.max(1e-6, amperes);
  };
  return {
    sinks: pairOf((id) => sinkOf(family.discharge, rail / design.voices[id].raOhms)),
    highDropVolts: family.outputHigh.dropVolts,
    highOhms: family.outputHigh.ohms,
    lowVolts: family.outputLow.volts,
    lowOhms: family.outputLow.ohms,
    resetVolts: family.resetVolts.typical,
    resetLowAmperes: family.resetLowAmperes,
    resetHighAmperes: family.resetHighAmperes,
    dividerOhms,
    idleLowOhms: idle(family.supplyAmperes.low),
    idleHighOhms: idle(family.supplyAmperes.high),
    thresholdAmperes: 0,
  };
}

/** The straight line through the published points beside RA's current. */
function sinkOf(
  discharge: (typeof TIMERS)['bipolar']['discharge'],
  amperes: number,
): { readonly volts: Volts; readonly ohms: Ohms } {
  if (discharge.kind === 'resistance') return { volts: 0, ohms: discharge.ohms };
  const { points } = discharge;
  const last = points.findIndex(([i], at) => at > 0 && i >= amperes);
  const at = last < 0 ? points.length - 1 : last;
  const [[i0, v0], [i1, v1]] = [points[at - 1]!, points[at]!];
  const ohms = (v1 - v0) / (i1 - i0);
  return { volts: v0 - i0 * ohms, ohms };
}

function comparatorModel(design: Design): ComparatorModel {
  const family = COMPARATORS[design.comparator];
  return {
    saturationOhms: family.saturationOhms,
    mostSinkAmperes: family.mostSinkAmperes,
    headroomVolts: family.headroomVolts,
    bothInputsHigh: family.bothInputsHigh,
    idleOhms: railVolts(design.supply) / family.supplyAmperes,
    biasOhms: BIAS_OHMS,
  };
}

function voiceParts(design: Design, id: VoiceId, lux: Lux): readonly Element[] {
  const v = design.voices[id];
  const nets = netsOf(design, id);
  const onTop = v.divider.cell === 'top';
  const trimmed = rbOhms(v) - v.rbFixedOhms;
  const parts: Element[] = [
    ...resistor(`charge ${id}`, 'rail', `discharge ${id}`, v.raOhms),
    ...resistor(`fixed rb ${id}`, `discharge ${id}`, nets.between, v.rbFixedOhms),
    {
      kind: 'trimmer',
      name: `pitch ${id}`,
      pins: { 1: `capacitor ${id}`, wiper: nets.between, 3: nets.between },
      firstOhms: trimmed,
      lastOhms: Math.max(LEAST_OHMS, v.trimmer.ohms - trimmed),
    },
    {
      kind: 'capacitor',
      name: `timing ${id}`,
      pins: { 1: `capacitor ${id}`, 2: GROUND },
      farads: v.capacitor.farads,
    },
    {
      kind: 'resistor',
      name: `cell ${id}`,
      pins: { 1: `node ${id}`, 2: onTop ? 'rail' : GROUND },
      ohms: cellOhms(v.cell, lux),
    },
    ...resistor(`divider ${id}`, `node ${id}`, onTop ? GROUND : 'rail', v.divider.fixedOhms),
    ...resistor(`pull-up ${id}`, 'rail', `gate ${id}`, v.pullUpOhms),
  ];
  if (v.hysteresisOhms !== null)
    parts.push(
      ...resistor(`input ${id}`, nets.weighed, nets.plus, v.inputOhms),
      ...resistor(`hysteresis ${id}`, nets.plus, `gate ${id}`, v.hysteresisOhms),
    );
  if (design.supply.decoupled && v.controlVolts === null)
    parts.push({
      kind: 'capacitor',
      name: `control bypass ${id}`,
      pins: { 1: `control ${id}`, 2: GROUND },
      farads: CONTROL_FARADS,
    });
  if (v.controlVolts !== null)
    parts.push({
      kind: 'source',
      name: `control lead ${id}`,
      pins: { plus: `control ${id}`, minus: GROUND },
      volts: v.controlVolts,
      ohms: 1,
    });
  return parts;
}

function thresholdParts(design: Design, id: VoiceId): readonly Element[] {
  const { topOhms, trimmer, bottomOhms } = design.threshold.trimmers[id];
  const suffix = design.threshold.arrangement === 'shared' ? '' : ` ${id}`;
  const above = topOhms === 0 ? 'rail' : `above threshold${suffix}`;
  const below = bottomOhms === 0 ? GROUND : `below threshold${suffix}`;
  const end = endOhms(trimmer.part, trimmer.ohms);
  const firstOhms = end + trimmer.rotation * (trimmer.ohms - 2 * end);
  return [
    ...resistor(`above threshold${suffix}`, 'rail', above, topOhms),
    {
      kind: 'trimmer',
      name: `threshold${suffix}`,
      pins: { 1: below, wiper: `reference${suffix}`, 3: above },
      firstOhms,
      lastOhms: trimmer.ohms - firstOhms,
    },
    ...resistor(`below threshold${suffix}`, below, GROUND, bottomOhms),
  ];
}

function outputParts(design: Design): readonly Element[] {
  const { mixOhms, shuntOhms, volume, coupling, loadOhms } = design.output;
  const parts: Element[] = VOICES.flatMap((id) =>
    resistor(`mixing ${id}`, netsOf(design, id).out, 'mix', mixOhms?.[id] ?? null),
  );
  parts.push(...resistor('shunt', 'mix', GROUND, shuntOhms));
  if (volume !== null)
    parts.push({
      kind: 'trimmer',
      name: 'volume',
      pins: { 1: GROUND, wiper: 'volume', 3: 'mix' },
      firstOhms: Math.max(LEAST_OHMS, volume.rotation * volume.ohms),
      lastOhms: Math.max(LEAST_OHMS, (1 - volume.rotation) * volume.ohms),
    });
  const before = volume === null ? 'mix' : 'volume';
  if (coupling !== null)
    parts.push({
      kind: 'capacitor',
      name: 'coupling',
      pins: { 1: before, 2: 'jack' },
      farads: coupling.farads,
    });
  const tip = coupling === null ? before : 'jack';
  parts.push(...resistor('jack', tip, GROUND, loadOhms));
  return parts;
}

/** The net of the jack's tip. */
export function jackNet(design: Design): string {
  if (design.output.coupling !== null) return 'jack';
  return design.output.volume === null ? 'mix' : 'volume';
}

/** The nets of one voice that have a test point. */
export function testNets(design: Design, id: VoiceId) {
  return {
    node: `node ${id}`,
    reference: design.threshold.arrangement === 'shared' ? 'reference' : `reference ${id}`,
    gate: `gate ${id}`,
    capacitor: `capacitor ${id}`,
    control: `control ${id}`,
    out: netsOf(design, id).out,
  } as const;
}
