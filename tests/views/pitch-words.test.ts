/** What the place Pitch says of a wish: the heading, what stands in the way, and numbers as typed. */
import { expect, test } from 'vitest';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { DEFAULT_PITCH, type Pitch, type Wish } from '../../src/design/pitch.ts';
import { wishProblems } from '../../src/plan/wish.ts';
import { problemSentence, remedy } from '../../src/views/pitch/problem-words.ts';
import { centsReader, hertzField, hertzReader, wholeReader } from '../../src/views/pitch/readers.ts';
import { wantedHeading, wantedPieces } from '../../src/views/pitch/wanted.ts';

const wished = (wish: Partial<Wish>, drawer: Partial<Pitch['drawer']> = {}): Pitch => ({
  ...DEFAULT_PITCH,
  wish: { ...DEFAULT_PITCH.wish, ...wish },
  drawer: { ...DEFAULT_PITCH.drawer, ...drawer },
});

test('the heading names the notes wanted, in whatever way they are wished for', () => {
  expect(wantedHeading(wished({ notes: { A: 'a3', B: 'e4' } }))).toBe('Wanted: A3 and E4');
  const interval = { from: 'A', name: 'fifth', direction: 'up', cents: 0 } as const;
  expect(wantedHeading(wished({ way: 'interval', notes: { A: 'A3', B: '?' }, interval }))).toBe(
    'Wanted: A3 and E4',
  );
  expect(wantedHeading(wished({ way: 'frequencies', hertz: { A: 330, B: 262 } }))).toBe(
    'Wanted: 330.0\u00A0Hz and 262.0\u00A0Hz',
  );
  expect(wantedHeading(wished({ notes: { A: 'H3', B: 'e4' } }))).toBe('Wanted: not clear yet');
});

test('beneath it stand the interval by name, the tuning, the batch and where the parts come from', () => {
  const [interval, tuning, kits, source] = wantedPieces(
    wished({ notes: { A: 'A3', B: 'E4' }, a4Hertz: 442 }),
  );
  expect(interval).toBe('a fifth');
  expect(tuning).toContain('442');
  expect(kits).toBe('30 kits');
  expect(source).toContain('E12 and E6');
  expect(wantedPieces(wished({ notes: { A: 'A3', B: 'E4 +30 c' } }))[0]).toBe('730 cents apart');
});

const empty = { use: 'have' } as const;
test.each<[string, Pitch]>([
  ['an unreadable note', wished({ notes: { A: 'C', B: 'E4' } })],
  ['a frequency below hearing', wished({ way: 'frequencies', hertz: { A: 5, B: 262 } })],
  [
    'a sweep that falls',
    wished({ way: 'sweep', sweep: { ...DEFAULT_PITCH.wish.sweep, A: { lowHertz: 900, highHertz: 300 } } }),
  ],
  ['a duty from more to less', wished({ duty: { least: 0.7, most: 0.5 } })],
  [
    'nothing but polarised capacitors',
    wished(
      {},
      {
        order: {
          ...DEFAULT_PITCH.drawer.order,
          capacitors: { series: 'E6', dielectric: 'electrolytic', tolerance: 0.2 },
        },
      },
    ),
  ],
])('%s is named, and the nearest that works takes it out of the way', (_title, pitch) => {
  const problems = wishProblems(pitch);
  expect(problems).toHaveLength(1);
  expect(problemSentence(problems[0]!, pitch).length).toBeGreaterThan(20);
  const command = remedy(problems[0]!, pitch)!;
  const mended = command({ ...DEFAULT_DESIGN, pitch });
  expect(wishProblems(mended.pitch)).toEqual([]);
});

test('an empty drawer is told part by part, and only the person can mend it', () => {
  const pitch = wished({}, empty);
  const problems = wishProblems(pitch);
  expect(problems.map((problem) => problemSentence(problem, pitch))).toEqual([
    expect.stringContaining('no resistors'),
    expect.stringContaining('no trimmers'),
    expect.stringContaining('no capacitors'),
  ]);
  expect(problems.map((problem) => remedy(problem, pitch))).toEqual([null, null, null]);
});

test.each([
  ['440', 440],
  ['440 Hz', 440],
  ['1.2 kHz', 1200],
  ['1,2k', 1200],
])('“%s” is read as %f hertz', (text, hertz) => {
  expect(hertzReader({ min: 1, max: 1e5 })(text)).toEqual({ ok: true, value: hertz });
});

test('a frequency as its box prints it reads back the same', () => {
  const read = hertzReader({ min: 1, max: 1e5 });
  for (const hertz of [0.5e1, 261.6256, 1046.502, 12_345.67])
    expect(read(hertzField(hertz))).toEqual({ ok: true, value: hertz });
});

test('cents may carry a sign of either kind, counts are whole, and refusals say what was read', () => {
  const cents = centsReader({ min: -1200, max: 1200 });
  expect(cents('+12 c')).toEqual({ ok: true, value: 12 });
  expect(cents('−7 cents')).toEqual({ ok: true, value: -7 });
  expect(cents('1300')).toMatchObject({ ok: false, message: expect.stringContaining('“1300”') });
  const whole = wholeReader({ min: 1, max: 1000 });
  expect(whole('20')).toEqual({ ok: true, value: 20 });
  expect(whole('2.5')).toMatchObject({ ok: false, message: expect.stringContaining('“2.5”') });
  expect(whole('')).toMatchObject({ ok: false, message: expect.stringContaining('nothing') });
});
