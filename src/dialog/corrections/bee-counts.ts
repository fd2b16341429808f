/** Numbers of bees in the summary put right. "No bimac", "all three were impatiens, no bimac": queens of a bee that stands in the summary were not there. */
import { anyOf, fold, namedIn, readYesNo } from '../../answers/index.js';
import { renamedTally, takeOutQueens } from './correct-tally.js';
import { contextOf } from '../hear.js';
import type { Report, Scene } from '../types.js';

/** "no bimac", "zero queens of bimac on the phlox"; "none of the bimac had pollen" tells something else. */
function deniesBee(clause: string, report: Report, scene: Scene): boolean {
  const { takesBack, queens, queensPlural, prepositions, onPlants } = scene.survey.words.tally;
  // "not one impatiens, two" gives a number
  const { units } = scene.survey.words.numbers;
  const zero = scene.survey.words.tally.zero.filter((phrase) =>
    phrase.split(' ').every((word) => (units[word] ?? 0) === 0),
  );
  const folded = fold(clause);
  const [span, ...others] = namedIn(clause, contextOf(scene, report)).at;
  if (span === undefined || others.length > 0 || /\d/.test(folded)) return false;
  const bees = anyOf(queens, queensPlural);
  const before = new RegExp(`^\\s*(?:${anyOf(takesBack)}[\\s,]*)?${anyOf(zero)}\\s+(?:${bees}\\s+\\p{L}+\\s+)?$`, 'u');
  const behind = new RegExp(`^(?:\\s+${bees})?\\s*(?:\\s${anyOf(prepositions, onPlants)}\\s.*)?$`, 'u');
  return before.test(folded.slice(0, span[0])) && behind.test(folded.slice(span[1]));
}

/** The report without them, and what else the text says; null where it denies no bee that was told. */
export function withoutDenied(
  report: Report,
  text: string,
  scene: Scene,
): { readonly report: Report; readonly rest: string } | null {
  // "no bimac, it was a brown-belted"
  if (renamedTally(report, text, scene) !== null) return null;
  let next = report;
  const rest: string[] = [];
  for (const clause of text.split(/[,;.!\n]+/)) {
    const without = deniesBee(clause, report, scene) ? takeOutQueens(next, clause, scene) : null;
    if (without === null) rest.push(clause.trim());
    else next = without;
  }
  if (next === report) return null;
  const more = rest.filter((clause) => clause !== '').join(', ');
  const yesNo = readYesNo(more, contextOf(scene, report));
  return { report: next, rest: yesNo.state === 'sure' && yesNo.value.rest === null ? '' : more };
}

/** "Change bimaculatus to 2" as "2 bimaculatus"; null where no bee is given another number. */
export function countedBee(text: string, report: Report, scene: Scene): string | null {
  const { wishes, numbers } = scene.survey.words;
  const becomes = [...fold(text).matchAll(new RegExp(`\\s${anyOf(wishes.becomes)}\\s+`, 'gu'))].at(-1);
  if (becomes === undefined) return null;
  const bee = text.slice(0, becomes.index).replace(/^\s*\d{1,3}\s+/u, '');
  const number = fold(text.slice(becomes.index + becomes[0].length)).replace(/[\s.!]+$/u, '');
  const count = /^\d{1,3}$/.test(number) ? Number(number) : numbers.units[number];
  const { bees } = namedIn(bee, contextOf(scene, report));
  return count === undefined || count === 0 || bees.length !== 1 ? null : `${count} ${bee}`;
}
