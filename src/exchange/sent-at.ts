/** When a message counts as sent. */

const WEEK_MILLISECONDS = 7 * 24 * 60 * 60 * 1000;

/**
 * The sender's time if it lies within seven days before receipt, else receipt: a phone without network sends hours
 * later and "today" is still its own day, but a clock that is plainly wrong must not move a watch. Both UTC instants;
 * `sent` is null where the channel has no such time, and one that cannot be read counts as none.
 */
export function sentAt(sent: string | null, received: string): string {
  if (sent === null) return received;
  const before = Date.parse(received) - Date.parse(sent);
  return before >= 0 && before <= WEEK_MILLISECONDS ? sent : received;
}
