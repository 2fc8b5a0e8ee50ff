/**
 * `npm run take`: a design played in recorded light, to a WAV file and a report. Wrong input ends with one sentence
 * on the error output, exit code 2, and no file.
 */
import { readFileSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import { decodeText } from '../design/decode.ts';
import type { Design } from '../design/design.ts';
import type { LightProgram } from '../light/program.ts';
import { wavBytes, wavHeader } from '../sound/wav.ts';
import { takeWords } from '../words/take.ts';
import { readArguments, type TakeWish } from './arguments.ts';
import { complaintSentence } from './complaint.ts';
import { codeOf, Drafts, WriteTrouble } from './files.ts';
import { readRows } from './light-rows.ts';
import { reportText, take } from './report.ts';

const WRONG_INPUT = 2;
/** About two hours of light at a thousand rows a second. */
const MOST_LIGHT_BYTES = 256 * 1024 ** 2;

/** Where the words go, and where relative file names begin. */
export interface Surroundings {
  readonly folder: string;
  readonly say: (text: string) => void;
  readonly complain: (text: string) => void;
}

/** Runs a take. Gives the exit code: 0, or 2 for wrong input. */
export function main(args: readonly string[], around: Surroundings): number {
  const read = readArguments(args);
  if (read.kind === 'help') {
    around.say(takeWords.usage);
    return 0;
  }
  const sentence = read.kind === 'wrong' ? read.sentence : perform(read.wish, around.folder);
  if (sentence === null) return 0;
  around.complain(`${sentence}\n`);
  return WRONG_INPUT;
}

/** Null when both files are written; else a sentence, and none is. */
function perform(wish: TakeWish, folder: string): string | null {
  const place = (file: string) => path.resolve(folder, file);
  const clash = sameFile({
    '--design': place(wish.design),
    '--light': place(wish.light),
    '--out': place(wish.out),
    '--report': place(wish.report),
  });
  if (clash !== null) return clash;
  const design = designIn(wish.design, place(wish.design));
  if (typeof design === 'string') return design;
  const light = lightIn(wish.light, place(wish.light));
  if (typeof light === 'string') return light;
  const { noiseVolts } = wish;
  const quiet =
    noiseVolts === null ? design : { ...design, noise: { ...design.noise, voltsRms: noiseVolts } };
  return written(wish, quiet, light, place);
}

function written(
  wish: TakeWish,
  design: Design,
  light: LightProgram,
  place: (file: string) => string,
): string | null {
  const drafts = new Drafts();
  const dropAndGo = () => {
    drafts.drop();
    process.exit(130);
  };
  process.once('SIGINT', dropAndGo);
  process.once('SIGTERM', dropAndGo);
  try {
    const toWav = drafts.begin(place(wish.out));
    const toReport = drafts.begin(place(wish.report));
    const samples = Math.round(wish.seconds * wish.rate);
    toWav(wavHeader(samples, wish.rate));
    const report = take(design, light, samples, wish.rate, (block) => toWav(wavBytes(block)));
    for (const piece of reportText(report)) toReport(piece);
    drafts.keep();
    return null;
  } catch (trouble) {
    if (!(trouble instanceof WriteTrouble)) throw trouble;
    const [name, file] =
      trouble.file === place(wish.out)
        ? (['--out', wish.out] as const)
        : (['--report', wish.report] as const);
    return takeWords.cannotWrite(name, file, why(trouble.code));
  } finally {
    drafts.drop();
    process.off('SIGINT', dropAndGo);
    process.off('SIGTERM', dropAndGo);
  }
}

function designIn(shown: string, file: string): Design | string {
  const text = textOf('--design', shown, file);
  if (typeof text === 'string') return text;
  const decoded = decodeText(text.text);
  if (decoded.ok) return decoded.design;
  return takeWords.design(shown, complaintSentence(decoded.complaints[0]!));
}

function lightIn(shown: string, file: string): LightProgram | string {
  const size = statSync(file, { throwIfNoEntry: false })?.size ?? 0;
  if (size > MOST_LIGHT_BYTES) return takeWords.light(shown, takeWords.tooLarge(MOST_LIGHT_BYTES));
  const text = textOf('--light', shown, file);
  if (typeof text === 'string') return text;
  const rows = readRows(text.text);
  return rows.ok ? rows.program : takeWords.light(shown, rows.sentence);
}

/** A file's text, or the sentence that says why there is none. */
function textOf(name: string, shown: string, file: string): { readonly text: string } | string {
  try {
    return { text: readFileSync(file, 'utf8') };
  } catch (cause) {
    return takeWords.cannotRead(name, shown, why(codeOf(cause)));
  }
}

function why(code: string): string {
  return takeWords.why[code] ?? takeWords.otherwise(code);
}

/** A sentence when an output would take the place of another file of this take. */
function sameFile(files: Readonly<Record<string, string>>): string | null {
  const real = Object.entries(files).map(([name, file]) => [name, realOf(file)] as const);
  for (const [i, [name, file]] of real.entries())
    for (const [other, otherFile] of real.slice(i + 1))
      if (file === otherFile) return takeWords.sameFile(name, other);
  return null;
}

function realOf(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    return file;
  }
}
