/** `<parts-panel>`: hysteresis, chatter, divider and sharing for this room, each with a press to fit what is advised. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Planning } from '../../app/planner.ts';
import { roomDeskOf } from '../../app/room-desk.ts';
import type { Design } from '../../design/design.ts';
import type { DividerAdvice } from '../../plan/divider.ts';
import type { HysteresisAdvice } from '../../plan/hysteresis.ts';
import type { RoomJob } from '../../plan/job.ts';
import type { RoomAnswer } from '../../plan/room-answer.ts';
import type { RoomReport } from '../../plan/room-report.ts';
import { fitForRoom } from '../../plan/room-shown.ts';
import { VOICES, type VoiceId } from '../../quantity/units.ts';
import { answerWords } from '../../words/en-room-answer.ts';
import { AppElement } from '../app-element.ts';
import { panelStyles } from '../pitch/panel-styles.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { lastReport } from './report.ts';
import { innerStyles } from './room-styles.ts';

const words = answerWords.parts;

export class PartsPanel extends AppElement {
  static override styles = [
    common,
    panelStyles,
    innerStyles,
    css`
      .facts th,
      .facts td {
        vertical-align: top;
      }
      .facts td {
        width: 38%;
      }
    `,
  ];

  #design!: Selected<Design, Design>;
  #answer!: Selected<RoomAnswer | null, RoomAnswer | null>;
  #planning!: Selected<Planning<RoomJob>, Planning<RoomJob>>;

  protected override bind(app: Lampnote): void {
    const desk = roomDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#answer = new Selected(this, desk.answer, (answer) => answer);
    this.#planning = new Selected(this, desk.planner.state, (state) => state);
  }

  protected override render(): TemplateResult {
    const report = lastReport(this.#planning.value);
    const known = this.#answer.value !== null;
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      ${
        known && report
          ? this.#table(report)
          : html`<p class="muted">
              ${known ? (this.#planning.value.kind === 'failed' ? words.failed : words.working) : answerWords.set.later}
            </p>`
      }
    </section>`;
  }

  #table(report: RoomReport): TemplateResult {
    const { hysteresis, dividers, canShare } = report;
    const row = (label: string, cell: (voice: VoiceId) => TemplateResult | string) =>
      html`<tr>
        <th scope="row">${label}</th>
        ${VOICES.map((voice) => html`<td>${cell(voice)}</td>`)}
      </tr>`;
    return html`<table class="facts">
        <thead>
          <tr>
            <th scope="col"><span class="visually-hidden">${words.heading}</span></th>
            ${VOICES.map((voice) => html`<th scope="col">${voice}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${row(words.hysteresis, (voice) => {
            const { ohms, lowerLux, upperLux } = hysteresis[voice].now;
            return words.hysteresisOf(ohms, lowerLux, upperLux);
          })}
          ${row(words.chatter, (voice) => words.chatterOf(hysteresis[voice].now.chatterHertz))}
          ${row(words.advice, (voice) => adviceWords(hysteresis[voice]))}
          ${row(words.divider, (voice) => words.dividerOf(dividers[voice].now.ohms, dividers[voice].now.cell))}
          ${row(words.mean, (voice) => answerWords.ohms(dividers[voice].meanOhms))}
          ${row(words.degrees, (voice) => degreesWords(dividers[voice]))}
          ${row(words.advice, (voice) => dividerWords(dividers[voice]))}
        </tbody>
      </table>
      <div class="row">${VOICES.map((voice) => this.#fit(report, voice))}</div>
      <p class="said">${words.sharing(canShare)}</p>
      ${gainsWords(report)}`;
  }

  #fit(report: RoomReport, voice: VoiceId): TemplateResult | string {
    const command = fitForRoom(voice, report.hysteresis[voice], report.dividers[voice]);
    if (command(this.#design.value) === this.#design.value) return '';
    return html`<button type="button" @click=${() => this.app.change(words.fitStep(voice), command)}>
      ${words.fitButton(voice)}
    </button>`;
  }
}

function gainsWords({ gains: { tube, lamp } }: RoomReport): TemplateResult {
  return html`<h3>${words.gains}</h3>
    ${
      tube === null
        ? ''
        : html`<p class="said">
            ${words.tube(tube.boreMetres, tube.depthMetres, words.contrast(tube.contrastNow, tube.contrastThen), tube.litShare)}
          </p>`
    }
    <p class="said">
      ${
        lamp === null
          ? words.enoughContrast
          : words.lamp(
              lamp.candela,
              lamp.metres,
              lamp.lux,
              words.contrast(lamp.contrastNow, lamp.contrastThen),
            )
      }
    </p>`;
}

function adviceWords(advice: HysteresisAdvice): string {
  switch (advice.kind) {
    case 'enough':
      return words.enough;
    case 'fit':
      return words.fit(advice.fitted.ohms, advice.fitted.ratio);
    case 'too much ripple':
      return words.tooMuch(advice.least.ratio, advice.contrast);
  }
}

function degreesWords({ now }: DividerAdvice): string {
  return words.degreesOf(now.degrees) + (now.lost > 0.005 ? words.lost(now.lost) : '');
}

function dividerWords({ keep, best }: DividerAdvice): string {
  return keep ? words.keep : words.better(best.ohms, best.cell, best.degrees);
}

customElements.define('parts-panel', PartsPanel);

declare global {
  interface HTMLElementTagNameMap {
    'parts-panel': PartsPanel;
  }
}
