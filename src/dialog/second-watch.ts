/** A message told two watches: once the first is done with, the second is read from what was written. */
import { say } from '../../shared/wording.js';
import { begun } from './begin.js';
import { tell } from './fields.js';
import { tellAll } from './first-text.js';
import type { Outcome, Report, Scene, Thread } from './types.js';

/** It is begun, on the same day where it tells none of its own. */
export function tellSecond(thread: Thread, first: Report, text: string, scene: Scene): Outcome {
  const another = begun({ ...thread, report: null, asking: null }, scene);
  const told = another.report === null ? null : tellAll(another, another.report, text, scene);
  const said = say(scene.survey.wording, 'second-watch');
  const { report } = told?.thread ?? another;
  const date = first.fields['date'];
  if (told === null || report === null) return { thread: another, said: [said], effects: [], then: 'ask' };
  const dated =
    report.fields['date'] !== undefined || date === undefined
      ? report
      : tell(report, 'date', date.value, date.typed, scene.message.id);
  const all = dated === report ? told : { ...told, thread: { ...told.thread, report: dated } };
  return { ...all, said: [said, ...all.said] };
}
