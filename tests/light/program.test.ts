/** Light programs: one reader, its limits from the left, its breaks; and the gates they drive. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cellSpeed } from '../../src/circuit/cell.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { lampRipple } from '../../src/light/mains-lamp.ts';
import {
  type LightProgram,
  luxAt,
  luxBefore,
  meanLuxAt,
  nextBreak,
  type PointsProgram,
  playhead,
  type RippleProgram,
  type SmoothProgram,
  scrubbed,
  underLamp,
} from '../../src/light/program.ts';
import type { Ripple, RippleShape } from '../../src/light/ripple.ts';
import { SCENES, type SceneKind } from '../../src/light/scene.ts';
import { VOICES, type VoiceId } from '../../src/quantity/units.ts';
import { Gating, GRID } from '../../src/sound/gating.ts';
import { tripOhms } from '../circuit/board.ts';
import { designWith } from '../circuit/building.ts';
import { settingsFrom, steady } from '../sound/playing.ts';

const points = (
  rows: readonly (readonly [number, number, number])[],
  change: Partial<PointsProgram> = {},
): PointsProgram => ({
  kind: 'points',
  times: Float64Array.from(rows, ([t]) => t),
  lux: { A: Float64Array.from(rows, ([, a]) => a), B: Float64Array.from(rows, ([, , b]) => b) },
  ...change,
});

describe('a recording', () => {
  const recording = points([
    [2, 10, 100],
    [3, 30, 100],
    [5, 20, 300],
  ]);

  test('runs straight between rows and holds outside them', () => {
    const at = (t: number) => VOICES.map((voice) => luxAt(recording, voice, t));
    expect([0, 2, 2.5, 4, 5, 99].map(at)).toEqual([
      [10, 100],
      [10, 100],
      [20, 100],
      [25, 200],
      [20, 300],
      [20, 300],
    ]);
  });

  test('starts when it is told', () => {
    const late = { ...recording, startsAt: 10 };
    for (const t of [1, 2.5, 4, 7]) expect(luxAt(late, 'A', t + 10)).toBe(luxAt(recording, 'A', t));
    expect([0, 12, 13, 14, 15].map((t) => nextBreak(late, t))).toEqual([
      12,
      13,
      15,
      15,
      Number.POSITIVE_INFINITY,
    ]);
  });

  test('loops from its last row to its first, and jumps there', () => {
    const loop = { ...recording, loop: true, startsAt: 10 };
    for (const round of [0, 1, 2, 57]) {
      for (const t of [2.25, 3.5, 4.9])
        expect(luxAt(loop, 'A', t + 10 + 3 * round)).toBeCloseTo(luxAt(recording, 'A', t), 9);
      if (round === 0) continue;
      const seam = 12 + 3 * round;
      expect(luxBefore(loop, 'B', seam)).toBe(300);
      expect(luxAt(loop, 'B', seam)).toBe(100);
      expect(nextBreak(loop, seam - 0.5)).toBe(seam);
    }
    expect(luxAt(loop, 'B', 3)).toBe(100);
  });

  test('a jump has both its values', () => {
    const jump = points([
      [0, 1, 1],
      [1, 1, 1],
      [1, 9, 9],
      [2, 9, 9],
    ]);
    expect([luxBefore(jump, 'A', 1), luxAt(jump, 'A', 1)]).toEqual([1, 9]);
  });

  test('is scrubbed to a place and told where it is, looped or not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.double({ min: 0, max: 2.999, noNaN: true }),
        fc.boolean(),
        (t, place, loop) => {
          const at = scrubbed({ ...recording, loop }, t, place);
          expect(playhead(at, t)).toBeCloseTo(place, 6);
          expect(luxAt(at, 'B', t)).toBeCloseTo(luxAt(recording, 'B', 2 + place), 6);
          expect(playhead(at, t + 100)).toBeCloseTo(loop ? (place + 100) % 3 : 3, 6);
        },
      ),
      { seed: 31 },
    );
    expect(playhead({ ...recording, startsAt: 10 }, 0)).toBe(0);
  });

  test('of one row, or none, holds even when looped', () => {
    const one = points([[3, 7, 8]], { loop: true });
    expect([0, 3, 9].map((t) => luxAt(one, 'A', t))).toEqual([7, 7, 7]);
    expect(nextBreak(one, 5)).toBe(Number.POSITIVE_INFINITY);
    expect(luxAt(points([], { loop: true }), 'A', 1)).toBe(0);
  });
});

const anySmooth: fc.Arbitrary<SmoothProgram> = fc.oneof(
  fc.constant<SmoothProgram>({ kind: 'steady', lux: { A: 3, B: 300 } }),
  fc
    .record({
      start: fc.double({ min: 0, max: 3, noNaN: true }),
      duration: fc.constantFrom(0, 0.03, 2),
    })
    .map((times): SmoothProgram => ({ kind: 'ramp', from: { A: 1, B: 2 }, to: { A: 300, B: 20 }, ...times })),
  fc
    .record({
      gaps: fc.array(fc.oneof(fc.constant(0), fc.double({ min: 0, max: 2, noNaN: true })), {
        minLength: 1,
        maxLength: 8,
      }),
      startsAt: fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      loop: fc.boolean(),
    })
    .map(({ gaps, ...rest }): SmoothProgram => {
      let time = 0;
      return points(
        gaps.map((gap, i) => {
          time += gap;
          return [time, (i * 37) % 100, (i * 53) % 100] as const;
        }),
        rest,
      );
    }),
  fc
    .record({
      kind: fc.constantFrom(...(Object.keys(SCENES) as SceneKind[])),
      startsAt: fc.double({ min: -1e5, max: 1e5, noNaN: true }),
    })
    .map(({ kind, startsAt }): SmoothProgram => ({ kind: 'scene', scene: SCENES[kind], startsAt })),
);

const anyRipple: fc.Arbitrary<Ripple | null> = fc.option(
  fc.record({
    hertz: fc.constantFrom(100, 120, 73.3, 400),
    depth: fc.constantFrom(0.1, 1),
    shape: fc.constantFrom<RippleShape>('sine', 'rectified', 'triangle', 'pulse'),
  }),
);

test('any program: breaks come strictly later, and from the left and at once it reads the same but for jumps there', () => {
  fc.assert(
    fc.property(
      anySmooth,
      anyRipple,
      fc.double({ min: 0, max: 1e4, noNaN: true }),
      (smooth, ripple, start) => {
        const program = underLamp(smooth, ripple);
        let t = start;
        for (let i = 0; i < 30; i++) {
          const next = nextBreak(program, t);
          expect(next).toBeGreaterThan(t);
          const end = Math.min(next, t + 1);
          const middle = (t + end) / 2;
          for (const voice of VOICES) {
            const level = luxAt(program, voice, middle);
            expect(level).toBeGreaterThanOrEqual(0);
            if (middle > t && middle < end) expect(luxBefore(program, voice, middle)).toBe(level);
          }
          if (next === Number.POSITIVE_INFINITY) return;
          // Just inside the piece the light is near the limit from the left at its end.
          if (next - t > 1e-3)
            for (const voice of VOICES) {
              const inside = luxAt(program, voice, next - 1e-8);
              expect(Math.abs(inside - luxBefore(program, voice, next))).toBeLessThan(0.1);
            }
          t = next;
        }
      },
    ),
    { seed: 32, numRuns: 600 },
  );
});

test('a lamp keeps the mean of the light over its cycle, at both sensors', () => {
  const lit = underLamp(steady(200, 30), lampRipple('compact-magnetic', 50));
  for (const [voice, mean] of [
    ['A', 200],
    ['B', 30],
  ] as const) {
    let sum = 0;
    for (let i = 0; i < 1000; i++) sum += luxAt(lit, voice, 3 + (i + 0.5) / 1000 / 100) / 1000;
    expect(sum).toBeCloseTo(mean, 6);
    expect(meanLuxAt(lit, voice, 3.1234)).toBe(mean);
  }
});

test('a lamp is put on, changed and taken off without touching what it lights', () => {
  const scene: SmoothProgram = { kind: 'scene', scene: SCENES.lantern };
  const first = underLamp(scene, lampRipple('led-poor', 50));
  const second = underLamp(first, lampRipple('incandescent', 60));
  expect(first).toMatchObject({ kind: 'ripple', of: scene, hertz: 100, duty: 0.55 });
  expect(second).toEqual({ kind: 'ripple', of: scene, hertz: 120, depth: 0.066, shape: 'sine' });
  expect(underLamp(second, null)).toBe(scene);
  expect(structuredClone(second)).toEqual(second);
});

/** The rate equation of voice A's cell by Runge–Kutta in fine even steps, cut at no break at all. */
function fine(program: LightProgram, y0: number, seconds: number, step: number) {
  const { cell } = designWith().voices.A;
  const { riseTau, fallTau } = cellSpeed(cell);
  const slope = (y: number, lux: number) => {
    const gap = lux / 10 - y ** (1 / cell.gamma);
    return gap / (gap > 0 ? riseTau : fallTau);
  };
  let y = y0;
  const count = Math.round(seconds / step);
  const each: [number, number][] = [];
  for (let i = 0; i < count; i++) {
    const t = i * step;
    // Just inside the step: a jump at its end is not yet seen.
    const [l0, l1, l2] = [1e-9, 0.5, 1 - 1e-9].map((part) => luxAt(program, 'A', t + part * step));
    const k1 = slope(y, l0!);
    const k2 = slope(y + (step / 2) * k1, l1!);
    const k3 = slope(y + (step / 2) * k2, l1!);
    const k4 = slope(y + step * k3, l2!);
    y += (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    each.push([t + step, y]);
  }
  return each;
}

describe('the gates under a lamp', () => {
  const ripple = (lux: number, shape: RippleShape, hertz = 100, depth = 1): RippleProgram => ({
    kind: 'ripple',
    of: { kind: 'steady', lux: { A: lux, B: lux } },
    hertz,
    depth,
    shape,
  });

  test.each([
    ['sine', 100, 6e-7],
    ['sine', 120, 1e-6],
    ['rectified', 100, 5e-7],
    ['triangle', 100, 5e-7],
    ['pulse', 100, 3e-7],
    ['sine', 400, 5e-7],
    ['rectified', 333, 5e-7],
    ['rectified', 73.3, 5e-7],
  ] as const)(
    'the cell follows a full %s of %d Hz within %d of a fine integration',
    (shape, hertz, within) => {
      for (const lux of [30, 1000]) {
        const program = ripple(lux, shape, hertz);
        const gating = new Gating(settingsFrom(designWith()), program);
        const seconds = 0.1;
        const reference = fine(program, gating.conductance('A'), seconds, 1 / GRID / 200);
        let worst = 0;
        for (let i = 0; i < seconds * GRID; i++) {
          gating.advance(() => {});
          const [time, y] = reference[200 * (i + 1) - 1]!;
          expect(time).toBeCloseTo(gating.time, 9);
          worst = Math.max(worst, Math.abs(gating.conductance('A') / y - 1));
        }
        expect(worst).toBeLessThan(within);
        expect(worst).toBeGreaterThan(0);
      }
    },
  );

  test.each(['sine', 'rectified'] as const)('gate times agree with a fine integration (%s)', (shape) => {
    // No hysteresis, no noise, the mean at the trip point: the gate buzzes with the lamp.
    const design = designWith({ voices: { hysteresisOhms: null } });
    const lux = instrumentOf(design).voices.A.tripLux.on!;
    const program = ripple(lux, shape);
    const gating = new Gating(settingsFrom(design), program);
    const start = gating.conductance('A');
    const ours: number[] = [];
    for (let i = 0; i < 0.2 * GRID; i++)
      gating.advance((voice, time) => {
        if (voice === 'A') ours.push(time);
      });
    const trip = design.voices.A.cell.r10Ohms / tripOhms(design, 'A', { A: false, B: false })!;
    const theirs: number[] = [];
    let last: [number, number] = [0, start];
    for (const now of fine(program, start, 0.2, 2e-6)) {
      if (last[1] < trip !== now[1] < trip)
        theirs.push(last[0] + ((now[0] - last[0]) * (trip - last[1])) / (now[1] - last[1]));
      last = now;
    }
    // The start stands on the trip point itself: what happens there is left out.
    const late = (times: readonly number[]) => times.filter((time) => time > 0.002);
    expect(late(ours).length).toBeGreaterThan(30);
    expect(late(ours).length).toBe(late(theirs).length);
    for (const [i, time] of late(ours).entries())
      expect(Math.abs(time - late(theirs)[i]!)).toBeLessThan(1e-6);
  });

  test('start settled in the mean light, not in a dark moment of the lamp', () => {
    const y = (program: LightProgram) => new Gating(settingsFrom(designWith()), program).conductance('A');
    expect(y(ripple(300, 'rectified'))).toBe(y(steady(300, 300)));
  });

  test('the ripple stays around a ramp that a control starts, and the light told is the mean', () => {
    const program = ripple(300, 'sine', 100, 0.5);
    const gating = new Gating(settingsFrom(designWith()), program);
    const told = (count: number) => {
      for (let i = 0; i < count; i++) gating.advance(() => {});
      return gating.lux('A');
    };
    expect(told(37)).toBe(300);
    gating.aim({ A: 100, B: 300 }, 0.02);
    expect(told(30)).toBeCloseTo(200, 9);
    expect(told(60)).toBe(100);
    const cell = new Set<string>();
    for (let i = 0; i < 3000; i++) {
      told(1);
      if (i > 2900) cell.add(gating.conductance('A').toFixed(4));
    }
    expect(cell.size).toBeGreaterThan(15);
  });

  test.each(Object.keys(SCENES) as SceneKind[])('the scene “%s” silences and frees both voices', (kind) => {
    const program: LightProgram = { kind: 'scene', scene: SCENES[kind] };
    const seen = new Set<string>();
    const gating = new Gating(settingsFrom(designWith()), program);
    for (let i = 0; i < 15 * GRID; i++)
      gating.advance((voice: VoiceId, _time, released) => seen.add(`${voice} ${released}`));
    expect([...seen].sort()).toEqual(['A false', 'A true', 'B false', 'B true']);
  });
});
