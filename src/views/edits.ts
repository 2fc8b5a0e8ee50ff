/** What the panels share: reading typed quantities, and passing a control's gesture on as one undo step. */
import type { Lampnote } from '../app/lampnote.ts';
import type { Command } from '../design/commands.ts';
import { formatQuantity } from '../quantity/format.ts';
import { type Limits, parseQuantity, type QuantityKind } from '../quantity/parse.ts';
import { words } from '../words/en.ts';
import type { Phase, Reading, ReadText } from './controls/events.ts';

/** A reader for one quantity within limits; its refusals are sentences. */
export function reader(quantity: QuantityKind, limits: Limits): ReadText {
  return (text) => {
    const reading = parseQuantity(text, quantity, limits);
    return reading.ok ? reading : { ok: false, message: words.field.problem(reading.problem) };
  };
}

/** As `reader`, and the word for "none fitted" counts as `none`. */
export function readerOrNone(quantity: QuantityKind, limits: Limits, none: number): ReadText {
  const read = reader(quantity, limits);
  return (text) => (text.trim().toLowerCase() === words.field.none ? { ok: true, value: none } : read(text));
}

/** Reads a trimmer's place: a share of its travel, or the quantity it gives, turned into a rotation. */
export function rotationReader(
  quantity: 'resistance' | 'voltage',
  ends: readonly [number, number],
  rotationFor: (value: number) => number,
): ReadText {
  const limits = { min: Math.min(...ends), max: Math.max(...ends) };
  return (text): Reading => {
    const share = parseQuantity(text, 'share', { min: 0, max: 1 });
    if (share.ok) return share;
    const reading = parseQuantity(text, quantity);
    if (!reading.ok) {
      const problem = share.problem.kind === 'outside' ? share.problem : reading.problem;
      return { ok: false, message: words.field.problem(problem) };
    }
    const rotation = rotationFor(reading.value);
    // The stops themselves are printed rounded: what is printed there must be accepted there.
    if (rotation >= -1e-3 && rotation <= 1 + 1e-3)
      return { ok: true, value: Math.min(1, Math.max(0, rotation)) };
    const { rotationOrOhms, rotationOrVolts } = words.field;
    const refused = quantity === 'resistance' ? rotationOrOhms : rotationOrVolts;
    return { ok: false, message: refused(text.trim(), reading.value, limits) };
  };
}

/**
 * A number as a box holds it. A comma with three figures behind it may part thousands elsewhere, and is refused as typed;
 * a nought more tells that it does not.
 */
export const boxText = (text: string): string =>
  text.replace(/^-?[1-9]\d{0,2},\d{3}(?!\d)/, (number) => `${number}0`);

export const ohmsText = (value: number | null): string =>
  value === null ? words.field.none : boxText(formatQuantity(value, 'Ω'));
export const ohmsOrNoneText = (value: number | null): string =>
  value === 0 ? words.field.none : ohmsText(value);
export const faradsText = (value: number | null): string =>
  value === null ? words.field.none : boxText(formatQuantity(value, 'F'));

export const voltsText = (value: number | null): string =>
  value === null ? words.field.none : boxText(formatQuantity(value, 'V'));

/** "None fitted" as a value that a field can hold. */
export const NONE = Number.POSITIVE_INFINITY;
export const orNone =
  (format: (value: number | null) => string) =>
  (value: number | null): string =>
    format(value === NONE ? null : value);

/** Passes gestures of controls to the document: moves of one gesture are one step, a withdrawn one is none. */
export class GestureEdits {
  readonly #app: Lampnote;
  #gesture: object | null = null;

  constructor(app: Lampnote) {
    this.#app = app;
  }

  edit(label: string, command: Command, phase: Phase): void {
    if (phase === 'cancel') {
      this.#app.design.cancel(this.#gesture);
      this.#gesture = null;
      return;
    }
    this.#gesture ??= { label };
    this.#app.change(label, command, this.#gesture);
    if (phase === 'end') {
      this.#app.design.endGesture();
      this.#gesture = null;
    }
  }
}
