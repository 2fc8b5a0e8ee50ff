/** An element that belongs to one application, given as its `app` property before it is first rendered. */
import { LitElement, type PropertyValues } from 'lit';
import type { Lampnote } from '../app/lampnote.ts';

export abstract class AppElement extends LitElement {
  static override properties = { app: { attribute: false } };

  declare app: Lampnote;
  #bound = false;

  /** Makes the controllers that follow the application's stores; called once, when `app` is there. */
  protected abstract bind(app: Lampnote): void;

  /** The page may stand before the application does: its language may still have to come. */
  protected override shouldUpdate(_changed: PropertyValues): boolean {
    return this.app !== undefined;
  }

  protected override willUpdate(_changed: PropertyValues): void {
    if (this.#bound) return;
    this.#bound = true;
    this.bind(this.app);
  }
}
