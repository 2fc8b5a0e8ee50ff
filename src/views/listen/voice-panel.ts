/** `<voice-panel>`: one voice's pitch trimmer and parts, and behind a fold its gate. */
import { css, html, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { rheostatOhms } from '../../circuit/astable.ts';
import * as commands from '../../design/commands.ts';
import type { Design, Polarity, Voice } from '../../design/design.ts';
import { LIMITS } from '../../design/limits.ts';
import { DIELECTRICS, type DielectricId } from '../../parts/capacitors.ts';
import { CELLS, type CellId } from '../../parts/cells.ts';
import { TIMERS } from '../../parts/timers.ts';
import { TRIMMERS, type TrimmerId } from '../../parts/trimmers.ts';
import { nearestNote } from '../../plan/notes.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import '../controls/choice-row.ts';
import '../controls/quantity-field.ts';
import '../controls/trimmer-control.ts';
import type { ChooseDetail, CommitDetail, TurnDetail } from '../controls/events.ts';
import {
  faradsText,
  GestureEdits,
  NONE,
  ohmsOrNoneText,
  ohmsText,
  orNone,
  reader,
  readerOrNone,
  rotationReader,
  voltsText,
} from '../edits.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { voiceMark, voiceStyles } from '../theme/voice-mark.ts';
import { choicesOf } from './choices.ts';

const read = {
  ra: reader('resistance', LIMITS.raOhms),
  rbFixed: readerOrNone('resistance', LIMITS.rbFixedOhms, 0),
  trimmer: reader('resistance', LIMITS.trimmerOhms),
  farads: reader('capacitance', LIMITS.timingFarads),
  cell: reader('resistance', LIMITS.cellOhms),
  gamma: reader('number', LIMITS.gamma),
  divider: reader('resistance', LIMITS.dividerOhms),
  hysteresis: readerOrNone('resistance', LIMITS.hysteresisOhms, NONE),
  input: reader('resistance', LIMITS.inputOhms),
  pullUp: reader('resistance', LIMITS.pullUpOhms),
  control: readerOrNone('voltage', LIMITS.controlVolts, NONE),
};

export class VoicePanel extends AppElement {
  static override properties = { ...AppElement.properties, voice: { type: String } };
  static override styles = [
    common,
    voiceStyles,
    css`
      section {
        padding-top: 10px;
        border-top: var(--stroke-data) solid var(--voice-a);
      }
      section.b {
        border-top: var(--stroke-data) dashed var(--voice-b);
      }
      h3 {
        display: flex;
        align-items: center;
        gap: 10px;
        margin-bottom: 6px;
        color: var(--voice-a);
        font-size: var(--text-head);
      }
      .b h3 {
        color: var(--voice-b);
      }
      .parts {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 12.5em), 1fr));
        gap: 6px 20px;
        margin: 10px 0 6px;
        --label-width: 6.2em;
        --field-width: 6.4em;
      }
      .parts.few {
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 10em), 1fr));
        gap: 6px 14px;
        --label-width: 4.3em;
        --field-width: 5.4em;
      }
      label.kind {
        display: grid;
        grid-template-columns: 6.2em minmax(0, 1fr);
        align-items: center;
        column-gap: var(--unit);
        font-size: var(--text-control);
      }
      details {
        margin-top: 4px;
      }
      .note {
        margin: 4px 0;
        color: var(--caution);
        font-size: var(--text-small);
      }
      p.small {
        margin: 2px 0;
      }
      @media (pointer: coarse) {
        .parts {
          gap: 10px 20px;
        }
      }
    `,
  ];

  declare voice: VoiceId;
  #design!: Selected<Design, Design>;
  #edits!: GestureEdits;

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design);
    this.#edits = new GestureEdits(app);
  }

  protected override render(): TemplateResult {
    const design = this.#design.value;
    const id = this.voice;
    const part = design.voices[id];
    return html`<section class=${id.toLowerCase()} aria-label=${words.voices.voice(id)}>
      <h3>${voiceMark(id)} ${id}</h3>
      ${this.#trimmer(design, part)}
      <div class="parts few">
        ${this.#ohms('ra', part.raOhms, (ohms) => commands.setVoiceValue(id, 'raOhms', ohms))}
        ${this.#ohms('rbFixed', part.rbFixedOhms, (ohms) => commands.setVoiceValue(id, 'rbFixedOhms', ohms))}
        ${this.#ohms('trimmer', part.trimmer.ohms, (ohms) => commands.fitPitchTrimmer(id, { ohms }))}
        <quantity-field
          label=${words.voices.capacitor}
          .value=${part.capacitor.farads}
          .format=${faradsText}
          .parse=${read.farads}
          @commit=${this.#commit(words.voices.capacitor, (farads) => commands.setCapacitance(id, farads))}
        ></quantity-field>
      </div>
      ${this.#notes(design, part)}
      <details>
        <summary>${words.voices.more(id)}</summary>
        ${this.#gate(part)}
      </details>
    </section>`;
  }

  #trimmer(design: Design, part: Voice): TemplateResult {
    const id = this.voice;
    const { cycle, centsPerPercent, endHertz } = derivedInstrument(design).voices[id];
    const ohms = rheostatOhms(part.trimmer);
    const ends = [rheostatOhms(part.trimmer, 0), rheostatOhms(part.trimmer, 1)] as const;
    const note = cycle.frequency > 0 ? nearestNote(cycle.frequency) : null;
    const label = words.voices.trimmer(id);
    return html`<trimmer-control
      .voice=${id}
      .label=${label}
      .rotation=${part.trimmer.rotation}
      .turns=${TRIMMERS[part.trimmer.part].turns}
      .text=${ohmsText(ohms)}
      .parse=${rotationReader('resistance', ends, (value) => (value - ends[0]) / (ends[1] - ends[0]))}
      .valuetext=${words.voices.spoken(ohms, part.trimmer.rotation, note?.name ?? '', note?.cents ?? 0)}
      .readout=${`${words.voices.readout(part.trimmer.rotation, centsPerPercent)}\n${words.voices.range(...endHertz)}`}
      .fieldLabel=${words.voices.box(label)}
      .lessLabel=${words.voices.oneLess(label)}
      .moreLabel=${words.voices.oneMore(label)}
      scale-start="0"
      scale-end="100 %"
      @turn=${({ detail }: CustomEvent<TurnDetail>) =>
        this.#edits.edit(words.labels.turned(id), commands.turnPitch(id, detail.rotation), detail.phase)}
    ></trimmer-control>`;
  }

  #kindOf(part: TrimmerId): TemplateResult {
    const id = this.voice;
    return this.#select(
      words.board.trimmerPart,
      part,
      Object.keys(TRIMMERS),
      words.board.trimmerParts,
      (value) => commands.fitPitchTrimmer(id, { part: value as TrimmerId }),
    );
  }

  #dielectric(part: Voice): TemplateResult {
    return this.#select(
      words.voices.dielectric,
      part.capacitor.dielectric,
      Object.keys(DIELECTRICS),
      words.voices.dielectrics,
      (value) => commands.chooseDielectric(this.voice, value as DielectricId),
    );
  }

  #select(
    label: string,
    value: string,
    options: readonly string[],
    names: Readonly<Record<string, string>>,
    command: (value: string) => commands.Command,
  ): TemplateResult {
    return html`<label class="kind">
      ${label}
      <select
        @change=${(event: Event) =>
          this.app.change(
            words.labels.part(this.voice, label),
            command((event.currentTarget as HTMLSelectElement).value),
          )}
      >
        ${options.map((one) => html`<option value=${one} .selected=${one === value}>${names[one]}</option>`)}
      </select>
    </label>`;
  }

  #notes(design: Design, part: Voice): TemplateResult {
    const polarised = DIELECTRICS[part.capacitor.dielectric].polarised;
    const rail = derivedInstrument(design).railVolts;
    return html`
      ${part.rbFixedOhms === 0 ? html`<p class="note">${words.voices.rbZero}</p>` : ''}
      ${
        part.raOhms < TIMERS[design.timer].raMinOhms
          ? html`<p class="note">${words.voices.raSmall(rail / part.raOhms)}</p>`
          : ''
      }
      ${polarised ? html`<caution-note .places=${['timing capacitor']}></caution-note>` : ''}
    `;
  }

  #gate(part: Voice): TemplateResult {
    const id = this.voice;
    const label = (what: string) => words.labels.part(id, what);
    return html`<div class="parts">
        ${this.#kindOf(part.trimmer.part)} ${this.#dielectric(part)}
        ${this.#select(
          words.voices.cellFamily,
          part.cell.family,
          Object.keys(CELLS),
          words.voices.cellFamilies,
          (value) => commands.chooseCell(id, value as CellId),
        )}
        <choice-row
          legend=${words.voices.polarity}
          .choices=${choicesOf(words.voices.polarities)}
          value=${part.polarity}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) =>
            this.app.change(label(words.voices.polarity), commands.setPolarity(id, detail.value as Polarity))}
        ></choice-row>
        <choice-row
          legend=${words.voices.cellSide}
          .choices=${choicesOf(words.voices.cellSides)}
          value=${part.divider.cell}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) =>
            this.app.change(
              label(words.voices.cellSide),
              commands.placeCell(id, detail.value as 'top' | 'bottom'),
            )}
        ></choice-row>
        ${this.#field(words.voices.cellOhms, part.cell.r10Ohms, read.cell, ohmsText, (r10Ohms) =>
          commands.setCell(id, { r10Ohms }),
        )}
        ${this.#field(words.voices.gamma, part.cell.gamma, read.gamma, gammaText, (gamma) =>
          commands.setCell(id, { gamma }),
        )}
        ${this.#field(words.voices.divider, part.divider.fixedOhms, read.divider, ohmsText, (ohms) =>
          commands.setDividerOhms(id, ohms),
        )}
        ${this.#field(
          words.voices.hysteresis,
          part.hysteresisOhms ?? NONE,
          read.hysteresis,
          hysteresisText,
          (ohms) => commands.setVoiceValue(id, 'hysteresisOhms', ohms === NONE ? null : ohms),
          words.field.noneHint,
        )}
        ${this.#field(words.voices.input, part.inputOhms, read.input, ohmsText, (ohms) =>
          commands.setVoiceValue(id, 'inputOhms', ohms),
        )}
        ${this.#field(words.voices.pullUp, part.pullUpOhms, read.pullUp, ohmsText, (ohms) =>
          commands.setVoiceValue(id, 'pullUpOhms', ohms),
        )}
        ${this.#field(
          words.voices.control,
          part.controlVolts ?? NONE,
          read.control,
          controlText,
          (volts) => commands.setControlVolts(id, volts === NONE ? null : volts),
          words.field.noneHint,
        )}
      </div>
      <caution-note .places=${['cell']}></caution-note>`;
  }

  #ohms(
    which: 'ra' | 'rbFixed' | 'trimmer',
    value: number,
    command: (ohms: number) => commands.Command,
  ): TemplateResult {
    const labels = { ra: words.voices.ra, rbFixed: words.voices.rbFixed, trimmer: words.voices.trimmerValue };
    return this.#field(
      labels[which],
      value,
      read[which],
      which === 'rbFixed' ? ohmsOrNoneText : ohmsText,
      command,
    );
  }

  #field(
    label: string,
    value: number,
    parse: (text: string) => ReturnType<(typeof read)['ra']>,
    format: (value: number | null) => string,
    command: (value: number) => commands.Command,
    hint = '',
  ): TemplateResult {
    return html`<quantity-field
      label=${label}
      .value=${value}
      .format=${format}
      .parse=${parse}
      .hint=${hint}
      @commit=${this.#commit(label, command)}
    ></quantity-field>`;
  }

  #commit(label: string, command: (value: number) => commands.Command) {
    return ({ detail }: CustomEvent<CommitDetail>) =>
      this.app.change(words.labels.part(this.voice, label), command(detail.value));
  }
}

const gammaText = (value: number | null): string => formatNumber(value ?? 0, 3);
const hysteresisText = orNone(ohmsText);
const controlText = orNone(voltsText);

customElements.define('voice-panel', VoicePanel);

declare global {
  interface HTMLElementTagNameMap {
    'voice-panel': VoicePanel;
  }
}
