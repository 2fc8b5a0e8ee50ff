/** From rows and two filled wings to a plan in holes of the board. */
import type { NetId } from '../../words/kit.ts';
import type { Connections, Part } from '../parts.ts';
import { CHIP_OVER, JACK, PITCH_MILLIMETRES } from './bodies.ts';
import type { Box, WingItem } from './channel.ts';
import type { Rows } from './cool.ts';
import { ACROSS_CHIP, type Demand, type Wing } from './demand.ts';
import { type BoardSize, type Hole, type LeadInHole, stripPieces } from './extract.ts';
import type { WingPlan } from './fill.ts';
import {
  type BoardPlan,
  type Cut,
  type Link,
  type Mark,
  type NetPiece,
  type Outline,
  type PlacedPart,
  rounded,
  type Widened,
} from './plan.ts';

/** Where the rows lie on a board: strips before the first row, and the hole of the left row of pins. */
export interface Seat {
  readonly board: BoardSize;
  readonly before: number;
  readonly leftPins: number;
}

/** The hole at a wing's row and column. */
function holeAt({ before, leftPins }: Seat, wing: Wing, row: number, k: number): Hole {
  return { strip: before + row + 1, hole: wing === 0 ? leftPins - k : leftPins + ACROSS_CHIP + k };
}

export function assembled(
  connections: Connections,
  demand: Demand,
  rows: Rows,
  wings: readonly [WingPlan, WingPlan],
  seat: Seat,
  kept: readonly Hole[],
): BoardPlan {
  const { board } = seat;
  const cuts = cutsOf(demand, rows, wings, seat);
  const links = linksOf(wings, seat);
  const parts = placedParts(connections, demand, rows, wings, seat);
  const widened = parts.flatMap(({ part, leads }): Widened[] =>
    part.body.kind === 'jack'
      ? leads.map(({ at, ref, lead }) => ({ at, ref, lead, millimetres: JACK.widenedMillimetres }))
      : [],
  );
  const nets = new Map(
    connections.parts.flatMap(({ ref, leads }) => leads.map((l) => [`${ref}.${l.name}`, l.net])),
  );
  const netAt = new Map<string, NetId>();
  for (const { leads } of parts)
    for (const { at, ref, lead } of leads) netAt.set(keyOf(at), nets.get(`${ref}.${lead}`)!);
  for (const { from, to, net } of links) for (const at of [from, to]) netAt.set(keyOf(at), net);
  const pieces = stripPieces(board, cuts).map((piece): NetPiece => {
    for (let hole = piece.from; hole <= piece.to; hole++) {
      const net = netAt.get(keyOf({ strip: piece.strip, hole }));
      if (net !== undefined) return { ...piece, net };
    }
    return { ...piece, net: null };
  });
  return { connections, board, pieces, cuts, links, parts, widened, kept };
}

const keyOf = ({ strip, hole }: Hole): string => `${strip}.${hole}`;

const byPlace = (a: Hole, b: Hole): number => a.strip - b.strip || a.hole - b.hole;

/** Under the chips, in the middle between two nets of a row, and behind a chip's short copper. */
function cutsOf(demand: Demand, rows: Rows, wings: readonly [WingPlan, WingPlan], seat: Seat): Cut[] {
  const name = (net: number): NetId => demand.nets[net]!;
  const cuts: Cut[] = [];
  const middle = (row: number): Hole => ({ strip: seat.before + row + 1, hole: seat.leftPins + 1 });
  for (const [i, chip] of demand.chips.entries())
    for (let strip = 0; strip < chip.strips; strip++)
      cuts.push({
        ...middle(rows.chipRows[i]! + strip),
        under: chip.part.ref,
        nets: [name(chip.pins[0][strip]!), name(chip.pins[1][strip]!)],
      });
  for (let row = 0; row < rows.count; row++) {
    const [left, right] = [rows.content[0][row]!, rows.content[1][row]!];
    if (rows.stub[0][row]! < 0 && left >= 0 && right >= 0 && left !== right)
      cuts.push({ ...middle(row), under: null, nets: [name(left), name(right)] });
  }
  for (const wing of [0, 1] as const)
    for (const { row, k } of wings[wing].cuts) {
      const [inner, outer] = [name(rows.stub[wing][row]!), name(rows.content[wing][row]!)];
      cuts.push({
        ...holeAt(seat, wing, row, k),
        under: null,
        nets: wing === 0 ? [outer, inner] : [inner, outer],
      });
    }
  return cuts.sort(byPlace);
}

function linksOf(wings: readonly [WingPlan, WingPlan], seat: Seat): Link[] {
  const links = ([0, 1] as const).flatMap((wing) =>
    wings[wing].items
      .filter(({ kind }) => kind === 'link')
      .map(({ ref, leads }) => {
        const [from, to] = leads.map(({ row, k }) => holeAt(seat, wing, row, k)).sort(byPlace);
        return { net: ref as NetId, from: from!, to: to! };
      }),
  );
  return links
    .sort((a, b) => byPlace(a.from, b.from))
    .map((link, i) => ({
      id: `L${i + 1}`,
      ...link,
      millimetres: Math.abs(link.to.strip - link.from.strip) * PITCH_MILLIMETRES,
    }));
}

function placedParts(
  connections: Connections,
  demand: Demand,
  rows: Rows,
  wings: readonly [WingPlan, WingPlan],
  seat: Seat,
): PlacedPart[] {
  const items = new Map<string, { wing: Wing; item: WingItem }[]>();
  for (const wing of [0, 1] as const)
    for (const item of wings[wing].items)
      if (item.kind === 'part') items.set(item.ref, [...(items.get(item.ref) ?? []), { wing, item }]);
  return connections.parts.map((part) => {
    const chip = demand.chips.findIndex((each) => each.part === part);
    if (chip >= 0) return placedChip(part, rows.chipRows[chip]!, seat);
    const found = items.get(part.ref)!;
    const leads = found.flatMap(({ wing, item }) =>
      item.leads.map(
        ({ name, row, k }): LeadInHole => ({ ref: part.ref, lead: name, at: holeAt(seat, wing, row, k) }),
      ),
    );
    const { wing, item } = found[0]!;
    const isTwo = item.stance === 'flat' || item.stance === 'upright' || item.stance === 'standing';
    return {
      part,
      stance: item.stance as PlacedPart['stance'],
      leads,
      outline: outlineOf(part, item, seat, wing),
      mark: markOf(part, leads),
      span: isTwo && leads.length === 2 ? Math.abs(leads[0]!.at.strip - leads[1]!.at.strip) : null,
      standsAt: item.stance === 'upright' ? leads[0]!.at : null,
    };
  });
}

function outlineOf(part: Part, item: WingItem, seat: Seat, wing: Wing): Outline | null {
  const { body } = part;
  if (item.stance === 'edge' && body.kind !== 'jack') return null;
  const round =
    item.stance === 'upright' || item.stance === 'pin' || (body.kind === 'capacitor' && body.polarised);
  return { shape: round ? 'circle' : 'box', ...onBoard(item.body, seat, wing) };
}

function onBoard({ rows, columns }: Box, { before, leftPins }: Seat, wing: Wing): Pick<Outline, 'x' | 'y'> {
  const x = (k: number): number => (wing === 0 ? leftPins - k : leftPins + ACROSS_CHIP + k);
  const [a, b] = [x(columns[0]), x(columns[1])];
  const y = (row: number): number => rounded(before + 1 + row);
  return { x: [rounded(Math.min(a, b)), rounded(Math.max(a, b))], y: [y(rows[0]), y(rows[1])] };
}

function placedChip(part: Part, firstRow: number, seat: Seat): PlacedPart {
  const strips = part.leads.length / 2;
  const leads = part.leads.map(({ name }, i): LeadInHole => {
    const [wing, row]: [Wing, number] = i < strips ? [0, i] : [1, part.leads.length - 1 - i];
    return { ref: part.ref, lead: name, at: holeAt(seat, wing, firstRow + row, 0) };
  });
  const top = seat.before + firstRow + 1;
  return {
    part,
    stance: 'chip',
    leads,
    outline: {
      shape: 'box',
      x: [seat.leftPins - CHIP_OVER, seat.leftPins + ACROSS_CHIP + CHIP_OVER],
      y: [top - CHIP_OVER, top + strips - 1 + CHIP_OVER],
    },
    mark: { kind: 'notch', pin1: leads[0]!.at },
    span: null,
    standsAt: null,
  };
}

function markOf(part: Part, leads: readonly LeadInHole[]): Mark | null {
  const at = (name: string): Hole => leads.find(({ lead }) => lead === name)!.at;
  switch (part.body.kind) {
    case 'capacitor':
      return part.body.polarised ? { kind: 'plus', at: at('plus') } : null;
    case 'diode':
      return { kind: 'band', at: at('cathode') };
    case 'trimmer':
      return { kind: 'legs', one: at('1'), wiper: at('wiper'), three: at('3') };
    case 'chip':
    case 'resistor':
    case 'cell':
    case 'supply':
    case 'control lead':
    case 'jack':
    case 'test pin':
      return null;
  }
}
