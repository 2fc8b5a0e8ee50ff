/** What a visitor finds on the page, by role and name; and what the visitor hears of it. */
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { VOLUME } from '../../../src/app/session.ts';
import { instrumentOf } from '../../../src/circuit/instrument.ts';
import type { Design } from '../../../src/design/design.ts';
import { type Lux, type Pair, pairOf, VOICES, type VoiceId } from '../../../src/quantity/units.ts';
import { renderTake } from '../../../src/sound/render.ts';
import { words } from '../../../src/words/en.ts';
import { centsBetween, frequencyOf } from '../../ear.ts';
import { settingsFrom } from '../../sound/playing.ts';
import { lineAt } from '../../sound/spectrum.ts';
import { type Heard, hear } from './browser.ts';

const named = (name: string) => ({ name, exact: true });

export const soundButton = (page: Page, name: string = words.bar.soundOn): Locator =>
  page.getByRole('button', named(name));
export const button = (page: Page, name: string): Locator => page.getByRole('button', named(name));
/** On a narrow page: shows of the bar what is needed less often. */
export async function showMore(page: Page): Promise<void> {
  const more = button(page, words.bar.moreOf);
  if ((await more.isVisible()) && (await more.getAttribute('aria-expanded')) === 'false') await more.click();
}
export const hand = (page: Page, voice: VoiceId): Locator =>
  page.getByRole('slider', named(words.light.hand(voice)));
export const trimmer = (page: Page, voice: VoiceId): Locator =>
  page.getByRole('slider', named(words.voices.trimmer(voice)));
export const trimmerBox = (page: Page, voice: VoiceId): Locator =>
  page.getByRole('textbox', named(words.voices.box(words.voices.trimmer(voice))));
export const strip = (page: Page): Locator => page.getByRole('region', named(words.strip.heading));

/** What the strip says of each voice: `sounding`, `silent`, or `chattering` with its rate. */
export async function states(page: Page): Promise<Pair<string>> {
  return statesIn((await strip(page).textContent()) ?? '');
}

/** Waits until the strip says this of both voices. */
export const becomes = (page: Page, wanted: Pair<string>): Promise<void> =>
  expect.poll(() => states(page), { timeout: 15_000 }).toEqual(wanted);

/** Each voice's part of the strip begins with its letter and its state. */
function statesIn(text: string): Pair<string> {
  const line = text.replaceAll(/\s+/g, ' ');
  const { sounding, silent } = words.strip;
  const chattering = words.strip.chattering(0).replace('0', '\\d+');
  return pairOf((voice) => {
    const found = new RegExp(`\\b${voice} (${sounding}|${silent}|${chattering})`).exec(line);
    if (!found?.[1]) throw new Error(`The strip says nothing of ${voice}: ${line}`);
    return found[1];
  });
}

/** Two pictures later: what a changed window or a turned trimmer asks to be drawn anew has been. */
export const drawnAnew = (page: Page): Promise<void> =>
  page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );

/** Goes on with Tab until the control has the focus. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let presses = 0; presses < 150; presses += 1) {
    if (await target.evaluate((element) => element.matches(':focus'))) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never reached ${String(target)}`);
}

/** Takes hold of trimmer A and turns it in many small moves; does not let go. */
export async function dragTrimmer(page: Page): Promise<void> {
  await trimmer(page, 'A').scrollIntoViewIfNeeded();
  const box = (await trimmer(page, 'A').boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 10, y - 40, { steps: 10 });
}

export async function press(page: Page, key: string, times = 1): Promise<void> {
  for (let count = 0; count < times; count += 1) await page.keyboard.press(key);
}

/** Seconds of sound that set two notes of an instrument apart. */
const LONG = 0.65;

/** Amplitude of one frequency in dB below full scale, through a window whose side lobes are below −92 dB. */
function lineDb({ samples, sampleRate }: Pick<Heard, 'samples' | 'sampleRate'>, hertz: number): number {
  const n = samples.length;
  const windowed = Float64Array.from(samples, (value, i) => {
    const x = (2 * Math.PI * i) / n;
    // Blackman–Harris, four terms (Harris 1978).
    const window = 0.35875 - 0.48829 * Math.cos(x) + 0.14128 * Math.cos(2 * x) - 0.01168 * Math.cos(3 * x);
    return (value * window) / 0.35875;
  });
  return 20 * Math.log10(2 * lineAt(windowed, hertz / sampleRate) + 1e-12);
}

const hertzOf = (design: Design): Pair<number> => {
  const { voices } = instrumentOf(design);
  return pairOf((voice) => voices[voice].cycle.frequency);
};

/** The lines that a design's voices should have in a light, at the usual volume, in dB below full scale. */
function modelLines(design: Design, lux: Pair<Lux>): Pair<number> {
  const settings = settingsFrom(design);
  const { samples, sampleRate } = renderTake(settings, { kind: 'steady', lux }, 1 + LONG);
  const late = { samples: samples.subarray(sampleRate), sampleRate };
  const scale = VOLUME.usual - 20 * Math.log10(settings.jack.boundVolts);
  const hertz = hertzOf(design);
  return pairOf((voice) => lineDb(late, hertz[voice]) + scale);
}

const BRIGHT: Pair<Lux> = { A: 300, B: 300 };

/** Listens until both voices are heard at the model's frequencies, each within 0.1 dB of its level there. */
export async function hearBoth(page: Page, design: Design, lux = BRIGHT): Promise<Heard> {
  const hertz = hertzOf(design);
  const model = modelLines(design, lux);
  return hear(
    page,
    (heard) =>
      heard.samples.length >= LONG * heard.sampleRate * 0.99 &&
      VOICES.every((voice) => Math.abs(lineDb(heard, hertz[voice]) - model[voice]) < 0.1),
    { seconds: LONG },
  );
}

/** Listens until one voice is gone by at least 40 dB while the other is as loud as ever. */
export async function hearOnly(page: Page, voice: VoiceId, design: Design): Promise<Heard> {
  const other = voice === 'A' ? 'B' : 'A';
  const hertz = hertzOf(design);
  const model = modelLines(design, BRIGHT);
  return hear(
    page,
    (heard) =>
      lineDb(heard, hertz[other]) < model[other] - 40 &&
      Math.abs(lineDb(heard, hertz[voice]) - model[voice]) < 0.1,
    { seconds: LONG },
  );
}

/** Listens until the only voice there is has the model's frequency within 0.1 cent. */
export async function hearPitch(page: Page, voice: VoiceId, design: Design): Promise<void> {
  const wanted = hertzOf(design)[voice];
  await hear(page, (heard) => Math.abs(centsBetween(wanted, frequencyOf(heard, 0) || 1)) < 0.1, {
    seconds: LONG,
  });
}

export interface Moment {
  /** On the page's clock. */
  readonly seconds: number;
  readonly states: Pair<string>;
}

/** Has the page write down what the strip says from now on; gives the way to read it, one row for each change. */
export async function recordStates(page: Page): Promise<() => Promise<readonly Moment[]>> {
  const recorder = await strip(page).evaluateHandle((element) => {
    const rows: { seconds: number; text: string }[] = [];
    const look = () => {
      const text = element.textContent ?? '';
      if (text !== rows.at(-1)?.text) rows.push({ seconds: performance.now() / 1000, text });
      requestAnimationFrame(look);
    };
    look();
    return rows;
  });
  return async () => {
    const rows = await recorder.jsonValue();
    const all = rows.map(({ seconds, text }) => ({ seconds, states: statesIn(text) }));
    return all.filter(({ states: { A, B } }, i) => A !== all[i - 1]?.states.A || B !== all[i - 1]?.states.B);
  };
}
