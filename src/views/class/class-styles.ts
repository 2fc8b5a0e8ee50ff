/** What the panels of the place share. */
import { css } from 'lit';

export const classStyles = css`
  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 14px;
  }
  .row .grow {
    flex: 1;
  }
  .key {
    padding: 0 5px;
    border: 1px solid var(--control-line);
    border-radius: var(--radius);
    background: var(--surface);
    font-family: var(--font-text);
    font-size: var(--text-small);
    white-space: nowrap;
  }
  button .key {
    margin-left: 6px;
    border-color: transparent;
    background: none;
    color: var(--muted);
  }
  button.primary .key,
  button[aria-pressed='true'] .key {
    color: inherit;
  }
  fieldset {
    margin: 0;
  }
`;
