/** `<readings-panel>`: what was read of the light, by sensor and hour; the kind of room; the hours it is open. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Design } from '../../design/design.ts';
import { type Room, type RoomReading, type SensorLux, UNREAD_SENSOR } from '../../design/room.ts';
import {
  addReading,
  chooseRoomType,
  inRoom,
  type RoomCommand,
  removeReading,
  setReading,
  setReadingHour,
  setRoom,
} from '../../design/room-commands.ts';
import { ROOM_LIMITS, ROOM_MOST } from '../../design/room-schema.ts';
import { ROOM_TYPES, type RoomTypeId } from '../../parts/rooms.ts';
import { nextReadingHour } from '../../plan/room-shown.ts';
import { pairOf, VOICES, type VoiceId } from '../../quantity/units.ts';
import { describeWords } from '../../words/en-room.ts';
import { AppElement } from '../app-element.ts';
import type { CommitDetail } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import { NONE } from '../edits.ts';
import { Fields, fieldStyles } from '../fields.ts';
import { panelStyles } from '../pitch/panel-styles.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { voiceMark, voiceStyles } from '../theme/voice-mark.ts';
import { hourReader, hourText, lengthReader, luxField, luxOrNothing, metresField } from './readers.ts';
import { innerStyles } from './room-styles.ts';

const words = describeWords.readings;
const LEVELS = ['lit', 'shaded', 'dark'] as const satisfies readonly (keyof SensorLux)[];
const readLux = luxOrNothing(ROOM_LIMITS.lux);
const readSpacing = lengthReader(ROOM_LIMITS.spacingMetres);
const NO_TYPE = '';
const types = () => ({ [NO_TYPE]: words.noType, ...words.types });

export class ReadingsPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    panelStyles,
    innerStyles,
    voiceStyles,
    css`
      fieldset.reading {
        display: grid;
        grid-template-columns: 5.4em minmax(0, 1fr) minmax(0, 1fr) auto;
        align-items: end;
        gap: 4px 22px;
        padding: 4px 0 10px;
        border-bottom: 1px solid var(--hair);
        --field-width: 5.4em;
      }
      .sensor {
        display: grid;
        grid-template-columns: 52px repeat(3, minmax(0, 1fr));
        align-items: end;
        gap: 0 10px;
        --field-width: 100%;
      }
      .sensor .voice-mark {
        margin-bottom: 8px;
      }
      .reading button {
        margin-bottom: 2px;
      }
      @media (max-width: 61.25em) {
        fieldset.reading {
          grid-template-columns: minmax(0, 1fr) auto;
        }
        .sensor {
          grid-column: 1 / -1;
          grid-row: auto;
        }
        .reading > quantity-field {
          grid-row: 1;
        }
        .reading > button {
          grid-row: 1;
          grid-column: 2;
        }
      }
      @media (max-width: 30em) {
        .sensor {
          grid-template-columns: repeat(3, minmax(0, 1fr));
        }
        .sensor .voice-mark {
          display: none;
        }
      }
    `,
  ];

  #room!: Selected<Design, Room>;
  #fields!: Fields;

  protected override bind(app: Lampnote): void {
    this.#room = new Selected(this, app.design, (design) => design.room);
    this.#fields = new Fields(app, describeWords.step);
  }

  /** Puts the focus on the first thing to fill in. */
  enter(): void {
    this.renderRoot.querySelector<HTMLElement>('quantity-field, button')?.focus();
  }

  protected override render(): TemplateResult {
    const room = this.#room.value;
    const { readings } = room;
    const full = readings.length >= ROOM_MOST.readings;
    return html`<section aria-labelledby="title">
      <h2 id="title">${describeWords.heading}</h2>
      <p class="small">${words.hint} ${describeWords.noNames}</p>
      ${readings.length === 0 ? html`<p class="muted">${words.none}</p>` : readings.map((one, i) => this.#reading(one, i))}
      <div class="row">
        <button type="button" class=${readings.length === 0 ? 'primary' : ''} ?disabled=${full} @click=${this.#add}>
          ${words.add}
        </button>
        ${full ? html`<p class="small">${words.full}</p>` : ''}
        ${this.#fields.choice(words.are, words.kinds, room.readingsAre, (are) =>
          inRoom(setRoom({ readingsAre: are as Room['readingsAre'] })),
        )}
      </div>
      <div class="fields">
        ${this.#fields.list(words.type, types(), room.roomType ?? NO_TYPE, (type) =>
          inRoom(chooseRoomType(type === NO_TYPE ? null : (type as RoomTypeId))),
        )}
        ${(['opens', 'closes'] as const).map((end) =>
          this.#fields.quantity({
            label: words[end],
            value: room[end],
            read: hourReader,
            text: hourText,
            command: (hour) => inRoom(setRoom({ [end]: hour })),
          }),
        )}
        ${this.#fields.quantity({
          label: words.spacing,
          value: room.spacingMetres,
          read: readSpacing,
          text: metresField,
          command: (spacingMetres) => inRoom(setRoom({ spacingMetres })),
        })}
        ${room.roomType === null ? '' : this.#typical(room.roomType)}
      </div>
    </section>`;
  }

  #typical(type: RoomTypeId): TemplateResult {
    const { lux, source, fromMemory } = ROOM_TYPES[type];
    return html`<p class="small">${words.typical(lux, source, fromMemory)}</p>`;
  }

  #reading({ hour, lux }: RoomReading, index: number): TemplateResult {
    return html`<fieldset class="reading">
      <legend class="visually-hidden">${words.row(hour)}</legend>
      <quantity-field
        stacked
        label=${words.hour}
        .value=${hour}
        .format=${hourText}
        .parse=${hourReader}
        @commit=${({ detail }: CustomEvent<CommitDetail>) =>
          this.#change(words.hour, setReadingHour(index, detail.value))}
      ></quantity-field>
      ${VOICES.map(
        (voice) => html`<div class="sensor">
          ${voiceMark(voice)} ${LEVELS.map((level) => this.#level(index, voice, level, lux[voice][level]))}
        </div>`,
      )}
      <button type="button" aria-label=${words.remove(hour)} @click=${() => this.#change(words.remove(hour), removeReading(index))}>
        ${words.removeShort}
      </button>
    </fieldset>`;
  }

  #level(index: number, voice: VoiceId, level: keyof SensorLux, lux: number | null): TemplateResult {
    const label = words.level[level](voice);
    return html`<quantity-field
      stacked
      label=${label}
      .value=${lux ?? NONE}
      .format=${luxField}
      .parse=${readLux}
      @commit=${({ detail }: CustomEvent<CommitDetail>) =>
        this.#change(label, setReading(index, voice, level, detail.value === NONE ? null : detail.value))}
    ></quantity-field>`;
  }

  readonly #add = async (): Promise<void> => {
    const room = this.#room.value;
    const hour = nextReadingHour(room);
    this.#change(words.addStep, addReading({ hour, lux: pairOf(() => UNREAD_SENSOR) }));
    await this.updateComplete;
    // On to the new row's first light.
    const rows = this.renderRoot.querySelectorAll('fieldset.reading');
    const at = this.#room.value.readings.findIndex((reading) => reading.hour === hour);
    rows[at]?.querySelector<HTMLElement>('.sensor quantity-field')?.focus();
  };

  #change(label: string, command: RoomCommand): void {
    this.app.change(describeWords.step(label), inRoom(command));
  }
}

customElements.define('readings-panel', ReadingsPanel);

declare global {
  interface HTMLElementTagNameMap {
    'readings-panel': ReadingsPanel;
  }
}
