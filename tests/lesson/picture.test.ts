import { describe, expect, test } from 'vitest';
import { cycleOf } from '../../src/circuit/astable.ts';
import { cellOhms } from '../../src/circuit/cell.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { cycleSaid, saidOf } from '../../src/lesson/described.ts';
import { STAGES, type StageId, type StageMode } from '../../src/lesson/lesson.ts';
import { LESSON_DESIGN } from '../../src/lesson/lessons.ts';
import {
  cycleAt,
  cyclePoints,
  firstCyclePoints,
  livePicture,
  shownVoices,
  slowedCycleAt,
  slowFactor,
  steadyPicture,
  steppedThrough,
  visibleStages,
  withFrozen,
} from '../../src/lesson/picture.ts';
import { Gating } from '../../src/sound/gating.ts';
import { settingsOf } from '../../src/sound/settings.ts';
import { filled, LANGUAGES, placesIn } from '../../src/words/amounts.ts';
import { CLASS_WORDS } from '../../src/words/class-words.ts';
import { designWith } from '../circuit/building.ts';

const design = LESSON_DESIGN;
const instrument = instrumentOf(design);
const astable = instrument.astables.A;
const BOTH = { A: true, B: true };
const NONE = { A: false, B: false };

test('in a steady light the ohms read back from the node are the cell’s own', () => {
  for (const lux of [3, 30, 98, 300, 2000]) {
    const picture = steadyPicture(design, instrument, { A: lux, B: lux }, BOTH);
    const ohms = cellOhms(design.voices.A.cell, lux);
    expect(picture.A.ohms / ohms).toBeCloseTo(1, 9);
    // The node is the cell's share of the supply (job:E, test point 2).
    expect(picture.A.volts.node).toBeCloseTo((9 * ohms) / (ohms + 12_000), 9);
    expect(picture.A.gate.sounding).toBe(picture.A.compare.nodeIs === 'below');
  }
});

test('in the dark the cell shows its dark resistance, not infinity', () => {
  const picture = steadyPicture(design, instrument, { A: 0, B: 0 }, NONE);
  expect(picture.A.ohms / 1e6).toBeCloseTo(1, 9);
});

test('between the trip points the picture weighs against the one that counts now', () => {
  const lux = { A: 90, B: 90 };
  const sounding = steadyPicture(design, instrument, lux, BOTH).A;
  const silent = steadyPicture(design, instrument, lux, NONE).A;
  expect([sounding.gate.sounding, silent.gate.sounding]).toEqual([true, false]);
  expect(sounding.compare.tripVolts).toBeCloseTo(sounding.compare.stopVolts!, 9);
  expect(silent.compare.tripVolts).toBeCloseTo(silent.compare.startVolts!, 9);
});

test('while the light falls the ohms of the running picture lag behind the light, and then catch up', () => {
  const quiet = designWith({ noise: { voltsRms: 0, seed: 1 } });
  const built = instrumentOf(quiet);
  const gating = new Gating(settingsOf(quiet, built), { kind: 'steady', lux: { A: 300, B: 300 } });
  gating.aim({ A: 30, B: 30 }, 0.001);
  const ohms = () =>
    livePicture(quiet, built, {
      lux: { A: gating.lux('A'), B: gating.lux('B') },
      node: { A: gating.node('A'), B: gating.node('B') },
      sounding: { A: gating.released('A'), B: gating.released('B') },
    }).A.ohms;
  while (gating.time < 0.01) gating.advance(() => undefined);
  const settled = cellOhms(quiet.voices.A.cell, 30);
  expect(ohms()).toBeLessThan(0.9 * settled);
  expect(ohms()).toBeGreaterThan(1.1 * cellOhms(quiet.voices.A.cell, 300));
  while (gating.time < 1) gating.advance(() => undefined);
  expect(ohms() / settled).toBeCloseTo(1, 6);
});

describe('one cycle with its capacitor', () => {
  test('goes from a third to two thirds and back, in the time of a period (TI SLFS022)', () => {
    const points = cyclePoints(astable);
    const { highSeconds, lowSeconds } = cycleOf(astable);
    const top = points.findLast(({ high }) => high)!;
    expect(points[0]).toEqual({ time: 0, volts: 3, high: true });
    expect(top.volts).toBe(6);
    expect(top.time).toBeCloseTo(highSeconds, 12);
    expect(points.at(-1)!.volts).toBe(3);
    expect(points.at(-1)!.time).toBeCloseTo(highSeconds + lowSeconds, 12);
    for (const [i, { time, volts, high }] of points.entries()) {
      if (high) expect(volts).toBeCloseTo(9 - 6 * Math.exp(-time / (astable.chargeOhms * astable.farads)), 9);
      if (i > 0) expect(time).toBeGreaterThanOrEqual(points[i - 1]!.time);
    }
  });
  test('the first one starts where reset leaves the capacitor, and lasts longer', () => {
    const [first] = firstCyclePoints(astable, 2);
    expect(first!.volts).toBeLessThan(0.1);
    expect(firstCyclePoints(astable, 1).at(-1)!.time).toBeGreaterThan(cyclePoints(astable).at(-1)!.time);
  });
  test('repeats: a moment and the same moment some periods on are alike', () => {
    const { frequency } = cycleOf(astable);
    const at = 0.3 / frequency;
    expect(cycleAt(astable, at + 5 / frequency)!.volts).toBeCloseTo(cycleAt(astable, at)!.volts, 9);
    expect(cycleAt(astable, -0.7 / frequency)!.volts).toBeCloseTo(cycleAt(astable, at)!.volts, 9);
  });
  test('a voice that never swings has none', () => {
    const stuck = { ...astable, chargeVolts: 5 };
    expect(cyclePoints(stuck)).toEqual([]);
    expect(cycleAt(stuck, 0.1)).toBeNull();
  });
});

test('slowed a thousand times, or more: no voice from 1 Hz to 100 kHz flashes above three a second (WCAG 2.2, 2.3.1)', () => {
  for (let hertz = 1; hertz <= 100_000; hertz *= 1.3) {
    const factor = slowFactor(hertz);
    expect(factor).toBeGreaterThanOrEqual(1000);
    expect(hertz / factor).toBeLessThanOrEqual(1.5);
  }
  expect(slowFactor(220)).toBe(1000);
  // The slowed picture itself, watched for ten seconds at sixty frames a second: a rise and a fall are one flash.
  let rises = 0;
  let before = slowedCycleAt(astable, 0)!.high;
  for (let frame = 1; frame <= 600; frame++) {
    const { high } = slowedCycleAt(astable, frame / 60)!;
    if (high && !before) rises++;
    before = high;
  }
  expect(rises).toBe(Math.floor((10 * cycleOf(astable).frequency) / 1000));
});

test('stepping lets a change through part by part, from the left', () => {
  const lit = steadyPicture(design, instrument, { A: 300, B: 300 }, BOTH).A;
  const shaded = steadyPicture(design, instrument, { A: 30, B: 30 }, BOTH).A;
  for (let reached = 0; reached <= STAGES.length; reached++) {
    const picture = steppedThrough(lit, shaded, reached);
    for (const [i, stage] of STAGES.entries())
      expect(picture[stage]).toBe((i < reached ? shaded : lit)[stage]);
  }
});

test('a part that is frozen keeps what it showed while the others go on', () => {
  const lit = steadyPicture(design, instrument, { A: 300, B: 300 }, BOTH).A;
  const shaded = steadyPicture(design, instrument, { A: 30, B: 30 }, BOTH).A;
  const modes = Object.fromEntries(STAGES.map((stage) => [stage, 'shown'])) as Record<StageId, StageMode>;
  expect(withFrozen(shaded, lit, { ...modes, volts: 'frozen' })).toEqual({ ...shaded, volts: lit.volts });
  expect(withFrozen(shaded, lit, modes)).toEqual(shaded);
  expect(withFrozen(shaded, null, { ...modes, gate: 'frozen' })).toBe(shaded);
});

test('hidden parts are not seen, nor said', () => {
  const shown = Object.fromEntries(STAGES.map((stage) => [stage, stage === 'ohms' ? 'hidden' : 'shown']));
  expect(visibleStages(shown as never)).toEqual(['lux', 'volts', 'compare', 'gate', 'tone']);
  expect([shownVoices('A'), shownVoices('both')]).toEqual([['A'], ['A', 'B']]);
});

test.each(LANGUAGES)('each part of the picture is said in a whole sentence (%s)', (language) => {
  const { says } = CLASS_WORDS[language];
  const dead = instrumentOf(designWith({ voices: { A: { controlVolts: 17 } } } as never));
  const pictures = [
    steadyPicture(design, instrument, { A: 300, B: 300 }, BOTH).A,
    steadyPicture(design, instrument, { A: 3, B: 3 }, BOTH).A,
    {
      ...steadyPicture(design, instrument, { A: 3, B: 3 }, BOTH).A,
      tone: { ...steadyPicture(design, dead, { A: 3, B: 3 }, NONE).A.tone, note: null },
    },
  ];
  const said = pictures.flatMap((picture) => [
    ...STAGES.map((stage) => saidOf(stage, picture)),
    saidOf('gate', picture, true),
  ]);
  const cycles = [0, cycleOf(astable).highSeconds * 1.5].map((time) => cycleSaid(cycleAt(astable, time)!));
  for (const { says: id, amounts } of [...said, ...cycles]) {
    expect(
      placesIn(says[id]).every((name) => name in amounts),
      id,
    ).toBe(true);
    expect(filled(language, says[id], amounts)).not.toMatch(/[{}]|NaN|undefined/);
  }
  expect(new Set(said.map(({ says: id }) => id)).size).toBeGreaterThanOrEqual(10);
});
