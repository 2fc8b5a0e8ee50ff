/** How the sheets of Kit are laid: heading and tools in a row, tables that scroll by themselves, and their print. */
import { css } from 'lit';

export const kitStyles = css`
  .title {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 4px 20px;
    margin-bottom: 8px;
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px 22px;
    margin: 8px 0 12px;
    --label-width: auto;
    --field-width: 5.4em;
  }
  .tools > * {
    min-width: 0;
    max-width: 100%;
  }
  .tools label.list {
    --label-width: auto;
  }
  h3 {
    margin: 22px 0 6px;
  }
  .scroll {
    /* Holds what is placed within it, hidden words too. */
    position: relative;
    max-width: 100%;
    overflow-x: auto;
  }
  table {
    width: 100%;
  }
  th[scope='row'] {
    font-weight: 600;
  }
  .columns {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 21em), 1fr));
    gap: 0 34px;
  }
  .halves {
    display: grid;
    grid-template-columns: var(--halves);
    align-items: start;
  }
  .narrow-table {
    width: auto;
  }
  @media (max-width: 62.5em) {
    .halves {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  .projector .halves {
    grid-template-columns: minmax(0, 1fr);
  }
  @media print {
    .tools,
    .screen {
      display: none;
    }
    .scroll {
      overflow: visible;
    }
    tr,
    li,
    h3 {
      break-inside: avoid;
    }
    h3 {
      break-after: avoid;
    }
    thead {
      display: table-header-group;
    }
  }
`;
