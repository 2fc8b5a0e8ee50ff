import { describe, expect, test } from 'vitest';
import { withSetting } from '../../src/lesson/controls.ts';
import { startBench } from '../../src/lesson/lesson.ts';
import { LESSON_DESIGN, LESSONS } from '../../src/lesson/lessons.ts';
import { type Condition, holds, UNWATCHED, watched } from '../../src/lesson/watch.ts';
import { moved, RunningBench } from './running.ts';
import { WAYS } from './ways.ts';

const steps = LESSONS.flatMap((lesson) =>
  lesson.steps.map((step) => ({ step, name: `${lesson.id}/${step.id}` })),
);

test('a way is told for every step, and for no other', () => {
  expect(Object.keys(WAYS).toSorted()).toEqual(steps.map(({ name }) => name).toSorted());
});

test('half the usual hysteresis resistor does not yet cure the rippling lamp', () => {
  const { step } = steps.find(({ name }) => name === 'lamp-ripple/cure')!;
  const bench = new RunningBench(startBench(step, LESSON_DESIGN));
  bench.run(1.2);
  expect(bench.frame.shown.A.kind).toBe('chattering');
  expect(moved(bench, ['hysteresis', 330e3], step.watch as Condition)).toBe(false);
  expect(moved(bench, ['hysteresis', 200e3], step.watch as Condition)).toBe(true);
});

test('a cell still dark from the step before is nobody’s doing: what a step waits for counts once it was not so', () => {
  const { step } = steps.find(({ name }) => name === 'comparison/move-the-other')!;
  const watch = step.watch!;
  const bench = new RunningBench(startBench(step, LESSON_DESIGN));
  bench.put(withSetting(bench.start, 'hand A', 1));
  bench.run(1);
  bench.put(bench.start);
  expect(holds(watch as Condition, bench.situation)).toBe(true);
  const left = watched(UNWATCHED, watch, bench.situation);
  expect(left).toBe(UNWATCHED);
  expect(bench.run(6, () => !holds(watch as Condition, bench.situation))).toBe(true);
  const begun = watched(left, watch, bench.situation);
  expect(begun.met).toBe(false);
  expect(moved(bench, ['threshold', 0.05], watch as Condition)).toBe(true);
  expect(watched(begun, watch, bench.situation).met).toBe(true);
});

describe.each(steps)('$name', ({ step, name }) => {
  const watch = step.watch!;
  const conditions = watch.kind === 'in turn' ? watch.of : [watch];

  test('what it waits for is not so when it begins, and comes about with the controls it allows', () => {
    const bench = new RunningBench(startBench(step, LESSON_DESIGN));
    // Long enough for cell, gate and the eye to come to rest; a scene goes on by itself, so only its beginning counts.
    bench.run(step.setup.source === 'scene' ? 0.2 : 0.8, () => {
      expect(holds(conditions[0]!, bench.situation)).toBe(false);
      return false;
    });

    const way = WAYS[name]!;
    expect(way.length).toBe(conditions.length);
    let state = watched(UNWATCHED, watch, bench.situation);
    for (const [i, move] of way.entries()) {
      if (move !== 'wait') expect(step.controls).toContain(move[0]);
      expect(state.met).toBe(false);
      expect(moved(bench, move, conditions[i]!), `${move}`).toBe(true);
      state = watched(state, watch, bench.situation);
      expect(state.place).toBe(i + 1);
    }
    expect(state.met).toBe(true);
    // Once met, it stays met.
    bench.put(bench.start);
    bench.run(0.1);
    expect(watched(state, watch, bench.situation)).toBe(state);
  });
});
