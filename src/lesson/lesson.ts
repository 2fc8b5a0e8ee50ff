/**
 * A lesson is data: how long it takes, which cautions belong to it, and its steps. A step says what lies on the
 * bench, what may be touched, which part of the picture is seen, what is asked beforehand, and which behaviour of the
 * model ends it. Its words are in `words/` under the lesson's and the step's id. Light in lux, other values SI.
 */
import type { Design } from '../design/design.ts';
import { SCENES, type SceneKind } from '../light/scene.ts';
import type { Fraction, Lux, VoiceId } from '../quantity/units.ts';
import type { Amount } from '../words/amounts.ts';
import type { CautionPlace } from '../words/cautions.ts';
import { type Bench, DEFAULT_LIGHT } from './bench.ts';
import type { ControlId } from './controls.ts';
import { amountsOf, type Change, changed, type Figure, figureValue } from './figures.ts';
import type { Watch } from './watch.ts';

export const LESSON_FORMAT = 'lampnote-lesson';
export const LESSON_VERSION = 1;

/** The one picture, left to right. */
export const STAGES = ['lux', 'ohms', 'volts', 'compare', 'gate', 'tone'] as const;
export type StageId = (typeof STAGES)[number];

/** Slowed is slowed a thousand times, or more where the tone is so high that it would still flash. */
export const STAGE_MODES = ['shown', 'hidden', 'frozen', 'slowed'] as const;
export type StageMode = (typeof STAGE_MODES)[number];

export const ALL_SHOWN: Readonly<Record<StageId, StageMode>> = {
  lux: 'shown',
  ohms: 'shown',
  volts: 'shown',
  compare: 'shown',
  gate: 'shown',
  tone: 'shown',
};

/** What has to be said before a step begins: its sound flickers although nothing on the screen does; its camera sees. */
export const NOTICES = ['flickers in the ear', 'camera'] as const;
export type NoticeId = (typeof NOTICES)[number];

/** A right answer by the model: the figure, read from the first band it is below (null = any). */
export interface Fact {
  readonly figure: Figure;
  readonly bands: readonly { readonly option: string; readonly below: number | null }[];
}

export type Question =
  | { readonly kind: 'choice'; readonly options: readonly string[]; readonly fact: Fact }
  /** A place on the light axis; `near` is the factor either way that counts as found. */
  | { readonly kind: 'place'; readonly voice: VoiceId; readonly answer: Figure; readonly near: number }
  /** The node over the light, sketched by its volts in some lights; `near` is the share of the supply that counts as found. */
  | {
      readonly kind: 'sketch';
      readonly voice: VoiceId;
      readonly at: readonly Lux[];
      readonly near: Fraction;
    };

export interface Setup {
  readonly source: 'stage' | 'scene' | 'camera';
  /** With the scene as the source. */
  readonly scene: SceneKind | null;
  readonly changes: readonly Change[];
}

export interface Step {
  readonly id: string;
  readonly setup: Setup;
  readonly controls: readonly ControlId[];
  readonly voices: 'A' | 'both';
  readonly stages: Readonly<Record<StageId, StageMode>>;
  readonly notices: readonly NoticeId[];
  readonly question: Question | null;
  /** null: read and go on. */
  readonly watch: Watch | null;
  /** Numbers its words may fill in, by name. */
  readonly figures: Readonly<Record<string, Figure>>;
}

export interface Lesson {
  readonly format: typeof LESSON_FORMAT;
  readonly version: typeof LESSON_VERSION;
  readonly id: string;
  /** Place in the line of lessons, from 1. */
  readonly order: number;
  readonly minutes: number;
  readonly cautions: readonly CautionPlace[];
  readonly steps: readonly Step[];
}

/** The bench as a step finds it, made from a design: always the same, whatever was done before. */
export function startBench(step: Step, design: Design): Bench {
  const { source, scene, changes } = step.setup;
  const light = { ...DEFAULT_LIGHT, source, scene: SCENES[scene ?? DEFAULT_LIGHT.scene.kind] };
  return changed({ design, light }, changes);
}

type Amounts = Readonly<Record<string, Amount>>;
const told = new WeakMap<Step, { readonly design: Design; readonly amounts: Amounts }>();

/**
 * The numbers of a step's words, on the bench as it is set up. Some take a run of the gate or thirty kits to find, so
 * they are worked out once for a design.
 */
export function amountsFor(step: Step, design: Design): Amounts {
  const known = told.get(step);
  if (known?.design === design) return known.amounts;
  const amounts = amountsOf(step.figures, startBench(step, design));
  told.set(step, { design, amounts });
  return amounts;
}

/** The option the model says is right; null when it has no answer on this bench. */
export function factOption({ figure, bands }: Fact, bench: Bench): string | null {
  const value = figureValue(figure, bench);
  if (value === null) return null;
  return bands.find(({ below }) => below === null || value < below)?.option ?? null;
}
