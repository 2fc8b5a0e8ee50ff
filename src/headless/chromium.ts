/**
 * Finds a Chromium to test and measure with, and starts it: the one named by the CHROMIUM variable, one installed on this machine, or the
 * one that comes from npm (Linux x64).
 */
import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readFile, rename, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { promisify } from 'node:util';
import { type Browser, chromium } from 'playwright-core';

const run = promisify(execFile);

/** In the C locale some Chromiums tell pages a language that is none ("en-US@posix"), so they are told one. */
const english = { LANG: 'en_GB.UTF-8', LC_ALL: 'en_GB.UTF-8', LANGUAGE: 'en_GB' };

export interface Chromium {
  readonly path: string;
  /** Variables the browser needs on top of this process's own. */
  readonly environment: Readonly<Record<string, string>>;
}

const QUIET = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A browser without a window, which asks nobody for anything by itself. Close it when done. */
export function startChromium(
  { path: executablePath, environment }: Chromium,
  args: readonly string[] = [],
): Promise<Browser> {
  return chromium.launch({
    executablePath,
    args: [...QUIET, ...args],
    env: { ...process.env, ...environment },
  });
}

/** What plays the clip as a camera; `allowed`: pages have it without asking, else the answer is no. */
export const cameraFlags = (clip: string | undefined, allowed: boolean): readonly string[] => [
  ...(clip === undefined
    ? []
    : ['--use-fake-device-for-media-stream', `--use-file-for-fake-video-capture=${clip}`]),
  `--use-fake-ui-for-media-stream${allowed ? '' : '=deny'}`,
];

/** What the search asks of the machine; a test may describe another one. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly arch: string;
  readonly variables: Readonly<Record<string, string | undefined>>;
  readonly exists: (file: string) => boolean;
  /** Whether the program starts. Ubuntu's `chromium-browser`, for one, may be a script that only asks for a snap. */
  readonly starts: (file: string) => Promise<boolean>;
}

const thisMachine: Machine = {
  platform: process.platform,
  arch: process.arch,
  variables: process.env,
  exists: existsSync,
  starts: async (file) => {
    // On Windows `--version` opens a window instead of answering.
    if (process.platform === 'win32') return true;
    return run(file, ['--version'], { timeout: 20_000 }).then(
      () => true,
      () => false,
    );
  },
};

/** Throws one sentence naming the CHROMIUM variable when there is no browser, or when it names a missing file. */
export async function findChromium(machine: Machine = thisMachine): Promise<Chromium> {
  const { CHROMIUM: named } = machine.variables;
  if (named !== undefined && named !== '') {
    if (machine.exists(named)) return { path: named, environment: english };
    throw new Error(`The CHROMIUM variable names ${named}, but there is no such file.`);
  }
  for (const candidate of usualPlaces(machine)) {
    if (machine.exists(candidate) && (await machine.starts(candidate)))
      return { path: candidate, environment: english };
  }
  if (machine.platform === 'linux' && machine.arch === 'x64') {
    const packed = packedChromium();
    if (packed !== null) return unpacked(packed, machine);
  }
  throw new Error(
    'No browser to test with: install Chrome, Chromium or Edge, or set the CHROMIUM variable to the full path of one.',
  );
}

function usualPlaces({ platform, variables }: Machine): readonly string[] {
  if (platform === 'darwin') {
    const programs = [
      'Google Chrome.app/Contents/MacOS/Google Chrome',
      'Chromium.app/Contents/MacOS/Chromium',
      'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    ];
    const { HOME: home = '' } = variables;
    return ['', home].flatMap((folder) => programs.map((program) => `${folder}/Applications/${program}`));
  }
  if (platform === 'win32') {
    const programs = [
      'Google\\Chrome\\Application\\chrome.exe',
      'Chromium\\Application\\chrome.exe',
      'Microsoft\\Edge\\Application\\msedge.exe',
    ];
    return ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA']
      .flatMap((name) => variables[name] ?? [])
      .flatMap((folder) => programs.map((program) => path.win32.join(folder, program)));
  }
  return [
    '/usr/bin/chromium',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/opt/google/chrome/chrome',
    '/usr/bin/microsoft-edge',
    '/usr/bin/chromium-browser',
    '/snap/bin/chromium',
  ];
}

/** The npm package's entry, or null when it was left out of the installation. */
function packedChromium(): string | null {
  try {
    return createRequire(import.meta.url).resolve('@sparticuz/chromium');
  } catch {
    return null;
  }
}

/**
 * Unpacks the npm package's browser once per version, about 200 MB under node_modules/.cache.
 *
 * The package takes any file called `chromium` in the temporary folder for a finished one. So it gets an empty
 * folder of its own, which takes its final name only when complete; of two runs at once, the second to finish
 * keeps what the first put there. A child process does it, because the package changes its process's variables.
 */
async function unpacked(entry: string, { variables, exists }: Machine): Promise<Chromium> {
  const about: unknown = JSON.parse(await readFile(path.join(entry, '../../../package.json'), 'utf8'));
  const version = (about as { version: string }).version;
  const cache = path.resolve('node_modules/.cache');
  const home = path.join(cache, `chromium-${version}`);
  if (!existsSync(home)) {
    await mkdir(cache, { recursive: true });
    const draft = await mkdtemp(path.join(cache, 'chromium-unpacking-'));
    try {
      await run(process.execPath, ['-e', `require(${JSON.stringify(entry)}).executablePath()`], {
        env: { ...process.env, TMPDIR: draft, AWS_LAMBDA_JS_RUNTIME: 'nodejs20.x' },
      });
      await rename(draft, home);
    } catch (reason) {
      await rm(draft, { recursive: true, force: true });
      if (!existsSync(home)) throw reason;
    }
  }
  const { LD_LIBRARY_PATH: others } = variables;
  const libraries = path.join(home, 'al2023/lib');
  const environment = {
    ...english,
    LD_LIBRARY_PATH: others === undefined ? libraries : `${libraries}:${others}`,
  };
  // Without a font setting of its own a machine would show no text at all.
  const fonts = exists('/etc/fonts/fonts.conf') ? {} : { FONTCONFIG_PATH: path.join(home, 'fonts') };
  return { path: path.join(home, 'chromium'), environment: { ...environment, ...fonts } };
}
