/**
 * How far a class has come, as a text that outlasts a reload: where each lesson stood, what was guessed and counted. What
 * lay on the bench is not part of it. Read back, it goes through the same doors as the class did, so that nothing of an
 * earlier page's lessons comes in that does not fit these.
 */
import * as v from 'valibot';
import type { Design } from '../design/design.ts';
import type { Bench } from './bench.ts';
import { type Lesson, startBench } from './lesson.ts';
import {
  type Answer,
  answered,
  begin,
  counted,
  next,
  noticed,
  type Phase,
  type Progress,
  pointed,
  recordOf,
  revealed,
  type StepRecord,
  stepOf,
  tried,
} from './progress.ts';

type Told = Pick<StepRecord, 'phase' | 'answer' | 'hands' | 'places'>;

export interface KeptLesson {
  readonly lesson: string;
  readonly step: number;
  readonly finished: boolean;
  /** By the step's name. */
  readonly records: Readonly<Record<string, Told>>;
}

const PHASES = ['notice', 'ask', 'try', 'reveal'] as const satisfies readonly Phase[];
const answer: v.GenericSchema<Answer> = v.variant('kind', [
  v.object({ kind: v.literal('choice'), option: v.string() }),
  v.object({ kind: v.literal('place'), lux: v.number() }),
  v.object({ kind: v.literal('sketch'), volts: v.array(v.number()) }),
  v.object({ kind: v.literal('passed') }),
]);
const schema: v.GenericSchema<readonly KeptLesson[]> = v.array(
  v.object({
    lesson: v.string(),
    step: v.number(),
    finished: v.boolean(),
    records: v.record(
      v.string(),
      v.object({
        phase: v.picklist(PHASES),
        answer: v.nullable(answer),
        hands: v.record(v.string(), v.number()),
        places: v.array(v.number()),
      }),
    ),
  }),
);

/** `before`: lessons from an earlier text that were not opened since. */
export function sittingText(lessons: readonly Progress[], before: readonly KeptLesson[] = []): string {
  const kept = lessons.map(({ lesson, step, finished, round }): KeptLesson => {
    const records = Object.entries(round.records).map(([id, { phase, answer, hands, places }]) => [
      id,
      { phase, answer, hands, places },
    ]);
    return { lesson, step, finished, records: Object.fromEntries(records) };
  });
  return JSON.stringify([...before, ...kept]);
}

/** Empty where the text is none of these. */
export function readSitting(text: string | null): readonly KeptLesson[] {
  try {
    return v.parse(schema, JSON.parse(text ?? ''));
  } catch {
    return [];
  }
}

/** The lesson where it was kept, as far as its steps are still these. */
export function resumed(lesson: Lesson, kept: KeptLesson, own: Bench, base: Design): Progress {
  let now = begin(lesson, own, base);
  for (const [place, { id }] of lesson.steps.entries()) {
    const told = kept.records[id];
    if (!told) break;
    now = withTold(lesson, now, told);
    const isPast = place < kept.step || kept.finished;
    if (!isPast || recordOf(lesson, now).phase !== 'reveal') break;
    now = next(lesson, now, startBench(stepOf(lesson, now), base));
  }
  return now;
}

function withTold(lesson: Lesson, before: Progress, { phase, answer, hands, places }: Told): Progress {
  const reached = PHASES.indexOf(phase);
  let now = before;
  if (reached > PHASES.indexOf('notice')) now = noticed(lesson, now);
  if (answer !== null) now = answered(lesson, now, answer);
  for (const [option, count] of Object.entries(hands)) now = counted(lesson, now, option, count);
  for (const lux of places) now = pointed(lesson, now, lux);
  if (reached > PHASES.indexOf('ask')) now = tried(lesson, now);
  return reached > PHASES.indexOf('try') ? revealed(lesson, now, true) : now;
}
