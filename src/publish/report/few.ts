/** From where on there is little to go by, and the report says so. Common practice, no source. */
export const FEW = {
  /** Observers of a season: also what the headline interval needs (src/season/rates.ts). */
  observers: 10,
  /** Watches of a week. */
  watchesOfWeek: 5,
  /** Watches of a season. */
  watches: 30,
  /** Queens or visits that a single rate rests on. */
  seen: 5,
  /** Visits of all bees. */
  visits: 50,
  /** Queens that an expert named. */
  determined: 30,
  /** Visits of one bee among flowers to choose from. */
  choices: 20,
} as const;
