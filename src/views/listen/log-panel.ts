/** `<log-panel>`: a recorded light log: opened, shown as it is read, corrected, replayed, scrubbed, looped. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import { logLength, type OpenLog } from '../../app/playing-light.ts';
import type { Session } from '../../app/session.ts';
import { TIME_FORMATS } from '../../light/log-cells.ts';
import type { LogChoices } from '../../light/log-guess.ts';
import { logWords } from '../../words/en-scenes.ts';
import { lightLogWords } from '../../words/light-log.ts';
import { AppElement } from '../app-element.ts';
import type { SlideDetail } from '../controls/events.ts';
import '../controls/level-slider.ts';
import { fieldStyles, listRow } from '../fields.ts';
import { readFile } from '../files.ts';
import { LiveFrames, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';

/** Problems listed at once. */
const SHOWN = 12;

export class LogPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    css`
      .choices {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 14em), 1fr));
        gap: 6px 18px;
        margin: 8px 0;
      }
      .scroll {
        overflow-x: auto;
      }
      level-slider {
        --label-width: 3.4em;
        --value-width: 8.5em;
      }
      label.switch {
        display: flex;
        align-items: center;
        font-size: var(--text-control);
      }
      ul {
        margin: 4px 0;
        padding-left: 18px;
        font-size: var(--text-small);
      }
    `,
  ];

  #log!: Selected<Session, OpenLog | null>;
  #loop!: Selected<Session, boolean>;

  protected override bind(app: Lampnote): void {
    this.#log = new Selected(this, app.session, (session) => session.log);
    this.#loop = new Selected(this, app.session, (session) => session.loopLog);
    // The place within the recording moves by itself.
    new LiveFrames(this, app.live, 6);
  }

  protected override render(): TemplateResult {
    const log = this.#log.value;
    return html`<p><button type="button" @click=${this.#open}>${logWords.open}</button></p>
      <p class="small">${logWords.drop}</p>
      ${log ? this.#opened(log) : html`<p class="muted">${logWords.none}</p>`}`;
  }

  #opened(log: OpenLog): TemplateResult {
    if (!log.guess.ok)
      return html`<p class="fault" role="alert">${log.name}: ${lightLogWords.refusal(log.guess.refusal)}</p>`;
    const { reading, choices } = log;
    return html`
      ${
        reading?.ok
          ? html`<p role="status">${logWords.name(log.name)} ${lightLogWords.kept(reading.kept, reading.dropped)}</p>
              ${this.#transport(log)}
              ${
                reading.problems.length > 0
                  ? html`<details>
                      <summary>${logWords.problems}</summary>
                      <ul>
                        ${reading.problems.slice(0, SHOWN).map((one) => html`<li>${lightLogWords.problem(one)}</li>`)}
                      </ul>
                      ${reading.dropped > SHOWN ? html`<p class="small">${lightLogWords.more(reading.dropped - SHOWN)}</p>` : ''}
                    </details>`
                  : ''
              }`
          : html`<p role="status">${logWords.unplayed(log.name)}</p>
              ${reading ? html`<p class="fault" role="alert">${lightLogWords.refusal(reading.refusal)}</p>` : ''}`
      }
      ${choices ? this.#choices(log, choices) : ''}
    `;
  }

  #transport(log: OpenLog): TemplateResult {
    const length = logLength(log);
    const place = this.app.light.place;
    const text = logWords.placeText(place, length);
    return html`<level-slider
        label=${logWords.place}
        .value=${place}
        min="0"
        max=${Math.max(length, 0.001)}
        scale="linear"
        .readout=${text}
        .valuetext=${text}
        @slide=${({ detail }: CustomEvent<SlideDetail>) => this.app.light.goTo(detail.value)}
      ></level-slider>
      <label class="switch">
        <input
          type="checkbox"
          .checked=${this.#loop.value}
          @change=${(event: Event) => this.app.light.setLoop((event.currentTarget as HTMLInputElement).checked)}
        />
        ${logWords.loop}
      </label>`;
  }

  #choices(log: OpenLog, choices: LogChoices): TemplateResult {
    const { guess } = log;
    if (!guess.ok) return html``;
    const count = Math.max(guess.names.length, ...guess.preview.map(({ cells }) => cells.length));
    const columns = Array.from({ length: count }, (_, i) => [
      String(i),
      logWords.column(i + 1, guess.names[i]),
    ]);
    const change = (part: Partial<LogChoices>) => this.app.light.readLogAnew({ ...choices, ...part });
    const column = (part: Partial<LogChoices['columns']>) =>
      change({ columns: { ...choices.columns, ...part } });
    const headers = Array.from({ length: Math.max(choices.header, 5) }, (_, i) => [
      String(i + 1),
      String(i + 1),
    ]);
    return html`<details>
      <summary>${logWords.how}</summary>
      <div class="choices">
        ${listRow(logWords.delimiter, Object.entries(logWords.delimiters), choices.delimiter, (value) =>
          change({ delimiter: value as LogChoices['delimiter'] }),
        )}
        ${listRow(logWords.decimal, Object.entries(logWords.decimals), choices.decimal, (value) =>
          change({ decimal: value as LogChoices['decimal'] }),
        )}
        ${listRow(logWords.header, [['0', logWords.noHeader], ...headers], String(choices.header), (value) =>
          change({ header: Number(value) }),
        )}
        ${listRow(logWords.time, columns, String(choices.columns.time), (value) => column({ time: Number(value) }))}
        ${listRow(
          logWords.timeFormat,
          TIME_FORMATS.map((format) => [format, logWords.timeFormats[format]]),
          choices.timeFormat,
          (value) => change({ timeFormat: value as LogChoices['timeFormat'] }),
        )}
        ${listRow(logWords.luxA, columns, String(choices.columns.luxA), (value) => column({ luxA: Number(value) }))}
        ${listRow(
          logWords.luxB,
          [['', logWords.sameAsA], ...columns],
          String(choices.columns.luxB ?? ''),
          (value) => column({ luxB: value === '' ? null : Number(value) }),
        )}
        ${listRow(logWords.unit, Object.entries(logWords.units), choices.unit, (value) =>
          change({ unit: value as LogChoices['unit'] }),
        )}
      </div>
      <div class="scroll">
        <table>
          <caption class="small">
            ${logWords.preview}
          </caption>
          <thead>
            <tr>
              <th scope="col">${logWords.row}</th>
              ${columns.map(([, name]) => html`<th scope="col">${name}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${guess.preview.map(
              ({ row, cells }) =>
                html`<tr>
                  <th scope="row">${row}</th>
                  ${columns.map((_, i) => html`<td>${cells[i] ?? ''}</td>`)}
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
    </details>`;
  }

  readonly #open = async (): Promise<void> => {
    const file = await readFile(this.app, '.csv,.tsv,.txt,text/csv,text/plain');
    if (file) this.app.openLog(file.name, file.text);
  };
}

customElements.define('log-panel', LogPanel);

declare global {
  interface HTMLElementTagNameMap {
    'log-panel': LogPanel;
  }
}
