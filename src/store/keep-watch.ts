/** Writes a watch. */
import type { Watch } from '../../shared/record.js';
import type { Transaction } from './connection.js';
import { countWatch } from './counts.js';
import { query } from './query.js';
import type { Tables } from './tables.js';
import { toRows } from './watch-rows.js';

const selectCounted = query((database, place: { survey: string; id: string }) =>
  database
    .selectFrom('watches')
    .select('total')
    .where('survey', '=', place.survey)
    .where('id', '=', place.id)
    .where('status', '=', 'confirmed'),
);

const deleteWatch = query((database, place: { survey: string; id: string }) =>
  database.deleteFrom('watches').where('survey', '=', place.survey).where('id', '=', place.id),
);

const insertWatch = query((database, place: Tables['watches']) =>
  database.insertInto('watches').values({
    survey: place.survey,
    id: place.id,
    number: place.number,
    dialog: place.dialog,
    dialogVersion: place.dialogVersion,
    observer: place.observer,
    via: place.via,
    status: place.status,
    statusReason: place.statusReason,
    date: place.date,
    start: place.start,
    end: place.end,
    timeZone: place.timeZone,
    minutes: place.minutes,
    placeWords: place.placeWords,
    latitude: place.latitude,
    longitude: place.longitude,
    uncertaintyMetres: place.uncertaintyMetres,
    site: place.site,
    placePrivate: place.placePrivate,
    celsius: place.celsius,
    cloud: place.cloud,
    rain: place.rain,
    beaufort: place.beaufort,
    squareMetres: place.squareMetres,
    shape: place.shape,
    lengthMetres: place.lengthMetres,
    widthMetres: place.widthMetres,
    diameterMetres: place.diameterMetres,
    habitat: place.habitat,
    remark: place.remark,
    watchers: place.watchers,
    more: place.more,
    asTyped: place.asTyped,
    total: place.total,
    storedAt: place.storedAt,
    changedAt: place.changedAt,
  } satisfies Tables['watches']),
);

const insertPlant = query((database, place: Tables['plants']) =>
  database.insertInto('plants').values({
    survey: place.survey,
    watch: place.watch,
    position: place.position,
    plant: place.plant,
    name: place.name,
    rank: place.rank,
    asTyped: place.asTyped,
    unit: place.unit,
    flowers: place.flowers,
    flowersLow: place.flowersLow,
    flowersHigh: place.flowersHigh,
    flowersAbout: place.flowersAbout,
    flowersAsTyped: place.flowersAsTyped,
  } satisfies Tables['plants']),
);

const insertQueens = query((database, place: Tables['queens']) =>
  database.insertInto('queens').values({
    survey: place.survey,
    watch: place.watch,
    position: place.position,
    row: place.row,
    plant: place.plant,
    bee: place.bee,
    rank: place.rank,
    asTyped: place.asTyped,
    count: place.count,
    seenBefore: place.seenBefore,
    withPollen: place.withPollen,
    caste: place.caste,
    doubt: place.doubt,
  } satisfies Tables['queens']),
);

const insertDetermination = query((database, place: Tables['determinations']) =>
  database.insertInto('determinations').values({
    survey: place.survey,
    watch: place.watch,
    queensPosition: place.queensPosition,
    position: place.position,
    taxa: place.taxa,
    qualifier: place.qualifier,
    count: place.count,
    caste: place.caste,
    by: place.by,
    role: place.role,
    at: place.at,
    from: place.from,
  } satisfies Tables['determinations']),
);

const insertPhotograph = query((database, place: Tables['photographs']) =>
  database.insertInto('photographs').values({
    survey: place.survey,
    watch: place.watch,
    position: place.position,
    sha256: place.sha256,
    type: place.type,
    takenAt: place.takenAt,
    queensRow: place.queensRow,
    licence: place.licence,
  } satisfies Tables['photographs']),
);

const insertFinding = query((database, place: Tables['findings']) =>
  database.insertInto('findings').values({
    survey: place.survey,
    watch: place.watch,
    position: place.position,
    check: place.check,
    weight: place.weight,
    values: place.values,
    reply: place.reply,
    at: place.at,
  } satisfies Tables['findings']),
);

const insertQuery = query((database, place: Tables['queries']) =>
  database.insertInto('queries').values({
    survey: place.survey,
    watch: place.watch,
    position: place.position,
    number: place.number,
    check: place.check,
    to: place.to,
    question: place.question,
    state: place.state,
    answer: place.answer,
    by: place.by,
    openedAt: place.openedAt,
    closedAt: place.closedAt,
  } satisfies Tables['queries']),
);

const insertChange = query((database, place: Tables['changes']) =>
  database.insertInto('changes').values({
    survey: place.survey,
    watch: place.watch,
    position: place.position,
    at: place.at,
    by: place.by,
    role: place.role,
    through: place.through,
    path: place.path,
    from: place.from,
    to: place.to,
    why: place.why,
  } satisfies Tables['changes']),
);

/**
 * Keeps a watch whole: one that has this id already is replaced, with all its parts. Expects the open transaction of
 * the step. Throws where the watch does not fit its schema, or where another has its number.
 */
export function keepWatch(transaction: Transaction, watch: Watch): void {
  const rows = toRows(watch);
  const key = { survey: watch.survey, id: watch.id };

  const countedBefore = selectCounted.first(transaction, key);
  if (countedBefore) countWatch(transaction, watch.survey, countedBefore.total, -1);
  if (watch.status === 'confirmed') countWatch(transaction, watch.survey, watch.total, 1);

  deleteWatch.run(transaction, key); // its parts go with it
  insertWatch.run(transaction, rows.watch);
  for (const row of rows.plants) insertPlant.run(transaction, row);
  for (const row of rows.queens) insertQueens.run(transaction, row);
  for (const row of rows.determinations) insertDetermination.run(transaction, row);
  for (const row of rows.photographs) insertPhotograph.run(transaction, row);
  for (const row of rows.findings) insertFinding.run(transaction, row);
  for (const row of rows.queries) insertQuery.run(transaction, row);
  for (const row of rows.changes) insertChange.run(transaction, row);
}
