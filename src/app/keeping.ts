/**
 * The keeping of the design in this browser. Every tab keeps to one place, but none overwrites there what it has not
 * seen: then its own design is laid aside, and the person chooses. What does not read is laid aside as it is.
 */

import { type Complaint, decodeText, encodeText } from '../design/decode.ts';
import type { Design } from '../design/design.ts';
import { equalValues } from '../design/entries.ts';
import { AtRest } from './at-rest.ts';
import { heldNames, holdName } from './held-names.device.ts';
import {
  dropAside,
  dropText,
  forgetAll,
  keepText,
  keptText,
  type LaidAside,
  laidAside,
  layAside,
  onKeptElsewhere,
  ownAside,
  setOwnAside,
} from './storage.device.ts';
import { Store } from './store.ts';

/** A text beside the design: another tab's, or one that did not read. */
export interface Aside extends LaidAside {
  readonly holds:
    | { readonly ok: true; readonly design: Design }
    | { readonly ok: false; readonly complaints: readonly Complaint[] };
}

export interface KeepingState {
  /** The browser keeps nothing (full, or forbidden), and that was not yet read. */
  readonly refused: boolean;
  /** Another tab has changed what is kept. */
  readonly elsewhere: boolean;
  /** The first of what lies beside the design. */
  readonly aside: Aside | null;
  /** Everything was forgotten, and nothing kept since. */
  readonly forgotten: boolean;
}

const AS_IT_SHOULD_BE: KeepingState = { refused: false, elsewhere: false, aside: null, forgotten: false };

export class Keeping {
  readonly state = new Store<KeepingState>(AS_IT_SHOULD_BE);
  /** What was kept when this tab last looked. */
  #seen: string | null = null;
  /** The name of this tab's own design beside the kept one. */
  #own: string | null = null;
  /** What was refused when it was kept last. */
  readonly #refused = new Set<'design' | 'settings'>();
  /** The text this tab would keep. */
  #text: string | null = null;
  readonly #waiting = new AtRest<Design>((design) => this.#keep(design));

  /** The design this tab begins with; null when none is kept that reads. */
  begin(): Design | null {
    onKeptElsewhere(() => this.look());
    this.#seen = keptText();
    const own = laidAside().find(({ name }) => name === ownAside());
    const ownRead = own && decodeText(own.text);
    if (own && ownRead?.ok) {
      // Before a reload this tab had not chosen yet.
      this.#own = own.name;
      this.#text = own.text;
      this.#show({ elsewhere: true });
      void this.#holdOwn();
      return ownRead.design;
    }
    const read = this.#seen === null ? null : decodeText(this.#seen);
    if (read?.ok) this.#text = this.#seen;
    const unread = read?.ok === false && this.#seen !== null ? this.#setAside(this.#seen) : null;
    // Where even that has no room it is at least shown, as long as this tab is open.
    if (unread?.isKept) {
      dropText();
      this.#seen = null;
    }
    if (unread) this.#show({ aside: asideOf(unread) });
    else void this.#offerNext();
    return read?.ok ? read.design : null;
  }

  /** Whether this browser kept nothing when it last should have. */
  get isRefused(): boolean {
    return this.#refused.has('design');
  }

  /** Keeps it at once; while a hand moves it (`isMoving`), once that rests. */
  keep(design: Design, isMoving = false): void {
    if (isMoving) this.#waiting.soon(design);
    else this.#waiting.now(design);
  }

  /** Keeps what still waits for a hand to rest. */
  flush(): void {
    this.#waiting.flush();
  }

  #keep(design: Design): void {
    const text = encodeText(design);
    this.#text = text;
    const stored = keptText();
    if (stored === text) this.#settle(text);
    else if (this.state.current.elsewhere || (stored !== null && stored !== this.#seen)) this.#layOwnAside();
    else this.told('design', this.#put(text));
  }

  /** Whether something was kept when it should be. A refusal is said once, until all is kept again. */
  told(what: 'design' | 'settings', isKept: boolean): void {
    const wasRefused = this.#refused.size > 0;
    if (isKept) this.#refused.delete(what);
    else this.#refused.add(what);
    const isRefused = this.#refused.size > 0;
    if (isRefused !== wasRefused) this.#show({ refused: isRefused });
    if (isKept) this.#show({ forgotten: false });
  }

  /** A design that gives way to another is laid beside it: Undo goes with the page. Told when the page begins anew. */
  layBefore(design: Design): void {
    const text = encodeText(design);
    const aside = laidAside();
    if (aside.some((one) => one.text === text)) return;
    const latest = aside.filter(({ name }) => name.startsWith(BEFORE)).toReversed();
    for (const { name } of latest.slice(MOST_BEFORE - 1)) dropAside(name);
    layAside({ name: BEFORE + freeName(), text });
  }

  /** The other tab's design, for this one to go on with; null when it is gone or does not read. */
  takeTheirs(): Design | null {
    const stored = keptText();
    const read = stored === null ? null : decodeText(stored);
    if (!read?.ok) return null;
    this.#settle(stored);
    return read.design;
  }

  /** This tab's design takes the place of the other's, which is laid aside. */
  keepMine(): void {
    const theirs = keptText();
    const aside = theirs === null ? null : this.#setAside(theirs);
    if (this.#text !== null) this.told('design', this.#put(this.#text));
    this.#settle(this.#seen);
    if (aside) this.#show({ aside: asideOf(aside) });
  }

  /** What lies beside is done with. */
  letGo(): void {
    const { aside } = this.state.current;
    if (aside) dropAside(aside.name);
    this.#show({ aside: null });
    void this.#offerNext();
  }

  /** The note that nothing is kept was read. */
  closeRefused(): void {
    this.#show({ refused: false });
  }

  /** Everything out of this browser; nothing is kept again before something changes. False when it was refused. */
  async forget(): Promise<boolean> {
    this.#waiting.drop();
    const isForgotten = await forgetAll();
    this.#seen = null;
    this.#own = null;
    this.#show({ elsewhere: false, aside: null, forgotten: isForgotten });
    return isForgotten;
  }

  #put(text: string): boolean {
    const isKept = keepText(text);
    if (isKept) this.#seen = text;
    return isKept;
  }

  /** Looks whether another tab has changed what is kept. */
  look(): void {
    const stored = keptText();
    if (stored === this.#seen) return;
    // Edits that are kept nowhere else must not go with this tab.
    if (stored === this.#text) this.#settle(stored);
    else if (this.#text !== this.#seen) this.#layOwnAside();
    else this.#show({ elsewhere: true });
  }

  /** Both agree again. */
  #settle(stored: string | null): void {
    this.#seen = stored;
    if (this.#own !== null) {
      dropAside(this.#own);
      setOwnAside(null);
      this.#own = null;
    }
    this.#show({ elsewhere: false });
  }

  #layOwnAside(): void {
    if (this.#text === null) return;
    if (this.#own === null) {
      this.#own = freeName();
      void holdName(this.#own);
    }
    setOwnAside(this.#own);
    this.told('design', layAside({ name: this.#own, text: this.#text }));
    this.#show({ elsewhere: true });
  }

  #setAside(text: string): LaidAside & { readonly isKept: boolean } {
    const aside = { name: freeName(), text };
    return { ...aside, isKept: layAside(aside) };
  }

  /** A tab that was doubled has its name from the other, which goes on using it: then it takes one of its own. */
  async #holdOwn(): Promise<void> {
    const name = this.#own;
    if (name === null || (await holdName(name)) || this.#own !== name) return;
    this.#own = null;
    this.#layOwnAside();
  }

  /** Shows the first of what lies aside and belongs to no living tab. */
  async #offerNext(): Promise<void> {
    if (laidAside().length === 0) return;
    const held = await heldNames();
    const next = laidAside().find(({ name, text }) => {
      // What is kept again, by Undo, need not lie beside itself.
      const isKept = name.startsWith(BEFORE) && text === this.#seen;
      if (isKept) dropAside(name);
      return name !== this.#own && !held.has(name) && !isKept;
    });
    if (next && this.state.current.aside === null) this.#show({ aside: asideOf(next) });
  }

  #show(change: Partial<KeepingState>): void {
    this.state.dispatch((state) => {
      const next = { ...state, ...change };
      return equalValues(next, state) ? state : next;
    });
  }
}

const asideOf = ({ name, text }: LaidAside): Aside => ({ name, text, holds: decodeText(text) });

/** Names of what gave way to another design begin so: they sort behind those of the tabs. */
const BEFORE = 'before-';

/** So many of these are kept; the oldest goes first. */
const MOST_BEFORE = 3;

/** A later one sorts behind; two tabs never have the same. */
const freeName = (): string => `${Date.now()}-${Math.random().toString(36).slice(2)}`;
