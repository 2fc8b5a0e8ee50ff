/** How the picture panel lays its tools, and how it joins the lesson on the projector. */
import { css } from 'lit';

export const pictureStyles = css`
  .tools {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 12em), 1fr));
    gap: 6px 26px;
    margin: 8px 0;
    --label-width: 6.4em;
  }
  details {
    margin-top: 6px;
  }
  .folds {
    display: flex;
    flex-wrap: wrap;
    gap: 0 28px;
  }
  .folds details[open] {
    flex-basis: 100%;
  }
  ul {
    margin: 4px 0 8px;
    padding-left: 1.2em;
  }
  @media (min-width: 56.3125em) {
    /* On the projector the panel's parts are parts of the lesson: beside its title, and below what is projected. */
    :host(.projector) {
      display: contents;
    }
    :host(.projector) .slow {
      position: absolute;
      top: -4px;
      right: 0;
    }
    :host(.projector) .slow button {
      min-height: 1.5rem;
      padding-block: 0;
    }
    :host(.projector) .folds {
      order: 2;
    }
  }
  @media print {
    .folds {
      display: none;
    }
  }
`;
