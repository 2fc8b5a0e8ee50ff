/** A design is taken whole or refused with the place that is wrong. The document is walked, not listed. */
import { describe, expect, test } from 'vitest';
import { type Batch, DEFAULT_BATCH } from '../../src/design/batch.ts';
import { type Complaint, decode, decodeText, encodeText, MOST_LETTERS } from '../../src/design/decode.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { type Design, FORMAT, VERSION } from '../../src/design/design.ts';
import {
  DEFAULT_PITCH,
  MOST_SHORTLISTED,
  NOTE_LENGTH,
  type Pitch,
  type VoiceParts,
} from '../../src/design/pitch.ts';
import { DEFAULT_DAYLIGHT, DEFAULT_ROOM, type Room } from '../../src/design/room.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

type Json = { [key: string]: unknown };

const PARTS: VoiceParts = {
  ra: { ohms: 3900, tolerance: 0.01 },
  rbFixed: { ohms: 12_000, tolerance: 0.01 },
  trimmer: { part: 'carbon', ohms: 50_000, tolerance: 0.2 },
  capacitor: { farads: 47e-9, dielectric: 'polyester', tolerance: 0.1 },
};
const TARGET = { lowHertz: 262, highHertz: 262 };

/** A wish, a drawer and a shortlist with nothing absent and something in every list. */
const FULL_PITCH: Pitch = {
  wish: { ...DEFAULT_PITCH.wish, duty: { least: 0.5, most: 0.6 } },
  drawer: {
    ...DEFAULT_PITCH.drawer,
    resistors: [{ ohms: 3900, tolerance: 0.01, quantity: 40, price: 0.02 }],
    trimmers: [{ ohms: 50_000, part: 'multi-turn', tolerance: 0.1, quantity: 20, price: 0.9 }],
    capacitors: [{ farads: 47e-9, dielectric: 'c0g', tolerance: 0.05, quantity: 20, price: 0.3 }],
  },
  shortlist: [{ parts: { A: PARTS, B: PARTS }, targets: { A: TARGET, B: TARGET } }],
};

/** A room with nothing absent. */
const FULL_ROOM: Room = {
  ...DEFAULT_ROOM,
  roomType: 'classroom',
  daylight: {
    ...DEFAULT_DAYLIGHT,
    place: { latitude: 57.7, longitude: 11.97 },
    measured: { outdoorLux: 8000, hour: 12 },
  },
  tube: { boreRadiusMetres: 0.01, depthMetres: 0.04 },
};

/** A batch with something in every list. */
const FULL_BATCH: Batch = {
  ...DEFAULT_BATCH,
  lines: [{ key: 'resistor 4700', stock: 12, packSize: 100, packPrice: 1.9 }],
  log: [
    {
      kit: 7,
      readings: [{ point: 'TP1', value: 8.9 }],
      fault: null,
      minutes: 55,
      lost: [{ kind: 'chip', count: 1 }],
    },
  ],
  board: { ...DEFAULT_BATCH.board, size: { strips: 24, holes: 37 }, free: [{ strip: 1, hole: 1 }] },
  workshop: { ...DEFAULT_BATCH.workshop, prepared: ['cuts'] },
};

/** Words that may be missing; other entries of that kind are numbers, or groups. */
const MAY_BE_NULL = ['room.roomType', 'batch.log.0.fault'];

/** A design with nothing absent, so that every leaf of the document exists. */
const FULL: Design = {
  ...BENCH_DESIGN,
  voices: {
    A: { ...BENCH_DESIGN.voices.A, controlVolts: 6 },
    B: { ...BENCH_DESIGN.voices.B, controlVolts: 5 },
  },
  output: { ...BENCH_DESIGN.output, volume: { ohms: 10_000, rotation: 0.5 } },
  pitch: FULL_PITCH,
  room: FULL_ROOM,
  batch: FULL_BATCH,
};

/** Dotted paths of all leaves and of all objects ("" is the document). */
function walk(value: unknown, path = ''): { leaves: string[]; objects: string[] } {
  if (typeof value !== 'object' || value === null) return { leaves: [path], objects: [] };
  // A list is no group of entries: what stands in it is walked, and lists have a test of their own.
  const found = { leaves: [] as string[], objects: Array.isArray(value) ? [] : [path] };
  for (const [key, part] of Object.entries(value)) {
    const inner = walk(part, path === '' ? key : `${path}.${key}`);
    found.leaves.push(...inner.leaves);
    found.objects.push(...inner.objects);
  }
  return found;
}

const { leaves, objects } = walk(FULL);

function at(document: unknown, path: string): unknown {
  return path === '' ? document : path.split('.').reduce((value, key) => (value as Json)[key], document);
}

/** A copy with one entry changed by `change`, which is given its holder and its key. */
function changed(path: string, change: (holder: Json, key: string) => void): Json {
  // Through JSON, since a structured clone keeps two references to one object together.
  const copy = JSON.parse(JSON.stringify(FULL)) as Json;
  const keys = path.split('.');
  const key = keys.pop()!;
  change(at(copy, keys.join('.')) as Json, key);
  return copy;
}

function complaintsAbout(value: unknown): readonly Complaint[] {
  const result = decode(value);
  return result.ok ? [] : result.complaints;
}

/** Values that no leaf of that type may have. */
function wrongFor(value: unknown): readonly unknown[] {
  if (typeof value === 'number')
    return ['1', true, {}, [], -1e99, 1e99, Number.NaN, Number.POSITIVE_INFINITY];
  if (typeof value === 'boolean') return ['yes', 0, null];
  return [7, null, {}, ['x'], 'x'.repeat(3000)];
}

test('the walk finds the whole document', () => {
  expect(leaves.length).toBeGreaterThan(70);
  expect(leaves).toContain('voices.B.trimmer.rotation');
  expect(objects).toContain('threshold.trimmers.A');
});

test('the default design and the full one are read back as they were written', () => {
  for (const design of [DEFAULT_DESIGN, BENCH_DESIGN, FULL]) {
    expect(decodeText(encodeText(design))).toEqual({ ok: true, design });
    expect(decode(design)).toEqual({ ok: true, design });
  }
});

describe.each(leaves.filter((path) => path !== 'format' && path !== 'version'))('%s', (path) => {
  test('wrong, it is refused by its dotted path alone', () => {
    for (const wrong of wrongFor(at(FULL, path))) {
      if (wrong === null && MAY_BE_NULL.includes(path)) continue;
      const complaints = complaintsAbout(
        changed(path, (holder, key) => {
          holder[key] = wrong;
        }),
      );
      expect(
        complaints.map((c) => c.kind === 'value' && c.path),
        `${JSON.stringify(wrong)}`,
      ).toEqual([path]);
    }
  });

  test('missing, it is refused by its dotted path', () => {
    const [complaint, ...others] = complaintsAbout(
      changed(path, (holder, key) => {
        delete holder[key];
      }),
    );
    expect(others).toEqual([]);
    expect(complaint).toMatchObject({ kind: 'value', path, read: 'nothing' });
  });
});

describe.each(objects)('in the object at "%s"', (path) => {
  test.each(['extra', 'toString', 'constructor', 'hasOwnProperty', '__proto__'])(
    'an entry "%s" is refused by name',
    (name) => {
      const copy = JSON.parse(JSON.stringify(FULL)) as Json;
      Object.defineProperty(at(copy, path), name, {
        value: 1,
        enumerable: true,
        configurable: true,
        writable: true,
      });
      const result = decodeText(JSON.stringify(copy));
      expect(result.ok).toBe(false);
      if (!result.ok)
        expect(result.complaints).toMatchObject([
          { kind: 'value', path: path === '' ? name : `${path}.${name}`, accepts: { kind: 'no such entry' } },
        ]);
    },
  );
});

describe.each(objects.filter((path) => path !== ''))('in the place of the object at "%s"', (path) => {
  test('anything that is no object is refused there', () => {
    for (const wrong of [7, 'x', [], true]) {
      const complaints = complaintsAbout(
        changed(path, (holder, key) => {
          holder[key] = wrong;
        }),
      );
      expect(complaints[0]).toMatchObject({ kind: 'value' });
      expect((complaints[0] as { path: string }).path.startsWith(path)).toBe(true);
    }
  });
});

test('a typed note is kept as it is, up to its length', () => {
  const typed = (A: string) => ({
    ...FULL,
    pitch: { ...FULL_PITCH, wish: { ...FULL_PITCH.wish, notes: { A, B: '' } } },
  });
  expect(complaintsAbout(typed('?'.repeat(NOTE_LENGTH)))).toEqual([]);
  expect(complaintsAbout(typed('?'.repeat(NOTE_LENGTH + 1)))).toMatchObject([
    { path: 'pitch.wish.notes.A', accepts: { kind: 'text', length: NOTE_LENGTH } },
  ]);
});

test('a list that is none, and one that is too long, are refused at their place', () => {
  const accepts = { kind: 'list', most: MOST_SHORTLISTED };
  const long = Array.from({ length: MOST_SHORTLISTED + 1 }, () => FULL_PITCH.shortlist[0]);
  for (const wrong of [7, 'x', true, {}, null, long]) {
    const complaints = complaintsAbout({ ...FULL, pitch: { ...FULL_PITCH, shortlist: wrong } });
    expect(complaints).toMatchObject([{ kind: 'value', path: 'pitch.shortlist', accepts }]);
  }
  const { shortlist: _, ...without } = FULL_PITCH;
  expect(complaintsAbout({ ...FULL, pitch: without })).toMatchObject([
    { path: 'pitch.shortlist', read: 'nothing', accepts },
  ]);
});

describe('refused before its values are looked at', () => {
  test('text that is not JSON', () => {
    for (const text of ['', '{', 'Lampnote', '{"format":}'])
      expect(decodeText(text)).toEqual({ ok: false, complaints: [{ kind: 'not JSON' }] });
  });

  test('JSON that is not a design', () => {
    for (const value of [null, 7, 'x', [], {}, { format: 'other' }, [FORMAT]])
      expect(decode(value)).toEqual({ ok: false, complaints: [{ kind: 'not a design' }] });
  });

  test('a file of a later version, named, whatever else is in it', () => {
    const later = { ...FULL, version: VERSION + 1, tuning: 'new' };
    expect(decode(later)).toEqual({
      ok: false,
      complaints: [{ kind: 'later version', version: VERSION + 1 }],
    });
  });

  test('a version that never was', () => {
    for (const version of [0, -1, 1.5, '1', null, undefined])
      expect(complaintsAbout({ ...FULL, version })).toMatchObject([{ kind: 'value', path: 'version' }]);
  });

  test('a file that is far too large', () => {
    const text = JSON.stringify({ ...FULL, notes: 'x'.repeat(MOST_LETTERS) });
    expect(decodeText(text)).toMatchObject({ ok: false, complaints: [{ kind: 'too large' }] });
  });
});

test('a bench log of five hundred kits, forty readings each, is opened again as it was saved', () => {
  const readings = Array.from({ length: 40 }, (_, i) => ({
    point: `a point of the test slip, ${i}`,
    value: i / 7,
  }));
  const log = Array.from({ length: 500 }, (_, i) => ({ ...FULL_BATCH.log[0]!, kit: i + 1, readings }));
  const design = { ...FULL, batch: { ...FULL_BATCH, log } };
  expect(decodeText(encodeText(design))).toEqual({ ok: true, design });
});

test('an entry nested without end, or of a name without end, is refused in few words', () => {
  const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`;
  const name = `${'k'.repeat(100_000)}\u202E`;
  for (const text of [
    JSON.stringify({ ...FULL, notes: 'HERE' }).replace('"HERE"', deep),
    JSON.stringify({ ...FULL, notes: 'HERE' }).replace('"HERE"', `{"a":${deep}}`),
    JSON.stringify({ ...FULL, [name]: 1 }),
    JSON.stringify({ ...FULL, notes: { '': { '': 1 } } }),
    JSON.stringify({ ...FULL }).replace('{', '{"__proto__":{"name":1},'),
  ]) {
    const read = decodeText(text);
    expect(read.ok).toBe(false);
    if (read.ok) continue;
    for (const complaint of read.complaints) {
      expect(complaint.kind).toBe('value');
      expect(JSON.stringify(complaint).length).toBeLessThan(300);
    }
  }
});

test('a complaint carries what was read, cut short, and what would be accepted', () => {
  const wrong = {
    ...FULL,
    timer: 'a very long name for a timer that nobody makes any more',
    supply: { ...FULL.supply, volts: 99 },
  };
  const complaints = complaintsAbout(wrong);
  expect(complaints).toContainEqual({
    kind: 'value',
    path: 'supply.volts',
    read: '99',
    accepts: { kind: 'number', limits: { min: 2, max: 18 } },
  });
  const timer = complaints.find((c) => c.kind === 'value' && c.path === 'timer');
  expect(timer).toMatchObject({ accepts: { kind: 'choice', options: ['bipolar', 'cmos'] } });
  expect((timer as { read: string }).read.length).toBeLessThanOrEqual(40);
});

test('an entry that is missing is told with what that entry accepts', () => {
  const without = (path: string) =>
    complaintsAbout(
      changed(path, (holder, key) => {
        delete holder[key];
      }),
    )[0];
  expect(without('supply.volts')).toMatchObject({
    accepts: { kind: 'number', limits: { min: 2, max: 18 } },
  });
  expect(without('timer')).toMatchObject({ accepts: { kind: 'choice', options: ['bipolar', 'cmos'] } });
});

test('a file wrong everywhere brings a handful of complaints, not hundreds', () => {
  const bad = (value: unknown): unknown =>
    typeof value === 'object' && value !== null
      ? Object.fromEntries(Object.entries(value).map(([key, part]) => [key, bad(part)]))
      : 'wrong'.repeat(900);
  const complaints = complaintsAbout({ ...(bad(FULL) as Json), format: FORMAT, version: VERSION });
  expect(complaints.length).toBe(8);
});

test('entries named after the language’s own machinery do not reach the objects', () => {
  const text = JSON.stringify(FULL).replace('{', '{"__proto__":{"polluted":true},');
  decodeText(text);
  expect(({} as Json)['polluted']).toBeUndefined();
});
