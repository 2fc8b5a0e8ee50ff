/**
 * A table as the text of a CSV file (RFC 4180: commas, quotes doubled, CRLF) that no spreadsheet takes for a formula:
 * a cell that would begin one gets an apostrophe before it, unless it is a plain number.
 */

const FORMULA = /^[=+\-@\t\r]/;
const NUMBER = /^[+-]?\d+(\.\d+)?(e[+-]?\d+)?$/i;

/** The whole file, heads first. */
export function csvText(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return [heads, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(text: string): string {
  // The page's own minus and spaces are for reading; a file is for reckoning.
  const plain = text.replaceAll('\u2212', '-').replaceAll(/[\u00A0\u202F]/g, ' ');
  const safe = FORMULA.test(plain) && !NUMBER.test(plain) ? `'${plain}` : plain;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
