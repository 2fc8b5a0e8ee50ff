/**
 * The numbers a lesson speaks of, as data that the model works out: nothing that is told is typed. Also the right
 * answer to a question is such a number, read into one of the question's options.
 */
import { cellOf, cellOhms, luxFor } from '../circuit/cell.ts';
import { type Instrument, momentIn } from '../circuit/instrument.ts';
import { thresholdFor } from '../design/design.ts';
import { centsBetween, nearestNote } from '../plan/notes.ts';
import { type Lux, type Pair, type Seconds, VOICES, type VoiceId } from '../quantity/units.ts';
import { Gating, GRID } from '../sound/gating.ts';
import { settingsOf } from '../sound/settings.ts';
import type { Amount, AmountKind } from '../words/amounts.ts';
import { type Bench, instrumentOn, luxOf, steadyProgram } from './bench.ts';
import { type ControlId, type Setting, withSetting } from './controls.ts';
import { KITS, kitCents, kitsRight, kitTurns, turnFor } from './kits.ts';

/** A control set to a value, or to a number the model works out. */
export interface Change {
  readonly control: ControlId;
  readonly value: Setting | Figure;
}

/** What each plain figure is measured in. */
export const FIGURES = {
  light: 'lux',
  'light now': 'lux',
  'cell ohms': 'ohms',
  'fixed ohms': 'ohms',
  slope: 'number',
  'node volts': 'volts',
  'reference volts': 'volts',
  'rail volts': 'volts',
  'start volts': 'volts',
  'stop volts': 'volts',
  'hysteresis volts': 'volts',
  'start light': 'lux',
  'stop light': 'lux',
  'light gap': 'ratio',
  'light for half': 'lux',
  'light for tenfold': 'lux',
  'light over start': 'ratio',
  'threshold turn': 'share',
  'pitch turn': 'share',
  /** Where the threshold's trimmer must stand for a light in the middle of two, by ratio. */
  'turn for middle': 'share',
  sounding: 'count',
  'who sounds': 'count',
  frequency: 'hertz',
  note: 'note',
  interval: 'cents',
  duty: 'share',
  'high time': 'seconds',
  'low time': 'seconds',
  'first high time': 'seconds',
  'first high ratio': 'ratio',
  'lower level': 'volts',
  'upper level': 'volts',
  'rest level': 'volts',
  'second harmonic': 'decibels',
  'stutters a second': 'count',
  'node swing': 'volts',
  'ripple rate': 'hertz',
  kits: 'count',
  'kits right': 'count',
  'kits least turn': 'share',
  'kits most turn': 'share',
  'kits apart': 'cents',
} as const satisfies Record<string, AmountKind>;
export type FigureName = keyof typeof FIGURES;

export interface PlainFigure {
  readonly of: FigureName;
  readonly voice: VoiceId;
  /** The light it is taken in, lx; where not given, the light there is. */
  readonly lux?: Lux;
  /** The shaded light, where two are needed. */
  readonly shadeLux?: Lux;
  /** The bench is changed so before it is taken. */
  readonly changes?: readonly Change[];
}

export type Figure =
  | PlainFigure
  /** `to` over `from`. */
  | { readonly of: 'ratio'; readonly from: Figure; readonly to: Figure }
  /** The middle of two by ratio. */
  | { readonly of: 'middle'; readonly from: Figure; readonly to: Figure }
  | { readonly of: 'times'; readonly figure: Figure; readonly factor: number };

/** A figure's value and what it is measured in. `lux` is the light now, where it is known better than by the bench. */
export function amountOf(figure: Figure, bench: Bench, lux?: Pair<Lux>): Amount {
  switch (figure.of) {
    case 'ratio':
      return { kind: 'ratio', value: combined(figure, bench, lux, (from, to) => to / from) };
    case 'middle': {
      const { kind } = amountOf(figure.from, bench, lux);
      return { kind, value: combined(figure, bench, lux, (from, to) => Math.sqrt(from * to)) };
    }
    case 'times': {
      const { kind, value } = amountOf(figure.figure, bench, lux);
      return { kind, value: value === null ? null : value * figure.factor };
    }
    default: {
      const value = plainValue(figure, bench, lux);
      const kind = FIGURES[figure.of];
      return kind === 'note' && value !== null
        ? { kind, value, name: nearestNote(value).name }
        : { kind, value };
    }
  }
}

/** A figure's value alone; null where there is none. */
export function figureValue(figure: Figure, bench: Bench, lux?: Pair<Lux>): number | null {
  return amountOf(figure, bench, lux).value;
}

/** Every figure of a step, by name. */
export function amountsOf(
  figures: Readonly<Record<string, Figure>>,
  bench: Bench,
  lux?: Pair<Lux>,
): Readonly<Record<string, Amount>> {
  return Object.fromEntries(
    Object.entries(figures).map(([name, figure]) => [name, amountOf(figure, bench, lux)]),
  );
}

/** The bench after changes, one after another; a change whose number does not exist is left out. */
export function changed(bench: Bench, changes: readonly Change[]): Bench {
  return changes.reduce((current, { control, value }) => {
    if (typeof value !== 'object' || value === null) return withSetting(current, control, value);
    const found = figureValue(value, current);
    return found === null ? current : withSetting(current, control, found);
  }, bench);
}

function combined(
  { from, to }: { readonly from: Figure; readonly to: Figure },
  bench: Bench,
  lux: Pair<Lux> | undefined,
  join: (from: number, to: number) => number,
): number | null {
  const [a, b] = [figureValue(from, bench, lux), figureValue(to, bench, lux)];
  return a === null || b === null || a === 0 ? null : join(a, b);
}

function plainValue(figure: PlainFigure, given: Bench, lux: Pair<Lux> | undefined): number | null {
  const bench = changed(given, figure.changes ?? []);
  const { design, light } = bench;
  const { of, voice } = figure;
  // A change of the light makes the light that was measured meaningless.
  const here = figure.lux ?? (light === given.light && lux !== undefined ? lux[voice] : luxOf(light)[voice]);
  const both: Pair<Lux> =
    figure.lux !== undefined ? { A: here, B: here } : light === given.light && lux ? lux : luxOf(light);
  const v = design.voices[voice];
  const instrument = instrumentOn(bench);
  const behaviour = instrument.voices[voice];
  const { cycle, tripLux, tripVolts } = behaviour;
  const astable = instrument.astables[voice];
  switch (of) {
    case 'light':
    case 'light now':
      return here;
    case 'cell ohms':
      return cellOhms(cellOf(v), here);
    case 'fixed ohms':
      return v.divider.fixedOhms;
    case 'slope':
      return v.cell.gamma;
    case 'node volts':
      return momentOf(bench, instrument, both)[voice].nodeVolts;
    case 'reference volts':
      return behaviour.referenceVolts;
    case 'rail volts':
      return instrument.railVolts;
    case 'start volts':
      return tripVolts.on;
    case 'stop volts':
      return tripVolts.off;
    case 'hysteresis volts':
      return tripVolts.on === null || tripVolts.off === null ? null : Math.abs(tripVolts.on - tripVolts.off);
    case 'start light':
      return tripLux.on;
    case 'stop light':
      return tripLux.off;
    case 'light gap':
      return tripLux.on === null || tripLux.off === null
        ? null
        : Math.max(tripLux.on / tripLux.off, tripLux.off / tripLux.on);
    case 'light for half':
      return luxFor(cellOf(v), v.divider.fixedOhms);
    case 'light for tenfold':
      return luxFor(cellOf(v), 10 * cellOhms(cellOf(v), here));
    case 'light over start':
      return tripLux.on === null ? null : here / tripLux.on;
    case 'threshold turn':
      return thresholdFor(design, voice).trimmer.rotation;
    case 'turn for middle':
      return figure.shadeLux === undefined ? null : turnFor(design, voice, Math.sqrt(here * figure.shadeLux));
    case 'pitch turn':
      return v.trimmer.rotation;
    case 'sounding':
      return momentOf(bench, instrument, both)[voice].sounding ? 1 : 0;
    case 'who sounds': {
      const moment = momentOf(bench, instrument, both);
      return (moment.A.sounding ? 1 : 0) + (moment.B.sounding ? 2 : 0);
    }
    case 'frequency':
    case 'note':
      return cycle.frequency > 0 ? cycle.frequency : null;
    case 'interval': {
      const [a, b] = VOICES.map((id) => instrument.voices[id].cycle.frequency) as [number, number];
      return a > 0 && b > 0 ? centsBetween(b, a) : null;
    }
    case 'duty':
      return cycle.frequency > 0 ? cycle.dutyCycle : null;
    case 'high time':
      return finite(cycle.highSeconds);
    case 'low time':
      return finite(cycle.lowSeconds);
    case 'first high time':
      return finite(cycle.firstHighSeconds);
    case 'first high ratio':
      return finite(cycle.firstHighSeconds / cycle.highSeconds);
    case 'lower level':
      return astable.lowerVolts;
    case 'upper level':
      return astable.upperVolts;
    case 'rest level':
      return astable.sinkVolts;
    case 'second harmonic':
      return finite(20 * Math.log10(Math.abs(Math.cos(Math.PI * cycle.dutyCycle))));
    case 'stutters a second':
      return run(bench, instrument, both, voice, 1).changes / 2;
    case 'node swing':
      return run(
        { ...bench, design: { ...design, noise: { ...design.noise, voltsRms: 0 } } },
        instrument,
        both,
        voice,
        0.2,
      ).swing;
    case 'ripple rate':
      return light.lamp.kind === null ? null : 2 * light.lamp.mains;
    case 'kits':
      return KITS;
    case 'kits right':
      return figure.shadeLux === undefined ? null : kitsRight(design, voice, here, figure.shadeLux);
    case 'kits least turn':
      return figure.shadeLux === undefined ? null : kitTurns(design, voice, here, figure.shadeLux).least;
    case 'kits most turn':
      return figure.shadeLux === undefined ? null : kitTurns(design, voice, here, figure.shadeLux).most;
    case 'kits apart':
      return kitCents(design, voice);
  }
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

/** Both voices in a steady light that has come from the side on which they sound. */
function momentOf({ design }: Bench, instrument: Instrument, lux: Pair<Lux>) {
  return momentIn(design, instrument, lux, { A: true, B: true });
}

const SETTLES: Seconds = 0.3;

/** The gate's own run in the bench's lamp: changes of the voice in so many seconds, and how far its node swings. */
function run(bench: Bench, instrument: Instrument, lux: Pair<Lux>, voice: VoiceId, seconds: Seconds) {
  const gating = new Gating(settingsOf(bench.design, instrument), steadyProgram(bench.light, lux));
  while (gating.time < SETTLES) gating.advance(() => undefined);
  let changes = 0;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let step = 0; step < seconds * GRID; step++) {
    gating.advance((of) => {
      if (of === voice) changes++;
    });
    const node = gating.node(voice);
    low = Math.min(low, node);
    high = Math.max(high, node);
  }
  return { changes, swing: high - low };
}
