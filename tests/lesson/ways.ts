/** One way through every step: what a class might do, control by control, for each thing the step waits for in turn. */
import type { ControlId, Setting } from '../../src/lesson/controls.ts';

/** A control and what it is set to; `wait` lets the scene or the cell go on by itself. */
export type Move = readonly [ControlId, Setting] | 'wait';

export const WAYS: Readonly<Record<string, readonly Move[]>> = {
  'light-becomes-resistance/look': [['lamp', 20]],
  'light-becomes-resistance/half': [['lamp', 100]],
  'light-becomes-resistance/tenfold': [['lamp', 12]],
  'two-resistors-share/which-way': [['hand A', 1]],
  'two-resistors-share/other-side': [['hand A', 1]],
  'two-resistors-share/half-way': [['fixed resistor', 1100]],
  'two-resistors-share/whole-way': [
    ['lamp', 4],
    ['lamp', 2000],
  ],
  'comparison/scales': [['hand A', 1]],
  'comparison/move-the-other': [['threshold', 0.05]],
  'comparison/turn-it-round': [['lamp', 30]],
  'why-a-shadow-stops-it/listen': ['wait', 'wait'],
  'why-a-shadow-stops-it/which-way': [['hand A', 1]],
  'why-a-shadow-stops-it/where-it-stops': [['lamp', 60]],
  'why-a-shadow-stops-it/where-it-starts': [['lamp', 110]],
  'why-a-shadow-stops-it/what-for': [
    ['lamp', 94.2],
    ['hysteresis', 680e3],
  ],
  'why-a-shadow-stops-it/set-it': [
    ['threshold', 0.05],
    ['threshold', 0.4],
  ],
  'the-first-cycle/longer': [['hand A', 0]],
  'the-first-cycle/where-it-waits': [
    ['hand A', 1],
    ['hand A', 0],
  ],
  'the-first-cycle/how-much': [['pitch A', 0.95]],
  'tone-and-trimmer/turn': [['pitch A', 0.8]],
  'tone-and-trimmer/light-and-pitch': [['lamp', 150]],
  'tone-and-trimmer/capacitor': [['capacitor A', 41e-9]],
  'tone-and-trimmer/a-fifth': [['pitch A', 0.51]],
  'duty-and-timbre/shares': [['charge resistor A', 30e3]],
  'duty-and-timbre/colour': [['charge resistor A', 39e3]],
  'duty-and-timbre/pitch-too': [['charge resistor A', 39e3]],
  'hysteresis-and-chatter/without': [['lamp', 94.2]],
  'hysteresis-and-chatter/with': [['hysteresis', 680e3]],
  'hysteresis-and-chatter/two-places': [['lamp', 110]],
  'hysteresis-and-chatter/too-much': [
    ['lamp', 20],
    ['lamp', 200],
  ],
  'lamp-ripple/hear-the-lamp': [['mains lamp', 'led-poor']],
  'lamp-ripple/how-often': [['mains lamp', 'led-smooth']],
  'lamp-ripple/cure': [['hysteresis', 150e3]],
  'thirty-kits/one-mark': [['cell', 20e3]],
  'thirty-kits/its-own-turn': [['threshold', 0.4]],
  'thirty-kits/and-its-pitch': [['pitch A', 0.475]],
  'this-very-room/on-paper': [['threshold', 0.4]],
  'this-very-room/look-around': [['hand A', 1]],
  'this-very-room/just-on': [['just on', null]],
  'this-very-room/does-it-hold': [
    ['hand A', 1],
    ['hand A', 0],
  ],
};
