/** Under which licence a person lets their photographs be published: asked once, changed by plain words at any time. */
import { readLicence, readYesNo, type LicenceTold, type Wish } from '../../answers/index.js';
import { licensed } from '../../../shared/licence.js';
import type { PhotographLicence } from '../../../shared/vocabularies.js';
import { say } from '../../../shared/wording.js';
import { afterwards, askedLicence, wantsLicence } from './afterwards.js';
import { contextOf } from '../hear.js';
import { personOf } from './person-of.js';
import type { Outcome, Report, Scene, Thread } from '../types.js';

export const LICENCE_NAMES = {
  'CC-BY-4.0': 'choice-cc-by',
  'CC-BY-NC-4.0': 'choice-cc-by-nc',
  'CC0-1.0': 'choice-cc0',
} as const satisfies Record<PhotographLicence, string>;

/** Keeps what was chosen: for the person, and on all photographs they ever sent. */
function choose(thread: Thread, licence: PhotographLicence | null, scene: Scene): Omit<Outcome, 'then'> {
  const { survey, now, message } = scene;
  const person = personOf(scene);
  // a watch that is open for mending is kept from here, not from what is stored
  const inReport = (report: Report): Report =>
    report.stored === null
      ? report
      : { ...report, stored: licensed(report.stored, licence, { at: now, through: message.channel }) };
  const next = wantsLicence(person) ? askedLicence(person) : person;
  return {
    thread: {
      ...thread,
      report: thread.report === null ? null : inReport(thread.report),
      parked: thread.parked.map(inReport),
    },
    said: [
      licence === null
        ? say(survey.wording, 'licence-kept-back')
        : say(survey.wording, 'licence-kept', { licence: say(survey.wording, LICENCE_NAMES[licence]) }),
    ],
    effects: [
      { do: 'keep-person', person: { ...next, photographLicence: licence } },
      { do: 'license-photographs', observer: person.key, licence },
    ],
  };
}

const settled = (told: Exclude<LicenceTold, 'unknown'>): PhotographLicence | null => (told === 'none' ? null : told);

/** Null where the text is about something else: then nothing is published, as the question said. */
export function answerLicence(thread: Thread, text: string, wish: Wish | null, scene: Scene): Outcome | null {
  const { wording, words } = scene.survey;
  const told = readLicence(text, words);
  const yesNo = readYesNo(text, contextOf(scene, null));
  const bare = yesNo.state === 'sure' && yesNo.value.rest === null ? yesNo.value.answer : null;
  const declines = bare === 'no' || wish?.wish === 'skip' || wish?.wish === 'unknown';
  const answer = declines ? 'none' : told;
  if (answer !== null && answer !== 'unknown') {
    const licence = settled(answer);
    const done: Thread = { ...thread, asking: null };
    const chosen = choose(done, licence, scene);
    const person = { ...personOf(scene), photographLicence: licence };
    const wanted = afterwards(person, { photographed: true, progress: scene.history.progress }, scene);
    return {
      ...chosen,
      said: [...chosen.said, ...wanted.said],
      effects: [...chosen.effects, ...wanted.effects],
      then: 'rest',
    };
  }
  if (answer === 'unknown' || bare === 'yes')
    return { thread, said: [say(wording, 'licence-which')], effects: [], then: 'rest' };
  return null;
}

/** "my photos: CC BY", whatever is being asked; null licence: they only asked how. */
export function chooseLicence(thread: Thread, licence: LicenceTold | null, scene: Scene): Outcome {
  const then = thread.asking === null ? 'rest' : 'repeat';
  if (licence === null || licence === 'unknown')
    return { thread, said: [say(scene.survey.wording, 'licence-which')], effects: [], then };
  return { ...choose(thread, settled(licence), scene), then };
}
