/** How a step's words are set. */
import { css } from 'lit';

export const stepStyles = css`
  section {
    display: flex;
    flex-direction: column;
  }
  .two {
    flex: 1;
    display: grid;
    align-content: start;
    grid-template-columns: var(--told-done, minmax(0, 1.25fr) minmax(0, 1fr));
    gap: 12px 40px;
  }
  .does {
    min-width: 0;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 14px;
    padding-block: 6px;
  }
  /* Projected, the step has the rest of the screen: what does not fit scrolls, and the way on stays in sight. */
  @media (min-width: 56.3125em) and (min-height: 40em) {
    :host(.projector) {
      height: calc(100vh - 12.85rem);
    }
    :host(.projector) section {
      height: 100%;
    }
    :host(.projector) .two {
      overflow: hidden auto;
    }
    /* What is told stays, while a long panel at the right is scrolled. */
    :host(.projector) .two > :first-child {
      position: sticky;
      top: 0;
      align-self: start;
    }
  }
  .keys {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 12px;
    margin: 0 0 0 auto;
    max-width: none;
    color: var(--muted);
    font-size: var(--text-small);
  }
  h3 {
    margin-bottom: 4px;
    font-size: var(--text-head);
  }
  p {
    max-width: 60ch;
  }
  /* Only reading goes on from here; nothing can be pressed. */
  h3:focus-visible {
    outline: none;
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
    width: 2.9em;
    min-height: var(--target);
    text-align: right;
  }
  .hands:invalid {
    border-color: var(--fault);
    box-shadow: inset 0 -2px 0 var(--fault);
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
  .verdict strong {
    font-family: var(--font-head);
    font-weight: 600;
  }
  .verdict-word {
    margin-bottom: 4px;
    font-weight: 600;
  }
  /* As the answers stood when they were asked for, each with its share beneath. */
  .tally {
    display: flex;
    flex-wrap: wrap;
    gap: 8px 14px;
    margin: 10px 0 0;
    padding: 0;
    list-style: none;
  }
  .tally li {
    padding: 2px 10px 6px;
    border: var(--stroke-control) solid var(--hair);
    border-radius: var(--radius);
  }
  .tally strong {
    margin-left: 4px;
  }
  progress {
    display: block;
    width: 100%;
    min-width: 5em;
    height: 8px;
    accent-color: var(--accent);
  }
  @media (max-width: 56.25em) {
    .two {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
