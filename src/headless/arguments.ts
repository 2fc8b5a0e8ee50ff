/** The words after `npm run take --`, read into a wish or one sentence. */
import { LIMITS } from '../design/limits.ts';
import type { Limits } from '../quantity/parse.ts';
import type { Hertz, Seconds, Volts } from '../quantity/units.ts';
import { takeWords } from '../words/take.ts';

export interface TakeWish {
  readonly design: string;
  readonly light: string;
  readonly out: string;
  readonly report: string;
  readonly seconds: Seconds;
  readonly rate: Hertz;
  /** Null = as the design says. */
  readonly noiseVolts: Volts | null;
}

export type ReadArguments =
  | { readonly kind: 'take'; readonly wish: TakeWish }
  | { readonly kind: 'help' }
  | { readonly kind: 'wrong'; readonly sentence: string };

const NEEDED = ['--design', '--light', '--seconds', '--out', '--report'] as const;
const OPTIONS = [...NEEDED, '--rate', '--noise'] as const;
type Option = (typeof OPTIONS)[number];

const MOST_SECONDS: Seconds = 3600;
const RATES: Limits = { min: 8000, max: 192_000 };
const USUAL_RATE: Hertz = 48_000;

/** What is wrong, as a sentence, on its way out of a reading. */
class Wrong extends Error {}

/** Reads the arguments; never throws. */
export function readArguments(args: readonly string[]): ReadArguments {
  if (args.some((arg) => arg === '--help' || arg === '-h')) return { kind: 'help' };
  try {
    return { kind: 'take', wish: wishFrom(givenIn(args)) };
  } catch (problem) {
    if (problem instanceof Wrong) return { kind: 'wrong', sentence: problem.message };
    throw problem;
  }
}

/** `--name value` or `--name=value`, each at most once. */
function givenIn(args: readonly string[]): ReadonlyMap<Option, string> {
  const given = new Map<Option, string>();
  for (let i = 0; i < args.length; i++) {
    const arg = args[i]!;
    if (!arg.startsWith('--')) throw new Wrong(takeWords.stray(arg));
    const equals = arg.indexOf('=');
    const name = equals < 0 ? arg : arg.slice(0, equals);
    const option = OPTIONS.find((known) => known === name);
    if (option === undefined) throw new Wrong(takeWords.unknownOption(name, OPTIONS));
    if (given.has(option)) throw new Wrong(takeWords.twice(name));
    const value = equals < 0 ? args[++i] : arg.slice(equals + 1);
    if (value === undefined || value === '' || value.startsWith('--'))
      throw new Wrong(takeWords.noValue(name));
    given.set(option, value);
  }
  const missing = NEEDED.filter((name) => !given.has(name));
  if (missing.length > 0) throw new Wrong(takeWords.missing(missing));
  return given;
}

function wishFrom(given: ReadonlyMap<Option, string>): TakeWish {
  const seconds = numberFrom('--seconds', given.get('--seconds')!);
  if (!(seconds > 0 && seconds <= MOST_SECONDS))
    throw new Wrong(takeWords.secondsOutside(given.get('--seconds')!, MOST_SECONDS));
  const rate = limited('--rate', given, RATES, 'samples a second') ?? USUAL_RATE;
  if (!Number.isInteger(rate)) throw new Wrong(takeWords.notWhole('--rate', given.get('--rate')!));
  if (Math.round(seconds * rate) < 1) throw new Wrong(takeWords.tooShort(given.get('--seconds')!, rate));
  return {
    design: given.get('--design')!,
    light: given.get('--light')!,
    out: given.get('--out')!,
    report: given.get('--report')!,
    seconds,
    rate,
    noiseVolts: limited('--noise', given, LIMITS.noiseVolts, 'V'),
  };
}

function limited(
  name: Option,
  given: ReadonlyMap<Option, string>,
  limits: Limits,
  unit: string,
): number | null {
  const read = given.get(name);
  if (read === undefined) return null;
  const value = numberFrom(name, read);
  if (!(value >= limits.min && value <= limits.max))
    throw new Wrong(takeWords.outside(name, read, limits, unit));
  return value;
}

function numberFrom(name: Option, read: string): number {
  const value = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(read) ? Number(read) : Number.NaN;
  if (!Number.isFinite(value)) throw new Wrong(takeWords.notNumber(name, read));
  return value;
}
