/**
 * Holds one immutable value, changes it through one door, remembers what can be taken back.
 * A command returns the next value; returning the same object means nothing happened.
 */

export type Listener = () => void;

export class Store<T> {
  #current: T;
  readonly #listeners = new Set<Listener>();
  #telling = false;

  constructor(initial: T) {
    this.#current = initial;
  }

  get current(): T {
    return this.#current;
  }

  /** Changes the value. Throws when called from inside a notification: a change must not answer a change. */
  dispatch(command: (value: T) => T): void {
    this.refuseWhileTelling();
    this.#set(command(this.#current));
  }

  protected refuseWhileTelling(): void {
    if (this.#telling) throw new Error('A change was made while the last one was still being told.');
  }

  /** More changes are to be expected at once: a hand is moving something. */
  get isMoving(): boolean {
    return false;
  }

  /** Calls back after every change, until the returned function is called. */
  subscribe(listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #set(next: T): void {
    if (Object.is(next, this.#current)) return;
    this.#current = next;
    this.tell();
  }

  /** Calls every listener. */
  protected tell(): void {
    this.#telling = true;
    try {
      for (const listener of [...this.#listeners]) listener();
    } finally {
      this.#telling = false;
    }
  }
}

/** The most changes kept; the oldest are let go first. */
const MOST_STEPS = 20_000;

interface Step<T> {
  readonly label: string;
  readonly before: T;
}

/** What can be taken back and done again. */
export interface History {
  readonly undo: string | null;
  readonly redo: string | null;
}

/** A document laid aside with its history. */
interface Aside<T> {
  readonly value: T;
  readonly past: Step<T>[];
  readonly future: Step<T>[];
}

/** A store whose changes can be taken back. Steps of one gesture (same `gesture`) are one change. */
export class DocumentStore<T> extends Store<T> {
  #aside: Aside<T> | null = null;
  #past: Step<T>[] = [];
  #future: Step<T>[] = [];
  #gesture: unknown = null;
  /** What could be done again before the gesture under way began. */
  #futureBefore: Step<T>[] = [];

  /** Changes the document as one step; while `gesture` stays the same, as part of that step. */
  change(label: string, command: (value: T) => T, gesture: unknown = null): void {
    this.refuseWhileTelling();
    const before = this.current;
    const next = command(before);
    if (Object.is(next, before)) return;
    const merges = gesture !== null && gesture === this.#gesture;
    if (!merges) {
      this.#past.push({ label, before });
      this.#futureBefore = this.#future;
      if (this.#past.length > MOST_STEPS) this.#past.shift();
    }
    this.#future = [];
    this.#gesture = gesture;
    this.dispatch(() => next);
  }

  /** A gesture that was given up: the document goes back to where it began, without a step. */
  cancel(gesture: unknown): void {
    if (gesture === null || gesture !== this.#gesture) return;
    this.refuseWhileTelling();
    this.#gesture = null;
    const step = this.#past.pop();
    this.#future = this.#futureBefore;
    if (step) this.dispatch(() => step.before);
  }

  override get isMoving(): boolean {
    return this.#gesture !== null;
  }

  /** A gesture that is over: the next change is a step of its own. Told, as what waited for the hand to rest may go on. */
  endGesture(): void {
    if (this.#gesture === null) return;
    this.refuseWhileTelling();
    this.#gesture = null;
    this.tell();
  }

  undo(): void {
    this.#move(this.#past, this.#future);
  }

  redo(): void {
    this.#move(this.#future, this.#past);
  }

  /** The document that is one's own: the one laid aside, while another lies here. */
  get own(): T {
    return this.#aside ? this.#aside.value : this.current;
  }

  /** Another document lies here for a while. */
  get isLent(): boolean {
    return this.#aside !== null;
  }

  /** Lays another document here, with a history of its own; the first one is kept aside, whole. */
  lend(value: T): void {
    this.refuseWhileTelling();
    this.#aside ??= { value: this.current, past: this.#past, future: this.#future };
    this.#begin([], []);
    this.dispatch(() => value);
  }

  /** The document that was laid aside comes back with its history. */
  giveBack(): void {
    this.refuseWhileTelling();
    const aside = this.#aside;
    if (aside === null) return;
    this.#begin(aside.past, aside.future);
    this.dispatch(() => aside.value);
    this.#aside = null;
  }

  #begin(past: Step<T>[], future: Step<T>[]): void {
    this.#past = past;
    this.#future = future;
    this.#gesture = null;
  }

  get history(): History {
    return { undo: this.#past.at(-1)?.label ?? null, redo: this.#future.at(-1)?.label ?? null };
  }

  #move(from: Step<T>[], to: Step<T>[]): void {
    this.refuseWhileTelling();
    const step = from.pop();
    if (!step) return;
    this.#gesture = null;
    to.push({ label: step.label, before: this.current });
    this.dispatch(() => step.before);
  }
}
