/** How an element follows a store or the live frames: it re-renders only when its own slice is another one. */
import type { LitElement, ReactiveController, ReactiveControllerHost } from 'lit';
import type { Live, LiveFrame } from '../app/live.ts';
import type { Store } from '../app/store.ts';

/** A slice of a store. The selector must give a stable value (a part of the document, or a memoised one). */
export class Selected<T, V> implements ReactiveController {
  value: V;
  readonly #host: ReactiveControllerHost;
  readonly #store: Store<T>;
  readonly #select: (value: T) => V;
  #stop: (() => void) | null = null;

  constructor(host: LitElement, store: Store<T>, select: (value: T) => V) {
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
  }

  #take(): void {
    const next = this.#select(this.#store.current);
    if (Object.is(next, this.value)) return;
    this.value = next;
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
