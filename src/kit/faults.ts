/**
 * The faults a board can have, each as a change of the healthy board: of its design, of its netlist, or of both. What
 * is heard and measured then follows from the network, for this very design. Priors 1 to 5: judgement from benches.
 */
import {
  COMPARATOR_PINS,
  type Element,
  exchanged,
  type Netlist,
  opened,
  parted,
  pinsJoined,
  reversed,
  TIMER_PINS,
  without,
} from '../circuit/network/netlist.ts';
import type { Design, Voice } from '../design/design.ts';
import { VOICES, type VoiceId } from '../quantity/units.ts';
import type { FaultKind } from '../words/faults.ts';
import type { MissingLink } from './missing-links.ts';

export interface Fault {
  /** Unique; as kept in the log. */
  readonly id: string;
  /** Null = nothing is wrong. */
  readonly kind: FaultKind | null;
  readonly voice: VoiceId | null;
  /** Of a missing link: which. */
  readonly link: string | null;
  readonly prior: number;
  readonly onDesign: (design: Design) => Design;
  readonly onBoard: (netlist: Netlist) => Netlist;
  /** What only moving light shows. */
  readonly hum: boolean;
}

const same = <T>(value: T): T => value;

type Making = {
  readonly onDesign?: (design: Design) => Design;
  readonly onBoard?: (netlist: Netlist) => Netlist;
  readonly hum?: boolean;
};

function fault(kind: FaultKind | null, voice: VoiceId | null, prior: number, making: Making): Fault {
  const { onDesign = same, onBoard = same, hum = false } = making;
  return {
    id: `${kind ?? 'healthy'}${voice === null ? '' : ` ${voice}`}`,
    kind,
    voice,
    link: null,
    prior,
    onDesign,
    onBoard,
    hum,
  };
}

const inVoice =
  (id: VoiceId, change: (v: Voice) => Voice) =>
  (design: Design): Design => ({ ...design, voices: { ...design.voices, [id]: change(design.voices[id]) } });

const turned =
  (id: VoiceId, rotation: number) =>
  (design: Design): Design => {
    const which = design.threshold.arrangement === 'shared' ? 'A' : id;
    const part = design.threshold.trimmers[which];
    const trimmers = {
      ...design.threshold.trimmers,
      [which]: { ...part, trimmer: { ...part.trimmer, rotation } },
    };
    return { ...design, threshold: { ...design.threshold, trimmers } };
  };

const resistor = (name: string, one: string, other: string, ohms: number): Element => ({
  kind: 'resistor',
  name,
  pins: { 1: one, 2: other },
  ohms,
});

/** The faults a design can have, the healthy board first. */
export function faultsOf(design: Design): readonly Fault[] {
  const shared = design.threshold.arrangement === 'shared';
  return [
    fault(null, null, 8, {}),
    ...boardFaults(design),
    ...uncutFaults(),
    ...VOICES.flatMap((id) => [
      ...sensorFaults(design, id),
      ...gateFaults(design, id),
      ...timerFaults(design, id),
      ...(shared ? [] : thresholdFaults(design, id)),
    ]),
    ...(shared ? thresholdFaults(design, 'A') : []),
  ];
}

function boardFaults(design: Design): readonly Fault[] {
  const { supply, output } = design;
  const out = [
    fault('battery flat', null, supply.kind === 'five-volt' ? 1 : 4, {
      onDesign: (d) => ({ ...d, supply: { ...d.supply, volts: 0.48 * d.supply.volts, sourceOhms: 10 } }),
    }),
    fault('no supply', null, 3, { onBoard: (n) => opened(n, 'supply', 'plus') }),
    fault('timer unpowered', null, 3, { onBoard: (n) => opened(n, 'timer', '14') }),
    fault('comparator pin 8 open', null, 2, { onBoard: (n) => opened(n, 'comparator', '8') }),
    fault('comparator pin 4 open', null, 2, { onBoard: (n) => opened(n, 'comparator', '4') }),
    fault('cells exchanged', null, 3, { onBoard: (n) => exchanged(n, 'cell A', 'cell B') }),
    fault('timer reversed', null, 3, { onBoard: (n) => reversed(n, 'timer', 14) }),
    fault('comparator reversed', null, 3, { onBoard: (n) => reversed(n, 'comparator', 8) }),
    fault('output open', null, 4, {
      onBoard: (n) => (output.coupling === null ? without(n, 'jack') : opened(n, 'coupling', '2')),
    }),
  ];
  if (supply.decoupled)
    out.push(
      fault('no decoupling', null, 2, {
        onDesign: (d) => ({ ...d, supply: { ...d.supply, decoupled: false } }),
      }),
    );
  return out;
}

/** What the ids of missing links begin with. */
const LINK_ID = 'link missing ';

/** A link of the board plan left out, or dry at an end: bare wire is missed more easily than a cut. */
export function linkFault({ id, pins }: MissingLink): Fault {
  const made = fault('link missing', null, 4, { onBoard: (n) => parted(n, pins) });
  return { ...made, id: LINK_ID + id, link: id };
}

/** Which link a kept id names as missing; null = it names another fault. */
export const linkOf = (id: string): string | null =>
  id.startsWith(LINK_ID) ? id.slice(LINK_ID.length) : null;

/** A strip that crosses a chip and was not cut. */
function uncutFaults(): readonly Fault[] {
  const rows: readonly (readonly [FaultKind, 'timer' | 'comparator', number, number])[] = [
    ['uncut 556 1–14', 'timer', 1, 14],
    ['uncut 556 2–13', 'timer', 2, 13],
    ['uncut 556 3–12', 'timer', 3, 12],
    ['uncut 556 4–11', 'timer', 4, 11],
    ['uncut 556 5–10', 'timer', 5, 10],
    ['uncut 556 6–9', 'timer', 6, 9],
    ['uncut 556 7–8', 'timer', 7, 8],
    ['uncut 393 1–8', 'comparator', 1, 8],
    ['uncut 393 2–7', 'comparator', 2, 7],
    ['uncut 393 3–6', 'comparator', 3, 6],
    ['uncut 393 4–5', 'comparator', 4, 5],
  ];
  return rows.map(([kind, chip, one, other]) =>
    fault(kind, null, 3, { onBoard: (n) => pinsJoined(n, [chip, `${one}`], [chip, `${other}`]) }),
  );
}

function sensorFaults(design: Design, id: VoiceId): readonly Fault[] {
  const fixed = (factor: number) =>
    inVoice(id, (v) => ({ ...v, divider: { ...v.divider, fixedOhms: v.divider.fixedOhms * factor } }));
  const out = [
    fault('cell open', id, 5, { onBoard: (n) => opened(n, `cell ${id}`, '1') }),
    fault('cell shorted', id, 2, {
      onBoard: (n) => pinsJoined(n, [`cell ${id}`, '1'], [`cell ${id}`, '2']),
    }),
    fault('cell of another grade', id, 3, {
      onDesign: inVoice(id, (v) => ({ ...v, cell: { ...v.cell, r10Ohms: 5 * v.cell.r10Ohms } })),
    }),
    fault('divider open', id, 3, { onBoard: (n) => opened(n, `divider ${id}`, '1') }),
    fault('divider a tenth', id, 3, { onDesign: fixed(0.1) }),
    fault('divider ten times', id, 2, { onDesign: fixed(10) }),
    fault('polarity crossed', id, 4, {
      onDesign: inVoice(id, (v) => ({ ...v, polarity: v.polarity === 'light' ? 'shade' : 'light' })),
    }),
    fault('hum on the lead', id, 3, { hum: true }),
  ];
  if (design.voices[id].hysteresisOhms !== null)
    out.push(
      fault('hysteresis a tenth', id, 2, {
        onDesign: inVoice(id, (v) => ({ ...v, hysteresisOhms: (v.hysteresisOhms ?? 0) / 10 })),
      }),
      fault('hysteresis missing', id, 2, {
        onDesign: inVoice(id, (v) => ({ ...v, hysteresisOhms: null })),
      }),
    );
  return out;
}

function thresholdFaults(design: Design, id: VoiceId): readonly Fault[] {
  const shared = design.threshold.arrangement === 'shared';
  const suffix = shared ? '' : ` ${id}`;
  const { topOhms, bottomOhms } = design.threshold.trimmers[id];
  const voice = shared ? null : id;
  const open = (end: 'above' | 'below', ohms: number) => (n: Netlist) =>
    ohms > 0
      ? opened(n, `${end} threshold${suffix}`, '1')
      : opened(n, `threshold${suffix}`, end === 'above' ? '3' : '1');
  return [
    fault('threshold at one end', voice, 5, { onDesign: turned(id, 1) }),
    fault('threshold at the other end', voice, 5, { onDesign: turned(id, 0) }),
    fault('wiper open', voice, 3, { onBoard: (n) => opened(n, `threshold${suffix}`, 'wiper') }),
    fault('above threshold open', voice, 2, { onBoard: open('above', topOhms) }),
    fault('below threshold open', voice, 2, { onBoard: open('below', bottomOhms) }),
  ];
}

function gateFaults(_design: Design, id: VoiceId): readonly Fault[] {
  const pullUp = (factor: number) => inVoice(id, (v) => ({ ...v, pullUpOhms: v.pullUpOhms * factor }));
  const { out, minus } = COMPARATOR_PINS[id];
  return [
    fault('pull-up missing', id, 3, { onBoard: (n) => opened(n, `pull-up ${id}`, '1') }),
    fault('pull-up a tenth', id, 2, { onDesign: pullUp(0.1) }),
    fault('pull-up ten times', id, 2, { onDesign: pullUp(10) }),
    fault('reset joint open', id, 3, { onBoard: (n) => opened(n, 'timer', TIMER_PINS[id].rst) }),
    fault('bridge comparator output to input', id, 2, {
      onBoard: (n) => pinsJoined(n, ['comparator', out], ['comparator', minus]),
    }),
  ];
}

/**
 * A missing capacitor leaves the pins' and the strips' own, and the chip's delays: together they make some tens of
 * kilohertz, unheard. How many is not claimed, and never shown.
 */
const STRAY_FARADS = 300e-12;

function timerFaults(design: Design, id: VoiceId): readonly Fault[] {
  const pins = TIMER_PINS[id];
  const bridge = (one: string, other: string) => (n: Netlist) =>
    pinsJoined(n, ['timer', one], ['timer', other]);
  const capacitor = (factor: number) =>
    inVoice(id, (v) => ({ ...v, capacitor: { ...v.capacitor, farads: v.capacitor.farads * factor } }));
  const dead = (n: Netlist): Netlist => [
    ...opened(opened(n, 'timer', pins.out), 'timer', pins.dis),
    resistor(`dead ${id}`, n.find(({ name }) => name === 'timer')?.pins[pins.out] ?? 'ground', 'ground', 12),
  ];
  const out = [
    fault('bridge reset to output', id, 3, { onBoard: bridge(pins.rst, pins.out) }),
    fault('bridge output to trigger', id, 3, { onBoard: bridge(pins.out, pins.trg) }),
    fault('bridge discharge to threshold', id, 3, { onBoard: bridge(pins.dis, pins.thr) }),
    fault('capacitor open', id, 3, {
      onDesign: inVoice(id, (v) => ({ ...v, capacitor: { ...v.capacitor, farads: STRAY_FARADS } })),
    }),
    fault('capacitor a tenth', id, 3, { onDesign: capacitor(0.1) }),
    fault('capacitor ten times', id, 2, { onDesign: capacitor(10) }),
    fault('charge resistor open', id, 2, { onBoard: (n) => opened(n, `charge ${id}`, '1') }),
    fault('rb open', id, 3, { onBoard: (n) => opened(n, `pitch ${id}`, '1') }),
    fault('rb zero', id, 2, {
      onDesign: inVoice(id, (v) => ({
        ...v,
        rbFixedOhms: 0,
        trimmer: { ...v.trimmer, rotation: 0 },
      })),
    }),
    fault('timer dead', id, 2, { onBoard: dead }),
  ];
  if (design.output.mixOhms !== null)
    out.push(fault('mixing resistor open', id, 2, { onBoard: (n) => opened(n, `mixing ${id}`, '1') }));
  return out;
}
