/**
 * The board before its chips are in: only resistors, trimmers and light cells, solved as a network (Kirchhoff at
 * each node, Gauss). Gives what a meter reads at the sockets, and the resistance from rail to 0 V, between the
 * extremes of light and of every trimmer's turn.
 */
import { cellOhms } from '../circuit/cell.ts';
import { railVolts } from '../circuit/supply.ts';
import type { Design } from '../design/design.ts';
import { endOhms } from '../parts/trimmers.ts';
import type { Fraction, Lux, Ohms, Volts } from '../quantity/units.ts';
import type { NetId } from '../words/kit.ts';
import type { Connections, Part } from './parts.ts';

/** The light of a room in which a class solders, and a hand over the cell. */
const BRIGHT: Lux = 1000;
const DARK: Lux = 1;
/** Resistors ±5 % and cells as they come widen what is computed at the extremes. */
const WIDER = 0.1;

export interface Span<T> {
  readonly least: T;
  readonly most: T;
}

export interface BareBoard {
  readonly railOhms: Span<Ohms>;
  /** By net: volts with the supply on; nets that hang on nothing are left out. */
  readonly volts: ReadonlyMap<NetId, Span<Volts>>;
}

interface Resistor {
  readonly from: NetId;
  readonly to: NetId;
  readonly ohms: Ohms;
}

export function bareBoard(design: Design, connections: Connections): BareBoard {
  const rail = railVolts(design.supply);
  const ohms: number[] = [];
  const volts = new Map<NetId, Volts[]>();
  for (const lux of [BRIGHT, DARK])
    for (const turn of [0, 1]) {
      const solved = solve(
        connections.parts.flatMap((part) => resistorsOf(design, part, lux, turn)),
        rail,
      );
      ohms.push(solved.railOhms);
      for (const [net, at] of solved.volts) volts.set(net, [...(volts.get(net) ?? []), at]);
    }
  const least = (all: readonly number[]): number => Math.min(...all) * (1 - WIDER);
  return {
    railOhms: { least: least(ohms), most: Math.max(...ohms) * (1 + WIDER) },
    volts: new Map(
      [...volts].map(([net, all]) => [
        net,
        { least: least(all), most: Math.min(rail * 1.02, Math.max(...all) * (1 + WIDER)) },
      ]),
    ),
  };
}

function resistorsOf(design: Design, { body, leads, voice }: Part, lux: Lux, turn: Fraction): Resistor[] {
  const net = (i: number): NetId => leads[i]!.net;
  if (body.kind === 'resistor') return [{ from: net(0), to: net(1), ohms: body.ohms }];
  if (body.kind === 'cell') {
    const { cell } = design.voices[voice!];
    return [{ from: net(0), to: net(1), ohms: cellOhms(cell, lux) }];
  }
  if (body.kind !== 'trimmer') return [];
  const end = endOhms(body.part, body.ohms);
  const below = end + turn * (body.ohms - 2 * end);
  return [
    { from: net(0), to: net(1), ohms: below },
    { from: net(1), to: net(2), ohms: body.ohms - below },
  ].filter(({ from, to }) => from !== to);
}

/** Volts of every net that resistors tie to rail or 0 V, and the resistance between those two. */
function solve(resistors: readonly Resistor[], rail: Volts): { railOhms: Ohms; volts: Map<NetId, Volts> } {
  const tied = tiedNets(resistors);
  const unknown = [...tied].filter((net) => net !== 'rail' && net !== 'ground');
  const index = new Map<NetId, number>(unknown.map((net, i) => [net, i]));
  const rows = unknown.map(() => new Float64Array(unknown.length + 1));
  for (const { from, to, ohms } of resistors) {
    if (!tied.has(from)) continue;
    for (const [here, there] of [
      [from, to],
      [to, from],
    ] as const) {
      const row = rows[index.get(here) ?? -1];
      if (row === undefined) continue;
      row[index.get(here)!] = row[index.get(here)!]! + 1 / ohms;
      const other = index.get(there);
      if (other !== undefined) row[other] = row[other]! - 1 / ohms;
      else if (there === 'rail') row[unknown.length] = row[unknown.length]! + rail / ohms;
    }
  }
  const values = gauss(rows);
  const volts = new Map<NetId, Volts>([
    ['rail', rail],
    ['ground', 0],
    ...unknown.map((net, i): [NetId, Volts] => [net, values[i]!]),
  ]);
  let amperes = 0;
  for (const { from, to, ohms } of resistors)
    if (from === 'rail' || to === 'rail') amperes += Math.abs(volts.get(from)! - volts.get(to)!) / ohms;
  return { railOhms: rail / amperes, volts };
}

function tiedNets(resistors: readonly Resistor[]): Set<NetId> {
  const tied = new Set<NetId>(['rail', 'ground']);
  let before = 0;
  while (tied.size > before) {
    before = tied.size;
    for (const { from, to } of resistors)
      if (tied.has(from) || tied.has(to)) {
        tied.add(from);
        tied.add(to);
      }
  }
  return tied;
}

/** Gauss elimination with the largest pivot; the last column is the right-hand side. */
function gauss(rows: Float64Array[]): number[] {
  const count = rows.length;
  for (let column = 0; column < count; column++) {
    let pivot = column;
    for (let row = column + 1; row < count; row++)
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = row;
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    for (let row = 0; row < count; row++) {
      if (row === column) continue;
      const share = rows[row]![column]! / rows[column]![column]!;
      if (share !== 0)
        for (let i = column; i <= count; i++) rows[row]![i] = rows[row]![i]! - share * rows[column]![i]!;
    }
  }
  return rows.map((row, i) => row[count]! / row[i]!);
}
