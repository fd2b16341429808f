/**
 * Which of several days, times or skies of a long note are the watch's: what one of its sentences tells for sure, where
 * no other tells anything else; and the day told beside the times.
 */
import { fold } from '../text.js';
import { isLong } from './asides.js';
import { blankLines } from './blank-lines.js';
import { passing, type FieldReadings, type Gathering, type Plain } from './gathering.js';
import { movedBy, type Reading, type Span } from '../reading.js';
import { isWithin, paragraphsIn, sentencesIn } from './sentences.js';

/** Sentences that are read one by one, at most: a mail of two thousand letters has some thirty. */
const MOST_SENTENCES = 60;

const NARROWED: readonly Plain[] = ['times', 'patch', 'sky', 'wind', 'temperature'];

/** What a sentence tells of a field by itself; words that other fields used are no part of it. */
function toldIn(gathering: Gathering, field: Plain, [from, to]: Span): Reading<unknown> | null {
  // the "this morning" of times is a day too
  const others = gathering.usedBy((other) => other !== field && !(field === 'date' && other === 'times'));
  const text = blankLines(gathering.text, others).slice(from, to);
  const reading = text.trim() === '' ? null : passing(field, text, gathering.context);
  return reading && movedBy(from, reading as Reading<never>);
}

const valueOf = (reading: Reading<unknown>): string => JSON.stringify(reading.state === 'sure' ? reading.value : null);

/** The one thing that the sentences tell for sure; null where they differ or one of them is in doubt. */
function onlyToldIn(gathering: Gathering, field: Plain, sentences: readonly Span[]): Reading<unknown> | null {
  const told = sentences.flatMap((sentence) => toldIn(gathering, field, sentence) ?? []);
  const sure = told.filter(({ state }) => state === 'sure');
  const isWhole = (reading: Reading<unknown>): boolean =>
    field !== 'times' || (reading.state === 'sure' && (reading.value as { end: string | null }).end !== null);
  const whole = sure.filter(isWhole);
  const values = new Set(whole.map(valueOf));
  return values.size === 1 && (field === 'times' || told.length === whole.length) ? whole[0]! : null;
}

/** Takes the day of the sentence that tells the times, and else that of the one sentence with a day. */
function settleDate(gathering: Gathering, sentences: readonly Span[]): void {
  const date = gathering.get('date');
  const times = gathering.get('times');
  if (date === undefined || date.state === 'none') return;
  const besideTimes =
    times?.state === 'sure' ? sentences.filter((sentence) => times.used.some((span) => isWithin(span, sentence))) : [];
  const isBeside = date.used.every((span) => besideTimes.some((sentence) => isWithin(span, sentence)));
  if (date.state === 'sure' && (besideTimes.length === 0 || isBeside)) return;
  const beside = onlyToldIn(gathering, 'date', besideTimes);
  const reading = beside ?? (date.state === 'unsure' ? onlyToldIn(gathering, 'date', sentences) : null);
  if (reading) gathering.take('date', reading as NonNullable<FieldReadings['date']>);
}

/** The sentences of the paragraph that tells the times. */
function paragraphOfTimes(gathering: Gathering, folded: string): Span[] {
  const times = gathering.get('times');
  if (times?.state !== 'sure') return [];
  const paragraph = paragraphsIn(folded).find((span) => times.used.some((used) => isWithin(used, span)));
  return paragraph ? sentencesIn(folded).filter((sentence) => isWithin(sentence, paragraph)) : [];
}

/** Settles what several sentences of a long note tell of one field. */
export function settleSeveral(gathering: Gathering): void {
  const folded = fold(gathering.text);
  const sentences = sentencesIn(folded);
  if (!isLong(folded, sentences) || sentences.length > MOST_SENTENCES) return;
  for (const field of NARROWED) {
    if (gathering.get(field)?.state !== 'unsure') continue;
    const reading =
      onlyToldIn(gathering, field, paragraphOfTimes(gathering, folded)) ?? onlyToldIn(gathering, field, sentences);
    if (reading) gathering.take(field, reading as never);
  }
  settleDate(gathering, sentences);
}
