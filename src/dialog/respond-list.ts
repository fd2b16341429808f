/** Answers to the numbered list in which mail asks for everything that is open. */
import { changed } from './thread.js';
import { hear } from './hear.js';
import { notUnderstood, outcome } from './outcome.js';
import { briefly } from './summary.js';
import type { Asking, Outcome, Report, Scene, Thread } from './types.js';

/** "1. 68" goes to the first item; text without numbers is read for all of them. */
export function answerList(
  thread: Thread,
  report: Report,
  asking: Asking & { kind: 'list' },
  text: string,
  scene: Scene,
): Outcome {
  const parts = text.split('\n').flatMap((line) => {
    const match = /^\s*(?<item>\d{1,2})[.):]\s+(?<answer>\S.*)$/u.exec(line);
    const item = asking.items[Number(match?.groups?.['item']) - 1];
    return item === undefined ? [] : [{ item, answer: match?.groups?.['answer'] ?? '' }];
  });
  const told =
    parts.length > 0
      ? parts
      : [
          {
            item: { question: asking.items[0]?.question ?? '', fields: asking.items.flatMap(({ fields }) => fields) },
            answer: text,
          },
        ];
  let next = report;
  const taken: string[] = [];
  let ask = null;
  for (const { item, answer } of told) {
    const heard = hear(next, answer, item.fields, scene);
    next = changed(heard.report, {
      asked: heard.understood ? [...heard.report.asked, item.question] : heard.report.asked,
    });
    taken.push(...heard.taken);
    ask ??= heard.ask;
  }
  if (taken.length === 0 && next.doubts.length === 0)
    return { ...notUnderstood(thread, ask ?? 'not-that', text, scene), then: 'repeat' };
  return { ...outcome(thread, next), echo: briefly(taken, next, scene) };
}
