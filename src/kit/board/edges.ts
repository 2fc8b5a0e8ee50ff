/**
 * What is soldered at the board's edge: the jack, its lugs in two widened holes and its body hanging over, and the
 * flying leads of light cells, supply and control voltages.
 */

import type { Part } from '../parts.ts';
import { JACK } from './bodies.ts';
import { bodyBox, type Channel, type WingItem } from './channel.ts';
import type { Demand, Wing } from './demand.ts';
import type { Copper } from './ways.ts';

export type Edged =
  | { readonly ok: true; readonly edge: number }
  | { readonly ok: false; readonly ref: string };

/** Columns beyond the last part that are tried for the edge. */
const MOST_BEYOND = 4;
const LEAD = 0.3;
/** Columns from the edge inward that take a lead. */
const COLUMNS_IN = 4;
/** Bodies may reach this far beyond the last column. */
const BODY_OVER = 0.6;

/** The board reaches at least to this column for an item. */
export function lastColumnOf({ body, leads }: WingItem): number {
  let last = Math.ceil(body.columns[1] - BODY_OVER);
  for (const { k } of leads) last = Math.max(last, k);
  return last;
}

/** Puts all edge items of a wing at the given last column, or at the nearest that takes them all. */
export function placeEdges(
  demand: Demand,
  wing: Wing,
  given: number | null,
  channel: Channel,
  copper: Copper,
): Edged {
  let first = 1;
  for (const item of channel.items) first = Math.max(first, lastColumnOf(item));
  const edges = given === null ? Array.from({ length: MOST_BEYOND }, (_, i) => first + i) : [given];
  let missing = '';
  for (const edge of edges) {
    const before = channel.items.length;
    const refused = putAll(demand, wing, edge, channel, copper);
    if (refused === null) return { ok: true, edge };
    missing = refused;
    channel.takeBack(before);
  }
  return { ok: false, ref: missing };
}

/** The reference that found no place; null when all did. */
function putAll(demand: Demand, wing: Wing, edge: number, channel: Channel, copper: Copper): string | null {
  const put = (item: WingItem): boolean => {
    const isOnCopper = item.leads.every(({ row, k }) => copper.reaches(channel, row, k, false));
    if (!isOnCopper || !channel.fits(item)) return false;
    channel.put(item);
    return true;
  };
  const { jack } = demand;
  if (jack.wing === wing && !jackAt(jack.part, jack.nets, edge, copper).some(put)) return jack.part.ref;
  for (const { part, wing: its, nets } of demand.edges) {
    if (its !== wing) continue;
    const lead = (i: number, row: number, k: number): boolean => put(leadItem(part, i, row, k));
    const before = channel.items.length;
    if (!putLeads(nets, edge, copper, lead, () => channel.takeBack(before))) return part.ref;
  }
  return null;
}

function jackAt(part: Part, nets: readonly number[], edge: number, copper: Copper): WingItem[] {
  const fitting = copper
    .outer(nets[0]!)
    .flatMap((tip) => copper.outer(nets[1]!).map((sleeve): readonly [number, number] => [tip, sleeve]))
    .filter(([tip, sleeve]) => Math.abs(tip - sleeve) === JACK.span);
  return fitting.map(([tip, sleeve]) => {
    const body = {
      rows: [Math.min(tip, sleeve) - JACK.over, Math.max(tip, sleeve) + JACK.over],
      columns: [edge - JACK.inside, edge + JACK.outside],
    } as const;
    const leads = [
      { name: 'tip', row: tip, k: edge },
      { name: 'sleeve', row: sleeve, k: edge },
    ];
    return { kind: 'part', ref: part.ref, stance: 'edge', leads, body, taken: [body] };
  });
}

function leadItem(part: Part, i: number, row: number, k: number): WingItem {
  const body = bodyBox(row, k, 2 * LEAD, 2 * LEAD);
  const leads = [{ name: part.leads[i]!.name, row, k }];
  return { kind: 'part', ref: part.ref, stance: 'edge', leads, body, taken: [body] };
}

/** Puts the leads of one part: the nearest strips first, at the edge or a few holes in. */
function putLeads(
  nets: readonly number[],
  edge: number,
  copper: Copper,
  put: (i: number, row: number, k: number) => boolean,
  takeBack: () => void,
): boolean {
  const columns = Array.from({ length: COLUMNS_IN }, (_, i) => edge - i);
  if (nets.length === 1) return columns.some((k) => copper.outer(nets[0]!).some((row) => put(0, row, k)));
  for (const [a, b] of copper.pairs(nets[0]!, nets[1]!))
    for (const k of columns) {
      if (!put(0, a, k)) continue;
      if (columns.some((other) => put(1, b, other))) return true;
      takeBack();
    }
  return false;
}
