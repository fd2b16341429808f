/** A database connection and its transactions; statements are prepared once and kept for the connection's life. */
import type Database from 'better-sqlite3';
import { asStoreError } from './errors.js';

type Statements = Map<string, Database.Statement<unknown[]>>;

/** What a function that only reads takes: an open transaction, or the store itself. */
export class Connection {
  readonly #database: Database.Database;
  readonly #statements: Statements;

  constructor(database: Database.Database, statements: Statements) {
    this.#database = database;
    this.#statements = statements;
  }

  prepared(sql: string): Database.Statement<unknown[]> {
    let statement = this.#statements.get(sql);
    if (!statement) {
      statement = this.#database.prepare(sql);
      this.#statements.set(sql, statement);
    }
    return statement;
  }
}

/** An open `begin immediate`. Only `Store.writing` makes one, so a function that takes it cannot run outside. */
export class Transaction extends Connection {
  readonly #database: Database.Database;

  constructor(database: Database.Database, statements: Statements) {
    super(database, statements);
    this.#database = database;
  }

  /**
   * Runs the work in a savepoint: a throw undoes what the work wrote, and is passed on. After an error on which SQLite
   * gave up the whole transaction there is no savepoint to go back to; `Store.writing` ends that transaction.
   */
  attempt<Result>(work: () => Result): Result {
    run(this, 'savepoint attempt');
    try {
      const result = work();
      run(this, 'release attempt');
      return result;
    } catch (error) {
      if (this.#database.inTransaction) {
        run(this, 'rollback to attempt');
        run(this, 'release attempt');
      }
      throw error;
    }
  }
}

/** An open database. */
export class Store extends Connection {
  readonly #database: Database.Database;
  readonly #transaction: Transaction;

  constructor(database: Database.Database) {
    const statements: Statements = new Map();
    super(database, statements);
    this.#database = database;
    this.#transaction = new Transaction(database, statements);
  }

  /**
   * Opens a transaction, runs the work in it and commits. The write lock is taken at the start: a transaction that
   * reads first and asks for the lock later fails at once where another program wrote in between. A throw undoes all
   * and is passed on. The work must not wait for anything: other callers would write into its transaction.
   */
  writing<Result>(work: (transaction: Transaction) => Result): Result {
    return this.#within('begin immediate', () => work(this.#transaction));
  }

  /** Opens a transaction that only reads: all its queries see the database as it was at the first. */
  reading<Result>(work: (connection: Connection) => Result): Result {
    return this.#within('begin', () => work(this));
  }

  /** Empties the log into the database: what was erased stands in neither then. */
  checkpoint(): void {
    try {
      this.#database.pragma('wal_checkpoint(TRUNCATE)');
    } catch (error) {
      throw asStoreError(error);
    }
  }

  close(): void {
    this.#database.close();
  }

  #within<Result>(begin: string, work: () => Result): Result {
    run(this, begin);
    try {
      const result = work();
      if (result instanceof Promise) throw new TypeError('The work of a transaction gave a promise; it cannot wait.');
      run(this, 'commit');
      return result;
    } catch (error) {
      if (this.#database.inTransaction) run(this, 'rollback');
      throw error;
    }
  }
}

function run(connection: Connection, command: string): void {
  try {
    connection.prepared(command).run();
  } catch (error) {
    throw asStoreError(error);
  }
}
