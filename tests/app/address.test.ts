/** Links: every design comes back, and nothing else does. */
import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  crc32,
  languageIn,
  lessonIn,
  lessonLink,
  linkFor,
  linkSentence,
  PLACES,
  placeIn,
  readLink,
  soundIn,
} from '../../src/app/address.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/design.ts';
import { seededDesigns } from '../circuit/any-design.ts';

/** A link with these bytes behind a checksum that holds. */
function linkOf(version: number, packed: Uint8Array): string {
  const checked = Uint8Array.of(version, ...packed);
  const crc = new Uint8Array(4);
  new DataView(crc.buffer).setUint32(0, crc32(checked));
  return `#/listen?d=${Buffer.from([...crc, ...checked]).toString('base64url')}`;
}

const packedText = (text: string) => linkOf(1, deflateRawSync(Buffer.from(text)));

test('CRC-32 is the one of gzip and PNG (check value of ISO 3309: CBF43926)', () => {
  expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf4_3926);
});

describe('an address', () => {
  test.each(PLACES)('names %s, with or without a design', (place) => {
    expect(placeIn(`#/${place}`)).toBe(place);
    expect(placeIn(`#/${place}?d=AAAA`)).toBe(place);
  });

  test('without a name is the first place; another name is none', () => {
    for (const hash of ['', '#', '#/']) expect(placeIn(hash)).toBe('listen');
    for (const hash of ['#/attic', '#/Listen', '#/listen/more']) expect(placeIn(hash)).toBeNull();
  });
});

describe('a link', () => {
  test.each(PLACES)('to %s gives the design back whole', async (place) => {
    const link = await linkFor(DEFAULT_DESIGN, place);
    expect(link.startsWith(`#/${place}?d=`)).toBe(true);
    expect(await readLink(link)).toEqual({ ok: true, place, design: DEFAULT_DESIGN });
  });

  test('gives back any valid design, names and notes in any letters', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 1, max: 2 ** 31 }),
        fc.string({ maxLength: 20, unit: 'grapheme' }),
        fc.string({ maxLength: 200, unit: 'grapheme' }),
        async (seed, name, notes) => {
          const design: Design = {
            ...seededDesigns(seed).anyDesign(),
            name: name.slice(0, 80),
            notes: notes.slice(0, 2000),
          };
          // A letter cut in two by the length limit is no text that any encoding carries.
          fc.pre(!/\p{Surrogate}/u.test(design.name + design.notes));
          expect(await readLink(await linkFor(design))).toEqual({ ok: true, place: 'listen', design });
        },
      ),
      { numRuns: 300, seed: 4711 },
    );
  });

  test('of a full design with notes of four hundred letters has at most 2000 characters', async () => {
    const notes =
      'Two notes a fifth apart over the landing stage. Passing hands and boats silence them one at a time. ';
    const { anyDesign } = seededDesigns(99);
    for (let i = 0; i < 100; i++) {
      const design = { ...anyDesign(), name: 'Lantern on the landing stage', notes: notes.repeat(4) };
      expect((await linkFor(design)).length).toBeLessThanOrEqual(2000);
    }
    expect((await linkFor(DEFAULT_DESIGN)).length).toBeLessThanOrEqual(1200);
  });
});

describe('a damaged link', () => {
  test('is refused whichever letter is another one, by each of its near neighbours', async () => {
    const link = await linkFor(DEFAULT_DESIGN);
    const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
    for (let at = 0; at < link.length; at++) {
      const place = letters.indexOf(link[at]!);
      const others = new Set([
        letters[(place + 1) % 64]!,
        letters[(place + 63) % 64]!,
        letters[place ^ 32]!,
        ' ',
        '=',
        '%',
      ]);
      others.delete(link[at]!);
      for (const other of others) {
        const read = await readLink(link.slice(0, at) + other + link.slice(at + 1));
        expect(read.ok, `${other} in place ${at}`).toBe(false);
      }
    }
  });

  test('is refused wherever it is cut off', async () => {
    const link = await linkFor(DEFAULT_DESIGN);
    for (let length = 0; length < link.length; length++)
      expect((await readLink(link.slice(0, length))).ok, `cut after ${length}`).toBe(false);
  });

  test('is refused with a letter left out, doubled, or two of them exchanged', async () => {
    const link = await linkFor(DEFAULT_DESIGN);
    for (let at = 11; at < link.length - 1; at++) {
      const [one, two] = [link[at]!, link[at + 1]!];
      const broken = [
        link.slice(0, at) + link.slice(at + 1),
        link.slice(0, at) + one + link.slice(at),
        ...(one === two ? [] : [link.slice(0, at) + two + one + link.slice(at + 2)]),
      ];
      for (const each of broken.filter((text) => text !== link))
        expect((await readLink(each)).ok).toBe(false);
    }
  });
});

describe('what is refused says why', () => {
  const reasonOf = async (hash: string) => {
    const read = await readLink(hash);
    if (read.ok) throw new Error('It was taken.');
    return read.reason;
  };

  test.each(['', '#', '#/listen', '#/listen?', '#/listen?x=abc', 'listen?d=abc'])(
    '%j is no link, and nothing is said',
    async (hash) => {
      const reason = await reasonOf(hash);
      expect(reason).toEqual({ kind: 'no link' });
      expect(linkSentence(reason)).toBeNull();
    },
  );

  test('a place that this page has not', async () => {
    const link = (await linkFor(DEFAULT_DESIGN)).replace('listen', 'cellar');
    expect(await reasonOf(link)).toEqual({ kind: 'place', place: 'cellar' });
  });

  test('nothing behind d=', async () => {
    expect(await reasonOf('#/listen?d=')).toEqual({ kind: 'empty' });
  });

  test('a damaged one, a later one, and one that holds something else', async () => {
    const link = await linkFor(DEFAULT_DESIGN);
    expect(await reasonOf(link.slice(0, -3))).toEqual({ kind: 'damaged' });
    expect(await reasonOf(linkOf(2, Uint8Array.of(1, 2, 3)))).toEqual({ kind: 'later version' });
    expect(await reasonOf(linkOf(1, Uint8Array.of(255, 255)))).toEqual({ kind: 'damaged' });
    expect(await reasonOf(packedText('not JSON'))).toMatchObject({ kind: 'not a design' });
    expect(await reasonOf(packedText('{"format":"other"}'))).toMatchObject({ kind: 'not a design' });
    expect(await reasonOf(packedText(JSON.stringify({ ...DEFAULT_DESIGN, version: 99 })))).toEqual({
      kind: 'not a design',
      complaints: [{ kind: 'later version', version: 99 }],
    });
    expect(await reasonOf(linkOf(1, deflateRawSync(Uint8Array.of(0xff, 0xfe, 0xfd))))).toEqual({
      kind: 'damaged',
    });
  });

  test('a few letters that unpack into a great deal, without unpacking it all', async () => {
    const bomb = deflateRawSync(Buffer.alloc(30 * 1024 ** 2, 32), { level: 9 });
    const link = linkOf(1, bomb);
    expect(link.length).toBeLessThan(64 * 1024);
    expect(await reasonOf(link)).toEqual({ kind: 'too large' });
    expect(await reasonOf(`#/listen?d=${'A'.repeat(100_000)}`)).toEqual({ kind: 'too large' });
  });

  test('every reason but none at all has a sentence that ends with a full stop', async () => {
    const hashes = [
      '#/cellar?d=A',
      '#/listen?d=',
      '#/listen?d=AAAA',
      linkOf(2, Uint8Array.of(1)),
      packedText('{}'),
    ];
    for (const hash of hashes) expect(linkSentence(await reasonOf(hash))).toMatch(/^[A-Z].*\.$/);
  });
});

describe('what a link says of the sound and of a lesson', () => {
  test('is read whatever stands beside it; an unknown word says nothing', () => {
    expect(soundIn('#/class?lesson=comparison&sound=off')).toBe('off');
    expect(soundIn('#/listen?sound=on&d=AAAA')).toBe('on');
    for (const hash of ['', '#/class', '#/class?sound=loud']) expect(soundIn(hash)).toBeNull();
    expect(lessonIn('#/class?sound=off&lesson=comparison')).toBe('comparison');
    expect(lessonIn('#/class')).toBeNull();
  });

  test('is written so that it is read again, and leads to the class', () => {
    for (const sound of ['off', 'muted', 'on'] as const) {
      const link = lessonLink('comparison', sound, 'en');
      expect([placeIn(link), soundIn(link), lessonIn(link)]).toEqual(['class', sound, 'comparison']);
      expect(lessonIn(lessonLink(null, sound, 'en'))).toBeNull();
    }
  });

  test('names the language unless it is English; an unknown one says nothing', () => {
    expect(languageIn(lessonLink('comparison', 'muted', 'de'))).toBe('de');
    expect(lessonLink('comparison', 'muted', 'en')).not.toContain('lang');
    expect(languageIn('#/listen?lang=de')).toBe('de');
    for (const hash of ['', '#/listen', '#/listen?lang=xx']) expect(languageIn(hash)).toBeNull();
  });

  test('may stand before a design', async () => {
    const link = (await linkFor(DEFAULT_DESIGN)).replace('?', '?sound=off&lang=de&');
    expect(await readLink(link)).toMatchObject({ ok: true, design: DEFAULT_DESIGN });
    expect(soundIn(link)).toBe('off');
  });
});
