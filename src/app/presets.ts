/** The ready designs, as the text of their files. */
import { decodeText } from '../design/decode.ts';
import { DEFAULT_DESIGN } from '../design/defaults.ts';
import type { Design } from '../design/design.ts';
import { equalValues } from '../design/entries.ts';

const files = import.meta.glob<string>('/presets/*.json', { query: '?raw', import: 'default', eager: true });

export const PRESETS: readonly { readonly name: string; readonly text: string }[] = Object.values(files).map(
  (text) => ({
    name: (JSON.parse(text) as { name: string }).name,
    text,
  }),
);

/** Whether a design is one that anybody can have again at any time. */
export const isReady = (design: Design): boolean =>
  equalValues(design, DEFAULT_DESIGN) ||
  PRESETS.some(({ text }) => {
    const read = decodeText(text);
    return read.ok && equalValues(design, read.design);
  });
