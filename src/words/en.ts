/**
 * Every sentence of the page, in English. Short, active, numbers with units. Another language is another
 * object of the same shape.
 */
import { formatFixed, formatNumber, formatQuantity, formatShare, formatSigned } from '../quantity/format.ts';
import type { Limits, QuantityKind, ReadProblem } from '../quantity/parse.ts';
import type { Pair, VoiceId } from '../quantity/units.ts';
import { excerpt } from './excerpt.ts';
import { spoken } from './spoken.ts';

const UNIT: Readonly<Record<QuantityKind, string>> = {
  resistance: 'Ω',
  capacitance: 'F',
  voltage: 'V',
  illuminance: 'lx',
  length: 'm',
  share: '%',
  number: '',
};

const NAME: Readonly<Record<QuantityKind, string>> = {
  resistance: 'a resistance',
  capacitance: 'a capacitance',
  voltage: 'a voltage',
  illuminance: 'a light level',
  length: 'a length',
  share: 'a share',
  number: 'a number',
};

const ACCEPTED: Readonly<Record<QuantityKind, string>> = {
  resistance: '4k7, 4,7k, 4.7 kΩ or 4700',
  capacitance: '100n, 0µ1, 100 nF or the printed code 104',
  voltage: '1.54 V, 1V54 or 1540 mV',
  illuminance: '300, 300 lx or 1.2 klx',
  length: '0.6 m or 60 cm',
  share: '47 %',
  number: '0.7',
};

const amount = (value: number, quantity: QuantityKind): string => {
  if (quantity === 'share') return formatShare(value, 0);
  if (quantity === 'number') return formatNumber(value, 4);
  if (quantity === 'illuminance') return lux(value);
  return formatQuantity(value, UNIT[quantity]);
};

const span = ({ min, max }: Limits, quantity: QuantityKind): string =>
  `${amount(min, quantity)} to ${amount(max, quantity)}`;

/** Lux as people read it: 0.25, 42, 300, 12 000. */
const luxNumber = (value: number): string => formatNumber(value, value < 10 ? 2 : 3);
const lux = (value: number): string => `${luxNumber(value)}\u00A0lx`;

const volts = (value: number): string => formatFixed(value, 2, 'V');

const hertz = (value: number): string =>
  value >= 10_000 ? formatQuantity(value, 'Hz', 3) : formatFixed(value, value < 100 ? 2 : 1, 'Hz');

const list = (items: readonly string[]): string => items.join(', ');

export const words = spoken('page', {
  product: 'Lampnote',
  oneFile: 'Save the page as one file',
  lux,
  luxNumber,
  volts,
  hertz,

  /** Notes as they are named and typed here. */
  notes: {
    shown: (english: string) => english,
    typed: (text: string) => text,
  },

  places: {
    heading: 'Places',
    names: { listen: 'Listen', pitch: 'Pitch', room: 'Room', class: 'Class', kit: 'Kit', about: 'About' },
    title: (place: string) => `${place} – Lampnote`,
    coming: (place: string) => `${place} is on its way.`,
    missing: (place: string) =>
      `${place} did not load. Look whether the page is still served; nothing you made is lost.`,
    again: 'Try again',
    partMissing:
      'A part of this page did not load. Look whether the page is still served; nothing you made is lost.',
    notServed:
      'Still not there: the page is not served now, or the network is away. What has loaded works on.',
  },
  bar: {
    name: 'Name of this design (no names of people, please)',
    soundOn: 'Sound on',
    soundOff: 'Sound off',
    soundStarting: 'Starting… (stop)',
    volume: 'Volume',
    volumeText: (db: number) => `${formatFixed(Math.abs(db), 0)} dB below full scale at most`,
    volumeShort: (db: number) => `${db < 0 ? '−' : ''}${formatFixed(Math.abs(db), 0)} dB`,
    undo: 'Undo',
    redo: 'Redo',
    undoWhat: (label: string | null) => (label ? `Undo: ${label}` : 'Nothing to undo'),
    redoWhat: (label: string | null) => (label ? `Redo: ${label}` : 'Nothing to redo'),
    open: 'Open…',
    save: 'Save',
    copyLink: 'Copy link',
    designs: 'Ready designs',
    look: 'Page',
    looks: { light: 'light', dark: 'dark', projector: 'projector' },
    language: 'Language',
    /** Each as it calls itself. */
    languages: { en: 'English', de: 'Deutsch' },
    soundByLink: {
      off: 'The link this page was opened by leaves the sound off. The gates follow the light all the same, in words and pictures.',
      on: 'The first press anywhere switches the sound on, as the link asks.',
    },
    more: 'More',
    moreOf: 'More: design, page, language',
    shortcuts:
      'Shift+Escape stops the sound from anywhere. Ctrl+Z takes a change back, Ctrl+Shift+Z brings it again.',
  },

  labels: {
    opened: (name: string) => `open ${name}`,
    link: 'open a link',
    rename: 'name',
    turned: (voice: VoiceId) => `pitch of ${voice}`,
    part: (voice: VoiceId, part: string) => `${part} of ${voice}`,
    threshold: 'threshold',
  },

  strip: {
    heading: 'Now',
    sounding: 'sounding',
    silent: 'silent',
    chattering: (perSecond: number) => `chattering, ${perSecond} times a second`,
    voice: (note: string, cents: number, frequency: number) =>
      `${note} ${formatSigned(cents)} cents · ${hertz(frequency)}`,
    duty: (duty: number) => `duty ${formatShare(duty)}`,
    noPitch: 'no pitch: the capacitor never reaches its levels',
    level: (db: number) => (db > -90 ? `now at ${formatFixed(db, 0).replace('-', '−')} dB` : ''),
    announce: (states: Pair<string>) => `A ${states.A}, B ${states.B}.`,
  },

  sound: {
    off: 'Sound is off: what A and B do is told here, not heard.',
    faded: 'Faded after 20 seconds without a change. Move anything, or press any key, to bring it back.',
    hint: 'Nothing to hear? Check the volume here and on the computer, the loudspeaker or cable, and, on a phone, the silent switch.',
    exhibition: 'Keep steady tones sounding (exhibition)',
    trouble: {
      unsupported:
        'This browser cannot make the sound: it has no audio worklet. A current Firefox, Chrome, Edge or Safari has.',
      insecure:
        'At this address the browser allows neither sound nor camera nor microphone: it is not secure (https, or localhost). Everything else works; the page as one file, opened from a disk, sounds.',
      'no device':
        'The browser did not open a sound device. Look whether a loudspeaker or headphones are connected and no other program holds them, then press “Sound on” again.',
      module: 'The sound module did not load. Look whether the page is still served, then try again.',
      processor:
        'The sound stopped because of a fault in the sound module. Press any key or click anywhere to start it anew.',
      suspended: 'The browser holds the sound back. Press any key or click anywhere to let it go on.',
      interrupted:
        'Something else has taken the sound (a call, a locked screen). Click anywhere to bring it back.',
      closed: 'The browser ended the sound. Press any key or click anywhere to start it anew.',
      stalled:
        'The sound device stands still. Check that it is plugged in, then press any key or click anywhere.',
    },
  },

  notice: {
    opened: (name: string) => `Opened “${name}”. Undo brings the last design back.`,
    noWords: (language: string) =>
      `The words for ${language} did not load. Look whether the page is still served, then try again.`,
    refused: (name: string) => `“${name}” was not opened; your design is as it was.`,
    unread: (name: string) =>
      `“${name}” was not opened: the browser could not read it. It may be a folder, or lie on a drive that has gone. Accepted is a single file that can still be reached.`,
    refusedLog: (name: string) =>
      `“${name}” was read as a light log, as it is no design (JSON), and was not opened; the light is as it was.`,
    logInLesson: (name: string) =>
      `“${name}” was not opened: in a lesson the light is the lesson’s. Leave the lesson, then open the light log.`,
    leftLesson: 'The lesson was left for it; begun again, it goes on where it was.',
    linkCopied: 'The link is copied. It holds the whole design; nothing is stored anywhere else.',
    linkShown: 'This browser does not let the page copy. Here is the link; copy it whole:',
    dismiss: 'Close this notice',
    tooLarge: (most: number) =>
      `The file holds more than ${formatQuantity(most, 'B', 3)}, the most a design file holds.`,
    notJson: 'The file is no JSON text, or is cut off. Accepted is a design saved by Lampnote.',
    notDesign: 'The file is not a Lampnote design: its entry “format” is missing or another one.',
    later: (version: number) =>
      `The file was written by a later Lampnote (design version ${version}). Open it there, or get the later one.`,
    at: (path: string, read: string, accepts: string) => `${path}: read ${read}; accepted is ${accepts}.`,
    accepts: {
      number: ({ min, max }: Limits) => `a number from ${formatNumber(min, 4)} to ${formatNumber(max, 4)}`,
      whole: 'a whole number that this version knows',
      wholeWithin: ({ min, max }: Limits) =>
        `a whole number from ${formatNumber(min, 12)} to ${formatNumber(max, 12)}`,
      list: (most: number) => `a list of at most ${most} entries`,
      text: (length: number) => `text of at most ${length} characters`,
      date: 'a day from 1900 to 2099, written like 2026-06-21',
      choice: (options: readonly string[]) => `one of ${list(options)}`,
      yesNo: 'true or false',
      entries: 'a group of entries in braces',
      nothing: 'no such entry',
    },
  },

  field: {
    problem(problem: ReadProblem): string {
      const { read, quantity } = problem;
      const shown = read === '' ? 'nothing' : `“${excerpt(read, 24)}”`;
      switch (problem.kind) {
        case 'unreadable':
          return `Read ${shown}, which is not ${NAME[quantity]}. Accepted: ${ACCEPTED[quantity]}.`;
        case 'ambiguous comma':
          return `Read ${shown}: thousands or decimals? Write it without the comma, or with a letter, such as 1k or 1.0.`;
        case 'other unit':
          return `Read ${shown}: ${problem.unit} is not a unit of ${NAME[quantity].replace(/^an? /, '')}. Accepted: ${ACCEPTED[quantity]}.`;
        case 'outside':
          return `Read ${shown} = ${amount(problem.value, quantity)}. Accepted: ${span(problem.limits, quantity)}.`;
      }
    },
    rotationOrOhms: (read: string, value: number, limits: Limits) =>
      `Read “${excerpt(read, 24)}” = ${amount(value, 'resistance')}. Accepted: 0 to 100 %, or ${span(limits, 'resistance')}.`,
    rotationOrVolts: (read: string, value: number, limits: Limits) =>
      `Read “${excerpt(read, 24)}” = ${amount(value, 'voltage')}. Accepted: 0 to 100 %, or ${span(limits, 'voltage')}.`,
    none: 'none',
    noneHint: 'Write “none” to leave it out.',
  },

  axis: {
    dark: 'dark',
    bright: 'bright',
    unit: 'lux',
    table: 'Table',
    heads: ['level', 'lux'],
    marks: {
      moon: 'full moon',
      corridor: 'corridor',
      class: 'classroom',
      overcast: 'overcast day',
      sun: 'bright sun',
    },
    needle: (voice: VoiceId, value: number) => `${voice} ${lux(value)}`,
    trip: (voices: VoiceId | 'both', off: number | null, on: number | null, shade: boolean) => {
      const who = voices === 'both' ? 'A and B' : voices;
      const s = voices === 'both' ? '' : 's';
      if (off === null && on === null) return `${who}: no light changes anything`;
      const stop = off === null ? `never stop${s}` : `stop${s} ${shade ? 'above' : 'below'} ${lux(off)}`;
      const start = on === null ? `never start${s}` : `start${s} ${shade ? 'below' : 'above'} ${lux(on)}`;
      return `${who} ${stop}, ${start}`;
    },
    summary: (light: Pair<number>, trips: readonly string[]) =>
      `Light now: ${lux(light.A)} at sensor A, ${lux(light.B)} at sensor B. ${trips.join('. ')}.`,
  },

  why: {
    heading: 'Why',
    /** Until the sound is on: what stands here, and what to press. */
    what: 'An instrument of two voices, A and B. Each is a square wave, and the light on its own sensor switches it.',
    begin: 'Press Sound on. Then bring a hand over a sensor, or turn a pitch trimmer.',
    both: 'Both sensors have the light their voices need. Shade one, and watch its node cross the reference.',
    silent: (voice: VoiceId, light: number, rises: boolean) =>
      `${voice} is silent. Its light is ${lux(light)}, so its node has ${rises ? 'risen' : 'fallen'} past the reference and the comparator holds the timer in reset.`,
    back: (voice: VoiceId, on: number, shade: boolean) =>
      `${voice} starts again ${shade ? 'below' : 'above'} ${lux(on)}.`,
    catching: (voice: VoiceId, light: number) =>
      `${voice} is still silent although its light is ${lux(light)} again: its cell takes a moment to follow.`,
    hysteresis: (off: number, on: number) =>
      `The gap between ${formatNumber(Math.min(off, on), 3)} and ${lux(Math.max(off, on))} is the hysteresis.`,
    noHysteresis: 'There is no hysteresis: near its trip point the voice will stutter.',
    chatter: (voice: VoiceId) =>
      `${voice} chatters: its light stands at the trip point, where small changes (a lamp’s ripple, the node’s own noise) switch it. More hysteresis, or a clearer shadow, ends it.`,
    neverReleases: (voice: VoiceId) =>
      `${voice} can never sound: its pull-up leaves the reset pin too low. A smaller pull-up mends it.`,
    neverSilences: (voice: VoiceId) =>
      `${voice} can never be silenced: its pull-up is so small that the comparator cannot pull the reset pin low. A larger pull-up mends it.`,
    bothAbove: (voice: VoiceId) =>
      `Both comparator inputs of ${voice} are above its range, so what it does is not promised by any maker. Lower the reference, or move the cell to the other side of the divider.`,
    first: (ratio: number) =>
      `After a silence the first swing is ${formatFixed(ratio, 2)} times as long: the capacitor starts near 0 V.`,
  },

  warnings: {
    heading: 'What to mind',
    count: (pressing: number, notes: number) =>
      `${pressing === 0 ? 'nothing pressing' : `${pressing} ${pressing === 1 ? 'thing' : 'things'}`}, ${notes} ${notes === 1 ? 'note' : 'notes'}`,
    notes: 'Notes',
    severities: { danger: 'Danger', wrong: 'Wrong', caution: 'Caution', note: 'Note' },
  },

  caution: { heading: 'Caution', more: 'Cautions', source: (source: string) => `Source: ${source}.` },

  light: {
    heading: 'Light',
    sources: { stage: 'stage', scene: 'scene', log: 'recorded log', camera: 'camera' },
    stageLegend: 'Where the light comes from',
    figure: 'The table seen from the front. Tap or drag the hands, or use the sliders.',
    stageKeys:
      'With the drawing focused: A and B bring a hand over or take it away, arrows move the hand last used (Shift: finely), L switches the lamp, Escape lifts both.',
    stageName: 'Table with lamp and hands',
    lampSwitch: 'Lamp on',
    lamp: 'lamp',
    lampHeight: 'lamp height',
    room: 'room light',
    handHeight: 'hand height',
    hand: (voice: VoiceId) => `hand over ${voice}`,
    stays: 'Hands stay where they are put',
    staysHint: 'Off: a hand dragged with pointer or finger goes back when let go.',
    metres: (value: number) => formatFixed(value, 2, 'm'),
    centimetres: (value: number) => formatFixed(value * 100, 0, 'cm'),
    cover: (value: number) => formatShare(value),
    coverText: (voice: VoiceId, value: number, light: number) =>
      `${value === 0 ? 'away' : `${formatShare(value)} over ${voice}`}, ${lux(light)} at the sensor`,
    lampText: (value: number) => `${lux(value)} at the sensors from the lamp`,
    lampPlace: (metres: number) => `lamp, ${formatFixed(metres, 2, 'm')} up`,
    handPlace: (metres: number) => `hand, ${formatFixed(metres * 100, 0, 'cm')} up`,
    spacing: (metres: number) => `sensors ${formatFixed(metres * 100, 0, 'cm')} apart`,
    describe: (lamp: number, light: Pair<number>, cover: Pair<number>) => {
      const hands = (['A', 'B'] as const)
        .filter((v) => cover[v] > 0)
        .map((v) => `a hand ${formatShare(cover[v])} over sensor ${v}`);
      return `Lamp ${lamp > 0 ? `gives ${lux(lamp)}` : 'off'}; ${hands.length ? hands.join(' and ') : 'no hand over the sensors'}. A: ${lux(light.A)}, B: ${lux(light.B)}.`;
    },
  },

  camera: {
    purpose:
      'Two patches of the picture stand for the two sensors. Cover the camera, or move a hand through a patch, and the voices follow.',
    open: 'Switch the camera on',
    stop: 'Switch the camera off',
    on: 'Camera on',
    asking: 'Waiting for your answer to the browser’s question about the camera…',
    settling: 'Camera on. Waiting for its exposure to come to rest; leave the patches uncovered…',
    litLevel: 'lit level',
    litHint: 'The picture at switch-on counts as this light.',
    again: 'Take again',
    typed: (voice: VoiceId) => `light at ${voice}`,
    assumed: (value: number) => `assumed: the picture at switch-on is ${lux(value)}`,
    calibrated: 'calibrated to the level you typed',
    exactness: 'Relative readings only. With a typed level and the exposure held, expect ±20 to 30 %.',
    locks: {
      locked: 'Exposure and white balance are held still.',
      exposureOnly: 'Exposure is held still; the browser does not hold the white balance.',
      automatic:
        'This browser or camera does not hold the exposure: readings drift toward mid-grey after a change. Quick shadows still work.',
      unknown: 'The browser does not say whether the exposure is held; readings may drift.',
    },
    rate: (frames: number, mains: number, alias: number) =>
      `${formatFixed(frames, 0)} frames a second. Lamps on ${mains} Hz mains ripple at ${2 * mains} Hz, which the camera turns into ${formatFixed(alias, 0)} Hz.`,
    ripple: (depth: number) =>
      `The light ripples by about ${formatShare(depth, 1)} from frame to frame: lamp and frame rate beat. Daylight, another lamp or another frame rate helps; the voices may stutter near their trip points.`,
    drifting:
      'Both patches drift alike: the camera’s exposure is moving, not the light. Press Take again when the light is as it should be.',
    turned:
      'The picture has turned, so other things lie under the patches, and its light was taken anew. Look where the patches lie; with the light as it should be, press Take again.',
    missing: {
      blanked:
        'The camera is blanked, by a switch on it or by the system. The light stays as it was last seen, and goes on when the picture is back.',
      still:
        'No picture has come for some seconds. The light stays as it was last seen, and goes on with the next picture. If none comes, look whether another program holds the camera, then switch it off and on here.',
    },
    restless: 'The exposure never came to rest; the picture was taken as it was.',
    dark: (voice: VoiceId) =>
      `The patch for ${voice} is too dark to scale from. Uncover the camera or light the patch, then press Take again.`,
    clipped: (voice: VoiceId) =>
      `The patch for ${voice} is at the camera’s limit: more light than this cannot be told apart.`,
    calibrate: 'Calibrate to a meter',
    calibrateHint: 'Lux at the patch now, by your meter or lux app.',
    refused: {
      denied:
        'The camera was not allowed. Allow it in the address bar, then press the button again; the stage works without it.',
      absent: 'No camera was found. Plug one in, then press the button again.',
      busy: 'Another program or tab holds the camera. Close it there, then press the button again.',
      unsupported: 'This browser gives pages no camera. The stage works without it.',
      insecure:
        'The browser gives a camera only on a secure address: https or localhost. The stage works without it.',
      failed: 'The camera did not start. Unplug it and plug it in again, or use the stage.',
    },
    ended: {
      unplugged: 'The camera was unplugged. The light stays as it was last seen.',
      withdrawn: 'The camera was taken back by the browser. The light stays as it was last seen.',
    },
    region: (voice: VoiceId) => `Patch for sensor ${voice}`,
    regionPlace: (x: number, y: number) => `${formatShare(x)} from the left, ${formatShare(y)} from the top`,
    regionKeys:
      'Drag a patch, or focus it and use the arrow keys (Shift: finely; with Ctrl: its size). A moved patch takes its picture anew as the lit level.',
    picture: 'Camera picture with two patches',
  },

  threshold: {
    heading: 'Threshold',
    figure: 'Node volts against the reference (wiper unloaded)',
    summary: (node: Pair<number>, reference: Pair<number>) =>
      `Node A ${volts(node.A)} against ${volts(reference.A)}; node B ${volts(node.B)} against ${volts(reference.B)}.`,
    node: (voice: VoiceId, value: number) => `${voice} ${volts(value)}`,
    reference: (voices: VoiceId | 'both', value: number) =>
      `${voices === 'both' ? 'reference' : `ref ${voices}`} ${volts(value)}`,
    brighter: (sounds: boolean | null) =>
      sounds === null ? 'brighter ↓' : sounds ? 'brighter, sounds ↓' : 'brighter, silent ↓',
    darker: (sounds: boolean | null) =>
      sounds === null ? 'darker ↑' : sounds ? 'darker, sounds ↑' : 'darker, silent ↑',
    brighterUp: (sounds: boolean | null) =>
      sounds === null ? 'brighter ↑' : sounds ? 'brighter, sounds ↑' : 'brighter, silent ↑',
    darkerDown: (sounds: boolean | null) =>
      sounds === null ? 'darker ↓' : sounds ? 'darker, sounds ↓' : 'darker, silent ↓',
    shared: 'Threshold trimmer, both voices',
    own: (voice: VoiceId) => `Threshold trimmer ${voice}`,
    arrangement: 'trimmers',
    arrangements: { shared: 'one for both', each: 'one each' },
    turned: (rotation: number) => `turned ${formatShare(rotation, 1)}`,
    more: 'Parts around the trimmer',
    sharedNote:
      'Trip points are told for both voices doing the same. Through the one wiper each voice’s hysteresis moves the other’s points a little.',
    justOn: 'Turn to just on',
    justOnHint:
      'Give the sensors the light in which the voices should sound, then press: the threshold turns until silent voices just start.',
    justOnStep: 'threshold to just on',
    justOnAlways:
      'In this light the voices sound at every setting: the trimmer’s reach ends too soon. Less light, or another resistor beside the trimmer, helps.',
    justOnNever:
      'In this light no setting lets the voices sound: more light, or another resistor beside the trimmer, helps.',
    justOnDone:
      'Turned: in this light silent voices just start. How far it must change to silence them is the hysteresis.',
    above: 'resistor above',
    trimmerValue: 'trimmer value',
    below: 'resistor below',
    spoken: (value: number, rotation: number) => `${volts(value)}, ${formatShare(rotation)} of travel`,
    table: 'Table',
    heads: ['point', 'volts'],
  },

  voices: {
    heading: 'Voices',
    voice: (voice: VoiceId) => `Voice ${voice}`,
    trimmer: (voice: VoiceId) => `Pitch trimmer ${voice}`,
    oneLess: (label: string) => `${label}: one per cent less`,
    oneMore: (label: string) => `${label}: one per cent more`,
    box: (label: string) => `${label}, exact value`,
    spoken: (ohms: number, rotation: number, note: string, cents: number) =>
      `${formatQuantity(ohms, 'Ω', 3)}, ${formatShare(rotation)} of travel, ${note.replace('♯', ' sharp ')} ${cents < -0.5 ? 'minus' : 'plus'} ${Math.abs(Math.round(cents))} cents`,
    readout: (rotation: number, centsPerPercent: number | null) =>
      `turned ${formatShare(rotation, 1)}${centsPerPercent === null ? '' : ` · ${formatFixed(Math.abs(centsPerPercent), 0)} cents per 1 %`}`,
    range: (from: number, to: number) =>
      `stop to stop: ${hertz(Math.max(from, to))} to ${hertz(Math.min(from, to))}`,
    formula: 'f ≈ 1 / (ln 2 · (RA + 2 RB) · C), less what the discharge pin’s saturation takes',
    ra: 'RA',
    rbFixed: 'fixed RB',
    trimmerValue: 'trimmer',
    capacitor: 'C',
    dielectric: 'dielectric',
    dielectrics: {
      polyester: 'polyester film',
      polypropylene: 'polypropylene film',
      c0g: 'C0G ceramic',
      x7r: 'X7R ceramic',
      y5v: 'Y5V ceramic',
      electrolytic: 'electrolytic',
    },
    cellFamily: 'cell',
    cellFamilies: {
      'cds-8-20k': '5 mm cell, 8–20 kΩ',
      'cds-2-6k': '5 mm cell, 2–6 kΩ',
      'cds-5-10k': '5 mm cell, 5–10 kΩ',
      'cds-16-50k': '5 mm cell, 16–50 kΩ',
      'cds-30-90k': '5 mm cell, 30–90 kΩ',
      'cds-dual-5-15k': 'moulded dual cell, 5–15 kΩ, slow',
      'cds-2k5-7k5': 'moulded cell, 2.5–7.5 kΩ',
      'cds-50-150k': 'moulded cell, 50–150 kΩ, steep',
      'cds-9k': 'coated cell, 9 kΩ, slow to darken',
    },
    rbZero:
      'With no fixed part the pitch runs far above hearing at the stop, and the trimmer carries the discharge.',
    raSmall: (amperes: number) =>
      `RA is below 1 kΩ: ${formatQuantity(amperes, 'A', 2)} flow into the discharge pin while the output is low.`,
    more: (voice: VoiceId) => `More of ${voice}: kinds of part, cell, divider, comparator`,
    polarity: 'sounds in',
    polarities: { light: 'light', shade: 'shade' },
    cellSide: 'cell at the',
    cellSides: { top: 'top', bottom: 'bottom' },
    cellOhms: 'cell at 10 lx',
    gamma: 'slope γ',
    kept: 'cell kept in the',
    keptIn: { light: 'light', dark: 'dark' },
    divider: 'fixed resistor',
    hysteresis: 'hysteresis',
    input: 'input resistor',
    pullUp: 'pull-up',
    control: 'control pin',
  },

  board: {
    heading: 'Chips, output and supply',
    timer: 'timer',
    timers: { bipolar: 'bipolar', cmos: 'CMOS' },
    comparator: 'comparator',
    comparators: { classic: 'classic', later: 'later die' },
    supply: 'supply',
    supplies: { 'block-9v': '9 V block', 'four-aa': '4 × AA', 'five-volt': '5 V' },
    volts: 'volts',
    mixing: 'outputs',
    mixings: { resistors: 'mixing resistors', joined: 'joined directly' },
    mix: (voice: VoiceId) => `from ${voice}`,
    shunt: 'to 0 V',
    coupling: 'coupling C',
    couplingKind: 'its kind',
    couplingKinds: { film: 'film', ceramic: 'ceramic', electrolytic: 'electrolytic' },
    volume: 'volume trimmer',
    volumeTurn: 'turned',
    source: 'source resistance',
    diode: 'diode against reversed polarity',
    decoupled: 'decoupling capacitors at both chips',
    dip: 'shared dip of the rail (first-order)',
    seed: 'noise seed',
    levelHead: 'Level at the jack',
    levels: ['', 'peak to peak', 'rms', 'dBV', 'dBu'],
    levelOf: (voice: VoiceId | 'both') => (voice === 'both' ? 'both' : `voice ${voice}`),
    decibels: (value: number | null) => (value === null ? 'none' : formatFixed(value, 1).replace('-', '−')),
    dc: (held: number | null) =>
      held === null
        ? 'No coupling capacitor: the jack carries DC.'
        : `${formatFixed(Math.abs(held), 2, 'V')} DC stand on the coupling capacitor; a polarised one has its plus leg toward the ${held >= 0 ? 'timers' : 'jack'}.`,
    thump: (peak: number, time: number) =>
      `A voice that starts or stops steps the jack by ${formatQuantity(peak, 'V', 2)}, gone to a third in ${formatQuantity(time, 's', 2)}.`,
    headphones: (watts: number, decibels: number | null) =>
      `As headphones: ${formatQuantity(watts, 'W', 2)} in the load, about ${decibels === null ? 'no sound' : `${formatFixed(decibels, 0)} dB`} for a pair that makes 100 dB of 1 mW. A rough guide: makes differ by ±12 dB.`,
    powerHead: 'Supply current',
    powers: ['', 'current', 'rail', 'sag', 'battery lasts'],
    playStates: { both: 'both sounding', onlyA: 'only A', onlyB: 'only B', none: 'both silent' },
    hours: (value: number | null) => (value === null ? 'no battery' : `${formatNumber(value, 2)} h`),
    amperes: (value: number) => formatQuantity(value, 'A', 3),
    milliVolts: (value: number) => formatQuantity(value, 'V', 2),
    load: 'load',
    noise: 'node noise',
    trimmerParts: { 'single-turn': 'single turn', 'multi-turn': '25 turns', carbon: 'carbon' },
    trimmerPart: 'trimmer kind',
    jack: (peak: number, corner: number | null) =>
      `At the jack: up to ${formatQuantity(peak, 'V', 3)} peak${corner === null ? ', with no coupling capacitor' : `, corner at ${hertz(corner)}`}.`,
    clash: (amperes: number, rated: number) =>
      `Joined outputs drive against each other with about ${formatQuantity(amperes, 'A', 2)} while one is high and the other low${amperes > rated ? ` (rated ${formatQuantity(rated, 'A', 2)})` : ''}; what you hear is the stronger of the two.`,
    notes: 'Notes (no names of people, please)',
    notesLabel: 'notes',
  },

  first: {
    heading: 'The first cycles',
    figure: 'Capacitor (line) and output (below) after a long silence.',
    voice: 'voice',
    back: 'Step back',
    next: 'Next step',
    none: 'This voice never swings: its capacitor does not reach both levels.',
    released:
      'Released: the capacitor stands near 0 V, below a third of the supply, so the output rises at once and the capacitor charges through RA and RB.',
    high: (n: number, milliseconds: number, ratio: number) =>
      `High ${n}: ${formatFixed(milliseconds, 3)} ms${n === 1 ? `, ${formatFixed(ratio, 2)} times the steady one` : ''}. At two thirds the output falls and the capacitor discharges through RB.`,
    low: (n: number, milliseconds: number) =>
      `Low ${n}: ${formatFixed(milliseconds, 3)} ms. At a third the output rises again.`,
    step: (n: number, of: number) => `step ${n} of ${of}`,
    axis: (milliseconds: number) => `${formatNumber(milliseconds, 3)} ms`,
    table: 'Table',
    heads: ['stretch', 'lasts', 'capacitor from', 'to'],
    highName: (n: number) => `high ${n}`,
    lowName: (n: number) => `low ${n}`,
    milliseconds: (seconds: number) => `${formatFixed(seconds * 1000, 3)} ms`,
  },

  reference: {
    heading: 'Reference note',
    note: 'note',
    sounds: 'Sound it beside the voices',
    beats: (voice: VoiceId, cents: number, beats: number) =>
      `${voice} is ${formatSigned(cents)} cents from it: ${beats < 0.05 ? 'no beats' : `${formatFixed(beats, beats < 10 ? 1 : 0)} beats a second`}.`,
    far: (voice: VoiceId, cents: number) => `${voice} is ${formatSigned(cents)} cents from it.`,
  },

  traces: {
    heading: 'The last four seconds',
    label: 'Node volts and gates of the last four seconds',
    summary:
      'Node volts of A (solid) and B (dashed) against the reference, and under them when each voice sounded.',
    figure: 'Node volts (lines), trip points (bands), gates (bars).',
    ago: (seconds: number) =>
      Math.abs(seconds) < 0.005 ? 'now' : `−${formatFixed(Math.abs(seconds), 0, 's')}`,
    moment: (ago: number, node: Pair<number>, sounding: Pair<boolean>) =>
      `${formatFixed(Math.abs(ago), 2, 's')} ago: A ${volts(node.A)}, ${sounding.A ? 'sounding' : 'silent'}; B ${volts(node.B)}, ${sounding.B ? 'sounding' : 'silent'}.`,
    row: (ago: number, node: Pair<number>, sounding: Pair<boolean>) => [
      formatFixed(Math.abs(ago), 2, 's'),
      volts(node.A),
      sounding.A ? 'sounding' : 'silent',
      volts(node.B),
      sounding.B ? 'sounding' : 'silent',
    ],
    heads: ['before now', 'node A', 'voice A', 'node B', 'voice B'],
    hold: 'Hold',
    cursor: 'Time cursor',
    cursorHint: 'Left and right arrow move along time.',
    table: 'Table',
  },
} as const);
