/** One held state for the picture's drawings and words: however fast a gate changes, its comparison goes with it. */
import { expect, test } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import type { Bench } from '../../src/lesson/bench.ts';
import { DEFAULT_LIGHT } from '../../src/lesson/bench.ts';
import { withSetting } from '../../src/lesson/controls.ts';
import { LESSON_DESIGN } from '../../src/lesson/lessons.ts';
import { livePicture, type VoicePicture } from '../../src/lesson/picture.ts';
import { SHORTEST_SHOWN } from '../../src/views/plots/gate-hold.ts';
import { ToldGate } from '../../src/views/plots/told-gate.ts';
import { RunningBench } from '../lesson/running.ts';

/** What is told of A while something is done every so many seconds; with the model's own picture beside it. */
function told(start: Bench, seconds: number, every: number, act: (bench: RunningBench, nth: number) => void) {
  const bench = new RunningBench(start);
  const gate = new ToldGate();
  const all: { time: number; told: VoicePicture; now: VoicePicture; kind: string }[] = [];
  for (let nth = 0; nth * every < seconds; nth++) {
    bench.run(every, () => {
      const { design } = bench.now;
      const now = livePicture(design, instrumentOf(design), bench.frame).A;
      const { time, shown } = bench.frame;
      all.push({ time, told: gate.next(time, now, shown.A), now, kind: shown.A.kind });
      return false;
    });
    act(bench, nth);
  }
  return all;
}

const lit = withSetting({ design: LESSON_DESIGN, light: DEFAULT_LIGHT }, 'lamp', 300);
const wave = (bench: RunningBench, nth: number) =>
  bench.put(withSetting(bench.now, 'hand A', nth % 2 === 0 ? 1 : 0));

test('while a hand flutters, comparison and gate tell the state that is shown, though the model is ahead of it', () => {
  const all = told(lit, 6, 0.25, wave);
  let ahead = 0;
  for (const {
    told: { compare, gate },
    now,
    kind,
  } of all) {
    if (kind === 'chattering') continue;
    expect(gate.sounding).toBe(kind === 'sounding');
    // The cell at the bottom, sounding in light: below the trip point means sounding.
    expect(compare.nodeIs).toBe(kind === 'sounding' ? 'below' : 'above');
    if (now.compare.nodeIs !== compare.nodeIs) ahead++;
  }
  expect(ahead).toBeGreaterThan(5);
});

test('however long a gate stays as it is shown, its comparison waits with it', () => {
  const pictureIn = (cover: number) => {
    const bench = new RunningBench(withSetting(lit, 'hand A', cover));
    return livePicture(bench.now.design, instrumentOf(bench.now.design), bench.frame).A;
  };
  const [open, shaded] = [pictureIn(0), pictureIn(1)];
  const gate = new ToldGate();
  expect(gate.next(0, open, { kind: 'sounding' }).compare.nodeIs).toBe('below');
  expect(gate.next(5, shaded, { kind: 'sounding' }).compare.nodeIs).toBe('below');
  expect(gate.next(6, shaded, { kind: 'silent' }).compare.nodeIs).toBe('above');
});

test('where no gate follows the node, its side alone changes no faster than can be looked at', () => {
  // As if the timer were held on: the noise alone carries the node to and fro.
  const stuck = withSetting(withSetting(lit, 'hysteresis', null), 'noise', 0.05);
  const edge = withSetting(stuck, 'lamp', 94.2);
  const gate = new ToldGate();
  const bench = new RunningBench(edge);
  let since = Number.NEGATIVE_INFINITY;
  let before: string | null = null;
  let flips = 0;
  bench.run(3, () => {
    const now = livePicture(bench.now.design, instrumentOf(bench.now.design), bench.frame).A;
    const { nodeIs } = gate.next(
      bench.frame.time,
      { ...now, gate: { ...now.gate, sounding: true } },
      { kind: 'sounding' },
    ).compare;
    if (before !== null && nodeIs !== before) {
      expect(bench.frame.time - since).toBeGreaterThanOrEqual(SHORTEST_SHOWN - 1e-9);
      since = bench.frame.time;
      flips++;
    }
    before = nodeIs;
    return false;
  });
  expect(flips).toBeGreaterThan(1);
});
