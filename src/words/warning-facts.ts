/**
 * The facts each warning is told from, in SI units. They stand beside the words, so that a warning and its
 * sentence cannot differ. A null is a side that is never reached.
 */

/** Nothing to say beyond that it is so. */
type NoFacts = Readonly<Record<string, never>>;

export interface WarningFacts {
  // Sensor and threshold.
  'no-hysteresis': { readonly noiseVolts: number };
  'lamp-ripple': {
    readonly swingVolts: number;
    readonly hysteresisVolts: number;
    readonly lux: number;
    readonly depth: number;
    readonly hertz: number;
  };
  'threshold-misses-rooms': {
    readonly fromLux: number | null;
    readonly toLux: number | null;
    readonly wantedFromLux: number;
    readonly wantedToLux: number;
  };
  'light-changes-nothing': { readonly starts: boolean; readonly stops: boolean };
  'grade-spread': {
    readonly leastOhms: number;
    readonly mostOhms: number;
    readonly fromRotation: number;
    readonly toRotation: number;
  };
  'cells-unequal': { readonly luxA: number; readonly luxB: number };
  'slow-fall': { readonly fallSeconds: number };
  'touchable-node': { readonly nodeOhms: number };
  'long-lead': { readonly nodeOhms: number };
  'sounds-in-shade': { readonly cell: 'top' | 'bottom' };
  'unplugged-sounds': { readonly nodeVolts: number };
  'cell-heat': { readonly watts: number; readonly mostWatts: number; readonly leastOhms: number };
  cadmium: NoFacts;
  // Comparator and gate.
  'reference-above-range': { readonly referenceVolts: number; readonly limitVolts: number };
  'node-above-range': { readonly nodeVolts: number; readonly limitVolts: number };
  'both-above-range': {
    readonly nodeVolts: number;
    readonly limitVolts: number;
    readonly output: 'low' | 'high';
  };
  'never-sounds': { readonly resetVolts: number; readonly neededVolts: number; readonly mostOhms: number };
  'never-silent': { readonly resetVolts: number; readonly neededVolts: number; readonly leastOhms: number };
  'reset-half': { readonly resetVolts: number; readonly fromVolts: number; readonly toVolts: number };
  'reset-low-worst': {
    readonly resetVolts: number;
    readonly neededVolts: number;
    readonly leastOhms: number;
  };
  'reset-high-worst': {
    readonly resetVolts: number;
    readonly neededVolts: number;
    readonly railVolts: number;
    readonly mostOhms: number;
  };
  'comparator-overloaded': { readonly amperes: number; readonly ratedAmperes: number };
  'hysteresis-wide': { readonly ratio: number; readonly hysteresisOhms: number };
  'thresholds-interact': { readonly share: number };
  'touchy-threshold': { readonly degrees: number; readonly fromLux: number; readonly toLux: number };
  // Pitch.
  'no-pitch': { readonly controlVolts: number | null; readonly railVolts: number };
  'rb-near-zero': { readonly leastOhms: number; readonly topHertz: number };
  'ra-too-small': { readonly ohms: number; readonly amperes: number; readonly leastOhms: number };
  'resistors-too-large': { readonly ohms: number; readonly mostOhms: number };
  'pitch-spread': { readonly downCents: number; readonly upCents: number };
  'pitch-out-of-reach': { readonly end: 'bottom' | 'top'; readonly share: number };
  'drifting-ceramic': { readonly downCents: number; readonly upCents: number };
  'polarised-timing': { readonly farads: number };
  'coarse-trimmer': { readonly errorCents: number; readonly centsPerPercent: number };
  'pitch-moves-with-battery': {
    readonly fromVolts: number;
    readonly toVolts: number;
    readonly cents: number;
    readonly driftCents: number;
  };
  'above-formula': { readonly hertz: number; readonly mostHertz: number };
  'outside-hearing': { readonly hertz: number };
  'voices-lock': {
    readonly upper: number;
    readonly lower: number;
    readonly apartCents: number;
    readonly lockCents: number;
    readonly dipVolts: number;
  };
  // Output and supply.
  'outputs-joined': { readonly amperes: number; readonly ratedAmperes: number };
  'output-overloaded': { readonly amperes: number; readonly ratedAmperes: number };
  'too-loud-line': { readonly peakToPeakVolts: number; readonly mostVolts: number };
  'too-loud-headphones': {
    readonly rmsVolts: number;
    readonly mostVolts: number;
    readonly watts: number;
    readonly decibels: number;
    readonly perMilliwatt: number;
  };
  'thin-sound': { readonly cornerHertz: number; readonly lowestHertz: number; readonly farads: number };
  'dc-at-jack': { readonly volts: number };
  'coupling-polarity': { readonly volts: number; readonly ratingVolts: number };
  thump: { readonly stepVolts: number; readonly seconds: number };
  'no-decoupling': { readonly dipVolts: number };
  'supply-below-range': {
    readonly part: 'timer' | 'comparator';
    readonly railVolts: number;
    readonly leastVolts: number;
  };
  'supply-above-range': {
    readonly part: 'timer' | 'comparator';
    readonly railVolts: number;
    readonly mostVolts: number;
  };
  'battery-sag': { readonly sagVolts: number; readonly amperes: number; readonly sourceOhms: number };
  'battery-hours': { readonly hours: number; readonly amperes: number };
  'battery-unused': { readonly chipVolts: number; readonly emptyVolts: number };
  'no-diode': { readonly volts: number };
}

export type WarningId = keyof WarningFacts;

export type Severity = 'danger' | 'wrong' | 'caution' | 'note';
