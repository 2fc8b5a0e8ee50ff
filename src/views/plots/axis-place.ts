/** From a place on the light axis back to its light. */
import { scaleLog } from 'd3-scale';
import type { Lux } from '../../quantity/units.ts';
import { BRIGHTEST, DARKEST, EDGE } from './light-marks.ts';

/** Light at `x` px from the left of a drawing `width` px wide. */
export function luxAtPlace(x: number, width: number): Lux {
  return scaleLog()
    .domain([DARKEST, BRIGHTEST])
    .range([EDGE, width - EDGE])
    .clamp(true)
    .invert(x);
}
