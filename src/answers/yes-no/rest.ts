/** What else was said beside a yes or no, as typed; null where it changes nothing. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { findNames } from '../names/index.js';
import { findNumbers } from '../numbers.js';
import type { Context } from '../reading.js';
import { fold, madeOnce } from '../text.js';
import { skip, type YesNoPhrases } from './phrases.js';

/** "remark: …", "ps - …", "note that …" at the beginning of a clause. */
const saysRemark = madeOnce(
  ({ wishes, tally }: Words) =>
    new RegExp(
      `(?:^|[,.!;\\n]\\s*|\\s${anyOf(tally.ands)}\\s+)(?:${anyOf(wishes.remark)}\\s*[:=-]|${anyOf(wishes.remarkThat)}(?![\\p{L}\\p{N}]))`,
      'u',
    ),
);

/** True where the words say nothing but pleasantries. */
function isChat(folded: string, phrases: YesNoPhrases): boolean {
  let at = skip(folded, 0);
  while (at < folded.length) {
    const found = phrases.chat.at(folded, at) ?? /^\p{Extended_Pictographic}/u.exec(folded.slice(at, at + 2));
    if (!found) return false;
    at = skip(folded, at + ('phrase' in found ? found.length : found[0].length));
  }
  return true;
}

/** Whether a clause may change what was shown: "the temp should be 70", not "what a great morning it was". */
function changesSomething(
  clause: string,
  answer: 'yes' | 'no',
  contrast: boolean,
  chatting: boolean,
  phrases: YesNoPhrases,
  context: Context,
): boolean {
  const said = clause.slice(skip(clause, 0)).trim();
  if (said === '' || isChat(said, phrases)) return false;
  if (answer === 'yes' && !contrast && phrases.namedRight.test(said)) return false;
  if (phrases.futures.in(said)) return false; // "I'll do another one on Saturday"
  // the "one" of "one thing is wrong" counts nothing
  const wanting = phrases.wanting.at(said, 0)?.length ?? 0;
  if (/\d/.test(said) || findNumbers(said.slice(wanting), context.words).length > 0) return true;
  if (phrases.pleasantries.at(said, 0)) return false;
  if (phrases.topics.in(said)) return true;
  if (wanting > 0) return false; // "no, let me fix something"
  if (answer === 'no' || contrast || (!chatting && phrases.changes.in(said))) return true;
  const { bees, plants } = findNames(said, context); // "yes, it was the plum"
  return bees.length > 0 || plants.length > 0;
}

export function restOf(
  said: string,
  answer: 'yes' | 'no',
  contrast: boolean,
  phrases: YesNoPhrases,
  context: Context,
): string | null {
  const begun = said.trim().replace(/^[?\s]+/u, ''); // "yes? I think"
  const typed = begun.includes('(') ? begun : begun.replace(/\)+$/u, ''); // "no (it was 68)"
  const clauses = fold(typed).split(/[,.!;\n?]+(?!\d)/u);
  // "sorry for the late reply, was in the field"
  const chat = clauses.findIndex((clause) => phrases.pleasantries.at(clause, skip(clause, 0)));
  const changing = clauses.some((clause, at) =>
    changesSomething(clause, answer, contrast, chat >= 0 && at > chat, phrases, context),
  );
  // "looks good. remark: they mowed up to the edge"
  if (!changing && !saysRemark(context.words).test(fold(typed))) return null;
  // "it was 70. Thanks!"
  const polite = [...fold(typed).matchAll(/[,.!;\n]+(?=\s)/gu)].find(({ index }) =>
    isChat(fold(typed).slice(index), phrases),
  );
  return polite ? typed.slice(0, polite.index) : typed;
}
