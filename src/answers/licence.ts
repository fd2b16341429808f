/**
 * Reads under which licence somebody lets their photographs be published: as the answer to that question ("CC BY"), or
 * out of the blue ("my photos: CC BY", "do not publish my photos").
 */
import type { PhotographLicence } from '../../shared/vocabularies.js';
import type { Words } from '../../shared/words.js';
import { anyOf } from './any-of.js';
import { fold, madeOnce, saysAnyOf } from './text.js';

/** `none`: not to be published. `unknown`: a licence is named that is none of ours. */
export type LicenceTold = PhotographLicence | 'none' | 'unknown';

/** Longer texts are about something else. */
const MOST_LETTERS = 80;

type LicenceWords = Words['wishes']['photographs'];

interface Known {
  readonly licences: ReadonlyMap<string, PhotographLicence>;
  readonly keptBack: ReadonlySet<string>;
  readonly mine: RegExp;
  readonly around: RegExp;
  readonly keepBack: RegExp;
}

const wordsOf = madeOnce((words: LicenceWords): Known => {
  const licences = new Map<string, PhotographLicence>();
  for (const [licence, names] of Object.entries(words.licences))
    for (const name of names) licences.set(name, licence as PhotographLicence);
  const mine = anyOf(words.mine);
  const keepBack = anyOf(words.keepBack);
  return {
    licences,
    keptBack: new Set(words.keptBack),
    mine: new RegExp(mine, 'u'),
    around: new RegExp(anyOf(words.around), 'gu'),
    keepBack: new RegExp(`^(?:${keepBack} ${mine}|(?:keep )?${mine} ${keepBack})$`, 'u'),
  };
});

/** Without capitals, hyphens and marks: "My photos: CC-BY!" is "my photos cc by". */
const bare = (text: string): string =>
  fold(text)
    .replace(/[-–—_:=,;()/"!?…]|\.(?!\d)/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();

function licenceIn(said: string, { licences, around }: Known): PhotographLicence | null {
  // the whole of it first: "by" may stand around a licence, and is one
  const whole = licences.get(said);
  return whole ?? licences.get(said.replace(around, ' ').replace(/\s+/g, ' ').trim()) ?? null;
}

/** The answer to the question. Null where the text is about something else; a bare no is for the caller to read. */
export function readLicence(text: string, { wishes: { photographs: words } }: Words): LicenceTold | null {
  if (text.length > MOST_LETTERS) return null;
  const known = wordsOf(words);
  const said = bare(text);
  if (known.keptBack.has(said) || known.keepBack.test(said)) return 'none';
  const licence = licenceIn(said.replace(known.mine, ' ').replace(/\s+/g, ' ').trim(), known);
  return licence ?? (saysAnyOf(said, words.licenceWords) ? 'unknown' : null);
}

/** Out of the blue, their photographs must be named. */
export function readLicenceWish(text: string, words: Words): LicenceTold | null {
  if (text.length > MOST_LETTERS) return null;
  const said = bare(text);
  return wordsOf(words.wishes.photographs).mine.test(said) ? readLicence(text, words) : null;
}
