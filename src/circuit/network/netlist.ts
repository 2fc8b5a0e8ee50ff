/**
 * A circuit as a plain list of parts with pins on nets, and the ways a board goes wrong: a joint left open, two
 * nets joined, a part left out or of another value. Chips are whole bodies, pins by number. SI units.
 */
import type { ComparatorFamily } from '../../parts/comparators.ts';
import type { Amperes, Farads, Ohms, Pair, Volts } from '../../quantity/units.ts';

/** Pin name to net name. */
export type Pins = Readonly<Record<string, string>>;

/** What the solver knows of one dual timer. */
export interface TimerModel {
  /** Discharge transistor of each half while on: a voltage behind a resistance, to the ground pin. */
  readonly sinks: Pair<{ readonly volts: Volts; readonly ohms: Ohms }>;
  readonly highDropVolts: Volts;
  readonly highOhms: Ohms;
  readonly lowVolts: Volts;
  readonly lowOhms: Ohms;
  readonly resetVolts: Volts;
  readonly resetLowAmperes: number;
  readonly resetHighAmperes: number;
  /** From supply to control pin one third of it, from there to ground two thirds. */
  readonly dividerOhms: Ohms;
  /** What one half takes at the rail beside its divider, as a resistance, output low and high. */
  readonly idleLowOhms: Ohms;
  readonly idleHighOhms: Ohms;
  /** Threshold pin takes, trigger pin gives. */
  readonly thresholdAmperes: number;
}

export interface ComparatorModel {
  readonly saturationOhms: Ohms;
  readonly mostSinkAmperes: Amperes;
  readonly headroomVolts: Volts;
  readonly bothInputsHigh: ComparatorFamily['bothInputsHigh'];
  readonly idleOhms: Ohms;
  /** Inputs are pulled up this weakly: their bias current as a resistance. */
  readonly biasOhms: Ohms;
}

interface Body {
  /** `charge A`, `timing B`, `timer`, `supply`: what it does and for whom. */
  readonly name: string;
  readonly pins: Pins;
}

export type Element = Body &
  (
    | { readonly kind: 'resistor'; readonly ohms: Ohms }
    | { readonly kind: 'capacitor'; readonly farads: Farads }
    /** Pins `1`, `wiper`, `3`. */
    | { readonly kind: 'trimmer'; readonly firstOhms: Ohms; readonly lastOhms: Ohms }
    /** Pins `plus`, `minus`. */
    | { readonly kind: 'source'; readonly volts: Volts; readonly ohms: Ohms }
    /** Pins `anode`, `cathode`. */
    | { readonly kind: 'diode'; readonly dropVolts: Volts; readonly ohms: Ohms }
    /** Pins `1` to `14`. */
    | { readonly kind: 'timer'; readonly model: TimerModel }
    /** Pins `1` to `8`. */
    | { readonly kind: 'comparator'; readonly model: ComparatorModel }
    | { readonly kind: 'wire' }
  );

export type Netlist = readonly Element[];

/** 0 V. */
export const GROUND = 'ground';

/** Pin numbers of one half: TI SLFS023 (556), TI SLCS005 (393). */
export const TIMER_PINS = {
  A: { dis: '1', thr: '2', cont: '3', rst: '4', out: '5', trg: '6' },
  B: { dis: '13', thr: '12', cont: '11', rst: '10', out: '9', trg: '8' },
} as const;
export const COMPARATOR_PINS = {
  A: { out: '1', minus: '2', plus: '3' },
  B: { out: '7', minus: '6', plus: '5' },
} as const;
export const TIMER_GROUND = '7';
export const TIMER_SUPPLY = '14';
export const COMPARATOR_GROUND = '4';
export const COMPARATOR_SUPPLY = '8';

/** The element of a name; null = there is none. */
function elementOf(netlist: Netlist, name: string): Element | null {
  return netlist.find((element) => element.name === name) ?? null;
}

/** The net a pin is on; null = no such pin. */
function netOf(netlist: Netlist, name: string, pin: string): string | null {
  return elementOf(netlist, name)?.pins[pin] ?? null;
}

/** One joint open: the pin hangs on a net of its own. */
export function opened(netlist: Netlist, name: string, pin: string): Netlist {
  return netlist.map((element) =>
    element.name === name && pin in element.pins
      ? { ...element, pins: { ...element.pins, [pin]: `open ${name} ${pin}` } }
      : element,
  );
}

/** A pin of a part, both by name. */
export interface PartPin {
  readonly part: string;
  readonly pin: string;
}

/** Some pins of one net cut off from the rest, still joined to each other. */
export function parted(netlist: Netlist, pins: readonly PartPin[]): Netlist {
  const [first] = pins;
  if (first === undefined) return netlist;
  const net = `parted ${first.part} ${first.pin}`;
  return netlist.map((element) => {
    const own = pins.filter(({ part, pin }) => part === element.name && pin in element.pins);
    return own.length === 0
      ? element
      : { ...element, pins: { ...element.pins, ...Object.fromEntries(own.map(({ pin }) => [pin, net])) } };
  });
}

/** Two nets joined, by a bridge of solder or a cut left out. Both keep their names. */
export function joined(netlist: Netlist, one: string, other: string): Netlist {
  if (one === other) return netlist;
  return [...netlist, { kind: 'wire', name: `join ${one} ${other}`, pins: { 1: one, 2: other } }];
}

/** Two pins joined; the same netlist when there is no such pin. */
export function pinsJoined(
  netlist: Netlist,
  [name, pin]: readonly [string, string],
  [otherName, otherPin]: readonly [string, string],
): Netlist {
  const one = netOf(netlist, name, pin);
  const other = netOf(netlist, otherName, otherPin);
  return one === null || other === null ? netlist : joined(netlist, one, other);
}

/** A part left out. */
export function without(netlist: Netlist, name: string): Netlist {
  return netlist.filter((element) => element.name !== name);
}

/** A chip the wrong way round in its holes: every pin where the opposite one belongs. */
export function reversed(netlist: Netlist, name: string, pinCount: 8 | 14): Netlist {
  return netlist.map((element) => {
    if (element.name !== name) return element;
    const half = pinCount / 2;
    const pins = Object.fromEntries(
      Object.keys(element.pins).map((pin) => {
        const opposite = Number(pin) > half ? Number(pin) - half : Number(pin) + half;
        return [pin, element.pins[String(opposite)]!];
      }),
    );
    return { ...element, pins };
  });
}

/** Two parts exchanged: each on the other's nets. */
export function exchanged(netlist: Netlist, one: string, other: string): Netlist {
  const [first, second] = [elementOf(netlist, one), elementOf(netlist, other)];
  if (first === null || second === null) return netlist;
  return netlist.map((element) =>
    element.name === one
      ? { ...element, pins: second.pins }
      : element.name === other
        ? { ...element, pins: first.pins }
        : element,
  );
}
