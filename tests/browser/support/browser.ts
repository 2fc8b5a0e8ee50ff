/**
 * Opening pages in a real browser: launching it with or without a camera, keeping what a page complained of and
 * asked for, calling a source module inside a page, and listening to what reaches its loudspeaker.
 */
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, inject } from 'vitest';
import { cameraFlags, startChromium } from '../../../src/headless/chromium.ts';
import { tapLoudspeaker } from './tap.ts';

export interface LaunchOptions {
  /** A clip by `cameraClip`; without one the browser has no camera at all. */
  readonly cameraFile?: string;
  /** A WAV file that the microphone hears, from its beginning at each opening. */
  readonly audioFile?: string;
  /** What every page may use without asking: `['camera']` lets it have the clip. */
  readonly permissions?: readonly string[];
  /** The person says no when asked for the camera; so they do, too, when it is not among the permissions. */
  readonly denyCamera?: boolean;
  /** The size of letters set in the browser, px; 16 unless told. */
  readonly letters?: number;
}

const granted = new WeakMap<Browser, readonly string[]>();

/**
 * Starts the browser found for this run. Close it when done.
 *
 * As for a visitor, sound needs a press first. Beware: `page.evaluate`, and so `soundOf`, counts as a press, so a
 * test of that rule must let the page write down what it sees before the test asks.
 */
export async function launch(options: LaunchOptions = {}): Promise<Browser> {
  // The browser from npm has no window to ask in, so the answer is always given beforehand.
  const allowsCamera = options.denyCamera !== true && options.permissions?.includes('camera') === true;
  const browser = await startChromium(inject('house').chromium, [
    ...cameraFlags(options.cameraFile, allowsCamera || options.audioFile !== undefined),
    ...(options.audioFile === undefined
      ? []
      : ['--use-fake-device-for-media-stream', `--use-file-for-fake-audio-capture=${options.audioFile}`]),
    ...(options.letters === undefined ? [] : [`--blink-settings=defaultFontSize=${options.letters}`]),
  ]);
  granted.set(browser, options.permissions ?? []);
  return browser;
}

/**
 * One browser for the tests of a file or of a group: started before them, gone after them. Each test's pages go with it:
 * one that a failed test left behind would go on sounding beside the next. Gives the browser while the tests run.
 */
export function oneBrowser(options: () => LaunchOptions = () => ({})): () => Browser {
  let browser: Browser | null = null;
  beforeAll(async () => {
    browser = await launch(options());
  });
  afterEach(async () => {
    for (const context of browser?.contexts() ?? []) await context.close();
  });
  afterAll(async () => {
    await browser?.close();
    browser = null;
  });
  return () => {
    if (browser === null) throw new Error('The browser is there only while its tests run.');
    return browser;
  };
}

export interface PageOptions extends BrowserContextOptions {
  /** Complaints that are part of the test, matched against their text. */
  readonly allow?: readonly RegExp[];
  /** Called before the page loads: `tapSound`, for one. */
  readonly prepare?: (page: Page) => Promise<unknown>;
  /** Whether the page fetches everything it may ever need, as for most visitors; else it is asked to spare data. */
  readonly fetchesAll?: boolean;
}

export interface OpenedPage {
  readonly page: Page;
  /** Console errors and warnings, uncaught errors and failed requests so far, oldest first. */
  readonly complaints: readonly string[];
  /** Every address asked for so far, oldest first. */
  readonly requests: readonly string[];
  /** Closes the page and its context; throws when it made a complaint that was not allowed. */
  readonly close: () => Promise<void>;
}

/** Opens an address in a context of its own (nothing stored, nothing shared) and waits until it has loaded. */
export async function openPage(
  browser: Browser,
  url: string,
  options: PageOptions = {},
): Promise<OpenedPage> {
  const { allow = [], prepare, fetchesAll = false, ...contextOptions } = options;
  const permissions = contextOptions.permissions ?? granted.get(browser) ?? [];
  // Pictures that move are drawn in software here: less motion leaves the processor to the sound.
  const context = await browser.newContext({
    reducedMotion: 'reduce',
    ...contextOptions,
    permissions: [...permissions],
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type()))
      complaints.push(`${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`uncaught: ${error.stack ?? error.message}`));
  page.on('requestfailed', (request) => {
    // A download, too, ends the request that began it; only that is called aborted.
    const reason = request.failure()?.errorText ?? 'no reason given';
    if (reason !== 'net::ERR_ABORTED') complaints.push(`request failed: ${request.url()} (${reason})`);
  });
  page.on('crash', () => complaints.push('the page crashed'));
  context.on('request', (request) => requests.push(request.url()));
  if (!fetchesAll)
    await page.addInitScript(() =>
      Object.defineProperty(navigator, 'connection', { value: { saveData: true } }),
    );
  await prepare?.(page);
  await page.goto(url);
  const close = async () => {
    const unexpected = complaints.filter((complaint) => !allow.some((pattern) => pattern.test(complaint)));
    await context.close();
    if (unexpected.length > 0) throw new Error(`${url} complained:\n${unexpected.join('\n')}`);
  };
  return { page, complaints, requests, close };
}

/** An empty page among the sources, in which `withModule` can load any of them. */
export async function openModulePage(browser: Browser, options: PageOptions = {}): Promise<OpenedPage> {
  const allow = [...(options.allow ?? []), /Lit is in dev mode/];
  return openPage(browser, `${inject('house').sources}tests/browser/support/blank.html`, {
    ...options,
    allow,
  });
}

/**
 * Loads a source module, or one of the tests' own, inside a module page and calls `use` there with it.
 *
 * @param modulePath from the root, e.g. `/src/sound/player.device.ts`
 * @param use runs in the page, so it sees only its two arguments; annotate the first as `typeof import('…')`
 */
export async function withModule<Module, Argument, Result>(
  page: Page,
  modulePath: `/${'src' | 'tests'}/${string}`,
  use: (module: Module, argument: Argument) => Result | Promise<Result>,
  argument: Argument,
): Promise<Result> {
  // Made from text, because the test runner rewrites an `import()` written here to a call that the page does not have.
  const inPage = new Function(
    'argument',
    `return import(${JSON.stringify(modulePath)}).then((module) => (${use.toString()})(module, argument))`,
  ) as (argument: unknown) => Promise<Result>;
  return page.evaluate(inPage, argument as unknown);
}

export interface Heard {
  /** Root mean square of the samples, 1 being full scale. */
  readonly rms: number;
  /** Largest magnitude among the samples. */
  readonly peak: number;
  /** The latest sound, oldest sample first; all channels averaged into one. Empty before the page has made any. */
  readonly samples: Float32Array;
  /** Hertz; 0 before the page has made any sound. */
  readonly sampleRate: number;
  /** State of the page's newest audio context that plays to the loudspeaker. */
  readonly state: AudioContextState | 'none';
}

/** Makes `soundOf` possible. Before the page loads. */
export async function tapSound(page: Page): Promise<void> {
  await page.addInitScript(tapLoudspeaker);
}

/**
 * What the loudspeaker got lately.
 *
 * @param seconds how far back, at most 32768 samples. While the context does not run, this is silence.
 */
export async function soundOf(page: Page, seconds = 0.25): Promise<Heard> {
  const { samples, sampleRate, state } = await page.evaluate((length) => {
    const tap: unknown = Reflect.get(globalThis, 'soundTap');
    if (!(tap instanceof AnalyserNode))
      return { samples: new Float32Array(), sampleRate: 0, state: 'none' as const };
    const { context } = tap;
    const whole = new Float32Array(tap.fftSize);
    // A context that stands still keeps its last samples, but nobody hears them.
    if (context.state === 'running') tap.getFloatTimeDomainData(whole);
    const count = Math.min(whole.length, Math.round(length * context.sampleRate));
    return { samples: whole.slice(-count), sampleRate: context.sampleRate, state: context.state };
  }, seconds);
  const sumOfSquares = samples.reduce((sum, sample) => sum + sample * sample, 0);
  const peak = samples.reduce((largest, sample) => Math.max(largest, Math.abs(sample)), 0);
  return { rms: Math.sqrt(sumOfSquares / Math.max(1, samples.length)), peak, samples, sampleRate, state };
}

/** Waits for a tenth of a second of new sound, or one frame where none is being made: looks cost the machine dearly. */
async function newSound(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const tap: unknown = Reflect.get(globalThis, 'soundTap');
    const context = tap instanceof AnalyserNode ? tap.context : null;
    const from = context?.currentTime ?? 0;
    do await new Promise((next) => requestAnimationFrame(next));
    while (context?.state === 'running' && context.currentTime < from + 0.1);
  });
}

/**
 * Listens until what is heard fits `wanted`, and gives it. Throws after `patience` seconds with the last of it.
 *
 * @param seconds how far back each look goes
 */
export async function hear(
  page: Page,
  wanted: (heard: Heard) => boolean,
  { seconds = 0.25, patience = 20 } = {},
): Promise<Heard> {
  const end = performance.now() + patience * 1000;
  for (;;) {
    const heard = await soundOf(page, seconds);
    if (wanted(heard)) return heard;
    if (performance.now() > end) {
      const { rms, peak, state } = heard;
      throw new Error(`Not heard within ${patience} s; last: ${rms} rms, ${peak} peak, context ${state}.`);
    }
    await newSound(page);
  }
}
