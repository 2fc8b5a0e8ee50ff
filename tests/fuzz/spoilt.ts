/** Texts spoilt by a seed: cut off, bits flipped, of other types, huge, nested deeply, with names that are traps. */
import { uniformFrom } from '../../src/quantity/random.ts';

/** Names that every object has, or that change what an object is. */
const TRAPS = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'length', ''] as const;

/** Texts that would be markup, a formula, another direction of writing, or no text at all if they were let. */
export const HOSTILE_TEXTS = [
  '<img data-injected src=x onerror=alert(1)>',
  '"><svg data-injected onload=alert(1)>',
  '</style></script><b data-injected>',
  '{{7*7}}&lt;b&gt;',
  '=HYPERLINK("http://127.0.0.1/","x")',
  '+1+cmd|/c calc!A0',
  '-2+3',
  '@SUM(1)',
  '\t=1+1',
  '\r=1+1',
  "'=1+1",
  '\u202Eevil\u2066\u2069',
  '\u0000\u0007\u001B[31m\u0085',
  '\uD800',
  '\uDFFF\uD83C',
  '\uFEFF\u200B\u2028\u2029',
  'a\u0301'.repeat(40),
  '\u{1F4A1}'.repeat(30),
  ...TRAPS,
] as const;

/** Values that no entry of a document takes, written as JSON. */
const WRONG_VALUES = [
  'null',
  'true',
  '[]',
  '{}',
  '""',
  '-1',
  '1e999',
  '-1e308',
  '5e-324',
  '1.5',
  '"12"',
  'NaN',
  '{"__proto__":{"polluted":1}}',
  '{"constructor":{"prototype":{"polluted":1}}}',
] as const;

export function spoilers(seed: number) {
  const uniform = uniformFrom(seed);
  const below = (count: number): number => Math.floor(uniform() * count);
  const pick = <T>(options: readonly T[]): T => options[below(options.length)]!;
  /** Mostly short, seldom huge. */
  const length = (most: number): number => Math.floor(most ** uniform());

  const deep = (): string => {
    const levels = length(60_000);
    const [open, close] = pick([
      ['[', ']'],
      ['{"a":', '}'],
    ] as const);
    return `${open.repeat(levels)}1${uniform() < 0.8 ? close.repeat(levels) : ''}`;
  };
  const huge = (): string =>
    pick([
      () => `"${pick(['x', '\\u0000', '<b>', '=']).repeat(length(80_000))}"`,
      () => `[${'0,'.repeat(length(60_000))}0]`,
      () => `${9}${'9'.repeat(length(80_000))}`,
      () => `{${Array.from({ length: length(5000) }, (_, i) => `"k${i}":${i}`).join()},"z":0}`,
    ])();
  const anyText = (): string => pick(HOSTILE_TEXTS);

  /** One place of the text changed without regard to what it says. */
  const spoilText = (text: string): string => {
    const at = below(text.length + 1);
    const to = at + length(text.length + 1);
    return pick([
      () => text.slice(0, at),
      () => text.slice(at),
      () => text.slice(0, at) + text.slice(to),
      () => text.slice(0, at) + text.slice(at, to).repeat(1 + length(50)) + text.slice(to),
      () => text.slice(0, at) + anyText() + text.slice(at),
      () =>
        text.slice(0, at) +
        pick(['\0', '"', ',', '{', '}', ' ', '\n', ';']).repeat(length(60_000)) +
        text.slice(at),
      () =>
        Array.from(text, (letter) =>
          uniform() < 0.003 ? String.fromCharCode(letter.charCodeAt(0) ^ (1 << below(16))) : letter,
        ).join(''),
    ])();
  };

  /** A value written as JSON with one entry, anywhere in it, of another kind, name or size. */
  const spoilEntry = (value: unknown): string => {
    const copy = structuredClone(value);
    const groups: Record<string, unknown>[] = [];
    const collect = (one: unknown): void => {
      if (typeof one !== 'object' || one === null) return;
      groups.push(one as Record<string, unknown>);
      Object.values(one).forEach(collect);
    };
    collect(copy);
    const group = pick(groups);
    const key = pick(Object.keys(group));
    const mark = 'THIS-IS-REPLACED';
    const own = key === undefined ? null : group[key];
    const put = (name: string): void => {
      // A list's own length takes no text.
      Object.defineProperty(group, Array.isArray(group) && name === 'length' ? '0' : name, {
        value: mark,
        enumerable: true,
        configurable: true,
        writable: true,
      });
    };
    const raw = pick([
      () => pick(WRONG_VALUES),
      deep,
      huge,
      () => JSON.stringify(anyText()),
      () => JSON.stringify(own),
    ])();
    // Another value in its place, the same value under another name, or a name more.
    const way = uniform();
    if (way < 0.6 && key !== undefined) put(key);
    else if (way < 0.8 && key !== undefined) {
      delete group[key];
      put(pick(TRAPS));
    } else put(uniform() < 0.5 ? pick(TRAPS) : `${anyText()}${'k'.repeat(length(20_000))}`);
    return JSON.stringify(copy).replace(JSON.stringify(mark), () => raw);
  };

  return { uniform, below, pick, length, anyText, spoilText, spoilEntry };
}
