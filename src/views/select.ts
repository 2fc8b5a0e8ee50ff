/** How an element follows a store or the live frames: it re-renders only when its own slice is another one. */
import type { LitElement, ReactiveController, ReactiveControllerHost } from 'lit';
import type { Live, LiveFrame } from '../app/live.ts';
import type { Store } from '../app/store.ts';

/** Renderings a second for what is only read while a hand turns something else: figures, advice, closed drawers. */
export const CALMLY = 10;

/** Renderings a second of what follows the hand in words and figures: no eye reads faster. */
export const READABLY = 30;

/**
 * A slice of a store. The selector must give a stable value (a part of the document, or a memoised one). `most`: so many
 * renderings a second at most while a hand moves something; what is changed otherwise, and where the hand came to rest,
 * shows at once.
 */
export class Selected<T, V> implements ReactiveController {
  value: V;
  readonly #host: ReactiveControllerHost;
  readonly #store: Store<T>;
  readonly #select: (value: T) => V;
  readonly #pause: number;
  #stop: (() => void) | null = null;
  #asked = Number.NEGATIVE_INFINITY;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    host: LitElement,
    store: Store<T>,
    select: (value: T) => V,
    most: number = Number.POSITIVE_INFINITY,
  ) {
    this.#pause = 1000 / most;
    this.#host = host;
    this.#store = store;
    this.#select = select;
    this.value = select(store.current);
    host.addController(this);
  }

  hostConnected(): void {
    this.#take();
    this.#stop = this.#store.subscribe(() => this.#take());
  }

  hostDisconnected(): void {
    this.#stop?.();
    this.#stop = null;
    clearTimeout(this.#timer);
    this.#timer = undefined;
  }

  #take(): void {
    const next = this.#select(this.#store.current);
    if (Object.is(next, this.value) && this.#timer === undefined) return;
    this.value = next;
    const wait = this.#store.isMoving ? this.#asked + this.#pause - performance.now() : 0;
    if (!(wait > 0)) this.#ask();
    else this.#timer ??= setTimeout(() => this.#ask(), wait);
  }

  #ask(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#asked = performance.now();
    this.#host.requestUpdate();
  }
}

/** Every frame for drawing, and a few of them a second for words and numbers. */
export class LiveFrames implements ReactiveController {
  frame: LiveFrame | null;
  readonly #host: ReactiveControllerHost;
  readonly #live: Live;
  readonly #perSecond: number;
  readonly #each: ((frame: LiveFrame) => void) | null;
  #stop: (() => void) | null = null;
  #told = Number.NEGATIVE_INFINITY;

  constructor(
    host: LitElement,
    live: Live,
    perSecond: number,
    each: ((frame: LiveFrame) => void) | null = null,
  ) {
    this.#host = host;
    this.#live = live;
    this.#perSecond = perSecond;
    this.#each = each;
    this.frame = live.latest;
    host.addController(this);
  }

  hostConnected(): void {
    this.#stop = this.#live.subscribe((frame) => {
      this.#each?.(frame);
      if (frame.time - this.#told < 1 / this.#perSecond && frame.time >= this.#told) return;
      this.#told = frame.time;
      this.frame = frame;
      this.#host.requestUpdate();
    });
  }

  hostDisconnected(): void {
    this.#stop?.();
    this.#stop = null;
  }
}
