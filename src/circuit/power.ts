/**
 * What the instrument takes from its supply in each state of the two gates, what is left at the rail, and for how
 * many hours. Silent is not free: a voice held in reset keeps its discharge pin on, and its comparator sinks the
 * pull-up. SI units. Sums of typical figures; Ohm's law. The few microamperes through hysteresis resistors and
 * the inputs' bias are left out.
 */
import { type Design, trimmersOf } from '../design/design.ts';
import { COMPARATORS } from '../parts/comparators.ts';
import { SUPPLIES, type SupplyId } from '../parts/supplies.ts';
import { TIMERS } from '../parts/timers.ts';
import type { Amperes, Fraction, Lux, Ohms, Pair, VoiceId, Volts } from '../quantity/units.ts';
import { pairOf } from '../quantity/units.ts';
import { type Astable, astableOf, cycleOf } from './astable.ts';
import { cellOf, cellOhms } from './cell.ts';
import { pullOf } from './gate.ts';
import { outputDraw } from './output.ts';
import { lastSourceVolts, railVolts } from './supply.ts';

/** Which voices sound. */
export type PlayState = 'both' | 'onlyA' | 'onlyB' | 'none';

export const PLAY_STATES: Readonly<Record<PlayState, Pair<boolean>>> = {
  both: { A: true, B: true },
  onlyA: { A: true, B: false },
  onlyB: { A: false, B: true },
  none: { A: false, B: false },
};

/** Light assumed at a sensor when nothing else is said: a lit classroom, and a hand over the sensor. */
export const USUAL_LIT_LUX: Lux = 300;
export const USUAL_SHADED_LUX: Lux = 30;

/** Supply current, share by share. */
export interface Drain {
  readonly timers: Amperes;
  /** Through RA: into the discharge pin while it is on, and into the capacitor. */
  readonly discharge: Amperes;
  /** Pull-ups and reset pins. */
  readonly gates: Amperes;
  readonly dividers: Amperes;
  readonly references: Amperes;
  readonly comparator: Amperes;
  readonly outputs: Amperes;
  readonly total: Amperes;
}

/** Current into the discharge pin through RA while the pin is on. */
export function dischargeAmperes(astable: Astable, raOhms: Ohms): Amperes {
  return Math.max(0, astable.chargeVolts - astable.sinkVolts) / raOhms;
}

/** Supply current at a rail voltage. `lux` at the sensors: by default what makes them sound or not in a room. */
export function drainOf(
  design: Design,
  rail: Volts,
  sounding: Pair<boolean>,
  lux: Pair<Lux> = usualLux(design, sounding),
): Drain {
  const timer = TIMERS[design.timer];
  const astables = pairOf((voice) => astableOf(design, voice, rail));
  const cycles = pairOf((voice) => cycleOf(astables[voice]));
  const high = pairOf((voice) => (sounding[voice] ? cycles[voice].dutyCycle : 0));
  const sum = (of: (voice: VoiceId) => Amperes) => of('A') + of('B');

  const timers = sum(
    (voice) =>
      high[voice] * along(timer.supplyAmperes.high, rail) +
      (1 - high[voice]) * along(timer.supplyAmperes.low, rail),
  );
  const discharge = sum((voice) => {
    const a = astables[voice];
    const perSecond = sounding[voice] ? cycles[voice].frequency : 0;
    const charging = a.farads * (a.upperVolts - a.lowerVolts) * perSecond;
    return (1 - high[voice]) * dischargeAmperes(a, design.voices[voice].raOhms) + charging;
  });
  const gates = sum((voice) => {
    const pull = pullOf(design, voice, rail);
    const { pullUpOhms } = design.voices[voice];
    return sounding[voice]
      ? (rail - pull.high.volts) / pullUpOhms
      : Math.max(0, rail - pull.low.volts) / pullUpOhms + timer.resetLowAmperes;
  });
  const dividers = sum((voice) => {
    const v = design.voices[voice];
    return rail / (v.divider.fixedOhms + cellOhms(cellOf(v), lux[voice]));
  });
  const references = trimmersOf(design).reduce((total, voice) => {
    const { topOhms, trimmer, bottomOhms } = design.threshold.trimmers[voice];
    return total + rail / (topOhms + trimmer.ohms + bottomOhms);
  }, 0);
  const comparator = COMPARATORS[design.comparator].supplyAmperes;
  const outputs = outputDraw(design, rail, high).meanAmperes;
  const total = timers + discharge + gates + dividers + references + comparator + outputs;
  return { timers, discharge, gates, dividers, references, comparator, outputs, total };
}

function usualLux(design: Design, sounding: Pair<boolean>): Pair<Lux> {
  return pairOf((voice) =>
    sounding[voice] === (design.voices[voice].polarity === 'light') ? USUAL_LIT_LUX : USUAL_SHADED_LUX,
  );
}

/** A supply current between and beyond its published points, never below 0. */
function along(points: readonly (readonly [Volts, Amperes])[], rail: Volts): Amperes {
  const [v0, i0] = points[0]!;
  const [v1, i1] = points.at(-1)!;
  return Math.max(0, i0 + ((rail - v0) * (i1 - i0)) / (v1 - v0));
}

/** As close as double precision is worth here. */
const RAIL_WITHIN: Volts = 1e-8;

/**
 * The rail with the instrument's own current flowing: source − I(rail)·R − diode, solved by the false position
 * with Illinois weights, because the current itself falls with the rail. Both voices sounding unless said
 * otherwise. At most 10 nV from the balance, or from the jump where a voice stops running.
 */
export function railUnderLoad(design: Design, sounding: Pair<boolean> = PLAY_STATES.both): Volts {
  const open = railVolts(design.supply);
  if (design.supply.sourceOhms === 0) return open;
  const excess = (rail: Volts) => railVolts(design.supply, drainOf(design, rail, sounding).total) - rail;
  // The current at the open rail is about the most there can be: what it leaves lies below the answer.
  let high = open;
  let atHigh = excess(high);
  let low = Math.max(0, open + atHigh);
  let atLow = excess(low);
  if (atLow < 0) {
    low = 0;
    atLow = excess(low);
  }
  for (let i = 0; i < 100 && high - low > RAIL_WITHIN; i++) {
    // Every fourth step halves, so that a jump in the current cannot hold it up.
    const share = i % 4 === 3 ? 0.5 : atLow / (atLow - atHigh);
    const rail = low + share * (high - low);
    const at = excess(rail);
    if (Math.abs(at) <= RAIL_WITHIN) return rail;
    if (at > 0) [low, atLow, atHigh] = [rail, at, atHigh / 2];
    else [high, atHigh, atLow] = [rail, at, atLow / 2];
  }
  return (low + high) / 2;
}

/** Hours a fresh supply gives a current; null = it does not run out. */
export function hoursOn(kind: SupplyId, amperes: Amperes): number | null {
  const { ampereHours } = SUPPLIES[kind];
  return ampereHours === null || amperes <= 0 ? null : ampereHours / amperes;
}

export interface StatePower {
  readonly drain: Drain;
  readonly railVolts: Volts;
  /** What the source's own resistance takes. */
  readonly sagVolts: Volts;
  readonly hours: number | null;
}

export interface Power {
  readonly states: Readonly<Record<PlayState, StatePower>>;
  /** The state that draws most: often the one with both silent. */
  readonly hungriest: PlayState;
  /** Source volts where the time is over: the battery empty, or a chip out of its range. */
  readonly lastSourceVolts: Volts;
  /** Share of the way from present to empty battery that the chips' ranges leave unused (by volts). */
  readonly unusedShare: Fraction;
}

/** Supply readouts of a design. */
export function powerOf(design: Design): Power {
  const { supply } = design;
  const stateOf = (sounding: Pair<boolean>): StatePower => {
    const rail = railUnderLoad(design, sounding);
    const drain = drainOf(design, rail, sounding);
    return {
      drain,
      railVolts: rail,
      sagVolts: Math.max(0, railVolts(supply) - rail),
      hours: hoursOn(supply.kind, drain.total),
    };
  };
  const states = {
    both: stateOf(PLAY_STATES.both),
    onlyA: stateOf(PLAY_STATES.onlyA),
    onlyB: stateOf(PLAY_STATES.onlyB),
    none: stateOf(PLAY_STATES.none),
  };
  const names = Object.keys(states) as PlayState[];
  const last = lastSourceVolts(supply, design.timer, design.comparator);
  const { endVolts } = SUPPLIES[supply.kind];
  const whole = supply.volts - endVolts;
  return {
    states,
    hungriest: names.reduce((a, b) => (states[b].drain.total > states[a].drain.total ? b : a)),
    lastSourceVolts: last,
    unusedShare: whole > 0 ? Math.max(0, Math.min(1, (last - endVolts) / whole)) : 0,
  };
}
