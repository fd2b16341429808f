/** "I ended at 2:30": start or end told by itself at the summary, beside the other one that is known. */
import type { Words } from '../../../shared/words.js';
import { anyAfterDigits, anyOf, fold, madeOnce, readTimes } from '../../answers/index.js';
import { contextOf, toldTimes } from '../hear.js';
import { minutesOf, tell } from '../fields.js';
import type { Report, Scene } from '../types.js';

/** A watch told so is no longer. Common practice, no source. */
const LONGEST_MINUTES = 90;

/** "14:05" as "2:05 pm": beside it a bare "2:30" is of the same half of the day. */
function halfDay(clock: string, { survey }: Scene): string {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  const half = survey.words.times[hours < 12 ? 'am' : 'pm'][0] ?? '';
  return `${hours % 12 || 12}:${String(minutes).padStart(2, '0')} ${half}`;
}

/** "I ended at", "the start should be", and the clock behind it. */
const saysTime = madeOnce(({ times, place, putRight, wishes }: Words) => {
  const opens = `(?:${anyOf(putRight.saysNo)}[\\s,.]*)?(?:(?:${anyOf(putRight.ofTimes, place.sentenceLeads)})\\s+)?`;
  const which = `(?:(?<end>${anyOf(times.ends)})|${anyOf(times.starts)})`;
  const half = anyAfterDigits([...times.am, ...times.pm, ...times.amLetters, ...times.pmLetters]);
  // "started with 2 imps" tells no time
  const clock = `(?<clock>\\d{1,2}(?:[:.]?\\d{2})?\\s*(?:${half})?)[\\s.!]*$`;
  return new RegExp(`^\\s*${opens}${which}(?:\\s+(?:${anyOf(wishes.becomes)}|\\p{L}{2,4}))?[\\s:]+${clock}`, 'u');
});

/** Null where the text tells anything else, or no watch could have run so. */
export function correctOneTime(report: Report, text: string, scene: Scene): Report | null {
  const times = toldTimes(report);
  if (times === null) return null;
  const { to } = scene.survey.words.times;
  const said = saysTime(scene.survey.words).exec(fold(text));
  const clock = said?.groups?.['clock'];
  if (clock === undefined) return null;
  const isEnd = said?.groups?.['end'] !== undefined;
  const whole = isEnd
    ? `${halfDay(times.start, scene)} ${to[0]} ${clock}`
    : `${clock} ${to[0]} ${halfDay(times.end, scene)}`;
  const reading = readTimes(whole, contextOf(scene, report));
  if (reading.state !== 'sure') return null;
  const { start, end } = reading.value;
  if (end === null) return null;
  // "started at 9 am" of a watch that ended at 2:25 is rather a slip
  return minutesOf({ start, end }) > LONGEST_MINUTES
    ? null
    : tell(report, 'times', { start, end }, text, scene.message.id);
}
