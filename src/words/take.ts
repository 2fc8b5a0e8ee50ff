/** What the take on the command line says: one sentence for each way it can refuse, and what it accepts. */
import { formatNumber, formatQuantity } from '../quantity/format.ts';
import type { Limits } from '../quantity/parse.ts';
import { excerpt } from './excerpt.ts';

const shown = (read: string): string => `“${excerpt(read, 60)}”`;
const range = ({ min, max }: Limits): string => `from ${formatNumber(min, 6)} to ${formatNumber(max, 6)}`;

export const takeWords = {
  usage: [
    'npm run take -- --design FILE.json --light FILE.csv --seconds N --out FILE.wav --report FILE.json',
    '',
    '  --design   a design saved by Lampnote',
    '  --light    rows of light: time_s,lux_a,lux_b; straight between rows, held before and after',
    '  --seconds  length of the take, more than 0, at most 3600',
    '  --out      WAV file to write: one channel, 32-bit float, volts ÷ fullScaleVolts',
    '  --report   JSON file to write: voices, gates, output, warnings',
    '  --rate     samples per second, 8000 to 192000; 48000 when left out',
    "  --noise    noise at each sensor's node, V rms; 0 = none; the design's own when left out",
    '',
  ].join('\n'),

  unknownOption: (name: string, known: readonly string[]) =>
    `${shown(name)} is no option; there are ${known.join(', ')}.`,
  stray: (read: string) => `${shown(read)} belongs to no option; each value follows its option's name.`,
  twice: (name: string) => `${name} is given twice.`,
  noValue: (name: string) => `${name} needs a value after it.`,
  missing: (names: readonly string[]) =>
    `${names.join(', ')} ${names.length === 1 ? 'is' : 'are'} missing: ${names.length === 1 ? 'it is' : 'they are'} needed for a take.`,
  notNumber: (name: string, read: string) => `${name} takes a number; read ${shown(read)}.`,
  notWhole: (name: string, read: string) => `${name} takes a whole number; read ${shown(read)}.`,
  outside: (name: string, read: string, limits: Limits, unit: string) =>
    `${name} takes a number ${range(limits)} ${unit}; read ${shown(read)}.`,
  secondsOutside: (read: string, most: number) =>
    `--seconds takes more than 0 and at most ${most} s; read ${shown(read)}.`,
  tooShort: (read: string, rate: number) =>
    `--seconds ${read} is shorter than one sample at ${rate} samples a second.`,
  sameFile: (one: string, other: string) => `${one} and ${other} name the same file; each needs its own.`,

  cannotRead: (name: string, file: string, why: string) => `${name}: ${shown(file)} cannot be read: ${why}.`,
  cannotWrite: (name: string, file: string, why: string) =>
    `${name}: ${shown(file)} cannot be written: ${why}.`,
  why: {
    ENOENT: 'there is no such file or folder',
    EISDIR: 'it is a folder',
    ENOTDIR: 'part of its path is no folder',
    EACCES: 'this is not allowed',
    EPERM: 'this is not allowed',
    EROFS: 'the disk cannot be written to',
    ENOSPC: 'the disk is full',
  } as Readonly<Record<string, string>>,
  otherwise: (code: string) => `the system says ${code}`,

  design: (file: string, why: string) => `--design: ${shown(file)} is not taken: ${why}`,
  light: (file: string, why: string) => `--light: ${shown(file)} is not taken: ${why}`,
  tooLarge: (most: number) => `it holds more than ${formatQuantity(most, 'B', 3)}.`,
  header: (read: string) =>
    `its first line should be time_s,lux_a,lux_b; read ${read === '' ? 'nothing' : shown(read)}.`,
  noRows: 'there is no row of light below the heading.',
  row: (line: number, read: string) =>
    `line ${line} is not three numbers (seconds, lux at A, lux at B; a point as decimal mark); read ${shown(read)}.`,
  darkerThanDark: (line: number, most: number) =>
    `line ${line} has light outside 0 to ${formatNumber(most, 6)} lx.`,
  backwards: (line: number) => `line ${line} is earlier than the line before it.`,

  notJson: 'it is no JSON text, or is cut off.',
  notDesign: 'it is no Lampnote design: its entry “format” is missing or another one.',
  later: (version: number) =>
    `it was written by a later Lampnote (design version ${version}), which this one cannot read.`,
} as const;
