/**
 * The one picture, always in this order: lux → ohms → volts → compare → gate → tone, for each voice. Its values come
 * from the running model (which lags as a cell does) or from a steady light. One cycle of the tone is given as points,
 * with its capacitor, for the slowed view. SI units.
 */
import { type Astable, cycleOf } from '../circuit/astable.ts';
import { firstStretches, type Stretch, voltsWithin } from '../circuit/first-cycles.ts';
import { type CommonMode, commonModeOf, type GateState, stateIndex } from '../circuit/gate.ts';
import { type Instrument, momentIn } from '../circuit/instrument.ts';
import type { Design } from '../design/design.ts';
import { type NearestNote, nearestNote } from '../plan/notes.ts';
import {
  type Fraction,
  type Hertz,
  type Lux,
  type Ohms,
  type Pair,
  pairOf,
  type Seconds,
  type VoiceId,
  type Volts,
} from '../quantity/units.ts';
import { STAGES, type StageId, type StageMode } from './lesson.ts';

export interface VoicePicture {
  readonly lux: Lux;
  readonly ohms: Ohms;
  readonly volts: {
    readonly node: Volts;
    readonly rail: Volts;
    /** Whether more light lifts this node: the cell is at the top. */
    readonly risesWithLight: boolean;
  };
  readonly compare: {
    readonly reference: Volts;
    /** Where a silent voice starts and a sounding one stops; null = no voltage does it. */
    readonly startVolts: Volts | null;
    readonly stopVolts: Volts | null;
    /** Of the two, the one the node is weighed against now. */
    readonly tripVolts: Volts | null;
    readonly nodeIs: 'above' | 'below';
    readonly startLux: Lux | null;
    readonly stopLux: Lux | null;
    readonly commonMode: CommonMode;
  };
  readonly gate: {
    readonly sounding: boolean;
    /** Volts at the timer's reset pin. */
    readonly resetVolts: Volts;
  };
  readonly tone: {
    /** 0 when the voice cannot run. */
    readonly frequency: Hertz;
    readonly dutyCycle: Fraction;
    readonly highSeconds: Seconds;
    readonly lowSeconds: Seconds;
    readonly note: NearestNote | null;
  };
}
export type Picture = Pair<VoicePicture>;

/** What of a live frame the picture needs. */
export interface PictureFrame {
  readonly lux: Pair<Lux>;
  readonly node: Pair<Volts>;
  readonly sounding: Pair<boolean>;
}

/** The picture of the model as it runs; the cell's ohms are read back from the node, so they lag as it does. */
export function livePicture(design: Design, instrument: Instrument, frame: PictureFrame): Picture {
  // The comparators' outputs are what the pins show, except where a pin cannot be moved at all.
  const index = stateIndex(frame.sounding);
  return pairOf((voice) => {
    const gate = instrument.gates[voice];
    const state = gate.states[index]!;
    const { cycle, tripLux, tripVolts, gateVolts, referenceVolts } = instrument.voices[voice];
    const sounding = frame.sounding[voice];
    const node = frame.node[voice];
    return {
      lux: frame.lux[voice],
      ohms: 1 / Math.max(gate.darkSiemens, siemensAt(state, node)),
      volts: {
        node,
        rail: instrument.railVolts,
        risesWithLight: design.voices[voice].divider.cell === 'top',
      },
      compare: {
        reference: referenceVolts,
        startVolts: tripVolts.on,
        stopVolts: tripVolts.off,
        tripVolts: Number.isFinite(state.tripVolts) ? state.tripVolts : null,
        nodeIs: node > state.tripVolts ? 'above' : 'below',
        startLux: tripLux.on,
        stopLux: tripLux.off,
        commonMode: commonModeOf(state, node),
      },
      gate: { sounding, resetVolts: sounding ? gateVolts.high : gateVolts.low },
      tone: {
        frequency: cycle.frequency,
        dutyCycle: cycle.dutyCycle,
        highSeconds: cycle.highSeconds,
        lowSeconds: cycle.lowSeconds,
        note: cycle.frequency > 0 ? nearestNote(cycle.frequency) : null,
      },
    };
  });
}

/** The picture in a steady light; `before` decides between the two trip points. */
export function steadyPicture(
  design: Design,
  instrument: Instrument,
  lux: Pair<Lux>,
  before: Pair<boolean>,
): Picture {
  const moment = momentIn(design, instrument, lux, before);
  return livePicture(design, instrument, {
    lux,
    node: pairOf((voice) => moment[voice].nodeVolts),
    sounding: pairOf((voice) => moment[voice].sounding),
  });
}

/** The cell's conductance that puts the node where it is: (n0 + n1·g)/(d0 + g) solved for g. */
function siemensAt({ n0, n1, d0 }: GateState, node: Volts): number {
  const siemens = (n0 - node * d0) / (node - n1);
  return Number.isFinite(siemens) ? siemens : 0;
}

/** A part that is frozen keeps what it showed; the others go on. */
export function withFrozen(
  now: VoicePicture,
  held: VoicePicture | null,
  stages: Readonly<Record<StageId, StageMode>>,
): VoicePicture {
  if (held === null) return now;
  const of = <S extends StageId>(stage: S): VoicePicture[S] =>
    (stages[stage] === 'frozen' ? held : now)[stage];
  return {
    lux: of('lux'),
    ohms: of('ohms'),
    volts: of('volts'),
    compare: of('compare'),
    gate: of('gate'),
    tone: of('tone'),
  };
}

/**
 * Stepping: a change of light is let through the picture part by part. `reached` parts, from the left, show the new
 * values, the rest still the old ones.
 */
export function steppedThrough(before: VoicePicture, after: VoicePicture, reached: number): VoicePicture {
  const waits = Object.fromEntries(
    STAGES.map((stage, i): [StageId, StageMode] => [stage, i < reached ? 'shown' : 'frozen']),
  ) as Record<StageId, StageMode>;
  return withFrozen(after, before, waits);
}

export interface CyclePoint {
  readonly time: Seconds;
  readonly volts: Volts;
  readonly high: boolean;
}

/**
 * One steady cycle from the moment the output rises, as points on the capacitor's two exponentials; at the turn and
 * at both ends the points are exact. Empty when the voice never swings.
 */
export function cyclePoints(astable: Astable, points = 96): readonly CyclePoint[] {
  return pointsOn(firstStretches(astable, 2).slice(2), points);
}

/** The first cycles after a long silence, from the moment the reset lets go. */
export function firstCyclePoints(astable: Astable, cycles: number, points = 96): readonly CyclePoint[] {
  return pointsOn(firstStretches(astable, cycles), points);
}

function pointsOn(stretches: readonly Stretch[], points: number): readonly CyclePoint[] {
  const [first] = stretches;
  const last = stretches.at(-1);
  if (first === undefined || last === undefined) return [];
  const whole = last.end - first.start;
  return stretches.flatMap((stretch) => {
    const length = stretch.end - stretch.start;
    const steps = Math.max(2, Math.round((points * length) / whole));
    return Array.from({ length: steps + 1 }, (_, i) => {
      const share = i / steps;
      const time = stretch.start + length * share;
      return {
        time: time - first.start,
        // Rounding must not carry an end past its level.
        volts: i === 0 ? stretch.from : i === steps ? stretch.to : voltsWithin(stretch, time),
        high: stretch.high,
      };
    });
  });
}

/** Where a voice is in its steady cycle, so long after the output rose; null when it never swings. */
export function cycleAt(astable: Astable, time: Seconds): CyclePoint | null {
  const [high, low] = firstStretches(astable, 2).slice(2);
  if (high === undefined || low === undefined) return null;
  const period = low.end - high.start;
  const within = high.start + (((time % period) + period) % period);
  const stretch = within < high.end ? high : low;
  return { time: within - high.start, volts: voltsWithin(stretch, within), high: stretch.high };
}

const SLOWED = 1000;
/** Slowed cycles in a second, at most: each is one flash, and three are the limit (WCAG 2.2, 2.3.1). */
const MOST_CYCLES: Hertz = 1.5;

/** How many times a voice is slowed: a thousand, or ten times as often until its picture no longer flashes. */
export function slowFactor(frequency: Hertz): number {
  let factor = SLOWED;
  while (frequency / factor > MOST_CYCLES) factor *= 10;
  return factor;
}

/** The slowed picture, so many seconds of watching after the output rose. */
export function slowedCycleAt(astable: Astable, watchedFor: Seconds): CyclePoint | null {
  return cycleAt(astable, watchedFor / slowFactor(cycleOf(astable).frequency));
}

/** One voice's part of a picture, hidden parts left out: what may be seen, said or read aloud. */
export function visibleStages(stages: Readonly<Record<StageId, StageMode>>): readonly StageId[] {
  return STAGES.filter((stage) => stages[stage] !== 'hidden');
}

/** The voices a step shows. */
export function shownVoices(voices: 'A' | 'both'): readonly VoiceId[] {
  return voices === 'A' ? ['A'] : ['A', 'B'];
}
