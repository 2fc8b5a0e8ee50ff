/** A class at the built page: every lesson by keyboard, nothing lost, nothing flashing, sheets, links, access. */
import type { Locator, Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import type { Look } from '../../src/app/session.ts';
import { CONTROLS, type ControlId, type Setting } from '../../src/lesson/controls.ts';
import { type Lesson, STAGES, type Step } from '../../src/lesson/lesson.ts';
import { LESSONS } from '../../src/lesson/lessons.ts';
import { fractionAt } from '../../src/views/controls/stepping.ts';
import { words } from '../../src/words/en.ts';
import { classPage } from '../../src/words/en-class.ts';
import { englishLessons } from '../../src/words/en-lessons.ts';
import { WAYS } from '../lesson/ways.ts';
import { axeSource, faults } from './support/access.ts';
import { oneBrowser, openPage, type PageOptions } from './support/browser.ts';
import { button, hand, press, soundButton, tabTo, trimmer, trimmerBox } from './support/visit.ts';

const { go, controls, choices, met } = englishLessons;
const titleOf = (lesson: Lesson) =>
  englishLessons.lessons[lesson.id as keyof typeof englishLessons.lessons].title;
const lessonOf = (id: string) => LESSONS.find((lesson) => lesson.id === id)!;
const advance = (page: Page): Locator => page.locator('#advance');
const browser = oneBrowser();

const visit = (hash = '#/class', options: PageOptions = {}) =>
  openPage(browser(), `${inject('house').site}${hash}`, options);

const begin = (page: Page, lesson: Lesson) => button(page, classPage.begin(titleOf(lesson))).press('Enter');

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

/** Moves a control as a class does, by keys alone. */
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
  if (control.orNone && !(await fitted.isChecked())) await fitted.press(' ');
  await slide(page, name, id, Number(value));
}

/** Guesses (whatever comes first), does what the step waits for, and sees what came out. */
async function through(page: Page, lesson: Lesson, step: Step): Promise<void> {
  if (step.notices.length > 0) await advance(page).press('Enter');
  if (step.question?.kind === 'choice')
    await page.getByRole('radio').and(page.locator('[name=guess]')).first().press(' ');
  if (step.question?.kind === 'place')
    await page.getByRole('slider', { name: classPage.guess.slider }).press('ArrowLeft');
  if (step.question) await advance(page).press('Enter');
  const done = page.getByText(met.done, { exact: true });
  expect(await done.count(), `${lesson.id}, ${step.id}: met before anything was done`).toBe(0);
  const steps = step.watch?.kind === 'in turn' ? step.watch.of.length : 1;
  for (const [i, way] of WAYS[`${lesson.id}/${step.id}`]!.entries()) {
    if (way === 'wait') continue;
    await move(page, ...way);
    // The first of two has to be seen before the second begins: the gate says so.
    if (i < steps - 1)
      await page.locator('[data-stage=gate]').getByText(words.strip.silent).first().waitFor();
  }
  await done.waitFor({ timeout: 15_000 }).catch(() => {
    throw new Error(`${lesson.id}, ${step.id}: what it waits for did not come`);
  });
  await advance(page).press('Enter');
  await page.locator('.verdict').waitFor();
}

/** Own things, to be found again. */
async function makeOwn(page: Page): Promise<void> {
  await trimmer(page, 'A').press('PageUp');
  await hand(page, 'B').press('End');
  await page.getByRole('textbox', { name: words.bar.name, exact: true }).fill('Mine');
  await page.keyboard.press('Enter');
  await page.evaluate(() => {
    location.hash = '#/class';
  });
}

const ownOf = async (page: Page) => ({
  name: await page.getByRole('textbox', { name: words.bar.name, exact: true }).inputValue(),
  pitch: await trimmerBox(page, 'A').inputValue(),
  hand: await hand(page, 'B').inputValue(),
  undo: await button(page, words.bar.undo).isEnabled(),
  kept: await page.evaluate(() => localStorage.getItem('lampnote.design')),
});

const [third, twoThirds] = [Math.ceil(LESSONS.length / 3), Math.ceil((2 * LESSONS.length) / 3)];

test('every lesson is finished by keyboard alone; the maker’s own design and light come back untouched', async () => {
  const shares = [LESSONS.slice(0, third), LESSONS.slice(third, twoThirds), LESSONS.slice(twoThirds)];
  await Promise.all(
    shares.map(async (lessons, nth) => {
      const { page, close } = await visit('#/listen');
      await makeOwn(page);
      await page.getByRole('link', { name: words.places.names.listen }).click();
      const own = await ownOf(page);
      expect(own).toMatchObject({ name: 'Mine', undo: true });
      await page.getByRole('link', { name: words.places.names.class }).click();
      for (const [i, lesson] of lessons.entries()) {
        // Once with every stop on the way; after that the focus is put where Tab would bring it.
        if (nth === 0 && i === 0) await tabTo(page, button(page, classPage.begin(titleOf(lesson))));
        await begin(page, lesson);
        for (const step of lesson.steps) {
          await through(page, lesson, step);
          await advance(page).press('Enter');
        }
        await page.getByText(classPage.finished, { exact: true }).first().waitFor();
        await button(page, go.leave).press('Enter');
      }
      await page.getByRole('link', { name: words.places.names.listen }).click();
      expect(await ownOf(page)).toEqual(own);
      await close();
    }),
  );
}, 180_000);

test('going back, starting again, free play and leaving lose nothing', async () => {
  const { page, close } = await visit();
  const lesson = lessonOf('why-a-shadow-stops-it');
  const [, which] = lesson.steps;
  await begin(page, lesson);
  await button(page, go.showAnyway).press('Enter');
  await advance(page).press('Enter');
  const hands = page.getByRole('spinbutton').first();
  await hands.fill('14');
  await through(page, lesson, which!);
  const handA = page.getByRole('slider', { name: controls['hand A'], exact: true });
  const place = await handA.inputValue();
  const step = (n: number) =>
    page.getByText(classPage.step(n, lesson.steps.length), { exact: true }).waitFor();

  // Presenter's keys, with nothing that takes them in focus.
  await page.locator('#title').focus();
  await page.keyboard.press('ArrowLeft');
  await step(1);
  await page.keyboard.press('ArrowRight');
  await step(2);
  expect(await handA.inputValue()).toBe(place);
  await page.getByText('14', { exact: true }).waitFor();

  await page.locator('#title').focus();
  await page.keyboard.press('f');
  await page.getByText(classPage.freeText, { exact: true }).waitFor();
  await handA.press('Home');
  await button(page, go.toLesson).focus();
  await page.keyboard.press('f');
  await step(2);
  expect(await handA.inputValue()).toBe(place);
  await button(page, go.free).press('f');
  await page.getByText(classPage.freeText, { exact: true }).waitFor();
  expect(await handA.inputValue(), 'free play is found as it was left').toBe('0');
  await button(page, go.toLesson).press('f');

  await page.getByRole('link', { name: words.places.names.listen }).click();
  await expect
    .poll(() => hand(page, 'A').inputValue(), { message: 'the lesson’s hand stays in the lesson' })
    .toBe('0');
  await page.getByRole('link', { name: words.places.names.class }).click();
  await button(page, classPage.goOn(titleOf(lesson), 2, lesson.steps.length)).press('Enter');
  expect(await handA.inputValue()).toBe(place);
  await button(page, go.restart).press('Enter');
  await step(1);
  await close();
});

test('while the model chatters a hundred times a second the picture flashes at most three times a second', async () => {
  const { page, close } = await visit('#/class', { reducedMotion: 'no-preference' });
  const lesson = lessonOf('lamp-ripple');
  await begin(page, lesson);
  await advance(page).press('Enter');
  await button(page, go.pass).press('Enter');
  await page
    .getByRole('combobox', { name: controls['mains lamp'], exact: true })
    .selectOption({ label: choices['led-poor'] });
  const gate = page.locator('[data-stage=gate]');
  await gate.getByText(/chattering, (9\d|1[01]\d) times a second/).waitFor({ timeout: 15_000 });
  const seen = await page.locator('signal-picture').evaluate(async (picture) => {
    const changes: Record<string, number[]> = {};
    const before = new Map<string, string>();
    const start = performance.now();
    let frames = 0;
    while (performance.now() - start < 4000) {
      const now = await new Promise<number>((next) => requestAnimationFrame(next));
      frames += 1;
      for (const part of picture.shadowRoot!.querySelectorAll<HTMLElement>('[data-stage]')) {
        const stage = part.dataset['stage']!;
        // What is drawn and how: which marks there are, and what they look like; a mark that moves a little is none.
        const looks = [...part.querySelectorAll('svg.part *')].map(
          (one) => `${one.localName} ${one.getAttribute('class')}`,
        );
        const text = `${looks.join()} ${stage === 'gate' || stage === 'tone' ? part.textContent : ''}`;
        if (before.has(stage) && before.get(stage) !== text)
          changes[stage] = [...(changes[stage] ?? []), now];
        before.set(stage, text);
      }
    }
    return { changes, frames };
  });
  expect(seen.frames).toBeGreaterThan(20);
  for (const stage of STAGES) {
    const times = seen.changes[stage] ?? [];
    // Two opposite changes are one flash.
    const most = Math.max(
      0,
      ...times.map((from) => times.filter((t) => t >= from && t < from + 1000).length),
    );
    expect(most, stage).toBeLessThanOrEqual(6);
  }
  await close();
});

test('work sheets and answers are printed alone, in usual and large letters', async () => {
  const { page, close } = await visit();
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  await button(page, classPage.sheets.print).press('Enter');
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.paper .sheet').count()).toBe(20);
  expect(await page.locator('lamp-note').isVisible()).toBe(false);
  expect(await page.locator('.paper .sheet').first().isVisible()).toBe(true);
  const sizeOf = () =>
    page
      .locator('.paper li')
      .first()
      .evaluate((li) => Number.parseFloat(getComputedStyle(li).fontSize));
  const usual = await sizeOf();
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await page.emulateMedia({ media: 'screen' });
  expect(await page.locator('.paper').count()).toBe(0);
  await page.getByRole('radio', { name: classPage.sheets.sizes.large, exact: true }).check();
  await button(page, classPage.sheets.print).press('Enter');
  await page.emulateMedia({ media: 'print' });
  expect(await sizeOf()).toBeGreaterThan(1.5 * usual);
  await close();
});

test('on this computer only the page says why it gives no link, and gives one for a typed https address', async () => {
  const { page, close } = await visit();
  const { handOver: says } = classPage;
  await page.getByText(says.why['this computer only'], { exact: true }).waitFor();
  const address = page.getByRole('textbox', { name: says.hosted, exact: true });
  await address.fill('http://school.example/');
  await address.press('Enter');
  await page.getByText(says.hostedWrong('http://school.example/'), { exact: true }).waitFor();
  await address.fill('https://school.example/lampnote/');
  await address.press('Enter');
  await page.getByRole('img', { name: says.code, exact: true }).waitFor();
  const link = new URL((await page.locator('class-link code').textContent())!);
  expect(link.href).toBe(`https://school.example/lampnote/#/class?lesson=${LESSONS[0]!.id}&sound=muted`);
  // The same part of the address opens that lesson here; with sound=off nobody can switch it on.
  await page.evaluate(
    (hash) => {
      location.hash = hash;
    },
    link.hash.replace('muted', 'off'),
  );
  await page.getByRole('heading', { name: titleOf(LESSONS[0]!), exact: true }).waitFor();
  expect(await soundButton(page).first().isDisabled()).toBe(true);
  await close();
});

test('a link with sound=on starts the sound with the first press', async () => {
  const { page, close } = await visit('#/class?sound=on');
  await page.keyboard.press('Tab');
  await soundButton(page, words.bar.soundOff).first().waitFor();
  await close();
});

test('in full view and in every lesson axe finds nothing, in each look, and 320 px are wide enough', async () => {
  const { page, close } = await visit();
  const looks = Object.keys(words.bar.looks) as Look[];
  const wear = (look: Look) =>
    page
      .getByRole('group', { name: words.bar.look, exact: true })
      .getByRole('radio', { name: words.bar.looks[look], exact: true })
      .check();
  const unfold = () =>
    page.locator('place-class details').evaluateAll((all) => {
      for (const fold of all) (fold as HTMLDetailsElement).open = true;
    });
  const within = ['lamp-note', 'place-class'];
  const found: Record<string, readonly string[]> = {};
  const look = async (state: string, asked: 'all' | 'look' = 'all') => {
    await unfold();
    const list = await faults(page, within, asked);
    if (list.length > 0) found[state] = list;
  };
  await page.evaluate(axeSource);
  for (const one of looks) {
    await wear(one);
    await look(`list, ${one}`, one === looks[0] ? 'all' : 'look');
  }
  for (const [i, lesson] of LESSONS.entries()) {
    const one = looks[i % looks.length]!;
    await wear(one);
    await page.setViewportSize(i % 2 === 0 ? { width: 1280, height: 720 } : { width: 320, height: 720 });
    await begin(page, lesson);
    await look(`${lesson.id}, ${one}`, i % 3 === 0 ? 'all' : 'look');
    if (lesson.id === 'why-a-shadow-stops-it') {
      await through(page, lesson, lesson.steps[0]!);
      await advance(page).press('Enter');
      await through(page, lesson, lesson.steps[1]!);
      await look(`${lesson.id}, what came out, ${one}`);
    }
    if (i < looks.length) {
      await page.getByRole('button', { name: go.free }).press('Enter');
      await page.getByText(classPage.freeText, { exact: true }).waitFor();
      await look(`free play, ${one}`);
      await page.getByRole('button', { name: go.toLesson }).press('Enter');
    }
    await button(page, go.leave).press('Enter');
  }
  expect(found).toEqual({});
  await close();
}, 120_000);
