/**
 * Any document there can be, through circuit, sound, plan and kit: numbers everywhere, or a null or a "never" that is
 * told as such; samples within their bound; words for whatever is found, in both languages.
 */
import { expect, test } from 'vitest';
import { cycleOf } from '../../src/circuit/astable.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { warningsOf } from '../../src/circuit/warnings.ts';
import { decode } from '../../src/design/decode.ts';
import type { Design } from '../../src/design/design.ts';
import { connectionText } from '../../src/kit/board/text.ts';
import { connectionsOf } from '../../src/kit/connections.ts';
import { csvRows } from '../../src/kit/csv.ts';
import { faultsOf } from '../../src/kit/faults.ts';
import { learnedLosses, logSummary } from '../../src/kit/kit-log.ts';
import { orderOf } from '../../src/kit/order.ts';
import { orderCsv } from '../../src/kit/order-table.ts';
import { slipOf } from '../../src/kit/slip.ts';
import { assess } from '../../src/plan/assess.ts';
import { calibrate } from '../../src/plan/calibrate.ts';
import { fittedParts } from '../../src/plan/fitted.ts';
import { roomAnswer } from '../../src/plan/room-answer.ts';
import { justOn } from '../../src/plan/threshold.ts';
import { chipOf, trimmerCurve } from '../../src/plan/timing.ts';
import { targetsOf, wishProblems } from '../../src/plan/wish.ts';
import { VOICES } from '../../src/quantity/units.ts';
import { MOST_OVERSHOOT } from '../../src/sound/bandlimit.ts';
import { Engine } from '../../src/sound/engine.ts';
import { roomWords } from '../../src/words/room.ts';
import { warningWords } from '../../src/words/warnings.ts';
import { settingsFrom, steady } from '../sound/playing.ts';
import { seededDocuments } from './any-document.ts';
import { each } from './count.ts';
import { said } from './said.ts';

/** Where a number may be infinite, and what that says there. */
const NEVER: readonly RegExp[] = [
  // A capacitor that never arrives: the frequency beside it is 0, and a warning says so.
  /\.cycle\.(first)?(high|low)Seconds$/i,
  // No voltage tips it: the trip points beside it are null.
  /\.gates\.[AB]\.states\.\d\.tripVolts$/,
  // No light, or any, will do.
  /\.trips\.[AB]\.(upper|lower)$/,
  /\.reason\.neededLux$/,
  // The light may change without end.
  /\.(lit|shade|ripple)Margin$/,
];

/** Every value that is no number, or has no end where it should have one. */
function notFinite(value: unknown, path = ''): readonly string[] {
  if (typeof value === 'number')
    return Number.isFinite(value) || (!Number.isNaN(value) && NEVER.some((may) => may.test(path)))
      ? []
      : [`${path} = ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => notFinite(part, `${path}.${key}`));
}

const isNumbers = (value: unknown): void => expect(notFinite(value)).toEqual([]);

/** Every second one as a person could mean it, the others from end to end of what is allowed. */
function documentOf(seed: number): Design {
  const { anyDocument, anyMeant } = seededDocuments(seed);
  return seed % 2 === 0 ? anyMeant() : anyDocument();
}

test('circuit: every value, and a remedy for every warning', () =>
  each(100_000, 100_000, (seed) => {
    const design = documentOf(seed);
    expect(decode(design)).toEqual({ ok: true, design });
    const instrument = instrumentOf(design);
    isNumbers(instrument);
    for (const voice of VOICES) {
      const { cycle, tripVolts } = instrument.voices[voice];
      expect(cycle.frequency > 0).toBe(Number.isFinite(cycle.highSeconds + cycle.lowSeconds));
      const [silent, sounding] = [0, 3].map((state) => instrument.gates[voice].states[state]!.tripVolts);
      expect(tripVolts.on === null).toBe(!Number.isFinite(silent));
      expect(tripVolts.off === null).toBe(!Number.isFinite(sounding));
    }
    for (const warning of warningsOf(design, instrument)) {
      said(() => warningWords(warning).reason);
      said(() => warningWords(warning).remedy);
    }
  }));

test('sound: bounded samples, also when another design or another light comes in between', () =>
  each(100_000, 100_000, (seed) => {
    const { uniform } = seededDocuments(seed);
    const light = () => steady(10 ** (5 * uniform() - 1), 10 ** (5 * uniform() - 1));
    const [first, second] = [documentOf(seed), documentOf(seed + 1)].map(settingsFrom);
    const engine = new Engine(48_000, first!, light());
    const samples = new Float32Array(400);
    // Edges some samples apart hardly add up; those of voices near half the sampling rate do.
    const isHigh = [first!, second!].some((settings) =>
      VOICES.some((voice) => cycleOf(settings.astables[voice]).frequency > 16_000),
    );
    const overshoot = isHigh ? MOST_OVERSHOOT : 1.25;
    const loudest = first!.jack.boundVolts;
    // A coupling capacitor holds at most what drove it, and what drives it next comes on top.
    const driven = [first!, second!].flatMap(({ jack }) => jack.sources.map(({ volts }) => Math.abs(volts)));
    const changed = Math.max(...driven) * 2;
    for (const [change, bound] of [
      [() => undefined, loudest],
      [() => engine.play(light(), 0), loudest],
      [() => engine.setSettings(second!), changed],
      [() => engine.aim({ A: 1e5 * uniform(), B: 0 }, 0.02), changed],
    ] as const) {
      change();
      engine.render(samples);
      const peak = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      expect(peak).toBeLessThanOrEqual(overshoot * bound + 1e-12);
    }
  }));

test('plan: wishes, curves, cells, trimmers and shortlists', () =>
  each(100_000, 100_000, (seed) => {
    const design = documentOf(seed);
    const { pitch, room } = design;
    const chip = chipOf(design);
    isNumbers([targetsOf(pitch.wish), wishProblems(pitch)]);
    for (const voice of VOICES) {
      isNumbers(trimmerCurve(chip, design.voices[voice].controlVolts, fittedParts(design, voice), 9));
      isNumbers(calibrate(design, room, voice));
    }
    for (const candidate of seed % 20 === 0 ? pitch.shortlist : [])
      isNumbers(assess(chip, candidate, { law: pitch.wish.law, seed: 1, kits: 20 }));
  }));

test('plan: the answer for a room, and every word of it', () =>
  each(2000, 100_000, (seed) => {
    const design = documentOf(seed);
    isNumbers(VOICES.map((voice) => justOn(design, voice, { A: 30, B: 1e4 })));
    const answer = roomAnswer(design, design.room);
    if (answer === null) return;
    isNumbers(answer);
    for (const complaint of answer.complaints) said(() => roomWords.complaint(complaint));
    for (const step of answer.card) said(() => roomWords.step(step));
    for (const { reason } of [...answer.chart.verdicts, ...answer.chartNow.verdicts].slice(0, 20))
      if (reason) said(() => roomWords.reason(reason));
  }));

test('kit: connections, faults and what a log teaches', () =>
  each(100_000, 100_000, (seed) => {
    const design = documentOf(seed);
    const { batch } = design;
    expect(connectionText(connectionsOf(design))).not.toMatch(/undefined|NaN|Infinity/);
    expect(faultsOf(design).length).toBeGreaterThan(10);
    isNumbers([learnedLosses(design, batch), logSummary(batch.log)]);
  }));

test('kit: the order and its table, and the test slip', () =>
  each(2000, 100_000, (seed) => {
    const design = documentOf(seed);
    const order = orderOf(design, design.batch);
    isNumbers(order);
    for (const cell of csvRows(orderCsv(order)).flat()) expect(cell).not.toMatch(/undefined|NaN|Infinity|∞/);
    isNumbers(slipOf(design));
  }));
