/** A page to read, on screen and on paper. */
import { css } from 'lit';

export const aboutStyles = css`
  main {
    padding: 18px var(--side, 28px) 40px;
  }
  .page {
    display: grid;
    grid-template-columns: minmax(0, 15em) minmax(0, var(--measure));
    gap: 26px 48px;
  }
  .text {
    display: grid;
    gap: 22px;
  }
  h2 {
    font-size: var(--text-title);
  }
  h3 {
    margin-bottom: 6px;
    font-size: var(--text-head);
  }
  ul {
    margin: 0 0 var(--unit);
    padding-left: 1.2em;
  }
  li {
    margin-bottom: 5px;
    overflow-wrap: break-word;
  }
  table {
    margin-bottom: var(--unit);
  }
  th,
  td {
    hyphens: auto;
    overflow-wrap: break-word;
  }
  /* Names of what is kept may break anywhere; words only where their language lets them. */
  td:nth-child(2) {
    overflow-wrap: anywhere;
  }
  pre {
    max-height: 30em;
    margin: var(--unit) 0;
    padding: 10px 14px;
    overflow: auto;
    border: 1px solid var(--hair);
    background: var(--surface);
    font-size: var(--text-small);
    line-height: 1.4;
    overflow-wrap: anywhere;
    white-space: pre-wrap;
  }
  @media (max-width: 47.5em) {
    .page {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  @media print {
    main {
      padding: 0;
    }
    .page {
      display: block;
    }
    section {
      margin-top: 5mm;
    }
    h3,
    summary {
      break-after: avoid;
    }
    li,
    tr {
      max-width: var(--measure);
      break-inside: avoid;
    }
    a {
      display: none;
    }
    /* On paper nothing can be folded out. */
    .topic::details-content {
      display: block;
      height: auto;
      content-visibility: visible;
    }
    pre {
      max-height: none;
      border: 0;
      padding: 0;
    }
  }
`;
