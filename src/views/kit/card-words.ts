/** The checks of a build step in sentences. */
import { holeName } from '../../kit/board/plan.ts';
import type { Check } from '../../kit/cards.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { measured } from '../../words/bench.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { netName } from '../../words/kit.ts';

const words = kitViewWords.cards.checks;

export interface SaidChecks {
  readonly sentences: readonly string[];
  /** Volts to read, one each. */
  readonly volts: readonly string[];
}

type Of<K extends Check['kind']> = Extract<Check, { readonly kind: K }>;

export function checkWords(checks: readonly Check[]): SaidChecks {
  const ofKind = <K extends Check['kind']>(kind: K): Of<K>[] =>
    checks.filter((check): check is Of<K> => check.kind === kind);
  const pairs = (some: readonly (Of<'apart'> | Of<'joined'>)[]): string =>
    some.map(({ from, to }) => `${holeName(from)}–${holeName(to)}`).join(', ');
  const [apart, joined] = [ofKind('apart'), ofKind('joined')];
  return {
    sentences: [
      ...(apart.length > 0 ? [words.apart(pairs(apart))] : []),
      ...(joined.length > 0 ? [words.joined(pairs(joined))] : []),
      ...ofKind('ohms').map(({ from, to, least, most }) =>
        words.ohms(holeName(from), holeName(to), formatQuantity(least, 'Ω', 2), formatQuantity(most, 'Ω', 2)),
      ),
      ...ofKind('current').map(({ most }) => words.current(measured(most, 'A'))),
    ],
    volts: ofKind('volts').map(({ at, net, least, most }) =>
      words.volts(holeName(at), netName(net), measured(least, 'V'), measured(most, 'V')),
    ),
  };
}
