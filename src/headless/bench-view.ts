/** What a visitor with a slow computer waits for: the first view over a slow line, and the page while a hand turns a trimmer. */
import type { Browser, CDPSession, Page } from 'playwright-core';
import { words } from '../words/en.ts';
import { medianOf } from './bench-clock.ts';

/** The page's own thread is held back to a quarter of its speed. */
const SLOW_PROCESSOR = 4;
/** A slow mobile line: round trip in milliseconds, bytes a second. */
const SLOW_LINE = { latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 750e3 / 8 };
const VISITS = 7;
const DRAG_SECONDS = 3;
const MOVES_PER_SECOND = 60;
const DRAGS = 5;

const slowed = (session: CDPSession): Promise<unknown> =>
  session.send('Emulation.setCPUThrottlingRate', { rate: SLOW_PROCESSOR });

async function openSlow(browser: Browser): Promise<{ readonly page: Page; readonly session: CDPSession }> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  return { page, session: await context.newCDPSession(page) };
}

export interface FirstView {
  readonly firstViewMs: number;
  readonly interactiveMs: number;
}

/** The quickest of some visits, with nothing kept from the one before: what else the machine does only makes it later. */
export async function firstView(browser: Browser, address: string): Promise<FirstView> {
  const noted: Noted[] = [];
  for (let visit = 0; visit < VISITS; visit++) {
    const { page, session } = await openSlow(browser);
    await session.send('Network.enable');
    await session.send('Network.emulateNetworkConditions', { offline: false, ...SLOW_LINE });
    await slowed(session);
    await page.addInitScript(noteFirsts);
    await page.goto(address);
    const all = await page.waitForFunction(() => {
      const found = Reflect.get(globalThis, 'noted') as Noted;
      return found.seen > 0 && found.answered > 0 ? found : null;
    });
    noted.push((await all.jsonValue())!);
    await page.context().close();
  }
  return {
    firstViewMs: Math.min(...noted.map(({ seen }) => seen)),
    interactiveMs: Math.min(...noted.map(({ answered }) => answered)),
  };
}

interface Noted {
  seen: number;
  answered: number;
}

/** In the page: when something is first painted; when a press of a trimmer's +, as soon as there is one, shows. */
function noteFirsts(): void {
  const noted: Noted = { seen: 0, answered: 0 };
  Object.assign(globalThis, { noted });
  new PerformanceObserver((list) => {
    for (const { startTime } of list.getEntriesByName('first-contentful-paint')) noted.seen = startTime;
  }).observe({ type: 'paint', buffered: true });
  let before: string | null = null;
  const look = (): void => {
    const control = document
      .querySelector('lamp-note')
      ?.shadowRoot?.querySelector('place-listen')
      ?.shadowRoot?.querySelector('voice-panel')
      ?.shadowRoot?.querySelector('trimmer-control')?.shadowRoot;
    const box = control?.querySelector<HTMLInputElement>('#box');
    if (control && box && before === null && box.value !== '') {
      before = box.value;
      control.querySelectorAll('button')[1]!.click();
    } else if (before !== null && box?.value !== before) {
      noted.answered = performance.now();
      return;
    }
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

export interface Drag {
  readonly framesPerSecond: number;
  /** The same page with nobody touching it: what this machine's browser can show at all. */
  readonly framesPerSecondAtRest: number;
  /** Of the page's own thread, in its processor time: what else this machine does is not in it. */
  readonly longestTaskMs: number;
  readonly dragMsPerFrame: number;
}

/** Of some drags of voice A's trimmer, with sound on and the traces running: the smoothest; of tasks the median. */
export async function drag(browser: Browser, address: string): Promise<Drag> {
  const { page, session } = await openSlow(browser);
  await page.goto(address);
  await page.getByRole('button', { name: words.bar.soundOn, exact: true }).click();
  await page.getByRole('button', { name: words.bar.soundOff, exact: true }).waitFor();
  const dial = page.locator('trimmer-control svg.face').first();
  await dial.scrollIntoViewIfNeeded();
  await slowed(session);
  const resting: number[] = [];
  const moving: number[] = [];
  const longestTasks: number[] = [];
  const perFrame: number[] = [];
  for (let nth = 0; nth < DRAGS; nth++) {
    resting.push(await framesDuring(page, () => moves(() => undefined)));
    moving.push(await framesDuring(page, () => dragOnce(session, dial)));
    // On its own, as writing down every task takes time, too.
    await browser.startTracing(page, {
      categories: ['devtools.timeline', 'disabled-by-default-devtools.timeline'],
    });
    const perSecond = await framesDuring(page, () => dragOnce(session, dial));
    const { longest, all } = tasksIn(await browser.stopTracing());
    longestTasks.push(longest);
    perFrame.push(all / (perSecond * DRAG_SECONDS));
  }
  await page.context().close();
  return {
    framesPerSecond: Math.max(...moving),
    framesPerSecondAtRest: Math.max(...resting),
    longestTaskMs: medianOf(longestTasks),
    dragMsPerFrame: medianOf(perFrame),
  };
}

async function dragOnce(session: CDPSession, dial: ReturnType<Page['locator']>): Promise<void> {
  const { x, y, width, height } = (await dial.boundingBox())!;
  const [left, middle] = [x + width / 2, y + height / 2];
  const send = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', top: number) =>
    session.send('Input.dispatchMouseEvent', {
      type,
      x: left,
      y: top,
      button: 'left',
      buttons: 1,
      clickCount: 1,
    });
  await send('mousePressed', middle);
  // Up and down by half the dial, once a second.
  await moves((seconds) => void send('mouseMoved', middle + (height / 4) * Math.sin(2 * Math.PI * seconds)));
  await send('mouseReleased', middle);
}

/** Calls at an even pace, without waiting for what the calls do. */
async function moves(move: (seconds: number) => void): Promise<void> {
  const start = performance.now();
  for (let nth = 1; nth <= DRAG_SECONDS * MOVES_PER_SECOND; nth++) {
    await new Promise((next) =>
      setTimeout(next, Math.max(0, start + (1000 * nth) / MOVES_PER_SECOND - performance.now())),
    );
    move(nth / MOVES_PER_SECOND);
  }
}

async function framesDuring(page: Page, act: () => Promise<void>): Promise<number> {
  await page.evaluate(() => {
    const painted = { count: 0, since: performance.now(), running: true };
    Object.assign(globalThis, { painted });
    const next = (): void => {
      painted.count += 1;
      if (painted.running) requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  });
  await act();
  return page.evaluate(() => {
    const painted = Reflect.get(globalThis, 'painted') as { count: number; since: number; running: boolean };
    painted.running = false;
    return (1000 * painted.count) / (performance.now() - painted.since);
  });
}

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds: from beginning to end, and of the thread's processor time. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

export const eventsOf = (trace: Buffer): readonly TraceEvent[] =>
  (JSON.parse(trace.toString()) as { readonly traceEvents: readonly TraceEvent[] }).traceEvents;

interface Tasks {
  readonly longest: number;
  readonly all: number;
}

/** Of the threads that run pages, milliseconds of processor time: the longest single task, and all of them. */
function tasksIn(trace: Buffer): Tasks {
  const events = eventsOf(trace);
  const threads = new Set(
    events
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  const times = events
    .filter(({ name, pid, tid }) => name === 'RunTask' && threads.has(`${pid} ${tid}`))
    .map(({ tdur = 0 }) => tdur / 1000);
  if (times.length === 0) throw new Error('The trace holds no task of the page');
  return { longest: Math.max(...times), all: times.reduce((sum, each) => sum + each, 0) };
}
