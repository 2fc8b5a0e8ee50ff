/** `<abx-panel>`: two candidates heard against each other at equal loudness, and blind, with the listener's score. */
import { html, type TemplateResult } from 'lit';
import type { Auditioned } from '../../app/audition.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { type Choice, deskOf, type PitchDesk, type PitchView } from '../../app/pitch-desk.ts';
import { targetPiece } from '../../app/pitch-pieces.ts';
import type { Design } from '../../design/design.ts';
import type { Candidate } from '../../design/pitch.ts';
import { answered, type BlindTest, presentX, type Side, scoreOf } from '../../plan/blind-test.ts';
import { foundWords } from '../../words/en-pitch-found.ts';
import { AppElement } from '../app-element.ts';
import { fieldStyles, listRow } from '../fields.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { panelStyles } from './panel-styles.ts';

const words = foundWords.abx;

export class AbxPanel extends AppElement {
  static override properties = {
    ...AppElement.properties,
    first: { state: true },
    second: { state: true },
    blind: { state: true },
    test: { state: true },
  };
  static override styles = [common, fieldStyles, panelStyles];

  /** Keys of the two; null = the chosen one, and the next that is another. */
  declare first: string | null;
  declare second: string | null;
  declare blind: boolean;
  declare test: BlindTest;
  #desk!: PitchDesk;
  #view!: Selected<PitchView, PitchView>;
  #design!: Selected<Design, Design>;
  #playing!: Selected<Auditioned | null, Auditioned | null>;

  constructor() {
    super();
    this.first = null;
    this.second = null;
    this.blind = false;
    this.test = begun();
  }

  protected override bind(app: Lampnote): void {
    this.#desk = deskOf(app);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#playing = new Selected(this, app.audition.playing, (playing) => playing);
  }

  protected override render(): TemplateResult {
    const options = this.#options();
    if (options.length < 2)
      return html`<section aria-labelledby="abx">
        <h2 id="abx">${words.heading}</h2>
        <p class="muted">${words.none}</p>
      </section>`;
    const { first, second } = this.#sides(options);
    const list = options.map(({ key, name }) => [key, name]);
    return html`<section aria-labelledby="abx">
      <h2 id="abx">${words.heading}</h2>
      <p class="small">${words.explain}</p>
      <div class="fields">
        ${listRow(words.first, list, first.key, (key) => this.#begin({ first: key, second: second.key }))}
        ${listRow(words.second, list, second.key, (key) => this.#begin({ first: first.key, second: key }))}
      </div>
      ${first.key === second.key ? html`<p class="fault">${words.same}</p>` : this.#rows(first, second)}
    </section>`;
  }

  #rows(first: Option, second: Option): TemplateResult {
    const x = presentX(this.test) === 'first' ? first : second;
    const { right, of, chance } = scoreOf(this.test);
    const last = this.test.answers.at(-1);
    return html`<div class="row">
        ${this.#hear('abx-first', words.hearFirst, first)} ${this.#hear('abx-second', words.hearSecond, second)}
        ${this.blind ? this.#hear('abx-x', words.hearX, x) : ''}
        <label class="tick">
          <input
            type="checkbox"
            .checked=${this.blind}
            @change=${(event: Event) => {
              this.blind = (event.currentTarget as HTMLInputElement).checked;
              this.#begin({});
            }}
          />
          ${words.blind}
        </label>
      </div>
      ${
        this.blind
          ? html`<div class="row">
              <button type="button" @click=${() => this.#answer('first')}>${words.isFirst}</button>
              <button type="button" @click=${() => this.#answer('second')}>${words.isSecond}</button>
              <button type="button" ?disabled=${of === 0} @click=${() => this.#begin({})}>${words.again}</button>
            </div>
            <p role="status">
              ${last ? (last.said === last.was ? words.right : words.wrong) : ''}
              ${of > 0 ? `${words.score(right, of)} ${words.chance(chance)}` : ''}
            </p>`
          : ''
      }`;
  }

  #hear(id: string, label: string, { candidate }: Option): TemplateResult {
    const playing = this.#playing.value?.id === id;
    return html`<button
      type="button"
      aria-pressed=${playing}
      @click=${() => {
        if (playing) this.app.audition.stop();
        else void this.app.audition.play(id, targetPiece(this.#design.value, candidate));
      }}
    >
      ${label}
    </button>`;
  }

  #answer(said: Side): void {
    // The sound of X would go on as the next X's.
    if (this.#playing.value?.id === 'abx-x') this.app.audition.stop();
    this.test = answered(this.test, said);
  }

  #begin(change: Partial<Pick<AbxPanel, 'first' | 'second'>>): void {
    Object.assign(this, change);
    this.test = begun();
  }

  #options(): readonly Option[] {
    const { searched } = this.#view.value;
    const found = searched?.report.kind === 'found' ? searched.report.ranked : [];
    const kept = this.#design.value.pitch.shortlist;
    return [
      ...found.map(({ candidate }, place) => option({ of: 'found', place }, candidate)),
      ...kept.map((candidate, place) => option({ of: 'kept', place }, candidate)),
    ];
  }

  #sides(options: readonly Option[]): { readonly first: Option; readonly second: Option } {
    const keyed = (key: string | null) => options.find((one) => one.key === key);
    const first = keyed(this.first) ?? keyed(keyOf(this.#view.value.chosen)) ?? options[0]!;
    const second = keyed(this.second) ?? options.find((one) => one.key !== first.key)!;
    return { first, second };
  }
}

interface Option {
  readonly key: string;
  readonly name: string;
  readonly candidate: Candidate;
}

const keyOf = ({ of, place }: Choice): string => `${of} ${place}`;

function option(choice: Choice, candidate: Candidate): Option {
  const { A, B } = candidate.parts;
  const name =
    choice.of === 'found'
      ? foundWords.name(choice.place + 1, A, B)
      : foundWords.shortlist.keptName(foundWords.name(null, A, B));
  return { key: keyOf(choice), name, candidate };
}

/** A new row of draws, which nobody knows beforehand. */
const begun = (): BlindTest => ({ seed: crypto.getRandomValues(new Int32Array(1))[0]!, answers: [] });

customElements.define('abx-panel', AbxPanel);

declare global {
  interface HTMLElementTagNameMap {
    'abx-panel': AbxPanel;
  }
}
