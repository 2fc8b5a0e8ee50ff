/** The bar, notices and foot of the page. */
import { css } from 'lit';

/** A line under the bar with something to do about it. */
export const noticeStyles = css`
  .notice {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px 16px;
    max-width: none;
    margin: 0;
    padding: 5px var(--side);
    border-bottom: 1px solid var(--hair);
    background: var(--sunken);
    font-size: var(--text-control);
  }
  .notice p,
  .notice ul {
    margin: 0;
  }
`;

export const barStyles = css`
  :host {
    --side: 28px;
    display: block;
    min-height: 100vh;
    background: var(--paper);
  }
  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 18px;
    padding: 10px var(--side);
    border-bottom: 1px solid var(--hair);
  }
  nav {
    display: flex;
    flex-wrap: wrap;
    gap: 0 18px;
  }
  nav a {
    padding: 6px 0 4px;
    border-bottom: 3px solid transparent;
    color: var(--muted);
    text-decoration: none;
  }
  nav a:hover {
    border-color: var(--hair);
    color: var(--ink);
  }
  nav a[aria-current] {
    border-color: var(--accent);
    color: var(--ink);
  }
  .coming {
    padding: 18px var(--side);
  }
  .bar .more {
    display: none;
  }
  .bar .document {
    flex: 1 1 42em;
    min-width: 0;
  }
  .bar .name {
    flex: 1 1 12em;
    min-width: 0;
    /* Its words begin where the page's do. */
    margin-inline-start: -8px;
    border-color: transparent;
    background: none;
    color: var(--muted);
    font-family: var(--font-head);
    font-style: italic;
    text-overflow: ellipsis;
  }
  .bar .name:hover,
  .bar .name:focus {
    border-color: var(--control-line);
    background: var(--surface);
  }
  .sound {
    margin-inline-start: auto;
  }
  .group {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px;
  }
  .sound level-slider {
    width: 15.6em;
    --label-width: 5.2em;
    --value-width: 3.4em;
  }
  .says {
    max-width: none;
    margin: 0;
    padding: 5px var(--side);
    border-bottom: 1px solid var(--hair);
    font-size: var(--text-control);
  }
  .says {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 24px;
    color: var(--muted);
  }
  .says p {
    flex: 1 1 16em;
    max-width: none;
    margin: 0;
  }
  .bar select {
    max-width: 10em;
  }
  footer {
    padding: 0 var(--side) 24px;
    font-size: var(--text-control);
  }
  footer label {
    display: flex;
    align-items: center;
  }
  @media (max-width: 47.5em) {
    :host {
      --side: 14px;
    }
    .sound,
    nav {
      flex: 1 0 100%;
    }
    .sound level-slider {
      flex: 1 1 11.25em;
      width: auto;
    }
  }
  @media screen and (max-width: 47.5em) {
    .bar h1 {
      flex: 1;
    }
    .bar .more {
      display: block;
    }
    header:not(.unfolded) :is(.document, .look, .language) {
      display: none;
    }
  }
  @media (forced-colors: active) {
    /* The system draws see-through borders, too, and would underline every place. */
    nav a:not([aria-current]) {
      border-color: Canvas;
    }
  }
  @media print {
    .says,
    nav,
    .sound,
    footer,
    select,
    /* The sheets of Kit carry heads of their own. */
    .kit {
      display: none;
    }
    /* Room prints its card alone, and About its own words. */
    :host(:is([data-place='room'], [data-place='about'])) header,
    :host(:is([data-place='room'], [data-place='about'])) live-strip {
      display: none;
    }
    :host(:is([data-place='room'], [data-place='about'])) {
      min-height: 0;
    }
  }
`;
