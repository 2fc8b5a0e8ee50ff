/** A language two fifths longer than what the page says, and whatever of it does not fit. Both run in the page. */
import type { Page } from 'playwright-core';

/**
 * Makes every word on the page 40 % longer by repeating its last letters; numbers, units and single letters stay, and
 * so do the words of drawings, which are placed by their own lengths. What is longer already stays as it is; what the
 * page says anew afterwards is as long as ever, so measure at once. Gives how many texts are longer now.
 */
export function lengthen(page: Page): Promise<number> {
  return page.evaluate(() => {
    const here = window as Window & { longerTexts?: WeakMap<Text, string> };
    here.longerTexts ??= new WeakMap();
    const made = here.longerTexts;
    let count = 0;
    const longer = (word: string): string => {
      const more = Math.ceil(0.4 * word.length);
      return word + word.slice(-1).repeat(more);
    };
    const visit = (root: Node): void => {
      for (const node of root.childNodes) {
        if (node instanceof Text) {
          const text = node.data.replaceAll(/(?<![\p{L}\d])\p{L}{3,}(?![\p{L}\d])/gu, longer);
          if (made.get(node) === node.data) count += 1;
          else if (text !== node.data) {
            node.data = text;
            made.set(node, text);
            count += 1;
          }
        }
        if (node instanceof Element && node.matches('style, script, noscript, svg')) continue;
        if (node instanceof Element && node.shadowRoot) visit(node.shadowRoot);
        visit(node);
      }
    };
    visit(document);
    return count;
  });
}

/** Unfolds everything that can be, the bar of a narrow page too, so that it is measured. */
export function unfold(page: Page): Promise<void> {
  return page.evaluate(() => {
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element instanceof HTMLDetailsElement) element.open = true;
        if (element.matches('.bar .more[aria-expanded=false]') && element.checkVisibility())
          (element as HTMLElement).click();
        if (element.shadowRoot) visit(element.shadowRoot);
      }
    };
    visit(document);
  });
}

/**
 * What hangs over the window's edge, and what is cut off: elements that hide what is wider than they are. Boxes that
 * scroll sideways on purpose (tables) are let be; on paper nothing scrolls, and what is higher is cut off, too.
 */
export function clipped(page: Page, medium: 'screen' | 'paper' = 'screen'): Promise<readonly string[]> {
  return page.evaluate((isPaper) => {
    const found: string[] = [];
    const told = (element: Element) =>
      `${element.tagName.toLowerCase()}.${element.className}: ${(element.textContent ?? '').trim().slice(0, 40)}`;
    const visit = (root: Document | ShadowRoot | Element, scrolls: boolean): void => {
      for (const element of root.children) {
        const style = getComputedStyle(element);
        if (style.display === 'none' || element.matches('.visually-hidden, svg, canvas, option')) continue;
        const isScrolled = style.overflowX === 'auto' || style.overflowX === 'scroll';
        const within = !isPaper && (scrolls || isScrolled);
        const box = element.getBoundingClientRect();
        if (!within && box.width > 0 && box.right > window.innerWidth + 1)
          found.push(`over: ${told(element)}`);
        const hides = style.overflowX === 'hidden' || style.overflowX === 'clip' || (isPaper && isScrolled);
        if (hides && !element.matches('input, select') && element.scrollWidth > element.clientWidth + 1)
          found.push(`cut: ${told(element)}`);
        if (isPaper && hides && element.scrollHeight > element.clientHeight + 1)
          found.push(`cut below: ${told(element)}`);
        // A button or link that is narrower than its own text.
        if (
          element.matches('button, a, label, legend, h1, h2, h3, summary') &&
          !within &&
          element.clientWidth > 0
        ) {
          if (element.scrollWidth > element.clientWidth + 1) found.push(`narrow: ${told(element)}`);
        }
        if (element.shadowRoot) visit(element.shadowRoot, within);
        visit(element, within);
      }
    };
    visit(document, false);
    if (document.documentElement.scrollWidth > window.innerWidth)
      found.push('the page is wider than the window');
    return found;
  }, medium === 'paper');
}
