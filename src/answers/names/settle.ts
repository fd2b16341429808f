/** From the names that a hit fits to the one taxon meant, or to the few that it could be, the genus last. */
import type { SurveySettings } from '../../../shared/survey.js';
import type { NameIndex } from './name-index.js';
import { homeOf } from './region.js';
import type { Hit, Near } from './hit.js';
import { ABOUT_AS_NEAR } from './near.js';
import { BOMBUS, plantTaxon, type Taxon } from './taxa.js';

export interface Settled {
  /** Best first; where `clear` is false there may be several, and the genus is the last. */
  readonly taxa: readonly Taxon[];
  /** True where one taxon is surely meant. */
  readonly clear: boolean;
}

/** More are no help to choose from. */
const MOST_OFFERED = 5;
/** A bare name that more species of one genus share stands for the genus. */
const MOST_THAT_SHARE = 3;

const distinct = (taxa: readonly Taxon[]): Taxon[] => {
  const seen = new Set<string>();
  return taxa.filter((taxon) => !seen.has(taxon.name) && seen.add(taxon.name));
};

/** The genus that most of them belong to, the first of equals. */
function genusOfMost(taxa: readonly Taxon[]): string {
  const counts = new Map<string, number>();
  for (const { genus } of taxa) counts.set(genus, (counts.get(genus) ?? 0) + 1);
  let most = '';
  for (const [genus, count] of counts) if (genus !== '' && count > (counts.get(most) ?? 0)) most = genus;
  return most;
}

/** Offers with their genus at the end. */
export function offering(taxa: readonly Taxon[], index: NameIndex): Taxon[] {
  const offered = distinct(taxa);
  const species = offered.filter((taxon) => taxon.rank !== 'genus').slice(0, MOST_OFFERED);
  const genus = genusOfMost(offered);
  const last = genus === '' ? [] : [genus === BOMBUS.name ? BOMBUS : (index.taxa.get(genus) ?? plantTaxon(genus))];
  const otherGenera = offered.filter((taxon) => taxon.rank === 'genus' && taxon.name !== genus);
  return distinct([...species, ...otherGenera, ...last]);
}

/** Names said side by side, as said; their genus at the end where they share it. */
export function sideBySide(taxa: readonly Taxon[], index: NameIndex): Taxon[] {
  const genera = new Set(taxa.map((taxon) => taxon.genus));
  return genera.size === 1 ? offering(taxa, index) : distinct(taxa).slice(0, MOST_OFFERED);
}

/** An edit that a bee of elsewhere is taken to be further away when a misspelled name fits several. */
const EDITS_FOR_FAR = 0.5;
const EDITS_FOR_FOREIGN = 1;

export function settleBee(hit: Hit, region: SurveySettings['region'], index: NameIndex): Settled {
  const away = { local: 0, far: EDITS_FOR_FAR, foreign: EDITS_FOR_FOREIGN };
  const homes = hit.fits.map((near) => ({ near, home: homeOf(near.use.taxon, region) }));
  const nearestHome = ['local', 'far', 'foreign'].find((home) => homes.some((each) => each.home === home));
  // an English name, a short form or a part of a name is used for the bees one meets; a scientific name is as it says
  const asked = homes.filter(
    ({ near, home }) => home === nearestHome || (near.use.kind === 'scientific' && hit.exactness !== 'short'),
  );
  const ranked = asked
    .map(({ near, home }) => ({ near, cost: hit.exactness === 'near' ? near.cost + away[home] : near.cost, home }))
    .sort((a, b) => a.cost - b.cost || a.near.use.place - b.near.use.place);
  const best = ranked[0]!;
  const taxa = distinct(
    ranked.filter(({ cost }) => cost - best.cost < ABOUT_AS_NEAR).map(({ near }) => near.use.taxon),
  );
  // "white-tailed" describes a bee of here rather than names one of elsewhere
  const unlikely =
    best.home === 'foreign' &&
    best.near.use.kind !== 'scientific' &&
    (best.near.use.allDescribing || hit.exactness === 'part');
  if (taxa.length === 1 && hit.firm && !unlikely) return { taxa, clear: true };
  return { taxa: offering(taxa, index), clear: false };
}

/** The plants watched that these names could mean: themselves, their genus, or the one species of their genus. */
function amongWatched(fits: readonly Near[], watched: readonly Taxon[]): Taxon[] {
  const themselves = watched.filter((plant) => fits.some(({ use }) => use.taxon.name === plant.name));
  if (themselves.length > 0) return themselves;
  return watched.filter((plant) =>
    fits.some(({ use: { taxon } }) => {
      if (plant.genus === '' || plant.genus !== taxon.genus) return false;
      return plant.rank === 'genus' || taxon.rank === 'genus';
    }),
  );
}

export function settlePlant(hit: Hit, watched: readonly Taxon[], index: NameIndex): Settled {
  const meant = distinct(amongWatched(hit.fits, watched));
  if (meant.length === 1 && (hit.firm || hit.fits.length === 1)) return { taxa: meant, clear: hit.firm };
  if (meant.length > 1) return { taxa: offering(meant, index), clear: false };

  const taxa = distinct(
    [...hit.fits].sort((a, b) => a.cost - b.cost || a.use.place - b.use.place).map(({ use }) => use.taxon),
  );
  if (taxa.length === 1 && hit.firm) return { taxa, clear: true };
  const genera = new Set(taxa.map((taxon) => taxon.genus));
  if (genera.size === 1 && hit.fits[0]!.cost === 0) {
    const genus = taxa.find((taxon) => taxon.rank === 'genus');
    // "caragana" is the everyday name of one species, and a genus only to a botanist
    const common = hit.fits.filter(({ use }) => use.kind === 'common').map(({ use }) => use.taxon);
    const everyday = distinct(common).filter(({ rank }) => rank !== 'genus');
    if (hit.firm && everyday.length === 1) return { taxa: everyday, clear: true };
    // "trout lily" is all of the genus to a book, and one of two to who stands before it
    const isShared = everyday.length > 1 && everyday.length <= MOST_THAT_SHARE;
    if (genus && isShared) return { taxa: offering(taxa, index), clear: false };
    if (genus) return { taxa: [genus], clear: hit.firm };
    if (taxa.length > MOST_THAT_SHARE) {
      const name = taxa[0]!.genus;
      return { taxa: [index.taxa.get(name) ?? plantTaxon(name)], clear: true };
    }
  }
  return { taxa: offering(taxa, index), clear: false };
}
