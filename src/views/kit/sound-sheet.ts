/** `<sound-sheet>`: a board measured by its sound, how far to turn its trimmer, and the twin of this board. */
import { css, html, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import { type HeardBoard, type KitDesk, type KitView, kitDeskOf, NOT_HEARD } from '../../app/kit-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { decodeRecording, type Listened, listen } from '../../app/microphone.device.ts';
import type { Design } from '../../design/design.ts';
import { checkPitch, pitchOf } from '../../kit/pitch-ear.ts';
import { type BoardTwin, cellTwin, type Inferred, pitchTwin, twinOf } from '../../kit/twin.ts';
import { TRIMMERS } from '../../parts/trimmers.ts';
import { formatQuantity, formatShare, formatSigned } from '../../quantity/format.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { soundCheckWords } from '../../words/bench.ts';
import { words as pageWords } from '../../words/en.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { AppElement } from '../app-element.ts';
import '../controls/choice-row.ts';
import type { ChooseDetail, CommitDetail, ReadText } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import { reader } from '../edits.ts';
import { fieldStyles } from '../fields.ts';
import { chooseFile } from '../files.ts';
import { hertzReader } from '../pitch/readers.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { voiceStyles } from '../theme/voice-mark.ts';
import { kitStyles } from './kit-styles.ts';
import { ringSheet, ringStyles } from './ring-sheet.ts';
import { sheetHead, sheetHeadStyles } from './sheet-head.ts';
import { wordTable } from './word-table.ts';

const words = kitViewWords.sound;
type Point = 'now' | 'low' | 'high';
const POINTS: readonly Point[] = ['now', 'low', 'high'];

/** An emptied box takes the value away (told as no number). */
const orEmpty =
  (read: ReadText): ReadText =>
  (text) =>
    text.trim() === '' ? { ok: true, value: Number.NaN } : read(text);
const read = {
  hertz: orEmpty(hertzReader({ min: 10, max: 20_000 })),
  lux: orEmpty(reader('illuminance', { min: 0.1, max: 100_000 })),
  volts: orEmpty(reader('voltage', { min: 0.01, max: 18 })),
};

export class SoundSheet extends AppElement {
  static override properties = {
    ...AppElement.properties,
    link: { type: String },
    busy: { state: true },
    problem: { state: true },
    became: { state: true },
  };
  static override styles = [
    common,
    fieldStyles,
    kitStyles,
    sheetHeadStyles,
    ringStyles,
    voiceStyles,
    css`
      .points {
        display: grid;
        gap: 8px;
        --label-width: 15em;
        --field-width: 7em;
      }
      .points > div {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 6px 14px;
      }
    `,
  ];

  /** The whole address that opens this design. */
  declare link: string;
  /** What is being listened for; null = nothing. */
  declare busy: Point | null;
  declare problem: string;
  declare became: boolean;
  #desk!: KitDesk;
  #design!: Selected<Design, Design>;
  #view!: Selected<KitView, KitView>;
  #stop = new AbortController();

  constructor() {
    super();
    this.link = '';
    this.busy = null;
    this.problem = '';
    this.became = false;
  }

  protected override bind(app: Lampnote): void {
    this.#desk = kitDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#stop = new AbortController();
  }

  /** The microphone does not stay on when the place is left. */
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop.abort();
  }

  protected override render(): TemplateResult {
    const { heard } = this.#view.value;
    return html`<section aria-labelledby="sound">
      <div class="title">
        <h2 id="sound">${words.heading}</h2>
        <choice-row
          legend=${words.voice}
          .choices=${(['A', 'B'] as const).map((value) => ({ value, label: value }))}
          value=${heard.voice}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) =>
            this.#desk.show({ heard: { voice: detail.value as VoiceId, ...NOT_HEARD } })}
        ></choice-row>
      </div>
      <p>${soundCheckWords.oneVoice}</p>
      <p class="small">${words.microphone}</p>
      <div class="points">
        ${POINTS.map((point) => this.#point(point, heard))}
        ${this.#box(words.justOn, heard.justOnLux, read.lux, pageWords.lux, (justOnLux) => this.#show({ justOnLux }))}
        ${this.#box(words.reference, heard.referenceVolts, read.volts, pageWords.volts, (referenceVolts) =>
          this.#show({ referenceVolts }),
        )}
      </div>
      <p role="status">${this.busy === null ? '' : words.listening}</p>
      <p class="fault" role="alert">${this.problem}</p>
      ${this.#check(heard)} ${this.#twin(heard)}
      ${ringSheet(this.#design.value, () => sheetHead(this.#design.value.name, this.link))}
      <p class="screen"><button type="button" @click=${() => window.print()}>${words.rings.print}</button></p>
    </section>`;
  }

  #point(point: Point, heard: HeardBoard): TemplateResult {
    const what = words.points[point];
    return html`<div @dragover=${this.#over} @drop=${(event: DragEvent) => this.#dropped(point, event)}>
      ${this.#box(what, heard[point], read.hertz, pageWords.hertz, (hertz) => this.#show({ [point]: hertz }))}
      <button
        type="button"
        aria-label=${words.listen(what)}
        ?disabled=${this.busy !== null}
        @click=${() => this.#listen(point)}
      >
        ${words.listenShort}
      </button>
      <button
        type="button"
        aria-label=${words.file(what)}
        ?disabled=${this.busy !== null}
        @click=${() => this.#file(point)}
      >
        ${words.fileShort}
      </button>
    </div>`;
  }

  #box(
    label: string,
    value: number | null,
    readText: ReadText,
    text: (value: number) => string,
    take: (value: number | null) => void,
  ): TemplateResult {
    return html`<quantity-field
      label=${label}
      .value=${value}
      .format=${text}
      .parse=${readText}
      @commit=${({ detail }: CustomEvent<CommitDetail>) => take(Number.isNaN(detail.value) ? null : detail.value)}
    ></quantity-field>`;
  }

  #show(change: Partial<HeardBoard>): void {
    this.became = false;
    this.#desk.show({ heard: { ...this.#view.value.heard, ...change } });
  }

  async #listen(point: Point): Promise<void> {
    this.busy = point;
    this.problem = '';
    const stop = this.#stop.signal;
    const heard = await listen(stop);
    this.busy = null;
    if (stop.aborted) return;
    if (typeof heard === 'string') this.problem = words.refused[heard];
    else this.#take(point, heard);
  }

  async #file(point: Point): Promise<void> {
    const file = await chooseFile('audio/*');
    if (file !== null) await this.#decode(point, file);
  }

  readonly #over = (event: DragEvent): void => event.preventDefault();

  #dropped(point: Point, event: DragEvent): void {
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    // Else the page would take it for a design.
    event.preventDefault();
    event.stopPropagation();
    void this.#decode(point, file);
  }

  async #decode(point: Point, file: File): Promise<void> {
    const heard = await decodeRecording(file);
    if (heard === 'too long') this.problem = words.tooLong;
    else if (heard === 'unreadable') this.problem = words.unreadable;
    else this.#take(point, heard);
  }

  #take(point: Point, { samples, sampleRate }: Listened): void {
    const pitch = pitchOf(samples, sampleRate);
    if (pitch.kind === 'none') {
      this.problem = soundCheckWords.none[pitch.why];
      return;
    }
    this.problem = '';
    this.#show({ [point]: pitch.hertz });
  }

  #check({ voice, now }: HeardBoard): TemplateResult | string {
    if (now === null) return '';
    const design = this.#design.value;
    const { voices, railVolts } = derivedInstrument(design);
    const target = voices[voice].cycle.frequency;
    const check = checkPitch(design, voice, railVolts, now, target);
    if (check === null) return '';
    return html`<h3>${words.check}</h3>
      <p role="status">
        <strong>${words.target(pageWords.hertz(target), formatSigned(check.cents))}</strong>
        ${soundCheckWords.turn(check.turn, TRIMMERS[design.voices[voice].trimmer.part].degrees)}
      </p>
      <p class="muted">${words.capacitor(formatQuantity(check.farads, 'F', 3), formatShare(check.ratio))}</p>`;
  }

  #twin({ voice, low, high, justOnLux, referenceVolts }: HeardBoard): TemplateResult {
    const design = this.#design.value;
    const { railVolts } = derivedInstrument(design);
    const pitch = low === null || high === null ? null : pitchTwin(design, voice, railVolts, { low, high });
    const cell =
      justOnLux === null || referenceVolts === null
        ? null
        : cellTwin(design, voice, railVolts, { lux: justOnLux, referenceVolts });
    const part = design.voices[voice];
    const rows: (readonly string[])[] = [];
    const row = (name: string, designed: number, { value, uncertainty }: Inferred<number>, unit: string) =>
      rows.push([
        name,
        formatQuantity(designed, unit),
        formatQuantity(value, unit, 3),
        `±${formatShare(uncertainty, 1)}`,
      ]);
    let board: BoardTwin = {};
    if (pitch?.kind === 'twin') {
      row(words.parts.farads, part.capacitor.farads, pitch.farads, 'F');
      row(words.parts.trimmer, part.trimmer.ohms, pitch.trimmerOhms, 'Ω');
      board = { farads: pitch.farads.value, trimmerOhms: pitch.trimmerOhms.value };
    }
    if (cell?.kind === 'twin') {
      row(words.parts.r10, part.cell.r10Ohms, cell.r10Ohms, 'Ω');
      board = { ...board, r10Ohms: cell.r10Ohms.value };
    }
    const impossible = [pitch, cell].flatMap((one) =>
      one?.kind === 'impossible' ? [words.impossible[one.why]] : [],
    );
    return html`<h3>${words.twin}</h3>
      ${impossible.map((text) => html`<p class="fault" role="alert">${text}</p>`)}
      ${
        rows.length === 0
          ? html`<p class="muted">${words.needs}</p>`
          : html`${wordTable(words.twin, words.partHeads, rows)}
              <p>
                <button type="button" class="primary" @click=${() => this.#become(voice, board)}>${words.become}</button>
              </p>
              <p role="status">${this.became ? words.became : ''}</p>`
      }`;
  }

  #become(voice: VoiceId, board: BoardTwin): void {
    this.app.change(words.becomeStep(voice), (design) => twinOf(design, voice, board));
    this.became = true;
  }
}

customElements.define('sound-sheet', SoundSheet);

declare global {
  interface HTMLElementTagNameMap {
    'sound-sheet': SoundSheet;
  }
}
