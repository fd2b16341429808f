/** Events: the season, then its watches by `parentEventID`; what was done and with which effort. */
import { Temporal } from 'temporal-polyfill';
import type { SurveySettings } from '../../../shared/survey.js';
import type { PublicWatch } from '../public/index.js';
import { observerOf, seasonId, seasonOf, watchId } from './ids.js';
import { DCTERMS, DWC, ECO, tableOf, type ArchiveTable } from './table.js';

const EVENT_TERMS = [
  `${DWC}eventID`,
  `${DWC}parentEventID`,
  `${DWC}eventType`,
  `${DWC}eventDate`,
  `${DWC}samplingProtocol`,
  `${DWC}sampleSizeValue`,
  `${DWC}sampleSizeUnit`,
  `${DWC}samplingEffort`,
  `${DWC}locationID`,
  `${DWC}decimalLatitude`,
  `${DWC}decimalLongitude`,
  `${DWC}geodeticDatum`,
  `${DWC}coordinateUncertaintyInMeters`,
  `${DWC}dataGeneralizations`,
  `${DWC}informationWithheld`,
  `${DWC}datasetName`,
  `${DCTERMS}license`,
];

const withheldFrom = ({ observerName }: PublicWatch): string =>
  observerName === null
    ? 'words of the place, remarks, photographs and the name of the observer'
    : 'words of the place, remarks and photographs';

/** Said in words that need no dialog file, since the archive is read without it. */
export const PROTOCOL =
  'One patch of flowers watched for a set time; open flowers counted by plant, bumble bee queens by name and plant visited.';

const withOffset = (date: string, time: string, zone: string): string =>
  Temporal.PlainDateTime.from(`${date}T${time}`)
    .toZonedDateTime(zone)
    .toString({ smallestUnit: 'minute', timeZoneName: 'never' });

/** ISO 8601 interval with the offsets of that day. */
const intervalOf = ({ date, start, end, timeZone }: PublicWatch): string =>
  `${withOffset(date, start, timeZone)}/${withOffset(date, end, timeZone)}`;

export function events(watches: readonly PublicWatch[], settings: SurveySettings): ArchiveTable {
  const common = { [`${DWC}datasetName`]: settings.name, [`${DCTERMS}license`]: settings.licence };
  const years = [...new Set(watches.map(seasonOf))].sort();
  const seasons = years.map((year) => {
    const dates = watches.filter((watch) => seasonOf(watch) === year).map(({ date }) => date);
    const event = seasonId(settings.key, year);
    return {
      event,
      values: {
        ...common,
        [`${DWC}eventID`]: event,
        [`${DWC}eventType`]: 'Season',
        [`${DWC}eventDate`]: `${dates.reduce((a, b) => (a < b ? a : b))}/${dates.reduce((a, b) => (a > b ? a : b))}`,
        [`${DWC}samplingProtocol`]: PROTOCOL,
      },
    };
  });
  const rows = watches.map((watch) => {
    const event = watchId(settings.key, watch);
    const { place } = watch;
    return {
      event,
      values: {
        ...common,
        [`${DWC}eventID`]: event,
        [`${DWC}parentEventID`]: seasonId(settings.key, seasonOf(watch)),
        [`${DWC}eventType`]: 'Watch',
        [`${DWC}eventDate`]: intervalOf(watch),
        [`${DWC}samplingProtocol`]: PROTOCOL,
        [`${DWC}sampleSizeValue`]: watch.squareMetres,
        [`${DWC}sampleSizeUnit`]: watch.squareMetres === null ? null : 'square metre',
        [`${DWC}samplingEffort`]: `${watch.minutes} minutes, ${watch.watchers} watching`,
        [`${DWC}locationID`]: place?.site ? `${settings.key}:${place.site}` : null,
        [`${DWC}decimalLatitude`]: place?.latitude ?? null,
        [`${DWC}decimalLongitude`]: place?.longitude ?? null,
        [`${DWC}geodeticDatum`]: place ? 'EPSG:4326' : null,
        [`${DWC}coordinateUncertaintyInMeters`]: place?.uncertaintyMetres ?? null,
        [`${DWC}dataGeneralizations`]: place?.generalized ?? null,
        [`${DWC}informationWithheld`]: withheldFrom(watch),
      },
    };
  });
  return tableOf('event.csv', `${DWC}Event`, EVENT_TERMS, [...seasons, ...rows]);
}

const EFFORT_TERMS = [
  `${ECO}eventDurationValue`,
  `${ECO}eventDurationUnit`,
  `${ECO}totalAreaSampledValue`,
  `${ECO}totalAreaSampledUnit`,
  `${ECO}targetTaxonomicScope`,
  `${ECO}isTaxonomicScopeFullyReported`,
  `${ECO}isAbsenceReported`,
  `${ECO}absentTaxa`,
  `${ECO}isAbundanceReported`,
  `${ECO}inventoryTypes`,
  `${ECO}protocolNames`,
  `${ECO}protocolDescriptions`,
  `${ECO}samplingPerformedBy`,
  `${ECO}isSamplingEffortReported`,
  `${ECO}samplingEffortValue`,
  `${ECO}samplingEffortUnit`,
  `${ECO}reportedWeather`,
];

/** Temperature, sky and wind in one line; null where none was told. */
function weatherOf({ temperatureCelsius, cloud, rain, windBeaufort }: PublicWatch): string | null {
  const told = [
    temperatureCelsius === null ? null : `${temperatureCelsius} °C`,
    cloud === null ? null : `sky ${cloud}${rain ? ' with rain' : ''}`,
    windBeaufort === null ? null : `wind ${windBeaufort} Beaufort`,
  ].filter((part) => part !== null);
  return told.length === 0 ? null : told.join(', ');
}

/** The effort of each watch in the terms of the Humboldt Extension. */
export function efforts(
  watches: readonly PublicWatch[],
  settings: SurveySettings,
  absent: (watch: PublicWatch) => readonly string[],
): ArchiveTable {
  const rows = watches.map((watch) => ({
    event: watchId(settings.key, watch),
    values: {
      [`${ECO}eventDurationValue`]: watch.minutes,
      [`${ECO}eventDurationUnit`]: 'minutes',
      [`${ECO}totalAreaSampledValue`]: watch.squareMetres,
      [`${ECO}totalAreaSampledUnit`]: watch.squareMetres === null ? null : 'm²',
      [`${ECO}targetTaxonomicScope`]: 'Bombus',
      [`${ECO}isTaxonomicScopeFullyReported`]: true,
      [`${ECO}isAbsenceReported`]: true,
      [`${ECO}absentTaxa`]: absent(watch).join(' | ') || null,
      [`${ECO}isAbundanceReported`]: true,
      [`${ECO}inventoryTypes`]: 'restricted search',
      [`${ECO}protocolNames`]: 'timed watch of one patch of flowers',
      [`${ECO}protocolDescriptions`]: PROTOCOL,
      [`${ECO}samplingPerformedBy`]: observerOf(watch),
      [`${ECO}isSamplingEffortReported`]: true,
      [`${ECO}samplingEffortValue`]: (watch.minutes * watch.watchers) / 60,
      [`${ECO}samplingEffortUnit`]: 'person hours',
      [`${ECO}reportedWeather`]: weatherOf(watch),
    },
  }));
  return tableOf('effort.csv', `${ECO}Event`, EFFORT_TERMS, rows);
}
