/** What the tests use of the Frictionless reference reader, which comes without types. */
declare module 'datapackage' {
  export interface Resource {
    readonly name: string;
    readonly valid: boolean;
    readonly errors: readonly Error[];
    /** Reads and casts every row; throws at the first cell that its schema does not take. */
    read(options: { keyed: true; relations?: boolean }): Promise<Record<string, unknown>[]>;
    /** Throws where a row refers to none. */
    checkRelations(): Promise<boolean>;
  }
  export class Package {
    static load(path: string): Promise<Package>;
    readonly valid: boolean;
    readonly errors: readonly Error[];
    readonly resources: readonly Resource[];
  }
}
