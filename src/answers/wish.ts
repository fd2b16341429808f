/**
 * Reads what somebody asks of the conversation itself: "back", "skip", "what have you got", "fix my last watch". A wish
 * is the whole message, or its beginning where it takes an argument ("change 4 to 68"); anything else is an answer.
 */
import type { Words } from '../../shared/words.js';
import { readLicenceWish, type LicenceTold } from './licence.js';
import { fold, madeOnce } from './text.js';

export const PLAIN_WISHES = [
  'help',
  'example',
  'back',
  'skip',
  'unknown',
  'so-far',
  'change-what',
  'pause',
  'go-on',
  'throw-away',
  'start',
  'stop',
  'undo',
  'new',
  'practice',
  'real',
  'same-place',
  'all-done',
  'photograph',
  'licences',
  'show-name',
  'hide-name',
  'remind-me',
  'no-reminders',
  'new-code',
  'my-data',
  'forget-me',
  'greeting',
  'not-yet',
] as const;

export type Wish =
  | { readonly wish: (typeof PLAIN_WISHES)[number] }
  /** A stored watch by its number; null means the last one. */
  | { readonly wish: 'fix'; readonly number: number | null }
  /** Of all their photographs. */
  | { readonly wish: 'licence'; readonly licence: LicenceTold }
  /** What stands behind "change", as typed: a field, perhaps with its new value. */
  | { readonly wish: 'change'; readonly what: string }
  | { readonly wish: 'add'; readonly what: string }
  | { readonly wish: 'take-out'; readonly what: string }
  | { readonly wish: 'remark'; readonly what: string };

interface WishWords {
  readonly plain: ReadonlyMap<string, (typeof PLAIN_WISHES)[number]>;
  readonly polite: RegExp;
  readonly fix: RegExp;
  readonly withArgument: readonly {
    readonly wish: 'change' | 'add' | 'take-out' | 'remark';
    readonly pattern: RegExp;
  }[];
}

const escape = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
const anyOf = (words: readonly string[]): string =>
  [...words]
    .sort((a, b) => b.length - a.length)
    .map(escape)
    .join('|');

const wishWords = madeOnce((wishes: Words['wishes']): WishWords => {
  const plain = new Map<string, (typeof PLAIN_WISHES)[number]>();
  for (const wish of PLAIN_WISHES) for (const phrase of wishes.plain[wish]) plain.set(phrase, wish);
  return {
    plain,
    polite: new RegExp(`^(?:${anyOf(wishes.polite)})[ ,]+|[ ,]+(?:${anyOf(wishes.polite)})$`, 'u'),
    fix: new RegExp(`^(?:${anyOf(wishes.fix)})(?: (?:${anyOf(wishes.watchNumber)}))? ?#?(?<number>\\d{1,7})?$`, 'u'),
    withArgument: [
      // before "add": "add a note: they were mowing"
      { wish: 'remark', pattern: new RegExp(`^(?:${anyOf(wishes.remark)})[ ]*[:=-][ ]*(?<what>\\S.*)$`, 'us') },
      { wish: 'change', pattern: new RegExp(`^(?:${anyOf(wishes.change)})[ :]+(?<what>\\S.*)$`, 'us') },
      { wish: 'add', pattern: new RegExp(`^(?:${anyOf(wishes.add)})[ :]+(?<what>\\S.*)$`, 'us') },
      { wish: 'take-out', pattern: new RegExp(`^(?:${anyOf(wishes.takeOut)})[ :]+(?<what>\\S.*)$`, 'us') },
    ],
  };
});

/** The message without marks at its end and double blanks. */
function bare(text: string): string {
  return fold(text)
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^\/(?=\p{L})/u, '')
    .replace(/(?<=[\p{L}\p{N}])[\s.!…]+$/u, '')
    .trim();
}

/** "Start please" is "start". */
function withoutPoliteness(said: string, polite: RegExp): string {
  let left = said;
  for (let round = 0; round < 3; round++) left = left.replace(polite, '');
  return left.trim();
}

/** Longest message that can be a plain wish: longer ones are answers. */
const LONGEST_PLAIN = 60;

/** Parts of a short message, each by itself: "hi, I'm back", "kids need picking up. later". */
function wishAmong(said: string, { plain }: WishWords): (typeof PLAIN_WISHES)[number] | undefined {
  if (/\d/.test(said)) return undefined;
  const parts = said
    .split(/[,.;!…]+| - /u)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length < 2) return undefined;
  const last = plain.get(parts.at(-1)!);
  // whatever the reason, somebody has to go
  if (last === 'pause') return last;
  const greeted = plain.get(parts[0]!) === 'greeting' || plain.get(parts[0]!) === last;
  return greeted && parts.length === 2 ? last : undefined;
}

/** A remark may be as long as a message of any channel; other wishes are shorter. */
const LONGEST_REMARK = 8000;
const LONGEST_WISH = 2000;

/** Null where the message is no wish. */
export function readWish(text: string, words: Words): Wish | null {
  const known = wishWords(words.wishes);
  const isLong = text.length > LONGEST_WISH;
  if (isLong) return text.length > LONGEST_REMARK ? null : withArgument(text, known, ({ wish }) => wish === 'remark');
  const typed = bare(text);
  const said = withoutPoliteness(typed, known.polite);
  if (said.length <= LONGEST_PLAIN) {
    const whole = (phrase: string): (typeof PLAIN_WISHES)[number] | undefined =>
      known.plain.get(phrase) ?? known.plain.get(phrase.replace(/[?]+$/, '').trim());
    // the "now" of "starting now" is no politeness
    const plain = whole(typed) ?? whole(said) ?? wishAmong(said, known);
    if (plain) return { wish: plain };
    const fix = known.fix.exec(said);
    if (fix) {
      const number = fix.groups?.['number'];
      return { wish: 'fix', number: number === undefined ? null : Number(number) };
    }
  }
  const licence = readLicenceWish(text, words);
  if (licence !== null) return { wish: 'licence', licence };
  return withArgument(text, known, () => true);
}

type Pattern = WishWords['withArgument'][number];

function withArgument(text: string, known: WishWords, isMeant: (pattern: Pattern) => boolean): Wish | null {
  for (const { wish, pattern } of known.withArgument.filter(isMeant)) {
    const start = fold(text).search(/\S/);
    const match = pattern.exec(fold(text).trim());
    const what = match?.groups?.['what'];
    // as typed: folding keeps positions
    if (match && what !== undefined) {
      return { wish, what: text.slice(start + match[0].length - what.length, start + match[0].length).trim() };
    }
  }
  return null;
}
