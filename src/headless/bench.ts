/**
 * `npm run bench`: what this build is worth in numbers, all measured in one run. With `--json` the last line is one
 * JSON object:
 *
 * - `aliasDb`: source → case → largest line below 16 kHz that is no harmonic, dB re fundamental. Sources: `engine`
 *   (this one), `tonePulse` (Tone's PulseOscillator), `nativeSeries` (the browser's oscillator with the exact Fourier
 *   series); null where no browser was found. Cases: frequency and share of the period that is high; `glide` (engine
 *   alone): 1234.5 to 1600 Hz in 1.2 s, 66.7 %, against the same at four times the rate.
 * - `periodErrorCents`: largest error of a heard pitch against the model.
 * - `renderTimesRealtime`: seconds of sound made in one second, whole chain, two voices near 300 Hz, 37 % ripple,
 *   noise on. `renderTimesRealtime5kHz`: the same near 5 kHz.
 * - `renderVsOde`: how many times longer the solver odex takes for the same take (one system of five equations,
 *   tolerance 1e-12 as the engine's edges are exact, jack read off at each sample, no band limiting) than the engine.
 * - `pitchCombinationsPerSecond`: two-voice combinations of RA, fixed part of RB, trimmer and capacitor (E12 resistors
 *   and capacitors, nine trimmers) accounted for in a second of the search, draws of the best 500 included;
 *   `pitchCombinationsVsPlainLoop`: how many times as many as a plain nested loop over the same drawer manages.
 * - `pitchSearchMs`: that search from beginning to end; `pitchSearchVsPlainLoop`: how many times longer the plain loop
 *   would take for the same drawer, from the pairs it did in its time.
 * - `batchKitsPerSecond`: two-voice kits drawn in a second, ends, turn and untuned pitch of each;
 *   `batchKitsVsPlainLoop`: how many times as many as with the circuit's own astable made anew for each kit.
 * - `roomBatchKitsPerSecond`: kits drawn and solved for a room in a second, two voices on one trimmer.
 * - `dayReplayTimesRealtime`: seconds of a recorded day (24 h, rows 1 s apart) replayed through both gates in a second.
 * - `windowSolveMs`: milliseconds for the window of a shared trimmer and its best place; `windowSweepRatio`: how many
 *   times longer a plain sweep of 10 000 places takes to find the edges alone.
 * - `faultTopThree`, `faultCandidatesLeft`: 2000 boards with a fault drawn by prior, parts within tolerance, meter
 *   ± 1 %, the ear and at most four readings: share whose fault is among the first three; candidates left, mean.
 * - `firstViewKilobytesGzip`, `audioKilobytesGzip`: gzip, kB of 1000 bytes: HTML, CSS and scripts before the first
 *   text (fonts apart); what sound adds when first wanted. `singleFileKilobytes`: the one-file build, not packed.
 * - `boardAreaRatio`, `boardLinksRatio`: strips × holes and links of the board plan of the design a new document starts
 *   from, on a board cut to fit, against a plain layout of the same connections (one strip for each net from end to end,
 *   one column for each part, a link for each further chip pin; `src/kit/board-plain.ts`). `boardAreaRatioMean`,
 *   `boardLinksRatioMean`: means over the ready designs.
 */
import { ALIAS_SECONDS, aliasDb, enginePulse, glideAliasDb, RATE } from './bench-alias.ts';
import { boardRatios } from './bench-board.ts';
import { openBrowser } from './bench-browser.ts';
import { faultWorth } from './bench-kit.ts';
import type { Maker } from './bench-page.ts';
import { pitchSpeeds } from './bench-pitch.ts';
import { dayReplayTimesRealtime, roomBatchKitsPerSecond, windowSolve } from './bench-room.ts';
import { sizes } from './bench-size.ts';
import { periodErrorCents, renderVsOde, timesRealtime } from './bench-speed.ts';
import type { Surroundings } from './take.ts';

const CASES = [1234.5, 5000].flatMap((hertz) =>
  [2 / 3, 3 / 4].map((duty) => ({
    name: `${hertz} Hz, ${(100 * duty).toFixed(1)} %`,
    hertz,
    duty,
  })),
);

const OTHERS = { tonePulse: 'tonePulse', nativeSeries: 'nativePulse' } as const satisfies Record<
  string,
  Maker
>;

type Lines = Readonly<Record<string, number>>;

async function aliases(say: (text: string) => void): Promise<Readonly<Record<string, Lines | null>>> {
  const engine: Record<string, number> = {};
  for (const { name, hertz, duty } of CASES) engine[name] = aliasDb(enginePulse(hertz, duty), hertz);
  engine['glide'] = glideAliasDb(1234.5, 1600, 2 / 3);
  const found: Record<string, Lines | null> = { engine, tonePulse: null, nativeSeries: null };
  const browser = await openBrowser(say);
  if (browser === null) return found;
  try {
    for (const [source, maker] of Object.entries(OTHERS)) {
      const lines: Record<string, number> = {};
      for (const { name, hertz, duty } of CASES) {
        const wish = { hertz, duty, seconds: ALIAS_SECONDS, sampleRate: RATE };
        lines[name] = aliasDb(await browser.pulse(maker, wish), hertz);
      }
      found[source] = lines;
    }
  } finally {
    await browser.close();
  }
  return found;
}

function windowTimes() {
  const { milliseconds, sweepRatio } = windowSolve();
  return { windowSolveMs: milliseconds, windowSweepRatio: sweepRatio };
}

/** Runs everything; gives the exit code. */
export async function main(args: readonly string[], { say, complain }: Surroundings): Promise<number> {
  const stray = args.find((arg) => arg !== '--json');
  if (stray !== undefined) {
    complain(`“${stray}” is no option; there is --json.\n`);
    return 2;
  }
  // Speed first, before anything else has warmed or worn the machine.
  const results = {
    renderTimesRealtime: timesRealtime(301, 299),
    renderTimesRealtime5kHz: timesRealtime(5003, 4801),
    renderVsOde: renderVsOde(),
    ...pitchSpeeds(),
    periodErrorCents: periodErrorCents(),
    roomBatchKitsPerSecond: roomBatchKitsPerSecond(),
    dayReplayTimesRealtime: dayReplayTimesRealtime(),
    ...windowTimes(),
    ...faultWorth(),
    aliasDb: await aliases(say),
    ...boardRatios(),
    ...(await sizes()),
  };
  for (const [key, value] of Object.entries(results)) say(`${key}: ${JSON.stringify(value)}\n`);
  if (args.length > 0) say(`${JSON.stringify(results)}\n`);
  return 0;
}
