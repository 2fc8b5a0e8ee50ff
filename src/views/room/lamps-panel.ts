/** `<lamps-panel>`: the lamps on the mains, and the ripple they make together. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Design } from '../../design/design.ts';
import type { Room, RoomLamp } from '../../design/room.ts';
import { addLamp, changeLamp, inRoom, removeLamp, setRoom } from '../../design/room-commands.ts';
import { ROOM_LIMITS, ROOM_MOST } from '../../design/room-schema.ts';
import { ieee1789Verdict, MAINS_LAMPS, type MainsLamp } from '../../light/mains-lamp.ts';
import type { RoomLampId } from '../../parts/rooms.ts';
import { rippleOf } from '../../plan/event.ts';
import { describeWords } from '../../words/en-room.ts';
import { AppElement } from '../app-element.ts';
import { Fields, fieldStyles } from '../fields.ts';
import { panelStyles } from '../pitch/panel-styles.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { shareField, shareReader } from './readers.ts';
import { innerStyles } from './room-styles.ts';

const words = describeWords.lamps;
const readShare = shareReader(ROOM_LIMITS.share);
/** The lamp a row starts from: the commonest in new rooms. */
const FIRST: RoomLamp = { lamp: 'led-smooth', share: 1 };

export class LampsPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    panelStyles,
    innerStyles,
    css`
      .lamp {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 2px 12px;
        align-items: center;
        padding: 4px 0 6px;
        border-bottom: 1px solid var(--hair);
        --label-width: 3.4em;
      }
      .lamp quantity-field {
        --label-width: 11.5em;
        --field-width: 5em;
      }
    `,
  ];

  #room!: Selected<Design, Room>;
  #fields!: Fields;

  protected override bind(app: Lampnote): void {
    this.#room = new Selected(this, app.design, (design) => design.room);
    this.#fields = new Fields(app, describeWords.step);
  }

  protected override render(): TemplateResult {
    const room = this.#room.value;
    const { lamps } = room;
    const full = lamps.length >= ROOM_MOST.lamps;
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      ${lamps.length === 0 ? html`<p class="muted">${words.none}</p>` : lamps.map((lamp, i) => this.#lamp(lamp, i))}
      <div class="row">
        <button
          type="button"
          ?disabled=${full}
          @click=${() => this.app.change(describeWords.step(words.add), inRoom(addLamp(FIRST)))}
        >
          ${words.add}
        </button>
        ${full ? html`<p class="small">${words.full}</p>` : ''}
        ${this.#fields.choice(words.mains, words.mainsNames, String(room.mainsHertz), (hertz) =>
          inRoom(setRoom({ mainsHertz: hertz === '60' ? 60 : 50 })),
        )}
      </div>
      ${rippleWords(room)}
    </section>`;
  }

  #lamp({ lamp, share }: RoomLamp, index: number): TemplateResult {
    return html`<div class="lamp" role="group" aria-label=${words.names[lamp]}>
      ${this.#fields.list(words.lamp, words.names, lamp, (id) => inRoom(changeLamp(index, { lamp: id as RoomLampId })))}
      <button
        type="button"
        aria-label=${words.removeLamp(words.names[lamp])}
        @click=${() => this.app.change(describeWords.step(words.removeLamp(words.names[lamp])), inRoom(removeLamp(index)))}
      >
        ${words.remove}
      </button>
      ${this.#fields.quantity({
        label: words.share,
        value: share,
        read: readShare,
        text: shareField,
        command: (value) => inRoom(changeLamp(index, { share: value })),
      })}
    </div>`;
  }
}

function rippleWords(room: Room): TemplateResult | string {
  const ripple = rippleOf(room);
  if (ripple === null) return '';
  const [only] = room.lamps;
  const span = room.lamps.length === 1 ? (MAINS_LAMPS[only!.lamp] as MainsLamp).indexSpan : null;
  const index = span === null ? '' : words.index(span.min, span.max);
  return html`<p class="said">${words.ripple(ripple.hertz, ripple.depth, index)}</p>
    <p class="small">${words.verdict[ieee1789Verdict(ripple.depth, ripple.hertz)]}</p>`;
}

customElements.define('lamps-panel', LampsPanel);

declare global {
  interface HTMLElementTagNameMap {
    'lamps-panel': LampsPanel;
  }
}
