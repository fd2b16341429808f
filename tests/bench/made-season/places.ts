/** Where people watch: the survey's sites, their own gardens, and some public places that are no site. */
import { metresBetween } from '../../../shared/distance.js';
import type { Place } from '../../../shared/record.js';
import type { SurveySettings } from '../../../shared/survey.js';
import type { Chance } from './chance.js';
import { KINDS, type Kind } from './flora.js';

export interface Spot {
  readonly kind: Kind;
  /** How many times more or fewer queens there are than usual. */
  readonly times: number;
  readonly habitats: readonly string[];
  /** As somebody tells of it this time. */
  tell(chance: Chance): Place;
}

export interface PublicSpots {
  readonly sites: readonly Spot[];
  readonly others: readonly Spot[];
}

/** Spread of what a place is worth to queens (log-normal): why watches at one place are alike. */
const SPREAD = 0.4;
const METRES_BY_DEGREE = 111_320;

const HABITATS: Readonly<Record<Kind, readonly string[]>> = {
  wet: ['fen edge', 'wet meadow', 'streamside'],
  woods: ['floodplain woods', 'woodland edge', 'open woods'],
  prairie: ['oak savanna', 'prairie remnant', 'old field'],
  garden: ['garden bed', 'lawn and shrubs', 'flower border'],
};
const GARDEN_WORDS = [
  'my garden',
  'our backyard',
  'my front yard',
  'home, by the porch',
  'the bed behind our house',
  'my back fence',
  'our garden',
] as const;
const OTHER_PLACES = [
  'old depot trail',
  'churchyard wall',
  'school prairie planting',
  'Lower Mill park',
  'roadside past the creamery',
  'orchard by the ball field',
] as const;
/** The demo's three sites are a fen, a river bank and a savanna. */
const SITE_KINDS = ['wet', 'woods', 'prairie'] as const;

/** Five digits: about a metre. */
const rounded = (degrees: number): number => Math.round(degrees * 100_000) / 100_000;

interface Position {
  readonly latitude: number;
  readonly longitude: number;
}

/** Positions near another, by metres to the north and to the east; as exact as a phone says them. */
function around({ latitude, longitude }: Position): (northMetres: number, eastMetres: number) => Position {
  const eastMetresByDegree = METRES_BY_DEGREE * Math.cos((latitude * Math.PI) / 180);
  return (northMetres, eastMetres) => ({
    latitude: rounded(latitude + northMetres / METRES_BY_DEGREE),
    longitude: rounded(longitude + eastMetres / eastMetresByDegree),
  });
}

const nowhere = { latitude: null, longitude: null, uncertaintyMetres: null };

function siteSpot(site: SurveySettings['sites'][number], kind: Kind, times: number): Spot {
  const near = around(site);
  const reach = site.radiusMetres * 0.6;
  return {
    kind,
    times,
    habitats: HABITATS[kind],
    tell(now) {
      const { name, key } = site;
      if (now.yes(0.4)) return { ...nowhere, words: name, site: key, private: false };
      const { latitude, longitude } = near(now.between(-reach, reach), now.between(-reach, reach));
      const words = now.yes(0.7) ? name : '';
      return { latitude, longitude, uncertaintyMetres: now.whole(5, 25), words, site: key, private: false };
    },
  };
}

/** About as far around the sites as people drive, but on none of them. */
function somewhere({ sites, region }: SurveySettings, chance: Chance): Position {
  for (;;) {
    const near = around(chance.one(sites.length > 0 ? sites : region));
    const at = near(chance.between(-15_000, 15_000), chance.between(-15_000, 15_000));
    if (sites.every((site) => metresBetween(site, at) > site.radiusMetres + 100)) return at;
  }
}

function offTheList(kind: Kind, words: string, isPrivate: boolean, at: Position, chance: Chance): Spot {
  const position = chance.yes(0.7) ? { ...at, uncertaintyMetres: chance.whole(2, 10) * 5 } : nowhere;
  const place: Place = { ...position, words, site: null, private: isPrivate };
  return {
    kind,
    times: chance.times(SPREAD),
    habitats: HABITATS[kind],
    // Somebody's place is saved: it is told with the same position each time.
    tell: () => place,
  };
}

export function publicSpots(settings: SurveySettings, chance: Chance): PublicSpots {
  const times = settings.sites.map(() => chance.times(SPREAD));
  // A survey has few sites: were all of them good by chance, a whole season would have too few watches without a queen.
  const mean = times.reduce((sum, one) => sum + one, 0) / times.length;
  return {
    sites: settings.sites.map((site, index) =>
      siteSpot(site, SITE_KINDS[index % SITE_KINDS.length] ?? SITE_KINDS[0], (times[index] ?? 1) / mean),
    ),
    others: OTHER_PLACES.map((words) =>
      offTheList(chance.one(KINDS.slice(1)), words, false, somewhere(settings, chance), chance),
    ),
  };
}

export const gardenSpot = (settings: SurveySettings, chance: Chance): Spot =>
  offTheList('garden', chance.one(GARDEN_WORDS), true, somewhere(settings, chance), chance);
