/** Long work whose worker breaks off, hangs or cannot be opened: told, done all the same or tried again, the page answering. */
import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { linkFor, withLanguage } from '../../src/app/address.ts';
import { words } from '../../src/words/en.ts';
import { kitViewWords } from '../../src/words/en-kit.ts';
import { pitchWords } from '../../src/words/en-pitch.ts';
import { foundWords } from '../../src/words/en-pitch-found.ts';
import { answerWords } from '../../src/words/en-room-answer.ts';
import { oneBrowser, openPage } from './support/browser.ts';
import { choose, designOn, inGerman, measured } from './support/faults.ts';
import { button } from './support/visit.ts';

const browser = oneBrowser();

/** How workers behave: as they should, dying at a task, saying nothing any more, or telling of a fault. */
type Manner = 'whole' | 'dies' | 'hangs' | 'fails';

const visit = (hash: string) =>
  openPage(browser(), `${inject('house').site}${hash}`, {
    prepare: (page) =>
      page.addInitScript(() => {
        globalThis.Worker = class extends Worker {
          #hangs = false;
          override postMessage(message: unknown) {
            const { kind, id } = message as { kind: string; id: number };
            const manner: unknown = Reflect.get(globalThis, 'manner');
            if (manner === 'hangs') this.#hangs = true;
            if (this.#hangs) return;
            const report = { kind: 'failed', of: kind, id, message: 'a fault' };
            const event =
              manner === 'dies'
                ? new Event('error')
                : manner === 'fails'
                  ? new MessageEvent('message', { data: report })
                  : null;
            if (event) {
              Object.assign(globalThis, { faults: Number(Reflect.get(globalThis, 'faults') ?? 0) + 1 });
              queueMicrotask(() => this.dispatchEvent(event));
            } else super.postMessage(message);
          }
        };
      }),
  });

const behave = (page: Page, manner: Manner) =>
  page.evaluate((next) => {
    Object.assign(globalThis, { manner: next, faults: 0 });
  }, manner);
/** How often a worker broke off since. */
const faults = (page: Page) => page.evaluate(() => Number(Reflect.get(globalThis, 'faults')));
/** Waits until the page says this in German, too. */
async function alsoInGerman(page: Page, say: () => string): Promise<void> {
  await choose(page, 'de');
  await page.getByText(inGerman(say)).first().waitFor();
  await choose(page, 'en');
}

test('a search that hangs is stopped and found anew, one that fails says so, one whose worker dies ends all the same', async () => {
  const { page, close } = await visit('#/pitch');
  const { search } = pitchWords;
  const find = () => button(page, search.go).click();
  await button(page, search.go).waitFor();
  const design = await designOn(page);

  await behave(page, 'hangs');
  await find();
  await button(page, search.stop).click();
  await page.getByText(search.stopped).waitFor();
  await alsoInGerman(page, () => search.stopped);

  await behave(page, 'fails');
  await find();
  await page.getByText(search.failed).waitFor();
  await alsoInGerman(page, () => search.failed);

  await behave(page, 'dies');
  await find();
  await page.getByText(search.anew).first().waitFor();
  await page.getByRole('heading', { name: foundWords.table.heading }).waitFor();
  expect(await faults(page)).toBe(2);
  expect(await designOn(page)).toBe(design);
  await close();
});

test('a room’s drawing that fails says so, and is drawn again; a dying worker is replaced', async () => {
  const { page, close } = await visit(withLanguage(await linkFor(measured, 'room'), 'de'));
  const { batch } = answerWords;
  await page
    .getByText(inGerman(() => batch.settable))
    .first()
    .waitFor();
  const design = await designOn(page);
  await behave(page, 'fails');
  const seed = inGerman(() => batch.seed);
  await page.getByRole('textbox', { name: seed, exact: true }).fill('7');
  await page.keyboard.press('Enter');
  await page.getByText(inGerman(() => batch.failed)).waitFor();
  // Another language begins the work once more.
  await choose(page, 'en');
  await expect.poll(() => faults(page)).toBe(2);
  await page.getByText(batch.failed).waitFor();
  await page.getByText(batch.settable).first().waitFor();

  await behave(page, 'dies');
  await button(page, batch.again).click();
  await expect.poll(() => faults(page)).toBe(2);
  await button(page, batch.stop).waitFor({ state: 'hidden' });
  expect(await page.getByText(batch.failed).count()).toBe(0);
  await page.getByText(batch.settable).first().waitFor();
  await button(page, words.bar.undo).click();
  expect(await designOn(page)).toBe(design);
  await close();
});

test('a board plan that breaks off says so, and is tried again; dead workers leave the work to the page', async () => {
  const { page, close } = await visit('#/listen');
  await behave(page, 'fails');
  await page.getByRole('link', { name: words.places.names.kit, exact: true }).click();
  await page.getByRole('radio', { name: kitViewWords.sheetNames.board, exact: true }).check();
  await page.getByText(kitViewWords.workFailed).waitFor();
  await alsoInGerman(page, () => kitViewWords.workFailed);
  await behave(page, 'dies');
  await button(page, words.places.again).click();
  await page.locator('board-picture').first().waitFor();
  expect(await page.getByText(kitViewWords.workFailed).count()).toBe(0);
  expect(await faults(page)).toBe(2);
  await close();
});
