import { describe, expect, it } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { arrangeThreshold, setPolarity, turnThreshold } from '../../src/design/commands.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { trimmersOf } from '../../src/design/design.ts';
import { justOn } from '../../src/plan/threshold.ts';
import { renderTake } from '../../src/sound/render.ts';
import { settingsOf } from '../../src/sound/settings.ts';

const steady = (a: number, b = a) => ({ kind: 'steady', lux: { A: a, B: b } }) as const;

function soundingAt(design: typeof DEFAULT_DESIGN, a: number, b = a): readonly boolean[] {
  const settings = settingsOf(design, instrumentOf(design));
  return renderTake(settings, steady(a, b), 0.01)
    .gate.slice(0, 2)
    .map((g) => g.sounding);
}

describe('just on', () => {
  it.each([40, 95, 150, 300, 700])(
    'at %d lx both voices sound there, and 2 %% less light leaves both silent',
    (lux) => {
      const found = justOn(DEFAULT_DESIGN, 'A', { A: lux, B: lux });
      if (found.kind !== 'turn') throw new Error(found.kind);
      const set = turnThreshold('A', found.rotation)({ ...DEFAULT_DESIGN, noise: { voltsRms: 0, seed: 1 } });
      expect(soundingAt(set, lux)).toEqual([true, true]);
      expect(soundingAt(set, lux * 0.98)).toEqual([false, false]);
    },
  );

  it('with one trimmer the darker sensor decides', () => {
    const found = justOn(DEFAULT_DESIGN, 'A', { A: 300, B: 120 });
    const alone = justOn(DEFAULT_DESIGN, 'A', { A: 120, B: 120 });
    expect(found).toEqual(alone);
  });

  it('with a trimmer each, each follows its own sensor', () => {
    const design = arrangeThreshold('each')(DEFAULT_DESIGN);
    expect(trimmersOf(design)).toEqual(['A', 'B']);
    const a = justOn(design, 'A', { A: 300, B: 120 });
    const b = justOn(design, 'B', { A: 300, B: 120 });
    if (a.kind !== 'turn' || b.kind !== 'turn') throw new Error('no setting found');
    const set = turnThreshold(
      'B',
      b.rotation,
    )(turnThreshold('A', a.rotation)({ ...design, noise: { voltsRms: 0, seed: 1 } }));
    expect(soundingAt(set, 300, 120)).toEqual([true, true]);
    expect(soundingAt(set, 290, 116)).toEqual([false, false]);
  });

  it('sound in shade: a little more light leaves it silent', () => {
    const shade = setPolarity('B', 'shade')(setPolarity('A', 'shade')(DEFAULT_DESIGN));
    const found = justOn(shade, 'A', { A: 50, B: 50 });
    if (found.kind !== 'turn') throw new Error(found.kind);
    const set = turnThreshold('A', found.rotation)({ ...shade, noise: { voltsRms: 0, seed: 1 } });
    expect(soundingAt(set, 50)).toEqual([true, true]);
    expect(soundingAt(set, 52)).toEqual([false, false]);
  });

  it('says when the trimmer’s reach does not contain the point', () => {
    expect(justOn(DEFAULT_DESIGN, 'A', { A: 0.1, B: 0.1 }).kind).toBe('never');
    expect(justOn(DEFAULT_DESIGN, 'A', { A: 50_000, B: 50_000 }).kind).toBe('always');
  });
});
