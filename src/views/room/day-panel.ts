/** `<day-panel>`: the room in one line, its day against the threshold, and when it goes wrong and why. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import { type RoomDesk, type RoomView, roomDeskOf } from '../../app/room-desk.ts';
import type { Design } from '../../design/design.ts';
import type { DayChart } from '../../plan/day.ts';
import { rippleOf } from '../../plan/event.ts';
import type { RoomAnswer } from '../../plan/room-answer.ts';
import {
  chartShown,
  type DayWay,
  lightShown,
  litSpan,
  momentAt,
  readingsShown,
  type ShownLight,
  thresholdsShown,
  wayShown,
} from '../../plan/room-day.ts';
import { runsOf, sensorsAlike } from '../../plan/room-shown.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { words as pageWords } from '../../words/en.ts';
import { describeWords } from '../../words/en-room.ts';
import { answerWords } from '../../words/en-room-answer.ts';
import { roomWords } from '../../words/room.ts';
import { AppElement } from '../app-element.ts';
import { choicesOf } from '../controls/choices.ts';
import '../controls/choice-row.ts';
import { type ChooseDetail, fire } from '../controls/events.ts';
import '../plots/hours-chart.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { innerStyles } from './room-styles.ts';

const words = answerWords.chart;

export class DayPanel extends AppElement {
  static override styles = [
    common,
    innerStyles,
    css`
      h2 {
        display: inline;
        border: 0;
      }
      .title {
        margin-bottom: 6px;
      }
      .choices {
        display: flex;
        flex-wrap: wrap;
        gap: 0 26px;
        margin-bottom: 4px;
      }
      .changes {
        margin: 4px 0;
        padding: 0;
        list-style: none;
        font-size: var(--text-control);
      }
      .changes li {
        margin-bottom: 3px;
      }
      .right {
        color: var(--good);
      }
      .marginal {
        color: var(--caution);
      }
      .wrong {
        color: var(--fault);
      }
      .changes strong {
        font-weight: 600;
      }
    `,
  ];

  #desk!: RoomDesk;
  #design!: Selected<Design, Design>;
  #answer!: Selected<RoomAnswer | null, RoomAnswer | null>;
  #view!: Selected<RoomView, RoomView>;

  protected override bind(app: Lampnote): void {
    this.#desk = roomDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#answer = new Selected(this, this.#desk.answer, (answer) => answer);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
  }

  protected override render(): TemplateResult {
    const answer = this.#answer.value;
    const design = this.#design.value;
    return html`<section aria-labelledby="title">
      <div class="title">
        <h2 id="title">${titleOf(design)}</h2>
        <span class="small">
          ${answerWords.list(factsOf(design))}
          <button type="button" class="link" @click=${() => fire(this, 'describe', null)}>
            ${answerWords.title.change}
          </button>
        </span>
      </div>
      ${answer === null ? html`<p class="muted">${words.empty}</p>` : this.#day(design, answer)}
      ${this.#complaints(answer)}
    </section>`;
  }

  #day(design: Design, answer: RoomAnswer): TemplateResult {
    const { sensor } = this.#view.value;
    const several = answer.stretches.length > 1;
    const shown = wayShown(answer, this.#view.value.shown);
    const alike = sensorsAlike(answer.levels);
    const voice = alike ? 'A' : sensor;
    const chart = chartShown(answer, shown);
    const runs = runsOf(chart);
    const light = lightShown(answer.levels, voice);
    const [least, most] = litSpan(light);
    const spoken = runs.map(({ state, from, to }) => words.run(state, from, to));
    return html`<div class="choices">
        <choice-row
          legend=${words.shown}
          .choices=${choicesOf(words.ways).filter(({ value }) => several || value !== 'resets')}
          value=${shown}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) =>
            this.#desk.show({ shown: detail.value as DayWay })}
        ></choice-row>
        ${
          alike
            ? ''
            : html`<choice-row
                legend=${words.sensor}
                .choices=${choicesOf({ A: 'A', B: 'B' })}
                value=${sensor}
                @choose=${({ detail }: CustomEvent<ChooseDetail>) =>
                  this.#desk.show({ sensor: detail.value as VoiceId })}
              ></choice-row>`
        }
      </div>
      <hours-chart
        .light=${light}
        .thresholds=${thresholdsShown(design, answer, shown, voice).map((line) => ({
          ...line,
          label: words.threshold(line.upper, line.lower),
          shortLabel: words.thresholdShort(line.upper, line.lower),
        }))}
        .runs=${runs.map((run) => ({ ...run, label: words.states[run.state] }))}
        .marks=${readingsShown(design, answer, voice)}
        axis-label=${alike ? words.axis : words.axisOf(voice)}
        lit-label=${words.lit}
        shade-label=${words.shaded}
        .summary=${words.summary(roomWords.lux(least), roomWords.lux(most), spoken)}
        .describe=${(hour: number) => this.#moment(design, answer, shown, voice, hour)}
        .formatHour=${words.hour}
        .formatLux=${pageWords.luxNumber}
        cursor-label=${words.cursor}
        cursor-hint=${words.cursorHint}
        table-label=${words.table}
        .heads=${words.heads}
        .rows=${rowsOf(light, chart)}
      ></hours-chart>
      <p class="small">${words.figure(chart.rightShare, shown, answer.stretches.length)} ${words.legend}</p>
      ${changesOf(chart)}`;
  }

  #moment(design: Design, answer: RoomAnswer, way: DayWay, voice: VoiceId, hour: number): string {
    const { light, verdict } = momentAt(design, answer, way, voice, hour);
    const moment = words.moment(light.hour, light.lit, light.shade.high, verdict.state);
    return verdict.reason === null ? moment : `${moment} ${roomWords.reason(verdict.reason)}`;
  }

  #complaints(answer: RoomAnswer | null): TemplateResult | string {
    const complaints = answer?.complaints ?? this.#desk.complaints;
    if (complaints.length === 0) return '';
    return html`<div role="status">
      <ul class="complaints">
        ${complaints.map((complaint) => html`<li>${roomWords.complaint(complaint)}</li>`)}
      </ul>
    </div>`;
  }
}

/** Every half hour or so. */
const EVERY = 3;

function rowsOf(light: readonly ShownLight[], chart: DayChart): readonly (readonly string[])[] {
  return light.flatMap(({ hour, lit, shade }, i) =>
    i % EVERY === 0 ? [words.row(hour, lit, shade.high, chart.verdicts[i]?.state ?? 'unknown')] : [],
  );
}

function changesOf(chart: DayChart): TemplateResult {
  if (chart.changes.length === 0) return html`<p class="said">${words.noChange}</p>`;
  return html`<details open>
    <summary>${words.changes}</summary>
    <ul class="changes">
      ${chart.changes.map(
        ({ hour, to, reason }) =>
          html`<li>
            <strong class=${to}>${words.change(hour, to)}</strong>
            ${to === 'right' || reason === null ? '' : html`· ${roomWords.reason(reason)}`}
          </li>`,
      )}
    </ul>
  </details>`;
}

function titleOf({ room }: Design): string {
  const type = room.roomType === null ? answerWords.title.room : describeWords.readings.types[room.roomType];
  const name = `${type[0]!.toUpperCase()}${type.slice(1)}`;
  const parts = [
    name,
    ...(room.daylight === null ? [] : [answerWords.date(room.daylight.date)]),
    answerWords.title.hours(room.opens, room.closes),
  ];
  return parts.join(', ');
}

function factsOf({ room }: Design): readonly string[] {
  const ripple = rippleOf(room);
  const { title } = answerWords;
  return [
    room.daylight === null ? title.noDaylight : describeWords.daylight.skies[room.daylight.sky],
    ripple === null ? title.noLamp : title.lamp(ripple.hertz, ripple.depth),
    describeWords.event.kinds[room.event.kind],
  ];
}

customElements.define('day-panel', DayPanel);

declare global {
  interface HTMLElementTagNameMap {
    'day-panel': DayPanel;
  }
}
