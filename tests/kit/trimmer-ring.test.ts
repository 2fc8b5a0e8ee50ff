/** Paper rings around trimmers: every tick gives the note or the volts it stands for, and all that are reached are there. */
import Note from '@tonaljs/note';
import { expect, test } from 'vitest';
import { astableOf, cycleOf } from '../../src/circuit/astable.ts';
import type { Design } from '../../src/design/design.ts';
import { pitchRing, type TrimmerRing, thresholdRing } from '../../src/kit/trimmer-ring.ts';
import { twinOf } from '../../src/kit/twin.ts';
import type { TrimmerId } from '../../src/parts/trimmers.ts';
import type { VoiceId } from '../../src/quantity/units.ts';
import { BENCH_DESIGN, designWith } from '../circuit/building.ts';
import { rail, resistor, solve } from '../circuit/nodal.ts';

const V = 9;
const A4 = 440;
const LEAST = 1.4;

const ringOf = (design: Design, voice: VoiceId = 'A', a4 = A4): TrimmerRing =>
  pitchRing(design, voice, V, a4, LEAST)!;
const hertzAt = (design: Design, voice: VoiceId, rotation: number): number =>
  cycleOf(astableOf(design, voice, V, rotation)).frequency;
const fitted = (part: TrimmerId): Design =>
  designWith({ voices: { trimmer: { ...BENCH_DESIGN.voices.A.trimmer, part } } });

test.each([440, 432])('a turn to any named tick gives that note of equal temperament, A4 = %i Hz', (a4) => {
  for (const voice of ['A', 'B'] as const) {
    const { ticks } = ringOf(BENCH_DESIGN, voice, a4);
    const named = ticks.filter(({ name }) => name !== null);
    expect(named.length).toBeGreaterThan(20);
    for (const { name, rotation } of named) {
      // Second opinion on the note's frequency: the tonal note library.
      const wanted = Note.freq(name!.replace('♯', '#'))! * (a4 / 440);
      expect(Math.abs(1200 * Math.log2(hertzAt(BENCH_DESIGN, voice, rotation) / wanted)), name!).toBeLessThan(
        0.01,
      );
    }
  }
});

test('every note between the two stops is there once, and none outside', () => {
  const { ticks } = ringOf(BENCH_DESIGN);
  const [high, low] = [hertzAt(BENCH_DESIGN, 'A', 0), hertzAt(BENCH_DESIGN, 'A', 1)];
  const wanted = Array.from({ length: 128 }, (_, midi) => Note.fromMidiSharps(midi)).filter((name) => {
    const hertz = Note.freq(name)!;
    return hertz >= low && hertz <= high;
  });
  const found = ticks.flatMap(({ name }) => (name === null ? [] : [name.replace('♯', '#')]));
  expect(found).toEqual(wanted);
  for (const { rotation } of ticks) expect(rotation >= 0 && rotation <= 1).toBe(true);
});

test.each([0.3, 0.72, 1.14, 1.35, 1.7, 2.4])(
  'ticks share each semitone evenly, none nearer than %f° to another',
  (least) => {
    const { ticks } = pitchRing(BENCH_DESIGN, 'A', V, A4, least)!;
    const cents = ticks.map(({ rotation }) => 1200 * Math.log2(hertzAt(BENCH_DESIGN, 'A', rotation) / 440));
    const places = ticks.map(({ name }, i) => (name === null ? -1 : i)).filter((i) => i >= 0);
    const counts = new Set<number>();
    for (const [k, at] of places.slice(1).entries()) {
      const from = places[k]!;
      const count = at - from;
      counts.add(count);
      for (let i = 1; i < count; i++)
        expect(cents[from + i]! - cents[from]!).toBeCloseTo((100 * i) / count, 3);
    }
    // The finest where the notes lie far apart, coarser where they crowd: more than one step is used.
    expect([...counts].every((count) => [1, 2, 4, 10, 20].includes(count))).toBe(true);
    expect(counts.size).toBeGreaterThan(1);
    const fine = ticks.filter(({ name }) => name === null);
    expect(fine.length).toBeGreaterThan(5);
    for (const { degrees } of fine) {
      const others = ticks.map((tick) => Math.abs(tick.degrees - degrees)).filter((apart) => apart > 0);
      expect(Math.min(...others)).toBeGreaterThan(0.999 * least);
    }
  },
);

test('angles are the share of the travel on the maker’s sheet, half to either side of straight up', () => {
  // Bourns 3362: 240°; Bourns 3296: 25 turns; Piher PT-10: 220° electrical within 235° mechanical.
  for (const [part, travel, stops] of [
    ['single-turn', 240, 240],
    ['multi-turn', 9000, 9000],
    ['carbon', 220, 235],
  ] as const) {
    const ring = ringOf(fitted(part));
    expect([ring.degrees, ring.stopDegrees]).toEqual([travel, stops]);
    for (const { rotation, degrees } of [...ring.ticks, ring.now])
      expect(degrees).toBeCloseTo(rotation * travel - travel / 2, 9);
  }
});

test('the ring of a twin has its notes where that board has them', () => {
  const board = { farads: BENCH_DESIGN.voices.A.capacitor.farads * 1.08, trimmerOhms: 52_000 };
  const twin = twinOf(BENCH_DESIGN, 'A', board);
  const turnOf = (design: Design, note: string) =>
    ringOf(design).ticks.find(({ name }) => name === note)!.rotation;
  expect(Math.abs(turnOf(twin, 'A3') - turnOf(BENCH_DESIGN, 'A3'))).toBeGreaterThan(0.02);
  // T/ln 2 = C·(RA + 2·RB) but for the pin's saturation: a turn less by what the larger capacitor needs.
  const rb = (design: Design, rotation: number) => {
    const { trimmer, rbFixedOhms } = design.voices.A;
    return rbFixedOhms + 0.01 * trimmer.ohms + rotation * 0.99 * trimmer.ohms;
  };
  const { raOhms } = BENCH_DESIGN.voices.A;
  const [own, its] = [BENCH_DESIGN, twin].map((design) => raOhms + 2 * rb(design, turnOf(design, 'A3')));
  expect(own! / its!).toBeCloseTo(1.08, 2);
});

test('a voice that never runs has no ring', () => {
  expect(pitchRing(designWith({ A: { controlVolts: 9.5 } }), 'A', V, A4, LEAST)).toBeNull();
});

test('a turn of the threshold’s trimmer to a tick gives its volts, as a nodal solution has them', () => {
  const ring = thresholdRing(BENCH_DESIGN, 'A', V, LEAST);
  const { topOhms, bottomOhms, trimmer } = BENCH_DESIGN.threshold.trimmers.A;
  const named = ring.ticks.filter(({ name }) => name !== null);
  expect(named.length).toBeGreaterThan(8);
  for (const { name, rotation } of named) {
    const end = 0.01 * trimmer.ohms;
    const below = end + rotation * (trimmer.ohms - 2 * end);
    const volts = solve([
      rail('V', V),
      resistor('V', 'wiper', topOhms + trimmer.ohms - below),
      resistor('wiper', '0', bottomOhms + below),
    ])['wiper']!;
    expect(volts).toBeCloseTo(Number(name), 6);
  }
  expect(ring.voice).toBe('A');
  const shared = designWith({ threshold: { arrangement: 'shared' } });
  expect(thresholdRing(shared, 'A', V, LEAST).voice).toBeNull();
  expect(ring.now.rotation).toBe(trimmer.rotation);
});
