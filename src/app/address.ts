/**
 * A design as a link, `#/listen?d=…`: its JSON, deflated, behind a version byte and a checksum, in the letters of
 * base64url. A link is taken whole or not at all. Works in a browser and in Node.
 */
import { DEFAULT_BATCH } from '../design/batch.ts';
import { type Complaint, decode } from '../design/decode.ts';
import type { Design } from '../design/design.ts';
import { equalValues } from '../design/entries.ts';
import { DEFAULT_PITCH } from '../design/pitch.ts';
import { DEFAULT_ROOM } from '../design/room.ts';
import { linkWords } from '../words/link.ts';
import { LANGUAGES, type Language } from '../words/spoken.ts';

/** Where a link may lead. */
export const PLACES = ['listen', 'pitch', 'room', 'class', 'kit', 'about'] as const;
export type Place = (typeof PLACES)[number];

/** The place an address names; null for one this page does not know. No name at all is the first place. */
export function placeIn(hash: string): Place | null {
  const name = /^#?\/?([^?]*)/.exec(hash)?.[1] ?? '';
  return name === '' ? PLACES[0] : (PLACES.find((place) => place === name) ?? null);
}

/** What a link may say of the sound: there is none; quiet until switched on; on with the first press. */
export const SOUNDS_BY_LINK = ['off', 'muted', 'on'] as const;
export type SoundByLink = (typeof SOUNDS_BY_LINK)[number];

/** What an address says of the sound; null when it says nothing, or nothing known. */
export function soundIn(hash: string): SoundByLink | null {
  const said = parameter(hash, 'sound');
  return SOUNDS_BY_LINK.find((sound) => sound === said) ?? null;
}

/** The lesson an address asks for; null when it asks for none. */
export function lessonIn(hash: string): string | null {
  return parameter(hash, 'lesson');
}

/** The language an address asks for; null when it asks for none, or none known. */
export function languageIn(hash: string): Language | null {
  const said = parameter(hash, 'lang');
  return LANGUAGES.find((language) => language === said) ?? null;
}

/** The part of an address from `#` on for pupils: a lesson, what of the sound, and the language unless it is English. */
export function lessonLink(lesson: string | null, sound: SoundByLink, language: Language): string {
  const said = {
    ...(lesson === null ? {} : { lesson }),
    sound,
    ...(language === 'en' ? {} : { lang: language }),
  };
  return `#/class?${new URLSearchParams(said)}`;
}

/** The address without some of what it asks for. */
export function without(hash: string, ...names: readonly string[]): string {
  const [place = '', asked = ''] = hash.split(/\?(.*)/s);
  const rest = new URLSearchParams(asked);
  for (const name of names) rest.delete(name);
  return rest.size === 0 ? place : `${place}?${rest}`;
}

/** The address, asking for a language besides. */
export function withLanguage(hash: string, language: Language): string {
  const [place, asked] = without(hash, 'lang').split(/\?(.*)/s);
  return `${place}?lang=${language}${asked ? `&${asked}` : ''}`;
}

function parameter(hash: string, name: string): string | null {
  return new URLSearchParams(/\?(.*)$/s.exec(hash)?.[1] ?? '').get(name);
}

/** Entries that a link leaves out where they are still as a new design has them: links are to stay short. */
const LEFT_OUT = { pitch: DEFAULT_PITCH, room: DEFAULT_ROOM, batch: DEFAULT_BATCH } as const;

/** Layout of what follows the checksum; another number means another layout. */
const LINK_VERSION = 1;
/** CRC-32 of all bytes behind it, big-endian: it stays in this place in every version. */
const CHECKSUM_BYTES = 4;
/** A design is some kilobytes, with a long bench log some hundred; a few bytes may not unpack into much more than that. */
const MOST_UNPACKED_BYTES = 1024 ** 2;
/** A design without a long bench log comes nowhere near this. */
const MOST_LETTERS = 64 * 1024;

export type LinkProblem =
  /** The address carries no design at all: not a link, and nothing to complain of. */
  | { readonly kind: 'no link' }
  | { readonly kind: 'place'; readonly place: string }
  | { readonly kind: 'empty' }
  | { readonly kind: 'damaged' }
  | { readonly kind: 'later version' }
  | { readonly kind: 'too large' }
  | { readonly kind: 'cannot unpack here' }
  | { readonly kind: 'not a design'; readonly complaints: readonly Complaint[] };

export type LinkRead =
  | { readonly ok: true; readonly place: Place; readonly design: Design }
  | { readonly ok: false; readonly reason: LinkProblem };

/**
 * The part of an address from `#` on that opens this design. Rejects with a sentence where the browser cannot deflate, and
 * where the design is too much for a link.
 */
export async function linkFor(design: Design, place: Place = 'listen'): Promise<string> {
  const json = new TextEncoder().encode(shortText(design));
  const packed = await packedBytes(json);
  const bytes = new Uint8Array(CHECKSUM_BYTES + 1 + packed.length);
  bytes[CHECKSUM_BYTES] = LINK_VERSION;
  bytes.set(packed, CHECKSUM_BYTES + 1);
  new DataView(bytes.buffer).setUint32(0, crc32(bytes.subarray(CHECKSUM_BYTES)));
  const letters = toLetters(bytes);
  if (letters.length > MOST_LETTERS) throw new Error(linkWords.tooLong);
  return `#/${place}?d=${letters}`;
}

async function packedBytes(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  try {
    return (await through(new CompressionStream('deflate-raw'), bytes, Number.POSITIVE_INFINITY))!;
  } catch {
    throw new Error(linkWords.cannotPack);
  }
}

function shortText(design: Design): string {
  const kept = Object.entries(design).filter(
    ([entry, value]) => !equalValues(value, LEFT_OUT[entry as keyof typeof LEFT_OUT]),
  );
  return JSON.stringify(Object.fromEntries(kept));
}

/** Text that is no JSON is handed on as it is, for the decoder to refuse. */
function wholeValue(text: string): unknown {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return text;
  }
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? { ...LEFT_OUT, ...value }
    : value;
}

/** Reads the part of an address from `#` on. Never rejects. */
export async function readLink(hash: string): Promise<LinkRead> {
  const parts = /^#\/([^?]*)\?(?:sound=[a-z]*&)?(?:lang=[a-z]*&)?d=(.*)$/s.exec(hash);
  if (!parts) return refused({ kind: 'no link' });
  const [, named = '', letters = ''] = parts;
  const place = PLACES.find((known) => known === named);
  if (place === undefined) return refused({ kind: 'place', place: named });
  if (letters === '') return refused({ kind: 'empty' });
  if (letters.length > MOST_LETTERS) return refused({ kind: 'too large' });
  const bytes = fromLetters(letters);
  if (bytes === null || bytes.length <= CHECKSUM_BYTES + 1) return refused({ kind: 'damaged' });
  const checked = bytes.subarray(CHECKSUM_BYTES);
  if (new DataView(bytes.buffer).getUint32(0) !== crc32(checked)) return refused({ kind: 'damaged' });
  if (checked[0] !== LINK_VERSION) return refused({ kind: 'later version' });
  let unpacking: DecompressionStream;
  try {
    unpacking = new DecompressionStream('deflate-raw');
  } catch {
    return refused({ kind: 'cannot unpack here' });
  }
  try {
    const json = await through(unpacking, checked.subarray(1), MOST_UNPACKED_BYTES);
    if (json === null) return refused({ kind: 'too large' });
    const decoded = decode(wholeValue(new TextDecoder('utf-8', { fatal: true }).decode(json)));
    return decoded.ok
      ? { ok: true, place, design: decoded.design }
      : refused({ kind: 'not a design', complaints: decoded.complaints });
  } catch {
    // The checksum holds, so this was never a whole packed text.
    return refused({ kind: 'damaged' });
  }
}

/** A sentence about a link that was not opened; null when there was no link to open. */
export function linkSentence(problem: LinkProblem): string | null {
  switch (problem.kind) {
    case 'no link':
      return null;
    case 'place':
      return linkWords.place(problem.place);
    case 'empty':
      return linkWords.empty;
    case 'damaged':
      return linkWords.damaged;
    case 'later version':
      return linkWords.later;
    case 'too large':
      return linkWords.tooLarge;
    case 'cannot unpack here':
      return linkWords.cannotPack;
    case 'not a design':
      return problem.complaints.some(({ kind }) => kind === 'later version')
        ? linkWords.later
        : linkWords.notDesign;
  }
}

function refused(reason: LinkProblem): LinkRead {
  return { ok: false, reason };
}

/** All that a stream makes of some bytes; null as soon as it is more than `most`. Rejects what the stream rejects. */
async function through(
  stream: { readonly readable: ReadableStream<Uint8Array>; readonly writable: WritableStream<BufferSource> },
  bytes: Uint8Array<ArrayBuffer>,
  most: number,
): Promise<Uint8Array | null> {
  const writer = stream.writable.getWriter();
  // A failure shows at the reading end, too, where it is caught.
  const written = Promise.all([writer.write(bytes), writer.close()]).catch(() => undefined);
  const reader = stream.readable.getReader();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      await reader.cancel().catch(() => undefined);
      return null;
    }
    chunks.push(value);
  }
  await written;
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/** Base64url without padding (RFC 4648, section 5). */
function toLetters(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** Null for anything that `toLetters` never writes: other letters, padding, bits left over. */
function fromLetters(letters: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[A-Za-z0-9_-]+$/.test(letters) || letters.length % 4 === 1) return null;
  const binary = atob(letters.replaceAll('-', '+').replaceAll('_', '/'));
  const bytes = Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
  return toLetters(bytes) === letters ? bytes : null;
}

/** CRC-32 with the reflected polynomial 0xEDB88320 (ISO 3309, as in gzip and PNG). */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffff_ffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb8_8320 : crc >>> 1;
  }
  return ~crc >>> 0;
}
