/** A recording replayed fast against the same recording played step by step. */
import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/design.ts';
import type { LogPoints } from '../../src/light/log-file.ts';
import { type Change, replayLog } from '../../src/plan/replay.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { Gating, GRID } from '../../src/sound/gating.ts';
import { designWith } from '../circuit/building.ts';
import { settingsFrom } from '../sound/playing.ts';
import { drawnRoom } from './rooms.ts';

function played(design: Design, points: LogPoints): readonly Change[] {
  const gating = new Gating(settingsFrom(design), { kind: 'points', ...points });
  const changes: Change[] = [];
  const steps = Math.ceil(points.times.at(-1)! * GRID);
  for (let i = 0; i < steps; i++)
    gating.advance((voice, time, sounding) => changes.push({ voice, time, sounding }));
  return changes;
}

/** Rows a while apart: slow drifts, hands, lamps switched off and on. */
function logOf(seed: number, rows: number, every: number): LogPoints {
  const next = uniformFrom(seed);
  const walk = () => {
    let level = 30 + 200 * next();
    let left = 0;
    let share = 1;
    return Float64Array.from({ length: rows }, () => {
      level *= 1 + 0.2 * (next() - 0.5);
      if (left-- <= 0) {
        left = Math.floor(6 * next());
        share = next() < 0.5 ? 1 : next() < 0.2 ? 0 : 0.05 + next();
      }
      return level * share;
    });
  };
  return { times: Float64Array.from({ length: rows }, (_, i) => i * every), lux: { A: walk(), B: walk() } };
}

describe('replayed fast, a recording changes the voices exactly when it does played in full', () => {
  test.each([1, 2, 3, 4])('25 rows a second apart (seed %d)', (seed) => {
    const { design } = drawnRoom(seed + 300);
    const points = logOf(seed, 25, 1);
    const slow = played(design, points);
    const { changes } = replayLog(design, points);
    expect(changes.map(({ voice, sounding }) => `${voice}${sounding}`)).toEqual(
      slow.map(({ voice, sounding }) => `${voice}${sounding}`),
    );
    for (const [i, { time }] of changes.entries()) expect(Math.abs(time - slow[i]!.time)).toBeLessThan(2e-6);
  });

  test('rows 50 ms apart, so that the cell lags from row to row', () => {
    const design = designWith({ threshold: { arrangement: 'shared' }, voices: { hysteresisOhms: 220_000 } });
    const points = logOf(8, 240, 0.05);
    const slow = played(design, points);
    const { changes } = replayLog(design, points);
    expect(slow.length).toBeGreaterThan(8);
    expect(changes.map(({ voice, sounding }) => `${voice}${sounding}`)).toEqual(
      slow.map(({ voice, sounding }) => `${voice}${sounding}`),
    );
    for (const [i, { time }] of changes.entries()) expect(Math.abs(time - slow[i]!.time)).toBeLessThan(2e-6);
  });
});
