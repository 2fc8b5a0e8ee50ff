/** Fields, choices and lists that change the design: built the same way in every panel. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../app/lampnote.ts';
import type { Command } from '../design/commands.ts';
import './controls/choice-row.ts';
import type { ChooseDetail, CommitDetail, ReadText } from './controls/events.ts';
import './controls/quantity-field.ts';
import { choicesOf } from './controls/choices.ts';

export interface FieldParts {
  readonly label: string;
  readonly value: number;
  readonly read: ReadText;
  readonly text: (value: number | null) => string;
  readonly command: (value: number) => Command;
  readonly hint?: string;
}

/** Builders for one panel. `step` names the change for undo, from the field's own label. */
export class Fields {
  readonly #app: Lampnote;
  readonly #step: (label: string) => string;

  constructor(app: Lampnote, step: (label: string) => string = (label) => label) {
    this.#app = app;
    this.#step = step;
  }

  quantity({ label, value, read, text, command, hint = '' }: FieldParts): TemplateResult {
    return html`<quantity-field
      label=${label}
      .value=${value}
      .format=${text}
      .parse=${read}
      .hint=${hint}
      @commit=${({ detail }: CustomEvent<CommitDetail>) => this.#change(label, command(detail.value))}
    ></quantity-field>`;
  }

  choice(
    label: string,
    names: Readonly<Record<string, string>>,
    value: string,
    command: (value: string) => Command,
  ): TemplateResult {
    return html`<choice-row
      legend=${label}
      .choices=${choicesOf(names)}
      value=${value}
      @choose=${({ detail }: CustomEvent<ChooseDetail>) => this.#change(label, command(detail.value))}
    ></choice-row>`;
  }

  list(
    label: string,
    names: Readonly<Record<string, string>>,
    value: string,
    command: (value: string) => Command,
  ): TemplateResult {
    return listRow(label, Object.entries(names), value, (chosen) => this.#change(label, command(chosen)));
  }

  tick(label: string, value: boolean, command: (value: boolean) => Command): TemplateResult {
    return html`<label class="tick">
      <input
        type="checkbox"
        .checked=${value}
        @change=${(event: Event) =>
          this.#change(label, command((event.currentTarget as HTMLInputElement).checked))}
      />
      ${label}
    </label>`;
  }

  #change(label: string, command: Command): void {
    this.#app.change(this.#step(label), command);
  }
}

/** A field for a quantity that is no entry of the design: what is typed goes to `take`. */
export function freeField(
  label: string,
  value: number | null,
  read: ReadText,
  text: (value: number) => string,
  take: (value: number) => void,
): TemplateResult {
  return html`<quantity-field
    label=${label}
    .value=${value}
    .format=${text}
    .parse=${read}
    @commit=${({ detail }: CustomEvent<CommitDetail>) => take(detail.value)}
  ></quantity-field>`;
}

/** A labelled list of options, [value, name]. */
export function listRow(
  label: string,
  options: readonly (readonly string[])[],
  value: string,
  choose: (value: string) => void,
): TemplateResult {
  return html`<label class="list">
    ${label}
    <select @change=${(event: Event) => choose((event.currentTarget as HTMLSelectElement).value)}>
      ${options.map(([id, name]) => html`<option value=${id} .selected=${id === value}>${name}</option>`)}
    </select>
  </label>`;
}

export const fieldStyles = css`
  label.list {
    display: grid;
    grid-template-columns: minmax(min-content, var(--label-width, 6.4em)) minmax(0, 1fr);
    align-items: center;
    column-gap: var(--unit);
    font-size: var(--text-control);
  }
  label.tick {
    display: flex;
    align-items: center;
    font-size: var(--text-control);
  }
`;
