/**
 * A pitch that is turned while it sounds: no click beyond the wave's own steps, and nothing that folds back from
 * above. The same turn is made at four times the sampling rate and brought down by a long filter; what differs below
 * 16 kHz is what this rate added. Steady pulses of the two handbook duties: no line that is not a harmonic.
 */
import { describe, expect, test } from 'vitest';
import { astableFrom, cycleOf } from '../../src/circuit/astable.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { REACH } from '../../src/sound/bandlimit.ts';
import { Engine } from '../../src/sound/engine.ts';
import { renderTake } from '../../src/sound/render.ts';
import type { EngineSettings } from '../../src/sound/settings.ts';
import { designWith, pitchTurned } from '../circuit/building.ts';
import { DARK, LIT, ONLY_A, pulseSettings, settingsFrom, steady } from './playing.ts';
import { windowedSpectrum } from './spectrum.ts';

const RATE = 48_000;
const TIMES = 4;
/** A message from the page with each of its pictures. */
const MESSAGES = 60;
const HIGHEST = 16_000;
const LIGHT = steady(LIT, DARK);

/** The bench design with voice A's pitch trimmer at a share of its way, a plain wire to the jack. */
const turned = (farads: number) => (rotation: number) => {
  const capacitor = { farads, dielectric: 'polyester', tolerance: 0.1 } as const;
  return designWith({ A: { ...pitchTurned('A', rotation), capacitor }, output: { coupling: null } });
};

/** One second of a trimmer turned steadily from one stop to the other: settings anew every 1/60 s. */
function turning(at: (share: number) => EngineSettings, rate: number): Float32Array {
  const engine = new Engine(rate, at(0), LIGHT);
  const heard = new Float32Array(rate + REACH);
  const block = rate / MESSAGES;
  for (let k = 0; k < MESSAGES; k++) {
    engine.render(heard.subarray(k * block, (k + 1) * block));
    engine.setSettings(at((k + 1) / MESSAGES));
  }
  engine.render(heard.subarray(rate));
  return heard.subarray(REACH);
}

/** Every fourth sample after a sinc of 22 kHz under a Blackman–Harris window, 1025 places long: over 90 dB of stop. */
function broughtDown(samples: Float32Array): Float64Array {
  const half = 512;
  const cut = 22_000 / (TIMES * RATE);
  const taps = Float64Array.from({ length: 2 * half + 1 }, (_, i) => {
    const x = (Math.PI * i) / half;
    const window = 0.35875 - 0.48829 * Math.cos(x) + 0.14128 * Math.cos(2 * x) - 0.01168 * Math.cos(3 * x);
    const at = 2 * Math.PI * cut * (i - half);
    return window * (i === half ? 1 : Math.sin(at) / at);
  });
  const sum = taps.reduce((total, tap) => total + tap, 0);
  return Float64Array.from({ length: samples.length / TIMES }, (_, n) => {
    let value = 0;
    for (let i = 0; i <= 2 * half; i++) {
      const place = Math.max(0, Math.min(samples.length - 1, TIMES * n + i - half));
      value += taps[i]! * samples[place]!;
    }
    return value / sum;
  });
}

/** Away from both ends, where the filter has nothing to hold on to; a power of two. */
const FROM = 4000;
const COUNT = 32_768;

/** Power below 16 kHz, summed over all lines, without 0 Hz. */
function powerOf(samples: ArrayLike<number>): number {
  const lines = windowedSpectrum(Array.prototype.slice.call(samples, FROM, FROM + COUNT) as number[]);
  let power = 0;
  for (let bin = 5; bin < (HIGHEST * COUNT) / RATE; bin++) power += lines[bin]! ** 2;
  return power;
}

/** Power of the fundamental of a pulse that swings by this much, through the same window. */
function fundamentalPower(swing: number, duty: number): number {
  const peak = (2 * swing * Math.sin(Math.PI * duty)) / Math.PI;
  return powerOf(
    Float64Array.from({ length: FROM + COUNT }, (_, i) => peak * Math.sin((2 * Math.PI * i) / 64)),
  );
}

/** All that a turn at 48 kHz has and the one at 192 kHz has not, dB re the fundamental. */
function addedDb(
  at: (share: number) => EngineSettings,
  plain?: (samples: Float32Array) => ArrayLike<number>,
): number {
  const fast = turning(at, TIMES * RATE);
  const slow = plain ? plain(fast) : turning(at, RATE);
  const down = broughtDown(fast);
  const difference = down.map((value, i) => value - slow[i]!);
  const [low, high] = levelsOf(at(0));
  const { dutyCycle } = cycleOf(at(0.5).astables.A);
  return 10 * Math.log10(powerOf(difference) / fundamentalPower(high - low, dutyCycle));
}

describe('while a pitch trimmer is turned from stop to stop in a second', () => {
  const pitches = [
    ['low', 82e-9],
    ['middling', 22e-9],
    ['high', 4.7e-9],
  ] as const;

  test.each(pitches)(
    'a %s voice gets nothing from above half the rate: at most −85 dB in all',
    (_, farads) => {
      const at = (share: number) => settingsFrom(turned(farads)(share));
      const [from, to] = [0, 1].map((share) => cycleOf(at(share).astables.A).frequency);
      expect(from! / to!).toBeGreaterThan(3);
      expect(addedDb(at)).toBeLessThanOrEqual(-85);
    },
  );

  test('the measure finds edges that are merely sampled', () => {
    const at = (share: number) => settingsFrom(turned(22e-9)(share));
    const [low, high] = levelsOf(at(0));
    const sampled = (fast: Float32Array) =>
      Float64Array.from({ length: RATE }, (_, i) => (fast[TIMES * i]! > (low + high) / 2 ? high : low));
    expect(addedDb(at, sampled)).toBeGreaterThan(-60);
  });

  test('between two steps it stands still: no click where a message or a glide step falls', () => {
    const at = (share: number) => settingsFrom(turned(82e-9)(share));
    const heard = turning(at, RATE);
    const [low, high] = levelsOf(at(0));
    const middle = (low + high) / 2;
    const steps: number[] = [];
    for (let i = 1; i < heard.length; i++) if (heard[i - 1]! > middle !== heard[i]! > middle) steps.push(i);
    expect(steps.length).toBeGreaterThan(200);
    let still = 0;
    for (let s = 1; s < steps.length; s++) {
      const level = heard[Math.floor((steps[s - 1]! + steps[s]!) / 2)]! > middle ? high : low;
      for (let i = steps[s - 1]! + REACH + 1; i < steps[s]! - REACH - 1; i++, still++)
        expect(Math.abs(heard[i]! - level)).toBeLessThan(1e-6 * (high - low));
    }
    expect(still).toBeGreaterThan(heard.length / 3);
  });

  test('it never leaves the range that the same voice has while nobody turns it', () => {
    const at = (share: number) => settingsFrom(turned(82e-9)(share));
    const heard = turning(at, RATE).subarray(REACH);
    const rest = renderTake(at(0.5), LIGHT, 2, RATE).samples.subarray(RATE);
    const swing = Math.max(...rest) - Math.min(...rest);
    expect(Math.max(...heard)).toBeLessThan(Math.max(...rest) + 0.002 * swing);
    expect(Math.min(...heard)).toBeGreaterThan(Math.min(...rest) - 0.002 * swing);
  });

  test('its pitch follows the turn: the way between two steps grows without a jump', () => {
    const at = (share: number) => settingsFrom(turned(82e-9)(share));
    const { A } = instrumentOf(turned(82e-9)(0)).voices;
    const { A: last } = instrumentOf(turned(82e-9)(1)).voices;
    const rate = TIMES * RATE;
    const heard = turning(at, rate);
    const [low, high] = levelsOf(at(0));
    const middle = (low + high) / 2;
    const rises: number[] = [];
    for (let i = 1; i < heard.length; i++) {
      const [before, after] = [heard[i - 1]!, heard[i]!];
      if (before <= middle && after > middle) rises.push(i - 1 + (middle - before) / (after - before));
    }
    const periods = rises.slice(1).map((rise, i) => (rise - rises[i]!) / rate);
    // The first cycle begins with an empty capacitor.
    const settled = periods.slice(1);
    for (const [i, period] of settled.entries()) {
      if (i > 0) expect(period / settled[i - 1]!).toBeGreaterThan(1 - 1e-3);
      if (i > 0) expect(period / settled[i - 1]!).toBeLessThan(1.04);
    }
    expect(settled[0]! * A.cycle.frequency).toBeGreaterThan(1 - 1e-3);
    expect(settled.at(-1)! * last.cycle.frequency).toBeLessThan(1 + 1e-3);
    expect(settled.at(-1)! * last.cycle.frequency).toBeGreaterThan(0.9);
  });
});

/** Low and high of the jack with voice B silent. */
function levelsOf({ jack }: EngineSettings): readonly [number, number] {
  const [low, high] = jack.sources.map(({ volts, ohms }) => (volts * jack.loadOhms) / (jack.loadOhms + ohms));
  return [low!, high!];
}

/** An ideal astable of two resistors in a given ratio, made to sound a frequency. */
function handbookPulse(raOverRb: number, hertz: number): EngineSettings {
  const rbOhms = 10_000;
  const raOhms = raOverRb * rbOhms;
  const farads = 1 / (Math.LN2 * (raOhms + 2 * rbOhms) * hertz);
  const base = pulseSettings(hertz, 0.5, ONLY_A);
  const A = astableFrom({
    raOhms,
    rbOhms,
    farads,
    railVolts: 9,
    controlVolts: null,
    discharge: { kind: 'resistance', ohms: 0 },
  });
  return { ...base, astables: { ...base.astables, A } };
}

/** The loudest line below 16 kHz that is no harmonic, dB re the fundamental. */
function aliasDb(samples: ArrayLike<number>, hertz: number): number {
  const lobe = 8;
  const lines = windowedSpectrum(Array.prototype.slice.call(samples, FROM, FROM + COUNT) as number[]);
  const spacing = (hertz * COUNT) / RATE;
  const first = Math.round(spacing);
  const fundamental = Math.max(...lines.subarray(first - 1, first + 2));
  let loudest = 0;
  for (let bin = lobe + 1; bin < (HIGHEST * COUNT) / RATE; bin++)
    if (Math.abs(bin - Math.round(bin / spacing) * spacing) > lobe) loudest = Math.max(loudest, lines[bin]!);
  return 20 * Math.log10(loudest / fundamental);
}

describe.each([
  ['RA = RB', 1, 2 / 3],
  ['RA = 2·RB', 2, 3 / 4],
] as const)('a steady pulse with %s', (_, raOverRb, duty) => {
  test.each([1234.5, 5000])('at %d Hz has no line that is no harmonic above −90 dB', (hertz) => {
    const settings = handbookPulse(raOverRb, hertz);
    const cycle = cycleOf(settings.astables.A);
    expect(cycle.dutyCycle).toBeCloseTo(duty, 12);
    expect(cycle.frequency).toBeCloseTo(hertz, 9);
    expect(aliasDb(renderTake(settings, LIGHT, 1, RATE).samples, hertz)).toBeLessThanOrEqual(-90);
  });

  test.each([1234.5, 5000])('at %d Hz, merely sampled, has many', (hertz) => {
    const sampled = Float64Array.from({ length: RATE }, (_x, i) =>
      Number(((i * hertz) / RATE + 0.1) % 1 < duty),
    );
    expect(aliasDb(sampled, hertz)).toBeGreaterThan(-60);
  });
});
