/** What can be seen of a lesson: whether drawings and words of the one picture agree at any time, and what is in sight. */
import type { Page } from 'playwright-core';
import { classPage } from '../../../src/words/en-class.ts';

export interface PictureWatched {
  /** Pictures looked at, by what their gates said. */
  readonly seen: Readonly<Record<string, number>>;
  /** What a drawing and the words beneath it told at once and differently. */
  readonly apart: readonly string[];
}

/** From now on looks at the picture in every frame of the screen; gives the way to read what was found. */
export async function watchPicture(page: Page): Promise<() => Promise<PictureWatched>> {
  const { sounding, silent, noTone, above, below } = classPage.picture;
  const says = { sounding, silent, noTone, above: above('').trim(), below: below('').trim() };
  const handle = await page.evaluateHandle((says) => {
    const seen: Record<string, number> = {};
    const apart = new Set<string>();
    const inside = ['lamp-note', 'place-class', 'lesson-player', 'picture-panel', 'signal-picture'];
    const picture = () =>
      inside.reduce<ParentNode | null>(
        (root, name) => root?.querySelector(name)?.shadowRoot ?? null,
        document,
      );
    const height = (mark: Element) =>
      Number(
        mark.getAttribute('cy') ?? Number(mark.getAttribute('y')) + Number(mark.getAttribute('height')) / 2,
      );

    const drawnGate = (part: Element, v: string) => {
      if (!part.querySelector(`.head.${v}`)) return 'silent';
      const wavy = [...part.querySelectorAll(`.line.${v}`)].some((line) =>
        line.getAttribute('d')?.includes('l7'),
      );
      return wavy ? 'chattering' : 'sounding';
    };
    const saidGate = (text: string) =>
      text === says.silent ? 'silent' : text === says.sounding ? 'sounding' : 'chattering';
    const drawnTone = (part: Element, v: string) =>
      part.querySelector(`.line.${v}:not(.ahead)`) ? 'tone' : 'no tone';
    const agree = {
      gate: (part: Element, v: string, text: string) => drawnGate(part, v) === saidGate(text),
      tone: (part: Element, v: string, text: string) =>
        (drawnTone(part, v) === 'no tone') === (text === says.noTone),
      compare: (part: Element, v: string, text: string) => {
        const mark = part.querySelector(`.mark.${v}`);
        const band = part.querySelector(`.band.${v}`) ?? part.querySelector('.band.both');
        if (!mark || !band) return false;
        const [y, top] = [height(mark), Number(band.getAttribute('y'))];
        if (text.startsWith(says.below)) return y >= top - 0.01;
        return !text.startsWith(says.above) || y <= top + Number(band.getAttribute('height')) + 0.01;
      },
    };
    const look = () => {
      requestAnimationFrame(look);
      const root = picture();
      for (const [stage, agrees] of Object.entries(agree)) {
        const li = root?.querySelector(`[data-stage=${stage}]:not(.hidden)`);
        const part = li?.querySelector('svg.part');
        for (const label of part ? li!.querySelectorAll('.values p:not(.note)') : []) {
          const v = label.classList.contains('voice-a') ? 'a' : 'b';
          const text = label.textContent!.replace(/^[AB]: /, '');
          if (stage === 'gate') seen[saidGate(text)] = (seen[saidGate(text)] ?? 0) + 1;
          if (!agrees(part!, v, text)) apart.add(`${stage} ${v}: “${text}”`);
        }
      }
    };
    look();
    return { read: () => ({ seen, apart: [...apart] }) };
  }, says);
  return () => handle.evaluate((watch) => watch.read());
}

/** Parts of a step that are not whole in sight, with their places; what scrolls is cut off where its box ends. */
export function outOfSight(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const all: Element[] = [];
    const gather = (root: ParentNode) => {
      for (const one of root.querySelectorAll('*')) {
        all.push(one);
        if (one.shadowRoot) gather(one.shadowRoot);
      }
    };
    gather(document.querySelector('lamp-note')!.shadowRoot!.querySelector('place-class')!.shadowRoot!);
    const deep = (selector: string) => all.filter((one) => one.matches(selector));
    const box = deep('.two')[0]?.getBoundingClientRect();
    const within = [
      '#title',
      '.question',
      '.verdict',
      '.options',
      '.tally',
      'place-guess',
      'sketch-guess',
      '.controls',
    ];
    const parts = [
      ...['signal-picture', '#advance'].map((name) => ({ name, limit: innerHeight })),
      ...within.map((name) => ({ name, limit: (box?.bottom ?? 0) + 2 })),
    ];
    return parts.flatMap(({ name, limit }) =>
      deep(name)
        .map((one) => one.getBoundingClientRect())
        .filter(({ height, top, bottom }) => height > 0 && (top < -1 || bottom > limit + 1))
        .map(
          ({ top, bottom }) =>
            `${name} from ${Math.round(top)} to ${Math.round(bottom)} of ${Math.round(limit)}`,
        ),
    );
  });
}
