/** A design in and out as a file, through the browser's own dialogs. */

/** Asks for a JSON file; null when the dialog is closed without one. */
export function readFile(): Promise<{ name: string; text: string } | null> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,application/json';
  return new Promise((resolve) => {
    input.addEventListener('cancel', () => resolve(null));
    input.addEventListener('change', async () => {
      const file = input.files?.[0];
      resolve(file ? { name: file.name, text: await file.text() } : null);
    });
    input.click();
  });
}

/** Offers the text as a download named after the design. */
export function offerFile(name: string, text: string): void {
  const link = document.createElement('a');
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.href = address;
  link.download = `${fileName(name)}.json`;
  link.click();
  URL.revokeObjectURL(address);
}

/** Letters, figures and dashes only: safe on every system. */
function fileName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .toLowerCase();
  return plain || 'design';
}
