/**
 * Keys and wheel on a native range: our own steps instead of the browser's, and one gesture from the first key press
 * to its release, so that holding an arrow is one undo step. The wheel counts only while the range has the focus.
 */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Fraction } from '../../quantity/units.ts';
import type { Phase } from './events.ts';
import { moved, moveForKey, type StepSizes, stepped, wheelSteps } from './stepping.ts';

/** A wheel gesture is over after this long without a further notch. */
const WHEEL_REST_MILLISECONDS = 400;

export interface StepGestureOptions {
  readonly sizes: () => StepSizes;
  readonly get: () => Fraction;
  readonly set: (fraction: Fraction, phase: Phase) => void;
  /** A key that is no step; true when it was used. */
  readonly other?: (event: KeyboardEvent) => boolean;
}

export class StepGesture implements ReactiveController {
  readonly #options: StepGestureOptions;
  #running = false;
  #leftOver = 0;
  #rest: ReturnType<typeof setTimeout> | null = null;

  constructor(host: ReactiveControllerHost, options: StepGestureOptions) {
    this.#options = options;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.finish();
  }

  readonly onKeyDown = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const move = moveForKey(event.key, event.shiftKey, this.#options.sizes());
    if (move === null) {
      if (this.#options.other?.(event)) event.preventDefault();
      return;
    }
    event.preventDefault();
    this.#go(moved(this.#options.get(), move));
  };

  readonly onKeyUp = (event: KeyboardEvent): void => {
    if (moveForKey(event.key, event.shiftKey, this.#options.sizes()) !== null) this.finish();
  };

  /** Bind with `passive: false`. */
  readonly onWheel = (event: WheelEvent): void => {
    const range = event.currentTarget as HTMLElement;
    const root = range.getRootNode() as Document | ShadowRoot;
    if (!range.contains(root.activeElement) || event.ctrlKey) return;
    event.preventDefault();
    // With Shift, browsers may report the turn as sideways.
    const delta = event.deltaY === 0 ? event.deltaX : event.deltaY;
    const pixels = event.deltaMode === 0 ? delta : Math.sign(delta) * 50;
    const { steps, leftOver } = wheelSteps(this.#leftOver, pixels);
    this.#leftOver = leftOver;
    if (steps === 0) return;
    const sizes = this.#options.sizes();
    let fraction = this.#options.get();
    for (let n = 0; n < Math.abs(steps); n++) {
      fraction = stepped(fraction, event.shiftKey ? sizes.fine : sizes.normal, steps > 0 ? 1 : -1);
    }
    this.#go(fraction);
    this.#rest = setTimeout(() => this.finish(), WHEEL_REST_MILLISECONDS);
  };

  /** Ends a running gesture with the value it has reached; bind to blur. */
  readonly finish = (): void => {
    this.#stopRest();
    if (!this.#running) return;
    this.#running = false;
    this.#options.set(this.#options.get(), 'end');
  };

  #go(fraction: Fraction): void {
    this.#stopRest();
    if (fraction === this.#options.get()) return;
    this.#running = true;
    this.#options.set(fraction, 'move');
  }

  #stopRest(): void {
    if (this.#rest !== null) clearTimeout(this.#rest);
    this.#rest = null;
  }
}
