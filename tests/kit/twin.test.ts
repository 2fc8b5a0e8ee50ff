/** Twins of synthetic boards whose parts are known. */
import { expect, test } from 'vitest';
import { astableOf, cycleOf } from '../../src/circuit/astable.ts';
import { steadyConductance } from '../../src/circuit/cell.ts';
import { gatesOf, nodeVolts, overdriveVolts, referenceSource } from '../../src/circuit/gate.ts';
import type { Design } from '../../src/design/design.ts';
import { drawnBoard } from '../../src/kit/drawn-board.ts';
import { cellTwin, pitchTwin, twinOf } from '../../src/kit/twin.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { BENCH_DESIGN, cellAt, designWith } from '../circuit/building.ts';

const endsOf = (board: Design, voice: 'A' | 'B') => ({
  high: cycleOf(astableOf(board, voice, 9, 0)).frequency,
  low: cycleOf(astableOf(board, voice, 9, 1)).frequency,
});

test('sixty drawn boards give back capacitor and trimmer within 3 %, and most within twice what is said (seed 41)', () => {
  const uniform = uniformFrom(41);
  let inside = 0;
  for (let i = 0; i < 60; i++) {
    const board = drawnBoard(BENCH_DESIGN, uniform);
    const ends = endsOf(board, 'A');
    const heard = {
      high: ends.high * (1 + 5e-4 * (uniform() - 0.5)),
      low: ends.low * (1 + 5e-4 * (uniform() - 0.5)),
    };
    const twin = pitchTwin(BENCH_DESIGN, 'A', 9, heard);
    if (twin.kind !== 'twin') throw new Error(twin.why);
    const { capacitor, trimmer } = board.voices.A;
    const off = [twin.farads.value / capacitor.farads - 1, twin.trimmerOhms.value / trimmer.ohms - 1];
    expect(Math.abs(off[0]!), `board ${i}, capacitor`).toBeLessThan(0.03);
    expect(Math.abs(off[1]!), `board ${i}, trimmer`).toBeLessThan(0.03);
    if (
      Math.abs(off[0]!) < 2 * twin.farads.uncertainty &&
      Math.abs(off[1]!) < 2 * twin.trimmerOhms.uncertainty
    )
      inside++;
  }
  expect(inside).toBeGreaterThanOrEqual(54);
});

test('with exact resistors and pitches the twin is exact', () => {
  const board = designWith({
    B: {
      capacitor: { ...BENCH_DESIGN.voices.B.capacitor, farads: 61.3e-9 },
      trimmer: { ...BENCH_DESIGN.voices.B.trimmer, ohms: 46_700 },
    },
  });
  const twin = pitchTwin(BENCH_DESIGN, 'B', 9, endsOf(board, 'B'));
  expect(twin).toMatchObject({
    kind: 'twin',
    farads: { value: expect.closeTo(61.3e-9, 16) },
    trimmerOhms: { value: expect.closeTo(46_700, 3) },
  });
});

test('pitches that no such trimmer gives are refused with the reason', () => {
  expect(pitchTwin(BENCH_DESIGN, 'A', 9, { high: 200, low: 900 })).toEqual({
    kind: 'impossible',
    why: 'ends exchanged',
  });
  expect(pitchTwin(BENCH_DESIGN, 'A', 9, { high: 300, low: 299 })).toMatchObject({ why: 'range too small' });
  expect(pitchTwin(BENCH_DESIGN, 'A', 9, { high: 9000, low: 100 })).toMatchObject({ why: 'range too large' });
});

/** Reference at which a silent voice just switches in a light, found on the board itself by halving. */
function justOnReference(board: Design, lux: number): { readonly volts: number } | null {
  const at = (rotation: number) => {
    const part = board.threshold.trimmers.A;
    const turned = { ...part, trimmer: { ...part.trimmer, rotation } };
    const set = {
      ...board,
      threshold: { ...board.threshold, trimmers: { ...board.threshold.trimmers, A: turned } },
    };
    const state = gatesOf(set, 9).A.states[0]!;
    const { r10Ohms, gamma } = board.voices.A.cell;
    const node = nodeVolts(state, steadyConductance(gamma, lux) / r10Ohms);
    return { over: overdriveVolts(state, node), volts: referenceSource(turned, 9).volts };
  };
  let [low, high] = [0, 1];
  const atLow = at(0).over > 0;
  if (atLow === at(1).over > 0) return null;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (at(middle).over > 0 === atLow) low = middle;
    else high = middle;
  }
  return { volts: at(low).volts };
}

test.each([
  ['bottom', 'light'],
  ['top', 'light'],
  ['bottom', 'shade'],
] as const)(
  'cell at the %s, sounds in %s: R at 10 lx within 10 % on forty boards, lux within 5 %, reference within 1 % (seed 42)',
  (position, polarity) => {
    const design = designWith({
      voices: { polarity, ...cellAt(position, position === 'top' ? 4700 : 12_000) },
    });
    const uniform = uniformFrom(42);
    let boards = 0;
    for (let i = 0; i < 40; i++) {
      const board = drawnBoard(design, uniform);
      const lux = 20 + 60 * uniform();
      const on = justOnReference(board, lux);
      if (on === null) continue;
      boards++;
      const read = {
        lux: lux * (1 + 0.1 * (uniform() - 0.5)),
        referenceVolts: on.volts * (1 + 0.02 * (uniform() - 0.5)),
      };
      const twin = cellTwin(design, 'A', 9, read);
      if (twin.kind !== 'twin') throw new Error(twin.why);
      expect(Math.abs(twin.r10Ohms.value / board.voices.A.cell.r10Ohms - 1), `board ${i}`).toBeLessThan(0.1);
      expect(twin.r10Ohms.uncertainty).toBeGreaterThan(0.02);
    }
    expect(boards).toBeGreaterThan(20);
  },
);

test('far from 10 lx the slope is the larger part of the doubt, and it is said', () => {
  const near = cellTwin(BENCH_DESIGN, 'A', 9, { lux: 12, referenceVolts: 3 });
  const far = cellTwin(BENCH_DESIGN, 'A', 9, { lux: 400, referenceVolts: 3 });
  if (near.kind !== 'twin' || far.kind !== 'twin') throw new Error('twins');
  expect(near.r10Ohms.uncertainty).toBeLessThan(0.06);
  expect(far.r10Ohms.uncertainty).toBeGreaterThan(0.2);
  expect(cellTwin(BENCH_DESIGN, 'A', 9, { lux: 0, referenceVolts: 3 })).toMatchObject({ why: 'no light' });
  expect(cellTwin(BENCH_DESIGN, 'A', 9, { lux: 30, referenceVolts: 8.9 })).toMatchObject({
    why: 'reference out of reach',
  });
});

test('the twin is the design with that board’s own parts, and only those', () => {
  const twin = twinOf(BENCH_DESIGN, 'B', { farads: 70e-9, r10Ohms: 15_000 });
  expect(twin.voices.B.capacitor.farads).toBe(70e-9);
  expect(twin.voices.B.cell.r10Ohms).toBe(15_000);
  expect(twin.voices.B.trimmer).toEqual(BENCH_DESIGN.voices.B.trimmer);
  expect(twin.voices.A).toBe(BENCH_DESIGN.voices.A);
});
