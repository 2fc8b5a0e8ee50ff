/** The words behind `npm run take --`. */
import { describe, expect, test } from 'vitest';
import { readArguments } from '../../src/headless/arguments.ts';

const usual = [
  '--design',
  'd.json',
  '--light',
  'l.csv',
  '--seconds',
  '5',
  '--out',
  'o.wav',
  '--report',
  'r.json',
];
const without = (name: string) => usual.filter((_, i) => usual[i] !== name && usual[i - 1] !== name);
const sentenceOf = (args: readonly string[]) => {
  const read = readArguments(args);
  return read.kind === 'wrong' ? read.sentence : `not wrong: ${read.kind}`;
};

test('the five needed ones make a take at 48000 samples a second with the design’s own noise', () => {
  expect(readArguments(usual)).toEqual({
    kind: 'take',
    wish: {
      design: 'd.json',
      light: 'l.csv',
      out: 'o.wav',
      report: 'r.json',
      seconds: 5,
      rate: 48_000,
      noiseVolts: null,
    },
  });
});

test('rate and noise may be given, in any order, with a blank or an equals sign', () => {
  const read = readArguments(['--noise', '0', '--rate=44100', ...usual]);
  expect(read).toMatchObject({ kind: 'take', wish: { rate: 44_100, noiseVolts: 0 } });
});

test.each([
  ['0.001', 0.001],
  ['1e1', 10],
  ['.5', 0.5],
  ['3600', 3600],
])('%s seconds are taken', (written, seconds) => {
  expect(readArguments([...without('--seconds'), '--seconds', written])).toMatchObject({ wish: { seconds } });
});

describe('refused in one sentence', () => {
  test.each([
    ['an option that there is not', [...usual, '--loud', '1'], '--loud'],
    ['a value without an option', ['take', ...usual], 'take'],
    ['an option given twice', [...usual, '--out', 'p.wav'], '--out is given twice'],
    ['an option without its value', [...without('--out'), '--out'], '--out needs a value'],
    ['an option where a value should be', ['--out', ...without('--out')], '--out needs a value'],
    ['an empty value', [...without('--out'), '--out='], '--out needs a value'],
    ['nothing at all', [], '--design, --light, --seconds, --out, --report'],
    ...['--design', '--light', '--seconds', '--out', '--report'].map(
      (name) => [`no ${name}`, without(name), name] as const,
    ),
    ...['', 'abc', '5s', '5,5', 'NaN', 'Infinity', '0x10', '1e999'].map(
      (read) => [`“${read}” seconds`, [...without('--seconds'), `--seconds=${read}`], '--seconds'] as const,
    ),
    ...['0', '-1', '3600.1'].map(
      (read) => [`${read} seconds`, [...without('--seconds'), '--seconds', read], '3600'] as const,
    ),
    ['less than a sample', [...without('--seconds'), '--seconds', '1e-9'], 'shorter than one sample'],
    ...['7999', '192001', '0', 'fast'].map(
      (read) => [`a rate of ${read}`, [...usual, '--rate', read], '--rate'] as const,
    ),
    ['half a sample', [...usual, '--rate', '48000.5'], 'whole number'],
    ['noise below nothing', [...usual, '--noise', '-0.001'], '--noise'],
    ['noise beyond a design’s', [...usual, '--noise', '1'], '--noise'],
  ] as [string, string[], string][])('%s', (_title, args, part) => {
    const sentence = sentenceOf(args);
    expect(sentence).toContain(part);
    expect(sentence).toMatch(/\.$/);
    expect(sentence).not.toMatch(/\n|undefined|NaN(?!”)/);
  });
});

test('help is asked for with --help or -h', () => {
  expect(readArguments(['--help']).kind).toBe('help');
  expect(readArguments([...usual, '-h']).kind).toBe('help');
});
