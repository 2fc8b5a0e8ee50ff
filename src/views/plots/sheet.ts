/**
 * What every drawing needs to know about its place on the page, kept up to date: its width, the size and face of its
 * text (for measuring), and that the look has changed. One controller per chart.
 */
import type { LitElement, ReactiveController } from 'lit';

/** Narrower than this, charts use fewer ticks. Px. */
const NARROW_PIXELS = 480;

/** What A4 and Letter both have between the margins of a place, at the size browsers print. Px. */
const PAPER_PIXELS = 640;

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
  /** Px on the screen; 0 until laid out. */
  #laidOut = 0;
  #isOnPaper = false;
  /** Px of the host's own text. */
  fontSize = 13;
  #family = 'sans-serif';
  #headFamily = 'serif';

  constructor(host: LitElement, lookChanged: () => void = () => {}) {
    this.#host = host;
    this.#lookChanged = lookChanged;
    host.addController(this);
  }

  /** Px available; 0 until laid out. */
  get width(): number {
    return this.#isOnPaper ? Math.min(PAPER_PIXELS, this.#laidOut) : this.#laidOut;
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
      if (width === this.#laidOut) return;
      this.#laidOut = width;
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
    window.addEventListener('beforeprint', this.#paper);
    window.addEventListener('afterprint', this.#paper);
    // Labels measured with a stand-in face are measured again with the real one.
    document.fonts.addEventListener('loadingdone', this.#change);
  }

  hostDisconnected(): void {
    this.#sizes?.disconnect();
    this.#looks?.disconnect();
    for (const query of this.#queries) query.removeEventListener('change', this.#change);
    window.removeEventListener('beforeprint', this.#paper);
    window.removeEventListener('afterprint', this.#paper);
    document.fonts.removeEventListener('loadingdone', this.#change);
    this.#laidOut = 0;
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

  /** Paper is laid out without another measuring, and at once: what is as wide as the screen would be cut off. */
  readonly #paper = ({ type }: Event): void => {
    this.#isOnPaper = type === 'beforeprint';
    if (this.#laidOut <= PAPER_PIXELS) return;
    this.#host.requestUpdate();
    this.#host['performUpdate']();
  };

  #read(): void {
    const style = getComputedStyle(this.#host);
    this.fontSize = Number.parseFloat(style.fontSize) || 13;
    this.#family = style.fontFamily;
    this.#headFamily = style.getPropertyValue('--font-head').trim() || 'serif';
  }
}
