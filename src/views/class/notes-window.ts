/**
 * The presenter's notes in a second window, drawn by this one, so that they follow the lesson. Where the browser opens no
 * window the caller shows them on the page.
 */
import { render, type TemplateResult } from 'lit';

const STYLE = `
  body { margin: 0 auto; padding: 24px; max-width: 44em; background: #fff; color: #111;
    font: 20px/1.45 system-ui, sans-serif; }
  h1 { margin: 0 0 4px; font-size: 1.4em; line-height: 1.2; }
  h2 { margin: 1.1em 0 .2em; font-size: 1.05em; }
  p, ul { margin: .3em 0; }
  ul { padding-left: 1.2em; }
  dt { font-weight: 600; }
  dd { margin: 0 0 .3em 0; }
  .muted { color: #4d4d4d; }
  .now { padding: 2px 14px; border-left: 4px solid #1a1a1a; }
  @media print { body { font-size: 11pt; padding: 0; } }
`;

export class NotesWindow {
  #window: Window | null = null;

  get isOpen(): boolean {
    return this.#window !== null && !this.#window.closed;
  }

  /** From a press only; false when the browser does not let it open. */
  open(title: string): boolean {
    if (this.isOpen) {
      this.#window?.focus();
      return true;
    }
    const opened = window.open('', 'lampnote-notes', 'popup,width=720,height=800') as
      | (Window & typeof globalThis)
      | null;
    this.#window = opened;
    if (opened === null) return false;
    const sheet = new opened.CSSStyleSheet();
    sheet.replaceSync(STYLE);
    opened.document.adoptedStyleSheets = [sheet];
    opened.document.title = title;
    opened.document.documentElement.lang = document.documentElement.lang;
    return true;
  }

  show(notes: TemplateResult): void {
    if (this.#window && !this.#window.closed) render(notes, this.#window.document.body);
  }

  close(): void {
    this.#window?.close();
    this.#window = null;
  }
}
