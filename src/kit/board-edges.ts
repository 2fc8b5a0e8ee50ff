/**
 * What is soldered at the board's edge: the jack, its lugs in two widened holes and its body hanging over, and the
 * flying leads of light cells, supply and control voltages.
 */
import { JACK } from './board-bodies.ts';
import { bodyBox, type Channel, type WingItem } from './board-channel.ts';
import type { Demand, Wing } from './board-demand.ts';
import type { Copper } from './board-ways.ts';
import type { Part } from './parts.ts';

export type Edged =
  | { readonly ok: true; readonly edge: number }
  | { readonly ok: false; readonly ref: string };

/** Columns beyond the last part that are tried for the edge. */
const MOST_BEYOND = 4;
const LEAD = 0.3;

/** Puts all edge items of a wing at the given last column, or at the nearest that takes them all. */
export function placeEdges(
  demand: Demand,
  wing: Wing,
  given: number | null,
  channel: Channel,
  copper: Copper,
): Edged {
  const used = channel.items.flatMap(({ body, leads }) => [
    ...leads.map(({ k }) => k),
    Math.ceil(body.columns[1] - 0.6),
  ]);
  const first = Math.max(1, ...used);
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
  const put = (choices: Iterable<readonly WingItem[]>): boolean => {
    for (const items of choices) {
      const before = channel.items.length;
      for (const item of items) {
        const isOnCopper = item.leads.every(({ row, k }) => copper.reaches(channel, row, k, false));
        if (!isOnCopper || !channel.fits(item)) break;
        channel.put(item);
      }
      if (channel.items.length === before + items.length) return true;
      channel.takeBack(before);
    }
    return false;
  };
  const { jack } = demand;
  if (jack.wing === wing && !put(jackChoices(jack.part, jack.nets, edge, copper))) return jack.part.ref;
  for (const { part, wing: its, nets } of demand.edges)
    if (its === wing && !put(leadChoices(part, nets, edge, copper))) return part.ref;
  return null;
}

function* jackChoices(
  part: Part,
  nets: readonly number[],
  edge: number,
  copper: Copper,
): Iterable<WingItem[]> {
  for (const tip of copper.outer(nets[0]!))
    for (const sleeve of copper.outer(nets[1]!)) {
      if (Math.abs(tip - sleeve) !== JACK.span) continue;
      const body = {
        rows: [Math.min(tip, sleeve) - JACK.over, Math.max(tip, sleeve) + JACK.over],
        columns: [edge - JACK.inside, edge + JACK.outside],
      } as const;
      const leads = [
        { name: 'tip', row: tip, k: edge },
        { name: 'sleeve', row: sleeve, k: edge },
      ];
      yield [{ kind: 'part', ref: part.ref, stance: 'edge', leads, body, taken: [body] }];
    }
}

/** Leads of one part: the nearest strips first, at the edge or one hole in. */
function* leadChoices(
  part: Part,
  nets: readonly number[],
  edge: number,
  copper: Copper,
): Iterable<WingItem[]> {
  const item = (i: number, row: number, k: number): WingItem => {
    const body = bodyBox(row, k, 2 * LEAD, 2 * LEAD);
    const leads = [{ name: part.leads[i]!.name, row, k }];
    return { kind: 'part', ref: part.ref, stance: 'edge', leads, body, taken: [body] };
  };
  const columns = Array.from({ length: 4 }, (_, i) => edge - i);
  if (nets.length === 1) {
    for (const k of columns) for (const row of copper.outer(nets[0]!)) yield [item(0, row, k)];
    return;
  }
  const pairs = copper
    .outer(nets[0]!)
    .flatMap((a) => copper.outer(nets[1]!).map((b): readonly [number, number] => [a, b]))
    .sort((one, other) => Math.abs(one[0] - one[1]) - Math.abs(other[0] - other[1]));
  for (const [a, b] of pairs)
    for (const ka of columns) for (const kb of columns) yield [item(0, a, ka), item(1, b, kb)];
}
