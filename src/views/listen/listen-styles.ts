/** How the place is laid on the page: a wide left margin, three columns, one column when narrow. */
import { css } from 'lit';

/** The middle layout, and the projector's. */
const twoColumns = css`
  grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
  grid-template-areas:
    'light threshold'
    'margin margin'
    'voices voices'
    'traces traces'
    'first first'
    'reference take'
    'warnings warnings'
    'board board';
`;

export const listenStyles = css`
  light-axis {
    padding: 10px var(--side, 28px) 4px;
    border-bottom: 1px solid var(--hair);
  }
  .page {
    display: grid;
    grid-template-columns: minmax(0, 11em) minmax(0, 1.35fr) minmax(0, 14.5em) minmax(0, 1.25fr);
    grid-template-areas:
      'margin light threshold voices'
      'margin traces traces traces'
      'margin first first reference'
      'margin first first take'
      'margin warnings warnings warnings'
      'margin board board board';
    gap: 26px 30px;
    padding: 18px var(--side, 28px) 40px;
  }
  /* Painted apart: what moves in one of them has the browser paint that one alone. */
  light-axis,
  voice-panel,
  .page > * {
    isolation: isolate;
  }
  .margin {
    grid-area: margin;
  }
  .begin.above {
    display: none;
    margin: 0;
    padding: 14px var(--side, 28px) 0;
  }
  .light {
    grid-area: light;
  }
  .threshold {
    grid-area: threshold;
  }
  .voices {
    grid-area: voices;
  }
  .traces {
    grid-area: traces;
    min-width: 0;
  }
  .first {
    grid-area: first;
    min-width: 0;
  }
  .reference {
    grid-area: reference;
  }
  .take {
    grid-area: take;
  }
  .warnings {
    grid-area: warnings;
  }
  .board {
    grid-area: board;
  }
  .title {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 14px;
    margin-bottom: 4px;
  }
  h2 {
    margin-bottom: 4px;
  }
  voice-panel {
    margin-bottom: 14px;
  }
  .cautions {
    margin-top: 8px;
  }
  @media (max-width: 73.75em) {
    .page {
      ${twoColumns}
    }
    .voices {
      display: grid;
      grid-template-columns: 1fr 1fr;
      gap: 0 30px;
    }
    .voices h2,
    .voices p {
      grid-column: 1 / -1;
    }
    .begin.above {
      display: block;
    }
    .begin.beside {
      display: none;
    }
  }
  @media (max-width: 47.5em) {
    .page {
      grid-template-columns: minmax(0, 1fr);
      grid-template-areas: 'light' 'margin' 'threshold' 'voices' 'traces' 'first' 'reference' 'take' 'warnings' 'board';
      gap: 22px;
    }
    .voices {
      display: block;
    }
  }
  @media (min-width: 47.5625em) {
    .page.projector {
      ${twoColumns}
    }
    .begin.above.projector {
      display: block;
    }
    .page.projector .begin.beside {
      display: none;
    }
  }
  @media print {
    .begin.above,
    .begin.beside {
      display: none;
    }
    .page {
      display: block;
    }
    .page > * + * {
      margin-top: 20px;
    }
  }
`;
