/** The webcam as light, with a make-believe camera: what it shows gates the voices, and every refusal is worded. */
import type { Browser, Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { type CameraLevel, cameraClip } from '../../src/headless/camera-clip.ts';
import { DEFAULT_REGIONS } from '../../src/light/camera.ts';
import type { Pair, VoiceId } from '../../src/quantity/units.ts';
import { words } from '../../src/words/en.ts';
import {
  hear,
  type LaunchOptions,
  type OpenedPage,
  oneBrowser,
  openPage,
  tapSound,
} from './support/browser.ts';
import {
  becomes,
  button,
  hand,
  hearBoth,
  hearOnly,
  press,
  recordStates,
  soundButton,
  states,
  tabTo,
} from './support/visit.ts';

const site = inject('house').site;
const { sounding, silent } = words.strip;
const neither = { A: silent, B: silent };
const onlyA = { A: sounding, B: silent };
const onlyB = { A: silent, B: sounding };
const both = { A: sounding, B: sounding };

const BRIGHT = 160;
const DIM = 40;
const BLACK = 16;
const STILL: readonly CameraLevel[] = [[1, 140, 180]];

let browser: () => Browser;

/** One browser has one clip; it serves the tests of one group. */
const startedWith = (options: () => LaunchOptions) => {
  const its = oneBrowser(options);
  beforeAll(() => {
    browser = its;
  });
};
const clip = (...levels: readonly CameraLevel[]) => ({
  cameraFile: cameraClip(levels),
  permissions: ['camera'],
});

/** A page that remembers the camera streams it was given, with the camera chosen but not yet switched on. */
async function visit(): Promise<OpenedPage> {
  const opened = await openPage(browser(), site, {
    prepare: async (page) => {
      await tapSound(page);
      await page.addInitScript(() => {
        const streams: MediaStream[] = [];
        Object.assign(globalThis, { streams });
        const { mediaDevices } = navigator;
        const ask = mediaDevices.getUserMedia.bind(mediaDevices);
        mediaDevices.getUserMedia = async (wanted) => {
          const stream = await ask(wanted);
          streams.push(stream);
          return stream;
        };
      });
    },
  });
  await light(opened.page, 'camera').check();
  return opened;
}

const light = (page: Page, source: keyof typeof words.light.sources): Locator =>
  page.getByRole('radio', { name: words.light.sources[source], exact: true });
const assumed = (page: Page, lux = 300): Locator => page.getByText(words.camera.assumed(lux));
/** What the light axis says of the light now. */
const axis = (page: Page, lux: Pair<number>): Locator =>
  page.getByRole('img', { name: words.axis.summary(lux, []).split('. ')[0]! });
const patch = (page: Page, voice: VoiceId): Locator =>
  page.getByRole('button', { name: words.camera.region(voice) });
const field = (page: Page, label: string): Locator => page.getByRole('textbox', { name: label, exact: true });

/** The states of all camera tracks the page was given so far. */
const tracks = (page: Page) =>
  page.evaluate(() =>
    (Reflect.get(globalThis, 'streams') as MediaStream[]).flatMap((stream) =>
      stream.getTracks().map(({ kind, readyState }) => `${kind} ${readyState}`),
    ),
  );

describe('a camera whose two halves darken in turn', () => {
  startedWith(() =>
    clip([2.5, BRIGHT, BRIGHT], [2, DIM, BRIGHT], [1, BRIGHT, BRIGHT], [1, BRIGHT, DIM], [1, DIM, DIM]),
  );

  test('silences the two voices in that order, each for as long as its half is dark', async () => {
    const { page, requests, close } = await visit();
    const record = await recordStates(page);
    await button(page, words.camera.open).press('Enter');
    const order = [both, onlyB, both, onlyA, neither, both];
    await expect
      .poll(async () => (await record()).length, { timeout: 20_000 })
      .toBeGreaterThanOrEqual(order.length);
    const moments = (await record()).slice(0, order.length);
    expect(moments.map((moment) => moment.states)).toEqual(order);
    // The strip holds each state for at least a third of a second, so only rough times can be asked of it.
    const lasted = moments.slice(1).map(({ seconds }, i) => seconds - moments[i]!.seconds);
    [2, 1, 1, 1].forEach((wanted, i) => {
      expect(Math.abs(lasted[i + 1]! - wanted)).toBeLessThan(0.7);
    });
    expect(requests.filter((url) => !url.startsWith(site) && !url.startsWith('data:'))).toEqual([]);
    await close();
  });
});

describe('a camera covered now and then', () => {
  startedWith(() => clip([2.5, BRIGHT, BRIGHT], [2, BLACK, BLACK], [2, DIM, BRIGHT]));

  test('stops both voices in the sound, and gives them back', async () => {
    const { page, requests, close } = await visit();
    await soundButton(page).click();
    await hearBoth(page, DEFAULT_DESIGN);
    const before = requests.length;
    await button(page, words.camera.open).click();
    await assumed(page).waitFor();
    await page.getByText(words.camera.on, { exact: true }).waitFor();
    await hear(page, ({ rms, state }) => state === 'running' && rms < 1e-5);
    await becomes(page, neither);
    await hearOnly(page, 'B', DEFAULT_DESIGN);
    await hearBoth(page, DEFAULT_DESIGN);
    // Nothing was asked of anybody from the first picture on.
    expect(requests.slice(before)).toEqual([]);
    await close();
  });
});

describe('a camera whose right half darkens', () => {
  startedWith(() => clip([5, BRIGHT, BRIGHT], [1.5, BRIGHT, DIM]));

  test('rules both voices when patch A is moved there by keyboard', async () => {
    const { page, close } = await visit();
    await tabTo(page, button(page, words.camera.open));
    await page.keyboard.press('Enter');
    await assumed(page).waitFor();
    await tabTo(page, patch(page, 'A'));
    await press(page, 'ArrowRight', 20);
    await press(page, 'Shift+ArrowDown', 2);
    const { x, y } = DEFAULT_REGIONS.A;
    const place = words.camera.regionPlace(x + 20 * 0.02, y + 2 * 0.005);
    expect(await patch(page, 'A').getAttribute('aria-label')).toContain(place);
    const record = await recordStates(page);
    await becomes(page, neither);
    // Without the move, A would have gone on sounding while B is dark.
    expect((await record()).map((moment) => moment.states)).toEqual([both, neither]);
    await close();
  });
});

describe('a camera whose picture stands still', () => {
  startedWith(() => clip(...STILL));

  test('has its level assumed and marked so, taken again on a press, and calibrated to typed lux', async () => {
    const { page, close } = await visit();
    await button(page, words.camera.open).click();
    await assumed(page).waitFor();
    await axis(page, { A: 300, B: 300 }).waitFor();

    await field(page, words.camera.litLevel).fill('450 lx');
    await page.keyboard.press('Enter');
    await assumed(page, 450).waitFor();
    await axis(page, { A: 450, B: 450 }).waitFor();

    await page.getByText(words.camera.calibrate).click();
    await field(page, words.camera.typed('A')).fill('150');
    await page.keyboard.press('Enter');
    await axis(page, { A: 150, B: 450 }).waitFor();
    await page.getByText(words.camera.calibrated).waitFor();
    expect(await assumed(page, 450).count()).toBe(0);

    await button(page, words.camera.again).click();
    await assumed(page, 450).waitFor();
    await axis(page, { A: 450, B: 450 }).waitFor();
    await close();
  });

  test('is switched off by its button, and by leaving for the stage', async () => {
    const { page, close } = await visit();
    await button(page, words.camera.open).click();
    await assumed(page).waitFor();
    expect(await tracks(page)).toEqual(['video live']);
    await button(page, words.camera.stop).click();
    await button(page, words.camera.open).waitFor();
    expect(await tracks(page)).toEqual(['video ended']);
    await button(page, words.camera.open).click();
    await assumed(page).waitFor();
    expect(await tracks(page)).toEqual(['video ended', 'video live']);
    await light(page, 'stage').check();
    await page.getByRole('group', { name: words.light.stageName }).waitFor();
    expect(await tracks(page)).toEqual(['video ended', 'video ended']);
    await becomes(page, both);
    await close();
  });

  test('says so when it is unplugged, taken back or held elsewhere, keeps the light, and can be opened again', async () => {
    const { page, close } = await visit();
    for (const [time, how] of (['unplugged', 'withdrawn'] as const).entries()) {
      await button(page, words.camera.open).click();
      await assumed(page).waitFor();
      await page.evaluate(
        ([latest, unplugged]) => {
          const { mediaDevices } = navigator;
          const list = mediaDevices.enumerateDevices.bind(mediaDevices);
          if (unplugged) mediaDevices.enumerateDevices = async () => [];
          const stream = (Reflect.get(globalThis, 'streams') as MediaStream[])[latest];
          stream?.getVideoTracks()[0]?.dispatchEvent(new Event('ended'));
          Object.assign(globalThis, {
            plugIn: () => Object.assign(mediaDevices, { enumerateDevices: list }),
          });
        },
        [time, how === 'unplugged'] as const,
      );
      await page.getByRole('alert').getByText(words.camera.ended[how]).waitFor();
      expect((await tracks(page))[time]).toBe('video ended');
      expect(await states(page)).toEqual(both);
      await axis(page, { A: 300, B: 300 }).waitFor();
      await page.evaluate(() => (Reflect.get(globalThis, 'plugIn') as () => void)());
    }
    await page.evaluate(() => {
      navigator.mediaDevices.getUserMedia = async () => {
        throw new DOMException('Could not start the source.', 'NotReadableError');
      };
    });
    await button(page, words.camera.open).click();
    await page.getByRole('alert').getByText(words.camera.refused.busy).waitFor();
    await close();
  });
});

describe('a camera that is covered at the start', () => {
  startedWith(() => clip([4, BLACK, BRIGHT]));

  test('says which patch is too dark, and what to do', async () => {
    const { page, close } = await visit();
    await button(page, words.camera.open).click();
    await page.getByText(words.camera.dark('A')).waitFor();
    expect(await button(page, words.camera.again).isVisible()).toBe(true);
    await close();
  });
});

describe('a camera that was not allowed', () => {
  startedWith(() => ({ ...clip(...STILL), denyCamera: true }));

  test('is called so, and the stage goes on', async () => {
    const { page, close } = await visit();
    await button(page, words.camera.open).click();
    await page.getByRole('alert').getByText(words.camera.refused.denied).waitFor();
    await light(page, 'stage').check();
    await hand(page, 'A').press('End');
    await becomes(page, onlyB);
    await close();
  });
});

describe('a computer without a camera', () => {
  startedWith(() => ({}));

  test('is told to plug one in', async () => {
    const { page, close } = await visit();
    await button(page, words.camera.open).click();
    await page.getByRole('alert').getByText(words.camera.refused.absent).waitFor();
    expect(await button(page, words.camera.open).isVisible()).toBe(true);
    await close();
  });
});
