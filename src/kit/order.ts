/**
 * What to buy for a number of kits: one line for each kind of part, how many with spares, packs, cost, and which
 * cautions belong beside it. Derived from the design; the organiser's own stock, packs and prices come with the batch.
 */
import { type Instrument, instrumentOf } from '../circuit/instrument.ts';
import type { Batch, LineNote } from '../design/batch.ts';
import { type Design, trimmersOf } from '../design/design.ts';
import { DIELECTRICS } from '../parts/capacitors.ts';
import { CELLS } from '../parts/cells.ts';
import { TIMERS } from '../parts/timers.ts';
import { TRIMMERS } from '../parts/trimmers.ts';
import { type Fraction, VOICES, type VoiceId, type Volts } from '../quantity/units.ts';
import type { CautionPlace } from '../words/cautions.ts';
import type { LossKind, OrderSpec } from '../words/order.ts';
import { type Alternate, alternatesFor } from './alternates.ts';
import type { BoardPlan } from './board/plan.ts';
import { connectionsOf } from './connections.ts';
import { countFor, enoughChance, lineSafety, packsFor } from './spares.ts';
import { type Length, WIRE_RULE, wireOf } from './wire.ts';

/** Chance that the whole basket lacks nothing. */
export const BASKET_SAFETY: Fraction = 0.99;

/** What a part does in the kit; the same names as on the connection list. */
export interface Use {
  readonly role: string;
  /** Null = serves both voices. */
  readonly voice: VoiceId | null;
}

/** Parts of one kind in one kit. */
export interface Need {
  /** The same for the same part, whatever the design is called. */
  readonly key: string;
  readonly spec: OrderSpec;
  readonly loss: LossKind;
  readonly uses: readonly Use[];
  readonly perKit: number;
}

export interface OrderLine extends Omit<Need, 'loss'> {
  /** Pieces are lost by chance; of wire, bought by the metre, a share goes to waste. */
  readonly unit: 'piece' | 'metre';
  readonly needed: number;
  readonly lossRate: Fraction;
  /** To have in all, spares included; null = no number is safe at this loss rate. */
  readonly withSpares: number | null;
  readonly stock: number;
  readonly packSize: number;
  readonly packs: number;
  /** Chance that stock and packs together leave enough. */
  readonly chance: Fraction;
  readonly packPrice: number | null;
  readonly cost: number | null;
  readonly alternates: readonly Alternate[];
}

export interface Order {
  readonly lines: readonly OrderLine[];
  /** What each line of pieces is safe at. */
  readonly lineSafety: Fraction;
  /** Chance that no line runs short, the lines taken as independent. */
  readonly chance: Fraction;
  /** Cost of all lines with a price; null = none has one. */
  readonly cost: number | null;
  readonly unpriced: number;
  readonly cautions: readonly CautionPlace[];
}

/** The order for a batch; without a board plan, without the wire of its links and the size of the board. */
export function orderOf(design: Design, batch: Batch, plan: BoardPlan | null = null): Order {
  const needs = needsOf(design, batch.board.sockets);
  const safety = lineSafety(needs.length, BASKET_SAFETY);
  const notes = new Map(batch.lines.map((note) => [note.key, note]));
  const instrument = instrumentOf(design);
  const lines = [
    ...needs.map((need) => lineOf(design, instrument, sized(need, plan), batch, notes.get(need.key), safety)),
    ...wireOf(design, plan).map((length) => lengthLine(length, batch, notes.get(length.key))),
  ];
  const costs = lines.flatMap(({ cost }) => (cost === null ? [] : [cost]));
  return {
    lines,
    lineSafety: safety,
    // Of wire there is always enough.
    chance: lines.reduce((product, { chance }) => product * chance, 1),
    cost: costs.length === 0 ? null : costs.reduce((sum, cost) => sum + cost, 0),
    unpriced: lines.length - costs.length,
    cautions: orderCautions(design, batch),
  };
}

function lineOf(
  design: Design,
  instrument: Instrument,
  need: Need,
  batch: Batch,
  note: LineNote | undefined,
  safety: Fraction,
): OrderLine {
  const needed = need.perKit * batch.kits;
  const lossRate = batch.losses[need.loss];
  const withSpares = countFor(needed, lossRate, safety);
  const bought = boughtOf(withSpares ?? needed, note);
  return {
    ...need,
    ...bought,
    unit: 'piece',
    needed,
    lossRate,
    withSpares,
    chance: enoughChance(bought.stock + bought.packs * bought.packSize, needed, lossRate),
    alternates: alternatesFor(design, need.spec, need.uses, instrument),
  };
}

/** Whole metres of wire, what goes to waste included. */
function lengthLine(length: Length, { kits }: Batch, note: LineNote | undefined): OrderLine {
  const needed = length.perKit * kits;
  // A hair below, so that 36 m written as 36.000000001 stays 36.
  const withSpares = Math.ceil(needed * (1 + WIRE_RULE.waste) - 1e-6);
  return {
    ...length,
    ...boughtOf(withSpares, note),
    unit: 'metre',
    needed,
    lossRate: WIRE_RULE.waste,
    withSpares,
    chance: 1,
    alternates: [],
  };
}

/** What is bought of a line, in the organiser's packs at their price. */
function boughtOf(
  wanted: number,
  note: LineNote | undefined,
): Pick<OrderLine, 'stock' | 'packSize' | 'packs' | 'packPrice' | 'cost'> {
  const stock = note?.stock ?? 0;
  const packSize = note?.packSize ?? 1;
  const packs = packsFor(wanted - stock, packSize);
  const packPrice = note?.packPrice ?? null;
  return { stock, packSize, packs, packPrice, cost: packPrice === null ? null : packs * packPrice };
}

/** The board at the size of its plan. */
const sized = (need: Need, plan: BoardPlan | null): Need =>
  need.spec.kind === 'board' && plan !== null ? { ...need, spec: { kind: 'board', size: plan.board } } : need;

/** What is to be minded before it is ordered. */
export function orderCautions(design: Design, batch: Batch): readonly CautionPlace[] {
  const region = {
    eu: 'order in the eu',
    uk: 'order in the uk',
    elsewhere: 'order elsewhere',
  } as const satisfies Record<Batch['region'], CautionPlace>;
  const battery: readonly CautionPlace[] =
    design.supply.kind === 'five-volt' ? [] : ['supply', 'battery transport'];
  const polarised = VOICES.some((id) => DIELECTRICS[design.voices[id].capacitor.dielectric].polarised);
  return [
    'cell',
    region[batch.region],
    ...battery,
    ...(polarised ? (['timing capacitor'] as const) : []),
    ...(design.output.coupling?.kind === 'electrolytic' ? (['output'] as const) : []),
    'building',
  ];
}

/** Groups equal parts as they come. */
class Basket {
  readonly #needs = new Map<string, Need>();

  add(key: string, spec: OrderSpec, loss: LossKind, use: Use, count = 1): void {
    const before = this.#needs.get(key);
    this.#needs.set(key, {
      key,
      spec,
      loss,
      uses: [...(before?.uses ?? []), use],
      perKit: (before?.perKit ?? 0) + count,
    });
  }

  resistor(ohms: number | null, role: string, voice: VoiceId | null): void {
    if (ohms !== null && ohms > 0)
      this.add(`resistor ${short(ohms)}`, { kind: 'resistor', ohms }, 'resistor', { role, voice });
  }

  get needs(): readonly Need[] {
    return [...this.#needs.values()];
  }
}

/** A value as part of a key: `4700`, `6.8e-8`. */
function short(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** A capacitor is bought for twice its rail or so (common practice), at least 16 V; films start at 50 V. */
function ratingFor(design: Design, kind: 'film' | 'ceramic' | 'electrolytic'): Volts {
  if (kind !== 'electrolytic') return 50;
  return [16, 25, 35].find((volts) => volts >= 1.5 * design.supply.volts) ?? 50;
}

/** Every part of one kit, grouped: the voices' parts first, then what they share. */
export function needsOf(design: Design, sockets: boolean): readonly Need[] {
  const basket = new Basket();
  addChips(basket, design, sockets);
  for (const id of VOICES) addVoice(basket, design, id);
  const shared = design.threshold.arrangement === 'shared';
  for (const id of trimmersOf(design)) {
    const part = design.threshold.trimmers[id];
    const voice = shared ? null : id;
    basket.resistor(part.topOhms, 'above threshold', voice);
    addTrimmer(basket, part.trimmer, 'threshold', voice);
    basket.resistor(part.bottomOhms, 'below threshold', voice);
  }
  addOutput(basket, design);
  addSupply(basket, design);
  const both = { voice: null } as const;
  basket.add('board', { kind: 'board', size: null }, 'other', { role: 'board', ...both });
  // Which nets have a pin of their own only the connection list knows.
  const pins = connectionsOf(design).parts.filter(({ body }) => body.kind === 'test pin').length;
  basket.add('test pin', { kind: 'test pin' }, 'other', { role: 'test pin', ...both }, pins);
  return basket.needs;
}

function addChips(basket: Basket, design: Design, sockets: boolean): void {
  const both = { voice: null } as const;
  const { min, max } = TIMERS[design.timer].supplyVolts;
  basket.add(
    `timer ${design.timer}`,
    { kind: 'timer', family: design.timer, minVolts: min, maxVolts: max },
    'chip',
    { role: 'timer', ...both },
  );
  basket.add(`comparator ${design.comparator}`, { kind: 'comparator', family: design.comparator }, 'chip', {
    role: 'comparator',
    ...both,
  });
  if (!sockets) return;
  basket.add('socket 14', { kind: 'socket', pins: 14 }, 'other', { role: 'timer', ...both });
  basket.add('socket 8', { kind: 'socket', pins: 8 }, 'other', { role: 'comparator', ...both });
}

function addVoice(basket: Basket, design: Design, id: VoiceId): void {
  const voice = design.voices[id];
  basket.resistor(voice.raOhms, 'charge', id);
  basket.resistor(voice.rbFixedOhms, 'fixed rb', id);
  addTrimmer(basket, voice.trimmer, 'pitch', id);
  const { farads, dielectric, tolerance } = voice.capacitor;
  const volts = ratingFor(design, DIELECTRICS[dielectric].kind);
  basket.add(
    `timing ${short(farads)} ${dielectric} ${short(tolerance)}`,
    { kind: 'timing capacitor', farads, dielectric, tolerance, volts },
    'capacitor',
    { role: 'timing', voice: id },
  );
  const family = CELLS[voice.cell.family];
  basket.add(
    `cell ${family.id}`,
    {
      kind: 'cell',
      minOhms: family.r10Ohms.min,
      maxOhms: family.r10Ohms.max,
      gamma: family.gamma.usual,
      darkOhms: family.darkOhms,
    },
    'cell',
    { role: 'cell', voice: id },
  );
  basket.resistor(voice.divider.fixedOhms, 'divider', id);
  if (voice.hysteresisOhms !== null) {
    basket.resistor(voice.inputOhms, 'input', id);
    basket.resistor(voice.hysteresisOhms, 'hysteresis', id);
  }
  basket.resistor(voice.pullUpOhms, 'pull-up', id);
}

function addTrimmer(
  basket: Basket,
  { part, ohms, tolerance }: Design['voices']['A']['trimmer'],
  role: string,
  voice: VoiceId | null,
): void {
  basket.add(
    `trimmer ${part} ${short(ohms)}`,
    { kind: 'trimmer', part, ohms, turns: TRIMMERS[part].turns, tolerance },
    'trimmer',
    { role, voice },
  );
}

function addOutput(basket: Basket, design: Design): void {
  const { mixOhms, shuntOhms, volume, coupling } = design.output;
  for (const id of VOICES) basket.resistor(mixOhms?.[id] ?? null, 'mixing', id);
  basket.resistor(shuntOhms, 'shunt', null);
  if (volume !== null)
    basket.add(`volume ${short(volume.ohms)}`, { kind: 'volume', ohms: volume.ohms }, 'trimmer', {
      role: 'volume',
      voice: null,
    });
  if (coupling !== null) addCapacitor(basket, design, coupling.farads, coupling.kind, 'coupling', 'coupling');
  basket.add('jack', { kind: 'jack' }, 'other', { role: 'jack', voice: null });
}

function addCapacitor(
  basket: Basket,
  design: Design,
  farads: number,
  type: 'film' | 'ceramic' | 'electrolytic',
  use: 'coupling' | 'bypass' | 'reservoir',
  role: string,
  voice: VoiceId | null = null,
): void {
  const spec: OrderSpec = { kind: 'capacitor', farads, type, use, volts: ratingFor(design, type) };
  basket.add(`${use} ${short(farads)} ${type}`, spec, 'capacitor', { role, voice });
}

/** Capacitors at the chips: 100 µF and 100 nF at the timer, 100 nF at the comparator, 10 nF at each control pin. */
function addSupply(basket: Basket, { supply, ...design }: Design): void {
  const whole = { ...design, supply };
  if (supply.decoupled) {
    for (const id of VOICES) addCapacitor(basket, whole, 10e-9, 'ceramic', 'bypass', 'control bypass', id);
    addCapacitor(basket, whole, 100e-6, 'electrolytic', 'reservoir', 'reservoir');
    addCapacitor(basket, whole, 100e-9, 'ceramic', 'bypass', 'timer bypass');
    addCapacitor(basket, whole, 100e-9, 'ceramic', 'bypass', 'comparator bypass');
  }
  const both = { voice: null } as const;
  if (supply.diode) basket.add('diode', { kind: 'diode' }, 'other', { role: 'diode', ...both });
  basket.add(`supply lead ${supply.kind}`, { kind: 'supply lead', supply: supply.kind }, 'battery lead', {
    role: 'supply',
    ...both,
  });
  basket.add(
    `supply ${supply.kind}`,
    { kind: 'supply', supply: supply.kind },
    'other',
    { role: 'supply', ...both },
    supply.kind === 'four-aa' ? 4 : 1,
  );
}
