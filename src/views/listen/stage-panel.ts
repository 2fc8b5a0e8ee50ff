/** `<stage-panel>`: the lamp, the room's light and two hands. The sliders are the interface; the drawing moves the same numbers. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Session } from '../../app/session.ts';
import {
  candelaFor,
  HAND_TRAVEL,
  lampLuxAtTable,
  STAGE_LIMITS,
  type Stage,
  sensorPlace,
  stageLux,
} from '../../light/stage.ts';
import { VOICES, type VoiceId } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import type { SlideDetail } from '../controls/events.ts';
import '../controls/level-slider.ts';
import { LiveFrames, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { voiceStyles } from '../theme/voice-mark.ts';
import { drawStage, metresAt, PICTURE, pictureStyles } from './stage-picture.ts';

/** The lamp slider speaks of lux at the sensors; this is its reach. */
const LAMP_LUX = { min: 1, max: 3000 } as const;
const ARROW_STEP = 0.05;
const FINE_STEP = 0.01;

export class StagePanel extends AppElement {
  static override properties = { ...AppElement.properties, stays: { state: true } };
  static override styles = [
    common,
    voiceStyles,
    pictureStyles,
    css`
      figure {
        container-type: inline-size;
      }
      @container (max-width: 23.75em) {
        svg.stage {
          --picture-text: 21px;
        }
      }
      @container (min-width: 35em) {
        svg.stage {
          --picture-text: 14px;
        }
      }
      svg.stage {
        display: block;
        width: 100%;
        height: auto;
        border: 1px solid var(--hair);
        background: var(--surface);
        touch-action: pan-y;
        user-select: none;
      }
      figcaption {
        margin: 6px 0 10px;
      }
      .sliders {
        display: grid;
        gap: 2px;
        --label-width: 6.6em;
        --value-width: 5em;
      }
      label.switch {
        display: flex;
        align-items: center;
        min-height: 28px;
        font-size: var(--text-control);
      }
    `,
  ];

  /** A hand put somewhere stays there when the pointer lets go. */
  declare stays: boolean;
  #stage!: Selected<Session, Stage>;
  #live!: LiveFrames;
  #dragged: { voice: VoiceId; pointer: number; before: number } | null = null;
  #lastHand: VoiceId = 'A';

  constructor() {
    super();
    this.stays = true;
  }

  protected override bind(app: Lampnote): void {
    this.#stage = new Selected(this, app.session, (session) => session.stage);
    this.#live = new LiveFrames(this, app.live, 10);
  }

  protected override render(): TemplateResult {
    const stage = this.#stage.value;
    const lux = stageLux(stage);
    const lamp = lampLuxAtTable(stage);
    return html`<figure>
        <svg
          class="stage"
          viewBox="0 0 ${PICTURE.width} ${PICTURE.height}"
          tabindex="0"
          role="group"
          aria-label=${words.light.stageName}
          aria-describedby="state keys"
          @keydown=${this.#key}
          @pointerdown=${this.#press}
          @pointermove=${this.#move}
          @pointerup=${this.#release}
          @pointercancel=${this.#cancel}
        >
          ${drawStage(stage, this.#live.frame?.lux ?? lux)}
        </svg>
        <p id="state" class="visually-hidden">${words.light.describe(stage.lampOn ? lamp : 0, lux, stage.cover)}</p>
        <figcaption>${words.light.figure}</figcaption>
      </figure>
      <div class="sliders">
        ${VOICES.map(
          (voice) =>
            html`<level-slider
              .voice=${voice}
              label=${words.light.hand(voice)}
              .value=${stage.cover[voice]}
              min="0"
              max="1"
              scale="linear"
              .readout=${words.light.cover(stage.cover[voice])}
              .valuetext=${words.light.coverText(voice, stage.cover[voice], lux[voice])}
              @slide=${({ detail }: CustomEvent<SlideDetail>) => this.#cover(voice, detail.value)}
            ></level-slider>`,
        )}
        <level-slider
          label=${words.light.lamp}
          .value=${lamp}
          min=${LAMP_LUX.min}
          max=${LAMP_LUX.max}
          scale="log"
          .disabled=${!stage.lampOn}
          .readout=${words.lux(lamp)}
          .valuetext=${words.light.lampText(lamp)}
          @slide=${({ detail }: CustomEvent<SlideDetail>) =>
            this.app.light.setStage({
              lampCandela: candelaFor(detail.value, stage.lampMetres, stage.spacingMetres),
            })}
        ></level-slider>
        ${this.#length('lampMetres', words.light.lampHeight, words.light.metres)}
        <level-slider
          label=${words.light.room}
          .value=${stage.roomLux}
          min="0.1"
          max=${STAGE_LIMITS.roomLux.max}
          scale="log"
          off-at-start
          .readout=${words.lux(stage.roomLux)}
          .valuetext=${words.lux(stage.roomLux)}
          @slide=${({ detail }: CustomEvent<SlideDetail>) => this.app.light.setStage({ roomLux: detail.value })}
        ></level-slider>
        ${this.#length('handMetres', words.light.handHeight, words.light.centimetres)}
        <label class="switch">
          <input
            type="checkbox"
            .checked=${stage.lampOn}
            @change=${(event: Event) => this.app.light.setStage({ lampOn: (event.currentTarget as HTMLInputElement).checked })}
          />
          ${words.light.lampSwitch}
        </label>
        <label class="switch" title=${words.light.staysHint}>
          <input
            type="checkbox"
            .checked=${this.stays}
            @change=${(event: Event) => {
              this.stays = (event.currentTarget as HTMLInputElement).checked;
            }}
          />
          ${words.light.stays}
        </label>
        <p id="keys" class="small">${words.light.stageKeys}</p>
      </div>`;
  }

  #length(
    key: 'lampMetres' | 'handMetres',
    label: string,
    format: (metres: number) => string,
  ): TemplateResult {
    const value = this.#stage.value[key];
    return html`<level-slider
      label=${label}
      .value=${value}
      min=${STAGE_LIMITS[key].min}
      max=${STAGE_LIMITS[key].max}
      scale="linear"
      .readout=${format(value)}
      .valuetext=${format(value)}
      @slide=${({ detail }: CustomEvent<SlideDetail>) => this.app.light.setStage({ [key]: detail.value })}
    ></level-slider>`;
  }

  #cover(voice: VoiceId, value: number): void {
    this.#lastHand = voice;
    const cover = this.#stage.value.cover;
    this.app.light.setStage({ cover: { ...cover, [voice]: Math.min(1, Math.max(0, value)) } });
  }

  /** A press brings the nearer hand there; a press on a hand takes hold of it. */
  readonly #press = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    const metres = this.#metres(event);
    const held = (event.target as Element).closest<SVGGElement>('[data-hand]')?.dataset['hand'];
    const voice: VoiceId = held === 'A' || held === 'B' ? held : metres < 0 ? 'A' : 'B';
    this.#dragged = { voice, pointer: event.pointerId, before: this.#stage.value.cover[voice] };
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    this.#cover(voice, this.#coverAt(voice, metres));
  };

  readonly #move = (event: PointerEvent): void => {
    if (this.#dragged?.pointer !== event.pointerId) return;
    this.#cover(this.#dragged.voice, this.#coverAt(this.#dragged.voice, this.#metres(event)));
  };

  readonly #release = (event: PointerEvent): void => {
    if (this.#dragged?.pointer !== event.pointerId) return;
    if (!this.stays) this.#cover(this.#dragged.voice, 0);
    this.#dragged = null;
  };

  readonly #cancel = (event: PointerEvent): void => {
    if (this.#dragged?.pointer !== event.pointerId) return;
    this.#cover(this.#dragged.voice, this.#dragged.before);
    this.#dragged = null;
  };

  #metres(event: PointerEvent): number {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    return metresAt(((event.clientX - box.left) / box.width) * PICTURE.width);
  }

  /** How far over its sensor a hand is when its middle stands at a place on the table. */
  #coverAt(voice: VoiceId, metres: number): number {
    const outward = (metres - sensorPlace(this.#stage.value, voice)) * (voice === 'A' ? -1 : 1);
    return 1 - Math.max(0, outward) / HAND_TRAVEL;
  }

  readonly #key = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || (event.shiftKey && event.key === 'Escape')) return;
    const { cover, lampOn } = this.#stage.value;
    const step = event.shiftKey ? FINE_STEP : ARROW_STEP;
    const inward = this.#lastHand === 'A' ? 1 : -1;
    switch (event.key) {
      case 'a':
      case 'b':
      case 'A':
      case 'B': {
        const voice = event.key.toUpperCase() as VoiceId;
        this.#cover(voice, cover[voice] > 0.5 ? 0 : 1);
        break;
      }
      case 'l':
      case 'L':
        this.app.light.setStage({ lampOn: !lampOn });
        break;
      case 'ArrowLeft':
      case 'ArrowRight': {
        const sign = event.key === 'ArrowRight' ? inward : -inward;
        this.#cover(this.#lastHand, cover[this.#lastHand] + sign * step);
        break;
      }
      case 'Escape':
        if (this.#dragged) {
          this.#cover(this.#dragged.voice, this.#dragged.before);
          this.#dragged = null;
        } else this.app.light.setStage({ cover: { A: 0, B: 0 } });
        break;
      default:
        return;
    }
    event.preventDefault();
    event.stopPropagation();
  };
}

customElements.define('stage-panel', StagePanel);

declare global {
  interface HTMLElementTagNameMap {
    'stage-panel': StagePanel;
  }
}
