/** The place Kit under a visitor's hands: an order by keyboard alone, a fault found, sheets on paper, and access. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { SHEETS, type Sheet } from '../../src/app/kit-desk.ts';
import type { Look } from '../../src/app/session.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { csvRows } from '../../src/kit/csv.ts';
import { formatQuantity } from '../../src/quantity/format.ts';
import { wavOf } from '../../src/sound/wav.ts';
import { words } from '../../src/words/en.ts';
import { kitViewWords } from '../../src/words/en-kit.ts';
import { earWords, faultWords } from '../../src/words/faults.ts';
import { orderWords } from '../../src/words/order.ts';
import { axeSource, faults } from './support/access.ts';
import { type OpenedPage, oneBrowser, openPage, type PageOptions } from './support/browser.ts';
import { button, tabTo } from './support/visit.ts';

const looks = Object.keys(words.bar.looks) as Look[];
const browser = oneBrowser();

const visit = (options: PageOptions = {}): Promise<OpenedPage> =>
  openPage(browser(), `${inject('house').site}#/kit`, options);

const sheet = (page: Page, name: Sheet) =>
  page.getByRole('radio', { name: kitViewWords.sheetNames[name], exact: true });
const box = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

async function type(page: Page, name: string, text: string): Promise<void> {
  await tabTo(page, box(page, name));
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** A square wave as a recording. */
function recordingOf(hertz: number): Buffer {
  const sampleRate = 44_100;
  const samples = Float32Array.from({ length: 2 * sampleRate }, (_, i) =>
    (i * hertz) / sampleRate - Math.floor((i * hertz) / sampleRate) < 0.53 ? 0.2 : -0.2,
  );
  return Buffer.from(wavOf(samples, sampleRate));
}

/** Waits for what a sheet makes in its worker. */
async function open(page: Page, name: Sheet): Promise<void> {
  await sheet(page, name).check();
  if (name === 'board' || name === 'cards')
    await page.locator('board-picture').first().waitFor({ state: 'attached' });
  if (name === 'faults')
    await page.getByRole('heading', { name: kitViewWords.faults.ranking }).waitFor({ timeout: 50_000 });
}

test('with the keyboard alone an order for 24 kits with stock, packs and prices becomes a CSV file', async () => {
  const { page, close } = await visit();
  await type(page, kitViewWords.order.kits, '24');
  const cell = 'Battery clip, 9 V block, with leads';
  await type(page, kitViewWords.order.stock(cell), '7');
  await type(page, kitViewWords.order.pack(cell), '5');
  await type(page, kitViewWords.order.price(cell), '1.90');
  await tabTo(page, button(page, kitViewWords.order.csv));
  const coming = page.waitForEvent('download');
  await page.keyboard.press('Enter');
  const file = await (await coming).path();
  const rows = csvRows(readFileSync(file, 'utf8'));
  const row = rows.find(([name]) => name === cell)!;
  const column = (name: (typeof orderWords.columns)[number]) => row[orderWords.columns.indexOf(name)]!;
  expect(column('Needed')).toBe('24');
  expect(column('In stock')).toBe('7');
  const toHave = Number(column('With spares'));
  expect(toHave).toBeGreaterThan(24);
  const packs = Math.ceil((toHave - 7) / 5);
  expect(column('Packs to buy')).toBe(String(packs));
  expect(Number(column('Cost'))).toBeCloseTo(packs * 1.9, 9);
  // Each line's cells are the table's, and nothing in them begins a formula.
  expect(new Set(rows.map(({ length }) => length))).toEqual(new Set([orderWords.columns.length]));
  await close();
});

test('from a silent board the finder comes to the missing supply within four readings', async () => {
  const { page, close } = await visit();
  await open(page, 'faults');
  // Nothing is ranked before anything is said.
  await page.getByText(kitViewWords.faults.sayFirst).waitFor();
  expect(await page.locator('faults-panel ol li').count()).toBe(0);
  for (const light of ['lit', 'A shaded', 'B shaded'] as const)
    for (const voice of ['A', 'B'] as const)
      await page
        .getByRole('combobox', {
          name: kitViewWords.faults.heard(voice, kitViewWords.faults.light[light]),
          exact: true,
        })
        .selectOption('silent');
  expect(Object.keys(earWords.lights)).toHaveLength(3);
  const first = page.locator('faults-panel ol li').first();
  const next = page.locator('faults-panel .next');
  // With no supply every point reads nothing.
  for (let readings = 0; readings < 4; readings += 1) {
    await page
      .getByRole('status')
      .filter({ hasText: kitViewWords.faults.reworking })
      .waitFor({ state: 'hidden' });
    if ((await next.getByRole('textbox').count()) === 0) break;
    const asked = await next.locator('strong').textContent();
    await next.getByRole('textbox').fill('0');
    await next.getByRole('textbox').press('Enter');
    // Nothing may be asked any more: a question that is gone is not waited for.
    await expect.poll(async () => (await next.locator('strong').allTextContents()).join()).not.toBe(asked);
  }
  await expect.poll(() => first.textContent()).toContain(faultWords('no supply', null, 9).name);
  const mend = await first.textContent();
  expect(mend).toContain(faultWords('no supply', null, 9).mend);
  expect(mend).toContain(faultWords('no supply', null, 9).confirm);
  await first.getByRole('button').click();
  await page.getByText(kitViewWords.faults.logged(1)).waitFor();
  // On paper the log has a row for every kit: this one, and those still to be written by hand.
  await open(page, 'log');
  await page.emulateMedia({ media: 'print' });
  const rows = page.locator('log-sheet tbody tr').filter({ visible: true });
  expect(await rows.count()).toBe(DEFAULT_DESIGN.batch.kits);
  expect(await rows.first().textContent()).toContain(faultWords('no supply', null, 9).name);
  expect((await rows.last().textContent())!.trim()).toBe(String(DEFAULT_DESIGN.batch.kits));
  await close();
});

test('on paper the board is drawn at its own size, and its two sides lie on each other', async () => {
  // As wide as A4 within 12 mm margins.
  const { page, close } = await visit({ viewport: { width: 703, height: 1032 } });
  await open(page, 'board');
  const [strips, holes] = await page.locator('plan-panel .figure-words').evaluate((element) => {
    const [strips, holes] = [...element.textContent!.matchAll(/\d+/g)].map(([figure]) => Number(figure));
    return [strips!, holes!];
  });
  await page.emulateMedia({ media: 'print' });
  const sides = await page.locator('.side').evaluateAll((all) =>
    all.map((side) => {
      const paper = side.getBoundingClientRect();
      return [...side.querySelectorAll('board-picture')].map((picture) => {
        const board = picture.shadowRoot!.querySelector('.board')!.getBoundingClientRect();
        return {
          left: board.left - paper.left,
          right: paper.right - board.right,
          top: board.top - paper.top,
          width: board.width,
          height: board.height,
        };
      });
    }),
  );
  const pixels = 96 / 25.4;
  const [component, copper] = sides;
  // The second side begins a page; so must the first begin at the very top of its own.
  const top = await page
    .locator('.side')
    .first()
    .evaluate((side) => side.getBoundingClientRect().top + scrollY);
  expect(top).toBeCloseTo(0, 1);
  expect(sides).toHaveLength(2);
  expect(component![0]!.width / pixels).toBeCloseTo(holes! * 2.54, 1);
  expect(component![0]!.height / pixels).toBeCloseTo(strips! * 2.54, 1);
  for (const [i, own] of component!.entries()) {
    const other = copper![i]!;
    // Turned over on its long edge, left becomes right: within a tenth of a millimetre.
    expect(Math.abs(own.left - other.right) / pixels).toBeLessThan(0.1);
    expect(Math.abs(own.top - other.top) / pixels).toBeLessThan(0.1);
    expect(other.width).toBeCloseTo(own.width, 1);
  }
  const bar = await page
    .locator('.check-bar svg')
    .first()
    .evaluate((svg) => svg.getBoundingClientRect().width);
  expect(bar / pixels).toBeCloseTo(100, 1);
  // Each of the two pages carries the design's name; this computer's own address, which others cannot reach, on none.
  const heads = await page.locator('.side .head').allTextContents();
  expect(heads).toHaveLength(2);
  for (const head of heads) {
    expect(head).toContain(DEFAULT_DESIGN.name);
    expect(head).not.toContain('#/kit?d=');
  }
  const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: true });
  const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? [];
  expect(pages.length).toBeGreaterThanOrEqual(3);
  expect(pages.length).toBeLessThanOrEqual(5);
  // A Letter page between its margins, mm.
  const tallest = () =>
    page
      .locator('.side')
      .evaluateAll((all) => Math.max(...all.map((side) => side.getBoundingClientRect().height)));
  expect((await tallest()) / pixels).toBeLessThan(279.4 - 26);
  // A large board takes two sheets: component and copper side on the two faces of each.
  await page.emulateMedia({ media: 'screen' });
  const { options } = kitViewWords.board;
  await page.getByRole('combobox', { name: options, exact: true }).selectOption('36x50');
  await expect.poll(() => page.locator('.side').count(), { timeout: 30_000 }).toBe(4);
  await page.emulateMedia({ media: 'print' });
  expect((await tallest()) / pixels).toBeLessThan(279.4 - 26);
  const titles = await page.locator('.side > h3').allTextContents();
  const { component: front, copper: back } = kitViewWords.board.heading;
  expect(titles).toEqual([front, back, front, back]);
  await close();
});

test('from recordings of both ends of a trimmer the page becomes that board; no microphone is opened', async () => {
  const { page, close } = await visit({
    prepare: (opening) =>
      opening.addInitScript(() => {
        navigator.mediaDevices.getUserMedia = async () => {
          throw new Error('The microphone was opened unasked.');
        };
      }),
  });
  await open(page, 'sound');
  const said = kitViewWords.sound;
  for (const [point, hertz] of [
    ['low', 130],
    ['high', 600],
  ] as const) {
    const chooser = page.waitForEvent('filechooser');
    await button(page, said.file(said.points[point])).click();
    await (await chooser).setFiles({ name: 'board.wav', mimeType: 'audio/wav', buffer: recordingOf(hertz) });
    await expect.poll(() => box(page, said.points[point]).inputValue()).toBe(words.hertz(hertz));
  }
  const ring = page.locator('svg.ring').first();
  const names = () => ring.locator('text').allTextContents();
  const before = await names();
  await button(page, said.become).click();
  await page.getByText(said.became).waitFor();
  // The design’s own parts are those of this board now, as one step that can be taken back.
  await expect
    .poll(() => button(page, words.bar.undo).getAttribute('title'))
    .toBe(words.bar.undoWhat(said.becomeStep('A')));
  const [, designed, built] = await page
    .locator('sound-sheet tbody tr')
    .first()
    .locator('th, td')
    .allTextContents();
  expect(designed).not.toBe(formatQuantity(DEFAULT_DESIGN.voices.A.capacitor.farads, 'F'));
  expect(Number.parseFloat(designed!)).toBeCloseTo(Number.parseFloat(built!), 1);
  // The paper ring is that board's too, and reaches as low as was heard. It is printed at its own size.
  expect(before).not.toContain('C3');
  expect(await names()).toContain('C3');
  await page.emulateMedia({ media: 'print' });
  const pixels = 96 / 25.4;
  const rim = await ring
    .locator('.cut')
    .last()
    .evaluate((circle) => circle.getBoundingClientRect().width);
  expect(rim / pixels).toBeCloseTo(66, 1);
  const bar = await page
    .locator('.rings .check-bar svg')
    .evaluate((svg) => svg.getBoundingClientRect().width);
  expect(bar / pixels).toBeCloseTo(100, 1);
  expect(await page.locator('.rings .head').textContent()).toContain(DEFAULT_DESIGN.name);
  await close();
});

test('axe finds nothing on any sheet, wide and narrow, each look at least once', async () => {
  const { page, close } = await visit();
  await page.evaluate(axeSource);
  const found: Record<string, readonly string[]> = {};
  for (const [i, name] of SHEETS.entries()) {
    await page.setViewportSize({ width: 1280, height: 720 });
    await open(page, name);
    const look = looks[i % looks.length]!;
    await page
      .getByRole('group', { name: words.bar.look, exact: true })
      .getByRole('radio', { name: words.bar.looks[look], exact: true })
      .check();
    await page.locator('details').evaluateAll((all) => {
      for (const fold of all.slice(0, 8)) (fold as HTMLDetailsElement).open = true;
    });
    const wide = await faults(page);
    if (wide.length > 0) found[`${name}, ${look}`] = wide;
    await page.setViewportSize({ width: 320, height: 720 });
    const narrow = await faults(page, null, 'look');
    if (narrow.length > 0) found[`${name}, ${look}, narrow`] = narrow;
  }
  expect(found).toEqual({});
  await close();
}, 120_000);
