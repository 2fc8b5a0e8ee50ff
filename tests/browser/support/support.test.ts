/** The instruments of the browser tests, checked on things of known size. */
import { expect, inject, test } from 'vitest';
import { cameraClip, greyOfLuma } from '../../../src/headless/camera-clip.ts';
import { hear, launch, openModulePage, openPage, soundOf, tapSound, withModule } from './browser.ts';

test('a tone of known level and pitch is heard as it is, and stops being heard when it is cut off', async () => {
  const browser = await launch();
  const { page, close } = await openModulePage(browser, { prepare: tapSound });
  expect(await soundOf(page)).toMatchObject({ rms: 0, peak: 0, sampleRate: 0, state: 'none' });

  await page.evaluate(() => {
    const context = new AudioContext();
    const level = new GainNode(context, { gain: 0.5 });
    const tone = new OscillatorNode(context, { frequency: 1000 });
    tone.connect(level).connect(context.destination);
    tone.start();
    Object.assign(globalThis, { context, level });
  });
  // Heard from its first sample to its last, the root mean square of a sine is its peak over root two.
  const heard = await hear(page, ({ rms }) => rms > 0.353);
  expect(heard.rms).toBeCloseTo(0.5 / Math.SQRT2, 2);
  expect(heard.peak).toBeCloseTo(0.5, 2);
  expect(heard.samples.length).toBe(Math.round(heard.sampleRate / 4));
  const rises = heard.samples.filter((sample, index) => sample >= 0 && (heard.samples[index - 1] ?? 0) < 0);
  expect(Math.abs(rises.length - 250)).toBeLessThanOrEqual(1);

  await page.evaluate(() => {
    const { level, context } = globalThis as unknown as { level: GainNode; context: AudioContext };
    level.disconnect(context.destination);
  });
  await hear(page, ({ peak, state }) => peak === 0 && state === 'running');
  await page.evaluate(() => {
    const { level, context } = globalThis as unknown as { level: GainNode; context: AudioContext };
    level.connect(context.destination);
  });
  await hear(page, ({ peak }) => peak > 0.49);
  await page.evaluate(() => (globalThis as unknown as { context: AudioContext }).context.suspend());
  expect(await soundOf(page)).toMatchObject({ peak: 0, state: 'suspended' });
  await close();
  await browser.close();
});

test('listening in vain ends with what was heard last', async () => {
  const browser = await launch();
  const { page, close } = await openModulePage(browser, { prepare: tapSound });
  await expect(hear(page, ({ peak }) => peak > 0, { patience: 0.1 })).rejects.toThrow(/0 peak, context none/);
  await close();
  await browser.close();
});

test('a page may not sound before it is pressed', async () => {
  const browser = await launch();
  const { page, close } = await openModulePage(browser, {
    prepare: async (unopened) =>
      unopened.addInitScript(() => {
        addEventListener('load', () => {
          const context = new AudioContext();
          document.title = context.state;
          addEventListener('click', () =>
            context.resume().then(() => Reflect.set(document, 'title', context.state)),
          );
        });
      }),
  });
  expect(await page.title()).toBe('suspended');
  await page.mouse.click(10, 10);
  await page.waitForFunction(() => document.title === 'running');
  await close();
  await browser.close();
});

test('a page that warns, fails or throws does not close in peace unless that was allowed', async () => {
  const browser = await launch();
  const upset = () => {
    // biome-ignore lint/suspicious/noConsole: a warning is what this test is about
    console.warn('a warning');
    document.body.append(Object.assign(new Image(), { src: '/nothing.png' }));
    return new Promise((after) => {
      addEventListener('error', after, { once: true });
      setTimeout(() => {
        throw new Error('a mishap');
      });
    });
  };
  const first = await openModulePage(browser);
  await first.page.evaluate(upset);
  await expect
    .poll(() => first.complaints.join())
    .toMatch(/a warning.*404.*a mishap|a warning.*a mishap.*404/s);
  await expect(first.close()).rejects.toThrow(/complained:[\s\S]*a warning/);

  const second = await openModulePage(browser, { allow: [/a warning/, /a mishap/, /404/] });
  await second.page.evaluate(upset);
  await second.close();
  await browser.close();
});

test('a source module answers inside the page', async () => {
  const browser = await launch();
  const { page, close } = await openModulePage(browser);
  const lux = await withModule(
    page,
    '/src/light/program.ts',
    ({ luxAt }: typeof import('../../../src/light/program.ts'), times: readonly number[]) =>
      times.map((time) =>
        luxAt(
          { kind: 'ramp', from: { A: 0, B: 0 }, to: { A: 300, B: 30 }, start: 0, duration: 2 },
          'A',
          time,
        ),
      ),
    [0, 1, 3],
  );
  expect(lux).toEqual([0, 150, 300]);
  await close();
  await browser.close();
});

const clip = () =>
  cameraClip([
    [0.5, 60, 180],
    [0.5, 200, 40],
  ]);

test.each([
  ['a browser without a clip has no camera', () => ({}), 'NotFoundError'],
  ['a camera that was not allowed is refused', () => ({ cameraFile: clip() }), 'NotAllowedError'],
  [
    'a camera that was denied is refused',
    () => ({ cameraFile: clip(), permissions: ['camera'], denyCamera: true }),
    'NotAllowedError',
  ],
])('%s', async (_title, options, expected) => {
  const browser = await launch(options());
  const { page, close } = await openModulePage(browser);
  const outcome = await page.evaluate(() =>
    navigator.mediaDevices.getUserMedia({ video: true }).then(
      () => 'opened',
      (error: DOMException) => error.name,
    ),
  );
  expect(outcome).toBe(expected);
  await close();
  await browser.close();
});

test('an allowed camera shows the levels of its clip, half by half, under the policy of the site', async () => {
  const browser = await launch({ cameraFile: clip(), permissions: ['camera'] });
  const { page, close } = await openPage(browser, inject('house').site);
  const seen = await page.evaluate(async () => {
    const video = Object.assign(document.createElement('video'), {
      muted: true,
      srcObject: await navigator.mediaDevices.getUserMedia({ video: true }),
    });
    await video.play();
    const picture = new OffscreenCanvas(320, 240).getContext('2d', { willReadFrequently: true });
    const pairs = new Set<string>();
    while (pairs.size < 2) {
      await new Promise((next) => video.requestVideoFrameCallback(next));
      picture?.drawImage(video, 0, 0);
      const greys = [80, 240].map((x) => picture?.getImageData(x, 120, 1, 1).data[0]);
      pairs.add(greys.join(' and '));
    }
    return [...pairs];
  });
  const expected = [
    [60, 180],
    [200, 40],
  ].map((halves) => halves.map(greyOfLuma).join(' and '));
  expect(seen.toSorted()).toEqual(expected.toSorted());
  await close();
  await browser.close();
});
