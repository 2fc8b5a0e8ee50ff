/** Every list of words in every language: nothing left out, nothing left in English. */
import { afterEach, describe, expect, test } from 'vitest';
import { nameOfNote, parseNote } from '../../src/plan/notes.ts';
import { germanLists } from '../../src/words/de.ts';
import { englishNote, germanNote } from '../../src/words/de-notes.ts';
import '../../src/words/cautions.ts';
import { words } from '../../src/words/en.ts';
import '../../src/words/bench.ts';
import '../../src/words/en-about.ts';
import '../../src/words/en-class.ts';
import '../../src/words/en-kit.ts';
import '../../src/words/en-keeping.ts';
import '../../src/words/en-lessons.ts';
import '../../src/words/en-pitch.ts';
import '../../src/words/en-pitch-found.ts';
import '../../src/words/en-room.ts';
import '../../src/words/en-room-answer.ts';
import '../../src/words/en-scenes.ts';
import '../../src/words/faults.ts';
import '../../src/words/kit.ts';
import '../../src/words/light-log.ts';
import '../../src/words/link.ts';
import '../../src/words/order.ts';
import '../../src/words/room.ts';
import { parseQuantity } from '../../src/quantity/parse.ts';
import { faradsText, ohmsText, voltsText } from '../../src/views/edits.ts';
import { englishLists, speak, spoken, spokenLanguage } from '../../src/words/spoken.ts';
import '../../src/words/warnings.ts';

/** Said alike in both: names of themselves, units, and trade words that German has taken over. */
const SHARED = new Set(
  'Lampnote English Deutsch RA C A B V Hz AA dBV dBu rms CMOS bipolar Timer Pull-up Sensor Gate Link Text Name SVG CSV h:mm:ss m:ss V+ REF DIS CONT OUT PLUS orange gold Schottky lx'
    .toLowerCase()
    .split(' '),
);
const isShared = (word: string): boolean =>
  word
    .toLowerCase()
    .split(/[\s,·]+/)
    .every((token) => token.length === 1 || SHARED.has(token) || !/\p{L}/u.test(token));

interface Leaf {
  readonly path: string;
  readonly word: unknown;
}

/** Every text, sentence and number of a tree with its path. */
function leavesOf(tree: unknown, path: string): readonly Leaf[] {
  if (typeof tree !== 'object' || tree === null) return [{ path, word: tree }];
  return Object.entries(tree).flatMap(([key, word]) => leavesOf(word, `${path}.${key}`));
}

const shapeOf = (leaves: readonly Leaf[]): readonly string[] =>
  leaves.map(
    ({ path, word }) => `${path}: ${typeof word}${typeof word === 'function' ? ` of ${word.length}` : ''}`,
  );

/** Data: where a caution stands, formulas, and the heads by which a saved drawer or kit log is read again. */
const isData = (path: string): boolean =>
  /^cautions\.all\.\d+\.place$|\.csvHeads\.\d+$|^kit log\.columns\.\d+$/.test(path) ||
  path.endsWith('.algebra');

/** A source that is nothing but a publication's own name. */
const isTitle = (path: string, word: string): boolean =>
  path.endsWith('.source') && /^(TI [A-Z0-9]+, [\d.]+|WCAG [\d., ;]+Epilepsy Society \(UK\))$/.test(word);

afterEach(() => speak('en'));

test.each([
  ['ohms', ohmsText, 'resistance', [1234, 12_340, 123_400, 1_234_000, 47, 4700]],
  ['farads', faradsText, 'capacitance', [1.234e-7, 8.2e-8, 1.2345e-8]],
  ['volts', voltsText, 'voltage', [1.234, 9, 0.1234]],
] as const)(
  'a box of %s holds in German what is read back as the same value',
  (_of, text, quantity, values) => {
    speak('de', germanLists);
    for (const value of values) {
      const read = parseQuantity(text(value), quantity);
      expect(read.ok && read.value / value, text(value)).toBeCloseTo(1, 3);
    }
    expect(text(values[0])).toContain(',');
  },
);

test('German has every list that English tells, and no other', () => {
  expect(Object.keys(germanLists).toSorted()).toEqual([...englishLists().keys()].toSorted());
});

describe.each(Object.entries(germanLists))('the German list “%s”', (name, german) => {
  const english = leavesOf(englishLists().get(name), name);
  const translated = leavesOf(german, name);

  test('has the same words, each taking as many amounts', () => {
    expect(shapeOf(translated).toSorted()).toEqual(shapeOf(english).toSorted());
  });

  test('has no word that is empty, or left in English', () => {
    const inEnglish = new Map(english.map(({ path, word }) => [path, word]));
    const left = translated.filter(
      ({ path, word }) =>
        typeof word === 'string' &&
        !isData(path) &&
        !isTitle(path, word) &&
        (word === '' ? inEnglish.get(path) !== '' : word === inEnglish.get(path) && !isShared(word)),
    );
    expect(left).toEqual([]);
  });

  test('has no sentence in which three English words stand together', () => {
    const inEnglish = new Map(english.map(({ path, word }) => [path, String(word)]));
    // Comments and the names of cases are no words that anybody reads.
    const bare = (code: string): string =>
      code.replaceAll(/\/\/.*$|\/\*[\s\S]*?\*\/|(?:case|===|!==) (["'])[^"']*\1|(["'])[^"']*\2(?=:)/gm, '');
    const threes = (code: string): readonly string[] =>
      [...bare(code).matchAll(/(?<![\p{L}.])(?=(\p{L}{2,} \p{L}{2,} \p{L}{2,})(?![\p{L}]))/gu)]
        .map((match) => match[1] ?? '')
        .filter((three) => !/\b(return|typeof|const|case|new|if|of)\b/.test(three));
    for (const { path, word } of translated) {
      if (typeof word !== 'function') continue;
      const before = threes(inEnglish.get(path) ?? '');
      expect(
        threes(String(word)).filter((three) => before.includes(three)),
        path,
      ).toEqual([]);
    }
  });
});

test('a list told to the language, and every part kept of it, speaks what is spoken', () => {
  const list = spoken('greetings for this test', {
    day: 'good day',
    part: { night: (n: number) => `night ${n}` },
  });
  const { part } = list;
  expect([list.day, part.night(2)]).toEqual(['good day', 'night 2']);
  speak('de', {
    ...germanLists,
    'greetings for this test': { day: 'guten Tag', part: { night: (n: number) => `Nacht ${n}` } },
  });
  expect(spokenLanguage()).toBe('de');
  expect([list.day, part.night(2), Object.values(list)[0]]).toEqual(['guten Tag', 'Nacht 2', 'guten Tag']);
  expect(words.strip.voice('B3', 4, 246.9)).toBe('H3 +4 Cent · 246,9\u00A0Hz');
  speak('en');
  expect([list.day, part.night(2)]).toEqual(['good day', 'night 2']);
  expect(words.strip.voice('B3', 4, 246.9)).toBe('B3 +4 cents · 246.9\u00A0Hz');
});

test('a list without a translation stays English while German is spoken', () => {
  const list = spoken('not translated for this test', { word: 'word' });
  speak('de', germanLists);
  expect(list.word).toBe('word');
});

test('every note there is goes to its German name and back, and means the same pitch', () => {
  for (let number = 0; number <= 127; number += 1) {
    const name = nameOfNote(number);
    expect(parseNote(englishNote(germanNote(name))), name).toEqual({ ok: true, noteNumber: number });
  }
});

test.each([
  ['H3', 59],
  ['h3', 59],
  ['B3', 58],
  ['b3', 58],
  ['B♭3', 58],
  ['Hes3', 58],
  ['His3', 60],
  ['Cis4', 61],
  ['Des4', 61],
  ['es4', 63],
  ['As3', 56],
  ['Ases3', 55],
  ['Fisis3', 55],
  ['F♯3', 54],
  ['A4 +12 Cent', 69.12],
  ['Fis3 −5,5 Cent', 53.945],
])('German %s is read as note number %f', (typed, noteNumber) => {
  const read = parseNote(englishNote(typed));
  expect(read.ok && read.noteNumber).toBeCloseTo(noteNumber, 9);
});

test.each([
  ['C♯4', 'Cis4'],
  ['Bb3', 'B3'],
  ['B3 +12 c', 'H3 +12 c'],
  ['E♭4', 'Es4'],
  ['A♭3', 'As3'],
  ['G♭2', 'Ges2'],
  ['Ebb4', 'Eses4'],
  ['xyz', 'xyz'],
  ['', ''],
])('English %s is shown in German as %s', (english, german) => {
  expect(germanNote(english)).toBe(german);
});
