/** A name of a list, as it is compared with misspelled ones. */
import type { Use } from './use.js';
import { lettersIn, soundOf, type Spelled } from './similarity.js';

export class KnownName implements Spelled {
  readonly letterBits: number;
  readonly uses: Use[] = [];
  /** Made when first compared: most names never are. */
  #sound: string | null = null;
  #soundBits = 0;

  constructor(
    /** The words that say something, where there are several. */
    readonly words: readonly string[],
    /** All letters of the name, without blanks. */
    readonly letters: string,
  ) {
    this.letterBits = lettersIn(letters);
  }

  get sound(): string {
    if (this.#sound === null) {
      this.#sound = soundOf(this.letters);
      this.#soundBits = lettersIn(this.#sound);
    }
    return this.#sound;
  }

  get soundBits(): number {
    return this.sound === '' ? 0 : this.#soundBits;
  }
}
