/**
 * The sound as the browser's own audio thread makes it: the real worklet behind Tone's gain, rendered offline,
 * measured, and compared sample for sample with the engine run here.
 */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { instrumentOf, momentIn } from '../../src/circuit/instrument.ts';
import { loadShare } from '../../src/circuit/output.ts';
import type { TimerId } from '../../src/parts/timers.ts';
import { REACH } from '../../src/sound/bandlimit.ts';
import { Engine } from '../../src/sound/engine.ts';
import { renderTake } from '../../src/sound/render.ts';
import {
  type EngineMessage,
  type EngineSettings,
  FRAME,
  FRAME_LENGTH,
  MOST_OF_BOUND,
} from '../../src/sound/settings.ts';
import { designWith } from '../circuit/building.ts';
import { centsBetween, dutyOf, firstSoundAt, frequencyOf, isSilent, levelAt, peakOf } from '../ear.ts';
import { DARK, jumps, LIT, settingsFrom, steady } from '../sound/playing.ts';
import { launch, type OpenedPage, openModulePage, withModule } from './support/browser.ts';
import type { OfflineTake, OfflineWish, renderOffline } from './support/offline.ts';

const sampleRate = 48_000;

let browser: Browser;
let opened: OpenedPage;

beforeAll(async () => {
  browser = await launch();
  opened = await openModulePage(browser);
});

afterAll(async () => {
  await opened.close();
  await browser.close();
});

type Wish = Pick<OfflineWish, 'start' | 'seconds'> & Partial<OfflineWish>;

function render(wish: Wish): Promise<OfflineTake> {
  const use = (offline: { renderOffline: typeof renderOffline }, whole: OfflineWish) =>
    offline.renderOffline(whole);
  const usual = { messages: [], afterSamples: 0, sampleRate, gain: 1, patience: 10 };
  return withModule(opened.page, '/tests/browser/support/offline.ts', use, { ...usual, ...wish });
}

/** What the worklet should have made: the engine's volts, told the same things at the same moment, scaled. */
function expected({ start, messages = [], afterSamples = 0, seconds }: Wish): Float32Array {
  const engine = new Engine(sampleRate, start.settings, start.program);
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  const render = (from: number, to: number, settings: EngineSettings) => {
    const part = samples.subarray(from, to);
    engine.render(part);
    const scale = 1 / settings.jack.boundVolts;
    part.forEach((volts, i) => {
      part[i] = volts * scale;
    });
  };
  render(0, afterSamples, start.settings);
  let { settings } = start;
  for (const message of messages) {
    if (message.kind === 'play') engine.play(message.program, message.place);
    else if (message.kind === 'aim') engine.aim(message.lux, message.seconds);
    else {
      ({ settings } = message);
      engine.setSettings(settings);
    }
  }
  render(afterSamples, samples.length, settings);
  return samples;
}

/** Largest difference of two stretches of sound. */
function apart(a: Float32Array, b: Float32Array): number {
  return a.reduce(
    (worst, sample, i) => Math.max(worst, Math.abs(sample - b[i]!)),
    a.length === b.length ? 0 : 9,
  );
}

describe.each<TimerId>(['bipolar', 'cmos'])('a %s timer through the worklet', (timer) => {
  test('sounds at the frequency of the model within 0.01 cent', async () => {
    const design = designWith({ timer });
    const { cycle } = instrumentOf(design).voices.A;
    const { samples } = await render({
      start: { settings: settingsFrom(design), program: steady(LIT, DARK) },
      seconds: 4,
    });
    // Half a second for the coupling capacitor to charge; from then on the wave stands evenly about 0.
    const sound = { samples: samples.subarray(sampleRate / 2), sampleRate };
    expect(Math.abs(centsBetween(cycle.frequency, frequencyOf(sound, 0)))).toBeLessThan(0.01);
  });

  test('has the duty cycle and the level of the model', async () => {
    const design = designWith({ timer, output: { coupling: null } });
    const { voices, jack } = instrumentOf(design);
    const { dutyCycle, frequency } = voices.A.cycle;
    const [low, high] = jack.sources.map((s) => (s.volts * loadShare(jack, s)) / jack.boundVolts) as [
      number,
      number,
    ];
    const { samples } = await render({
      start: { settings: settingsFrom(design), program: steady(LIT, DARK) },
      seconds: 1,
    });
    expect(Math.abs(dutyOf({ samples, sampleRate }, (low + high) / 2) - dutyCycle)).toBeLessThan(1e-3);
    // Whole periods, past the longer first one. Of each edge, band limiting leaves out what no ear can hear.
    const from = 10 / frequency;
    const to = from + Math.floor(0.9 * frequency) / frequency;
    const level = Math.sqrt(dutyCycle * high ** 2 + (1 - dutyCycle) * low ** 2);
    const decibels = 20 * Math.log10(levelAt({ samples, sampleRate }, from, to) / level);
    expect(Math.abs(decibels)).toBeLessThan(0.05);
  });
});

test('light that comes is followed by the first sound, as soon as the model says', async () => {
  const settings = settingsFrom(designWith());
  const program = jumps([0, DARK, DARK], [0.3, LIT, DARK]);
  const { samples } = await render({ start: { settings, program }, seconds: 0.5 });
  const { gate } = renderTake(settings, program, 0.5, sampleRate);
  const starts = gate.filter(({ sounding }) => sounding);
  expect(starts.map(({ voice }) => voice)).toEqual(['A']);
  // The output rests a little above 0 V, and its first step, long past by then, has died away.
  const late = { samples: samples.subarray(0.25 * sampleRate), sampleRate };
  const first = 0.25 + firstSoundAt(late, 0.25)!;
  const due = starts[0]!.time + REACH / sampleRate;
  expect(Math.abs(first - due)).toBeLessThan(1.5 / sampleRate);
});

test('two dark sensors leave silence', async () => {
  const settings = settingsFrom(designWith());
  const { samples } = await render({ start: { settings, program: steady(DARK, DARK) }, seconds: 1 });
  expect(isSilent({ samples, sampleRate }, 0.5, 1)).toBe(true);
});

describe('sample for sample', () => {
  const settings = settingsFrom(designWith({ noise: { voltsRms: 0.001 } }));
  const other = settingsFrom(designWith({ timer: 'cmos', output: { mixOhms: null } }));
  const shaded: EngineMessage = { kind: 'aim', lux: { A: 40, B: LIT }, seconds: 0.05 };
  const rebuilt: EngineMessage = { kind: 'settings', settings: other };

  test.each<[string, Omit<Wish, 'start' | 'seconds'>]>([
    ['left alone', {}],
    ['shaded before the first sample', { messages: [shaded] }],
    ['rebuilt before the first sample', { messages: [rebuilt] }],
    ['shaded and rebuilt while it plays', { messages: [shaded, rebuilt], afterSamples: 128 * 77 }],
    [
      'given another program while it plays',
      {
        messages: [{ kind: 'play', program: jumps([0, LIT, LIT], [0.4, DARK, LIT]), place: 0 }],
        afterSamples: 128 * 31,
      },
    ],
  ])('the worklet makes what the engine makes, %s', async (_title, told) => {
    const wish: Wish = { start: { settings, program: steady(LIT, LIT) }, seconds: 1, ...told };
    const { samples } = await render(wish);
    expect(apart(samples, expected(wish))).toBeLessThanOrEqual(1e-7);
    // Something was told and heard: with other words the sound is another one.
    if (told.messages) expect(apart(samples, expected({ ...wish, messages: [] }))).toBeGreaterThan(0.1);
  });

  test('the gain behind the worklet scales every sample and does no more', async () => {
    const wish: Wish = { start: { settings, program: steady(LIT, LIT) }, seconds: 0.5, gain: 0.1 };
    const { samples } = await render(wish);
    expect(
      apart(
        samples,
        expected(wish).map((sample) => sample * Math.fround(0.1)),
      ),
    ).toBeLessThanOrEqual(1e-7);
  });
});

describe('frames from the audio thread', () => {
  const design = designWith();
  const settings = settingsFrom(design);

  test('come thirty times a second, for as long as it plays', async () => {
    const { frames } = await render({ start: { settings, program: steady(LIT, LIT) }, seconds: 4 });
    expect(Math.abs(frames.length - 120)).toBeLessThanOrEqual(1);
    const times = frames.map((frame) => frame[FRAME.time]!);
    const block = 128 / sampleRate;
    times.slice(1).forEach((time, i) => {
      expect(Math.abs(time - times[i]! - 1 / 30)).toBeLessThanOrEqual(block);
    });
    expect(times.at(-1)).toBeGreaterThan(3.9);
  });

  test('hold time, light, node, state, changes and peak in their places', async () => {
    const program = jumps([0, LIT, 120], [0.5, LIT, DARK], [1, LIT, 120]);
    const { frames, samples } = await render({ start: { settings, program }, seconds: 1.5 });
    expect(frames.every((frame) => frame.length === FRAME_LENGTH)).toBe(true);
    const at = (seconds: number) => frames.findLast((frame) => frame[FRAME.time]! <= seconds)!;
    const lit = { A: LIT, B: 120 };
    const before = momentIn(design, instrumentOf(design), lit, { A: true, B: true });
    expect(at(0.45)[FRAME.luxA]).toBe(LIT);
    expect(at(0.45)[FRAME.luxB]).toBe(120);
    expect(at(0.45)[FRAME.nodeA]).toBeCloseTo(before.A.nodeVolts, 6);
    expect(at(0.45)[FRAME.nodeB]).toBeCloseTo(before.B.nodeVolts, 6);
    const states = [0.45, 0.95, 1.45].map((s) => [at(s)[FRAME.soundingA], at(s)[FRAME.soundingB]]);
    expect(states).toEqual([
      [1, 1],
      [1, 0],
      [1, 1],
    ]);
    expect(at(0.95)[FRAME.luxB]).toBe(DARK);
    const sum = (place: number) => frames.reduce((total, frame) => total + frame[place]!, 0);
    expect([sum(FRAME.changesA), sum(FRAME.changesB)]).toEqual([0, 2]);
    const loudest = Math.max(...frames.map((frame) => frame[FRAME.peak]!));
    expect(loudest / settings.jack.boundVolts).toBeCloseTo(peakOf({ samples, sampleRate }), 6);
  });

  test('and the sound goes on after the light is gone and back', async () => {
    const program = jumps([0, LIT, LIT], [1, 0, 0], [3, LIT, LIT]);
    const { samples, failed } = await render({ start: { settings, program }, seconds: 5 });
    expect(failed).toBe(false);
    expect(isSilent({ samples, sampleRate }, 2.5, 3)).toBe(true);
    const whole = { samples, sampleRate };
    expect(levelAt(whole, 4.5, 5) / levelAt(whole, 0.5, 1)).toBeCloseTo(1, 1);
  });
});

describe('settings full of NaN', () => {
  const settings = settingsFrom(designWith());
  const spoilt = (value: unknown): unknown => {
    if (typeof value === 'number') return Number.NaN;
    if (Array.isArray(value)) return value.map(spoilt);
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, spoilt(one)]));
  };
  const parts = Object.keys(settings) as (keyof EngineSettings)[];

  test.each<[string, EngineSettings]>([
    ['everywhere', spoilt(settings) as EngineSettings],
    ...parts.map((part): [string, EngineSettings] => [
      `in ${part}`,
      { ...settings, [part]: spoilt(settings[part]) },
    ]),
  ])(
    '%s give no sample that is no number or beyond the bound, and do not stop the audio thread',
    async (_, bad) => {
      const { samples, failed } = await render({
        start: { settings, program: steady(LIT, LIT) },
        messages: [{ kind: 'settings', settings: bad }],
        afterSamples: 128 * 50,
        seconds: 1,
        patience: 3,
      });
      expect(failed).toBe(false);
      expect(samples.every((sample) => Math.abs(sample) <= MOST_OF_BOUND)).toBe(true);
    },
  );
});
