/** Which clock times of a text are the start and the end of a watch, before their halves of the day are settled. */
import type { Clock } from './clock.js';
import type { Part, Parts } from './time-parts.js';

/** Minutes of the start's own hour, or of the next; `hours` where the number can be an hour too. */
export interface MinuteEnd {
  readonly minute: number;
  readonly hours: number | null;
  readonly at: number;
  readonly next: number;
}

export type End = Clock | MinuteEnd;

export interface Span {
  readonly start: Clock;
  readonly end: End;
  /** "3:20 to 3:35 or 3:40". */
  readonly orEnd: Clock | null;
  /** "2" was typed where "to" was meant, or "between 2 and 3" says only roughly when. */
  readonly doubtful: boolean;
}

export interface Told {
  readonly spans: readonly Span[];
  readonly starts: readonly Clock[];
  readonly ends: readonly End[];
  /** Times with no word that says which they are. */
  readonly plain: readonly Clock[];
  /** Nothing but signs and small words stands between the first two plain ones. */
  readonly plainTogether: boolean;
  /** "2:15 or 2:30". */
  readonly either: boolean;
  readonly lengths: readonly {
    readonly minutes: number;
    readonly inexact: boolean;
    readonly at: number;
    readonly next: number;
  }[];
}

/** How many words may stand between a label and its time: "started my watch at". */
const MOST_WORDS_AFTER_LABEL = 4;

export const isAt = (part: Part | undefined): boolean =>
  part?.is === 'sign' || (part?.is === 'link' && (part.link === 'at' || part.link === 'end-after-start'));

/** The next part that is no filler. */
export function skipAt(parts: readonly Part[], at: number): number {
  let next = at;
  while (isAt(parts[next])) next++;
  return next;
}

/** The clock or minute that a "to" after `at` leads to: its index, or null. */
export function linkedTo(parts: readonly Part[], at: number): number | null {
  let next = skipAt(parts, at + 1);
  const part = parts[next];
  if (part?.is !== 'link' || part.link !== 'to') return null;
  for (;;) {
    const following = parts[next];
    const filler =
      isAt(following) || (following?.is === 'link' && (following.link === 'to' || following.link === 'end'));
    if (!filler) break;
    next++;
  }
  return parts[next]?.is === 'clock' || parts[next]?.is === 'minute' ? next : null;
}

/** "and 2:15" after "between 2". */
export function linkedByAnd(parts: readonly Part[], at: number): number | null {
  const and = parts[skipAt(parts, at + 1)];
  if (and?.is !== 'link' || and.link !== 'and') return null;
  const next = skipAt(parts, skipAt(parts, at + 1) + 1);
  return parts[next]?.is === 'clock' || parts[next]?.is === 'minute' ? next : null;
}

type Role = 'start' | 'end' | 'between' | 'aside' | 'none';

/** What the words before a time call it. */
export function roleBefore(parts: readonly Part[], at: number): Role {
  let words = 0;
  for (let before = at - 1; before >= 0; before--) {
    const part = parts[before];
    if (!part || part.is === 'stop' || part.is === 'clock' || part.is === 'minute' || part.is === 'length')
      return 'none';
    if (part.is === 'other') {
      words += part.words;
      if (words > MOST_WORDS_AFTER_LABEL) return 'none';
      continue;
    }
    if (part.is === 'sign' || part.link === 'at' || part.link === 'or') continue;
    switch (part.link) {
      case 'start':
        return 'start';
      case 'end':
        return 'end';
      case 'to':
        // "out to the redbud at 9:30" leads to a place
        return words === 0 ? 'end' : 'none';
      case 'end-after-start':
        if (parts.slice(0, before).some(({ is }) => is === 'clock')) return 'end';
        continue;
      case 'between':
        return 'between';
      case 'aside':
        return 'aside';
      case 'before':
        // "15 minutes before noon"
        return parts[before - 1]?.is === 'length' ? 'end' : 'none';
      case 'and':
      case 'after':
        return 'none';
    }
  }
  return 'none';
}

/** "10:40 start, 10:55 end": the labels follow. The role of each clock by its index, or null. */
function rolesAfter(parts: readonly Part[]): Map<number, Role> | null {
  const clocks = parts.flatMap((part, at) => (part.is === 'clock' ? [at] : []));
  const labels = parts.flatMap((part, at) =>
    part.is === 'link' && (part.link === 'start' || part.link === 'end') ? [at] : [],
  );
  const [firstClock] = clocks;
  const [firstLabel] = labels;
  if (firstClock === undefined || firstLabel === undefined || firstLabel < firstClock) return null;
  if (clocks.length !== labels.length) return null;
  const roles = new Map<number, Role>();
  for (const [i, clock] of clocks.entries()) {
    const label = labels[i];
    const part = label === undefined ? undefined : parts[label];
    const next = clocks[i + 1] ?? parts.length;
    if (label === undefined || part?.is !== 'link' || label < clock || label > next) return null;
    // "10, ended quarter past"
    if (part.link === 'end' && parts[skipAt(parts, label + 1)]?.is === 'minute') return null;
    // "up to 10:30, started 15 minutes before"
    if (part.link === 'start' && parts[skipAt(parts, label + 1)]?.is === 'length') return null;
    const between = parts.slice(clock + 1, label);
    if (between.some((one) => !isAt(one) && (one.is !== 'other' || one.words > MOST_WORDS_AFTER_LABEL))) return null;
    roles.set(clock, part.link === 'start' ? 'start' : 'end');
  }
  return roles;
}

export function toldTimes({ parts }: Parts): Told {
  const spans: Span[] = [];
  const starts: Clock[] = [];
  const ends: End[] = [];
  const plain: { clock: Clock; index: number }[] = [];
  const lengths = parts.flatMap((part) => (part.is === 'length' ? [part.length] : []));
  const rolesByLabelAfter = rolesAfter(parts);
  let either = false;

  for (let at = 0; at < parts.length; at++) {
    const part = parts[at];
    if (part?.is === 'minute' && roleBefore(parts, at) === 'end') ends.push(part);
    if (part?.is !== 'clock') continue;
    const role = rolesByLabelAfter?.get(at) ?? roleBefore(parts, at);
    const to = linkedTo(parts, at) ?? (role === 'between' ? linkedByAnd(parts, at) : null);
    const end = to === null ? undefined : parts[to];
    if (to !== null && (end?.is === 'clock' || end?.is === 'minute')) {
      const or = parts[skipAt(parts, to + 1)];
      const other = parts[skipAt(parts, skipAt(parts, to + 1) + 1)];
      const isOr = or?.is === 'link' && or.link === 'or' && other?.is === 'clock';
      const hasOther = isOr && linkedTo(parts, parts.indexOf(other)) === null;
      spans.push({
        start: part.clock,
        end: end.is === 'clock' ? end.clock : end,
        orEnd: hasOther ? other.clock : null,
        doubtful:
          parts.slice(at, to).some((link) => link.is === 'link' && link.typed) ||
          (role === 'between' && part.clock.form === 'hour' && end.is === 'clock' && end.clock.form === 'hour'),
      });
      at = hasOther ? parts.indexOf(other) : to;
      continue;
    }
    const previous = parts[at - 1];
    if (previous?.is === 'link' && previous.link === 'or' && parts[at - 2]?.is === 'clock') either = true;
    if (role === 'start' || role === 'between') starts.push(part.clock);
    else if (role === 'end') ends.push(part.clock);
    else if (role === 'none') {
      // "after 2", "before 2": only roughly when
      const roughly = previous?.is === 'link' && (previous.link === 'after' || previous.link === 'before');
      plain.push({ clock: roughly ? { ...part.clock, doubtful: true } : part.clock, index: at });
    }
  }

  const [one, two] = plain;
  const between = one && two ? parts.slice(one.index + 1, two.index) : [];
  const plainTogether =
    plain.length === 2 &&
    between.every((part) => isAt(part) || (part.is === 'link' && part.link === 'and') || part.is === 'stop');
  return { spans, starts, ends, plain: plain.map(({ clock }) => clock), plainTogether, either, lengths };
}
