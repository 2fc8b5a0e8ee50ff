/** A plain table of words, the first cell of each row naming it; scrolls by itself where it is too wide. */
import { html, type TemplateResult } from 'lit';

export function wordTable(
  label: string,
  heads: readonly string[],
  rows: readonly (readonly (string | TemplateResult)[])[],
): TemplateResult {
  return html`<div class="scroll" tabindex="0" role="group" aria-label=${label}>
    <table class="narrow-table">
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (row) => html`<tr>
            ${row.map((cell, i) => (i === 0 ? html`<th scope="row">${cell}</th>` : html`<td>${cell}</td>`))}
          </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}
