/** `<live-strip>`: both voices at a glance, in every place: note, hertz, and the gate in words and shape. */
import { css, html, type PropertyValues, type TemplateResult } from 'lit';
import { derivedInstrument } from '../app/derived.ts';
import type { Lampnote } from '../app/lampnote.ts';
import type { ShownGate } from '../app/shown.ts';
import type { SoundState } from '../app/sound-desk.ts';
import type { Design } from '../design/design.ts';
import { nearestNote } from '../plan/notes.ts';
import { pairOf, VOICES, type VoiceId } from '../quantity/units.ts';
import { words } from '../words/en.ts';
import { AppElement } from './app-element.ts';
import { LiveFrames, READABLY, Selected } from './select.ts';
import { common } from './theme/shared.ts';
import { voiceMark, voiceStyles } from './theme/voice-mark.ts';

/** A state is told to screen readers once it has rested this long. */
const REST_MILLISECONDS = 500;

export class LiveStrip extends AppElement {
  static override properties = { ...AppElement.properties, told: { state: true } };
  static override styles = [
    common,
    voiceStyles,
    css`
      :host {
        isolation: isolate;
      }
      .strip {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 36px;
        align-items: baseline;
        padding: 8px var(--side, 28px);
        background: var(--sunken);
        border-bottom: 1px solid var(--hair);
      }
      .voice {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0 8px;
      }
      .level {
        margin-left: auto;
      }
      .state {
        min-width: 5.2em;
        font-weight: 600;
      }
      .silent .state {
        font-weight: 400;
        font-style: italic;
      }
      .silent .mark {
        fill: none;
      }
      .sounding .mark.b {
        fill: var(--voice-b);
      }
      .chattering .state {
        text-decoration: underline wavy 1px;
        text-underline-offset: 4px;
      }
      .pitch {
        white-space: nowrap;
      }
    `,
  ];

  declare told: string;
  #design!: Selected<Design, Design>;
  #live!: LiveFrames;
  #sound!: Selected<SoundState, SoundState>;
  #said = '';
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.told = '';
  }

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design, READABLY);
    this.#sound = new Selected(this, app.sound.state, (sound) => sound);
    this.#live = new LiveFrames(this, app.live, 6);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#timer);
  }

  protected override render(): TemplateResult {
    const on = this.#sound.value.kind === 'on';
    return html`<section class="strip" aria-label=${words.strip.heading}>
        ${VOICES.map((voice) => this.#voice(voice))}
        <span class="level muted small">${on ? words.strip.level(this.app.sound.levelDb) : ''}</span>
      </section>
      <p class="visually-hidden" role="status">${this.told}</p>`;
  }

  protected override updated(_changed: PropertyValues): void {
    const text = words.strip.announce(pairOf((voice) => stateWords(this.#shown(voice))));
    if (text === this.#said) return;
    this.#said = text;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.told = text;
    }, REST_MILLISECONDS);
  }

  #voice(voice: VoiceId): TemplateResult {
    const { cycle } = derivedInstrument(this.#design.value).voices[voice];
    const shown = this.#shown(voice);
    const note = cycle.frequency > 0 ? nearestNote(cycle.frequency) : null;
    return html`<div class="voice voice-${voice.toLowerCase()} ${shown.kind}">
      ${voiceMark(voice)} <strong>${voice}</strong>
      <span class="state">${stateWords(shown)}</span>
      <span class="pitch">${note ? words.strip.voice(note.name, note.cents, cycle.frequency) : words.strip.noPitch}</span>
      ${note ? html`<span class="pitch muted">${words.strip.duty(cycle.dutyCycle)}</span>` : ''}
    </div>`;
  }

  #shown(voice: VoiceId): ShownGate {
    return this.#live.frame?.shown[voice] ?? { kind: 'silent' };
  }
}

function stateWords(shown: ShownGate): string {
  return shown.kind === 'chattering' ? words.strip.chattering(shown.perSecond) : words.strip[shown.kind];
}

customElements.define('live-strip', LiveStrip);

declare global {
  interface HTMLElementTagNameMap {
    'live-strip': LiveStrip;
  }
}
