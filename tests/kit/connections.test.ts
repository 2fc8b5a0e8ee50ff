import { expect, test } from 'vitest';
import { connectionsOf } from '../../src/kit/connections.ts';
import type { Connections } from '../../src/kit/parts.ts';
import type { NetId } from '../../src/words/kit.ts';
import { BENCH_DESIGN, designWith } from '../circuit/building.ts';
import { designOf, PLAIN_CHOICE, pairwiseChoices, seededChoices } from './any-kit.ts';

/** What a net joins, parts by what they are for, chips by their pins. */
function joined(connections: Connections, net: NetId): string[] {
  const roles = new Map(connections.parts.map((part) => [part.ref, part]));
  const found = connections.nets.find(({ id }) => id === net);
  return (found?.joins ?? [])
    .map(({ ref, lead }) => {
      const { role, voice, body } = roles.get(ref)!;
      return body.kind === 'chip' ? `${role} ${lead}` : `${role}${voice === null ? '' : ` ${voice}`} ${lead}`;
    })
    .filter((name) => !name.startsWith('test pin'))
    .sort();
}

const bench = connectionsOf(BENCH_DESIGN);

// Connection list of the reference build (job:E), pins after TI SLFS023 and SLCS005: 556-type 1 DIS1, 2 THR1, 3 CONT1,
// 4 RST1, 5 OUT1, 6 TRG1, 7 GND, 8 TRG2, 9 OUT2, 10 RST2, 11 CONT2, 12 THR2, 13 DIS2, 14 VCC; 393-type 1 OUT1,
// 2 IN1−, 3 IN1+, 4 GND, 5 IN2+, 6 IN2−, 7 OUT2, 8 VCC.
test.each<[NetId, string[]]>([
  ['discharge A', ['charge A 2', 'fixed rb A 1', 'timer 1']],
  ['discharge B', ['charge B 2', 'fixed rb B 1', 'timer 13']],
  ['between A', ['fixed rb A 2', 'pitch A 3', 'pitch A wiper']],
  ['capacitor A', ['pitch A 1', 'timer 2', 'timer 6', 'timing A 1']],
  ['capacitor B', ['pitch B 1', 'timer 12', 'timer 8', 'timing B 1']],
  ['control A', ['control bypass A 1', 'timer 3']],
  ['control B', ['control bypass B 1', 'timer 11']],
  ['gate A', ['comparator 1', 'hysteresis A 2', 'pull-up A 2', 'timer 4']],
  ['gate B', ['comparator 7', 'hysteresis B 2', 'pull-up B 2', 'timer 10']],
  ['out A', ['mixing A 1', 'timer 5']],
  ['out B', ['mixing B 1', 'timer 9']],
  ['node A', ['cell A 1', 'comparator 2', 'divider A 1']],
  ['node B', ['cell B 1', 'comparator 6', 'divider B 1']],
  ['reference A', ['input A 1', 'threshold A wiper']],
  ['plus A', ['comparator 3', 'hysteresis A 1', 'input A 2']],
  ['plus B', ['comparator 5', 'hysteresis B 1', 'input B 2']],
  ['mix', ['coupling 1', 'mixing A 2', 'mixing B 2', 'shunt 1']],
  ['jack', ['coupling 2', 'jack tip']],
])('in the bench build %s joins what the reference list says', (net, wanted) => {
  expect(joined(bench, net)).toEqual(wanted);
});

test('the rails reach both chips, both dividers and both references', () => {
  expect(joined(bench, 'rail')).toEqual(
    [
      ...[
        'timer 14',
        'comparator 8',
        'charge A 1',
        'charge B 1',
        'divider A 2',
        'divider B 2',
        'pull-up A 1',
        'pull-up B 1',
      ],
      ...[
        'above threshold A 1',
        'above threshold B 1',
        'reservoir plus',
        'timer bypass 1',
        'comparator bypass 1',
        'supply plus',
      ],
    ].sort(),
  );
  expect(joined(bench, 'ground')).toEqual(
    [
      ...[
        'timer 7',
        'comparator 4',
        'timing A 2',
        'timing B 2',
        'control bypass A 2',
        'control bypass B 2',
        'cell A 2',
        'cell B 2',
      ],
      ...[
        'below threshold A 2',
        'below threshold B 2',
        'shunt 2',
        'jack sleeve',
        'reservoir minus',
        'timer bypass 2',
      ],
      ...['comparator bypass 2', 'supply minus'],
    ].sort(),
  );
});

test('a voice that sounds in shade swaps what the two inputs weigh', () => {
  const shade = connectionsOf(designWith({ voices: { polarity: 'shade' } }));
  expect(joined(shade, 'node A')).toEqual(['cell A 1', 'divider A 1', 'input A 1']);
  expect(joined(shade, 'reference A')).toEqual(['comparator 2', 'threshold A wiper']);
});

test('a cell on top hangs on the rail, and light then raises its node', () => {
  const top = connectionsOf(designOf({ ...PLAIN_CHOICE, cell: 'top' }));
  expect(joined(top, 'rail')).toContain('cell A 2');
  expect(joined(top, 'ground')).toContain('divider A 2');
  expect(joined(top, 'node A')).toContain('input A 1');
});

test('parts that are left out join their neighbours', () => {
  const bare = connectionsOf(
    designOf({
      ...PLAIN_CHOICE,
      ...{ hysteresis: false, fixedRb: false, endResistors: 'none', mixing: 'joined', coupling: 'none' },
      ...{ shunt: false, decoupled: false, arrangement: 'shared' },
    }),
  );
  expect(joined(bare, 'discharge A')).toEqual(['charge A 2', 'pitch A 3', 'pitch A wiper', 'timer 1']);
  expect(joined(bare, 'reference')).toEqual(['comparator 3', 'comparator 5', 'threshold wiper']);
  expect(joined(bare, 'rail')).toContain('threshold 3');
  expect(joined(bare, 'ground')).toContain('threshold 1');
  expect(joined(bare, 'mix')).toEqual(['jack tip', 'timer 5', 'timer 9']);
  expect(joined(bare, 'control A')).toEqual(['timer 3']);
  expect(bare.parts.filter(({ body }) => body.kind === 'capacitor').map(({ role }) => role)).toEqual([
    'timing',
    'timing',
  ]);
});

test('volume, diode and control voltage put their parts between', () => {
  const full = connectionsOf(
    designOf({ ...PLAIN_CHOICE, volume: true, diode: true, control: true, coupling: 'electrolytic' }),
  );
  expect(joined(full, 'volume')).toEqual(['coupling plus', 'volume wiper']);
  expect(joined(full, 'mix')).toContain('volume 3');
  expect(joined(full, 'supply')).toEqual(['diode anode', 'supply plus']);
  expect(joined(full, 'rail')).toContain('diode cathode');
  expect(joined(full, 'control B')).toContain('control lead B 1');
});

test('every lead of every part is in one net, and every test point has a pin on its net: all pairs of options and 100 seeded kits', () => {
  const next = seededChoices(11);
  const designs = [
    ...[...pairwiseChoices()].map((choice) => designOf(choice)),
    ...Array.from({ length: 100 }, () => designOf(...next())),
  ];
  const faults = designs.flatMap((design, i) => {
    const { parts, nets, testPoints } = connectionsOf(design);
    const joins = nets.flatMap(({ joins: all }) => all.map(({ ref, lead }) => `${ref} ${lead}`)).sort();
    const leads = parts.flatMap(({ ref, leads: all }) => all.map(({ name }) => `${ref} ${name}`)).sort();
    const isWhole = joins.join() === leads.join() && new Set(joins).size === joins.length;
    const pins = testPoints.filter(
      ({ net, pin }) =>
        parts
          .find(({ ref }) => ref === pin)
          ?.leads.map((each) => each.net)
          .join() !== net,
    );
    return isWhole && pins.length === 0 ? [] : [`kit ${i}`];
  });
  expect(faults).toEqual([]);
});
