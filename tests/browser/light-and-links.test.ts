/** Scenes, recorded logs, links, taking the light down: driven as a visitor would, and listened to. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import { linkFor } from '../../src/app/address.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { rename, setVoiceValue, turnPitch } from '../../src/design/commands.ts';
import { encodeText } from '../../src/design/decode.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { readRows } from '../../src/headless/light-rows.ts';
import { fullScaleVolts } from '../../src/sound/wav.ts';
import { words } from '../../src/words/en.ts';
import { classPage } from '../../src/words/en-class.ts';
import { englishLessons } from '../../src/words/en-lessons.ts';
import { lampWords, logWords, sceneWords, takeWords } from '../../src/words/en-scenes.ts';
import { lightLogWords } from '../../src/words/light-log.ts';
import { linkWords } from '../../src/words/link.ts';
import { levelAt, peakOf } from '../ear.ts';
import { readWav } from '../sound/wav-reader.ts';
import { oneBrowser, openPage, tapSound } from './support/browser.ts';
import { designOn, inGerman, saysInBoth } from './support/faults.ts';
import {
  becomes,
  button,
  hand,
  hearBoth,
  hearOnly,
  soundButton,
  states,
  tabTo,
  trimmerBox,
} from './support/visit.ts';

const { site } = inject('house');
const { sounding, silent } = words.strip;
const browser = oneBrowser();

const visit = (address = '', options: { permissions?: string[] } = {}) =>
  openPage(browser(), `${site}${address}`, { prepare: tapSound, ...options });

/** Drops a file on the page, as from a folder. */
async function drop(page: Page, name: string, text: string): Promise<void> {
  const files = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content!], fileName!, { type: 'text/plain' }));
      return transfer;
    },
    [name, text],
  );
  await page.locator('body').dispatchEvent('dragover', { dataTransfer: files });
  await page.locator('body').dispatchEvent('drop', { dataTransfer: files });
}

const source = (page: Page, name: string) => page.getByRole('radio', { name, exact: true });

describe('a recorded log', () => {
  // Two semicolon columns with decimal commas, a broken row, A dark and then B dark for long stretches.
  const NIGHT = [
    'Zeit;Lux A;Lux B',
    '21:00:00;300,5;300',
    '21:00:20;300,5;300',
    '21:00:20;x;300',
    '21:00:21;2,0;300',
    '21:00:40;2,0;300',
    '21:00:41;300;2,5',
    '21:00:60;300;2,5',
    '21:01:10;300;2,5',
  ].join('\n');

  test('dropped on the page is read, its bad rows named, and replayed: the voices gate as its rows say', async () => {
    const { page, close } = await visit();
    await soundButton(page).click();
    await drop(page, 'night.csv', NIGHT);
    await page.getByText(logWords.name('night.csv')).waitFor();
    await page.getByText(logWords.problems).click();
    await expect
      .poll(() => page.getByRole('listitem').allTextContents())
      .toContainEqual(expect.stringContaining('Row 4'));
    await becomes(page, { A: sounding, B: sounding });
    const place = page.getByRole('slider', { name: logWords.place, exact: true });
    const goTo = async (share: number) => {
      await place.press('Home');
      for (let i = 0; i < Math.round(share * 10); i++) await place.press('PageUp');
    };
    // 70 s in all: ten per cent are seven seconds.
    await goTo(0.4);
    await hearOnly(page, 'B', DEFAULT_DESIGN);
    await becomes(page, { A: silent, B: sounding });
    await goTo(0.8);
    await becomes(page, { A: sounding, B: silent });
    await goTo(0);
    await hearBoth(page, DEFAULT_DESIGN);
    await close();
  });

  test('read wrongly is corrected by hand', async () => {
    const { page, close } = await visit();
    await drop(page, 'swapped.csv', 'time,second,first\n0,300,2\n10,300,2\n20,300,2\n');
    await becomes(page, { A: sounding, B: silent });
    await page.getByText(logWords.how).click();
    await page.getByRole('combobox', { name: logWords.luxA }).selectOption({ index: 2 });
    await page.getByRole('combobox', { name: logWords.luxB }).selectOption({ index: 2 });
    await becomes(page, { A: silent, B: sounding });
    await close();
  });

  test('that cannot be read says why in any place, and the light goes on from where it came', async () => {
    const { page, close } = await visit();
    await hand(page, 'A').press('End');
    for (const place of ['pitch', 'listen'] as const) {
      await page.getByRole('link', { name: words.places.names[place], exact: true }).click();
      await page.locator(`place-${place}`).waitFor();
      await drop(page, 'poem.txt', 'Roses are red\nViolets are blue\n');
      const said = () =>
        `${words.notice.refusedLog('poem.txt')} ${lightLogWords.refusal({ kind: 'no columns' })}`;
      await saysInBoth(page, said(), inGerman(said));
      await button(page, words.notice.dismiss).click();
    }
    expect(await source(page, words.light.sources.stage).isChecked()).toBe(true);
    await becomes(page, { A: silent, B: sounding });
    await close();
  });

  test('whose columns are found and whose rows do not read is kept beside the light until it reads', async () => {
    const { page, close } = await visit();
    await drop(page, 'below.csv', 'time,lux_a,room\n0,-1,300\n10,-1,300\n20,-1,300\n');
    await page.getByText(words.notice.refusedLog('below.csv'), { exact: false }).waitFor();
    await becomes(page, { A: sounding, B: sounding });
    await source(page, words.light.sources.log).check({ force: true });
    await page.getByText(logWords.unplayed('below.csv')).waitFor();
    await page.getByText(logWords.how).click();
    await page.getByRole('combobox', { name: logWords.luxA }).selectOption({ index: 2 });
    await page.getByText(logWords.name('below.csv')).waitFor();
    await close();
  });

  test('is refused in a lesson, whose hands go on working; a design leaves the lesson, and says so', async () => {
    const { page, close } = await visit('#/class');
    await button(page, classPage.begin(englishLessons.lessons['the-first-cycle'].title)).click();
    await page.getByRole('button', { name: new RegExp(`^${englishLessons.go.free}`) }).click();
    const lessonHand = page.getByRole('slider', { name: englishLessons.controls['hand A'], exact: true });
    // The lesson begins in the shade of this hand.
    await becomes(page, { A: silent, B: sounding });
    await drop(page, 'night.csv', NIGHT);
    await saysInBoth(
      page,
      words.notice.logInLesson('night.csv'),
      inGerman(() => words.notice.logInLesson('night.csv')),
    );
    await lessonHand.press('Home');
    await becomes(page, { A: sounding, B: sounding });
    await drop(page, 'mine.json', encodeText(rename('Mine')(DEFAULT_DESIGN)));
    await page.getByText(`${words.notice.opened('Mine')} ${words.notice.leftLesson}`).waitFor();
    expect(await page.locator('lesson-player').count()).toBe(0);
    await close();
  });

  test('or any file that the browser cannot read is told, and the design is as it was', async () => {
    const { page, close } = await visit();
    const design = await designOn(page);
    // As with a folder, or a file whose drive has gone.
    await page.evaluate(() => {
      Blob.prototype.text = () => Promise.reject(new DOMException('Gone.', 'NotReadableError'));
    });
    await drop(page, 'folder', '');
    await saysInBoth(
      page,
      words.notice.unread('folder'),
      inGerman(() => words.notice.unread('folder')),
    );
    expect(await designOn(page)).toBe(design);
    await close();
  });
});

describe('a scene', () => {
  test('gates both voices by itself, from its beginning at a press', async () => {
    const { page, close } = await visit();
    await source(page, words.light.sources.scene).check({ force: true });
    await page
      .getByRole('combobox', { name: sceneWords.kind, exact: true })
      .selectOption({ label: sceneWords.kinds['passer-by'] });
    await expect.poll(async () => (await states(page)).A, { timeout: 15_000 }).toBe(silent);
    await expect.poll(async () => (await states(page)).A, { timeout: 15_000 }).toBe(sounding);
    await button(page, sceneWords.again).click();
    await expect
      .poll(async () => Number.parseFloat((await page.getByText(/s into it$/).textContent()) ?? '99'))
      .toBeLessThan(3);
    await close();
  });

  test('a lamp that ripples makes a gate without hysteresis at its trip point chatter', async () => {
    const plain = setVoiceValue(
      'A',
      'hysteresisOhms',
      null,
    )(setVoiceValue('B', 'hysteresisOhms', null)(DEFAULT_DESIGN));
    const { page, close } = await visit(await linkFor(plain));
    await page.getByText(words.notice.opened(plain.name)).waitFor();
    await page
      .getByRole('combobox', { name: lampWords.lamp })
      .selectOption({ label: lampWords.lamps['led-poor'] });
    await button(page, words.threshold.justOn).click();
    const strip = page.getByRole('region', { name: words.strip.heading, exact: true });
    await expect.poll(() => strip.textContent(), { timeout: 15_000 }).toContain('chattering');
    await close();
  });
});

describe('a link', () => {
  const linked = turnPitch('B', 0.9)(rename('Linked by letter')(DEFAULT_DESIGN));

  test('copied here opens the same design in a second page', async () => {
    const { page, close } = await visit('', { permissions: ['clipboard-read', 'clipboard-write'] });
    await page.getByRole('slider', { name: words.voices.trimmer('A'), exact: true }).press('End');
    await button(page, words.bar.copyLink).click();
    await page.getByText(words.notice.linkCopied).waitFor();
    const address = await page.evaluate(() => navigator.clipboard.readText());
    const typed = await trimmerBox(page, 'A').inputValue();
    await close();
    const second = await openPage(browser(), address, { prepare: tapSound });
    await second.page.getByText(words.notice.opened(DEFAULT_DESIGN.name)).waitFor();
    expect(await trimmerBox(second.page, 'A').inputValue()).toBe(typed);
    await second.close();
  });

  test('followed while the page is open changes the design, as one step that can be taken back', async () => {
    const { page, close } = await visit();
    const link = await linkFor(linked);
    await page.evaluate((hash) => {
      location.hash = hash;
    }, link);
    await page.getByText(words.notice.opened(linked.name)).waitFor();
    await button(page, words.bar.undo).click();
    expect(await page.getByRole('textbox', { name: words.bar.name }).inputValue()).toBe(DEFAULT_DESIGN.name);
    await close();
  });

  test('damaged says so and opens nothing', async () => {
    const link = await linkFor(linked);
    const { page, close } = await visit(link.slice(0, -3));
    await page.getByText(linkWords.damaged).waitFor();
    expect(await page.getByRole('textbox', { name: words.bar.name }).inputValue()).toBe(DEFAULT_DESIGN.name);
    await close();
  });
});

test('by keyboard alone: light taken down, saved as a log that reads back, and as the sound of the model', async () => {
  const { page, close } = await visit();
  await tabTo(page, button(page, takeWords.record));
  await page.keyboard.press('Enter');
  await hand(page, 'A').press('End');
  await becomes(page, { A: silent, B: sounding });
  await hand(page, 'A').press('Home');
  await becomes(page, { A: sounding, B: sounding });
  await button(page, takeWords.stop).press('Enter');
  const asLog = page.waitForEvent('download');
  await button(page, takeWords.saveLog).press('Enter');
  const log = readRows(readFileSync(await (await asLog).path(), 'utf8'));
  if (!log.ok || log.program.kind !== 'points') throw new Error('not read as rows of light');
  expect(Math.min(...log.program.lux.A)).toBeLessThan(20);
  expect(Math.min(...log.program.lux.B)).toBeGreaterThan(250);
  const asSound = page.waitForEvent('download');
  await button(page, takeWords.saveSound).press('Enter');
  const wav = readWav(readFileSync(await (await asSound).path()));
  expect(wav.sampleRate).toBe(48_000);
  expect(wav.samples.length / 48_000).toBeCloseTo(log.program.times.at(-1)!, 2);
  const { jack } = instrumentOf(DEFAULT_DESIGN);
  const sound = { samples: wav.samples, sampleRate: 48_000 };
  expect(peakOf(sound)).toBeLessThanOrEqual(1);
  expect(levelAt(sound) * fullScaleVolts(jack)).toBeGreaterThan(0.1);
  await close();
});

test('by keyboard alone: just on, first cycles stepped, the reference note sounded', async () => {
  const { page, close } = await visit();
  await soundButton(page).press('Enter');
  await becomes(page, { A: sounding, B: sounding });
  await tabTo(page, button(page, words.threshold.justOn));
  await page.keyboard.press('Enter');
  await page.getByText(words.threshold.justOnDone).waitFor();
  await hand(page, 'B').press('End');
  await expect
    .poll(async () => page.getByRole('region', { name: words.strip.heading }).textContent())
    .toContain(silent);
  await tabTo(page, button(page, words.first.next));
  for (let i = 0; i < 3; i++) await page.keyboard.press('Enter');
  await page.getByText(words.first.step(3, 6)).waitFor();
  const reference = page.getByRole('checkbox', { name: words.reference.sounds });
  await tabTo(page, reference);
  await page.keyboard.press('Space');
  expect(await reference.isChecked()).toBe(true);
  await close();
});
