/**
 * Printing something by itself: it is laid beside the page, where only paper shows it, and while it is there paper
 * shows nothing else (see theme.css).
 */
import { render, type TemplateResult } from 'lit';

/** Lays something out for paper; the returned function takes it away. */
export function layForPaper(content: TemplateResult, className = ''): () => void {
  const paper = document.createElement('div');
  paper.className = `paper ${className}`;
  render(content, paper);
  document.body.append(paper);
  return () => paper.remove();
}

/** Prints something by itself, from a press. */
export function printOnly(content: TemplateResult, className = ''): void {
  const takeAway = layForPaper(content, className);
  window.addEventListener('afterprint', takeAway, { once: true });
  window.print();
}
