/** `<lamp-row>`: what kind of lamp the light comes from, and its mains: the ripple the sensors see. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { RoomLamp } from '../../app/playing-light.ts';
import type { Session } from '../../app/session.ts';
import { ieee1789Verdict, lampRipple, MAINS_LAMPS, type MainsLampId } from '../../light/mains-lamp.ts';
import { lampWords } from '../../words/en-scenes.ts';
import { AppElement } from '../app-element.ts';
import '../controls/choice-row.ts';
import { choicesOf } from '../controls/choices.ts';
import type { ChooseDetail } from '../controls/events.ts';
import { fieldStyles, listRow } from '../fields.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';

export class LampRow extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    css`
      :host {
        --label-width: 6.6em;
      }
    `,
  ];

  #lamp!: Selected<Session, RoomLamp>;

  protected override bind(app: Lampnote): void {
    this.#lamp = new Selected(this, app.session, (session) => session.lamp);
  }

  protected override render(): TemplateResult {
    const { kind, mains } = this.#lamp.value;
    const options = Object.keys(MAINS_LAMPS).map((id) => [id, lampWords.lamps[id as MainsLampId]]);
    return html`${listRow(lampWords.lamp, [['', lampWords.none], ...options], kind ?? '', (value) =>
      this.app.light.setLamp({ kind: value === '' ? null : (value as MainsLampId) }),
    )}
      ${kind === null ? '' : this.#ripple(kind, mains)}`;
  }

  #ripple(kind: MainsLampId, mains: RoomLamp['mains']): TemplateResult {
    const { depth, hertz } = lampRipple(kind, mains);
    return html`<choice-row
        legend=${lampWords.mains}
        .choices=${choicesOf(lampWords.mainsHertz)}
        value=${String(mains)}
        @choose=${({ detail }: CustomEvent<ChooseDetail>) =>
          this.app.light.setLamp({ mains: detail.value === '60' ? 60 : 50 })}
      ></choice-row>
      <p class="small">${lampWords.says(depth, hertz, ieee1789Verdict(depth, hertz))}</p>`;
  }
}

customElements.define('lamp-row', LampRow);

declare global {
  interface HTMLElementTagNameMap {
    'lamp-row': LampRow;
  }
}
