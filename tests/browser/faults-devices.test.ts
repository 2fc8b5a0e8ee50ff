/** A camera that is turned, a microphone that does not open, a window that is not allowed, a device that vibrates. */
import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { germanPage } from '../../src/words/de-page.ts';
import { words } from '../../src/words/en.ts';
import { classPage } from '../../src/words/en-class.ts';
import { kitViewWords } from '../../src/words/en-kit.ts';
import { englishLessons } from '../../src/words/en-lessons.ts';
import { oneBrowser, openPage } from './support/browser.ts';
import {
  choose,
  designOn,
  holdLongTimersFirst,
  inGerman,
  passLongTimers,
  saysInBoth,
} from './support/faults.ts';
import { becomes, button } from './support/visit.ts';

const site = inject('house').site;
const browser = oneBrowser();
const { sounding, silent } = words.strip;

test('a camera that is turned while it runs has its light taken anew, and says so', async () => {
  const { page, close } = await openPage(browser(), site, {
    prepare: (unopened) =>
      unopened.addInitScript(() => {
        const canvas = document.createElement('canvas');
        const pen = canvas.getContext('2d')!;
        const halves = { left: 150, right: 180 };
        const paint = () => {
          const middle = canvas.width / 2;
          for (const [grey, x] of [
            [halves.left, 0],
            [halves.right, middle],
          ] as const) {
            pen.fillStyle = `rgb(${grey} ${grey} ${grey})`;
            pen.fillRect(x, 0, middle, canvas.height);
          }
        };
        const sides = (width: number, height: number) => Object.assign(canvas, { width, height });
        sides(320, 240);
        setInterval(paint, 30);
        navigator.mediaDevices.getUserMedia = async () => canvas.captureStream(30);
        Object.assign(globalThis, {
          turn: () => {
            sides(240, 320);
            // What lies under patch A now is far darker.
            halves.left = 60;
            paint();
          },
        });
      }),
  });
  await page.getByRole('radio', { name: words.light.sources.camera, exact: true }).check({ force: true });
  await button(page, words.camera.open).click();
  const assumed = page.getByText(words.camera.assumed(300));
  await assumed.waitFor();
  const design = await designOn(page);
  await page.evaluate(() => (Reflect.get(globalThis, 'turn') as () => void)());
  await saysInBoth(page, words.camera.turned, germanPage.camera.turned);
  await assumed.waitFor();
  await becomes(page, { A: sounding, B: sounding });
  const shape = await page
    .locator('camera-panel .picture')
    .evaluate((picture) => picture.clientWidth / picture.clientHeight);
  expect(shape).toBeCloseTo(240 / 320, 1);
  await button(page, words.camera.again).click();
  await assumed.waitFor();
  expect(await page.getByText(words.camera.turned).count()).toBe(0);
  expect(await designOn(page)).toBe(design);
  await close();
});

test('a camera that is blanked, shows nothing or never answers says so, keeps the light, and goes on by itself', async () => {
  const { page, close } = await openPage(browser(), site, {
    prepare: async (unopened) => {
      await holdLongTimersFirst(unopened);
      await unopened.addInitScript(() => {
        const canvas = Object.assign(document.createElement('canvas'), { width: 320, height: 240 });
        const pen = canvas.getContext('2d')!;
        const camera = {
          grey: 150,
          paints: true,
          isMuted: false,
          tracks: [] as MediaStreamTrack[],
          asked: 0,
        };
        setInterval(() => {
          if (!camera.paints) return;
          pen.fillStyle = `rgb(${camera.grey} ${camera.grey} ${camera.grey})`;
          pen.fillRect(0, 0, 320, 240);
        }, 30);
        navigator.mediaDevices.getUserMedia = async () => {
          const stream = canvas.captureStream(30);
          const track = stream.getVideoTracks()[0]!;
          Object.defineProperty(track, 'muted', { get: () => camera.isMuted });
          Object.assign(track, { getCapabilities: () => ({ exposureMode: ['manual', 'continuous'] }) });
          // It never says whether it holds its exposure.
          track.applyConstraints = () => {
            camera.asked += 1;
            return new Promise(() => {});
          };
          camera.tracks.push(track);
          return stream;
        };
        Object.assign(globalThis, {
          camera,
          blank: (isMuted: boolean) => {
            camera.isMuted = isMuted;
            camera.tracks.at(-1)?.dispatchEvent(new Event(isMuted ? 'mute' : 'unmute'));
          },
        });
      });
    },
  });
  const set = (change: object) =>
    page.evaluate((to) => void Object.assign(Reflect.get(globalThis, 'camera') as object, to), change);
  const blank = (isMuted: boolean) =>
    page.evaluate((is) => (Reflect.get(globalThis, 'blank') as (is: boolean) => void)(is), isMuted);
  const assumed = page.getByText(words.camera.assumed(300));
  const { missing } = words.camera;
  await page.getByRole('radio', { name: words.light.sources.camera, exact: true }).check({ force: true });
  // Let go while it is asked, and opened once more.
  for (const asked of [1, 2]) {
    await button(page, words.camera.open).click();
    await page.waitForFunction(
      (times) => (Reflect.get(globalThis, 'camera') as { asked: number }).asked === times,
      asked,
    );
    if (asked === 1) await button(page, words.camera.stop).click();
  }
  await passLongTimers(page);
  await assumed.waitFor();
  await becomes(page, { A: sounding, B: sounding });

  await blank(true);
  // The black pictures of a blanked camera are no light.
  await set({ grey: 0 });
  await saysInBoth(page, missing.blanked, germanPage.camera.missing.blanked);
  await becomes(page, { A: sounding, B: sounding });
  await blank(false);
  await becomes(page, { A: silent, B: silent });
  await assumed.waitFor();

  await set({ paints: false, grey: 150 });
  await saysInBoth(page, missing.still, germanPage.camera.missing.still);
  await becomes(page, { A: silent, B: silent });
  await set({ paints: true });
  await becomes(page, { A: sounding, B: sounding });
  await assumed.waitFor();
  await close();
});

type Microphone = keyof typeof kitViewWords.sound.refused;

/** What asking for the microphone comes to; a stream is the sound of a tone. */
const REFUSALS: readonly (readonly [Microphone, () => void])[] = [
  ['denied', () => refuse('NotAllowedError')],
  ['absent', () => refuse('NotFoundError')],
  ['busy', () => refuse('NotReadableError')],
  ['unplugged', () => give((track) => track.stop())],
  [
    'failed',
    () => {
      give(() => {});
      const Whole = AudioContext;
      globalThis.AudioContext = new Proxy(Whole, {
        construct: () => {
          globalThis.AudioContext = Whole;
          throw new DOMException('No device.', 'NotSupportedError');
        },
      });
    },
  ],
];
declare const refuse: (name: string) => void;
declare const give: (meddle: (track: MediaStreamTrack) => void) => void;

const listenTo = async (page: Page, sheet: string, listen: string) => {
  await page.getByRole('radio', { name: sheet, exact: true }).check();
  await button(page, listen).click();
};

test('a microphone that is not to be had says why, in both languages, and is let go', async () => {
  const { page, close } = await openPage(browser(), `${site}#/kit`, {
    prepare: (unopened) =>
      unopened.addInitScript(() => {
        const { mediaDevices } = navigator;
        const tracks: MediaStreamTrack[] = [];
        Object.assign(globalThis, {
          tracks,
          refuse: (name: string) => {
            mediaDevices.getUserMedia = async () => {
              throw new DOMException('', name);
            };
          },
          give: (meddle: (track: MediaStreamTrack) => void) => {
            const context = new AudioContext();
            mediaDevices.getUserMedia = async () => {
              const { stream } = new MediaStreamAudioDestinationNode(context);
              tracks.push(...stream.getTracks());
              stream.getTracks().forEach(meddle);
              return stream;
            };
          },
        });
      }),
  });
  const { sound, sheetNames } = kitViewWords;
  await page.getByRole('radio', { name: sheetNames.sound, exact: true }).waitFor();
  const design = await designOn(page);
  for (const [why, spoil] of REFUSALS) {
    await page.evaluate(spoil);
    await listenTo(page, sheetNames.sound, sound.listen(sound.points.now));
    await page.getByRole('alert').getByText(sound.refused[why], { exact: true }).waitFor();
    expect(await button(page, sound.listen(sound.points.now)).isEnabled()).toBe(true);
    await choose(page, 'de');
    await page.evaluate(spoil);
    const [sheet, listen, said] = [
      () => sheetNames.sound,
      () => sound.listen(sound.points.now),
      () => sound.refused[why],
    ].map(inGerman);
    await listenTo(page, sheet!, listen!);
    await page.getByRole('alert').getByText(said!, { exact: true }).waitFor();
    await choose(page, 'en');
  }
  const live = await page.evaluate(() =>
    (Reflect.get(globalThis, 'tracks') as MediaStreamTrack[]).map(({ readyState }) => readyState),
  );
  expect(live).toEqual(['ended', 'ended', 'ended', 'ended']);
  expect(await designOn(page)).toBe(design);
  await close();
});

test('where no second window opens the notes stand on the page; where gates are felt, each change is felt once', async () => {
  const { page, close } = await openPage(browser(), `${site}#/class`, {
    prepare: (unopened) =>
      unopened.addInitScript(() => {
        const felt: unknown[] = [];
        Object.assign(globalThis, { felt, open: () => null });
        navigator.vibrate = (pulses) => felt.push(pulses) > 0;
      }),
  });
  /** How often each voice was felt: one long pulse is A, two short ones are B. */
  const felt = async () => {
    const pulses = await page.evaluate(() => Reflect.get(globalThis, 'felt') as number[][]);
    return { A: pulses.filter(({ length }) => length === 1).length, all: pulses.length };
  };
  const { present } = classPage;
  await page.getByRole('checkbox', { name: present.vibrate }).check();
  await button(page, classPage.begin(englishLessons.lessons['the-first-cycle'].title)).click();
  await page.locator('lesson-player').waitFor();
  await page.getByRole('button', { name: new RegExp(`^${englishLessons.go.free}`) }).click();
  const hand = page.getByRole('slider', { name: englishLessons.controls['hand A'], exact: true });
  // The lesson begins in the shade of this hand.
  await becomes(page, { A: silent, B: sounding });
  await page.evaluate(() => (Reflect.get(globalThis, 'felt') as unknown[]).splice(0));
  await hand.press('Home');
  await becomes(page, { A: sounding, B: sounding });
  expect(await felt()).toEqual({ A: 1, all: 1 });
  await hand.press('End');
  await becomes(page, { A: silent, B: sounding });
  expect(await felt()).toEqual({ A: 2, all: 2 });

  for (const language of ['en', 'de'] as const) {
    const say = (text: () => string) => (language === 'en' ? text() : inGerman(text));
    await choose(page, language);
    // Behind it stands the one that prints them.
    await page
      .getByRole('button', { name: new RegExp(`^${say(() => present.notes)}`) })
      .first()
      .click();
    await page.getByText(say(() => present.notesBlocked)).waitFor();
    await page.locator('aside.notes h2').first().waitFor();
  }
  await close();
});
