/** Recordings of light: guessed, read and refused; every bad row named by its number. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cellsOf, DELIMITERS, TIME_FORMATS, timeOf } from '../../src/light/log-cells.ts';
import { type LogReading, readLog } from '../../src/light/log-file.ts';
import { guessLog, LOG_LIMITS, type LogChoices, LUX_UNITS, type LuxUnit } from '../../src/light/log-guess.ts';
import { type LogProblem, type LogRefusal, lightLogWords } from '../../src/words/light-log.ts';

function choicesOf(text: string): LogChoices {
  const guess = guessLog(text);
  if (!guess.ok) throw new Error(lightLogWords.refusal(guess.refusal));
  return guess.choices;
}

function read(text: string, change: Partial<LogChoices> = {}): Extract<LogReading, { ok: true }> {
  const reading = readLog(text, { ...choicesOf(text), ...change });
  if (!reading.ok) throw new Error(lightLogWords.refusal(reading.refusal));
  return reading;
}

const rows = ({ points }: Extract<LogReading, { ok: true }>) =>
  Array.from(points.times, (time, i) => [time, points.lux.A[i], points.lux.B[i]]);

describe('the smallest form', () => {
  test('is guessed and read', () => {
    const text = 'time_s,lux_a,lux_b\n0,300,280\n0.5,12.5,280\n1,300,5\n';
    expect(guessLog(text)).toEqual({
      ok: true,
      choices: {
        delimiter: ',',
        decimal: '.',
        header: 1,
        columns: { time: 0, luxA: 1, luxB: 2 },
        timeFormat: 'seconds',
        unit: 'lx',
      },
      names: ['time_s', 'lux_a', 'lux_b'],
      preview: [
        { row: 2, cells: ['0', '300', '280'] },
        { row: 3, cells: ['0.5', '12.5', '280'] },
        { row: 4, cells: ['1', '300', '5'] },
      ],
    });
    expect(rows(read(text))).toEqual([
      [0, 300, 280],
      [0.5, 12.5, 280],
      [1, 300, 5],
    ]);
    expect(read(text)).toMatchObject({ kept: 3, dropped: 0, problems: [] });
  });
});

test('names and cells that a page shows turn, hide and break no words around them', () => {
  const long = 'x'.repeat(100);
  const guess = guessLog(`time,lux\u202E_a,${long}\n0,300,\u2066a\n1,300,b\u0000\n`);
  expect(guess).toMatchObject({
    names: ['time', 'lux\uFFFD_a', `${'x'.repeat(39)}…`],
    preview: [{ cells: ['0', '300', '\uFFFDa'] }, { cells: ['1', '300', 'b\uFFFD'] }],
  });
});

describe('other forms', () => {
  test.each([
    ['semicolons and decimal commas', 'Zeit (s);Lux A;Lux B\n0,0;300,5;10,25\n0,5;12,5;9,0\n'],
    ['only decimal commas, no header', '0,0;300,5;10,25\n0,5;12,5;9,0\n'],
    ['tabs and decimal commas', 'Zeit\tA [lx]\tB [lx]\n0,0\t300,5\t10,25\n0,5\t12,5\t9,0'],
    ['quoted cells between commas', '"time","lux a","lux b"\n"0,0","300,5","10,25"\n"0,5","12,5","9,0"\n'],
    [
      'carriage returns, a mark, remarks',
      '\uFEFF# by hand\r\ntime,luxA,luxB\r\n\r\n0,300.5,10.25\r\n# gap\r\n0.5,12.5,9\r\n',
    ],
    ['milliseconds by name', 'elapsed (ms),lux left,lux right\n0,300.5,10.25\n500,12.5,9\n'],
    ['milliseconds since 1970', 'timestamp,lux_a,lux_b\n1767225600000,300.5,10.25\n1767225600500,12.5,9\n'],
    [
      'ISO with a zone',
      'time,luxA,luxB\n2026-03-01T22:15:03.250Z,300.5,10.25\n2026-03-01T23:15:03.750+01:00,12.5,9\n',
    ],
    [
      'ISO with a space and decimal commas',
      'Datum;Lux1;Lux2\n2026-03-01 22:15:03,250;300,5;10,25\n2026-03-01 22:15:03,750;12,5;9,0\n',
    ],
    [
      'a day first, with points',
      'Datum;Lux1;Lux2\n01.03.2026 22:15:03,25;300,5;10,25\n01.03.2026 22:15:03,75;12,5;9,0\n',
    ],
    [
      'a month first, with strokes',
      'Date,Lux1,Lux2\n3/28/2026 10:15:03.25 PM,300.5,10.25\n3/28/2026 10:15:03.75 PM,12.5,9\n',
    ],
    ['a clock over midnight', 'Time,Lux1,Lux2\n23:59:59.750,300.5,10.25\n00:00:00.250,12.5,9\n'],
    ['a stopwatch', 'Time,Lux1,Lux2\n00:59.75,300.5,10.25\n01:00.25,12.5,9\n'],
    ['minutes', 'time/min,lux,lux\n0,300.5,10.25\n0.00833333333333333333,12.5,9\n'],
    ['milliseconds in cells', 'Time,Lux1,Lux2\n0 ms,300.5 lx,10.25lux\n500 ms,12.5 lx,9 lx\n'],
    ['units in cells', 'Time,Lux1,Lux2\n0 s,300.5 lx,10.25lux\n0.5 s,12.5 lx,9 lx\n'],
    ['kilolux', 'Time (s),A (klx),B (klx)\n0,0.3005,0.01025\n0.5,0.0125,0.009\n'],
    [
      'a preamble of the instrument',
      'Light meter 12\nSerial: 7\n\nTime (s),Lux 1,Lux 2\n0,300.5,10.25\n0.5,12.5,9\n',
    ],
    ['a spreadsheet’s hint', 'sep=;\nTime;Lux1;Lux2\n0;300.5;10.25\n0.5;12.5;9\n'],
    ['more columns in another order', 'nr,battery,lux B,lux A,time\n1,97,10.25,300.5,0\n2,97,9,12.5,0.5\n'],
    [
      'a date and a clock apart',
      'Date;Time;Lux1;Lux2\n2026-03-01;22:15:03.25;300.5;10.25\n2026-03-01;22:15:03.75;12.5;9\n',
    ],
  ])('%s: the same two rows come out', (name, text) => {
    const { columns } = choicesOf(text);
    const swapped = name.startsWith('more columns');
    const reading = read(text, swapped ? { columns: { ...columns, luxA: 3, luxB: 2 } } : {});
    expect(reading.problems).toEqual([]);
    expect(rows(reading)).toEqual([
      [0, 300.5, 10.25].map((value) => expect.closeTo(value, 9)),
      [0.5, 12.5, 9].map((value) => expect.closeTo(value, 6)),
    ]);
  });

  test('with one column of light both sensors get it', () => {
    const text = 'Time,Illuminance (lux),Latitude,Longitude\n0,300,1,2\n1,5,1,2\n';
    expect(choicesOf(text).columns).toEqual({ time: 0, luxA: 1, luxB: null });
    expect(rows(read(text))).toEqual([
      [0, 300, 300],
      [1, 5, 5],
    ]);
  });

  test('thousands set apart are numbers, with either decimal mark', () => {
    expect(rows(read('t;lux\n0;1.234,5\n1;12 000,0\n'))).toEqual([
      [0, 1234.5, 1234.5],
      [1, 12000, 12000],
    ]);
    expect(rows(read('t,lux\n0,"1,234.5"\n1,12000.0\n'))[0]![1]).toBe(1234.5);
  });

  test('foot-candles become lux', () => {
    expect(rows(read('Time (s),Light (fc)\n0,10\n1,20\n'))[0]![1]).toBeCloseTo(107.639, 3);
  });

  test('a choice corrects the guess: 03/04 is the fourth of March or the third of April', () => {
    const text = 'Date,Lux\n03/04/2026 10:00,5\n03/05/2026 10:00,6\n';
    expect(choicesOf(text).timeFormat).toBe('month-first');
    expect(rows(read(text)).at(-1)![0]).toBe(86_400);
    expect(rows(read(text, { timeFormat: 'day-first' })).at(-1)![0]).toBe(30 * 86_400);
  });
});

describe('bad rows', () => {
  const named = (text: string) =>
    read(text).problems.map(({ row, column, reason }) => `${row} ${column} ${reason}`);

  test('are named by their number in the file, remarks and empty lines counted; the rest are kept', () => {
    const text = [
      '# from the kitchen', // 1
      'time_s,lux_a,lux_b', // 2
      '0,300,300', // 3
      'zero,300,300', // 4
      '', // 5
      '1,?,300', // 6
      '2,300', // 7
      '3,-1,300', // 8
      '4,300,1e9', // 9
      '5,10,20', // 10
      '5,11,20', // 11
      '4.5,12,20', // 12
      ',1,2', // 13
      '6,13,20', // 14
    ].join('\n');
    expect(named(text)).toEqual([
      '4 time unreadable',
      '6 luxA unreadable',
      '7 luxB missing',
      '8 luxA negative',
      '9 luxB too bright',
      '11 time same time',
      '12 time earlier',
      '13 time missing',
    ]);
    expect(rows(read(text))).toEqual([
      [0, 300, 300],
      [5, 10, 20],
      [6, 13, 20],
    ]);
  });

  test('one time far ahead goes alone and does not cost the rows after it', () => {
    const text = 't,lux\n0,1\n1,2\n2000,3\n3,4\n4,5\n';
    expect(named(text)).toEqual(['4 time ahead']);
    expect(rows(read(text)).map(([time]) => time)).toEqual([0, 1, 3, 4]);
  });

  test('a bad first row below the header is named too', () => {
    expect(named('time_s,lux_a,lux_b\n0,x,\n1,2,3\n2,3,4\n')).toEqual(['2 luxA unreadable']);
    expect(named('0,,x\n1,2,3\n2,3,4\n')).toEqual(['1 luxA missing']);
  });

  test('at most so many are listed, all are counted', () => {
    const text = `t,lux\n0,1\n${'1,x\n'.repeat(LOG_LIMITS.listed + 50)}2,3\n`;
    const reading = readLog(text, {
      delimiter: ',',
      decimal: '.',
      header: 1,
      columns: { time: 0, luxA: 1, luxB: null },
      timeFormat: 'seconds',
      unit: 'lx',
    });
    expect(reading).toMatchObject({ ok: true, kept: 2, dropped: LOG_LIMITS.listed + 50 });
    expect(reading.ok && reading.problems.length).toBe(LOG_LIMITS.listed);
  });
});

describe('refusals', () => {
  const refused = (text: string): LogRefusal | null => {
    const guess = guessLog(text);
    return guess.ok ? null : guess.refusal;
  };

  test('empty, without columns, or too large', () => {
    for (const text of ['', '\n\n', '# only a remark\n']) expect(refused(text)).toEqual({ kind: 'empty' });
    for (const text of ['hello', 'a,b\nc,d\n', '1\n2\n3\n', '{"format":"x"}'])
      expect(refused(text)).toEqual({ kind: 'no columns' });
    const large = 'x'.repeat(LOG_LIMITS.characters + 1);
    expect(refused(large)).toMatchObject({ kind: 'too large', most: LOG_LIMITS.characters });
    const choices = choicesOf('t,lux\n0,1\n1,2\n');
    expect(readLog(large, choices)).toMatchObject({ ok: false, refusal: { kind: 'too large' } });
  });

  test('more rows than a recording may have; exactly as many are read', { timeout: 60_000 }, () => {
    const many = (count: number) => `t,lux\n${Array.from({ length: count }, (_, i) => `${i},1`).join('\n')}`;
    const choices = choicesOf('t,lux\n0,1\n1,2\n');
    expect(readLog(many(LOG_LIMITS.rows), choices)).toMatchObject({ ok: true, kept: LOG_LIMITS.rows });
    expect(readLog(many(LOG_LIMITS.rows + 1), choices)).toEqual({
      ok: false,
      refusal: { kind: 'too many rows', most: LOG_LIMITS.rows },
    });
  });

  test('when not one row can be read as chosen, the first says why', () => {
    const text = 't,lux\n0,1\n1,2\n';
    expect(readLog(text, { ...choicesOf(text), timeFormat: 'iso' })).toEqual({
      ok: false,
      refusal: { kind: 'no rows', first: { row: 2, column: 'time', read: '0', reason: 'unreadable' } },
    });
  });
});

describe('whatever the text', () => {
  const piece = fc.oneof(
    {
      weight: 3,
      arbitrary: fc.constantFrom(',', ';', '\t', '\n', '\r\n', '"', '""', '.', ' ', '-', '#', ':'),
    },
    { weight: 3, arbitrary: fc.double().map(String) },
    { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 8 }) },
    {
      weight: 1,
      arbitrary: fc.constantFrom('time', 'lux', '2026-03-01T10:00', '12:30', '\uFEFF', 'sep=;', '99:99:99'),
    },
  );
  const messy = fc.array(piece, { maxLength: 80 }).map((parts) => parts.join(''));
  const choices: fc.Arbitrary<LogChoices> = fc.record({
    delimiter: fc.constantFrom(...DELIMITERS),
    decimal: fc.constantFrom('.', ','),
    header: fc.integer({ min: -1, max: 5 }),
    columns: fc.record({
      time: fc.integer({ min: -1, max: 4 }),
      luxA: fc.integer({ min: 0, max: 4 }),
      luxB: fc.option(fc.integer({ min: 0, max: 4 })),
    }),
    timeFormat: fc.constantFrom(...TIME_FORMATS),
    unit: fc.constantFrom(...(Object.keys(LUX_UNITS) as LuxUnit[])),
  });

  test('nothing throws, what is kept can be played, and every sentence is one', () => {
    fc.assert(
      fc.property(messy, choices, (text, chosen) => {
        const guess = guessLog(text);
        const readings: LogReading[] = [readLog(text, chosen)];
        if (guess.ok) readings.push(readLog(text, guess.choices));
        for (const reading of readings) {
          if (!reading.ok) {
            expect(lightLogWords.refusal(reading.refusal)).toMatch(/\.$/);
            continue;
          }
          const { times, lux } = reading.points;
          expect(times.length).toBeGreaterThan(0);
          for (let i = 0; i < times.length; i++) {
            expect(Number.isFinite(times[i]!)).toBe(true);
            if (i > 0) expect(times[i]!).toBeGreaterThan(times[i - 1]!);
            for (const level of [lux.A[i]!, lux.B[i]!])
              expect(level >= 0 && level <= LOG_LIMITS.lux).toBe(true);
          }
          for (const problem of reading.problems)
            expect(lightLogWords.problem(problem)).toMatch(new RegExp(`^Row ${problem.row}: .*\\.$`, 's'));
        }
      }),
      { seed: 21, numRuns: 1500 },
    );
  });

  test('cells joined with any delimiter, quoted where needed, are cut as they were', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.string().map((text) => text.replaceAll(/[\r\n]/g, '').trim()),
          { minLength: 1, maxLength: 6 },
        ),
        fc.constantFrom(...DELIMITERS),
        (cells, delimiter) => {
          const line = cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(delimiter);
          expect(cellsOf(line, delimiter)).toEqual(cells);
        },
      ),
      { seed: 22 },
    );
  });
});

describe('recordings written in every way', () => {
  interface Dialect {
    readonly delimiter: (typeof DELIMITERS)[number];
    readonly decimal: '.' | ',';
    readonly format: 'seconds' | 'milliseconds' | 'epoch' | 'clock' | 'iso';
    readonly hasHeader: boolean;
    readonly two: boolean;
    readonly ending: '\n' | '\r\n' | '\r';
    readonly mark: boolean;
  }
  const dialect: fc.Arbitrary<Dialect> = fc
    .record({
      delimiter: fc.constantFrom(...DELIMITERS),
      decimal: fc.constantFrom<'.' | ','>('.', ','),
      format: fc.constantFrom<Dialect['format']>('seconds', 'milliseconds', 'epoch', 'clock', 'iso'),
      hasHeader: fc.boolean(),
      two: fc.boolean(),
      ending: fc.constantFrom<Dialect['ending']>('\n', '\r\n', '\r'),
      mark: fc.boolean(),
    })
    // Without a header milliseconds and seconds look alike.
    .map((any) => (any.format === 'milliseconds' ? { ...any, hasHeader: true } : any));

  const pad = (value: number) => String(value).padStart(2, '0');

  /** A time in whole milliseconds, written. */
  function timeText(ms: number, { format, decimal }: Dialect): string {
    const fraction = String(ms % 1000).padStart(3, '0');
    const seconds = Math.floor(ms / 1000);
    const clock = `${pad(Math.floor(seconds / 3600) % 24)}:${pad(Math.floor(seconds / 60) % 60)}:${pad(seconds % 60)}`;
    switch (format) {
      case 'seconds':
        return `${seconds}${decimal}${fraction}`;
      case 'milliseconds':
        return String(ms);
      case 'epoch':
        return String(1_767_225_600_000 + ms);
      case 'clock':
        return `${clock}.${fraction}`;
      case 'iso':
        return `2026-01-${pad(1 + Math.floor(seconds / 86_400))}T${clock}.${fraction}Z`;
    }
  }

  const numberText = (hundredths: number, decimal: string) =>
    `${Math.floor(hundredths / 100)}${decimal}${pad(hundredths % 100)}`;

  interface Reading {
    readonly gap: number;
    readonly A: number;
    readonly B: number;
    readonly fault: 'none' | 'word' | 'negative' | 'bright' | 'short' | 'remark' | 'blank';
  }
  const reading: fc.Arbitrary<Reading> = fc.record({
    gap: fc.integer({ min: 1, max: 40_000 }),
    A: fc.integer({ min: 0, max: 9_999_999 }),
    B: fc.integer({ min: 0, max: 9_999_999 }),
    fault: fc.oneof(
      { weight: 8, arbitrary: fc.constant<'none'>('none') },
      {
        weight: 1,
        arbitrary: fc.constantFrom<Reading['fault']>(
          'word',
          'negative',
          'bright',
          'short',
          'remark',
          'blank',
        ),
      },
    ),
  });

  test('are guessed right, come back as they were, and every fault is named by its row', () => {
    fc.assert(
      fc.property(
        dialect,
        fc.integer({ min: 0, max: 86_399_999 }),
        fc.array(reading, { minLength: 6, maxLength: 40 }),
        (way, start, readings) => {
          // Sound rows at the start, so that there is something to guess from; a clock never stands for half a day.
          const sound = readings.map((one, i) => (i < 5 ? { ...one, fault: 'none' as const } : one));
          const cell = (text: string) => (text.includes(way.delimiter) ? `"${text}"` : text);
          const lines: string[] = [];
          if (way.hasHeader)
            lines.push(
              [
                way.format === 'milliseconds' ? 'time (ms)' : 'time',
                'lux_a',
                ...(way.two ? ['lux_b'] : []),
              ].join(way.delimiter),
            );
          const expected: [number, number, number][] = [];
          const faults: string[] = [];
          let ms = start;
          for (const { gap, A, B, fault } of sound) {
            ms += gap;
            const levels = way.two ? [A, B] : [A];
            const cells = [timeText(ms, way), ...levels.map((level) => numberText(level, way.decimal))].map(
              cell,
            );
            const last = cells.length - 1;
            const column = way.two ? 'luxB' : 'luxA';
            const row = lines.length + 1;
            if (fault === 'word') cells[last] = 'dark';
            if (fault === 'negative') cells[last] = '-5';
            if (fault === 'bright') cells[last] = '300000';
            if (fault === 'short') cells.pop();
            const reason = {
              word: 'unreadable',
              negative: 'negative',
              bright: 'too bright',
              short: 'missing',
            };
            if (fault === 'remark') lines.push('# here someone came in');
            else if (fault === 'blank') lines.push('');
            else lines.push(cells.join(way.delimiter));
            if (fault === 'none') expected.push([ms, A / 100, (way.two ? B : A) / 100]);
            else if (fault !== 'remark' && fault !== 'blank')
              faults.push(`${row} ${column} ${reason[fault]}`);
          }
          const text = (way.mark ? '\uFEFF' : '') + lines.join(way.ending) + way.ending;
          const got = read(text);
          const name = ({ row, column, reason }: LogProblem) => `${row} ${column} ${reason}`;
          expect(got.problems.map(name)).toEqual(faults);
          expect(got).toMatchObject({ kept: expected.length, dropped: faults.length });
          const zero = expected[0]![0];
          for (const [i, [time, A, B]] of expected.entries()) {
            expect(got.points.times[i]!).toBeCloseTo((time - zero) / 1000, 6);
            expect(got.points.lux.A[i]!).toBe(A);
            expect(got.points.lux.B[i]!).toBe(B);
          }
        },
      ),
      { seed: 23, numRuns: 400 },
    );
  });
});

test('a cell without end is read as none, at once, and a recording is no wider than any logger writes', () => {
  const long = ' '.repeat(1_000_000);
  for (const cell of [`1${long}5`, `"1${long}5"`, `a${'"'.repeat(1_000_000)}`, `2026-03-01 1${long}2:00`]) {
    const text = `time,lux\n1,5\n2,6\n${cell},7\n3,${cell}\n4,8\n`;
    expect(read(text)).toMatchObject({ kept: 3, dropped: 2 });
    for (const each of cellsOf(cell, ',')) expect(each.length).toBeLessThan(200);
  }
  const wide = `${'1,'.repeat(18_000)}\n1,5\n`;
  expect(cellsOf(wide, ',')).toHaveLength(200);
  expect(cellsOf(`"a"${wide}`, ',')).toHaveLength(200);
});

test('times so far apart that their difference is no number are none', () => {
  const text = 'time_s,lux\n-1e308,5\n0,5\n1e308,6\n';
  expect(read(text)).toMatchObject({ kept: 1, dropped: 2 });
});

test.each([
  ['2026-03-01T10:00Z', 'iso', Date.UTC(2026, 2, 1, 10) / 1000],
  ['20260301T100000Z', 'iso', Date.UTC(2026, 2, 1, 10) / 1000],
  ['2026-03-01T10:00:00-0330', 'iso', Date.UTC(2026, 2, 1, 13, 30) / 1000],
  ['2026/03/01 12:00:00 AM', 'iso', Date.UTC(2026, 2, 1) / 1000],
  ['2026-02-30T10:00', 'iso', null],
  ['2026-03-01T25:00', 'iso', null],
  ['2026-03-01', 'iso', null],
  ['31.12.2026 23:59:59', 'day-first', Date.UTC(2026, 11, 31, 23, 59, 59) / 1000],
  ['26:00:01', 'clock', 26 * 3600 + 1],
  ['12:60:00', 'clock', null],
  ['13:00 pm', 'clock', null],
  ['75:30.5', 'stopwatch', 75 * 60 + 30.5],
  ['1e3', 'seconds', 1000],
  ['1,5', 'seconds', null],
  ['Infinity', 'seconds', null],
  ['0x10', 'seconds', null],
] as const)('the time %s read as %s', (cell, format, seconds) => {
  expect(timeOf(cell, format, '.')).toBe(seconds);
});
