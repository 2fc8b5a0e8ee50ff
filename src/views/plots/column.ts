/** Labels in a column, pushed apart, and texts broken into lines. Pixels in, pixels out; no drawing. */

export interface Shelf {
  /** Where its middle would like to be. */
  readonly wanted: number;
  readonly height: number;
}

/**
 * Pushes labels of a column apart, keeping their order of wanted places, as near to those as can be, between `low` and
 * `high`. Returns the middles in the order given. Where the column is too short they are packed from `low`.
 */
export function spread(items: readonly Shelf[], low: number, high: number): number[] {
  const order = items.map((_, index) => index).sort((a, b) => items[a]!.wanted - items[b]!.wanted || a - b);
  // Runs of touching labels share one offset: the mean of what their members would like (pool of adjacent violators).
  interface Run {
    readonly members: number[];
    start: number;
    height: number;
    wish: number;
  }
  const settle = (run: Run) => {
    run.start = Math.max(low, Math.min(run.wish / run.members.length, high - run.height));
  };
  const runs: Run[] = [];
  for (const index of order) {
    const item = items[index]!;
    let run: Run = { members: [index], start: 0, height: item.height, wish: item.wanted - item.height / 2 };
    settle(run);
    for (
      let last = runs.at(-1);
      last !== undefined && last.start + last.height > run.start;
      last = runs.at(-1)
    ) {
      runs.pop();
      const joined: Run = {
        members: [...last.members, ...run.members],
        start: 0,
        height: last.height + run.height,
        // A later member's wish for the run's start is its own less what lies before it.
        wish: last.wish + run.wish - last.height * run.members.length,
      };
      settle(joined);
      run = joined;
    }
    runs.push(run);
  }
  const middles = items.map(() => 0);
  for (const run of runs) {
    let y = run.start;
    for (const index of run.members) {
      const height = items[index]!.height;
      middles[index] = y + height / 2;
      y += height;
    }
  }
  return middles;
}

/** A word in pieces no wider than `limit`; at least one letter each. */
function cut(word: string, limit: number, measure: (text: string) => number): string[] {
  if (measure(word) <= limit) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (piece !== '' && measure(piece + letter) > limit) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...pieces, piece];
}

/** Breaks a text at spaces into lines no wider than `limit`, by a measure in px; a word longer than that is cut. */
export function breakLines(text: string, limit: number, measure: (text: string) => number): string[] {
  const lines: string[] = [];
  let line = '';
  const words = text.split(' ').flatMap((word) => cut(word, limit, measure));
  for (const word of words) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && measure(longer) > limit) {
      lines.push(line);
      line = word;
    } else {
      line = longer;
    }
  }
  lines.push(line);
  return lines;
}
