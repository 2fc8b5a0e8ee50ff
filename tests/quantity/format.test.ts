/** Numbers printed for people. The space before a unit does not break. */
import { expect, test } from 'vitest';
import {
  formatFixed,
  formatNumber,
  formatQuantity,
  formatShare,
  formatSigned,
} from '../../src/quantity/format.ts';

const plain = (text: string) => text.replaceAll('\u00A0', '_');

test.each<[number, string, string]>([
  [4700, 'Ω', '4.7_kΩ'],
  [4.7, 'Ω', '4.7_Ω'],
  [999, 'Ω', '999_Ω'],
  [1000, 'Ω', '1_kΩ'],
  [999.99, 'Ω', '1_kΩ'],
  [999_990, 'Ω', '1_MΩ'],
  [82e-9, 'F', '82_nF'],
  [1e-6, 'F', '1_µF'],
  [100e-12, 'F', '100_pF'],
  [1e-15, 'F', '0.001_pF'],
  [0, 'Ω', '0_Ω'],
  [-0.0123, 'V', '-12.3_mV'],
])('%d with %s is %s', (value, unit, expected) => {
  expect(plain(formatQuantity(value, unit))).toBe(expected);
});

test('figures are as many as asked, without zeros at the end', () => {
  expect(plain(formatQuantity(4713.4, 'Ω', 3))).toBe('4.71_kΩ');
  expect(formatNumber(12_345.6, 5)).toBe('12\u202F346');
  expect(formatNumber(1234.5, 5)).toBe('1234.5');
});

test('the reader’s own decimal mark is used', () => {
  expect(plain(formatQuantity(4700, 'Ω', 4, 'de-DE'))).toBe('4,7_kΩ');
  expect(plain(formatFixed(1.5, 2, 'V', 'de-DE'))).toBe('1,50_V');
});

test('fixed decimals, shares and signs', () => {
  expect(plain(formatFixed(1.536, 2, 'V'))).toBe('1.54_V');
  expect(plain(formatShare(0.47))).toBe('47_%');
  expect(plain(formatShare(0.1234, 1))).toBe('12.3_%');
  expect(formatSigned(6.4)).toBe('+6');
  expect(formatSigned(-2.4)).toBe('−2');
  expect(formatSigned(-0.2)).toBe('0');
});
