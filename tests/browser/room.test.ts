import type { Locator, Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { decodeText } from '../../src/design/decode.ts';
import type { Design } from '../../src/design/design.ts';
import { roomAnswer } from '../../src/plan/room-answer.ts';
import { adviceOf } from '../../src/plan/room-shown.ts';
import { words } from '../../src/words/en.ts';
import { describeWords } from '../../src/words/en-room.ts';
import { answerWords } from '../../src/words/en-room-answer.ts';
import { roomWords } from '../../src/words/room.ts';
import { axeSource, faults } from './support/access.ts';
import { oneBrowser, openPage, tapSound } from './support/browser.ts';
import { becomes, button, tabTo } from './support/visit.ts';

const browser = oneBrowser();

const named = (name: string) => ({ name, exact: true });
const box = (page: Page, name: string): Locator => page.getByRole('textbox', named(name));
const within = (page: Page, name: string): Locator => page.getByRole('region', named(name));

/** The design as the browser keeps it. */
async function kept(page: Page): Promise<Design> {
  const decoded = decodeText((await page.evaluate(() => localStorage.getItem('lampnote.design'))) ?? '');
  if (!decoded.ok) throw new Error(JSON.stringify(decoded.complaints));
  return decoded.design;
}

/** Everything that can be read on the page as it now is, in order. */
const visibleText = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const found: string[] = [];
    const look = (root: Node) => {
      for (const node of root.childNodes) {
        if (node instanceof Text && node.parentElement?.checkVisibility()) {
          if (node.parentElement.getBoundingClientRect().width > 1) found.push(node.data.trim());
        } else if (node instanceof HTMLSlotElement) {
          for (const given of node.assignedNodes()) look(given);
        } else if (node instanceof Element && !['STYLE', 'SCRIPT'].includes(node.tagName)) {
          look(node.shadowRoot ?? node);
        }
      }
    };
    look(document.body);
    return found.filter(Boolean).join(' ');
  });

/** Types into the box that has the focus, and goes on. */
async function fill(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
  await page.keyboard.press('Tab');
}

test('by keyboard alone three readings and a date become a setting, and a card that prints alone', async () => {
  const { page, close } = await openPage(browser(), `${inject('house').site}#/room`, {
    prepare: async (opened) => {
      await tapSound(opened);
      await opened.addInitScript(() => {
        globalThis.print = () => {
          document.documentElement.dataset['printed'] = 'yes';
        };
      });
    },
  });
  const readings = describeWords.readings;
  await within(page, describeWords.heading).waitFor();
  await tabTo(page, button(page, readings.add));
  await page.keyboard.press('Enter');
  // The focus is in the new row: lit, shaded, lamps off.
  await expect
    .poll(() => box(page, readings.level.lit('A')).evaluate((one) => one.matches(':focus')))
    .toBe(true);
  for (const lux of ['420 lx', '60', '180']) await fill(page, lux);
  const daylight = describeWords.daylight;
  await tabTo(page, page.getByRole('checkbox', named(daylight.comes)));
  await page.keyboard.press('Space');
  await tabTo(page, box(page, daylight.latitude));
  await fill(page, '52');
  await fill(page, '5 °');
  const design = await kept(page);
  expect(design.room.readings).toEqual([
    {
      hour: 10,
      lux: {
        A: { lit: 420, shaded: 60, dark: 180 },
        B: { lit: null, shaded: null, dark: null },
      },
    },
  ]);
  expect(design.room.daylight?.place).toEqual({ latitude: 52, longitude: 5 });

  const answer = roomAnswer(design, design.room)!;
  const { testPointVolts } = adviceOf(answer.windows[0]!);
  await within(page, answerWords.set.heading)
    .getByText(answerWords.set.volts(testPointVolts), { exact: true })
    .waitFor();
  await page.keyboard.press('Shift+Tab');
  await tabTo(
    page,
    within(page, answerWords.card.heading).getByRole('button', named(answerWords.card.print)),
  );
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.documentElement.dataset['printed'])).toBe('yes');

  await page.emulateMedia({ media: 'print' });
  const printed = await visibleText(page);
  expect(printed.startsWith(`${answerWords.card.heading} ${design.name}`)).toBe(true);
  expect(printed).toContain('20 March 2026, 10:00 to 18:00');
  let at = 0;
  for (const step of answer.card) {
    at = printed.indexOf(roomWords.step(step), at);
    expect(at, roomWords.step(step)).toBeGreaterThan(0);
  }
  expect(printed).not.toContain(describeWords.heading);
  expect(printed).not.toContain(words.strip.sounding);
  await page.emulateMedia({ media: 'screen' });

  // The setting is one step to take back.
  const rotation = (one: Design) => one.threshold.trimmers.A.trimmer.rotation;
  await button(page, answerWords.set.take).press('Enter');
  expect(rotation(await kept(page))).toBeCloseTo(rotation(answer.set), 9);
  await button(page, words.bar.undo).press('Enter');
  expect(rotation(await kept(page))).toBe(rotation(design));
  await button(page, words.bar.redo).press('Enter');

  // The meter and the batch answer, too.
  await box(page, answerWords.meter.reads.shared).fill('12');
  await box(page, answerWords.meter.reads.shared).press('Enter');
  await page.getByText(/cannot be: this trimmer gives/).waitFor();
  await page.getByText(answerWords.batch.settable, { exact: true }).waitFor();
  await page.evaluate(axeSource);
  await page.locator('details').evaluateAll((all) => {
    for (const fold of all) (fold as HTMLDetailsElement).open = true;
  });
  const found: Record<string, readonly string[]> = {};
  for (const [look, name] of Object.entries(words.bar.looks)) {
    await page.getByRole('group', named(words.bar.look)).getByRole('radio', named(name)).check();
    found[look] = await faults(page, null, look === 'light' ? 'all' : 'look');
  }
  await page.setViewportSize({ width: 320, height: 720 });
  found['narrow'] = await faults(page, null, 'look');
  expect(found).toEqual({ light: [], dark: [], projector: [], narrow: [] });

  // The day in a minute plays the event over one voice, then the other, and ends with the place.
  await page.setViewportSize({ width: 1280, height: 720 });
  await within(page, answerWords.hear.heading)
    .getByRole('button', named(answerWords.hear.pieces.day))
    .press('Enter');
  await becomes(page, { A: words.strip.silent, B: words.strip.sounding });
  await becomes(page, { A: words.strip.sounding, B: words.strip.silent });
  await page.getByRole('link', named(words.places.names.listen)).press('Enter');
  await page.getByRole('heading', named(words.threshold.heading)).waitFor();
  await becomes(page, { A: words.strip.sounding, B: words.strip.sounding });
  await close();
}, 120_000);
