/** `<reference-note>`: a steady note to hold the voices against. */
import { css, html, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Session } from '../../app/session.ts';
import type { Design } from '../../design/design.ts';
import { centsBetween, frequencyOfNote, nearestNote } from '../../plan/notes.ts';
import { VOICES } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import { CALMLY, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';

/** From C2 to C7: what two such voices reach. */
const NOTES = Array.from({ length: 61 }, (_, i) => 36 + i);
/** Further apart than this, beats are no longer heard as beats. */
const BEAT_CENTS = 100;

export class ReferenceNote extends AppElement {
  static override styles = [
    common,
    css`
      .row {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 6px 16px;
        font-size: var(--text-control);
      }
      .row label {
        display: flex;
        align-items: center;
        gap: 6px;
      }
    `,
  ];

  #design!: Selected<Design, Design>;
  #reference!: Selected<Session, Session['reference']>;

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design, CALMLY);
    this.#reference = new Selected(this, app.session, (session) => session.reference);
  }

  protected override render(): TemplateResult {
    const { note, sounds } = this.#reference.value;
    const frequency = frequencyOfNote(note);
    const { voices } = derivedInstrument(this.#design.value);
    return html`<div class="row">
        <label>
          ${words.reference.note}
          <select
            @change=${(event: Event) =>
              this.app.setReference({ note: Number((event.currentTarget as HTMLSelectElement).value) })}
          >
            ${NOTES.map(
              (one) =>
                html`<option value=${one} .selected=${one === note}>
                  ${words.notes.shown(nearestNote(frequencyOfNote(one)).name)} · ${words.hertz(frequencyOfNote(one))}
                </option>`,
            )}
          </select>
        </label>
        <label>
          <input
            type="checkbox"
            .checked=${sounds}
            @change=${(event: Event) =>
              this.app.setReference({ sounds: (event.currentTarget as HTMLInputElement).checked })}
          />
          ${words.reference.sounds}
        </label>
      </div>
      <p class="small">
        ${VOICES.filter((voice) => voices[voice].cycle.frequency > 0).map((voice) => {
          const cents = centsBetween(frequency, voices[voice].cycle.frequency);
          const beats = Math.abs(voices[voice].cycle.frequency - frequency);
          return Math.abs(cents) <= BEAT_CENTS
            ? `${words.reference.beats(voice, cents, beats)} `
            : `${words.reference.far(voice, cents)} `;
        })}
      </p>`;
  }
}

customElements.define('reference-note', ReferenceNote);

declare global {
  interface HTMLElementTagNameMap {
    'reference-note': ReferenceNote;
  }
}
