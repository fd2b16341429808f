/** `meta.xml`, which says what each file and column is (Darwin Core text guide), and `eml.xml`, what the dataset is. */
import { create } from 'xmlbuilder2';
import type { SurveySettings } from '../../../shared/survey.js';
import type { PublicWatch } from '../public/index.js';
import { PROTOCOL } from './events.js';
import type { ArchiveTable } from './table.js';

const TEXT_GUIDE = 'http://rs.tdwg.org/dwc/text/';

export function metaXml(core: ArchiveTable, extensions: readonly ArchiveTable[]): string {
  const root = create({ version: '1.0', encoding: 'UTF-8' }).ele(TEXT_GUIDE, 'archive', { metadata: 'eml.xml' });
  const describe = (table: ArchiveTable, kind: 'core' | 'extension'): void => {
    const element = root.ele(kind, {
      encoding: 'UTF-8',
      fieldsTerminatedBy: ',',
      linesTerminatedBy: '\\n',
      fieldsEnclosedBy: '"',
      ignoreHeaderLines: '1',
      rowType: table.rowType,
    });
    element.ele('files').ele('location').txt(table.file);
    element.ele(kind === 'core' ? 'id' : 'coreid', { index: '0' });
    table.terms.forEach((term, at) => element.ele('field', { index: String(at + 1), term }));
  };
  describe(core, 'core');
  for (const extension of extensions) describe(extension, 'extension');
  return root.end({ prettyPrint: true });
}

/** `published` is a local day. The coordinator's address is the survey's own contact and is meant to be known. */
export function emlXml(settings: SurveySettings, watches: readonly PublicWatch[], published: string): string {
  const places = watches.flatMap(({ place }) => place ?? []);
  const days = watches.map(({ date }) => date).sort();
  const person = {
    individualName: { surName: settings.coordinator.name },
    electronicMailAddress: settings.coordinator.mail,
  };
  const bounds = (degrees: readonly number[]): [least: string, most: string] => [
    String(degrees.reduce((a, b) => Math.min(a, b))),
    String(degrees.reduce((a, b) => Math.max(a, b))),
  ];
  const geographic = (): object => {
    const [south, north] = bounds(places.map(({ latitude }) => latitude));
    const [west, east] = bounds(places.map(({ longitude }) => longitude));
    return {
      geographicDescription: `Places of the ${settings.name}; private ones and those of protected species blurred`,
      boundingCoordinates: {
        westBoundingCoordinate: west,
        eastBoundingCoordinate: east,
        northBoundingCoordinate: north,
        southBoundingCoordinate: south,
      },
    };
  };
  const dataset = {
    title: settings.name,
    creator: person,
    pubDate: published,
    abstract: {
      para: `${watches.length} confirmed watches. ${PROTOCOL} Watches in which no queen was seen are part of it.`,
    },
    intellectualRights: { para: settings.licence },
    coverage: {
      ...(places.length > 0 ? { geographicCoverage: geographic() } : {}),
      ...(days.length > 0
        ? {
            temporalCoverage: {
              rangeOfDates: { beginDate: { calendarDate: days[0] }, endDate: { calendarDate: days.at(-1) } },
            },
          }
        : {}),
      taxonomicCoverage: { taxonomicClassification: { taxonRankName: 'genus', taxonRankValue: 'Bombus' } },
    },
    contact: person,
    methods: { methodStep: { description: { para: PROTOCOL } } },
  };
  const { protocol } = settings;
  const limits = `A watch is within the protocol at ${protocol.minutes} ± ${protocol.toleranceMinutes} minutes, ${protocol.leastCelsius} to ${protocol.mostCelsius} °C and at most ${protocol.mostBeaufort} Beaufort.`;
  return create({ version: '1.0', encoding: 'UTF-8' })
    .ele('https://eml.ecoinformatics.org/eml-2.2.0', 'eml:eml', {
      packageId: `${settings.key}/${published}`,
      system: settings.key,
    })
    .ele({
      dataset,
      // one element in each: the language takes no more (module eml, additionalMetadata)
      additionalMetadata: [{ metadata: { citation: settings.citation } }, { metadata: { protocolLimits: limits } }],
    })
    .up()
    .end({ prettyPrint: true });
}
