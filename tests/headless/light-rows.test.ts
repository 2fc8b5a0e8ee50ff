/** Rows of light, read strictly. */
import { describe, expect, test } from 'vitest';
import { readRows } from '../../src/headless/light-rows.ts';
import { luxAt } from '../../src/light/program.ts';

const head = 'time_s,lux_a,lux_b\n';
const programOf = (text: string) => {
  const read = readRows(text);
  if (!read.ok) throw new Error(read.sentence);
  return read.program;
};
const sentenceOf = (text: string) => {
  const read = readRows(text);
  return read.ok ? 'taken' : read.sentence;
};

test('light runs straight between rows and holds before the first and after the last', () => {
  const light = programOf(`${head}1,100,10\n3,300,0\n4,0,50\n`);
  const at = (t: number) => [luxAt(light, 'A', t), luxAt(light, 'B', t)];
  expect(at(0)).toEqual([100, 10]);
  expect(at(1)).toEqual([100, 10]);
  expect(at(2)).toEqual([200, 5]);
  expect(at(3.5)).toEqual([150, 25]);
  expect(at(4)).toEqual([0, 50]);
  expect(at(4000)).toEqual([0, 50]);
});

test('two rows at one time are a jump', () => {
  const light = programOf(`${head}0,100,1\n2,100,1\n2,5,1\n`);
  expect(luxAt(light, 'A', 1.999)).toBe(100);
  expect(luxAt(light, 'A', 2)).toBe(5);
});

test.each([
  ['Windows line ends', 'time_s,lux_a,lux_b\r\n0,1,2\r\n'],
  ['a byte order mark', `\uFEFF${head}0,1,2`],
  ['blanks and empty lines', 'time_s, lux_a, lux_b\n\n 0 , 1 , 2 \n\n'],
  ['quoted headings', '"time_s","lux_a","lux_b"\n0,1,2\n'],
  ['exponents', `${head}0,1e0,0.2E1\n`],
])('%s are read', (_title, text) => {
  const light = programOf(text);
  expect([luxAt(light, 'A', 0), luxAt(light, 'B', 0)]).toEqual([1, 2]);
});

describe('refused, with the line named', () => {
  test.each([
    ['an empty file', '', 'time_s,lux_a,lux_b'],
    ['another heading', 'seconds,lux\n0,1\n', 'seconds,lux'],
    ['no heading', '0,1,2\n', '“0,1,2”'],
    ['no rows', head, 'no row'],
    ['a missing column', `${head}0,1,2\n1,5\n`, 'line 3'],
    ['a column too many', `${head}0,1,2,3\n`, 'line 2'],
    ['a word', `${head}0,1,2\n1,bright,2\n`, 'line 3'],
    ['an empty place', `${head}0,,2\n`, 'line 2'],
    ['infinity', `${head}0,1e999,2\n`, 'line 2'],
    ['semicolons', 'time_s,lux_a,lux_b\n0;1;2\n', 'line 2'],
    ['light below darkness', `${head}0,1,-0.1\n`, 'line 2'],
    ['light brighter than any', `${head}0,2e6,1\n`, 'line 2'],
    ['time that runs backwards', `${head}0,1,2\n2,1,2\n1.9,1,2\n`, 'line 4'],
  ])('%s', (_title, text, part) => {
    expect(sentenceOf(text)).toContain(part);
    expect(sentenceOf(text)).toMatch(/^[^\n]*\.$/);
  });
});
