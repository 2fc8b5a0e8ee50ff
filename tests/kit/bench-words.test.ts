/** What the bench says: every verdict, answer and unit has its sentence, and the sentence holds its facts. */
import { expect, test } from 'vitest';
import { bandsOf, checkResistor, readBands } from '../../src/kit/codes.ts';
import { earKey } from '../../src/kit/fault-finder.ts';
import {
  bandTroubleWords,
  bandWords,
  measured,
  measuredRange,
  shareWords,
  soundCheckWords,
  valueVerdictWords,
} from '../../src/words/bench.ts';
import { earWords, finderWords } from '../../src/words/faults.ts';

test('bands are read out, and trouble with them names the colour and the place', () => {
  const bands = bandsOf(4700, 4, 0.05);
  expect(bands.ok && bandWords(bands.bands)).toBe('yellow violet red gold');
  const trouble = (words: string) => {
    const reading = readBands(words);
    return reading.ok ? '' : bandTroubleWords(reading.problem);
  };
  expect(trouble('mauve red red')).toContain('mauve');
  expect(trouble('red')).toContain('read 1');
  expect(trouble('gold red red')).toContain('place 1');
});

test('a part in the hand is judged in words', () => {
  const verdict = (wanted: number, words: string) => {
    const reading = readBands(words);
    return reading.ok ? valueVerdictWords(checkResistor(wanted, reading)) : '';
  };
  expect(verdict(1000, 'brown black red gold')).toBe('The right part.');
  expect(verdict(100, 'brown black red gold')).toContain('Too large by a factor of 10');
  expect(verdict(120, 'brown black black red brown')).toContain('other end');
  expect(verdict(3300, 'brown black red gold')).toContain('Another value');
});

test('readings are written as a meter shows them', () => {
  const plain = (text: string) => text.replaceAll('\u00A0', ' ');
  expect(plain(measured(0.762, 'V'))).toBe('0.76 V');
  expect(plain(measured(0.0185, 'A'))).toBe('18.5 mA');
  expect(plain(measured(394.2, 'Hz'))).toBe('394.2 Hz');
  expect(plain(measuredRange(1, 2, 'V'))).toBe('1.00 V to 2.00 V');
  expect(shareWords(0.999)).toBe('nearly certain');
  expect(plain(shareWords(0.42))).toBe('42 %');
});

test('the trimmer’s way is told in degrees and direction', () => {
  expect(soundCheckWords.turn(0.1, 240)).toBe('Turn it 24° clockwise.');
  expect(soundCheckWords.turn(-0.05, 240)).toBe('Turn it 12° anticlockwise.');
  expect(soundCheckWords.turn(0, 240)).toBe('Leave the trimmer.');
  expect(soundCheckWords.turn(null, 240)).toContain('out of this trimmer’s reach');
});

test('ear answers and findings have words', () => {
  expect(earKey('A shaded', 'B')).toBe('A shaded, B');
  expect(earWords.pitch['far higher']).toContain('whistle');
  expect(finderWords.cutPower).toContain('Cut the power');
});
