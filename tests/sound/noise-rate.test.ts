/**
 * How often noise tips a comparator that has no hysteresis. The noise is independent Gaussian values every 1/3 ms,
 * joined by straight lines: in one step it crosses a level at a margin of m standard deviations exactly when one end
 * is above and the other below, P = 2·Φ(m)·(1 − Φ(m)).
 */
import { describe, expect, test } from 'vitest';
import { steadyConductance } from '../../src/circuit/cell.ts';
import { cellSiemens, nodeVolts } from '../../src/circuit/gate.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import type { Design } from '../../src/design/design.ts';
import { gaussianFrom } from '../../src/quantity/random.ts';
import { Gating, GRID } from '../../src/sound/gating.ts';
import { designWith } from '../circuit/building.ts';
import { settingsFrom, steady } from './playing.ts';

const RMS = 0.001;
const SECONDS = 40;
/** Allowed error of a count, in its own standard deviations: once in 16 000 by chance, and the seeds are fixed. */
const DEVIATIONS = 4;

/** The distribution function of the normal law, by Simpson's rule on its density. */
function phi(m: number): number {
  const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  const count = 2000;
  const h = m / count;
  let sum = 0;
  for (let i = 0; i < count; i++)
    sum += (h / 6) * (density(i * h) + 4 * density((i + 0.5) * h) + density((i + 1) * h));
  return 0.5 + sum;
}

/** Crossings of one step follow each other in pairs, so that a count over n steps has this variance, closely. */
function varianceOf(m: number, steps: number): number {
  const p = 2 * phi(m) * (1 - phi(m));
  // Two neighbouring steps both cross when the value between them stands alone on its side.
  const both = phi(m) * (1 - phi(m));
  return steps * (p * (1 - p) + 2 * (both - p * p));
}

const bare = (seed: number): Design =>
  designWith({ voices: { hysteresisOhms: null }, noise: { voltsRms: RMS, seed } });

/** The light, found by halving, in which voice A's settled node stands `margin` deviations from its trip point. */
function lightAt(design: Design, margin: number): number {
  const gate = instrumentOf(design).gates.A;
  const state = gate.states[0]!;
  const { gamma } = design.voices.A.cell;
  const off = (lux: number) =>
    state.direction * (nodeVolts(state, cellSiemens(gate, steadyConductance(gamma, lux))) - state.tripVolts) +
    margin * RMS;
  let low = 0.1;
  let high = 10_000;
  for (let i = 0; i < 100; i++) {
    const middle = Math.sqrt(low * high);
    if (off(middle) < 0 === off(low) < 0) low = middle;
    else high = middle;
  }
  return low;
}

function changesIn(design: Design, lux: number, seconds: number): number {
  const gating = new Gating(settingsFrom(design), steady(lux, 1));
  let changes = 0;
  for (let i = 0; i < seconds * GRID; i++)
    gating.advance((voice) => {
      if (voice === 'A') changes++;
    });
  return changes;
}

describe('a comparator without hysteresis in steady light', () => {
  test.each([-2, -1, 0, 0.5, 1, 1.5, 2, 2.5, 3].map((margin, i) => [margin, 11 + i] as const))(
    '%d deviations from its trip point changes as often as the closed form says (seed %d)',
    (margin, seed) => {
      const design = bare(seed);
      const steps = SECONDS * GRID;
      const expected = steps * 2 * phi(margin) * (1 - phi(margin));
      const changes = changesIn(design, lightAt(design, margin), SECONDS);
      expect(Math.abs(changes - expected)).toBeLessThan(DEVIATIONS * Math.sqrt(varianceOf(margin, steps)));
    },
  );

  test('never changes six deviations away, nor without noise at its trip point', () => {
    expect(changesIn(bare(11), lightAt(bare(11), 6), SECONDS)).toBe(0);
    const quiet = designWith({ voices: { hysteresisOhms: null }, noise: { voltsRms: 0, seed: 11 } });
    expect(changesIn(quiet, lightAt(quiet, 1e-3), SECONDS)).toBe(0);
  });

  test('is held by the closed form alone: half as much noise again at the same light would be noticed', () => {
    const loud = { ...bare(11), noise: { voltsRms: 1.5 * RMS, seed: 11 } };
    const steps = SECONDS * GRID;
    const expected = steps * 2 * phi(2) * (1 - phi(2));
    const changes = changesIn(loud, lightAt(bare(11), 2), SECONDS);
    expect(changes - expected).toBeGreaterThan(DEVIATIONS * Math.sqrt(varianceOf(2, steps)));
  });
});

test('the closed forms are those of independent Gaussian values joined by lines, counted one by one', () => {
  const steps = 400_000;
  for (const margin of [0, 1, 2]) {
    const gaussian = gaussianFrom(5);
    let above = gaussian() > margin;
    let crossings = 0;
    for (let i = 0; i < steps; i++) {
      const next = gaussian() > margin;
      if (next !== above) crossings++;
      above = next;
    }
    const expected = steps * 2 * phi(margin) * (1 - phi(margin));
    expect(Math.abs(crossings - expected)).toBeLessThan(DEVIATIONS * Math.sqrt(varianceOf(margin, steps)));
  }
});
