import { afterEach, describe, expect, test } from 'vitest';
import { INTERVAL_NAMES } from '../../src/design/pitch.ts';
import { readDrawer } from '../../src/plan/drawer-file.ts';
import { setLocale } from '../../src/quantity/format.ts';
import { readHour } from '../../src/quantity/hour.ts';
import { parseQuantity } from '../../src/quantity/parse.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { benchWords, logWords, soundCheckWords } from '../../src/words/bench.ts';
import { germanFinder } from '../../src/words/de-faults.ts';
import { germanKit } from '../../src/words/de-kit.ts';
import { germanBench, germanKitLists, germanKitLog, germanSoundCheck } from '../../src/words/de-kit-lists.ts';
import { germanOrder, germanOrderLines } from '../../src/words/de-order.ts';
import { dielectricNames, intervalNames, pitch, trimmerNames } from '../../src/words/de-pitch.ts';
import { pitchFound } from '../../src/words/de-pitch-found.ts';
import { room } from '../../src/words/de-room.ts';
import { roomAnswer } from '../../src/words/de-room-answer.ts';
import { roomWords as germanRoomWords } from '../../src/words/de-room-words.ts';
import { typedNumber } from '../../src/words/de-typed.ts';
import { kitViewWords } from '../../src/words/en-kit.ts';
import { DIELECTRIC_NAMES, pitchWords, TRIMMER_NAMES } from '../../src/words/en-pitch.ts';
import { foundWords } from '../../src/words/en-pitch-found.ts';
import { describeWords } from '../../src/words/en-room.ts';
import { answerWords } from '../../src/words/en-room-answer.ts';
import { finderWords } from '../../src/words/faults.ts';
import { kitWords } from '../../src/words/kit.ts';
import { orderLines, orderWords } from '../../src/words/order.ts';
import { roomWords } from '../../src/words/room.ts';
import { BENCH, KIT, KIT_LOG, ORDER_LINES, SOUND_CHECK } from './german-kit-samples.ts';
import { ANSWER, FOUND, PITCH, PLAIN, ROOM, ROOM_WORDS } from './german-samples.ts';

type Said = readonly [path: string, english: string, german: string];
type Samples = Readonly<Record<string, readonly (readonly unknown[])[]>>;

const LISTS: readonly (readonly [string, object, object, Samples])[] = [
  ['pitch', pitchWords, pitch, PITCH],
  ['pitch found', foundWords, pitchFound, FOUND],
  ['dielectrics', DIELECTRIC_NAMES, dielectricNames, {}],
  ['trimmers', TRIMMER_NAMES, trimmerNames, {}],
  ['room', describeWords, room, ROOM],
  ['room answer', answerWords, roomAnswer, ANSWER],
  ['room words', roomWords, germanRoomWords, ROOM_WORDS],
  ['kit', kitViewWords, germanKit, KIT],
  ['kit lists', kitWords, germanKitLists, {}],
  ['order lines', orderLines, germanOrderLines, ORDER_LINES],
  ['order', orderWords, germanOrder, {}],
  ['bench', benchWords, germanBench, BENCH],
  ['kit log', logWords, germanKitLog, KIT_LOG],
  ['sound check', soundCheckWords, germanSoundCheck, SOUND_CHECK],
  ['finder', finderWords, germanFinder, {}],
];

/** Said alike in both languages. */
const ALIKE: ReadonlySet<string> = new Set([
  // A saved drawer, or kit log, is read again by the English names of its columns.
  ...['value', 'tolerance', 'kind', 'quantity', 'price'],
  ...['kit', 'fault', 'minutes', 'readings', 'lost'],
  ...['SVG', 'CSV', 'timer', 'Timer', 'parts', 'classroom', 'foyer', '440', 'Schottky'],
]);

/** What may stand in both: numbers, voices, parts by their letters, units, file and standard names, samples. */
const LETTERS =
  /\b(?:[ABCabcxy]|RA|RB|Hz|[kM]?Ω|[kM]?V|[munpµ]?F|lx|s|ms|mm|cm|m|h|E\d+|cd|multi-turn|C0G|X7R|Y5V)\b|[kM]?Ω|[♯σ°·×]/g;
const wordless = (text: string): boolean => !/\p{L}/u.test(text.replaceAll(LETTERS, ''));

afterEach(() => setLocale('en-GB'));

/** Both lists side by side in one locale: every word, and what every sentence makes of its samples. */
function walk(english: unknown, german: unknown, samples: Samples, path: string, said: Said[]): void {
  expect(typeof german, path).toBe(typeof english);
  if (typeof english === 'string') {
    said.push([path, english, german as string]);
  } else if (typeof english === 'function') {
    const calls = samples[path] ?? PLAIN;
    for (const [i, given] of calls.entries())
      walk(english(...given), (german as typeof english)(...given), {}, `${path} (${i})`, said);
  } else {
    expect(Array.isArray(german), path).toBe(Array.isArray(english));
    expect(Object.keys(german as object).toSorted(), path).toEqual(Object.keys(english as object).toSorted());
    for (const [key, value] of Object.entries(english as object))
      walk(value, (german as Record<string, unknown>)[key], samples, path ? `${path}.${key}` : key, said);
  }
}

const saidIn = (english: object, german: object, samples: Samples): readonly Said[] => {
  const said: Said[] = [];
  walk(english, german, samples, '', said);
  return said;
};

/** Every function of a list with its path. */
function functionsOf(list: object, path = ''): readonly (readonly [string, unknown])[] {
  return Object.entries(list).flatMap(([key, value]) => {
    const here = path ? `${path}.${key}` : key;
    if (typeof value === 'function') return [[here, value] as const];
    return typeof value === 'object' && value !== null ? functionsOf(value, here) : [];
  });
}

describe.each(LISTS)('the German of %s', (_name, english, german, samples) => {
  test('has every word of the English and no other, and none left in English', () => {
    const left = saidIn(english, german, samples).filter(
      ([, one, other]) => one === other && !wordless(one) && !ALIKE.has(one),
    );
    expect(left).toEqual([]);
  });

  test('asks for no more than the English gives', () => {
    const wants = new Map(functionsOf(english));
    for (const [path, of] of functionsOf(german))
      expect((of as () => void).length, path).toBeLessThanOrEqual((wants.get(path) as () => void).length);
    for (const path of Object.keys(samples)) expect([...wants.keys()], path).toContain(path);
  });

  test('makes whole sentences with decimal commas', () => {
    setLocale('de-DE');
    for (const [path, one, text] of saidIn(english, german, samples)) {
      expect(text, path).not.toMatch(/undefined|NaN|null|\[object|Infinity/);
      // A sample put in where a word belongs stands alike in both; a formatted number never does.
      const samplesOf: readonly string[] = path.includes('(') ? (one.match(POINTED) ?? []) : [];
      expect(
        (text.match(POINTED) ?? []).filter((number) => !samplesOf.includes(number)),
        path,
      ).toEqual([]);
      expect(text, path).not.toMatch(/ {2}|\s$|^\s|\b(?:the|and|of|to|with|is) /);
      expect(text.trim() === '', path).toBe(one.trim() === '');
    }
  });
});

const POINTED = /\d+\.\d+/g;

test('notes are named as in German: H for B, B for A sharp', () => {
  expect(pitch.wanted.note('B3', 0)).toBe('H3');
  expect(pitch.wanted.note('A♯3', -12)).toBe('B3 −12 Cent');
  expect(pitchFound.curve.voice('A', 'F♯4', 0, 370, 5)).toContain('Fis4');
  // What comes here was named before.
  expect(pitchFound.noteAt('B3', 233.1)).toMatch(/^B3,/);
});

test('every interval has a German name with its own article', () => {
  expect(Object.keys(intervalNames)).toEqual([...INTERVAL_NAMES]);
  expect(pitch.wanted.between(600, 'tritone', 'equal')).toBe('ein Tritonus');
  expect(pitch.wanted.between(702, 'fifth', 'just')).toBe('eine Quinte in reiner Stimmung');
});

test('what the drawer’s German hint and complaints offer can be typed as offered', () => {
  const offered = /etwa (.*?), (.*?) oder (.*?)\. Auch/.exec(pitch.drawer.linesHint)!.slice(1);
  const read = readDrawer(offered.join('\n'));
  expect(read.bad).toEqual([]);
  expect([read.resistors.length, read.trimmers.length, read.capacitors.length]).toEqual([1, 1, 1]);
  expect(read.capacitors[0]!.price).toBe(0.12);
  const kinds = /wird: (.*)\.$/.exec(pitch.drawer.why['unknown word']('rot'))![1]!;
  for (const kind of kinds.replaceAll(/ \(.*?\)/g, '').split(', '))
    expect(readDrawer(`47n ${kind}`).bad.filter(({ problem }) => problem.kind === 'unknown word')).toEqual(
      [],
    );
  expect(readDrawer(`${pitch.drawer.csvHeads.join(';')}\n4k7;1 %;resistor;5;0,2`).resistors).toHaveLength(1);
});

test('what a box prints in German reads back as the same value (seed 7)', () => {
  setLocale('de-DE');
  const random = uniformFrom(7);
  const values = [13.405, 1.125, -0.125, 999.125, 52.52, 0, 1, 20_500, 12_345.6];
  for (let i = 0; i < 200; i++) values.push(Number(((random() - 0.5) * 10 ** (i % 6)).toPrecision(4)));
  for (const value of values) {
    const read = (text: string, unit: RegExp) => parseQuantity(text.replace(unit, ''), 'number');
    expect(read(typedNumber(value, 6), /$^/)).toEqual({ ok: true, value });
    expect(read(room.field.degrees(value), /°$/)).toEqual({ ok: true, value });
    expect(read(pitch.field.centsPrinted(Number(value.toPrecision(5))), /\s*cents?$/i)).toEqual({
      ok: true,
      value: Number(value.toPrecision(5)),
    });
  }
  for (const value of [1.125, 12.5, 0.6, 0.0125, 0.001125]) {
    const length = parseQuantity(room.field.metres(value), 'length');
    expect(length.ok && length.value).toBeCloseTo(value, 12);
    const share = parseQuantity(room.field.share(value), 'share');
    expect(share.ok && share.value).toBeCloseTo(value, 12);
  }
  for (const hour of [0, 9.5, 16.75]) expect(readHour(room.field.clock(hour))).toBe(hour);
  const examples = /als (\S+) oder (\S+)\.$/.exec(room.field.hour('spät'))!.slice(1);
  expect(examples.map(readHour)).toEqual([14.5, 14.5]);
});
