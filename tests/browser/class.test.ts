/** A class at the built page: every lesson by keyboard, on the projector, nothing lost, nothing flashing. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { STAGES } from '../../src/lesson/lesson.ts';
import { LESSONS } from '../../src/lesson/lessons.ts';
import { germanLists } from '../../src/words/de.ts';
import { words } from '../../src/words/en.ts';
import { classPage } from '../../src/words/en-class.ts';
import { englishLessons } from '../../src/words/en-lessons.ts';
import { speak } from '../../src/words/spoken.ts';
import { smallWriting } from './support/access.ts';
import { oneBrowser, openPage, type PageOptions } from './support/browser.ts';
import { advance, begin, goTo, guess, lessonOf, through, titleOf } from './support/lesson-visit.ts';
import { outOfSight, type PictureWatched, watchPicture } from './support/lesson-watch.ts';
import { button, hand, soundButton, tabTo, trimmer, trimmerBox } from './support/visit.ts';

const { go, controls, choices, met } = englishLessons;
const browser = oneBrowser();

const visit = (hash = '#/class', options: PageOptions = {}) =>
  openPage(browser(), `${inject('house').site}${hash}`, options);

/** Own things, to be found again. */
async function makeOwn(page: Page): Promise<void> {
  await trimmer(page, 'A').press('PageUp');
  await hand(page, 'B').press('End');
  await page.getByRole('textbox', { name: words.bar.name, exact: true }).fill('Mine');
  await page.keyboard.press('Enter');
}

const ownOf = async (page: Page) => ({
  name: await page.getByRole('textbox', { name: words.bar.name, exact: true }).inputValue(),
  pitch: await trimmerBox(page, 'A').inputValue(),
  hand: await hand(page, 'B').inputValue(),
  undo: await button(page, words.bar.undo).isEnabled(),
  kept: await page.evaluate(() => localStorage.getItem('lampnote.design')),
});

const nothingFocused = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.activeElement === null || document.activeElement === document.body);

/**
 * Every lesson, on a projector of the usual size, once, in the language with the longer words; what each test wants to
 * know is noted on the way.
 */
describe('every lesson by keyboard alone, in German, projected at 1280 × 720', () => {
  const share = Math.ceil(LESSONS.length / 3);
  const shares = [0, 1, 2].map((nth) => LESSONS.slice(nth * share, (nth + 1) * share));
  const finished: string[] = [];
  const hidden: Record<string, readonly string[]> = {};
  const tooSmall: Record<string, readonly string[]> = {};
  const lost: string[] = [];
  const watched: PictureWatched[] = [];
  const owns: (readonly [before: unknown, after: unknown])[] = [];

  beforeAll(async () => {
    speak('de', germanLists);
    const walks = shares.map(async (lessons, nth) => {
      const { page, close } = await visit('#/listen?lang=de', {
        viewport: { width: 1280, height: 720 },
        reducedMotion: 'no-preference',
      });
      await makeOwn(page);
      const before = await ownOf(page);
      await goTo(page, 'class');
      await button(page, classPage.present.projector).press('Enter');
      const read = await watchPicture(page);
      for (const [i, lesson] of lessons.entries()) {
        // Once with every stop on the way; after that the focus is put where Tab would bring it.
        if (nth === 0 && i === 0) await tabTo(page, button(page, classPage.begin(titleOf(lesson))));
        await begin(page, lesson);
        for (const step of lesson.steps) {
          await through(page, lesson, step, async (phase) => {
            const state = `${lesson.id}, ${step.id}, ${phase}`;
            const parts = await outOfSight(page);
            if (parts.length > 0) hidden[state] = parts;
            const { small } = await smallWriting(page, 24);
            if (small.length > 0) tooSmall[state] = small;
            if (await nothingFocused(page)) lost.push(state);
          });
          await advance(page).press('Enter');
        }
        await page.getByText(classPage.finished, { exact: true }).first().waitFor();
        finished.push(lesson.id);
        if (await nothingFocused(page)) lost.push(`${lesson.id}, finished`);
        await button(page, go.leave).press('Enter');
      }
      watched.push(await read());
      await button(page, classPage.present.projectorEnd).first().press('Enter');
      await goTo(page, 'listen');
      owns.push([before, await ownOf(page)]);
      await close();
    });
    await Promise.all(walks).finally(() => speak('en'));
  }, 180_000);

  test('is finished', () => {
    expect(finished.toSorted()).toEqual(LESSONS.map(({ id }) => id).toSorted());
  });

  test('never loses the focus of the keyboard', () => {
    expect(lost).toEqual([]);
  });

  test('gives the maker’s own design and light back untouched', () => {
    expect(owns).toHaveLength(shares.length);
    for (const [before, after] of owns) {
      expect(before).toMatchObject({ name: 'Mine', undo: true });
      expect(after).toEqual(before);
    }
  });

  test('has picture, question, answers, controls, tally and the way on in sight, none smaller than 24 px', () => {
    expect(hidden).toEqual({});
    expect(tooSmall).toEqual({});
  });

  test('never draws one state and tells another, while voices sound, fall silent and chatter', () => {
    expect(watched.flatMap(({ apart }) => apart)).toEqual([]);
    for (const state of ['sounding', 'silent', 'chattering'])
      expect(Math.max(...watched.map(({ seen }) => seen[state] ?? 0)), state).toBeGreaterThan(20);
  });
});

test('going back, starting again, free play and leaving lose nothing', async () => {
  const { page, close } = await visit();
  const lesson = lessonOf('why-a-shadow-stops-it');
  const [, second] = lesson.steps;
  await begin(page, lesson);
  await button(page, go.showAnyway).press('Enter');
  await advance(page).press('Enter');
  await guess(page, second!);
  // A clicker goes on, from the box a count is still typed in.
  await page.locator('.hands').first().fill('14');
  await page.keyboard.press('PageDown');
  const handA = page.getByRole('slider', { name: controls['hand A'], exact: true });
  await handA.press('End');
  const step = (n: number) =>
    page.getByText(classPage.step(n, lesson.steps.length), { exact: true }).waitFor();
  const title = page.locator('#title');

  // Enter goes on from the slider, once the step has what it waits for.
  await page.getByText(met.done, { exact: true }).waitFor();
  await handA.press('Enter');
  await page.locator('.verdict').waitFor();

  // Presenter's keys, with nothing that takes them in focus.
  await title.focus();
  await page.keyboard.press('ArrowLeft');
  await step(1);
  await page.keyboard.press('ArrowRight');
  await step(2);
  expect(await handA.inputValue()).toBe('1000');
  await page.getByText('14', { exact: true }).waitFor();

  await title.focus();
  await page.keyboard.press('f');
  await page.getByText(classPage.freeText, { exact: true }).waitFor();
  await handA.press('Home');
  await button(page, go.toLesson).press('f');
  await step(2);
  expect(await handA.inputValue()).toBe('1000');
  await button(page, go.free).press('f');
  await page.getByText(classPage.freeText, { exact: true }).waitFor();
  expect(await handA.inputValue(), 'free play is found as it was left').toBe('0');
  await button(page, go.toLesson).press('f');

  await goTo(page, 'listen');
  expect(await hand(page, 'A').inputValue(), 'the lesson’s hand stays in the lesson').toBe('0');
  await goTo(page, 'class');
  await button(page, classPage.goOn(titleOf(lesson), 2, lesson.steps.length)).press('Enter');
  expect(await handA.inputValue()).toBe('1000');
  await button(page, go.restart).press('Enter');
  await step(1);

  // S is the sound; notes that no window will take are not read out to the class; keys that are off do nothing.
  await title.focus();
  await page.keyboard.press('s');
  await soundButton(page, words.bar.soundOff).first().waitFor();
  await page.keyboard.press('p');
  await page.evaluate(() => {
    window.open = () => null;
  });
  await page.keyboard.press('n');
  await page.getByText(classPage.present.notesNotProjected, { exact: true }).waitFor();
  expect(await page.getByText(englishLessons.lessons[lesson.id as 'comparison'].wrongIdeas[0]).count()).toBe(
    0,
  );
  await page.keyboard.press('p');
  await page.getByText(classPage.present.notesBlocked, { exact: true }).waitFor();
  await button(page, go.leave).press('Enter');
  await page.getByRole('checkbox', { name: classPage.present.keysOn, exact: true }).press(' ');
  await begin(page, lessonOf('comparison'));
  await page.keyboard.press('f');
  await page.keyboard.press('s');
  expect(await page.getByText(classPage.freeText, { exact: true }).count()).toBe(0);
  expect(await soundButton(page, words.bar.soundOff).count()).toBeGreaterThan(0);
  await close();
});

test('while the model chatters a hundred times a second the picture flashes at most three times a second', async () => {
  const { page, close } = await visit('#/class', { reducedMotion: 'no-preference' });
  await begin(page, lessonOf('lamp-ripple'));
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
    while (performance.now() - start < 2500) {
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
