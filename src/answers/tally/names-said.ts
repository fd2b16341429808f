/** The bees and plants named in a tally, as marks by position. */
import { findNames, type FoundName, type FoundNames, type NameValue } from '../names/index.js';
import type { Context, Span } from '../reading.js';
import { blank } from '../text.js';
import { plantsByOrder } from './by-order.js';
import { watchedCutShort } from './watched-cut-short.js';

export interface NameSaid {
  /** Best first; several where they are not `clear`, the genus last. */
  readonly names: readonly NameValue[];
  readonly clear: boolean;
  readonly doubt: boolean;
  readonly span: Span;
}

export type NameMark = { readonly span: Span } & (
  | { readonly kind: 'bee'; readonly bee: NameSaid; readonly plural: boolean }
  | { readonly kind: 'plant'; readonly plant: NameSaid }
  /** "couldn't tell which" */
  | { readonly kind: 'cannot-tell' }
  /** "bumble bees": queens without a name */
  | { readonly kind: 'queens'; readonly plural: boolean }
);

export interface NamesSaid {
  readonly marks: readonly NameMark[];
  /** The text without them. */
  readonly rest: string;
}

/** A bumble bee of unknown name. */
export const bombusAt = (span: Span): NameSaid => ({
  names: [{ name: 'Bombus', rank: 'genus' }],
  clear: true,
  doubt: false,
  span,
});

/** "bimacs" and "common easterns" are several, "impatiens" and "griseocollis" end in s by themselves. */
function isPlural(typed: string, bee: string): boolean {
  const word = typed.split(/[\s-]+/).at(-1) ?? '';
  const epithet = bee.split(' ').at(-1)!.toLowerCase();
  if (!word.endsWith('s') || epithet.startsWith(word)) return false;
  const misspelled =
    epithet.endsWith('s') && Math.abs(word.length - epithet.length) <= 2 && epithet.startsWith(word.slice(0, 2));
  return !misspelled;
}

const said = ({ names, clear, doubt, span }: FoundName): NameSaid => ({ names, clear, doubt, span });

function markOfBee(folded: string, found: FoundName): NameMark {
  const typed = folded.slice(...found.span);
  const { span } = found;
  if (found.exactness === 'unknown') return { kind: 'cannot-tell', span };
  // "2 Bombus" names the genus, "2 bumble bees" names nothing
  if (found.exactness === 'group' && !/bombus|bomb\./.test(typed))
    return { kind: 'queens', plural: typed.endsWith('s'), span };
  return { kind: 'bee', bee: said(found), plural: isPlural(typed, found.names[0]?.name ?? ''), span };
}

/** `found`: the names of this text where they are known already, for looking them up is slow. */
export function namesIn(folded: string, context: Context, found: FoundNames = findNames(folded, context)): NamesSaid {
  const { bees, plants } = found;
  const named = plants.flatMap(({ names, span }) => (names[0] ? [{ name: names[0].name, at: span[0] }] : []));
  const cutShort = watchedCutShort(folded, context, found);
  const marks: NameMark[] = [
    ...bees.map((found) => markOfBee(folded, found)),
    ...plants.map((found): NameMark => ({ kind: 'plant', plant: said(found), span: found.span })),
    ...[...plantsByOrder(folded, named, context), ...cutShort].map(({ name, span }): NameMark => {
      const plant = { names: [{ name, rank: null }], clear: true, doubt: false, span };
      return { kind: 'plant', plant, span };
    }),
  ].sort((a, b) => a.span[0] - b.span[0] || b.span[1] - a.span[1]);
  const apart = marks.filter((mark, at) => at === 0 || mark.span[0] >= marks[at - 1]!.span[1]);
  return {
    marks: apart,
    rest: blank(
      folded,
      apart.map(({ span }) => span),
    ),
  };
}
