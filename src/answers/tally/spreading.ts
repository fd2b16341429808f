/** Spreads rows over the plants they stand on: "each", "both", "none", and the plants that no row names. */
import type { Ask } from '../../../shared/phrases.js';
import type { NameValue } from '../names/index.js';
import { isZero, positive, type PlantMeant, type Row, type RowMeant } from './meant.js';
import { bombusAt, type NameSaid } from './names-said.js';
import type { PlantsSaid } from './said.js';

/** Spreads rows over their plants. */
export class Spread {
  /** Watched plants that some row names. */
  private readonly mentioned = new Set<string>();

  constructor(
    private readonly watched: readonly string[],
    private readonly rows: readonly Row[],
    bare: readonly PlantsSaid[],
    private readonly doubts: Set<Ask>,
  ) {
    for (const { plants } of [...rows, ...bare.map((said) => ({ plants: said }))]) {
      if (plants === null || typeof plants.plants === 'string') continue;
      for (const plant of plants.plants) if (plant.names[0]) this.mentioned.add(plant.names[0].name);
    }
  }

  /** A zero for each plant that no row names. */
  rest(): RowMeant[] {
    const unnamed = this.watched.filter((name) => !this.mentioned.has(name));
    const everywhere = this.rows.some(
      (row) => row.plants?.plants === 'all' || (row.plants === null && this.watched.length !== 1),
    );
    return everywhere ? [] : unnamed.map((name) => zeroOn(meantOf(name)));
  }

  row(row: Row): RowMeant[] {
    return isZero(row) ? this.zero(row) : this.counted(row);
  }

  private zero(row: Row): RowMeant[] {
    if (row.said.uncertain) this.doubts.add('tally-inexact');
    const others = this.rows.filter((other) => other !== row && !isZero(other));
    const plants = this.plantsOf(row.plants);
    if (plants !== null) {
      const free = plants.filter((plant) => !others.some((other) => this.stands(other, plant)));
      const said = row.plants !== null && row.plants.plants !== 'all' && row.plants.plants !== 'rest';
      // "nothing on the phlox … 2 imps on the phlox"; "no bimacs on the phlox, 2 imps" is plain
      if (said && row.bee === null && free.length < plants.length) this.doubts.add('tally-unclear');
      return free.map(zeroOn);
    }
    if (others.length > 0) return row.bee === null ? this.rest() : [];
    if (row.bee !== null && this.rows.length === 1 && row.said.role === 'zero') this.doubts.add('tally-unclear');
    return this.watched.length === 0 ? [zeroOn(null)] : this.watched.map((name) => zeroOn(meantOf(name)));
  }

  private stands(row: Row, plant: PlantMeant | null): boolean {
    const plants = this.plantsOf(row.plants);
    if (plants === null) return this.watched.length === 1;
    return plants.some((other) => other?.names[0]?.name === plant?.names[0]?.name);
  }

  private counted(row: Row): RowMeant[] {
    const { said } = row;
    if (row.counts.length === 0) this.doubts.add('tally-how-many');
    else if (said.uncertain || (said.count && !said.count.exact)) this.doubts.add('tally-inexact');
    // "2 of those were the same queen": seen once or twice more
    if (said.role === 'same-one' && row.plants === null && positive(row.counts) > 1) this.doubts.add('tally-unclear');
    const bee = row.bee ?? bombusAt(said.span);
    const others = said.orBees.flatMap(({ names }) => names);
    if (!bee.clear || others.length > 0) this.doubts.add('tally-bee-shared');
    const rowOn = (plant: PlantMeant | null): RowMeant => ({
      counts: row.counts,
      bees: others.length > 0 ? withGenus([...bee.names, ...others]) : bee.names,
      beeSpan: bee.span,
      doubt: bee.doubt || said.doubt,
      plant,
      seenBefore: row.seenBefore,
      pollen: row.pollen,
      worker: row.worker,
    });
    const plants = this.plantsOf(row.plants);
    if (plants === null) {
      if (said.each && this.watched.length > 0) return this.watched.map((name) => rowOn(meantOf(name)));
      const [only] = this.watched;
      return [rowOn(this.watched.length === 1 && only !== undefined ? meantOf(only) : null)];
    }
    if (plants.length > 1 && !said.each && row.plants?.each !== true && positive(row.counts) > 1) {
      this.doubts.add('tally-each-or-together');
    }
    for (const plant of plants) if (plant && !plant.clear) this.doubts.add('tally-plant-shared');
    const onTour = row.tours && positive(row.counts) === 1;
    return plants.map((plant, at) => ({ ...rowOn(plant), seenBefore: row.seenBefore || (onTour && at > 0) }));
  }

  /** Null where no plant was said, or one that nobody knows while several are watched. */
  private plantsOf(said: PlantsSaid | null): (PlantMeant | null)[] | null {
    if (said === null) return null;
    if (said.plants === 'all') return this.watched.length === 0 ? [null] : this.watched.map(meantOf);
    if (said.plants === 'rest') {
      const unnamed = this.watched.filter((name) => !this.mentioned.has(name));
      // "2 imp on one, 1 bimac on the other"
      if (unnamed.length === this.watched.length && unnamed.length > 1) this.doubts.add('tally-unclear');
      return unnamed.map(meantOf);
    }
    if (said.plants.length === 0) {
      if (this.watched.length === 0) return [{ names: [], clear: true, span: said.span }];
      this.doubts.add('tally-unknown-plant');
      return [{ names: this.watched.map((name) => ({ name, rank: null })), clear: true, span: null }];
    }
    // "Jacob's ladder, Polemonium reptans" is one plant
    const named: readonly NameSaid[] = said.plants;
    const once = named.filter(
      ({ names: [name], clear }, at) =>
        !clear || named.findIndex((other) => other.clear && other.names[0]?.name === name?.name) === at,
    );
    return once.map(({ names, clear, span }) => ({ names, clear, span }));
  }
}

const meantOf = (name: string): PlantMeant => ({ names: [{ name, rank: null }], clear: true, span: null });
const zeroOn = (plant: PlantMeant | null): RowMeant => ({
  counts: [0],
  bees: [],
  beeSpan: null,
  doubt: false,
  plant,
  seenBefore: false,
  pollen: null,
  worker: false,
});

/** Offers with the genus at the end, each once. */
function withGenus(names: readonly NameValue[]): NameValue[] {
  const seen = new Map(names.filter(({ name }) => name !== 'Bombus').map((value) => [value.name, value]));
  return [...seen.values(), { name: 'Bombus', rank: 'genus' }];
}
