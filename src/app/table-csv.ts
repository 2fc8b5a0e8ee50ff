/** A table of the page as the text of a CSV file, to be reckoned with. */
import { type CsvCell, csvText as rowsAsCsv } from '../kit/csv.ts';

const SIGNED_NUMBER = /^[+-]\d+(\.\d+)?(e[+-]?\d+)?$/i;

/** The whole file, heads first. */
export function csvText(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return rowsAsCsv([heads, ...rows].map((row) => row.map(cell)));
}

/** The page's own minus and spaces are for reading; a number with a sign is one, and no formula. */
function cell(text: string): CsvCell {
  const plain = text.replaceAll('\u2212', '-').replaceAll(/[\u00A0\u202F]/g, ' ');
  return SIGNED_NUMBER.test(plain) ? Number(plain) : plain;
}
