/**
 * A long sitting through every place, in the served page and in the one file: sound, camera, search, answers, board,
 * print, saving. Nothing but the build's own files is asked for, nothing at all once the places are there, and nothing is
 * kept but what the page says it keeps.
 */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import type { Place } from '../../src/app/address.ts';
import { cameraClip } from '../../src/headless/camera-clip.ts';
import { germanAbout } from '../../src/words/de-about.ts';
import { words } from '../../src/words/en.ts';
import { aboutWords } from '../../src/words/en-about.ts';
import { classPage } from '../../src/words/en-class.ts';
import { kitViewWords } from '../../src/words/en-kit.ts';
import { pitchWords } from '../../src/words/en-pitch.ts';
import { foundWords } from '../../src/words/en-pitch-found.ts';
import { describeWords } from '../../src/words/en-room.ts';
import { answerWords } from '../../src/words/en-room-answer.ts';
import { axeSource, faults } from './support/access.ts';
import { hear, oneBrowser, openPage, tapSound } from './support/browser.ts';
import { button, hand, soundButton, tabTo } from './support/visit.ts';

const house = inject('house');
const browser = oneBrowser(() => ({ cameraFile: cameraClip([[1, 140, 180]]), permissions: ['camera'] }));

const radio = (page: Page, name: string) => page.getByRole('radio', { name, exact: true });
const heading = (page: Page, name: string) => page.getByRole('heading', { name, exact: true });

async function goTo(page: Page, place: Place): Promise<void> {
  await page.getByRole('link', { name: words.places.names[place], exact: true }).click();
  await page.locator('main h2').first().waitFor();
}

async function saved(page: Page, press: string): Promise<string> {
  const coming = page.waitForEvent('download');
  await button(page, press).click();
  return readFileSync(await (await coming).path(), 'utf8');
}

/** What a maker does in an evening, in short. Every step waits for what it brings. */
async function sitting(page: Page): Promise<void> {
  await goTo(page, 'listen');
  if (await soundButton(page).isVisible()) await soundButton(page).click();
  await hear(page, ({ rms }) => rms > 0.01);
  await hand(page, 'B').press('End');
  await radio(page, words.light.sources.camera).check();
  await button(page, words.camera.open).click();
  await page.getByText(words.camera.assumed(300)).waitFor();
  await button(page, words.camera.stop).click();
  await button(page, words.bar.copyLink).click();
  await page.getByRole('alert').waitFor();
  expect(await saved(page, words.bar.save)).toContain('"format"');

  await goTo(page, 'pitch');
  const { go, again } = pitchWords.search;
  await button(page, go).or(button(page, again)).click();
  await heading(page, foundWords.table.heading).waitFor();
  await button(page, foundWords.hear.target).click();

  await goTo(page, 'room');
  const lit = page.getByRole('textbox', { name: describeWords.readings.level.lit('A'), exact: true });
  if (!(await lit.first().isVisible())) await button(page, describeWords.readings.add).click();
  for (const [level, lux] of [
    ['lit', '420'],
    ['shaded', '60'],
  ] as const)
    await page
      .getByRole('textbox', { name: describeWords.readings.level[level]('A'), exact: true })
      .first()
      .fill(lux);
  await page.keyboard.press('Tab');
  await button(page, answerWords.card.print).first().click();

  await goTo(page, 'class');
  await button(page, classPage.sheets.print).click();
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));

  await goTo(page, 'kit');
  await radio(page, kitViewWords.sheetNames.board).check();
  await page.locator('board-picture').first().waitFor({ state: 'attached' });
  await button(page, kitViewWords.print).click();

  await goTo(page, 'about');
  await radio(page, words.bar.languages.de).check();
  await heading(page, germanAbout.heading).waitFor();
  await radio(page, words.bar.languages.en).check();
  await heading(page, aboutWords.heading).waitFor();
}

/** Everything a page can keep in a browser. */
const keptIn = (page: Page) =>
  page.evaluate(async () => ({
    local: Object.keys(localStorage).toSorted(),
    session: Object.keys(sessionStorage),
    cookie: document.cookie,
    databases: (await indexedDB.databases()).map(({ name }) => name),
    caches: 'caches' in globalThis ? await caches.keys() : [],
    workers: (await navigator.serviceWorker?.getRegistrations().catch(() => []))?.length ?? 0,
  }));

/** Made by the page for itself: what it saves, or carries inside. */
const isOwn = (address: string): boolean => /^(?:data|blob):/.test(address);

/** A worker stopped amid its work is opened anew, from its file. */
const isWorker = (address: string): boolean => /\.worker-[^/]+\.js$/.test(address);

describe.each([
  ['the served page', house.site, house.siteFolder],
  ['the one file', house.singleFile, house.singleFolder],
] as const)('a sitting in %s', (_which, address, folder) => {
  test('asks for files of the build alone, then for nothing, and keeps what it says', async () => {
    const { page, requests, close } = await openPage(browser(), address, { prepare: tapSound });
    const sockets: string[] = [];
    page.on('websocket', (socket) => sockets.push(socket.url()));
    await sitting(page);
    const asked = requests.filter((one) => !isOwn(one));
    const base = address.endsWith('/') ? address : new URL('.', address).href;
    const files = asked.map((one) => {
      expect(one.startsWith(base), one).toBe(true);
      return one.slice(base.length) || 'index.html';
    });
    expect(files.filter((file) => !existsSync(path.join(folder, file)))).toEqual([]);
    // Each file once: nothing is asked again, let alone with something told along.
    const once = files.filter((file) => !isWorker(file));
    expect(new Set(once).size).toBe(once.length);
    expect(files.length).toBe(address === house.singleFile ? 1 : files.length);

    const before = requests.length;
    await sitting(page);
    expect(requests.slice(before).filter((one) => !isOwn(one) && !isWorker(one))).toEqual([]);
    expect(sockets).toEqual([]);

    const kept = await keptIn(page);
    const said = aboutWords.kept.rows.flatMap(([, where]) =>
      [...where.matchAll(/“(.*?)”/g)].map(([, name]) => name!),
    );
    const isSaid = (key: string) =>
      said.some((name) => (name.endsWith('…') ? key.startsWith(name.slice(0, -1)) : key === name));
    expect(kept.local.length).toBeGreaterThanOrEqual(2);
    expect(kept.local.filter((key) => !isSaid(key))).toEqual([]);
    expect(kept).toEqual({
      local: kept.local,
      session: [],
      cookie: '',
      databases: [],
      caches: [],
      workers: 0,
    });
    // Closing complains of whatever the policy had to refuse.
    await close();
  });
});

test('About is reached by keyboard from the foot, names each package bundled, and axe finds nothing in any look', async () => {
  const { page, close } = await openPage(browser(), house.site);
  const link = page.getByRole('link', { name: words.places.names.about, exact: true });
  await link.focus();
  await page.keyboard.press('Enter');
  await heading(page, aboutWords.heading).waitFor();
  const about = JSON.parse(readFileSync('package.json', 'utf8')) as {
    readonly version: string;
    readonly dependencies: Readonly<Record<string, string>>;
  };
  await page.getByText(aboutWords.version(about.version), { exact: true }).waitFor();

  const fold = page.getByText(aboutWords.licences.show, { exact: true }).first();
  await tabTo(page, fold);
  await page.keyboard.press('Enter');
  const notices = (await page.locator('pre').textContent()) ?? '';
  // Lit is a name for its parts.
  const { lit: _, ...bundled } = about.dependencies;
  for (const [name, version] of Object.entries(bundled)) expect(notices).toContain(`${name} ${version}`);
  expect(notices).toMatch(/lit-html \d/);
  expect(notices).toContain('SIL OPEN FONT LICENSE Version 1.1');
  expect(notices).not.toMatch(/\b(vitest|axe-core|playwright-core|typescript) \d/);

  const [text] = await Promise.all([
    page.context().waitForEvent('page'),
    page.getByRole('link', { name: aboutWords.licences.file, exact: true }).click(),
  ]);
  await text.waitForLoadState();
  expect(await text.locator('body').textContent()).toContain(notices.slice(0, 500).trim().split('\n')[0]);
  expect(readFileSync(path.join(house.siteFolder, 'third-party-notices.txt'), 'utf8')).toBe(notices);
  expect(readFileSync(fileURLToPath(house.singleFile), 'utf8')).toContain(
    JSON.stringify(notices.slice(-400)).slice(1, -1),
  );

  await page.evaluate(axeSource);
  for (const look of ['light', 'dark', 'projector'] as const) {
    await radio(page, words.bar.looks[look]).check();
    expect(await faults(page, null, look === 'light' ? 'all' : 'look'), look).toEqual([]);
  }
  await page.setViewportSize({ width: 320, height: 700 });
  expect(await faults(page, null, 'look')).toEqual([]);
  await close();
});
