/**
 * A drawer typed or pasted: a part a line, `10n film 5% x40`, or a table with a head of column names,
 * `value,tolerance,dielectric,quantity,price`. Rows that do not read are named by number and kind; the others stand.
 */

import { LIMITS } from '../design/limits.ts';
import type { DrawerCapacitor, DrawerResistor, DrawerTrimmer } from '../design/pitch.ts';
import { MOST_LINES, PITCH_LIMITS } from '../design/pitch.ts';
import { cellsOf, type Delimiter } from '../light/log-cells.ts';
import { DIELECTRICS, type DielectricId } from '../parts/capacitors.ts';
import { TRIMMERS, type TrimmerId } from '../parts/trimmers.ts';
import { parseQuantity, type ReadProblem } from '../quantity/parse.ts';
import { excerpt } from '../words/excerpt.ts';

export type DrawerRowProblem =
  /** No value in a row that has other entries. */
  | { readonly kind: 'no value' }
  /** The value, the tolerance or the like is not one, or lies outside what a part can have. */
  | { readonly kind: 'value'; readonly entry: DrawerEntry; readonly problem: ReadProblem }
  | { readonly kind: 'not a count'; readonly read: string }
  | { readonly kind: 'not a price'; readonly read: string }
  /** A word that names no kind of part. */
  | { readonly kind: 'unknown word'; readonly read: string }
  /** The same entry twice. */
  | { readonly kind: 'twice'; readonly entry: DrawerEntry }
  /** The list of that kind is full. */
  | { readonly kind: 'too many'; readonly most: number };

export type DrawerEntry = 'value' | 'tolerance' | 'dielectric' | 'quantity' | 'price';

export interface DrawerRow {
  /** Line of the text, from 1. */
  readonly line: number;
  readonly read: string;
  readonly problem: DrawerRowProblem;
}

export interface DrawerRead {
  readonly resistors: readonly DrawerResistor[];
  readonly trimmers: readonly DrawerTrimmer[];
  readonly capacitors: readonly DrawerCapacitor[];
  readonly bad: readonly DrawerRow[];
}

/** Words for dielectrics and trimmers as makers and sellers write them. */
const DIELECTRIC_WORDS: Readonly<Record<string, DielectricId>> = {
  film: 'polyester',
  polyester: 'polyester',
  pet: 'polyester',
  mkt: 'polyester',
  mylar: 'polyester',
  polypropylene: 'polypropylene',
  pp: 'polypropylene',
  mkp: 'polypropylene',
  c0g: 'c0g',
  cog: 'c0g',
  np0: 'c0g',
  npo: 'c0g',
  x7r: 'x7r',
  ceramic: 'x7r',
  y5v: 'y5v',
  electrolytic: 'electrolytic',
};
const TRIMMER_WORDS: Readonly<Record<string, TrimmerId>> = {
  trimmer: 'single-turn',
  'single-turn': 'single-turn',
  cermet: 'single-turn',
  'multi-turn': 'multi-turn',
  multiturn: 'multi-turn',
  carbon: 'carbon',
};
const RESISTOR_WORDS = new Set(['resistor', 'metal', 'fixed']);

/** Tolerance of a resistor where none is said: metal film (common practice). */
const RESISTOR_TOLERANCE = 0.01;

/** What one row says, entry by entry, as text. */
type Entries = Partial<Record<DrawerEntry, string>>;

const COLUMNS: Readonly<Record<string, DrawerEntry>> = {
  value: 'value',
  tolerance: 'tolerance',
  dielectric: 'dielectric',
  kind: 'dielectric',
  type: 'dielectric',
  quantity: 'quantity',
  count: 'quantity',
  price: 'price',
};

/** What the head of a table names, null for a column nobody knows, and what stands between its cells. */
interface Columns {
  readonly names: readonly (DrawerEntry | null)[];
  readonly mark: Delimiter;
}

/** Reads a pasted drawer. Empty lines, and lines that begin with `#`, are passed over. */
export function readDrawer(text: string): DrawerRead {
  const lists = {
    resistors: [] as DrawerResistor[],
    trimmers: [] as DrawerTrimmer[],
    capacitors: [] as DrawerCapacitor[],
  };
  const bad: DrawerRow[] = [];
  let columns: Columns | null = null;
  for (const [i, raw] of text
    .replace(/^\uFEFF/, '')
    .split(/\r\n?|\n/)
    .entries()) {
    const read = raw.trim();
    if (read === '' || read.startsWith('#')) continue;
    const head = headOf(raw);
    if (head) {
      columns = head;
      continue;
    }
    const entries = columns && raw.includes(columns.mark) ? cells(raw, columns) : typed(read);
    const problem = 'problem' in entries ? entries.problem : take(entries.entries, lists);
    if (problem) bad.push({ line: i + 1, read: excerpt(read), problem });
  }
  return { ...lists, bad };
}

function headOf(line: string): Columns | null {
  const mark = ([';', '\t', ','] as const).find((sign) => line.includes(sign)) ?? ',';
  const names = cellsOf(line, mark).map((cell) => {
    const name = cell.trim().toLowerCase();
    return Object.hasOwn(COLUMNS, name) ? COLUMNS[name]! : null;
  });
  return names.includes('value') ? { names, mark } : null;
}

type Row = { readonly entries: Entries } | { readonly problem: DrawerRowProblem };

/** A row of a table. Columns nobody named are passed over; a mark within quotation marks is part of the cell. */
function cells(line: string, { names, mark }: Columns): Row {
  const entries: Entries = {};
  for (const [i, cell] of cellsOf(line, mark).entries()) {
    const name = names[i];
    const text = cell.trim();
    if (name && text !== '') entries[name] = text;
  }
  return { entries };
}

/** A row as a person types it: the words in any order. */
function typed(line: string): Row {
  const entries: Entries = {};
  const set = (entry: DrawerEntry, text: string): DrawerRowProblem | null => {
    if (entries[entry] !== undefined) return { kind: 'twice', entry };
    entries[entry] = text;
    return null;
  };
  const words = line
    .replaceAll(/(\d)\s+(%|[pnuµmkM]?(?:F|Ω|ohms?)\b)/g, '$1$2')
    .split(/[\s;]+|(?<!\d),|,(?!\d)/);
  for (const word of words) {
    if (word === '') continue;
    const problem = set(...entryOf(word));
    if (problem) return { problem };
  }
  return { entries };
}

function entryOf(word: string): [DrawerEntry, string] {
  const count = /^(?:[x×*](\d+)|(\d+)[x×*])$/i.exec(word);
  if (count) return ['quantity', (count[1] ?? count[2])!];
  if (/%$/.test(word) || /^±/.test(word)) return ['tolerance', word.replace(/^±/, '')];
  if (/^@/.test(word)) return ['price', word.slice(1)];
  if (/^\d|^[.,]\d/.test(word)) return ['value', word];
  return ['dielectric', word];
}

interface Lists {
  readonly resistors: DrawerResistor[];
  readonly trimmers: DrawerTrimmer[];
  readonly capacitors: DrawerCapacitor[];
}

/** Puts one row into its list, or says why not. */
function take(entries: Entries, lists: Lists): DrawerRowProblem | null {
  if (entries.value === undefined) {
    // A row of nothing but a word is more likely a word nobody knows.
    return entries.dielectric !== undefined && kindOf(entries.dielectric) === null
      ? { kind: 'unknown word', read: entries.dielectric }
      : { kind: 'no value' };
  }
  const kind = entries.dielectric === undefined ? guess(entries.value) : kindOf(entries.dielectric);
  if (kind === null) return { kind: 'unknown word', read: entries.dielectric! };
  const stock = stockOf(entries);
  if ('problem' in stock) return stock.problem;
  const list = lists[kind.list];
  if (list.length >= MOST_LINES) return { kind: 'too many', most: MOST_LINES };
  const tolerance = parseQuantity(
    withPercent(entries.tolerance ?? `${100 * kind.tolerance} %`),
    'share',
    LIMITS.tolerance,
  );
  if (!tolerance.ok) return { kind: 'value', entry: 'tolerance', problem: tolerance.problem };
  const limits =
    kind.list === 'resistors'
      ? LIMITS.raOhms
      : kind.list === 'trimmers'
        ? LIMITS.trimmerOhms
        : LIMITS.timingFarads;
  const value = parseQuantity(
    entries.value,
    kind.list === 'capacitors' ? 'capacitance' : 'resistance',
    limits,
  );
  if (!value.ok) return { kind: 'value', entry: 'value', problem: value.problem };
  const common = { tolerance: tolerance.value, ...stock };
  switch (kind.list) {
    case 'resistors':
      lists.resistors.push({ ohms: value.value, ...common });
      break;
    case 'trimmers':
      lists.trimmers.push({ ohms: value.value, part: kind.part, ...common });
      break;
    case 'capacitors':
      lists.capacitors.push({ farads: value.value, dielectric: kind.dielectric, ...common });
      break;
  }
  return null;
}

const withPercent = (text: string): string => (/^[\d.,]+$/.test(text) ? `${text} %` : text);

type Kind =
  | { readonly list: 'resistors'; readonly tolerance: number }
  | { readonly list: 'trimmers'; readonly part: TrimmerId; readonly tolerance: number }
  | { readonly list: 'capacitors'; readonly dielectric: DielectricId; readonly tolerance: number };

const capacitorOf = (dielectric: DielectricId): Kind => ({
  list: 'capacitors',
  dielectric,
  tolerance: DIELECTRICS[dielectric].tolerance,
});
const RESISTOR: Kind = { list: 'resistors', tolerance: RESISTOR_TOLERANCE };

function kindOf(word: string): Kind | null {
  const known = word.toLowerCase();
  const dielectric = Object.hasOwn(DIELECTRIC_WORDS, known) ? DIELECTRIC_WORDS[known] : undefined;
  if (dielectric) return capacitorOf(dielectric);
  const part = Object.hasOwn(TRIMMER_WORDS, known) ? TRIMMER_WORDS[known] : undefined;
  if (part) return { list: 'trimmers', part, tolerance: TRIMMERS[part].tolerance };
  return RESISTOR_WORDS.has(known) ? RESISTOR : null;
}

/** Without a word, the value's own prefix tells: p, n and µ are capacitors, all else resistors. */
function guess(value: string): Kind {
  return /[pnuµ\u03BC]|F$/.test(value) ? capacitorOf('polyester') : RESISTOR;
}

function stockOf(
  entries: Entries,
):
  | { readonly quantity: number | null; readonly price: number | null }
  | { readonly problem: DrawerRowProblem } {
  const { quantity, price } = entries;
  if (quantity !== undefined && !(/^\d+$/.test(quantity) && Number(quantity) <= PITCH_LIMITS.quantity.max))
    return { problem: { kind: 'not a count', read: quantity } };
  const paid = price?.replace(/^[€$£]\s*/, '').replace(',', '.');
  if (paid !== undefined && !(/^\d+(?:\.\d+)?$/.test(paid) && Number(paid) <= PITCH_LIMITS.price.max))
    return { problem: { kind: 'not a price', read: price! } };
  return {
    quantity: quantity === undefined ? null : Number(quantity),
    price: paid === undefined ? null : Number(paid),
  };
}
