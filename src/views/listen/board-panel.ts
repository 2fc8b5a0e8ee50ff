/** `<board-panel>`: what both voices share: chips, output network, supply, noise. */
import { css, html, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import * as commands from '../../design/commands.ts';
import type { Design } from '../../design/design.ts';
import { LIMITS, NOTES_LENGTH } from '../../design/limits.ts';
import type { ComparatorId } from '../../parts/comparators.ts';
import type { SupplyId } from '../../parts/supplies.ts';
import { TIMERS, type TimerId } from '../../parts/timers.ts';
import { VOICES } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import '../controls/choice-row.ts';
import type { ChooseDetail, CommitDetail, ReadText } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import { faradsText, NONE, ohmsText, orNone, reader, readerOrNone, voltsText } from '../edits.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { choicesOf } from './choices.ts';

const read = {
  volts: reader('voltage', LIMITS.supplyVolts),
  mix: reader('resistance', LIMITS.mixOhms),
  shunt: readerOrNone('resistance', LIMITS.shuntOhms, NONE),
  coupling: readerOrNone('capacitance', LIMITS.couplingFarads, NONE),
  load: reader('resistance', LIMITS.loadOhms),
  noise: reader('voltage', LIMITS.noiseVolts),
};

/** Fitted when somebody asks for mixing resistors again. */
const USUAL_MIX = { A: 47_000, B: 47_000 } as const;

export class BoardPanel extends AppElement {
  static override styles = [
    common,
    css`
      .parts {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 19em), 1fr));
        gap: 6px 28px;
        margin: 8px 0 10px;
        --label-width: 6.4em;
        --field-width: 6.4em;
      }
      summary h2 {
        display: inline;
      }
      .note {
        color: var(--caution);
      }
      .notes {
        display: block;
        max-width: var(--measure);
        margin: 8px 0 12px;
        font-size: var(--text-control);
      }
      textarea {
        display: block;
        width: 100%;
        padding: 4px 8px;
        border: var(--stroke-control) solid var(--control-line);
        border-radius: var(--radius);
        background: var(--surface);
        color: var(--ink);
        font: inherit;
      }
    `,
  ];

  #design!: Selected<Design, Design>;

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design);
  }

  protected override render(): TemplateResult {
    const { output, supply, timer, comparator, noise, notes } = this.#design.value;
    return html`<details>
      <summary><h2>${words.board.heading}</h2></summary>
      <div class="parts">
        ${this.#choice(words.board.timer, words.board.timers, timer, (id) => commands.chooseTimer(id as TimerId))}
        ${this.#choice(words.board.comparator, words.board.comparators, comparator, (id) =>
          commands.chooseComparator(id as ComparatorId),
        )}
        ${this.#choice(words.board.supply, words.board.supplies, supply.kind, (id) =>
          commands.chooseSupply(id as SupplyId),
        )}
        ${this.#field(words.board.volts, supply.volts, voltsText, read.volts, (volts) => commands.setSupply({ volts }))}
        ${this.#choice(
          words.board.mixing,
          words.board.mixings,
          output.mixOhms ? 'resistors' : 'joined',
          (id) => commands.setMixing(id === 'joined' ? null : USUAL_MIX),
        )}
        ${
          output.mixOhms
            ? VOICES.map((voice) =>
                this.#field(words.board.mix(voice), output.mixOhms![voice], ohmsText, read.mix, (ohms) =>
                  commands.setMixOhms(voice, ohms),
                ),
              )
            : ''
        }
        ${this.#field(words.board.shunt, output.shuntOhms ?? NONE, orNone(ohmsText), read.shunt, (ohms) =>
          commands.setShuntOhms(ohms === NONE ? null : ohms),
        )}
        ${this.#field(
          words.board.coupling,
          output.coupling?.farads ?? NONE,
          orNone(faradsText),
          read.coupling,
          (farads) =>
            commands.setCoupling(farads === NONE ? null : { farads, kind: output.coupling?.kind ?? 'film' }),
        )}
        ${this.#field(words.board.load, output.loadOhms, ohmsText, read.load, commands.setLoadOhms)}
        ${this.#field(words.board.noise, noise.voltsRms, voltsText, read.noise, commands.setNoise)}
      </div>
      ${this.#says(this.#design.value)}
      <label class="notes"
        >${words.board.notes}
        <textarea
          rows="3"
          maxlength=${NOTES_LENGTH}
          .value=${notes}
          @change=${(event: Event) =>
            this.app.change(
              words.board.notesLabel,
              commands.annotate((event.currentTarget as HTMLTextAreaElement).value),
            )}
        ></textarea>
      </label>
      <caution-note .places=${['output', 'supply', 'building']}></caution-note>
    </details>`;
  }

  #says(design: Design): TemplateResult {
    const { jack, jackCornerHertz } = derivedInstrument(design);
    return html`<p class="small">${words.board.jack(jack.boundVolts, jackCornerHertz)}</p>
      ${design.output.mixOhms === null ? html`<p class="small note">${words.board.clash(jack.clashAmperes, TIMERS[design.timer].outputAmperes)}</p>` : ''}`;
  }

  #choice(
    legend: string,
    names: Readonly<Record<string, string>>,
    value: string,
    command: (id: string) => commands.Command,
  ): TemplateResult {
    return html`<choice-row
      legend=${legend}
      .choices=${choicesOf(names)}
      value=${value}
      @choose=${({ detail }: CustomEvent<ChooseDetail>) => this.app.change(legend, command(detail.value))}
    ></choice-row>`;
  }

  #field(
    label: string,
    value: number,
    format: (value: number | null) => string,
    parse: ReadText,
    command: (value: number) => commands.Command,
  ): TemplateResult {
    return html`<quantity-field
      label=${label}
      .value=${value}
      .format=${format}
      .parse=${parse}
      @commit=${({ detail }: CustomEvent<CommitDetail>) => this.app.change(label, command(detail.value))}
    ></quantity-field>`;
  }
}

customElements.define('board-panel', BoardPanel);

declare global {
  interface HTMLElementTagNameMap {
    'board-panel': BoardPanel;
  }
}
