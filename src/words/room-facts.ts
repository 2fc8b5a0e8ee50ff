/**
 * What can be said of a room, as facts in SI units beside the words for them: complaints, reasons of an hour, the
 * steps of the setting-up card, what the assistant answers. Hours are hours of the clock there.
 */

type Voice = 'A' | 'B';

/** Something about the room or its log that is missing or cannot be. Everything else is still worked out. */
export type RoomComplaint =
  | { readonly kind: 'no readings' }
  | { readonly kind: 'one sensor read'; readonly missing: Voice }
  | { readonly kind: 'readings guessed' }
  | {
      readonly kind: 'shade brighter';
      readonly hour: number;
      readonly voice: Voice;
      readonly lit: number;
      readonly shaded: number;
    }
  | {
      readonly kind: 'dark brighter';
      readonly hour: number;
      readonly voice: Voice;
      readonly lit: number;
      readonly dark: number;
    }
  | { readonly kind: 'place unknown' }
  | { readonly kind: 'polar day' }
  | { readonly kind: 'polar night' }
  | { readonly kind: 'sky not measured' }
  | { readonly kind: 'sky measured in the dark'; readonly hour: number }
  | {
      readonly kind: 'daylight above reading';
      readonly hour: number;
      readonly voice: Voice;
      readonly modelled: number;
      readonly read: number;
    }
  | { readonly kind: 'log gap'; readonly fromHour: number; readonly toHour: number }
  | { readonly kind: 'log at night only'; readonly mostLux: number }
  | { readonly kind: 'log clipped'; readonly voice: Voice; readonly lux: number; readonly share: number }
  | { readonly kind: 'log covers part'; readonly share: number }
  | { readonly kind: 'log empty' };

/** Why a voice does not gate rightly at an hour. */
export type HourReason =
  /** Too little light even with nothing in the way: the voice stays as in shade. */
  | { readonly kind: 'too dark'; readonly voice: Voice; readonly lux: number; readonly neededLux: number }
  /** So much light that the event's shadow still counts as light. */
  | { readonly kind: 'too bright'; readonly voice: Voice; readonly lux: number; readonly mostLux: number }
  | { readonly kind: 'not recorded' };

/** What bounds a window of settings. */
export type EdgeReason =
  /** Hour null: at every hour alike. */
  | { readonly kind: 'lit'; readonly voice: Voice; readonly lux: number; readonly hour: number | null }
  | { readonly kind: 'shade'; readonly voice: Voice; readonly lux: number; readonly hour: number | null }
  | { readonly kind: 'end stop' }
  | { readonly kind: 'common-mode range'; readonly limitVolts: number };

/** What would help where no setting does. */
export type Remedy =
  | { readonly kind: 'other divider'; readonly ohms: number; readonly cell: 'top' | 'bottom' }
  | { readonly kind: 'own trimmers' }
  | { readonly kind: 'reset in between'; readonly hours: readonly number[] }
  | { readonly kind: 'local lamp'; readonly lux: number; readonly candela: number; readonly metres: number }
  | {
      readonly kind: 'tube';
      readonly boreMetres: number;
      readonly depthMetres: number;
      readonly left: number;
    }
  | { readonly kind: 'less hysteresis'; readonly ohms: number }
  | { readonly kind: 'deeper shadow'; readonly left: number; readonly neededLeft: number };

/** One numbered step of the setting-up card. `trimmer` A also stands for a shared one. */
export type SettingStep =
  | {
      readonly kind: 'wait for the light';
      /** Null: the light is the same at any. */
      readonly hour: number | null;
      readonly lux: Readonly<Record<Voice, number>>;
    }
  | { readonly kind: 'check the supply'; readonly volts: number }
  | { readonly kind: 'read the node'; readonly voice: Voice; readonly lit: number; readonly shade: number }
  | {
      readonly kind: 'turn to volts';
      readonly trimmer: Voice;
      readonly shared: boolean;
      readonly volts: number;
      readonly fromVolts: number;
      readonly toVolts: number;
      readonly rotation: number;
      readonly turns: number;
      readonly turnsOfPart: number;
    }
  /** Without a meter: turn to where it just sounds (or just stops) in this light, then back by so much. */
  | {
      readonly kind: 'just on';
      readonly trimmer: Voice;
      readonly shared: boolean;
      readonly soundsInLight: boolean;
      readonly rotation: number;
      readonly volts: number;
      readonly thenTurns: number;
      readonly turnsOfPart: number;
    }
  | { readonly kind: 'try the event'; readonly voice: Voice; readonly sounds: boolean }
  | { readonly kind: 'will not reach'; readonly trimmer: Voice; readonly remedies: readonly Remedy[] }
  | { readonly kind: 'watch'; readonly minutes: number; readonly phantomsAllowed: number }
  | {
      readonly kind: 'set again';
      readonly hour: number;
      readonly trimmer: Voice;
      readonly shared: boolean;
      readonly volts: number;
    };

/** What the assistant says to a volt reading at the reference. */
export type MeterAnswer =
  | {
      readonly kind: 'leave it';
      readonly volts: number;
      readonly litMargin: number;
      readonly shadeMargin: number;
    }
  | {
      readonly kind: 'turn';
      readonly way: 'up' | 'down';
      readonly volts: number;
      readonly toVolts: number;
      readonly turns: number;
      readonly turnsOfPart: number;
      /** Already inside the window, but nearer to an edge than need be. */
      readonly wouldDo: boolean;
    }
  /** No setting of this trimmer reads that: the wiring, the rail, or the meter. */
  | {
      readonly kind: 'cannot be';
      readonly volts: number;
      readonly leastVolts: number;
      readonly mostVolts: number;
    }
  | { readonly kind: 'no window'; readonly volts: number };
