/** A watch as rows of the tables, and back. Every part keeps its place in the record's lists. */
import { watchSchema, type Watch } from '../../shared/record.js';
import { readable } from './errors.js';
import { fromJson } from './json.js';
import type { Tables } from './tables.js';

/** One watch in all its rows. */
export interface WatchRows {
  readonly watch: Tables['watches'];
  readonly plants: readonly Tables['plants'][];
  readonly queens: readonly Tables['queens'][];
  readonly determinations: readonly Tables['determinations'][];
  readonly photographs: readonly Tables['photographs'][];
  readonly findings: readonly Tables['findings'][];
  readonly queries: readonly Tables['queries'][];
  readonly changes: readonly Tables['changes'][];
}

const bit = (value: boolean): number => (value ? 1 : 0);

/** Throws where the watch does not fit its schema: once stored it could not be read again, by anybody. */
export function toRows(given: Watch): WatchRows {
  const record = watchSchema.parse(given);
  const { survey, id, place, sky, patch } = record;
  const part = (position: number) => ({ survey, watch: id, position });
  return {
    watch: {
      survey,
      id,
      number: record.number,
      dialog: record.dialog,
      dialogVersion: record.dialogVersion,
      observer: record.observer,
      via: record.via,
      status: record.status,
      statusReason: record.statusReason,
      date: record.date,
      start: record.times.start,
      end: record.times.end,
      timeZone: record.timeZone,
      minutes: record.minutes,
      placeWords: place?.words ?? null,
      latitude: place?.latitude ?? null,
      longitude: place?.longitude ?? null,
      uncertaintyMetres: place?.uncertaintyMetres ?? null,
      site: place?.site ?? null,
      placePrivate: place ? bit(place.private) : null,
      celsius: record.temperature?.celsius ?? null,
      cloud: sky?.cloud ?? null,
      rain: sky ? bit(sky.rain) : null,
      beaufort: record.wind?.beaufort ?? null,
      squareMetres: patch?.squareMetres ?? null,
      shape: patch?.shape ?? null,
      lengthMetres: patch?.lengthMetres ?? null,
      widthMetres: patch?.widthMetres ?? null,
      diameterMetres: patch?.diameterMetres ?? null,
      habitat: record.habitat,
      remark: record.remark,
      watchers: record.watchers,
      more: JSON.stringify(record.more),
      asTyped: JSON.stringify(record.asTyped),
      total: record.total,
      storedAt: record.storedAt,
      changedAt: record.changedAt,
    },
    plants: record.plants.map(({ flowers, ...plant }, position) => ({
      ...part(position),
      ...plant,
      flowers: flowers.value,
      flowersLow: flowers.low,
      flowersHigh: flowers.high,
      flowersAbout: bit(flowers.about),
      flowersAsTyped: flowers.asTyped,
    })),
    queens: record.queens.map(({ determinations: _, doubt, ...row }, position) => ({
      ...part(position),
      ...row,
      doubt: bit(doubt),
    })),
    determinations: record.queens.flatMap(({ determinations }, queensPosition) =>
      determinations.map(({ taxa, ...determination }, position) => ({
        ...part(position),
        queensPosition,
        taxa: JSON.stringify(taxa),
        ...determination,
      })),
    ),
    photographs: record.photographs.map((photograph, position) => ({ ...part(position), ...photograph })),
    findings: record.findings.map(({ values, ...finding }, position) => ({
      ...part(position),
      ...finding,
      values: JSON.stringify(values),
    })),
    queries: record.queries.map((query, position) => ({ ...part(position), ...query })),
    changes: record.history.map(({ from, to, ...change }, position) => ({
      ...part(position),
      ...change,
      from: JSON.stringify(from),
      to: JSON.stringify(to),
    })),
  };
}

/** The row without what only places it. */
function inside<Row extends { survey: string; watch: string; position: number }>(
  row: Row,
): Omit<Row, 'survey' | 'watch' | 'position'> {
  const { survey: _survey, watch: _watch, position: _position, ...rest } = row;
  return rest;
}

function placeOf(row: Tables['watches']) {
  if (row.placeWords === null) return null;
  const { placeWords: words, latitude, longitude, uncertaintyMetres, site, placePrivate } = row;
  return { words, latitude, longitude, uncertaintyMetres, site, private: placePrivate === 1 };
}

function patchOf(row: Tables['watches']) {
  if (row.squareMetres === null) return null;
  const { squareMetres, shape, lengthMetres, widthMetres, diameterMetres } = row;
  return { squareMetres, shape, lengthMetres, widthMetres, diameterMetres };
}

/** Throws `UnreadableRecord` where the rows do not make a watch. The parts are in the order of their positions. */
export function toWatch(rows: WatchRows): Watch {
  const row = rows.watch;
  return readable(`Watch ${row.number}`, watchSchema, () => ({
    id: row.id,
    number: row.number,
    survey: row.survey,
    dialog: row.dialog,
    dialogVersion: row.dialogVersion,
    observer: row.observer,
    via: row.via,
    status: row.status,
    statusReason: row.statusReason,
    date: row.date,
    times: { start: row.start, end: row.end },
    timeZone: row.timeZone,
    minutes: row.minutes,
    place: placeOf(row),
    temperature: row.celsius === null ? null : { celsius: row.celsius },
    sky: row.cloud === null ? null : { cloud: row.cloud, rain: row.rain === 1 },
    wind: row.beaufort === null ? null : { beaufort: row.beaufort },
    patch: patchOf(row),
    habitat: row.habitat,
    remark: row.remark,
    watchers: row.watchers,
    more: fromJson(row.more),
    asTyped: fromJson(row.asTyped),
    plants: rows.plants.map((plant) => {
      const { flowers: value, flowersLow, flowersHigh, flowersAbout, flowersAsTyped, ...rest } = inside(plant);
      const flowers = { value, low: flowersLow, high: flowersHigh, about: flowersAbout === 1, asTyped: flowersAsTyped };
      return { ...rest, flowers };
    }),
    total: row.total,
    queens: rows.queens.map((queens) => ({
      ...inside(queens),
      doubt: queens.doubt === 1,
      determinations: rows.determinations
        .filter((determination) => determination.queensPosition === queens.position)
        .map((determination) => {
          const { queensPosition: _, taxa, ...rest } = inside(determination);
          return { ...rest, taxa: fromJson(taxa) };
        }),
    })),
    photographs: rows.photographs.map(inside),
    findings: rows.findings.map((finding) => ({ ...inside(finding), values: fromJson(finding.values) })),
    queries: rows.queries.map(inside),
    history: rows.changes.map((change) => ({
      ...inside(change),
      from: fromJson(change.from),
      to: fromJson(change.to),
    })),
    storedAt: row.storedAt,
    changedAt: row.changedAt,
  }));
}
