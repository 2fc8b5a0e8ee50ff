/**
 * Parts as straight pieces: conductances and currents that hold as long as a part stays in one of its states, and
 * guards, linear in the node voltages, that say when it leaves it. SI units.
 *
 * The timer follows the truth table of TI SLFS022: reset overrides trigger, trigger overrides threshold; trigger
 * level half the control pin's. The reset pin's current has three pieces, out of the pin below the reset voltage,
 * into it above, straight in between, so that an open pin floats just above the level, as open ones do.
 */
import type { Seconds, Volts } from '../../quantity/units.ts';
import {
  COMPARATOR_GROUND,
  COMPARATOR_PINS,
  COMPARATOR_SUPPLY,
  type Element,
  GROUND,
  type Netlist,
  TIMER_GROUND,
  TIMER_PINS,
  TIMER_SUPPLY,
} from './netlist.ts';

/** Node −1 is 0 V. */
export interface Stamp {
  readonly a: number;
  readonly b: number;
  readonly siemens: number;
  /** Current into `a` out of `b`, beside what the conductance carries. */
  readonly amperes: number;
}

/** Σ weight·volts + constant. */
export interface Functional {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
  readonly constant: Volts;
}

/** Leaves for state `to` when every functional is above 0. */
export interface Guard {
  readonly all: readonly Functional[];
  readonly to: number;
}

export interface Piece {
  readonly stamps: readonly Stamp[];
  readonly guards: readonly Guard[];
}

export interface Switch {
  readonly name: string;
  readonly pieces: readonly Piece[];
  readonly start: number;
  /** Once it has switched it cannot again for so long: its response time. 0 for what bends without jumping. */
  readonly dwell: Seconds;
}

export interface Capacitor {
  readonly name: string;
  readonly a: number;
  readonly b: number;
  readonly farads: number;
}

export interface Compiled {
  readonly nodes: readonly string[];
  readonly stamps: readonly Stamp[];
  readonly switches: readonly Switch[];
  readonly capacitors: readonly Capacitor[];
  /** Sources: current out of plus is (volts − plus + minus)/ohms. */
  readonly sources: readonly {
    readonly name: string;
    readonly a: number;
    readonly b: number;
    readonly volts: Volts;
    readonly ohms: number;
  }[];
}

/** Response times: 200 ns for a timer (its output's rise and fall are 100 ns), 1.3 µs for a 393 (TI SLCS005). */
const TIMER_DWELL: Seconds = 200e-9;
const COMPARATOR_DWELL: Seconds = 1.3e-6;

/** Below this between its supply pins a chip does nothing. */
const DEAD_VOLTS: Volts = 1.5;
/** Back to life a little above, so that it cannot dither. */
const ALIVE_VOLTS: Volts = 2;

/** From where the reset pin begins to take current, above where it stops giving it. */
const RESET_EDGE: Volts = 0.3;

/** Between a chip's supply pins the wrong way round: a diode of the die. */
const DIE_DROP: Volts = 0.7;
const DIE_OHMS = 2;

/** A bridge of solder, or a strip that runs on. */
const WIRE_OHMS = 0.01;

/** With its control pin below this the timer cannot be triggered: seen on benches, the level from memory. */
const LEAST_CONTROL: Volts = 1;

const OFF_SIEMENS = 1e-10;

/** State numbers of one half of a timer. */
export const HALF = { low: 0, high: 1, dead: 2 } as const;
const COMPARATOR = { low: 0, off: 1, dead: 2, limited: 3 } as const;

/** The netlist by node numbers and straight pieces. */
export function compiled(netlist: Netlist): Compiled {
  const numbers = new Map<string, number>([[GROUND, -1]]);
  const nodes: string[] = [];
  const at = (net: string): number => {
    const known = numbers.get(net);
    if (known !== undefined) return known;
    numbers.set(net, nodes.length);
    nodes.push(net);
    return nodes.length - 1;
  };
  const out = {
    stamps: [] as Stamp[],
    switches: [] as Switch[],
    capacitors: new Map<string, Capacitor>(),
    sources: [] as Compiled['sources'][number][],
  };
  const between = (a: number, b: number, ohms: number): void => {
    if (a !== b) out.stamps.push({ a, b, siemens: 1 / ohms, amperes: 0 });
  };
  for (const element of netlist) {
    const pin = (name: string): number => at(element.pins[name]!);
    switch (element.kind) {
      case 'resistor':
        between(pin('1'), pin('2'), element.ohms);
        break;
      case 'wire':
        between(pin('1'), pin('2'), WIRE_OHMS);
        break;
      case 'trimmer':
        between(pin('1'), pin('wiper'), element.firstOhms);
        between(pin('wiper'), pin('3'), element.lastOhms);
        break;
      case 'capacitor': {
        const [first, second] = 'plus' in element.pins ? ['plus', 'minus'] : ['1', '2'];
        addCapacitor(out.capacitors, element.name, pin(first), pin(second!), element.farads);
        break;
      }
      case 'source': {
        const [a, b] = [pin('plus'), pin('minus')];
        const { volts, ohms, name } = element;
        out.stamps.push({ a, b, siemens: 1 / ohms, amperes: volts / ohms });
        out.sources.push({ name, a, b, volts, ohms });
        break;
      }
      case 'diode':
        out.switches.push(diode(element.name, pin('anode'), pin('cathode'), element.dropVolts, element.ohms));
        break;
      case 'timer':
        addTimer(out, element, pin);
        break;
      case 'comparator':
        addComparator(out, element, pin);
        break;
    }
  }
  return { nodes, ...out, capacitors: [...out.capacitors.values()] };
}

/** Capacitors side by side are one; one with both ends on a net is none. */
function addCapacitor(all: Map<string, Capacitor>, name: string, a: number, b: number, farads: number): void {
  if (a === b) return;
  const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
  const before = all.get(key);
  all.set(key, before ? { ...before, farads: before.farads + farads } : { name, a, b, farads });
}

function diode(name: string, anode: number, cathode: number, drop: Volts, ohms: number): Switch {
  const over: Functional = { nodes: [anode, cathode], weights: [1, -1], constant: -drop };
  return {
    name,
    start: 0,
    dwell: 0,
    pieces: [
      {
        stamps: [{ a: anode, b: cathode, siemens: OFF_SIEMENS, amperes: 0 }],
        guards: [{ all: [over], to: 1 }],
      },
      {
        stamps: [{ a: anode, b: cathode, siemens: 1 / ohms, amperes: drop / ohms }],
        guards: [{ all: [negative(over)], to: 0 }],
      },
    ],
  };
}

function negative({ nodes, weights, constant }: Functional): Functional {
  return { nodes, weights: weights.map((w) => -w), constant: -constant };
}

type Lists = { readonly stamps: Stamp[]; readonly switches: Switch[] };

function addTimer(
  { stamps, switches }: Lists,
  { model, name }: Element & { kind: 'timer' },
  pin: (name: string) => number,
): void {
  const ground = pin(TIMER_GROUND);
  const supply = pin(TIMER_SUPPLY);
  const faint: Functional = { nodes: [supply, ground], weights: [-1, 1], constant: DEAD_VOLTS };
  const lively: Functional = { nodes: [supply, ground], weights: [1, -1], constant: -ALIVE_VOLTS };
  switches.push(diode(`${name} die`, ground, supply, DIE_DROP, DIE_OHMS));
  for (const half of ['A', 'B'] as const) {
    const pins = TIMER_PINS[half];
    const [dis, thr, cont] = [pin(pins.dis), pin(pins.thr), pin(pins.cont)];
    const [rst, out, trg] = [pin(pins.rst), pin(pins.out), pin(pins.trg)];
    const third = 3 / model.dividerOhms;
    const sink = model.sinks[half];
    stamps.push({ a: supply, b: cont, siemens: third, amperes: 0 });
    stamps.push({ a: cont, b: ground, siemens: third / 2, amperes: 0 });
    const released: Functional = { nodes: [rst, ground], weights: [1, -1], constant: -model.resetVolts };
    const triggered: Functional = { nodes: [cont, ground, trg], weights: [0.5, 0.5, -1], constant: 0 };
    const working: Functional = { nodes: [cont, ground], weights: [1, -1], constant: -LEAST_CONTROL };
    const full: Functional = { nodes: [thr, cont], weights: [1, -1], constant: 0 };
    switches.push({
      name: `${name} ${half}`,
      start: HALF.low,
      dwell: TIMER_DWELL,
      pieces: [
        {
          stamps: [
            { a: out, b: ground, siemens: 1 / model.lowOhms, amperes: model.lowVolts / model.lowOhms },
            { a: dis, b: ground, siemens: 1 / sink.ohms, amperes: sink.volts / sink.ohms },
            { a: supply, b: ground, siemens: 1 / model.idleLowOhms, amperes: 0 },
          ],
          guards: [
            { all: [faint], to: HALF.dead },
            { all: [released, triggered, working], to: HALF.high },
          ],
        },
        {
          stamps: [
            {
              a: out,
              b: supply,
              siemens: 1 / model.highOhms,
              amperes: -model.highDropVolts / model.highOhms,
            },
            { a: supply, b: ground, siemens: 1 / model.idleHighOhms, amperes: 0 },
          ],
          guards: [
            { all: [faint], to: HALF.dead },
            { all: [negative(released)], to: HALF.low },
            { all: [full, negative(triggered)], to: HALF.low },
          ],
        },
        { stamps: [], guards: [{ all: [lively], to: HALF.low }] },
      ],
    });
    switches.push(resetPin(`${name} ${half} reset`, [rst, ground, supply], model, faint, lively));
  }
}

function resetPin(
  name: string,
  [rst, ground, supply]: readonly [number, number, number],
  model: (Element & { kind: 'timer' })['model'],
  faint: Functional,
  lively: Functional,
): Switch {
  const { resetVolts: from, resetLowAmperes: gives, resetHighAmperes: takes } = model;
  const siemens = (gives + takes) / RESET_EDGE;
  const above = (volts: Volts): Functional => ({ nodes: [rst, ground], weights: [1, -1], constant: -volts });
  const dead: Guard = { all: [faint], to: 3 };
  return {
    name,
    start: 0,
    dwell: 0,
    pieces: [
      {
        stamps: [{ a: rst, b: supply, siemens: 0, amperes: gives }],
        guards: [dead, { all: [above(from)], to: 1 }],
      },
      {
        stamps: [
          { a: rst, b: ground, siemens, amperes: 0 },
          { a: rst, b: supply, siemens: 0, amperes: gives + siemens * from },
        ],
        guards: [dead, { all: [negative(above(from))], to: 0 }, { all: [above(from + RESET_EDGE)], to: 2 }],
      },
      {
        stamps: [{ a: rst, b: ground, siemens: 0, amperes: -takes }],
        guards: [dead, { all: [negative(above(from + RESET_EDGE))], to: 1 }],
      },
      { stamps: [], guards: [{ all: [lively], to: 0 }] },
    ],
  };
}

function addComparator(
  { stamps, switches }: Lists,
  { model, name }: Element & { kind: 'comparator' },
  pin: (name: string) => number,
): void {
  const ground = pin(COMPARATOR_GROUND);
  const supply = pin(COMPARATOR_SUPPLY);
  stamps.push({ a: supply, b: ground, siemens: 1 / model.idleOhms, amperes: 0 });
  switches.push(diode(`${name} die`, ground, supply, DIE_DROP, DIE_OHMS));
  const faint: Functional = { nodes: [supply, ground], weights: [-1, 1], constant: DEAD_VOLTS };
  const lively: Functional = { nodes: [supply, ground], weights: [1, -1], constant: -ALIVE_VOLTS };
  for (const half of ['A', 'B'] as const) {
    const pins = COMPARATOR_PINS[half];
    const [out, plus, minus] = [pin(pins.out), pin(pins.plus), pin(pins.minus)];
    for (const input of [plus, minus])
      stamps.push({ a: input, b: supply, siemens: 1 / model.biasOhms, amperes: 0 });
    const over = (input: number): Functional => ({
      nodes: [input, supply],
      weights: [1, -1],
      constant: model.headroomVolts,
    });
    const positive: Functional = { nodes: [plus, minus], weights: [1, -1], constant: 0 };
    const bothOver: readonly Functional[] = [over(plus), over(minus)];
    // With both inputs above the common-mode range the die has its own habit; one above still compares rightly.
    const habitLow = model.bothInputsHigh === 'low';
    const toLow: Guard[] = [
      {
        all: habitLow ? [negative(positive)] : [negative(positive), negative(over(plus))],
        to: COMPARATOR.low,
      },
    ];
    const toOff: Guard[] = [
      { all: habitLow ? [positive, negative(over(minus))] : [positive], to: COMPARATOR.off },
    ];
    (habitLow ? toLow : toOff).push({ all: bothOver, to: habitLow ? COMPARATOR.low : COMPARATOR.off });
    // Past what the output transistor can sink it is a current, no longer a resistance: bridged to the rail, say.
    const { saturationOhms, mostSinkAmperes } = model;
    const strained: Functional = {
      nodes: [out, ground],
      weights: [1, -1],
      constant: -mostSinkAmperes * saturationOhms,
    };
    switches.push({
      name: `${name} ${half}`,
      start: COMPARATOR.low,
      dwell: COMPARATOR_DWELL,
      pieces: [
        {
          stamps: [{ a: out, b: ground, siemens: 1 / saturationOhms, amperes: 0 }],
          guards: [
            { all: [faint], to: COMPARATOR.dead },
            ...toOff,
            { all: [strained], to: COMPARATOR.limited },
          ],
        },
        { stamps: [], guards: [{ all: [faint], to: COMPARATOR.dead }, ...toLow] },
        { stamps: [], guards: [{ all: [lively], to: COMPARATOR.low }] },
        {
          stamps: [{ a: out, b: ground, siemens: OFF_SIEMENS, amperes: -mostSinkAmperes }],
          guards: [
            { all: [faint], to: COMPARATOR.dead },
            ...toOff,
            { all: [negative(strained)], to: COMPARATOR.low },
          ],
        },
      ],
    });
  }
}
