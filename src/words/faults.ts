/** Faults of a board in words: what it is, how to mend it, how to confirm it; and what the ear is asked. */
import { formatNumber } from '../quantity/format.ts';
import type { VoiceId, Volts } from '../quantity/units.ts';
import { spoken } from './spoken.ts';

export type FaultKind =
  | 'battery flat'
  | 'no supply'
  | 'timer unpowered'
  | 'comparator pin 8 open'
  | 'comparator pin 4 open'
  | 'cell open'
  | 'cell shorted'
  | 'cells exchanged'
  | 'cell of another grade'
  | 'divider open'
  | 'divider a tenth'
  | 'divider ten times'
  | 'threshold at one end'
  | 'threshold at the other end'
  | 'wiper open'
  | 'above threshold open'
  | 'below threshold open'
  | 'polarity crossed'
  | 'pull-up missing'
  | 'pull-up a tenth'
  | 'pull-up ten times'
  | 'reset joint open'
  | 'bridge comparator output to input'
  | 'bridge reset to output'
  | 'bridge output to trigger'
  | 'bridge discharge to threshold'
  | 'uncut 556 1–14'
  | 'uncut 556 2–13'
  | 'uncut 556 3–12'
  | 'uncut 556 4–11'
  | 'uncut 556 5–10'
  | 'uncut 556 6–9'
  | 'uncut 556 7–8'
  | 'uncut 393 1–8'
  | 'uncut 393 2–7'
  | 'uncut 393 3–6'
  | 'uncut 393 4–5'
  | 'capacitor open'
  | 'capacitor a tenth'
  | 'capacitor ten times'
  | 'charge resistor open'
  | 'rb open'
  | 'rb zero'
  | 'timer reversed'
  | 'comparator reversed'
  | 'mixing resistor open'
  | 'output open'
  | 'no decoupling'
  | 'timer dead'
  | 'hysteresis a tenth'
  | 'hysteresis missing'
  | 'hum on the lead'
  | 'link missing';

export interface FaultWords {
  readonly name: string;
  readonly mend: string;
  readonly confirm: string;
}

const uncut = (chip: string, pins: string): FaultWords => ({
  name: `Strip under the ${chip} not cut between pins ${pins}`,
  mend: `Cut the strip between pins ${pins}; scrape the groove until a meter shows no path.`,
  confirm: `Chip out: no beep between pins ${pins}.`,
});

const WORDS: Readonly<Record<FaultKind, FaultWords>> = spoken('faults', {
  'battery flat': {
    name: 'Battery flat',
    mend: 'Fit a fresh alkaline battery.',
    confirm: 'TP1 reads about {rail} with both voices sounding.',
  },
  'no supply': {
    name: 'No supply: clip, lead or polarity',
    mend: 'Look at the clip, its joints, and red to plus; re-make the joint.',
    confirm: 'TP1 reads the battery’s volts.',
  },
  'timer unpowered': {
    name: 'Timer without supply: pin 14 or 7',
    mend: 'Re-flow pins 14 and 7, and look for a missing link.',
    confirm: 'The control pins read two thirds of the rail.',
  },
  'comparator pin 8 open': {
    name: 'Comparator without supply: pin 8',
    mend: 'Re-flow pin 8, and look for its link.',
    confirm: 'Pin 8 reads the rail.',
  },
  'comparator pin 4 open': {
    name: 'Comparator without ground: pin 4',
    mend: 'Re-flow pin 4, and look for its link.',
    confirm: 'Pin 4 reads 0 V, not more.',
  },
  'cell open': {
    name: 'Light cell open, or one of its leads off',
    mend: 'Re-make its joints and lead.',
    confirm: 'Power off: the cell reads kilohms that fall in light.',
  },
  'cell shorted': {
    name: 'Light cell shorted',
    mend: 'Part its leads; sleeve them.',
    confirm: 'Power off, one of its leads lifted: the cell reads kilohms that fall in light.',
  },
  'cells exchanged': {
    name: 'The two light cells are exchanged',
    mend: 'Change their leads over at the board.',
    confirm: 'Shade A: only A changes.',
  },
  'cell of another grade': {
    name: 'Light cell of another grade',
    mend: 'Turn the threshold, or fit the grade on the order list.',
    confirm: 'Power off, 10 lx: the cell reads within its grade.',
  },
  'divider open': {
    name: 'Divider resistor with a dry joint, or missing',
    mend: 'Re-flow both ends.',
    confirm: 'The node moves when the cell is shaded.',
  },
  'divider a tenth': {
    name: 'Divider resistor a tenth of its value',
    mend: 'Read its bands; fit the right one.',
    confirm: 'Power off: measure it.',
  },
  'divider ten times': {
    name: 'Divider resistor ten times its value',
    mend: 'Read its bands; fit the right one.',
    confirm: 'Power off: measure it.',
  },
  'threshold at one end': {
    name: 'Threshold trimmer at its upper stop',
    mend: 'Turn it until the voice just switches in the light it should.',
    confirm: 'TP3 moves with the screw.',
  },
  'threshold at the other end': {
    name: 'Threshold trimmer at its lower stop',
    mend: 'Turn it until the voice just switches in the light it should.',
    confirm: 'TP3 moves with the screw.',
  },
  'wiper open': {
    name: 'Wiper of the threshold trimmer not connected',
    mend: 'Re-flow the middle leg; look which leg is which.',
    confirm: 'TP3 moves with the screw.',
  },
  'above threshold open': {
    name: 'Path from the rail to the threshold trimmer open',
    mend: 'Re-flow the resistor above it and the upper leg.',
    confirm: 'The upper leg reads more than TP3.',
  },
  'below threshold open': {
    name: 'Path from the threshold trimmer to 0 V open',
    mend: 'Re-flow the resistor below it and the lower leg.',
    confirm: 'TP3 falls well below the rail.',
  },
  'polarity crossed': {
    name: 'Node and reference exchanged at the comparator’s inputs',
    mend: 'See what leads to the + and the − input, against the plan; change the two over.',
    confirm: 'The voice sounds in the light it should.',
  },
  'pull-up missing': {
    name: 'Pull-up missing or with a dry joint',
    mend: 'Fit it, or re-flow both ends.',
    confirm: 'TP4 rises close to the rail.',
  },
  'pull-up a tenth': {
    name: 'Pull-up a tenth of its value',
    mend: 'Read its bands; fit the right one.',
    confirm: 'TP4 falls below 0.3 V when it should.',
  },
  'pull-up ten times': {
    name: 'Pull-up ten times its value',
    mend: 'Read its bands; fit the right one.',
    confirm: 'TP4 rises close to the rail.',
  },
  'reset joint open': {
    name: 'Reset pin of the timer not connected',
    mend: 'Re-flow the pin; look for a bent one.',
    confirm: 'The tone follows TP4.',
  },
  'bridge comparator output to input': {
    name: 'Bridge between the comparator’s output and its − input',
    mend: 'Draw a blade between the two strips.',
    confirm: 'Power off: no beep between the two pins.',
  },
  'bridge reset to output': {
    name: 'Bridge between the timer’s reset and output pins',
    mend: 'Draw a blade between the two strips.',
    confirm: 'Power off: no beep between the two pins.',
  },
  'bridge output to trigger': {
    name: 'Bridge between the timer’s output and trigger pins',
    mend: 'Draw a blade between the two strips.',
    confirm: 'Power off: no beep between the two pins.',
  },
  'bridge discharge to threshold': {
    name: 'Bridge between the timer’s discharge and threshold pins',
    mend: 'Draw a blade between the two strips.',
    confirm: 'Turning the pitch trimmer changes the pitch again.',
  },
  'uncut 556 1–14': uncut('timer', '1 and 14'),
  'uncut 556 2–13': uncut('timer', '2 and 13'),
  'uncut 556 3–12': uncut('timer', '3 and 12'),
  'uncut 556 4–11': uncut('timer', '4 and 11'),
  'uncut 556 5–10': uncut('timer', '5 and 10'),
  'uncut 556 6–9': uncut('timer', '6 and 9'),
  'uncut 556 7–8': uncut('timer', '7 and 8'),
  'uncut 393 1–8': uncut('comparator', '1 and 8'),
  'uncut 393 2–7': uncut('comparator', '2 and 7'),
  'uncut 393 3–6': uncut('comparator', '3 and 6'),
  'uncut 393 4–5': uncut('comparator', '4 and 5'),
  'capacitor open': {
    name: 'Timing capacitor with a dry joint, or missing',
    mend: 'Fit it, or re-flow both ends.',
    confirm: 'A finger on the trigger pin no longer changes the sound.',
  },
  'capacitor a tenth': {
    name: 'Timing capacitor a tenth of its value',
    mend: 'Read its code; fit the right one.',
    confirm: 'The pitch is a tenth of what it was.',
  },
  'capacitor ten times': {
    name: 'Timing capacitor ten times its value',
    mend: 'Read its code; fit the right one.',
    confirm: 'The pitch is ten times what it was.',
  },
  'charge resistor open': {
    name: 'RA with a dry joint, or missing',
    mend: 'Fit it, or re-flow both ends.',
    confirm: 'The discharge pin rises to the rail at times.',
  },
  'rb open': {
    name: 'RB open: its fixed resistor or the pitch trimmer',
    mend: 'Re-flow the resistor and the trimmer’s legs.',
    confirm: 'Power off: RB reads its sum.',
  },
  'rb zero': {
    name: 'No fixed part in RB, trimmer at its end',
    mend: 'Fit the fixed resistor; turn the trimmer up.',
    confirm: 'Turning the trimmer lowers the pitch.',
  },
  'timer reversed': {
    name: 'Timer the wrong way round',
    mend: 'Power off. Turn it, notch to the mark; it may be dead, so try another.',
    confirm: 'Supply current as on the slip, chip cool.',
  },
  'comparator reversed': {
    name: 'Comparator the wrong way round',
    mend: 'Power off. Turn it, notch to the mark; it may be dead, so try another.',
    confirm: 'Supply current as on the slip, chip cool.',
  },
  'mixing resistor open': {
    name: 'Mixing resistor with a dry joint, or missing',
    mend: 'Fit it, or re-flow both ends.',
    confirm: 'The voice is heard at the jack.',
  },
  'output open': {
    name: 'Nothing reaches the jack: coupling capacitor, jack or cable',
    mend: 'Try another cable; re-flow the capacitor and the jack’s lugs.',
    confirm: 'Both voices are heard at the jack.',
  },
  'no decoupling': {
    name: 'Decoupling capacitors missing or not connected',
    mend: 'Fit them beside the chips; re-flow.',
    confirm: 'A’s pitch stays when B starts.',
  },
  'timer dead': {
    name: 'One half of the timer dead',
    mend: 'Re-flow its pins first; then try another timer.',
    confirm: 'The output swings.',
  },
  'hysteresis a tenth': {
    name: 'Hysteresis resistor a tenth of its value',
    mend: 'Read its bands; fit the right one.',
    confirm: 'A small change of light switches the voice both ways.',
  },
  'hysteresis missing': {
    name: 'Hysteresis resistor missing or with a dry joint',
    mend: 'Fit it, or re-flow both ends.',
    confirm: 'No stutter when the light passes slowly.',
  },
  'hum on the lead': {
    name: 'Mains hum or lamp ripple at the sensor',
    mend: 'Shorten or twist the lead, move it from mains leads, or change the lamp.',
    confirm: 'No roughness at the switching point under daylight or a torch.',
  },
  'link missing': {
    name: 'Link {link} missing, or dry at one end',
    mend: 'Fit it, or re-flow both ends.',
    confirm: 'Power off: a beep from end to end.',
  },
});

/** A fault in words, on a board with this rail, a link by its name; null = the board behaves as it should. */
export function faultWords(
  kind: FaultKind | null,
  voice: VoiceId | null,
  railVolts: Volts,
  link: string | null = null,
): FaultWords {
  if (kind === null) return finderWords.nothing;
  const { name, mend, confirm } = WORDS[kind];
  const words = {
    name: name.replace('{link}', link ?? ''),
    mend,
    confirm: confirm.replace('{rail}', `${formatNumber(railVolts, 2)}\u00A0V`),
  };
  return voice === null ? words : { ...words, name: finderWords.ofVoice(words.name, voice) };
}

export type Hearing = 'sounds' | 'silent';
export type PitchHeard = 'right' | 'lower' | 'higher' | 'far lower' | 'far higher' | 'none';
export type SweepHeard = 'clean' | 'stutters' | 'rough' | 'wide' | 'none';
export type StartHeard = 'steady' | 'jumps';

export const earWords = spoken('ear', {
  lights: { lit: 'both sensors lit', 'A shaded': 'sensor A shaded', 'B shaded': 'sensor B shaded' },
  pitch: {
    right: 'about right',
    lower: 'too low',
    higher: 'too high',
    'far lower': 'far too low, a rattle',
    'far higher': 'far too high, a whistle',
    none: 'never heard',
  } satisfies Record<PitchHeard, string>,
  sweep: {
    clean: 'switches once, cleanly',
    stutters: 'stutters at the switching point',
    rough: 'rough, like mains hum, at the switching point',
    wide: 'needs far more light to go on than to go off',
    none: 'never switches',
  } satisfies Record<SweepHeard, string>,
  start: {
    steady: 'keeps its pitch',
    jumps: 'jumps in pitch',
  } satisfies Record<StartHeard, string>,
} as const);

/** What the finder says beside its list. */
export const finderWords = spoken('finder', {
  nothing: { name: 'Nothing wrong that shows', mend: 'Nothing to mend.', confirm: 'Compare with the slip.' },
  ofVoice: (fault: string, voice: VoiceId): string => `${fault} (voice ${voice})`,
  cutPower: 'Cut the power now: it draws far more than it should. Look for the fault with the battery off.',
  contradictory:
    'These readings do not fit one fault. Measure the marked ones again, or there are two faults.',
  notComputed: 'Not computed',
} as const);
