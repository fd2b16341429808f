/** `queenpost import DIR`: takes the watches of a CSV data package in, all or nothing; a spreadsheet goes its own way. */
import { isUtf8 } from 'node:buffer';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { v7 as newId } from 'uuid';
import { LAYOUTS, type FileName } from '../../shared/columns.js';
import type { Watch } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import { CHECKS, missingFindings } from '../checks/index.js';
import { siteOf } from '../dialog/index.js';
import { inOrder, readPackage, sayProblem, type PackageRead, type Problem } from '../publish/package/index.js';
import { keepWatch, openStore, watchesOf, type Transaction } from '../store/index.js';
import { CommandError, databaseIn, optionsOf, surveyFrom, type Command } from './command.js';
import { importSheet } from './import-sheet.js';
import { harmless } from './plain-text.js';
import { isSheetFile } from './sheet-file.js';
import { write } from './write.js';

/** More would scroll away what comes first, and one slip is often behind many. */
const MOST_PROBLEMS = 50;
const MOST_NAMES = 10;

const number = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** The text of a file, which must be UTF-8: an ö of another encoding would be stored as another letter. */
function textOf(path: string, file: FileName): { text: string } | { problem: Problem } {
  const problem = (line: number | null, what: string) => ({ problem: { file, line, column: null, what } });
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (cause) {
    return problem(null, `cannot be read (${(cause as Error).message})`);
  }
  if (isUtf8(bytes)) return { text: bytes.toString('utf8') };
  // Latin-1 has a letter for every byte, so that the lines can be told apart and taken back.
  const lines = bytes.toString('latin1').split('\n');
  const first = lines.findIndex((line) => !isUtf8(Buffer.from(line, 'latin1')));
  return problem(first + 1, 'is not UTF-8; save the file with that encoding');
}

/** The files of the folder, read; where one cannot be read, that is among the problems. */
function readFolder(folder: string, survey: Survey, now: string): PackageRead {
  const found = LAYOUTS.map(({ file }) => file).filter((file) => existsSync(join(folder, file)));
  const read = found.map((file) => ({ file, ...textOf(join(folder, file), file) }));
  const texts = Object.fromEntries(read.flatMap((one) => ('text' in one ? [[one.file, one.text]] : [])));
  const unread = read.flatMap((one) => ('problem' in one ? [one.problem] : []));
  const files = readPackage(texts, { survey, now, newId, siteOf: (place) => siteOf(place, survey) });
  // A file that is there but cannot be read is not missing as well.
  const others = files.problems.filter(({ file }) => !unread.some((one) => one.file === file));
  return unread.length === 0 ? files : { ...files, watches: [], problems: inOrder([...unread, ...others]) };
}

/** Numbers that watches of the survey have already. */
function takenNumbers(standing: readonly Watch[], { lineOf }: PackageRead): Problem[] {
  return standing.flatMap(({ number: taken }): Problem[] => {
    const line = lineOf.get(taken);
    if (line === undefined) return [];
    const what = `the survey has a watch ${taken} already; give this one another number in all files, or import into empty data`;
    return [{ file: 'watches.csv', line, column: 'watch', what }];
  });
}

function refuse(problems: readonly Problem[], folder: string): never {
  const said = problems.slice(0, MOST_PROBLEMS).map((problem) => harmless(sayProblem(problem)));
  const more = problems.length > MOST_PROBLEMS ? [`and ${problems.length - MOST_PROBLEMS} more.`] : [];
  const wrong = problems.length === 1 ? 'one thing is' : `${problems.length} things are`;
  throw new CommandError([`Nothing was taken in: ${wrong} wrong in ${folder}.`, ...said, ...more].join('\n'));
}

/** Keeps the watches with what the checks notice in them; the number of findings raised. */
function keepAll(transaction: Transaction, read: PackageRead, standing: readonly Watch[], survey: Survey): number {
  const missing = missingFindings(read.watches, standing, { checks: CHECKS, survey });
  let raised = 0;
  for (const watch of read.watches) {
    const findings = (missing.get(watch.id) ?? []).map((finding) => ({ ...finding, reply: null, at: watch.storedAt }));
    raised += findings.length;
    keepWatch(transaction, { ...watch, findings: [...watch.findings, ...findings] });
  }
  return raised;
}

export const importPackage: Command = {
  name: 'import',
  does: 'takes in watches, all or nothing: an exact copy (DIR), or a spreadsheet',
  usage: 'DIR | FILE.csv | FILE.xlsx [--yes] [--leave-out] [--survey FILE] [--data DIR]',
  async run(args) {
    const ofSheets = {
      yes: { type: 'boolean', default: false },
      'leave-out': { type: 'boolean', default: false },
    } as const;
    const { values, positionals } = optionsOf(this, args, ofSheets, 1);
    const [folder] = positionals;
    if (folder === undefined) throw new CommandError(`Say from where. Usage: queenpost ${this.name} ${this.usage}`);
    if (!existsSync(folder))
      throw new CommandError(`There is no ${isSheetFile(folder) ? 'file' : 'folder'} ${folder}.`);
    if (!statSync(folder).isDirectory()) {
      if (!isSheetFile(folder)) throw new CommandError(`${folder} is no .csv or .xlsx file; save it as one of these.`);
      const { data, yes, 'leave-out': leaveOut } = values;
      return importSheet(folder, { survey: surveyFrom(values.survey), data, yes, leaveOut });
    }
    const survey = surveyFrom(values.survey);
    const read = readFolder(folder, survey, new Date().toISOString());
    const database = databaseIn(values.data);
    // What cannot be taken in makes no database either.
    if (read.problems.length > 0 && !existsSync(database)) refuse(read.problems, folder);

    const store = await openStore(database);
    const raised = store.writing((transaction) => {
      const standing = [...watchesOf(transaction, survey.settings.key)];
      const problems = inOrder([...read.problems, ...takenNumbers(standing, read)]);
      if (problems.length > 0) refuse(problems, folder);
      return keepAll(transaction, read, standing, survey);
    });
    store.close();

    const { watches, plantsOffList } = read;
    const plants = watches.reduce((sum, watch) => sum + watch.plants.length, 0);
    const queens = watches.reduce((sum, watch) => sum + watch.queens.length, 0);
    const parts = `${number(plants, 'plant')}, ${number(queens, 'row')} of queens`;
    await write(
      `Took in ${number(watches.length, 'watch', 'watches')} (${parts}) from ${folder}; the checks noticed ${number(raised, 'thing')} more.\n`,
    );
    if (plantsOffList.length > 0) {
      const some = plantsOffList.slice(0, MOST_NAMES).join(', ');
      const more = plantsOffList.length > MOST_NAMES ? ` and ${plantsOffList.length - MOST_NAMES} more` : '';
      await write(`${harmless(`Not on the list of plants, taken as written: ${some}${more}`)}.\n`);
    }
  },
};
