import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readBee } from '../../src/answers/bee.js';
import { findNames, labelOf, rankOf, type FoundName } from '../../src/answers/names/index.js';
import { readPlant } from '../../src/answers/plant.js';
import { distance, editsBetween, slipsAllowed, soundOf, spelled } from '../../src/answers/names/similarity.js';
import { stemOf } from '../../src/answers/names/tokens.js';
import { fold } from '../../src/answers/text.js';
import { demo } from '../demo-survey.js';

/** `words = names`, with "?" for a doubt and "|" between what it could be. */
const shown = (text: string, found: readonly FoundName[]): string[] =>
  found.map(({ span, names, doubt }) => {
    const meant = names.map(({ name }) => name.replace(/^Bombus /, '')).join(' | ');
    return `${text.slice(...span)} = ${meant}${doubt ? '?' : ''}`;
  });

const table: [text: string, bees: string[], plants: string[], watched?: string[]][] = [
  // counts, bees and plants in one breath
  [
    '3 vagans on the lilac and 1 B. auricomus on wild geranium',
    ['vagans = vagans', 'B. auricomus = auricomus'],
    ['lilac = Syringa vulgaris', 'wild geranium = Geranium maculatum'],
  ],
  ['bimac x2, imps x1', ['bimac = bimaculatus', 'imps = impatiens'], []],
  ['2 B. imp., 1 B. gris.', ['B. imp = impatiens', 'B. gris = griseocollis'], []],
  ['two common easterns + a half black', ['common easterns = impatiens', 'half black = vagans'], []],
  ['two two-spotted', ['two-spotted = bimaculatus'], []],
  ['2 Americans, 1 northern amber', ['Americans = pensylvanicus', 'northern amber = borealis'], []],
  ['1 yellow bumble bee', ['yellow bumble bee = fervidus'], []],
  ['1 rusty patched on an American plum', ['rusty patched = affinis'], ['American plum = Prunus americana']],
  ['2 impatience, 1 griseocolis', ['impatience = impatiens', 'griseocolis = griseocollis'], []],
  ['1 by mac and 2 grizzy collis', ['by mac = bimaculatus', 'grizzy collis = griseocollis'], []],
  [
    '1 common eastren on virgina bluebells',
    ['common eastren = impatiens'],
    ['virgina bluebells = Mertensia virginica'],
  ],
  ['trillum 40, hawthorne 200', [], ['trillum = Trillium', 'hawthorne = Crataegus']],
  ['lilies 3, lily of the valley 40', [], ['lilies = Lilium', 'lily of the valley = Convallaria majalis']],
  ['1 belted', ['belted = griseocollis | rufocinctus | terricola | ternarius | Bombus'], []],

  // plants that are watched, by any part of their names
  ['2 imp on the geranium', ['imp = impatiens'], ['geranium = Geranium maculatum'], ['Geranium maculatum']],
  [
    'ladder 20 / indigo 12',
    [],
    ['ladder = Polemonium reptans', 'indigo = Baptisia australis'],
    ['Polemonium reptans', 'Baptisia australis'],
  ],
  ['apple: none', [], ['apple = Malus'], ['Malus']],
  ['apple: none', [], ['apple = Malus domestica'], ['Malus domestica']],
  ['the phlox', [], ['phlox = Phlox divaricata'], ['Phlox divaricata']],
  ['the phlox', [], ['phlox = Phlox divaricata | Phlox pilosa | Phlox'], ['Phlox divaricata', 'Phlox pilosa']],
  ['one on the frills', [], ["frills = Aunt Peg's fancy frills"], ["Aunt Peg's fancy frills"]],
  ['2 impatiens', ['impatiens = impatiens'], ['impatiens = Impatiens capensis'], ['Impatiens capensis']],
  ['2 impatiens', ['impatiens = impatiens'], []],

  // whose doubt it is
  ['maybe vagans, 2 imp', ['vagans = vagans?', 'imp = impatiens'], []],
  ['2 imp, 1 vagans?', ['imp = impatiens', 'vagans = vagans?'], []],
  ['1 vagans (I think) and 2 bimac', ['vagans = vagans?', 'bimac = bimaculatus'], []],
  ['about 2 imp', ['imp = impatiens'], []],
  ['1 bimac on a cherry?', ['bimac = bimaculatus'], ['cherry = Prunus?']],

  ['redbud has 40', [], ['redbud = Cercis canadensis']],
  ['my willow is out', [], ['willow = Salix']],

  // not told which
  ["1 queen, couldn't tell which", ["couldn't tell which = Bombus"], []],
  ['2 unknown bumble bees on the lilac', ['unknown bumble bees = Bombus'], ['lilac = Syringa vulgaris']],
  ['1 bimac, 1 not sure', ['bimac = bimaculatus', 'not sure = Bombus'], []],
  ['1 bimac, not sure', ['bimac = bimaculatus?'], []],
  ['3 bumblebees', ['bumblebees = Bombus'], []],
  ['Bombus sp. 1', ['Bombus = Bombus'], []],

  // no name, though the words occur in names
  ['eastern carpenter bee and honey bees', [], []],
  ['a big black and yellow bee with a white tail', [], []],
  ['on the east side, half of the patch, spring sun', [], []],
  ['sunny, 66, light breeze at the northern edge', [], []],
  ['the eastern side of the yard', [], []],
  ['1 eastern on the lilac', ['eastern = impatiens'], ['lilac = Syringa vulgaris']],
  ['my dog Rusty came along', [], []],
  ['Lily had two of them', [], []],
  ['Rose and Lily came along to Cherry Creek', [], []],
  ['Best, Veronica Plumley', [], []],
  ['my sage advice', [], []],
  ['I will try again next week, love, Hester', [], []],
  ['a separate process in the current country', [], []],
  ['constructor toString __proto__', [], []],
  ['10:40 to 10:55, 3 m by 2 m', [], []],
];
test.each(table)('names in "%s"', (text, bees, plants, watched = []) => {
  const found = findNames(fold(text), { ...demo, watched });
  expect(shown(text, found.bees)).toEqual(bees);
  expect(shown(text, found.plants)).toEqual(plants);
});

test('how a name was told', () => {
  const told = (text: string): string[] => findNames(fold(text), demo).bees.map(({ exactness }) => exactness);
  expect(told('vagans')).toEqual(['exact']);
  expect(told('griseocolis')).toEqual(['near']);
  expect(told('plains')).toEqual(['part']);
  expect(told('B. perpl')).toEqual(['short']);
  expect(told('no idea')).toEqual(['unknown']);
  expect(told('2 bumble bees')).toEqual(['group']);
});

test('labels and ranks', () => {
  expect(labelOf('Mertensia virginica', demo)).toBe('Virginia bluebells');
  expect(labelOf('Bombus impatiens', demo)).toBe('common eastern bumble bee');
  expect(labelOf('sunset ruffles', demo)).toBe('sunset ruffles');
  expect(rankOf('Bombus', demo)).toBe('genus');
  expect(rankOf('Bombus vagans', demo)).toBe('species');
  expect(rankOf('Prunus × yedoensis', demo)).toBe('hybrid');
  expect(rankOf('sunset ruffles', demo)).toBeNull();
});

const stems: [word: string, stem: string][] = [
  ['blossoms', 'blossom'],
  ['beauties', 'beauty'],
  ['breeches', 'breech'],
  ['irises', 'iris'],
  ['iris', 'iris'],
  ['phlox', 'phlox'],
  ['crocuses', 'crocus'],
  ['spotted', 'spot'],
  ['belted', 'belt'],
  ['weed', 'weed'],
  ['griseocollis', 'griseocollis'],
  ['affinis', 'affinis'],
];
test.each(stems)('the stem of "%s" is "%s"', (word, stem) => {
  expect(stemOf(word)).toBe(stem);
});

const edits: [left: string, right: string, expected: number][] = [
  ['vagans', 'vagans', 0],
  ['vagans', 'vagens', 1],
  ['fervidus', 'frevidus', 1], // two neighbours swapped
  ['affinis', 'afinis', 1],
  ['', 'imp', 3],
  ['kitten', 'sitting', 3],
];
test.each(edits)('between "%s" and "%s" are %d edits', (left, right, expected) => {
  expect(editsBetween(left, right)).toBe(expected);
  expect(editsBetween(right, left)).toBe(expected);
  expect(editsBetween(left, right, 2)).toBe(Math.min(expected, 3));
});

test.each([
  ['impatience', 'impatiens'],
  ['grizzycollis', 'griseocollis'],
  ['bymac', 'bimac'],
  ['terracola', 'terricola'],
  ['sithyrus', 'psithyrus'],
  ['flocks', 'phlox'],
  ['anenome', 'anemone'],
])('"%s" sounds like "%s"', (left, right) => {
  expect(soundOf(left)).toBe(soundOf(right));
});

test('how many letters may be wrong grows with the name', () => {
  expect([3, 4, 5, 6, 9, 10].map(slipsAllowed)).toEqual([0, 1, 1, 2, 2, 3]);
  expect(distance(spelled('imq'), spelled('imp'))).toBeNull();
  expect(distance(spelled('vegans'), spelled('vagans'))).toBe(0.5); // one letter, no sound
  expect(distance(spelled('robustus'), spelled('ruderatus'))).toBeNull();
});

test('ten thousand characters of anything are read', () => {
  for (const piece of [
    'lilac ',
    'bimaculatis ',
    'not sure ',
    'b. ',
    "a'",
    'plum, ',
    '?',
    '\n',
    'abcdefgh ',
    'Bombus x ',
  ]) {
    const found = findNames(fold(piece.repeat(Math.ceil(10_000 / piece.length))), demo);
    expect(found.bees.length + found.plants.length).toBeLessThan(10_000);
  }
});

test('any text is read, and what it used lies within it', () => {
  const word = fc.constantFrom(
    'vagans',
    'B.',
    'bombus',
    'or',
    'not',
    'sure',
    'lilac',
    'wild',
    'bee',
    '2',
    ',',
    '?',
    '(',
    "rose's",
  );
  const text = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.array(word).map((words) => words.join(' ')),
  );
  fc.assert(
    fc.property(text, (typed) => {
      const found = findNames(fold(typed), demo);
      const spans = [...found.bees, ...found.plants].map(({ span }) => span);
      spans.push(...readBee(typed, demo).used, ...readPlant(typed, demo).used);
      for (const [from, to] of spans) {
        expect(from).toBeGreaterThanOrEqual(0);
        expect(to).toBeGreaterThan(from);
        expect(to).toBeLessThanOrEqual(typed.length);
      }
    }),
    { seed: 1, numRuns: 500 },
  );
});
