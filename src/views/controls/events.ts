/** What the controls say to whoever placed them. Every event bubbles and crosses shadow roots. */
import type { Fraction } from '../../quantity/units.ts';

/** A gesture under way, its last word, or its withdrawal (the detail then carries the value from before). */
export type Phase = 'move' | 'end' | 'cancel';

/** `commit`: a value was entered and understood. */
export interface CommitDetail {
  readonly value: number;
}
/** `turn`: a trimmer moved. */
export interface TurnDetail {
  readonly rotation: Fraction;
  readonly phase: Phase;
}
/** `slide`: a slider moved; in the slider's own unit. */
export interface SlideDetail {
  readonly value: number;
  readonly phase: Phase;
}
/** `choose`: another choice was made. */
export interface ChooseDetail {
  readonly value: string;
}

/** What a reader of typed text answers. */
export type Reading =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly message: string };
export type ReadText = (text: string) => Reading;

export function fire<T>(from: EventTarget, type: string, detail: T): void {
  from.dispatchEvent(new CustomEvent<T>(type, { detail, bubbles: true, composed: true }));
}
