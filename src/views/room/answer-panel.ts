/** `<answer-panel>`: "Set it to": volts, turns, margins; what bounds the window, and what would help. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Planning } from '../../app/planner.ts';
import { type RoomDesk, roomDeskOf } from '../../app/room-desk.ts';
import type { Design } from '../../design/design.ts';
import type { RoomJob } from '../../plan/job.ts';
import type { RoomAnswer } from '../../plan/room-answer.ts';
import { gatingPhantoms, worstChatterOf } from '../../plan/room-report.ts';
import { adviceOf, contrastOf, edgesOf, isSetAs, setAs } from '../../plan/room-shown.ts';
import type { Recommended, WindowAnswer } from '../../plan/window.ts';
import type { VoiceId, Volts } from '../../quantity/units.ts';
import { answerWords } from '../../words/en-room-answer.ts';
import { roomWords } from '../../words/room.ts';
import { AppElement } from '../app-element.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { lastReport } from './report.ts';
import { innerStyles } from './room-styles.ts';

const words = answerWords.set;

export class AnswerPanel extends AppElement {
  static override styles = [
    common,
    innerStyles,
    css`
      .setting {
        display: grid;
        grid-template-columns: minmax(0, auto) minmax(0, 1fr);
        gap: 0 14px;
        align-items: baseline;
        margin: 6px 0;
        font-size: var(--text-control);
      }
      .setting strong {
        font-size: 1.25rem;
        font-weight: 650;
      }
      .again {
        margin-right: 10px;
        white-space: nowrap;
      }
      .again strong {
        font-size: var(--text-body);
      }
      caption {
        padding-top: 8px;
        text-align: start;
      }
      .actions {
        display: grid;
        gap: 8px;
        margin: 12px 0;
      }
      .facts th {
        padding-right: 8px;
      }
      .facts td {
        text-align: end;
        white-space: nowrap;
      }
      ul {
        margin: 4px 0;
        padding-left: 18px;
        font-size: var(--text-control);
      }
    `,
  ];

  #desk!: RoomDesk;
  #design!: Selected<Design, Design>;
  #answer!: Selected<RoomAnswer | null, RoomAnswer | null>;
  #planning!: Selected<Planning<RoomJob>, Planning<RoomJob>>;

  protected override bind(app: Lampnote): void {
    this.#desk = roomDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#answer = new Selected(this, this.#desk.answer, (answer) => answer);
    this.#planning = new Selected(this, this.#desk.planner.state, (state) => state);
    new Selected(this, app.audition.playing, (playing) => playing?.id ?? null);
  }

  protected override render(): TemplateResult {
    const answer = this.#answer.value;
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      ${answer === null ? html`<p class="muted">${words.unanswered}</p>` : this.#answered(answer)}
    </section>`;
  }

  #answered(answer: RoomAnswer): TemplateResult {
    const design = this.#design.value;
    const taken = isSetAs(design, answer.set);
    const several = answer.stretches.length > 1;
    const none = answer.windows.some(({ kind }) => kind === 'none');
    return html`${none ? html`<p class="said fault">${words.noWindow}</p>` : ''}
      ${answer.windows.map((one) => this.#setting(one))} ${several ? this.#resets(answer) : ''}
      <div class="actions">
        <button type="button" class="primary" ?disabled=${taken} @click=${() => this.#take(answer)}>${words.take}</button>
        <button
          type="button"
          aria-pressed=${this.#desk.heard === 'day' ? 'true' : 'false'}
          @click=${() => (this.#desk.heard === 'day' ? this.#desk.silence() : void this.#desk.hear('day'))}
        >
          ${answerWords.hear.pieces.day}
        </button>
        <button type="button" @click=${() => globalThis.print()}>${answerWords.card.print}</button>
      </div>
      <p class="small" role="status">${taken ? words.taken : words.now(answer.chartNow.rightShare)}</p>
      ${answer.windows.map((one) => this.#figures(one, answer))} ${this.#outlook()}
      ${
        answer.remedies.length > 0
          ? html`<h3>${words.remedies}</h3>
              <ul>
                ${answer.remedies.map((remedy) => html`<li>${roomWords.remedy(remedy)}</li>`)}
              </ul>`
          : ''
      }
      <details>
        <summary>${words.edges}</summary>
        <ul>
          ${answer.windows.flatMap((one) =>
            edgesOf(this.#design.value, one).map(
              ({ volts, reason }) => html`<li>${words.volts(volts)}: ${roomWords.edge(reason)}</li>`,
            ),
          )}
        </ul>
      </details>`;
  }

  #setting(answer: WindowAnswer): TemplateResult {
    const { testPointVolts, rotation, turns, turnsOfPart } = adviceOf(answer);
    return html`<p class="setting">
      <span>${this.#name(answer)}</span>
      <span>
        <strong>${this.#volts(testPointVolts)}</strong>
        <span class="small">${words.place(rotation, turns, turnsOfPart)}</span>
      </span>
    </p>`;
  }

  /** Volts of a guessed room are no more than about right. */
  #volts(volts: Volts): string {
    return this.#design.value.room.readingsAre === 'guessed' ? words.about(volts) : words.volts(volts);
  }

  /** Each stretch of a day that one setting does not serve. */
  #resets({ stretches }: RoomAnswer): TemplateResult {
    return html`<h3>${answerWords.chart.ways.resets}</h3>
      ${stretches.map(
        ({ from, settings }) =>
          html`<p class="setting">
            <span>${words.from(from)}</span>
            ${
              settings === null
                ? html`<span class="fault">${words.noneThen}</span>`
                : html`<span>${Object.entries(settings).map(([trimmer, at]) => this.#again(trimmer as VoiceId, at))}</span>`
            }
          </p>`,
      )}`;
  }

  #again(trimmer: VoiceId, { testPointVolts, rotation }: Recommended): TemplateResult {
    const shared = this.#design.value.threshold.arrangement === 'shared';
    return html`<span class="again">
      ${shared ? '' : html`<span class="small">${trimmer}</span>`}
      <strong>${this.#volts(testPointVolts)}</strong>
      <span class="small">${words.share(rotation)}</span>
    </span> `;
  }

  #figures(one: WindowAnswer, answer: RoomAnswer): TemplateResult {
    const { litMargin, shadeMargin, rippleMargin, trips } = adviceOf(one);
    const [low, high] = edgesOf(this.#design.value, one);
    const { upper, lower } = trips[one.window.trimmer];
    const rows: readonly (readonly [string, string])[] = [
      [words.margins.lit, words.times(litMargin)],
      [words.margins.shade, words.times(shadeMargin)],
      [words.margins.contrast, words.times(contrastOf(answer.extremes))],
      [words.margins.ripple, rippleWords(rippleMargin)],
      ...(one.kind === 'window'
        ? [[words.margins.window, words.window(low.volts, high.volts)] as const]
        : []),
      [words.margins.trips, words.trips(upper, lower)],
    ];
    return html`<table class="facts">
      ${answer.windows.length > 1 ? html`<caption class="small">${this.#name(one)}</caption>` : ''}
      <tbody>
        ${rows.map(([label, value]) => html`<tr><th scope="row">${label}</th><td>${value}</td></tr>`)}
      </tbody>
    </table>`;
  }

  /** What the longer work found, in a few figures. */
  #outlook(): TemplateResult | string {
    const report = lastReport(this.#planning.value);
    if (report === null) return '';
    const { batch, hysteresis, log, phantoms } = report;
    const rows: readonly (readonly [string, string])[] = [
      [words.outlook.chatter, answerWords.parts.chatterOf(worstChatterOf(hysteresis))],
      [words.outlook.settable, answerWords.batch.percent(batch.unsorted.settableShare)],
      [words.outlook.mark, answerWords.batch.percent(batch.unsorted.rightAtMarkShare)],
      [words.outlook.phantoms, words.outlook.gating(gatingPhantoms(phantoms), phantoms.length)],
      ...(log === null
        ? []
        : [
            [words.outlook.recorded, answerWords.batch.percent(log.rightShare)] as const,
            [
              words.outlook.changes,
              words.outlook.anHour(log.phantomsPerHour.A, log.phantomsPerHour.B),
            ] as const,
          ]),
    ];
    return html`<table class="facts">
      <tbody>
        ${rows.map(([label, value]) => html`<tr><th scope="row">${label}</th><td>${value}</td></tr>`)}
      </tbody>
    </table>`;
  }

  #name({ window }: WindowAnswer): string {
    return this.#design.value.threshold.arrangement === 'shared' ? words.shared : words.own(window.trimmer);
  }

  #take(answer: RoomAnswer): void {
    this.app.change(words.takeStep, setAs(answer.set));
  }
}

function rippleWords(margin: number | null): string {
  if (margin === null) return words.margins.noRipple;
  return margin > 0 ? words.times(margin) : words.margins.inRipple;
}

customElements.define('answer-panel', AnswerPanel);

declare global {
  interface HTMLElementTagNameMap {
    'answer-panel': AnswerPanel;
  }
}
