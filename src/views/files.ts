/** Files in and out, through the browser's own dialogs. */

export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** Asks for a file; null when the dialog is closed without one. */
export async function readFile(accept: string): Promise<TextFile | null> {
  const file = await chooseFile(accept);
  return file && { name: file.name, text: await file.text() };
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
  return file ? { name: file.name, text: await file.text() } : null;
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
