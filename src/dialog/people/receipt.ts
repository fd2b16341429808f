/** What a receipt says of a stored watch: its lines, how to correct it, how far the season is, a kind word. */
import { showDay } from '../../../shared/display.js';
import type { Receipt } from '../../../shared/receipt.js';
import type { Watch } from '../../../shared/record.js';
import { say } from '../../../shared/wording.js';
import { reportOf } from '../store-watch.js';
import { summaryFields } from '../summary.js';
import type { Effect, Scene } from '../types.js';

/** Watches of the season so far, this one among them, and how many are asked for. */
interface Progress {
  readonly watches: number;
  readonly target: number;
}

function receiptOf(watch: Watch, name: string | null, progress: Progress, scene: Scene): Receipt {
  const { settings, wording } = scene.survey;
  const { number } = watch;
  const asked = watch.queries.filter(({ state, to }) => to === 'coordinator' && state !== 'answered').length;
  const corrected = watch.history.some(({ role, path }) => role === 'observer' && path !== '/status');
  const state = watch.status === 'practice' ? 'practice' : corrected ? 'corrected' : 'stored';
  const coordinator = settings.coordinator.name;
  return {
    locale: wording.locale,
    subject: say(wording, 'receipt-subject', {
      state,
      number,
      date: showDay(watch.date, wording.locale, scene.local.date),
      survey: settings.name,
    }),
    opening: [
      say(wording, 'receipt-hello', { named: name !== null, name: name ?? '' }),
      say(wording, 'receipt-stored', { state, number }),
    ],
    lines: summaryFields(reportOf(watch, scene), scene),
    closing: [
      ...(asked > 0 ? [say(wording, 'receipt-asked', { coordinator, asked })] : []),
      say(wording, 'receipt-correct', { number, coordinator }),
      ...(watch.status === 'confirmed' ? [say(wording, 'receipt-progress', { ...progress })] : []),
      say(wording, 'receipt-kind', { queens: watch.total }),
      say(wording, 'receipt-private', { survey: settings.name }),
    ],
  };
}

/** Sends the receipt of a stored watch to a mail address. */
export const sendReceipt = (
  watch: Watch,
  to: { readonly name: string | null; readonly mail: string },
  progress: Progress,
  scene: Scene,
): Effect => ({
  do: 'send-receipt',
  to: to.mail,
  receipt: receiptOf(watch, to.name, progress, scene),
});
