/** What all charts share: rules for axes and text, and the table on demand. */
import { css, html, nothing, type TemplateResult } from 'lit';

/** The table's headings and cells, all in words. */
export interface TableText {
  readonly toggle: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A closed `<details>` with the chart's numbers; nothing without a word for the toggle. */
export function tableOnDemand(
  { toggle, heads, rows }: TableText,
  onToggle?: (event: Event) => void,
): TemplateResult | typeof nothing {
  if (toggle === '') return nothing;
  return html`<details @toggle=${onToggle ?? nothing}>
    <summary>${toggle}</summary>
    <div class="table" tabindex="0" role="group" aria-label=${toggle}>
      <table>
        <thead>
          <tr>
            ${heads.map((head) => html`<th scope="col">${head}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            (row) =>
              html`<tr>
                ${row.map((cell, index) =>
                  index === 0 ? html`<th scope="row">${cell}</th>` : html`<td>${cell}</td>`,
                )}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
  </details>`;
}

export const chartStyles = css`
  :host {
    font-size: var(--text-small);
    line-height: 1.35;
    min-width: 0;
  }
  .drawing {
    position: relative;
    width: 100%;
    overflow: hidden;
  }
  svg.chart {
    display: block;
    overflow: visible;
  }
  @media print {
    svg.chart {
      max-width: 100%;
      height: auto;
    }
  }
  svg.chart text {
    fill: var(--ink);
    font-size: var(--text-small);
    /* Paper around the letters, should a line ever have to pass beneath them. */
    paint-order: stroke;
    stroke: var(--chart-ground, var(--paper));
    stroke-width: 3px;
    stroke-linejoin: round;
  }
  svg.chart text.quiet {
    fill: var(--muted);
  }
  svg.chart text.note {
    fill: var(--muted);
    font-family: var(--font-head);
    font-style: italic;
  }
  svg.chart text.a {
    fill: var(--voice-a);
    font-weight: 600;
  }
  svg.chart text.b {
    fill: var(--voice-b);
    font-weight: 600;
  }
  svg.chart text.both {
    fill: var(--accent);
    font-weight: 600;
  }
  .axis {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.25;
  }
  .leader {
    fill: none;
    stroke: var(--muted);
    stroke-width: 1;
  }
  .edge {
    fill: none;
    stroke-width: var(--stroke-data);
  }
  .edge.a {
    stroke: var(--voice-a);
  }
  .edge.b {
    stroke: var(--voice-b);
    stroke-dasharray: 8 4;
  }
  .edge.both {
    stroke: var(--accent);
  }
  .band {
    opacity: 0.16;
  }
  .band.a {
    fill: var(--voice-a);
  }
  .band.b {
    fill: var(--voice-b);
  }
  .band.both {
    fill: var(--accent);
  }
  .table {
    max-height: 22rem;
    overflow: auto;
  }
`;

/** The class that colours a mark for one voice or for both. */
export function voiceClass(voices: 'A' | 'B' | 'both'): string {
  return voices === 'both' ? 'both' : voices.toLowerCase();
}
