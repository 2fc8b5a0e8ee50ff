/** Several files that appear all at once, complete, or not at all. */
import { closeSync, openSync, renameSync, rmSync, statSync, writeSync } from 'node:fs';

/** Writing failed: which file, and the system's code for why. */
export class WriteTrouble extends Error {
  readonly file: string;
  readonly code: string;

  constructor(file: string, cause: unknown) {
    super(`cannot write ${file}`, { cause });
    this.file = file;
    this.code = codeOf(cause);
  }
}

/** The system's code of a failure, such as ENOENT. */
export function codeOf(cause: unknown): string {
  const code = (cause as { code?: unknown } | null)?.code;
  return typeof code === 'string' ? code : String(cause);
}

export class Drafts {
  readonly #drafts: { readonly file: string; readonly draft: string; readonly handle: number }[] = [];

  /** Begins a file under another name beside its place. Throws WriteTrouble. */
  begin(file: string): (part: Uint8Array | string) => void {
    const draft = `${file}.${process.pid}.part`;
    const handle = trying(file, () => {
      if (statSync(file, { throwIfNoEntry: false })?.isDirectory())
        throw Object.assign(new Error(), { code: 'EISDIR' });
      return openSync(draft, 'wx');
    });
    this.#drafts.push({ file, draft, handle });
    return (part) =>
      trying(file, () => {
        const bytes = typeof part === 'string' ? Buffer.from(part) : part;
        for (let at = 0; at < bytes.length; ) at += writeSync(handle, bytes, at);
      });
  }

  /** All files take their names. Throws WriteTrouble, with none of them left. */
  keep(): void {
    const kept: string[] = [];
    try {
      for (const { file, draft, handle } of this.#drafts) {
        trying(file, () => closeSync(handle));
        trying(file, () => renameSync(draft, file));
        kept.push(file);
      }
    } catch (trouble) {
      for (const file of kept) rmSync(file, { force: true });
      throw trouble;
    }
    this.#drafts.length = 0;
  }

  /** Whatever was begun and not kept goes away. */
  drop(): void {
    for (const { draft, handle } of this.#drafts) {
      try {
        closeSync(handle);
      } catch {
        // Closed already.
      }
      rmSync(draft, { force: true });
    }
    this.#drafts.length = 0;
  }
}

function trying<T>(file: string, act: () => T): T {
  try {
    return act();
  } catch (cause) {
    throw new WriteTrouble(file, cause);
  }
}
