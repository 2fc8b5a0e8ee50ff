/** `<shortlist-panel>`: the candidates kept in the document: heard, looked at, taken off. */
import { css, html, type TemplateResult } from 'lit';
import type { Auditioned } from '../../app/audition.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { deskOf, type PitchDesk } from '../../app/pitch-desk.ts';
import { targetPiece } from '../../app/pitch-pieces.ts';
import type { Design } from '../../design/design.ts';
import type { Candidate } from '../../design/pitch.ts';
import { unlist } from '../../design/pitch-commands.ts';
import { middleHertz } from '../../plan/timing.ts';
import { foundWords } from '../../words/en-pitch-found.ts';
import { AppElement } from '../app-element.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { noteText } from './bars.ts';
import { panelStyles } from './panel-styles.ts';

const words = foundWords.shortlist;

export class ShortlistPanel extends AppElement {
  static override styles = [
    common,
    panelStyles,
    css`
      ol {
        margin: 6px 0;
        padding: 0;
        list-style: none;
      }
      li {
        padding: 6px 0;
        border-bottom: 1px solid var(--hair);
      }
      li p {
        margin: 0;
        max-width: none;
      }
    `,
  ];

  #desk!: PitchDesk;
  #design!: Selected<Design, Design>;
  #playing!: Selected<Auditioned | null, Auditioned | null>;

  protected override bind(app: Lampnote): void {
    this.#desk = deskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#playing = new Selected(this, app.audition.playing, (playing) => playing);
  }

  protected override render(): TemplateResult {
    const { shortlist } = this.#design.value.pitch;
    return html`<section aria-labelledby="shortlist">
      <h2 id="shortlist">${words.heading}</h2>
      ${
        shortlist.length === 0
          ? html`<p class="muted">${words.empty}</p>`
          : html`<ol>
              ${shortlist.map((candidate, place) => this.#row(candidate, place))}
            </ol>`
      }
    </section>`;
  }

  #row(candidate: Candidate, place: number): TemplateResult {
    const { parts, targets } = candidate;
    const { a4Hertz } = this.#design.value.pitch.wish;
    const note = (voice: 'A' | 'B') => noteText(middleHertz(targets[voice]), a4Hertz);
    const name = foundWords.name(place + 1, parts.A, parts.B);
    const id = `kept-${place}`;
    const playing = this.#playing.value?.id === id;
    return html`<li>
      <p>
        ${words.row(foundWords.shortParts(parts.A), foundWords.shortParts(parts.B))}
        <span class="muted">${words.targets(note('A'), note('B'))}</span>
      </p>
      <div class="row">
        <button
          type="button"
          aria-pressed=${playing}
          @click=${() => {
            if (playing) this.app.audition.stop();
            else void this.app.audition.play(id, targetPiece(this.#design.value, candidate));
          }}
        >
          ${words.hear(name)}
        </button>
        <button type="button" @click=${() => this.#desk.show({ chosen: { of: 'kept', place } })}>
          ${words.look(name)}
        </button>
        <button type="button" @click=${() => this.app.change(words.removeStep, unlist(place))}>
          ${words.remove(name)}
        </button>
      </div>
    </li>`;
  }
}

customElements.define('shortlist-panel', ShortlistPanel);

declare global {
  interface HTMLElementTagNameMap {
    'shortlist-panel': ShortlistPanel;
  }
}
