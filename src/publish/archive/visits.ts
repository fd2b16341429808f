/** Who visited whom: each bee occurrence and the plant occurrence it was on. */
import type { SurveySettings } from '../../../shared/survey.js';
import type { PublicWatch } from '../public/index.js';
import { observerOf, plantId, queensId, watchId } from './ids.js';
import { DWC, tableOf, type ArchiveTable } from './table.js';

const TERMS = [
  `${DWC}resourceRelationshipID`,
  `${DWC}resourceID`,
  `${DWC}relationshipOfResourceID`,
  `${DWC}relatedResourceID`,
  `${DWC}relationshipOfResource`,
  `${DWC}relationshipAccordingTo`,
  `${DWC}relationshipEstablishedDate`,
  `${DWC}relationshipRemarks`,
];

/** "visits flowers of" in the OBO Relation Ontology. */
const VISITS_FLOWERS_OF = 'http://purl.obolibrary.org/obo/RO_0002622';

export function visits(watches: readonly PublicWatch[], settings: SurveySettings): ArchiveTable {
  const rows = watches.flatMap((watch) => {
    const event = watchId(settings.key, watch);
    return watch.queens.map((one) => ({
      event,
      values: {
        [`${DWC}resourceRelationshipID`]: `${queensId(event, one)}:visit`,
        [`${DWC}resourceID`]: queensId(event, one),
        [`${DWC}relationshipOfResourceID`]: VISITS_FLOWERS_OF,
        [`${DWC}relatedResourceID`]: plantId(event, one.plant),
        [`${DWC}relationshipOfResource`]: 'visits flowers of',
        [`${DWC}relationshipAccordingTo`]: observerOf(watch),
        [`${DWC}relationshipEstablishedDate`]: watch.date,
        [`${DWC}relationshipRemarks`]: `individuals seen on the plant: ${one.visits}`,
      },
    }));
  });
  return tableOf('visits.csv', `${DWC}ResourceRelationship`, TERMS, rows);
}
