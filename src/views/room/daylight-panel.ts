/** `<daylight-panel>`: place, date, sky, and how much of it comes in. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import { roomDeskOf } from '../../app/room-desk.ts';
import type { Design } from '../../design/design.ts';
import {
  type DaylightFactor,
  DEFAULT_DAYLIGHT,
  DEFAULT_WINDOW,
  type RoomDaylight,
} from '../../design/room.ts';
import { admitDaylight, inRoom, setDaylight, shutOutDaylight } from '../../design/room-commands.ts';
import { ROOM_LIMITS } from '../../design/room-schema.ts';
import { averageDaylightFactor } from '../../light/daylight.ts';
import { sunAt, sunCourse, utcOffsetIn } from '../../light/sun.ts';
import type { RoomAnswer } from '../../plan/room-answer.ts';
import { describeWords } from '../../words/en-room.ts';
import { roomWords } from '../../words/room.ts';
import { AppElement } from '../app-element.ts';
import { NONE, reader } from '../edits.ts';
import { Fields, fieldStyles } from '../fields.ts';
import { panelStyles } from '../pitch/panel-styles.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import {
  areaField,
  areaReader,
  degreesField,
  degreesReader,
  hourReader,
  hoursField,
  hoursReader,
  hourText,
  lengthReader,
  luxField,
  metresField,
  shareField,
  shareReader,
} from './readers.ts';
import { innerStyles } from './room-styles.ts';

const words = describeWords.daylight;
type WindowFactor = Extract<DaylightFactor, { kind: 'window' }>;
const L = ROOM_LIMITS;
const degreesOrNothing = (value: number | null): string => degreesField(value === NONE ? null : value);

/** Fields of a window and the room behind it. */
const WINDOW_FIELDS = [
  ['glassArea', areaReader(L.glassArea), areaField],
  ['transmittance', shareReader(L.share), shareField],
  ['maintenance', shareReader(L.share), shareField],
  ['skyAngle', degreesReader(L.skyAngle), degreesField],
  ['length', lengthReader(L.roomMetres), metresField],
  ['width', lengthReader(L.roomMetres), metresField],
  ['height', lengthReader(L.roomMetres), metresField],
  ['reflectance', shareReader(L.reflectance), shareField],
] as const;

const readShare = shareReader(L.share);
const readLux = reader('illuminance', L.lux);
const readOffset = hoursReader(L.utcOffset);
const readDegrees = { latitude: degreesReader(L.latitude), longitude: degreesReader(L.longitude) };

export class DaylightPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    panelStyles,
    innerStyles,
    css`
      label.date {
        display: grid;
        grid-template-columns: minmax(min-content, var(--label-width)) minmax(9.5em, 10em);
        align-items: center;
        column-gap: var(--unit);
        padding-block: 2px;
        font-size: var(--text-control);
      }
      label.date input {
        width: 100%;
      }
    `,
  ];

  #daylight!: Selected<Design, RoomDaylight | null>;
  #answer!: Selected<RoomAnswer | null, RoomAnswer | null>;
  #fields!: Fields;

  protected override bind(app: Lampnote): void {
    this.#daylight = new Selected(this, app.design, (design) => design.room.daylight);
    this.#answer = new Selected(this, roomDeskOf(app).answer, (answer) => answer);
    this.#fields = new Fields(app, describeWords.step);
  }

  protected override render(): TemplateResult {
    const daylight = this.#daylight.value;
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      ${this.#fields.tick(words.comes, daylight !== null, (comes) =>
        inRoom(comes ? admitDaylight(DEFAULT_DAYLIGHT) : shutOutDaylight),
      )}
      ${daylight === null ? '' : this.#described(daylight)}
    </section>`;
  }

  #described(daylight: RoomDaylight): TemplateResult {
    const { sky, factor } = daylight;
    return html`<div class="fields">
        ${(['latitude', 'longitude'] as const).map((axis) => this.#degrees(daylight, axis))}
        <p class="small">${words.placeHint}</p>
        ${this.#date(daylight.date)}
        ${this.#fields.quantity({
          label: words.offset,
          value: daylight.utcOffset,
          read: readOffset,
          text: hoursField,
          command: (utcOffset) => inRoom(setDaylight({ utcOffset })),
        })}
        ${this.#zone(daylight)} ${this.#sun(daylight)}
      </div>
      ${this.#fields.choice(words.sky, words.skies, sky, (value) =>
        inRoom(setDaylight({ sky: value as RoomDaylight['sky'] })),
      )}
      ${sky === 'measured' ? this.#measured(daylight) : html`<p class="small">${this.#band()}</p>`}
      ${this.#fields.choice(words.factor, words.factorKinds, factor.kind, (kind) =>
        inRoom(setDaylight({ factor: kind === factor.kind ? factor : otherFactor(factor) })),
      )}
      ${factor.kind === 'typed' ? this.#typed(factor.share) : this.#window(factor)}`;
  }

  /** Half a place is kept as the other half at 0: nobody types both at once. */
  #degrees({ place }: RoomDaylight, axis: 'latitude' | 'longitude'): TemplateResult {
    return this.#fields.quantity({
      label: words[axis],
      value: place?.[axis] ?? NONE,
      read: readDegrees[axis],
      text: degreesOrNothing,
      command: (degrees) =>
        inRoom(setDaylight({ place: { latitude: 0, longitude: 0, ...place, [axis]: degrees } })),
    });
  }

  #date(date: string): TemplateResult {
    return html`<label class="date">
      ${words.date}
      <input
        type="date"
        .value=${date}
        @change=${(event: Event) => {
          const { value } = event.currentTarget as HTMLInputElement;
          // An emptied box comes back as it was.
          if (value === '') this.requestUpdate();
          else this.app.change(describeWords.step(words.date), inRoom(setDaylight({ date: value })));
        }}
      />
    </label>`;
  }

  /** The clock of the machine at hand, offered where it differs. */
  #zone({ date, utcOffset }: RoomDaylight): TemplateResult | string {
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
    const here = utcOffsetIn(timeZone, date);
    if (here === null || here === utcOffset) return '';
    return html`<p class="small">
      ${words.zone(timeZone, hoursField(here))}
      <button
        type="button"
        class="link"
        @click=${() => this.app.change(describeWords.step(words.offset), inRoom(setDaylight({ utcOffset: here })))}
      >
        ${words.useZone}
      </button>
    </p>`;
  }

  #sun({ place, date, utcOffset }: RoomDaylight): TemplateResult {
    if (place === null) return html`<p class="muted">${words.noPlace}</p>`;
    const day = { place, date, utcOffset };
    const course = sunCourse(day);
    return html`<p class="said">
      ${course.kind === 'rises' ? words.sun(course.rise, course.noon, course.set) : roomWords.complaint({ kind: course.kind })}
      ${words.altitude(sunAt(day, course.noon).altitude)}
    </p>`;
  }

  #measured({ measured }: RoomDaylight): TemplateResult {
    const start = measured ?? { outdoorLux: NONE, hour: 12 };
    return html`<div class="fields">
      ${this.#fields.quantity({
        label: words.outdoor,
        value: start.outdoorLux,
        read: readLux,
        text: luxField,
        command: (outdoorLux) => inRoom(setDaylight({ measured: { ...start, outdoorLux } })),
      })}
      ${
        measured === null
          ? ''
          : this.#fields.quantity({
              label: words.outdoorHour,
              value: measured.hour,
              read: hourReader,
              text: hourText,
              command: (hour) => inRoom(setDaylight({ measured: { ...measured, hour } })),
            })
      }
    </div>`;
  }

  #band(): string {
    const band = this.#answer.value?.light.band;
    const narrowed = band && (band.darker > 0.5 || band.brighter < 2);
    return narrowed ? `${words.band} ${words.narrowed(band.darker, band.brighter)}` : words.band;
  }

  #typed(share: number): TemplateResult {
    return html`<div class="fields">
      ${this.#fields.quantity({
        label: words.share,
        value: share,
        read: readShare,
        text: shareField,
        command: (value) => inRoom(setDaylight({ factor: { kind: 'typed', share: value } })),
        hint: words.shareHint,
      })}
    </div>`;
  }

  #window(factor: WindowFactor): TemplateResult {
    return html`<div class="fields">
        ${WINDOW_FIELDS.map(([key, read, text]) =>
          this.#fields.quantity({
            label: words[key],
            value: factor[key],
            read,
            text,
            command: (value) => inRoom(setDaylight({ factor: { ...factor, [key]: value } })),
          }),
        )}
      </div>
      <p class="small">${words.comesTo(averageDaylightFactor(factor))}</p>`;
  }
}

/** From a window to the share it comes to, and from a share to the usual window. */
function otherFactor(factor: DaylightFactor): DaylightFactor {
  return factor.kind === 'typed'
    ? DEFAULT_WINDOW
    : { kind: 'typed', share: Math.min(1, averageDaylightFactor(factor)) };
}

customElements.define('daylight-panel', DaylightPanel);

declare global {
  interface HTMLElementTagNameMap {
    'daylight-panel': DaylightPanel;
  }
}
