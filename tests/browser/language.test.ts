/** German from the bar, by keyboard; room for longer words, in lessons too; back to English; kept over a reload. */
import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { PLACES } from '../../src/app/address.ts';
import { SHEETS, type Sheet } from '../../src/app/kit-desk.ts';
import { STAGES } from '../../src/lesson/lesson.ts';
import { germanLists } from '../../src/words/de.ts';
import { germanKit } from '../../src/words/de-kit.ts';
import { germanPage } from '../../src/words/de-page.ts';
import { words } from '../../src/words/en.ts';
import { kitViewWords } from '../../src/words/en-kit.ts';
import { speak } from '../../src/words/spoken.ts';
import { oneBrowser, openPage } from './support/browser.ts';
import { clipped, lengthen, unfold } from './support/longer.ts';
import { overlapping } from './support/overlap.ts';
import { drawnAnew, showMore, strip, tabTo } from './support/visit.ts';

const { site } = inject('house');
const WIDE = { width: 1280, height: 900 };
const NARROW = { width: 320, height: 700 };
/** A4 within margins of 12 mm. */
const PAPER = { width: 703, height: 1032 };
const LECTURE = { width: 1280, height: 720 };
/** Between them every part of the picture, hidden, shown and slowed; questions of both kinds, notices, the camera. */
const WALKED = ['why-a-shadow-stops-it', 'the-first-cycle', 'this-very-room'];
const browser = oneBrowser();

/** Waits for what a sheet of the kit makes in its worker. */
const WORKED: Partial<Record<Sheet, string>> = {
  board: 'board-picture',
  cards: 'board-picture',
  faults: 'faults-panel .next',
  whatif: 'whatif-panel h3',
};

/** Goes from place to place, and in the kit from sheet to sheet; gives the name of each once it is there. */
async function* stops(page: Page): AsyncGenerator<string> {
  // The kit comes last, and stays open.
  for (const name of ['about', ...PLACES.filter((place) => place !== 'about')]) {
    await page.locator(`a[href="#/${name}"]`).click();
    await page.locator(`place-${name} main h2`).first().waitFor();
    if (name !== 'kit') yield name;
    else
      for (const sheet of SHEETS) {
        await page.locator(`place-kit .sheets input[value=${sheet}]`).check();
        await page
          .locator(WORKED[sheet] ?? 'place-kit h2')
          .first()
          .waitFor({ state: 'attached', timeout: 30_000 });
        yield `${name}, ${sheet}`;
      }
  }
}

/** Nothing is clipped there, unfolded, wide, narrow or on paper; `longer`: in a language two fifths longer. */
async function fits(page: Page, stop: string, language: 'as it is' | 'longer' = 'as it is'): Promise<void> {
  for (const view of [WIDE, NARROW]) {
    await page.setViewportSize(view);
    await unfold(page);
    await drawnAnew(page);
    if (language === 'longer') expect(await lengthen(page)).toBeGreaterThan(20);
    const where = `${stop} at ${view.width}, ${language}`;
    expect(await clipped(page), where).toEqual([]);
    expect(await overlapping(page), where).toEqual([]);
  }
  if (!stop.startsWith('kit')) return;
  await page.setViewportSize(PAPER);
  await page.emulateMedia({ media: 'print' });
  if (language === 'longer') await lengthen(page);
  expect(await clipped(page, 'paper'), `${stop} on paper, ${language}`).toEqual([]);
  await page.emulateMedia({ media: null });
}

const radio = (page: Page, name: string) => page.getByRole('radio', { name, exact: true });
const heading = (page: Page, name: string) => page.getByRole('heading', { name, exact: true });
const place = (page: Page, name: string) => page.getByRole('link', { name, exact: true });
const pageLanguage = (page: Page) => page.evaluate(() => document.documentElement.lang);

test('German is chosen by keyboard, fills every place without clipping, survives a reload, and goes back to English', async () => {
  const { page, requests, close } = await openPage(browser(), site, { viewport: WIDE });
  await heading(page, words.why.heading).or(heading(page, words.light.heading)).first().waitFor();
  expect(await pageLanguage(page)).toBe('en');
  expect(requests.filter((address) => /\/de-[^/]*\.js$/.test(address))).toEqual([]);

  await tabTo(page, radio(page, words.bar.languages.en));
  await page.keyboard.press('ArrowRight');
  await heading(page, germanPage.light.heading).waitFor();
  expect(await pageLanguage(page)).toBe('de');
  // The choice keeps the focus, so that it can be taken back at once.
  expect(await radio(page, words.bar.languages.de).evaluate((element) => element.matches(':focus'))).toBe(
    true,
  );
  await page.getByRole('button', { name: germanPage.bar.soundOn, exact: true }).waitFor();
  expect(await page.title()).toBe('Hören – Lampnote');
  const said = page.getByRole('region', { name: germanPage.strip.heading, exact: true });
  await expect.poll(() => said.textContent()).toMatch(/A\s+klingt\s+A3 0 Cent · 220,0\u00A0Hz/);
  const box = page.getByRole('textbox', {
    name: germanPage.voices.box(germanPage.voices.trimmer('A')),
    exact: true,
  });
  expect(await box.inputValue()).toMatch(/^\d+,\d+\u00A0kΩ$/);

  await page.reload();
  await place(page, germanPage.places.names.class).waitFor();
  expect(await pageLanguage(page)).toBe('de');
  for await (const stop of stops(page)) await fits(page, stop);

  // What lies open is said anew at once.
  await page.setViewportSize(WIDE);
  await heading(page, germanKit.log.heading).waitFor();
  await radio(page, words.bar.languages.en).click({ force: true });
  await heading(page, kitViewWords.log.heading).waitFor();
  expect(await pageLanguage(page)).toBe('en');
  await place(page, words.places.names.listen).click();
  await expect.poll(() => strip(page).textContent()).toMatch(/A\s+sounding\s+A3 0 cents · 220\.0\u00A0Hz/);
  for await (const stop of stops(page)) await fits(page, stop, 'longer');
  await close();
}, 60_000);

test.each([
  ['projector', LECTURE],
  ['light', NARROW],
] as const)('the steps of lessons have room for words two fifths longer, %s, %o', async (look, viewport) => {
  const { page, close } = await openPage(browser(), `${site}#/class`, { viewport });
  await showMore(page);
  await radio(page, words.bar.looks[look]).check();
  const shown = new Set<string>();
  for (const lesson of WALKED) {
    await page.evaluate((id) => {
      location.hash = `#/class?lesson=${id}`;
    }, lesson);
    await page.locator('step-panel #title').waitFor();
    for (let pressed = 0; (await page.locator('#advance').count()) > 0; pressed += 1) {
      await unfold(page);
      expect(await lengthen(page)).toBeGreaterThan(20);
      const where = `${lesson} after ${pressed} presses`;
      expect(await clipped(page), where).toEqual([]);
      expect(await overlapping(page), where).toEqual([]);
      const parts = await page
        .locator('signal-picture li:not(.hidden)')
        .evaluateAll((all) => all.map((part) => part.getAttribute('data-stage') ?? ''));
      for (const part of parts) shown.add(part);
      // On without guessing or doing anything; all at once, as what is to be pressed may be gone the next moment.
      await page.locator('step-panel .acts button').evaluateAll((all) => {
        const buttons = all as HTMLButtonElement[];
        (buttons.find(({ id }) => id !== 'advance') ?? buttons[0])?.click();
      });
    }
  }
  expect([...shown].toSorted()).toEqual(STAGES.toSorted());
  await close();
});

test('an address may ask for German, and the words of the page are then German from the start', async () => {
  const { page, close } = await openPage(browser(), `${site}#/class?lang=de`);
  speak('de', germanLists);
  const german = words.places.names.class;
  speak('en');
  await page.getByRole('link', { name: german, exact: true }).waitFor();
  expect(await pageLanguage(page)).toBe('de');
  // What does not fit is found, so that finding nothing means something.
  await page.locator('main h2').first().waitFor();
  expect(await clipped(page)).toEqual([]);
  await page.getByRole('button', { name: germanPage.bar.save, exact: true }).evaluate((element) => {
    Object.assign((element as HTMLElement).style, { width: '24px', whiteSpace: 'nowrap' });
  });
  expect(await clipped(page)).toEqual([expect.stringContaining(germanPage.bar.save)]);
  await close();
});
