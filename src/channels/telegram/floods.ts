/** Tells who sends more than anybody types. */

/** A quick live watch is about twenty messages a minute. */
const MOST_A_MINUTE = 60;
const MINUTE_MILLISECONDS = 60_000;

interface Bucket {
  /** Messages that may still come at once; grows back evenly to a minute's worth. */
  tokens: number;
  at: number;
  /** Until the bucket is full again, which takes a quiet minute: else one in many of a flood would slip through. */
  slowed: boolean;
}

export type Pace = 'fine' | 'slowed-now' | 'slowed';

/** A bucket of a minute's messages for each person. */
export class Floods {
  readonly #buckets = new Map<string, Bucket>();

  /** Counts a message that came at that moment (milliseconds since 1970). `slowed-now` is said once a flood. */
  paceOf(person: string, at: number): Pace {
    const bucket = this.#filled(person, at);
    if (bucket.slowed && bucket.tokens >= MOST_A_MINUTE) bucket.slowed = false;
    if (bucket.tokens >= 1) {
      bucket.tokens -= 1;
      return bucket.slowed ? 'slowed' : 'fine';
    }
    const before = bucket.slowed;
    bucket.slowed = true;
    return before ? 'slowed' : 'slowed-now';
  }

  #filled(person: string, at: number): Bucket {
    if (this.#buckets.size > 10_000) this.#forget(at);
    const bucket = this.#buckets.get(person) ?? { tokens: MOST_A_MINUTE, at, slowed: false };
    const more = ((at - bucket.at) / MINUTE_MILLISECONDS) * MOST_A_MINUTE;
    bucket.tokens = Math.min(MOST_A_MINUTE, bucket.tokens + Math.max(0, more));
    bucket.at = at;
    this.#buckets.set(person, bucket);
    return bucket;
  }

  /** Buckets that are full by now say nothing. */
  #forget(at: number): void {
    for (const [person, bucket] of this.#buckets) {
      if (at - bucket.at > MINUTE_MILLISECONDS) this.#buckets.delete(person);
    }
  }
}
