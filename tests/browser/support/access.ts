/** What axe finds wrong in a page, and whether the page is wider than its window. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

/** The text of axe, to be evaluated once in a page. */
export const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

type Run = (context: Document | { fromShadowDom: string[] }, options: RunOptions) => Promise<AxeResults>;

/** What another look or width can change: the rest of axe's rules need asking only once. */
const LOOKS_ONLY = ['color-contrast', 'target-size'];

/**
 * What axe finds wrong in the page, or in one element of it, one line for each place. `asked`: every rule, or only
 * those whose answer depends on how the page looks.
 */
export async function faults(
  page: Page,
  within: readonly string[] | null = null,
  asked: 'all' | 'look' = 'all',
): Promise<readonly string[]> {
  const options: RunOptions = {
    rules: { 'target-size': { enabled: true } },
    ...(asked === 'look' ? { runOnly: LOOKS_ONLY } : {}),
    resultTypes: ['violations'],
  };
  const { violations, passes } = await page.evaluate(
    ([path, wanted]) => {
      const { run } = Reflect.get(globalThis, 'axe') as { run: Run };
      return run(path ? { fromShadowDom: [...path] } : document, wanted);
    },
    [within, options] as const,
  );
  if (passes.length < (asked === 'look' ? 1 : 10))
    throw new Error(`axe looked at little: ${passes.map(({ id }) => id).join()}`);
  const found = violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')}: ${failureSummary}`),
  );
  const [content, window] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  if (content! <= window!) return found;
  return [...found, `the page is ${content} px wide in a window of ${window} px`];
}

/** How many pieces of writing the page shows, and which of them are smaller than so many px. */
export function smallWriting(
  page: Page,
  least: number,
): Promise<{ readonly written: number; readonly small: readonly string[] }> {
  return page.evaluate((least) => {
    let written = 0;
    const small: string[] = [];
    const look = (root: Node) => {
      for (const node of root.childNodes) {
        if (node instanceof Text) {
          const { parentElement: parent } = node;
          const text = node.data.trim();
          // What is meant for screen readers only has no size.
          if (parent === null || text === '' || parent.getBoundingClientRect().width <= 1) continue;
          if (!parent.checkVisibility()) continue;
          written += 1;
          // The words of a drawing are drawn as large as the drawing.
          const drawn = parent instanceof SVGGraphicsElement ? (parent.getScreenCTM()?.a ?? 1) : 1;
          const size = Number.parseFloat(getComputedStyle(parent).fontSize) * drawn;
          if (size < least - 0.01) small.push(`${size.toFixed(1)} px: ${text}`);
        } else if (node instanceof Element && !['STYLE', 'SCRIPT'].includes(node.tagName)) {
          look(node.shadowRoot ?? node);
        }
      }
    };
    look(document.body);
    return { written, small };
  }, least);
}
