/** Reads a data package: the watches of its files, or everything that is wrong with them. */
import { DETERMINATIONS, FINDINGS, PLANTS, QUEENS, WATCHES, type FileName } from '../../../shared/columns.js';
import type { Watch } from '../../../shared/record.js';
import { disagreements } from './agree.js';
import { watchesFrom, type Surroundings } from './build.js';
import { knownNames } from './names.js';
import { inOrder, type Problem } from './problem.js';
import { mismatches, type Tables } from './references.js';
import { numbered } from './row-numbers.js';
import { readTable } from './table.js';

/** The text of each file; undefined where there is none. */
export type Texts = Readonly<Partial<Record<FileName, string>>>;

export interface PackageRead {
  /** By number; none where anything is wrong. */
  readonly watches: readonly Watch[];
  /** In the order of files and lines. */
  readonly problems: readonly Problem[];
  /** The line of `watches.csv` in which each number stands. */
  readonly lineOf: ReadonlyMap<number, number>;
  /** Names of plants that the list does not have, each once: taken as they are, but a slip of the pen would look so. */
  readonly plantsOffList: readonly string[];
}

export function readPackage(texts: Texts, surroundings: Surroundings): PackageRead {
  const names = knownNames(surroundings.survey.names);
  const tables: Tables = {
    watches: readTable(WATCHES, texts['watches.csv']),
    plants: readTable(PLANTS, texts['plants.csv']),
    queens: numbered(readTable(QUEENS, texts['queens.csv'])),
    determinations: readTable(DETERMINATIONS, texts['determinations.csv']),
    findings: readTable(FINDINGS, texts['findings.csv']),
  };
  const problems = inOrder([
    ...Object.values(tables).flatMap((table: Tables[keyof Tables]) => table.problems),
    ...disagreements(tables, names),
    ...mismatches(tables),
  ]);
  const watches = problems.length > 0 ? [] : watchesFrom(tables, names, surroundings);
  const named = watches.flatMap(({ plants }) => plants.flatMap(({ name }) => name ?? []));
  return {
    watches,
    problems,
    lineOf: new Map(
      (tables.watches.rows ?? []).flatMap(({ line, cells }) => (cells.watch ? [[cells.watch, line]] : [])),
    ),
    plantsOffList: [...new Set(named)].filter((name) => !names.isPlant(name)).sort(),
  };
}
