/** The light of a room through the hours, how long a setting holds, and recorded days. */
import { describe, expect, test } from 'vitest';
import { turnThreshold } from '../../src/design/commands.ts';
import { DEFAULT_DAYLIGHT, DEFAULT_ROOM, type Room, type RoomReading } from '../../src/design/room.ts';
import { addReading, admitDaylight, setDaylight, setRoom } from '../../src/design/room-commands.ts';
import { dayChart, resetPlan, tripsOf, verdictAt } from '../../src/plan/day.ts';
import { levelsAt, levelsThrough, openHours, roomLight } from '../../src/plan/levels.ts';
import {
  gapsOf,
  logComplaints,
  logVerdict,
  type MeasuredDay,
  minutesOf,
  narrowedBy,
} from '../../src/plan/measured-day.ts';
import { disturbanceIn, roomAnswer, tonight } from '../../src/plan/room-answer.ts';
import { gaussianFrom } from '../../src/quantity/random.ts';
import { roomWords } from '../../src/words/room.ts';
import { designWith, thresholdTurned } from '../circuit/building.ts';
import { CALM } from './rooms.ts';

const reading = (
  hour: number,
  lit: number,
  shaded: number | null,
  dark: number | null = null,
): RoomReading => ({
  hour,
  lux: { A: { lit, shaded, dark }, B: { lit, shaded, dark } },
});

const LONDON = { latitude: 51.5, longitude: -0.1278 };
/** A lamp-lit room with a window, read at eleven on a day of March with the lamps on and off. */
const WINDOWED: Room = [
  addReading(reading(11, 300, 30, 100)),
  admitDaylight({ ...DEFAULT_DAYLIGHT, place: LONDON }),
  setRoom({ opens: 9, closes: 22 }),
].reduce((room, command) => command(room), DEFAULT_ROOM);

const kinds = (room: Room) => roomLight(room).complaints.map(({ kind }) => kind);

describe('the light through the hours', () => {
  test('at the hour of a reading it is that reading, and at night the lamps alone', () => {
    const light = roomLight(WINDOWED);
    expect(levelsAt(light, 11).lit.A.middle).toBeCloseTo(300, 6);
    expect(levelsAt(light, 23).lit.A.middle).toBeCloseTo(200, 2);
    const noon = levelsAt(light, 12.2).lit.A;
    expect(noon.low - 200).toBeCloseTo((noon.middle - 200) / 2, 6);
    expect(noon.high - 200).toBeCloseTo((noon.middle - 200) * 2, 6);
  });

  test('two lit readings at unlike skies tell lamps from daylight by themselves', () => {
    const one = roomLight(WINDOWED);
    const hours = [11, 18.5, 20];
    const room = hours.reduce<Room>(
      (next, hour) => addReading(reading(hour, levelsAt(one, hour).lit.A.middle, null))(next),
      { ...WINDOWED, readings: [] },
    );
    const { sensors } = roomLight(room);
    expect(sensors.A.constantLux).toBeCloseTo(200, 6);
    expect(sensors.A.skyShare).toBeCloseTo(one.sensors.A.skyShare, 9);
  });

  test('without daylight readings are followed straight from one to the next', () => {
    const room = addReading(reading(15, 100, 10))(addReading(reading(11, 300, 30))(DEFAULT_ROOM));
    const light = roomLight(room);
    expect([9, 11, 12, 15, 18].map((hour) => levelsAt(light, hour).lit.A.middle)).toEqual([
      300, 300, 250, 100, 100,
    ]);
    expect(light.sensors.A.shadeShare).toBeCloseTo(0.1, 9);
  });

  test('what is missing or cannot be is named, and the rest is still there', () => {
    expect(kinds(DEFAULT_ROOM)).toEqual(['no readings']);
    const brighter = addReading(reading(11, 100, 130))(DEFAULT_ROOM);
    expect(kinds(brighter)).toEqual(['shade brighter', 'shade brighter']);
    expect(levelsAt(roomLight(brighter), 11).lit.A.middle).toBe(100);
    expect(kinds({ ...WINDOWED, daylight: { ...DEFAULT_DAYLIGHT } })).toEqual(['place unknown']);
    const north = { latitude: 69.65, longitude: 18.96 };
    expect(kinds(setDaylight({ place: north, date: '2026-06-21' })(WINDOWED))).toEqual(['polar day']);
    expect(kinds(setDaylight({ place: north, date: '2026-12-21' })(WINDOWED))).toEqual(['polar night']);
    expect(kinds({ ...WINDOWED, readings: [reading(11, 20, 2)] })).toEqual([
      'daylight above reading',
      'daylight above reading',
    ]);
    const one: Room = {
      ...WINDOWED,
      readings: [
        {
          hour: 11,
          lux: { A: { lit: 300, shaded: 30, dark: 100 }, B: { lit: null, shaded: null, dark: null } },
        },
      ],
    };
    expect(kinds(one)).toEqual(['one sensor read']);
    expect(levelsAt(roomLight(one), 11).lit.B.middle).toBeCloseTo(300, 6);
    for (const complaint of roomLight(brighter).complaints)
      expect(roomWords.complaint(complaint)).toMatch(/130.lx shaded and 100.lx lit/);
  });

  test('hours may run past midnight', () => {
    expect(openHours({ opens: 20, closes: 2 })).toEqual([20, 26]);
    const levels = levelsThrough(roomLight(WINDOWED), { ...WINDOWED, opens: 20, closes: 2 });
    expect(levels.at(-1)!.hour).toBe(26);
  });
});

describe('the hours chart', () => {
  const design = designWith();
  const light = roomLight(WINDOWED);
  const levels = levelsThrough(light, WINDOWED, 1 / 60);

  test('right means the whole band of light, marginal the middle alone', () => {
    const trips = tripsOf(design, CALM);
    for (const level of levels) {
      const { low, middle, high } = level.lit.A;
      const rightAt = (lux: number) => lux > trips.A.upper && 0.1 * lux < trips.A.lower;
      const expected = [low, middle, high].every(rightAt) ? 'right' : rightAt(middle) ? 'marginal' : 'wrong';
      expect(verdictAt(trips, level).state).toBe(expected);
    }
  });

  test('says at which hour it changes, to the second, and why', () => {
    const high = designWith({
      threshold: { trimmers: { A: thresholdTurned(0.14), B: thresholdTurned(0.14) } },
    });
    const chart = dayChart(high, levelsThrough(light, WINDOWED), CALM, light);
    expect(chart.changes.length).toBeGreaterThan(0);
    const trips = tripsOf(high, CALM);
    for (const { hour, from, to } of chart.changes) {
      expect(verdictAt(trips, levelsAt(light, hour - 2 / 3600)).state).toBe(from);
      expect(verdictAt(trips, levelsAt(light, hour + 2 / 3600)).state).toBe(to);
    }
    expect(chart.rightShare + chart.marginalShare + chart.wrongShare).toBeCloseTo(1, 9);
    for (const { reason } of chart.verdicts) if (reason) expect(roomWords.reason(reason)).toMatch(/lx/);
  });

  test('a day that one setting cannot serve is cut into stretches, each of which it serves wholly', () => {
    const sunny = setDaylight({ sky: 'clear', factor: { kind: 'typed', share: 0.03 } })({
      ...WINDOWED,
      readings: [reading(20, 40, 8, 0)],
      opens: 8,
      closes: 21,
    });
    const sunnyLevels = levelsThrough(roomLight(sunny), sunny);
    const plan = resetPlan(design, sunnyLevels, CALM);
    expect(plan.length).toBeGreaterThan(1);
    for (const [i, { from, to, settings }] of plan.entries()) {
      if (i > 0) expect(from).toBe(plan[i - 1]!.to);
      if (settings === null) continue;
      const set = turnThreshold('B', settings.B!.rotation)(turnThreshold('A', settings.A!.rotation)(design));
      const own = sunnyLevels.filter(({ hour }) => hour >= from && hour < to);
      const trips = tripsOf(set, CALM);
      for (const level of own) expect(verdictAt(trips, level).state).toBe('right');
    }
  });

  test('three readings and a date: the volts, the hours, the card', () => {
    const answer = roomAnswer(design, WINDOWED)!;
    expect(answer.windows.map(({ kind }) => kind)).toEqual(['window', 'window']);
    expect(answer.chart.rightShare).toBe(1);
    expect(answer.stretches.length).toBe(1);
    const lines = answer.card.map((step) => roomWords.step(step));
    expect(lines.join('\n')).toMatch(/turn trimmer A until its wiper reads \d\.\d\d.V/);
    expect(answer.disturbance).toEqual(disturbanceIn(design, WINDOWED));
    expect(roomAnswer(design, DEFAULT_ROOM)).toBeNull();
    expect(JSON.stringify(answer)).not.toMatch(/NaN/);
  });

  test('what the meter reads is held against the hours still to come', () => {
    const answer = roomAnswer(design, WINDOWED)!;
    const [window] = answer.windows;
    if (window?.kind !== 'window') throw new Error('There is a window.');
    const right = tonight(answer, 'A', window.recommended.testPointVolts, 15)!;
    expect(right.failsAt).toBeNull();
    expect(right.chart.verdicts[0]!.hour).toBeGreaterThanOrEqual(15);
    const wrong = tonight(answer, 'A', 0.4, 15)!;
    expect(wrong.failsAt).toBe(15);
    expect(wrong.meter.kind).toBe('turn');
    expect(tonight(answer, 'A', 1, 23)).toBeNull();
  });

  test('where no setting will do, what would help is told', () => {
    const flat: Room = { ...WINDOWED, daylight: null, readings: [reading(11, 300, 270)] };
    const { windows, remedies, card } = roomAnswer(design, flat)!;
    expect(windows[0]!.kind).toBe('none');
    expect(remedies.map(({ kind }) => kind)).toContain('local lamp');
    expect(card.some(({ kind }) => kind === 'will not reach')).toBe(true);
    for (const remedy of remedies) expect(roomWords.remedy(remedy).length).toBeGreaterThan(10);
  });
});

/** A day recorded every ten seconds from 8 h on: the sun's arc, unrest (seeded), and a passer-by now and then. */
function recorded(seed: number, scale = 1, rows = 14 * 360): MeasuredDay {
  const next = gaussianFrom(seed);
  const times = Float64Array.from({ length: rows }, (_, i) => 10 * i);
  const base = times.map((t) => scale * (60 + 500 * Math.max(0, Math.sin((Math.PI * t) / 50_400))));
  const one = () => base.map((lux, i) => lux * Math.exp(0.05 * next()) * (i % 211 === 0 ? 0.2 : 1));
  return { startHour: 8, points: { times, lux: { A: one(), B: one() } } };
}

describe('a recorded day', () => {
  const share = { A: 0.1, B: 0.1 };
  const design = designWith();

  test.each([1, 2, 3])('share of right minutes equals a count row by row (seed %d)', (seed) => {
    const day = recorded(seed);
    const verdict = logVerdict(design, day, share, [9, 21], CALM);
    const trips = tripsOf(design, CALM);
    const wrongMinutes = new Set<number>();
    const minutes = new Set<number>();
    for (const [i, time] of day.points.times.entries()) {
      const minute = Math.floor((time - 3600) / 60);
      if (minute < 0 || minute >= 720) continue;
      minutes.add(minute);
      for (const voice of ['A', 'B'] as const) {
        const lux = day.points.lux[voice][i]!;
        if (!(lux > trips[voice].upper && lux * 0.1 < trips[voice].lower)) wrongMinutes.add(minute);
      }
    }
    expect(verdict.knownMinutes).toBe(minutes.size);
    expect(verdict.rightMinutes).toBe(minutes.size - wrongMinutes.size);
    expect(verdict.rightShare).toBe(1 - wrongMinutes.size / minutes.size);
    expect(verdict.rightShare).toBeGreaterThan(0.1);
    expect(verdict.rightShare).toBeLessThan(1);
  });

  test('phantoms are counted: a shadow every 35 minutes stops each voice once', () => {
    const { points } = recorded(1);
    // Steady light but for the shadows, which last until the next row.
    const lux = points.times.map((_t, i) => (i % 210 === 100 ? 20 : 300));
    const day: MeasuredDay = { startHour: 8, points: { times: points.times, lux: { A: lux, B: lux } } };
    const { phantomsPerHour } = logVerdict(design, day, share, [8, 22], CALM);
    const shadows = lux.filter((value) => value === 20).length;
    expect(phantomsPerHour.A * 14).toBeCloseTo(shadows, 0);
  });

  test('gaps, nights, clipped sensors and short recordings are named, and the rest is counted', () => {
    const whole = recorded(4);
    const { times, lux } = whole.points;
    expect(logComplaints(whole, [9, 21])).toEqual([]);
    const kept = Array.from(times.keys()).filter((i) => i < 1000 || i > 1400);
    const pick = (values: Float64Array) => Float64Array.from(kept, (i) => values[i]!);
    const gappy: MeasuredDay = {
      startHour: 8,
      points: { times: pick(times), lux: { A: pick(lux.A), B: pick(lux.B) } },
    };
    expect(gapsOf(gappy)).toEqual([[9990, 14_010]]);
    expect(logComplaints(gappy, [9, 21]).map(({ kind }) => kind)).toEqual(['log gap']);
    const unknown = minutesOf(gappy, share, [9, 21]).filter(({ known }) => !known).length;
    expect(Math.abs(unknown - 67)).toBeLessThanOrEqual(1);
    expect(logVerdict(design, gappy, share, [9, 21], CALM).knownMinutes).toBe(720 - unknown);

    const night: MeasuredDay = {
      startHour: 20,
      points: { times, lux: { A: lux.A.map(() => 2), B: lux.B.map(() => 1) } },
    };
    expect(logComplaints(night, [20, 30]).map(({ kind }) => kind)).toEqual(['log at night only']);
    const clipped: MeasuredDay = {
      startHour: 8,
      points: { times, lux: { A: lux.A.map((value) => Math.min(400, value)), B: lux.B } },
    };
    expect(logComplaints(clipped, [9, 21]).map(({ kind }) => kind)).toEqual(['log clipped']);
    expect(logComplaints(whole, [6, 21]).map(({ kind }) => kind)).toEqual(['log covers part']);
    const empty = {
      startHour: 8,
      points: { times: new Float64Array(0), lux: { A: new Float64Array(0), B: new Float64Array(0) } },
    };
    expect(logComplaints(empty, [9, 21])).toEqual([{ kind: 'log empty' }]);
  });

  test('a recording narrows the band to what it shows, around where it is', () => {
    const light = roomLight(WINDOWED);
    const times = Float64Array.from({ length: 600 }, (_, i) => i * 60);
    const factor = (i: number) => 1.5 * (1 + 0.1 * Math.sin(i / 7));
    const lux = times.map((t, i) => 200 + factor(i) * (levelsAt(light, 8 + t / 3600).lit.A.middle - 200));
    const narrowed = narrowedBy(light, { startHour: 8, points: { times, lux: { A: lux, B: lux } } });
    expect(narrowed.sensors.A.skyShare / light.sensors.A.skyShare).toBeCloseTo(1.5, 1);
    expect(narrowed.band.darker).toBeGreaterThan(0.88);
    expect(narrowed.band.brighter).toBeLessThan(1.12);
  });
});

test('where no shade does, the darkest is told as such, even one that leaves no light', () => {
  const lit = { low: 100, middle: 100, high: 100 };
  const trip = { upper: 50, lower: 0 };
  const levels = { hour: 12, lit: { A: lit, B: lit }, shadeShare: { A: 0, B: 0 }, known: true };
  expect(verdictAt({ A: trip, B: trip }, levels).reason).toEqual({
    kind: 'too bright',
    voice: 'A',
    lux: 100,
    mostLux: 0,
  });
});
