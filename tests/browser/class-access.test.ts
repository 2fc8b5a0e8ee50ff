/** Access in a class: axe in every lesson, in each look, wide and narrow. */
import { expect, inject, test } from 'vitest';
import type { Look } from '../../src/app/session.ts';
import { LESSONS } from '../../src/lesson/lessons.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { words } from '../../src/words/en.ts';
import { classPage } from '../../src/words/en-class.ts';
import { englishLessons } from '../../src/words/en-lessons.ts';
import { seedOf } from '../fuzz/count.ts';
import { axeSource, faults } from './support/access.ts';
import { oneBrowser, openPage } from './support/browser.ts';
import { advance, begin, lessonOf, skipTo } from './support/lesson-visit.ts';
import { button } from './support/visit.ts';

const { go } = englishLessons;
const browser = oneBrowser();
const SEED = seedOf(2028);

test(`in every lesson, at a place drawn by seed ${SEED}, in free play and in the list axe finds nothing, in each look and at 320 px`, async () => {
  const uniform = uniformFrom(SEED);
  const places = LESSONS.map((lesson) => ({
    lesson,
    to: Math.floor(uniform() * lesson.steps.length),
    phase: uniform() < 0.5 ? ('try' as const) : ('reveal' as const),
  }));
  const looks = Object.keys(words.bar.looks) as Look[];
  const found: Record<string, readonly string[]> = {};
  const halves = [0, 1].map(async (half) => {
    const { page, close } = await openPage(browser(), `${inject('house').site}#/class`, {
      viewport: { width: 1280, height: 720 },
    });
    await page.evaluate(axeSource);
    const inEachLook = async (state: string) => {
      await page.locator('place-class details').evaluateAll((all) => {
        for (const fold of all) (fold as HTMLDetailsElement).open = true;
      });
      const look = async (name: string, asked: 'all' | 'look') => {
        const list = await faults(page, ['lamp-note', 'place-class'], asked);
        if (list.length > 0) found[`${state}, ${name}`] = list;
      };
      for (const [i, one] of looks.entries()) {
        await page
          .getByRole('group', { name: words.bar.look, exact: true })
          .getByRole('radio', { name: words.bar.looks[one], exact: true })
          .check();
        await look(one, i === 0 ? 'all' : 'look');
      }
      await page.setViewportSize({ width: 320, height: 720 });
      await look('320 px', 'look');
      await page.setViewportSize({ width: 1280, height: 720 });
    };
    if (half === 0) await inEachLook('list');
    for (const [i, { lesson, to, phase }] of places.entries()) {
      if (i % 2 !== half) continue;
      await begin(page, lesson);
      await skipTo(page, lesson, to, phase);
      await inEachLook(`${lesson.id}, ${lesson.steps[to]!.id}, ${phase}`);
      if (i === 1) {
        await button(page, go.free).press('Enter');
        await inEachLook('free play');
      }
      await button(page, go.leave).press('Enter');
    }
    await close();
  });
  await Promise.all(halves);
  expect(found).toEqual({});
}, 120_000);

test('a sketch may be drawn by hand as well as by keys; the model’s curve waits until it has been tried', async () => {
  const { page, close } = await openPage(browser(), `${inject('house').site}#/class`);
  const lesson = lessonOf('two-resistors-share');
  const at = lesson.steps.findIndex(({ question }) => question?.kind === 'sketch');
  await begin(page, lesson);
  await skipTo(page, lesson, at - 1, 'reveal');
  await page.keyboard.press('ArrowRight');
  const chart = page.locator('node-curve svg');
  const said = () => chart.getAttribute('aria-label');
  await chart.scrollIntoViewIfNeeded();
  expect(await said()).toBe(classPage.guess.nodeOverLight([]));
  const { x, y, width, height } = (await chart.boundingBox())!;
  // From the upper left down to the lower right: every point is passed, and none keeps half of the supply.
  await page.mouse.move(x + 0.15 * width, y + 0.1 * height);
  await page.mouse.down();
  await page.mouse.move(x + 0.98 * width, y + 0.8 * height, { steps: 30 });
  await page.mouse.up();
  const volts = () => page.locator('sketch-guess level-slider .row').allTextContents();
  const drawn = (await volts()).map((text) => Number(/([\d.]+)\sV/.exec(text)?.[1]));
  expect(drawn).toHaveLength(5);
  expect(drawn).toEqual(drawn.toSorted((a, b) => b - a));
  expect(drawn[0]! - drawn[4]!).toBeGreaterThan(4);
  expect(await page.locator('node-curve .line').count()).toBe(0);
  await advance(page).press('Enter');
  await page.keyboard.press(' ');
  await page.locator('.verdict').waitFor();
  // On the paper, once in the curve and once in the legend.
  await expect.poll(() => page.locator('node-curve .line').count()).toBe(2);
  expect(await said()).toContain(classPage.guess.point('1\u00a0lx', `${drawn[0]!.toFixed(2)}\u00a0V`));
  await close();
});
