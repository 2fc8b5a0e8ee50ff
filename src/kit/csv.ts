/**
 * Tables as text that spreadsheets open (RFC 4180: commas, quotes doubled, CR LF). A cell that a spreadsheet would
 * take for a formula is kept a text by an apostrophe before it. Numbers are written with a decimal point.
 */

/** What begins a formula, or would be read back as an apostrophe before one. */
const FORMULA = /^'*\s*[=+\-@\t\r]/;

export type CsvCell = string | number | null;

/** Rows as one text, closed by a line end. */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(written).join(',')}\r\n`).join('');
}

function written(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(Number(cell.toPrecision(9))) : '';
  const safe = FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n;]/.test(safe) || safe !== safe.trim() ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Rows of cells; quotes closed or not, nothing is lost. The apostrophe before a would-be formula goes again. */
export function csvRows(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  const endCell = () => {
    row.push(cell[0] === "'" && FORMULA.test(cell.slice(1)) ? cell.slice(1) : cell);
    cell = '';
  };
  const endRow = () => {
    endCell();
    if (row.length > 1 || row[0] !== '') rows.push(row);
    row = [];
  };
  const body = text.replace(/^\uFEFF/, '');
  for (let i = 0; i < body.length; i++) {
    const sign = body[i]!;
    if (quoted) {
      if (sign !== '"') cell += sign;
      else if (body[i + 1] === '"') {
        cell += '"';
        i++;
      } else quoted = false;
    } else if (sign === '"' && cell === '') quoted = true;
    else if (sign === ',') endCell();
    else if (sign === '\n' || sign === '\r') {
      if (sign === '\r' && body[i + 1] === '\n') i++;
      endRow();
    } else cell += sign;
  }
  endRow();
  return rows;
}
