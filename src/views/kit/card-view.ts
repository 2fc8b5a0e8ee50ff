/** One build card: what to do, what it takes, the pictures from both sides, and where to stop and test. */
import { css, html, type TemplateResult } from 'lit';
import { type BoardPlan, holeName } from '../../kit/board/plan.ts';
import type { Card } from '../../kit/cards.ts';
import { bandsOf } from '../../kit/codes.ts';
import { measured } from '../../words/bench.ts';
import { kitViewWords, millimetres } from '../../words/en-kit.ts';
import { kitWords, partName } from '../../words/kit.ts';
import '../caution-note.ts';
import type { Standing } from '../plots/board-picture.ts';
import { checkWords } from './card-words.ts';
import { holesWords, stanceWords, valueWords } from './part-words.ts';
import { resistorWithWords } from './resistor-picture.ts';
import { wordTable } from './word-table.ts';

const words = kitViewWords.cards;

/** What this step adds stands out, what comes later is not drawn yet. */
export function standingAt(cards: readonly Card[], place: number): Standing {
  const { id, refs } = cards[place]!;
  const later = new Set(cards.slice(place + 1).flatMap((card) => (card.id === 'chips' ? [] : card.refs)));
  const hidden = id === 'sort' ? new Set([...refs, ...later]) : later;
  const own = new Set(id === 'sort' ? [] : refs);
  const cuts = cards.findIndex((card) => card.id === 'cuts') > place ? 'not made' : id === 'cuts';
  return { parts: own, links: own, cuts, hidden: { parts: hidden, links: hidden } };
}

/** Whether a card's cautions are others than those of the card before it: on paper they need not be said again. */
export const isNewCaution = (cards: readonly Card[], place: number): boolean =>
  cards[place - 1]?.cautions.join() !== cards[place]!.cautions.join();

/** The text of a card, without its pictures and its parts. */
export function cardText(card: Card, hasCautions = true): TemplateResult {
  const { sentences, volts } = checkWords(card.checks);
  return html`<p>${words.tells[card.id]}</p>
    ${card.currentLimit === null ? '' : html`<p><strong>${words.limit(measured(card.currentLimit, 'A'))}</strong></p>`}
    <p class="small">${words.minutes(card.minutes)}</p>
    ${hasCautions ? cautions(card) : ''}
    ${
      sentences.length + volts.length === 0
        ? ''
        : html`<h4>${words.stop}</h4>
            ${sentences.map((sentence) => html`<p class="stop">${sentence}</p>`)}
            ${
              volts.length === 0
                ? ''
                : html`<p class="stop">${words.checks.against}</p>
                    <ul class="stop">
                      ${volts.map((one) => html`<li>${one}</li>`)}
                    </ul>`
            }`
    }`;
}

const cautions = ({ cautions: places }: Card): TemplateResult | string =>
  places.length === 0 ? '' : html`<caution-note .places=${places}></caution-note>`;

/** What a step takes, and where it goes. */
export function cardNeeds(card: Card, plan: BoardPlan): TemplateResult | string {
  switch (card.id) {
    case 'sort':
    case 'first power':
    case 'tune':
      return '';
    case 'cuts':
      return html`<p class="holes">${plan.cuts.map(holeName).join(' · ')}</p>`;
    case 'links':
      return wordTable(
        kitWords.linkList,
        kitViewWords.board.linkHeads.slice(0, 4),
        plan.links.map(({ id, from, to, millimetres: length }) => [
          id,
          holeName(from),
          holeName(to),
          millimetres(length),
        ]),
      );
    case 'flat':
    case 'sockets':
    case 'small':
    case 'trimmers':
    case 'tall':
    case 'pins':
    case 'leads':
    case 'chips':
      return partTable(card, plan);
  }
}

function partTable(card: Card, plan: BoardPlan): TemplateResult {
  const placed = plan.parts.filter(({ part }) => card.refs.includes(part.ref));
  return wordTable(
    words.needs,
    words.partHeads,
    placed.map((one) => {
      const { body, ref } = one.part;
      const bands = body.kind === 'resistor' ? bandsOf(body.ohms, 5, 0.01) : null;
      const value = bands?.ok
        ? html`${valueWords(body)}<br />${resistorWithWords(bands.bands)}`
        : valueWords(body);
      const holes = body.kind === 'chip' ? '' : holesWords(one);
      return [partName(ref), value, holes, stanceWords(one)];
    }),
  );
}

export const cardStyles = css`
  .holes {
    font-weight: 600;
  }
  p.stop,
  ul.stop {
    padding-left: 10px;
    border-left: var(--stroke-data) solid var(--accent);
  }
  ul.stop {
    margin: 0 0 var(--unit);
    list-style-position: inside;
    columns: 2 14em;
  }
  h4 {
    margin: 10px 0 4px;
  }
  caution-note {
    margin: 6px 0;
  }
`;
