/** Rows about notes, cents and the spectrum of a pulse as it sounds. */
import { centsBetween, frequencyOfNote, nearestNote, noteNumberOf } from '../../src/plan/notes.ts';
import { renderTake } from '../../src/sound/render.ts';
import { DARK, LIT, pulseSettings, steady } from '../sound/playing.ts';
import { lineAt } from '../sound/spectrum.ts';
import type { Evaluators, Inputs } from './rows.ts';

/** One second of a pulse between 0 V and 1 V: whole periods, away from its beginning. */
function pulse(inputs: Inputs): { samples: Float32Array; period: number } {
  const rate = 192_000;
  const frequency = 200;
  const duty = inputs.number('part') / inputs.number('whole');
  const { samples } = renderTake(pulseSettings(frequency, duty), steady(LIT, DARK), 0.3, rate);
  const period = rate / frequency;
  return { samples: samples.subarray(10 * period, 50 * period), period };
}

export const pitch: Evaluators = {
  note: (inputs) => {
    const frequency = frequencyOfNote(inputs.number('noteNumber'));
    const nearest = nearestNote(frequency);
    const named = nearest.name === inputs.text('name') && Math.abs(nearest.cents) < 1e-6;
    return { frequency, period: 1 / frequency, named: Number(named) };
  },

  cents: (inputs) => ({ cents: centsBetween(inputs.number('from'), inputs.number('to')) }),

  ratio: (inputs) => ({ ratio: frequencyOfNote(69 + inputs.number('cents') / 100) / 440 }),

  'note number': (inputs) => ({ noteNumber: noteNumberOf(inputs.number('frequency')) }),

  nearest: (inputs) => {
    const { name, cents } = nearestNote(inputs.number('frequency'));
    return { cents, named: Number(name === inputs.text('name')) };
  },

  harmonics: (inputs) => {
    const { samples, period } = pulse(inputs);
    return Object.fromEntries([1, 2, 3, 4, 5, 6, 7, 8].map((n) => [`c${n}`, lineAt(samples, n / period)]));
  },

  'second harmonic': (inputs) => {
    const { samples, period } = pulse(inputs);
    return { ratio: lineAt(samples, 2 / period) / lineAt(samples, 1 / period) };
  },

  'ac level': (inputs) => {
    const { samples } = pulse(inputs);
    const mean = samples.reduce((sum, value) => sum + value, 0) / samples.length;
    return { rms: Math.sqrt(samples.reduce((sum, value) => sum + (value - mean) ** 2, 0) / samples.length) };
  },
};
