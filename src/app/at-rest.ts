/**
 * Keeps a value that changes many times a second while a hand moves: it is written once the hand rests, and at the latest
 * when the page is left. A single change is written at once.
 */

/** Milliseconds; a hand that has not moved for this long rests. */
const REST = 400;

export class AtRest<T> {
  readonly #keep: (value: T) => void;
  #waiting: { readonly value: T; readonly timer: ReturnType<typeof setTimeout> } | null = null;

  constructor(keep: (value: T) => void) {
    this.#keep = keep;
  }

  /** Writes it now. */
  now(value: T): void {
    this.drop();
    this.#keep(value);
  }

  /** Writes it soon, unless another comes before. */
  soon(value: T): void {
    this.drop();
    this.#waiting = { value, timer: setTimeout(() => this.flush(), REST) };
  }

  /** Writes what still waits. */
  flush(): void {
    const waiting = this.#waiting;
    if (waiting) this.now(waiting.value);
  }

  /** What still waits is not written any more. */
  drop(): void {
    if (this.#waiting) clearTimeout(this.#waiting.timer);
    this.#waiting = null;
  }
}
