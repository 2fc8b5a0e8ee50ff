/** `<connections-panel>`: every net by chip pin and part lead; parts; test pins. */
import { html, type TemplateResult } from 'lit';
import { connectionList } from '../../app/kit-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Design } from '../../design/design.ts';
import type { Connections, Net } from '../../kit/parts.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { kitWords, leadName, netName, partName, ROLE } from '../../words/kit.ts';
import { AppElement } from '../app-element.ts';
import { offerFile } from '../files.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { kitStyles } from './kit-styles.ts';
import { valueWords } from './part-words.ts';
import { wordTable } from './word-table.ts';

const words = kitViewWords.connections;

export class ConnectionsPanel extends AppElement {
  static override styles = [common, kitStyles];

  #design!: Selected<Design, Design>;

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design);
  }

  protected override render(): TemplateResult {
    const list = connectionList(this.#design.value);
    const joints = list.nets.flatMap((net) => net.joins).length;
    return html`<section aria-labelledby="connections">
      <div class="title">
        <h2 id="connections">${kitWords.connectionList}</h2>
        <p class="muted">${words.count(list.nets.length, joints, list.parts.length)}</p>
      </div>
      <div class="tools">
        <button type="button" class="primary" @click=${this.#save}>${words.save}</button>
        <button type="button" @click=${() => window.print()}>${kitViewWords.print}</button>
      </div>
      <h3>${words.nets}</h3>
      ${wordTable(words.nets, words.netHeads, netRows(list))}
      <h3>${words.parts}</h3>
      ${wordTable(words.parts, words.partHeads, partRows(list))}
      <h3>${words.points}</h3>
      ${wordTable(words.points, words.pointHeads, pointRows(list))}
    </section>`;
  }

  readonly #save = (): void => {
    const design = this.#design.value;
    const list = connectionList(design);
    const tables = [
      [words.nets, netRows(list)],
      [words.parts, partRows(list)],
      [words.points, pointRows(list)],
    ] as const;
    const text = tables
      .map(([head, rows]) => `${head}\n${rows.map((row) => row.join('\t')).join('\n')}\n`)
      .join('\n');
    offerFile(words.saveName(design.name), 'txt', 'text/plain', `${design.name}\n\n${text}`);
  };
}

function netRows(list: Connections): readonly (readonly string[])[] {
  return list.nets.map((net) => [netName(net.id), joinsOf(net, list)]);
}

function joinsOf({ joins }: Net, { parts }: Connections): string {
  const single = new Set(parts.filter(({ leads }) => leads.length === 1).map(({ ref }) => ref));
  return joins.map(({ ref, lead }) => leadName(ref, lead, single.has(ref))).join(' · ');
}

function partRows({ parts }: Connections): readonly (readonly string[])[] {
  return parts
    .filter(({ body }) => body.kind !== 'test pin')
    .map(({ ref, body, role, voice, leads }) => [
      partName(ref),
      valueWords(body),
      voice === null ? ROLE[role] : `${ROLE[role]}, ${kitViewWords.voice(voice)}`,
      leads
        .map(({ name, net }) => `${leadName('', name, false).trim().replace(/^\./, '')} ${netName(net)}`)
        .join(' · '),
    ]);
}

function pointRows({ testPoints }: Connections): readonly (readonly string[])[] {
  return testPoints.map(({ id, net }) => [id, netName(net)]);
}

customElements.define('connections-panel', ConnectionsPanel);

declare global {
  interface HTMLElementTagNameMap {
    'connections-panel': ConnectionsPanel;
  }
}
