import { expect, test } from 'vitest';
import { findTally, readTally, readTotal, type TallyRow } from '../../src/answers/tally.js';
import { brief, demo } from '../demo-survey.js';

const bluebells = 'Mertensia virginica';
const phlox = 'Phlox divaricata';
const plum = 'Prunus americana';
const redbud = 'Cercis canadensis';
const lilac = 'Syringa vulgaris';

/** Plants by the word used for them here. */
const WORDS: Readonly<Record<string, string>> = {
  [bluebells]: 'bluebells',
  [phlox]: 'phlox',
  [plum]: 'plum',
  [redbud]: 'redbud',
  [lilac]: 'lilac',
};

function line({ count, bee, plant, doubt, seenBefore, withPollen, caste }: TallyRow): string {
  const more = [
    doubt ? 'doubt' : '',
    seenBefore === undefined ? '' : `seen ${seenBefore}`,
    withPollen === undefined ? '' : `pollen ${withPollen}`,
    caste ?? '',
  ].filter((word) => word !== '');
  const name = bee === null ? '-' : bee.replace('Bombus ', '');
  return [count, name, ...more, `@${plant === null ? '?' : (WORDS[plant] ?? plant)}`].join(' ');
}
const lines = (rows: readonly TallyRow[]): string => rows.map(line).join(', ');

const one = [phlox];
const two = [bluebells, phlox];
const three = [bluebells, phlox, plum];

type Table = [typed: string, watched: string[], expected: string][];
const check = (table: Table): void => {
  test.each(table)('tally "%s" with %j is %s', (typed, watched, expected) => {
    expect(brief(readTally(typed, { ...demo, watched }), lines)).toBe(expected);
  });
};

// none so far, beside its plant
check([
  [
    'Phlox, one common eastern and one brown belted. Plum, nothing yet.',
    [phlox, plum],
    'sure 1 impatiens @phlox, 1 griseocollis @phlox, 0 - @plum',
  ],
  ['2 imps on the phlox, plum none yet', [phlox, plum], 'sure 2 impatiens @phlox, 0 - @plum'],
  ['2 imps on the phlox, none yet on the plum', [phlox, plum], 'sure 2 impatiens @phlox, 0 - @plum'],
  ['plum: nothing so far, phlox: 2 imps', [phlox, plum], 'sure 0 - @plum, 2 impatiens @phlox'],
  ['2 imps on the phlox, zip so far on the plum', [phlox, plum], 'sure 2 impatiens @phlox, 0 - @plum'],
  ['Phlox, 1 imp. Plum, nobody there.', [phlox, plum], 'sure 1 impatiens @phlox, 0 - @plum'],
  ['phlox 1 imp, no visitors yet on the plum', [phlox, plum], 'sure 1 impatiens @phlox, 0 - @plum'],
  // of no plant it may answer anything; and a watch that still runs may have more
  ['nothing yet', [phlox, plum], 'not understood, tally-not-understood'],
  ['nothing yet on either', two, 'unsure 0 - @bluebells, 0 - @phlox, tally-unclear'],
]);

// slips of the thumb in "none" and "either"
check([
  ['nthing on ether', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['nothin on eithr', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['nuthing on any', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['non on either', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['nohting on eihter', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['nthng on bth', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['1 imp on phlox, nithing on bluebells', two, 'sure 1 impatiens @phlox, 0 - @bluebells'],
  ['phlox zeor, bluebells 1 imp', two, 'sure 0 - @phlox, 1 impatiens @bluebells'],
  // no none: a verb, a word before a name; and words nobody knows give no bee to the plant behind them
  ['noting 2 imps on the phlox', two, 'sure 2 impatiens @phlox'],
  ['1 imp on the non native phlox', two, 'sure 1 impatiens @phlox'],
  ['1 imp on phlox, zork on bluebells', two, 'unsure 1 impatiens @phlox, tally-unclear'],
]);

// brackets and lists tell what a number consists of
check([
  ['4 bombus sp. (2 bimac, 2 unk)', one, 'sure 2 bimaculatus @phlox, 2 Bombus @phlox'],
  ['4 bombus sp. (2 unk, 2 bimac) on the phlox', two, 'sure 2 Bombus @phlox, 2 bimaculatus @phlox'],
  [
    '4 Bombus on the phlox: 2 bimac and 2 not sure. bluebells none',
    two,
    'sure 2 bimaculatus @phlox, 2 Bombus @phlox, 0 - @bluebells',
  ],
  ['3 queens (2 impatiens, 1 bimaculatus) on the phlox', two, 'sure 2 impatiens @phlox, 1 bimaculatus @phlox'],
  ['5 bumbles: 3 impatiens, 2 not sure', one, 'sure 3 impatiens @phlox, 2 Bombus @phlox'],
  [
    '4 queens on the phlox (2 bimac, 2 unk), bluebells none',
    two,
    'sure 2 bimaculatus @phlox, 2 Bombus @phlox, 0 - @bluebells',
  ],
  [
    '2 on the phlox (bimac, imp), 1 imp on the bluebells',
    two,
    'sure 1 bimaculatus @phlox, 1 impatiens @phlox, 1 impatiens @bluebells',
  ],
  ['4 bombus sp (3 bimac, 2 imp)', one, 'unsure 3 bimaculatus @phlox, 2 impatiens @phlox, tally-total-differs'],
  // other bees than those before
  ['2 bombus sp, 2 bimac', one, 'sure 2 Bombus @phlox, 2 bimaculatus @phlox'],
  ['bombus: 2, bimac: 1, imp: 1', one, 'sure 2 Bombus @phlox, 1 bimaculatus @phlox, 1 impatiens @phlox'],
  ['bombus (2) bimac (1) imp (1)', one, 'sure 2 Bombus @phlox, 1 bimaculatus @phlox, 1 impatiens @phlox'],
  ['1 bombus. phlox: 2 imp, 1 bimac', two, 'sure 1 Bombus @?, 2 impatiens @phlox, 1 bimaculatus @phlox'],
  ['2 imps on the phlox (1 bimac on the bluebells)', two, 'sure 2 impatiens @phlox, 1 bimaculatus @bluebells'],
]);

// the last word of a watched plant's name, where it fits only one
check([
  [
    '3 or 4 bimacs on the breeches',
    ['Dicentra cucullaria', bluebells],
    'unsure 3 bimaculatus @Dicentra cucullaria | 4 bimaculatus @Dicentra cucullaria, tally-inexact',
  ],
  [
    '3 bimacs on the breeches, 1 imp on the corn',
    ['Dicentra cucullaria', 'Dicentra canadensis'],
    'sure 3 bimaculatus @Dicentra cucullaria, 1 impatiens @Dicentra canadensis',
  ],
  [
    '1 imp on the ladder, none on the beauties',
    ['Polemonium reptans', 'Claytonia virginica'],
    'sure 1 impatiens @Polemonium reptans, 0 - @Claytonia virginica',
  ],
]);

// what nobody knows is asked about, and never dropped
check([
  ['1 half-black and 1 wibble on phlox', two, 'unsure 1 vagans @phlox, 1 Bombus @phlox, tally-unknown-guess'],
  [
    '2 two-spots on bluebells, 1 half-black and 1 wibble on phlox',
    two,
    'unsure 2 bimaculatus @bluebells, 1 vagans @phlox, 1 Bombus @phlox, tally-unknown-guess',
  ],
]);

// what is left of a sum, and a bee that comes back
check([
  ['5 queens, 3 were impatiens, not sure on the rest', one, 'sure 3 impatiens @phlox, 2 Bombus @phlox'],
  ["5 queens: 3 impatiens, couldn't tell the others", one, 'sure 3 impatiens @phlox, 2 Bombus @phlox'],
  ['3 impatiens on the phlox, not sure about the rest', two, 'sure 3 impatiens doubt @phlox'],
  ['a half black and a tricolor, then the half black came back', one, 'sure 1 vagans @phlox, 1 ternarius @phlox'],
]);

// one queen that could be either; a bee spoken of again
check([
  [
    'i think 1 two spotted but it could be a half black',
    one,
    'unsure 1 bimaculatus doubt @phlox | 1 vagans doubt @phlox | 1 Bombus @phlox, tally-bee-shared',
  ],
  [
    '2 common eastern and 1 rusty patched! im sure about the rusty, saw the patch',
    one,
    'sure 2 impatiens @phlox, 1 affinis @phlox',
  ],
]);

// one queen that went from plant to plant
check([
  ['1 common eastern, she went on both flowers', two, 'sure 1 impatiens @bluebells, 1 impatiens seen 1 @phlox'],
  ['1 imp, it went to both the bluebells and the plum', three, 'sure 1 impatiens @bluebells, 1 impatiens seen 1 @plum'],
  ['1 imp, it visited the bluebells and then the phlox', two, 'sure 1 impatiens @bluebells, 1 impatiens seen 1 @phlox'],
  ['1 imp on both, same queen', two, 'sure 1 impatiens @bluebells, 1 impatiens seen 1 @phlox'],
  ['1 imp, same one on both', two, 'sure 1 impatiens @bluebells, 1 impatiens seen 1 @phlox'],
  ['1 imp on both', two, 'sure 1 impatiens @bluebells, 1 impatiens @phlox'],
]);

// on the plants named, and on no other
check([
  ['2 two-spotted on each of bluebells and phlox', three, 'sure 2 bimaculatus @bluebells, 2 bimaculatus @phlox'],
  ['none on either bluebells or phlox', three, 'sure 0 - @bluebells, 0 - @phlox'],
  ['1 imp on both bluebells and plum', three, 'sure 1 impatiens @bluebells, 1 impatiens @plum'],
  [
    '2 imps on each of the bluebells and phlox, none on the plum',
    three,
    'sure 2 impatiens @bluebells, 2 impatiens @phlox, 0 - @plum',
  ],
]);

// of every plant, in its own words
check([
  ['1 common eastern, lots of pollen', one, 'sure 1 impatiens pollen 1 @phlox'],
  ['1 queen common eastern w lots of pollen on her legs, on phlox', two, 'sure 1 impatiens pollen 1 @phlox'],
  [
    '1 common eastern on the bluebells, plus a worker on the phlox, same kind',
    two,
    'sure 1 impatiens @bluebells, 1 impatiens worker @phlox',
  ],
  [
    'B. auricomus 1 on bluebells, B. pensylvanicus 2 on same',
    two,
    'sure 1 auricomus @bluebells, 2 pensylvanicus @bluebells',
  ],
  ["1 affinis on the phlox... looked at the photo, it's griseocollis", two, 'sure 1 griseocollis @phlox'],
]);

// a number put right stays where it was said
check([
  [
    '3 two-spotted on the bluebells... actually 2, one was a carpenter bee. And 1 common eastern on the phlox',
    two,
    'sure 2 bimaculatus @bluebells, 1 impatiens @phlox',
  ],
  ['3 bimac on the bluebells. no wait 2. 1 imp on the phlox', two, 'sure 2 bimaculatus @bluebells, 1 impatiens @phlox'],
]);

// one plant: it need not be said
check([
  ["didn't see a single one", two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['one big fuzzy one on the phlox, no idea what kind', two, 'sure 1 Bombus @phlox'],
  ['2 imp', one, 'sure 2 impatiens @phlox'],
  ['two imps', one, 'sure 2 impatiens @phlox'],
  ['1 bimac, 2 half-blacks', one, 'sure 1 bimaculatus @phlox, 2 vagans @phlox'],
  ['impatiens x3', one, 'sure 3 impatiens @phlox'],
  ['3x impatiens and 1x griseo', one, 'sure 3 impatiens @phlox, 1 griseocollis @phlox'],
  ['imp 2 bimac 1', one, 'sure 2 impatiens @phlox, 1 bimaculatus @phlox'],
  ['imp: 2, bimac: 1', one, 'sure 2 impatiens @phlox, 1 bimaculatus @phlox'],
  ['Bombus impatiens, 2; Bombus vagans, 1', one, 'sure 2 impatiens @phlox, 1 vagans @phlox'],
  ['2imp 1bimac', one, 'sure 2 impatiens @phlox, 1 bimaculatus @phlox'],
  ['a half-black and two brown-belted', one, 'sure 1 vagans @phlox, 2 griseocollis @phlox'],
  ['I saw four of the common easterns and one rusty patched.', one, 'sure 4 impatiens @phlox, 1 affinis @phlox'],
  ['just the one bimac', one, 'sure 1 bimaculatus @phlox'],
  ['a pair of imps', one, 'sure 2 impatiens @phlox'],
  ['a dozen impatiens', one, 'sure 12 impatiens @phlox'],
  ['two two-spotted queens', one, 'sure 2 bimaculatus @phlox'],
  ['1 black and gold and 1 half black', one, 'sure 1 auricomus @phlox, 1 vagans @phlox'],
  ['Two queens, both impatiens', one, 'sure 2 impatiens @phlox'],
  ['1 imp at 3:05 and another at 3:10', one, 'sure 2 impatiens @phlox'],
  ['I counted three impatiens in fifteen minutes', one, 'sure 3 impatiens @phlox'],
  ['bimac', one, 'sure 1 bimaculatus @phlox'],
]);

// several plants, said after or before, with and without signs
check([
  ['2 imp on the phlox', two, 'sure 2 impatiens @phlox'],
  ['two imps on bluebells', two, 'sure 2 impatiens @bluebells'],
  ['a half-black on phlox', two, 'sure 1 vagans @phlox'],
  ['bimac on phlox', two, 'sure 1 bimaculatus @phlox'],
  [
    '2 imp and 1 bimac on the bluebells, 3 vagans on the phlox',
    two,
    'sure 2 impatiens @bluebells, 1 bimaculatus @bluebells, 3 vagans @phlox',
  ],
  ['2 imp on phlox; 1 imp on bluebells', two, 'sure 2 impatiens @phlox, 1 impatiens @bluebells'],
  ['2 imp phlox 3 bimac bluebells', two, 'sure 2 impatiens @phlox, 3 bimaculatus @bluebells'],
  ['phlox 2 imp bluebells 3 bimac', two, 'sure 2 impatiens @phlox, 3 bimaculatus @bluebells'],
  ['phlox: 2 imp, 1 bimac', two, 'sure 2 impatiens @phlox, 1 bimaculatus @phlox'],
  ['phlox = 3 imp', two, 'sure 3 impatiens @phlox'],
  ['phlox - 2 imp\nbluebells - 1 bimac', two, 'sure 2 impatiens @phlox, 1 bimaculatus @bluebells'],
  ['phlox (2 imp), bluebells (1 bimac)', two, 'sure 2 impatiens @phlox, 1 bimaculatus @bluebells'],
  ['2 imp (phlox), 1 bimac (bluebells)', two, 'sure 2 impatiens @phlox, 1 bimaculatus @bluebells'],
  ['2 imp @ phlox, 1 bimac @ bluebells', two, 'sure 2 impatiens @phlox, 1 bimaculatus @bluebells'],
  ['2 imp -> phlox', two, 'sure 2 impatiens @phlox'],
  ['phlox,impatiens,2\nbluebells,bimac,1', two, 'sure 2 impatiens @phlox, 1 bimaculatus @bluebells'],
  ['Phlox\n2 imp\n1 bimac\nBluebells\nnone', two, 'sure 2 impatiens @phlox, 1 bimaculatus @phlox, 0 - @bluebells'],
  ['2 imp\n1 bimac\non the phlox', two, 'sure 2 impatiens @phlox, 1 bimaculatus @phlox'],
  [
    'on the phlox 2 imp and 1 bimac, on the bluebells 3 imp',
    two,
    'sure 2 impatiens @phlox, 1 bimaculatus @phlox, 3 impatiens @bluebells',
  ],
  ['The phlox had 2 imp and the bluebells had 1 bimac', two, 'sure 2 impatiens @phlox, 1 bimaculatus @bluebells'],
  ['On the phlox I saw 2 imp. On the bluebells, nothing.', two, 'sure 2 impatiens @phlox, 0 - @bluebells'],
  [
    'one impatiens visited the phlox, two bimacs worked the bluebells',
    two,
    'sure 1 impatiens @phlox, 2 bimaculatus @bluebells',
  ],
  ['imp on phlox 2, bimac on bluebells 1', two, 'sure 2 impatiens @phlox, 1 bimaculatus @bluebells'],
  ['bimac on phlox 2 imp on bluebells', two, 'sure 1 bimaculatus @phlox, 2 impatiens @bluebells'],
  ['4 B. imp. on phlox, 1 B. bimac. on bluebells', two, 'sure 4 impatiens @phlox, 1 bimaculatus @bluebells'],
  ['1 imp on 40 bluebells', two, 'sure 1 impatiens @bluebells'],
  [
    '1 imp 2 bimac 1 griseo on the phlox, 3 imp on the plum',
    three,
    'sure 1 impatiens @phlox, 2 bimaculatus @phlox, 1 griseocollis @phlox, 3 impatiens @plum',
  ],
  ['1 imp on phlox, 1 imp on phlox', two, 'sure 2 impatiens @phlox'], // the same bee and plant: one row
  // not said, or not named
  ['2 imp', two, 'sure 2 impatiens @?'],
  ['2 imp on it', two, 'sure 2 impatiens @?'],
  ['2 imp', [], 'sure 2 impatiens @?'],
  ['2 imp but nothing on the phlox', two, 'sure 2 impatiens @bluebells, 0 - @phlox'],
  // a plant of no list by a part of its words
  ['1 imp on the blue flower', ['unknown little blue flower', 'Phlox'], 'sure 1 impatiens @unknown little blue flower'],
  ['1 imp on the blue one', ['unknown little blue flower', 'Phlox'], 'sure 1 impatiens @unknown little blue flower'],
  // not watched: kept under its name
  ['1 imp on the lilac', two, 'sure 1 impatiens @lilac'],
]);

// one bee for several plants
check([
  ['they were all impatiens, 2 on the phlox 5 on the plum', three, 'sure 2 impatiens @phlox, 5 impatiens @plum'],
  ['2 on phlox and 1 on plum, all bimacs', three, 'sure 2 bimaculatus @phlox, 1 bimaculatus @plum'],
  ['2 imp on bluebells and one on the phlox', two, 'sure 2 impatiens @bluebells, 1 impatiens @phlox'],
  ['2 imp on bluebells, another on the phlox', two, 'sure 2 impatiens @bluebells, 1 impatiens @phlox'],
  [
    'impatiens: 2 on bluebells, 1 on phlox; bimac: 1 on bluebells',
    two,
    'sure 2 impatiens @bluebells, 1 impatiens @phlox, 1 bimaculatus @bluebells',
  ],
  ['3 impatiens: 2 on bluebells, 1 on phlox', two, 'sure 2 impatiens @bluebells, 1 impatiens @phlox'],
  ['Saw 3 bimacs total, 2 on phlox and 1 on bluebells', two, 'sure 2 bimaculatus @phlox, 1 bimaculatus @bluebells'],
]);

// each, both, same
check([
  ['1 imp on each', two, 'sure 1 impatiens @bluebells, 1 impatiens @phlox'],
  ['1 imp each on phlox and bluebells', two, 'sure 1 impatiens @phlox, 1 impatiens @bluebells'],
  ['both plants had 1 imp', two, 'sure 1 impatiens @bluebells, 1 impatiens @phlox'],
  ['1 each of imp and bimac on phlox', two, 'sure 1 impatiens @phlox, 1 bimaculatus @phlox'],
  ['imp and bimac, 1 each', one, 'sure 1 impatiens @phlox, 1 bimaculatus @phlox'],
  ['2 imp on bluebells, same on the phlox', two, 'sure 2 impatiens @bluebells, 2 impatiens @phlox'],
  [
    '2 imp and 1 bimac on bluebells, ditto for the phlox',
    two,
    'sure 2 impatiens @bluebells, 1 bimaculatus @bluebells, 2 impatiens @phlox, 1 bimaculatus @phlox',
  ],
  [
    '1 imp on the bluebells, then the same one on the phlox',
    two,
    'sure 1 impatiens @bluebells, 1 impatiens seen 1 @phlox',
  ],
  ['1 imp on bluebells, that queen again on phlox', two, 'sure 1 impatiens @bluebells, 1 impatiens seen 1 @phlox'],
  ['1 bimac on bluebells then moved to the phlox', two, 'sure 1 bimaculatus @bluebells, 1 bimaculatus seen 1 @phlox'],
  [
    '2 imp on phlox and the same queens later on the bluebells',
    two,
    'sure 2 impatiens @phlox, 2 impatiens seen 2 @bluebells',
  ],
  ['2 imp on phlox and bluebells', two, 'unsure 2 impatiens @phlox, 2 impatiens @bluebells, tally-each-or-together'],
  ['2 imps on both', two, 'unsure 2 impatiens @bluebells, 2 impatiens @phlox, tally-each-or-together'],
]);

// none
check([
  ['none', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['zip', one, 'sure 0 - @phlox'],
  ['0', one, 'sure 0 - @phlox'],
  ['none', [], 'sure 0 - @?'],
  ['no queens', one, 'sure 0 - @phlox'],
  ['no bumble bees at all today', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ["didn't see a single bee", two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['nothing on either', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['none on either one', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['neither had any', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['no one home on either', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['nothing on the phlox', two, 'sure 0 - @phlox'],
  ['nothing on the phlox or the plum', three, 'sure 0 - @phlox, 0 - @plum'],
  ['phlox, plum: none', three, 'sure 0 - @phlox, 0 - @plum'],
  ['2 imp on the plum, nothing on the phlox', three, 'sure 2 impatiens @plum, 0 - @phlox'],
  ['phlox 0 plum 2 imp', three, 'sure 0 - @phlox, 2 impatiens @plum'],
  ['nothing on phlox, plum 3 bimac', three, 'sure 0 - @phlox, 3 bimaculatus @plum'],
  ['The plum got nothing but the phlox had 2 imp', three, 'sure 0 - @plum, 2 impatiens @phlox'],
  ['2 imp on phlox, none on the others', three, 'sure 2 impatiens @phlox, 0 - @bluebells, 0 - @plum'],
  ['2 imp on phlox, nothing else', two, 'sure 2 impatiens @phlox, 0 - @bluebells'],
  ['no impatiens on the phlox but 2 bimac on the plum', three, 'sure 0 - @phlox, 2 bimaculatus @plum'],
  ['no problem, 2 imp', one, 'sure 2 impatiens @phlox'],
]);

// names in doubt, or not known
check([
  ["1 queen, couldn't tell which", one, 'sure 1 Bombus @phlox'],
  ['unknown bumblebee on the phlox', two, 'sure 1 Bombus @phlox'],
  ["2 impatiens and 1 can't tell", one, 'sure 2 impatiens @phlox, 1 Bombus @phlox'],
  ["3 impatiens and a couple I couldn't ID on the phlox", two, 'sure 3 impatiens @phlox, 2 Bombus @phlox'],
  ['2 Bombus sp. on phlox', two, 'sure 2 Bombus @phlox'],
  ['2 maybe impatiens on phlox', two, 'sure 2 impatiens doubt @phlox'],
  ['2 impatiens? on phlox', two, 'sure 2 impatiens doubt @phlox'],
  ['1 probable impatiens', one, 'sure 1 impatiens doubt @phlox'],
  ['2 imp on phlox (not sure)', two, 'sure 2 impatiens doubt @phlox'],
  [
    '1 impatiens or bimaculatus',
    one,
    'unsure 1 impatiens @phlox | 1 bimaculatus @phlox | 1 Bombus @phlox, tally-bee-shared',
  ],
  ['2 imp and 1 zorblax on the phlox', two, 'unsure 2 impatiens @phlox, 1 Bombus @phlox, tally-unknown-guess'],
  ['2 zorblax on the phlox', two, 'not understood, tally-unknown-bee'],
  ['2 queens on the phlox', two, 'unsure 2 Bombus @phlox, tally-bees-guess'],
  ['1 imp on the frobnitz', one, 'unsure 1 impatiens @phlox, tally-unknown-plant'],
]);

// numbers in doubt
check([
  ['a few bimacs on the phlox', two, 'unsure 3 bimaculatus @phlox, tally-inexact'],
  ['3 or 4 imp', one, 'unsure 3 impatiens @phlox | 4 impatiens @phlox, tally-inexact'],
  ['2-3 imp', one, 'unsure 3 impatiens @phlox | 2 impatiens @phlox, tally-inexact'],
  ['about 5 bimac on phlox', two, 'unsure 5 bimaculatus @phlox, tally-inexact'],
  ['maybe 2 impatiens on phlox', two, 'unsure 2 impatiens doubt @phlox, tally-inexact'],
  ['5+ imps', one, 'unsure 5 impatiens @phlox, tally-inexact'],
  ['several imp on phlox', two, 'not understood, tally-how-many'],
  ['bimacs on phlox', two, 'not understood, tally-how-many'],
  ['2.5 imp', one, 'not understood, tally-how-many'],
  ['imp 2 bimac', one, 'unsure 1 impatiens @phlox, 2 bimaculatus @phlox, tally-unclear'],
  [
    'zero on the bluebells but the phlox had 2 brown belted and 1 imp',
    two,
    'sure 0 - @bluebells, 2 griseocollis @phlox, 1 impatiens @phlox',
  ],
  ['four common eastern on the phlox no wait five five common eastern', one, 'sure 5 impatiens @phlox'],
  ['all 6 were impatiens, 4 on bluebells, 2 on phlox', two, 'sure 4 impatiens @bluebells, 2 impatiens @phlox'],
  // botanists' codes of what is watched
  ['MEVI: 2 B. impatiens. PHDI: 1 B. pensylvanicus.', two, 'sure 2 impatiens @bluebells, 1 pensylvanicus @phlox'],
  ['2 bimac on phdi, nil mevi', two, 'sure 2 bimaculatus @phlox, 0 - @bluebells'],
  ['phlox, 2 imp on the phlox', two, 'sure 2 impatiens @phlox'],
  // a "none" that may be of something else
  ['there were sixty flowers on the phlox and nothing else', one, 'not understood, tally-not-understood'],
  ["no bees yet, I'll tell you later", one, 'unsure 0 - @phlox, tally-unclear'],
  ['sixty flowers and nothing more', one, 'unsure 0 - @phlox, tally-unclear'],
  ['no other flowers', one, 'unsure 0 - @phlox, tally-unclear'],
  ['none that I could name', one, 'unsure 0 - @phlox, tally-unclear'],
  ['60 flowers, no bees', one, 'sure 0 - @phlox'],
  ['5 queens: 3 imp, 2 bimac', one, 'sure 3 impatiens @phlox, 2 bimaculatus @phlox'],
  ['3 imp, 2 bimac, 5 total', one, 'sure 3 impatiens @phlox, 2 bimaculatus @phlox'],
  ['4 queens: 3 imp, 2 bimac', one, 'unsure 3 impatiens @phlox, 2 bimaculatus @phlox, tally-total-differs'],
]);

// corrections
check([
  ['2 imp on phlox, no wait, 3', two, 'sure 3 impatiens @phlox'],
  ['2 imp, actually 3', one, 'sure 3 impatiens @phlox'],
  ['2 imp, sorry, bimac', one, 'sure 2 bimaculatus @phlox'],
  ['2 imp on phlox, I mean bluebells', two, 'sure 2 impatiens @bluebells'],
  ['3 imp 1 bimac, no wait, 2 bimac', one, 'sure 3 impatiens @phlox, 2 bimaculatus @phlox'],
  ['1 imp and 2 vagans on the phlox, the vagans were workers', one, 'sure 1 impatiens @phlox, 2 vagans worker @phlox'],
  ['2 imps on the phlox, one was a worker', two, 'sure 1 impatiens @phlox, 1 impatiens worker @phlox'],
  ['3 imps on the phlox, two were workers', two, 'sure 1 impatiens @phlox, 2 impatiens worker @phlox'],
  ['2 imps, one of them a worker', one, 'sure 1 impatiens @phlox, 1 impatiens worker @phlox'],
  ['4 imps on the phlox, no wait 3, one was a carpenter bee', one, 'sure 3 impatiens @phlox'],
  ['just impatiens. 4 on the phlox, 1 on the bluebells', two, 'sure 4 impatiens @phlox, 1 impatiens @bluebells'],
  ['an imp on the phlox and 2 on the bluebells', two, 'sure 1 impatiens @phlox, 2 impatiens @bluebells'],
  ['3 - two common eastern and one brown belted', one, 'sure 2 impatiens @phlox, 1 griseocollis @phlox'],
  [
    '3 brown-belted and 1 half-black. One of the brown-belted ones had pollen',
    one,
    'sure 3 griseocollis pollen 1 @phlox, 1 vagans @phlox',
  ],
  ['2 imps, one of the imps was a worker', one, 'sure 1 impatiens @phlox, 1 impatiens worker @phlox'],
  ['2 imps on the phlox, one of the imps came back', one, 'sure 2 impatiens @phlox'],
  [
    'the bees do not read our lists: two brown-belted and one golden northern',
    one,
    'sure 2 griseocollis @phlox, 1 fervidus @phlox',
  ],
  // what says more of a queen that was counted counts none
  [
    '1 bimac on the phlox. On the plum: 1 bimac, a different one from the first.',
    three,
    'sure 1 bimaculatus @phlox, 1 bimaculatus @plum',
  ],
  [
    '1 half-black, 1 common eastern. The half-black was a new one for me.',
    one,
    'sure 1 vagans @phlox, 1 impatiens @phlox',
  ],
  [
    '1 half-black on the phlox and 2 imps. The half-black on the phlox sat still',
    one,
    'sure 1 vagans @phlox, 2 impatiens @phlox',
  ],
  ["2 imps on the phlox. I couldn't tell from where I was", one, 'sure 2 impatiens @phlox'],
  ["2 imps. I hadn't seen a rusty patched in years", one, 'sure 2 impatiens @phlox'],
  ['phlox / 45 / 1 two-spotted', one, 'unsure 1 bimaculatus @phlox, tally-total-differs'],
  ['2 imp on the phlox no 3', two, 'sure 3 impatiens @phlox'],
  ['1 bimac on bluebells, 2 imp on the phlox, no, 3.', two, 'sure 1 bimaculatus @bluebells, 3 impatiens @phlox'],
  // the "no" may be of the phlox
  ['bluebells 1 imp phlox no 3', two, 'unsure 1 impatiens @bluebells, 3 impatiens @phlox, tally-unclear'],
  ['4 bombus sp. - 2 bimac, 2 unk', one, 'sure 2 bimaculatus @phlox, 2 Bombus @phlox'],
  ['1 bombus on phlox - 2 imp on bluebells', two, 'sure 1 Bombus @phlox, 2 impatiens @bluebells'],
]);

// what is said beside and behind
check([
  ['2 on the phlox (both bimac), 1 on the plum (imp)', three, 'sure 2 bimaculatus @phlox, 1 impatiens @plum'],
  ['there was 1 on the phlox, an impatiens', two, 'sure 1 impatiens @phlox'],
  ['2 common easterns (B. impatiens) on phlox', two, 'sure 2 impatiens @phlox'],
  ['1 rusty-patched bumble bee (Bombus affinis)', one, 'sure 1 affinis @phlox'],
  ['bimac, bimac, imp', one, 'sure 2 bimaculatus @phlox, 1 impatiens @phlox'],
  ['2 impatiens and then 2 more', one, 'sure 4 impatiens @phlox'],
  ['two impatiens, possibly a third', one, 'unsure 2 impatiens doubt @phlox, 1 impatiens doubt @phlox, tally-inexact'],
  ['3 queens, I think all impatiens', one, 'sure 3 impatiens doubt @phlox'],
  ['2 impatiens on bluebells, 1 of them also on phlox', two, 'sure 2 impatiens @bluebells, 1 impatiens seen 1 @phlox'],
  ['2 imp on phlox, the same one came back', one, 'sure 2 impatiens @phlox'],
  ['2 impatiens, not 3 bimac', one, 'sure 2 impatiens @phlox'],
  ['bimac: bluebells 2, phlox 1', two, 'sure 2 bimaculatus @bluebells, 1 bimaculatus @phlox'],
  ['redbud/imp/1; plum/bimac/2', [redbud, plum], 'sure 1 impatiens @redbud, 2 bimaculatus @plum'],
  ['all 3 were impatiens, on phlox', two, 'sure 3 impatiens @phlox'],
  ['one big queen on the plum, no idea what kind', three, 'sure 1 Bombus @plum'],
  [
    '1 perplexus but could be vagans',
    one,
    'unsure 1 perplexus @phlox | 1 vagans @phlox | 1 Bombus @phlox, tally-bee-shared',
  ],
  ['1 vagans/perplexus', one, 'unsure 1 vagans @phlox | 1 perplexus @phlox | 1 Bombus @phlox, tally-bee-shared'],
  ['(2) impatiens', one, 'sure 2 impatiens @phlox'],
  [
    'the bimac was on the phlox and the two imps were on the plum',
    three,
    'sure 1 bimaculatus @phlox, 2 impatiens @plum',
  ],
  ['not sure', one, 'not understood, tally-not-understood'],
]);

// a sum and its parts: parts are the rows, and must add up
check([
  [
    'one had an orange band, maybe a tricolored? the other was too quick',
    one,
    'sure 1 ternarius doubt @phlox, 1 Bombus @phlox',
  ],
  [
    "two big ones on the phlox. One was maybe a tricolored, it had an orange band, the other I couldn't tell",
    two,
    'sure 1 ternarius doubt @phlox, 1 Bombus @phlox',
  ],
  [
    "one maybe a tricolored, with an orange band, and one I couldn't tell, it was too quick",
    one,
    'sure 1 ternarius doubt @phlox, 1 Bombus @phlox',
  ],
  ['two, an impatiens and a bimac', one, 'sure 1 impatiens @phlox, 1 bimaculatus @phlox'],
  ['two, impatiens', one, 'sure 2 impatiens @phlox'],
  ['5 bees, 3 impatiens and the rest bimacs', one, 'sure 3 impatiens @phlox, 2 bimaculatus @phlox'],
  ['5 on the phlox, 3 were impatiens, the others bimac', two, 'sure 3 impatiens @phlox, 2 bimaculatus @phlox'],
  ['4 impatiens, two on each', two, 'sure 2 impatiens @bluebells, 2 impatiens @phlox'],
  ['4 impatiens on phlox and bluebells, two each', two, 'sure 2 impatiens @phlox, 2 impatiens @bluebells'],
  ['3 impatiens: 2 queens 1 worker', one, 'sure 2 impatiens @phlox, 1 impatiens worker @phlox'],
  ['2 imp + 1 bimac = 3 queens', one, 'sure 2 impatiens @phlox, 1 bimaculatus @phlox'],
  ['imp = 2, bimac = 3', one, 'sure 2 impatiens @phlox, 3 bimaculatus @phlox'],
  ['the common eastern. 2 of them', one, 'sure 2 impatiens @phlox'],
  ['6 bees, mostly impatiens', one, 'unsure 6 impatiens @phlox, tally-inexact'],
  // both without a count
  ['both were impatiens. phlox.', one, 'sure 2 impatiens @phlox'],
  ['all three were bimacs', one, 'sure 3 bimaculatus @phlox'],
]);

// a bee said of the plant before, of both plants, of all
check([
  [
    "two on the phlox, both imps, and one on the plum that I couldn't identify",
    three,
    'sure 2 impatiens @phlox, 1 Bombus @plum',
  ],
  ['three on phlox, all impatiens. one on plum, bimac.', three, 'sure 3 impatiens @phlox, 1 bimaculatus @plum'],
  ['phlox 2 plum 1 all imps', three, 'sure 2 impatiens @phlox, 1 impatiens @plum'],
  [
    'phlox 3 queens (2 imp 1 bimac), plum 1 queen (bimac)',
    three,
    'sure 2 impatiens @phlox, 1 bimaculatus @phlox, 1 bimaculatus @plum',
  ],
  ["three. couldn't tell you what kind", one, 'sure 3 Bombus @phlox'],
  ['both had one imp', two, 'sure 1 impatiens @bluebells, 1 impatiens @phlox'],
  ['2 imps, both had pollen', two, 'sure 2 impatiens pollen 2 @?'],
  ['1 imp per plant', two, 'sure 1 impatiens @bluebells, 1 impatiens @phlox'],
  ["2 imps on the neighbor's phlox", two, 'sure 2 impatiens @phlox'],
  ['2 imps on the phlox, typed on my phone', two, 'sure 2 impatiens @phlox'],
  ['2 imps on the frobnitz', two, 'unsure 2 impatiens @bluebells | 2 impatiens @phlox, tally-unknown-plant'],
  [
    '2 imp on one, 1 bimac on the other',
    two,
    'unsure 1 impatiens @bluebells, 1 impatiens @phlox, 1 bimaculatus @bluebells, 1 bimaculatus @phlox, tally-unclear',
  ],
]);

// said again: not seen again
check([
  ['3 imps, though 2 could be the same bee', one, 'unsure 3 impatiens @phlox, tally-inexact'],
  ['3 imps give or take', one, 'unsure 3 impatiens @phlox, tally-inexact'],
  ['I think 2 imps', one, 'sure 2 impatiens doubt @phlox'],
  ['an imp visited 3 times', one, 'sure 1 impatiens @phlox'],
  ['no, I forgot to count', one, 'not understood, tally-not-understood'],
  ['my wife says two imps and I say two imps so two imps', one, 'sure 2 impatiens @phlox'],
  ['my wife says two imps but I say three imps', one, 'unsure 5 impatiens @phlox, tally-unclear'],
  ['2 imps. one came back a second time, counted it once', one, 'sure 2 impatiens @phlox'],
  ['1 imp (came back twice)', one, 'sure 1 impatiens @phlox'],
  ['2 imp no, 3', one, 'sure 3 impatiens @phlox'],
  ['2 imp. No, 3 imp.', one, 'sure 3 impatiens @phlox'],
  ['redbud... no, phlox: 1 imp', two, 'sure 1 impatiens @phlox'],
  ['phlox no, bluebells 2 imp', two, 'sure 0 - @phlox, 2 impatiens @bluebells'],
  ['2 imp on phlox, correction: 1 imp 1 bimac', two, 'sure 1 impatiens @phlox, 1 bimaculatus @phlox'],
  ['it was imp not bimac, 2 of them', one, 'sure 2 impatiens @phlox'],
  ['3 not 2 on the phlox', two, 'not understood, tally-which-bees'],
]);

// numbers by ear, by strokes, in doubt; numbers of something else
check([
  ['to impatiens on the phlox', two, 'sure 2 impatiens @phlox'],
  ['I saw to imps', one, 'sure 2 impatiens @phlox'],
  ['ate bimacs and won imp', one, 'sure 8 bimaculatus @phlox, 1 impatiens @phlox'],
  ['for impatiens: 2 on the phlox, 1 on the plum', three, 'sure 2 impatiens @phlox, 1 impatiens @plum'],
  ['impatiens |||', one, 'sure 3 impatiens @phlox'],
  ['bimac II', one, 'sure 2 bimaculatus @phlox'],
  ['looked like 2 impatiens', one, 'sure 2 impatiens doubt @phlox'],
  ['the bimaculatus were three', one, 'sure 3 bimaculatus @phlox'],
  [
    'between 3 and 5 bimacs',
    one,
    'unsure 4 bimaculatus @phlox | 3 bimaculatus @phlox | 5 bimaculatus @phlox, tally-inexact',
  ],
  ['not sure but 2 bimacs', one, 'unsure 2 bimaculatus @phlox, tally-inexact'],
  ['none?', one, 'unsure 0 - @phlox, tally-inexact'],
  ['none I think', one, 'sure 0 - @phlox'],
  ['1. imp\n2. bimac\n3. imp', one, 'sure 2 impatiens @phlox, 1 bimaculatus @phlox'],
  ['watch 3: 2 imps', one, 'sure 2 impatiens @phlox'],
  ["no bumble bees. that's four watches in a row", one, 'sure 0 - @phlox'],
  [
    'either a bimac or an imp',
    one,
    'unsure 1 bimaculatus @phlox | 1 impatiens @phlox | 1 Bombus @phlox, tally-bee-shared',
  ],
  ['vagans/perplexus 1', one, 'unsure 1 vagans @phlox | 1 perplexus @phlox | 1 Bombus @phlox, tally-bee-shared'],
  ['1 vagans / sandersoni', one, 'unsure 1 vagans @phlox | 1 sandersoni @phlox | 1 Bombus @phlox, tally-bee-shared'],
]);

// plants by their order
check([
  ['2 imp on the first one, nothing on the second', two, 'sure 2 impatiens @bluebells, 0 - @phlox'],
  ['first plant: 2 imp, second plant: none', two, 'sure 2 impatiens @bluebells, 0 - @phlox'],
  ['plant 1: 2 imp, plant 2: 1 bimac', two, 'sure 2 impatiens @bluebells, 1 bimaculatus @phlox'],
  ['2 imp on the former, 1 bimac on the latter', two, 'sure 2 impatiens @bluebells, 1 bimaculatus @phlox'],
  ['phlox and bluebells. 2 imp on the first, none on the second', two, 'sure 2 impatiens @phlox, 0 - @bluebells'],
  ['the first one was an imp, the second one a bimac', two, 'sure 1 impatiens @?, 1 bimaculatus @?'],
  ['Phlox div. 1 B. grise., Mertensia virg. 2 B. imp.', two, 'sure 1 griseocollis @phlox, 2 impatiens @bluebells'],
]);

// nothing for a while, or at another time
check([
  ['the first 10 minutes nothing then 2 imps on the phlox', two, 'sure 2 impatiens @phlox'],
  ['nothing at first, then 2 imps', one, 'sure 2 impatiens @phlox'],
  ['nothing, 2 imps', one, 'unsure 2 impatiens @phlox, tally-unclear'],
  ['last week 2 impatiens, today just the one bimac on the phlox', two, 'sure 1 bimaculatus @phlox'],
  ['2 imp on the phlox and that was all', two, 'sure 2 impatiens @phlox'],
  ['⭕ on both plants', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['nuthin', one, 'sure 0 - @phlox'],
  // no tally
  ["Yes, that's all correct, thank you so much!", two, 'not understood, tally-not-understood'],
  ['should I send a photo?', two, 'not understood, tally-not-understood'],
  ["what's a half-black?", two, 'not understood, tally-not-understood'],
]);

// castes and pollen
check([
  [
    '2 imps with full pollen baskets and one without',
    one,
    'sure 2 impatiens pollen 2 @phlox, 1 impatiens pollen 0 @phlox',
  ],
  ["3 imp, two had pollen and one didn't", one, 'sure 3 impatiens pollen 2 @phlox'],
  ['2 impatiens, neither had pollen', one, 'sure 2 impatiens pollen 0 @phlox'],
  ['1 imp with pollen on her legs', one, 'sure 1 impatiens pollen 1 @phlox'],
  ['2 imp, 1 with pollen', one, 'sure 2 impatiens pollen 1 @phlox'],
  ['2 imp on phlox, both with pollen', two, 'sure 2 impatiens pollen 2 @phlox'],
  ['1 imp, no pollen', one, 'sure 1 impatiens pollen 0 @phlox'],
  ['1 impatiens worker on phlox', two, 'sure 1 impatiens worker @phlox'],
  ['2 imp queens and 1 worker', one, 'sure 2 impatiens @phlox, 1 impatiens worker @phlox'],
  ['1 small impatiens', one, 'sure 1 impatiens worker @phlox'],
]);

// other visitors, and what is no tally
check([
  ['2 imp and 3 honey bees on phlox', two, 'sure 2 impatiens @phlox'],
  ['2 honeybees', one, 'not understood, tally-other-insects'],
  ['3', one, 'not understood, tally-which-bees'],
  ['five of them', one, 'not understood, tally-which-bees'],
  ['3 queens', one, 'not understood, tally-which-bees'],
  ['hello', one, 'not understood, tally-not-understood'],
  ['', one, 'not understood, empty'],
]);

// one of those counted was counted before: which row it was is asked
check([
  ['3 imps on phlox, one of the imps was the same one', one, 'unsure 3 impatiens @phlox, tally-inexact'],
  ['one of the imps was the same one', one, 'not understood, tally-not-understood'],
]);

// "other two" counts bees where a bee follows
check([
  ['the orange one was ternarius, other two impatiens', one, 'sure 1 ternarius @phlox, 2 impatiens @phlox'],
  ['1 bimac, the other 3 griseos', one, 'sure 1 bimaculatus @phlox, 3 griseocollis @phlox'],
  ['the other 2 imp', one, 'sure 2 impatiens @phlox'],
  ['1 bimac on the bluebells, none on the other two', three, 'sure 1 bimaculatus @bluebells, 0 - @phlox, 0 - @plum'],
]);

// beside "none", one that only passed by is an aside; one that left a flower may have been on it
check([
  ['None. One bumble bee flew over but did not land.', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['none, one flew by', one, 'sure 0 - @phlox'],
  ['0, but I heard one', one, 'sure 0 - @phlox'],
  ['none, though a bumble bee flew through', one, 'sure 0 - @phlox'],
  ['2 imps on the phlox, another flew over', one, 'unsure 2 impatiens @phlox, 1 impatiens @phlox, tally-inexact'],
  ['none, one flew off as I sat down', one, 'not understood, tally-unknown-bee'],
  [
    'none on the phlox, one bimac flew over the bluebells',
    two,
    'unsure 0 - @phlox, 1 bimaculatus @bluebells, tally-inexact',
  ],
]);

// what a bee looked like is no other bee; by colours of another one it is asked whether the name was right
check([
  ['1 bimac on the phlox. She had that rusty patch', two, 'unsure 1 bimaculatus @phlox, tally-inexact'],
  [
    '2 imps on the bluebells. Both had long faces, and the black and gold one stayed a while',
    two,
    'unsure 2 impatiens @bluebells, tally-inexact',
  ],
  ['1 bimac on the phlox. It was a griseo', two, 'unsure 1 bimaculatus @phlox, tally-inexact'],
  ['1 bimac on the phlox. She had pollen', two, 'sure 1 bimaculatus pollen 1 @phlox'],
  ['1 bimac on the phlox. She was a bimac, no doubt', two, 'sure 1 bimaculatus @phlox'],
  ['2 imps on the phlox. They were imps', two, 'sure 2 impatiens @phlox'],
  [
    '1 imp on phlox. The black and gold one was on the bluebells',
    two,
    'sure 1 impatiens @phlox, 1 auricomus @bluebells',
  ],
  [
    '1 bimac on the phlox. The other was a griseo on the bluebells',
    two,
    'sure 1 bimaculatus @phlox, 1 griseocollis @bluebells',
  ],
  ['Not sure about any of them, they were all on the phlox', two, 'not understood, tally-not-understood'],
  ['no idea about all of them, 3 queens on the phlox', two, 'sure 3 Bombus @phlox'],
  ['nobody could go out to the bluebells', two, 'unsure 0 - @bluebells, tally-unclear'],
]);

const totals: [typed: string, expected: string][] = [
  ['None. One bumble bee flew over but did not land.', 'sure 0'],
  ['3', 'sure 3'],
  ['five of them', 'sure 5'],
  ['3 queens', 'sure 3'],
  ['just one', 'sure 1'],
  ['none', 'sure 0'],
  ['3 or 4', 'unsure 3 | 4, tally-inexact'],
  ['several', 'not understood, tally-how-many'],
  ['3 imp', 'not understood, tally-not-understood'],
  ['2 and 3', 'not understood, tally-not-understood'],
  ['should I send a photo?', 'not understood, tally-not-understood'],
  ['I have a photo', 'not understood, tally-not-understood'],
  ["no, that's wrong", 'not understood, tally-not-understood'],
];
test.each(totals)('the number of queens in "%s" is %s', (typed, expected) => {
  expect(brief(readTotal(typed, demo))).toBe(expected);
});

/** In passing: only what surely speaks of queens. */
const passing: [typed: string, expected: string][] = [
  ['It was a cold day with no wind but 2 imps came to the phlox', 'sure 2 impatiens @phlox'],
  ['Not a cloud in the sky. Nothing special to report. 1 bimac.', 'sure 1 bimaculatus @phlox'],
  ['no bees', 'sure 0 - @phlox'],
  ['saw none', 'sure 0 - @phlox'],
  ['Queens: 0', 'sure 0 - @phlox'],
  ['I was hoping for a rusty patched', ''],
  ['last year there were 3 impatiens here', ''],
  ['my 2 dogs came along', ''],
  ['no rain today', ''],
  ['same place as before', ''],
];
test.each(passing)('in passing "%s" tells "%s"', (typed, expected) => {
  const [reading] = findTally(typed, { ...demo, watched: one });
  expect(reading ? brief(reading, lines) : '').toBe(expected);
});

test('the words as typed are kept', () => {
  const reading = readTally('2 imps on the Phlox', { ...demo, watched: two });
  expect(reading.state === 'sure' && reading.value[0]?.typed).toEqual({ bee: 'imps', plant: 'Phlox' });
});

test.each([
  ['1 imp on phlox '.repeat(600)],
  ['a'.repeat(10_000)],
  ['1 '.repeat(3000)],
  ['phlox '.repeat(1000)],
  ['same on '.repeat(700)],
  ['no wait '.repeat(700)],
])('a long text is answered too', (typed) => {
  expect(['sure', 'unsure', 'none']).toContain(readTally(typed, { ...demo, watched: two }).state);
});

// words cut short, hedges behind names, and queens that may not count
check([
  ['1 gri, 2 vag', one, 'sure 1 griseocollis @phlox, 2 vagans @phlox'],
  ['tern 4 terr 1', one, 'sure 4 ternarius @phlox, 1 terricola @phlox'],
  ['redb. 4 bim, phl: 1 imp', [redbud, phlox], 'sure 4 bimaculatus @redbud, 1 impatiens @phlox'],
  ['a single half-black', one, 'sure 1 vagans @phlox'],
  ['2 sandersoni? 1 ternarius', one, 'sure 2 sandersoni doubt @phlox, 1 ternarius @phlox'],
  ["two, might've been three, half-blacks", one, 'unsure 2 vagans @phlox | 3 vagans @phlox, tally-inexact'],
  ['2 dead bimacs', one, 'unsure 2 bimaculatus @phlox, tally-inexact'],
  ["1 bimac flew by, didn't land", one, 'unsure 1 bimaculatus @phlox, tally-inexact'],
  ['1 bimac, small one', one, 'sure 1 bimaculatus worker @phlox'],
  ['5 imp, 3 of them workers', one, 'sure 2 impatiens @phlox, 3 impatiens worker @phlox'],
  ['a vagans and something unknown', one, 'sure 1 vagans @phlox, 1 Bombus @phlox'],
  ['3 on phlox, 1 on plum, no idea what species', three, 'sure 3 Bombus @phlox, 1 Bombus @plum'],
  [
    'three queens: impatiens, bimac and one no idea',
    one,
    'sure 1 impatiens @phlox, 1 bimaculatus @phlox, 1 Bombus @phlox',
  ],
  ['2 yellow ones (fervidus) and one half-black', one, 'sure 2 fervidus @phlox, 1 vagans @phlox'],
  ['2 impatiens on phlox and 3 griseos on the same', two, 'sure 2 impatiens @phlox, 3 griseocollis @phlox'],
  ['Mostly impatiens: 7 on the phlox, 2 on the bluebells', two, 'sure 7 impatiens @phlox, 2 impatiens @bluebells'],
  ['twelve. all impatiens. on one bush!', one, 'sure 12 impatiens @phlox'],
]);

// none, in other words; what is said of other things is no count
check([
  ['only butterflies and a wasp', one, 'sure 0 - @phlox'],
  ['none of the two had a bumble bee', two, 'sure 0 - @bluebells, 0 - @phlox'],
  ['the phlox was a bust but one bimac came to the plum', [phlox, plum], 'sure 0 - @phlox, 1 bimaculatus @plum'],
  ['None at all. Windy on the ridge.', one, 'sure 0 - @phlox'],
  ['0 queens. sunny, 70, light wind', one, 'sure 0 - @phlox'],
]);

// said as people say it, and once read wrongly
check([
  ['2 imp on phlox rest nothing', three, 'sure 2 impatiens @phlox, 0 - @bluebells, 0 - @plum'],
  ['phlox: -, bluebells: 2 imp', two, 'sure 0 - @phlox, 2 impatiens @bluebells'],
  ['she was a half black i think, one, on the phlox', one, 'sure 1 vagans doubt @phlox'],
  ['bimaculatus!! finally!! just 1', one, 'sure 1 bimaculatus @phlox'],
  ['2 bimac (pollen on one of them), phlox', one, 'sure 2 bimaculatus pollen 1 @phlox'],
  ['Bombus: nil', one, 'sure 0 - @phlox'],
  ['BOMBUS: bimaculatus 2, vagans 1', one, 'sure 2 bimaculatus @phlox, 1 vagans @phlox'],
  [
    '1 on the phlox, either impatiens or bimac',
    two,
    'unsure 1 impatiens @phlox | 1 bimaculatus @phlox | 1 Bombus @phlox, tally-bee-shared',
  ],
  ['1 red belted on the phlox 2 on the plum also red belted', three, 'sure 1 rufocinctus @phlox, 2 rufocinctus @plum'],
  ['one imp on the phlox and one on the plum too, same kind', three, 'sure 1 impatiens @phlox, 1 impatiens @plum'],
  ['4 on the plum no make that 5 all imps, phlox nothing', three, 'sure 5 impatiens @plum, 0 - @phlox'],
  ['2 imps on the plum. scratch that, they were griseocollis', three, 'sure 2 griseocollis @plum'],
  ['two half-blacks on the bells, not a soul on the plum', three, 'sure 2 vagans @bluebells, 0 - @plum'],
  ['bells 1 imp, phlox 1 imp but it was the same one', two, 'sure 1 impatiens @bluebells, 1 impatiens seen 1 @phlox'],
  ['Rusty patched!!! 1 affinis, 2 imp on the phlox', one, 'sure 1 affinis @phlox, 2 impatiens @phlox'],
  ['phlox, one B. impatiens and one unidentified', two, 'sure 1 impatiens @phlox, 1 Bombus @phlox'],
  ['one impatiens one unknown on the phlox', one, 'sure 1 impatiens @phlox, 1 Bombus @phlox'],
  ['one big black and gold one on the phlox', one, 'unsure 1 auricomus @phlox | 1 Bombus @phlox, tally-bee-shared'],
  ['which one is the common eastern again', two, 'not understood, tally-not-understood'],
]);

// one queen on several plants, or told of more than once
check([
  ['one imp that visited both', two, 'sure 1 impatiens @bluebells, 1 impatiens seen 1 @phlox'],
  [
    '1 bimac went back and forth between both plants',
    two,
    'sure 1 bimaculatus @bluebells, 1 bimaculatus seen 1 @phlox',
  ],
  ['one imp on each', two, 'sure 1 impatiens @bluebells, 1 impatiens @phlox'],
  ['2 imps visited both', two, 'unsure 2 impatiens @bluebells, 2 impatiens @phlox, tally-each-or-together'],
  [
    '2 imps on bluebells, one of them went to the phlox after',
    two,
    'sure 2 impatiens @bluebells, 1 impatiens seen 1 @phlox',
  ],
  [
    '3 imps on the bluebells, two of them visited the phlox as well',
    two,
    'sure 3 impatiens @bluebells, 2 impatiens seen 2 @phlox',
  ],
  ['2 imps on bluebells, one of them with pollen', two, 'sure 2 impatiens pollen 1 @bluebells'],
  // where some of those counted were; of the others it is not told
  ['3 imps, 2 of them on bluebells', two, 'sure 1 impatiens @?, 2 impatiens @bluebells'],
  ['3 imps, 2 of them on bluebells and 1 on phlox', two, 'sure 2 impatiens @bluebells, 1 impatiens @phlox'],
  ['3 imps, 2 of them on bluebells, none on phlox', two, 'sure 1 impatiens @?, 2 impatiens @bluebells, 0 - @phlox'],
  // nothing was told of her before: she counts once, and is asked about
  ['the same imp came back 3 times to the bluebells', two, 'unsure 1 impatiens @bluebells, tally-unclear'],
  ['same imp on the phlox', two, 'sure 1 impatiens seen 1 @phlox'],
]);
