/** Access: axe in every look, wide and narrow, folded out and sounding; sizes, forced colours, and A told from B. */
import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import type { Look } from '../../src/app/session.ts';
import { cameraClip } from '../../src/headless/camera-clip.ts';
import { VOICES } from '../../src/quantity/units.ts';
import { words } from '../../src/words/en.ts';
import { axeSource, faults, smallWriting } from './support/access.ts';
import { hear, oneBrowser, openPage, type PageOptions, tapSound } from './support/browser.ts';
import { clipped, unfold } from './support/longer.ts';
import { becomes, button, hand, press, showMore, soundButton, strip, tabTo } from './support/visit.ts';

const looks = Object.keys(words.bar.looks) as Look[];
const browser = oneBrowser(() => ({ cameraFile: cameraClip([[1, 140, 180]]), permissions: ['camera'] }));

async function visit(look: Look, options: PageOptions = {}) {
  const opened = await openPage(browser(), inject('house').site, { prepare: tapSound, ...options });
  await choose(opened.page, look);
  return opened;
}

async function choose(page: Page, look: Look): Promise<void> {
  await showMore(page);
  await page
    .getByRole('group', { name: words.bar.look, exact: true })
    .getByRole('radio', { name: words.bar.looks[look], exact: true })
    .check();
}

type Found = Record<string, readonly string[]>;

/** The same in each look. */
async function faultsInEachLook(
  page: Page,
  state: string,
  within: readonly string[] | null,
  first: 'all' | 'look',
): Promise<Found> {
  const found: Found = {};
  for (const look of looks) {
    await choose(page, look);
    const list = await faults(page, within, look === looks[0] ? first : 'look');
    if (list.length > 0) found[`${state}, ${look}`] = list;
  }
  return found;
}

const unfoldAll = (page: Page): Promise<void> =>
  page.locator('details').evaluateAll((all) => {
    for (const fold of all) (fold as HTMLDetailsElement).open = true;
  });

const cameraPanel = ['lamp-note', 'place-listen', 'camera-panel'];

test.each([1280, 320])(
  'at %i px axe finds nothing in any look, folded out, sounding, with the camera off, on and refused',
  async (width) => {
    // What does not depend on the width was asked in the wide page.
    const asked = width === 320 ? 'look' : 'all';
    const { page, close } = await visit('light', { viewport: { width, height: 720 } });
    await page.evaluate(axeSource);
    await soundButton(page).click();
    await hear(page, ({ rms }) => rms > 0.01);
    await unfoldAll(page);
    const found = await faultsInEachLook(page, 'sounding', null, asked);
    await soundButton(page, words.bar.soundOff).click();

    await page.getByRole('radio', { name: words.light.sources.camera, exact: true }).check();
    Object.assign(found, await faultsInEachLook(page, 'camera off', cameraPanel, asked));
    await button(page, words.camera.open).click();
    await page.getByText(words.camera.assumed(300)).waitFor();
    await unfoldAll(page);
    Object.assign(found, { 'camera on, whole page': await faults(page, null, asked) });
    Object.assign(found, await faultsInEachLook(page, 'camera on', cameraPanel, asked));
    await button(page, words.camera.stop).click();
    await page.evaluate(() => {
      navigator.mediaDevices.getUserMedia = async () => {
        throw new DOMException('Not allowed.', 'NotAllowedError');
      };
    });
    await button(page, words.camera.open).click();
    await page.getByText(words.camera.refused.denied).waitFor();
    Object.assign(found, await faultsInEachLook(page, 'camera refused', cameraPanel, asked));
    expect(found).toEqual({ 'camera on, whole page': [] });
    await close();
  },
);

test.each([
  ['projector', 1280, 24],
  ['light', 320, 12],
] as const)('in the %s look at %i px nothing is written smaller than %i px', async (look, width, least) => {
  const { page, close } = await visit(look, { viewport: { width, height: 720 } });
  await soundButton(page).click();
  await unfoldAll(page);
  const { written, small } = await smallWriting(page, least);
  expect(written).toBeGreaterThan(100);
  expect(small).toEqual([]);
  await close();
});

test('at 320 px the bar leaves the screen to the place; the keyboard brings the rest of it', async () => {
  const { page, close } = await openPage(browser(), inject('house').site, {
    viewport: { width: 320, height: 640 },
  });
  const bar = async () => (await page.locator('header').first().boundingBox())!.height;
  const rest = [
    page.getByRole('textbox', { name: words.bar.name, exact: true }),
    button(page, words.bar.undo),
    button(page, words.bar.copyLink),
    page.getByRole('group', { name: words.bar.look, exact: true }),
    page.getByRole('group', { name: words.bar.language, exact: true }),
  ];
  await soundButton(page).waitFor();
  expect(await page.getByRole('slider', { name: words.bar.volume, exact: true }).isVisible()).toBe(true);
  expect(await bar()).toBeLessThan(640 * 0.4);
  for (const one of rest) expect(await one.isVisible()).toBe(false);
  await tabTo(page, button(page, words.bar.moreOf));
  await press(page, 'Enter');
  for (const one of rest) expect(await one.isVisible()).toBe(true);
  await press(page, 'Enter');
  for (const one of rest) expect(await one.isVisible()).toBe(false);
  // A wide page folds nothing.
  await page.setViewportSize({ width: 1280, height: 720 });
  for (const one of rest) expect(await one.isVisible()).toBe(true);
  expect(await button(page, words.bar.moreOf).isVisible()).toBe(false);
  await close();
});

test('whoever comes for the first time reads what this is and what to press, wide and narrow, until it sounds', async () => {
  const { page, close } = await openPage(browser(), inject('house').site, {
    viewport: { width: 320, height: 640 },
  });
  const begin = page.getByText(words.why.begin, { exact: true }).filter({ visible: true });
  for (const view of [
    { width: 320, height: 640 },
    { width: 1280, height: 720 },
  ]) {
    await page.setViewportSize(view);
    await expect.poll(() => begin.count()).toBe(1);
    // In sight without scrolling.
    const { y, height } = (await begin.boundingBox())!;
    expect(y + height).toBeLessThan(view.height);
  }
  await soundButton(page).click();
  await soundButton(page, words.bar.soundOff).waitFor();
  expect(await begin.count()).toBe(0);
  await close();
});

test.each<[string, PageOptions]>([
  ['less motion', { reducedMotion: 'reduce' }],
  ['no less motion', { reducedMotion: 'no-preference' }],
  ['forced colours', { forcedColors: 'active' }],
  ['more contrast', { contrast: 'more' }],
])('a reader who asks for %s gets a page that works and does not complain', async (_title, options) => {
  const { page, close } = await visit('light', options);
  await soundButton(page).click();
  await hear(page, ({ rms }) => rms > 0.01);
  await hand(page, 'A').press('End');
  await becomes(page, { A: words.strip.silent, B: words.strip.sounding });
  await close();
});

test('the first visit looks as the system does, until a look is chosen', async () => {
  const { page, close } = await openPage(browser(), inject('house').site, { colorScheme: 'dark' });
  const look = () => page.evaluate(() => document.documentElement.dataset['look']);
  await expect.poll(look).toBe('dark');
  await choose(page, 'light');
  await page.reload();
  await soundButton(page).waitFor();
  expect(await look()).toBe('light');
  await close();
});

test('without any colour A is a solid line with a round mark, and B a dashed line with a square one', async () => {
  const { page, close } = await visit('light');
  const marks = await strip(page).evaluate((element) =>
    [...element.querySelectorAll('svg')].map((svg) => {
      const line = svg.querySelector('line')!;
      const mark = svg.querySelector('circle, rect')!;
      return { dashes: getComputedStyle(line).strokeDasharray, mark: mark.tagName };
    }),
  );
  expect(marks).toHaveLength(VOICES.length);
  const [a, b] = marks;
  expect(a).toEqual({ dashes: 'none', mark: 'circle' });
  expect(b!.mark).toBe('rect');
  expect(b!.dashes).toMatch(/\d+px, \d+px/);
  await close();
});

describe('letters twice as large', () => {
  const large = oneBrowser(() => ({ letters: 32 }));

  test('cut nothing off in any place, unfolded', async () => {
    const { page, close } = await openPage(large(), inject('house').site);
    expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe('32px');
    for (const name of Object.values(words.places.names)) {
      await page.getByRole('link', { name, exact: true }).click();
      await page.locator('main h2').first().waitFor();
      await unfold(page);
      expect(await clipped(page), name).toEqual([]);
    }
    await close();
  });
});
