import { describe, expect, test } from 'vitest';
import { instrumentOf, momentIn } from '../../src/circuit/instrument.ts';
import { wordSeed } from '../../src/lesson/class-word.ts';
import { LESSON_DESIGN } from '../../src/lesson/lessons.ts';
import { SHEETS } from '../../src/lesson/sheet-values.ts';
import { rounded, type SheetQuestion, worksheetOf } from '../../src/lesson/worksheet.ts';
import { amountIn, filled, placesIn } from '../../src/words/amounts.ts';
import { CLASS_WORDS } from '../../src/words/class-words.ts';
import { LANGUAGES } from '../../src/words/spoken.ts';

const SEED = 2026;
const sheet = (number: number, seed = SEED) => worksheetOf(number, seed, LESSON_DESIGN);
/** What a pupil reads: every given value. */
const printed = (number: number, seed = SEED) =>
  JSON.stringify(sheet(number, seed).questions.map(({ id, given }) => [id, given]));

test(`1 000 pupil numbers have 1 000 different sheets (seed ${SEED})`, () => {
  const sheets = new Set<string>();
  for (let number = 1; number <= 1000; number++) sheets.add(printed(number));
  expect(sheets.size).toBe(1000);
});

test('a number and a seed always give the same sheet; another seed gives another', () => {
  expect(printed(17)).toBe(printed(17));
  expect(printed(17)).not.toBe(printed(17, SEED + 1));
});

test('a class word gives its own sheets, whatever its capitals: the seed is its FNV-1a hash (Noll’s test vectors)', () => {
  expect(wordSeed('a')).toBe(0xe40c292c);
  expect(wordSeed('foobar')).toBe(0xbf9cf968);
  expect(wordSeed(' FooBar ')).toBe(wordSeed('foobar'));
  expect(wordSeed('Ahorn')).not.toBe(wordSeed('Eiche'));
  // The same letter, put together in two ways.
  expect(wordSeed('\u00e4pfel')).toBe(wordSeed('a\u0308pfel'));
  expect(printed(17, wordSeed('maple'))).not.toBe(printed(17, wordSeed('oak')));
  expect(printed(17, wordSeed(''))).toBe(printed(17, 1));
});

test('neighbours share few values: hardly more than chance among eight choices would have it', () => {
  const givens = (number: number) => sheet(number).questions.map(({ given }) => JSON.stringify(given));
  let same = 0;
  let all = 0;
  for (let number = 1; number < 100; number++) {
    const [here, there] = [givens(number), givens(number + 1)];
    for (const [i, given] of here.entries()) {
      if (given === '{}') continue;
      all++;
      if (given === there[i]) same++;
    }
  }
  expect(same / all).toBeLessThan(1 / 6);
});

test('there are more sheets than pupils', () => {
  expect(SHEETS).toBeGreaterThan(1e6);
});

describe(`answers by the handbook, from the printed values, for 200 numbers (seed ${SEED})`, () => {
  const V = 9;
  const find = (questions: readonly SheetQuestion[], ...ids: string[]) =>
    questions.find(({ id }) => ids.includes(id))!;
  const given = (question: SheetQuestion, name: string) => question.given[name]!.value!;
  const answer = (question: SheetQuestion) => {
    const found = question.answer;
    if (found.kind !== 'number') throw new Error(`${question.id} has no number`);
    return found;
  };
  const numbers = Array.from({ length: 200 }, (_, i) => i + 1);

  test('a pupil who computes with what is printed is right within what is accepted', () => {
    for (const number of numbers) {
      const { questions } = sheet(number);
      const cell = find(questions, 'cell-ohms');
      const slope = given(cell, 'slope');
      const ohms = given(cell, 'r10') * (given(cell, 'lux') / 10) ** -slope;
      const node = find(questions, 'node-volts-bottom', 'node-volts-top');
      const share = given(node, 'cell') / (given(node, 'cell') + given(node, 'fixed'));
      const reference = find(questions, 'reference');
      const frequency = find(questions, 'frequency');
      const [ra, rb, farads] = ['ra', 'rb', 'farads'].map((name) => given(frequency, name)) as [
        number,
        number,
        number,
      ];
      const first = find(questions, 'first-high');
      const expected: readonly (readonly [SheetQuestion, number])[] = [
        [cell, ohms],
        [find(questions, 'half-light'), 2 ** slope],
        [node, V * (node.id === 'node-volts-bottom' ? share : 1 - share)],
        [
          reference,
          (V * given(reference, 'below')) / (given(reference, 'above') + given(reference, 'below')),
        ],
        // TI SLFS022, astable.
        [frequency, 1 / (Math.LN2 * (ra + 2 * rb) * farads)],
        [find(questions, 'duty'), (ra + rb) / (ra + 2 * rb)],
        [first, (given(first, 'high') * Math.log(3)) / Math.LN2],
      ];
      for (const [question, value] of expected) {
        const { rounded: shown, rounding } = answer(question);
        expect(
          Math.abs(shown.value! / value - 1),
          `${number} ${question.id} ${shown.value} ${value}`,
        ).toBeLessThanOrEqual(rounding.accept);
      }
    }
  });

  test('what stands on the answer sheet is the model’s value, rounded as is said', () => {
    for (const number of numbers.slice(0, 40))
      for (const question of sheet(number).questions) {
        if (question.answer.kind !== 'number') continue;
        const { exact, rounded: shown, rounding } = question.answer;
        expect(shown.value).toBe(rounded(exact.value!, rounding));
        const step =
          rounding.by === 'decimals'
            ? 10 ** -rounding.n
            : 10 ** (Math.floor(Math.log10(Math.abs(exact.value!))) + 1 - rounding.n);
        expect(Math.abs(shown.value! - exact.value!)).toBeLessThanOrEqual(step / 2 + 1e-12);
        expect(['figures', 'decimals']).toContain(rounding.by);
      }
  });

  test('choices follow from the printed values, and are clear: no node within a tenth of the reference', () => {
    const seen = new Set<string>();
    for (const number of numbers) {
      const { questions } = sheet(number);
      const way = find(questions, 'which-way-bottom', 'which-way-top');
      expect(way.answer).toEqual({
        kind: 'choice',
        option: way.id === 'which-way-bottom' ? 'rises' : 'falls',
      });
      const reference = answer(find(questions, 'reference')).exact.value!;
      const gate = find(questions, 'sounding-below', 'sounding-above');
      const node = given(gate, 'node');
      const sounds = gate.id === 'sounding-below' ? node < reference : node > reference;
      expect(gate.answer).toEqual({ kind: 'choice', option: sounds ? 'sounding' : 'silent' });
      expect(Math.abs(node / reference - 1)).toBeGreaterThan(0.09);
      seen.add(`${way.id} ${sounds}`);
    }
    // Both kinds of divider, each both sounding and silent, occur.
    expect(seen.size).toBe(4);
  });

  test('the answers are those of the whole instrument of the sheet, as every other place reads it', () => {
    for (const number of numbers.slice(0, 10)) {
      const { design, questions } = sheet(number);
      const { voices } = instrumentOf(design);
      expect(answer(find(questions, 'frequency')).exact.value).toBe(voices.A.cycle.frequency);
      expect(answer(find(questions, 'duty')).exact.value).toBe(voices.A.cycle.dutyCycle);
      expect(answer(find(questions, 'first-high')).exact.value).toBe(voices.A.cycle.firstHighSeconds);
      expect(answer(find(questions, 'reference')).exact.value).toBe(voices.A.referenceVolts);
      const lux = given(find(questions, 'sounding-below', 'sounding-above'), 'lux');
      const moment = momentIn(design, instrumentOf(design), { A: lux, B: lux }, { A: true, B: true });
      expect(find(questions, 'sounding-below', 'sounding-above').answer).toEqual({
        kind: 'choice',
        option: moment.A.sounding ? 'sounding' : 'silent',
      });
    }
  });

  test('no sheet tells an answer in a later question', () => {
    for (const number of numbers) {
      const { questions } = sheet(number);
      for (const [i, question] of questions.entries()) {
        if (question.answer.kind !== 'number') continue;
        const { kind, value } = question.answer.rounded;
        // The cell's ohms are handed on, so that one slip does not spoil the rest.
        for (const later of questions.slice(i + 1))
          for (const amount of Object.values(later.given))
            if (question.id !== 'cell-ohms')
              expect(amount.kind === kind && amount.value === value, `${number} ${question.id}`).toBe(false);
      }
    }
  });
});

test.each(LANGUAGES)('every question is a whole sentence (%s)', (language) => {
  const { sheet: words } = CLASS_WORDS[language];
  const ids = new Set<string>();
  for (let number = 1; number <= 12; number++)
    for (const { id, given, answer } of sheet(number).questions) {
      ids.add(id);
      const sentence = filled(language, words.questions[id], given);
      expect(sentence).not.toMatch(/[{}]|NaN/);
      expect(placesIn(words.questions[id]).toSorted()).toEqual(Object.keys(given).toSorted());
      const told =
        answer.kind === 'choice' ? words.options[answer.option] : amountIn(language, answer.rounded);
      expect(told).toMatch(/\S/);
    }
  expect([...ids].toSorted()).toEqual(Object.keys(words.questions).toSorted());
});
