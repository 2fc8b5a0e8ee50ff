/** How a lesson under way is laid on the page. */
import { css } from 'lit';

export const playerStyles = css`
  article {
    display: grid;
    gap: 16px;
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 18px;
  }
  h2 {
    font-size: 1.75rem;
  }
  .below {
    display: grid;
    grid-template-columns: minmax(0, 1.25fr) minmax(0, 1fr);
    gap: 12px 40px;
  }
  .touch {
    min-width: 0;
  }
  .bar {
    display: grid;
    gap: 8px;
    padding-top: 12px;
    border-top: 1px solid var(--hair);
  }
  .notes {
    padding: 12px 18px;
    border: 1px solid var(--hair);
    background: var(--surface);
  }
  /* From the back of the room: the picture, the question and its answers on one screen. */
  @media (min-width: 56.3125em) {
    .projector {
      gap: 8px;
      --drawing-width: 150px;
    }
    .projector h2 {
      font-size: 1.4rem;
      line-height: 1.1;
    }
  }
  @media (max-width: 56.25em) {
    .below {
      grid-template-columns: minmax(0, 1fr);
    }
    .bar .grow {
      display: none;
    }
    h2 {
      font-size: 1.4rem;
    }
  }
  @media print {
    .bar {
      display: none;
    }
  }
`;
