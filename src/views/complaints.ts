/** What was found wrong with a design's text, one line for each complaint. */
import { html, type TemplateResult } from 'lit';
import { complaintSentence } from '../app/complaint.ts';
import type { Complaint } from '../design/decode.ts';

export function complaintList(complaints: readonly Complaint[]): TemplateResult {
  return html`<ul>
    ${complaints.map((one) => html`<li>${complaintSentence(one)}</li>`)}
  </ul>`;
}
