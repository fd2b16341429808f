/** A timer that came due: five minutes left, time is up, a summary or a live watch left open, a reminder. A stale one is ignored. */
import { say } from '../../shared/wording.js';
import { nextOpen } from './fields.js';
import { ASK_ONCE, UNCONFIRMED, unconfirmedTimer } from './confirm.js';
import { endLive, FIVE_LEFT, LEFT_OPEN, secondsLeft, TIME_UP } from './live/index.js';
import { onReminder, REMIND } from './people/reminders.js';
import { watchOf } from './store-watch.js';
import { changed } from './thread.js';
import type { Live, Outcome, Report, Scene, Thread } from './types.js';

const quiet = (thread: Thread): Outcome => ({ thread, said: [], effects: [], then: 'rest' });

export function onTime(thread: Thread, key: string, reportId: string, scene: Scene): Outcome {
  const { report } = thread;
  const { wording } = scene.survey;
  if (key === REMIND) return onReminder(thread, scene);
  if (report === null || report.id !== reportId) return onParked(thread, key, reportId, scene);
  switch (key) {
    case FIVE_LEFT:
      return report.live === null || report.live.pausedAt !== null
        ? quiet(thread)
        : { ...quiet(thread), said: timeLeft(report.live, scene) };
    case TIME_UP:
      return report.live === null || report.live.pausedAt !== null
        ? quiet(thread)
        : endLive(thread, { ...report, live: report.live }, scene);
    case LEFT_OPEN:
      return report.live?.pausedAt == null
        ? quiet(thread)
        : { ...quiet(thread), said: [say(wording, 'live-left-open')] };
    case ASK_ONCE: {
      if (nextOpen(report, scene) !== null) return quiet(thread);
      const effects = [unconfirmedTimer(report, scene)];
      return {
        thread: { ...thread, asking: { kind: 'confirm' } },
        said: [say(wording, 'still-open')],
        effects,
        then: 'repeat',
      };
    }
    case UNCONFIRMED:
      return unconfirmed(thread, report, scene);
    default:
      return quiet(thread);
  }
}

/** After the program stood still it is less than five minutes; where time is up, that alone is said. */
function timeLeft(live: Live, scene: Scene): string[] {
  const minutes = Math.ceil(secondsLeft(live, scene) / 60);
  return minutes <= 0 ? [] : [say(scene.survey.wording, 'live-five-left', { minutes })];
}

/** Kept outside all figures and shown to the coordinator; a yes that comes later confirms it. */
function unconfirmed(thread: Thread, report: Report, scene: Scene): Outcome {
  if (nextOpen(report, scene) !== null || report.stored !== null) return quiet(thread);
  const watch = watchOf(report, scene, 'unconfirmed', null);
  return {
    ...quiet({ ...thread, report: changed(report, { stored: watch }) }),
    effects: [{ do: 'keep-watch', watch }],
  };
}

/** A report put aside for a newer one can still become unconfirmed; it is not asked about in between. */
function onParked(thread: Thread, key: string, reportId: string, scene: Scene): Outcome {
  const report = thread.parked.find(({ id }) => id === reportId);
  if (report === undefined || nextOpen(report, scene) !== null || report.stored !== null) return quiet(thread);
  if (key === ASK_ONCE) return { ...quiet(thread), effects: [unconfirmedTimer(report, scene)] };
  if (key !== UNCONFIRMED) return quiet(thread);
  const watch = watchOf(report, scene, 'unconfirmed', null);
  const parked = thread.parked.map((other) => (other.id === reportId ? changed(report, { stored: watch }) : other));
  return { ...quiet({ ...thread, parked }), effects: [{ do: 'keep-watch', watch }] };
}
