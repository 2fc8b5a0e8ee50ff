/**
 * Texts out of a file that would be markup, a formula or another direction of writing if they were let: in every place,
 * on every sheet, on paper and in the codes they stay letters, and none turns the words around it.
 */

import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { PLACES, readLink } from '../../src/app/address.ts';
import { SHEETS } from '../../src/app/kit-desk.ts';
import { encodeText } from '../../src/design/decode.ts';
import type { Design } from '../../src/design/design.ts';
import { forOthers } from '../../src/design/for-others.ts';
import { NAME_LENGTH } from '../../src/design/limits.ts';
import { classPage } from '../../src/words/en-class.ts';
import { kitViewWords } from '../../src/words/en-kit.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';
import { isSoak } from '../fuzz/count.ts';
import { HOSTILE_TEXTS } from '../fuzz/spoilt.ts';
import { oneBrowser, openPage } from './support/browser.ts';
import { designText, isThere, prepareUser } from './support/random-user.ts';
import { drawnAnew } from './support/visit.ts';

const browser = oneBrowser();

/** A design that has a strange text wherever one fits. */
function designWith(own: string): Design {
  const { pitch, batch } = BENCH_DESIGN;
  return {
    ...BENCH_DESIGN,
    name: own.slice(0, NAME_LENGTH),
    notes: own,
    pitch: { ...pitch, wish: { ...pitch.wish, notes: { A: own.slice(0, 24), B: own.slice(0, 24) } } },
    batch: {
      ...batch,
      lines: [{ key: own.slice(0, 80), stock: 3, packSize: 5, packPrice: 1 }],
      log: [
        {
          kit: 1,
          readings: [{ point: own.slice(0, 20), value: 1 }],
          fault: own.slice(0, 20),
          minutes: 5,
          lost: [],
        },
      ],
    },
  };
}

async function openFile(page: Page, text: string): Promise<void> {
  await page.evaluate((file) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([file], 'strange.json'));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
  }, text);
}

/** What a look through all roots finds: elements that a text made, and letters that would turn or hide others. */
function lookThrough(page: Page) {
  return page.evaluate(() => {
    // Line ends and tabs of the templates are no letters of the texts.
    const turning = /[\p{Surrogate}\p{Bidi_Control}\p{Control}\u2028\u2029]/u;
    const made: string[] = [];
    const shown: string[] = [];
    const codes: string[] = [];
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        const isMade =
          element.matches('[data-injected], [onload], [onerror], iframe, object, embed, base') ||
          /^\s*javascript:/i.test(element.getAttribute('href') ?? '');
        if (isMade) made.push(element.outerHTML.slice(0, 200));
        if (element.localName === 'qr-code') codes.push(element.getAttribute('text') ?? '');
        if (element.shadowRoot) visit(element.shadowRoot);
        if (element.matches('script, style, textarea')) continue;
        const own = [...element.childNodes].filter((node) => node.nodeType === Node.TEXT_NODE);
        const said = [
          ...own.map((node) => node.nodeValue ?? ''),
          ...['aria-label', 'title'].map((name) => element.getAttribute(name) ?? ''),
        ];
        shown.push(
          ...said
            .filter((text) => turning.test(text.replaceAll(/[\t\n]/g, '')))
            .map((text) => `${element.localName}: ${JSON.stringify(text)}`),
        );
      }
    };
    visit(document);
    // What is printed at the foot of each page is one rule and no more.
    const feet = document.adoptedStyleSheets.map(({ cssRules }) => cssRules.length);
    return { made, shown, codes, feet, title: document.title };
  });
}

/** The designs that codes open. */
async function opened(codes: readonly string[]): Promise<readonly unknown[]> {
  const links = await Promise.all(codes.map((code) => readLink(new URL(code).hash)));
  return links.map((link) => (link.ok ? link.design : link.reason));
}

/** What could be markup or turn its neighbours; in `npm run soak` everything. */
const designs = HOSTILE_TEXTS.filter((text) => (isSoak ? /\W/ : /[<\p{Bidi_Control}\0]/u).test(text)).map(
  designWith,
);

const stations = [
  ...PLACES.filter((place) => place !== 'kit').map((place) => ({ place, sheet: null })),
  ...SHEETS.map((sheet) => ({ place: 'kit' as const, sheet })),
];

test('names and notes out of a file make no element, turn no words and come back whole from the codes', async () => {
  const { page, close } = await openPage(browser(), inject('house').site, { prepare: prepareUser });
  const asked: string[] = [];
  page.on('dialog', (dialog) => {
    asked.push(dialog.message());
    void dialog.dismiss();
  });
  await isThere(page);
  // Codes are drawn where others can reach the page.
  await page.evaluate(() => Object.assign(location, { hash: '#/class' }));
  const address = page.getByRole('textbox', { name: classPage.handOver.hosted, exact: true });
  await address.fill('https://school.example/');
  await address.press('Enter');
  await page.getByRole('img', { name: classPage.handOver.code, exact: true }).waitFor();
  const found: string[] = [];
  for (const { place, sheet } of stations) {
    await page.evaluate((hash) => Object.assign(location, { hash }), `#/${place}`);
    await page.locator('main h2').first().waitFor();
    const title = await page.title();
    if (sheet !== null)
      await page.getByRole('radio', { name: kitViewWords.sheetNames[sheet], exact: true }).check();
    if (sheet === 'board') await page.locator('board-picture').first().waitFor({ state: 'attached' });
    // On paper there is all that is on the screen, and more.
    await page.emulateMedia({ media: 'print' });
    for (const design of designs) {
      const text = encodeText(design);
      await openFile(page, text);
      await expect.poll(() => designText(page), { timeout: 15_000 }).toBe(text);
      await drawnAnew(page);
      const seen = await lookThrough(page);
      const where = `${place} ${sheet ?? ''} ${JSON.stringify(design.name)}`;
      found.push(...[...seen.made, ...seen.shown].map((each) => `${where}: ${each}`));
      if (seen.title !== title) found.push(`${where}: the title is ${seen.title}`);
      if (seen.feet.some((rules) => rules > 1)) found.push(`${where}: more than a foot`);
      if (sheet === 'order')
        await expect
          .poll(async () => opened((await lookThrough(page)).codes), { message: where, timeout: 15_000 })
          .toEqual([forOthers(design)]);
    }
    await page.emulateMedia({ media: 'screen' });
  }
  expect(found).toEqual([]);
  expect(asked).toEqual([]);
  await close();
}, 120_000);
