/** A drawing as a file of its own: the same SVG with its looks written into it, so that it needs no style sheet. */

/** What the page's style sheets say of a shape, as far as a file needs to be told. */
const LOOKS = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linejoin',
  'opacity',
  'paint-order',
  'font-family',
  'font-size',
  'font-style',
  'font-weight',
] as const;

const SVG = 'http://www.w3.org/2000/svg';

/** The drawing on the page's paper, as text. */
export function svgText(drawing: SVGSVGElement): string {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  copy.setAttribute('xmlns', SVG);
  const from = [drawing, ...drawing.querySelectorAll<SVGElement>('*')];
  const to = [copy, ...copy.querySelectorAll<SVGElement>('*')];
  for (const [i, element] of from.entries()) {
    const style = getComputedStyle(element);
    for (const look of LOOKS) to[i]!.setAttribute(look, style.getPropertyValue(look));
    to[i]!.removeAttribute('class');
  }
  const paper = document.createElementNS(SVG, 'rect');
  paper.setAttribute('width', '100%');
  paper.setAttribute('height', '100%');
  paper.setAttribute('fill', getComputedStyle(drawing).getPropertyValue('--paper').trim());
  copy.prepend(paper);
  // Lit marks its places with comments.
  const comments = document.createNodeIterator(copy, NodeFilter.SHOW_COMMENT);
  for (let node = comments.nextNode(); node; node = comments.nextNode()) (node as Comment).remove();
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`;
}
