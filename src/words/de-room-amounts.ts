/** Amounts as the answers of the place Room name them, in German. */
import { formatFixed, formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';

const SPACE = '\u00A0';

export const volts = (value: number): string => formatFixed(value, 2, 'V');
export const ohms = (value: number | null): string =>
  value === null ? 'keiner' : formatQuantity(value, 'Ω', 3);

export const times = (value: number): string => {
  if (value > 99) return `über 99${SPACE}×`;
  // Near 1 the second decimal tells right from wrong.
  const decimals = value < 1.1 ? 2 : value < 10 ? 1 : 0;
  return `${formatFixed(value, decimals)}${SPACE}×`;
};

export const percent = (value: number): string => {
  // A share that is not whole never reads as if it were.
  if (value > 0.995 && value < 1) return `über 99${SPACE}%`;
  if (value > 0 && value < 0.005) return `unter 1${SPACE}%`;
  return formatShare(value);
};

export const milliseconds = (seconds: number): string =>
  seconds >= 1 ? `${formatNumber(seconds, 3)}${SPACE}s` : `${formatNumber(seconds * 1000, 2)}${SPACE}ms`;

export const chatter = (hertz: number): string =>
  hertz < 1 / 3600
    ? 'keins'
    : hertz < 0.1
      ? `${formatNumber(hertz * 3600, 2)}-mal in der Stunde`
      : `${formatNumber(hertz, 2)}-mal in der Sekunde`;
