/**
 * Designs for tests: one careful build with some values changed. It is written out here, so that what the tests
 * hold does not depend on which design a new document starts from.
 */
import { DEFAULT_BATCH } from '../../src/design/batch.ts';
import { type Design, FORMAT, type ThresholdTrimmer, VERSION, type Voice } from '../../src/design/design.ts';
import { DEFAULT_PITCH } from '../../src/design/pitch.ts';
import { DEFAULT_ROOM } from '../../src/design/room.ts';
import { pairOf, type VoiceId } from '../../src/quantity/units.ts';

const reference: ThresholdTrimmer = {
  topOhms: 8200,
  trimmer: { part: 'single-turn', ohms: 10_000, tolerance: 0.1, rotation: 0.27 },
  bottomOhms: 470,
};

const voiceOf = (farads: number, rotation: number): Voice => ({
  raOhms: 3900,
  rbFixedOhms: 12_000,
  trimmer: { part: 'single-turn', ohms: 50_000, tolerance: 0.1, rotation },
  capacitor: { farads, dielectric: 'polyester', tolerance: 0.1 },
  controlVolts: null,
  cell: { family: 'cds-8-20k', r10Ohms: 12_000, gamma: 0.7 },
  cellKept: 'light',
  divider: { cell: 'bottom', fixedOhms: 12_000 },
  polarity: 'light',
  hysteresisOhms: 680_000,
  inputOhms: 10_000,
  pullUpOhms: 6800,
});

/** Two bipolar voices on 9 V that sound in light, each with a trimmer of its own for its threshold. */
export const BENCH_DESIGN: Design = {
  format: FORMAT,
  version: VERSION,
  name: 'On the bench',
  notes: '',
  timer: 'bipolar',
  comparator: 'classic',
  supply: { kind: 'block-9v', volts: 9, sourceOhms: 1.7, diode: false, decoupled: true, sharedDipVolts: 0 },
  voices: { A: voiceOf(82e-9, 0.55), B: voiceOf(68e-9, 0.35) },
  threshold: { arrangement: 'each', trimmers: { A: reference, B: reference } },
  output: {
    mixOhms: { A: 47_000, B: 47_000 },
    shuntOhms: 4700,
    volume: null,
    coupling: { farads: 1e-6, kind: 'film' },
    loadOhms: 10_000,
  },
  noise: { voltsRms: 0, seed: 1 },
  pitch: DEFAULT_PITCH,
  room: DEFAULT_ROOM,
  batch: DEFAULT_BATCH,
};

export interface Changes {
  /** For both voices. */
  readonly voices?: Partial<Voice>;
  readonly A?: Partial<Voice>;
  readonly B?: Partial<Voice>;
  readonly output?: Partial<Design['output']>;
  readonly supply?: Partial<Design['supply']>;
  readonly noise?: Partial<Design['noise']>;
  readonly threshold?: Partial<Design['threshold']>;
  readonly timer?: Design['timer'];
  readonly comparator?: Design['comparator'];
}

/** The bench design with some values changed. Without noise unless a change brings some. */
export function designWith(changes: Changes = {}): Design {
  return {
    ...BENCH_DESIGN,
    timer: changes.timer ?? BENCH_DESIGN.timer,
    comparator: changes.comparator ?? BENCH_DESIGN.comparator,
    voices: pairOf((id) => ({ ...BENCH_DESIGN.voices[id], ...changes.voices, ...changes[id] })),
    output: { ...BENCH_DESIGN.output, ...changes.output },
    supply: { ...BENCH_DESIGN.supply, ...changes.supply },
    threshold: { ...BENCH_DESIGN.threshold, ...changes.threshold },
    noise: { ...BENCH_DESIGN.noise, ...changes.noise },
  };
}

/** A voice's divider, with the cell on top or at the bottom. */
export const cellAt = (cell: 'top' | 'bottom', fixedOhms = 12_000) => ({ divider: { cell, fixedOhms } });

/** A threshold trimmer of the bench design, turned. */
export function thresholdTurned(rotation: number, change: Partial<ThresholdTrimmer> = {}): ThresholdTrimmer {
  const part = { ...BENCH_DESIGN.threshold.trimmers.A, ...change };
  return { ...part, trimmer: { ...part.trimmer, rotation } };
}

/** A pitch trimmer of the bench design, turned. */
export const pitchTurned = (id: VoiceId, rotation: number) => ({
  trimmer: { ...BENCH_DESIGN.voices[id].trimmer, rotation },
});
