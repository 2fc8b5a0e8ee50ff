/**
 * A person who tries everything, in the page itself: presses, types well and badly, turns, drags files in, follows links
 * whole and broken. Which of these, and where, a seed decides; the page's own pace is not part of it.
 */
import type { Page } from 'playwright-core';
import { uniformFrom } from '../../../src/quantity/random.ts';
import { MOST_OF_BOUND } from '../../../src/sound/settings.ts';
import { type Hands, makeHands } from './random-user-hands.ts';
import { type Manner, makeUser } from './random-user-ways.ts';

/** A sitting is from one load of the page to the next; a visit has several. */
export const VISIT = { sittings: 5, batches: 4, actions: 50 } as const;

/** What a batch of actions is decided by. */
export const batchSeed = (uniform: () => number): number => Math.floor(uniform() * 2 ** 31);

/** Rounding of one sample, relative. */
export const SINGLE_PRECISION = 1e-6;

/** What the page shows of itself after some actions. */
export interface Seen {
  /** What was done, in order. */
  readonly done: readonly string[];
  /** The design as its file would hold it, as the browser keeps it, and as it was saved last. */
  readonly texts: readonly string[];
  /** Loudest sample, as a share of the loudest that was allowed when it was heard. */
  readonly loudest: number;
}

/** What the page is given as text. */
interface Carried {
  readonly hands: Hands;
  readonly makeUser: typeof makeUser;
  readonly uniformFrom: typeof uniformFrom;
}

export interface InPage {
  readonly act: (seed: number, count: number, manner: Manner) => Promise<Seen>;
  /** Remembers the design to which everything is taken back. */
  readonly begin: () => Promise<void>;
  /** Takes everything back, then does it again: whether both ends are the same objects. */
  readonly backAndForth: () => Promise<{ readonly same: readonly boolean[]; readonly steps: number }>;
  readonly design: () => string;
  /** Everything as a new page has it: taken back, on the stage, silent, in English. */
  readonly settle: () => Promise<void>;
}

/** Before the page loads: puts the person into it. Goes with `tapSound`. */
export async function prepareUser(page: Page): Promise<void> {
  await page.addInitScript({
    content: `Object.assign(globalThis, { uniformFrom: ${uniformFrom}, makeUser: ${makeUser}, hands: (${makeHands})(${MOST_OF_BOUND}) });`,
  });
  await page.addInitScript(stub);
  await page.addInitScript(install);
}

/** Calls one of the person's ways in the page. */
function call<Way extends keyof InPage>(
  page: Page,
  way: Way,
  ...given: Parameters<InPage[Way]>
): Promise<Awaited<ReturnType<InPage[Way]>>> {
  return page.evaluate(`globalThis.randomUser.${way}(...${JSON.stringify(given)})`);
}

export const act = (page: Page, seed: number, count: number, manner: Manner = 'anything'): Promise<Seen> =>
  call(page, 'act', seed, count, manner);
export const begin = (page: Page): Promise<void> => call(page, 'begin');
export const backAndForth = (page: Page) => call(page, 'backAndForth');
export const settle = (page: Page): Promise<void> => call(page, 'settle');
export const designText = (page: Page): Promise<string> => call(page, 'design');

/** Waits until the application stands behind the page. */
export const isThere = (page: Page) =>
  page.waitForFunction(() => {
    const root: unknown = document.querySelector('lamp-note');
    return root !== null && Reflect.get(root as object, 'app') !== undefined;
  });

/** What would open a window of the system: a dialog is closed at once, a file is taken note of, nothing is printed. */
export function stub(): void {
  Object.assign(globalThis, { print: () => undefined, open: () => null });
  const { click } = HTMLElement.prototype;
  HTMLInputElement.prototype.click = function (this: HTMLInputElement) {
    if (this.type === 'file') this.dispatchEvent(new Event('cancel'));
    else Reflect.apply(click, this, []);
  };
  HTMLAnchorElement.prototype.click = function (this: HTMLAnchorElement) {
    if (!this.download) Reflect.apply(click, this, []);
  };
  const { createObjectURL } = URL;
  URL.createObjectURL = (blob: Blob) => {
    if (blob.type === 'application/json')
      void blob.text().then((text) => Object.assign(globalThis, { savedText: text }));
    return Reflect.apply(createObjectURL, URL, [blob]);
  };
  Element.prototype.requestFullscreen = () => Promise.reject(new Error('no full screen here'));
}

export function install(): void {
  const { hands, makeUser, uniformFrom } = globalThis as unknown as Carried;
  const { app, frame, moment, allowed, loudness, letGo } = hands;
  let first: unknown = null;

  const arrived = async (place: string): Promise<void> => {
    while (app().session.current.place !== place || app().design.isLent) await frame();
  };

  const home = async (): Promise<void> => {
    letGo();
    for (const place of ['about', 'listen'] as const) {
      location.hash = `#/${place}`;
      await arrived(place);
    }
    app().design.endGesture();
  };

  const randomUser: InPage = {
    act: async (seed, count, manner) => {
      const step = makeUser(uniformFrom(seed), hands);
      const done: string[] = [];
      let loudest = 0;
      for (let i = 0; i < count; i += 1) {
        done.push(await step(manner));
        await (i % 5 === 4 ? frame() : moment());
        allowed();
        if (i % 5 === 4) loudest = Math.max(loudest, loudness());
      }
      const kept = localStorage.getItem('lampnote.design');
      const saved = Reflect.get(globalThis, 'savedText') as string | undefined;
      return { done, texts: [app().fileText(), ...(kept ? [kept] : []), ...(saved ? [saved] : [])], loudest };
    },
    begin: async () => {
      await home();
      first = app().design.current;
    },
    backAndForth: async () => {
      await home();
      const { design } = app();
      const last = design.current;
      let steps = 0;
      for (; design.history.undo !== null; steps += 1) design.undo();
      const isFirst = design.current === first;
      for (let i = 0; i < steps; i += 1) design.redo();
      return { same: [isFirst, design.current === last], steps };
    },
    design: () => app().fileText(),
    settle: async () => {
      await home();
      while (app().design.history.undo !== null) app().design.undo();
      app().light.choose('stage');
      await app().sound.off();
      await app().choose('en');
      for (let i = 0; i < 3; i += 1) await frame();
    },
  };
  Object.assign(globalThis, { randomUser });
}
