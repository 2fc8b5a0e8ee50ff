/**
 * Rules every element of the page shares inside its shadow root: type, headings, buttons, links, fields, hairlines,
 * tables, the focus ring, and words meant for screen readers only. Colours and sizes are the tokens of theme.css.
 */
import { css } from 'lit';

export const common = css`
  :host {
    display: block;
    box-sizing: border-box;
    color: var(--ink);
    font-family: var(--font-text);
    font-size: var(--text-body);
    line-height: 1.45;
    font-variant-numeric: tabular-nums;
  }
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }

  h1,
  h2,
  h3,
  h4 {
    margin: 0;
    color: var(--ink);
    font-family: var(--font-head);
    font-weight: 500;
    line-height: 1.25;
    text-wrap: balance;
  }
  h1 {
    font-size: var(--text-title);
  }
  h2 {
    font-size: var(--text-head);
  }
  h3,
  h4 {
    font-size: var(--text-body);
  }
  p {
    margin: 0 0 var(--unit);
    max-width: var(--measure);
  }
  hr {
    margin: calc(var(--unit) * 2) 0;
    border: 0;
    border-top: 1px solid var(--hair);
  }
  .why {
    color: var(--muted);
    font-family: var(--font-head);
    font-style: italic;
  }
  .muted {
    color: var(--muted);
  }
  .small,
  figcaption {
    color: var(--muted);
    font-size: var(--text-small);
  }
  figure {
    margin: 0;
  }
  .voice-a {
    color: var(--voice-a);
  }
  .voice-b {
    color: var(--voice-b);
  }
  .fault {
    color: var(--fault);
  }
  .caution {
    color: var(--caution);
  }

  a {
    /* Makes a line of text tall enough to be hit. */
    padding-block: 2px;
    color: var(--accent);
    text-decoration-thickness: 1px;
    text-underline-offset: 0.2em;
  }
  a:hover {
    text-decoration-thickness: 2px;
  }

  button {
    min-width: var(--target);
    min-height: var(--target);
    padding: 3px 12px;
    border: var(--stroke-control) solid var(--control-line);
    border-radius: var(--radius);
    background: var(--surface);
    color: var(--ink);
    font: inherit;
    font-size: var(--text-control);
    line-height: 1.25;
    cursor: pointer;
  }
  button:hover:not(:disabled) {
    border-color: var(--ink);
    background: var(--sunken);
  }
  button.primary,
  button[aria-pressed='true'] {
    border-color: var(--accent);
    background: var(--accent);
    color: var(--on-accent);
    font-weight: 600;
  }
  button.primary:hover:not(:disabled),
  button[aria-pressed='true']:hover:not(:disabled) {
    border-color: var(--ink);
    background: var(--ink);
    color: var(--paper);
  }
  button:disabled {
    border: var(--stroke-control) dashed var(--control-line);
    background: var(--surface);
    color: var(--muted);
    cursor: default;
  }

  input[type='text'],
  input[type='number'],
  input[type='date'],
  select {
    min-width: 0;
    min-height: 28px;
    padding: 2px 8px;
    border: var(--stroke-control) solid var(--control-line);
    border-radius: var(--radius);
    background: var(--surface);
    color: var(--ink);
    font: inherit;
    font-size: var(--text-control);
    font-variant-numeric: tabular-nums;
  }
  textarea {
    width: 100%;
    padding: 4px 8px;
    border: var(--stroke-control) solid var(--control-line);
    border-radius: var(--radius);
    background: var(--surface);
    color: var(--ink);
    font: inherit;
    font-size: var(--text-control);
  }
  input[aria-invalid='true'] {
    border-color: var(--fault);
    box-shadow: inset 0 -2px 0 var(--fault);
  }
  input[type='radio'],
  input[type='checkbox'] {
    width: 18px;
    height: 18px;
    margin: 3px;
    accent-color: var(--accent);
  }
  fieldset {
    min-width: 0;
    margin: 0;
    padding: 0;
    border: 0;
  }

  summary {
    min-height: 24px;
    width: fit-content;
    color: var(--muted);
    font-size: var(--text-small);
    cursor: pointer;
  }
  table {
    border-collapse: collapse;
    font-size: var(--text-small);
  }
  th,
  td {
    padding: 3px 16px 3px 0;
    border-bottom: 1px solid var(--hair);
    font-weight: 400;
    text-align: start;
    vertical-align: baseline;
  }
  thead th {
    color: var(--muted);
    font-weight: 600;
  }
  td.figure,
  th.figure {
    text-align: end;
  }

  :focus {
    outline: none;
  }
  :focus-visible {
    outline: var(--stroke-focus) solid var(--focus);
    outline-offset: 2px;
  }

  .visually-hidden {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: -1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }

  @media (pointer: coarse) {
    input[type='text'],
    input[type='number'],
    select,
    summary {
      min-height: 44px;
    }
    summary {
      padding-block: 10px;
    }
  }
  @media (forced-colors: active) {
    /* The system's own pair for what is chosen; otherwise it lays its paper colour behind our paper-coloured words. */
    button.primary,
    button[aria-pressed='true'] {
      forced-color-adjust: none;
      border-color: ButtonText;
      background: Highlight;
      color: HighlightText;
    }
  }
  @media print {
    button {
      display: none;
    }
  }
  @media (prefers-reduced-motion: reduce) {
    *,
    *::before,
    *::after {
      animation: none !important;
      transition: none !important;
    }
  }
`;
