/**
 * A plain layout to hold a plan against: one strip for each net from end to end, one column for each part, four for
 * each chip, one at each edge for flying leads and jack, and a link for each further chip pin. Strips are cut under the chips, so only the pins on their right
 * lie on strips that go on; the first of those on each net needs no link, every other chip pin needs one. Test pins
 * take no column.
 */

import type { Connections } from '../parts.ts';
import type { BoardPlan } from './plan.ts';

export interface PlainLayout {
  readonly strips: number;
  readonly holes: number;
  readonly links: number;
}

const CHIP_HOLES = 4;
const EDGE_HOLES = 2;

export function plainLayout({ parts, nets }: Connections): PlainLayout {
  const chips = parts.filter(({ body }) => body.kind === 'chip');
  const columns = parts.filter(
    ({ body }) =>
      body.kind === 'resistor' ||
      body.kind === 'capacitor' ||
      body.kind === 'diode' ||
      body.kind === 'trimmer',
  );
  const pins = chips.reduce((sum, { leads }) => sum + leads.length, 0);
  const direct = new Set(chips.flatMap(({ leads }) => leads.slice(leads.length / 2).map(({ net }) => net)));
  return {
    strips: nets.length,
    holes: columns.length + CHIP_HOLES * chips.length + EDGE_HOLES,
    links: pins - direct.size,
  };
}

export interface BoardRatios {
  /** Strips × holes of the plan's board, as a share of the plain layout's. */
  readonly area: number;
  readonly links: number;
}

/** A plan on a board cut to fit, against the plain layout of the same connections. */
export function ratiosOf({ connections, board, links }: BoardPlan): BoardRatios {
  const plain = plainLayout(connections);
  return {
    area: (board.strips * board.holes) / (plain.strips * plain.holes),
    links: links.length / plain.links,
  };
}
