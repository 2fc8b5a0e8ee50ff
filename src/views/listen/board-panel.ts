/** `<board-panel>`: what both voices share: chips, output network, supply, noise. */
import { css, html, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import * as commands from '../../design/commands.ts';
import type { Design } from '../../design/design.ts';
import { LIMITS, NOTES_LENGTH } from '../../design/limits.ts';
import type { CapacitorKindId } from '../../parts/capacitors.ts';
import type { ComparatorId } from '../../parts/comparators.ts';
import type { SupplyId } from '../../parts/supplies.ts';
import { TIMERS, type TimerId } from '../../parts/timers.ts';
import { formatShare } from '../../quantity/format.ts';
import { VOICES } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import type { SlideDetail } from '../controls/events.ts';
import '../controls/level-slider.ts';
import {
  faradsText,
  GestureEdits,
  NONE,
  ohmsText,
  orNone,
  reader,
  readerOrNone,
  voltsText,
} from '../edits.ts';
import { type FieldParts, Fields, fieldStyles } from '../fields.ts';
import { CALMLY, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import './board-readouts.ts';

const read = {
  volts: reader('voltage', LIMITS.supplyVolts),
  mix: reader('resistance', LIMITS.mixOhms),
  shunt: readerOrNone('resistance', LIMITS.shuntOhms, NONE),
  coupling: readerOrNone('capacitance', LIMITS.couplingFarads, NONE),
  load: reader('resistance', LIMITS.loadOhms),
  noise: reader('voltage', LIMITS.noiseVolts),
  dip: reader('voltage', LIMITS.dipVolts),
  volume: readerOrNone('resistance', LIMITS.trimmerOhms, NONE),
  source: reader('resistance', LIMITS.sourceOhms),
  seed: reader('number', { min: 0, max: 999_999 }),
};

/** Fitted when somebody asks for mixing resistors again. */
const USUAL_MIX = { A: 47_000, B: 47_000 } as const;

export class BoardPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    css`
      .parts {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 19em), 1fr));
        gap: 6px 28px;
        margin: 8px 0 10px;
        --label-width: 6.4em;
        --field-width: 6.4em;
      }
      summary h2 {
        display: inline;
      }
      .note {
        color: var(--caution);
      }
      .notes {
        display: block;
        max-width: var(--measure);
        margin: 8px 0 12px;
        font-size: var(--text-control);
      }
      textarea {
        display: block;
      }
    `,
  ];

  #design!: Selected<Design, Design>;
  #edits!: GestureEdits;
  #fields!: Fields;

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design, CALMLY);
    this.#edits = new GestureEdits(app);
    this.#fields = new Fields(app);
  }

  protected override render(): TemplateResult {
    const { output, supply, timer, comparator, noise, notes } = this.#design.value;
    return html`<details>
      <summary><h2>${words.board.heading}</h2></summary>
      <div class="parts">
        ${this.#fields.choice(words.board.timer, words.board.timers, timer, (id) => commands.chooseTimer(id as TimerId))}
        ${this.#fields.choice(words.board.comparator, words.board.comparators, comparator, (id) =>
          commands.chooseComparator(id as ComparatorId),
        )}
        ${this.#fields.choice(words.board.supply, words.board.supplies, supply.kind, (id) =>
          commands.chooseSupply(id as SupplyId),
        )}
        ${this.#quantity(words.board.volts, supply.volts, voltsText, read.volts, (volts) => commands.setSupply({ volts }))}
        ${this.#fields.choice(
          words.board.mixing,
          words.board.mixings,
          output.mixOhms ? 'resistors' : 'joined',
          (id) => commands.setMixing(id === 'joined' ? null : USUAL_MIX),
        )}
        ${
          output.mixOhms
            ? VOICES.map((voice) =>
                this.#quantity(words.board.mix(voice), output.mixOhms![voice], ohmsText, read.mix, (ohms) =>
                  commands.setMixOhms(voice, ohms),
                ),
              )
            : ''
        }
        ${this.#quantity(words.board.shunt, output.shuntOhms ?? NONE, orNone(ohmsText), read.shunt, (ohms) =>
          commands.setShuntOhms(ohms === NONE ? null : ohms),
        )}
        ${this.#quantity(
          words.board.coupling,
          output.coupling?.farads ?? NONE,
          orNone(faradsText),
          read.coupling,
          (farads) =>
            commands.setCoupling(farads === NONE ? null : { farads, kind: output.coupling?.kind ?? 'film' }),
        )}
        ${
          output.coupling
            ? this.#fields.choice(
                words.board.couplingKind,
                words.board.couplingKinds,
                output.coupling.kind,
                (kind) => commands.setCoupling({ ...output.coupling!, kind: kind as CapacitorKindId }),
              )
            : ''
        }
        ${this.#quantity(
          words.board.volume,
          output.volume?.ohms ?? NONE,
          orNone(ohmsText),
          read.volume,
          (ohms) =>
            commands.setVolume(ohms === NONE ? null : { ohms, rotation: output.volume?.rotation ?? 1 }),
        )}
        ${output.volume ? this.#volumeTurn(output.volume) : ''}
        ${this.#quantity(words.board.load, output.loadOhms, ohmsText, read.load, commands.setLoadOhms)}
        ${this.#quantity(words.board.noise, noise.voltsRms, voltsText, read.noise, commands.setNoise)}
        ${this.#quantity(words.board.seed, noise.seed, String, read.seed, (seed) => commands.setSeed(Math.round(seed)))}
        ${this.#quantity(words.board.source, supply.sourceOhms, ohmsText, read.source, (sourceOhms) =>
          commands.setSupply({ sourceOhms }),
        )}
        ${this.#quantity(words.board.dip, supply.sharedDipVolts, voltsText, read.dip, (sharedDipVolts) =>
          commands.setSupply({ sharedDipVolts }),
        )}
        ${this.#fields.tick(words.board.diode, supply.diode, (diode) => commands.setSupply({ diode }))}
        ${this.#fields.tick(words.board.decoupled, supply.decoupled, (decoupled) => commands.setSupply({ decoupled }))}
      </div>
      ${this.#says(this.#design.value)}
      <board-readouts .app=${this.app}></board-readouts>
      <label class="notes"
        >${words.board.notes}
        <textarea
          rows="3"
          maxlength=${NOTES_LENGTH}
          .value=${notes}
          @change=${(event: Event) =>
            this.app.change(
              words.board.notesLabel,
              commands.annotate((event.currentTarget as HTMLTextAreaElement).value),
            )}
        ></textarea>
      </label>
      <caution-note .places=${['output', 'supply', 'building']}></caution-note>
    </details>`;
  }

  #says(design: Design): TemplateResult {
    const { jack, jackCornerHertz } = derivedInstrument(design);
    return html`<p class="small">${words.board.jack(jack.boundVolts, jackCornerHertz)}</p>
      ${design.output.mixOhms === null ? html`<p class="small note">${words.board.clash(jack.clashAmperes, TIMERS[design.timer].outputAmperes)}</p>` : ''}`;
  }

  #quantity(
    label: string,
    value: number,
    text: FieldParts['text'],
    read: FieldParts['read'],
    command: FieldParts['command'],
  ): TemplateResult {
    return this.#fields.quantity({ label, value, text, read, command });
  }

  #volumeTurn(volume: NonNullable<Design['output']['volume']>): TemplateResult {
    const text = formatShare(volume.rotation);
    return html`<level-slider
      label=${words.board.volumeTurn}
      .value=${volume.rotation}
      min="0"
      max="1"
      scale="linear"
      .readout=${text}
      .valuetext=${text}
      @slide=${({ detail }: CustomEvent<SlideDetail>) =>
        this.#edits.edit(
          words.board.volume,
          commands.setVolume({ ...volume, rotation: detail.value }),
          detail.phase,
        )}
    ></level-slider>`;
  }
}

customElements.define('board-panel', BoardPanel);

declare global {
  interface HTMLElementTagNameMap {
    'board-panel': BoardPanel;
  }
}
