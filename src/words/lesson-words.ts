/** The shape of a lesson's words. Every language has the same lessons, steps and options; a missing one does not compile. */

export interface StepWords {
  readonly title: string;
  /** Read first: what is on the bench, and one thing about it. `{name}` is filled in by the model. */
  readonly text: string;
  /** Asked before anything is tried; null where the step asks nothing. */
  readonly question: string | null;
  /** Answers by their name; none for a place on the light axis. */
  readonly options: Readonly<Record<string, string>>;
  /** What to do now. */
  readonly task: string;
  /** What came out, and why. */
  readonly reveal: string;
  /** The same as a formula, for those who read them; null where there is none. */
  readonly algebra: string | null;
}

export interface LessonText {
  readonly title: string;
  /** What the class can say afterwards. */
  readonly aim: string;
  /** Ideas to expect, each with what answers it. */
  readonly wrongIdeas: readonly string[];
  /** For whoever teaches. */
  readonly notes: readonly string[];
  readonly steps: Readonly<Record<string, StepWords>>;
}

export type LessonTexts = Readonly<Record<string, LessonText>>;

/** The same in another language: every text again, none left out, none added. */
export type Translated<T> = T extends string
  ? string
  : T extends null
    ? null
    : { readonly [K in keyof T]: Translated<T[K]> };
