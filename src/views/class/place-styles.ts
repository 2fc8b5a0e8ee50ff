/** How the place is laid on the page. */
import { css } from 'lit';

export const placeStyles = css`
  :host {
    background: var(--paper);
  }
  :host(:fullscreen) {
    overflow: auto;
  }
  :host(:fullscreen) main {
    padding-block: 8px 16px;
  }
  main {
    padding: 18px var(--side, 28px) 40px;
  }
  .page {
    display: grid;
    grid-template-columns: minmax(0, 1.5fr) minmax(0, 1fr);
    gap: 26px 48px;
  }
  .aside {
    display: grid;
    align-content: start;
    gap: 26px;
  }
  h2 {
    margin-bottom: 6px;
  }
  .lessons {
    margin: 10px 0 18px;
    padding: 0;
    list-style: none;
    counter-reset: lesson;
  }
  .lessons li {
    display: grid;
    grid-template-columns: 2em minmax(0, 1fr) auto;
    align-items: start;
    gap: 0 14px;
    padding: 12px 0;
    border-top: 1px solid var(--hair);
    counter-increment: lesson;
  }
  .lessons li::before {
    content: counter(lesson);
    color: var(--muted);
    font-family: var(--font-head);
    font-size: var(--text-head);
    font-style: italic;
  }
  .lessons h3 {
    font-size: var(--text-head);
  }
  .lessons p {
    margin: 2px 0;
  }
  .aside h3 {
    margin: 10px 0 4px;
  }
  .keys {
    margin: 0 0 8px;
    font-size: var(--text-control);
  }
  .keys div {
    display: grid;
    grid-template-columns: 7em minmax(0, 1fr);
    gap: 10px;
    padding: 3px 0;
    border-bottom: 1px solid var(--hair);
  }
  .keys dt {
    font-weight: 600;
  }
  .keys dd {
    margin: 0;
  }
  label.switch {
    display: flex;
    align-items: center;
    min-height: 28px;
    font-size: var(--text-control);
  }
  /* Paper has the lessons, the way in for pupils and the keys; hand-outs have a press of their own. */
  @media print {
    section[aria-labelledby='sheets'],
    label.switch,
    .switch + .small {
      display: none;
    }
    .lessons li {
      break-inside: avoid;
    }
  }
  @media (max-width: 56.25em) {
    .page {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  @media (max-width: 32.5em) {
    .lessons li {
      grid-template-columns: 1.4em minmax(0, 1fr);
    }
    .lessons button {
      grid-column: 2;
      justify-self: start;
      margin-top: 4px;
    }
  }
`;
