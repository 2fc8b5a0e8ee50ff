/** What is heard of a candidate has the pitches the model says. */
import { expect, test } from 'vitest';
import {
  benchPiece,
  designWith,
  heardAs,
  referenceNoteFor,
  stepsOf,
  sweepPiece,
  targetPiece,
  worstPiece,
} from '../../src/app/pitch-pieces.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/design.ts';
import type { Candidate, VoiceParts } from '../../src/design/pitch.ts';
import { assess, untunedBench } from '../../src/plan/assess.ts';
import { chipOf } from '../../src/plan/timing.ts';
import { type Pair, pairOf, VOICES } from '../../src/quantity/units.ts';

const parts = (ohms: number): VoiceParts => ({
  ra: { ohms: 4700, tolerance: 0.01 },
  rbFixed: { ohms: 10e3, tolerance: 0.01 },
  trimmer: { part: 'single-turn', ohms, tolerance: 0.1 },
  capacitor: { farads: 68e-9, dielectric: 'polyester', tolerance: 0.05 },
});
const note = (hertz: number) => ({ lowHertz: hertz, highHertz: hertz });
const candidate: Candidate = {
  parts: { A: parts(50e3), B: parts(50e3) },
  targets: { A: note(329.63), B: note(261.63) },
};
const design = DEFAULT_DESIGN;
const chip = chipOf(design);
const hertzOf = (one: Design): Pair<number> => {
  const { voices } = instrumentOf(one);
  return pairOf((id) => voices[id].cycle.frequency);
};
const draw = { law: 'uniform', seed: 3, kits: 20 } as const;

test('at its target a candidate plays the notes it was chosen for', () => {
  const piece = targetPiece(design, candidate);
  expect(piece.kind).toBe('steady');
  const hertz = hertzOf(designWith(design, candidate));
  expect(hertz.A).toBeCloseTo(329.63, 6);
  expect(hertz.B).toBeCloseTo(261.63, 6);
});

test('a sweep falls step by step from the nominal top to the nominal bottom', () => {
  const piece = sweepPiece(design, candidate);
  if (piece.kind !== 'turns') throw new Error('No sweep.');
  const a = piece.steps.map((step) => hertzOf(step.design).A);
  expect(a.every((hertz, i) => i === 0 || hertz < a[i - 1]!)).toBe(true);
  const { nominal } = assess(chip, candidate, draw)!.voices.A;
  expect(a[0]).toBeCloseTo(nominal.highHertz, 6);
  expect(a.at(-1)).toBeCloseTo(nominal.lowHertz, 6);
});

test('worst-case parts and the kits of a bench play the pitches that were worked out for them (seed 3)', () => {
  const { voices } = assess(chip, candidate, draw)!;
  const worst = pairOf((id) => voices[id].worstCase);
  const piece = worstPiece(design, candidate, worst);
  const bench = untunedBench(chip, candidate, draw)!;
  const kits = benchPiece(design, candidate, bench, 'turns');
  if (piece.kind !== 'turns' || kits.kind !== 'turns') throw new Error('No turns.');
  const heard = piece.steps.map((step) => hertzOf(step.design));
  for (const id of VOICES) {
    expect(heard[0]![id]).toBeCloseTo(worst[id].lowHertz, 6);
    expect(heard[1]![id]).toBeCloseTo(candidate.targets[id].lowHertz, 6);
    expect(heard[2]![id]).toBeCloseTo(worst[id].highHertz, 6);
    for (const [i, step] of kits.steps.entries())
      expect(hertzOf(step.design)[id]).toBeCloseTo(bench[i]![id], 6);
  }
  const together = benchPiece(design, candidate, bench, 'together');
  expect([stepsOf(kits), stepsOf(together), stepsOf(targetPiece(design, candidate))]).toEqual([20, 20, 1]);
  expect(heardAs(kits, 'A')).toMatchObject({ kind: 'turns', only: 'A' });
  expect(heardAs(together, 'A')).toEqual(together);
});

test('the reference note of A4 = 440 Hz is 69, and a frequency between notes keeps its cents', () => {
  expect(referenceNoteFor(440)).toBe(69);
  expect(referenceNoteFor(440 * 2 ** (0.07 / 12))).toBeCloseTo(69.07, 9);
});
