/** `<place-pitch>`: from wanted notes to parts. Margin, wish and drawer, search, candidates, sound, comparing. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import { deskOf, hasFound, type PitchDesk, type PitchView } from '../../app/pitch-desk.ts';
import type { Look, Session } from '../../app/session.ts';
import type { Design } from '../../design/design.ts';
import type { Pitch } from '../../design/pitch.ts';
import { pitchWords } from '../../words/en-pitch.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import { Selected } from '../select.ts';
import { marginStyles } from '../theme/margin.ts';
import { common } from '../theme/shared.ts';
import './abx-panel.ts';
import './candidate-panel.ts';
import './compare-panel.ts';
import './drawer-panel.ts';
import './results-panel.ts';
import './search-panel.ts';
import './shortlist-panel.ts';
import { wantedHeading, wantedPieces } from './wanted.ts';
import { whyWords } from './why.ts';
import './wish-panel.ts';

export class PlacePitch extends AppElement {
  static override styles = [
    common,
    marginStyles,
    css`
      .page {
        display: grid;
        grid-template-columns: minmax(0, 11em) minmax(0, 1fr);
        gap: 26px 30px;
        padding: 18px var(--side, 28px) 40px;
      }
      .body {
        display: grid;
        gap: 26px;
        min-width: 0;
      }
      .body > * {
        min-width: 0;
      }
      .wanted {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 2px 16px;
      }
      .wanted h2 {
        font-size: var(--text-title);
      }
      .wanted p {
        margin: 0;
        max-width: none;
        color: var(--muted);
        font-size: var(--text-control);
      }
      .link {
        min-height: 24px;
        padding: 1px 2px;
        border-color: transparent;
        background: none;
        color: var(--accent);
        text-decoration: underline 1px;
        text-underline-offset: 0.2em;
      }
      .demands {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
        gap: 26px 34px;
        margin: 10px 0 4px;
        padding: 14px 0;
        border-block: 1px solid var(--hair);
      }
      summary {
        margin-top: 6px;
        font-size: var(--text-control);
      }
      @media (max-width: 73.75em) {
        .demands {
          grid-template-columns: minmax(0, 1fr);
        }
      }
      @media (max-width: 47.5em) {
        .page {
          grid-template-columns: minmax(0, 1fr);
          gap: 22px;
        }
        .margin {
          grid-row: 2;
        }
      }
      .page.projector .demands {
        grid-template-columns: minmax(0, 1fr);
      }
      @media print {
        .page {
          display: block;
        }
        .page > * + * {
          margin-top: 20px;
        }
        details,
        abx-panel {
          display: none;
        }
      }
    `,
  ];

  #desk!: PitchDesk;
  #design!: Selected<Design, Pitch>;
  #view!: Selected<PitchView, PitchView>;
  #look!: Selected<Session, Look>;

  protected override bind(app: Lampnote): void {
    this.#desk = deskOf(app);
    this.#design = new Selected(this, app.design, (design) => design.pitch);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
    this.#look = new Selected(this, app.session, (session) => session.look);
  }

  protected override render(): TemplateResult {
    const pitch = this.#design.value;
    const { searched, chosen, open } = this.#view.value;
    const { app } = this;
    return html`<main>
      <div class="page ${this.#look.value}">
        <section class="margin" aria-label=${pitchWords.why}>
          ${whyWords(searched).map((text, i) => html`<p class=${i ? '' : 'why'}>${text}</p>`)}
          <caution-note .places=${['headphones', 'sound']}></caution-note>
        </section>
        <div class="body">
          <section aria-labelledby="wanted">
            <div class="wanted">
              <h2 id="wanted">${wantedHeading(pitch)}</h2>
              <p>${wantedPieces(pitch).join(' · ')}</p>
              <button type="button" class="link" @click=${() => this.#goTo('compare-panel')}>
                ${pitchWords.wanted.compare}
              </button>
            </div>
            <details .open=${open} @toggle=${this.#toggled}>
              <summary>${pitchWords.wanted.change}</summary>
              <div class="demands">
                <wish-panel .app=${app}></wish-panel>
                <drawer-panel .app=${app}></drawer-panel>
              </div>
            </details>
            <search-panel .app=${app}></search-panel>
          </section>
          ${hasFound(searched) ? html`<results-panel .app=${app}></results-panel>` : ''}
          ${this.#desk.candidate(chosen) ? html`<candidate-panel .app=${app}></candidate-panel>` : ''}
          <abx-panel .app=${app}></abx-panel>
          <shortlist-panel .app=${app} @look=${() => this.#goTo('candidate-panel')}></shortlist-panel>
          <compare-panel .app=${app}></compare-panel>
        </div>
      </div>
    </main>`;
  }

  /** Brings a part of the place into view, and the keys to it. */
  async #goTo(panel: 'candidate-panel' | 'compare-panel'): Promise<void> {
    await this.updateComplete;
    const element = this.renderRoot.querySelector<AppElement>(panel);
    await element?.updateComplete;
    const heading = element?.renderRoot.querySelector('h2');
    if (!heading) return;
    heading.tabIndex = -1;
    heading.focus();
  }

  readonly #toggled = (event: Event): void => {
    const { open } = event.currentTarget as HTMLDetailsElement;
    if (open !== this.#view.value.open) this.#desk.show({ open });
  };
}

customElements.define('place-pitch', PlacePitch);

declare global {
  interface HTMLElementTagNameMap {
    'place-pitch': PlacePitch;
  }
}
