/** The few rules uPlot's elements need, and the lines above and below the live traces. */
import { css } from 'lit';

export const traceStyles = css`
  .uplot,
  .u-wrap {
    position: relative;
    user-select: none;
  }
  .u-over,
  .u-under,
  .u-axis {
    position: absolute;
  }
  .u-over,
  .u-under,
  .u-axis,
  .u-select {
    pointer-events: none;
  }
  .uplot canvas {
    display: block;
    position: relative;
    width: 100%;
    height: 100%;
  }
  .drawing {
    min-height: 15em;
  }
  .top {
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: var(--unit);
    /* One line is always kept free, so that words coming and going move nothing. */
    min-height: var(--target);
  }
  .words {
    margin: 0;
    max-width: none;
  }
  .top button {
    flex: none;
    font-size: var(--text-small);
    padding: 2px 10px;
  }
  .cursor {
    padding-left: calc(var(--trace-left, 3em) - 7px);
    padding-right: calc(var(--trace-right, 1.5em) - 7px);
  }
  .cursor input {
    appearance: none;
    display: block;
    width: 100%;
    height: 24px;
    margin: 0;
    background: none;
    cursor: pointer;
    touch-action: pan-y;
  }
  .cursor input::-webkit-slider-runnable-track {
    height: 1px;
    background: var(--control-line);
  }
  .cursor input::-moz-range-track {
    height: 1px;
    background: var(--control-line);
  }
  .cursor input::-webkit-slider-thumb {
    appearance: none;
    width: 14px;
    height: 14px;
    margin-top: -7px;
    border: 2px solid var(--ink);
    border-radius: var(--radius);
    background: var(--surface);
  }
  .cursor input::-moz-range-thumb {
    box-sizing: border-box;
    width: 14px;
    height: 14px;
    border: 2px solid var(--ink);
    border-radius: var(--radius);
    background: var(--surface);
  }
  .cursor input:focus-visible {
    outline-offset: 0;
  }
  @media (pointer: coarse) {
    .cursor input {
      height: 44px;
    }
  }
  @media (forced-colors: active) {
    .cursor input {
      appearance: auto;
    }
  }
`;
