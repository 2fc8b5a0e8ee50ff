/** What is heard against what the model says: frequency, duty, the first note after a gate. */
import { describe, expect, test } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { jackOf, loadShare } from '../../src/circuit/output.ts';
import type { Design } from '../../src/design/design.ts';
import { renderTake } from '../../src/sound/render.ts';
import { designWith, pitchTurned } from '../circuit/building.ts';
import {
  centsBetween,
  crossings,
  dutyOf,
  firstSoundAt,
  frequencyOf,
  isSilent,
  levelAt,
  partOf,
} from '../ear.ts';
import { DARK, jumps, LIT, settingsFrom, steady } from './playing.ts';

const plainWire = { output: { coupling: null } };

/** Half way between the two levels that voice A makes at the jack while B is silent. */
function middleOf(design: Design): number {
  const jack = jackOf(design, design.supply.volts);
  const [low, high] = jack.sources.map((source) => source.volts * loadShare(jack, source)) as [
    number,
    number,
  ];
  return (low + high) / 2;
}

describe.each(['bipolar', 'cmos'] as const)('a %s timer', (timer) => {
  test.each([0, 0.2, 0.55, 0.8, 1])('turned to %d sounds the model’s frequency and duty', (rotation) => {
    const design = designWith({ timer, A: pitchTurned('A', rotation), ...plainWire });
    const { cycle } = instrumentOf(design).voices.A;
    const take = renderTake(settingsFrom(design), steady(LIT, DARK), 2.1);
    const heard = partOf(take, 0.1, 2.1);
    const level = middleOf(design);
    expect(Math.abs(centsBetween(cycle.frequency, frequencyOf(heard, level)))).toBeLessThan(0.01);
    expect(Math.abs(dutyOf(heard, level) - cycle.dutyCycle)).toBeLessThan(1e-4);
  });

  test('lets the first high after a gate last as long as the model says, and the next as ever', () => {
    const design = designWith({ timer, ...plainWire });
    const { cycle } = instrumentOf(design).voices.A;
    const take = renderTake(
      settingsFrom(design),
      jumps([0, DARK, DARK], [0.05, LIT, DARK], [0.3, DARK, DARK], [0.6, LIT, DARK]),
      0.8,
      192_000,
    );
    const released = take.gate.filter((g) => g.voice === 'A' && g.sounding).at(-1)!.time;
    expect(released).toBeGreaterThan(0.6);
    const after = crossings(take, middleOf(design)).filter(({ time }) => time > released - 1e-5);
    const [up, down, next, nextDown] = [after[0]!, after[1]!, after[2]!, after[3]!];
    expect(Math.abs(up.time - released)).toBeLessThan(1e-6);
    expect(Math.abs(down.time - up.time - cycle.firstHighSeconds)).toBeLessThan(1e-6);
    expect(Math.abs(next.time - down.time - cycle.lowSeconds)).toBeLessThan(1e-6);
    expect(Math.abs(nextDown.time - next.time - cycle.highSeconds)).toBeLessThan(1e-6);
  });
});

test('at the start every capacitor is empty: the first high is ln 3 of the charge, from 0 V', () => {
  const design = designWith(plainWire);
  const { A } = instrumentOf(design).astables;
  const take = renderTake(settingsFrom(design), steady(LIT, DARK), 0.1, 192_000);
  const down = crossings(take, middleOf(design)).find(({ up }) => !up)!;
  expect(Math.abs(down.time - A.chargeOhms * A.farads * Math.log(3))).toBeLessThan(1e-6);
});

test('a control voltage moves the sounding pitch as it moves the model’s', () => {
  const design = designWith({ A: { controlVolts: 4.5 }, ...plainWire });
  const { cycle } = instrumentOf(design).voices.A;
  const heard = partOf(renderTake(settingsFrom(design), steady(LIT, DARK), 1.1), 0.1, 1.1);
  expect(Math.abs(centsBetween(cycle.frequency, frequencyOf(heard, middleOf(design))))).toBeLessThan(0.01);
});

test('the first sound comes with the gate, not before', () => {
  const design = designWith(plainWire);
  const take = renderTake(settingsFrom(design), jumps([0, DARK, DARK], [0.2, LIT, DARK]), 0.4);
  const gate = take.gate.find((g) => g.voice === 'A' && g.sounding)!;
  expect(gate.time).toBeGreaterThan(0.2);
  const first = firstSoundAt(take, middleOf(design))!;
  expect(first - gate.time).toBeGreaterThan(-1 / take.sampleRate);
  expect(first - gate.time).toBeLessThan(1 / take.sampleRate);
});

test('both voices sound at once, each at its own frequency', () => {
  const design = designWith({ output: { coupling: null, mixOhms: { A: 10_000, B: 30_000 } } });
  const { A, B } = instrumentOf(design).voices;
  const jack = jackOf(design, 9);
  const v = jack.sources.map((source) => source.volts * loadShare(jack, source)) as [
    number,
    number,
    number,
    number,
  ];
  const heard = partOf(renderTake(settingsFrom(design), steady(LIT, LIT), 1.1), 0.1, 1.1);
  // A moves the jack by more than B does: a level between B's and A's steps is crossed by A alone.
  expect(v[1]).toBeGreaterThan(v[2]);
  const level = (v[1] + v[2]) / 2;
  expect(Math.abs(centsBetween(A.cycle.frequency, frequencyOf(heard, level)))).toBeLessThan(0.05);
  const onlyB = partOf(renderTake(settingsFrom(design), steady(DARK, LIT), 1.1), 0.1, 1.1);
  expect(Math.abs(centsBetween(B.cycle.frequency, frequencyOf(onlyB, (v[0] + v[2]) / 2)))).toBeLessThan(0.01);
});

describe('gated off', () => {
  test('both voices are silent once the coupling capacitor has settled', () => {
    const design = designWith();
    const take = renderTake(settingsFrom(design), jumps([0, LIT, LIT], [0.3, DARK, DARK]), 1.2);
    const ends = take.gate.filter((g) => !g.sounding && g.time > 0);
    expect(ends.map((g) => g.voice).sort()).toEqual(['A', 'B']);
    expect(levelAt(take, 0.05, 0.3)).toBeGreaterThan(0.05);
    expect(isSilent(take, 0.8, 1.2)).toBe(true);
  });

  test('without a coupling capacitor what is left is the low level of the outputs, still', () => {
    const design = designWith(plainWire);
    const jack = jackOf(design, 9);
    const low = jack.sources[0]!.volts * loadShare(jack, jack.sources[0]!);
    const take = renderTake(settingsFrom(design), steady(DARK, DARK), 0.3);
    for (const value of take.samples.subarray(100)) expect(value).toBeCloseTo(low, 9);
  });

  test('one voice silent leaves the other as it was', () => {
    const design = designWith(plainWire);
    const take = renderTake(settingsFrom(design), jumps([0, LIT, LIT], [0.3, DARK, LIT]), 1.3);
    const { B } = instrumentOf(design).voices;
    const jack = jackOf(design, 9);
    const [low, , high] = jack.sources.map((s) => s.volts * loadShare(jack, s)) as [number, number, number];
    const heard = partOf(take, 0.5, 1.3);
    expect(Math.abs(centsBetween(B.cycle.frequency, frequencyOf(heard, (low + high) / 2)))).toBeLessThan(
      0.02,
    );
  });
});
