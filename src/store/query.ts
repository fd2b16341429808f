/**
 * Queries with named places: built once with Kysely when the program starts, run on statements that stay prepared.
 * To compile at each call halves the rate of small transactions, and Kysely's own driver more than that.
 */
import {
  DummyDriver,
  Kysely,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
  type Compilable,
  type RootOperationNode,
} from 'kysely';
import type { Connection, Transaction } from './connection.js';
import { asStoreError } from './errors.js';
import type { Tables } from './tables.js';

/** Stands in a query where a value will be given by name. */
class Place {
  constructor(readonly name: string) {}
}

/** Writes `@name` for a place. Any other value is a constant of our own code: it stands in the SQL. */
class PlaceCompiler extends SqliteQueryCompiler {
  protected override appendValue(value: unknown): void {
    if (value instanceof Place) this.append(`@${value.name}`);
    // A literal, since an index over some rows only (`where state = 'waiting'`) is not used for a bound value.
    else this.appendImmediateValue(value);
  }
}

const builder = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (database) => new SqliteIntrospector(database),
    createQueryCompiler: () => new PlaceCompiler(),
  },
});

export class Query<Places extends object, Row> {
  constructor(readonly sql: string) {}

  all(connection: Connection, places: Places): Row[] {
    try {
      return connection.prepared(this.sql).all(places) as Row[];
    } catch (error) {
      throw asStoreError(error);
    }
  }

  /** Rows as arrays of their columns in the order of the selection: a third of the time less, where there are very many. */
  arrays(connection: Connection, places: Places): unknown[][] {
    try {
      return connection.prepared(this.sql).raw().all(places) as unknown[][];
    } catch (error) {
      throw asStoreError(error);
    }
  }

  first(connection: Connection, places: Places): Row | undefined {
    try {
      return connection.prepared(this.sql).get(places) as Row | undefined;
    } catch (error) {
      throw asStoreError(error);
    }
  }

  /** How many rows it wrote. */
  run(transaction: Transaction, places: Places): number {
    try {
      return transaction.prepared(this.sql).run(places).changes;
    } catch (error) {
      throw asStoreError(error);
    }
  }
}

/**
 * Builds a query. Its second argument stands for the values by name: `place.survey` becomes `@survey`, and the type
 * written beside it is the type that the value must have when the query is run.
 */
export function query<Places extends object, Row>(
  build: (database: Kysely<Tables>, place: Places) => Compilable<Row> & { toOperationNode(): RootOperationNode },
): Query<Places, Row> {
  // Each place poses as a value of its type until the query is compiled.
  const places = new Proxy({}, { get: (_, name) => new Place(String(name)) }) as Places;
  return new Query(build(builder, places).compile().sql);
}
