/** The ready designs, as the text of their files. */

const files = import.meta.glob<string>('/presets/*.json', { query: '?raw', import: 'default', eager: true });

export const PRESETS: readonly { readonly name: string; readonly text: string }[] = Object.values(files).map(
  (text) => ({
    name: (JSON.parse(text) as { name: string }).name,
    text,
  }),
);
