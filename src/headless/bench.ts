/**
 * `npm run bench`: what this build is worth in numbers, all measured in one run. With `--json` the last line is one
 * JSON object; `--against` sets each number beside that of the baseline (`tests/bench-baseline.json`), `--save` makes
 * this run the baseline, in the README's table too. Computing is timed by the processor time it takes; a ratio is the median of runs in which both
 * take turns. What needs a browser is left out where there is none.
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
 * - `firstViewMs`, `interactiveMs`: from the call of the page until something is painted, and until a press of a
 *   trimmer's +, as soon as there is one, shows; processor held to a quarter, line to 1.6 Mbit/s and 150 ms, files packed
 *   with gzip, nothing kept; the quickest of seven visits.
 * - `framesPerSecond`, `longestTaskMs`, `dragMsPerFrame`: while voice A's trimmer is dragged at sixty moves a second with
 *   the sound on and the traces running, processor held to a quarter: pictures shown; the page's longest task, and all its
 *   work for each picture, both in processor time; the smoothest of five drags. `framesPerSecondAtRest`: the same with nobody touching it.
 * - `workletLoad`: share of a block's time (128 samples) that the audio thread's module takes, both voices chattering in
 *   the light of a lamp that ripples by 37 %; `workletLoadOneInHundred`: exceeded by one block in a hundred. `underruns`: late
 *   blocks in a minute of the same, as the browser counts them.
 * - `controlToSoundMs`: from a key that takes another capacitor to the first sample that differs, on the audio clock, so
 *   that the device's own latency is not in it.
 * - `cameraToGateMs`: from the page having a darker picture to the voice's last edge; `cameraToGateModelMs`: what of that
 *   the light's way from picture to picture and the cell's own lag take in the model.
 * - `boardAreaRatio`, `boardLinksRatio`: strips × holes and links of the board plan of the design a new document starts
 *   from, on a board cut to fit, against a plain layout of the same connections (one strip for each net from end to end,
 *   one column for each part, a link for each further chip pin; `src/kit/board/plain.ts`). `boardAreaRatioMean`,
 *   `boardLinksRatioMean`: means over the ready designs.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { type Baseline, comparison, readmeWith, thisMachine } from './bench-against.ts';
import { ALIAS_SECONDS, aliasDb, enginePulse, glideAliasDb, RATE } from './bench-alias.ts';
import { boardRatios } from './bench-board.ts';
import { openPulseMaker } from './bench-browser.ts';
import { faultWorth } from './bench-kit.ts';
import { cameraToGate, controlToSoundMs, load } from './bench-live.ts';
import type { Maker } from './bench-page.ts';
import { pitchSpeeds } from './bench-pitch.ts';
import { dayReplayTimesRealtime, roomBatchKitsPerSecond, windowSolve } from './bench-room.ts';
import { type Builds, makeBuilds, sizesOf } from './bench-size.ts';
import { periodErrorCents, renderVsOde, timesRealtime } from './bench-speed.ts';
import { drag, firstView } from './bench-view.ts';
import { type Chromium, findChromium, startChromium } from './chromium.ts';
import { serveFolder } from './serve-folder.ts';
import type { Surroundings } from './take.ts';

const BASELINE = 'tests/bench-baseline.json';
const README = 'README.md';
const OPTIONS = ['--json', '--against', '--save'];

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

/** What needs nothing but this process. */
function computed() {
  const engine: Record<string, number> = {};
  for (const { name, hertz, duty } of CASES) engine[name] = aliasDb(enginePulse(hertz, duty), hertz);
  engine['glide'] = glideAliasDb(1234.5, 1600, 2 / 3);
  const { milliseconds, sweepRatio } = windowSolve();
  return {
    renderTimesRealtime: timesRealtime(301, 299),
    renderTimesRealtime5kHz: timesRealtime(5003, 4801),
    renderVsOde: renderVsOde(),
    ...pitchSpeeds(),
    periodErrorCents: periodErrorCents(),
    roomBatchKitsPerSecond: roomBatchKitsPerSecond(),
    dayReplayTimesRealtime: dayReplayTimesRealtime(),
    windowSolveMs: milliseconds,
    windowSweepRatio: sweepRatio,
    ...faultWorth(),
    aliasDb: { engine, tonePulse: null, nativeSeries: null } as Readonly<Record<string, Lines | null>>,
    ...boardRatios(),
  };
}

async function otherAliases(browser: Browser): Promise<Readonly<Record<string, Lines>>> {
  const maker = await openPulseMaker(browser);
  const found: Record<string, Lines> = {};
  try {
    for (const [source, name] of Object.entries(OTHERS)) {
      const lines: Record<string, number> = {};
      for (const { name: title, hertz, duty } of CASES) {
        const wish = { hertz, duty, seconds: ALIAS_SECONDS, sampleRate: RATE };
        lines[title] = aliasDb(await maker.pulse(name, wish), hertz);
      }
      found[source] = lines;
    }
  } finally {
    await maker.close();
  }
  return found;
}

/** What the built page does in a browser. */
async function driven(browser: Browser, found: Chromium, { siteFolder }: Builds) {
  const { address, close } = await serveFolder(siteFolder);
  try {
    return {
      ...(await firstView(browser, address)),
      ...(await drag(browser, address)),
      ...(await load(browser, address)),
      controlToSoundMs: await controlToSoundMs(browser, address),
      ...(await cameraToGate(found, address)),
    };
  } finally {
    await close();
  }
}

/** Null, with a sentence said, when there is no browser on this machine. */
async function chromiumHere(say: (text: string) => void): Promise<Chromium | null> {
  return findChromium().catch((reason: Error) => {
    say(`${reason.message} What a browser measures is left out.\n`);
    return null;
  });
}

async function measured(say: (text: string) => void) {
  // Speed first, before anything else has warmed or worn the machine.
  const plain = computed();
  const builds = await makeBuilds();
  let browser: Browser | null = null;
  try {
    const found = await chromiumHere(say);
    const sizes = sizesOf(builds);
    if (found === null) return { machine: thisMachine(null), results: { ...plain, ...sizes } };
    browser = await startChromium(found);
    const page = await driven(browser, found, builds);
    const aliasesOfAll = { ...plain.aliasDb, ...(await otherAliases(browser)) };
    return {
      machine: thisMachine(browser.version()),
      results: { ...plain, ...sizes, ...page, aliasDb: aliasesOfAll },
    };
  } finally {
    await browser?.close();
    builds.remove();
  }
}

/** Runs everything; gives the exit code. */
export async function main(args: readonly string[], { say, complain }: Surroundings): Promise<number> {
  const stray = args.find((arg) => !OPTIONS.includes(arg));
  if (stray !== undefined) {
    complain(`“${stray}” is no option; there are ${OPTIONS.join(', ')}.\n`);
    return 2;
  }
  const { machine, results } = await measured(say);
  say(`${machine}\n`);
  for (const [key, value] of Object.entries(results)) say(`${key}: ${JSON.stringify(value)}\n`);
  if (args.includes('--against')) {
    const before = JSON.parse(readFileSync(BASELINE, 'utf8')) as Baseline;
    say(`\nAgainst ${before.machine}:\n${comparison(before.results, results).join('\n')}\n`);
  }
  if (args.includes('--save')) {
    writeFileSync(BASELINE, `${JSON.stringify({ machine, results }, null, 2)}\n`);
    writeFileSync(README, readmeWith(readFileSync(README, 'utf8'), { machine, results }));
  }
  if (args.includes('--json')) say(`${JSON.stringify(results)}\n`);
  return 0;
}
