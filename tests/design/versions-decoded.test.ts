/**
 * The decoder with a present version and upgrades that are invented here: a first-version file goes through the
 * whole chain, and a gap in the chain is a complaint about the entry `version` alone.
 */
import { expect, test, vi } from 'vitest';
import { decode } from '../../src/design/decode.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

type Json = Readonly<Record<string, unknown>>;

const chain = vi.hoisted(() => ({ upgrades: {} as Record<number, (document: Json) => Json> }));

vi.mock('../../src/design/design.ts', async (original) => ({ ...(await original<object>()), VERSION: 3 }));
vi.mock('../../src/design/versions.ts', async (original) => {
  const { upgraded } = await original<typeof import('../../src/design/versions.ts')>();
  return { upgraded: (document: Json) => upgraded(document, chain.upgrades, 3) };
});

const rename = ({ title, ...others }: Json): Json => ({ ...others, name: title });
const addNotes = (document: Json): Json => ({
  ...document,
  notes: `${document['name']}, from an older file`,
});

/** As the invented first version would have written it: `title`, and no notes. */
const { name, notes: _, ...others } = BENCH_DESIGN;
const FIRST = { ...others, version: 1, title: name };

test('an old file is read through every step', () => {
  chain.upgrades = { 1: rename, 2: addNotes };
  const design = { ...BENCH_DESIGN, version: 3, notes: `${name}, from an older file` };
  expect(decode(FIRST)).toEqual({ ok: true, design });
});

test('an upgraded file is still checked whole', () => {
  chain.upgrades = { 1: rename, 2: addNotes };
  const { timer: _timer, ...without } = FIRST;
  expect(decode(without)).toMatchObject({ ok: false, complaints: [{ kind: 'value', path: 'timer' }] });
});

test.each([
  ['first', { 2: addNotes }],
  ['second', { 1: rename }],
])('without the %s step the complaint is about the version', (_title, upgrades) => {
  chain.upgrades = upgrades;
  const present = { ...BENCH_DESIGN, version: 1 };
  expect(decode(present)).toEqual({
    ok: false,
    complaints: [{ kind: 'value', path: 'version', read: '1', accepts: { kind: 'whole number' } }],
  });
});

test('a version after the present one is told by its number', () => {
  chain.upgrades = { 1: rename, 2: addNotes };
  expect(decode({ ...BENCH_DESIGN, version: 4 })).toEqual({
    ok: false,
    complaints: [{ kind: 'later version', version: 4 }],
  });
});
