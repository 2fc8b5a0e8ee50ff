/** How the panels of Pitch are laid: fields in columns that fold to one, small headings, rows of buttons. */
import { css } from 'lit';

export const panelStyles = css`
  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 15.5em), 1fr));
    gap: 6px 22px;
    align-items: start;
    margin: 8px 0;
    --label-width: 8.2em;
    --field-width: 7.6em;
  }
  .fields > p {
    grid-column: 1 / -1;
    margin: 0;
  }
  h3 {
    margin: 14px 0 4px;
    font-size: var(--text-body);
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 10px;
    margin: 8px 0;
  }
  .row label.list {
    --label-width: auto;
  }
  .row p {
    margin: 0;
  }
  .problems {
    margin: 6px 0;
    padding-left: 18px;
  }
  .problems li {
    margin-bottom: 4px;
  }
  .scroll {
    max-width: 100%;
    overflow-x: auto;
  }
  choice-row {
    --label-width: auto;
  }
  @media print {
    .row {
      display: none;
    }
  }
`;
