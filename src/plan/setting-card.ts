/**
 * The numbered card for setting up on the day, and the assistant that reads the meter with you: both as data, from the
 * same windows. Volts at the test points, turns from the stop at 0, hours of the clock.
 */
import { nodeVolts } from '../circuit/gate.ts';
import { railVolts } from '../circuit/supply.ts';
import { turnThreshold } from '../design/commands.ts';
import { type Design, thresholdFor } from '../design/design.ts';
import { TRIMMERS } from '../parts/trimmers.ts';
import { type Fraction, type Lux, type Pair, pairOf, type VoiceId, type Volts } from '../quantity/units.ts';
import type { MeterAnswer, Remedy, SettingStep } from '../words/room-facts.ts';
import type { Stretch } from './day.ts';
import { settingsFor, testPointVolts } from './setting.ts';
import { justOn } from './threshold.ts';
import type { Extremes, WindowAnswer } from './window.ts';

const WATCH_MINUTES = 10;
/** One phantom trigger in ten minutes of normal walking is what a well set room allows. */
const PHANTOMS_ALLOWED = 1;

export interface CardFacts {
  readonly answers: readonly WindowAnswer[];
  readonly extremes: Pair<Extremes>;
  /** Light at the hour of setting up; null = at any. */
  readonly settingUp: { readonly hour: number | null; readonly lux: Pair<Lux>; readonly shade: Pair<Lux> };
  /** When to set again, from `resetPlan`. */
  readonly stretches: readonly Stretch[];
  readonly remedies: readonly Remedy[];
}

/** The steps in order; their numbers are their places. */
export function settingCard(design: Design, facts: CardFacts): readonly SettingStep[] {
  const { answers, settingUp, stretches, remedies } = facts;
  const steps: SettingStep[] = [
    { kind: 'check the supply', volts: railVolts(design.supply) },
    { kind: 'wait for the light', hour: settingUp.hour, lux: settingUp.lux },
  ];
  for (const voice of ['A', 'B'] as const) {
    const { lit, shade } = nodesIn(design, voice, settingUp.lux[voice], settingUp.shade[voice]);
    steps.push({ kind: 'read the node', voice, lit, shade });
  }
  const shared = design.threshold.arrangement === 'shared';
  for (const answer of answers) {
    const { trimmer, voices, low, high } = answer.window;
    if (answer.kind === 'none') {
      steps.push({ kind: 'will not reach', trimmer, remedies });
      continue;
    }
    const { rotation, turns, turnsOfPart, testPointVolts: volts } = answer.recommended;
    const span = [low.rotation, high.rotation].map((at) => testVolts(design, trimmer, at));
    steps.push({
      kind: 'turn to volts',
      trimmer,
      shared,
      volts,
      fromVolts: span[0]!,
      toVolts: span[1]!,
      rotation,
      turns,
      turnsOfPart,
    });
    const soundsInLight = design.voices[trimmer].polarity === 'light';
    // "Just on" needs one light in which all voices of the trimmer sound.
    if (voices.some((voice) => design.voices[voice].polarity !== design.voices[trimmer].polarity)) continue;
    const light = soundsInLight ? settingUp.lux : settingUp.shade;
    const found = justOn(turnThreshold(trimmer, rotation)(design), trimmer, light);
    if (found.kind !== 'turn') continue;
    steps.push({
      kind: 'just on',
      trimmer,
      shared,
      soundsInLight,
      rotation: found.rotation,
      volts: testVolts(design, trimmer, found.rotation),
      thenTurns: (rotation - found.rotation) * turnsOfPart,
      turnsOfPart,
    });
  }
  for (const voice of ['A', 'B'] as const)
    steps.push({ kind: 'try the event', voice, sounds: design.voices[voice].polarity === 'shade' });
  steps.push({ kind: 'watch', minutes: WATCH_MINUTES, phantomsAllowed: PHANTOMS_ALLOWED });
  for (const { from, settings } of stretches.slice(1)) {
    for (const trimmer of ['A', 'B'] as const) {
      const next = settings?.[trimmer];
      if (next) steps.push({ kind: 'set again', hour: from, trimmer, shared, volts: next.testPointVolts });
    }
  }
  return steps;
}

/** Volts at a voice's node in lit and in shaded light, with the output that goes with each. */
function nodesIn(
  design: Design,
  voice: VoiceId,
  lit: Lux,
  shade: Lux,
): { readonly lit: Volts; readonly shade: Volts } {
  const { gate, speed, cases, soundsInLight } = settingsFor(design)[voice];
  const at = (lux: Lux, high: boolean) => {
    const siemens = Math.max(gate.darkSiemens, (lux / 10) ** speed.gamma / gate.r10Ohms);
    return nodeVolts(high ? cases[0]!.sounding : cases[0]!.silent, siemens);
  };
  return { lit: at(lit, soundsInLight), shade: at(shade, !soundsInLight) };
}

const testVolts = (design: Design, trimmer: VoiceId, rotation: Fraction): Volts =>
  testPointVolts(
    design,
    trimmer,
    rotation,
    pairOf((voice) => design.voices[voice].polarity === 'light'),
  );

/** Within this many volts of the recommended place nothing is to be gained by turning. */
const NEAR_ENOUGH: Volts = 0.02;

/**
 * What the meter at the reference says, both voices lit: leave it, or which way and how far. The windows are those of
 * the hours still to come, so that "leave it" means until closing.
 */
export function meterAnswer(design: Design, answer: WindowAnswer, volts: Volts): MeterAnswer {
  const { trimmer, low, high } = answer.window;
  const turnsOfPart = TRIMMERS[thresholdFor(design, trimmer).trimmer.part].turns;
  const [leastVolts, mostVolts] = [testVolts(design, trimmer, 0), testVolts(design, trimmer, 1)];
  const slack = 0.03 * (mostVolts - leastVolts);
  if (volts < leastVolts - slack || volts > mostVolts + slack)
    return { kind: 'cannot be', volts, leastVolts, mostVolts };
  if (answer.kind === 'none') return { kind: 'no window', volts };
  const { recommended } = answer;
  const here = rotationAtTestPoint(design, trimmer, volts);
  const wouldDo = here > low.rotation && here < high.rotation;
  const off = recommended.testPointVolts - volts;
  if (wouldDo && Math.abs(off) <= NEAR_ENOUGH)
    return {
      kind: 'leave it',
      volts,
      litMargin: recommended.litMargin,
      shadeMargin: recommended.shadeMargin,
    };
  return {
    kind: 'turn',
    way: off > 0 ? 'up' : 'down',
    volts,
    toVolts: recommended.testPointVolts,
    turns: Math.abs(recommended.rotation - here) * turnsOfPart,
    turnsOfPart,
    wouldDo,
  };
}

/** The rotation at which the loaded wiper reads these volts; the ends where it cannot. */
export function rotationAtTestPoint(design: Design, trimmer: VoiceId, volts: Volts): Fraction {
  let [low, high] = [0, 1];
  for (let turn = 0; turn < 40; turn++) {
    const middle = (low + high) / 2;
    if (testVolts(design, trimmer, middle) < volts) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
