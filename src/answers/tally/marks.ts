/** The marks of a text, left to right: counts, bees, plants, zeros, "same", "each", breaks. */
import type { Context, Span } from '../reading.js';
import { fold } from '../text.js';
import { isNumberByEar, strokesAt } from './by-ear.js';
import { countsIn, type CountSaid } from './counts.js';
import { tokensOf, type Token } from './lexicon.js';
import type { FoundNames } from '../names/index.js';
import type { Break, Mark } from './mark.js';
import { markOf } from './meaning.js';
import { namesIn, type NameMark } from './names-said.js';
import { withSlips } from './slipped.js';
import { tallyLexicons } from './vocabulary.js';

const SIGNS: Readonly<Record<string, Break>> = {
  ',': 'comma',
  '/': 'comma',
  '|': 'comma',
  ';': 'stop',
  '!': 'stop',
  '•': 'stop',
  '…': 'stop',
  ':': 'colon',
  '=': 'colon',
  '(': 'open',
  '[': 'open',
  ')': 'close',
  ']': 'close',
};

/**
 * "." ends a sentence where a blank or the end stands behind it, but in "4 imp. on phlox" it shortens a name; "-" divides
 * only between blanks. `text` is as typed: a capital begins a sentence.
 */
function signAt(text: string, folded: string, token: Token, shortened: boolean): Break | null {
  const sign = SIGNS[token.text];
  if (sign) return sign;
  const before = folded[token.span[0] - 1];
  const after = folded[token.span[1]];
  if (token.text === '.') {
    const rest = text.slice(token.span[1], token.span[1] + 8);
    const goesOn = shortened && /^[ \t]+[\p{Ll}\d(]/u.test(rest);
    return !goesOn && (after === undefined || /\s/.test(after)) ? 'stop' : null;
  }
  if (token.text === '-' || token.text === '–')
    return /\s/.test(before ?? ' ') || /\s/.test(after ?? ' ') || after === '>' ? 'dash' : null;
  return null;
}

/** The singular articles before a name: "a half-black", "the queen". */
const isArticle = (token: Token, context: Context): boolean => context.words.numbers.articles.includes(token.text);

/** All marks of a text, whose names may be known already. Linear in its length. */
export function marksOf(text: string, context: Context, found?: FoundNames): Mark[] {
  const folded = fold(text);
  const { meanings, vagueValued, soundsLike, inexactAfter, units } = tallyLexicons(context.words.tally);
  const names = namesIn(folded, context, found);
  const nameAt = new Map(names.marks.map((mark) => [mark.span[0], mark]));
  const nameEnds = new Set(names.marks.map(({ span }) => span[1]));
  const tokens = tokensOutside(folded, names.marks);
  const beesFrom = new Set(names.marks.filter(({ kind }) => kind === 'bee').map(({ span }) => span[0]));
  const counts = new Map(countsIn(names.rest, tokens, beesFrom, context.words));
  const marks: Mark[] = [];
  const push = (mark: Mark): void => void marks.push(mark);
  let line = 0;
  for (let at = 0; at < tokens.length;) {
    const token = tokens[at]!;
    if (folded.slice(line, token.span[0]).includes('\n'))
      push({ kind: 'break', strength: 'line', span: [line, token.span[0]] });
    line = token.span[0];
    const name = nameAt.get(token.span[0]);
    if (name) {
      push(name);
      at++;
      line = name.span[1];
      continue;
    }
    const sound = soundsLike.at(tokens, at);
    if (sound && !counts.has(at) && isNumberByEar(tokens, at, sound.to, { beesFrom, counts, context })) {
      push({ kind: 'count', count: exactly([...sound.kinds][0]!, token.span), span: token.span });
      at = sound.to;
      continue;
    }
    const phrase = meanings.at(tokens, at);
    const count = counts.get(at);
    const zeroFollows =
      phrase !== null &&
      (meanings.at(tokens, phrase.to)?.kinds.has('zero') === true || counts.get(phrase.to)?.count.values[0] === 0);
    const mark = phrase ? markOf(phrase.kinds, marks, phrase.phrase, context.words.numbers.units, zeroFollows) : null;
    // "one" counts before it means a queen, "maybe 2" is a count in doubt
    const longer =
      phrase !== null && (!count || phrase.to > count.to || (phrase.to === count.to && mark?.kind !== 'queens'));
    if (phrase && mark && longer) {
      // "looked like 2 imps": the number in "like 2" still counts
      if (count && count.number.from >= phrase.to)
        counts.set(count.number.from, { ...count, count: count.number.count });
      for (let inside = at + 1; inside < phrase.to; inside++) {
        const late = counts.get(inside);
        if (late && late.number.from >= phrase.to) counts.set(late.number.from, { ...late, count: late.number.count });
      }
      push({ ...mark, span: [token.span[0], tokens[phrase.to - 1]!.span[1]] });
      at = phrase.to;
      continue;
    }
    const soft = marks.at(-1)?.kind === 'bee' ? inexactAfter.at(tokens, at) : null;
    if (soft && /^\p{L}/u.test(soft.phrase) && !phrase?.kinds.has('doubtful')) {
      push({ kind: 'inexact', span: [token.span[0], tokens[soft.to - 1]!.span[1]] });
      at = soft.to;
      continue;
    }
    const strokes = strokesAt(folded, token, nameEnds, beesFrom);
    if (strokes !== null) {
      const to = tokens.findIndex(({ span }, next) => next > at && span[0] >= token.span[0] + strokes);
      push({ kind: 'count', count: exactly(strokes, token.span), span: token.span });
      at = to === -1 ? tokens.length : to;
      continue;
    }
    const vague = vagueValued.at(tokens, at);
    if (vague) {
      const span: Span = [token.span[0], tokens[vague.to - 1]!.span[1]];
      push({ kind: 'count', count: { values: [...vague.kinds], exact: false, article: false, span }, span });
      at = vague.to;
      continue;
    }
    if (count) {
      push({ kind: 'count', count: count.count, span: count.count.span });
      at = count.to;
      continue;
    }
    if (phrase?.kinds.has('vague')) {
      const span: Span = [token.span[0], tokens[phrase.to - 1]!.span[1]];
      push({ kind: 'count', count: { values: [], exact: false, article: false, span }, span });
      at = phrase.to;
      continue;
    }
    if (isArticle(token, context)) {
      push({ kind: 'count', count: { ...exactly(1, token.span), article: true }, span: token.span });
      at++;
      continue;
    }
    if (phrase) {
      // "the two imps": the count in a phrase that means nothing here still counts
      const counted = tokens.slice(at + 1, phrase.to).some((_, skipped) => counts.has(at + 1 + skipped));
      at = counted ? at + 1 : phrase.to;
      continue;
    }
    const last = marks.at(-1);
    const shortened = nameEnds.has(token.span[0]) && last?.span[1] === token.span[0] && isShortened(folded, last);
    const sign = signAt(text, folded, token, shortened);
    // "vagans/perplexus", "vagans / sandersoni"
    const behind = tokens[at + 1]?.span[0] ?? -1;
    const either = token.text === '/' && last?.kind === 'bee' && beesFrom.has(behind);
    if (sign) push({ kind: 'break', strength: either ? 'or' : sign, span: token.span });
    // "visited 3 times"
    else if (/^\p{N}/u.test(tokens[at - 1]?.text ?? '') && units.at(tokens, at)) at = units.at(tokens, at)!.to - 1;
    else if (/^\p{L}/u.test(token.text) && !(token.text === 'x' && touchesNumber(folded, token)))
      push({ kind: 'unknown', span: token.span });
    at++;
  }
  return withPollenToBefore(withoutSecondOne(withSlips(marks, folded, context.words.tally), folded));
}

/** "One of them with big yellow pollen loads": the "with" parts nothing, and "lots of pollen" counts no queens. */
const withPollenToBefore = (marks: readonly Mark[]): Mark[] =>
  marks.filter((mark, at) => {
    if (mark.kind === 'count' && mark.count.values.length === 0) return marks[at + 1]?.kind !== 'pollen';
    if (mark.kind !== 'break' || mark.strength !== 'and') return true;
    const next = marks.slice(at + 1).find(({ kind }) => kind !== 'unknown');
    return next?.kind !== 'pollen' && next?.kind !== 'no-pollen';
  });

/** What can stand, beside a bee's name, between the two of "one big black and gold one", where the last means the first. */
const DESCRIBES: ReadonlySet<Mark['kind']> = new Set(['unknown', 'queens']);

/** "1 big one", "one big fuzzy one": the word behind the adjectives means the queen counted before them. */
function withoutSecondOne(marks: readonly Mark[], folded: string): Mark[] {
  return marks.map((mark, at) => {
    if (mark.kind !== 'count' || !/^\p{L}+$/u.test(folded.slice(...mark.span))) return mark;
    const next = marks[at + 1];
    const named = next !== undefined && (next.kind === 'bee' || next.kind === 'cannot-tell');
    // "one impatiens one unknown" are two
    const before = marks.slice(0, at).findLast(({ kind }) => !DESCRIBES.has(kind) && !(kind === 'bee' && !named));
    // "a two-spotted one came to the plum"
    const [article, bee] = marks.slice(Math.max(0, at - 2), at);
    const asNoun = at > 1 && bee?.kind === 'bee' && article?.kind === 'count' && article.count.article && !named;
    if (asNoun && mark.count.values[0] === 1 && folded.slice(...mark.span) === 'one')
      return { kind: 'queens', plural: false, span: mark.span };
    if (before?.kind !== 'count' || before.count.article || mark.count.article) return mark;
    const described = /\p{L}/u.test(folded.slice(before.span[1], mark.span[0]));
    return described && mark.count.values[0] === 1 && before.count.values[0] === 1
      ? { kind: 'queens', plural: false, span: mark.span }
      : mark;
  });
}

/** "Phlox div" is cut short, "redbud" is not. */
function isShortened(folded: string, mark: Mark): boolean {
  const name = mark.kind === 'bee' ? mark.bee : mark.kind === 'plant' ? mark.plant : null;
  const typed =
    folded
      .slice(...mark.span)
      .split(/[\s.]+/)
      .at(-1) ?? '';
  const epithet = name?.names[0]?.name.toLowerCase().split(' ').at(-1) ?? '';
  return typed !== '' && typed.length < epithet.length && epithet.startsWith(typed);
}

const exactly = (value: number, span: Span): CountSaid => ({ values: [value], exact: true, article: false, span });

/** The "x" of "impatiens x2" and "2x impatiens". */
const touchesNumber = (folded: string, { span: [from, to] }: Token): boolean =>
  /^\s?\d/.test(folded.slice(to, to + 2)) || /\d\s?$/.test(folded.slice(Math.max(0, from - 2), from));

/** The tokens of the text, where each name is one token that no phrase knows. */
function tokensOutside(folded: string, names: readonly NameMark[]): Token[] {
  const tokens: Token[] = [];
  let next = 0;
  for (const token of tokensOf(folded)) {
    while (next < names.length && names[next]!.span[1] <= token.span[0]) next++;
    const name = names[next];
    if (!name || token.span[0] < name.span[0]) tokens.push(token);
    else if (tokens.at(-1)?.span !== name.span) tokens.push({ text: '', span: name.span, isWord: false });
  }
  return tokens;
}
