/** Prints numbers for people: SI prefixes, significant figures, the reader's own decimal mark. */

const PREFIXES: readonly (readonly [number, string])[] = [
  [1e9, 'G'],
  [1e6, 'M'],
  [1e3, 'k'],
  [1, ''],
  [1e-3, 'm'],
  [1e-6, 'µ'],
  [1e-9, 'n'],
  [1e-12, 'p'],
];

let spokenLocale = 'en-GB';

/** The locale of every number printed from now on, a BCP 47 tag. */
export function setLocale(locale: string): void {
  spokenLocale = locale;
}

/** Between a number and its unit: a space that does not break. */
const SPACE = '\u00A0';
/** Between thousands: neither a comma nor a point, which mean different things in different countries (ISO 80000-1). */
const THIN_SPACE = '\u202F';

/** `4.7 kΩ`, `82 nF`. Up to `figures` significant figures, no trailing zeros. */
export function formatQuantity(value: number, unit: string, figures = 4, locale = spokenLocale): string {
  const size = Math.abs(Number(value.toPrecision(figures)));
  const [scale, prefix] =
    size === 0 ? [1, ''] : (PREFIXES.find(([s]) => size >= s * 0.9999999) ?? [1e-12, 'p']);
  return `${formatNumber(value / scale, figures, locale)}${SPACE}${prefix}${unit}`;
}

/** Significant figures, no prefix; thousands set apart from five figures on. */
export function formatNumber(value: number, figures: number, locale = spokenLocale): string {
  return formatter(locale, 'figures', figures)
    .formatToParts(value)
    .map(({ type, value: text }) => (type === 'group' ? THIN_SPACE : text))
    .join('');
}

/** A fixed number of decimals: `1.54 V`. */
export function formatFixed(value: number, decimals: number, unit = '', locale = spokenLocale): string {
  const text = formatter(locale, 'decimals', decimals).format(value);
  return unit ? `${text}${SPACE}${unit}` : text;
}

/** `47 %`, from a fraction. */
export function formatShare(value: number, decimals = 0, locale = spokenLocale): string {
  return formatFixed(value * 100, decimals, '%', locale);
}

/** A day as people write it: `21 June 2026`. */
export function formatDay(day: Date, locale = spokenLocale): string {
  return new Intl.DateTimeFormat(locale, { dateStyle: 'long' }).format(day);
}

/** Whole cents with a real sign: `+6`, `−2`, `0`. */
export function formatSigned(value: number, locale = spokenLocale): string {
  const whole = Math.round(value);
  const digits = formatFixed(Math.abs(whole), 0, '', locale);
  return whole > 0 ? `+${digits}` : whole < 0 ? `−${digits}` : '0';
}

const formatters = new Map<string, Intl.NumberFormat>();

/** Made once for each kind: making one costs far more than using it. */
function formatter(locale: string, kind: 'figures' | 'decimals', digits: number): Intl.NumberFormat {
  const key = `${locale} ${kind} ${digits}`;
  const known = formatters.get(key);
  if (known) return known;
  const made = new Intl.NumberFormat(
    locale,
    kind === 'figures'
      ? ({ maximumSignificantDigits: digits, useGrouping: 'min2' } as Intl.NumberFormatOptions)
      : {
          minimumFractionDigits: digits,
          maximumFractionDigits: digits,
          useGrouping: false,
          signDisplay: 'negative',
        },
  );
  formatters.set(key, made);
  return made;
}
