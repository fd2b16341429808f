/** What was heard of a tally so far: rows and plants that stand, the heads of the run still open, and what waits for the next. */
import type { Span } from '../reading.js';
import { behindPlant } from './behind-plant.js';
import type { Head } from './heads.js';
import type { Break } from './mark.js';
import { rowsOf } from './pairing.js';
import type { PlantsSaid, Said } from './said.js';
import { nothingWaits } from './waiting.js';

/** A preposition right before: `firmly` one that only a plant can follow ("visiting"). */
export type Placed = 'no' | 'loosely' | 'firmly';

export class Run {
  readonly said: Said[] = [];
  heads: Head[] = [];
  waiting = nothingWaits();
  placed: Placed = 'no';
  joinedBy: Break | null = null;
  inBracket = false;

  get last(): Head | undefined {
    return this.heads.at(-1);
  }

  /** The last head, where nothing but blanks or a bracket stands behind it. */
  get touching(): Head | undefined {
    return this.waiting.gap === null || this.waiting.gap === 'open' ? this.last : undefined;
  }

  /** The last head, where it is a count that still lacks its bee. */
  get openCount(): Head | undefined {
    const { touching } = this;
    return touching?.type === 'count' && touching.bee === null ? touching : undefined;
  }

  get behindPlant(): boolean {
    return this.said.at(-1)?.kind === 'plants';
  }

  /** True where a row or head stands in the sentence so far. */
  get tellsInSentence(): boolean {
    if (this.heads.length > 0) return true;
    const ended = this.said.findLastIndex(({ kind }) => kind === 'end');
    return this.said.slice(ended + 1).some(({ kind }) => kind === 'row' || kind === 'all-bees');
  }

  flush(plantFollows = false): void {
    this.said.push(...rowsOf(behindPlant(this.heads, this.said, plantFollows)));
    this.heads = [];
  }

  take(head: Head): Head {
    const { waiting } = this;
    head.gap = waiting.gap;
    head.orBefore = waiting.or;
    head.bracketed = this.inBracket;
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

  /** Plants that were named, or words in the place of one. */
  pushPlants(said: Partial<PlantsSaid> & { readonly span: Span }): void {
    this.said.push({
      kind: 'plants',
      plants: [],
      each: false,
      placed: true,
      comma: false,
      sign: null,
      joinedBy: null,
      unread: false,
      bracketed: this.inBracket,
      takesBack: 'no',
      ...said,
    });
  }
}
