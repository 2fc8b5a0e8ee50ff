/** What a visitor has to fetch: both builds made, their files weighed. A kilobyte is 1000 bytes. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { build, type Rolldown } from 'vite';

export interface Sizes {
  /** HTML, style sheets and scripts before the first text; fonts apart. */
  readonly firstViewKilobytesGzip: number;
  /** What is fetched besides when sound is first wanted: scripts and the audio thread's module. */
  readonly audioKilobytesGzip: number;
  /** The one-file build as it lies on a disk. */
  readonly singleFileKilobytes: number;
}

type Output = Rolldown.RolldownOutput['output'];
type Part = Output[number];

/** Both builds in folders of their own, until they are removed. */
export interface Builds {
  readonly siteFolder: string;
  readonly site: Output;
  readonly singleFile: string;
  readonly remove: () => void;
}

export async function makeBuilds(): Promise<Builds> {
  const folder = mkdtempSync(path.resolve('node_modules/.cache/lampnote-weighed-'));
  const remove = () => rmSync(folder, { recursive: true, force: true });
  try {
    const siteFolder = path.join(folder, 'site');
    const site = await outputOf(siteFolder, 'production');
    await outputOf(path.join(folder, 'single'), 'single');
    return { siteFolder, site, singleFile: path.join(folder, 'single/index.html'), remove };
  } catch (reason) {
    remove();
    throw reason;
  }
}

export function sizesOf({ site, singleFile }: Builds): Sizes {
  const first = firstView(site);
  const audio = audioOf(site).filter((part) => !first.has(part));
  return {
    firstViewKilobytesGzip: kilobytes([...first], zipped),
    audioKilobytesGzip: kilobytes(audio, zipped),
    singleFileKilobytes: readFileSync(singleFile).length / 1000,
  };
}

async function outputOf(outDir: string, mode: string): Promise<Output> {
  const result = await build({ mode, logLevel: 'error', build: { outDir, emptyOutDir: true } });
  const [whole] = Array.isArray(result) ? result : [result];
  if (whole === undefined || !('output' in whole)) throw new Error('The build gave no files');
  return whole.output;
}

const zipped = (bytes: Uint8Array): number => gzipSync(bytes, { level: 9 }).length;

function kilobytes(parts: readonly Part[], weigh: (bytes: Uint8Array) => number): number {
  const bytes = parts.map((part) => Buffer.from(part.type === 'chunk' ? part.code : part.source));
  return bytes.reduce((sum, each) => sum + weigh(each), 0) / 1000;
}

/** A script and all that it imports at once. */
function withImports(output: Output, fileName: string, found = new Set<Part>()): Set<Part> {
  const part = output.find((each) => each.fileName === fileName);
  if (part === undefined || found.has(part)) return found;
  found.add(part);
  if (part.type === 'chunk') for (const name of part.imports) withImports(output, name, found);
  return found;
}

function firstView(output: Output): Set<Part> {
  const found = new Set<Part>();
  for (const part of output) {
    if (part.type === 'chunk' && part.isEntry) withImports(output, part.fileName, found);
    if (/\.(html|css)$/.test(part.fileName)) found.add(part);
  }
  return found;
}

/** The player's own script, what that imports, and the worklet. */
function audioOf(output: Output): readonly Part[] {
  const player = output.find(
    (part) => part.type === 'chunk' && part.moduleIds.some((id) => id.endsWith('/sound/player.device.ts')),
  );
  const worklet = output.find(({ fileName }) => fileName.includes('voice.worklet'));
  if (player === undefined || worklet === undefined)
    throw new Error('The build holds no player or no worklet');
  return [...withImports(output, player.fileName), worklet];
}
