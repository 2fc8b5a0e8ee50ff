/** Older design files are brought forward; whatever cannot be is refused at its entry `version`, kindly. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { complaintSentence } from '../../src/app/complaint.ts';
import { decode, decodeText } from '../../src/design/decode.ts';
import { VERSION } from '../../src/design/design.ts';
import { upgraded } from '../../src/design/versions.ts';
import { USUAL_WORKSHOP } from '../../src/design/workshop.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

type Json = Record<string, unknown>;

/** Two invented steps: version 2 renamed `title`, version 3 turned kilohms into ohms and moved them. */
const INVENTED = {
  1: ({ title, ...others }: Json): Json => ({ ...others, name: title }),
  2: ({ kilohms, ...others }: Json): Json => ({ ...others, parts: { ohms: (kilohms as number) * 1000 } }),
};
const FIRST = { version: 1, title: 'Old', kilohms: 4.7 };
const THIRD = { version: 3, name: 'Old', parts: { ohms: 4700 } };

describe('a chain of upgrades', () => {
  test('is followed in order, from wherever a document stands in it', () => {
    expect(upgraded(FIRST, INVENTED, 3)).toEqual({ ok: true, document: THIRD });
    const second = { version: 2, name: 'Old', kilohms: 4.7 };
    expect(upgraded(second, INVENTED, 3)).toEqual({ ok: true, document: THIRD });
    expect(upgraded(THIRD, INVENTED, 3)).toEqual({ ok: true, document: THIRD });
  });

  test('calls each step once, with what the one before it gave', () => {
    const one = vi.fn(INVENTED[1]);
    const two = vi.fn(INVENTED[2]);
    upgraded(FIRST, { 1: one, 2: two }, 3);
    expect(one.mock.calls).toEqual([[FIRST]]);
    expect(two.mock.calls).toEqual([[{ version: 2, name: 'Old', kilohms: 4.7 }]]);
    expect(one.mock.invocationCallOrder[0]).toBeLessThan(two.mock.invocationCallOrder[0]!);
  });

  test('leaves the document it was given as it was', () => {
    const given = structuredClone(FIRST);
    upgraded(given, INVENTED, 3);
    expect(given).toEqual(FIRST);
  });

  test('counts the version on by itself, so that a step that forgets it cannot run for ever', () => {
    const stuck = { 1: (d: Json) => ({ ...d, version: 1 }), 2: () => ({ version: 'none' }) };
    expect(upgraded({ version: 1 }, stuck, 3)).toEqual({ ok: true, document: { version: 3 } });
  });

  test.each([
    ['at its beginning', { 2: INVENTED[2] }],
    ['in its middle', { 1: INVENTED[1], 3: INVENTED[2] }],
    ['at its end', { 1: INVENTED[1], 2: INVENTED[2] }],
  ])('with a gap %s leaves the document whole, for the decoder to refuse', (_, steps) => {
    expect(upgraded(FIRST, steps, 4)).toEqual({ ok: true, document: FIRST });
  });

  test('that a document does not bear leaves it whole', () => {
    const demanding = { 1: (d: Json) => ({ ohms: (d['parts'] as { ohms: number }).ohms }) };
    expect(upgraded(FIRST, demanding, 2)).toEqual({ ok: true, document: FIRST });
  });
});

test('a later version is told by its number, and no step is tried on it', () => {
  const step = vi.fn(INVENTED[1]);
  for (const version of [4, 5, 1e9, 1e300])
    expect(upgraded({ ...FIRST, version }, { 1: step, [version]: step }, 3)).toEqual({ ok: false, version });
  expect(step).not.toHaveBeenCalled();
});

/** Versions that no Lampnote ever wrote. */
const NEVER = [0, -0, -1, -1e300, 0.5, 1.5, '1', '', true, null, [], [1], {}, '__proto__', 'constructor'];

test('no step is tried on a version that never was', () => {
  const step = vi.fn(INVENTED[1]);
  for (const version of [...NEVER, undefined, Number.NaN, Number.POSITIVE_INFINITY]) {
    const document = { ...FIRST, version };
    expect(upgraded(document, { 0: step, 1: step, '-1': step, 0.5: step, 1.5: step }, 3)).toEqual({
      ok: true,
      document,
    });
  }
  expect(step).not.toHaveBeenCalled();
});

describe('the decoder', () => {
  test('refuses a version that never was, at its entry alone', () => {
    const documents = NEVER.map((version): Json => ({ ...BENCH_DESIGN, version }));
    const { version: _, ...without } = BENCH_DESIGN;
    for (const document of [...documents, without as Json]) {
      const read = decodeText(JSON.stringify(document));
      expect(read, JSON.stringify(document['version'])).toMatchObject({ ok: false });
      if (!read.ok) expect(read.complaints.map((c) => c.kind === 'value' && c.path)).toEqual(['version']);
    }
    // No JSON value, but what a number too large for one is read as.
    const endless = JSON.stringify(BENCH_DESIGN).replace(`"version":${VERSION}`, '"version":1e999');
    expect(decodeText(endless)).toMatchObject({
      ok: false,
      complaints: [{ kind: 'value', path: 'version' }],
    });
  });

  test('refuses a later version kindly, with its number', () => {
    const read = decode({ ...BENCH_DESIGN, version: VERSION + 6, tuning: 'unknown here' });
    expect(read).toEqual({ ok: false, complaints: [{ kind: 'later version', version: VERSION + 6 }] });
    if (read.ok) return;
    const sentence = complaintSentence(read.complaints[0]!);
    expect(sentence).toContain(`design version ${VERSION + 6}`);
    expect(sentence).toContain('later Lampnote');
  });
});

test('nothing throws, whatever a document holds and whatever version it claims', () => {
  const anyDocument = fc.dictionary(fc.string(), fc.jsonValue());
  const claimed = fc.oneof(fc.integer(), fc.double(), fc.jsonValue(), fc.constantFrom(1, 2, 3, 4));
  fc.assert(
    fc.property(anyDocument, claimed, (others, version) => {
      const document = { ...others, format: BENCH_DESIGN.format, version };
      const result = upgraded(document, INVENTED, 3);
      if (!result.ok) expect(result.version).toBe(version);
      expect(decode(document).ok).toBe(false);
    }),
  );
});

/** Files as the first version wrote them. They stay as they are; what reads them changes. */
describe.each(['first-version.json', 'first-version-plain.json'])('the stored file %s', (name) => {
  const text = readFileSync(new URL(name, import.meta.url), 'utf8');

  test('was written by the first version', () => {
    expect(JSON.parse(text)).toMatchObject({ format: 'lampnote-design', version: 1 });
  });

  test('is taken, and brought to the present version', () => {
    const read = decodeText(text);
    expect(read.ok ? [] : read.complaints).toEqual([]);
    if (read.ok) expect(read.design.version).toBe(VERSION);
  });
});

test('a file of the second version is taken, its resistors left as they fit', () => {
  const text = readFileSync(new URL('second-version.json', import.meta.url), 'utf8');
  const written = JSON.parse(text) as { version: number; batch: { board: object } };
  expect(written.version).toBe(2);
  expect(written.batch.board).not.toHaveProperty('resistors');
  const read = decodeText(text);
  expect(read.ok && [read.design.version, read.design.batch.board]).toEqual([
    VERSION,
    { ...written.batch.board, resistors: 'as they fit' },
  ]);
});

test('a file of the third version is taken, its workshop the usual one', () => {
  const text = readFileSync(new URL('third-version.json', import.meta.url), 'utf8');
  const written = JSON.parse(text) as { version: number; batch: object };
  expect(written.version).toBe(3);
  expect(written.batch).not.toHaveProperty('workshop');
  const read = decodeText(text);
  expect(read.ok && [read.design.version, read.design.batch]).toEqual([
    VERSION,
    { ...written.batch, workshop: USUAL_WORKSHOP },
  ]);
});

test('what the stored files hold is what their entries say', () => {
  const designOf = (name: string) => {
    const read = decodeText(readFileSync(new URL(name, import.meta.url), 'utf8'));
    if (!read.ok) throw new Error(`${name} is refused`);
    return read.design;
  };
  const full = designOf('first-version.json');
  expect([full.name, full.timer, full.comparator]).toEqual(['Weir and heron', 'cmos', 'later']);
  expect(full.voices.A.controlVolts).toBe(5.5);
  expect(full.voices.B.capacitor).toEqual({ farads: 33e-9, dielectric: 'c0g', tolerance: 0.05 });
  expect(full.threshold.arrangement).toBe('each');
  expect(full.output.volume).toEqual({ ohms: 10_000, rotation: 0.6 });
  const plain = designOf('first-version-plain.json');
  expect([plain.name, plain.notes]).toEqual(['', '']);
  expect([plain.voices.A.hysteresisOhms, plain.output.mixOhms, plain.output.coupling]).toEqual([
    null,
    null,
    null,
  ]);
  expect(plain.voices.B.polarity).toBe('shade');
});
