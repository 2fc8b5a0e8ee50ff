/** Files in and out, through the browser's own dialogs. */
import { excerpt } from '../words/excerpt.ts';

/** More than any list, log or design may be: what a file holds beyond is not read, and is found too much all the same. */
const MOST_BYTES = 16_000_000;

/** The longest name of a file that is shown whole. */
const LONGEST_NAME = 80;

export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** Asks for a file; null when the dialog is closed without one. */
export async function readFile(accept: string): Promise<TextFile | null> {
  const file = await chooseFile(accept);
  return file && textOf(file);
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

/** The first file of a drop, as text; null when nothing of the kind was dropped. */
export async function droppedFile(event: DragEvent): Promise<TextFile | null> {
  const file = event.dataTransfer?.files[0];
  return file ? textOf(file) : null;
}

async function textOf(file: File): Promise<TextFile> {
  return { name: excerpt(file.name, LONGEST_NAME), text: await file.slice(0, MOST_BYTES).text() };
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
