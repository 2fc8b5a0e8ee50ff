/** Amounts filled into sentences, in either language: `{name}` in a text is replaced by a number with its unit. */
import { formatFixed, formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';

export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];

export type AmountKind =
  | 'lux'
  | 'ohms'
  | 'farads'
  | 'volts'
  | 'hertz'
  | 'seconds'
  | 'share'
  | 'ratio'
  | 'number'
  | 'count'
  | 'cents'
  | 'decibels'
  /** A note by its frequency. */
  | 'note';

/** A value worked out by the model; null = there is none (no light does it, it never runs). */
export interface Amount {
  readonly kind: AmountKind;
  readonly value: number | null;
  /** With kind `note`: its name in English, sharps, with the octave's number. */
  readonly name?: string;
}

const LOCALE: Readonly<Record<Language, string>> = { en: 'en-GB', de: 'de-DE' };
const NONE: Readonly<Record<Language, string>> = { en: 'none', de: 'keine' };

const GERMAN_NOTES: Readonly<Record<string, string>> = {
  'C♯': 'Cis',
  'D♯': 'Dis',
  'F♯': 'Fis',
  'G♯': 'Gis',
  'A♯': 'B',
  B: 'H',
};

/** A note's name as it is used in a language: German has H where English has B, and B where English has B flat. */
export function noteIn(language: Language, english: string): string {
  if (language === 'en') return english;
  const [, letter = '', octave = ''] = /^(.♯?)(-?\d+)$/.exec(english) ?? [];
  return letter === '' ? english : `${GERMAN_NOTES[letter] ?? letter}${octave}`;
}

/** An amount as read: `1.62`, `3.8 kΩ`, `98 lx`. */
export function amountIn(language: Language, { kind, value, name }: Amount): string {
  const locale = LOCALE[language];
  if (value === null) return NONE[language];
  switch (kind) {
    case 'lux':
      return `${formatNumber(value, value < 10 ? 2 : 3, locale)}\u00A0lx`;
    case 'ohms':
      return formatQuantity(value, 'Ω', 3, locale);
    case 'farads':
      return formatQuantity(value, 'F', 3, locale);
    case 'volts':
      return value < 0.1 && value > 0
        ? formatQuantity(value, 'V', 2, locale)
        : formatFixed(value, 2, 'V', locale);
    case 'hertz':
      return formatFixed(value, value < 100 ? 1 : 0, 'Hz', locale);
    case 'seconds':
      return formatQuantity(value, 's', 3, locale);
    case 'share':
      return formatShare(value, 0, locale);
    case 'ratio':
      return formatFixed(value, 2, '', locale);
    case 'number':
      return formatNumber(value, 3, locale);
    case 'count':
      return formatFixed(value, 0, '', locale);
    case 'cents':
      return `${formatFixed(Math.abs(value), 0, '', locale)}\u00A0${language === 'de' ? 'Cent' : 'cents'}`;
    case 'decibels':
      return formatFixed(value, 1, 'dB', locale).replace('-', '−');
    case 'note':
      return noteIn(language, name ?? '');
  }
}

const PLACE = /\{([a-z][a-z0-9-]*)\}/g;

/** The names a text wants filled in. */
export function placesIn(text: string): readonly string[] {
  return [...text.matchAll(PLACE)].map((match) => match[1] ?? '');
}

/** A text with its amounts, or words; a name that nothing is given for stays visible in its braces. */
export function filled(
  language: Language,
  text: string,
  amounts: Readonly<Record<string, Amount | string>>,
): string {
  return text.replaceAll(PLACE, (whole, name: string) => {
    const amount = Object.hasOwn(amounts, name) ? amounts[name] : undefined;
    if (amount === undefined) return whole;
    return typeof amount === 'string' ? amount : amountIn(language, amount);
  });
}
