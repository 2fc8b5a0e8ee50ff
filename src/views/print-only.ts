/**
 * Printing something by itself: it is laid beside the page, where only paper shows it, and while it is there paper
 * shows nothing else (see theme.css).
 */
import { LitElement, render, type TemplateResult } from 'lit';

/** Prints something by itself, from a press. */
export async function printOnly(content: TemplateResult, className = ''): Promise<void> {
  const paper = document.createElement('div');
  paper.className = `paper ${className}`;
  render(content, paper);
  document.body.append(paper);
  window.addEventListener('afterprint', () => paper.remove(), { once: true });
  // A drawing on the sheet is drawn a moment later than its words.
  for (const one of paper.querySelectorAll('*')) if (one instanceof LitElement) await one.updateComplete;
  window.print();
}
