/** `<take-panel>`: the light written down while it is played; replayed, or saved as a light log or as sound. */
import { css, html, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { logText } from '../../app/light-recorder.ts';
import { recordedSound } from '../../app/recorded-sound.ts';
import { fullScaleVolts } from '../../sound/wav.ts';
import { takeWords } from '../../words/en-scenes.ts';
import { AppElement } from '../app-element.ts';
import { offerFile } from '../files.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';

export class TakePanel extends AppElement {
  static override properties = { ...AppElement.properties, busy: { state: true } };
  static override styles = [
    common,
    css`
      .row {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 8px 12px;
        margin: 8px 0;
      }
    `,
  ];

  /** The sound is being computed. */
  declare busy: boolean;
  #recording!: Selected<{ running: boolean; seconds: number }, { running: boolean; seconds: number }>;

  constructor() {
    super();
    this.busy = false;
  }

  protected override bind(app: Lampnote): void {
    this.#recording = new Selected(this, app.recording, (recording) => recording);
  }

  protected override render(): TemplateResult {
    const { running, seconds } = this.#recording.value;
    const hasTake = !running && seconds > 0;
    const { jack } = derivedInstrument(this.app.design.current);
    return html`<p class="small">${takeWords.explain}</p>
      <div class="row">
        <button type="button" aria-pressed=${running} @click=${() => this.app.record(!running)}>
          ${running ? takeWords.stop : takeWords.record}
        </button>
        <span role="status">
          ${running ? takeWords.running(seconds) : hasTake ? takeWords.done(seconds) : takeWords.none}
        </span>
      </div>
      ${
        hasTake
          ? html`<div class="row">
                <button type="button" @click=${this.#replay}>${takeWords.replay}</button>
                <button type="button" @click=${this.#saveLog}>${takeWords.saveLog}</button>
                <button type="button" ?disabled=${this.busy} @click=${this.#saveSound}>
                  ${this.busy ? takeWords.rendering : takeWords.saveSound}
                </button>
              </div>
              <p class="small">${takeWords.fullScale(fullScaleVolts(jack))}</p>`
          : ''
      }`;
  }

  readonly #replay = (): void => {
    const rows = this.app.recorded;
    if (rows) this.app.openLog(`${takeWords.fileName}.csv`, logText(rows));
  };

  readonly #saveLog = (): void => {
    const rows = this.app.recorded;
    if (rows) offerFile(takeWords.fileName, 'csv', 'text/csv', logText(rows));
  };

  readonly #saveSound = async (): Promise<void> => {
    this.busy = true;
    // The word "computing" is painted before the computing begins.
    await this.updateComplete;
    await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    const design = this.app.design.current;
    const rows = this.app.recorded;
    if (rows) offerFile(design.name, 'wav', 'audio/wav', recordedSound(design, rows));
    this.busy = false;
  };
}

customElements.define('take-panel', TakePanel);

declare global {
  interface HTMLElementTagNameMap {
    'take-panel': TakePanel;
  }
}
