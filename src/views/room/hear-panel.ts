/** `<hear-panel>`: the day in a minute, the event at the margin, chatter going as hysteresis grows. */
import { css, html, type TemplateResult } from 'lit';
import type { Auditioned } from '../../app/audition.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { type RoomDesk, roomDeskOf } from '../../app/room-desk.ts';
import { ROOM_PIECES, type RoomPiece } from '../../app/room-sound.ts';
import { hourInDay } from '../../plan/day-sound.ts';
import type { RoomAnswer } from '../../plan/room-answer.ts';
import { answerWords } from '../../words/en-room-answer.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import { panelStyles } from '../pitch/panel-styles.ts';
import { LiveFrames, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { innerStyles } from './room-styles.ts';

const words = answerWords.hear;

export class HearPanel extends AppElement {
  static override styles = [
    common,
    panelStyles,
    innerStyles,
    css`
      .piece {
        display: grid;
        grid-template-columns: minmax(0, 13em) minmax(0, 1fr);
        gap: 2px 14px;
        align-items: center;
        margin-bottom: 8px;
      }
      .piece p {
        margin: 0;
      }
      @media (max-width: 30em) {
        .piece {
          grid-template-columns: minmax(0, 1fr);
        }
      }
      @media print {
        .piece {
          display: none;
        }
      }
    `,
  ];

  #desk!: RoomDesk;
  #answer!: Selected<RoomAnswer | null, RoomAnswer | null>;

  protected override bind(app: Lampnote): void {
    this.#desk = roomDeskOf(app);
    this.#answer = new Selected(this, this.#desk.answer, (answer) => answer);
    new Selected<Auditioned | null, Auditioned | null>(this, app.audition.playing, (playing) => playing);
    // The hour that sounds moves by itself.
    new LiveFrames(this, app.live, 3);
  }

  protected override render(): TemplateResult {
    const answer = this.#answer.value;
    const { heard } = this.#desk;
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      ${
        answer === null
          ? html`<p class="muted">${answerWords.set.later}</p>`
          : html`${ROOM_PIECES.map((piece) => this.#piece(piece, heard))}
              <p class="said" role="status">${heard === null ? '' : this.#now(heard, answer)}</p>`
      }
      <caution-note .places=${['headphones']}></caution-note>
    </section>`;
  }

  #piece(piece: RoomPiece, heard: RoomPiece | null): TemplateResult {
    const playing = piece === heard;
    return html`<div class="piece">
      <button
        type="button"
        aria-pressed=${playing ? 'true' : 'false'}
        aria-describedby="hint-${piece}"
        @click=${() => (playing ? this.#desk.silence() : void this.#desk.hear(piece))}
      >
        ${words.pieces[piece]}
      </button>
      <p class="small" id="hint-${piece}">${words.hints[piece]}</p>
    </div>`;
  }

  #now(heard: RoomPiece, answer: RoomAnswer): string {
    const { step } = this.app.audition.playing.current!;
    switch (heard) {
      case 'day':
        return words.now.day(hourInDay(answer.levels, this.app.light.place));
      case 'margin':
        return words.now.margin(!this.#desk.atTheMargin);
      case 'chatter':
        return words.now.chatter(this.#desk.hysteresisHeard(step));
    }
  }
}

customElements.define('hear-panel', HearPanel);

declare global {
  interface HTMLElementTagNameMap {
    'hear-panel': HearPanel;
  }
}
