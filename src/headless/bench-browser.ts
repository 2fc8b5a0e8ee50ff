/** Asks a real browser for the pulses of `bench-page.ts`. */
import type { Browser, Page } from 'playwright-core';
import { createServer, type ViteDevServer } from 'vite';
import type { Maker, PulseWish, pulse } from './bench-page.ts';
import { type Chromium, findChromium, startChromium } from './chromium.ts';

export interface PulseMaker {
  readonly pulse: typeof pulse;
  readonly close: () => Promise<void>;
}

/** Null, with a sentence said, when there is no browser on this machine. */
export async function openBrowser(say: (text: string) => void): Promise<PulseMaker | null> {
  let found: Chromium;
  try {
    found = await findChromium();
  } catch (reason) {
    say(`${(reason as Error).message} The other sources are left out.\n`);
    return null;
  }
  const server = await createServer({
    logLevel: 'error',
    server: { port: 0, hmr: false, watch: null },
    optimizeDeps: { entries: ['src/headless/bench-page.ts'] },
  });
  let browser: Browser | null = null;
  const close = async () => {
    await browser?.close();
    await server.close();
  };
  try {
    await server.listen();
    browser = await startChromium(found);
    const page = await browser.newPage();
    await page.goto(`${addressOf(server)}tests/browser/support/blank.html`);
    return { pulse: (maker, wish) => pulseIn(page, maker, wish), close };
  } catch (reason) {
    await close();
    throw reason;
  }
}

function pulseIn(page: Page, maker: Maker, wish: PulseWish): Promise<number[]> {
  // Made from text: the bundler must not see this `import`, which only the page can follow.
  const inPage = new Function(
    'wish',
    `return import('/src/headless/bench-page.ts').then((module) => module.pulse('${maker}', wish))`,
  ) as (wish: unknown) => Promise<number[]>;
  return page.evaluate(inPage, wish as unknown);
}

function addressOf(server: ViteDevServer): string {
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('The server has no local address');
  return address;
}
