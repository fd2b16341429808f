/** Hears a tally mark by mark and gathers what was said: the heads of each run, its rows, the plants beside them. */
import type { Span } from '../reading.js';
import { behindPlant, changeLastRow } from './behind-plant.js';
import { headOf, type Head } from './heads.js';
import { articleCounts, nextMeaning } from './looking-on.js';
import type { Break, Mark } from './marks.js';
import { bombusAt } from './names-said.js';
import { rowsOf } from './pairing.js';
import type { PlantsSaid, RowSaid, Said, TakesBack } from './said.js';
import { nothingWaits, stronger } from './waiting.js';

/** "Maybe another", "might be the same one": how many there were is in doubt. */
const OF_QUEENS_BEFORE: ReadonlySet<Mark['kind']> = new Set(['another', 'same', 'same-one', 'same-ones']);

const isNone = ({ role, count }: Head): boolean => role === 'zero' || count?.values[0] === 0;

/** Words in the place of a plant that nobody knows. */
const nowhere = (span: Span): PlantsSaid => ({
  kind: 'plants',
  plants: [],
  each: false,
  placed: true,
  comma: false,
  sign: null,
  joinedBy: null,
  takesBack: 'no',
  span,
});

/** A preposition right before: `firmly` one that only a plant can follow ("visiting"). */
type Placed = 'no' | 'loosely' | 'firmly';
type RoleKind = Exclude<RowSaid['role'], 'new'>;
type Of<Kind extends Mark['kind']> = Extract<Mark, { kind: Kind }>;

class Hearing {
  readonly said: Said[] = [];
  private heads: Head[] = [];
  private waiting = nothingWaits();
  private placed: Placed = 'no';
  private joinedBy: Break | null = null;

  constructor(private readonly marks: readonly Mark[]) {}

  all(): readonly Said[] {
    this.marks.forEach((mark, at) => this.hear(mark, at));
    this.flush();
    return this.said;
  }

  private get last(): Head | undefined {
    return this.heads.at(-1);
  }

  /** The last head, where nothing but blanks or a bracket stands behind it. */
  private get touching(): Head | undefined {
    return this.waiting.gap === null || this.waiting.gap === 'open' ? this.last : undefined;
  }

  /** The last head, where it is a count that still lacks its bee. */
  private get openCount(): Head | undefined {
    const { touching } = this;
    return touching?.type === 'count' && touching.bee === null ? touching : undefined;
  }

  private get behindPlant(): boolean {
    return this.said.at(-1)?.kind === 'plants';
  }

  private flush(plantFollows = false): void {
    this.said.push(...rowsOf(behindPlant(this.heads, this.said, plantFollows)));
    this.heads = [];
  }

  private take(head: Head): Head {
    const { waiting } = this;
    head.gap = waiting.gap;
    head.orBefore = waiting.or;
    head.worker ||= waiting.worker;
    head.all ||= waiting.all;
    head.allNumber ??= waiting.allNumber;
    head.again ??= waiting.again;
    head.each ||= waiting.each && head.type === 'count';
    head.total ||= waiting.total;
    head.queens ||= waiting.queens;
    head.takesBack = waiting.takesBack;
    head.uncertain = waiting.uncertain;
    head.denied = waiting.denied;
    if (waiting.pollen) head.pollen = true;
    if (waiting.doubt && (head.type === 'bee' || head.type === 'count')) head.doubt = true;
    this.waiting = nothingWaits();
    this.heads.push(head);
    return head;
  }

  private hear(mark: Mark, at: number): void {
    const { placed } = this;
    if (mark.kind === 'count') {
      this.count(mark, at, placed);
      return;
    }
    this.placed = 'no';
    switch (mark.kind) {
      case 'break':
        this.pause(mark);
        return;
      case 'preposition':
        this.placed = mark.strong ? 'firmly' : 'loosely';
        return;
      case 'unknown':
        this.unknown(mark.span, at, placed);
        return;
      case 'plant':
      case 'plants':
        this.plants(mark, at, placed);
        break;
      case 'bee':
        this.bee(mark);
        break;
      case 'cannot-tell':
        this.cannotTell(mark.span, at);
        break;
      case 'zero':
      case 'another':
      case 'same':
      case 'same-one':
      case 'same-ones':
        this.role(mark.kind, mark.span);
        break;
      case 'moved-on':
        this.take(headOf('role', mark.span)).role = 'same-one';
        this.placed = 'firmly';
        break;
      case 'insect':
        this.take(headOf('insect', mark.span));
        break;
      case 'queens':
        this.queens(mark);
        break;
      case 'worker':
        if (this.touching && !(this.last?.type === 'count' && this.marks[at + 1]?.kind === 'bee'))
          this.touching.worker = true;
        else this.waiting.worker = true;
        break;
      case 'pollen':
      case 'no-pollen':
        this.pollen(mark.kind === 'pollen', at);
        break;
      case 'each':
        if (this.last) this.last.each = true;
        else this.waiting.each = true;
        break;
      case 'total':
        if (this.touching && this.touching.type !== 'role') this.touching.total = true;
        else this.waiting.total = true;
        break;
      case 'all-bees':
        this.waiting.all = true;
        this.waiting.allNumber = mark.number;
        break;
      case 'of-them':
        if (this.openCount) this.openCount.ofThem = true;
        break;
      case 'says':
      case 'concludes':
        this.waiting.again = mark.kind;
        break;
      case 'doubtful':
        this.doubtful(mark, at);
        break;
      case 'mostly':
        if (nextMeaning(this.marks, at)?.kind === 'bee') this.waiting.uncertain = true;
        break;
      case 'inexact':
        if (this.touching) this.touching.uncertain = true;
        break;
      case 'denies':
        this.waiting.denied = true;
        break;
      case 'takes-back':
      case 'takes-back-weakly': {
        const takesBack: TakesBack = mark.kind === 'takes-back' ? 'strongly' : 'weakly';
        this.waiting = { ...nothingWaits(), gap: 'comma', takesBack };
        break;
      }
      case 'nothing-else':
        this.flush();
        this.said.push({ kind: 'nothing-else', span: mark.span });
        break;
      case 'that-is-all':
      case 'thing':
        break;
    }
    this.joinedBy = null;
  }

  private pause({ strength, span }: Of<'break'>): void {
    if (strength === 'line' || strength === 'stop') {
      this.flush();
      this.said.push({ kind: 'end', strength, span });
      this.waiting = { ...nothingWaits(), takesBack: this.waiting.takesBack, again: this.waiting.again };
      this.joinedBy = strength;
      return;
    }
    // "(2) impatiens"
    if (strength === 'close') return;
    this.waiting.gap = stronger(this.waiting.gap, strength);
    if (strength === 'or') this.waiting.or = true;
    this.joinedBy = stronger(this.joinedBy, strength);
  }

  private count(mark: Of<'count'>, at: number, placed: Placed): void {
    if (!mark.count.article) this.placed = 'no';
    else if (!articleCounts(this.marks, at)) return;
    else this.placed = 'no';
    const next = nextMeaning(this.marks, at);
    // "on 40 bluebells": the flowers watched
    if (placed !== 'no' && next?.kind === 'plant') {
      this.placed = placed;
      return;
    }
    // "at 3", "between 2 and …": a time
    if (placed === 'loosely' && !mark.count.article && next?.kind !== 'bee' && next?.kind !== 'queens') return;
    const { touching } = this;
    if (touching?.type === 'role' && touching.count === null && touching.role !== 'zero') {
      touching.count = mark.count;
      touching.span = [touching.span[0], mark.span[1]];
      return;
    }
    this.take({ ...headOf('count', mark.span), count: mark.count });
    this.joinedBy = null;
  }

  private bee({ bee, plural, span }: Of<'bee'>): void {
    const { touching } = this;
    if (touching?.type !== 'role' || touching.bee !== null) {
      // "1 perplexus but could be vagans"
      const alternative = this.waiting.doubt && this.last?.type === 'bee';
      const head = this.take(headOf('bee', span));
      head.orBefore ||= alternative;
      head.bee = bee;
      head.plural = plural;
      return;
    }
    // "the same imp"
    if (touching.role === 'same') touching.role = 'same-one';
    touching.bee = bee;
    touching.span = [touching.span[0], span[1]];
    touching.doubt ||= this.waiting.doubt;
    touching.worker ||= this.waiting.worker;
    this.waiting = nothingWaits();
  }

  private cannotTell(span: Span, at: number): void {
    const { last } = this;
    if (last?.type === 'bee') last.doubt = true;
    else if (
      last?.type === 'count' &&
      last.bee === null &&
      (this.openCount || last.queens || this.heads.length === 1)
    ) {
      last.bee = bombusAt(span);
      last.unresolved = null;
      last.span = [last.span[0], span[1]];
      // the doubt is about these, not about bees named before
      for (const head of this.heads) {
        if (head !== last && !head.doubt && head.bee?.doubt) head.bee = { ...head.bee, doubt: false };
      }
      this.waiting = nothingWaits();
    } else if (last?.type === 'count' && last.bee === null) {
      // "impatiens 3, unknown 1": a name of its own
      this.take(headOf('bee', span)).bee = bombusAt(span);
    }
    if (last) return;
    const next = nextMeaning(this.marks, at);
    const nothingFollows = next === undefined || next.kind === 'break';
    const row = this.said.findLast((item) => item.kind === 'row');
    const isOfRow = this.waiting.gap !== null || (row?.kind === 'row' && row.bee === null && row.role === 'new');
    // "three. couldn't tell what kind"
    const isNextSentence =
      row?.kind === 'row' && row.bee === null && row.role === 'new' && this.said.at(-1)?.kind === 'end';
    if (isOfRow && (this.behindPlant || isNextSentence) && nothingFollows) {
      // "2 imp on phlox, couldn't tell which …", "one on the phlox I couldn't identify": about the row before
      changeLastRow(this.said, row?.bee ? { doubt: true } : { bee: bombusAt(span) });
      return;
    }
    // "unknown on the phlox"; "not sure which, 2 on the phlox" waits for its count
    const head = this.take(headOf('bee', span));
    head.bee = bombusAt(span);
    head.all = next?.kind === 'break';
  }

  private role(kind: RoleKind, span: Span): void {
    const { touching, openCount } = this;
    // "none, the same one": not a queen of its own
    if (kind === 'same-one' && touching?.type === 'role' && touching.role === 'zero') touching.role = 'same-one';
    // "1 of the same": its bee is the one said last
    else if (openCount && kind === 'same') return;
    // "1 of them also", "2 more"
    else if (openCount && (kind === 'same-one' || kind === 'another')) {
      openCount.role = kind;
      openCount.uncertain ||= this.waiting.uncertain;
    } else this.take(headOf('role', span)).role = kind;
  }

  private queens({ plural }: Of<'queens'>): void {
    const { touching } = this;
    if (!touching) {
      this.waiting.queens = true;
      return;
    }
    touching.queens = true;
    if (touching.type === 'bee' && plural) touching.plural = true;
    if (touching.type === 'count') touching.unresolved = null;
  }

  private pollen(had: boolean, at: number): void {
    const told = had ? true : 'none';
    if (this.last && !this.waiting.all) this.last.pollen = told;
    else if (this.last) {
      // "2 imp and 1 bimac, all with pollen"
      for (const head of this.heads) if (head.type !== 'insect') head.pollen = told;
      this.waiting.all = false;
    } else if (this.marks[at + 1]?.kind === 'bee' || this.said.every((item) => item.kind !== 'row')) {
      this.waiting.pollen = had;
    } else {
      changeLastRow(this.said, { pollen: had ? 'all' : 0 });
      this.waiting.all = false;
    }
  }

  private doubtful({ ofZero }: Of<'doubtful'>, at: number): void {
    const next = nextMeaning(this.marks, at);
    if (next?.kind === 'bee' || next?.kind === 'all-bees') this.waiting.doubt = true;
    // "I think 2 imps"
    else if (next?.kind === 'count' && nextMeaning(this.marks, this.marks.indexOf(next))?.kind === 'bee')
      this.waiting.doubt = true;
    else if (next && OF_QUEENS_BEFORE.has(next.kind)) this.waiting.uncertain = true;
    else if (this.last?.bee) this.last.doubt = true;
    else if (this.last && isNone(this.last)) this.last.uncertain ||= ofZero;
    else if (!this.last && this.behindPlant) changeLastRow(this.said, { doubt: true });
  }

  private unknown(span: Span, at: number, placed: Placed): void {
    const { openCount } = this;
    if (openCount && this.waiting.gap === null && !openCount.queens && openCount.count?.article !== true) {
      openCount.unresolved = openCount.unresolved ? [openCount.unresolved[0], span[1]] : span;
    }
    const before = this.said.at(-1);
    const goesOn =
      before?.kind === 'plants' && before.plants.length === 0 && this.marks[at - 1]?.span[1] === before.span[1];
    if (goesOn) {
      this.said[this.said.length - 1] = { ...before, span: [before.span[0], span[1]] };
    } else if (placed === 'firmly' && nextMeaning(this.marks, at)?.kind === 'plant') {
      // "on the neighbour's phlox"
      this.placed = placed;
    } else if (placed === 'firmly') {
      this.flush(true);
      this.waiting = nothingWaits();
      this.said.push(nowhere(span));
    }
  }

  private plants(mark: Of<'plant' | 'plants'>, at: number, placed: Placed): void {
    const { takesBack } = this.waiting;
    this.flush(true);
    this.waiting = nothingWaits();
    const behind = this.marks[at + 1];
    const strength = behind?.kind === 'break' ? behind.strength : null;
    this.said.push({
      kind: 'plants',
      plants: mark.kind === 'plant' ? [mark.plant] : mark.which,
      each: mark.kind === 'plants' && mark.each,
      placed: placed !== 'no',
      comma: strength === 'comma',
      sign: strength === 'colon' || strength === 'dash' || strength === 'line' ? strength : null,
      joinedBy: this.joinedBy,
      takesBack,
      span: mark.span,
    });
  }
}

export const saidIn = (marks: readonly Mark[]): readonly Said[] => new Hearing(marks).all();
