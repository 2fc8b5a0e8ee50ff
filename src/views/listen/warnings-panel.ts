/** `<warnings-panel>`: what this design will run into, worst first, each with its remedy. */
import { css, html, type TemplateResult } from 'lit';
import { derivedWarnings } from '../../app/derived-warnings.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Warning } from '../../circuit/warnings.ts';
import type { Design } from '../../design/design.ts';
import { words } from '../../words/en.ts';
import { warningWords } from '../../words/warnings.ts';
import { AppElement } from '../app-element.ts';
import { CALMLY, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';

export class WarningsPanel extends AppElement {
  static override styles = [
    common,
    css`
      summary h2 {
        display: inline;
      }
      ul {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 24em), 1fr));
        gap: 10px 28px;
        margin: 8px 0;
        padding: 0;
        list-style: none;
      }
      li {
        padding-left: 10px;
        border-left: var(--stroke-data) solid var(--hair);
        font-size: var(--text-control);
      }
      li.is-danger,
      li.is-wrong {
        border-left-color: var(--fault);
      }
      li.is-caution {
        border-left-color: var(--caution);
      }
      .is-danger strong,
      .is-wrong strong {
        color: var(--fault);
      }
      .is-caution strong {
        color: var(--caution);
      }
      li p {
        margin: 0 0 2px;
      }
    `,
  ];

  #design!: Selected<Design, Design>;

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design, CALMLY);
  }

  protected override render(): TemplateResult {
    const warnings = derivedWarnings(this.#design.value);
    const pressing = warnings.filter(({ severity }) => severity !== 'note');
    const notes = warnings.filter(({ severity }) => severity === 'note');
    return html`<details ?open=${pressing.some(({ severity }) => severity !== 'caution')}>
      <summary>
        <h2>${words.warnings.heading}</h2>
        <span class="small">${words.warnings.count(pressing.length, notes.length)}</span>
      </summary>
      ${pressing.length > 0 ? this.#list(pressing) : ''}
      ${
        notes.length > 0
          ? html`<details>
              <summary>${words.warnings.notes}</summary>
              ${this.#list(notes)}
            </details>`
          : ''
      }
    </details>`;
  }

  #list(warnings: readonly Warning[]): TemplateResult {
    return html`<ul>
      ${warnings.map((warning) => {
        const { who, reason, remedy, source } = warningWords(warning);
        return html`<li class="is-${warning.severity}">
          <p><strong>${words.warnings.severities[warning.severity]}${who ? ` · ${who}` : ''}.</strong> ${reason}</p>
          <p>${remedy}</p>
          <p class="small">${words.caution.source(source)}</p>
        </li>`;
      })}
    </ul>`;
  }
}

customElements.define('warnings-panel', WarningsPanel);

declare global {
  interface HTMLElementTagNameMap {
    'warnings-panel': WarningsPanel;
  }
}
