/** `<cell-panel>`: the real cell from readings of it, with its uncertainty, and taken into the design by a press. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Design } from '../../design/design.ts';
import type { CellReading } from '../../design/room.ts';
import { addCellReading, inRoom, removeCellReading } from '../../design/room-commands.ts';
import { ROOM_LIMITS } from '../../design/room-schema.ts';
import { type Calibration, calibrate, calibrated } from '../../plan/calibrate.ts';
import { VOICES, type VoiceId } from '../../quantity/units.ts';
import { answerWords } from '../../words/en-room-answer.ts';
import { AppElement } from '../app-element.ts';
import { choicesOf } from '../controls/choices.ts';
import '../controls/choice-row.ts';
import type { ChooseDetail, CommitDetail } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import { NONE, ohmsText, orNone, reader, voltsText } from '../edits.ts';
import { panelStyles } from '../pitch/panel-styles.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { voiceMark, voiceStyles } from '../theme/voice-mark.ts';
import { luxField } from './readers.ts';
import { innerStyles } from './room-styles.ts';

const words = answerWords.cell;
const read = {
  lux: reader('illuminance', ROOM_LIMITS.cellLux),
  ohms: reader('resistance', ROOM_LIMITS.cellOhms),
  volts: reader('voltage', ROOM_LIMITS.volts),
};
const text = {
  ohms: (value: number | null): string => (value === NONE ? '' : ohmsText(value)),
  volts: (value: number | null): string => (value === NONE ? '' : orNone(voltsText)(value)),
};

export class CellPanel extends AppElement {
  static override properties = {
    ...AppElement.properties,
    voice: { state: true },
    kind: { state: true },
    lux: { state: true },
    amount: { state: true },
  };
  static override styles = [
    common,
    panelStyles,
    innerStyles,
    voiceStyles,
    css`
      li {
        margin-bottom: 2px;
      }
      li button {
        min-height: 26px;
        margin-left: 6px;
        padding: 1px 8px;
      }
      ol {
        margin: 4px 0;
        padding-left: 22px;
        font-size: var(--text-control);
      }
    `,
  ];

  declare voice: VoiceId;
  declare kind: CellReading['kind'];
  /** What is typed and not yet added; `NONE` = nothing. */
  declare lux: number;
  declare amount: number;
  #design!: Selected<Design, Design>;

  constructor() {
    super();
    this.voice = 'A';
    this.kind = 'ohms';
    this.lux = NONE;
    this.amount = NONE;
  }

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design);
  }

  protected override render(): TemplateResult {
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      <p class="small">${words.hint}</p>
      <div class="row">
        <choice-row
          legend=${words.which}
          .choices=${choicesOf({ A: 'A', B: 'B' })}
          value=${this.voice}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) => {
            this.voice = detail.value as VoiceId;
          }}
        ></choice-row>
        <choice-row
          legend=${words.read}
          .choices=${choicesOf(words.kinds)}
          value=${this.kind}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) => {
            this.kind = detail.value as CellReading['kind'];
            this.amount = NONE;
          }}
        ></choice-row>
      </div>
      <div class="fields">
        <quantity-field
          label=${words.lux}
          .value=${this.lux}
          .format=${luxField}
          .parse=${read.lux}
          @commit=${({ detail }: CustomEvent<CommitDetail>) => {
            this.lux = detail.value;
          }}
        ></quantity-field>
        <quantity-field
          label=${words[this.kind]}
          .value=${this.amount}
          .format=${text[this.kind]}
          .parse=${read[this.kind]}
          @commit=${({ detail }: CustomEvent<CommitDetail>) => {
            this.amount = detail.value;
          }}
        ></quantity-field>
      </div>
      <div class="row">
        <button type="button" ?disabled=${this.lux === NONE || this.amount === NONE} @click=${this.#add}>${words.add}</button>
      </div>
      ${VOICES.map((voice) => this.#cell(voice))}
    </section>`;
  }

  #cell(voice: VoiceId): TemplateResult {
    const design = this.#design.value;
    const readings = design.room.cellReadings[voice];
    const calibration = calibrate(design, design.room, voice);
    return html`<h3>${voiceMark(voice)} ${voice}</h3>
      ${
        readings.length === 0
          ? ''
          : html`<ol>
              ${readings.map(
                (reading, i) =>
                  html`<li>
                    ${words.row(reading.lux, reading.kind === 'ohms' ? ohmsText(reading.ohms) : voltsText(reading.volts))}
                    <button
                      type="button"
                      aria-label=${words.remove(i + 1)}
                      @click=${() => this.app.change(words.step(voice), inRoom(removeCellReading(voice, i)))}
                    >
                      ${words.removeShort}
                    </button>
                  </li>`,
              )}
            </ol>`
      }
      ${this.#calibration(design, voice, calibration)}`;
  }

  #calibration(design: Design, voice: VoiceId, calibration: Calibration): TemplateResult {
    switch (calibration.kind) {
      case 'too few':
        return html`<p class="muted">${words.tooFew(calibration.readings)}</p>`;
      case 'one light':
        return html`<p>${words.oneLight(calibration.lux, calibration.ohms)}</p>`;
      case 'wrong way':
        return html`<p class="fault">${words.wrongWay}</p>`;
      case 'impossible reading':
        return html`<p class="fault">${words.impossible(calibration.index + 1)}</p>`;
      case 'fitted': {
        const { r10Ohms, r10Share, gamma, gammaDeviation, uncertaintyFrom } = calibration.fit;
        const fitted = calibrated(design, voice, calibration.fit);
        return html`<p class="said">${words.fit(r10Ohms, r10Share, gamma, gammaDeviation)}</p>
          <p class="small">${words.from[uncertaintyFrom]} ${calibration.insideGrade ? '' : words.outside}</p>
          <div class="row">
            <button
              type="button"
              ?disabled=${fitted === design}
              @click=${() => this.app.change(words.step(voice), (now) => calibrated(now, voice, calibration.fit))}
            >
              ${words.use}
            </button>
          </div>`;
      }
    }
  }

  readonly #add = (): void => {
    const { lux, amount } = this;
    const reading: CellReading =
      this.kind === 'ohms' ? { kind: 'ohms', lux, ohms: amount } : { kind: 'volts', lux, volts: amount };
    this.app.change(words.step(this.voice), inRoom(addCellReading(this.voice, reading)));
    this.lux = NONE;
    this.amount = NONE;
    this.renderRoot.querySelector<HTMLElement>('.fields quantity-field')?.focus();
  };
}

customElements.define('cell-panel', CellPanel);

declare global {
  interface HTMLElementTagNameMap {
    'cell-panel': CellPanel;
  }
}
