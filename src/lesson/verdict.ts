/** What the model says to a step's question, and to the class's answer. Light in lux, other values SI. */
import type { Design } from '../design/design.ts';
import type { Fraction, Lux, VoiceId, Volts } from '../quantity/units.ts';
import type { Bench } from './bench.ts';
import { figureValue } from './figures.ts';
import { factOption, type Question, type Step, startBench } from './lesson.ts';
import type { Answer } from './progress.ts';

/** The node in a light. */
export interface NodePoint {
  readonly lux: Lux;
  readonly volts: Volts;
}

interface Sketched {
  readonly kind: 'sketch';
  readonly railVolts: Volts;
  /** The model's node in the question's lights. */
  readonly points: readonly NodePoint[];
  /** The same closely, from a little darker to a little brighter, to be drawn. */
  readonly curve: readonly NodePoint[];
}

export type Verdict =
  | { readonly kind: 'choice'; readonly right: boolean; readonly option: string }
  /** `off`: guess over truth; null when nothing was guessed. */
  | { readonly kind: 'place'; readonly right: boolean; readonly lux: Lux; readonly off: number | null }
  /** `found`: so many of the points lie near; null when nothing was sketched. */
  | (Sketched & { readonly right: boolean; readonly found: number | null });

type Truth =
  | { readonly kind: 'choice'; readonly option: string }
  | { readonly kind: 'place'; readonly lux: Lux; readonly near: number }
  | (Sketched & { readonly near: Fraction });
const truths = new WeakMap<Step, { readonly design: Design; readonly truth: Truth | null }>();

/** The right answer on the step's own bench, worked out once for a design; null when it has none, or asks nothing. */
function truthOf(step: Step, design: Design): Truth | null {
  const known = truths.get(step);
  if (known?.design === design) return known.truth;
  const truth = step.question === null ? null : found(step.question, startBench(step, design));
  truths.set(step, { design, truth });
  return truth;
}

function found(question: Question, bench: Bench): Truth | null {
  switch (question.kind) {
    case 'choice': {
      const option = factOption(question.fact, bench);
      return option === null ? null : { kind: 'choice', option };
    }
    case 'place': {
      const lux = figureValue(question.answer, bench);
      return lux === null ? null : { kind: 'place', lux, near: question.near };
    }
    case 'sketch': {
      const { voice, at, near } = question;
      const railVolts = figureValue({ of: 'rail volts', voice }, bench) ?? 0;
      const points = nodeIn(at, voice, bench);
      return { kind: 'sketch', railVolts, points, curve: nodeIn(closely(at), voice, bench), near };
    }
  }
}

const nodeIn = (lights: readonly Lux[], voice: VoiceId, bench: Bench): readonly NodePoint[] =>
  lights.map((lux) => ({ lux, volts: figureValue({ of: 'node volts', voice, lux }, bench) ?? 0 }));

const CURVE_POINTS = 60;
/** Half a decade beyond the first and the last. */
const BEYOND = Math.sqrt(10);

function closely(at: readonly Lux[]): readonly Lux[] {
  const [from, to] = [Math.min(...at) / BEYOND, Math.max(...at) * BEYOND];
  return Array.from({ length: CURVE_POINTS + 1 }, (_, i) => from * (to / from) ** (i / CURVE_POINTS));
}

/** What the model says to a step's question, and to the class's answer; null when it asks nothing. */
export function verdictOn(step: Step, base: Design, answer: Answer | null): Verdict | null {
  const truth = truthOf(step, base);
  switch (truth?.kind) {
    case undefined:
      return null;
    case 'choice': {
      const { option } = truth;
      return { kind: 'choice', option, right: answer?.kind === 'choice' && answer.option === option };
    }
    case 'place': {
      const { lux, near } = truth;
      const off = answer?.kind === 'place' ? answer.lux / lux : null;
      return { kind: 'place', lux, off, right: off !== null && Math.max(off, 1 / off) <= near };
    }
    case 'sketch': {
      const { near, ...sketched } = truth;
      const { points, railVolts } = sketched;
      const isNear = (volts: Volts, i: number) => Math.abs(volts - points[i]!.volts) <= near * railVolts;
      const hits = answer?.kind === 'sketch' ? answer.volts.filter(isNear).length : null;
      return { ...sketched, found: hits, right: hits === points.length };
    }
  }
}
