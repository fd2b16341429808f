/** Puts names into an index, with the parts of them that a person may leave. */
import { fold } from '../text.js';
import type { NameIndex, Scientific } from './name-index.js';
import type { Strength, Use } from './use.js';
import { KnownName } from './known-name.js';
import { soundOf } from './similarity.js';
import type { Kind, Named, Taxon } from './taxa.js';
import { wordsOf, type Word } from './tokens.js';
import type { NameWords, Vocabulary } from './vocabulary.js';

/** Last letters by which a name is found whose first is misspelled. */
export const END_LETTERS = 3;
/** Letters that decide a name's first sound. */
const START_LETTERS = 3;
export const startSound = (letters: string): string => soundOf(letters.slice(0, START_LETTERS)).slice(0, 1);

export const anyOrderKey = (stems: readonly string[]): string => [...stems].sort().join(' ');

/** Letters of a scientific name's first word by which it is kept: one in the lists of bees, three in those of plants. */
const FIRST_LETTERS = { any: 1, ends: 3 };
/** A shorter short form is looked up, but no misspelled word is taken for it. */
const SHORTEST_SHORT_MISSPELLED = 5;
const SHORTEST_PART_MISSPELLED = 6;
/** Words of a name some of which may be missing, at most; the longest names have seven. */
const MOST_WORDS_WITH_PARTS = 10;

/** `ends`: "white trillium", "trillium" and "large trillium" of "large white trillium"; `any`: "large", "large white" too. */
function partsOf(words: readonly Word[], which: 'any' | 'ends'): (readonly Word[])[] {
  if (words.length < 2 || words.length > MOST_WORDS_WITH_PARTS) return [];
  const parts: (readonly Word[])[] = [];
  for (let from = 1; from < words.length; from++) parts.push(words.slice(from));
  for (let leftOut = 1; leftOut < words.length && words.length > 2; leftOut++) {
    parts.push(words.filter((_, at) => at !== leftOut));
  }
  if (which === 'any') for (let to = 1; to < words.length; to++) parts.push(words.slice(0, to), [words[to]!]);
  return parts;
}

const stemsOf = (words: readonly Word[]): string => words.map(({ stem }) => stem).join('');
const lettersOf = (words: readonly Word[]): string => words.map(({ plain }) => plain).join('');

export class Building implements NameIndex {
  readonly exact = new Map<string, Use[]>();
  readonly anyOrder = new Map<string, Use[]>();
  readonly byStart = new Map<string, KnownName[][]>();
  readonly byEnd = new Map<string, KnownName[]>();
  readonly byBeginning = new Map<string, Scientific[]>();
  readonly byEpithet = new Map<string, Scientific[]>();
  readonly firsts = new Set<string>();
  readonly lasts = new Set<string>();
  readonly taxa = new Map<string, Taxon>();
  readonly labels = new Map<string, string>();
  private readonly known = new Map<string, KnownName>();

  /** `leftOut` tells words that say nothing inside a name; `parts` which parts of a name are known too. */
  constructor(
    private readonly names: NameWords,
    private readonly vocabulary: Vocabulary,
    private readonly leftOut: (word: string) => boolean,
    private readonly parts: 'any' | 'ends',
  ) {}

  /** The words of a name that say something. */
  saying(name: string): readonly Word[] {
    return wordsOf(fold(name), this.names).filter((word) => !this.leftOut(word.plain));
  }

  add({ taxon, kind, name, place }: Named): void {
    if (taxon.name !== '') {
      if (!this.taxa.has(taxon.name)) this.taxa.set(taxon.name, taxon);
      if (kind === 'common' && place === 0) this.labels.set(taxon.name, name);
    }
    const words = wordsOf(fold(name), this.names);
    const saying = words.filter((word) => !this.leftOut(word.plain));
    if (saying.length === 0) return;
    this.firsts.add(saying[0]!.stem);
    this.lasts.add(saying.at(-1)!.stem);
    const allDescribing = kind !== 'scientific' && saying.every((word) => this.describes(word));
    const use: Use = { taxon, kind, strength: this.strengthOf(saying, kind, allDescribing), place, allDescribing };
    push(this.exact, stemsOf(saying), use);
    if (saying.length > 1) push(this.anyOrder, anyOrderKey(saying.map(({ stem }) => stem)), use);

    const letters = lettersOf(saying);
    if (kind !== 'short' || letters.length >= SHORTEST_SHORT_MISSPELLED) this.addKnown(saying, letters, use);
    if (saying.length < words.length) this.addKnown([], lettersOf(words), use);
    if (kind === 'scientific' && saying.length <= 2) {
      const scientific = { first: saying[0]!.plain, last: saying.at(-1)!.plain, taxon };
      pushTo(this.byBeginning, scientific.first.slice(0, FIRST_LETTERS[this.parts]), scientific);
      pushTo(this.byEpithet, scientific.last, scientific);
    }
    if (kind === 'common') this.addParts(saying, taxon, place);
  }

  private describes({ plain, stem }: Word): boolean {
    const { describing } = this.vocabulary;
    return describing.has(plain) || describing.has(stem);
  }

  private strengthOf(saying: readonly Word[], kind: Kind, allDescribing: boolean): Strength {
    if (saying.length > 1 || (kind !== 'common' && kind !== 'part')) return 'strong';
    if (allDescribing) return 'describing';
    return this.vocabulary.placing.has(saying[0]!.plain) ? 'placing' : 'strong';
  }

  private saysSomething(word: Word): boolean {
    const { ordinary, faint, aroundPlants } = this.vocabulary;
    return faint.has(word.plain) || !(this.describes(word) || ordinary.has(word.plain) || aroundPlants.has(word.stem));
  }

  private addParts(saying: readonly Word[], taxon: Taxon, place: number): void {
    const strong: Use = { taxon, kind: 'part', strength: 'strong', place, allDescribing: false };
    for (const part of partsOf(saying, this.parts)) {
      // "the blue flower" for the watched "unknown little blue flower": two words of its look tell it
      const isLook = taxon.rank === null && part.length > 1;
      if (!isLook && !part.some((word) => this.saysSomething(word))) continue;
      const strength = this.strengthOf(part, 'part', false);
      const use: Use = strength === 'strong' ? strong : { ...strong, strength };
      push(this.exact, stemsOf(part), use);
      // a misspelled part of a name is looked for only among the few names that are known by any part
      if (this.parts === 'ends') continue;
      const letters = lettersOf(part);
      if (letters.length >= SHORTEST_PART_MISSPELLED) this.addKnown(part, letters, use);
    }
  }

  private addKnown(words: readonly Word[], letters: string, use: Use): void {
    const id = words.length > 1 ? words.map(({ plain }) => plain).join(' ') : letters;
    let known = this.known.get(id);
    if (!known) {
      known = new KnownName(words.length > 1 ? words.map(({ plain }) => plain) : [], letters);
      this.known.set(id, known);
      keep(this.byStart, startSound(letters), known);
      pushTo(this.byEnd, letters.slice(-END_LETTERS), known);
    }
    pushOnce(known.uses, use);
  }
}

function keep(map: Map<string, KnownName[][]>, by: string, name: KnownName): void {
  const byLength = map.get(by) ?? [];
  map.set(by, byLength);
  for (let length = byLength.length; length <= name.letters.length; length++) byLength.push([]);
  byLength[name.letters.length]!.push(name);
}

function pushTo<Item>(map: Map<string, Item[]>, key: string, item: Item): void {
  const items = map.get(key);
  if (items) items.push(item);
  else map.set(key, [item]);
}

function push(map: Map<string, Use[]>, key: string, use: Use): void {
  const uses = map.get(key);
  if (!uses) map.set(key, [use]);
  else pushOnce(uses, use);
}

/** The names of one taxon come one after the other: only the last uses can be the same. */
function pushOnce(uses: Use[], use: Use): void {
  for (let at = uses.length - 1; at >= 0 && uses[at]!.taxon === use.taxon; at--) {
    if (uses[at]!.kind === use.kind) return;
  }
  uses.push(use);
}
