/**
 * The README's pictures, taken anew from the page as it was built: `npm run pictures`. Light look, English, each place
 * with something real in it.
 */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import type { Place } from '../app/address.ts';
import { words } from '../words/en.ts';
import { kitViewWords } from '../words/en-kit.ts';
import { pitchWords } from '../words/en-pitch.ts';
import { foundWords } from '../words/en-pitch-found.ts';
import { describeWords } from '../words/en-room.ts';
import { answerWords } from '../words/en-room-answer.ts';
import { findChromium, startChromium } from './chromium.ts';
import { serveFolder } from './serve-folder.ts';
import type { Surroundings } from './take.ts';

const WINDOW = { width: 1250, height: 840 };

type Pictured = Exclude<Place, 'about'>;

const named = (name: string) => ({ name, exact: true });
const button = (page: Page, name: string) => page.getByRole('button', named(name));

/** The address of each place behind the `#/`, and what is done there before its picture is taken. */
const PLACES: Readonly<Record<Pictured, readonly [address: string, prepare: (page: Page) => Promise<void>]>> =
  {
    listen: [
      'listen',
      async (page) => {
        await page.getByRole('slider', named(words.light.hand('B'))).press('End');
        await page.getByText(words.strip.silent, { exact: true }).first().waitFor();
      },
    ],
    pitch: [
      'pitch',
      async (page) => {
        await button(page, pitchWords.search.go).click();
        const table = page.getByRole('heading', named(foundWords.table.heading));
        await table.waitFor();
        // The bars and the table, beneath what was wished for.
        await page.getByText(pitchWords.wanted.change, { exact: true }).click();
        await button(page, foundWords.detail.take).waitFor();
      },
    ],
    room: [
      'room',
      async (page) => {
        const { readings, daylight } = describeWords;
        await button(page, readings.add).click();
        for (const [level, lux] of [
          ['lit', '900'],
          ['shaded', '60'],
          ['dark', '500'],
        ] as const)
          await fill(page, readings.level[level]('A'), lux);
        await page.getByRole('checkbox', named(daylight.comes)).check();
        await fill(page, daylight.latitude, '52');
        await fill(page, daylight.longitude, '5');
        await page.getByText(answerWords.batch.settable, { exact: true }).waitFor();
        await page.evaluate(() => window.scrollTo(0, 0));
      },
    ],
    class: ['class?lesson=thirty-kits', async (page) => page.locator('picture-panel').first().waitFor()],
    kit: [
      'kit',
      async (page) => {
        await page.getByRole('radio', named(kitViewWords.sheetNames.board)).check();
        await page.locator('board-picture').first().waitFor();
        // All of the board, with what is set around it.
        await page
          .locator('plan-panel h2')
          .first()
          .evaluate((heading) => heading.scrollIntoView());
      },
    ],
  };

async function fill(page: Page, name: string, text: string): Promise<void> {
  const box = page.getByRole('textbox', named(name));
  await box.fill(text);
  await box.press('Tab');
}

/** A screenshot in a third of its bytes, by the browser that took it. */
async function small(page: Page, png: Buffer): Promise<Buffer> {
  const base64 = await page.evaluate(async (given) => {
    const bytes = Uint8Array.from(atob(given), (letter) => letter.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    canvas.getContext('2d')!.drawImage(picture, 0, 0);
    const webp = await canvas.convertToBlob({ type: 'image/webp', quality: 0.8 });
    const reader = new FileReader();
    reader.readAsDataURL(webp);
    await new Promise((done) => reader.addEventListener('load', done));
    return String(reader.result).replace(/^.*,/, '');
  }, png.toString('base64'));
  return Buffer.from(base64, 'base64');
}

export async function main(_args: readonly string[], { say }: Surroundings): Promise<number> {
  const browser = await startChromium(await findChromium());
  const site = await serveFolder(path.resolve('dist'));
  try {
    for (const [place, [address, prepare]] of Object.entries(PLACES)) {
      const context = await browser.newContext({
        viewport: WINDOW,
        colorScheme: 'light',
        reducedMotion: 'reduce',
        locale: 'en-GB',
      });
      const page = await context.newPage();
      await page.goto(`${site.address}#/${address}`);
      await prepare(page);
      await page.evaluate(async () => {
        await document.fonts.ready;
        await new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)));
      });
      const file = `tests/pictures/${place}-light.webp`;
      const picture = await small(page, await page.screenshot({ caret: 'hide' }));
      writeFileSync(file, picture);
      await context.close();
      say(`${file}: ${Math.round(picture.length / 1000)} kB\n`);
    }
  } finally {
    await browser.close();
    await site.close();
  }
  return 0;
}
