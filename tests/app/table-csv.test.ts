/** Tables as CSV files: read back by rule, and harmless in a spreadsheet. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csvText } from '../../src/app/table-csv.ts';

/** RFC 4180 read letter by letter, apart from the writer. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let inQuotes = false;
  for (let i = 0; i < text.length; i++) {
    const letter = text[i]!;
    if (inQuotes) {
      if (letter !== '"') cell += letter;
      else if (text[i + 1] === '"') {
        cell += '"';
        i++;
      } else inQuotes = false;
    } else if (letter === '"') inQuotes = true;
    else if (letter === ',') {
      row.push(cell);
      cell = '';
    } else if (letter === '\r' && text[i + 1] === '\n') {
      rows.push([...row, cell]);
      row = [];
      cell = '';
      i++;
    } else cell += letter;
  }
  return rows;
}

test('any table of plain words reads back as it was (seed 4)', () => {
  const words = fc
    .string({ maxLength: 12 })
    .filter((text) => !/^'*\s*[=+\-@\t\r]|[\u2212\u00A0\u202F]/.test(text));
  const table = fc.array(fc.array(words, { minLength: 2, maxLength: 2 }), { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(table, ([heads, ...rows]) => {
      expect(readCsv(csvText(heads!, rows))).toEqual([heads, ...rows]);
    }),
    { seed: 4, numRuns: 200 },
  );
});

test('what a spreadsheet would reckon with begins with an apostrophe, a negative number does not', () => {
  const text = csvText(
    ['=HYPERLINK("x")', '+1+2'],
    [
      ['-2', '−9 cents'],
      ['@sum', '-1e-3'],
      [' =1+1', "'=1"],
    ],
  );
  expect(readCsv(text)).toEqual([
    ['\'=HYPERLINK("x")', "'+1+2"],
    ['-2', "'-9 cents"],
    ["'@sum", '-0.001'],
    ["' =1+1", "''=1"],
  ]);
});
