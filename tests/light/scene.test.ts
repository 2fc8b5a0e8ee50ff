/** Scenes: published times of slots and lanterns, geometry, continuity, breaks, and that they repeat. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { HAND_RADIUS, skyLeft } from '../../src/light/hand.ts';
import {
  SCENE_LIMITS,
  SCENES,
  type Scene,
  type SceneKind,
  type SceneOf,
  sceneBreak,
  sceneLux,
} from '../../src/light/scene.ts';
import { cardTimes } from '../../src/light/scene-card.ts';
import { lanternTimes, MOST_FLASHES_PER_SECOND } from '../../src/light/scene-lantern.ts';
import { VOICES, type VoiceId } from '../../src/quantity/units.ts';

const kinds = Object.keys(SCENES) as SceneKind[];
const MOVING = 'from the geometry of slots and drums';

const anyScene = (kind: SceneKind): fc.Arbitrary<Scene> =>
  fc
    .record(
      Object.fromEntries(
        Object.entries(SCENE_LIMITS[kind]).map(([name, { min, max }]) => [
          name,
          /^(slots|seed)$/.test(name)
            ? fc.integer({ min, max })
            : fc.double({ min, max: Math.min(max, name === 'everySeconds' ? 20 : max), noNaN: true }),
        ]),
      ),
    )
    .map((numbers) => ({ ...SCENES[kind], ...numbers }) as Scene);

/** The brightest that a scene's figures allow, for allowances. */
function brightest(scene: Scene): number {
  return scene.kind === 'hand-wave'
    ? 1 + scene.lampLux + scene.roomLux
    : 1 + Math.max(scene.litLux, scene.shadeLux);
}

/** Stretches of time, from 0 to `end`, over which the light at a sensor is above a level. */
function above(scene: Scene, voice: VoiceId, level: number, end: number): [number, number][] {
  const stretches: [number, number][] = [];
  const over = (t: number) => sceneLux(scene, voice, t) > level;
  let t = 0;
  let since = over(0) ? 0 : null;
  while (t < end) {
    // Straight between breaks, save under a hand: halves find the crossing.
    const next = Math.min(end, sceneBreak(scene, t));
    if (over(next) !== (since !== null)) {
      let [low, high] = [t, next];
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2;
        if (over(middle) === (since !== null)) low = middle;
        else high = middle;
      }
      if (since === null) since = high;
      else {
        stretches.push([since, high]);
        since = null;
      }
    }
    t = next;
  }
  if (since !== null) stretches.push([since, end]);
  return stretches;
}

describe.each(kinds)('the scene “%s”', (kind) => {
  test('is within its own limits as it comes', () => {
    for (const [name, { min, max }] of Object.entries(SCENE_LIMITS[kind])) {
      const value = (SCENES[kind] as unknown as Record<string, number>)[name];
      expect(value, name).toBeGreaterThanOrEqual(min);
      expect(value, name).toBeLessThanOrEqual(max);
    }
  });

  test('changes the light at both sensors, clearly', () => {
    for (const voice of VOICES) {
      const levels = Array.from({ length: 6000 }, (_, i) => sceneLux(SCENES[kind], voice, i / 300));
      expect(Math.max(...levels) / Math.min(...levels)).toBeGreaterThan(4);
    }
  });

  test('has breaks that always come later, and bends nowhere between them', () => {
    fc.assert(
      fc.property(anyScene(kind), fc.double({ min: -1, max: 1000, noNaN: true }), (scene, start) => {
        let t = start;
        for (let i = 0; i < 40; i++) {
          const next = sceneBreak(scene, t);
          expect(next).toBeGreaterThan(t);
          if (next === Number.POSITIVE_INFINITY) return;
          for (const voice of VOICES) {
            const [a, b, c] = [0.25, 0.5, 0.75].map((share) =>
              sceneLux(scene, voice, t + share * (next - t)),
            );
            expect(a! >= 0 && b! >= 0 && c! >= 0).toBe(true);
            const size = brightest(scene);
            // The hand's shadow is curved; the others are straight from break to break, up to rounding of times.
            const rounding = (1e-15 * (1 + Math.abs(next))) / (next - t);
            if (kind !== 'hand-wave')
              expect(Math.abs(a! - 2 * b! + c!) / size).toBeLessThan(1e-9 + 40 * rounding);
          }
          t = next;
        }
      }),
      { seed: 11, numRuns: 150 },
    );
  });

  test('is continuous at its breaks', () => {
    fc.assert(
      fc.property(anyScene(kind), fc.double({ min: 0, max: 100, noNaN: true }), (scene, start) => {
        let t = start;
        for (let i = 0; i < 40; i++) {
          t = sceneBreak(scene, t);
          for (const voice of VOICES) {
            const [before, at, after] = [-1e-9, 0, 1e-9].map((d) => sceneLux(scene, voice, t + d));
            // A whole change takes well over a tenth of a millisecond in every scene.
            const most = 1e-5 * brightest(scene);
            expect(Math.abs(at! - before!)).toBeLessThan(most);
            expect(Math.abs(after! - at!)).toBeLessThan(most);
          }
        }
      }),
      { seed: 12, numRuns: 100 },
    );
  });

  test('repeats from its seed, differs with another, and is entered anywhere', () => {
    const scene = { ...SCENES[kind], irregular: 0.8 };
    const times = Array.from({ length: 400 }, (_, i) => i * 0.13);
    const read = (seed: number, order: readonly number[]) =>
      order.map((t) => VOICES.map((voice) => sceneLux({ ...scene, seed }, voice, t)));
    expect(read(5, times.toReversed()).toReversed()).toEqual(read(5, times));
    expect(read(6, times)).not.toEqual(read(5, times));
  });

  test('waits before its beginning', () => {
    for (const voice of VOICES) {
      expect(Number.isFinite(sceneLux(SCENES[kind], voice, -3))).toBe(true);
      if (kind !== 'lantern')
        expect(sceneLux(SCENES[kind], voice, -3)).toBeCloseTo(sceneLux(SCENES[kind], voice, -9), 9);
    }
  });
});

describe('a slotted card', () => {
  /** One slot, regular, gaps wider than the aperture; millimetres and mm/s. */
  const card = (slot: number, aperture: number, speed: number): SceneOf<'slotted-card'> => ({
    ...SCENES['slotted-card'],
    slots: 1,
    slotMetres: slot / 1000,
    gapMetres: 0.03,
    apertureMetres: aperture / 1000,
    metresPerSecond: speed / 1000,
    litLux: 100,
    shadeLux: 0,
    irregular: 0,
  });
  /** The stretch above a level that the slot gives: neither before the card nor after it. */
  const slotOf = (scene: Scene, level: number) => {
    const [, middle] = above(scene, 'A', level, 8.9);
    return middle![1] - middle![0];
  };

  test(`ls:T1: 10 mm at 50 mm/s is open for 200 ms; a slot each 0.5 s is one each 25 mm (${MOVING})`, () => {
    expect(slotOf(card(10, 2, 50), 50)).toBeCloseTo(0.2, 9);
    expect(cardTimes(card(10, 2, 50)).halfLight).toBeCloseTo(0.2, 12);
    expect(cardTimes({ ...card(10, 2, 50), gapMetres: 0.015 }).pitch).toBeCloseTo(0.5, 12);
  });

  test(`ls:T2: 8 mm, aperture 5 mm, 40 mm/s: full 75 ms, edges 125 ms, any light 325 ms, half 200 ms (${MOVING})`, () => {
    const scene = card(8, 5, 40);
    const [full, half, any] = [slotOf(scene, 99.99999999), slotOf(scene, 50), slotOf(scene, 1e-8)];
    expect(full).toBeCloseTo(0.075, 7);
    expect(half).toBeCloseTo(0.2, 9);
    expect(any).toBeCloseTo(0.325, 7);
    expect((any - full) / 2).toBeCloseTo(0.125, 7);
    const times = cardTimes(scene);
    expect([times.full, times.ramp, times.anyLight, times.halfLight]).toEqual(
      [0.075, 0.125, 0.325, 0.2].map((time) => expect.closeTo(time, 12)),
    );
  });

  test(`ls:T3: 3 mm before an aperture of 5 mm opens 60 % of it at most (${MOVING})`, () => {
    const scene = card(3, 5, 40);
    const [before, after] = above(scene, 'A', 99, 8.9);
    let peak = 0;
    for (let t = before![1] + 0.3; t < after![0] - 0.3; t += 1e-4)
      peak = Math.max(peak, sceneLux(scene, 'A', t));
    expect(peak).toBeCloseTo(60, 6);
    expect(cardTimes(scene).peak).toBeCloseTo(0.6, 12);
  });

  test('has as many slots at each sensor as were cut, B later by the way between the sensors', () => {
    const scene = { ...SCENES['slotted-card'], slots: 7, irregular: 0, everySeconds: 30 };
    const [a, b] = VOICES.map((voice) => above(scene, voice, 150, 30));
    expect(a!.length).toBe(7 + 2);
    expect(b!.length).toBe(7 + 2);
    for (let i = 1; i <= 7; i++)
      expect(b![i]![0] - a![i]![0]).toBeCloseTo(scene.spacingMetres / scene.metresPerSecond, 9);
  });

  test('is pulled at another pace each time by an uneven hand', () => {
    const scene = { ...SCENES['slotted-card'], slots: 1, irregular: 1, everySeconds: 20 };
    const slots = above(scene, 'A', 150, 200).filter(([from, to]) => to - from < 1);
    expect(slots.length).toBe(10);
    expect(new Set(slots.map(([from, to]) => (to - from).toFixed(4))).size).toBe(10);
  });
});

describe('a lantern', () => {
  const lantern = (change: Partial<SceneOf<'lantern'>>): SceneOf<'lantern'> => ({
    ...SCENES.lantern,
    irregular: 0,
    ...change,
  });

  test(`ls:T6: drum of 60 mm at 20 rpm: 125.66 mm/s; a slot of 30° is lit 0.25 s (${MOVING})`, () => {
    const scene = lantern({ drumMetres: 0.06, rpm: 20, slots: 4, slotDegrees: 30, litLux: 100, shadeLux: 0 });
    expect(lanternTimes(scene).rimMetresPerSecond).toBeCloseTo(0.12566, 5);
    expect(lanternTimes(scene).litSeconds).toBeCloseTo(0.25, 12);
    const lit = above(scene, 'A', 50, 20).slice(1, -1);
    expect(lit.length).toBeGreaterThan(20);
    for (const [from, to] of lit) expect(to - from).toBeCloseTo(0.25, 9);
  });

  test(`ls:T6: 12 slots at 15 rpm flash 3.0 times a second, and no lantern flashes faster (${MOVING})`, () => {
    expect(lanternTimes(lantern({ slots: 12, rpm: 15 })).flashesPerSecond).toBeCloseTo(3, 12);
    expect(lanternTimes(lantern({ slots: 12, rpm: 60 }))).toMatchObject({
      rpm: expect.closeTo(15, 12),
      flashesPerSecond: expect.closeTo(MOST_FLASHES_PER_SECOND, 12),
    });
  });

  test('lights a sensor for as long at every distance; the picture grows with it', () => {
    const [near, far] = [0.1, 1].map((sensorMetres) => lantern({ sensorMetres, rpm: 10 }));
    const litOf = (scene: Scene) => {
      const [, , third] = above(scene, 'B', 77.5, 20);
      return third![1] - third![0];
    };
    expect(litOf(far!)).toBeCloseTo(litOf(near!), 9);
    expect(lanternTimes(far!).imageMetres / lanternTimes(near!).imageMetres).toBeCloseTo(10, 9);
    // Small lamp at the axis: blur = its size × (R − r)/r.
    expect(lanternTimes(far!).blurMetres).toBeCloseTo((0.004 * 0.94) / 0.06, 12);
  });

  test('never begins to light a sensor more than three times within a second, however it is cut', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.double({ min: 2, max: 25, noNaN: true }),
        fc.constantFrom(0, 0.5, 1),
        fc.integer({ min: 0, max: 9999 }),
        fc.constantFrom(...VOICES),
        (slots, slotDegrees, irregular, seed, voice) => {
          const scene = lantern({ slots, slotDegrees, irregular, seed, rpm: 60, litLux: 100, shadeLux: 0 });
          const starts = above(scene, voice, 1, 12).map(([from]) => from);
          for (let i = 4; i < starts.length; i++)
            expect(starts[i]! - starts[i - 3]!).toBeGreaterThan(1 - 1e-9);
        },
      ),
      { seed: 13, numRuns: 60 },
    );
  });
});

describe('a passer-by', () => {
  const passer = (change: Partial<SceneOf<'passer-by'>>): SceneOf<'passer-by'> => ({
    ...SCENES['passer-by'],
    irregular: 0,
    litLux: 100,
    shadeLux: 0,
    everySeconds: 6,
    ...change,
  });
  const shaded = (scene: Scene, voice: VoiceId) => {
    const lit = above(scene, voice, 50, 6);
    return [lit[0]![1], lit[1]![0]] as const;
  };

  test.each(['a-to-b', 'b-to-a'] as const)('shades the sensors one after the other (%s)', (direction) => {
    const scene = passer({ direction, metresPerSecond: 1.5, shadowMetres: 0.45, spacingMetres: 0.6 });
    const [a, b] = [shaded(scene, 'A'), shaded(scene, 'B')];
    expect(a[1] - a[0]).toBeCloseTo(0.45 / 1.5, 9);
    expect(b[1] - b[0]).toBeCloseTo(0.45 / 1.5, 9);
    expect(b[0] - a[0]).toBeCloseTo(((direction === 'a-to-b' ? 1 : -1) * 0.6) / 1.5, 9);
  });

  test('goes either way as the seed has it, both about as often', () => {
    const scene = passer({ direction: 'either' });
    let first = 0;
    for (let pass = 0; pass < 200; pass++) {
      const middle = pass * 6 + 3;
      // A moment before the middle of the pass the first sensor is in the shadow.
      if (sceneLux(scene, 'A', middle - 0.2) < sceneLux(scene, 'B', middle - 0.2)) first++;
    }
    expect(first).toBeGreaterThan(70);
    expect(first).toBeLessThan(130);
  });

  test('takes only a part of the light when the soft edge is wider than the shadow', () => {
    const scene = passer({ shadowMetres: 0.3, softMetres: 0.6, direction: 'a-to-b' });
    let least = 100;
    for (let t = 0; t < 6; t += 1e-3) least = Math.min(least, sceneLux(scene, 'A', t));
    expect(least).toBeCloseTo(50, 9);
  });
});

describe('a waved hand', () => {
  const wave = { ...SCENES['hand-wave'], irregular: 0, everySeconds: 4, crossSeconds: 2 };

  test('hides the lamp right over a sensor and leaves the room that the view factor says', () => {
    // Even crossing between ±(0.09 + 0.24) m, centred in its period of 4 s: over A (−0.09 m) a while before 2 s.
    const overA = 1 + 2 * ((-0.09 + 0.33) / 0.66);
    expect(sceneLux(wave, 'A', overA)).toBeCloseTo(20 * skyLeft(HAND_RADIUS, 0.06, 0), 9);
    expect(sceneLux(wave, 'B', overA)).toBeGreaterThan(280);
    // And back again in the next period, B first.
    expect(sceneLux(wave, 'A', 8 - overA)).toBeCloseTo(sceneLux(wave, 'A', overA), 9);
  });

  test('rests outside, where it takes next to nothing', () => {
    for (const voice of VOICES) expect(sceneLux(wave, voice, 0.2)).toBeGreaterThan(0.99 * 300);
  });

  test('crosses at another height each time', () => {
    const uneven = { ...wave, irregular: 1, lampLux: 0 };
    const least = Array.from({ length: 8 }, (_, pass) => {
      let lux = 1000;
      for (let t = pass * 4; t < pass * 4 + 4; t += 0.002) lux = Math.min(lux, sceneLux(uneven, 'A', t));
      return lux.toFixed(2);
    });
    expect(new Set(least).size).toBeGreaterThan(6);
  });
});
