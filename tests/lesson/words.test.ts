import { describe, expect, test } from 'vitest';
import { CONTROL_IDS, CONTROLS } from '../../src/lesson/controls.ts';
import { amountsFor, NOTICES, STAGE_MODES, STAGES } from '../../src/lesson/lesson.ts';
import { LESSON_DESIGN, LESSONS } from '../../src/lesson/lessons.ts';
import { amountIn, filled, LANGUAGES, noteIn, placesIn } from '../../src/words/amounts.ts';
import { CAUTION_PLACES, cautionsAt } from '../../src/words/cautions.ts';
import { CLASS_WORDS, cautionsIn, lessonText, localRulesIn } from '../../src/words/class-words.ts';

/** Every text of a tree with its path; null stays a value, so that a text left out shows. */
function textsOf(tree: unknown, path = ''): readonly (readonly [string, string | null])[] {
  if (typeof tree === 'string' || tree === null) return [[path, tree]];
  return Object.entries(tree as object).flatMap(([key, value]) => textsOf(value, `${path}.${key}`));
}

describe.each(LANGUAGES)('in %s', (language) => {
  const words = CLASS_WORDS[language];

  test('every lesson, step, question and option has its words, and no word is for nothing', () => {
    expect(Object.keys(words.lessons).toSorted()).toEqual(LESSONS.map(({ id }) => id).toSorted());
    for (const lesson of LESSONS) {
      const text = lessonText(language, lesson.id)!;
      expect(text.aim).not.toBe('');
      expect(text.wrongIdeas.length).toBeGreaterThan(0);
      expect(Object.keys(text.steps)).toEqual(lesson.steps.map(({ id }) => id));
      for (const step of lesson.steps) {
        const { question, options } = text.steps[step.id]!;
        expect(question === null, step.id).toBe(step.question === null);
        expect(Object.keys(options)).toEqual(step.question?.kind === 'choice' ? step.question.options : []);
      }
    }
  });

  test('every amount a text wants is one its step works out, and has a value', () => {
    for (const lesson of LESSONS)
      for (const step of lesson.steps) {
        const amounts = amountsFor(step, LESSON_DESIGN);
        expect(amountsFor(step, LESSON_DESIGN)).toBe(amounts);
        const text = lessonText(language, lesson.id)!.steps[step.id]!;
        for (const [path, each] of textsOf(text))
          for (const name of placesIn(each ?? '')) {
            const where = `${lesson.id}.${step.id}${path}: {${name}}`;
            expect(Object.keys(amounts), where).toContain(name);
            expect(amounts[name]!.value, where).not.toBeNull();
          }
        for (const [, each] of textsOf(text))
          expect(filled(language, each ?? '', amounts)).not.toMatch(/[{}]/);
      }
  });

  test('no number is typed into a lesson: outside formulas every figure is filled in', () => {
    const typed = textsOf(words.lessons).filter(
      ([path, text]) => !path.endsWith('.algebra') && /\d/.test((text ?? '').replaceAll(/\{[^}]*\}/g, '')),
    );
    expect(typed).toEqual([]);
  });

  test('parts, ways of showing, controls and their choices, and notices have names', () => {
    expect(Object.keys(words.stages)).toEqual([...STAGES]);
    expect(Object.keys(words.modes)).toEqual([...STAGE_MODES]);
    expect(Object.keys(words.notices)).toEqual([...NOTICES]);
    expect(Object.keys(words.controls)).toEqual([...CONTROL_IDS]);
    const choices = Object.values(CONTROLS).flatMap((each) => (each.kind === 'choice' ? each.options : []));
    expect(Object.keys(words.choices).toSorted()).toEqual([...new Set([...choices, 'none'])].toSorted());
  });

  test('sentences are short: none has more than 34 words', () => {
    for (const [path, text] of textsOf(words.lessons))
      for (const sentence of (text ?? '').split(/[.?!…:;]\s/))
        expect(sentence.split(/\s+/).length, `${path}: ${sentence}`).toBeLessThanOrEqual(34);
  });

  test('a gate is never told as open or closed', () => {
    for (const [path, text] of textsOf(words))
      expect(text ?? '', path).not.toMatch(
        /gate (is )?(open|closed|shut)|(Gatter|Gate) (ist )?(offen|geschlossen|zu)\b/i,
      );
  });
});

test('German has every text English has, each with the same amounts, and none is the English one left standing', () => {
  const english = textsOf(CLASS_WORDS.en);
  const german = new Map(textsOf(CLASS_WORDS.de));
  expect([...german.keys()]).toEqual(english.map(([path]) => path));
  const same: string[] = [];
  for (const [path, text] of english) {
    const other = german.get(path) ?? null;
    expect(other === null, path).toBe(text === null);
    expect(placesIn(other ?? '').toSorted(), path).toEqual(placesIn(text ?? '').toSorted());
    if (text !== null && text === other && !path.endsWith('.algebra')) same.push(path);
  }
  // Two languages may share a short word; a whole sentence they do not.
  expect(same.filter((path) => german.get(path)!.includes(' '))).toEqual([]);
});

test('cautions are told in both languages for every place, with one source', () => {
  for (const place of CAUTION_PLACES) {
    const english = cautionsAt(place);
    const german = cautionsIn('de', [place]);
    expect(german.map(({ source }) => source)).toEqual(english.map(({ source }) => source));
    for (const [i, caution] of german.entries()) {
      expect(caution.words, caution.hazard).not.toBe(english[i]!.words);
      expect(caution.words.length).toBeGreaterThan(40);
    }
    expect(cautionsIn('en', [place])).toEqual(english);
  }
  expect(localRulesIn('de')).not.toBe(localRulesIn('en'));
});

test('German notes: H for B, B for B flat, Cis for C sharp', () => {
  const names = ['C4', 'C♯4', 'D♯3', 'E4', 'F♯5', 'G♯2', 'A4', 'A♯3', 'B3', 'C♯-1'];
  expect(names.map((name) => noteIn('de', name))).toEqual([
    'C4',
    'Cis4',
    'Dis3',
    'E4',
    'Fis5',
    'Gis2',
    'A4',
    'B3',
    'H3',
    'Cis-1',
  ]);
  expect(names.map((name) => noteIn('en', name))).toEqual(names);
});

test('numbers have the reader’s own decimal mark and a unit', () => {
  const ohms = { kind: 'ohms', value: 2386 } as const;
  expect([amountIn('en', ohms), amountIn('de', ohms)]).toEqual(['2.39\u00A0kΩ', '2,39\u00A0kΩ']);
  expect(amountIn('en', { kind: 'lux', value: 80.35 })).toBe('80.4\u00A0lx');
  expect(amountIn('de', { kind: 'lux', value: null })).toBe('keine');
});

test('words are filled in as they are, and a name nobody gave stays visible in its braces', () => {
  expect(filled('de', CLASS_WORDS.de.met.waiting, { task: 'Dimmt die Lampe.' })).toBe(
    'Noch zu tun: Dimmt die Lampe.',
  );
  expect(filled('en', '{known} and {unknown}', { known: { kind: 'count', value: 3 } })).toBe(
    '3 and {unknown}',
  );
});
