/** `queenpost import FILE.csv|FILE.xlsx`: shows what a spreadsheet was understood to say, and stores it on `--yes`. */
import { existsSync } from 'node:fs';
import { Temporal } from 'temporal-polyfill';
import { v7 as newId } from 'uuid';
import type { Context } from '../answers/index.js';
import type { Survey } from '../../shared/survey.js';
import { siteOf } from '../dialog/index.js';
import { readSheets, sayComplaint, type SheetsRead } from '../sheets/index.js';
import {
  keepPerson,
  keepWatch,
  nextWatchNumber,
  openStore,
  peopleOf,
  watchesOf,
  type Connection,
} from '../store/index.js';
import { CommandError, databaseIn } from './command.js';
import { harmless } from './plain-text.js';
import { readSheetFile } from './sheet-file.js';
import { planOf, type Plan, type Planned, type Standing } from './sheet-plan.js';
import { sheetTable } from './sheet-table.js';
import { write } from './write.js';

/** More would scroll away what comes first. */
const MOST_DRAWN = 60;
const MOST_SAID = 50;
const MOST_NAMES = 10;
/** Where the output is no terminal. */
const COLUMNS = 100;

export interface SheetOptions {
  readonly survey: Survey;
  /** The data folder. */
  readonly data: string;
  readonly yes: boolean;
  /** Watches with something not understood are left out, the others taken. */
  readonly leaveOut: boolean;
}

const watchesSaid = (count: number): string => `${count} watch${count === 1 ? '' : 'es'}`;

function contextOf(survey: Survey, now: string): Context {
  const local = Temporal.Instant.from(now).toZonedDateTimeISO(survey.settings.timeZone);
  const { settings, words, names } = survey;
  const [today, time] = [local.toPlainDate().toString(), local.toPlainTime().toString().slice(0, 5)];
  return { survey: settings, words, names, today, time, watched: [], of: null };
}

function standingIn(connection: Connection, survey: Survey): Standing {
  const { key } = survey.settings;
  return {
    watches: [...watchesOf(connection, key)],
    people: peopleOf(connection, key),
    nextNumber: nextWatchNumber(connection, key),
  };
}

/** A few of many, with how many more there are. */
const someOf = (all: readonly string[], most: number): string =>
  `${all.slice(0, most).join(', ')}${all.length > most ? ` and ${all.length - most} more` : ''}`;

const listed = (heading: string, all: readonly string[]): string[] => {
  if (all.length === 0) return [];
  const more = all.length > MOST_SAID ? [`and ${all.length - MOST_SAID} more.`] : [];
  return ['', heading, ...all.slice(0, MOST_SAID).map(harmless), ...more];
};

/** `line 4: 12 minutes were watched …` */
const whereOf = ({ told }: Planned): string =>
  `${told.sheet === null ? '' : `sheet “${told.sheet}”, `}line ${told.line}`;

/** Whole sentences about what one should look at before a yes. */
function remarksOf({ planned }: Plan, notices: readonly string[]): string[] {
  const fresh = planned.filter(({ fate }) => fate.kind === 'new');
  const newNames = [...new Set(fresh.filter((one) => one.isNewObserver).map(({ told }) => told.observer ?? ''))];
  const plants = fresh.flatMap(({ told }) =>
    told.plants.flatMap((plant) => (plant.name === null ? [plant.asTyped] : [])),
  );
  const unlisted = [...new Set(plants)];
  const closed = fresh.filter(({ told }) => told.place !== null && told.place.private === null).length;
  const differing = planned.flatMap(({ told, fate }) =>
    fate.kind === 'stored' && fate.differs.length > 0 ? [{ told, fate }] : [],
  );
  const stored = planned.filter(({ fate }) => fate.kind === 'stored').length;
  return [
    ...(newNames.length > 0 ? [`New observers: ${someOf(newNames, MOST_NAMES)}.`] : []),
    ...(unlisted.length > 0 ? [`On no list of plants, taken as written: ${someOf(unlisted, MOST_NAMES)}.`] : []),
    ...(closed > 0
      ? [
          `The places of ${watchesSaid(closed)} are no sites of the survey and are taken as private; a column “private” with yes or no says otherwise.`,
        ]
      : []),
    ...(stored > 0
      ? [`${watchesSaid(stored)} of it ${stored === 1 ? 'is' : 'are'} stored already and will not be stored again.`]
      : []),
    ...differing.map(
      ({ told, fate }) =>
        `Line ${told.line} differs from watch ${fate.number} in ${fate.differs.join(', ')}; the stored one stays as it is.`,
    ),
    ...notices,
  ].map(harmless);
}

async function show(
  plan: Plan,
  read: SheetsRead,
  notices: readonly string[],
  survey: Survey,
  file: string,
): Promise<void> {
  const { planned } = plan;
  const lines: string[] = [];
  if (planned.length > 0) {
    const columns = process.stdout.columns ?? COLUMNS;
    lines.push(
      `${harmless(file)}: ${watchesSaid(planned.length)}.`,
      '',
      sheetTable(planned.slice(0, MOST_DRAWN), survey, columns),
    );
    if (planned.length > MOST_DRAWN) lines.push('', `and ${watchesSaid(planned.length - MOST_DRAWN)} more.`);
  }
  const noticed = planned.flatMap((one) =>
    one.fate.kind === 'new' ? one.fate.noticed.map((sentence) => `${whereOf(one)}: ${sentence}`) : [],
  );
  lines.push(...listed('Noticed by the checks; it is stored with the watch:', noticed));
  lines.push(...listed('To know:', remarksOf(plan, [...notices, ...read.notices])));
  lines.push(...listed('Not understood:', plan.complaints.map(sayComplaint)));
  await write(`${lines.join('\n')}\n\n`);
}

const count = (plan: Plan, kind: Planned['fate']['kind']): number =>
  plan.planned.filter(({ fate }) => fate.kind === kind).length;

/** Why nothing of it can be stored; null where something can, or is stored already. */
function refusalOf(plan: Plan, leaveOut: boolean): string | null {
  const wrong = plan.complaints.length;
  if (wrong === 0 || (leaveOut && !plan.isAstray)) return null;
  const things = wrong === 1 ? 'one thing was' : `${wrong} things were`;
  const them = wrong === 1 ? 'it' : 'them';
  const doubtful = count(plan, 'doubtful');
  const others = plan.planned.length - doubtful;
  const rest = plan.isAstray
    ? ' It tells of more than one watch, so none can be left out.'
    : others > 0
      ? ` Put ${them} right, or leave out the ${watchesSaid(doubtful)} with --leave-out.`
      : ` Put ${them} right.`;
  return `Nothing was stored: ${things} not understood.${rest}`;
}

/** Throws `CommandError`. */
export async function importSheet(path: string, { survey, data, yes, leaveOut }: SheetOptions): Promise<void> {
  const now = new Date().toISOString();
  const { file, sheets, notices } = await readSheetFile(path);
  const read = readSheets(sheets, contextOf(survey, now), (place) => siteOf(place, survey));
  const makers = { survey, now, newId };
  const database = databaseIn(data);
  const isThere = existsSync(database);
  // what is only shown, or cannot be taken, makes no database
  const nobody: Standing = { watches: [], people: [], nextNumber: 1 };
  const looking = isThere ? await openStore(database, { readonly: true }) : null;
  const plan = planOf(read, looking?.reading((connection) => standingIn(connection, survey)) ?? nobody, makers);
  looking?.close();
  await show(plan, read, notices, survey, file);
  const refusal = refusalOf(plan, leaveOut);
  if (refusal !== null) throw new CommandError(refusal);
  const left = count(plan, 'doubtful');
  const without = left > 0 ? `, without ${watchesSaid(left)} that ${left === 1 ? 'was' : 'were'} not understood` : '';
  const fresh = count(plan, 'new');
  if (fresh === 0) return write(`Nothing is left to store${without}.\n`);
  if (!yes) {
    const options = ['--yes', ...(leaveOut ? ['--leave-out'] : [])].join(' ');
    return write(
      `Nothing is stored yet. To store ${watchesSaid(fresh)}${without}: the same command with ${options}.\n`,
    );
  }

  const store = await openStore(database);
  // planned anew within the transaction that stores it: meanwhile somebody may have reported a watch
  const stored = store.writing((transaction) => {
    const { planned, newPeople } = planOf(read, standingIn(transaction, survey), makers);
    for (const person of newPeople) keepPerson(transaction, person);
    const watches = planned.flatMap(({ fate }) => (fate.kind === 'new' ? [fate.watch] : []));
    for (const watch of watches) keepWatch(transaction, watch);
    return watches.map(({ number }) => number);
  });
  store.close();
  const [first, last] = [stored[0], stored.at(-1)];
  const numbers = first === last ? `as watch ${first}` : `as watches ${first} to ${last}`;
  await write(`Stored ${watchesSaid(stored.length)} ${numbers}${without}.\n`);
}
