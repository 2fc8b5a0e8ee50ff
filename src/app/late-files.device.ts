/**
 * What the first view does without is fetched when there is nothing else to do, so that every place, language and sound
 * is there when the network has gone. The build lists those files in the page; while developing there is no list.
 */
import type { Seconds } from '../quantity/units.ts';

/** The first moments of a visit are left to it. */
const PATIENCE: Seconds = 3;
/** After a file did not come, the rest is tried again this much later. */
const AGAIN: Seconds = 60;

/** Nothing is fetched for whoever asked the browser to spare data. */
export function fetchLateFiles(): void {
  const list = document.querySelector<HTMLTemplateElement>('template#late');
  const { connection } = navigator as { connection?: { saveData?: boolean } };
  if (!list || connection?.saveData) return;
  const links = [...list.content.querySelectorAll('link')];
  const begin = () => whenIdle(() => void fetchAll(links));
  if (document.readyState === 'complete') setTimeout(begin, PATIENCE * 1000);
  else window.addEventListener('load', () => setTimeout(begin, PATIENCE * 1000), { once: true });
}

async function fetchAll(links: readonly HTMLLinkElement[]): Promise<void> {
  for (const [i, link] of links.entries()) {
    if (await fetched(link)) continue;
    setTimeout(() => void fetchAll(links.slice(i)), AGAIN * 1000);
    return;
  }
  // Faces of type that nothing on the page has needed so far.
  for (const face of document.fonts) face.load().catch(() => undefined);
}

/**
 * Put by first, and held as a module only when it is there: a module that did not come once is refused from then on
 * without being asked for.
 */
async function fetched(link: HTMLLinkElement): Promise<boolean> {
  const { href, rel, relList } = link;
  if (relList.supports('prefetch')) {
    if (!(await loaded('prefetch', href))) return false;
  } else if (!navigator.onLine) return false;
  return rel !== 'modulepreload' || loaded(rel, href);
}

function loaded(rel: string, href: string): Promise<boolean> {
  const link = Object.assign(document.createElement('link'), { rel, href });
  return new Promise((resolve) => {
    link.onload = () => resolve(true);
    link.onerror = () => resolve(false);
    document.head.append(link);
  });
}

function whenIdle(go: () => void): void {
  if ('requestIdleCallback' in globalThis) requestIdleCallback(go, { timeout: 10_000 });
  else setTimeout(go, 0);
}
