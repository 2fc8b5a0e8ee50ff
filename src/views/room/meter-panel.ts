/** `<meter-panel>`: type what the meter says; which way and how far to turn, and whether tonight still works. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import { type RoomDesk, type RoomView, roomDeskOf } from '../../app/room-desk.ts';
import type { Design } from '../../design/design.ts';
import { ROOM_LIMITS } from '../../design/room-schema.ts';
import { type RoomAnswer, tonight } from '../../plan/room-answer.ts';
import { isAlikeAllDay } from '../../plan/window.ts';
import { answerWords } from '../../words/en-room-answer.ts';
import { roomWords } from '../../words/room.ts';
import { AppElement } from '../app-element.ts';
import type { CommitDetail } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import { NONE, reader, voltsText } from '../edits.ts';
import { panelStyles } from '../pitch/panel-styles.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { hourReader, hourText } from './readers.ts';
import { innerStyles } from './room-styles.ts';

const words = answerWords.meter;
const readVolts = reader('voltage', ROOM_LIMITS.volts);
const voltsField = (value: number | null): string => (value === NONE ? '' : voltsText(value));

export class MeterPanel extends AppElement {
  static override styles = [
    common,
    panelStyles,
    innerStyles,
    css`
      .said strong {
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
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      ${answer === null ? html`<p class="muted">${answerWords.set.later}</p>` : this.#asked(answer)}
    </section>`;
  }

  #asked(answer: RoomAnswer): TemplateResult {
    const { room, threshold } = this.#design.value;
    const { meter, meterHour, settingUp } = this.#view.value;
    const isAlike = isAlikeAllDay(answer.extremes);
    const hour = isAlike ? room.opens : (meterHour ?? settingUp ?? room.opens);
    const shared = threshold.arrangement === 'shared';
    return html`<p class="small">${words.hint}</p>
      <div class="fields">
        ${answer.windows.map(({ window: { trimmer } }) => {
          const label = shared ? words.reads.shared : words.reads.own(trimmer);
          return html`<quantity-field
            label=${label}
            .value=${meter[trimmer] ?? NONE}
            .format=${voltsField}
            .parse=${readVolts}
            @commit=${({ detail }: CustomEvent<CommitDetail>) =>
              this.#desk.show({ meter: { ...meter, [trimmer]: detail.value } })}
          ></quantity-field>`;
        })}
        ${
          // Where no hour differs, none is asked for.
          isAlike
            ? ''
            : html`<quantity-field
                label=${words.hour}
                .value=${hour}
                .format=${hourText}
                .parse=${hourReader}
                @commit=${({ detail }: CustomEvent<CommitDetail>) => this.#desk.show({ meterHour: detail.value })}
              ></quantity-field>`
        }
      </div>
      <div role="status">${this.#told(answer, meter, hour)}</div>`;
  }

  #told(answer: RoomAnswer, meter: RoomView['meter'], hour: number): readonly TemplateResult[] {
    return answer.windows.flatMap(({ window: { trimmer } }, _i, { length }) => {
      const volts = meter[trimmer];
      if (volts === null || volts === NONE) return [];
      const told = tonight(answer, trimmer, volts, hour);
      if (told === null) return [html`<p class="said">${words.closed}</p>`];
      const { kind } = told.meter;
      const name = length > 1 ? html`<strong>${trimmer}</strong> ` : '';
      return [
        html`<p class="said">${name}${roomWords.meter(told.meter)}</p>`,
        // Where the meter cannot be right, nothing follows from it.
        kind === 'cannot be'
          ? html``
          : html`<p class="said">
              ${
                isAlikeAllDay(answer.extremes)
                  ? words.restAlike(told.failsAt === null)
                  : `${words.rest(told.chart.rightShare, hour)} ${told.failsAt === null ? '' : words.breaks(told.failsAt)}`
              }
            </p>`,
      ];
    });
  }
}

customElements.define('meter-panel', MeterPanel);

declare global {
  interface HTMLElementTagNameMap {
    'meter-panel': MeterPanel;
  }
}
