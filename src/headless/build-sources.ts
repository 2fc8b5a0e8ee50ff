/** The published figures the model is held against, as the page tells of them: per topic, how many, and by whom. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Plugin } from 'vite';

const MODULE = 'virtual:figure-sources';

export interface FigureTopic {
  /** The table's name without its ending. */
  readonly topic: string;
  readonly rows: number;
  /** Each source once, in the order of the table. */
  readonly sources: readonly string[];
}

/** Every table in a folder. */
export function figureTopics(folder: string): readonly FigureTopic[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => {
      const rows = JSON.parse(readFileSync(path.join(folder, file), 'utf8')) as { readonly source: string }[];
      return {
        topic: file.replace(/\.json$/, ''),
        rows: rows.length,
        sources: [...new Set(rows.map(({ source }) => source))],
      };
    });
}

export function figureSources(folder: string): Plugin {
  return {
    name: 'figure-sources',
    resolveId: (id) => (id === MODULE ? `\0${MODULE}` : null),
    load: (id) =>
      id === `\0${MODULE}` ? `export const topics = ${JSON.stringify(figureTopics(folder))};` : null,
  };
}
