/**
 * The words of a place in a longer text, only where they are clearly one: behind a label ("place: …"), a site of the
 * survey by its name, and "at …", "in …" before a name with capitals or a word like "park". A plant is no place.
 */
import type { Names } from '../../../shared/names.js';
import type { Context, Span } from '../reading.js';
import { blank, fold, madeOnce } from '../text.js';
import type { PlacePhrases } from './phrases.js';

/** How far behind a place the words that go on with it are looked for, in characters. */
const REACH = 60;

export interface SaidPlace {
  readonly words: string;
  readonly span: Span;
}

const escape = (name: string): string => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+');

/** Words of a site's name that tell which it is, at least: "Heron Bend" of "Heron Bend Landing". */
const LEAST_WORDS_OF_NAME = 2;

/** The names of the sites whole, then what begins the name of one only: "heron bend". */
const siteNames = madeOnce((sites: Context['survey']['sites']): readonly string[] => {
  const names = sites.map(({ name }) => fold(name).split(/\s+/).join(' '));
  const beginnings = names.flatMap((name) => {
    const words = name.split(' ');
    return words.map((_, at) => words.slice(0, at + 1).join(' ')).slice(LEAST_WORDS_OF_NAME - 1, -1);
  });
  const isOfOne = (beginning: string): boolean =>
    names.filter((name) => name === beginning || name.startsWith(`${beginning} `)).length === 1;
  return [...names, ...beginnings.filter(isOfOne).sort((a, b) => b.length - a.length)];
});

/** "Heron Bend Landing" or "heron bend", in any case, as typed. */
function siteIn(text: string, folded: string, context: Context, phrases: PlacePhrases): SaidPlace | null {
  const articles = context.words.place.nameArticles.map((article) => `${article}\\s+`).join('|');
  const whole = context.survey.sites.length;
  for (const [at, site] of siteNames(context.survey.sites).entries()) {
    if (at >= whole && isTaxon(site, context, phrases)) continue;
    const match = new RegExp(`(?<!\\p{L})(?:${articles})?(?<name>${escape(site)})(?!\\p{L})`, 'u').exec(folded);
    const name = match?.groups?.['name'];
    if (match && name !== undefined) {
      const span: Span = [match.index, match.index + match[0].length];
      return { words: text.slice(span[1] - name.length, span[1]), span };
    }
  }
  return null;
}

const namesOf = madeOnce((names: Names): readonly string[] => [
  ...new Set([...names.plants, ...names.bees].flatMap(({ name, common }) => [name, ...common].map(fold))),
]);

/** Names of plants and bees, so that "in the garden phlox" and "on Virginia Bluebells" are no places. */
function isTaxon(words: string, context: Context, phrases: PlacePhrases): boolean {
  const said = fold(words).replace(phrases.inPassing.determiner, '').trim();
  return namesOf(context.names).some((name) => said === name || said.startsWith(`${name} `) || said === `${name}s`);
}

function namedIn(text: string, folded: string, context: Context, phrases: PlacePhrases): SaidPlace | null {
  for (const match of text.matchAll(phrases.inPassing.capitals)) {
    const typed = match[0].replace(/[.,]+$/u, '');
    const day = fold(typed).search(phrases.inPassing.dayAtEnd);
    const words = day === -1 ? typed : typed.slice(0, day);
    const name = fold(words);
    const single = !/\s/u.test(words);
    // "Larkspur Point" is a place, "Prairie Smoke" none
    const ofPlace = !single && phrases.inPassing.nounAtEnd.test(name);
    if (phrases.inPassing.notNames.test(name) || (!ofPlace && isTaxon(words, context, phrases))) continue;
    if (single && !phrases.inPassing.nouns.test(name)) {
      const rest = /^\s+(?<noun>\p{L}+)/u.exec(text.slice(match.index + words.length))?.groups?.['noun'] ?? '';
      if (!phrases.inPassing.nouns.test(fold(rest)) || isTaxon(`${words} ${rest}`, context, phrases)) continue;
    }
    const after = match.index + words.length;
    const tail = phrases.inPassing.nounsAtStart.exec(folded.slice(after, after + REACH))?.[0] ?? '';
    return { words: words + tail, span: [match.index, match.index + words.length + tail.length] };
  }
  return null;
}

/** "in my backyard", "behind the library": small letters need a word for a place and whose or which it is. */
function nounIn(text: string, folded: string, context: Context, phrases: PlacePhrases): SaidPlace | null {
  for (const match of folded.matchAll(phrases.inPassing.nouned)) {
    const { preposition = '', words = '' } = match.groups ?? {};
    const from = match.index + match[0].length - words.length;
    const typed = text.slice(from, from + words.length);
    if (/\d\s*$|^\d/u.test(words)) continue;
    if (phrases.inPassing.sides.test(words.replace(phrases.inPassing.determiner, '').trimStart())) continue;
    // "in tall grass prairie" is no name
    const hasName = phrases.inPassing.smallNameAfter.test(preposition) && phrases.inPassing.smallName.test(words);
    if (!hasName && !phrases.inPassing.determiner.test(words)) continue;
    // "on the wild plum by the road" is no place on the road
    const anywhere = phrases.inPassing.anywhere.test(preposition);
    const clause = phrases.inPassing.clauseBefore.test(folded.slice(Math.max(0, match.index - REACH), match.index));
    if (isTaxon(typed, context, phrases) || !(anywhere || clause)) continue;
    const following = /^\s+\p{L}+/u.exec(text.slice(from + words.length))?.[0] ?? '';
    if (following !== '' && isTaxon(`${words.split(/\s+/u).at(-1) ?? ''}${following}`, context, phrases)) continue;
    // "behind the library" is more than the library
    const kept = anywhere ? from : match.index;
    return { words: text.slice(kept, from + words.length), span: [kept, from + words.length] };
  }
  return null;
}

/** "my garden, 70F": whose it is makes it a place even without "in". */
function ownedIn(text: string, folded: string, context: Context, phrases: PlacePhrases): SaidPlace | null {
  const match = phrases.inPassing.owned.exec(folded);
  const words = match?.groups?.['words'];
  if (!match || words === undefined) return null;
  const from = match.index + match[0].length - words.length;
  const typed = text.slice(from, from + words.length);
  return isTaxon(typed, context, phrases) ? null : { words: typed, span: [from, from + words.length] };
}

/** What follows a place up to the end of its clause, where it only goes on: ", lower loop". */
function withTail(text: string, said: SaidPlace, phrases: PlacePhrases): SaidPlace {
  const tail = phrases.inPassing.tail.exec(fold(text.slice(said.span[1], said.span[1] + REACH)));
  if (!tail) return said;
  const span: Span = [said.span[0], said.span[1] + tail[0].length];
  return { words: `${said.words}${text.slice(said.span[1], span[1])}`.trim(), span };
}

/** The place's words in the text beside its coordinates; null where there are none. */
export function wordsInPassing(
  text: string,
  taken: readonly Span[],
  context: Context,
  phrases: PlacePhrases,
): SaidPlace | null {
  const free = blank(text, taken);
  const folded = fold(free);
  for (const match of folded.matchAll(phrases.labelWithin)) {
    const words = match.groups?.['words'] ?? '';
    const from = match.index + match[0].length - words.length;
    const typed = free.slice(from, from + words.length).replace(/[\s.,(]+$/u, '');
    if (/\p{L}{2}/u.test(typed) && !phrases.unknown(fold(typed)) && !phrases.onlyLabels(fold(typed))) {
      return { words: typed.trim().replace(/\s+/gu, ' '), span: [from, from + typed.length] };
    }
  }
  const said =
    siteIn(free, folded, context, phrases) ??
    namedIn(free, folded, context, phrases) ??
    nounIn(free, folded, context, phrases) ??
    ownedIn(free, folded, context, phrases);
  return said ? withTail(free, said, phrases) : null;
}
