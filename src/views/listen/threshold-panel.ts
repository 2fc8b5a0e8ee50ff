/** `<threshold-panel>`: node volts against the reference, and the trimmer (or two) that sets it. */
import { css, html, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { referenceSource, rotationForVolts } from '../../circuit/gate.ts';
import type { VoiceBehaviour } from '../../circuit/instrument.ts';
import * as commands from '../../design/commands.ts';
import { type Design, trimmersOf } from '../../design/design.ts';
import { LIMITS } from '../../design/limits.ts';
import { TRIMMERS } from '../../parts/trimmers.ts';
import { type Pair, pairOf, VOICES, type VoiceId } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import type { TurnDetail } from '../controls/events.ts';
import '../controls/trimmer-control.ts';
import { GestureEdits, ohmsOrNoneText, ohmsText, reader, readerOrNone, rotationReader } from '../edits.ts';
import '../plots/volt-scale.ts';
import { Fields } from '../fields.ts';
import { LiveFrames, READABLY, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { referenceBands } from './references.ts';

const read = {
  end: readerOrNone('resistance', LIMITS.endResistorOhms, 0),
  trimmer: reader('resistance', LIMITS.trimmerOhms),
};

export class ThresholdPanel extends AppElement {
  static override properties = { ...AppElement.properties, said: { state: true } };
  static override styles = [
    common,
    css`
      .press {
        margin: 10px 0 4px;
      }
      .said {
        color: var(--ink);
      }
      h2 {
        margin-bottom: 4px;
      }
      figcaption {
        margin: 6px 0 12px;
      }
      trimmer-control {
        margin: 8px 0;
      }
      .parts {
        display: grid;
        gap: 6px;
        margin: 8px 0;
        --label-width: 7em;
        --field-width: 5.6em;
      }
    `,
  ];

  /** What the last press came to. */
  declare said: string;
  #design!: Selected<Design, Design>;
  #live!: LiveFrames;
  #edits!: GestureEdits;
  #fields!: Fields;

  constructor() {
    super();
    this.said = '';
  }

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design, READABLY);
    this.#live = new LiveFrames(this, app.live, 15);
    this.#edits = new GestureEdits(app);
    this.#fields = new Fields(app, () => words.labels.threshold);
  }

  protected override render(): TemplateResult {
    const design = this.#design.value;
    const { voices, railVolts } = derivedInstrument(design);
    // As finely as the figures beside it: the node's noise must not redraw the scale fifteen times a second.
    const node = pairOf((voice) => Number((this.#live.frame?.node[voice] ?? 0).toFixed(2)));
    const shared = design.threshold.arrangement === 'shared';
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.threshold.heading}</h2>
      <figure>
        <volt-scale
          .max=${scaleTop(node, voices, railVolts)}
          .nodes=${VOICES.map((voice) => ({
            voice,
            volts: node[voice],
            label: words.threshold.node(voice, node[voice]),
          }))}
          .references=${referenceBands(voices)}
          .upper=${captions(design).upper}
          .lower=${captions(design).lower}
          .summary=${words.threshold.summary(
            node,
            pairOf((voice) => voices[voice].referenceVolts),
          )}
          .format=${words.volts}
          table-label=${words.threshold.table}
          .heads=${words.threshold.heads}
        ></volt-scale>
        <figcaption>
          ${words.threshold.figure}.
          ${shared && design.voices.A.hysteresisOhms !== null ? words.threshold.sharedNote : ''}
        </figcaption>
      </figure>
      ${this.#fields.choice(
        words.threshold.arrangement,
        words.threshold.arrangements,
        design.threshold.arrangement,
        (value) => commands.arrangeThreshold(value as 'shared' | 'each'),
      )}
      ${
        shared
          ? this.#trimmer(design, 'A', words.threshold.shared, null)
          : VOICES.map((voice) => this.#trimmer(design, voice, words.threshold.own(voice), voice))
      }
      <p class="press">
        <button type="button" aria-describedby="hint" @click=${this.#turnToJustOn}>${words.threshold.justOn}</button>
      </p>
      <p id="hint" class="small">${words.threshold.justOnHint}</p>
      <p role="status" class="small said">${this.said}</p>
      <details>
        <summary>${words.threshold.more}</summary>
        ${trimmersOf(design).map((id) => this.#parts(design, id, shared ? null : id))}
      </details>
    </section>`;
  }

  readonly #turnToJustOn = (): void => {
    const found = Object.values(this.app.turnToJustOn(words.threshold.justOnStep));
    this.said = found.some((one) => one?.kind === 'never')
      ? words.threshold.justOnNever
      : found.some((one) => one?.kind === 'always')
        ? words.threshold.justOnAlways
        : words.threshold.justOnDone;
  };

  #parts(design: Design, id: VoiceId, named: VoiceId | null): TemplateResult {
    const part = design.threshold.trimmers[id];
    const name = (label: string) => (named ? words.labels.part(named, label) : label);
    return html`<div class="parts">
      ${this.#fields.quantity({
        label: name(words.threshold.above),
        value: part.topOhms,
        read: read.end,
        text: ohmsOrNoneText,
        command: (ohms) => commands.setEndResistor(id, 'topOhms', ohms),
      })}
      ${this.#fields.quantity({
        label: name(words.threshold.trimmerValue),
        value: part.trimmer.ohms,
        read: read.trimmer,
        text: ohmsText,
        command: (ohms) => commands.fitThresholdTrimmer(id, { ohms }),
      })}
      ${this.#fields.quantity({
        label: name(words.threshold.below),
        value: part.bottomOhms,
        read: read.end,
        text: ohmsOrNoneText,
        command: (ohms) => commands.setEndResistor(id, 'bottomOhms', ohms),
      })}
    </div>`;
  }

  #trimmer(design: Design, id: VoiceId, label: string, voice: VoiceId | null): TemplateResult {
    const rail = derivedInstrument(design).railVolts;
    const part = design.threshold.trimmers[id];
    const at = (rotation: number) =>
      referenceSource({ ...part, trimmer: { ...part.trimmer, rotation } }, rail).volts;
    const { rotation } = part.trimmer;
    return html`<trimmer-control
      .voice=${voice}
      .label=${label}
      .rotation=${rotation}
      .turns=${TRIMMERS[part.trimmer.part].turns}
      .text=${words.volts(at(rotation))}
      .parse=${rotationReader('voltage', [at(0), at(1)], (volts) => rotationForVolts(part, rail, volts))}
      .valuetext=${words.threshold.spoken(at(rotation), rotation)}
      .readout=${words.threshold.turned(rotation)}
      .fieldLabel=${words.voices.box(label)}
      .lessLabel=${words.voices.oneLess(label)}
      .moreLabel=${words.voices.oneMore(label)}
      scale-start="0"
      scale-end="100 %"
      @turn=${({ detail }: CustomEvent<TurnDetail>) =>
        this.#edits.edit(words.labels.threshold, commands.turnThreshold(id, detail.rotation), detail.phase)}
    ></trimmer-control>`;
  }
}

/** A round top for the scale with everything on it, changing seldom. */
function scaleTop(node: Pair<number>, voices: Pair<VoiceBehaviour>, rail: number): number {
  const highest = Math.max(
    node.A,
    node.B,
    ...VOICES.flatMap((v) => [
      voices[v].referenceVolts,
      voices[v].tripVolts.on ?? 0,
      voices[v].tripVolts.off ?? 0,
    ]),
  );
  return Math.min(Math.ceil(rail), Math.max(2, 2 * Math.ceil((highest * 1.1) / 2)));
}

/** What up and down mean, where both voices agree on it. */
function captions(design: Design): { upper: string; lower: string } {
  const { A, B } = design.voices;
  if (A.divider.cell !== B.divider.cell) return { upper: '', lower: '' };
  const inLight = A.polarity === B.polarity ? A.polarity === 'light' : null;
  const inShade = inLight === null ? null : !inLight;
  return A.divider.cell === 'bottom'
    ? { upper: words.threshold.darker(inShade), lower: words.threshold.brighter(inLight) }
    : { upper: words.threshold.brighterUp(inLight), lower: words.threshold.darkerDown(inShade) };
}

customElements.define('threshold-panel', ThresholdPanel);

declare global {
  interface HTMLElementTagNameMap {
    'threshold-panel': ThresholdPanel;
  }
}
