/** Sun, sky and daylight indoors against an independent ephemeris; the published rows are in `tests/truth/daylight.json`. */
import { Body, Equator, Horizon, Observer } from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import { daylightCurve, skyLuxAt } from '../../src/light/daylight.ts';
import { outdoors, SKIES } from '../../src/light/sky.ts';
import { dayOfYear, sunAt, sunCourse, utcOffsetIn } from '../../src/light/sun.ts';
import { uniformFrom } from '../../src/quantity/random.ts';

const GOLDEN = { latitude: 39.742476, longitude: -105.1786 };
const LONDON = { latitude: 51.5, longitude: -0.1278 };

describe('where the sun stands', () => {
  test('the calendar date meant is the one of the place: 1 and 2 August 2015 at Golden', () => {
    const setOn = (date: string) => {
      const course = sunCourse({ place: GOLDEN, date, utcOffset: -7 });
      return course.kind === 'rises' ? course.set : Number.NaN;
    };
    expect(Math.abs(setOn('2015-08-01') - (19 + 13 / 60 + 58 / 3600)) * 3600).toBeLessThan(5);
    expect(Math.abs(setOn('2015-08-02') - (19 + 12 / 60 + 55 / 3600)) * 3600).toBeLessThan(5);
  });

  test('agrees with an independent ephemeris within 0.02° at 400 drawn places and times (seed 5)', () => {
    const next = uniformFrom(5);
    for (let i = 0; i < 400; i++) {
      const place = { latitude: 130 * next() - 65, longitude: 360 * next() - 180 };
      const month = 1 + Math.floor(12 * next());
      const date = `${2024 + Math.floor(4 * next())}-${String(month).padStart(2, '0')}-15`;
      const hour = 24 * next();
      const when = new Date(Date.parse(`${date}T00:00:00Z`) + hour * 3_600_000);
      const observer = new Observer(place.latitude, place.longitude, 0);
      const { ra, dec } = Equator(Body.Sun, when, observer, true, true);
      const { altitude } = Horizon(when, observer, ra, dec);
      const ours = sunAt({ place, date, utcOffset: 0 }, hour).trueAltitude;
      expect(Math.abs(ours - altitude)).toBeLessThan(0.02);
    }
  });

  test('polar day and polar night are told as such', () => {
    const tromso = { latitude: 69.65, longitude: 18.96 };
    expect(sunCourse({ place: tromso, date: '2026-06-21', utcOffset: 2 }).kind).toBe('polar day');
    expect(sunCourse({ place: tromso, date: '2026-12-21', utcOffset: 1 }).kind).toBe('polar night');
  });

  test('a zone gives its offset of that date, an unknown one gives none', () => {
    expect(utcOffsetIn('Europe/Lisbon', '2026-06-21')).toBe(1);
    expect(utcOffsetIn('Europe/Lisbon', '2026-12-21')).toBe(0);
    expect(utcOffsetIn('Asia/Kolkata', '2026-12-21')).toBe(5.5);
    expect(utcOffsetIn('America/Denver', '2026-12-21')).toBe(-7);
    expect(utcOffsetIn('Atlantis', '2026-12-21')).toBeNull();
    expect(dayOfYear('2024-12-31')).toBe(366);
  });
});

describe('the sky', () => {
  test('grows with the sun without a jump, from night to noon', () => {
    for (const sky of SKIES) {
      let before = outdoors(sky, -20).skyLux;
      for (let h = -19.9; h < 90; h += 0.1) {
        const here = outdoors(sky, h).skyLux;
        expect(here).toBeGreaterThanOrEqual(before);
        expect(here / before).toBeLessThan(1.35);
        before = here;
      }
    }
  });
});

describe('daylight indoors', () => {
  test('a measured sky passes through its reading and keeps the overcast shape', () => {
    const day = { place: LONDON, date: '2026-06-21', utcOffset: 1 };
    const measured = { kind: 'measured', outdoorLux: 9000, hour: 11 } as const;
    const average = { kind: 'modelled', sky: 'overcast' } as const;
    expect(skyLuxAt(day, measured, 11)).toBeCloseTo(9000, 6);
    const [a, b] = [9, 17].map((hour) => skyLuxAt(day, measured, hour) / skyLuxAt(day, average, hour));
    expect(a).toBeCloseTo(b!, 9);
  });

  test('the curve of a day is highest when the sun is', () => {
    const day = { place: LONDON, date: '2026-06-21', utcOffset: 1 };
    const curve = daylightCurve(day, { kind: 'modelled', sky: 'clear' }, 0.02, {
      from: 5,
      to: 21,
      step: 0.25,
    });
    expect(curve.length).toBe(65);
    const top = curve.reduce((best, next) => (next.indoorLux > best.indoorLux ? next : best));
    const course = sunCourse(day);
    expect(Math.abs(top.hour - course.noon)).toBeLessThan(0.25);
    expect(top.indoorLux).toBeCloseTo(top.outdoorLux * 0.02, 6);
  });
});
