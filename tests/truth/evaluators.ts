/** One evaluator for each kind of row: inputs of the table in, figures from the product's own functions out. */
import { daylight } from './daylight.ts';
import { gates } from './gates.ts';
import { jack } from './jack.ts';
import { light } from './light.ts';
import { movingCell } from './moving-cell.ts';
import { pitch } from './pitch.ts';
import { planning } from './planning.ts';
import { power } from './power.ts';
import { type Evaluators, Inputs, type Row } from './rows.ts';
import { timing } from './timing.ts';

export { type Row, readRow } from './rows.ts';

const TABLES = [timing, gates, movingCell, jack, pitch, planning, light, power, daylight];
const EVALUATORS: Evaluators = Object.assign({}, ...TABLES);

export function valuesFor(row: Row): Readonly<Record<string, number>> {
  const evaluator = EVALUATORS[row.kind];
  if (!evaluator) throw new Error(`No evaluator for rows of the kind "${row.kind}".`);
  return evaluator(new Inputs(row.inputs));
}

/** Distinct ids that ran, of the two published tables: the electronics and the light and sound. */
export function publishedIds(rows: Iterable<Row>): { readonly el: number; readonly ls: number } {
  const ids = [...new Set(Array.from(rows, ({ id }) => id))];
  const of = (table: string) => ids.filter((id) => id.startsWith(`${table}:`)).length;
  return { el: of('el'), ls: of('ls') };
}
