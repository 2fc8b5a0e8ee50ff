/** Reads and prints what is typed of a room: hours of the clock, lux or nothing, lengths, seconds, degrees. */

import { readHour } from '../../quantity/hour.ts';
import { type Limits, parseQuantity, type QuantityKind } from '../../quantity/parse.ts';
import { words } from '../../words/en.ts';
import { describeWords } from '../../words/en-room.ts';
import type { Reading, ReadText } from '../controls/events.ts';
import { NONE, reader } from '../edits.ts';

const say = describeWords.field;

export const hourReader: ReadText = (text): Reading => {
  const value = readHour(text);
  return value === null ? { ok: false, message: say.hour(text.trim()) } : { ok: true, value };
};
export const hourText = (value: number | null): string => (value === null ? '' : say.clock(value));

/** An empty box stands for "not read", which a field holds as `NONE`. */
export function luxOrNothing(limits: Limits): ReadText {
  const read = reader('illuminance', limits);
  return (text) => (text.trim() === '' ? { ok: true, value: NONE } : read(text));
}
export const luxField = (value: number | null): string =>
  value === null || value === NONE ? '' : say.lux(value);

/** A number with its unit behind it or without. */
function plain(limits: Limits, unit: RegExp, whole = false, quantity: QuantityKind = 'number'): ReadText {
  return (text) => {
    const reading = parseQuantity(text.trim().replace(unit, ''), quantity, limits);
    if (!reading.ok) return { ok: false, message: words.field.problem(reading.problem) };
    return whole ? { ok: true, value: Math.round(reading.value) } : reading;
  };
}

export const secondsReader = (limits: Limits): ReadText => plain(limits, /\s*s(?:econds?)?$/i);
export const degreesReader = (limits: Limits): ReadText => plain(limits, /\s*(?:°|degrees?)$/i);
export const paceReader = (limits: Limits): ReadText => plain(limits, /\s*m\s*\/\s*s$/i);
export const areaReader = (limits: Limits): ReadText => plain(limits, /\s*m(?:²|2)$/i);
export const hoursReader = (limits: Limits): ReadText => plain(limits, /\s*h(?:ours?)?$/i);
export const numberReader = (limits: Limits): ReadText => plain(limits, /$^/);
export const wholeReader = (limits: Limits): ReadText => plain(limits, /$^/, true);
export const shareReader = (limits: Limits): ReadText => reader('share', limits);
export const lengthReader = (limits: Limits): ReadText => reader('length', limits);

const orEmpty =
  (print: (value: number) => string) =>
  (value: number | null): string =>
    value === null ? '' : print(value);

export const secondsField = orEmpty(say.seconds);
export const degreesField = orEmpty(say.degrees);
export const paceField = orEmpty(say.pace);
export const areaField = orEmpty(say.area);
export const metresField = orEmpty(say.metres);
export const hoursField = orEmpty(say.hours);
export const shareField = orEmpty(say.share);
export const plainField = orEmpty(say.plain);
