/**
 * What the writer of a note or mail meant to say: greeting, signature, quoted and forwarded text, header lines and
 * numbers that are no values (age, room, telephone) are blanked out, line by line and in one pass. Positions stay.
 */
import type { Words } from '../../../shared/words.js';
import type { Span } from '../reading.js';
import { fold, madeOnce } from '../text.js';
import { blankLines } from './blank-lines.js';
import { listNumbersIn } from './list-numbers.js';
import { anyOf } from '../any-of.js';

/** Own lines in a row. `question` is the quoted text they stand under, folded: it gives a bare answer its meaning. */
export interface OwnPart {
  readonly span: Span;
  readonly question: string | null;
}

export interface OwnText {
  /** As long as the text as typed; what is not the writer's own is blank. Line ends are kept. */
  readonly text: string;
  /** As `text`, with the numbers of a list: "4. should be 68". */
  readonly numbered: string;
  readonly parts: readonly OwnPart[];
}

interface Line {
  readonly from: number;
  readonly to: number;
  readonly folded: string;
}

/** A signature has few lines; more of them, or a label, are a note that goes on after its thanks. */
const MOST_SIGNATURE_LINES = 7;
/** Behind a closing on the same line: a name, a degree, an age. */
const MOST_SIGNATURE_LETTERS = 160;
/** "On Sunday, 3 May 2026 at 18:00 somebody with a long name" may break over this many lines before "wrote:". */
const MOST_ATTRIBUTION_LINES = 4;

const patternsOf = madeOnce((note: Words['note']) => {
  const header = anyOf(note.mailHeaders);
  const strong = anyOf(note.closings);
  const weak = anyOf(note.weakClosings);
  return {
    quoted: /^[ \t]*(?:>|&gt;)/u,
    header: new RegExp(`^[ \\t]*\\*{0,2}(?<name>${header})[ \\t]*:\\*{0,2}(?:[ \\t]|$)`, 'u'),
    separator: new RegExp(
      `^[ \\t]*[-_=*]{0,40}[ \\t]*(?:${anyOf(note.quotedBelow)})[ \\t]*:?[ \\t]*[-_=*]{0,40}[ \\t]*$`,
      'u',
    ),
    ruler: /^[ \t]*_{8,}[ \t]*$/u,
    signatureMark: /^--[ \t]*$/u,
    attributionBegins: new RegExp(`^[ \\t]*(?:${anyOf(note.attributionBegins)})(?![\\p{L}\\p{N}])`, 'u'),
    attributionEnds: new RegExp(`(?:${anyOf(note.wrote)})[ \\t]*:?[ \\t]*$`, 'u'),
    sentFrom: new RegExp(`^[ \\t]*(?:${anyOf(note.sentFrom)})(?![\\p{L}\\p{N}])`, 'u'),
    postscript: new RegExp(`^[ \\t]*(?:${anyOf(note.postscripts)})(?![\\p{L}\\p{N}])[ \\t.:,-]*`, 'u'),
    closingLine: new RegExp(
      `^[ \\t]*(?:and )?(?:${strong}|${weak})(?: (?:again|everyone|all|so much|a lot))?[ \\t]*[,.!~-]*[ \\t]*(?:[ \\t]*[\\p{L}.'-]{1,30}){0,3}[ \\t]*$`,
      'u',
    ),
    strongLine: new RegExp(`^[ \\t]*(?:and )?(?:${strong})(?![\\p{L}\\p{N}])`, 'u'),
    strongWithin: new RegExp(`(?:^|[.!?)\\]"'][ \\t]+)(?<closing>(?:${strong})[ \\t]*(?:[,!.-]|(?=\\n|$)))`, 'gu'),
    weakWithin: new RegExp(
      `(?:^|[.!?,;)\\]"-][ \\t]*|[ \\t])(?<closing>(?:${weak})[ \\t]*[,!.~-]*[ \\t]*(?:[\\p{L}.'-]+[ \\t]*){0,2}[.!]?[ \\t]*)$`,
      'u',
    ),
    greeting: new RegExp(`^[ \\t]*(?:${anyOf(note.greetings)})(?![\\p{L}\\p{N}'])`, 'u'),
    /** Behind a greeting: "there", "Ines and all". */
    greeted: new RegExp(`^(?:[ \\t]+(?:${anyOf(note.greeted)})){0,6}[ \\t]*(?:[,!.:;~-]+|$)`, 'u'),
    /** "from Fort Frances," with nothing else on its line: as typed. */
    greetingLine: new RegExp(
      `^(?:[ \\t]+(?:${anyOf(note.greeted)}|\\p{Lu}[\\p{L}.'’-]{0,30})){1,8}[ \\t]*[,!.]?[ \\t]*$`,
      'u',
    ),
    label: new RegExp(`^[ \\t]*[*-]?[ \\t]*(?:${anyOf(Object.values(note.labels).flat())})[ \\t]*[:=]`, 'u'),
    asides: new RegExp(
      [
        // (608) 555-0142, 608.555.0142, +1 608 555 0142
        '(?<![\\p{L}\\p{N}.])(?:\\+?1[ .-]?)?(?:\\(\\d{3}\\)[ ]?|\\d{3}[ .-])\\d{3}[ .-]\\d{4}(?![\\p{N}])',
        '[\\p{L}\\p{N}._%+-]{1,64}@[\\p{L}\\p{N}.-]{1,200}',
        `${anyOf(note.chat)}`,
        // age 86, Room 212, Apt. 3B
        `(?<![\\p{L}\\p{N}])(?:${anyOf(note.asidesBefore)})[ .:#]{0,3}\\d{1,6}[a-z]?(?![\\p{L}\\p{N}])`,
        // 86 years old
        `(?<![\\p{L}\\p{N}.])\\d{1,3}[ -]?(?:${anyOf(note.asidesAfter)})(?![\\p{L}\\p{N}])`,
        // watch no. 2, survey #3
        `(?<![\\p{L}\\p{N}])(?:my )?(?:${anyOf(note.watchNouns)})[ ]*(?:no\\.?|nr\\.?|number|num\\.?|#)[ ]*#?\\d{1,4}(?![\\p{L}\\p{N}])`,
        // "Watch 3" on a line of its own
        `(?<=^|\\n)[ \\t]*(?:${anyOf(note.watchNouns)})[ ]+\\d{1,3}[ \\t]*(?=[:.\\n]|$)`,
        // second watch, 3rd survey
        `(?<![\\p{L}\\p{N}])(?:my |our )?(?:${anyOf(note.ordinals)}|\\d{1,2}(?:st|nd|rd|th))[ -](?:${anyOf(note.watchNouns)})(?![\\p{L}\\p{N}])`,
      ].join('|'),
      'gu',
    ),
  };
});

type Patterns = ReturnType<typeof patternsOf>;

function linesOf(folded: string): Line[] {
  const lines: Line[] = [];
  let from = 0;
  while (from <= folded.length) {
    const end = folded.indexOf('\n', from);
    const to = end === -1 ? folded.length : end;
    lines.push({ from, to, folded: folded.slice(from, to).replace(/\r/g, ' ') });
    from = to + 1;
  }
  return lines;
}

const isBlank = (line: Line | undefined): boolean => line === undefined || line.folded.trim() === '';

/** The last line of "On Sunday … wrote:" that begins at `at`; null where none does. */
function attributionEnd(lines: readonly Line[], at: number, patterns: Patterns): number | null {
  const first = lines[at]!.folded;
  // "Watch Helper <coordinator@…> wrote:" on one line
  if (/<[^>]*>|@/.test(first) && patterns.attributionEnds.test(first)) return at;
  if (!patterns.attributionBegins.test(first)) return null;
  for (let end = at; end < Math.min(at + MOST_ATTRIBUTION_LINES, lines.length); end++) {
    const line = lines[end]!.folded;
    if (end > at && (line.trim() === '' || patterns.quoted.test(line))) return null;
    if (patterns.attributionEnds.test(line)) return end;
  }
  return null;
}

/** True where a mail's header lines begin: "From: …" with another header in the lines below. */
function headerBegins(lines: readonly Line[], at: number, patterns: Patterns): boolean {
  const first = patterns.header.exec(lines[at]!.folded)?.groups?.['name'];
  const second = patterns.header.exec(lines[at + 1]?.folded ?? '')?.groups?.['name'];
  return first !== undefined && second !== undefined && first !== second;
}

/**
 * True where the lines from `from` on, up to what is quoted, could be a signature: few, without a label. Behind a mere
 * "thanks" a number means that the note goes on.
 */
function couldBeSignature(
  lines: readonly Line[],
  from: number,
  patterns: Patterns,
  manner: 'strong' | 'weak',
): boolean {
  let count = 0;
  for (let at = from; at < lines.length; at++) {
    const { folded } = lines[at]!;
    if (patterns.quoted.test(folded) || patterns.separator.test(folded) || patterns.ruler.test(folded)) break;
    if (
      patterns.postscript.test(folded) ||
      attributionEnd(lines, at, patterns) !== null ||
      headerBegins(lines, at, patterns)
    )
      break;
    if (folded.trim() === '') continue;
    count++;
    if (count > MOST_SIGNATURE_LINES || patterns.label.test(folded)) return false;
    if (manner === 'weak' && /\d/.test(folded)) return false;
  }
  return true;
}

/** Where a closing begins within the line ("… on it. Yours truly, H."), or null. */
function closingWithin(lines: readonly Line[], at: number, patterns: Patterns): number | null {
  const { folded } = lines[at]!;
  for (const match of folded.matchAll(patterns.strongWithin)) {
    const closing = match.groups?.['closing'] ?? '';
    const from = match.index + match[0].length - closing.length;
    if (folded.length - from <= MOST_SIGNATURE_LETTERS && couldBeSignature(lines, at + 1, patterns, 'strong'))
      return from;
  }
  const tail = folded.slice(-80);
  const weak = patterns.weakWithin.exec(tail);
  if (!weak || !couldBeSignature(lines, at + 1, patterns, 'weak')) return null;
  const closing = weak.groups?.['closing'] ?? '';
  // "I did my best" on a line that goes on is no farewell
  const apart = /[.!?,;)\]"-]/.test(weak[0].slice(0, weak[0].length - closing.length));
  if (!apart && lines.slice(at + 1).some((line) => !isBlank(line))) return null;
  return folded.length - tail.length + weak.index + weak[0].length - closing.length;
}

/** Length of the greeting at the start of the line, its comma included. */
function greetingLength(line: Line, typed: string, patterns: Patterns): number {
  const greeting = patterns.greeting.exec(line.folded);
  if (!greeting) return 0;
  const at = greeting[0].length;
  const known = patterns.greeted.exec(line.folded.slice(at));
  if (known) return at + known[0].length;
  const rest = typed.slice(line.from + at, line.to);
  if (line.to < typed.length && patterns.greetingLine.test(rest)) return at + rest.length;
  // "Dear Dr. Ines Holm," : up to five words with capitals, then a comma or the end
  const named = /^(?:[ \t]+(?:(?:and|&|of|the)|\p{Lu}[\p{L}.'’-]{0,30})){1,6}[ \t]*(?:[,!:;—–-]|$)/u.exec(rest);
  return at + (named?.[0].length ?? 0);
}

/** A name alone at the end, after an empty line or a dash: "Rose", "- Violet". */
const LONE_NAME = /^[ \t]*[-–—~]{0,2}[ \t]*\p{Lu}[\p{L}.'’]{0,20}(?:[ \t]+\p{Lu}[\p{L}.'’-]{0,20}){0,2}[ \t.]*$/u;
/** "… no bees. -Rose" */
const DASHED_NAME =
  /(?<=[\p{L}\p{N}.!?)][ \t]+)[-–—~]{1,2}[ \t]?\p{Lu}[\p{L}.]{0,20}(?:[ \t]\p{Lu}[\p{L}.]{0,20})?[ \t.]*$/u;

/** What stays of a note when all is blanked that its writer did not mean. Linear in the text. */
export function ownText(text: string, words: Words): OwnText {
  const patterns = patternsOf(words.note);
  const whole = fold(text);
  const away: Span[] = [...whole.matchAll(patterns.asides)].map((match) => [
    match.index,
    match.index + match[0].length,
  ]);
  const folded = blankLines(whole, away);
  const lines = linesOf(folded);
  const kept: { line: Line; question: string | null }[] = [];
  const drop = (from: number, to: number): void => {
    if (to > from) away.push([from, to]);
  };

  let question: string[] = [];
  let questionOpen = false;
  let signature = false;
  let greeted = false;
  let at = 0;
  for (; at < lines.length; at++) {
    const line = lines[at]!;
    if (patterns.quoted.test(line.folded)) {
      if (!questionOpen) question = [];
      questionOpen = true;
      question.push(line.folded.replace(/^[ \t>]+/, ''));
      signature = false;
      drop(line.from, line.to);
      continue;
    }
    if (isBlank(line)) continue;
    questionOpen = false;
    const attributed = attributionEnd(lines, at, patterns);
    if (attributed !== null) {
      for (; at <= attributed; at++) drop(lines[at]!.from, lines[at]!.to);
      let next = at;
      while (next < lines.length && isBlank(lines[next])) next++;
      // without marks in front of its lines, all that follows is quoted
      if (next < lines.length && !patterns.quoted.test(lines[next]!.folded)) break;
      at--;
      continue;
    }
    if (headerBegins(lines, at, patterns)) {
      if (kept.length > 0 || signature) break;
      // the mail's own header, pasted above it
      while (at < lines.length && patterns.header.test(lines[at]!.folded)) {
        drop(lines[at]!.from, lines[at]!.to);
        at++;
      }
      at--;
      continue;
    }
    if (patterns.separator.test(line.folded)) break;
    if (patterns.ruler.test(line.folded)) {
      let next = at + 1;
      while (next < lines.length && isBlank(lines[next])) next++;
      if (next < lines.length && patterns.header.test(lines[next]!.folded)) break;
      drop(line.from, line.to);
      continue;
    }
    if (patterns.sentFrom.test(line.folded)) {
      drop(line.from, line.to);
      signature = true;
      continue;
    }
    const postscript = patterns.postscript.exec(line.folded);
    if (postscript) signature = false;
    if (signature || (patterns.signatureMark.test(line.folded) && kept.length > 0)) {
      signature = true;
      drop(line.from, line.to);
      continue;
    }
    let from = 0;
    if (!greeted) {
      from = greetingLength(line, text, patterns);
      greeted = true;
    }
    if (postscript) from = postscript[0].length;
    drop(line.from, line.from + from);
    if (line.folded.slice(from).trim() === '') continue;
    const isClosing = from === 0 && patterns.closingLine.test(line.folded);
    const manner = patterns.strongLine.test(line.folded) ? 'strong' : 'weak';
    if (isClosing && couldBeSignature(lines, at + 1, patterns, manner)) {
      // "Thanks!" at the top is no farewell, and "Best Creek" alone is a place
      const alone = kept.length === 0 && lines.slice(at + 1).every(isBlank);
      if (kept.length > 0) signature = true;
      if (!alone) {
        drop(line.from, line.to);
        continue;
      }
    }
    const closing = closingWithin(lines, at, patterns);
    if (closing !== null && closing >= from) {
      drop(line.from + closing, line.to);
      signature = true;
      if (line.folded.slice(from, closing).trim() === '') continue;
    }
    kept.push({ line, question: question.length > 0 ? question.join('\n') : null });
  }
  if (at < lines.length) drop(lines[at]!.from, folded.length);

  const last = kept.at(-1);
  if (last) {
    const typed = text.slice(last.line.from, last.line.to);
    const before = kept.at(-2);
    const afterGap = before !== undefined && isBlank(lines[lines.indexOf(last.line) - 1]);
    // "Clear" right under its question is an answer
    const isName = LONE_NAME.test(typed) && (afterGap || /^[ \t]*[-–—~]/u.test(typed));
    if (isName && (last.question === null ? before : before?.question === last.question)) {
      drop(last.line.from, last.line.to);
      kept.pop();
    } else {
      const dashed = DASHED_NAME.exec(typed);
      if (dashed) drop(last.line.from + dashed.index, last.line.to);
    }
  }
  const own = blankLines(text, away);
  return { text: blankLines(own, listNumbersIn(own)), numbered: own, parts: partsOf(kept, text.length) };
}

/** Own lines that stand under the same quoted question are one part. */
function partsOf(kept: readonly { line: Line; question: string | null }[], length: number): OwnPart[] {
  const parts: { span: Span; question: string | null }[] = [];
  for (const { line, question } of kept) {
    const last = parts.at(-1);
    const to = Math.min(line.to, length);
    if (last && last.question === question) last.span = [last.span[0], to];
    else parts.push({ span: [line.from, to], question });
  }
  return parts;
}
