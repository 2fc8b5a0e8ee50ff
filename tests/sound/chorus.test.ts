/** Comparing by ear: equal loudness whatever the duty cycle, and many instruments spread across two channels. */
import { describe, expect, test } from 'vitest';
import { heldSounding, soundsOnly } from '../../src/sound/audible.ts';
import { chorusOf, type Stereo } from '../../src/sound/chorus.ts';
import { renderTake } from '../../src/sound/render.ts';
import type { EngineSettings } from '../../src/sound/settings.ts';
import { designWith } from '../circuit/building.ts';
import { frequencyOf, levelAt, peakOf } from '../ear.ts';
import { DARK, LIT, ONLY_A, pulseOf, settingsFrom, steady } from './playing.ts';

const RATE = 48_000;
const base = settingsFrom(designWith({ output: { coupling: { farads: 1e-6, kind: 'film' } } }));
/** Two pulses whose harmonics never fall together. */
const pulses = (duty: number, hertz = 300): EngineSettings => ({
  ...base,
  astables: { A: pulseOf(hertz, duty), B: pulseOf(hertz * 1.4983, duty) },
});

/** Level of what the page plays of them, after the coupling capacitor has settled. */
function level(settings: EngineSettings): number {
  return levelAt(renderTake(settings, steady(DARK, DARK), 2), 1) / settings.jack.boundVolts;
}

describe('held sounding', () => {
  test('both voices sound in the dark, or the one that is wanted', () => {
    const alone = { ...heldSounding(pulses(0.5), soundsOnly('A')), jack: ONLY_A };
    expect(frequencyOf(renderTake(alone, steady(DARK, DARK), 1), 0.5)).toBeCloseTo(300, 3);
    const other = { ...heldSounding(pulses(0.5), soundsOnly('B')), jack: ONLY_A };
    expect(peakOf(renderTake(other, steady(LIT, LIT), 1))).toBe(0);
  });

  test.each([0.5, 0.6, 0.7, 0.8])('a duty cycle of %d is as strong as one of 0.8', (duty) => {
    const strength = level(heldSounding(pulses(duty), soundsOnly(null)));
    const quietest = level(heldSounding(pulses(0.8), soundsOnly(null)));
    // The capacitor takes a little of the lowest harmonics, the same share of all of them.
    expect(20 * Math.abs(Math.log10(strength / quietest))).toBeLessThan(0.1);
  });

  test.each([0.5, 0.8, 0.95])('nothing is louder than it was, at a duty cycle of %d', (duty) => {
    const held = heldSounding(pulses(duty), soundsOnly(null));
    expect(held.jack.boundVolts).toBeGreaterThanOrEqual(base.jack.boundVolts);
  });
});

/** All of a rendering, and how many steps it took. */
function made(instruments: readonly EngineSettings[]): { sound: Stereo; steps: number } {
  const making = chorusOf(instruments, steady(DARK, DARK), 1, RATE);
  for (let steps = 0; ; steps++) {
    const next = making.next();
    if (next.done) return { sound: next.value, steps };
  }
}

describe('many at once', () => {
  const held = (hertz: number) => heldSounding(pulses(0.5, hertz), soundsOnly(null));

  test('the first stands on the left, the last on the right, one alone in the middle', () => {
    const { sound, steps } = made([held(200), held(300)]);
    expect(steps).toBe(2);
    const side = (samples: Float32Array) => ({ samples, sampleRate: RATE });
    const { samples } = renderTake(held(200), steady(DARK, DARK), 1);
    const share = 1 / (held(200).jack.boundVolts * Math.SQRT2);
    for (const n of [100, 5000, 40_000]) expect(sound.left[n]).toBeCloseTo(samples[n]! * share, 6);
    const { sound: alone } = made([held(200)]);
    expect(levelAt(side(alone.left))).toBeCloseTo(levelAt(side(alone.right)), 9);
  });

  test('however many there are, no sample is beyond full scale', () => {
    const { sound } = made(Array.from({ length: 30 }, (_, i) => held(200 + i)));
    expect(
      Math.max(
        peakOf({ samples: sound.left, sampleRate: RATE }),
        peakOf({ samples: sound.right, sampleRate: RATE }),
      ),
    ).toBeLessThanOrEqual(1);
  });
});
