/** Timers: one row for each thread and key, with the moment when it is due. */
import { z } from 'zod';
import { messageSchema } from '../../shared/message.js';
import { instant } from '../../shared/record.js';
import type { Connection, Transaction } from './connection.js';
import { readable } from './errors.js';
import { sortable } from './instant.js';
import type { ThreadKey } from './inbox.js';
import { query } from './query.js';

const storedTimer = z.strictObject({
  survey: z.string(),
  channel: z.string(),
  person: z.string(),
  key: z.string(),
  report: z.string(),
  due: instant,
  manner: messageSchema.shape.manner,
  proven: z.boolean(),
});

/** A timer with the manner and proof of its thread's last message. */
export type StoredTimer = z.infer<typeof storedTimer>;

const upsertTimer = query((database, place: ThreadKey & { key: string; report: string; due: string }) =>
  database
    .insertInto('timers')
    .values({
      survey: place.survey,
      channel: place.channel,
      person: place.person,
      key: place.key,
      report: place.report,
      due: place.due,
    })
    .onConflict((same) =>
      same
        .columns(['survey', 'channel', 'person', 'key'])
        .doUpdateSet((row) => ({ report: row.ref('excluded.report'), due: row.ref('excluded.due') })),
    ),
);

/** Sets the thread's timer of that key; one that was set before is replaced. */
export function setTimer(
  transaction: Transaction,
  { survey, channel, person }: ThreadKey,
  { key, report, due }: { readonly key: string; readonly report: string; readonly due: string },
): void {
  upsertTimer.run(transaction, { survey, channel, person, key, report, due: sortable(due) });
}

const deleteTimer = query((database, place: ThreadKey & { key: string }) =>
  database
    .deleteFrom('timers')
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('person', '=', place.person)
    .where('key', '=', place.key),
);

/** Clears it; one that is not set is no mistake, it may have come due. */
export function clearTimer(transaction: Transaction, { survey, channel, person }: ThreadKey, key: string): void {
  deleteTimer.run(transaction, { survey, channel, person, key });
}

const deleteDueTimer = query((database, place: ThreadKey & { key: string; due: string }) =>
  database
    .deleteFrom('timers')
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('person', '=', place.person)
    .where('key', '=', place.key)
    .where('due', '=', place.due),
);

/** Takes a timer that came due; `false` where it was cleared or set anew since it was read. */
export function takeTimer(
  transaction: Transaction,
  { survey, channel, person }: ThreadKey,
  { key, due }: { readonly key: string; readonly due: string },
): boolean {
  return deleteDueTimer.run(transaction, { survey, channel, person, key, due: sortable(due) }) === 1;
}

const selectDue = query((database, place: { survey: string; now: string; most: number }) =>
  database
    .selectFrom('timers')
    .innerJoin('threads', (join) =>
      join
        .onRef('threads.survey', '=', 'timers.survey')
        .onRef('threads.channel', '=', 'timers.channel')
        .onRef('threads.person', '=', 'timers.person'),
    )
    .select(['timers.survey', 'timers.channel', 'timers.person', 'key', 'report', 'due', 'manner', 'proven'])
    .where('timers.survey', '=', place.survey)
    .where('due', '<=', place.now)
    .orderBy('due')
    .orderBy('key')
    .limit(place.most),
);

/** Timers due by now, the earliest first. */
export function dueTimers(
  connection: Connection,
  { survey, now, most }: { readonly survey: string; readonly now: string; readonly most: number },
): StoredTimer[] {
  return selectDue
    .all(connection, { survey, now: sortable(now), most })
    .map((row) => readable(`Timer "${row.key}"`, storedTimer, () => ({ ...row, proven: row.proven === 1 })));
}

const selectNext = query((database, place: { survey: string }) =>
  database
    .selectFrom('timers')
    .select((timers) => timers.fn.min('due').as('due'))
    .where('survey', '=', place.survey),
);

/** When the next timer is due; null when none is set. */
export function nextTimerDue(connection: Connection, survey: string): string | null {
  return selectNext.first(connection, { survey })?.due ?? null;
}
