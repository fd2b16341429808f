/** The words for sizes, made into patterns once for each loaded language. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { madeOnce } from '../text.js';

/** How far from a length its own words are looked for, in characters: longer than any phrase of `words.yaml`. */
export const REACH = 60;

/** Stands for "one way" where its "one" must not be read as a number; shorter than any of them. */
export const ONE_WAY = '\u2194';

const escape = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+');
/** Unlike whole words: a digit may stand on either side ("1m50", "m2"). */
const anyUnit = (words: readonly string[]): string =>
  [...words]
    .sort((a, b) => b.length - a.length)
    // "in" is an inch only where no place follows: "12 in wide", not "12 in the yard"
    .map((word) => {
      if (word === 'in')
        return `in(?=\\.?\\s*(?:$|[,.;)*+x]|\\^?2(?!\\d)|by\\b|wide|long|across|deep|dia|sq|square|high|tall|and\\b|to\\b))`;
      return escape(word) + (/\p{L}$/u.test(word) ? '(?!\\p{L})' : '');
    })
    .join('|');

export const patchPhrases = madeOnce((words: Words) => {
  const { patch, hedges, weather } = words;
  const units = anyUnit([...Object.keys(patch.lengths), ...Object.keys(patch.areas)]);
  const letters = anyUnit(Object.keys(patch.lengths).filter((unit) => /^\p{L}{2}/u.test(unit) && unit !== 'in'));
  const square = anyOf(patch.square);
  const articles = anyOf(words.numbers.articles);
  const soft = `(?:${anyOf(patch.soft, hedges.soft)}[\\s,]*)*`;
  const after = (phrases: readonly string[]): RegExp => new RegExp(`^[\\s,.(-]*${soft}[\\s-]*${anyOf(phrases)}`, 'u');
  const before = (phrases: readonly string[]): RegExp => new RegExp(`${anyOf(phrases)}[\\s:=]*${soft}[\\s:=]*$`, 'u');
  return {
    /** What follows a number: "10 sq ft", "10 ft square", "10 feet squared", "10 m2", "0.5 of an acre". */
    unit: new RegExp(
      `\\s{0,2}-?\\s?(?<of>(?:${anyOf(words.numbers.groupJoins)}\\s+)?(?:${articles}\\s+)?)(?:` +
        `(?<joined>${anyUnit(Object.keys(patch.joinedAreas))})|` +
        `(?:(?<sq>${square})[\\s.-]{0,3})?(?<name>${units})\\.?` +
        `(?:(?<two>\\^?2)(?!\\d)|\\s*(?<squared>${anyOf(patch.squared)})|\\s+(?<square>${square})(?!\\s*(?:${units})))?)`,
      'uy',
    ),
    /** "(feet)" after both sides. */
    detached: new RegExp(`^[\\s,(]*(?:in\\s+)?(?<name>${letters})`, 'u'),
    anyUnitWord: new RegExp(`(?<!\\p{L})(?<name>${letters})`, 'gu'),
    /** "a foot", "an acre", "a square metre" */
    article: new RegExp(
      `(?<![\\p{L}\\p{N}])(?<article>${articles})\\s+(?=(?:${square}[\\s.-]{1,3})?(?:${anyUnit([...Object.keys(patch.lengths), ...Object.keys(patch.areas)].filter((unit) => /^\p{L}{2}/u.test(unit) && unit !== 'in'))}))`,
      'gu',
    ),
    /** "square metre quadrat" */
    bareSquare: new RegExp(`^\\W*${soft}${square}\\s+(?<name>${letters})`, 'u'),
    crossed: new RegExp(
      `(?<=[\\d'")]\\s{0,3}(?:(?:${Object.keys(patch.lengths).map(escape).join('|')})\\.?\\s{0,3})?)(?:x|by)(?=\\s{0,3}[\\d.½¼¾])`,
      'gu',
    ),
    oneWay: new RegExp(anyOf(patch.oneWay), 'gu'),
    roles: [
      { role: 'radius', after: after(patch.radius), before: before(patch.radiusBefore) },
      { role: 'around', after: after(patch.around), before: before(patch.aroundBefore) },
      { role: 'tall', after: after(patch.tall), before: before(patch.tallBefore) },
      {
        role: 'elsewhere',
        after: new RegExp(`^[\\s(-]*${soft}${anyOf(patch.elsewhere)}`, 'u'),
        before: before(patch.elsewhereBefore),
      },
      { role: 'side', after: after(patch.onASide), before: before([]) },
      { role: 'long', after: after([...patch.long, ONE_WAY]), before: before(patch.lengthBefore) },
      { role: 'across', after: after(patch.across), before: before(patch.acrossBefore) },
      { role: 'wide', after: after(patch.wide), before: before(patch.widthBefore) },
    ] as const,
    /** "8 feet around I mean across": the word that is taken back. */
    roleCorrected: new RegExp(
      `${anyOf(patch.around, patch.long, patch.wide, patch.across)}[\\s,.-]*${anyOf(hedges.correcting)}[\\s,]*(?=${anyOf(patch.around, patch.long, patch.wide, patch.across, patch.radius)})`,
      'gu',
    ),
    by: new RegExp(`^[\\s,.)-]*${anyOf(patch.by)}[\\s-]*${soft}$`, 'u'),
    byWithUnits: new RegExp(`^\\s*${anyOf(patch.byWithUnits)}\\s*${soft}$`, 'u'),
    not: new RegExp(`${anyOf(words.when.not)}\\s+${soft}$`, 'u'),
    soft: new RegExp(`^[\\s,.]*${soft}$`, 'u'),
    range: new RegExp(`^\\s*${anyOf(patch.ranges)}\\s*${soft}$`, 'u'),
    between: new RegExp(`${anyOf(words.count.between)}[\\s]*${soft}$`, 'u'),
    suffix: new RegExp(`(?<=\\d)-?(?:${patch.suffixes.map(escape).join('|')})(?!\\p{L})`, 'gu'),
    squareAfter: new RegExp(`^${anyOf(patch.squareAfter)}$`, 'u'),
    restated: new RegExp(`^\\s*(?:\\(|/|=|${anyOf(words.count.either, patch.soft)})\\s*${soft}\\s*$`, 'u'),
    hyphen: /^\s*-\s*$/u,
    or: /^\s*or\s*/u,
    and: new RegExp(`^[\\s,]*(?:${anyOf(words.numbers.joins)}|,)?\\s*$`, 'u'),
    round: new RegExp(anyOf(patch.round), 'u'),
    squareShaped: new RegExp(anyOf(patch.squareShaped), 'u'),
    other: new RegExp(anyOf(patch.other), 'u'),
    paces: new RegExp(`(?<!${anyOf(patch.notPacesAfter)}\\s)${anyOf(patch.paces)}`, 'u'),
    several: new RegExp(`^\\s*(?:[\\p{L}-]+\\s+){0,2}?${anyOf(patch.several)}`, 'u'),
    severalAnywhere: new RegExp(anyOf(patch.several), 'u'),
    each: new RegExp(anyOf(patch.each), 'u'),
    doubting: new RegExp(`${anyOf(hedges.doubting, words.count.doubts)}(?!\\s+${anyOf(patch.notDoubtedBefore)})`, 'u'),
    joined: new RegExp(anyOf(patch.joined), 'u'),
    /** "ten by for feet", as a telephone hears it */
    byEar: new RegExp(
      `(?<=^\\s*|${anyOf(patch.by)}\\s)(?:${Object.keys(weather.unitsByEar).join('|')})(?=\\s+(?:${letters}))`,
      'gu',
    ),
    bareArea: new RegExp(`^[\\s-]{0,2}${square}\\W*$`, 'u'),
    corrections: new RegExp(
      `${anyOf(hedges.correcting)}|(?<=[,.;\\n-]\\s{0,3})${anyOf(words.yesNo.bareNo)}(?=[\\s,.-]+[\\p{L}\\d~])`,
      'gu',
    ),
    labels: new RegExp(
      `(?:^|[\\n.;,])\\s*${anyOf(patch.labels)}\\s*(?:[:=]|\\bwas\\b|\\bis\\b|(?=\\s${soft}\\d))`,
      'u',
    ),
    notPatch: new RegExp(`^\\s*-?\\s*(?:[\\p{L}-]+\\s+){0,2}?${anyOf(patch.notPatch)}`, 'u'),
  };
});
export type PatchPhrases = ReturnType<typeof patchPhrases>;
export type Role = PatchPhrases['roles'][number]['role'];
