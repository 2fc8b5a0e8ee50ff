/** Counted things and lengths of time, as the German words of Kit name them. */
import { formatNumber } from '../quantity/format.ts';

export const count = (n: number, one: string, many: string): string =>
  `${formatNumber(n, 6)} ${n === 1 ? one : many}`;

export const kitsText = (n: number): string => count(n, 'Bausatz', 'Bausätze');

export const minutesText = (minutes: number): string => count(Math.round(minutes), 'Minute', 'Minuten');

export const timeText = (minutes: number): string =>
  minutes < 90 ? minutesText(minutes) : `${formatNumber(minutes / 60, 2)} Stunden`;
