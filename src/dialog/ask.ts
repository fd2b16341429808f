/** Puts into words what is asked next, and says it to machines: which fields, of which plant, with which offers. */
import type { Asking as PublicAsking } from '../../shared/message.js';
import { PHOTOGRAPH_LICENCES } from '../../shared/vocabularies.js';
import { fill, say } from '../../shared/wording.js';
import { choicesOf, choicesOfBees, choicesOfRest } from './choices.js';
import { plantKey, queensOf, valueOf } from './fields.js';
import { contextOf } from './hear.js';
import { findingsToAsk } from './findings.js';
import { LICENCE_NAMES } from './people/licence.js';
import { offersQuestion, shownOffers } from './doubts/offers.js';
import { personOf } from './people/person-of.js';
import { photographLines, picturesTaken, wantsPictures } from './photographs.js';
import { showBee, showPlant, unitOf } from './show.js';
import { exampleLine, summaryFields, summaryLines } from './summary.js';
import { isEmpty } from './thread.js';
import type { Asking, Doubt, Json, PlantInPatch, Report, Scene, Thread } from './types.js';

export interface Question {
  readonly text: string;
  /** Words that a channel may show as buttons. */
  readonly choices: readonly string[];
}

const plainQuestion = (text: string, choices: readonly string[] = []): Question => ({ text, choices });

/** Numbers of open flowers to choose from where "lots" was said: a log scale that the eye can tell. */
export const FLOWER_CHOICES = [10, 30, 100, 300, 1000, 3000] as const;

function doubtQuestion(doubt: Doubt, report: Report, scene: Scene): Question {
  const offers = shownOffers(doubt, report, scene);
  const { wording, dialog } = scene.survey;
  const maySkip = dialog.fields[doubt.field]?.skippable === true || doubt.ask === 'tally-unread-live';
  const choices = [
    ...(offers.length === 1 ? [say(wording, 'choice-yes')] : offers),
    ...(maySkip ? [say(wording, 'choice-skip')] : []),
  ];
  return plainQuestion(offersQuestion(doubt, report, scene), choices);
}

function flowersQuestion(plant: PlantInPatch, scene: Scene, report: Report): Question {
  const { wording } = scene.survey;
  const unit = wording.labels.units[unitOf(plant.name, scene.survey)];
  const text = say(wording, 'ask-flowers', { plant: showPlant(plant, contextOf(scene, report)), unit });
  return plainQuestion(text, FLOWER_CHOICES.map(String));
}

function fieldsQuestion(asking: Asking & { kind: 'question' }, report: Report, scene: Scene): Question {
  const { wording, dialog } = scene.survey;
  const entry = dialog.questions.find(({ question }) => question === asking.question);
  const whole = wording.questions[asking.question];
  if (asking.fields[0] === 'plants' && report.plantsOpen && report.plants !== null) {
    const plants = listed(
      report.plants.map((plant) => showPlant(plant, contextOf(scene, report))),
      scene,
    );
    return plainQuestion(say(wording, 'ask-plants-after-live', { plants }), [say(wording, 'choice-none')]);
  }
  const place = valueOf<{ words: string }>(report, 'place')?.words ?? '';
  const partly = entry !== undefined && asking.fields.length < entry.fields.length;
  const optional = (field: string): boolean => dialog.fields[field]?.optional === true;
  const missing = asking.fields.filter((field) => !optional(field) || asking.fields.length === 1);
  const ownAsks = missing.map((field) => fill(wording, wording.fields[field]?.ask ?? field, { place }));
  const ask = whole !== undefined && !partly ? fill(wording, whole.ask, { place }) : ownAsks.join(' ');
  const taken = missing.includes('times') ? picturesTaken(report, scene) : null;
  const text = taken === null ? ask : `${taken} ${ask}`;
  return plainQuestion(
    text,
    mayStart(asking, report, scene) ? [say(wording, 'choice-start')] : choicesOf(missing, report, scene),
  );
}

/** How one of the questions of a list is asked. */
export const itemQuestion = (
  item: { readonly question: string; readonly fields: readonly string[] },
  report: Report,
  scene: Scene,
): string => fieldsQuestion({ kind: 'question', ...item, again: false }, report, scene).text;

/** Asked when they watched, somebody who has told nothing yet may be about to: a button tells that this can be said. */
const mayStart = ({ fields }: Asking & { kind: 'question' }, report: Report, { survey }: Scene): boolean =>
  fields.includes('times') && survey.dialog.fields['tally'] !== undefined && report.stored === null && isEmpty(report);

/** "phlox, violet and redbud". */
const listed = (names: readonly string[], { survey }: Scene): string =>
  names.length < 2
    ? (names[0] ?? '')
    : say(survey.wording, 'all-of', { some: names.slice(0, -1).join(', '), last: names.at(-1)! });

/** The sentence that asks, with the values it needs. */
export function questionText(asking: Asking, thread: Thread, scene: Scene): Question {
  const { survey } = scene;
  const { wording } = survey;
  const { report } = thread;
  if (asking.kind === 'consent')
    return plainQuestion(say(wording, 'ask-consent'), [say(wording, 'choice-yes'), say(wording, 'choice-no')]);
  if (asking.kind === 'person') {
    const field = wording.fields[asking.field];
    return plainQuestion(field?.ask ?? asking.field, [say(wording, 'choice-skip')]);
  }
  if (asking.kind === 'right') {
    const ask = asking.right === 'give' ? 'ask-give-data' : 'ask-forget';
    const watched = scene.history.lastWatches.length > 0;
    return plainQuestion(say(wording, ask, { watched }), [say(wording, 'choice-yes'), say(wording, 'choice-no')]);
  }
  if (asking.kind === 'open-replied') {
    const { number, day } = asking;
    const ask = say(wording, 'ask-open-replied', { number, day, open: !isEmpty(report) });
    return plainQuestion(ask, [say(wording, 'choice-yes'), say(wording, 'choice-no')]);
  }
  if (asking.kind === 'remind') {
    const { target } = scene.history.progress;
    const offer = say(wording, 'reminders-offer', { target });
    return plainQuestion(offer, [say(wording, 'choice-yes'), say(wording, 'choice-no')]);
  }
  if (asking.kind === 'open-stored') {
    const { number, day } = asking;
    const ask = say(wording, 'ask-open-stored', { number, day });
    return plainQuestion(ask, [say(wording, 'choice-yes'), say(wording, 'choice-no')]);
  }
  if (asking.kind === 'join-photograph')
    return plainQuestion(say(wording, 'ask-join-photograph'), [say(wording, 'choice-yes'), say(wording, 'choice-no')]);
  if (asking.kind === 'licence')
    return plainQuestion(say(wording, 'ask-licence'), [
      ...PHOTOGRAPH_LICENCES.map((licence) => say(wording, LICENCE_NAMES[licence])),
      say(wording, 'choice-no'),
    ]);
  if (asking.kind === 'place-name') return plainQuestion(say(wording, 'ask-place-name'), [say(wording, 'choice-skip')]);
  if (asking.kind === 'name-shown')
    return plainQuestion(say(wording, 'ask-name-shown', { name: personOf(scene).name ?? '' }), [
      say(wording, 'choice-yes'),
      say(wording, 'choice-no'),
    ]);
  if (report === null) return plainQuestion('');
  const context = contextOf(scene, report);
  switch (asking.kind) {
    case 'doubt': {
      const doubt = report.doubts[0];
      return doubt === undefined
        ? plainQuestion('')
        : doubt.field === 'flowers' && doubt.offers.length === 0
          ? flowersQuestion(
              report.plants?.[doubt.plant ?? 0] ?? { name: null, rank: null, typed: '', flowers: null },
              scene,
              report,
            )
          : doubtQuestion(doubt, report, scene);
    }
    case 'question':
      return fieldsQuestion(asking, report, scene);
    case 'list': {
      const asks = asking.items.map((item, at) => `${at + 1}. ${itemQuestion(item, report, scene)}`);
      return plainQuestion([say(wording, 'ask-list'), ...asks].join('\n'));
    }
    case 'flowers': {
      const plant = report.plants?.[asking.plant];
      return plant === undefined ? plainQuestion('') : flowersQuestion(plant, scene, report);
    }
    case 'line-plant': {
      const line = report.tally?.[asking.line];
      const bee = line?.bee == null ? '' : showBee(line.bee, line.count, survey, context);
      const plants = (report.plants ?? []).map((plant) => showPlant(plant, context));
      return plainQuestion(say(wording, 'ask-line-plant', { count: line?.count ?? 1, bee }), plants);
    }
    case 'bees-of-total': {
      const known = queensOf(report.tally ?? []);
      const total = report.total ?? 0;
      return plainQuestion(
        known === 0
          ? say(wording, 'ask-bees', { total, plants: (report.plants ?? []).length })
          : say(wording, 'ask-other-bees', { total, known, left: total - known }),
        choicesOfBees(report, scene),
      );
    }
    case 'rest': {
      const plants = (report.plants ?? []).filter((plant) => asking.plants.includes(plantKey(plant)));
      const names = plants.map((plant) => showPlant(plant, context));
      const choices = choicesOfRest(asking.plants, report, scene);
      return plainQuestion(say(wording, 'ask-rest', { plants: listed(names, scene) }), choices);
    }
    case 'confirm':
      return plainQuestion(summaryText(report, scene), [say(wording, 'choice-yes'), say(wording, 'choice-change')]);
    case 'correct':
      return plainQuestion(say(wording, 'ask-correct', { line: exampleLine(report, scene) }), [
        ...summaryFields(report, scene).map(({ label }) => label),
        say(wording, 'choice-nothing'),
      ]);
    case 'throw-away':
      return plainQuestion(say(wording, 'ask-throw-away'), [say(wording, 'choice-yes'), say(wording, 'choice-no')]);
    case 'live':
      return plainQuestion('');
  }
}

/** The whole summary: numbered lines, what a check noticed, and the question for a yes. */
function summaryText(report: Report, scene: Scene): string {
  const { wording } = scene.survey;
  const head = say(wording, report.practice ? 'summary-practice' : 'summary', { again: report.summarised });
  const noticed = findingsToAsk(report, scene);
  const isFix = report.stored !== null && report.stored.status !== 'unconfirmed';
  // what was noticed asks already whether it is right: twice is once too often
  const close = isFix || noticed.length > 0 ? 'ask-confirm-fix' : 'ask-confirm';
  const pictures = wantsPictures(report, scene) ? [say(wording, 'ask-pictures')] : [];
  const photographs = photographLines(report, scene);
  return [head, ...summaryLines(report, scene), ...photographs, ...noticed, ...pictures, say(wording, close)].join(
    '\n',
  );
}

/** What is being asked, for drivers and channels: the names of fields as formats give them. */
export function publicAsking(thread: Thread): {
  readonly asking: PublicAsking | null;
  readonly offer: readonly Json[] | null;
} {
  const { asking, report } = thread;
  const of = (fields: readonly string[], plant: string | null = null, offer: readonly Json[] | null = null) => ({
    asking: { fields: [...fields], plant },
    offer,
  });
  // an offer needs no answer
  if (asking === null || asking.kind === 'remind') return { asking: null, offer: null };
  const plantAt = (index: number | null): string | null => {
    const plant = index === null ? undefined : report?.plants?.[index];
    return plant === undefined ? null : plantKey(plant);
  };
  switch (asking.kind) {
    case 'consent':
      return of(['consent']);
    case 'question':
      return of(asking.fields);
    case 'list':
      return of(asking.items.flatMap(({ fields }) => fields));
    case 'doubt': {
      const doubt = report?.doubts[0];
      if (doubt === undefined) return { asking: null, offer: null };
      const field = doubt.field === 'total' ? 'tally' : doubt.field;
      return of([field], plantAt(doubt.plant), doubt.offers.length > 0 ? doubt.offers : null);
    }
    case 'flowers':
      return of(['flowers'], plantAt(asking.plant));
    case 'line-plant':
    case 'bees-of-total':
    case 'live':
      return of(['tally']);
    case 'rest':
      return of(['tally'], asking.plants.length === 1 ? (asking.plants[0] ?? null) : null);
    case 'confirm':
    case 'throw-away':
    case 'right':
    case 'open-replied':
    case 'open-stored':
    case 'name-shown':
      return of(['confirm']);
    case 'correct':
      return of(['correct']);
    case 'join-photograph':
    case 'licence':
      return of(['photo']);
    case 'place-name':
      return of(['place']);
    case 'person':
      return of([asking.field]);
  }
}
