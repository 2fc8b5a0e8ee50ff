/** Asks a real browser for the pulses of `bench-page.ts`. */
import type { Browser, Page } from 'playwright-core';
import { createServer, type ViteDevServer } from 'vite';
import type { Maker, PulseWish, pulse } from './bench-page.ts';

export interface PulseMaker {
  readonly pulse: typeof pulse;
  readonly close: () => Promise<void>;
}

export async function openPulseMaker(browser: Browser): Promise<PulseMaker> {
  const server = await createServer({
    logLevel: 'error',
    server: { port: 0, hmr: false, watch: null },
    optimizeDeps: { entries: ['src/headless/bench-page.ts'] },
  });
  try {
    await server.listen();
    const page = await browser.newPage();
    await page.goto(`${addressOf(server)}tests/browser/support/blank.html`);
    return { pulse: (maker, wish) => pulseIn(page, maker, wish), close: () => server.close() };
  } catch (reason) {
    await server.close();
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
