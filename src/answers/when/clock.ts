/** One clock time as people write it: "3:20", "3.20 pm", "1520", "15h20", "half past two", "two twenty", "noon". */
import type { Words } from '../../../shared/words.js';
import { stuckSigns } from './numeric-days.js';
import type { TimeWords, Window } from './time-words.js';
import { smallNumberAt, type Token } from './tokens.js';

export interface TimeScan {
  readonly tokens: readonly Token[];
  readonly words: Words;
  readonly timeWords: TimeWords;
  /** Tokens that belong to a date. */
  readonly taken: readonly boolean[];
  /** Minutes a watch of the survey takes. */
  readonly watchMinutes: number;
  /** The year's number is no clock time ("2026"). */
  readonly year: number;
  /** `HH:MM` of the message. */
  readonly now: string;
}

export interface Clock {
  /** As said, 0 to 24. */
  readonly hour: number;
  readonly minute: number;
  /** Minutes from that hour, for "quarter to three": -15. */
  readonly offset: number;
  readonly half: 'am' | 'pm' | null;
  /** Noon and midnight: no half of the day is left open. */
  readonly fixed: boolean;
  /**
   * `certain` can be nothing but a time ("3:20", "3pm"); `figures` can be a number ("3.20", "320", "two twenty");
   * `hour` is a bare number.
   */
  readonly form: 'certain' | 'figures' | 'hour';
  /** "in the afternoon" right after it. */
  readonly window: Window | null;
  /** "half ten": half past or half to. */
  readonly doubtful: boolean;
  /** "ten to three": a time, or from ten to three. */
  readonly orSpan: { readonly from: number; readonly to: number } | null;
  /** "0740": nobody writes so but on a clock of 24 hours; "07:40" may be padded by a spreadsheet. */
  readonly padded: boolean;
  /** "25:10": written like a time, and none. */
  readonly impossible: boolean;
  readonly at: number;
  readonly next: number;
}

type Bare = Omit<Clock, 'at'>;

const bare = (hour: number, minute: number, form: Clock['form'], next: number, more: Partial<Bare> = {}): Bare => ({
  hour,
  minute,
  offset: 0,
  half: null,
  fixed: false,
  form,
  window: null,
  doubtful: false,
  orSpan: null,
  padded: false,
  impossible: false,
  next,
  ...more,
});

const HOURS_OF_CLOCK = 12;
const isMinutes = (token: Token | undefined): token is Token =>
  token?.kind === 'number' && token.text.length === 2 && Number(token.text) < 60;

/** A bare hour, "3", "three" or "noon", after "half past" and the like; 1 to 12. */
function hourAt(
  { tokens, words, timeWords }: TimeScan,
  at: number,
): { hour: number; fixed: boolean; next: number } | null {
  const noon = timeWords.noon(tokens, at);
  if (noon) return { hour: noon.value, fixed: true, next: noon.next };
  const number = smallNumberAt(tokens, at, words.numbers);
  if (!number || number.value < 1 || number.value > HOURS_OF_CLOCK) return null;
  const after = tokens[number.next];
  if (after?.text === ':' && tokens[number.next + 1]?.kind === 'number') return null;
  return { hour: number.value, fixed: false, next: number.next };
}

/** "half past ten", "quarter to 3", "half ten". */
function fromHour(scan: TimeScan, at: number): Bare | null {
  const { tokens, timeWords } = scan;
  const said = timeWords.fromHour(tokens, at);
  if (said) {
    const hour = hourAt(scan, said.next);
    return hour && bare(hour.hour, 0, 'certain', hour.next, { offset: said.value, fixed: hour.fixed });
  }
  const half = timeWords.halfOnly(tokens, at);
  const hour = half && hourAt(scan, half.next);
  if (!hour || hour.fixed || timeWords.measures(tokens, hour.next)) return null;
  return bare(hour.hour, 0, 'certain', hour.next, { offset: 30, doubtful: true });
}

/** Minutes that people say before an hour without the word "minutes". */
const MINUTES_TO = new Set([5, 10, 15, 20, 25]);

/** "10 past 3", "five minutes to three"; "ten to three" may be a span as well. */
function minutesFromHour(scan: TimeScan, at: number): Bare | null {
  const { tokens, words, timeWords, watchMinutes } = scan;
  const minutes = smallNumberAt(tokens, at, words.numbers);
  if (!minutes || minutes.value < 1 || minutes.value > 59) return null;
  const unit = timeWords.minuteUnits(tokens, minutes.next);
  const from = unit?.next ?? minutes.next;
  const past = timeWords.past(tokens, from);
  const to = past ? null : timeWords.minutesTo(tokens, from);
  const hour = hourAt(scan, past?.next ?? to?.next ?? tokens.length);
  if (!hour) return null;
  if (past) return bare(hour.hour, 0, 'certain', hour.next, { offset: minutes.value, fixed: hour.fixed });
  const lead = at > 0 ? timeWords.links(tokens, at - 1)?.value : undefined;
  const fromLead = lead === 'start' || lead === 'between';
  // "15 minutes before noon" is a watch that ends at noon
  if (unit && minutes.value === watchMinutes) return null;
  if (!unit && !MINUTES_TO.has(minutes.value)) return null;
  if (!unit && (wordsMinute(scan, hour.next) || isMinutes(tokens[hour.next]))) return null;
  const after = tokens[hour.next];
  const goesOn =
    after && !after.spaced && (after.text === ':' || after.text === '.') && tokens[hour.next + 1]?.kind === 'number';
  const said = timeWords.am(tokens, hour.next) ?? timeWords.pm(tokens, hour.next);
  if (goesOn || (!unit && said && minutes.value <= HOURS_OF_CLOCK)) return null;
  // "from 10 to 3" is a span
  if (!unit && fromLead && minutes.value <= HOURS_OF_CLOCK) return null;
  if (!unit && timeWords.measures(tokens, hour.next)) return null;
  const before = timeWords.links(tokens, from)?.value === 'before';
  const orSpan = !unit && !before && minutes.value <= HOURS_OF_CLOCK ? { from: minutes.value, to: hour.hour } : null;
  const form = unit ? 'certain' : 'figures';
  return bare(hour.hour, 0, form, hour.next, { offset: -minutes.value, fixed: hour.fixed, orSpan });
}

/** "twenty", "thirty five", "fifteen", "oh five" after an hour in words. */
function wordsMinute(
  { tokens, words, timeWords }: Pick<TimeScan, 'tokens' | 'words' | 'timeWords'>,
  at: number,
): { minute: number; next: number } | null {
  const oh = timeWords.oh(tokens, at);
  const minute = smallNumberAt(tokens, oh?.next ?? at, words.numbers);
  if (minute?.written !== 'words') return null;
  if (oh ? minute.value > 9 : minute.value < 10 || minute.value > 59) return null;
  return { minute: minute.value, next: minute.next };
}

/** "fourteen hundred", "oh nine thirty", "fourteen fifteen": as soldiers say it. */
function asSoldiers({ tokens, words, timeWords, year }: TimeScan, at: number): Bare | null {
  const oh = timeWords.oh(tokens, at);
  const hour = smallNumberAt(tokens, oh?.next ?? at, words.numbers);
  if (hour?.written !== 'words' || hour.value > 23 || (oh ? hour.value > 9 : hour.value < 1)) return null;
  if (words.numbers.scales[tokens[hour.next]?.text ?? ''] === 100) {
    return oh || hour.value > 9 ? bare(hour.value, 0, 'hour', hour.next + 1) : null;
  }
  const minute = wordsMinute({ tokens, words, timeWords }, hour.next);
  if (!minute || (!oh && hour.value <= HOURS_OF_CLOCK)) return null;
  if (Math.abs(hour.value * 100 + minute.minute - year) <= 1) return null;
  return bare(hour.value, minute.minute, 'figures', minute.next);
}

/** "two twenty", "two-fifteen", "three oh five", "two". */
function inWords(scan: TimeScan, at: number): Bare | null {
  const { tokens, words } = scan;
  const soldierly = asSoldiers(scan, at);
  if (soldierly) return soldierly;
  const hour = words.numbers.units[tokens[at]?.text ?? ''];
  if (hour === undefined || hour < 1 || hour > HOURS_OF_CLOCK) return null;
  const hyphen = tokens[at + 1];
  const minute = wordsMinute(scan, hyphen?.text === '-' && !hyphen.spaced ? at + 2 : at + 1);
  if (minute) return bare(hour, minute.minute, 'figures', minute.next);
  if (words.numbers.scales[tokens[at + 1]?.text ?? ''] !== undefined) return null;
  return bare(hour, 0, 'hour', at + 1);
}

/** "3:20", "3;20", "3 : 20", "15:20:35". */
function withColon({ tokens }: TimeScan, at: number): Bare | null {
  const [hour, colon, minute] = tokens.slice(at, at + 3);
  if (!hour || !colon || minute?.kind !== 'number' || hour.text.length > 2 || minute.text.length !== 2) return null;
  if (colon.text !== ':' && !(colon.text === ';' && !colon.spaced && !minute.spaced)) return null;
  const seconds = tokens[at + 3]?.text === ':' && isMinutes(tokens[at + 4]) && !tokens[at + 4]?.spaced;
  const next = seconds ? at + 5 : at + 3;
  // "43:30:12 N" is a latitude
  if (seconds && ['n', 's', 'e', 'w'].includes(tokens[next]?.text ?? '')) return null;
  const impossible = Number(hour.text) > 23 || Number(minute.text) > 59;
  return bare(Number(hour.text), Number(minute.text), 'certain', next, { impossible });
}

/** "15h20", "15 h 20", "15h". */
function withHourMark({ tokens, timeWords }: TimeScan, at: number): Bare | null {
  const hour = tokens[at];
  if (!hour || hour.text.length > 2 || Number(hour.text) > 23 || tokens[at + 1]?.text !== 'h') return null;
  const minute = tokens[at + 2];
  if (isMinutes(minute) && !timeWords.minuteUnits(tokens, at + 3)) {
    return bare(Number(hour.text), Number(minute.text), 'certain', at + 3);
  }
  return Number(hour.text) > HOURS_OF_CLOCK ? bare(Number(hour.text), 0, 'certain', at + 2) : null;
}

/** "3.20", "3 20", "320", "1520", "3". */
function inFigures(scan: TimeScan, at: number): Bare | null {
  const { tokens, timeWords, year } = scan;
  const token = tokens[at];
  if (!token) return null;
  const [mark, minute] = tokens.slice(at + 1, at + 3);
  const short = token.text.length <= 2 && Number(token.text) <= 23;
  // "100%", "40°"
  if (mark && !mark.spaced && ['%', '°', "'", '"'].includes(mark.text)) return null;

  if (short && mark?.text === '.' && !mark.spaced && minute?.kind === 'number' && !minute.spaced) {
    const goesOn = tokens[at + 3]?.text === '.' && tokens[at + 4]?.kind === 'number' && !tokens[at + 4]?.spaced;
    if (!isMinutes(minute) || goesOn) return null;
    return bare(Number(token.text), Number(minute.text), 'figures', at + 3);
  }
  if (short && isMinutes(mark)) {
    const [after, second] = tokens.slice(at + 2, at + 4);
    const ownNumber =
      after !== undefined &&
      !after.spaced &&
      [':', '.', '%', '°'].includes(after.text) &&
      (second?.kind === 'number' || after.text !== '.');
    const measured = timeWords.minuteUnits(tokens, at + 2) ?? timeWords.measures(tokens, at + 2);
    if (!ownNumber && !measured) return bare(Number(token.text), Number(mark.text), 'figures', at + 2);
  }
  // "2 thirty"
  const spoken = short && Number(token.text) > 0 && mark?.spaced === true ? wordsMinute(scan, at + 1) : null;
  if (spoken && !timeWords.minuteUnits(tokens, spoken.next) && !timeWords.measures(tokens, spoken.next)) {
    return bare(Number(token.text), spoken.minute, 'figures', spoken.next);
  }
  if (token.text.length === 3 || token.text.length === 4) {
    const hour = Number(token.text.slice(0, -2));
    const minutes = Number(token.text.slice(-2));
    const isYear = Math.abs(Number(token.text) - year) <= 1;
    if (hour > 23 || minutes > 59 || isYear || (hour === 0 && token.text.length === 3)) return null;
    return bare(hour, minutes, 'figures', at + 1);
  }
  return short ? bare(Number(token.text), 0, 'hour', at + 1) : null;
}

/** "-0500" after "15:20:00": the zone, as computers write it. */
function isZone(tokens: readonly Token[], at: number): boolean {
  const [minuteColon, minute, secondColon, second, sign, zone] = tokens.slice(Math.max(0, at - 5), at + 1);
  if (!/^[01]\d(?:00|30|45)$/.test(zone?.text ?? '') || (sign?.text !== '-' && sign?.text !== '+')) return false;
  const seconds = minuteColon?.text === ':' && secondColon?.text === ':' && minute?.spaced === false;
  return seconds && second?.kind === 'number' && zone?.spaced === false;
}

/** What follows a time and belongs to it: "pm", "o'clock", "h", "ish", "in the afternoon". */
function withSuffix({ tokens, timeWords }: TimeScan, clock: Bare): Bare {
  let said = clock;
  for (let more = 0; more < 5; more++) {
    const at = said.next;
    const token = tokens[at];
    if (!token) return said;
    const hyphened = token.text === '-' && timeWords.afterTime(tokens, at + 1) ? at + 1 : at;
    const loose = timeWords.afterTime(tokens, hyphened);
    // "6:10 a to 6:25 a"; "3:10 a lovely day" has an article
    const after = tokens[at + 1];
    const ends = !after || after.kind === 'sign' || timeWords.links(tokens, at + 1)?.value === 'to';
    const letter = (!token.spaced || (said.form === 'certain' && ends)) && said.half === null;
    const am = timeWords.am(tokens, at) ?? (letter ? timeWords.amLetters(tokens, at) : null);
    const pm = timeWords.pm(tokens, at) ?? (letter ? timeWords.pmLetters(tokens, at) : null);
    const oclock = timeWords.oclock(tokens, at);
    const hours = said.form !== 'hour' && said.offset === 0 ? timeWords.hourMarks(tokens, at) : null;
    const window = said.window === null ? timeWords.partsOfDay(tokens, at) : null;
    if ((am ?? pm) && said.half === null) {
      said = { ...said, half: am ? 'am' : 'pm', form: 'certain', next: (am ?? pm)?.next ?? at };
    } else if (oclock) said = { ...said, form: 'certain', next: oclock.next };
    else if (hours) said = { ...said, form: 'certain', next: hours.next };
    else if (window?.value) said = { ...said, window: window.value, next: window.next };
    else if (loose) said = { ...said, next: loose.next };
    else return said;
  }
  return said;
}

/** The time of the message, for "until now"; doubtful, for it may be told later than it happened. */
export function clockOfNow({ now }: TimeScan, at: number, next: number): Clock {
  const hour = Number(now.slice(0, 2));
  const minute = Number(now.slice(3));
  return { ...bare(hour, minute, 'certain', next, { fixed: true, doubtful: true }), at };
}

/** The clock time that begins at a token, as said; null where none does. */
export function clockAt(scan: TimeScan, at: number): Clock | null {
  const { tokens, timeWords, taken } = scan;
  const token = tokens[at];
  if (!token || taken[at] === true) return null;
  const noon = timeWords.noon(tokens, at);
  if (noon) return { ...withSuffix(scan, bare(noon.value, 0, 'certain', noon.next, { fixed: true })), at };
  // "3:20to3:35" is stuck to its link only, and "2026-05-02T15:20" to its date
  const afterDate = tokens[at - 1]?.text === 't' && taken[at - 2] === true;
  const stuck = stuckSigns(tokens, at) && !afterDate && !timeWords.links(tokens, at - 1);
  if (token.kind === 'number' && (stuck || isZone(tokens, at))) return null;
  const said =
    fromHour(scan, at) ??
    minutesFromHour(scan, at) ??
    (token.kind === 'number'
      ? (withColon(scan, at) ?? withHourMark(scan, at) ?? inFigures(scan, at))
      : inWords(scan, at));
  if (!said || tokens.slice(at, said.next).some((_, i) => taken[at + i] === true)) return null;
  const padded = token.kind === 'number' && /^0\d{3}$/.test(token.text);
  return { ...withSuffix(scan, said), padded, at };
}
