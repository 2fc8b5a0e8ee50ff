/** Every list of words in every language: nothing left out, nothing left in English. */
import { afterEach, describe, expect, test } from 'vitest';
import { nameOfNote, parseNote } from '../src/plan/notes.ts';
import { germanLists } from '../src/words/de.ts';
import { englishNote, germanNote } from '../src/words/de-notes.ts';
import '../src/words/cautions.ts';
import { words } from '../src/words/en.ts';
import '../src/words/en-class.ts';
import '../src/words/en-lessons.ts';
import '../src/words/en-pitch.ts';
import '../src/words/en-pitch-found.ts';
import '../src/words/en-room.ts';
import '../src/words/en-room-answer.ts';
import '../src/words/en-scenes.ts';
import '../src/words/light-log.ts';
import '../src/words/link.ts';
import '../src/words/room.ts';
import { englishLists, speak, spoken, spokenLanguage } from '../src/words/spoken.ts';
import '../src/words/warnings.ts';

/** Lists whose German is still to come: their places speak English as a whole. */
const AWAITED = ['pitch', 'pitch found', 'room', 'room answer', 'room words'];

/** What is the same in both: symbols, units, what names itself, trade words German has taken over. */
const SHARED =
  /^(?:[\W\d_]*|Lampnote|English|Deutsch|RA|C|V|Hz|rms|dBV|dBu|CMOS|bipolar|Timer|timer|Pull-up|pull-up|4 × AA|5 V|50 Hz|60 Hz|h:mm:ss|m:ss|sensor|Sensor|Gate|Link|Text|Name|A|B|P|N|F|R)$/i;

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

/** Data and names that are no words: where a caution stands, what a list is sorted by. */
const isData = (path: string): boolean =>
  /^cautions\.all\.\d+\.place$/.test(path) || path.endsWith('.algebra');

/** A source that is nothing but a publication's own name. */
const isTitle = (path: string, word: string): boolean =>
  path.endsWith('.source') && /^(TI [A-Z0-9]+, [\d.]+|WCAG [\d., ;]+Epilepsy Society \(UK\))$/.test(word);

afterEach(() => speak('en'));

test('German has every list that English tells, or it is awaited', () => {
  const told = [...englishLists().keys()].filter((name) => !AWAITED.includes(name));
  expect(
    Object.keys(germanLists)
      .filter((name) => !AWAITED.includes(name))
      .toSorted(),
  ).toEqual(told.toSorted());
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
        (word === '' ? inEnglish.get(path) !== '' : word === inEnglish.get(path) && !SHARED.test(word)),
    );
    expect(left).toEqual([]);
  });

  test('has no sentence in which three English words stand together', () => {
    const inEnglish = new Map(english.map(({ path, word }) => [path, String(word)]));
    // Of code, nothing has three bare words in a row but these.
    const threes = (code: string): readonly string[] =>
      [...code.matchAll(/(?<![\p{L}.])(?=(\p{L}{2,} \p{L}{2,} \p{L}{2,})(?![\p{L}]))/gu)]
        .map((match) => match[1] ?? '')
        .filter((three) => !/\b(return|typeof|const|case|new|if|of)\b|^too many rows$/.test(three));
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
