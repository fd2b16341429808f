/** Instants that are compared in SQL all have the same form, so that their order is that of their letters. */

/** `2026-05-06T23:30:00Z` as `2026-05-06T23:30:00.000Z`. */
export function sortable(instant: string): string {
  return new Date(instant).toISOString();
}
