/** German from the bar, by keyboard; room for longer words; back to English; kept over a reload. */
import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { germanLists } from '../../src/words/de.ts';
import { germanPage } from '../../src/words/de-page.ts';
import { words } from '../../src/words/en.ts';
import { speak } from '../../src/words/spoken.ts';
import { oneBrowser, openPage } from './support/browser.ts';
import { clipped, lengthen, unfold } from './support/longer.ts';
import { strip, tabTo } from './support/visit.ts';

const { site } = inject('house');
const WIDE = { width: 1280, height: 900 };
const NARROW = { width: 320, height: 700 };
const browser = oneBrowser();

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

  for (const view of [WIDE, NARROW]) {
    await page.setViewportSize(view);
    for (const name of Object.values(germanPage.places.names)) {
      await place(page, name).click();
      await page.locator(`[aria-current="page"]`, { hasText: name }).waitFor();
      await page.locator('main h2').first().waitFor();
      await unfold(page);
      expect(await clipped(page), `${name} at ${view.width}`).toEqual([]);
    }
  }

  await page.reload();
  await place(page, germanPage.places.names.class).waitFor();
  expect(await pageLanguage(page)).toBe('de');
  await page.setViewportSize(WIDE);
  await radio(page, words.bar.languages.en).click({ force: true });
  await place(page, words.places.names.listen).click();
  await expect.poll(() => strip(page).textContent()).toMatch(/A\s+sounding\s+A3 0 cents · 220\.0\u00A0Hz/);
  expect(await pageLanguage(page)).toBe('en');

  for (const view of [WIDE, NARROW]) {
    await page.setViewportSize(view);
    for (const name of Object.values(words.places.names)) {
      await place(page, name).click();
      await page.locator('main h2').first().waitFor();
      await unfold(page);
      expect(await lengthen(page)).toBeGreaterThan(20);
      expect(await clipped(page), `${name}, two fifths longer, at ${view.width}`).toEqual([]);
      await page.reload();
      await page.locator('main h2').first().waitFor();
    }
  }
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
