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
  /* Only reading goes on from here; nothing can be pressed. */
  h2:focus-visible {
    outline: none;
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
  .remark {
    position: fixed;
    inset: 0 0 auto auto;
    max-width: 50%;
    margin: 0;
    padding: 8px 14px;
    border: var(--stroke-control) solid var(--fault);
    background: var(--surface);
  }
  /*
   * From the back of the room: the picture, the question, its answers and the way on, all on one screen. What only the
   * presenter wants lies below it.
   */
  @media (min-width: 56.3125em) {
    .projector {
      position: relative;
      gap: 4px;
      line-height: 1.3;
      --drawing-width: 6rem;
      --dial-width: 112px;
      --told-done: minmax(0, 1fr) minmax(0, 1fr);
    }
    .projector h2 {
      font-size: var(--text-head);
    }
    .projector .bar {
      order: 1;
    }
    .projector .mind {
      order: 2;
    }
  }
  @media (max-width: 56.25em) {
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
