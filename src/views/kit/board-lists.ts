/** The lists behind the board plan: cuts, links, parts in their holes, holes to widen. */
import { html, type TemplateResult } from 'lit';
import { type BoardPlan, holeName } from '../../kit/board/plan.ts';
import { solderingOrder } from '../../kit/joints.ts';
import { kitViewWords, millimetres } from '../../words/en-kit.ts';
import { kitWords, leadName, netName, partName } from '../../words/kit.ts';
import { holesWords, stanceWords, valueWords } from './part-words.ts';
import { wordTable } from './word-table.ts';

const words = kitViewWords.board;

export function boardLists(plan: BoardPlan): TemplateResult {
  return html`<div class="columns">
      <div>
        <h3>${words.cutList}</h3>
    ${wordTable(
      words.cutList,
      words.cutHeads,
      plan.cuts.map((cut) => [
        holeName(cut),
        cut.under === null
          ? kitWords.betweenNets(netName(cut.nets[0]), netName(cut.nets[1]))
          : `${kitWords.underChip(cut.under)}, ${kitWords.betweenNets(netName(cut.nets[0]), netName(cut.nets[1]))}`,
      ]),
    )}
      </div>
      <div>
        <h3>${words.linkList}</h3>
    ${wordTable(
      words.linkList,
      words.linkHeads,
      plan.links.map(({ id, from, to, millimetres: length, net }) => [
        id,
        holeName(from),
        holeName(to),
        kitWords.linkLength(millimetres(length)),
        netName(net),
      ]),
    )}
    ${
      plan.widened.length === 0
        ? ''
        : html`<h3>${words.widenList}</h3>
            ${wordTable(
              words.widenList,
              words.widenHeads,
              plan.widened.map(({ at, ref, lead, millimetres: width }) => [
                holeName(at),
                leadName(ref, lead, false),
                millimetres(width),
              ]),
            )}`
    }
      </div>
    </div>
    <h3>${words.partList}</h3>
    ${wordTable(
      words.partList,
      words.partHeads,
      solderingOrder(plan).map((placed) => [
        partName(placed.part.ref),
        valueWords(placed.part.body),
        holesWords(placed),
        stanceWords(placed),
      ]),
    )}`;
}
