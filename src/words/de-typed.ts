/** Numbers for boxes that are typed into, with a German comma that reads back as the same number. */
import { formatNumber } from '../quantity/format.ts';

/** A comma with three figures behind it may part thousands elsewhere: a nought more tells that it does not. */
const AMBIGUOUS = /^(-\d{1,3},\d{3}|[1-9]\d{0,2},\d{3})$/;

/** `12,5`, `−3`, `13,4050`: up to `figures` significant figures. Thousands are not set apart. */
export const typedNumber = (value: number, figures: number): string =>
  formatNumber(value, figures).replaceAll('\u202F', '').replace(AMBIGUOUS, '$10').replace('-', '−');
