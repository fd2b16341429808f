/** Names of bees and plants. */
import { z } from 'zod';
import { words } from './kinds.js';

export const namesSection = z.strictObject({
  /** Words inside names that may be left out: "black and gold", "jack in the pulpit". */
  joining: words,
  /** Two of `joining` that no name goes across: "spotted and the phlox". */
  parting: words,
  /** Other ways to write a word of a name: "2" in "2-spotted". */
  saidAs: z.record(z.string(), z.string()),
  /** The first letters of a common name's first word: "c. eastern". */
  initials: z.record(z.string(), z.array(z.string())),
  /** What else stands for a name or short form of a bee: "by mac" for "bimac". */
  heardAs: z.record(z.string(), z.string()),
  /** "bombus", "psithyrus", "b": add nothing before a bee's name. */
  beeGenera: words,
  /** "bumblebee", "bumble", "bee": add nothing to a bee's name; one word each. */
  bumblebee: words,
  /** "queen", "worker". */
  aroundBees: words,
  /** Words that may stand before a bare "bumble bee", which then says no more; another word there is a name. */
  beforeBumblebee: words,
  /** Words that may follow a bare "Bombus", which then says no more; another word there is a species. */
  afterBombus: words,
  /** "flowers", "bush", "patch": add nothing to a plant's name. */
  aroundPlants: words,
  /** Of those, what says by itself that a plant is meant: "wildflower", "shrub". */
  plantNouns: words,
  /** Colours, sizes, looks: never a name by themselves. */
  describing: words,
  /** Of those, what says nothing of how a plant looks: "open". */
  states: words,
  /** Of those, sizes: they describe a plant only beside another look. */
  sizes: words,
  /** "eastern", "american": a bee's name, unless another word follows that they could belong to. */
  placing: words,
  /** A single word of a bee's name that is only offered: "rusty". */
  faint: words,
  /** Words of the talk around names: no misspelling of a name, and no name. */
  ordinary: words,
  /** The same of the talk in answers of all kinds: "mistake", "husband". */
  everyday: words,
  /** Plants that are also given names or ordinary words: "lily", "sage". */
  loose: words,
  /** Last words of many plants' names, which do not tell one from another: "lily", "berry". */
  heads: words,
  /** Of those, what plants of many genera are called: "calla lily" is no lily. */
  manyKinds: words,
  /** Before a plant's name they make it another kind: "japanese". */
  otherKinds: words,
  /** Before a plant's name they make it no such plant at all: "false". */
  mock: words,
  /** Of the loose words, given names: "Lily had two" is no lily. */
  givenNames: words,
  /** Before a loose word they make it a plant: "my willow". */
  owning: words,
  /** Before a given name: "aunt", "mrs", "dog". */
  people: words,
  /** Begin where a plant stands: "behind". */
  elsewhere: words,
  /** After a plant's name they make it a place: "street". */
  placeEnds: words,
  otherInsects: words,
  /** Plants that the list lacks since bumble bees pass them by: "ironwood" is no slip of "ironweed". */
  otherPlants: words,
  /** "no idea": as a bee, any bumble bee. */
  unknown: words,
  /** Hedges besides those of `hedges`: "cf", "looks like". */
  hedges: words,
  /** What can stand between a word of doubt and the name it is about: "I believe was a". */
  hedgeLinks: words,
  /** Hedges of amounts and places, of a name only right before it: "about". */
  amountHedges: words,
  /** Hedges of what stands before them: "?". */
  hedgesAfter: words,
  /** What follows is not meant: "not". */
  negating: words,
  /** Between names one of which is meant: "or". */
  choosing: words,
  /** "with", "has": what follows describes. */
  having: words,
  /** Marks of a bee, as nouns: "band". */
  marks: words,
  /** Where a mark is: "back". */
  body: words,
  /** After a number under 100 a doubt: "percent". */
  percent: words,
  /** First words of a question to us: "what". */
  asking: words,
  /** Between names of which both were seen: "also". */
  adding: words,
  /** After a plant's name they make it another that is like it: "family". */
  kin: words,
  /** Between two names they take back the first, besides `hedges.correcting`: "turned out to be". */
  correcting: words,
  /** Words to us, not about a bee or plant: "you mean". */
  chat: words,
  /** Words to us that take nothing from a name beside them: "thank you", "lol". */
  smallTalk: words,
});

export const plantsSection = z.strictObject({
  /** Before or after the name of a plant, no part of it: "there were", "plants of". */
  around: words,
  /** A piece that begins with one of these says more of the plant before: "those", "near the". */
  asides: words,
  /** Behind "don't know": the number is not known, the plant is. */
  ofNumber: words,
  /** Words of talk that no plant is named by: "such", "cheerful". */
  talk: words,
});
