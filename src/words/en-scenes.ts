/** Words for light that plays by itself: scenes, lamps, recordings, and taking the light down. In English. */
import { formatFixed, formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import { spoken } from './spoken.ts';

const lux = (value: number): string => `${formatNumber(value, value < 10 ? 2 : 3)}\u00A0lx`;
const seconds = (value: number): string => formatFixed(value, 1, 's');
const centimetres = (value: number): string => formatFixed(value * 100, 1, 'cm');
const millimetres = (value: number): string => formatFixed(value * 1000, 0, 'mm');

/** Label and print of each parameter of a scene. */
const parameters = {
  everySeconds: { label: 'one every', print: seconds },
  crossSeconds: { label: 'a wave lasts', print: seconds },
  handMetres: { label: 'hand height', print: centimetres },
  lampMetres: { label: 'lamp height', print: (value: number) => formatFixed(value, 2, 'm') },
  lampLux: { label: 'lamp', print: lux },
  roomLux: { label: 'room light', print: lux },
  spacingMetres: { label: 'sensors apart', print: centimetres },
  irregular: { label: 'unevenness', print: (value: number) => formatShare(value) },
  seed: { label: 'seed', print: (value: number) => formatFixed(value, 0) },
  metresPerSecond: {
    label: 'pace',
    print: (value: number) =>
      value < 0.3 ? `${formatFixed(value * 100, 1)} cm/s` : `${formatFixed(value, 2)} m/s`,
  },
  shadowMetres: { label: 'shadow', print: centimetres },
  softMetres: { label: 'soft edge', print: centimetres },
  litLux: { label: 'lit', print: lux },
  shadeLux: { label: 'shaded', print: lux },
  slots: { label: 'slots', print: (value: number) => formatFixed(value, 0) },
  slotMetres: { label: 'slot', print: millimetres },
  gapMetres: { label: 'gap', print: millimetres },
  apertureMetres: { label: 'sensor opening', print: millimetres },
  slotDegrees: { label: 'slot angle', print: (value: number) => `${formatFixed(value, 0)}°` },
  rpm: { label: 'turns a minute', print: (value: number) => formatFixed(value, 1) },
  drumMetres: { label: 'drum radius', print: millimetres },
  sensorMetres: { label: 'sensor from axis', print: centimetres },
  filamentMetres: { label: 'lamp size', print: millimetres },
  apartDegrees: { label: 'sensors apart', print: (value: number) => `${formatFixed(value, 0)}°` },
} as const;

export type SceneParameter = keyof typeof parameters;

export const sceneWords = spoken('scenes', {
  kind: 'scene',
  kinds: {
    'hand-wave': 'a hand waves over the sensors',
    'passer-by': 'people pass by',
    'slotted-card': 'a slotted card is pulled past',
    lantern: 'a paper lantern turns',
  },
  parameters,
  again: 'From the beginning',
  repeats: 'The same seed gives the same scene every time.',
  place: (value: number) => `${formatFixed(value, 1)} s into it`,
  flicker: 'This scene changes the light quickly. Only the ear hears it here; nothing on the screen flashes.',
});

export const lampWords = spoken('lamps', {
  lamp: 'light from',
  none: 'a steady lamp or daylight',
  lamps: {
    incandescent: 'an incandescent lamp',
    halogen: 'a mains halogen lamp',
    'fluorescent-magnetic': 'a fluorescent tube, magnetic ballast',
    'compact-magnetic': 'a compact fluorescent, magnetic ballast',
    'compact-electronic': 'a compact fluorescent, electronic ballast',
    'metal-halide': 'a metal-halide lamp',
    'sodium-high-pressure': 'a high-pressure sodium lamp',
    'led-smooth': 'an LED lamp, smooth driver',
    'led-poor': 'an LED lamp, poor driver',
    'led-rectified': 'an LED lamp on rectified mains',
  },
  mains: 'mains',
  mainsHertz: { '50': '50 Hz', '60': '60 Hz' },
  says: (depth: number, hertz: number, verdict: 'no effect' | 'low risk' | 'above both') =>
    `Ripples by ${formatShare(depth)} at ${formatFixed(hertz, 0)} Hz. ${
      {
        'no effect': 'Below what people notice (IEEE 1789-2015).',
        'low risk': 'Within the low-risk limit for people (IEEE 1789-2015).',
        'above both': 'Above the low-risk limit for people (IEEE 1789-2015).',
      }[verdict]
    }`,
});

export const logWords = spoken('logs', {
  open: 'Open a light log…',
  drop: 'Or drop the file anywhere on the page. CSV as phone meters and loggers write it: time, and one or two columns of lux.',
  none: 'No light log is open yet.',
  name: (name: string) => `Playing “${name}”.`,
  unplayed: (name: string) => `“${name}” is open but not played.`,
  how: 'How it is read (guessed; correct it here)',
  delimiter: 'columns by',
  delimiters: { ',': 'comma', ';': 'semicolon', '\t': 'tab' },
  decimal: 'decimals by',
  decimals: { '.': 'point', ',': 'comma' },
  header: 'header row',
  noHeader: 'none',
  time: 'time',
  luxA: 'light at A',
  luxB: 'light at B',
  sameAsA: 'same as A',
  column: (n: number, name: string | undefined) => (name ? `${n}: ${name}` : `column ${n}`),
  timeFormat: 'time is',
  timeFormats: {
    seconds: 'seconds',
    milliseconds: 'milliseconds',
    minutes: 'minutes',
    clock: 'h:mm:ss',
    stopwatch: 'm:ss',
    iso: 'year-month-day, h:mm:ss',
    'day-first': 'day.month.year, h:mm:ss',
    'month-first': 'month/day/year, h:mm:ss',
  },
  unit: 'light in',
  units: { lx: 'lux', klx: 'kilolux', footcandle: 'foot-candles' },
  preview: 'First rows',
  row: 'row',
  place: 'place',
  placeText: (at: number, of: number) => `${formatFixed(at, 1)} of ${formatFixed(of, 1)} s`,
  loop: 'Again and again',
  problems: 'Rows left out',
});

export const takeWords = spoken('takes', {
  heading: 'Take it down',
  explain:
    'Writes down the light at both sensors while you play. Afterwards save it as a light log, or as the sound this design makes of it, computed anew without gaps.',
  record: 'Record the light',
  stop: 'Stop',
  running: (value: number) => `Recording: ${formatFixed(value, 1)} s`,
  done: (value: number) => `${formatFixed(value, 1)} s of light taken down.`,
  none: 'Nothing taken down yet.',
  replay: 'Replay it',
  saveLog: 'Save the light (CSV)',
  saveSound: 'Save the sound (WAV)',
  rendering: 'Computing the sound…',
  fullScale: (volts: number) =>
    `WAV: mono, 48 kHz, 32-bit float; full scale is ${formatQuantity(volts, 'V', 3)} at the jack. It may be much louder than this page.`,
  fileName: 'light-log',
});
