/** The words around plants and their flowers, made ready to be found. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { madeOnce } from '../text.js';

export const plantsWords = madeOnce((words: Words) => {
  const { count, hedges, numbers, plants, names, tally } = words;
  const numberWords = [
    ...Object.keys(numbers.units),
    ...Object.keys(numbers.tens),
    ...Object.keys(numbers.scales),
    ...Object.keys(numbers.groups),
    ...Object.keys(numbers.manyGroups),
  ];
  const afterNumber = [...count.aboutAfter, ...count.atLeastAfter];
  const amounts = anyOf(
    numberWords,
    numbers.articles,
    numbers.groupJoins,
    count.about,
    count.atLeast,
    count.atMost,
    hedges.correcting,
    words.yesNo.corrections,
    count.few,
    count.vague,
    count.open,
    hedges.soft,
    hedges.doubting,
    plants.around,
  );
  const edge = `(?:[^\\p{L}]+|${amounts})`;
  const asides = new RegExp(`^[\\s(]*${anyOf(plants.asides)}`, 'u');
  const describing = new Set(names.describing);
  const ofBuds = new Set(count.notOpen.flatMap((phrase) => phrase.split(' ')));
  const each = new RegExp(anyOf(tally.each, count.each), 'gu');
  const flowersAtEnd = new RegExp(`(?<name>.*\\p{L}.*?)\\s+${anyOf(count.flowers)}\\s*$`, 'u');
  const bearers = new RegExp(anyOf(count.bearers), 'u');
  const flowers = new RegExp(anyOf(count.flowers, count.open), 'u');
  const plantNoun = new RegExp(`${anyOf(names.plantNouns)}|${anyOf(names.plantNouns.map((noun) => `${noun}s`))}`, 'u');
  const unknownPhrases = names.unknown.flatMap((phrase) => [phrase, phrase.replaceAll("'", '')]);
  const unknown = new RegExp(`${anyOf(unknownPhrases)}(?!\\s+${anyOf(plants.ofNumber)})`, 'u');
  const correcting = anyOf(hedges.correcting, words.yesNo.corrections);
  const corrects = new RegExp(`^[\\s.,;!-]*${correcting}`, 'u');
  const onlyCorrects = new RegExp(
    `^[\\s.,;!-]*(?:${anyOf(words.yesNo.bareNo)}[\\s,]+)?${correcting}(?:[\\s.,;:!-]|${correcting}|${anyOf(count.about)})*(?:the[ ])?\\s*$`,
    'u',
  );
  const talk = new Set([...names.ordinary, ...plants.talk]);
  const amount = new RegExp(anyOf(count.few, count.vague, count.unknown, count.zero, count.noBefore), 'u');
  return {
    edges: {
      // "60 odd violets" is some sixty of them, "some odd blue thing" is odd
      start: new RegExp(
        `^(?:(?:[^\\p{L}]*\\d[^\\p{L}]*|${anyOf(numberWords)}[ -]+)${anyOf(afterNumber)}|${edge})`,
        'u',
      ),
      end: new RegExp(`(?:${edge}|${anyOf(afterNumber)})$`, 'u'),
    },
    /** Words that say more of a plant named before: "those pink ones", "pale yellow". */
    describes: (piece: string): boolean =>
      asides.test(piece) || (piece.match(/\p{L}+/gu) ?? []).every((word) => describing.has(word) || ofBuds.has(word)),
    /** "flower", "weed": a plant is meant, whichever. */
    saysPlant: (piece: string): boolean => plantNoun.test(piece),
    /** "I don't know", but not "don't know how many". */
    saysUnknown: (piece: string): boolean => unknown.test(piece),
    /** Begins with "sorry", "no wait". */
    corrects: (piece: string): boolean => corrects.test(piece),
    /** "sorry, about" and nothing else, between a plant and the one that takes it back. */
    onlyCorrects: (between: string): boolean => onlyCorrects.test(between),
    /** Words of talk, with no noun for a plant. */
    isTalk: (words: string): boolean =>
      !plantNoun.test(words) && (words.match(/\p{L}+/gu) ?? []).some((word) => talk.has(word)),
    /** "60 each" */
    saysEach: (piece: string): boolean => piece.search(each) !== -1,
    withoutEach: (piece: string): string => piece.replace(each, ' '),
    /** "Aunt Bev's Ruffles flowers" without the flowers; "purple flower" and "Mystery Bells" whole. */
    nameLength: (name: string, asTyped: string): number => {
      const bare = flowersAtEnd.exec(name)?.groups?.['name'];
      if (bare !== undefined && /^\s*\p{Lu}/u.test(asTyped.slice(bare.length))) return name.length;
      const says = (bare?.match(/\p{L}+/gu) ?? []).some((word) => !describing.has(word));
      return says && bare !== undefined && !unknown.test(name) ? bare.length : name.length;
    },
    /** "3 trees": a number of plants, not of flowers. */
    saysFlowers: (piece: string): boolean => flowers.test(piece),
    countsBearers: (piece: string): boolean => bearers.test(piece) && !flowers.test(piece),
    /** "lots", "a few", "didn't count": an amount without a number. */
    saysCount: (piece: string): boolean => amount.test(piece),
  };
});
