/**
 * The order a board is built in, so that each step can be checked before the next hides it: cuts and links, then low
 * parts, sockets, taller parts, leads and jack, chips last (common practice). Joints are numbered through in that
 * order, as they lie on the copper side.
 */
import { STEP_ORDER, type StepId } from '../design/workshop.ts';
import type { Hole } from './board/extract.ts';
import type { BoardPlan, PlacedPart } from './board/plan.ts';

export interface Joint {
  /** From 1, in soldering order. */
  readonly number: number;
  readonly at: Hole;
  /** Reference of the part or link soldered there. */
  readonly ref: string;
}

export interface BuildStep {
  readonly id: StepId;
  /** Parts, links or cuts of the step, as references; cuts by their hole's place in the cut list: `X1` … */
  readonly refs: readonly string[];
  /** Holes the picture of the step marks. */
  readonly holes: readonly Hole[];
  readonly joints: readonly Joint[];
}

/** The step a part is soldered in; chips are pushed in later, their sockets are soldered. */
function stepOf({ part, stance }: PlacedPart): StepId {
  switch (part.body.kind) {
    case 'chip':
      return 'sockets';
    case 'resistor':
    case 'diode':
      return stance === 'flat' ? 'flat' : 'small';
    case 'capacitor':
      return part.body.type === 'ceramic' || part.role === 'timing' ? 'small' : 'tall';
    case 'trimmer':
      return 'trimmers';
    case 'test pin':
      return 'pins';
    case 'cell':
    case 'supply':
    case 'control lead':
    case 'jack':
      return 'leads';
  }
}

/** All steps of a plan, in order, but those that take nothing; every joint of the board is in exactly one. */
export function buildSteps(plan: BoardPlan): readonly BuildStep[] {
  let number = 0;
  const jointsOf = (all: readonly { ref: string; at: Hole }[]): Joint[] =>
    [...all]
      .sort((a, b) => a.at.strip - b.at.strip || a.at.hole - b.at.hole)
      .map((each) => ({ ...each, number: ++number }));
  const soldered = (id: StepId): BuildStep => {
    const parts = plan.parts.filter((placed) => stepOf(placed) === id);
    const joints = jointsOf(
      parts.flatMap(({ part, leads }) => leads.map(({ at }) => ({ ref: part.ref, at }))),
    );
    return { id, refs: parts.map(({ part }) => part.ref), holes: joints.map(({ at }) => at), joints };
  };
  const stepFor = (id: StepId): BuildStep => {
    switch (id) {
      case 'sort':
        return { id, refs: plan.parts.map(({ part }) => part.ref), holes: [], joints: [] };
      case 'cuts':
        return { id, refs: plan.cuts.map((_, i) => `X${i + 1}`), holes: plan.cuts, joints: [] };
      case 'links': {
        const joints = jointsOf(
          plan.links.flatMap(({ id: ref, from, to }) => [
            { ref, at: from },
            { ref, at: to },
          ]),
        );
        return { id, refs: plan.links.map((link) => link.id), holes: joints.map(({ at }) => at), joints };
      }
      case 'chips': {
        const chips = plan.parts.filter(({ stance }) => stance === 'chip');
        const holes = chips.flatMap(({ leads }) => leads.map(({ at }) => at));
        return { id, refs: chips.map(({ part }) => part.ref), holes, joints: [] };
      }
      case 'first power':
      case 'tune':
        return { id, refs: [], holes: [], joints: [] };
      case 'flat':
      case 'sockets':
      case 'small':
      case 'trimmers':
      case 'tall':
      case 'pins':
      case 'leads':
        return soldered(id);
    }
  };
  const takesNothing = ({ refs }: BuildStep): boolean => refs.length === 0;
  return STEP_ORDER.map(stepFor).filter(
    (step) => step.id === 'first power' || step.id === 'tune' || !takesNothing(step),
  );
}
