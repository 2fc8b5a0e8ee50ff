/**
 * A straight-line drag with one pointer: up or right is more, Shift ten times finer. Release keeps the value; Escape or
 * a cancelled pointer gives back the one from before. Moves are summed one by one, so pressing Shift never jumps.
 */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Fraction } from '../../quantity/units.ts';
import type { Phase } from './events.ts';
import { dragged } from './stepping.ts';

export interface DragGestureOptions {
  readonly get: () => Fraction;
  readonly set: (fraction: Fraction, phase: Phase) => void;
  readonly allowed: () => boolean;
}

interface Running {
  readonly surface: Element;
  readonly pointer: number;
  readonly before: Fraction;
  x: number;
  y: number;
  changed: boolean;
}

export class DragGesture implements ReactiveController {
  readonly #options: DragGestureOptions;
  #drag: Running | null = null;

  constructor(host: ReactiveControllerHost, options: DragGestureOptions) {
    this.#options = options;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.#finish('cancel');
  }

  get running(): boolean {
    return this.#drag !== null;
  }

  readonly onPointerDown = (event: PointerEvent): void => {
    if (this.#drag !== null || event.button !== 0 || !event.isPrimary || !this.#options.allowed()) return;
    const surface = event.currentTarget as Element;
    surface.setPointerCapture(event.pointerId);
    this.#drag = {
      surface,
      pointer: event.pointerId,
      before: this.#options.get(),
      x: event.clientX,
      y: event.clientY,
      changed: false,
    };
    // Escape must reach the drag wherever the focus is, and before the page's own uses of the key.
    window.addEventListener('keydown', this.#onKeyDown, true);
  };

  readonly onPointerMove = (event: PointerEvent): void => {
    const drag = this.#drag;
    if (drag === null || event.pointerId !== drag.pointer) return;
    const next = dragged(this.#options.get(), event.clientX - drag.x, drag.y - event.clientY, event.shiftKey);
    drag.x = event.clientX;
    drag.y = event.clientY;
    if (next === this.#options.get()) return;
    drag.changed = true;
    this.#options.set(next, 'move');
  };

  readonly onPointerUp = (event: PointerEvent): void => {
    if (event.pointerId === this.#drag?.pointer) this.#finish('end');
  };

  readonly onPointerCancel = (event: PointerEvent): void => {
    if (event.pointerId === this.#drag?.pointer) this.#finish('cancel');
  };

  readonly #onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    event.stopPropagation();
    this.#finish('cancel');
  };

  #finish(phase: 'end' | 'cancel'): void {
    const drag = this.#drag;
    if (drag === null) return;
    this.#drag = null;
    window.removeEventListener('keydown', this.#onKeyDown, true);
    if (drag.surface.hasPointerCapture(drag.pointer)) drag.surface.releasePointerCapture(drag.pointer);
    if (drag.changed) this.#options.set(phase === 'cancel' ? drag.before : this.#options.get(), phase);
  }
}
