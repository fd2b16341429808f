/** Occurrences: the plants of each watch with their open flowers, the bees on them, and which bees were not there. */
import type { Names } from '../../../shared/names.js';
import type { SurveySettings } from '../../../shared/survey.js';
import { GENUS } from '../../season/index.js';
import type { PublicWatch } from '../public/index.js';
import { observerOf, plantId, queensId, watchId } from './ids.js';
import { DWC, tableOf, type ArchiveTable, type Cell } from './table.js';

const TERMS = [
  `${DWC}occurrenceID`,
  `${DWC}basisOfRecord`,
  `${DWC}occurrenceStatus`,
  `${DWC}recordedBy`,
  `${DWC}scientificName`,
  `${DWC}taxonRank`,
  `${DWC}kingdom`,
  `${DWC}family`,
  `${DWC}individualCount`,
  `${DWC}organismQuantity`,
  `${DWC}organismQuantityType`,
  `${DWC}sex`,
  `${DWC}lifeStage`,
  `${DWC}caste`,
  `${DWC}verbatimIdentification`,
  `${DWC}previousIdentifications`,
  `${DWC}identificationQualifier`,
  `${DWC}identifiedBy`,
  `${DWC}dateIdentified`,
  `${DWC}occurrenceRemarks`,
];

interface Row {
  readonly event: string;
  readonly values: Readonly<Record<string, Cell>>;
}

const rankOf = (bee: string): string => (bee === GENUS ? 'genus' : 'species');

const common = (watch: PublicWatch): Record<string, Cell> => ({
  [`${DWC}basisOfRecord`]: 'HumanObservation',
  [`${DWC}recordedBy`]: observerOf(watch),
});

function plantRows(watch: PublicWatch, event: string, families: ReadonlyMap<string, string>): Row[] {
  return watch.plants.map(({ plant, name, rank, unit, flowers }) => ({
    event,
    values: {
      ...common(watch),
      [`${DWC}occurrenceID`]: plantId(event, plant),
      [`${DWC}occurrenceStatus`]: 'present',
      [`${DWC}scientificName`]: name ?? 'Plantae',
      [`${DWC}taxonRank`]: name === null ? 'kingdom' : rank,
      [`${DWC}kingdom`]: 'Plantae',
      [`${DWC}family`]: name === null ? null : (families.get(name) ?? null),
      [`${DWC}organismQuantity`]: flowers.value,
      [`${DWC}organismQuantityType`]: `open ${unit}s`,
    },
  }));
}

const beeTaxon = (name: string): Record<string, Cell> => ({
  [`${DWC}scientificName`]: name,
  [`${DWC}taxonRank`]: rankOf(name),
  [`${DWC}kingdom`]: 'Animalia',
  [`${DWC}family`]: 'Apidae',
});

function beeRows(watch: PublicWatch, event: string, settings: SurveySettings): Row[] {
  return watch.queens.map((one) => ({
    event,
    values: {
      ...common(watch),
      ...beeTaxon(one.bee),
      [`${DWC}occurrenceID`]: queensId(event, one),
      [`${DWC}occurrenceStatus`]: 'present',
      // a queen that was counted on another plant is no further individual, and 0 would say that she was not there
      [`${DWC}individualCount`]: one.queens === 0 ? null : one.queens,
      [`${DWC}occurrenceRemarks`]:
        one.queens < one.visits
          ? `${one.visits - one.queens} of ${one.visits} already counted on another plant in this watch`
          : null,
      [`${DWC}sex`]: 'female',
      [`${DWC}lifeStage`]: 'adult',
      [`${DWC}caste`]: one.publicCaste,
      [`${DWC}verbatimIdentification`]: one.reportedAs,
      [`${DWC}previousIdentifications`]: one.by && one.reported !== one.bee ? one.reported : null,
      [`${DWC}identificationQualifier`]: qualifierOf(one),
      [`${DWC}identifiedBy`]: one.by ? `${one.by.role} of the ${settings.name}` : observerOf(watch),
      [`${DWC}dateIdentified`]: one.by ? one.by.at.slice(0, 10) : watch.date,
    },
  }));
}

/** "cf." of an expert, "?" of an observer in doubt; a pair that cannot be told apart is named here. */
function qualifierOf({ by, doubt }: PublicWatch['queens'][number]): string | null {
  if (!by) return doubt ? '?' : null;
  return by.taxa.length > 1 ? by.taxa.join(' / ') : by.qualifier;
}

/** The bees that were named at least once by an expert: a species nobody could have named is not absent. */
export function determinedSpecies(watches: readonly PublicWatch[]): string[] {
  const named = watches.flatMap(({ queens }) => queens.filter(({ determined }) => determined).map(({ bee }) => bee));
  return [...new Set(named)].filter((bee) => bee !== GENUS).sort();
}

/** The taxa that the watch shows to be absent: the genus where none was seen; a species only if all were determined. */
export function absentFrom(watch: PublicWatch, species: readonly string[]): readonly string[] {
  if (watch.queens.length === 0) return [GENUS];
  const allNamed = watch.queens.every(({ determined, bee }) => determined && bee !== GENUS);
  if (!allNamed) return [];
  const there = new Set(watch.queens.map(({ bee }) => bee));
  return species.filter((bee) => !there.has(bee));
}

const absenceRows = (watch: PublicWatch, event: string, species: readonly string[]): Row[] =>
  absentFrom(watch, species).map((name) => ({
    event,
    values: {
      ...common(watch),
      ...beeTaxon(name),
      [`${DWC}occurrenceID`]: `${event}:absent-${name.replace(' ', '-')}`,
      [`${DWC}occurrenceStatus`]: 'absent',
      [`${DWC}individualCount`]: 0,
    },
  }));

export function occurrences(watches: readonly PublicWatch[], settings: SurveySettings, names: Names): ArchiveTable {
  const families = new Map(names.plants.map(({ name, family }) => [name, family]));
  const species = determinedSpecies(watches);
  const rows = watches.flatMap((watch) => {
    const event = watchId(settings.key, watch);
    return [
      ...plantRows(watch, event, families),
      ...beeRows(watch, event, settings),
      ...absenceRows(watch, event, species),
    ];
  });
  return tableOf('occurrence.csv', `${DWC}Occurrence`, TERMS, rows);
}
