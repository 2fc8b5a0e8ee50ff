/** Files in and out, through the browser's own dialogs. */
import type { Lampnote } from '../app/lampnote.ts';
import { excerpt } from '../words/excerpt.ts';

/** More than any list, log or design may be: what a file holds beyond is not read, and is found too much all the same. */
const MOST_BYTES = 16_000_000;

/** The longest name of a file that is shown whole. */
const LONGEST_NAME = 80;

export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** Asks for a file; null when the dialog is closed without one, or when it cannot be read, which is told. */
export async function readFile(app: Lampnote, accept: string): Promise<TextFile | null> {
  const file = await chooseFile(accept);
  return file && textOf(app, file);
}

/** Asks for a file of any kind, as it is. */
export function chooseFile(accept: string): Promise<File | null> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = accept;
  return new Promise((resolve) => {
    input.addEventListener('cancel', () => resolve(null));
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null));
    input.click();
  });
}

/** The first file of a drop, as text; null when nothing of the kind was dropped, or when it cannot be read, which is told. */
export async function droppedFile(app: Lampnote, event: DragEvent): Promise<TextFile | null> {
  const file = event.dataTransfer?.files[0];
  return file ? textOf(app, file) : null;
}

async function textOf(app: Lampnote, file: File): Promise<TextFile | null> {
  const name = excerpt(file.name, LONGEST_NAME);
  try {
    return { name, text: await file.slice(0, MOST_BYTES).text() };
  } catch {
    // A folder comes as a file like any other, and so does one whose drive has gone.
    app.notice.dispatch(() => ({ kind: 'unread file', name }));
    return null;
  }
}

/** Offers a download named after the thing it holds. */
export function offerFile(
  name: string,
  ending: string,
  type: string,
  content: string | Uint8Array<ArrayBuffer>,
): void {
  const link = document.createElement('a');
  const address = URL.createObjectURL(new Blob([content], { type }));
  link.href = address;
  link.download = `${fileName(name)}.${ending}`;
  link.click();
  URL.revokeObjectURL(address);
}

/** Letters, figures and dashes only: safe on every system. */
function fileName(name: string): string {
  const plain = name
    .normalize('NFKC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .toLowerCase();
  return plain || 'design';
}
