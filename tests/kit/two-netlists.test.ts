/** The circuit the faults are solved on and the list a board is built from join the same pins, over many designs. */
import { expect, test } from 'vitest';
import { netlistOf } from '../../src/circuit/network/design-netlist.ts';
import type { Netlist } from '../../src/circuit/network/netlist.ts';
import { connectionsOf } from '../../src/kit/connections.ts';
import type { Connections, Part } from '../../src/kit/parts.ts';
import { type Choice, designOf, pairwiseChoices, seededChoices } from './any-kit.ts';

const LUX = { A: 100, B: 100 };

/** On the list only: pins to hold a probe on, and small capacitors that vanish beside the reservoir. */
const LIST_ONLY: ReadonlySet<string> = new Set(['test pin', 'timer bypass', 'comparator bypass']);

const nameOf = ({ role, voice }: Part): string => (voice === null ? role : `${role} ${voice}`);

/** The circuit's name of a lead: it numbers what the list names on a polarised capacitor, the jack and a control lead. */
function pinOf({ role, body }: Part, lead: string): string {
  if (role === 'control lead') return 'plus';
  if (role === 'jack') return lead === 'tip' ? '1' : '2';
  if (body.kind === 'capacitor' && role !== 'reservoir')
    return ({ plus: '1', minus: '2' } as Record<string, string>)[lead] ?? lead;
  return lead;
}

type Join = readonly [net: string, pin: string];

/** Pins by the net they share, whatever it is called: sorted within and among. */
function partition(joins: readonly Join[]): string[] {
  const groups = new Map<string, string[]>();
  for (const [net, pin] of joins) groups.set(net, [...(groups.get(net) ?? []), pin]);
  return [...groups.values()].map((pins) => pins.sort().join(', ')).sort();
}

const listed = ({ parts }: Connections): string[] => {
  const forced = new Set(parts.flatMap((part) => (part.role === 'control lead' ? [part.voice] : [])));
  return partition(
    parts
      // A capacitor across a forced voltage does nothing, and the circuit leaves it out.
      .filter(
        (part) => !LIST_ONLY.has(part.role) && !(part.role === 'control bypass' && forced.has(part.voice)),
      )
      .flatMap((part) =>
        part.leads.map(({ name, net }): Join => [net, `${nameOf(part)}.${pinOf(part, name)}`]),
      ),
  );
};

const solved = (netlist: Netlist): string[] =>
  partition(
    netlist.flatMap(({ name, pins }) =>
      Object.entries(pins)
        // A control voltage comes against the supply's own 0 V, on one lead.
        .filter(([pin]) => !(name.startsWith('control lead') && pin === 'minus'))
        .map(([pin, net]): Join => [net, `${name}.${pin}`]),
    ),
  );

const seeded = function* (seed: number, count: number): Iterable<readonly [Choice, Choice]> {
  const next = seededChoices(seed);
  for (let i = 0; i < count; i++) yield next();
};

test('each pair of options at each pair of choices joins the same pins in both', () => {
  for (const choice of pairwiseChoices()) {
    const design = designOf(choice);
    expect(listed(connectionsOf(design)), JSON.stringify(choice)).toEqual(solved(netlistOf(design, LUX)));
  }
});

test('300 designs with the two voices apart join the same pins in both (seed 31)', () => {
  for (const both of seeded(31, 300)) {
    const design = designOf(...both);
    expect(listed(connectionsOf(design)), JSON.stringify(both)).toEqual(solved(netlistOf(design, LUX)));
  }
});

test('one lead on another net is a difference, whichever lead it is (seed 32)', () => {
  for (const both of seeded(32, 4)) {
    const design = designOf(...both);
    const netlist = netlistOf(design, LUX);
    const list = listed(connectionsOf(design));
    const nets = [...new Set(netlist.flatMap(({ pins }) => Object.values(pins)))];
    for (const [at, element] of netlist.entries())
      for (const [pin, net] of Object.entries(element.pins)) {
        if (element.name.startsWith('control lead') && pin === 'minus') continue;
        const other = nets[(nets.indexOf(net) + 1) % nets.length]!;
        const moved = netlist.with(at, { ...element, pins: { ...element.pins, [pin]: other } });
        expect(solved(moved), `${element.name}.${pin}`).not.toEqual(list);
      }
  }
});
