/**
 * How far a class has come, as one plain value and pure functions on it. Each step goes: notice (if any) → ask (if it
 * asks) → try → reveal. Nothing is lost: every step keeps its bench as it was left, its answers and its count of hands;
 * starting again puts the round aside whole; free play has benches of its own; the maker's own bench comes back at
 * the end.
 */

import type { Design } from '../design/design.ts';
import type { Lux, Volts } from '../quantity/units.ts';
import type { Bench } from './bench.ts';
import type { ControlId } from './controls.ts';
import { type Lesson, type Question, type Step, startBench } from './lesson.ts';
import { type Seen, UNWATCHED, type Watched, watched } from './watch.ts';

export type Phase = 'notice' | 'ask' | 'try' | 'reveal';

export type Answer =
  | { readonly kind: 'choice'; readonly option: string }
  | { readonly kind: 'place'; readonly lux: Lux }
  /** The node's volts in the question's lights, one after the other. */
  | { readonly kind: 'sketch'; readonly volts: readonly Volts[] }
  /** The class went on without one. */
  | { readonly kind: 'passed' };

/** What a step has of the class: kept when it is left. */
export interface StepRecord {
  readonly phase: Phase;
  readonly answer: Answer | null;
  /** Hands counted for each option. */
  readonly hands: Readonly<Record<string, number>>;
  /** Places other pupils pointed to. */
  readonly places: readonly Lux[];
  readonly watched: Watched;
  /** The bench as it was left; null = as the step sets it up. */
  readonly bench: Bench | null;
  readonly freeBench: Bench | null;
}

export interface Round {
  readonly records: Readonly<Record<string, StepRecord>>;
}

export interface Progress {
  readonly lesson: string;
  readonly step: number;
  readonly mode: 'lesson' | 'free';
  /** The last step's answer has been seen and gone past. */
  readonly finished: boolean;
  readonly round: Round;
  /** Rounds put aside by starting again, oldest first. */
  readonly earlier: readonly Round[];
  /** What was on the bench before the lesson. */
  readonly own: Bench;
  /** The design every step starts from. */
  readonly base: Design;
}

/** Begins a lesson; `own` comes back on leaving, `base` is what its steps are made from. */
export function begin(lesson: Lesson, own: Bench, base: Design): Progress {
  return {
    lesson: lesson.id,
    step: 0,
    mode: 'lesson',
    finished: false,
    round: { records: {} },
    earlier: [],
    own,
    base,
  };
}

export function stepOf(lesson: Lesson, progress: Progress): Step {
  return lesson.steps[Math.min(progress.step, lesson.steps.length - 1)]!;
}

export function recordOf(lesson: Lesson, progress: Progress): StepRecord {
  const step = stepOf(lesson, progress);
  return progress.round.records[step.id] ?? freshRecord(step);
}

function freshRecord(step: Step): StepRecord {
  const phase = step.notices.length > 0 ? 'notice' : phaseAfterNotice(step);
  return {
    phase,
    answer: null,
    hands: {},
    places: [],
    watched: UNWATCHED,
    bench: null,
    freeBench: null,
  };
}

const phaseAfterNotice = (step: Step): Phase => (step.question === null ? 'try' : 'ask');

/**
 * What has to lie on the bench now. While a notice is still to be read this is the bench from before: what the
 * notice warns of has not begun.
 */
export function benchOf(lesson: Lesson, progress: Progress): Bench {
  const step = stepOf(lesson, progress);
  const record = recordOf(lesson, progress);
  if (progress.mode === 'free') return record.freeBench ?? record.bench ?? startBench(step, progress.base);
  if (record.phase === 'notice') return quietBench(lesson, progress);
  return record.bench ?? startBench(step, progress.base);
}

/** The bench of the last step before this one that warns of nothing, or the class's own. */
function quietBench(lesson: Lesson, progress: Progress): Bench {
  for (let i = progress.step - 1; i >= 0; i--) {
    const step = lesson.steps[i]!;
    if (step.notices.length > 0) continue;
    return progress.round.records[step.id]?.bench ?? startBench(step, progress.base);
  }
  return progress.own;
}

/** Controls that may be touched now; null = all of them. */
export function controlsOf(lesson: Lesson, progress: Progress): readonly ControlId[] | null {
  if (progress.mode === 'free') return null;
  const { phase } = recordOf(lesson, progress);
  // Predict first, then try.
  return phase === 'try' || phase === 'reveal' ? stepOf(lesson, progress).controls : [];
}

function withRecord(lesson: Lesson, progress: Progress, change: Partial<StepRecord>): Progress {
  const { id } = stepOf(lesson, progress);
  const before = recordOf(lesson, progress);
  const keys = Object.keys(change) as (keyof StepRecord)[];
  if (keys.every((key) => Object.is(before[key], change[key]))) return progress;
  const records = { ...progress.round.records, [id]: { ...before, ...change } };
  return { ...progress, round: { ...progress.round, records } };
}

/** The bench as it is now is kept where it belongs, so that coming back finds it. */
export function kept(lesson: Lesson, progress: Progress, present: Bench): Progress {
  const { phase } = recordOf(lesson, progress);
  if (progress.mode === 'free') return withRecord(lesson, progress, { freeBench: present });
  return phase === 'notice' ? progress : withRecord(lesson, progress, { bench: present });
}

/** The notice has been read: the step may begin. */
export function noticed(lesson: Lesson, progress: Progress): Progress {
  if (recordOf(lesson, progress).phase !== 'notice') return progress;
  return withRecord(lesson, progress, { phase: phaseAfterNotice(stepOf(lesson, progress)) });
}

/** The class's answer, before it tries. Refused (unchanged) when it is none of the question's, or comes too late. */
export function answered(lesson: Lesson, progress: Progress, answer: Answer): Progress {
  const { question } = stepOf(lesson, progress);
  if (recordOf(lesson, progress).phase !== 'ask' || question === null) return progress;
  const fits =
    answer.kind === 'passed' ||
    (answer.kind === 'choice' && question.kind === 'choice' && question.options.includes(answer.option)) ||
    (answer.kind === 'place' && question.kind === 'place' && answer.lux > 0) ||
    (answer.kind === 'sketch' &&
      question.kind === 'sketch' &&
      answer.volts.length === question.at.length &&
      answer.volts.every((volts) => volts >= 0));
  return fits ? withRecord(lesson, progress, { answer }) : progress;
}

/** Hands counted for an option, any time: a whole number from 0 to 99. */
export function counted(lesson: Lesson, progress: Progress, option: string, hands: number): Progress {
  const { question } = stepOf(lesson, progress);
  if (question?.kind !== 'choice' || !question.options.includes(option)) return progress;
  if (!Number.isInteger(hands) || hands < 0 || hands > 99) return progress;
  const before = recordOf(lesson, progress).hands;
  return before[option] === hands
    ? progress
    : withRecord(lesson, progress, { hands: { ...before, [option]: hands } });
}

/** One more pupil's place on the light axis; `null` takes the last one back. */
export function pointed(lesson: Lesson, progress: Progress, lux: Lux | null): Progress {
  if (stepOf(lesson, progress).question?.kind !== 'place') return progress;
  const before = recordOf(lesson, progress).places;
  if (lux === null ? before.length === 0 : !(lux > 0)) return progress;
  return withRecord(lesson, progress, {
    places: lux === null ? before.slice(0, -1) : [...before, lux],
  });
}

/** The guess stands: now it may be tried. Without an answer nothing happens. */
export function tried(lesson: Lesson, progress: Progress): Progress {
  const { phase, answer } = recordOf(lesson, progress);
  return phase === 'ask' && answer !== null ? withRecord(lesson, progress, { phase: 'try' }) : progress;
}

/** Looks at the running model; called for every frame. The same object when nothing has come of it. */
export function looked(lesson: Lesson, progress: Progress, now: Bench, seen: Seen): Progress {
  const step = stepOf(lesson, progress);
  const record = recordOf(lesson, progress);
  if (progress.mode === 'free' || record.phase !== 'try' || step.watch === null) return progress;
  const start = startBench(step, progress.base);
  return withRecord(lesson, progress, {
    watched: watched(record.watched, step.watch, { start, now, seen }),
  });
}

/** Whether the class has done what the step waits for. */
export function isMet(lesson: Lesson, progress: Progress): boolean {
  return stepOf(lesson, progress).watch === null || recordOf(lesson, progress).watched.met;
}

/** Shows the answer, once the step is met; `anyway` is the teacher's word that time is short. */
export function revealed(lesson: Lesson, progress: Progress, anyway = false): Progress {
  if (recordOf(lesson, progress).phase !== 'try') return progress;
  return anyway || isMet(lesson, progress) ? withRecord(lesson, progress, { phase: 'reveal' }) : progress;
}

/** On to the next step, after the reveal; past the last one the lesson is finished. */
export function next(lesson: Lesson, progress: Progress, present: Bench): Progress {
  if (progress.mode === 'free' || recordOf(lesson, progress).phase !== 'reveal') return progress;
  const left = kept(lesson, progress, present);
  return left.step >= lesson.steps.length - 1
    ? { ...left, finished: true }
    : { ...left, step: left.step + 1 };
}

/** To the step before, as it was left. */
export function back(lesson: Lesson, progress: Progress, present: Bench): Progress {
  if (progress.mode === 'free') return toLesson(lesson, progress, present);
  if (progress.finished) return { ...progress, finished: false };
  return progress.step === 0 ? progress : { ...kept(lesson, progress, present), step: progress.step - 1 };
}

/** The step's bench as it was set up; answers and counts stay. */
export function resetBench(lesson: Lesson, progress: Progress): Progress {
  if (progress.mode === 'lesson') return withRecord(lesson, progress, { bench: null, watched: UNWATCHED });
  const waiting = recordOf(lesson, progress).phase === 'notice';
  const freeBench = waiting
    ? quietBench(lesson, progress)
    : startBench(stepOf(lesson, progress), progress.base);
  return withRecord(lesson, progress, { freeBench });
}

/** From the first step; the round so far is put aside whole. */
export function restart(lesson: Lesson, progress: Progress, present: Bench): Progress {
  const left = kept(lesson, progress, present);
  return {
    ...left,
    step: 0,
    mode: 'lesson',
    finished: false,
    round: { records: {} },
    earlier: [...left.earlier, left.round],
  };
}

/** Everything may be touched; the lesson waits. Starts from what is there, or where this step's play was left. */
export function toFree(lesson: Lesson, progress: Progress, present: Bench): Progress {
  if (progress.mode === 'free') return progress;
  const left = kept(lesson, progress, present);
  const freeBench = recordOf(lesson, left).freeBench ?? present;
  return { ...withRecord(lesson, left, { freeBench }), mode: 'free' };
}

/** Back to the lesson exactly as it was; what was played with stays for next time. */
export function toLesson(lesson: Lesson, progress: Progress, present: Bench): Progress {
  if (progress.mode === 'lesson') return progress;
  return { ...kept(lesson, progress, present), mode: 'lesson' };
}

export interface Tally {
  readonly option: string;
  readonly hands: number;
  readonly share: number;
}

/** Hands by option, with their shares of all hands (0 when none was counted), in the question's order. */
export function tallyOf(question: Question, hands: StepRecord['hands']): readonly Tally[] {
  if (question.kind !== 'choice') return [];
  const all = question.options.reduce((sum, option) => sum + (hands[option] ?? 0), 0);
  return question.options.map((option) => {
    const count = hands[option] ?? 0;
    return { option, hands: count, share: all === 0 ? 0 : count / all };
  });
}
