/** Words that lie over other words, or over a box to type into. Runs in the page. */
import type { Page } from 'playwright-core';

/**
 * Every two texts, and every text and control, that lie over one another, as `one / other`. Lines that only touch do
 * not: each is taken as a little smaller than it is. What nobody sees, or sees only by scrolling a box, is let be.
 */
export function overlapping(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    interface Piece {
      readonly of: Node;
      readonly text: string;
      readonly left: number;
      readonly right: number;
      readonly top: number;
      readonly bottom: number;
    }
    const pieces: Piece[] = [];
    const take = (of: Node, text: string, box: DOMRect, share: number, within: DOMRect | null) => {
      const { left, right, top, bottom, height } = box;
      const hidden = within !== null && (bottom > within.bottom || top < within.top);
      if (right - left > 2 && height > 2 && !hidden)
        pieces.push({
          of,
          text: text.trim().slice(0, 30),
          left: left + 1,
          right: right - 1,
          top: top + share * height,
          bottom: bottom - share * height,
        });
    };
    const isSeen = (element: Element): boolean =>
      element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) &&
      !element.matches('.visually-hidden, option, title');
    // As they are seen: what is handed into a slot lies where the slot does.
    const visit = (elements: Iterable<Element>, within: DOMRect | null): void => {
      for (const element of elements) {
        if (!isSeen(element)) continue;
        const scrolls = /auto|scroll/.test(getComputedStyle(element).overflowY);
        const bounds = scrolls ? element.getBoundingClientRect() : within;
        const isControl = element.matches('input, select, textarea');
        if (isControl)
          take(element, element.tagName.toLowerCase(), element.getBoundingClientRect(), 0, within);
        for (const node of isControl ? [] : element.childNodes) {
          if (!(node instanceof Text) || node.data.trim() === '') continue;
          const range = document.createRange();
          range.selectNodeContents(node);
          for (const box of range.getClientRects()) take(node, node.data, box, 0.28, bounds);
        }
        if (element instanceof HTMLSlotElement && element.assignedElements().length > 0)
          visit(element.assignedElements(), bounds);
        else visit((element.shadowRoot ?? element).children, bounds);
      }
    };
    visit(document.body.children, null);
    const found = new Set<string>();
    pieces.sort((a, b) => a.top - b.top);
    for (const [i, one] of pieces.entries())
      for (let j = i + 1; j < pieces.length; j += 1) {
        const other = pieces[j]!;
        if (other.top >= one.bottom) break;
        if (other.of !== one.of && other.left < one.right && one.left < other.right)
          found.add(`${one.text} / ${other.text}`);
      }
    return [...found];
  });
}
