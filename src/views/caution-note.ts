/** `<caution-note>`: the cautions of the places where a hazard arises. The first is always in sight. */
import { css, html, LitElement, type TemplateResult } from 'lit';
import { type CautionPlace, cautionsAt, cautionWords } from '../words/cautions.ts';
import { words } from '../words/en.ts';
import { rows } from './rows.ts';
import { common } from './theme/shared.ts';

export class CautionNote extends LitElement {
  static override properties = { places: rows };
  static override styles = [
    common,
    css`
      .note {
        padding-left: 10px;
        border-left: var(--stroke-data) solid var(--caution);
        color: var(--muted);
        font-size: var(--text-small);
        line-height: 1.4;
      }
      strong {
        color: var(--caution);
      }
      p {
        margin: 0 0 6px;
      }
    `,
  ];

  declare places: readonly CautionPlace[];

  constructor() {
    super();
    this.places = [];
  }

  protected override render(): TemplateResult {
    const cautions = cautionsAt(...this.places);
    return html`<div class="note" role="note" aria-label=${words.caution.heading}>
      ${cautions.map(
        (caution, i) =>
          html`<p>
            ${i === 0 ? html`<strong>${words.caution.heading}.</strong> ` : ''}${caution.words}
            <span class="visually-hidden">${words.caution.source(caution.source)}</span>
          </p>`,
      )}
      <p>${cautionWords.localRules}</p>
    </div>`;
  }
}

customElements.define('caution-note', CautionNote);

declare global {
  interface HTMLElementTagNameMap {
    'caution-note': CautionNote;
  }
}
