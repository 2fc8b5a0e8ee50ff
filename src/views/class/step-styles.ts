/** How a step's words are set. */
import { css } from 'lit';

export const stepStyles = css`
  h3 {
    margin-bottom: 4px;
    font-size: var(--text-head);
  }
  p {
    max-width: 60ch;
  }
  .question {
    font-size: 1.08em;
  }
  .question strong {
    font-family: var(--font-head);
    font-weight: 600;
  }
  .notice {
    padding: 8px 12px;
    border-left: var(--stroke-data) solid var(--caution);
    background: var(--sunken);
  }
  .options {
    display: flex;
    flex-wrap: wrap;
    gap: 10px 14px;
    margin: 4px 0 14px;
  }
  .option {
    display: flex;
    align-items: center;
    gap: 10px;
    padding: 4px 8px 4px 10px;
    border: var(--stroke-control) solid var(--control-line);
    border-radius: var(--radius);
    background: var(--surface);
  }
  .option.chosen {
    border-color: var(--accent);
    box-shadow: inset 0 calc(-1 * var(--stroke-data)) 0 var(--accent);
  }
  .option label {
    display: flex;
    align-items: center;
    gap: 4px;
    min-height: var(--target);
    cursor: pointer;
  }
  .hands {
    width: 3.4em;
    min-height: var(--target);
    text-align: right;
  }
  .met {
    margin: 4px 0;
    min-height: 1.45em;
  }
  .met.done {
    color: var(--good);
    font-weight: 600;
  }
  .algebra {
    padding: 6px 12px;
    background: var(--sunken);
    font-family: var(--font-head);
    overflow-wrap: anywhere;
  }
  .verdict {
    font-size: 1.08em;
  }
  .tally {
    margin: 0 0 12px;
  }
  .tally caption {
    color: var(--muted);
    font-size: var(--text-small);
    text-align: start;
  }
  progress {
    width: 8em;
    height: 12px;
    accent-color: var(--accent);
  }
`;
