/** The drawn ring: ticks lie at their angle, names stand apart, and all of it stays on its paper. */
import { expect, test } from 'vitest';
import { pitchRing, thresholdRing } from '../../src/kit/trimmer-ring.ts';
import { TRIMMERS, type TrimmerId } from '../../src/parts/trimmers.ts';
import { leastDegreesFor, ringShapes } from '../../src/views/plots/ring-shapes.ts';
import { BENCH_DESIGN, designWith } from '../circuit/building.ts';

const shapesOf = (part: TrimmerId, stop = 'stop') => {
  const design = designWith({ voices: { trimmer: { ...BENCH_DESIGN.voices.A.trimmer, part } } });
  const ring = pitchRing(design, 'A', 9, 440, leastDegreesFor(TRIMMERS[part]))!;
  return { ring, shapes: ringShapes(ring, (name) => name, stop) };
};

test.each(['single-turn', 'carbon'] as const)(
  'ticks of a %s lie at their angle, stops at the screw’s',
  (part) => {
    const { ring, shapes } = shapesOf(part);
    const angle = ({ x2, y2 }: { x2: number; y2: number }) => (Math.atan2(x2, -y2) * 180) / Math.PI;
    for (const [i, { degrees }] of ring.ticks.entries())
      expect(angle(shapes.lines[i]!)).toBeCloseTo(degrees, 6);
    const rest = shapes.lines.slice(ring.ticks.length).map(angle);
    expect(rest[0]).toBeCloseTo(-ring.stopDegrees / 2, 6);
    expect(rest[1]).toBeCloseTo(ring.stopDegrees / 2, 6);
    expect(rest[2]).toBeCloseTo(ring.now.degrees, 6);
    // The hole lets the trimmer through: a square of 6.6 mm across its corners, a round one of 10 mm.
    expect(2 * shapes.cut!.hole).toBeGreaterThan(part === 'carbon' ? 10 : 6.6 * Math.SQRT2);
  },
);

test.each(['stop', 'Anschlag', 'x'.repeat(20)])(
  'the word “%s” stands beyond the stops, clear of the scale',
  (stop) => {
    const { ring, shapes } = shapesOf('single-turn', stop);
    const words = shapes.texts.filter(({ text }) => text === stop);
    expect(words).toHaveLength(2);
    for (const { text, x, y, size } of words) {
      const fromTop = (Math.abs(Math.atan2(x, -y)) * 180) / Math.PI;
      // From the stop's line to the middle of the word, along the ring. A letter of this typeface is half as wide as high.
      const apart = ((fromTop - ring.stopDegrees / 2) * Math.PI * Math.hypot(x, y)) / 180;
      expect(apart).toBeGreaterThan((text.length * 0.5 * size) / 2);
    }
  },
);

test('turns of a trimmer of many turns are numbered along a straight scale, each 7 mm', () => {
  const { ring, shapes } = shapesOf('multi-turn');
  const xs = shapes.texts
    .filter(({ text }) => /^\d+$/.test(text))
    .map(({ text, x }) => [Number(text), x] as const);
  expect(xs.map(([turn]) => turn)).toEqual(Array.from({ length: 26 }, (_, i) => i));
  for (const [turn, x] of xs) expect(x).toBeCloseTo(7 * turn, 9);
  for (const [i, { rotation }] of ring.ticks.entries())
    expect(shapes.lines[i]!.x1).toBeCloseTo(175 * rotation, 6);
  // A4 and Letter within 12 mm margins.
  expect(shapes.width).toBeLessThan(186);
});

test('names stand apart and on the paper; finer volts are named only where there are few', () => {
  for (const part of ['single-turn', 'multi-turn', 'carbon'] as const) {
    const { shapes } = shapesOf(part);
    const names = shapes.texts.filter(({ text }) => /^[A-G]/.test(text));
    expect(names.length).toBeGreaterThan(8);
    for (const [i, a] of names.entries())
      for (const b of names.slice(i + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(3);
    for (const { x, y } of shapes.texts) {
      expect(x > shapes.left + 1 && x < shapes.left + shapes.width - 1).toBe(true);
      expect(y > shapes.top + 1 && y < shapes.top + shapes.height - 1).toBe(true);
    }
  }
  const wide = thresholdRing(BENCH_DESIGN, 'A', 9, 1.4);
  expect(ringShapes(wide, String, '').texts.every(({ text }) => text === '' || /\.[05]$/.test(text))).toBe(
    true,
  );
  const narrow = thresholdRing(
    designWith({
      threshold: {
        trimmers: {
          ...BENCH_DESIGN.threshold.trimmers,
          A: { ...BENCH_DESIGN.threshold.trimmers.A, topOhms: 82_000 },
        },
      },
    }),
    'A',
    9,
    1.4,
  );
  expect(ringShapes(narrow, String, '').texts.filter(({ text }) => text !== '').length).toBeGreaterThan(3);
});
