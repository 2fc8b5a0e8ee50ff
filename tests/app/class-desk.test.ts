/** A lesson on a borrowed bench: the maker's own comes back whole, and nothing of the lesson is lost. */
import { expect, test } from 'vitest';
import { ClassDesk } from '../../src/app/class-desk.ts';
import { DocumentStore } from '../../src/app/store.ts';
import { rename, turnPitch, turnThreshold } from '../../src/design/commands.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/design.ts';
import { type Bench, DEFAULT_LIGHT } from '../../src/lesson/bench.ts';
import { withSetting } from '../../src/lesson/controls.ts';
import { LESSON_DESIGN, LESSONS } from '../../src/lesson/lessons.ts';
import { recordOf } from '../../src/lesson/progress.ts';
import { readSitting } from '../../src/lesson/sitting.ts';

const shadow = LESSONS.find(({ id }) => id === 'why-a-shadow-stops-it')!;

/** A page's bench without the page; `kept` is how far lessons came before it was loaded. */
function table(kept: string | null = null) {
  const design = new DocumentStore<Design>(rename('Mine')(DEFAULT_DESIGN));
  let light = DEFAULT_LIGHT;
  let own: Bench['light'] | null = null;
  const sitting = { text: kept };
  const bench = {
    present: () => ({ design: design.current, light }),
    lay: (laid: Bench) => {
      own ??= light;
      design.lend(laid.design);
      light = laid.light;
    },
    giveBack: () => {
      design.giveBack();
      light = own ?? light;
      own = null;
    },
  };
  const desk = new ClassDesk(bench, {
    read: () => kept,
    keep: (text) => {
      sitting.text = text;
    },
  });
  const cover = (share: number) => {
    light = withSetting({ design: design.current, light }, 'hand A', share).light;
  };
  return { design, desk, cover, light: () => light, sitting };
}

test('leaving a lesson gives back the very design, its history and the light', () => {
  const { design, desk, cover, light } = table();
  design.change('turn', turnPitch('A', 0.3));
  const [own, ownLight] = [design.current, light()];
  desk.begin(shadow, LESSON_DESIGN);
  expect(design.current).not.toBe(own);
  expect(design.history).toEqual({ undo: null, redo: null });
  design.change('threshold', turnThreshold('A', 0.9));
  cover(1);
  desk.leave();
  expect(design.current).toBe(own);
  expect(light()).toBe(ownLight);
  expect(design.history).toEqual({ undo: 'turn', redo: null });
  design.undo();
  expect(design.current.name).toBe('Mine');
});

test('a step lets the design change only by its controls, and only once the guess stands; free play lets everything', () => {
  const { design, desk } = table();
  desk.begin(shadow, LESSON_DESIGN);
  desk.showAnyway();
  desk.advance();
  const may = (after: Design) => desk.mayChange(design.current, after);
  for (let step = 1; step < shadow.steps.length - 1; step++) {
    // Past a notice, where there is one; a question is not passed by it.
    desk.advance();
    desk.pass();
    desk.showAnyway();
    desk.advance();
  }
  const turned = turnThreshold('B', 0.4)(turnThreshold('A', 0.4)(design.current));
  expect(may(turned)).toBe(false);
  desk.pass();
  expect(may(turned)).toBe(true);
  expect(may(turnPitch('A', 0.1)(design.current))).toBe(false);
  desk.toggleFree();
  expect(may(turnPitch('A', 0.1)(design.current))).toBe(true);
});

test('free play and back, a step back and on, and leaving and coming again find the bench as it was left', () => {
  const { desk, cover, light } = table();
  desk.begin(shadow, LESSON_DESIGN);
  desk.showAnyway();
  desk.advance();
  desk.answer({ kind: 'choice', option: 'rises' });
  desk.count('rises', 14);
  desk.advance();
  cover(0.7);
  const coverNow = () => light().stage.cover.A;
  desk.toggleFree();
  expect(coverNow()).toBe(0.7);
  // The lesson's keys do nothing to a lesson that waits.
  const waits = desk.open.current;
  desk.advance();
  desk.showAnyway();
  expect(desk.open.current).toBe(waits);
  cover(0.2);
  desk.toggleFree();
  expect(coverNow()).toBe(0.7);
  desk.toggleFree();
  expect(coverNow()).toBe(0.2);
  desk.toggleFree();
  desk.back();
  expect(coverNow()).toBe(0);
  desk.advance();
  expect(coverNow()).toBe(0.7);
  desk.leave();
  expect(desk.leftAt(shadow)).toMatchObject({ step: 1, finished: false });
  desk.begin(shadow, LESSON_DESIGN);
  expect(coverNow()).toBe(0.7);
  const { lesson, progress } = desk.open.current!;
  expect(recordOf(lesson, progress)).toMatchObject({
    phase: 'try',
    answer: { kind: 'choice', option: 'rises' },
    hands: { rises: 14 },
  });
  desk.resetBench();
  expect(coverNow()).toBe(0);
  desk.restart();
  expect(desk.open.current?.progress.earlier).toHaveLength(1);
});

test('on a slow page, too, a state shown in one frame only is one that the step has seen', () => {
  const { desk } = table();
  desk.begin(shadow, LESSON_DESIGN);
  const frame = (time: number, kind: 'sounding' | 'silent') =>
    desk.look({
      time,
      lux: { A: 300, B: 300 },
      node: { A: 1, B: 1 },
      sounding: { A: kind === 'sounding', B: true },
      shown: { A: { kind }, B: { kind: 'sounding' } },
      changed: true,
      peak: 0,
    });
  frame(0, 'sounding');
  frame(0.1, 'silent');
  frame(0.15, 'sounding');
  const { lesson, progress } = desk.open.current!;
  expect(recordOf(lesson, progress).watched.met).toBe(true);
});

test('lessons go on after a reload where they were: step, guess, hands and places', () => {
  const { desk, sitting } = table();
  for (const lesson of LESSONS) {
    desk.begin(lesson, LESSON_DESIGN);
    // To the second step, and to its guess.
    for (let i = 0; i < 20 && desk.open.current!.progress.step === 0; i++) {
      desk.pass();
      desk.showAnyway();
      desk.advance();
    }
    const { question } = lesson.steps[1]!;
    desk.advance();
    if (question?.kind === 'choice') {
      desk.answer({ kind: 'choice', option: question.options.at(-1)! });
      desk.count(question.options[0]!, 7);
    } else if (question?.kind === 'place') {
      desk.answer({ kind: 'place', lux: 20 });
      desk.point(30);
      desk.point(4);
    }
  }
  desk.leave();
  const after = table(sitting.text);
  for (const lesson of LESSONS) {
    const { step, finished } = desk.leftAt(lesson)!;
    expect(after.desk.leftAt(lesson)).toMatchObject({ step, finished });
    after.desk.begin(lesson, LESSON_DESIGN);
    const told = (one: ClassDesk) => {
      const { progress } = one.open.current!;
      const { phase, answer, hands, places } = recordOf(lesson, progress);
      return { step: progress.step, phase, answer, hands, places };
    };
    desk.begin(lesson, LESSON_DESIGN);
    expect(told(after.desk), lesson.id).toEqual(told(desk));
    expect(told(desk).step, lesson.id).toBe(1);
  }
  // What is not opened again is not forgotten.
  const third = table(sitting.text);
  third.desk.begin(shadow, LESSON_DESIGN);
  third.desk.leave();
  expect(
    readSitting(third.sitting.text)
      .map(({ lesson }) => lesson)
      .toSorted(),
  ).toEqual(LESSONS.map(({ id }) => id).toSorted());
});

test('what is kept of another page’s lessons comes in as far as it fits these', () => {
  const asking = LESSONS.find(({ steps: [first] }) => first!.question?.kind === 'choice')!;
  const told = {
    phase: 'reveal',
    answer: { kind: 'choice', option: 'none of these' },
    hands: { no: -3 },
    places: [-1],
  };
  const textWith = (id: string) =>
    JSON.stringify([{ lesson: asking.id, step: 99, finished: true, records: { [id]: told } }]);
  for (const text of ['', '{"lesson":', '[{"lesson":3}]', textWith('gone'), textWith(asking.steps[0]!.id)]) {
    const { desk } = table(text);
    desk.begin(asking, LESSON_DESIGN);
    const { progress } = desk.open.current!;
    expect(progress).toMatchObject({ step: 0, finished: false });
    expect(recordOf(asking, progress)).toMatchObject({ phase: 'ask', answer: null, hands: {}, places: [] });
  }
});
