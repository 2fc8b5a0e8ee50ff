/** `<hear-row>`: the ways to hear one candidate, one voice or both, with the note it aims at beside it. */
import { html, type TemplateResult } from 'lit';
import type { Auditioned, Piece } from '../../app/audition.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { deskOf, type PitchDesk } from '../../app/pitch-desk.ts';
import {
  benchPiece,
  heardAs,
  referenceNoteFor,
  stepsOf,
  sweepPiece,
  targetPiece,
  worstPiece,
} from '../../app/pitch-pieces.ts';
import type { Session } from '../../app/session.ts';
import type { Design } from '../../design/design.ts';
import type { Candidate } from '../../design/pitch.ts';
import { untunedBench } from '../../plan/assess.ts';
import { chipOf, middleHertz } from '../../plan/timing.ts';
import { pairOf, VOICES, type VoiceId } from '../../quantity/units.ts';
import { foundWords } from '../../words/en-pitch-found.ts';
import { AppElement } from '../app-element.ts';
import '../controls/choice-row.ts';
import { choicesOf } from '../controls/choices.ts';
import type { ChooseDetail } from '../controls/events.ts';
import { fieldStyles, listRow } from '../fields.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { panelStyles } from './panel-styles.ts';

const words = foundWords.hear;
/** More kits than these are many minutes, or a din. */
const MOST_KITS = 40;

export class HearRow extends AppElement {
  static override properties = {
    ...AppElement.properties,
    candidate: { attribute: false },
    voices: { state: true },
    referenceOf: { state: true },
  };
  static override styles = [common, fieldStyles, panelStyles];

  declare candidate: Candidate;
  declare voices: 'both' | VoiceId;
  declare referenceOf: VoiceId;
  #desk!: PitchDesk;
  #design!: Selected<Design, Design>;
  #playing!: Selected<Auditioned | null, Auditioned | null>;
  #reference!: Selected<Session, Session['reference']>;

  constructor() {
    super();
    this.voices = 'both';
    this.referenceOf = 'A';
  }

  protected override bind(app: Lampnote): void {
    this.#desk = deskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#playing = new Selected(this, app.audition.playing, (playing) => playing);
    this.#reference = new Selected(this, app.session, (session) => session.reference);
  }

  protected override render(): TemplateResult {
    const design = this.#design.value;
    const { candidate } = this;
    const { law, seed, kits } = design.pitch.wish;
    const count = Math.min(MOST_KITS, kits);
    const bench = () => untunedBench(chipOf(design), candidate, { law, seed, kits: count }) ?? [];
    const worst = () => {
      const look = this.#desk.closeLook(candidate);
      return pairOf((id) => look?.voices[id].worstCase ?? candidate.targets[id]);
    };
    return html`<div class="row">
        ${this.#button('target', words.target, () => targetPiece(design, candidate))}
        ${this.#button('sweep', words.sweep, () => sweepPiece(design, candidate))}
        ${this.#button('worst', words.worst, () => worstPiece(design, candidate, worst()), words.worstHint)}
        ${this.#button('turns', words.turns(count), () => benchPiece(design, candidate, bench(), 'turns'))}
        ${this.#button('together', words.together(count), () => benchPiece(design, candidate, bench(), 'together'))}
      </div>
      <div class="row">
        <choice-row
          legend=${words.voices}
          .choices=${choicesOf(words.voiceNames)}
          value=${this.voices}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) => {
            this.voices = detail.value as typeof this.voices;
          }}
        ></choice-row>
        ${this.#referenceControls()}
      </div>
      <p class="small" role="status">${this.#says()}</p>
      <p class="small">${words.loudness}</p>`;
  }

  #button(id: string, label: string, make: () => Piece, hint = ''): TemplateResult {
    const playing = this.#playing.value?.id === id;
    return html`<button
      type="button"
      aria-pressed=${playing}
      title=${hint}
      @click=${() => {
        if (playing) this.app.audition.stop();
        else void this.app.audition.play(id, heardAs(make(), this.voices === 'both' ? null : this.voices));
      }}
    >
      ${label}
    </button>`;
  }

  #referenceControls(): TemplateResult {
    const { sounds } = this.#reference.value;
    const hertz = pairOf((voice) => middleHertz(this.candidate.targets[voice]));
    const set = (voice: VoiceId, on: boolean) => {
      this.referenceOf = voice;
      this.app.setReference({ note: referenceNoteFor(hertz[voice]), sounds: on });
    };
    return html`<label class="tick">
        <input
          type="checkbox"
          .checked=${sounds}
          @change=${(event: Event) => set(this.referenceOf, (event.currentTarget as HTMLInputElement).checked)}
        />
        ${words.reference}
      </label>
      ${listRow(
        words.references,
        VOICES.map((voice) => [voice, words.referenceOf(voice, hertz[voice])]),
        this.referenceOf,
        (voice) => set(voice as VoiceId, sounds),
      )}`;
  }

  #says(): string {
    const playing = this.#playing.value;
    if (!playing) return '';
    const names: Readonly<Record<string, string>> = {
      target: words.target,
      sweep: words.sweep,
      worst: words.worst,
      turns: words.turns(stepsOf(playing.piece)),
      together: words.together(stepsOf(playing.piece)),
    };
    const name = names[playing.id];
    if (name === undefined) return '';
    const of = stepsOf(playing.piece);
    if (playing.piece.kind === 'together' && playing.step < of) return words.making(playing.step, of);
    // A sweep glides: counting its steps would tell nothing.
    return words.playing(
      name,
      playing.step,
      playing.piece.kind === 'turns' && playing.id !== 'sweep' ? of : 1,
    );
  }
}

customElements.define('hear-row', HearRow);

declare global {
  interface HTMLElementTagNameMap {
    'hear-row': HearRow;
  }
}
