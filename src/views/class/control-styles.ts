/** How the controls of a step are laid. */
import { css } from 'lit';

export const controlStyles = css`
  .small:empty {
    margin: 0;
  }
  .controls {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 21em), 1fr));
    align-items: start;
    gap: 6px 34px;
    --label-width: 8.5em;
    --value-width: 5.6em;
  }
  /* Sliders first, then what is turned, then what is pressed. */
  .controls trimmer-control {
    order: 1;
  }
  .controls button {
    order: 2;
    justify-self: start;
  }
  label.tick {
    margin-left: var(--label-width);
  }
  camera-panel,
  scene-panel {
    min-width: 0;
  }
  @media (max-width: 31.25em) {
    .controls {
      --label-width: 6.4em;
      --value-width: 4.6em;
    }
  }
`;
