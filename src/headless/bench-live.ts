/** The built page while it sounds: what a block costs, whether one came late, how soon a press and a picture are heard. */
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { linkFor } from '../app/address.ts';
import { instrumentOf } from '../circuit/instrument.ts';
import { setCapacitance, setPolarity, setVoiceValue, turnThreshold } from '../design/commands.ts';
import { DEFAULT_DESIGN } from '../design/defaults.ts';
import type { Design } from '../design/design.ts';
import type { MainsLampId } from '../light/mains-lamp.ts';
import { DEFAULT_STAGE, stageLux } from '../light/stage.ts';
import { justOn } from '../plan/threshold.ts';
import { VOICES } from '../quantity/units.ts';
import { Gating } from '../sound/gating.ts';
import { settingsOf } from '../sound/settings.ts';
import { words } from '../words/en.ts';
import { medianOf, quantileOf } from './bench-clock.ts';
import { beginToListen, type Ear, markDarkening, rememberLoudspeaker } from './bench-ear.ts';
import { eventsOf } from './bench-view.ts';
import { type CameraLevel, cameraClip, greyOfLuma } from './camera-clip.ts';
import { type Chromium, cameraFlags, startChromium } from './chromium.ts';

const TRACED_SECONDS = 5;
const UNDERRUN_SECONDS = 60;
const BLOCK = 128;
const PRESSES = 20;
const DARKENINGS = 8;

const pause = (seconds: number): Promise<void> => new Promise((over) => setTimeout(over, 1000 * seconds));
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** A page with a design from a link, sounding. */
async function sounding(
  browser: Browser,
  address: string,
  design: Design,
  prepare: readonly (() => void)[] = [],
  options: BrowserContextOptions = {},
): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const page = await context.newPage();
  for (const script of [rememberLoudspeaker, ...prepare]) await page.addInitScript(script);
  await page.goto(`${address}${await linkFor(design)}`);
  // A steady tone fades after a while unless told to go on.
  await page.getByRole('checkbox', { name: words.sound.exhibition, exact: true }).check();
  await button(page, words.bar.soundOn).click();
  await button(page, words.bar.soundOff).waitFor();
  return page;
}

export interface Load {
  /** Share of the time of a block of 128 samples that the worklet takes; mean, and one block in a hundred takes longer. */
  readonly workletLoad: number;
  readonly workletLoadOneInHundred: number;
  readonly underruns: number;
}

/** Both voices chattering in the light of a lamp that ripples. */
export async function load(browser: Browser, address: string): Promise<Load> {
  const page = await sounding(browser, address, restless());
  await page.locator('lamp-row select').selectOption('compact-magnetic' satisfies MainsLampId);
  await page.waitForFunction((sign) => {
    const strip = document.querySelector('lamp-note')?.shadowRoot?.querySelector('live-strip');
    return (strip?.shadowRoot?.querySelectorAll('.chattering').length ?? 0) === sign;
  }, 2);
  await browser.startTracing(page, { categories: ['disabled-by-default-audio-worklet'] });
  await pause(TRACED_SECONDS);
  const blocks = eventsOf(await browser.stopTracing()).filter(
    ({ name, dur }) => name === 'AudioWorkletProcessor::Process' && dur !== undefined,
  );
  const rate = await page.evaluate(
    () => (Reflect.get(globalThis, 'loudest') as AudioNode).context.sampleRate,
  );
  const shares = blocks.map(({ dur }) => (dur! * 1e-6 * rate) / BLOCK);
  const before = await underrunsSoFar(page);
  await pause(UNDERRUN_SECONDS);
  const underruns = (await underrunsSoFar(page)) - before;
  await page.context().close();
  return {
    workletLoad: shares.reduce((sum, each) => sum + each, 0) / shares.length,
    workletLoadOneInHundred: quantileOf(shares, 0.99),
    underruns,
  };
}

/** A design without hysteresis, its threshold where the stage's light is. */
function restless(): Design {
  const bare = VOICES.reduce(
    (design, id) => setVoiceValue(id, 'hysteresisOhms', null)(design),
    DEFAULT_DESIGN,
  );
  const on = justOn(bare, 'A', stageLux(DEFAULT_STAGE));
  if (on.kind !== 'turn') throw new Error('No threshold is where the light is');
  return turnThreshold('A', on.rotation)(bare);
}

/** As the browser counts them. */
const underrunsSoFar = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const { context } = Reflect.get(globalThis, 'loudest') as AudioNode;
    const stats = Reflect.get(context, 'playbackStats') as { readonly underrunEvents: number } | undefined;
    if (stats === undefined) throw new Error('This browser does not count underruns');
    return stats.underrunEvents;
  });

/** A high tone of voice A alone: each of its many edges tells a moment. Voice B sounds in the dark only. */
const HIGH = setPolarity('B', 'shade')(setCapacitance('A', 2.2e-9)(DEFAULT_DESIGN));
const LOW = setCapacitance('A', 22e-9)(HIGH);

/** From a key that takes another capacitor to the first sample that differs, on the audio clock; median, milliseconds. */
export async function controlToSoundMs(browser: Browser, address: string): Promise<number> {
  const page = await sounding(browser, address, LOW, [], { bypassCSP: true });
  const high = await linkFor(HIGH);
  await page.evaluate((hash) => {
    location.hash = hash;
  }, high);
  await page.getByRole('alert').waitFor();
  await page.evaluate(beginToListen, 'z');
  for (let press = 0; press < PRESSES; press++) {
    await pause(0.1);
    await page.keyboard.press('Control+z');
    await pause(0.1);
    await page.keyboard.press('Control+Shift+Z');
  }
  const { crossings, marks } = await heard(page);
  await page.context().close();
  return 1000 * medianOf(marks.map((at) => firstChange(crossings, at) - at));
}

const heard = (page: Page): Promise<Ear> => page.evaluate(() => Reflect.get(globalThis, 'ear') as Ear);

/** The first crossing after a moment that comes more than one per cent earlier or later than its forerunners say. */
function firstChange(crossings: readonly number[], at: number): number {
  const next = crossings.findIndex((crossing) => crossing > at);
  const before = crossings.slice(next - 20, next);
  const period = (before.at(-1)! - before[0]!) / (before.length - 1);
  for (let i = next; i < crossings.length; i++) {
    const expected = crossings[i - 1]! + period;
    if (Math.abs(crossings[i]! - expected) > 0.01 * period) return Math.min(expected, crossings[i]!);
  }
  throw new Error('A press was not heard');
}

const BRIGHT = 160;
const DIM = 40;
const CLIP: readonly CameraLevel[] = [
  [1.5, BRIGHT, BRIGHT],
  [0.5, DIM, BRIGHT],
];

export interface CameraToGate {
  readonly cameraToGateMs: number;
  /** Of that, what the light's way from one picture to the next and the cell's own lag take, by the model alone. */
  readonly cameraToGateModelMs: number;
}

/** From the page having a darker picture to the last edge of voice A. */
export async function cameraToGate(found: Chromium, address: string): Promise<CameraToGate> {
  const browser = await startChromium(found, cameraFlags(cameraClip(CLIP), true));
  try {
    const page = await sounding(browser, address, HIGH, [markDarkening], {
      bypassCSP: true,
      permissions: ['camera'],
    });
    await page.getByRole('radio', { name: words.light.sources.camera, exact: true }).check();
    await button(page, words.camera.open).click();
    await page.getByText(words.camera.assumed(300)).waitFor();
    await page.evaluate(beginToListen, null);
    await page.waitForFunction(
      (wanted) => (Reflect.get(globalThis, 'ear') as Ear).marks.length > wanted,
      DARKENINGS,
    );
    const { crossings, marks } = await heard(page);
    // The last may still be on its way.
    const lags = marks.slice(0, -1).map((at) => lastBeforeSilence(crossings, at) - at);
    return { cameraToGateMs: 1000 * medianOf(lags), cameraToGateModelMs: 1000 * modelLag() };
  } finally {
    await browser.close();
  }
}

/** The last crossing before a pause of a tenth of a second. */
function lastBeforeSilence(crossings: readonly number[], at: number): number {
  for (let i = crossings.findIndex((crossing) => crossing > at); i + 1 < crossings.length; i++)
    if (crossings[i + 1]! - crossings[i]! > 0.1) return crossings[i]!;
  throw new Error('A dark picture silenced nothing');
}

/** How long the same step of light takes in the model, from the moment it is told. */
function modelLag(): number {
  const settings = settingsOf(HIGH, instrumentOf(HIGH));
  const lit = { A: 300, B: 300 };
  const gating = new Gating(settings, { kind: 'steady', lux: lit });
  gating.aim({ ...lit, A: 300 * dimmedTo }, 1 / 30);
  let silenced: number | null = null;
  while (silenced === null) {
    if (gating.time > 1) throw new Error('The dimmed picture silences nothing');
    gating.advance((voice, time, released) => {
      if (voice === 'A' && !released) silenced = time;
    });
  }
  return silenced;
}

/** Share of the light left in the dim half: the pictures' greys, decoded as sRGB (IEC 61966-2-1). */
const dimmedTo = ((): number => {
  const linear = (luma: number) => ((greyOfLuma(luma) / 255 + 0.055) / 1.055) ** 2.4;
  return linear(DIM) / linear(BRIGHT);
})();
