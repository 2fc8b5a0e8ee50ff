/** The network gone after the page has loaded, and parts of the page that do not come: worded, tried again, nothing lost. */
import { readdirSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { germanPage } from '../../src/words/de-page.ts';
import { words } from '../../src/words/en.ts';
import { pitchWords } from '../../src/words/en-pitch.ts';
import { foundWords } from '../../src/words/en-pitch-found.ts';
import { hear, oneBrowser, openPage, tapSound } from './support/browser.ts';
import { choose, designOn, holdLongTimersFirst, passLongTimers, saysInBoth } from './support/faults.ts';
import { serve } from './support/served.ts';
import { button, hearBoth, soundButton, trimmer } from './support/visit.ts';

const house = inject('house');
const browser = oneBrowser();
const names = words.places.names;

const go = (page: Page, name: string) => page.getByRole('link', { name, exact: true }).click();
/** The place stands, not only its name. */
const stands = (page: Page, place: keyof typeof names) => page.locator(`place-${place} h2`).first().waitFor();

async function findParts(page: Page): Promise<void> {
  await button(page, pitchWords.search.go).click();
  await page.getByRole('heading', { name: foundWords.table.heading }).waitFor();
}

test('once the page has loaded and come to rest, all of it works without the network', async () => {
  const served = await serve(house.siteFolder);
  const { page, requests, close } = await openPage(browser(), served.address, {
    fetchesAll: true,
    prepare: tapSound,
  });
  const files = readdirSync(path.join(house.siteFolder, 'assets'));
  await expect
    .poll(() => files.filter((file) => !requests.includes(`${served.address}assets/${file}`)), {
      timeout: 30_000,
    })
    .toEqual([]);
  // Type comes last; what stands in for it where a machine lacks it does not load at all.
  await page.waitForFunction(() =>
    [...document.fonts].every(({ status }) => status === 'loaded' || status === 'error'),
  );
  await served.cut();
  await expect(fetch(served.address)).rejects.toThrow();

  const design = await designOn(page);
  for (const [language, there] of [
    ['en', names],
    ['de', germanPage.places.names],
  ] as const) {
    await choose(page, language);
    for (const [place, name] of Object.entries(there)) {
      await go(page, name);
      await stands(page, place as keyof typeof names);
      if (place === 'kit')
        await page.locator('board-picture').or(page.locator('order-panel')).first().waitFor();
    }
  }
  await choose(page, 'en');
  await go(page, names.pitch);
  await findParts(page);
  await button(page, foundWords.hear.together(DEFAULT_DESIGN.pitch.wish.kits)).click();
  await hear(page, ({ rms }) => rms > 0.01);
  await page.keyboard.press('Shift+Escape');
  await hear(page, ({ state }) => state === 'closed');
  // Begun a second time, the audio thread loads its module once more.
  await soundButton(page).click();
  await hearBoth(page, DEFAULT_DESIGN);
  expect(await designOn(page)).toBe(design);
  await close();
});

const again = (page: Page, german = false) => button(page, (german ? germanPage : words).places.again);

/** A file that does not come, what asks for it, what is said then, and what is there once it has come. */
const PARTS: readonly (readonly [
  file: string,
  ask: (page: Page) => Promise<unknown>,
  english: string,
  german: string,
  there: (page: Page) => Promise<unknown>,
])[] = [
  [
    'later-',
    (page) => page.reload(),
    words.places.partMissing,
    germanPage.places.partMissing,
    (page) => page.getByText(words.warnings.heading, { exact: false }).first().waitFor(),
  ],
  [
    'place-kit-',
    (page) => go(page, names.kit),
    words.places.missing(names.kit),
    germanPage.places.missing(germanPage.places.names.kit),
    (page) => stands(page, 'kit'),
  ],
  [
    'player.device-',
    (page) => soundButton(page).click(),
    words.sound.trouble.module,
    germanPage.sound.trouble.module,
    async (page) => {
      await soundButton(page).click();
      await hear(page, ({ rms }) => rms > 0.01);
    },
  ],
  [
    'chorus-',
    async (page) => {
      await go(page, names.pitch);
      await findParts(page);
      await button(page, foundWords.hear.together(DEFAULT_DESIGN.pitch.wish.kits)).click();
    },
    words.places.partMissing,
    germanPage.places.partMissing,
    (page) => stands(page, 'pitch'),
  ],
];

test('a part that does not load says so, and comes with the work when it is served again', async () => {
  const { page, close } = await openPage(browser(), house.site, {
    allow: [/Failed to load|request failed/],
    prepare: tapSound,
  });
  await trimmer(page, 'A').press('End');
  const design = await designOn(page);
  const refuse = (files: string) => page.route(files, (route) => route.abort('connectionrefused'));
  for (const [file, ask, english, german, there] of PARTS) {
    await refuse(`**/${file}*`);
    await ask(page);
    await saysInBoth(page, english, german);
    await refuse('**/*.css*');
    await again(page).click();
    await saysInBoth(page, words.places.notServed, germanPage.places.notServed);
    expect(await designOn(page)).toBe(design);
    await page.unroute('**/*.css*');
    await page.unroute(`**/${file}*`);
    await Promise.all([page.waitForEvent('load'), again(page).click()]);
    await there(page);
    expect(await designOn(page), file).toBe(design);
  }
  await close();
});

test('the work comes along in the address where the browser keeps nothing', async () => {
  const { page, close } = await openPage(browser(), house.site, {
    allow: [/Failed to load|request failed/],
    prepare: (unopened) =>
      unopened.addInitScript(() => {
        Storage.prototype.setItem = () => {
          throw new DOMException('No room.', 'QuotaExceededError');
        };
      }),
  });
  await trimmer(page, 'A').press('End');
  const design = await designOn(page);
  await page.route('**/place-kit-*', (route) => route.abort());
  await go(page, names.kit);
  await page.getByText(words.places.missing(names.kit)).waitFor();
  await page.unroute('**/place-kit-*');
  await Promise.all([page.waitForEvent('load'), again(page).click()]);
  await stands(page, 'kit');
  expect(await designOn(page)).toBe(design);
  await close();
});

test('words that are asked for and never come keep nobody from the page, and are spoken when they come after all', async () => {
  let deliver = () => {};
  const held = new Promise<void>((resolve) => {
    deliver = resolve;
  });
  const { page, close } = await openPage(browser(), `${house.site}#/room?lang=de`, {
    prepare: holdLongTimersFirst,
  });
  // Kept by now, and asked for by the address as well.
  await button(page, germanPage.bar.soundOn).waitFor();
  await page.route('**/de-*', async (route) => {
    await held;
    await route.continue();
  });
  await page.reload();
  await passLongTimers(page);
  await page.getByText(words.notice.noWords(words.bar.languages.de)).waitFor();
  await stands(page, 'room');
  expect(await page.evaluate(() => document.documentElement.lang)).toBe('en');
  deliver();
  await button(page, germanPage.bar.soundOn).waitFor();
  await page.getByRole('region', { name: germanPage.strip.heading, exact: true }).waitFor();
  expect(await page.getByText(words.notice.noWords(words.bar.languages.de)).count()).toBe(0);
  await close();
});

test('words that do not load leave the page in its language, and come when they are served again', async () => {
  const { page, close } = await openPage(browser(), house.site, { allow: [/Failed to load|request failed/] });
  await page.route('**/de-*', (route) => route.abort());
  const radio = page.getByRole('radio', { name: words.bar.languages.de, exact: true });
  await radio.check({ force: true });
  await page.getByText(words.notice.noWords(words.bar.languages.de)).waitFor();
  await button(page, words.bar.soundOn).waitFor();
  await page.unroute('**/de-*');
  await Promise.all([page.waitForEvent('load'), again(page).click()]);
  await button(page, germanPage.bar.soundOn).waitFor();
  // The language chosen next counts, also after a reload.
  await choose(page, 'en');
  await page.reload();
  await button(page, words.bar.soundOn).waitFor();
  await close();
});
