/** The presenter's bar beneath a lesson: back and afresh, free play, sound, projector, notes, formulas, and the way out. */
import { html, type TemplateResult } from 'lit';
import type { ClassDesk } from '../../app/class-desk.ts';
import type { Session } from '../../app/session.ts';
import type { SoundState } from '../../app/sound-desk.ts';
import type { Progress } from '../../lesson/progress.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';
import '../controls/choice-row.ts';
import { choicesOf } from '../controls/choices.ts';
import type { ChooseDetail } from '../controls/events.ts';
import { PAGE } from './lesson-words.ts';
import { keyOf, type PresenterAct } from './presenter-keys.ts';

export interface PresenterBar {
  readonly progress: Progress;
  readonly session: Session;
  readonly sound: SoundState['kind'];
  /** Formulas are shown as algebra. */
  readonly algebra: boolean;
  readonly desk: ClassDesk;
  readonly act: (act: PresenterAct) => void;
  readonly write: (algebra: boolean) => void;
  readonly printNotes: () => void;
}

export function presenterBar(bar: PresenterBar): TemplateResult {
  const { progress, session, sound, algebra, desk, act } = bar;
  const { language, look, presenterKeys, soundByLink } = session;
  const { go } = CLASS_WORDS[language];
  const { present: says, depth, depths } = PAGE[language];
  const free = progress.mode === 'free';
  const key = (name: string) => (presenterKeys ? keyOf(name) : '');
  return html`<div class="bar">
    <div class="row">
      <button type="button" ?disabled=${progress.step === 0 && !free && !progress.finished} @click=${() => desk.back()}>
        ${go.back}${key('←')}
      </button>
      <button type="button" @click=${() => desk.resetBench()}>${go.reset}${key('R')}</button>
      ${free ? '' : html`<button type="button" @click=${() => act('free')}>${go.free}${key('F')}</button>`}
      <span class="grow"></span>
      <button type="button" ?disabled=${soundByLink === 'off'} @click=${() => act('sound')}>
        ${sound === 'off' ? says.soundOn : says.soundOff}${key('S')}
      </button>
      <button type="button" aria-pressed=${look === 'projector'} @click=${() => act('projector')}>
        ${look === 'projector' ? says.projectorEnd : says.projector}${key('P')}
      </button>
      <button type="button" @click=${() => act('notes')}>${says.notes}${key('N')}</button>
    </div>
    <div class="row">
      <choice-row
        legend=${depth}
        .choices=${choicesOf(depths)}
        value=${algebra ? 'algebra' : 'plain'}
        @choose=${({ detail }: CustomEvent<ChooseDetail>) => bar.write(detail.value === 'algebra')}
      ></choice-row>
      <span class="grow"></span>
      <button type="button" @click=${bar.printNotes}>${says.printNotes}</button>
      <button type="button" @click=${() => desk.restart()}>${go.restart}</button>
      <button type="button" @click=${() => desk.leave()}>${go.leave}</button>
    </div>
  </div>`;
}
