/** Words that lie over other words, or over a control. Runs in the page. */
import type { Page } from 'playwright-core';

/**
 * Every two texts, and every text and control, that lie over one another, as `one / other`. Lines that only touch do
 * not: each is taken as a little smaller than it is. What nobody sees is let be, as is what is scrolled out of its box.
 */
export function overlapping(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    interface Box {
      readonly left: number;
      readonly right: number;
      readonly top: number;
      readonly bottom: number;
    }
    const pieces: (Box & { readonly of: Node; readonly text: string })[] = [];
    const common = (a: Box, b: Box): Box => ({
      left: Math.max(a.left, b.left),
      right: Math.min(a.right, b.right),
      top: Math.max(a.top, b.top),
      bottom: Math.min(a.bottom, b.bottom),
    });
    const take = (of: Node, text: string, box: DOMRect, seen: Box, share: number): void => {
      // Written upwards, lines stand side by side.
      const drawn = of.parentElement instanceof SVGGraphicsElement ? of.parentElement.getScreenCTM() : null;
      const isUpright = drawn !== null && Math.abs(drawn.b) > Math.abs(drawn.a);
      const [across, along] = isUpright ? [share * box.width, 1] : [1, share * box.height];
      const smaller = common(seen, {
        left: box.left + across,
        right: box.right - across,
        top: box.top + along,
        bottom: box.bottom - along,
      });
      if (smaller.right > smaller.left && smaller.bottom > smaller.top)
        pieces.push({ of, text: text.trim().slice(0, 30), ...smaller });
    };
    // A slot has no box of its own.
    const isShown = (element: Element): boolean =>
      element instanceof HTMLSlotElement ||
      (element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) &&
        !element.matches('.visually-hidden, option, title'));
    /** What is shown in it, as it is put together on the page. */
    const contentsOf = (element: Element): readonly Node[] =>
      element instanceof HTMLSlotElement
        ? element.assignedNodes({ flatten: true })
        : [...(element.shadowRoot ?? element).childNodes];
    /** `seen`: what the boxes around it let be seen. */
    const visit = (element: Element, seen: Box): void => {
      if (!isShown(element)) return;
      if (element.matches('input, select, textarea')) {
        take(element, element.localName, element.getBoundingClientRect(), seen, 0);
        return;
      }
      const { display, overflowY } = getComputedStyle(element);
      const isCut = overflowY !== 'visible' && display !== 'inline' && !(element instanceof SVGElement);
      const within = isCut ? common(seen, element.getBoundingClientRect()) : seen;
      for (const node of contentsOf(element)) {
        if (node instanceof Element) visit(node, within);
        if (!(node instanceof Text) || node.data.trim() === '') continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        for (const box of range.getClientRects()) take(node, node.data, box, within, 0.28);
      }
    };
    const everywhere = Number.POSITIVE_INFINITY;
    visit(document.body, { left: -everywhere, right: everywhere, top: -everywhere, bottom: everywhere });
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
