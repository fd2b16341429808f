/** The bees of one watch: what was there, and what the observer called it. */
import type { QueensRow } from '../../../shared/record.js';
import { GENUS, type Fauna, type Flying } from './bees.js';
import type { Chance } from './chance.js';
import type { Plant } from './flora.js';

/** What a bee truly was. */
export interface True {
  readonly name: string;
  readonly worker: boolean;
}

/** A row as reported, and beside it what its bees truly were. */
export interface Seen {
  readonly row: QueensRow;
  readonly truly: readonly True[];
}

export interface Scene {
  readonly plants: readonly Plant[];
  /** How many times the usual number of flowers each has. */
  readonly flowers: readonly number[];
  readonly flying: Flying;
  /** How many times more or fewer bees than usual are about. */
  readonly times: number;
  readonly skill: number;
  readonly noticesWorkers: boolean;
}

/** Bees in a usual watch of a usual plant on a usual day; set so that about two watches of five have none. */
const USUAL = 0.68;
const WORKERS = 0.15;
/** How often somebody who does not know workers takes one for a queen and tells of her. */
const TAKEN_FOR_QUEEN = 0.1;
/** Spread of what one watch sees beyond its observer, place and weather (log-normal). */
const SPREAD = 0.55;
/** A crowd of queens beyond this nobody has told of. */
const MOST = 40;

interface Bee {
  readonly plant: number;
  readonly truly: True;
  readonly reported: string;
  readonly doubt: boolean;
  /** As reported. */
  readonly worker: boolean;
}

function reported(truly: number, flying: readonly number[], scene: Scene, fauna: Fauna, chance: Chance): string {
  const bee = fauna.bees[truly];
  if (bee === undefined) throw new Error(`There is no bee ${truly}.`);
  if (chance.yes(scene.skill)) return bee.name;
  const possible = bee.lookAlikes.filter((name) => (flying[fauna.bees.findIndex((one) => one.name === name)] ?? 0) > 0);
  return possible.length === 0 || chance.yes(0.25) ? GENUS : chance.one(possible);
}

function drawBees(scene: Scene, fauna: Fauna, chance: Chance): Bee[] {
  const { plants, flowers, flying, times } = scene;
  // Twice the flowers draw less than twice the bees.
  const drawn = plants.map((plant, index) => plant.liked * Math.sqrt(flowers[index] ?? 1));
  const weights = plants.map((plant, index) => (drawn[index] ?? 0) * flying.queens[plant.depth].total);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const bees: Bee[] = [];

  const some = times * chance.times(SPREAD);
  const queens = Math.min(MOST, chance.poisson(USUAL * some * total));
  for (let count = 0; count < queens; count++) {
    const plant = chance.placeIn(weights, total);
    const there = flying.queens[plants[plant]?.depth ?? 'open'];
    const truly = chance.placeIn(there.weights, there.total);
    const said = reported(truly, there.weights, scene, fauna, chance);
    const name = fauna.bees[truly]?.name ?? GENUS;
    const doubt = said !== GENUS && chance.yes(said === name ? 0.07 : 0.3);
    bees.push({ plant, truly: { name, worker: false }, reported: said, doubt, worker: false });
  }

  if (flying.workers.total === 0) return bees;
  const { noticesWorkers } = scene;
  const told = some * flying.workers.total * plants.length * (noticesWorkers ? 1 : TAKEN_FOR_QUEEN);
  const workers = Math.min(MOST, chance.poisson(WORKERS * told));
  for (let count = 0; count < workers; count++) {
    const truly = chance.placeIn(flying.workers.weights, flying.workers.total);
    const name = fauna.bees[truly]?.name ?? GENUS;
    const said = reported(truly, flying.workers.weights, scene, fauna, chance);
    const plant = chance.whole(0, plants.length - 1);
    bees.push({ plant, truly: { name, worker: true }, reported: said, doubt: false, worker: noticesWorkers });
  }
  return bees;
}

function rowOf(bees: readonly [Bee, ...Bee[]], number: number, fauna: Fauna, chance: Chance): Seen {
  const [{ plant, reported: bee, worker }] = bees;
  const doubt = bees.some((one) => one.doubt);
  const words = fauna.wordsFor(bee, chance);
  const typed = doubt ? chance.one([`${words}?`, `maybe ${words}`]) : words;
  return {
    row: {
      row: number,
      plant: plant + 1,
      bee,
      rank: bee === GENUS ? 'genus' : 'species',
      asTyped: worker ? `${typed} worker` : typed,
      count: bees.length,
      seenBefore: 0,
      withPollen: chance.yes(0.1) ? chance.whole(0, bees.length) : null,
      caste: worker ? 'worker' : chance.yes(0.12) ? 'queen' : null,
      doubt,
      determinations: [],
    },
    truly: bees.map(({ truly }) => truly),
  };
}

/** Now and then a queen is followed to the next plant: there she is a visit, but no further queen. */
function withFollowed(seen: Seen[], plants: number, chance: Chance): Seen[] {
  const first = seen.find(({ row }) => row.caste !== 'worker');
  if (first === undefined || plants < 2 || !chance.yes(0.15)) return seen;
  const [queen] = first.truly;
  if (queen === undefined) return seen;
  const plant = (first.row.plant % plants) + 1;
  const there = seen.find(({ row }) => row.plant === plant && row.bee === first.row.bee && row.caste !== 'worker');
  if (there !== undefined) {
    const { count, seenBefore } = there.row;
    const more = { ...there.row, count: count + 1, seenBefore: seenBefore + 1 };
    return seen.map((one) => (one === there ? { row: more, truly: [...there.truly, queen] } : one));
  }
  const asTyped = 'the same one';
  const followed = { ...first.row, row: seen.length + 1, plant, asTyped, count: 1, seenBefore: 1, withPollen: null };
  return [...seen, { row: followed, truly: [queen] }];
}

/** Rows in the order of the plants; none where none was seen. */
export function tallyOf(scene: Scene, fauna: Fauna, chance: Chance): Seen[] {
  const bees = drawBees(scene, fauna, chance);
  if (bees.length === 0) return [];
  const rows = new Map<string, [Bee, ...Bee[]]>();
  for (const bee of bees) {
    const key = `${bee.plant} ${bee.worker ? 'worker' : 'queen'} ${bee.reported}`;
    const row = rows.get(key);
    if (row) row.push(bee);
    else rows.set(key, [bee]);
  }
  const seen = [...rows.values()]
    .sort(([one], [other]) => one.plant - other.plant)
    .map((row, index) => rowOf(row, index + 1, fauna, chance));
  return withFollowed(seen, scene.plants.length, chance);
}
