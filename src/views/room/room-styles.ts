/** How the place Room is laid: a margin, the day and the answer beside each other, panels in columns below. */
import { css } from 'lit';

export const roomStyles = css`
  .page {
    display: grid;
    grid-template-columns: minmax(0, 9.5em) minmax(0, 1fr) minmax(0, 19em);
    grid-template-areas:
      'margin day answer'
      'margin panels panels';
    gap: 26px 30px;
    padding: 18px var(--side, 28px) 40px;
  }
  .margin {
    grid-area: margin;
  }
  .margin .why {
    font-size: var(--text-body);
  }
  day-panel {
    grid-area: day;
    min-width: 0;
  }
  answer-panel {
    grid-area: answer;
    min-width: 0;
  }
  .panels {
    grid-area: panels;
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    gap: 30px;
    min-width: 0;
  }
  .panels > * {
    min-width: 0;
  }
  .wide {
    grid-column: 1 / -1;
  }
  .column {
    display: grid;
    align-content: start;
    gap: 30px;
  }
  @media (max-width: 73.75em) {
    .page {
      grid-template-columns: minmax(0, 1fr) minmax(0, 17em);
      grid-template-areas:
        'day answer'
        'margin margin'
        'panels panels';
    }
  }
  @media (max-width: 51.25em) {
    .page {
      grid-template-columns: minmax(0, 1fr);
      grid-template-areas: 'day' 'answer' 'margin' 'panels';
      gap: 22px;
    }
    .panels {
      grid-template-columns: minmax(0, 1fr);
      gap: 24px;
    }
  }
  .page.projector {
    grid-template-columns: minmax(0, 1fr);
    grid-template-areas: 'day' 'answer' 'margin' 'panels';
  }
  .page.projector .panels {
    grid-template-columns: minmax(0, 1fr);
  }
  @media print {
    .page {
      display: block;
      padding: 0;
    }
    .page > :not(.panels),
    .panels > :not(card-panel) {
      display: none;
    }
    .panels {
      display: block;
    }
  }
`;

/** Inside the panels. */
export const innerStyles = css`
  .small {
    max-width: none;
    text-wrap: pretty;
  }
  h2 {
    margin-bottom: 6px;
    padding-bottom: 4px;
    border-bottom: 2px solid var(--ink);
  }
  h3 {
    margin: 16px 0 4px;
    font-size: var(--text-body);
  }
  .fields {
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 13em), 1fr));
    --label-width: 7.2em;
    --field-width: 5.6em;
  }
  label.list {
    --label-width: auto;
    grid-template-columns: auto minmax(0, 1fr);
  }
  /* The words of a list are long: it has a row of its own. */
  .fields label.list {
    grid-column: 1 / -1;
    grid-template-columns: minmax(min-content, 7.2em) minmax(0, 22em);
  }
  .said {
    margin: 6px 0;
    font-size: var(--text-control);
  }
  .complaints {
    margin: 6px 0;
    padding-left: 18px;
    font-size: var(--text-control);
  }
  .facts {
    width: 100%;
    font-size: var(--text-control);
  }
  .facts th {
    color: var(--muted);
  }
  .facts td {
    overflow-wrap: anywhere;
  }
  .facts td:last-child,
  .facts th:last-child {
    padding-right: 0;
  }
  button.link {
    min-width: 24px;
    min-height: 24px;
    padding: 2px;
    border: 0;
    background: none;
    color: var(--accent);
    text-decoration: underline;
    text-underline-offset: 0.2em;
  }
`;
