/**
 * Says on standard error how far long work is and how long it will still take. On a terminal one line that is written
 * over and wiped at the end, from the second second on; elsewhere, as in a log, a line every half minute. Standard output
 * stays the command's own.
 */

/** What is needed of standard error. */
export interface Screen {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

const ON_TERMINAL = { firstMilliseconds: 2000, everyMilliseconds: 500 };
const ELSEWHERE = { firstMilliseconds: 30_000, everyMilliseconds: 30_000 };
/** Between two looks at the clock. */
const ITEMS = 500;
const WIPED = '\r\u001b[K';

/** "25 s", "3 min": never more exact than an estimate is. */
export function roughly(milliseconds: number): string {
  const seconds = Math.max(1, Math.ceil(milliseconds / 1000));
  return seconds < 90 ? `${seconds} s` : `${Math.round(seconds / 60)} min`;
}

export class Progress {
  readonly #screen: Screen;
  /** Milliseconds from any beginning. */
  readonly #now: () => number;
  readonly #began: number;
  #next: number;
  #shown = false;

  constructor(screen: Screen = process.stderr, now: () => number = () => performance.now()) {
    this.#screen = screen;
    this.#now = now;
    this.#began = now();
    this.#next = this.#began + this.#pace.firstMilliseconds;
  }

  get #pace() {
    return this.#screen.isTTY === true ? ON_TERMINAL : ELSEWHERE;
  }

  #write(text: string): void {
    this.#screen.write(this.#screen.isTTY === true ? `${WIPED}${text}` : `${text}\n`);
    this.#next = this.#now() + this.#pace.everyMilliseconds;
    this.#shown = true;
  }

  /** Says what comes next, of which it cannot be told how long it takes; nothing where the work was short until now. */
  stage(text: string): void {
    if (this.#now() - this.#began >= this.#pace.firstMilliseconds) this.#write(`${text} ...`);
  }

  /** The items as they are; `of` is how many there will be. `doing` is what is said of them: "Reading watches". */
  *through<Item>(items: Iterable<Item>, of: number, doing: string): Generator<Item, void, undefined> {
    const began = this.#now();
    let done = 0;
    for (const item of items) {
      yield item;
      done += 1;
      if (done % ITEMS !== 0) continue;
      const now = this.#now();
      if (now < this.#next) continue;
      const left = roughly(((now - began) / done) * Math.max(0, of - done));
      this.#write(`${doing}: ${done.toLocaleString('en-US')} of ${of.toLocaleString('en-US')}, about ${left} left`);
    }
  }

  /** Leaves the terminal as it was. */
  end(): void {
    if (this.#shown && this.#screen.isTTY === true) this.#screen.write(WIPED);
  }
}
