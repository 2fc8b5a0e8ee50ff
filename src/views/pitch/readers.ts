/** Reads the numbers of a wish as typed: frequencies, cents, whole numbers. Refusals are sentences. */
import { formatNumber } from '../../quantity/format.ts';
import { type Limits, parseQuantity } from '../../quantity/parse.ts';
import { pitchWords } from '../../words/en-pitch.ts';
import type { ReadText } from '../controls/events.ts';
import { boxText } from '../edits.ts';

function numberReader(
  limits: Limits,
  accepted: 'hertz' | 'cents' | 'whole',
  unit: string,
  tidy: (text: string) => string,
  whole = false,
): ReadText {
  return (text) => {
    const reading = parseQuantity(tidy(text.trim()), 'number', limits);
    const outside = !reading.ok && reading.problem.kind === 'outside';
    if (outside) return { ok: false, message: pitchWords.field.outside(text.trim(), limits, unit) };
    if (!reading.ok || (whole && !Number.isInteger(reading.value)))
      return { ok: false, message: pitchWords.field.unreadable(text.trim(), pitchWords.field[accepted]) };
    return reading;
  };
}

/** `440`, `440 Hz`, `1.2 kHz`. */
export const hertzReader = (limits: Limits): ReadText =>
  numberReader(limits, 'hertz', '\u00A0Hz', (text) =>
    text.replace(/\s*k\s*(hz)?$/i, 'e3').replace(/\s*hz$/i, ''),
  );

/** `12`, `+12 c`, `−12 cents`. */
export const centsReader = (limits: Limits): ReadText =>
  numberReader(limits, 'cents', '\u00A0cents', (text) =>
    text.replace(/^\+/, '').replace(/\s*(c|ct|cents?)$/i, ''),
  );

export const wholeReader = (limits: Limits): ReadText =>
  numberReader(limits, 'whole', '', (text) => text, true);

/** A number as a box holds it: what is printed reads back as the same value. */
export const numberField = (value: number, figures: number): string =>
  boxText(formatNumber(value, figures).replaceAll('\u202F', ''));
export const hertzField = (value: number | null): string =>
  value === null ? '' : `${numberField(value, 7)}\u00A0Hz`;
export const centsField = (value: number | null): string =>
  value === null ? '' : pitchWords.field.centsPrinted(value);
export const wholeField = (value: number | null): string => (value === null ? '' : String(value));
