/**
 * From anything to a lesson, or to complaints that say where (a dotted path), what was read and what would have been
 * accepted. A lesson is taken whole or not at all.
 */
import * as v from 'valibot';
import { LIMITS } from '../design/limits.ts';
import {
  type Accepts,
  entries,
  excerptOf,
  keysOf,
  listOf,
  oneOf,
  says,
  text,
  within,
} from '../design/schema.ts';
import { SCENES } from '../light/scene.ts';
import { VOICES } from '../quantity/units.ts';
import { CAUTION_PLACES } from '../words/cautions.ts';
import { excerpt } from '../words/excerpt.ts';
import { CONTROL_IDS } from './controls.ts';
import { type Change, FIGURES, type Figure } from './figures.ts';
import { LESSON_FORMAT, LESSON_VERSION, type Lesson, NOTICES, STAGE_MODES, STAGES } from './lesson.ts';
import type { Condition } from './watch.ts';

export type LessonComplaint =
  | { readonly kind: 'not a lesson' }
  | { readonly kind: 'value'; readonly path: string; readonly read: string; readonly accepts: Accepts }
  /** Two steps, or two options, of one name: answers are kept by it. */
  | { readonly kind: 'twice'; readonly path: string; readonly read: string };

export type DecodedLesson =
  | { readonly ok: true; readonly lesson: Lesson }
  | { readonly ok: false; readonly complaints: readonly LessonComplaint[] };

const ANY = { min: -1e9, max: 1e9 };
const LUX = { min: 0, max: 100_000 };
const MOST_STEPS = 12;
const MOST_ENTRIES = 40;
const MOST_SKETCHED = 8;
const voice = oneOf(VOICES as ['A', 'B']);
const name = text(40);
const number = within(ANY);
const numberOrNull = v.nullable(number);

/** One of several groups, told apart by an entry. */
const kindOf = (key: string) => says({ kind: 'choice', options: [key] });

const figure: v.GenericSchema<Figure> = v.lazy((input) => {
  switch ((input as { of?: unknown } | null)?.of) {
    case 'ratio':
    case 'middle':
      return entries({ of: oneOf(['ratio', 'middle']), from: figure, to: figure });
    case 'times':
      return entries({ of: oneOf(['times']), figure, factor: number });
    default:
      return entries({
        of: keysOf(FIGURES),
        voice,
        lux: v.exactOptional(within(LUX)),
        shadeLux: v.exactOptional(within(LUX)),
        changes: v.exactOptional(listOf(change, MOST_ENTRIES)),
      });
  }
}) as v.GenericSchema<Figure>;

const change: v.GenericSchema<Change> = entries({
  control: oneOf(CONTROL_IDS),
  value: v.lazy((input) =>
    typeof input === 'object' && input !== null
      ? figure
      : v.union([number, text(40), v.null()], kindOf('value')),
  ),
}) as v.GenericSchema<Change>;

const condition: v.GenericSchema<Condition> = v.lazy((input) => {
  switch ((input as { kind?: unknown } | null)?.kind) {
    case 'rotation between':
      return entries({
        kind: oneOf(['rotation between']),
        trimmer: oneOf(['threshold', 'pitch A', 'pitch B']),
        least: within(LIMITS.fraction),
        most: within(LIMITS.fraction),
      });
    case 'between':
      return entries({ kind: oneOf(['between']), figure, least: numberOrNull, most: numberOrNull });
    case 'changed':
      return entries({ kind: oneOf(['changed']), what: oneOf(CONTROL_IDS) });
    case 'all':
    case 'any':
      return entries({ kind: oneOf(['all', 'any']), of: listOf(condition, MOST_ENTRIES) });
    default:
      return entries({
        kind: oneOf([
          'sounding',
          'silent',
          'chattering',
          'steady',
          'node above reference',
          'node below reference',
        ]),
        voice,
      });
  }
}) as v.GenericSchema<Condition>;

const watch = v.lazy((input) =>
  (input as { kind?: unknown } | null)?.kind === 'in turn'
    ? entries({ kind: oneOf(['in turn']), of: listOf(condition, MOST_ENTRIES) })
    : condition,
);

const bands = listOf(entries({ option: name, below: numberOrNull }), MOST_ENTRIES);
const question = v.lazy((input) => {
  switch ((input as { kind?: unknown } | null)?.kind) {
    case 'place':
      return entries({ kind: oneOf(['place']), voice, answer: figure, near: within({ min: 1.01, max: 10 }) });
    case 'sketch':
      return entries({
        kind: oneOf(['sketch']),
        voice,
        at: listOf(within({ min: 0.1, max: LUX.max }), MOST_SKETCHED),
        near: within(LIMITS.fraction),
      });
    default:
      return entries({
        kind: oneOf(['choice']),
        options: listOf(name, MOST_ENTRIES),
        fact: entries({ figure, bands }),
      });
  }
});

const stages = Object.fromEntries(STAGES.map((stage) => [stage, oneOf(STAGE_MODES)]));

const step = entries({
  id: name,
  setup: entries({
    source: oneOf(['stage', 'scene', 'camera']),
    scene: v.nullable(keysOf(SCENES)),
    changes: listOf(change, MOST_ENTRIES),
  }),
  controls: listOf(oneOf(CONTROL_IDS), CONTROL_IDS.length),
  voices: oneOf(['A', 'both']),
  stages: entries(stages),
  notices: listOf(oneOf(NOTICES), NOTICES.length),
  question: v.nullable(question),
  watch: v.nullable(watch),
  figures: v.record(name, figure, says({ kind: 'entries' })),
});

const lesson = entries({
  format: v.literal(LESSON_FORMAT, says({ kind: 'choice', options: [LESSON_FORMAT] })),
  version: v.literal(LESSON_VERSION, says({ kind: 'choice', options: [String(LESSON_VERSION)] })),
  id: name,
  order: within({ min: 1, max: 99 }, 'whole'),
  minutes: within({ min: 3, max: 8 }, 'whole'),
  cautions: listOf(oneOf(CAUTION_PLACES), CAUTION_PLACES.length),
  steps: listOf(step, MOST_STEPS),
});

/** Complaints shown at once. */
const MOST_COMPLAINTS = 8;

export function decodeLesson(value: unknown): DecodedLesson {
  if (typeof value !== 'object' || value === null || (value as { format?: unknown }).format !== LESSON_FORMAT)
    return { ok: false, complaints: [{ kind: 'not a lesson' }] };
  const result = v.safeParse(lesson, value);
  if (!result.success)
    return { ok: false, complaints: result.issues.slice(0, MOST_COMPLAINTS).map(complaintOf) };
  const read = result.output as Lesson;
  const complaints = [...doubles(read), ...strangeAnswers(read)].slice(0, MOST_COMPLAINTS);
  return complaints.length > 0 ? { ok: false, complaints } : { ok: true, lesson: read };
}

/** Answers and words are kept by a step's name, and tallies by an option's. */
function doubles({ steps }: Lesson): readonly LessonComplaint[] {
  const names = [
    { path: 'steps', of: steps.map(({ id }) => id) },
    ...steps.map(({ question: q }, i) => ({
      path: `steps.${i}.question.options`,
      of: q?.kind === 'choice' ? q.options : [],
    })),
  ];
  return names.flatMap(({ path, of }) =>
    of
      .filter((each, i) => of.indexOf(each) !== i)
      .map((read): LessonComplaint => ({ kind: 'twice', path, read })),
  );
}

/** A right answer that is not among those offered. */
function strangeAnswers({ steps }: Lesson): readonly LessonComplaint[] {
  return steps.flatMap(({ question: q }, i) =>
    q?.kind !== 'choice'
      ? []
      : q.fact.bands.flatMap(({ option }, j): readonly LessonComplaint[] =>
          q.options.includes(option)
            ? []
            : [
                {
                  kind: 'value',
                  path: `steps.${i}.question.fact.bands.${j}.option`,
                  read: JSON.stringify(option),
                  accepts: { kind: 'choice', options: q.options },
                },
              ],
        ),
  );
}

function complaintOf(issue: v.BaseIssue<unknown>): LessonComplaint {
  const unknownEntry = issue.type === 'strict_object' && issue.expected === 'never';
  return {
    kind: 'value',
    path: excerpt(v.getDotPath(issue) ?? '', 80),
    read: excerptOf(issue.input),
    accepts: unknownEntry ? { kind: 'no such entry' } : acceptsFrom(issue.message),
  };
}

function acceptsFrom(message: string): Accepts {
  try {
    return JSON.parse(message) as Accepts;
  } catch {
    return { kind: 'entries' };
  }
}
