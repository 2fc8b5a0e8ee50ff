/** `<gate-parts>`: the rest of one voice: kinds of part, cell, divider, comparator. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import * as commands from '../../design/commands.ts';
import type { CellKept, CellPosition, Design, Polarity } from '../../design/design.ts';
import { LIMITS } from '../../design/limits.ts';
import type { DielectricId } from '../../parts/capacitors.ts';
import type { CellId } from '../../parts/cells.ts';
import type { TrimmerId } from '../../parts/trimmers.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import { NONE, ohmsText, orNone, reader, readerOrNone, voltsText } from '../edits.ts';
import { Fields, fieldStyles } from '../fields.ts';
import { CALMLY, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';

const read = {
  cell: reader('resistance', LIMITS.cellOhms),
  gamma: reader('number', LIMITS.gamma),
  divider: reader('resistance', LIMITS.dividerOhms),
  hysteresis: readerOrNone('resistance', LIMITS.hysteresisOhms, NONE),
  input: reader('resistance', LIMITS.inputOhms),
  pullUp: reader('resistance', LIMITS.pullUpOhms),
  control: readerOrNone('voltage', LIMITS.controlVolts, NONE),
};

export class GateParts extends AppElement {
  static override properties = { ...AppElement.properties, voice: { type: String } };
  static override styles = [
    common,
    fieldStyles,
    css`
      .parts {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 12.5em), 1fr));
        gap: 6px 20px;
        margin: 10px 0 6px;
        --label-width: 6.2em;
        --field-width: 6.4em;
      }
    `,
  ];

  declare voice: VoiceId;
  #design!: Selected<Design, Design>;
  #fields!: Fields;

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design, CALMLY);
    this.#fields = new Fields(app, (label) => words.labels.part(this.voice, label));
  }

  protected override render(): TemplateResult {
    const id = this.voice;
    const { trimmer, capacitor, cell, divider, ...part } = this.#design.value.voices[id];
    const fields = this.#fields;
    const named = words.voices;
    return html`<div class="parts">
        ${fields.list(words.board.trimmerPart, words.board.trimmerParts, trimmer.part, (value) =>
          commands.fitPitchTrimmer(id, { part: value as TrimmerId }),
        )}
        ${fields.list(named.dielectric, named.dielectrics, capacitor.dielectric, (value) =>
          commands.chooseDielectric(id, value as DielectricId),
        )}
        ${fields.list(named.cellFamily, named.cellFamilies, cell.family, (value) =>
          commands.chooseCell(id, value as CellId),
        )}
        ${fields.choice(named.polarity, named.polarities, part.polarity, (value) =>
          commands.setPolarity(id, value as Polarity),
        )}
        ${fields.choice(named.cellSide, named.cellSides, divider.cell, (value) =>
          commands.placeCell(id, value as CellPosition),
        )}
        ${fields.quantity({
          label: named.cellOhms,
          value: cell.r10Ohms,
          read: read.cell,
          text: ohmsText,
          command: (r10Ohms) => commands.setCell(id, { r10Ohms }),
        })}
        ${fields.quantity({
          label: named.gamma,
          value: cell.gamma,
          read: read.gamma,
          text: gammaText,
          command: (gamma) => commands.setCell(id, { gamma }),
        })}
        ${fields.choice(named.kept, named.keptIn, part.cellKept, (value) =>
          commands.keepCell(id, value as CellKept),
        )}
        ${fields.quantity({
          label: named.divider,
          value: divider.fixedOhms,
          read: read.divider,
          text: ohmsText,
          command: (ohms) => commands.setDividerOhms(id, ohms),
        })}
        ${fields.quantity({
          label: named.hysteresis,
          value: part.hysteresisOhms ?? NONE,
          read: read.hysteresis,
          text: orNone(ohmsText),
          command: (ohms) => commands.setVoiceValue(id, 'hysteresisOhms', ohms === NONE ? null : ohms),
          hint: words.field.noneHint,
        })}
        ${fields.quantity({
          label: named.input,
          value: part.inputOhms,
          read: read.input,
          text: ohmsText,
          command: (ohms) => commands.setVoiceValue(id, 'inputOhms', ohms),
        })}
        ${fields.quantity({
          label: named.pullUp,
          value: part.pullUpOhms,
          read: read.pullUp,
          text: ohmsText,
          command: (ohms) => commands.setVoiceValue(id, 'pullUpOhms', ohms),
        })}
        ${fields.quantity({
          label: named.control,
          value: part.controlVolts ?? NONE,
          read: read.control,
          text: orNone(voltsText),
          command: (volts) => commands.setControlVolts(id, volts === NONE ? null : volts),
          hint: words.field.noneHint,
        })}
      </div>
      <caution-note .places=${['cell']}></caution-note>`;
  }
}

const gammaText = (value: number | null): string => formatNumber(value ?? 0, 3);

customElements.define('gate-parts', GateParts);

declare global {
  interface HTMLElementTagNameMap {
    'gate-parts': GateParts;
  }
}
