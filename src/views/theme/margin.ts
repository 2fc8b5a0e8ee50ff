/** The wide left margin of a place, where its "why" stands. */
import { css } from 'lit';

export const marginStyles = css`
  .margin {
    color: var(--muted);
    font-size: var(--text-control);
    line-height: 1.5;
  }
  .margin p {
    margin: 0 0 12px;
    overflow-wrap: break-word;
  }
`;
