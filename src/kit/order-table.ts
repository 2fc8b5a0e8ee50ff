/** The order list as a table of words and numbers, and as CSV. */

import { useWords } from '../words/bench.ts';
import { effectWords, lineWords, orderWords } from '../words/order.ts';
import { type CsvCell, csvText } from './csv.ts';
import type { Order, OrderLine } from './order.ts';

/** One row a line, in the order of `orderWords.columns`. */
function orderRow(line: OrderLine): readonly CsvCell[] {
  const { name, mustMatch, mayVary } = lineWords(line.spec);
  return [
    name,
    mustMatch,
    mayVary,
    useWords(line.uses),
    line.perKit,
    line.needed,
    line.withSpares,
    line.stock,
    line.packSize,
    line.packs,
    line.packPrice,
    line.cost,
    line.chance,
    line.alternates
      .map(({ spec, effects }) => [`${lineWords(spec).name}.`, ...effects.map(effectWords)].join(' '))
      .join(' | '),
  ];
}

/** The whole order as CSV text. */
export function orderCsv(order: Order): string {
  const empty: CsvCell[] = Array.from(orderWords.columns, () => null);
  const total: CsvCell[] = empty.with(0, orderWords.total).with(11, order.cost).with(12, order.chance);
  return csvText([orderWords.columns, ...order.lines.map(orderRow), total]);
}
