/** `<camera-panel>`: the webcam as light. Opens only on request, says what it does, and stops in one press. */
import { css, html, type TemplateResult } from 'lit';
import type { CameraState, CameraView } from '../../app/camera-light.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Session } from '../../app/session.ts';
import type { CameraLocks } from '../../light/camera.device.ts';
import { type CameraRegion, moveRegion, resizeRegion } from '../../light/camera.ts';
import { cameraAlias } from '../../light/mains-lamp.ts';
import { VOICES, type VoiceId } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import type { CommitDetail } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import { reader } from '../edits.ts';
import { LiveFrames, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';

const readLux = reader('illuminance', { min: 0.1, max: 200_000 });
/** Ripple between frames worth a word. */
const RIPPLE_TOLD = 0.02;
const STEP = 0.02;
const FINE = 0.005;

export class CameraPanel extends AppElement {
  static override styles = [
    common,
    css`
      caution-note {
        margin-top: 10px;
      }
      .picture {
        position: relative;
        overflow: hidden;
        max-width: 100%;
        aspect-ratio: 4 / 3;
        border: 1px solid var(--hair);
        background: var(--sunken);
        touch-action: none;
      }
      .picture video {
        display: block;
        width: 100%;
        height: 100%;
        object-fit: fill;
      }
      .patch {
        position: absolute;
        min-width: 0;
        min-height: 0;
        padding: 0 4px;
        border: var(--stroke-data) solid var(--voice-a);
        background: none;
        color: var(--voice-a);
        font-weight: 600;
        text-align: left;
        cursor: grab;
        touch-action: none;
        box-shadow: 0 0 0 1px var(--surface), inset 0 0 0 1px var(--surface);
      }
      .patch:hover:not(:disabled) {
        background: none;
      }
      .patch.b {
        border-style: dashed;
        border-color: var(--voice-b);
        color: var(--voice-b);
      }
      .patch span {
        padding: 0 3px;
        background: var(--surface);
      }
      .on {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 8px 14px;
        margin: 8px 0;
      }
      .on strong::before {
        content: '● ';
        color: var(--fault);
      }
      .fields {
        display: grid;
        gap: 6px;
        margin: 8px 0;
        --label-width: 6.4em;
      }
      .fault,
      .note {
        font-size: var(--text-control);
      }
    `,
  ];

  #view!: Selected<CameraView, CameraView>;
  #litLux!: Selected<Session, number>;
  #live!: LiveFrames;
  #dragged: { voice: VoiceId; pointer: number; x: number; y: number } | null = null;

  protected override bind(app: Lampnote): void {
    this.#view = new Selected(this, app.light.camera.view, (view) => view);
    this.#litLux = new Selected(this, app.session, (session) => session.cameraLux);
    this.#live = new LiveFrames(this, app.live, 4);
  }

  protected override render(): TemplateResult {
    const { state } = this.#view.value;
    return html`<p class="small">${words.camera.purpose}</p>
      ${this.#isOpen(state) ? this.#opened(state) : this.#closed(state)}
      <caution-note .places=${['camera']}></caution-note>`;
  }

  #isOpen(state: CameraState): boolean {
    return (
      state.kind === 'on' ||
      state.kind === 'settling' ||
      state.kind === 'unlocking' ||
      state.kind === 'too dark'
    );
  }

  #closed(state: CameraState): TemplateResult {
    return html`
      ${state.kind === 'refused' ? html`<p class="fault" role="alert">${words.camera.refused[state.reason]}</p>` : ''}
      ${state.kind === 'off' && state.ended ? html`<p class="fault" role="alert">${words.camera.ended[state.ended]}</p>` : ''}
      <div class="fields">${this.#lit()}</div>
      ${
        state.kind === 'asking'
          ? html`<p role="status">${words.camera.asking}</p>
              <button type="button" @click=${() => this.app.light.camera.stop()}>${words.camera.stop}</button>`
          : html`<button type="button" class="primary" @click=${() => this.app.light.camera.open(this.#litLux.value)}>
              ${words.camera.open}
            </button>`
      }
    `;
  }

  #opened(state: CameraState): TemplateResult {
    return html`<div class="on">
        <strong>${words.camera.on}</strong>
        <button type="button" @click=${() => this.app.light.camera.stop()}>${words.camera.stop}</button>
        <button type="button" @click=${() => this.app.light.camera.takeAgain(this.#litLux.value)}>
          ${words.camera.again}
        </button>
      </div>
      <div class="picture" role="group" aria-label=${words.camera.picture}>
        ${this.app.light.camera.video}
        ${VOICES.map((voice) => this.#patch(voice))}
      </div>
      <p class="small" id="keys">${words.camera.regionKeys}</p>
      <div role="status">
        ${this.#view.value.turned ? html`<p class="fault">${words.camera.turned}</p>` : ''}${this.#says(state)}
      </div>
      <div class="fields">${this.#lit()}</div>
      ${state.kind === 'on' ? this.#calibration() : ''}`;
  }

  #says(state: CameraState): TemplateResult {
    const { clipped, missing } = this.#view.value;
    if (missing) return html`<p class="fault">${words.camera.missing[missing]}</p>`;
    switch (state.kind) {
      case 'settling':
      case 'unlocking':
        return html`<p class="note">${words.camera.settling}</p>`;
      case 'too dark':
        return html`<p class="fault">${words.camera.dark(state.voice)}</p>`;
      case 'on':
        return html`<p class="note">
            ${
              state.calibration.source === 'assumed'
                ? html`<em>${words.camera.assumed(state.calibration.lux.A)}.</em>`
                : words.camera.calibrated
            }
            ${lockWords(state.locks)} ${state.restless ? words.camera.restless : ''}
          </p>
          ${VOICES.filter((voice) => clipped[voice]).map((voice) => html`<p class="fault">${words.camera.clipped(voice)}</p>`)}
          ${this.#findings()}
          <p class="small">${words.camera.exactness}</p>`;
      default:
        return html``;
    }
  }

  #findings(): TemplateResult {
    const { frameRate, ripple, drifting } = this.#view.value.findings;
    const { mains } = this.app.session.current.lamp;
    return html`${drifting ? html`<p class="fault">${words.camera.drifting}</p>` : ''}
      ${ripple > RIPPLE_TOLD ? html`<p class="fault">${words.camera.ripple(ripple)}</p>` : ''}
      ${
        frameRate === null
          ? ''
          : html`<p class="small">${words.camera.rate(frameRate, mains, cameraAlias(2 * mains, frameRate))}</p>`
      }`;
  }

  #lit(): TemplateResult {
    return html`<quantity-field
      label=${words.camera.litLevel}
      .hint=${words.camera.litHint}
      .value=${this.#litLux.value}
      .format=${luxText}
      .parse=${readLux}
      @commit=${({ detail }: CustomEvent<CommitDetail>) => {
        this.app.setSession({ cameraLux: detail.value });
        if (this.#view.value.state.kind === 'on') void this.app.light.camera.takeAgain(detail.value);
      }}
    ></quantity-field>`;
  }

  #calibration(): TemplateResult {
    const lux = this.#live.frame?.lux ?? { A: 0, B: 0 };
    return html`<details>
      <summary>${words.camera.calibrate}</summary>
      <p class="small">${words.camera.calibrateHint}</p>
      <div class="fields">
        ${VOICES.map(
          (voice) =>
            html`<quantity-field
              label=${words.camera.typed(voice)}
              .value=${Number(lux[voice].toPrecision(3))}
              .format=${luxText}
              .parse=${readLux}
              @commit=${({ detail }: CustomEvent<CommitDetail>) =>
                this.app.light.camera.calibrate(voice, detail.value)}
            ></quantity-field>`,
        )}
      </div>
    </details>`;
  }

  #patch(voice: VoiceId): TemplateResult {
    const region = this.#view.value.regions[voice];
    return html`<button
      type="button"
      class="patch ${voice.toLowerCase()}"
      aria-label="${words.camera.region(voice)}, ${words.camera.regionPlace(region.x, region.y)}"
      aria-describedby="keys"
      data-voice=${voice}
      @keydown=${(event: KeyboardEvent) => this.#key(voice, event)}
      @pointerdown=${(event: PointerEvent) => this.#press(voice, event)}
      @pointermove=${this.#move}
      @pointerup=${this.#release}
      @pointercancel=${this.#release}
    >
      <span>${voice}</span>
    </button>`;
  }

  /** Through the style object: the page's policy lets no style attribute through. */
  protected override updated(): void {
    const video = this.app.light.camera.video;
    const picture = this.renderRoot.querySelector<HTMLElement>('.picture');
    if (picture && video?.videoWidth)
      picture.style.setProperty('aspect-ratio', `${video.videoWidth} / ${video.videoHeight}`);
    for (const patch of this.renderRoot.querySelectorAll<HTMLElement>('.patch')) {
      const { x, y, width, height } = this.#view.value.regions[patch.dataset['voice'] as VoiceId];
      const place = { left: x, top: y, width, height };
      for (const [side, share] of Object.entries(place)) patch.style.setProperty(side, `${share * 100}%`);
    }
  }

  #place(voice: VoiceId, change: (region: CameraRegion) => CameraRegion): void {
    this.app.light.camera.placeRegion(voice, change(this.#view.value.regions[voice]));
  }

  #key(voice: VoiceId, event: KeyboardEvent): void {
    const step = event.shiftKey ? FINE : STEP;
    const moves: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, -step],
      ArrowDown: [0, step],
    };
    const move = moves[event.key];
    if (!move) return;
    event.preventDefault();
    this.#place(voice, (region) => (event.ctrlKey ? resizeRegion : moveRegion)(region, move[0], move[1]));
  }

  #press(voice: VoiceId, event: PointerEvent): void {
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    this.#dragged = { voice, pointer: event.pointerId, x: event.clientX, y: event.clientY };
  }

  readonly #move = (event: PointerEvent): void => {
    const drag = this.#dragged;
    if (drag?.pointer !== event.pointerId) return;
    const box = this.renderRoot.querySelector('.picture')!.getBoundingClientRect();
    this.#place(drag.voice, (region) =>
      moveRegion(region, (event.clientX - drag.x) / box.width, (event.clientY - drag.y) / box.height),
    );
    drag.x = event.clientX;
    drag.y = event.clientY;
  };

  readonly #release = (): void => {
    this.#dragged = null;
  };
}

const luxText = (value: number | null): string => words.lux(value ?? 0);

function lockWords(locks: CameraLocks): string {
  if (locks.exposure === 'automatic') return words.camera.locks.automatic;
  if (locks.exposure === 'unknown') return words.camera.locks.unknown;
  return locks.whiteBalance === 'locked' ? words.camera.locks.locked : words.camera.locks.exposureOnly;
}

customElements.define('camera-panel', CameraPanel);

declare global {
  interface HTMLElementTagNameMap {
    'camera-panel': CameraPanel;
  }
}
