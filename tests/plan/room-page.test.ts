/** What the place Room shows of an answer: stretches, re-sets, readings from a recording, the long work in steps. */
import { expect, test } from 'vitest';
import { roomSound } from '../../src/app/room-sound.ts';
import { turnThreshold } from '../../src/design/commands.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/design.ts';
import { DEFAULT_DAYLIGHT, ROOM_EVENTS, type Room } from '../../src/design/room.ts';
import { addPhantom, inRoom, replacePhantom, replaceReadings } from '../../src/design/room-commands.ts';
import { lengthOf } from '../../src/light/program.ts';
import { dayChart, tripsOf, verdictAt } from '../../src/plan/day.ts';
import { work } from '../../src/plan/job.ts';
import { type RoomAnswer, roomAnswer } from '../../src/plan/room-answer.ts';
import {
  chartShown,
  lightShown,
  litSpan,
  momentAt,
  readingsShown,
  thresholdsShown,
  wayShown,
} from '../../src/plan/room-day.ts';
import {
  gatingPhantoms,
  type RoomReport,
  type RoomTask,
  worstChatterOf,
} from '../../src/plan/room-report.ts';
import {
  adviceOf,
  chartWithResets,
  contrastOf,
  edgesOf,
  fitForRoom,
  isSetAs,
  levelsNear,
  nextReadingHour,
  readingsFrom,
  runsOf,
  sensorsAlike,
  setAs,
  stretchDesigns,
} from '../../src/plan/room-shown.ts';
import { isAlikeAllDay } from '../../src/plan/window.ts';
import { roomWords } from '../../src/words/room.ts';

const sensor = (lit: number, shaded: number) => ({ lit, shaded, dark: null });

function designIn(change: Partial<Room>): Design {
  return { ...DEFAULT_DESIGN, room: { ...DEFAULT_DESIGN.room, ...change } };
}

/** A calm room, and one whose afternoon sun no setting of the morning serves. */
const CALM = designIn({ readings: [{ hour: 11, lux: { A: sensor(300, 60), B: sensor(290, 58) } }] });
const SUNNY = designIn({
  readings: [
    { hour: 10, lux: { A: sensor(200, 30), B: sensor(200, 30) } },
    { hour: 13, lux: { A: sensor(210, 31), B: sensor(210, 31) } },
    { hour: 15, lux: { A: sensor(3000, 450), B: sensor(3000, 450) } },
    { hour: 18, lux: { A: sensor(2800, 420), B: sensor(2800, 420) } },
  ],
});
const calm = roomAnswer(CALM, CALM.room)!;
const sunny = roomAnswer(SUNNY, SUNNY.room)!;

test('the stretches of a day follow one another from opening to closing, each in one state', () => {
  for (const answer of [calm, sunny]) {
    const runs = runsOf(answer.chart);
    expect(runs[0]!.from).toBe(answer.levels[0]!.hour);
    expect(runs.at(-1)!.to).toBe(answer.levels.at(-1)!.hour);
    runs.forEach((run, i) => {
      expect(run.to).toBeGreaterThanOrEqual(run.from);
      if (i > 0) {
        expect(run.from).toBe(runs[i - 1]!.to);
        expect(run.state).not.toBe(runs[i - 1]!.state);
      }
      if (run.verdict) expect(run.verdict.state).toBe(run.state);
    });
  }
  expect(runsOf({ verdicts: [], changes: [] })).toEqual([]);
});

test('set again in between, a day is right that no one setting serves', () => {
  expect(calm.stretches).toHaveLength(1);
  expect(sunny.stretches.length).toBeGreaterThan(1);
  expect(sunny.stretches.every(({ settings }) => settings !== null)).toBe(true);
  const chart = chartShown(sunny, 'resets');
  expect(sunny.chart.rightShare).toBeLessThan(0.9);
  expect(chart.rightShare).toBeGreaterThan(0.999);
  // Every hour judged by itself, by the design that stands then.
  const stretches = stretchDesigns(sunny.set, sunny.stretches);
  for (const level of sunny.levels) {
    const own = stretches.findLast(({ from }) => level.hour >= from)!;
    expect(verdictAt(tripsOf(own.design, sunny.disturbance), level).state).toBe('right');
  }
  expect(chartShown(calm, 'resets').rightShare).toBeCloseTo(calm.chart.rightShare, 9);
  expect(chartShown(calm, 'now')).toBe(calm.chartNow);
});

test('unless a way is chosen, a day is shown in the one that serves it', () => {
  expect(wayShown(calm, null)).toBe('recommended');
  expect(wayShown(sunny, null)).toBe('resets');
  expect(wayShown(calm, 'resets')).toBe('recommended');
  expect(wayShown(sunny, 'now')).toBe('now');
});

test('the card of a day with several settings begins with the first of them', () => {
  const turn = sunny.card.find((step) => step.kind === 'turn to volts')!;
  expect(turn.volts).toBeCloseTo(sunny.stretches[0]!.settings!.A!.testPointVolts, 6);
  const again = sunny.card.flatMap((step) => (step.kind === 'set again' ? [step.hour] : []));
  expect(again).toEqual(sunny.stretches.slice(1).map(({ from }) => from));
  expect(sunny.stretches.at(-1)!.from).toBeLessThan(18);
});

test('where every hour is alike none is named; where they differ each is', () => {
  const told = (answer: typeof calm): string =>
    [
      ...answer.card.map((step) => roomWords.step(step)),
      ...answer.windows.flatMap(({ window }) =>
        [window.low, window.high].map(({ reason }) => roomWords.edge(reason)),
      ),
    ].join(' ');
  expect(isAlikeAllDay(calm.extremes)).toBe(true);
  expect(told(calm)).not.toMatch(/\d:\d\d/);
  expect(isAlikeAllDay(sunny.extremes)).toBe(false);
  expect(told(sunny)).toMatch(/At 10:00, lamps/);
  // One trimmer for both is not called A's.
  expect(told(sunny)).toMatch(/set the shared trimmer again/);
});

test('a tube and a lamp gain contrast where the shadow is shallow (closed forms)', () => {
  const pale = designIn({
    readings: [{ hour: 11, lux: { A: sensor(300, 150), B: sensor(300, 150) } }],
    batch: { ...CALM.room.batch, kits: 1 },
  });
  const { gains } = reportOf(taskOf(pale, roomAnswer(pale, pale.room)!)).report;
  // (E + L)/(E·s) = 4 with E = 300 lx and s = 0.5: L = 300 lx, 27 cd at 0.3 m.
  expect(gains.lamp!.lux).toBeCloseTo(300, 6);
  expect(gains.lamp!.candela).toBeCloseTo(27, 6);
  expect(gains.lamp!.contrastThen).toBeCloseTo(4, 9);
  // A tube 5 mm in radius and 30 mm deep sees the share sin²(atan(10/30)) = 0.1 of an even sky (its half angle).
  expect(gains.tube!.litShare).toBeCloseTo(0.1, 6);
  expect(gains.tube!.contrastThen).toBeGreaterThan(gains.tube!.contrastNow);
});

test('a stretch without any setting keeps the one before, and the chart says where it fails', () => {
  const [first] = sunny.stretches;
  const [opens, closes] = [sunny.levels[0]!.hour, sunny.levels.at(-1)!.hour];
  const broken = [
    { ...first!, from: opens, to: 14 },
    { from: 14, to: closes, settings: null },
  ];
  const designs = stretchDesigns(sunny.set, broken);
  expect(designs[1]!.design).toBe(designs[0]!.design);
  const chart = chartWithResets(sunny.set, broken, sunny.levels, sunny.disturbance);
  expect(chart.wrongShare).toBeGreaterThan(0.2);
  const whole = dayChart(designs[0]!.design, sunny.levels, sunny.disturbance);
  expect(chart.rightShare).toBeCloseTo(whole.rightShare, 1);
  expect(chart.rightShare + chart.marginalShare + chart.wrongShare).toBeCloseTo(1, 9);
});

test('what is drawn of a day: light, shade, readings, and the threshold of every stretch', () => {
  const light = lightShown(calm.levels, 'A');
  expect(light[0]!.lit.middle).toBeCloseTo(300, 9);
  expect(light[0]!.shade.middle).toBeCloseTo(60, 9);
  expect(litSpan(light)).toEqual([light[0]!.lit.low, light[0]!.lit.high]);
  expect(readingsShown(CALM, calm, 'B')).toEqual([
    { hour: 11, lux: 290 },
    { hour: 11, lux: 58 },
  ]);
  const [line] = thresholdsShown(CALM, calm, 'recommended', 'A');
  expect(line!.upper).toBeLessThan(300);
  expect(line!.lower).toBeGreaterThan(60);
  expect(thresholdsShown(SUNNY, sunny, 'resets', 'A')).toHaveLength(sunny.stretches.length);
  const moment = momentAt(SUNNY, sunny, 'resets', 'A', 12.04);
  expect(moment.light.hour).toBeCloseTo(12, 9);
  expect(moment.verdict.state).toBe('right');
  expect(levelsNear(calm.levels, 99).hour).toBe(18);
});

test('sensors are alike within what a meter tells apart', () => {
  expect(sensorsAlike(sunny.levels)).toBe(true);
  expect(sensorsAlike(calm.levels)).toBe(false);
  expect(contrastOf(calm.extremes)).toBeCloseTo(5, 9);
});

test('the recommended setting is taken in one step; the volts of the edges stand around it', () => {
  const taken = setAs(calm.set)(CALM);
  expect(isSetAs(taken, calm.set)).toBe(true);
  expect(isSetAs(turnThreshold('A', 0.95)(CALM), calm.set)).toBe(false);
  expect(setAs(calm.set)(taken)).toBe(taken);
  const [low, high] = edgesOf(CALM, calm.windows[0]!);
  const { testPointVolts } = adviceOf(calm.windows[0]!);
  expect(low.volts).toBeLessThan(testPointVolts);
  expect(high.volts).toBeGreaterThan(testPointVolts);
});

test('readings from a recording are the middle minute of each open hour; hours without rows have none', () => {
  const times = Float64Array.from({ length: 3 * 60 }, (_, i) => i * 60);
  const rise = times.map((t) => 100 + t / 60);
  const day = { startHour: 9.5, points: { times, lux: { A: rise, B: rise.map((lux) => lux / 2) } } };
  const readings = readingsFrom(day, CALM.room);
  expect(readings.map(({ hour }) => hour)).toEqual([10.5, 11.5, 12.5]);
  // 10:30 is 60 minutes into a recording that rises by 1 lx a minute.
  expect(readings[0]!.lux.A.lit).toBeCloseTo(160, -0.5);
  expect(readings[0]!.lux.B.lit).toBeCloseTo(80, -0.5);
  const taken = inRoom(replaceReadings(readings))(CALM);
  expect(taken.room.readings).toEqual(readings);
  expect(roomAnswer(taken, taken.room)).not.toBeNull();
});

test('the next reading is asked for on opening, then every two hours until closing', () => {
  expect(nextReadingHour(designIn({ readings: [] }).room)).toBe(10);
  expect(nextReadingHour(CALM.room)).toBe(13);
  expect(nextReadingHour(SUNNY.room)).toBe(18);
});

test('a phantom becomes another kind without keeping the values of the old one', () => {
  const one = inRoom(addPhantom(ROOM_EVENTS.card))(designIn({ phantoms: [] }));
  const other = inRoom(replacePhantom(0, ROOM_EVENTS.lid))(one);
  expect(other.room.phantoms).toEqual([ROOM_EVENTS.lid]);
  expect(inRoom(replacePhantom(5, ROOM_EVENTS.lid))(one)).toBe(one);
});

const taskOf = (design: Design, { set, levels, extremes, disturbance }: RoomAnswer): RoomTask => ({
  design,
  set,
  levels,
  extremes,
  disturbance,
  day: null,
  settingUp: 10,
});

function reportOf(task: RoomTask): { readonly report: RoomReport; readonly stages: readonly string[] } {
  const steps = work({ kind: 'room', task });
  const stages: string[] = [];
  let share = 0;
  for (;;) {
    const step = steps.next();
    if (step.done) return { report: step.value, stages };
    if (stages.at(-1) !== step.value.stage) {
      stages.push(step.value.stage);
      share = 0;
    }
    expect(step.value.share).toBeGreaterThanOrEqual(share);
    expect(step.value.share).toBeLessThanOrEqual(1);
    share = step.value.share;
  }
}

test('the long work tells how far it is and ends with parts, event, phantoms and batch (seed 1)', () => {
  const design = designIn({
    ...CALM.room,
    phantoms: [ROOM_EVENTS.person, { ...ROOM_EVENTS.person, left: 0.05 }],
    batch: { ...CALM.room.batch, kits: 300 },
  });
  const { report, stages } = reportOf(taskOf(design, calm));
  expect(stages).toEqual(['parts', 'kits']);
  expect(report.batch.unsorted.kits).toBe(300);
  expect(report.batch.sorted.kits).toBe(300);
  expect(report.batch.unsorted.settableShare).toBeGreaterThanOrEqual(report.batch.unsorted.rightAtMarkShare);
  // A pale shadow leaves the voices alone; one as deep as the event's own does not.
  expect(report.phantoms.map(({ A }) => A.kind)).toEqual(['too shallow', 'gates']);
  expect(gatingPhantoms(report.phantoms)).toBe(1);
  expect(worstChatterOf(report.hysteresis)).toBeLessThan(1 / 60);
  expect(report.event.works).toEqual({ A: true, B: true });
  expect(report.log).toBeNull();
  const fitted = fitForRoom('A', report.hysteresis.A, report.dividers.A)(design);
  expect(fitted.voices.A.divider.fixedOhms).toBe(
    report.dividers.A.keep ? design.voices.A.divider.fixedOhms : report.dividers.A.best.ohms,
  );
});

test('with a recording the long work counts it', () => {
  const times = Float64Array.from({ length: 8 * 60 + 1 }, (_, i) => i * 60);
  const lux = times.map(() => 300);
  const day = { startHour: 10, points: { times, lux: { A: lux, B: lux } } };
  const design = designIn({ ...CALM.room, batch: { ...CALM.room.batch, kits: 1 } });
  const { report, stages } = reportOf({ ...taskOf(design, calm), day });
  expect(stages).toEqual(['parts', 'kits', 'log']);
  expect(report.log!.rightMinutes).toBe(480);
  expect(report.log!.phantomsPerHour).toEqual({ A: 0, B: 0 });
});

test('what is heard lasts as long as its light, and set again it changes hands where the day does', () => {
  const withLamp = designIn({ ...CALM.room, lamps: [{ lamp: 'fluorescent-magnetic', share: 1 }] });
  const lit = roomAnswer(withLamp, withLamp.room)!;
  for (const piece of ['day', 'margin', 'chatter'] as const) {
    const { program, steps } = roomSound(piece, lit, withLamp, 'recommended');
    expect(program.kind).toBe('ripple');
    const points = program.kind === 'ripple' ? program.of : program;
    if (points.kind !== 'points') throw new Error(points.kind);
    const long = steps.reduce((sum, { seconds }) => sum + seconds, 0);
    expect(long).toBeCloseTo(lengthOf(points.times), 1);
  }
  const { steps } = roomSound('day', sunny, SUNNY, 'resets');
  expect(steps).toHaveLength(sunny.stretches.length);
  expect(steps.reduce((sum, { seconds }) => sum + seconds, 0)).toBeCloseTo(60, 6);
  expect(steps[0]!.seconds).toBeCloseTo((60 * (sunny.stretches[1]!.from - 10)) / 8, 6);
  expect(roomSound('day', calm, CALM, 'now').steps[0]!.design).toBe(CALM);
});

test('with daylight and a place the day has a band', () => {
  const design = designIn({
    ...CALM.room,
    daylight: { ...DEFAULT_DAYLIGHT, place: { latitude: 52, longitude: 5 } },
  });
  const light = lightShown(roomAnswer(design, design.room)!.levels, 'A');
  expect(light[12]!.lit.high).toBeGreaterThan(light[12]!.lit.low * 1.1);
});
