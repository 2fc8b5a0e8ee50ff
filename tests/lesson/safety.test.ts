import { describe, expect, test } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { luxOf, programOf } from '../../src/lesson/bench.ts';
import { figureValue } from '../../src/lesson/figures.ts';
import { type Step, startBench } from '../../src/lesson/lesson.ts';
import { LESSON_DESIGN, LESSONS } from '../../src/lesson/lessons.ts';
import { meanLuxAt } from '../../src/light/program.ts';
import { VOICES } from '../../src/quantity/units.ts';
import { Gating } from '../../src/sound/gating.ts';
import { settingsOf } from '../../src/sound/settings.ts';
import { cautionsAt } from '../../src/words/cautions.ts';

const steps = LESSONS.flatMap((lesson) =>
  lesson.steps.map((step) => ({ lesson, step, name: `${lesson.id}/${step.id}` })),
);
const benchOf = (step: Step) => startBench(step, LESSON_DESIGN);

/** Most flashes in any second (WCAG 2.2, 2.3.1): pairs of opposite changes by a tenth of the brightest or more. */
function mostFlashes(levels: readonly number[], perSecond: number): number {
  const tenth = 0.1 * Math.max(...levels);
  const turns: number[] = [];
  let [low, high, way] = [levels[0]!, levels[0]!, 0];
  for (const [i, level] of levels.entries()) {
    low = Math.min(low, level);
    high = Math.max(high, level);
    const turned = way <= 0 && level - low >= tenth ? 1 : way >= 0 && high - level >= tenth ? -1 : 0;
    if (turned !== 0) turns.push(i / perSecond);
    // From here on only a change the other way counts, measured from the furthest point reached.
    if (turned !== 0) [way, low, high] = [turned, level, level];
  }
  const within = (from: number) => turns.filter((time) => time >= from && time < from + 1).length;
  return Math.max(0, ...turns.map((from) => Math.ceil(within(from) / 2)));
}

test('the count of flashes counts: five blinks a second are five, a slow swell is one', () => {
  const blink = Array.from({ length: 200 }, (_, i) => (Math.floor(i / 10) % 2 === 0 ? 1 : 0));
  expect(mostFlashes(blink, 100)).toBe(5);
  const swell = Array.from({ length: 200 }, (_, i) => Math.sin((Math.PI * i) / 200));
  expect(mostFlashes(swell, 100)).toBe(1);
});

test('no light that a lesson plays, as the screen shows it, flashes above three times in any second', () => {
  for (const { step, name } of steps) {
    const program = programOf(benchOf(step).light);
    for (const voice of VOICES) {
      // What is drawn is the mean light: the ripple of a lamp is for the ear alone.
      const levels = Array.from({ length: 60 * 60 }, (_, i) => meanLuxAt(program, voice, i / 60));
      expect(mostFlashes(levels, 60), name).toBeLessThanOrEqual(3);
    }
  }
});

describe.each(steps)('$name', ({ lesson, step }) => {
  const bench = benchOf(step);

  test('a notice comes first wherever the ear will hear it flicker', () => {
    // By itself, when the stage is set, or once a control that it allows brings a rippling lamp or the bare edge.
    const program = programOf(bench.light);
    const gating = new Gating(settingsOf(bench.design, instrumentOf(bench.design)), program);
    let changes = 0;
    while (gating.time < 0.6)
      gating.advance(() => {
        changes++;
      });
    const bare = VOICES.some((voice) => bench.design.voices[voice].hysteresisOhms === null);
    const flickers =
      (step.setup.source === 'stage' && changes > 6) ||
      bench.light.lamp.kind !== null ||
      step.controls.includes('mains lamp') ||
      bare;
    expect(step.notices.includes('flickers in the ear')).toBe(flickers);
  });

  test('the camera is asked for with its notice, its caution, and never switched on by itself', () => {
    const camera = step.controls.includes('camera');
    expect(step.notices.includes('camera')).toBe(camera);
    if (camera) expect(lesson.cautions).toContain('camera');
    expect(step.setup.changes.some(({ control }) => control === 'camera')).toBe(false);
    // Without one the stage's light stands in.
    if (step.setup.source === 'camera') expect(luxOf(bench.light).A).toBeGreaterThan(0);
  });

  test('the loudest peak stays what the instrument gives: no step makes it louder than its own bound', () => {
    const { jack } = instrumentOf(bench.design);
    expect(Number.isFinite(jack.boundVolts)).toBe(true);
    expect(jack.boundVolts).toBeLessThanOrEqual(1.05 * instrumentOf(LESSON_DESIGN).jack.boundVolts);
  });
});

test('lessons that sound carry the caution for hearing, and those with a lamp that ripples the one for lamps', () => {
  for (const lesson of LESSONS) {
    const sounds = lesson.steps.some(({ stages }) => stages.tone !== 'hidden' || stages.gate !== 'hidden');
    expect(lesson.cautions.includes('sound'), lesson.id).toBe(sounds);
    if (lesson.steps.some(({ controls }) => controls.includes('mains lamp')))
      expect(lesson.cautions).toContain('light');
    expect(cautionsAt(...lesson.cautions).length).toBeGreaterThan(0);
  }
});

test('a lamp’s ripple is in the sound and not in what is drawn', () => {
  const { step } = steps.find(({ name }) => name === 'lamp-ripple/how-often')!;
  const program = programOf(benchOf(step).light);
  const drawn = Array.from({ length: 100 }, (_, i) => meanLuxAt(program, 'A', i / 997));
  expect(Math.max(...drawn)).toBe(Math.min(...drawn));
  expect(figureValue({ of: 'stutters a second', voice: 'A' }, benchOf(step))).toBeGreaterThan(50);
});
