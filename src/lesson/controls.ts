/**
 * The controls a lesson can hand to a class, by name: what each may be set to, how it is read from the bench and how
 * it changes it. The same names serve to set the stage up. A step lists those it allows; everything else stays.
 */
import {
  placeCell,
  setCapacitance,
  setCell,
  setDividerOhms,
  setNoise,
  setPolarity,
  setVoiceValue,
  turnPitch,
  turnThreshold,
} from '../design/commands.ts';
import { type Design, thresholdFor } from '../design/design.ts';
import { LIMITS } from '../design/limits.ts';
import { MAINS_LAMPS, type MainsLampId } from '../light/mains-lamp.ts';
import { candelaFor, lampLuxAtTable, type Stage } from '../light/stage.ts';
import { justOn } from '../plan/threshold.ts';
import type { QuantityKind } from '../quantity/parse.ts';
import { type Lux, type Pair, VOICES, type VoiceId } from '../quantity/units.ts';
import type { Bench } from './bench.ts';

export const CONTROL_IDS = [
  'lamp',
  'room light',
  'hand A',
  'hand B',
  'mains lamp',
  'threshold',
  'just on',
  'pitch A',
  'pitch B',
  'charge resistor A',
  'charge resistor B',
  'capacitor A',
  'capacitor B',
  'hysteresis',
  'cell side',
  'sounds in',
  'fixed resistor',
  'cell',
  'noise',
  'camera',
] as const;
export type ControlId = (typeof CONTROL_IDS)[number];

/** What a control is set to: a number, a word, or null for "none fitted". */
export type Setting = number | string | null;

export type Control =
  | {
      readonly kind: 'number';
      readonly quantity: QuantityKind;
      readonly min: number;
      readonly max: number;
      readonly scale: 'linear' | 'log';
      /** May be left out: the setting is then null. */
      readonly orNone: boolean;
      readonly read: (bench: Bench) => number | null;
      readonly set: (value: number | null) => (bench: Bench) => Bench;
      readonly writes: readonly string[];
    }
  | {
      readonly kind: 'choice';
      readonly options: readonly string[];
      readonly read: (bench: Bench) => string;
      readonly set: (value: string) => (bench: Bench) => Bench;
      readonly writes: readonly string[];
    }
  /** Something done once, in the light there is. */
  | {
      readonly kind: 'press';
      readonly act: (lux: Pair<Lux>) => (bench: Bench) => Bench;
      readonly writes: readonly string[];
    };

type Range = { readonly min: number; readonly max: number };

const inDesign = (change: (design: Design) => Design) => (bench: Bench) => {
  const design = change(bench.design);
  return design === bench.design ? bench : { ...bench, design };
};
const inBoth = (change: (voice: VoiceId) => (design: Design) => Design) =>
  inDesign((design) => VOICES.reduce((next, voice) => change(voice)(next), design));
const inStage = (change: Partial<Stage>) => (bench: Bench) => ({
  ...bench,
  light: { ...bench.light, stage: { ...bench.light.stage, ...change } },
});

const number = (
  quantity: QuantityKind,
  { min, max }: Range,
  scale: 'linear' | 'log',
  read: (bench: Bench) => number,
  set: (value: number) => (bench: Bench) => Bench,
  ...writes: readonly string[]
): Control => ({
  kind: 'number',
  quantity,
  min,
  max,
  scale,
  orNone: false,
  read,
  set: (value) => (value === null ? (bench) => bench : set(Math.min(max, Math.max(min, value)))),
  writes,
});

const hand = (voice: VoiceId): Control =>
  number(
    'share',
    LIMITS.fraction,
    'linear',
    ({ light }) => light.stage.cover[voice],
    (value) => (bench) => inStage({ cover: { ...bench.light.stage.cover, [voice]: value } })(bench),
  );
const pitch = (voice: VoiceId): Control =>
  number(
    'share',
    LIMITS.fraction,
    'linear',
    ({ design }) => design.voices[voice].trimmer.rotation,
    (value) => inDesign(turnPitch(voice, value)),
    `voices.${voice}.trimmer.rotation`,
  );
const charge = (voice: VoiceId): Control =>
  number(
    'resistance',
    { min: 1e3, max: 1e6 },
    'log',
    ({ design }) => design.voices[voice].raOhms,
    (value) => inDesign(setVoiceValue(voice, 'raOhms', value)),
    `voices.${voice}.raOhms`,
  );
const capacitor = (voice: VoiceId): Control =>
  number(
    'capacitance',
    { min: 4.7e-9, max: 470e-9 },
    'log',
    ({ design }) => design.voices[voice].capacitor.farads,
    (value) => inDesign(setCapacitance(voice, value)),
    `voices.${voice}.capacitor.farads`,
  );
const bothVoices = (path: string) => VOICES.map((voice) => `voices.${voice}.${path}`);
const rotations = VOICES.map((voice) => `threshold.trimmers.${voice}.trimmer.rotation`);

/** A lamp whose light does not ripple, as an option beside those that do. */
const STEADY_LAMP = 'steady';
const HYSTERESIS: Range = { min: 47e3, max: 10e6 };

export const CONTROLS: Readonly<Record<ControlId, Control>> = {
  lamp: number(
    'illuminance',
    { min: 3, max: 3000 },
    'log',
    ({ light }) => (light.stage.lampOn ? lampLuxAtTable(light.stage) : 0),
    (value) => (bench) => {
      const { lampMetres, spacingMetres } = bench.light.stage;
      return inStage({ lampOn: true, lampCandela: candelaFor(value, lampMetres, spacingMetres) })(bench);
    },
  ),
  'room light': number(
    'illuminance',
    { min: 0, max: 500 },
    'linear',
    ({ light }) => light.stage.roomLux,
    (roomLux) => inStage({ roomLux }),
  ),
  'hand A': hand('A'),
  'hand B': hand('B'),
  'mains lamp': {
    kind: 'choice',
    options: [STEADY_LAMP, ...Object.keys(MAINS_LAMPS)],
    read: ({ light }) => light.lamp.kind ?? STEADY_LAMP,
    set: (value) => (bench) => ({
      ...bench,
      light: {
        ...bench.light,
        lamp: { ...bench.light.lamp, kind: value in MAINS_LAMPS ? (value as MainsLampId) : null },
      },
    }),
    writes: [],
  },
  threshold: number(
    'share',
    LIMITS.fraction,
    'linear',
    ({ design }) => thresholdFor(design, 'A').trimmer.rotation,
    (value) => inBoth((voice) => turnThreshold(voice, value)),
    ...rotations,
  ),
  'just on': {
    kind: 'press',
    act: (lux) =>
      inBoth((voice) => (design) => {
        const found = justOn(design, voice, lux);
        return found.kind === 'turn' ? turnThreshold(voice, found.rotation)(design) : design;
      }),
    writes: rotations,
  },
  'pitch A': pitch('A'),
  'pitch B': pitch('B'),
  'charge resistor A': charge('A'),
  'charge resistor B': charge('B'),
  'capacitor A': capacitor('A'),
  'capacitor B': capacitor('B'),
  hysteresis: {
    kind: 'number',
    quantity: 'resistance',
    ...HYSTERESIS,
    scale: 'log',
    orNone: true,
    read: ({ design }) => design.voices.A.hysteresisOhms,
    set: (value) =>
      inBoth((voice) =>
        setVoiceValue(
          voice,
          'hysteresisOhms',
          value === null ? null : Math.min(HYSTERESIS.max, Math.max(HYSTERESIS.min, value)),
        ),
      ),
    writes: bothVoices('hysteresisOhms'),
  },
  'cell side': {
    kind: 'choice',
    options: ['top', 'bottom'],
    read: ({ design }) => design.voices.A.divider.cell,
    set: (value) => inBoth((voice) => placeCell(voice, value === 'top' ? 'top' : 'bottom')),
    writes: bothVoices('divider.cell'),
  },
  'sounds in': {
    kind: 'choice',
    options: ['light', 'shade'],
    read: ({ design }) => design.voices.A.polarity,
    set: (value) => inBoth((voice) => setPolarity(voice, value === 'shade' ? 'shade' : 'light')),
    writes: bothVoices('polarity'),
  },
  'fixed resistor': number(
    'resistance',
    { min: 1e3, max: 1e6 },
    'log',
    ({ design }) => design.voices.A.divider.fixedOhms,
    (value) => inBoth((voice) => setDividerOhms(voice, value)),
    ...bothVoices('divider.fixedOhms'),
  ),
  cell: number(
    'resistance',
    { min: 2e3, max: 100e3 },
    'log',
    ({ design }) => design.voices.A.cell.r10Ohms,
    (value) => inBoth((voice) => setCell(voice, { r10Ohms: value })),
    ...bothVoices('cell.r10Ohms'),
  ),
  noise: number(
    'voltage',
    LIMITS.noiseVolts,
    'linear',
    ({ design }) => design.noise.voltsRms,
    (value) => inDesign(setNoise(value)),
    'noise.voltsRms',
  ),
  camera: {
    kind: 'press',
    act: () => (bench) => ({ ...bench, light: { ...bench.light, source: 'camera' } }),
    writes: [],
  },
};

/** The bench with a control set; a setting of the wrong kind changes nothing. */
export function withSetting(bench: Bench, id: ControlId, value: Setting): Bench {
  const control = CONTROLS[id];
  switch (control.kind) {
    case 'number':
      if (typeof value === 'string' || (value === null && !control.orNone)) return bench;
      return control.set(value)(bench);
    case 'choice':
      return typeof value === 'string' && control.options.includes(value) ? control.set(value)(bench) : bench;
    case 'press':
      return bench;
  }
}

/** What a control stands at; null for "none fitted", and for one that is only pressed. */
export function settingOf(bench: Bench, id: ControlId): Setting {
  const control = CONTROLS[id];
  return control.kind === 'press' ? null : control.read(bench);
}
