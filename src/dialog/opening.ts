/** A conversation that is opened: by a link, by the program's start, or by a button of a question long gone. */
import { say } from '../../shared/wording.js';
import type { Outcome, Scene, Thread } from './types.js';
import { begun } from './begin.js';
import { welcome } from './people/consent.js';

/** Of a survey that a link names, said back: as much as a link of Telegram holds. */
const LONGEST_SURVEY = 64;

/** A link that names another survey begins nothing: what is told here would be told to the wrong people. */
export function otherSurvey(
  thread: Thread,
  named: string | undefined,
  { survey: { settings, wording } }: Scene,
): Outcome | null {
  if (named === undefined || named.toLowerCase() === settings.key) return null;
  const { name, key } = settings;
  const said = say(wording, 'other-survey', { named: named.slice(0, LONGEST_SURVEY), survey: name, key });
  return { thread, said: [said], effects: [], then: 'rest' };
}

/** A conversation is opened. */
export function open(thread: Thread, consented: boolean, scene: Scene): Outcome {
  if (!consented) {
    return {
      thread: { ...thread, asking: { kind: 'consent' } },
      said: [welcome(scene)],
      effects: [],
      then: 'repeat',
    };
  }
  const { report, asking } = thread;
  if (report?.live) return { thread, said: [say(scene.survey.wording, 'live-running')], effects: [], then: 'rest' };
  if (asking !== null)
    return { thread, said: [say(scene.survey.wording, 'welcome-back')], effects: [], then: 'repeat' };
  return { thread: begun(thread, scene), said: [say(scene.survey.wording, 'hello')], effects: [], then: 'ask' };
}
