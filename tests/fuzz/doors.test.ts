/**
 * What comes from outside, spoilt in every way: at each door it is taken, kept in part, or refused with words in both
 * languages. Nothing is thrown, and what is let in is what a document may hold.
 */
import { deflateRawSync } from 'node:zlib';
import { afterEach, expect, test } from 'vitest';
import {
  crc32,
  languageIn,
  lessonIn,
  linkFor,
  linkSentence,
  placeIn,
  readLink,
  soundIn,
} from '../../src/app/address.ts';
import { complaintSentence } from '../../src/app/complaint.ts';
import { logLength, openedLog } from '../../src/app/playing-light.ts';
import { inBatch, takeLog } from '../../src/design/batch-commands.ts';
import { decode, decodeText, encodeText } from '../../src/design/decode.ts';
import { changeDrawer } from '../../src/design/pitch-commands.ts';
import { inRoom, replaceReadings } from '../../src/design/room-commands.ts';
import { readRows } from '../../src/headless/light-rows.ts';
import { logCsv, logRefusal, readLogCsv } from '../../src/kit/kit-log.ts';
import { pitchOf } from '../../src/kit/pitch-ear.ts';
import { decodeLesson } from '../../src/lesson/decode.ts';
import { LESSONS } from '../../src/lesson/lessons.ts';
import { startHourOf } from '../../src/light/log-clock.ts';
import { LOG_LIMITS } from '../../src/light/log-guess.ts';
import { readDrawer } from '../../src/plan/drawer-file.ts';
import { drawerText } from '../../src/plan/drawer-text.ts';
import { logComplaints } from '../../src/plan/measured-day.ts';
import { parseNote } from '../../src/plan/notes.ts';
import { readingsFrom } from '../../src/plan/room-shown.ts';
import { readHour } from '../../src/quantity/hour.ts';
import { parseQuantity } from '../../src/quantity/parse.ts';
import { words } from '../../src/words/en.ts';
import { lightLogWords } from '../../src/words/light-log.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';
import { seededDocuments } from './any-document.ts';
import { each } from './count.ts';
import { said } from './said.ts';
import { spoilers } from './spoilt.ts';

/** Longest text that is shown of what was read. */
const LONGEST = 700;

afterEach(() => {
  expect(Object.keys(Object.prototype), 'no name has crept into every object').toEqual([]);
});

const SPOILT_DESIGNS = 8000;
const SPOILT_LINKS = 6000;
const SPOILT_LOGS = 6000;
const OTHERS = 3000;

test('design files', async () => {
  await each(SPOILT_DESIGNS, 10_000, (seed) => {
    const { uniform, spoilText, spoilEntry } = spoilers(seed);
    const design = seededDocuments(seed).anyDocument();
    const text = uniform() < 0.6 ? spoilEntry(design) : spoilText(encodeText(design));
    const read = decodeText(text);
    if (read.ok) expect(decodeText(encodeText(read.design))).toEqual(read);
    else {
      expect(read.complaints.length).toBeGreaterThan(0);
      for (const complaint of read.complaints) said(() => complaintSentence(complaint));
    }
  });
});

test('links', async () => {
  /** A link whose checksum holds, whatever it packs. */
  const linkOf = (packed: Uint8Array): string => {
    const checked = Uint8Array.of(1, ...packed);
    const crc = new Uint8Array(4);
    new DataView(crc.buffer).setUint32(0, crc32(checked));
    return `#/listen?d=${Buffer.from([...crc, ...checked]).toString('base64url')}`;
  };
  await each(SPOILT_LINKS, 20_000, async (seed) => {
    const { uniform, below, length, spoilText, spoilEntry } = spoilers(seed);
    const design = seededDocuments(seed).anyDocument();
    const way = uniform();
    let hash: string;
    if (way < 0.4) hash = spoilText(await linkFor(design));
    else if (way < 0.7) hash = linkOf(deflateRawSync(spoilEntry(design)));
    else if (way < 0.8)
      hash = linkOf(deflateRawSync(Buffer.alloc(length(4 * 1024 ** 2), below(256)), { level: 9 }));
    else {
      const packed = deflateRawSync(JSON.stringify(design));
      packed[below(packed.length)]! ^= 1 << below(8);
      hash = linkOf(packed.subarray(0, below(packed.length) + 1));
    }
    for (const reader of [placeIn, soundIn, lessonIn, languageIn]) reader(hash);
    const read = await readLink(hash);
    if (read.ok) expect(decode(read.design)).toEqual({ ok: true, design: read.design });
    else if (read.reason.kind !== 'no link') said(() => linkSentence(read.reason)!);
  });
});

test('light logs, and days recorded in them', async () => {
  await each(SPOILT_LOGS, 30_000, (seed) => {
    const { uniform, below, pick, length, anyText, spoilText } = spoilers(seed);
    const mark = pick([',', ';', '\t']);
    const time = pick([
      (i: number) => String(i * 10),
      (i: number) => `${8 + (i >> 6)}:${String(i & 63).padStart(2, '0')}:00`,
      (i: number) =>
        `2026-03-${String(1 + (i % 28)).padStart(2, '0')} 12:00:${String(i % 60).padStart(2, '0')}`,
      (i: number) => `${i}${pick(['e300', 'e-300', ' ms', '', ' '.repeat(length(3000))])}`,
    ]);
    const level = () => pick([String(below(1000)), '1e5', '-1', '', anyText(), `${below(9)} lx`]);
    const rows = Array.from({ length: length(400) }, (_, i) => [time(i), level(), level()].join(mark));
    const text = [['time', 'lux_a', 'lux_b'].join(mark), ...rows].join(pick(['\n', '\r\n', '\r']));
    const log = openedLog(anyText(), uniform() < 0.8 ? spoilText(text) : text);
    if (!log.guess.ok) {
      const { refusal } = log.guess;
      said(() => lightLogWords.refusal(refusal));
      return;
    }
    startHourOf(log.text, log.choices!);
    for (const { cells } of log.guess.preview)
      for (const cell of cells) expect(cell.length).toBeLessThan(LONGEST);
    const reading = log.reading!;
    if (!reading.ok) {
      said(() => lightLogWords.refusal(reading.refusal));
      return;
    }
    for (const problem of reading.problems.slice(0, 3)) said(() => lightLogWords.problem(problem));
    const { times, lux } = reading.points;
    expect(times).toHaveLength(reading.kept);
    expect(Number.isFinite(logLength(log))).toBe(true);
    expect(times.every((at, i) => Number.isFinite(at) && (i === 0 || at > times[i - 1]!))).toBe(true);
    for (const levels of [lux.A, lux.B])
      expect(levels.every((value) => value >= 0 && value <= LOG_LIMITS.lux)).toBe(true);
    const day = { startHour: below(24), points: reading.points };
    logComplaints(day, [9, 17]);
    const { room } = BENCH_DESIGN;
    const taken = inRoom(replaceReadings(readingsFrom(day, room)))(BENCH_DESIGN);
    expect(decode(taken)).toEqual({ ok: true, design: taken });
  });
});

test('the log of a take at the command line', async () => {
  await each(OTHERS, 40_000, (seed) => {
    const { below, pick, anyText, spoilText } = spoilers(seed);
    const rows = Array.from(
      { length: below(40) },
      (_, i) => `${i},${below(900)},${pick(['5', '1e309', anyText()])}`,
    );
    const read = readRows(spoilText(['time_s,lux_a,lux_b', ...rows].join('\n')));
    if (read.ok) expect(read.program).toMatchObject({ kind: 'points' });
    else expect(read.sentence.length).toBeLessThan(LONGEST);
  });
});

test('drawers, typed or as tables', async () => {
  await each(OTHERS, 50_000, (seed) => {
    const { uniform, pick, anyText, spoilText } = spoilers(seed);
    const { drawer } = seededDocuments(seed).anyDocument().pitch;
    const table = `${pick(['value', anyText()])},tolerance,${anyText()},quantity,price\n"4,7k",1%,film,3,0.1\n10n,5%,,x,${anyText()}\n`;
    const { bad, ...lists } = readDrawer(spoilText(uniform() < 0.5 ? drawerText(drawer) : table));
    const filled = changeDrawer(lists)(BENCH_DESIGN);
    expect(decode(filled)).toEqual({ ok: true, design: filled });
    for (const { line, read } of bad.slice(0, 3)) {
      expect(line).toBeGreaterThan(0);
      expect(read.length).toBeLessThan(LONGEST);
    }
  });
});

test('kit logs, which read back as they were written, formulas too', async () => {
  await each(OTHERS, 60_000, (seed) => {
    const { uniform, spoilText } = spoilers(seed);
    const { log } = seededDocuments(seed, 12).anyDocument().batch;
    const text = logCsv(log);
    const whole = readLogCsv(text);
    expect(whole.ok).toBe(true);
    const read = uniform() < 0.2 ? whole : readLogCsv(spoilText(text));
    if (read.ok) {
      const taken = inBatch(takeLog(read.log))(BENCH_DESIGN);
      expect(decode(taken)).toEqual({ ok: true, design: taken });
    } else said(() => logRefusal(read));
  });
});

test('lessons', async () => {
  await each(OTHERS, 70_000, (seed) => {
    const { pick, spoilEntry } = spoilers(seed);
    let value: unknown;
    try {
      value = JSON.parse(spoilEntry(pick(LESSONS)));
    } catch {
      return;
    }
    const read = decodeLesson(value);
    if (read.ok) expect(decodeLesson(read.lesson)).toEqual(read);
    else expect(read.complaints.length).toBeGreaterThan(0);
  });
});

test('recordings of a board', async () => {
  await each(OTHERS / 10, 80_000, (seed) => {
    const { uniform, pick, length } = spoilers(seed);
    const wild = pick([0, 1, 1e38, Number.NaN, Number.POSITIVE_INFINITY, 1e-40]);
    const period = length(2000);
    const samples = Float32Array.from({ length: length(60_000) }, (_, i) =>
      uniform() < 0.01 ? wild : i % period < period / 2 ? 0.2 : -0.2,
    );
    const heard = pitchOf(samples, pick([8000, 44_100, 48_000, 192_000]));
    if (heard.kind === 'pitch') {
      expect(heard.hertz).toBeGreaterThan(0);
      expect(Number.isFinite(heard.hertz)).toBe(true);
    }
  });
});

test('values typed into boxes', async () => {
  await each(OTHERS, 90_000, (seed) => {
    const { pick, spoilText } = spoilers(seed);
    const text = spoilText(pick(['4k7', '100n', '47 %', '1.54 V', '14:30', 'F♯3 +12 c', '1,000', '1e5']));
    for (const quantity of [
      'resistance',
      'capacitance',
      'voltage',
      'illuminance',
      'share',
      'number',
    ] as const) {
      const read = parseQuantity(text, quantity);
      if (read.ok) expect(Number.isFinite(read.value)).toBe(true);
      else said(() => words.field.problem(read.problem));
    }
    const note = parseNote(text);
    if (note.ok) expect(Number.isFinite(note.noteNumber)).toBe(true);
    expect(readHour(text) ?? 0).toBeLessThanOrEqual(24);
  });
});
