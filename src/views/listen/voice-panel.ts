/** `<voice-panel>`: one voice's pitch trimmer and parts, and behind a fold its gate. */
import { css, html, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { rheostatOhms } from '../../circuit/astable.ts';
import * as commands from '../../design/commands.ts';
import type { Design, Voice } from '../../design/design.ts';
import { LIMITS } from '../../design/limits.ts';
import { DIELECTRICS } from '../../parts/capacitors.ts';
import { TIMERS } from '../../parts/timers.ts';
import { TRIMMERS } from '../../parts/trimmers.ts';
import { nearestNote } from '../../plan/notes.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import type { TurnDetail } from '../controls/events.ts';
import '../controls/trimmer-control.ts';
import {
  faradsText,
  GestureEdits,
  ohmsOrNoneText,
  ohmsText,
  reader,
  readerOrNone,
  rotationReader,
} from '../edits.ts';
import { type FieldParts, Fields } from '../fields.ts';
import { READABLY, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { voiceMark, voiceStyles } from '../theme/voice-mark.ts';

const read = {
  ra: reader('resistance', LIMITS.raOhms),
  rbFixed: readerOrNone('resistance', LIMITS.rbFixedOhms, 0),
  trimmer: reader('resistance', LIMITS.trimmerOhms),
  farads: reader('capacitance', LIMITS.timingFarads),
};

export class VoicePanel extends AppElement {
  static override properties = { ...AppElement.properties, voice: { type: String } };
  static override styles = [
    common,
    voiceStyles,
    css`
      section {
        padding-top: 10px;
        border-top: var(--stroke-data) solid var(--voice-a);
      }
      section.b {
        border-top: var(--stroke-data) dashed var(--voice-b);
      }
      h3 {
        display: flex;
        align-items: center;
        gap: 10px;
        margin-bottom: 6px;
        color: var(--voice-a);
        font-size: var(--text-head);
      }
      .b h3 {
        color: var(--voice-b);
      }
      .parts {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 10em), 1fr));
        gap: 6px 14px;
        margin: 10px 0 6px;
        --label-width: 4.3em;
        --field-width: 5.4em;
      }
      details {
        margin-top: 4px;
      }
      .note {
        margin: 4px 0;
        color: var(--caution);
        font-size: var(--text-small);
      }
      p.small {
        margin: 2px 0;
      }
      @media (pointer: coarse) {
        .parts {
          gap: 10px 20px;
        }
      }
    `,
  ];

  declare voice: VoiceId;
  #design!: Selected<Design, Design>;
  #edits!: GestureEdits;
  #fields!: Fields;

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design, READABLY);
    this.#edits = new GestureEdits(app);
    this.#fields = new Fields(app, (label) => words.labels.part(this.voice, label));
  }

  protected override render(): TemplateResult {
    const design = this.#design.value;
    const id = this.voice;
    const part = design.voices[id];
    return html`<section class=${id.toLowerCase()} aria-label=${words.voices.voice(id)}>
      <h3>${voiceMark(id)} ${id}</h3>
      ${this.#trimmer(design, part)}
      <div class="parts">${this.#parts(part)}</div>
      ${this.#notes(design, part)}
      <details>
        <summary>${words.voices.more(id)}</summary>
        <gate-parts .app=${this.app} .voice=${id}></gate-parts>
      </details>
    </section>`;
  }

  #parts(part: Voice): readonly TemplateResult[] {
    const id = this.voice;
    const fields: readonly FieldParts[] = [
      {
        label: words.voices.ra,
        value: part.raOhms,
        read: read.ra,
        text: ohmsText,
        command: (ohms) => commands.setVoiceValue(id, 'raOhms', ohms),
      },
      {
        label: words.voices.rbFixed,
        value: part.rbFixedOhms,
        read: read.rbFixed,
        text: ohmsOrNoneText,
        command: (ohms) => commands.setVoiceValue(id, 'rbFixedOhms', ohms),
      },
      {
        label: words.voices.trimmerValue,
        value: part.trimmer.ohms,
        read: read.trimmer,
        text: ohmsText,
        command: (ohms) => commands.fitPitchTrimmer(id, { ohms }),
      },
      {
        label: words.voices.capacitor,
        value: part.capacitor.farads,
        read: read.farads,
        text: faradsText,
        command: (farads) => commands.setCapacitance(id, farads),
      },
    ];
    return fields.map((field) => this.#fields.quantity(field));
  }

  #trimmer(design: Design, part: Voice): TemplateResult {
    const id = this.voice;
    const { cycle, centsPerPercent, endHertz } = derivedInstrument(design).voices[id];
    const ohms = rheostatOhms(part.trimmer);
    const ends = [rheostatOhms(part.trimmer, 0), rheostatOhms(part.trimmer, 1)] as const;
    const note = cycle.frequency > 0 ? nearestNote(cycle.frequency) : null;
    const label = words.voices.trimmer(id);
    return html`<trimmer-control
      .voice=${id}
      .label=${label}
      .rotation=${part.trimmer.rotation}
      .turns=${TRIMMERS[part.trimmer.part].turns}
      .text=${ohmsText(ohms)}
      .parse=${rotationReader('resistance', ends, (value) => (value - ends[0]) / (ends[1] - ends[0]))}
      .valuetext=${words.voices.spoken(ohms, part.trimmer.rotation, note?.name ?? '', note?.cents ?? 0)}
      .readout=${`${words.voices.readout(part.trimmer.rotation, centsPerPercent)}\n${words.voices.range(...endHertz)}`}
      .fieldLabel=${words.voices.box(label)}
      .lessLabel=${words.voices.oneLess(label)}
      .moreLabel=${words.voices.oneMore(label)}
      scale-start="0"
      scale-end="100 %"
      @turn=${({ detail }: CustomEvent<TurnDetail>) =>
        this.#edits.edit(words.labels.turned(id), commands.turnPitch(id, detail.rotation), detail.phase)}
    ></trimmer-control>`;
  }

  #notes(design: Design, part: Voice): TemplateResult {
    const polarised = DIELECTRICS[part.capacitor.dielectric].polarised;
    const rail = derivedInstrument(design).railVolts;
    return html`
      ${part.rbFixedOhms === 0 ? html`<p class="note">${words.voices.rbZero}</p>` : ''}
      ${
        part.raOhms < TIMERS[design.timer].raMinOhms
          ? html`<p class="note">${words.voices.raSmall(rail / part.raOhms)}</p>`
          : ''
      }
      ${polarised ? html`<caution-note .places=${['timing capacitor']}></caution-note>` : ''}
    `;
  }
}

customElements.define('voice-panel', VoicePanel);

declare global {
  interface HTMLElementTagNameMap {
    'voice-panel': VoicePanel;
  }
}
