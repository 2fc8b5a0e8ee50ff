import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rename } from '../../src/design/commands.ts';
import { type Bench, DEFAULT_LIGHT } from '../../src/lesson/bench.ts';
import { withSetting } from '../../src/lesson/controls.ts';
import { type Lesson, type Question, startBench } from '../../src/lesson/lesson.ts';
import { LESSON_DESIGN, LESSONS } from '../../src/lesson/lessons.ts';
import {
  type Answer,
  answered,
  back,
  begin,
  benchOf,
  controlsOf,
  counted,
  isMet,
  kept,
  looked,
  next,
  noticed,
  type Progress,
  pointed,
  recordOf,
  resetBench,
  restart,
  revealed,
  stepOf,
  tallyOf,
  toFree,
  toLesson,
  tried,
} from '../../src/lesson/progress.ts';
import { keepsTo } from '../../src/lesson/touched.ts';
import { verdictOn } from '../../src/lesson/verdict.ts';
import { moved, RunningBench } from './running.ts';
import { WAYS } from './ways.ts';

const own: Bench = { design: rename('the maker’s own')(LESSON_DESIGN), light: DEFAULT_LIGHT };
const lessonOf = (id: string): Lesson => LESSONS.find((lesson) => lesson.id === id)!;
const shadow = lessonOf('why-a-shadow-stops-it');
const chatter = lessonOf('hysteresis-and-chatter');

const start = (lesson: Lesson) => begin(lesson, own, LESSON_DESIGN);
function firstAnswer(question: Question): Answer {
  switch (question.kind) {
    case 'choice':
      return { kind: 'choice', option: question.options[0]! };
    case 'place':
      return { kind: 'place', lux: 100 };
    case 'sketch':
      return { kind: 'sketch', volts: question.at.map(() => 4.5) };
  }
}

/** The class's first option, a place, or a flat sketch. */
function guess(lesson: Lesson, progress: Progress): Progress {
  const { question } = stepOf(lesson, progress);
  if (question === null) return progress;
  return tried(lesson, answered(lesson, progress, firstAnswer(question)));
}
const through = (lesson: Lesson, progress: Progress): Progress =>
  next(
    lesson,
    revealed(lesson, guess(lesson, noticed(lesson, progress)), true),
    benchOf(lesson, noticed(lesson, progress)),
  );

test.each(LESSONS.map((lesson) => ({ lesson, id: lesson.id })))(
  '$id is completed by guessing and doing what each step asks, in the running model',
  ({ lesson }) => {
    let progress = start(lesson);
    for (const [i, step] of lesson.steps.entries()) {
      expect(progress.step).toBe(i);
      progress = guess(lesson, noticed(lesson, progress));
      expect(recordOf(lesson, progress).phase).toBe('try');
      expect(revealed(lesson, progress)).toBe(progress);
      const bench = new RunningBench(benchOf(lesson, progress));
      const conditions = step.watch!.kind === 'in turn' ? step.watch!.of : [step.watch!];
      progress = looked(lesson, progress, bench.now, bench.frame);
      for (const [n, move] of WAYS[`${lesson.id}/${step.id}`]!.entries()) {
        moved(bench, move, conditions[n]!);
        progress = looked(lesson, progress, bench.now, bench.frame);
      }
      expect(isMet(lesson, progress), step.id).toBe(true);
      progress = next(lesson, revealed(lesson, progress), bench.now);
    }
    expect(progress.finished).toBe(true);
    expect(progress.own).toBe(own);
  },
);

test('a guess comes before the try: without one nothing may be touched, and the answer cannot be shown', () => {
  const progress = { ...start(shadow), step: 1 };
  expect(recordOf(shadow, progress).phase).toBe('ask');
  expect(controlsOf(shadow, progress)).toEqual([]);
  expect(tried(shadow, progress)).toBe(progress);
  expect(revealed(shadow, progress, true)).toBe(progress);
  expect(answered(shadow, progress, { kind: 'choice', option: 'the lamp' })).toBe(progress);
  expect(answered(shadow, progress, { kind: 'place', lux: 50 })).toBe(progress);
  const passed = tried(shadow, answered(shadow, progress, { kind: 'passed' }));
  expect(controlsOf(shadow, passed)).toEqual(['hand A', 'hand B']);
  // Afterwards the guess stands.
  expect(answered(shadow, passed, { kind: 'choice', option: 'rises' })).toBe(passed);
});

test('a notice comes before the sound that flickers: until it is read the bench is the one from before', () => {
  const progress = start(chatter);
  expect(recordOf(chatter, progress).phase).toBe('notice');
  expect(benchOf(chatter, progress)).toBe(own);
  const free = toFree(chatter, progress, own);
  expect(benchOf(chatter, free)).toBe(own);
  expect(benchOf(chatter, resetBench(chatter, free))).toBe(own);
  const read = noticed(chatter, progress);
  expect(benchOf(chatter, read)).toEqual(startBench(chatter.steps[0]!, LESSON_DESIGN));
  expect(noticed(chatter, read)).toBe(read);
});

test('back finds the step as it was left: bench, guess, hands and what was met', () => {
  let progress = through(shadow, start(shadow));
  progress = counted(shadow, guess(shadow, progress), 'stays', 11);
  const left = withSetting(benchOf(shadow, progress), 'hand A', 0.7);
  progress = next(shadow, revealed(shadow, progress, true), left);
  const there = recordOf(shadow, back(shadow, progress, benchOf(shadow, progress)));
  expect(there).toMatchObject({
    phase: 'reveal',
    answer: { kind: 'choice', option: 'rises' },
    hands: { stays: 11 },
  });
  expect(benchOf(shadow, back(shadow, progress, benchOf(shadow, progress)))).toBe(left);
});

test('free play and back lose nothing on either side', () => {
  const asked = { ...start(shadow), step: 1 };
  const lessonBench = withSetting(benchOf(shadow, asked), 'hand B', 0.4);
  const free = toFree(shadow, asked, lessonBench);
  expect(controlsOf(shadow, free)).toBeNull();
  expect(benchOf(shadow, free)).toBe(lessonBench);
  const played = withSetting(lessonBench, 'pitch A', 0.9);
  const home = toLesson(shadow, free, played);
  expect(benchOf(shadow, home)).toBe(lessonBench);
  expect(recordOf(shadow, home)).toMatchObject({ phase: 'ask', answer: null });
  expect(benchOf(shadow, toFree(shadow, home, lessonBench))).toBe(played);
  // What is done in free play is not the lesson's doing.
  expect(looked(shadow, free, played, new RunningBench(played).frame)).toBe(free);
  // Step back out of free play is the way home, not a step lost.
  expect(back(shadow, free, played).step).toBe(asked.step);
});

test('starting again puts the round aside whole, and the maker’s own bench waits', () => {
  let progress = through(shadow, through(shadow, start(shadow)));
  progress = pointed(shadow, guess(shadow, progress), 70);
  const present = benchOf(shadow, progress);
  const again = restart(shadow, progress, present);
  expect(again).toMatchObject({ step: 0, mode: 'lesson', finished: false, own });
  expect(again.round.records).toEqual({});
  expect(again.earlier).toEqual([kept(shadow, progress, present).round]);
  expect(again.earlier[0]!.records['where-it-stops']).toMatchObject({ places: [70], bench: present });
  expect(restart(shadow, again, benchOf(shadow, again)).earlier.length).toBe(2);
});

test('after the last step back is to that step', () => {
  let progress = start(shadow);
  while (!progress.finished) progress = through(shadow, progress);
  const last = back(shadow, progress, benchOf(shadow, progress));
  expect(last).toMatchObject({ finished: false, step: shadow.steps.length - 1 });
});

test('whatever buttons are pressed, in whatever order, answers and benches of a step are only lost by asking anew (seed 5)', () => {
  const actions: readonly ((p: Progress) => Progress)[] = [
    (p) => noticed(shadow, p),
    (p) => guess(shadow, p),
    (p) => revealed(shadow, p, true),
    (p) => next(shadow, p, benchOf(shadow, p)),
    (p) => back(shadow, p, benchOf(shadow, p)),
    (p) => toFree(shadow, p, benchOf(shadow, p)),
    (p) => toLesson(shadow, p, benchOf(shadow, p)),
    (p) => restart(shadow, p, benchOf(shadow, p)),
    (p) => counted(shadow, p, 'a', 3),
    (p) => pointed(shadow, p, 55),
  ];
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: actions.length - 1 }), { maxLength: 40 }), (presses) => {
      let progress = start(shadow);
      for (const press of presses) {
        const before = progress;
        progress = actions[press]!(progress);
        expect(progress.own).toBe(own);
        expect(progress.step).toBeGreaterThanOrEqual(0);
        expect(progress.step).toBeLessThan(shadow.steps.length);
        const now = press === 7 ? progress.earlier.at(-1)! : progress.round;
        for (const [id, record] of Object.entries(before.round.records)) {
          const after = now.records[id]!;
          if (record.answer !== null) expect(after.answer).not.toBeNull();
          expect(after.places.length).toBeGreaterThanOrEqual(record.places.length);
          for (const option of Object.keys(record.hands)) expect(after.hands).toHaveProperty(option);
          if (record.bench !== null) expect(after.bench).toEqual(record.bench);
        }
      }
    }),
    { seed: 5, numRuns: 60 },
  );
});

describe('the class tally', () => {
  const asked = { ...start(shadow), step: 1 };
  const { question } = shadow.steps[1]!;
  test('counts hands for the options there are, whole and not negative', () => {
    const some = counted(shadow, counted(shadow, asked, 'rises', 12), 'stays', 4);
    expect(tallyOf(question!, recordOf(shadow, some).hands)).toEqual([
      { option: 'rises', hands: 12, share: 0.75 },
      { option: 'falls', hands: 0, share: 0 },
      { option: 'stays', hands: 4, share: 0.25 },
    ]);
    for (const [option, hands] of [
      ['c', 1],
      ['rises', -1],
      ['rises', 1.5],
      ['rises', 100],
    ] as const)
      expect(counted(shadow, some, option, hands)).toBe(some);
  });
  test('is all zeros, not a division by none, before a hand is up', () => {
    for (const { share } of tallyOf(question!, {})) expect(share).toBe(0);
  });
  test('places pointed to can be taken back, last first', () => {
    const place = { ...start(shadow), step: 2 };
    const two = pointed(shadow, pointed(shadow, place, 60), 90);
    expect(recordOf(shadow, two).places).toEqual([60, 90]);
    expect(recordOf(shadow, pointed(shadow, two, null)).places).toEqual([60]);
    expect(pointed(shadow, place, null)).toBe(place);
    expect(pointed(shadow, asked, 60)).toBe(asked);
  });
});

test('the verdict on a place is by factor: near enough either way', () => {
  const step = shadow.steps[2]!;
  const verdict = verdictOn(step, LESSON_DESIGN, { kind: 'place', lux: 80 });
  expect(verdict).toMatchObject({ kind: 'place', right: true });
  const { lux } = verdict as { lux: number };
  const right = (guessed: number) =>
    (verdictOn(step, LESSON_DESIGN, { kind: 'place', lux: guessed }) as { right: boolean }).right;
  expect([lux * 1.39, lux / 1.39, lux * 1.41, lux / 1.41].map(right)).toEqual([true, true, false, false]);
  expect(verdictOn(step, LESSON_DESIGN, { kind: 'passed' })).toMatchObject({ off: null, right: false });
});

test('a sketch counts its points near the model, and is taken only whole', () => {
  const divider = lessonOf('two-resistors-share');
  const at = divider.steps.findIndex(({ question }) => question?.kind === 'sketch');
  const step = divider.steps[at]!;
  const asked = { ...start(divider), step: at };
  const sketched = (volts: readonly number[]) => answered(divider, asked, { kind: 'sketch', volts });
  expect(sketched([9, 8])).toBe(asked);
  expect(sketched([9, 8, -1, 0, 0])).toBe(asked);
  expect(recordOf(divider, sketched([9, 5, 2, 0, 0])).answer).toEqual({
    kind: 'sketch',
    volts: [9, 5, 2, 0, 0],
  });
  // R = R10·(E/10)^−γ below 12 kΩ at 9 V: 7.50, 4.50, 1.50, 0.34, 0.07 V.
  const by = (...volts: number[]) => verdictOn(step, LESSON_DESIGN, { kind: 'sketch', volts });
  expect(by(7.5, 4.5, 1.5, 0.34, 0.07)).toMatchObject({ found: 5, right: true });
  expect(by(0.5, 2, 4, 6, 8)).toMatchObject({ found: 0, right: false });
  expect(by(7.5, 4.5, 4, 0.34, 0.07)).toMatchObject({ found: 4, right: false });
  expect(verdictOn(step, LESSON_DESIGN, { kind: 'passed' })).toMatchObject({ found: null, right: false });
});

test('the one door lets through what a step’s controls write, and nothing else', () => {
  const { controls } = shadow.steps.at(-1)!;
  const bench = startBench(shadow.steps.at(-1)!, LESSON_DESIGN);
  const threshold = withSetting(bench, 'threshold', 0.5).design;
  expect(keepsTo(controls, bench.design, threshold)).toBe(true);
  for (const other of [
    withSetting(bench, 'pitch A', 0.1).design,
    withSetting(bench, 'hysteresis', null).design,
    withSetting(bench, 'cell side', 'top').design,
    rename('x')(threshold),
  ])
    expect(keepsTo(controls, bench.design, other)).toBe(false);
});
