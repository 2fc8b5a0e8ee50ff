/** `<scene-panel>`: light that happens by itself, with its parameters. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Session } from '../../app/session.ts';
import { SCENE_LIMITS, type Scene, type SceneKind } from '../../light/scene.ts';
import type { Limits } from '../../quantity/parse.ts';
import { type SceneParameter, sceneWords } from '../../words/en-scenes.ts';
import { AppElement } from '../app-element.ts';
import type { SlideDetail } from '../controls/events.ts';
import '../controls/level-slider.ts';
import { LiveFrames, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';

/** Parameters that are counts. */
const WHOLE: readonly SceneParameter[] = ['slots', 'seed'];
/** Where a limit may be 0 but the slider is logarithmic. */
const LEAST = 0.1;

export class ScenePanel extends AppElement {
  static override styles = [
    common,
    css`
      label {
        display: block;
        font-size: var(--text-control);
      }
      select {
        width: 100%;
      }
      .sliders {
        display: grid;
        gap: 2px;
        margin: 8px 0;
        --label-width: 7.4em;
        --value-width: 5em;
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 6px 14px;
        margin: 6px 0;
      }
    `,
  ];

  #scene!: Selected<Session, Scene>;

  protected override bind(app: Lampnote): void {
    this.#scene = new Selected(this, app.session, (session) => session.scene);
    // The place within the scene moves by itself.
    new LiveFrames(this, app.live, 4);
  }

  protected override render(): TemplateResult {
    const scene = this.#scene.value;
    return html`<label>
        <span class="visually-hidden">${sceneWords.kind}</span>
        <select
          aria-label=${sceneWords.kind}
          @change=${(event: Event) =>
            this.app.light.chooseScene((event.currentTarget as HTMLSelectElement).value as SceneKind)}
        >
          ${Object.entries(sceneWords.kinds).map(
            ([kind, name]) => html`<option value=${kind} .selected=${kind === scene.kind}>${name}</option>`,
          )}
        </select>
      </label>
      <div class="row">
        <button type="button" @click=${() => this.app.light.goTo(0)}>${sceneWords.again}</button>
        <span class="small">${sceneWords.place(this.app.light.place)}</span>
      </div>
      <p class="small">${sceneWords.flicker} ${sceneWords.repeats}</p>
      <div class="sliders">
        ${Object.entries(SCENE_LIMITS[scene.kind]).map(([key, limits]) =>
          this.#slider(scene, key as SceneParameter, limits),
        )}
      </div>`;
  }

  #slider(scene: Scene, key: SceneParameter, { min, max }: Limits): TemplateResult {
    const { label, print } = sceneWords.parameters[key];
    const value = (scene as unknown as Readonly<Record<SceneParameter, number>>)[key];
    // Spans of several decades are turned in equal ratios.
    const log = key !== 'seed' && max > 20 * Math.max(min, LEAST) && max > 20;
    const text = print(value);
    return html`<level-slider
      label=${label}
      .value=${value}
      min=${log ? Math.max(min, LEAST) : min}
      max=${max}
      scale=${log ? 'log' : 'linear'}
      ?off-at-start=${log && min === 0}
      .readout=${text}
      .valuetext=${text}
      @slide=${({ detail }: CustomEvent<SlideDetail>) =>
        this.app.light.setScene({
          ...scene,
          [key]: WHOLE.includes(key) ? Math.round(detail.value) : detail.value,
        } as Scene)}
    ></level-slider>`;
  }
}

customElements.define('scene-panel', ScenePanel);

declare global {
  interface HTMLElementTagNameMap {
    'scene-panel': ScenePanel;
  }
}
