/** How near a survey's region is to where a bee occurs. */
import type { SurveySettings } from '../../../shared/survey.js';
import { madeOnce } from '../text.js';
import type { Taxon } from './taxa.js';

/** `local`: may be met there. `far`: the same side of the ocean. `foreign`: across it. */
export type Home = 'local' | 'far' | 'foreign';

/** West of this longitude lies America, in degrees: the middle of the Atlantic. */
const MIDDLE_OF_ATLANTIC = -30;
/** The western plains' edge: west of it the list's `west` begins, east of it `central`. */
const EDGE_OF_PLAINS = -104;
/** North of this the list's `north` (boreal) may be met; south of the second its `mexico`. In degrees. */
const BOREAL_FROM = 46;
const MEXICO_UP_TO = 30;

const regionsOf = madeOnce((region: SurveySettings['region']): ReadonlySet<string> => {
  const latitude = region.reduce((sum, corner) => sum + corner.latitude, 0) / region.length;
  const longitude = region.reduce((sum, corner) => sum + corner.longitude, 0) / region.length;
  if (longitude > MIDDLE_OF_ATLANTIC) return new Set(['europe']);
  const regions = longitude < EDGE_OF_PLAINS ? ['west'] : ['east', 'central'];
  if (latitude > BOREAL_FROM) regions.push('north');
  if (latitude < MEXICO_UP_TO) regions.push('mexico');
  return new Set(regions);
});

export function homeOf(taxon: Taxon, region: SurveySettings['region']): Home {
  if (taxon.regions.length === 0) return 'local';
  const here = regionsOf(region);
  if (taxon.regions.some((name) => here.has(name))) return 'local';
  const inEurope = here.has('europe');
  return taxon.regions.some((name) => (name === 'europe') === inEurope) ? 'far' : 'foreign';
}
