/**
 * Whole documents by a seed, drawn from the very rules a file is read by: whatever the decoder takes can come, pitch,
 * room and batch included, and a new entry comes with its rule.
 */
import type * as v from 'valibot';
import { designSchema } from '../../src/design/decode.ts';
import type { Design } from '../../src/design/design.ts';
import type { Accepts } from '../../src/design/schema.ts';
import type { Limits } from '../../src/quantity/parse.ts';
import { seededDesigns } from '../circuit/any-design.ts';
import { HOSTILE_TEXTS } from './spoilt.ts';

/** What is read of a rule here. */
interface Rule {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Rule>>;
  readonly wrapped?: Rule;
  readonly item?: Rule;
  readonly options?: readonly (string | number | Rule)[];
  readonly literal?: unknown;
  readonly message?: string;
}

/** `longest`: the most entries of a list; null = as many as the rule allows. */
export function seededDocuments(seed: number, longest: number | null = 3) {
  const { uniform, between, anyDesign } = seededDesigns(seed);
  const below = (count: number): number => Math.floor(uniform() * count);
  const pick = <T>(options: readonly T[]): T => options[below(options.length)]!;

  const anyNumber = ({ min, max }: Limits): number => {
    const way = uniform();
    if (way < 0.08) return min;
    if (way < 0.16) return max;
    return way < 0.5 && min >= 0 ? between({ min, max }) : min + uniform() * (max - min);
  };

  const numberBy = (accepts: Accepts): number => {
    switch (accepts.kind) {
      case 'number':
        return anyNumber(accepts.limits);
      case 'whole number within':
        return Math.round(anyNumber(accepts.limits));
      case 'whole number':
        return below(2 ** 31);
      default:
        throw new Error(`A number told as ${accepts.kind}`);
    }
  };

  const textBy = (accepts: Accepts): string => {
    if (accepts.kind === 'date')
      return `${1900 + below(200)}-${pick(['01', '06', '12'])}-${pick(['01', '21', '28'])}`;
    if (accepts.kind !== 'text') throw new Error(`A text told as ${accepts.kind}`);
    return pick(['', 'plain', ...HOSTILE_TEXTS]).slice(0, accepts.length);
  };

  const anyOf = (rule: Rule): unknown => {
    const accepts = (): Accepts => JSON.parse(rule.message!) as Accepts;
    switch (rule.type) {
      case 'strict_object':
        return Object.fromEntries(Object.entries(rule.entries!).map(([key, own]) => [key, anyOf(own)]));
      case 'nullable':
        return uniform() < 0.3 ? null : anyOf(rule.wrapped!);
      case 'picklist':
        return pick(rule.options!);
      case 'variant':
        return anyOf(pick(rule.options!) as Rule);
      case 'literal':
        return rule.literal;
      case 'boolean':
        return uniform() < 0.5;
      case 'number':
        return numberBy(accepts());
      case 'string':
        return textBy(accepts());
      case 'array': {
        const told = accepts();
        const most = told.kind === 'list' ? told.most : 0;
        return Array.from({ length: below(Math.min(most, longest ?? most) + 1) }, () => anyOf(rule.item!));
      }
      default:
        throw new Error(`No way to draw a ${rule.type}`);
    }
  };

  const schema: v.GenericSchema = designSchema;
  /** Everything drawn anew: most of these could be built, few would be. */
  const anyDocument = (): Design => anyOf(schema as unknown as Rule) as Design;
  /** The rest of a document around a design whose values could be meant. */
  const anyMeant = (): Design => {
    const { pitch, room, batch, name, notes } = anyDocument();
    return { ...anyDesign(), name, notes, pitch, room, batch };
  };
  return { uniform, below, pick, anyDocument, anyMeant };
}
