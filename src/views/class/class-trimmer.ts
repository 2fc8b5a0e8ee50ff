/** A trimmer that a class may turn: the threshold, or the pitch of a voice. */
import { html, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import { type Design, trimmersOf } from '../../design/design.ts';
import { TRIMMERS } from '../../parts/trimmers.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { amountIn } from '../../words/amounts.ts';
import { words } from '../../words/en.ts';
import type { Language } from '../../words/spoken.ts';
import type { TurnDetail } from '../controls/events.ts';
import '../controls/trimmer-control.ts';
import { reader } from '../edits.ts';
import { PAGE } from './lesson-words.ts';

const readShare = reader('share', { min: 0, max: 1 });

export interface ClassTrimmer {
  /** Whose pitch it is; null = the threshold. */
  readonly voice: VoiceId | null;
  readonly label: string;
  readonly design: Design;
  readonly language: Language;
  readonly turn: (turned: TurnDetail) => void;
}

export function classTrimmer({ voice, label, design, language, turn }: ClassTrimmer): TemplateResult {
  const { controls: says } = PAGE[language];
  const owner = voice ?? trimmersOf(design)[0]!;
  const part = voice === null ? design.threshold.trimmers[owner].trimmer : design.voices[owner].trimmer;
  const turned = amountIn(language, { kind: 'share', value: part.rotation });
  const { referenceVolts } = derivedInstrument(design).voices[owner];
  const readout =
    voice === null
      ? says.reference(amountIn(language, { kind: 'volts', value: referenceVolts }), turned)
      : says.turned(turned);
  return html`<trimmer-control
    .voice=${voice}
    .label=${label}
    .rotation=${part.rotation}
    .turns=${TRIMMERS[part.part].turns}
    .text=${turned}
    .parse=${readShare}
    .valuetext=${readout}
    .readout=${readout}
    .fieldLabel=${words.voices.box(label)}
    .lessLabel=${words.voices.oneLess(label)}
    .moreLabel=${words.voices.oneMore(label)}
    scale-start="0"
    scale-end="100 %"
    @turn=${({ detail }: CustomEvent<TurnDetail>) => turn(detail)}
  ></trimmer-control>`;
}
