/**
 * Where the words of a board drawing go: beside or inside what they name, over nothing else. Lengths in drawing units;
 * widths of texts are estimated, as the drawing is the same on screen and on paper. Pure; no drawing.
 */

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Wanted {
  readonly key: string;
  /** The body that is named; a text may lie inside it. */
  readonly body: Box;
  /** What of its own may not be covered: its leads. */
  readonly own: readonly Box[];
  /** Ways to write it, lines of text, the fullest first. */
  readonly texts: readonly (readonly string[])[];
  /** The body is too busy to be written on. */
  readonly isOutside: boolean;
}

export interface Placed {
  readonly key: string;
  readonly lines: readonly string[];
  /** Middle of the text. */
  readonly x: number;
  readonly y: number;
  /** Turned a quarter, read from the right. */
  readonly isUpright: boolean;
  readonly box: Box;
}

/** Share of the text's size: a letter's width on average, and from line to line. */
const LETTER = 0.53;
const LINE = 1.02;
const GAP = 0.25;

export const boxAt = (x: number, y: number, half: number): Box => ({
  left: x - half,
  top: y - half,
  right: x + half,
  bottom: y + half,
});

export function common(a: Box, b: Box): number {
  const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return across > 0 && down > 0 ? across * down : 0;
}

export const textWidth = (text: string, size: number): number => text.length * LETTER * size;

function candidates(wanted: Wanted, size: number): Placed[] {
  const { body, key, isOutside } = wanted;
  const [middleX, middleY] = [(body.left + body.right) / 2, (body.top + body.bottom) / 2];
  const all: Placed[] = [];
  for (const lines of wanted.texts) {
    const long = Math.max(...lines.map((line) => textWidth(line, size)));
    const tall = lines.length * LINE * size;
    for (const isUpright of [false, true]) {
      const [across, down] = isUpright ? [tall, long] : [long, tall];
      const at = (x: number, y: number): Placed => ({
        key,
        lines,
        x,
        y,
        isUpright,
        box: { left: x - across / 2, right: x + across / 2, top: y - down / 2, bottom: y + down / 2 },
      });
      const fits = across <= body.right - body.left && down <= body.bottom - body.top;
      if (!isOutside && fits) {
        for (const share of [0.5, 0.3, 0.7])
          all.push(at(middleX, body.top + down / 2 + share * (body.bottom - body.top - down)));
      }
      const gap = GAP * size;
      for (const y of [middleY, body.top + down / 2, body.bottom - down / 2])
        all.push(at(body.right + gap + across / 2, y), at(body.left - gap - across / 2, y));
      for (const x of [middleX, body.left + across / 2, body.right - across / 2])
        all.push(at(x, body.top - gap - down / 2), at(x, body.bottom + gap + down / 2));
    }
  }
  return all;
}

/** Covering a body or another text is worse than lying on a thin line. */
export interface Obstacle {
  readonly box: Box;
  readonly weight: number;
  /** A text does not mind its own body. */
  readonly key: string | null;
}

/** A place for every text, in the order given; the first that covers nothing, else the one that covers least. */
export function placeLabels(
  wanted: readonly Wanted[],
  obstacles: readonly Obstacle[],
  bounds: Box,
  size: number,
): readonly Placed[] {
  const taken: Obstacle[] = [...obstacles];
  return wanted.map((one) => {
    const own: Obstacle[] = one.own.map((box) => ({ box, weight: 3, key: null }));
    let best: { placed: Placed; cost: number } | null = null;
    for (const [rank, placed] of candidates(one, size).entries()) {
      let cost = rank * 0.02;
      for (const { box, weight, key } of [...taken, ...own])
        if (key === null || key !== one.key) cost += weight * common(placed.box, box);
      const { left, right, top, bottom } = placed.box;
      if (left < bounds.left || right > bounds.right || top < bounds.top || bottom > bounds.bottom)
        cost += 1000;
      if (best === null || cost < best.cost) best = { placed, cost };
    }
    const { placed } = best!;
    taken.push({ box: placed.box, weight: 6, key: null });
    return placed;
  });
}

/** How much of two texts, or of a text and a body that is not its own, lies over one another. */
export function coveredBy(placed: readonly Placed[]): number {
  let covered = 0;
  for (const [i, one] of placed.entries())
    for (const other of placed.slice(i + 1)) covered += common(one.box, other.box);
  return covered;
}
