/** A text as the answer to an unsure reading. */
import {
  anyOf,
  correctsOnly,
  fold,
  namedIn,
  readCount,
  readFields,
  readTotal,
  readYesNo,
  saysAnyOf,
} from '../../answers/index.js';
import type { Count } from '../../../shared/record.js';
import { say } from '../../../shared/wording.js';
import { doubtfulPlant, settleDoubtfulPlant } from './doubtful-plant.js';
import { cannotTell, chosenByPlace } from './choosing.js';
import { settleDoubtfulRow, tellsElsewhere } from './doubtful-row.js';
import { isFew } from '../few-flowers.js';
import { openFields, setFlowers } from '../fields.js';
import { contextOf, hear, takeReading } from '../hear.js';
import { shownOffers } from './offers.js';
import { outcome } from '../outcome.js';
import { OF_PICTURES } from '../photographs.js';
import { withTotal } from '../respond-tally.js';
import { briefly } from '../summary.js';
import { changed } from '../thread.js';
import type { Doubt, Json, Outcome, Report, Scene, Thread } from '../types.js';

/** What came of an unsure reading: a yes takes the offer, other words are read for the same field. */
export function answerDoubt(thread: Thread, report: Report, doubt: Doubt, text: string, scene: Scene): Outcome {
  const context = contextOf(scene, report);
  const yesNo = readYesNo(text, context);
  const words = yesNo.state === 'sure' ? yesNo.value.rest : text;
  const saysYes = yesNo.state === 'sure' && yesNo.value.answer === 'yes';
  const told = (next: Report, fields: readonly string[] = [shownField(doubt)]): Outcome => ({
    ...outcome(thread, next),
    echo: briefly(fields, next, scene),
  });
  // asked which plant it was, "two bimacs on the breeches" tells no plants
  const tellsOthers = doubt.field === 'plants' && namedIn(text, context).bees.some((bee) => bee !== 'Bombus');
  for (const said of tellsOthers ? [] : words === null || words === text ? [text] : [text, words]) {
    const chosen =
      settleDoubtfulPlant(report, doubt, said, scene) ??
      settleDoubtfulRow(report, doubt, said, scene) ??
      picked(report, doubt, said, scene);
    if (chosen !== null) return told(chosen);
  }
  if (words !== null && !tellsOthers) {
    const better = tellsElsewhere(report, doubt, words, scene) ?? readAgain(report, doubt, words, scene);
    const besides = better?.fields['habitat'] === report.fields['habitat'] ? [] : ['habitat'];
    if (better !== null) return told(better, [shownField(doubt), ...besides]);
  }
  if (saysYes && doubt.offers.length > 1)
    return outcome(thread, report, [say(scene.survey.wording, 'yes-to-which')], 'repeat');
  if (saysYes && doubt.offers.length === 1) {
    const settled = settle(report, doubt, doubt.offers[0]!, scene);
    // "yes, and creeping charlie about 200": what is told besides is no part of the doubt
    const besides = words === null ? null : hear(settled, words, [], scene);
    return told(besides?.report ?? settled, [shownField(doubt), ...(besides?.taken ?? [])]);
  }
  // a yes to “what was it?” tells nothing, and must not drop what is asked about
  if (doubt.ask === 'tally-unread-live' && saysYes && words === null) return outcome(thread, report, [], 'repeat');
  if (yesNo.state === 'sure' && yesNo.value.answer === 'no' && !correctsOnly(yesNo, text))
    return declined(thread, report, doubt, scene);
  // what could not be counted in a live watch is asked about once; its words stay with the record
  const still = doubt.ask === 'tally-unread-live' ? withoutUnread(report, doubt) : report;
  const heard = hear(still, text, [], scene);
  // "puccoon" once more leaves it as doubtful as it was, beside all else that was told with it
  const isAsDoubtful =
    doubtfulPlant(doubt) !== null && !heard.report.doubts.includes(doubt) && heard.taken.length === 0;
  if (isAsDoubtful) return outcome(thread, report, [say(scene.survey.wording, 'doubt-not-understood')], 'repeat');
  if (heard.understood) return { ...outcome(thread, heard.report), echo: briefly(heard.taken, heard.report, scene) };
  if (still !== report) return outcome(thread, still);
  const none = doubt.offers.length > 0 ? say(scene.survey.wording, 'doubt-not-understood') : null;
  return outcome(thread, report, [none], 'repeat');
}

const dropDoubt = (report: Report, doubt: Doubt): Report =>
  changed(report, { doubts: report.doubts.filter((other) => other !== doubt) });

const withoutUnread = (report: Report, doubt: Doubt): Report => {
  const dropped = dropDoubt(report, doubt);
  return changed(dropped, { tallyTyped: [...dropped.tallyTyped, doubt.typed] });
};

/** None of the offers: the field is asked anew. What was read in a live watch and meant nothing is let go. */
function declined(thread: Thread, report: Report, doubt: Doubt, scene: Scene): Outcome {
  const next = dropDoubt(report, doubt);
  if (doubt.ask === 'tally-unread-live') return outcome(thread, withoutUnread(report, doubt));
  const { dialog } = scene.survey;
  const question = dialog.questions.find(({ fields }) => fields.includes(doubt.field));
  const told = next.fields[doubt.field] !== undefined;
  if (question === undefined || told) return outcome(thread, next);
  const open = openFields(question.question, next, scene);
  const asked = changed(next, { asked: [...next.asked, question.question] });
  return open.includes(doubt.field)
    ? {
        ...outcome(
          { ...thread, asking: { kind: 'question', question: question.question, fields: [doubt.field], again: false } },
          asked,
        ),
        then: 'repeat',
      }
    : outcome(thread, asked);
}

/** The field in which a doubt's answer is shown. */
const shownField = ({ field }: Doubt): string => (field === 'flowers' ? 'plants' : field === 'total' ? 'tally' : field);

/** An offer chosen by its place, or by "can't tell"; of tallies on lines of their own by the line's number or words. */
function picked(report: Report, doubt: Doubt, text: string, scene: Scene): Report | null {
  const { offers } = doubt;
  if (offers.length < 2) return null;
  const context = contextOf(scene, report);
  const shown = shownOffers(doubt, report, scene);
  const areNumbers = doubt.field !== 'tally' && shown.some((offer) => /\d/.test(offer));
  const last = offers.at(-1) as { rank?: string };
  const at =
    chosenByPlace(text, offers.length, areNumbers, context) ??
    (last.rank === 'genus' && cannotTell(text, context) ? offers.length - 1 : null);
  return at === null ? null : settle(report, doubt, offers[at]!, scene);
}

function settle(report: Report, doubt: Doubt, offer: Json, scene: Scene): Report {
  const next = dropDoubt(report, doubt);
  if (doubt.field === 'flowers' && doubt.plant !== null)
    return setFlowers(next, doubt.plant, offer as unknown as Count, doubt.typed);
  if (doubt.field === 'total') return withTotal(next, (offer as { value: number }).value, doubt.typed, scene);
  return takeReading(next, doubt.field, { state: 'sure', value: offer, used: [] }, doubt.typed, scene);
}

/** Better words for a doubtful field: alone, or together with the words that were doubtful ("19" and then "celsius"). */
function readAgain(report: Report, doubt: Doubt, words: string, scene: Scene): Report | null {
  const without = dropDoubt(report, doubt);
  if (doubt.field === 'flowers' && doubt.plant !== null) {
    const reading = readCount(words, { ...contextOf(scene, report), of: 'flowers' });
    if (reading.state !== 'sure' || arePerhapsQueens(reading.value, doubt, words, scene)) return null;
    return setFlowers(without, doubt.plant, reading.value, words);
  }
  if (doubt.field === 'total') {
    const reading = readTotal(words, { ...contextOf(scene, report), of: 'queens' });
    return reading.state === 'sure' ? withTotal(without, reading.value, words, scene) : null;
  }
  if (doubt.field === 'times' && doubt.ask === 'times-no-end') {
    const times = endOf(doubt, words, scene, report);
    if (times !== null) return times;
  }
  // a name chosen among the offers by a part of it; where and when a picture was taken is nothing that they typed, and one plant of
  // several was looked for by its own words
  const isPlant = doubtfulPlant(doubt) !== null;
  // no plant that the list holds: an answer about the doubtful one, which would do away with all others
  if (isPlant && namedIn(words, contextOf(scene, report)).plants.length === 0) return null;
  const together = !OF_PICTURES.has(doubt.ask) && !isPlant;
  // "feet. it's the wet meadow side": asked with the patch, and not told yet
  const fields =
    doubt.field === 'patch' && report.fields['habitat'] === undefined ? ['patch', 'habitat'] : [doubt.field];
  for (const text of [words, ...(together ? [`${doubt.typed} ${words}`] : [])]) {
    const heard = hear(without, text, fields, scene);
    if (heard.taken.includes(doubt.field)) return heard.report;
  }
  return null;
}

/** "One big one, all yellow on top", where 200 flowers were doubted: no better number of them, unless it says so or is all that was said. */
function arePerhapsQueens({ value }: Count, { offers }: Doubt, text: string, { survey: { words } }: Scene): boolean {
  const doubted = (offers[0] as unknown as Count | undefined)?.value ?? 0;
  if (!isFew(value, doubted) || saysAnyOf(text, words.count.flowers)) return false;
  const { numbers, hedges, putRight, yesNo } = words;
  const beside = [hedges.soft, hedges.doubting, hedges.correcting, putRight.moreLike, yesNo.bareNo];
  const ofNumbers = new RegExp(anyOf(Object.keys(numbers.units), ...beside), 'gu');
  return /\p{L}{2}/u.test(fold(text).replace(ofNumbers, ' '));
}

/** The end of a watch whose start is known: a time of day, or a length. */
function endOf(doubt: Doubt, words: string, scene: Scene, report: Report): Report | null {
  const without = dropDoubt(report, doubt);
  const { to, lengthLeads } = scene.survey.words.times;
  for (const text of [
    words,
    `${doubt.typed} ${to[0] ?? '-'} ${words}`,
    `${doubt.typed} ${lengthLeads[0] ?? ''} ${words}`,
  ]) {
    const reading = readFields(text, contextOf(scene, report), ['times']).fields.times;
    if (reading?.state === 'sure' && reading.value.end !== null)
      return takeReading(without, 'times', reading, `${doubt.typed} ${words}`, scene);
  }
  return null;
}
