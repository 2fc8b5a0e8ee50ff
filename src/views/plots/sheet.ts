/**
 * What every drawing needs to know about its place on the page, kept up to date: its width, the size and face of its
 * text (for measuring), and that the look has changed. One controller per chart.
 */
import type { LitElement, ReactiveController } from 'lit';

/** Narrower than this, charts use fewer ticks. Px. */
const NARROW_PIXELS = 480;

let pen: CanvasRenderingContext2D | null = null;

const QUERIES = [
  '(prefers-contrast: more)',
  '(forced-colors: active)',
  '(prefers-reduced-motion: reduce)',
  'print',
];

export class Sheet implements ReactiveController {
  readonly #host: LitElement;
  readonly #lookChanged: () => void;
  #sizes: ResizeObserver | null = null;
  #looks: MutationObserver | null = null;
  #queries: MediaQueryList[] = [];
  /** Px available; 0 until laid out. */
  width = 0;
  /** Px of the host's own text. */
  fontSize = 13;
  #family = 'sans-serif';
  #headFamily = 'serif';

  constructor(host: LitElement, lookChanged: () => void = () => {}) {
    this.#host = host;
    this.#lookChanged = lookChanged;
    host.addController(this);
  }

  get narrow(): boolean {
    return this.width <= NARROW_PIXELS;
  }

  get reducedMotion(): boolean {
    return window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  }

  hostConnected(): void {
    this.#sizes = new ResizeObserver((entries) => {
      const width = Math.floor(entries.at(-1)?.contentRect.width ?? 0);
      if (width === this.width) return;
      this.width = width;
      this.#read();
      this.#host.requestUpdate();
    });
    this.#sizes.observe(this.#host);
    this.#looks = new MutationObserver(this.#change);
    this.#looks.observe(document.documentElement, {
      attributes: true,
      attributeFilter: ['data-look', 'lang'],
    });
    this.#queries = QUERIES.map((query) => window.matchMedia(query));
    for (const query of this.#queries) query.addEventListener('change', this.#change);
    // Labels measured with a stand-in face are measured again with the real one.
    document.fonts.addEventListener('loadingdone', this.#change);
  }

  hostDisconnected(): void {
    this.#sizes?.disconnect();
    this.#looks?.disconnect();
    for (const query of this.#queries) query.removeEventListener('change', this.#change);
    document.fonts.removeEventListener('loadingdone', this.#change);
    this.width = 0;
  }

  /** Width of a text in px. */
  measure(text: string, face: 'plain' | 'bold' | 'note' = 'plain'): number {
    pen ??= document.createElement('canvas').getContext('2d');
    if (pen === null) return text.length * this.fontSize * 0.55;
    pen.font = this.font(face);
    return pen.measureText(text).width;
  }

  /** A CSS font value for a canvas. */
  font(face: 'plain' | 'bold' | 'note' = 'plain'): string {
    if (face === 'note') return `italic ${this.fontSize}px ${this.#headFamily}`;
    return `${face === 'bold' ? '600 ' : ''}${this.fontSize}px ${this.#family}`;
  }

  /** A token of the present look. */
  token(name: string): string {
    return getComputedStyle(this.#host).getPropertyValue(name).trim();
  }

  /** A token that is a length in px. */
  pixels(name: string): number {
    return Number.parseFloat(this.token(name)) || 1.5;
  }

  readonly #change = (): void => {
    this.#read();
    this.#lookChanged();
    this.#host.requestUpdate();
  };

  #read(): void {
    const style = getComputedStyle(this.#host);
    this.fontSize = Number.parseFloat(style.fontSize) || 13;
    this.#family = style.fontFamily;
    this.#headFamily = style.getPropertyValue('--font-head').trim() || 'serif';
  }
}
