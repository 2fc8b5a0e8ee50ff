/** A board measured by its sound on a live input: when the microphone opens, what is asked of it, what is told, when it ends. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, expect, inject, test } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/design.ts';
import { centsBetween } from '../../src/plan/notes.ts';
import { renderTake } from '../../src/sound/render.ts';
import { words } from '../../src/words/en.ts';
import { kitViewWords } from '../../src/words/en-kit.ts';
import { DARK, LIT, settingsFrom, steady } from '../sound/playing.ts';
import { type OpenedPage, oneBrowser, openPage } from './support/browser.ts';
import { button } from './support/visit.ts';

const said = kitViewWords.sound;
const RATE = 48_000;
const folder = mkdtempSync(path.join(tmpdir(), 'board-sound-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** The default design with voice A's pitch trimmer a little further clockwise: a board that sounds too low. */
const voiceA = DEFAULT_DESIGN.voices.A;
const board: Design = {
  ...DEFAULT_DESIGN,
  voices: {
    ...DEFAULT_DESIGN.voices,
    A: { ...voiceA, trimmer: { ...voiceA.trimmer, rotation: voiceA.trimmer.rotation + 0.05 } },
  },
};
const frequencyOf = (design: Design) => instrumentOf(design).voices.A.cycle.frequency;

/** Eight seconds of that board, A in the light and B in the dark, as the 16-bit file a recorder writes. */
function recorded(): string {
  const { samples, gate } = renderTake(settingsFrom(board), steady(LIT, DARK), 8, RATE);
  if (gate.map(({ sounding }) => sounding).join() !== 'true,false') throw new Error('A alone must sound.');
  const peak = samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const file = Buffer.alloc(44 + 2 * samples.length);
  file.write('RIFF', 0);
  file.writeUInt32LE(file.length - 8, 4);
  file.write('WAVEfmt ', 8);
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(1, 20);
  file.writeUInt16LE(1, 22);
  file.writeUInt32LE(RATE, 24);
  file.writeUInt32LE(2 * RATE, 28);
  file.writeUInt16LE(2, 32);
  file.writeUInt16LE(16, 34);
  file.write('data', 36);
  file.writeUInt32LE(2 * samples.length, 40);
  for (const [i, x] of samples.entries()) file.writeInt16LE(Math.round((x / peak) * 16_000), 44 + 2 * i);
  const place = path.join(folder, 'board.wav');
  writeFileSync(place, file);
  return place;
}

const browser = oneBrowser(() => ({ audioFile: recorded(), permissions: ['microphone'] }));

interface Openings {
  readonly asked: MediaStreamConstraints[];
  readonly streams: MediaStream[];
}

/** The sheet, with every opening of the microphone written down. */
async function visit(): Promise<OpenedPage> {
  const opened = await openPage(browser(), `${inject('house').site}#/kit`, {
    prepare: (page) =>
      page.addInitScript(() => {
        const { mediaDevices } = navigator;
        const open = mediaDevices.getUserMedia.bind(mediaDevices);
        const openings: Openings = { asked: [], streams: [] };
        Reflect.set(globalThis, 'openings', openings);
        mediaDevices.getUserMedia = async (constraints = {}) => {
          openings.asked.push(constraints);
          const stream = await open(constraints);
          openings.streams.push(stream);
          return stream;
        };
      }),
  });
  await opened.page.getByRole('radio', { name: kitViewWords.sheetNames.sound, exact: true }).check();
  await listenButton(opened.page).waitFor();
  return opened;
}

const listenButton = (page: Page) => button(page, said.listen(said.points.now));

const openingsOf = (page: Page) =>
  page.evaluate(() => {
    const { asked, streams } = Reflect.get(globalThis, 'openings') as Openings;
    const states = streams.flatMap((stream) => stream.getTracks().map(({ readyState }) => readyState));
    return { asked, states };
  });

test('a press listens to a board: its pitch within 5 cents, cents from the target, which way to turn; then the microphone is off', async () => {
  const { page, close } = await visit();
  expect(await openingsOf(page)).toEqual({ asked: [], states: [] });
  await listenButton(page).click();
  const box = page.getByRole('textbox', { name: said.points.now, exact: true });
  await expect.poll(() => box.inputValue(), { timeout: 10_000 }).not.toBe('');
  const { asked, states } = await openingsOf(page);
  expect(asked).toHaveLength(1);
  expect(asked[0]!.audio).toMatchObject({
    echoCancellation: false,
    noiseSuppression: false,
    autoGainControl: false,
  });
  expect(asked[0]!.video).toBeUndefined();
  expect(states).toEqual(['ended']);
  expect(Math.abs(centsBetween(frequencyOf(board), Number.parseFloat(await box.inputValue())))).toBeLessThan(
    5,
  );
  const target = frequencyOf(DEFAULT_DESIGN);
  const cents = centsBetween(target, frequencyOf(board));
  expect(cents).toBeLessThan(-20);
  const told = (await page.getByText(/cents from its target/).textContent()) ?? '';
  expect(told).toContain(words.hertz(target));
  expect(Math.abs(Number.parseFloat(told.trim().replace('−', '-')) - cents), told).toBeLessThan(5);
  await page.getByText(/Turn it .*° anticlockwise\./).waitFor();
  await close();
});

test('leaving the place while it listens lets the microphone go', async () => {
  const { page, close } = await visit();
  // With every clock standing still, listening does not end by itself: only leaving can end it.
  await page.evaluate(() => {
    Object.defineProperty(BaseAudioContext.prototype, 'currentTime', { get: () => 0 });
    const now = performance.now();
    performance.now = () => now;
  });
  await listenButton(page).click();
  await expect.poll(async () => (await openingsOf(page)).states).toEqual(['live']);
  await page.evaluate(() => {
    location.hash = '#/pitch';
  });
  await expect.poll(async () => (await openingsOf(page)).states).toEqual(['ended']);
  expect(await page.locator('sound-sheet').count()).toBe(0);
  await close();
});
