/** How a trimmer control is set on the page: dial at the left, box, buttons and readout at its right. */
import { css } from 'lit';

export const trimmerStyles = css`
  :host {
    display: flex;
    flex-wrap: wrap;
    align-items: flex-start;
    gap: var(--unit) calc(var(--unit) * 2);
  }
  .dial {
    position: relative;
    flex: none;
    width: max(112px, var(--dial-width, 7rem));
  }
  /* The range lies over the dial, unseen but in its place, so that touch readers find it there. */
  .range {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    margin: 0;
    opacity: 0;
    pointer-events: none;
  }
  .face {
    position: relative;
    display: block;
    width: 100%;
    overflow: visible;
    border-radius: 50%;
    cursor: grab;
    touch-action: none;
  }
  .face:active {
    cursor: grabbing;
  }
  .range:disabled ~ .face {
    cursor: default;
    opacity: 0.6;
  }
  .range:focus-visible ~ .face .ring {
    stroke: var(--focus);
  }
  .ends {
    display: flex;
    justify-content: space-between;
    margin-top: -1.35em;
    padding: 0;
    color: var(--muted);
    font-size: var(--text-small);
    line-height: 1.2;
    pointer-events: none;
  }
  .side {
    flex: 1 1 11rem;
    min-width: 0;
  }
  .name {
    margin-bottom: 4px;
    font-size: var(--text-control);
  }
  .row {
    display: flex;
    gap: 4px;
  }
  .row button {
    flex: none;
    padding: 0;
    font-weight: 600;
  }
  .row input {
    flex: 0 1 7em;
    min-height: var(--target);
  }
  .readout,
  .hint,
  .problem {
    margin: 4px 0 0;
    font-size: var(--text-small);
    line-height: 1.4;
  }
  .readout,
  .hint {
    color: var(--muted);
    white-space: pre-line;
  }
  .problem {
    color: var(--fault);
  }
  @media (forced-colors: active) {
    .range {
      position: static;
      height: 24px;
      opacity: 1;
      pointer-events: auto;
      forced-color-adjust: auto;
    }
  }
  @media (pointer: coarse) {
    .dial {
      width: max(128px, 7rem);
    }
  }
`;
