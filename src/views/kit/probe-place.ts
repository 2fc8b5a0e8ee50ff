/** Where a reading is taken on the board: the hole of its test pin, else of any lead on its net. */
import { jackNet, testNets } from '../../circuit/network/design-netlist.ts';
import type { Design } from '../../design/design.ts';
import type { Hole } from '../../kit/board/extract.ts';
import { type BoardPlan, holeName, testPointHoles } from '../../kit/board/plan.ts';
import { jointsOf } from '../../kit/joints.ts';
import type { Reading } from '../../kit/observe.ts';
import type { SlipValue } from '../../kit/slip-values.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { type SlipPoint, slipPointWords } from '../../words/bench.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { leadName } from '../../words/kit.ts';

const words = kitViewWords.faults;

export interface ProbePlace {
  readonly at: Hole;
  readonly text: string;
}

/** Null where the reading is no point of the board, or the board has no such net. */
export function probePlace({ net }: Pick<Reading, 'net'>, plan: BoardPlan): ProbePlace | null {
  const point = testPointHoles(plan).find((one) => one.net === net);
  if (point) return { at: point.at, text: words.inHole(point.id, holeName(point.at)) };
  const joint = jointsOf(plan).find((one) => one.kind === 'lead' && one.net === net && /^U/.test(one.ref));
  if (joint?.kind !== 'lead') return null;
  return {
    at: joint.at,
    text: words.inHole(leadName(joint.ref, joint.lead, joint.isOnly), holeName(joint.at)),
  };
}

/** `hole L13`: where a net's test pin stands. */
export function netHole(net: string, plan: BoardPlan): string {
  const place = probePlace({ net }, plan);
  return place === null ? '' : kitViewWords.slip.hole(holeName(place.at));
}

/** The hole of a point of the slip: `hole B8`, `U1 pin 3 in hole P12`; '' where it is no point of the board. */
export function slipHole(
  design: Design,
  { point, voice }: Pick<SlipValue, 'point' | 'voice'>,
  plan: BoardPlan,
): string {
  const place = probePlace({ net: slipNet(design, point, voice) }, plan);
  if (place === null) return '';
  return point === 'control' ? place.text : kitViewWords.slip.hole(holeName(place.at));
}

function slipNet(design: Design, point: SlipPoint, voice: VoiceId | null): string | null {
  const nets = testNets(design, voice ?? 'A');
  switch (point) {
    case 'rail':
    case 'mix':
      return point;
    case 'node':
    case 'reference':
    case 'gate':
    case 'capacitor':
    case 'control':
    case 'out':
      return nets[point];
    case 'pitch at low end':
    case 'pitch at high end':
    case 'pitch at target':
      return nets.out;
    case 'jack ac':
    case 'jack dc':
      return jackNet(design);
    case 'current':
      return null;
  }
}

/** `TP4 gate A, sensor A shaded`. */
export function readingWords({ point, voice, light }: Reading): string {
  if (point === 'plus') return `${words.plus(voice!)}, ${words.light[light]}`;
  return slipPointWords(point, voice, light);
}
