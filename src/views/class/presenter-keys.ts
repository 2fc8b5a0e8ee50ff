/** The presenter's keys: one key, one act; never while a slider, box, list or button has the key for itself. */
import { html, type LitElement, type ReactiveController, type TemplateResult } from 'lit';

/** The key of a button, as it stands on it. */
export const keyOf = (name: string): TemplateResult =>
  html`<span class="key" aria-hidden="true">${name}</span>`;

export type PresenterAct = 'advance' | 'back' | 'show' | 'free' | 'reset' | 'notes' | 'projector' | 'sound';

const ACTS: Readonly<Record<string, PresenterAct>> = {
  Enter: 'advance',
  ArrowRight: 'advance',
  PageDown: 'advance',
  ArrowLeft: 'back',
  PageUp: 'back',
  ' ': 'show',
  f: 'free',
  r: 'reset',
  n: 'notes',
  p: 'projector',
  s: 'sound',
};

export class PresenterKeys implements ReactiveController {
  readonly #on: () => boolean;
  readonly #act: (act: PresenterAct) => void;

  constructor(host: LitElement, on: () => boolean, act: (act: PresenterAct) => void) {
    this.#on = on;
    this.#act = act;
    host.addController(this);
  }

  hostConnected(): void {
    window.addEventListener('keydown', this.#key);
  }

  hostDisconnected(): void {
    window.removeEventListener('keydown', this.#key);
  }

  readonly #key = (event: KeyboardEvent): void => {
    if (!this.#on() || event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
    const act = ACTS[event.key.length === 1 ? event.key.toLowerCase() : event.key];
    if (act === undefined || takesKey(event)) return;
    event.preventDefault();
    // A count still being typed is taken before its box goes.
    for (const one of event.composedPath()) if (one instanceof HTMLInputElement) one.blur();
    this.#act(act);
  };
}

/** Keys that a kind of field has no use for: a presenter's clicker goes on from an answer just chosen or counted, and Enter
 * from a slider just moved. */
const SPARED: Readonly<Record<string, RegExp>> = {
  radio: /^(Enter$|Page|[a-z]$)/i,
  checkbox: /^(Enter$|Page|[a-z]$)/i,
  range: /^(Enter$|[a-z]$)/i,
  number: /^Page/,
};

/** Whether what has the focus uses the key itself. */
function takesKey(event: KeyboardEvent): boolean {
  return event.composedPath().some((one) => {
    if (one instanceof HTMLInputElement) return !SPARED[one.type]?.test(event.key);
    if (one instanceof HTMLSelectElement || one instanceof HTMLTextAreaElement) return true;
    // Space presses a button or opens a fold, and so does Enter; letters and arrows mean nothing to them.
    if (event.key !== ' ' && event.key !== 'Enter') return false;
    return (
      one instanceof HTMLAnchorElement ||
      one instanceof HTMLButtonElement ||
      (one instanceof HTMLElement && one.localName === 'summary')
    );
  });
}
