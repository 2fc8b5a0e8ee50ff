import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { decodeLesson } from '../../src/lesson/decode.ts';
import { LESSONS } from '../../src/lesson/lessons.ts';

const folder = new URL('../../presets/lessons/', import.meta.url);
const files = readdirSync(folder);
const read = (file: string): unknown => JSON.parse(readFileSync(new URL(file, folder), 'utf8'));

test('there are at least nine lessons, each of 3 to 8 minutes, in one line without gaps', () => {
  expect(LESSONS.length).toBeGreaterThanOrEqual(9);
  expect(LESSONS.map(({ order }) => order)).toEqual(LESSONS.map((_, i) => i + 1));
  for (const { minutes } of LESSONS) {
    expect(minutes).toBeGreaterThanOrEqual(3);
    expect(minutes).toBeLessThanOrEqual(8);
  }
});

test('every file of the folder is one of the lessons, named as it is', () => {
  expect(files.toSorted()).toEqual(LESSONS.map(({ id }) => `${id}.json`).toSorted());
});

test.each(files)('%s reads whole, and is kept as it was written', (file) => {
  const decoded = decodeLesson(read(file));
  expect(decoded).toEqual({ ok: true, lesson: read(file) });
});

describe('a lesson that is not one', () => {
  type Loose = Record<string, unknown>;
  const damaged = (change: (lesson: Loose & { steps: Loose[] }) => void): unknown => {
    const lesson = read('comparison.json') as Loose & { steps: Loose[] };
    change(lesson);
    return lesson;
  };
  const complaints = (value: unknown) => {
    const decoded = decodeLesson(value);
    return decoded.ok ? [] : decoded.complaints;
  };

  test.each([[null], [3], ['lesson'], [[]], [{ format: 'lampnote-design' }]])('%j is no lesson', (value) => {
    expect(complaints(value)).toEqual([{ kind: 'not a lesson' }]);
  });

  test.each<[string, (lesson: Loose & { steps: Loose[] }) => void, string, string]>([
    ['too long a lesson', (l) => (l['minutes'] = 45), 'minutes', '45'],
    ['a control there is not', (l) => (l.steps[0]!['controls'] = ['horn']), 'steps.0.controls.0', '"horn"'],
    [
      'a part of the picture left out',
      (l) => delete (l.steps[1]!['stages'] as Loose)['gate'],
      'steps.1.stages.gate',
      'nothing',
    ],
    [
      'a way of showing there is not',
      (l) => ((l.steps[1]!['stages'] as Loose)['gate'] = 'loud'),
      'steps.1.stages.gate',
      '"loud"',
    ],
    [
      'a behaviour there is not',
      (l) => (l.steps[2]!['watch'] = { kind: 'happy', voice: 'A' }),
      'steps.2.watch.kind',
      '"happy"',
    ],
    [
      'a figure there is not',
      (l) => (l.steps[0]!['figures'] = { mood: { of: 'mood', voice: 'A' } }),
      'steps.0.figures.mood.of',
      '"mood"',
    ],
    [
      'a change of a figure within a figure',
      (l) => {
        const changes = [{ control: 'lamp', value: { of: 'stop light', voice: 'C' } }];
        l.steps[0]!['figures'] = { x: { of: 'frequency', voice: 'A', changes } };
      },
      'steps.0.figures.x.changes.0.value.voice',
      '"C"',
    ],
    ['an entry too many', (l) => (l.steps[0]!['music'] = true), 'steps.0.music', '"music"'],
    ['a caution there is not', (l) => (l['cautions'] = ['bees']), 'cautions.0', '"bees"'],
  ])('%s is refused, and where it stands is said', (_what, change, path, readAs) => {
    expect(complaints(damaged(change))[0]).toMatchObject({ kind: 'value', path, read: readAs });
  });

  test('two steps of one name are refused: answers are kept by it', () => {
    expect(complaints(damaged(({ steps }) => (steps[1]!['id'] = steps[0]!['id'])))).toEqual([
      { kind: 'twice', path: 'steps', read: 'scales' },
    ]);
  });

  test('a right answer that is not offered is refused', () => {
    const strange = damaged(({ steps }) => {
      const { fact } = steps[0]!['question'] as { fact: { bands: { option: string }[] } };
      fact.bands[1]!.option = 'humming';
    });
    expect(complaints(strange)).toEqual([
      {
        kind: 'value',
        path: 'steps.0.question.fact.bands.1.option',
        read: '"humming"',
        accepts: { kind: 'choice', options: ['sounding', 'silent'] },
      },
    ]);
  });

  test('what would be accepted is said', () => {
    const [complaint] = complaints(damaged(({ steps }) => (steps[0]!['voices'] = 'C')));
    expect(complaint).toMatchObject({ accepts: { kind: 'choice', options: ['A', 'both'] } });
  });
});
