/** Sun, sky and daylight indoors against published values and an independent ephemeris. */
import { Body, Equator, Horizon, Observer } from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import { averageDaylightFactor, daylightCurve, skyLuxAt } from '../../src/light/daylight.ts';
import { extraterrestrialLux, genskyBeamLux, outdoors, SKIES } from '../../src/light/sky.ts';
import { dayOfYear, refraction, sunAt, sunCourse, utcOffsetIn } from '../../src/light/sun.ts';
import { uniformFrom } from '../../src/quantity/random.ts';

const GOLDEN = { latitude: 39.742476, longitude: -105.1786 };
const DENVER = { latitude: 39.74, longitude: -104.99 };
const LONDON = { latitude: 51.5, longitude: -0.1278 };
const SYDNEY = { latitude: -33.8688, longitude: 151.2093 };

describe('where the sun stands', () => {
  test('NREL’s example: zenith 50.11162°, azimuth 194.34024° (ls:D1; Reda and Andreas, TP-560-34302)', () => {
    const sun = sunAt({ place: GOLDEN, date: '2003-10-17', utcOffset: -7 }, 12 + 30 / 60 + 30 / 3600);
    expect(Math.abs(sun.trueAltitude - 39.872046)).toBeLessThan(0.02);
    expect(Math.abs(sun.altitude - 39.888378)).toBeLessThan(0.02);
    expect(Math.abs(sun.azimuth - 194.34024)).toBeLessThan(0.02);
  });

  test('and a day later (ls:D2; pvlib’s test set)', () => {
    const sun = sunAt({ place: GOLDEN, date: '2003-10-18', utcOffset: 0 }, 19 + 30 / 60 + 30 / 3600);
    expect(Math.abs(sun.trueAltitude - 39.505196)).toBeLessThan(0.02);
    expect(Math.abs(sun.azimuth - 194.311132)).toBeLessThan(0.02);
  });

  test.each([
    ['ls:D3', DENVER, '2000-01-01', 19, 27.28, 179.12, 0.02],
    ['ls:D4', DENVER, '2000-01-01', 22, 15.02, 221.57, 0.02],
    ['ls:D6', LONDON, '2026-06-21', 12, 61.942, 178.866, 0.02],
    ['ls:D7', LONDON, '2026-12-21', 12, 15.121, 180.338, 0.02],
    ['ls:D8', LONDON, '2026-03-20', 9, 25.076, 126.178, 0.02],
    ['ls:D10', SYDNEY, '2026-12-21', 2, 79.458, 351.22, 0.1],
  ] as const)(
    '%s: NOAA’s calculator and a reference ephemeris',
    (_id, place, date, hour, altitude, azimuth, allowed) => {
      const sun = sunAt({ place, date, utcOffset: 0 }, hour);
      expect(Math.abs(sun.altitude - altitude)).toBeLessThan(0.02);
      expect(Math.abs(sun.azimuth - azimuth)).toBeLessThan(allowed);
    },
  );

  test('refraction at true 45, 10, 0 and −3° (ls:D11; NOAA)', () => {
    for (const [h, lift] of [
      [45, 0.01612],
      [10, 0.08812],
      [0, 0.48194],
      [-3, 0.1101],
    ] as const)
      expect(Math.abs(refraction(h) - lift)).toBeLessThan(1e-4);
  });

  test('rises, stands highest and sets when SPA says, within 5 s (ls:D12)', () => {
    const course = sunCourse({ place: GOLDEN, date: '2015-01-02', utcOffset: -7 });
    if (course.kind !== 'rises') throw new Error(course.kind);
    const clock = (h: number, m: number, s: number) => h + m / 60 + s / 3600;
    expect(Math.abs(course.rise - clock(7, 21, 55)) * 3600).toBeLessThan(5);
    expect(Math.abs(course.noon - clock(12, 4, 45)) * 3600).toBeLessThan(5);
    expect(Math.abs(course.set - clock(16, 47, 43)) * 3600).toBeLessThan(5);
  });

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
  test.each([
    ['ls:D14', 10, 7.259, 8.114, 3.947, 38.05, 13.87],
    ['ls:D15', 20, 9.865, 15.691, 7.482, 69.0, 33.46],
    ['ls:D16', 30, 11.76, 22.8, 10.8, 83.77, 53.65],
    ['ls:D18', 60, 15.224, 39.271, 18.487, 100.05, 101.87],
  ])('%s: at %d° as the IES lines have it', (_id, altitude, clear, partly, overcast, beam, total) => {
    const within = (value: number, klx: number) =>
      expect(Math.abs(value / 1000 / klx - 1)).toBeLessThan(0.001);
    within(outdoors('clear', altitude).skyLux, clear);
    within(outdoors('partly', altitude).skyLux, partly);
    within(outdoors('overcast', altitude).skyLux, overcast);
    within(outdoors('clear', altitude).beamLux, beam);
    within(outdoors('clear', altitude).totalLux, total);
    expect(outdoors('overcast', altitude).beamLux).toBe(0);
  });

  test('the sun outside the air, its clear beam, gensky’s and the partly cloudy one (ls:D19, D20, D21)', () => {
    expect(Math.abs(extraterrestrialLux(172) / 123_270 - 1)).toBeLessThan(0.001);
    expect(Math.abs(outdoors('clear', 60, 172).beamLux / 96_720 - 1)).toBeLessThan(0.001);
    expect(Math.abs(genskyBeamLux(30) / 76_770 - 1)).toBeLessThan(0.001);
    expect(Math.abs(genskyBeamLux(60) / 87_950 - 1)).toBeLessThan(0.001);
    expect(Math.abs(outdoors('partly', 30).beamLux / 25_740 - 1)).toBeLessThan(0.001);
  });

  test('twilight: 56.4 lx at −3° and 0.148 lx at −9° (ls:L12; AMS Glossary of Meteorology)', () => {
    expect(Math.abs(outdoors('clear', -3).skyLux / 56.4 - 1)).toBeLessThan(0.01);
    expect(Math.abs(outdoors('clear', -9).skyLux / 0.148 - 1)).toBeLessThan(0.01);
  });

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
  test('the average daylight factor of the worked room: 1.939 %, 194 lx of 10 klx (ls:D22; BS 8206-2)', () => {
    const factor = averageDaylightFactor({
      transmittance: 0.68,
      maintenance: 0.9,
      glassArea: 6,
      skyAngle: 80,
      length: 8,
      width: 7,
      height: 3,
      reflectance: 0.5,
    });
    expect(Math.abs(factor / 0.01939 - 1)).toBeLessThan(0.001);
    expect(Math.abs((factor * 10_000) / 194 - 1)).toBeLessThan(0.001);
  });

  test('2 % of an overcast sky with the sun at 30° is 216 lx (ls:D24)', () => {
    expect(Math.abs((outdoors('overcast', 30).skyLux * 0.02) / 216 - 1)).toBeLessThan(0.001);
  });

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
