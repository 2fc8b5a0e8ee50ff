/** What a class does at a lesson, by keys alone: begin, guess, move a control, see what came out. */
import type { Locator, Page } from 'playwright-core';
import { CONTROLS, type ControlId, type Setting } from '../../../src/lesson/controls.ts';
import type { Lesson, Step } from '../../../src/lesson/lesson.ts';
import { LESSON_DESIGN, LESSONS } from '../../../src/lesson/lessons.ts';
import { fractionAt } from '../../../src/views/controls/stepping.ts';
import { words } from '../../../src/words/en.ts';
import { classPage } from '../../../src/words/en-class.ts';
import { englishLessons } from '../../../src/words/en-lessons.ts';
import { WAYS } from '../../lesson/ways.ts';
import { button, press } from './visit.ts';

const { go, controls, choices, met } = englishLessons;

export const titleOf = (lesson: Lesson): string =>
  englishLessons.lessons[lesson.id as keyof typeof englishLessons.lessons].title;
export const lessonOf = (id: string): Lesson => LESSONS.find((lesson) => lesson.id === id)!;
export const advance = (page: Page): Locator => page.locator('#advance');
export const begin = (page: Page, lesson: Lesson): Promise<void> =>
  button(page, classPage.begin(titleOf(lesson))).press('Enter');

/** Goes to another place by its link, and waits until it stands there. */
export async function goTo(page: Page, place: 'listen' | 'class'): Promise<void> {
  await page.getByRole('link', { name: words.places.names[place] }).click();
  await page.locator(`place-${place}`).waitFor();
}

/** Turns a slider to a place on its track with as few keys as its steps allow. */
async function slide(page: Page, name: string, control: ControlId, value: number): Promise<void> {
  const { min, max, scale } = CONTROLS[control] as Extract<(typeof CONTROLS)[ControlId], { kind: 'number' }>;
  const wanted = Math.round(1000 * fractionAt(value, { min, max, scale, offAtStart: false }));
  const slider = page.getByRole('slider', { name, exact: true });
  await slider.focus();
  for (const [step, up, down] of [
    [100, 'PageUp', 'PageDown'],
    [10, 'ArrowRight', 'ArrowLeft'],
    [1, 'Shift+ArrowRight', 'Shift+ArrowLeft'],
  ] as const) {
    const off = wanted - Number(await slider.inputValue());
    await press(page, off > 0 ? up : down, Math.floor(Math.abs(off) / step));
  }
}

/** Moves a control as a class does. */
async function move(page: Page, id: ControlId, value: Setting): Promise<void> {
  const name = controls[id];
  const control = CONTROLS[id];
  if (control.kind === 'press') return button(page, name).press('Enter');
  if (control.kind === 'choice') {
    await page
      .getByRole('combobox', { name, exact: true })
      .selectOption({ label: choices[value as keyof typeof choices] });
    return;
  }
  if (id === 'threshold' || id === 'pitch A' || id === 'pitch B') {
    // A digit typed on the dial goes on in its box.
    await page.getByRole('slider', { name, exact: true }).focus();
    await page.keyboard.type(`${(Number(value) * 100).toFixed(1)} %`);
    await page.keyboard.press('Enter');
    return;
  }
  const fitted = page.getByRole('checkbox', { name: `${name}: ${classPage.controls.fitted}`, exact: true });
  if (control.orNone && !(await fitted.isChecked())) {
    await fitted.press(' ');
    // What is fitted is the usual one: where a step asks for no other, that is all there is to do.
    if (value === LESSON_DESIGN.voices.A.hysteresisOhms) return;
  }
  await slide(page, name, id, Number(value));
}

/** The slider of a sketch for one of its lights. */
const sketchSlider = (lux: number) => classPage.guess.at(`${words.luxNumber(lux)}\u00a0lx`);

/** Answers whatever comes first, and counts hands or marks a place. */
export async function guess(page: Page, step: Step): Promise<void> {
  if (step.question?.kind === 'choice') {
    await page.getByRole('radio').and(page.locator('[name=guess]')).first().press(' ');
    for (const [i, box] of (await page.locator('.hands').all()).entries()) await box.fill(String(10 + i));
  }
  if (step.question?.kind === 'sketch')
    await page.getByRole('slider', { name: sketchSlider(step.question.at[0]!), exact: true }).press('PageUp');
  if (step.question?.kind === 'place') {
    await page.getByRole('slider', { name: classPage.guess.slider }).press('ArrowLeft');
    await button(page, classPage.guess.add).press('Enter');
  }
}

/** Does what the step waits for; in the order it waits for it. */
async function tried(page: Page, lesson: Lesson, step: Step): Promise<void> {
  const name = `${lesson.id}/${step.id}`;
  const done = page.getByText(met.done, { exact: true });
  if ((await done.count()) > 0) throw new Error(`${name}: met before anything was done`);
  const parts = step.watch?.kind === 'in turn' ? step.watch.of.length : 1;
  for (const [i, way] of WAYS[name]!.entries()) {
    if (way === 'wait') continue;
    await move(page, ...way);
    // The first part has to be seen before the next begins: the step says so.
    if (i < parts - 1) await page.getByText(met.part, { exact: true }).waitFor({ timeout: 15_000 });
  }
  await done.waitFor({ timeout: 15_000 }).catch(() => {
    throw new Error(`${name}: what it waits for did not come`);
  });
}

/** Through a step; `look` is called with each phase as it stands, finished. */
export async function through(
  page: Page,
  lesson: Lesson,
  step: Step,
  look: (phase: 'notice' | 'ask' | 'try' | 'reveal') => Promise<void> = async () => undefined,
): Promise<void> {
  if (step.notices.length > 0) {
    await look('notice');
    await advance(page).press('Enter');
  }
  if (step.question) {
    await guess(page, step);
    await look('ask');
    await advance(page).press('Enter');
  }
  await tried(page, lesson, step);
  await look('try');
  await advance(page).press('Enter');
  await page.locator('.verdict').waitFor();
  await look('reveal');
}

/** Quickly to a step and a phase of it, by the presenter's keys. */
export async function skipTo(page: Page, lesson: Lesson, to: number, phase: 'try' | 'reveal'): Promise<void> {
  for (const [i, step] of lesson.steps.slice(0, to + 1).entries()) {
    await page.getByText(classPage.step(i + 1, lesson.steps.length), { exact: true }).waitFor();
    if (step.notices.length > 0) await page.keyboard.press('ArrowRight');
    if (step.question) await button(page, go.pass).press('Enter');
    if (i === to && phase === 'try') return;
    await page.keyboard.press(' ');
    await page.locator('.verdict').waitFor();
    if (i < to) await page.keyboard.press('ArrowRight');
  }
}
