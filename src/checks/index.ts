/** What the dialog and the desk may use of the checks. A new check is a file, its name and a line in `CHECKS`. */
import type { History } from '../../shared/history.js';
import type { Survey } from '../../shared/survey.js';
import type { Check, CheckFinding, Draft } from './check.js';
import { length } from './length.js';
import { region } from './region.js';
import { sameSpot } from './same-spot.js';
import { sameWatch } from './same-watch.js';
import { season } from './season.js';
import { temperature } from './temperature.js';

export { CHECK_NAMES, type Check, type CheckFinding, type CheckName, type Draft } from './check.js';
export { missingFindings } from './in-bulk.js';
export { sayFinding } from './say.js';

/** In the order in which they are said. */
export const CHECKS: readonly Check[] = [length, temperature, season, region, sameWatch, sameSpot];

/** Everything that is odd about what is known of a watch so far. */
export function findingsOf(watch: Draft, history: History, survey: Survey): CheckFinding[] {
  return CHECKS.flatMap((check) => check.check(watch, history, survey) ?? []);
}
