/**
 * A whole season that nobody watched: the invented survey's watches, from a seed. For benchmarks, which need a million,
 * and for the demo, which needs some 240. The same arguments give the same watches on every machine.
 *
 * What the figures of a season have to cope with is in it: watches without a queen, counts that vary more than chance
 * alone would let them (observers, places and single watches differ, each log-normally), weather below the protocol,
 * names that an expert puts right, rows that an expert splits, queens followed to a second plant, workers, practice.
 */
import type { Change, Place, PlantWatched, Query, Watch } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import { faunaOf, type Fauna, type Flying } from './made-season/bees.js';
import { clock, instantOf, MINUTE_MILLISECONDS, twelveHours } from './made-season/calendar.js';
import { chanceOf, type Chance } from './made-season/chance.js';
import { flowersOf } from './made-season/counts.js';
import { daysOf, type Day } from './made-season/days.js';
import { changesOf, queriesOf, standingOf, type Standing } from './made-season/desk.js';
import { judge, type Experts } from './made-season/experts.js';
import { flora, plantsFrom, type InFlower, type Kind } from './made-season/flora.js';
import { patchTold } from './made-season/patch.js';
import { observersOf, turnsOf, type Observer } from './made-season/people.js';
import type { Spot } from './made-season/places.js';
import { tallyOf, type Seen } from './made-season/tally.js';
import { weatherAt, type Weather } from './made-season/weather.js';

export interface SeasonWish {
  /** A whole number. */
  readonly seed: number;
  /** Each makes at least one watch while there are as many. */
  readonly observers: number;
  readonly watches: number;
  readonly survey: Survey;
}

/** Practice watches in a season: people try it out once, on their first. */
const PRACTICE = 12;

/** The evening, in minutes of the local day: watches are stored after the last could have ended. */
const EVENING = { from: 18 * 60 + 40, to: 22 * 60 + 45 };

/** The helper's key is invented as the coordinator's name is. */
const HELPER = 'tamsin';

const REMARKS = [
  'Very still and warm, lots of small bees.',
  'Neighbor mowed next to me half way through.',
  'A queen flew low over the leaf litter, looking for a nest I think.',
  'Flowers just opening, more next week.',
  'A few flowers brown at the edges, most of them fresh.',
  'She said "big as a thumb", and I agree.',
  'Two honey bees, one mining bee.',
  'Sun went behind a cloud for five minutes.',
  'Rain started right after.',
  'Counted from the bench.\nA good spot, I will come again.',
  'Wind picked up at the end, so the tall stems were hard to watch.',
  'The patch to the left of the sign.',
] as const;

const UNLISTED = ['tiny white star-shaped flower', 'fuzzy grey-leaved thing', 'purple weed by the path'] as const;

/** In how many watches a plant is one that no list names. */
const UNLISTED_SHARE = 0.015;

/** How long people watch who do not keep to the protocol's length. */
const OTHER_LENGTHS = [0.7, 0.9, 1.1, 1.35, 2] as const;

interface Span {
  /** Minutes of the local day. */
  readonly start: number;
  readonly end: number;
  readonly minutes: number;
}

/** From nine to six, most about one, seldom to the minute. */
function spanOf(after: number | null, usualMinutes: number, chance: Chance): Span {
  let start = after === null ? null : after + chance.whole(3, 25);
  if (start === null || start > 17.75 * 60) {
    do start = Math.round(13.2 * 60 + 2.1 * 60 * chance.normal());
    while (start < 9 * 60 || start > 17.75 * 60);
    const step = chance.one([15, 15, 15, 5, 5, 1]);
    start = Math.max(9 * 60, Math.floor(start / step) * step);
  }
  const minutes = Math.round(usualMinutes * (chance.yes(0.9) ? 1 : chance.one(OTHER_LENGTHS)));
  const paused = chance.yes(0.01) ? chance.whole(2, 8) : 0;
  return { start, end: start + minutes + paused, minutes };
}

function timesTyped({ start, end, minutes }: Span, chance: Chance): string {
  const half = (minute: number): string => (minute < 12 * 60 ? 'am' : 'pm');
  const how = chance.share();
  if (how < 0.5) {
    const first = half(start) === half(end) ? '' : ` ${half(start)}`;
    return `${twelveHours(start)}${first} to ${twelveHours(end)} ${half(end)}`;
  }
  if (how < 0.75 || end - start !== minutes) return `${clock(start)}-${clock(end)}`;
  return `${twelveHours(start)} ${half(start)}, ${minutes} minutes`;
}

/** How many times as many queens as usual are out: about noon, when it is warm, still and dry. */
function activity({ celsius, beaufort, raining }: Weather, { start, minutes }: Span): number {
  const hours = (start / 60 - 13.3) / 3.4;
  const byHour = Math.exp(-0.5 * hours * hours);
  const byWarmth = 1 / (1 + Math.exp((11 - celsius) / 2.5));
  const byWind = Math.exp(-0.12 * Math.max(0, beaufort - 2));
  return ((byHour * byWarmth * byWind * minutes) / 15) * (raining ? 0.15 : 1);
}

function watchedPlants(here: InFlower, chance: Chance) {
  const plants = plantsFrom(here, chance);
  const patches = plants.map((plant) => flowersOf(plant, chance));
  const watched = plants.map(({ name, rank, unit, words }, index): PlantWatched => ({
    plant: index + 1,
    name,
    rank,
    asTyped: chance.one(words),
    unit,
    flowers: patches[index]?.flowers ?? { value: 1, low: 1, high: 1, about: false, asTyped: '1' },
  }));
  const last = watched.at(-1);
  if (last !== undefined && watched.length > 1 && chance.yes(UNLISTED_SHARE)) {
    watched[watched.length - 1] = { ...last, name: null, rank: null, asTyped: chance.one(UNLISTED), unit: 'flower' };
  }
  return { plants, watched, flowers: patches.map(({ times }) => times) };
}

function tallyTyped(seen: readonly Seen[], plants: readonly PlantWatched[]): string {
  if (seen.length === 0) return 'none';
  const lines = seen.map(({ row: { count, asTyped, plant } }) => {
    const on = plants.length === 1 ? '' : ` on ${plants[plant - 1]?.asTyped ?? ''}`;
    return `${count} ${asTyped}${on}`;
  });
  return lines.join(', ');
}

/** RFC 9562, version 7: the millisecond, then chance. */
function idOf(milliseconds: number, chance: Chance): string {
  const time = milliseconds.toString(16).padStart(12, '0');
  const [one, two, three] = [chance.hex(), chance.hex(), chance.hex()];
  const variant = chance.one(['8', '9', 'a', 'b']);
  return `${time.slice(0, 8)}-${time.slice(8)}-7${one.slice(0, 3)}-${variant}${one.slice(3, 6)}-${two}${three.slice(0, 4)}`;
}

/** All that is the same for every watch of a season. */
interface Ground {
  readonly survey: Survey;
  readonly experts: Experts;
  readonly fauna: Fauna;
  readonly chance: Chance;
}

/** What one watch comes from. */
interface Turn {
  readonly number: number;
  readonly day: Day;
  readonly inFlower: Readonly<Record<Kind, InFlower>>;
  readonly flying: Flying;
  readonly observer: Observer;
  readonly spot: Spot;
  readonly span: Span;
  readonly standing: Standing;
  /** Epoch milliseconds. */
  readonly stored: number;
}

/** The field's words, where there are some. */
const field = (name: string, typed: string | null | undefined): Record<string, string> =>
  typed == null ? {} : { [name]: typed };

function typedDate({ month, dayOfMonth }: Day, { dateOrder }: Survey['settings'], chance: Chance): string {
  if (chance.yes(0.8)) return 'today';
  return dateOrder === 'MDY' ? `${month}/${dayOfMonth}` : `${dayOfMonth}/${month}`;
}

function typedPlace({ latitude, longitude, words }: Place): string {
  if (latitude === null) return words;
  return words === '' ? `${latitude}, ${longitude}` : `${words} ${latitude}, ${longitude}`;
}

/** The last moment of all: when the watch was last changed. */
function lastOf(storedAt: string, changes: readonly Change[], queries: readonly Query[]): string {
  let last = storedAt;
  for (const { at } of changes) if (at > last) last = at;
  for (const { openedAt, closedAt } of queries) if ((closedAt ?? openedAt) > last) last = closedAt ?? openedAt;
  return last;
}

function makeWatch(turn: Turn, { survey, experts, fauna, chance }: Ground): Watch {
  const { day, observer, spot, span, standing, stored } = turn;
  const { settings, dialog } = survey;
  const weather = weatherAt(day, span.start, survey, chance);
  const { plants, watched, flowers } = watchedPlants(turn.inFlower[spot.kind], chance);
  const times = observer.times * spot.times * activity(weather, span);
  const { flying } = turn;
  const { skill, noticesWorkers, key, channel } = observer;
  const seen = tallyOf({ plants, flowers, flying, times, skill, noticesWorkers }, fauna, chance);
  const began = day.midnight + span.start * MINUTE_MILLISECONDS;
  const judged = judge(seen, { began, stored }, experts, fauna, chance);

  const place = spot.tell(chance);
  const patch = chance.yes(0.04) ? null : patchTold(settings.lengthUnit, chance);
  const habitat = chance.yes(0.5) ? chance.one(spot.habitats) : null;
  const remark = chance.yes(0.12) ? chance.one(REMARKS) : null;
  const { temperature, sky, wind } = weather;
  const told = { observer: key, via: channel, wind: wind?.value ?? null };
  const unnamed = watched.filter(({ name }) => name === null).map(({ asTyped }) => asTyped);
  const queries = queriesOf(unnamed, key, stored, survey, chance);
  const mended = changesOf(standing, told, stored, experts.coordinator, chance);
  const changes = [...mended, ...judged.changes].sort((a, b) => (a.at < b.at ? -1 : Number(a.at > b.at)));
  const storedAt = instantOf(stored);

  return {
    id: idOf(stored, chance),
    number: turn.number,
    survey: settings.key,
    dialog: dialog.name,
    dialogVersion: dialog.version,
    observer: key,
    via: channel,
    status: standing.status,
    statusReason: standing.statusReason,
    date: day.date,
    times: { start: clock(span.start), end: clock(span.end) },
    timeZone: settings.timeZone,
    minutes: span.minutes,
    place,
    temperature: temperature?.value ?? null,
    sky: sky?.value ?? null,
    wind: told.wind,
    patch: patch?.value ?? null,
    habitat,
    remark,
    watchers: chance.yes(observer.company) ? 2 : 1,
    more: {},
    asTyped: {
      date: typedDate(day, settings, chance),
      times: timesTyped(span, chance),
      place: typedPlace(place),
      ...field('temperature', temperature?.typed),
      ...field('sky', sky?.typed),
      ...field('wind', wind?.typed),
      ...field('patch', patch?.typed),
      ...field('habitat', habitat),
      plants: watched.map((plant) => `${plant.asTyped}, ${plant.flowers.asTyped}`).join('\n'),
      tally: tallyTyped(seen, watched),
      ...field('remark', remark),
    },
    plants: watched,
    total: seen.reduce((sum, { row }) => sum + row.count - row.seenBefore, 0),
    queens: judged.rows,
    photographs: judged.photographs,
    findings: [],
    queries,
    history: changes,
    storedAt,
    changedAt: lastOf(storedAt, changes, queries),
  };
}

/** Which observers' first watch is a practice one: a dozen of those who come more than once, fewer in a small season. */
function practising(turns: Int32Array, observers: number): Set<number> {
  const made = new Int32Array(observers);
  turns.forEach((observer) => {
    made[observer] = (made[observer] ?? 0) + 1;
  });
  const often = [...made.keys()].filter((observer) => (made[observer] ?? 0) > 2);
  return new Set(often.slice(0, Math.min(PRACTICE, Math.floor(turns.length / 20))));
}

/**
 * The watches in the order in which they were stored, evening by evening, numbered from 1. Made one by one as they are
 * asked for; of what was made, only whose turn it is and who has practised is kept. Where so many fall to one observer
 * on one day that they do not fit, they share time.
 */
export function* madeSeason({ seed, observers, watches, survey }: SeasonWish): Generator<Watch, void, undefined> {
  if (observers < 1 || watches < 0) {
    throw new RangeError(`A season has observers and watches, not ${observers} and ${watches}.`);
  }
  const chance = chanceOf(seed);
  const { settings } = survey;
  const fauna = faunaOf(survey.names);
  const plantsOn = flora(survey.names);
  const experts: Experts = {
    coordinator: { key: settings.coordinator.name.toLowerCase(), role: 'coordinator' },
    helper: { key: HELPER, role: 'helper' },
  };
  const ground: Ground = { survey, experts, fauna, chance };
  const people = observersOf(settings, observers, chance);
  const turns = turnsOf(observers, watches, chance);
  const practise = practising(turns, observers);
  const standing = standingOf(survey, chance);

  let [made, stored] = [0, 0];
  for (const day of daysOf(settings, watches, chance)) {
    const inFlower = plantsOn(day.dayOfYear);
    const flying = fauna.flyingOn(day.dayOfYear);
    const out = new Map<number, { readonly end: number; readonly spot: Spot }>();
    const gap = ((EVENING.to - EVENING.from) * MINUTE_MILLISECONDS) / (day.watches + 1);
    for (let index = 0; index < day.watches; index++) {
      const turn = turns[made] ?? 0;
      const observer = people[turn];
      if (observer === undefined) throw new Error(`There is no observer ${turn}.`);
      made += 1;
      // Spread over the evening with some chance, never two in one millisecond: ids are in the order of numbers.
      const evening = day.midnight + EVENING.from * MINUTE_MILLISECONDS;
      stored = Math.max(stored + 1, Math.floor(evening + gap * (index + chance.share())));
      // Who watches twice a day stays where they are: the next patch, a little later.
      const before = out.get(turn);
      const spot = before?.spot ?? (chance.yes(0.75) ? observer.usualSpot : observer.otherSpot);
      const span = spanOf(before?.end ?? null, settings.protocol.minutes, chance);
      out.set(turn, { end: span.end, spot });
      const isPractice = practise.delete(turn);
      yield makeWatch(
        { number: made, day, inFlower, flying, observer, spot, span, standing: standing(isPractice), stored },
        ground,
      );
    }
  }
}
