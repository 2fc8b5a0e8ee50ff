/** What every fault is asked: is it said in both languages, is the work still there, was it ever louder than set. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Lampnote } from '../../../src/app/lampnote.ts';
import { DEFAULT_DESIGN } from '../../../src/design/defaults.ts';
import type { Design } from '../../../src/design/design.ts';
import { germanLists } from '../../../src/words/de.ts';
import { words } from '../../../src/words/en.ts';
import { type Language, speak } from '../../../src/words/spoken.ts';

/** Chooses a language without a press that the page could take for another wish. */
export async function choose(page: Page, language: Language): Promise<void> {
  const name = words.bar.languages[language];
  await page.getByRole('radio', { name, exact: true }).dispatchEvent('click');
  await page.waitForFunction((chosen) => document.documentElement.lang === chosen, language);
}

/** What a list says in German. */
export function inGerman(say: () => string): string {
  speak('de', germanLists);
  try {
    return say();
  } finally {
    speak('en');
  }
}

/** Waits until the page says this, in English and then in German; English is spoken again after. */
export async function saysInBoth(page: Page, english: string, german: string): Promise<void> {
  await page.getByText(english, { exact: true }).first().waitFor();
  await choose(page, 'de');
  await page.getByText(german, { exact: true }).first().waitFor();
  await choose(page, 'en');
}

/** The design on the page, as its file would hold it. */
export const designOn = (page: Page): Promise<string> =>
  page.locator('lamp-note').evaluate((root) => (root as HTMLElement & { app: Lampnote }).app.fileText());

/** A design whose room was read once. */
export const measured: Design = {
  ...DEFAULT_DESIGN,
  room: {
    ...DEFAULT_DESIGN.room,
    readings: [
      {
        hour: 10,
        lux: { A: { lit: 420, shaded: 60, dark: 180 }, B: { lit: null, shaded: null, dark: null } },
      },
    ],
  },
};

/** Writes down what reaches the loudspeaker, from before the page loads. Goes with `tapSound`. */
export async function recordSound(page: Page): Promise<void> {
  await page.addInitScript(() => {
    let tap: AnalyserNode | null = null;
    let frame = 0;
    let heard: number[] = [];
    const record = () => {
      const now: unknown = Reflect.get(globalThis, 'soundTap');
      if (!(now instanceof AnalyserNode)) return;
      if (now !== tap) [tap, frame] = [now, 0];
      const latest = new Float32Array(now.fftSize);
      now.getFloatTimeDomainData(latest);
      const { currentTime, sampleRate } = now.context;
      const from = frame;
      frame = Math.max(from, Math.round(currentTime * sampleRate));
      if (frame > from) heard.push(...latest.slice(-(frame - from)));
    };
    setInterval(record, 100);
    Object.assign(globalThis, {
      takeHeard: async (least: number) => {
        for (record(); heard.length < least; record()) await new Promise(requestAnimationFrame);
        const taken = Float32Array.from(heard);
        heard = [];
        return taken;
      },
    });
  });
}

/** What was heard since it was last asked for; waits until that is at least so many samples. */
const takeHeard = (page: Page, least = 0): Promise<Float32Array> =>
  page.evaluate(
    (count) => (Reflect.get(globalThis, 'takeHeard') as (count: number) => Promise<Float32Array>)(count),
    least,
  );

/** Forgets what was heard so far. */
export const startListening = (page: Page): Promise<Float32Array> => takeHeard(page);

/** Peak of each hundredth of a second. */
function peaksOf(samples: Float32Array, sampleRate: number): readonly number[] {
  const length = Math.round(sampleRate / 100);
  return Array.from({ length: Math.floor(samples.length / length) }, (_, i) =>
    samples
      .subarray(i * length, (i + 1) * length)
      .reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 0),
  );
}

/** What was heard since `startListening` stayed below `most`, and was not nothing. */
export async function neverLouder(page: Page, most: number): Promise<void> {
  const loudest = Math.max(...peaksOf(await takeHeard(page), 48_000));
  expect(loudest).toBeGreaterThan(0);
  expect(loudest).toBeLessThanOrEqual(most);
}

/** Some times the live ramp, s. */
const LONG_ENOUGH = 0.4;

/**
 * What was heard since `startListening` stayed below `most`, and the sound that came last rose in a ramp: more than a
 * hundredth of a second between a third and five sixths of its peak. The live ramp takes 25 ms for that, and a jump
 * nothing; a page read late may lose some of it.
 */
export async function cameBackGently(page: Page, most: number, sampleRate = 48_000): Promise<void> {
  // A look for both voices may have found those from before: the ramp and some more is waited for.
  const peaks = peaksOf(await takeHeard(page, LONG_ENOUGH * sampleRate), sampleRate);
  const loudest = Math.max(...peaks);
  expect(loudest).toBeLessThanOrEqual(most);
  const last = peaks.findLastIndex((peak) => peak < loudest / 3);
  const full = peaks.findIndex((peak, i) => i > last && peak > (loudest * 5) / 6);
  expect(last, 'silence before it came').toBeGreaterThanOrEqual(0);
  expect(full - last - 1, 'hundredths of a second it rose').toBeGreaterThanOrEqual(1);
}

/** From now on what the page would do only after many seconds waits until `passLongTimers`. */
export const holdLongTimers = (page: Page): Promise<void> => page.evaluate(holdTimers);
/** The same from before the page loads. */
export const holdLongTimersFirst = (page: Page): Promise<unknown> => page.addInitScript(holdTimers);

function holdTimers(): void {
  const held = new Map<number, () => void>();
  let last = 0;
  const whole = { set: globalThis.setTimeout, clear: globalThis.clearTimeout };
  globalThis.setTimeout = ((act: () => void, wait = 0, ...rest: []) => {
    if (wait < 3000) return whole.set.call(globalThis, act, wait, ...rest);
    last -= 1;
    held.set(last, act);
    return last;
  }) as typeof setTimeout;
  globalThis.clearTimeout = (id) => {
    if (!held.delete(id as number)) whole.clear.call(globalThis, id);
  };
  Object.assign(globalThis, {
    passTimers: () => {
      const due = [...held.values()];
      held.clear();
      for (const act of due) act();
    },
  });
}

/** Those many seconds are over. */
export const passLongTimers = (page: Page): Promise<void> =>
  page.evaluate(() => (Reflect.get(globalThis, 'passTimers') as () => void)());
