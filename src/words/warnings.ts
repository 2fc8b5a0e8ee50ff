/** The words of every warning: what is so, what to do about it, and what the limit rests on. */
import { formatFixed, formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import type { VoiceId } from '../quantity/units.ts';
import { spoken } from './spoken.ts';
import type { WarningFacts, WarningId } from './warning-facts.ts';

interface Said<F> {
  readonly reason: (facts: F) => string;
  readonly remedy: (facts: F) => string;
  /** What the limit rests on. */
  readonly source: string;
}

const volts = (value: number): string => formatQuantity(value, 'V', 3);
const ohms = (value: number): string => formatQuantity(value, 'Ω', 2);
const amperes = (value: number): string => formatQuantity(value, 'A', 2);
const hertz = (value: number): string => formatQuantity(value, 'Hz', 3);
const watts = (value: number): string => formatQuantity(value, 'W', 2);
const seconds = (value: number): string => formatQuantity(value, 's', 2);
const lux = (value: number): string => `${formatNumber(value, 2)}\u00A0lx`;
const cents = (value: number): string => `${formatFixed(Math.abs(value), value < 10 ? 1 : 0)} cents`;

export const WARNING_WORDS: { readonly [K in WarningId]: Said<WarningFacts[K]> } = spoken('warnings', {
  'no-hysteresis': {
    reason: (f) =>
      `There is no hysteresis, and the node carries ${volts(f.noiseVolts)} rms of noise: near its trip point the voice stutters.`,
    remedy: () =>
      'Fit a hysteresis resistor of 470 kΩ to 1 MΩ from the comparator’s output to its + input, behind a 10 kΩ input resistor.',
    source: 'LM393-N application hints (SNOSBJ6): 1 to 10 mV of positive feedback stops it',
  },
  'lamp-ripple': {
    reason: (f) =>
      `A lamp that flickers by ${formatShare(f.depth)} at ${hertz(f.hertz)} swings the node by ${volts(f.swingVolts)} at ${lux(f.lux)}, more than the hysteresis of ${volts(f.hysteresisVolts)}: the gate buzzes when the light stands at the trip point.`,
    remedy: () =>
      'Take a smaller hysteresis resistor until the hysteresis is above that swing, or use a lamp that does not flicker (a battery lamp, daylight).',
    source: 'computed: hysteresis must exceed the whole swing; 30 % is a common LED lamp',
  },
  'threshold-misses-rooms': {
    reason: (f) =>
      f.fromLux === null || f.toLux === null
        ? 'The threshold trimmer reaches no light at all from stop to stop.'
        : `From stop to stop the threshold reaches ${lux(f.fromLux)} to ${lux(f.toLux)}. Usual rooms ask for ${lux(f.wantedFromLux)} to ${lux(f.wantedToLux)}.`,
    remedy: () =>
      'Bring the divider’s fixed resistor near the cell’s own resistance in the middle of the wanted light, and take smaller end resistors at the trimmer.',
    source: 'EN 12464-1 rooms of 100 to 1000 lx, and a hand that takes nine tenths of it',
  },
  'light-changes-nothing': {
    reason: (f) =>
      `As the threshold is turned, no light ${!f.starts && !f.stops ? 'changes this voice' : f.starts ? 'stops this voice' : 'starts this voice'}.`,
    remedy: () =>
      'Turn the threshold toward the middle, or bring the divider’s fixed resistor nearer to the cell’s resistance.',
    source: 'computed',
  },
  'grade-spread': {
    reason: (f) =>
      `Cells of this one grade read ${ohms(f.leastOhms)} to ${ohms(f.mostOhms)} at 10 lx, so the same threshold sits anywhere from ${formatShare(f.fromRotation)} to ${formatShare(f.toRotation)} of the travel: one mark does not suit every board.`,
    remedy: () => 'Set each board by its own light, or measure the cells and sort them into lots.',
    source: 'the cell family’s published band; 10 % of the travel is common practice',
  },
  'cells-unequal': {
    reason: (f) =>
      `The cells differ: A starts at ${lux(f.luxA)} and B at ${lux(f.luxB)}, under the same light.`,
    remedy: () => 'Pair two cells that read alike in the same light, or give each voice its own threshold.',
    source: 'computed; a quarter apart is common practice',
  },
  'slow-fall': {
    reason: (f) =>
      `This cell takes ${seconds(f.fallSeconds)} to notice darkness (to 37 % at 10 lx), so the voice lags behind the hand.`,
    remedy: () => 'For quick playing choose a family that falls in 50 ms or less, or work in brighter light.',
    source: 'the cell family’s sheet; 0.1 s as the edge of “at once” is common practice',
  },
  'touchable-node': {
    reason: (f) =>
      `At its trip point the sensor node stands at ${ohms(f.nodeOhms)}: a finger of 2 to 3 MΩ across the leads moves it.`,
    remedy: () =>
      'Insulate the cell’s leads, or take a cell and a fixed resistor of lower resistance, below 100 kΩ together.',
    source: 'a finger of 2 to 3 MΩ moves 100 kΩ by about 5 %; computed',
  },
  'long-lead': {
    reason: (f) =>
      `In the dark the sensor node stands at ${ohms(f.nodeOhms)}: a long lead picks up mains hum there and gates at random.`,
    remedy: () =>
      'Keep the lead short or screened, put 10 nF from the node to 0 V, or place the cell at the bottom with a fixed resistor below 100 kΩ.',
    source: 'common practice',
  },
  'sounds-in-shade': {
    reason: (f) =>
      `This voice sounds in the dark and is silent in light: the cell is at the ${f.cell} of its divider and the comparator’s inputs follow from that.`,
    remedy: () =>
      'If it should sound in light, swap the comparator’s two inputs, or the cell and its fixed resistor, but not both.',
    source: 'computed from the divider’s direction',
  },
  'unplugged-sounds': {
    reason: (f) =>
      `With the sensor unplugged the node goes to ${volts(f.nodeVolts)} and the voice sounds without end.`,
    remedy: () =>
      'That tells a broken lead by ear. If it must fall silent instead, let the voice sound in light.',
    source: 'computed: an open cell counts as dark',
  },
  'cell-heat': {
    reason: (f) =>
      `In bright light the cell can take ${watts(f.watts)}, above its rating of ${watts(f.mostWatts)}.`,
    remedy: (f) => `Make the divider’s fixed resistor at least ${ohms(f.leastOhms)}.`,
    source: 'V²/(4·R), against the cell family’s rating',
  },
  cadmium: {
    reason: () => 'The light cells hold cadmium, and selling kits with them is restricted in some countries.',
    remedy: () =>
      'Ask before selling or importing kits, collect the cells for disposal, or plan for a phototransistor instead.',
    source: 'EU RoHS Directive (exemption ended 31 December 2013)',
  },
  'reference-above-range': {
    reason: (f) =>
      `The reference of ${volts(f.referenceVolts)} is above the comparator’s input range, which ends at ${volts(f.limitVolts)}.`,
    remedy: () =>
      'Fit or enlarge the resistor above the threshold trimmer, so that the reference stays inside.',
    source: 'LM393 sheets: inputs to V+ − 1.5 V at 25 °C',
  },
  'node-above-range': {
    reason: (f) =>
      `The sensor node reaches ${volts(f.nodeVolts)}, above the comparator’s input range (${volts(f.limitVolts)}). While the reference stays inside, the output is still right.`,
    remedy: () => 'Nothing needs to change; keep the reference inside the range.',
    source: 'TI SLCS005AG, “Input voltage range”',
  },
  'both-above-range': {
    reason: (f) =>
      `Reference and node can both be above the comparator’s input range (node up to ${volts(f.nodeVolts)}, range to ${volts(f.limitVolts)}). Then no maker promises what it does; this die tends to go ${f.output}.`,
    remedy: () =>
      'Lower the reference with a larger resistor above the trimmer, or place the cell at the other side of the divider.',
    source: 'TI LM2901B-Q1 list of input ranges',
  },
  'never-sounds': {
    reason: (f) =>
      `The pull-up leaves the reset pin at ${volts(f.resetVolts)}, and it needs more than ${volts(f.neededVolts)}: the voice can never sound.`,
    remedy: (f) => `Take a pull-up below ${ohms(f.mostOhms)}.`,
    source: 'TI SLFS023: reset level and reset current, typical',
  },
  'never-silent': {
    reason: (f) =>
      `The comparator can only pull the reset pin down to ${volts(f.resetVolts)}, and it needs less than ${volts(f.neededVolts)}: the voice can never be silenced.`,
    remedy: (f) => `Take a pull-up above ${ohms(f.leastOhms)}.`,
    source: 'TI SLFS023: reset level; comparator saturation as printed',
  },
  'reset-half': {
    reason: (f) =>
      `While silent the reset pin stands at ${volts(f.resetVolts)}, between ${volts(f.fromVolts)} and ${volts(f.toVolts)}, where a timer may be half held: a wrong pitch, or a tone that does not stop.`,
    remedy: (f) => `Take a larger pull-up, so that the pin falls below ${volts(f.fromVolts)}.`,
    source: 'TI SLFS023: reset level 0.3 V at least, 0.7 V typical',
  },
  'reset-low-worst': {
    reason: (f) =>
      `With the weakest comparator and the greediest timer the reset pin falls only to ${volts(f.resetVolts)}; ${volts(f.neededVolts)} is safe. Some boards may not fall silent.`,
    remedy: (f) =>
      Number.isFinite(f.leastOhms)
        ? `Take a pull-up of at least ${ohms(f.leastOhms)}.`
        : 'Take a larger pull-up, and a CMOS timer if that is not enough.',
    source: 'TI SLFS023: 1.5 mA out of the pin, 0.3 V; comparator 400 mV at 4 mA',
  },
  'reset-high-worst': {
    reason: (f) =>
      `On a rail of ${volts(f.railVolts)} the greediest timer pulls its reset pin down to ${volts(f.resetVolts)}; it needs more than ${volts(f.neededVolts)}. Some boards will not sound there.`,
    remedy: (f) => `Take a pull-up below ${ohms(f.mostOhms)}.`,
    source: 'TI SLFS023: 0.4 mA into the pin, 1.0 V',
  },
  'comparator-overloaded': {
    reason: (f) =>
      `The comparator’s output must sink ${amperes(f.amperes)}; ${amperes(f.ratedAmperes)} is what its sheet tests.`,
    remedy: () => 'Take a larger pull-up.',
    source: 'onsemi LM393/D: saturation at 4 mA',
  },
  'hysteresis-wide': {
    reason: (f) =>
      `The light that stops this voice and the light that starts it again are ${formatNumber(f.ratio, 2)} to 1 apart: once changed, it seems to stick.`,
    remedy: (f) =>
      `Take a larger hysteresis resistor than ${ohms(f.hysteresisOhms)}; check that it is not a decade too small.`,
    source: 'computed; 2 : 1 is common practice, a hand takes about 10 : 1',
  },
  'thresholds-interact': {
    reason: (f) =>
      `When the other voice starts, this one’s trip point moves by ${formatShare(f.share)}, because both feed back into one trimmer.`,
    remedy: () => 'Give each voice its own trimmer, or take a trimmer of lower resistance.',
    source: 'computed; 5 % is common practice',
  },
  'touchy-threshold': {
    reason: (f) =>
      `Between ${lux(f.fromLux)} and ${lux(f.toLux)} the threshold trimmer turns by only ${formatFixed(f.degrees, 0)}°.`,
    remedy: () =>
      'Bring the divider’s fixed resistor near the cell’s resistance in that light, enlarge the end resistors, or fit a 25-turn trimmer.',
    source: 'computed; 45° for a hand’s shadow is common practice',
  },
  'no-pitch': {
    reason: (f) =>
      f.controlVolts === null
        ? `On ${volts(f.railVolts)} the capacitor never reaches both of its levels, so there is no pitch.`
        : `With ${volts(f.controlVolts)} at the control pin and ${volts(f.railVolts)} at the rail, the capacitor never reaches both of its levels.`,
    remedy: () => 'Leave the control pin free, or keep it between a third and nine tenths of the rail.',
    source: 'computed',
  },
  'rb-near-zero': {
    reason: (f) =>
      `At the stop RB falls to ${ohms(f.leastOhms)} and the pitch rises to ${hertz(f.topHertz)}: a piercing tone, or none, and the trimmer carries the discharge.`,
    remedy: () => 'Fit a fixed resistor of at least 4.7 kΩ in series with the pitch trimmer.',
    source: 'TI SLFS022: RA and RB from 1 kΩ in the accuracy conditions',
  },
  'ra-too-small': {
    reason: (f) =>
      `RA of ${ohms(f.ohms)} lets ${amperes(f.amperes)} flow into the discharge pin whenever the output is low: the chip and the battery suffer.`,
    remedy: (f) => `Make RA at least ${ohms(f.leastOhms)}, better 3.9 kΩ.`,
    source: 'TI SLFS022: RA from 1 kΩ in the accuracy conditions',
  },
  'resistors-too-large': {
    reason: (f) =>
      `RA and RB reach ${ohms(f.ohms)} together; beyond ${ohms(f.mostOhms)} the threshold pin’s own current may hold the capacitor below its level.`,
    remedy: () => 'Take smaller resistors and a larger capacitor, or a CMOS timer.',
    source: 'TI SLFS023, note on the largest RA + RB: (V/6) over the greatest threshold current',
  },
  'pitch-spread': {
    reason: (f) =>
      `Untuned boards can differ from this pitch by ${cents(f.downCents)} down to ${cents(f.upCents)} up, by the tolerances alone.`,
    remedy: () => 'Tune every board by its trimmer, or order capacitors of ± 5 % or ± 2 %.',
    source: 'worst case of capacitor, resistors (± 1 %), trimmer and timer',
  },
  'pitch-out-of-reach': {
    reason: (f) =>
      `On a board with unlucky parts this pitch lies beyond the ${f.end === 'top' ? 'high' : 'low'} end of the trimmer: ${formatShare(f.share, 1)} of RB is missing.`,
    remedy: (f) =>
      f.end === 'top'
        ? 'Take a smaller fixed RB, or a smaller capacitor with the trimmer turned up.'
        : 'Take a larger trimmer, or a larger capacitor with the trimmer turned down.',
    source: 'worst case of capacitor and trimmer tolerance',
  },
  'drifting-ceramic': {
    reason: (f) =>
      `This kind of ceramic moves the pitch by up to ${cents(f.downCents)} down and ${cents(f.upCents)} up over its temperature range, and ages besides.`,
    remedy: () => 'Use polyester film or C0G for the timing capacitor.',
    source: 'EIA RS-198 letter codes',
  },
  'polarised-timing': {
    reason: (f) =>
      `${formatQuantity(f.farads, 'F', 3)} is an electrolytic: its leakage and its tolerance move the pitch, and reversed it can burst.`,
    remedy: () => 'Use a film capacitor of 10 to 220 nF with larger resistors.',
    source: 'Nichicon MA: ± 20 %, leakage 3 µA or more; Rubycon FAQ on polarity',
  },
  'coarse-trimmer': {
    reason: (f) =>
      `A hand sets this trimmer no closer than about ${cents(f.errorCents)}; 1 % of the travel is ${cents(f.centsPerPercent)}.`,
    remedy: () => 'Take a larger fixed RB with a smaller trimmer, or a 25-turn one.',
    source: 'adjustability in the trimmer’s sheet; 5 cents is common practice',
  },
  'pitch-moves-with-battery': {
    reason: (f) =>
      `From ${volts(f.fromVolts)} to ${volts(f.toVolts)} the pitch moves by ${formatFixed(f.cents, 1).replace('-', '−')} cents, and by up to ${cents(f.driftCents)} more with the chip’s own drift.`,
    remedy: () => 'Tune again when the battery is half gone, use a larger RA, or a regulated 5 V supply.',
    source: 'computed from the discharge pin; timer sheet’s drift per volt',
  },
  'above-formula': {
    reason: (f) =>
      `${hertz(f.hertz)} is above ${hertz(f.mostHertz)}, where the timing formula is no longer claimed: delays count.`,
    remedy: () => 'Take a larger capacitor or a larger fixed RB.',
    source: 'TI SLFS078C, 6.3.2',
  },
  'outside-hearing': {
    reason: (f) =>
      `${hertz(f.hertz)} is ${f.hertz < 20 ? 'too low to hear as a tone' : 'too high for people to hear'}.`,
    remedy: (f) => (f.hertz < 20 ? 'Take a smaller capacitor.' : 'Take a larger capacitor or a larger RB.'),
    source: 'hearing from 20 Hz to 20 kHz; common practice',
  },
  'voices-lock': {
    reason: (f) =>
      `The voices stand ${cents(f.apartCents)} from ${f.upper}:${f.lower}. A shared dip of ${volts(f.dipVolts)} at each edge pulls them together within about ${cents(f.lockCents)} (first-order).`,
    remedy: () => 'Tune them further apart, decouple each chip with 100 nF and 100 µF, or use CMOS timers.',
    source: 'first-order shift of the upper level by two thirds of the dip',
  },
  'outputs-joined': {
    reason: (f) =>
      `The outputs are joined directly: while one is high and the other low, ${amperes(f.amperes)} flow between them (rated ${amperes(f.ratedAmperes)}), and the two tones become one mush.`,
    remedy: () => 'Fit a mixing resistor from each output, 10 to 47 kΩ.',
    source: 'computed from the timer sheet’s output levels',
  },
  'output-overloaded': {
    reason: (f) =>
      `An output must give or take ${amperes(f.amperes)}; this timer is rated ${amperes(f.ratedAmperes)}.`,
    remedy: () => 'Fit larger mixing resistors, or a load of higher resistance.',
    source: 'timer sheet’s output current',
  },
  'too-loud-line': {
    reason: (f) =>
      `${volts(f.peakToPeakVolts)} peak to peak at the jack; a line input takes about ${volts(f.mostVolts)}.`,
    remedy: () => 'Take larger mixing resistors, or a smaller resistor from the mixing point to 0 V.',
    source: 'common practice for line inputs',
  },
  'too-loud-headphones': {
    reason: (f) =>
      `${volts(f.rmsVolts)} rms into headphones is ${watts(f.watts)}, about ${formatFixed(f.decibels, 0)} dB if they give ${f.perMilliwatt} dB for 1 mW. Players keep to ${volts(f.mostVolts)}.`,
    remedy: () =>
      'Fit at least 1 kΩ, better 4.7 kΩ or more, in series, and a volume control. Start turned down.',
    source: 'EN 50332: 150 mV at a player’s output (from memory)',
  },
  'thin-sound': {
    reason: (f) =>
      `The coupling capacitor’s corner is ${hertz(f.cornerHertz)}, too near the lowest voice of ${hertz(f.lowestHertz)}: the sound is thin.`,
    remedy: (f) => `Take more than ${formatQuantity(f.farads, 'F', 2)} for coupling.`,
    source: 'a corner at half the pitch takes 1 dB; common practice',
  },
  'dc-at-jack': {
    reason: (f) =>
      `With no coupling capacitor ${volts(f.volts)} of DC stand at the jack: clicks, and a headphone or an input that may suffer.`,
    remedy: () => 'Fit a coupling capacitor, 1 µF film for a line input.',
    source: 'computed; common practice',
  },
  'coupling-polarity': {
    reason: (f) =>
      `The coupling capacitor has a polarity and holds ${volts(f.volts)} of DC: its plus leg belongs on the timers’ side.`,
    remedy: (f) => `Fit it that way round, rated ${volts(f.ratingVolts)} or more, or use 1 µF film.`,
    source: 'Rubycon and Elna on polarity; twice the supply is common practice',
  },
  thump: {
    reason: (f) =>
      `Each start and stop makes a step of ${volts(f.stepVolts)} that dies away in ${seconds(f.seconds)}: a thump.`,
    remedy: () => 'Take a smaller coupling capacitor; 1 µF into 10 kΩ is enough for low voices.',
    source: 'computed; 50 ms is common practice',
  },
  'no-decoupling': {
    reason: (f) =>
      `No capacitor stands beside the chips: at each edge the timer’s own spike dips the rail by about ${volts(f.dipVolts)}, and the voices disturb each other.`,
    remedy: () => 'Put 100 nF and 100 µF across the timer’s supply pins and 100 nF at the comparator.',
    source: 'EDN Asia, “The NE555 current spike”: 200 to 300 mA through the source’s resistance',
  },
  'supply-below-range': {
    reason: (f) =>
      `${volts(f.railVolts)} at the rail is below the ${f.part}’s ${volts(f.leastVolts)}: it may not start.`,
    remedy: (f) =>
      f.part === 'timer' ? 'Use a CMOS timer, or a supply of more volts.' : 'Use a supply of more volts.',
    source: 'the chip’s sheet',
  },
  'supply-above-range': {
    reason: (f) =>
      `${volts(f.railVolts)} at the rail is above the ${f.part}’s ${volts(f.mostVolts)}: it can be destroyed.`,
    remedy: (f) => `Use a supply below ${volts(f.mostVolts)}.`,
    source: 'the chip’s sheet',
  },
  'battery-sag': {
    reason: (f) =>
      `${amperes(f.amperes)} through the source’s ${ohms(f.sourceOhms)} take ${volts(f.sagVolts)} off the rail.`,
    remedy: () =>
      'Try the battery under load (470 Ω across it for a moment), use a fresh one, larger RA and pull-ups, or CMOS timers.',
    source: 'computed; 5 % of the supply is common practice',
  },
  'battery-hours': {
    reason: (f) =>
      `At ${amperes(f.amperes)} in the hungriest state the battery lasts about ${formatFixed(f.hours, 0)} hours.`,
    remedy: () => 'Use a 5 V adaptor for an exhibition, larger RA and pull-ups, or CMOS timers.',
    source: 'maker’s nominal charge; a day and a night is common practice',
  },
  'battery-unused': {
    reason: (f) =>
      `The chips need ${volts(f.chipVolts)}, but the battery is empty only at ${volts(f.emptyVolts)}: its last part is never used.`,
    remedy: () => 'Use a CMOS timer, or a battery of more cells.',
    source: 'timer sheet’s least supply',
  },
  'no-diode': {
    reason: (f) =>
      `No diode guards against a reversed battery: ${volts(f.volts)} the wrong way round destroys the chips in under a second.`,
    remedy: () => 'Put a Schottky diode in series with the supply; it takes about 0.3 V.',
    source: 'reports of burnt timers; common practice',
  },
});

/** Who a warning is about. */
export const warningWho = spoken('warnings who', {
  instrument: 'The instrument',
  voice: (voice: VoiceId) => `Voice ${voice}`,
});

export interface WarningWords {
  /** Who it is about: `Voice A`, or `The instrument`. */
  readonly who: string;
  readonly reason: string;
  readonly remedy: string;
  readonly source: string;
}

/** A warning in words. */
export function warningWords<K extends WarningId>(warning: {
  readonly id: K;
  readonly voice: VoiceId | null;
  readonly facts: WarningFacts[K];
}): WarningWords {
  const said: Said<WarningFacts[K]> = WARNING_WORDS[warning.id];
  return {
    who: warning.voice === null ? warningWho.instrument : warningWho.voice(warning.voice),
    reason: said.reason(warning.facts),
    remedy: said.remedy(warning.facts),
    source: said.source,
  };
}
