/** A design drawn out as a net of parts for the solver in `nodal.ts`: what the tests hold the product against. */
import type { Design } from '../../src/design/design.ts';
import { COMPARATORS } from '../../src/parts/comparators.ts';
import { TIMERS } from '../../src/parts/timers.ts';
import { endOhms } from '../../src/parts/trimmers.ts';
import type { Pair, VoiceId } from '../../src/quantity/units.ts';
import { current, type Part, rail, resistor, solve } from './nodal.ts';

const VOICES = ['A', 'B'] as const;

/** Everything that hangs on the comparators, for given cell resistances and outputs (true = off, pulled high). */
export function gateNet(design: Design, cellOhms: Pair<number>, high: Pair<boolean>): readonly Part[] {
  const timer = TIMERS[design.timer];
  const parts: Part[] = [rail('V', design.supply.volts)];
  for (const id of VOICES) {
    const v = design.voices[id];
    const [over, under] =
      v.divider.cell === 'top' ? [cellOhms[id], v.divider.fixedOhms] : [v.divider.fixedOhms, cellOhms[id]];
    parts.push(resistor('V', `sensor${id}`, over), resistor(`sensor${id}`, '0', under));
    parts.push(resistor('V', `out${id}`, v.pullUpOhms));
    if (high[id]) parts.push(current(`out${id}`, -timer.resetHighAmperes));
    else {
      parts.push(current(`out${id}`, timer.resetLowAmperes));
      parts.push(resistor(`out${id}`, '0', COMPARATORS[design.comparator].saturationOhms));
    }
    parts.push(resistor(plusNode(design, id), `plus${id}`, v.inputOhms));
    if (v.hysteresisOhms !== null) parts.push(resistor(`plus${id}`, `out${id}`, v.hysteresisOhms));
  }
  for (const id of design.threshold.arrangement === 'shared' ? (['A'] as const) : VOICES) {
    const { topOhms, bottomOhms, trimmer } = design.threshold.trimmers[id];
    const end = endOhms(trimmer.part, trimmer.ohms);
    const below = end + trimmer.rotation * (trimmer.ohms - 2 * end);
    parts.push(resistor('V', `wiper${id}`, topOhms + trimmer.ohms - below));
    parts.push(resistor(`wiper${id}`, '0', bottomOhms + below));
  }
  return parts;
}

const wiperOf = (design: Design, id: VoiceId) =>
  `wiper${design.threshold.arrangement === 'shared' ? 'A' : id}`;

/** The output must rise where the voice should sound, so the + input takes whichever node rises there. */
function plusNode(design: Design, id: VoiceId): string {
  const { divider, polarity } = design.voices[id];
  const risesInLight = divider.cell === 'top';
  return risesInLight === (polarity === 'light') ? `sensor${id}` : wiperOf(design, id);
}

function minusNode(design: Design, id: VoiceId): string {
  return plusNode(design, id).startsWith('sensor') ? wiperOf(design, id) : `sensor${id}`;
}

/** + input less − input of one comparator, volts: above 0 its output goes high. */
function differenceVolts(design: Design, id: VoiceId, cellOhms: Pair<number>, high: Pair<boolean>): number {
  const volts = solve(gateNet(design, cellOhms, high));
  return volts[`plus${id}`]! - volts[minusNode(design, id)]!;
}

/** The cell resistance at which a comparator tips, for given outputs: by halving, 20 Ω to 900 kΩ. */
export function tripOhms(design: Design, id: VoiceId, high: Pair<boolean>): number | null {
  const difference = (ohms: number) => differenceVolts(design, id, { A: ohms, B: ohms }, high);
  let low = 20;
  let top = 900_000;
  const atLow = difference(low);
  if (atLow < 0 === difference(top) < 0) return null;
  for (let i = 0; i < 60; i++) {
    const middle = Math.sqrt(low * top);
    if (difference(middle) < 0 === atLow < 0) low = middle;
    else top = middle;
  }
  return Math.sqrt(low * top);
}
