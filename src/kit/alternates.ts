/**
 * What to take when a line is not to be had, and what it does to this design: every alternate is put into the
 * design and the model asked again. Thresholds stay where they are; a pitch trimmer is turned back if it can.
 */
import { type Instrument, instrumentOf } from '../circuit/instrument.ts';
import { leastSourceVolts } from '../circuit/supply.ts';
import { chooseCell, chooseTimer } from '../design/commands.ts';
import type { Design, Voice } from '../design/design.ts';
import { DIELECTRICS } from '../parts/capacitors.ts';
import { CELLS, type CellId } from '../parts/cells.ts';
import { centsBetween } from '../plan/notes.ts';
import type { VoiceId } from '../quantity/units.ts';
import type { AlternateEffect, OrderSpec } from '../words/order.ts';
import { rotationFor } from './rotation.ts';

export interface Alternate {
  readonly spec: OrderSpec;
  readonly effects: readonly AlternateEffect[];
}

/** IEC 60063. */
const E12 = [1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2] as const;
/** What trimmers come in: 1-2-5 by some makers, 1-2.2-4.7 by others. */
const TRIMMER_STEPS = [1, 2, 2.2, 2.5, 4.7, 5] as const;

/** The next values below and above, one each, of a series that repeats by decades. */
export function neighbours(value: number, series: readonly number[]): readonly number[] {
  const decade = Math.floor(Math.log10(value * (1 + 1e-9)));
  const all = [decade - 1, decade, decade + 1].flatMap((power) =>
    series.map((step) => Number(`${step}e${power}`)),
  );
  const below = all.filter((x) => x < value * (1 - 1e-6)).at(-1);
  const above = all.find((x) => x > value * (1 + 1e-6));
  return [below, above].filter((x) => x !== undefined);
}

interface UseOf {
  readonly role: string;
  readonly voice: VoiceId | null;
}

/** Alternates of one line, each with its effects on this design. */
export function alternatesFor(
  design: Design,
  spec: OrderSpec,
  uses: readonly UseOf[],
  before: Instrument = instrumentOf(design),
): readonly Alternate[] {
  const voices = uses.flatMap(({ voice }) => (voice === null ? [] : [voice]));
  const alternate = (other: OrderSpec, changed: Design): Alternate => ({
    spec: other,
    effects: effectsOf(design, before, changed),
  });
  switch (spec.kind) {
    case 'timing capacitor': {
      const values = neighbours(spec.farads, E12).map((farads) => ({ ...spec, farads }));
      const better =
        spec.dielectric === 'polyester'
          ? 'polypropylene'
          : spec.dielectric === 'polypropylene'
            ? 'c0g'
            : 'polyester';
      const other = { ...spec, dielectric: better, tolerance: DIELECTRICS[better].tolerance } as const;
      return [...values, other].map((next) =>
        alternate(
          next,
          inVoices(design, voices, (v) => ({ ...v, capacitor: capacitorFrom(next) })),
        ),
      );
    }
    case 'trimmer': {
      if (!uses.some(({ role }) => role === 'pitch')) return [];
      return neighbours(spec.ohms, TRIMMER_STEPS).map((ohms) =>
        alternate(
          { ...spec, ohms },
          inVoices(design, voices, (v) => ({ ...v, trimmer: { ...v.trimmer, ohms } })),
        ),
      );
    }
    case 'resistor':
      return neighbours(spec.ohms, E12).map((ohms) =>
        alternate({ kind: 'resistor', ohms }, withResistor(design, uses, ohms)),
      );
    case 'cell':
      return nearestCells(design.voices[voices[0] ?? 'A'].cell.family).map((family) => {
        const { r10Ohms, gamma, darkOhms } = CELLS[family];
        const other: OrderSpec = {
          kind: 'cell',
          minOhms: r10Ohms.min,
          maxOhms: r10Ohms.max,
          gamma: gamma.usual,
          darkOhms,
        };
        return alternate(
          other,
          voices.reduce((all, voice) => chooseCell(voice, family)(all), design),
        );
      });
    case 'timer': {
      const family = spec.family === 'bipolar' ? 'cmos' : 'bipolar';
      const changed = chooseTimer(family)(design);
      const least = leastSourceVolts(design.supply, family, design.comparator);
      const found = alternate({ ...spec, family }, changed);
      return least > design.supply.volts
        ? [{ ...found, effects: [{ kind: 'supply too low', leastVolts: least }] }]
        : [found];
    }
    case 'comparator': {
      const family = spec.family === 'classic' ? 'later' : 'classic';
      return [alternate({ kind: 'comparator', family }, { ...design, comparator: family })];
    }
    default:
      return [];
  }
}

function inVoices(design: Design, voices: readonly VoiceId[], change: (v: Voice) => Voice): Design {
  const changed = { ...design.voices };
  for (const voice of voices) changed[voice] = change(changed[voice]);
  return { ...design, voices: changed };
}

function capacitorFrom(spec: OrderSpec & { kind: 'timing capacitor' }): Voice['capacitor'] {
  return { farads: spec.farads, dielectric: spec.dielectric, tolerance: spec.tolerance };
}

/** Every place of this line takes the other value. */
function withResistor(design: Design, uses: readonly UseOf[], ohms: number): Design {
  let changed = design;
  for (const { role, voice } of uses) {
    if (voice !== null)
      changed = inVoices(changed, [voice], (v) => {
        switch (role) {
          case 'charge':
            return { ...v, raOhms: ohms };
          case 'fixed rb':
            return { ...v, rbFixedOhms: ohms };
          case 'divider':
            return { ...v, divider: { ...v.divider, fixedOhms: ohms } };
          case 'input':
            return { ...v, inputOhms: ohms };
          case 'hysteresis':
            return { ...v, hysteresisOhms: ohms };
          case 'pull-up':
            return { ...v, pullUpOhms: ohms };
          default:
            return v;
        }
      });
    if (role === 'above threshold' || role === 'below threshold') {
      const entry = role === 'above threshold' ? { topOhms: ohms } : { bottomOhms: ohms };
      const trimmers = { ...changed.threshold.trimmers };
      for (const id of voice === null ? (['A'] as const) : [voice])
        trimmers[id] = { ...trimmers[id], ...entry };
      changed = { ...changed, threshold: { ...changed.threshold, trimmers } };
    }
    const { mixOhms } = changed.output;
    if (role === 'mixing' && voice !== null && mixOhms !== null)
      changed = { ...changed, output: { ...changed.output, mixOhms: { ...mixOhms, [voice]: ohms } } };
    if (role === 'shunt') changed = { ...changed, output: { ...changed.output, shuntOhms: ohms } };
  }
  return changed;
}

/** The grades nearest by their usual value, one lower and one higher where there are. */
function nearestCells(family: CellId): readonly CellId[] {
  const own = CELLS[family].r10Ohms.usual;
  const others = Object.values(CELLS)
    .filter(({ id }) => id !== family)
    .toSorted((a, b) => a.r10Ohms.usual - b.r10Ohms.usual);
  const below = others.filter(({ r10Ohms }) => r10Ohms.usual <= own).at(-1);
  const above = others.find(({ r10Ohms }) => r10Ohms.usual > own);
  return [below, above].flatMap((cell) => (cell === undefined ? [] : [cell.id]));
}

function effectsOf(design: Design, before: Instrument, changed: Design): readonly AlternateEffect[] {
  const after = instrumentOf(changed);
  const effects: AlternateEffect[] = [];
  for (const voice of ['A', 'B'] as const) {
    const [old, now] = [before.voices[voice], after.voices[voice]];
    const [from, to] = [old.cycle.frequency, now.cycle.frequency];
    if (from > 0 && to === 0) effects.push({ kind: 'silent', voice, why: 'pitch' });
    else if (from > 0 && Math.abs(centsBetween(from, to)) >= 0.5)
      effects.push({
        kind: 'pitch',
        voice,
        cents: centsBetween(from, to),
        rotation: rotationFor(changed, voice, after.railVolts, from),
      });
    if (old.releases && !now.releases) effects.push({ kind: 'silent', voice, why: 'gate' });
    const [oldLux, nowLux] = [old.tripLux.on, now.tripLux.on];
    if (oldLux !== null && nowLux === null) effects.push({ kind: 'silent', voice, why: 'light' });
    if (oldLux !== null && nowLux !== null && Math.abs(Math.log(nowLux / oldLux)) > 0.005)
      effects.push({ kind: 'light', voice, ratio: nowLux / oldLux });
  }
  const [oldLevel, level] = [before.level.both.dbv, after.level.both.dbv];
  if (oldLevel !== null && level !== null && Math.abs(level - oldLevel) > 0.05)
    effects.push({ kind: 'level', decibels: level - oldLevel });
  const total = after.power.states.none.drain.total;
  if (Math.abs(total / before.power.states.none.drain.total - 1) > 0.05 || changed.timer !== design.timer)
    effects.push({ kind: 'current', amperes: total });
  return effects;
}
