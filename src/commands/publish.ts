/** `queenpost publish DIR`: the season as others may have it: report page, CSV, spreadsheet, Darwin Core Archive. */
import { mkdirSync } from 'node:fs';
import { Temporal } from 'temporal-polyfill';
import type { WatchCounts } from '../../shared/watch-counts.js';
import {
  columnsTable,
  csvOf,
  withoutPlantWords,
  observerKeys,
  publicTables,
  publicWatch,
  spreadsheet,
  type PublicWatch,
} from '../publish/public/index.js';
import { seasonFigures, type SeasonFigures } from '../season/index.js';
import { confirmedCountsOf, namesShown, watchesOf, type Connection } from '../store/index.js';
import { CommandError, optionsOf, SEASON_SEED, surveyFrom, type Command } from './command.js';
import { openStored } from './stored.js';
import { writeWhole } from './whole-files.js';
import { write } from './write.js';

const ARCHIVE = 'darwin-core.zip';
const REPORT = 'report.html';
const SPREADSHEET = 'season.xlsx';

function* withoutWords(watches: Iterable<WatchCounts>) {
  for (const watch of watches) yield withoutPlantWords(watch);
}

export const publish: Command = {
  name: 'publish',
  does: 'the public form of the season: report page, CSV, spreadsheet, Darwin Core Archive',
  usage: 'DIR [--survey FILE] [--data DIR]',
  async run(args) {
    const { values, positionals } = optionsOf(this, args, {}, 1);
    const [folder] = positionals;
    if (folder === undefined) throw new CommandError(`Say where to. Usage: queenpost ${this.name} ${this.usage}`);
    const survey = surveyFrom(values.survey);
    const { settings } = survey;
    const store = await openStored(values.data);
    const keyOf = observerKeys();
    const { doubts, reportPage, watching } = await import('../publish/report/index.js');
    const [where, doubtful] = [watching(settings), doubts(settings)];
    const watches: PublicWatch[] = [];
    const figuresOf = (connection: Connection, protocolOnly: boolean): SeasonFigures =>
      seasonFigures(withoutWords(confirmedCountsOf(connection, settings.key)), {
        survey,
        protocolOnly,
        seed: SEASON_SEED,
      });
    // One reading transaction: all files are of one moment. Of each watch only its public form is kept.
    const figures = store.reading((connection) => {
      const names = namesShown(connection, settings.key);
      for (const watch of watchesOf(connection, settings.key)) {
        doubtful.add(watch);
        const shown = publicWatch(watch, survey, keyOf, names);
        if (shown === null) continue;
        where.add(shown);
        watches.push(shown);
      }
      return { all: figuresOf(connection, false), within: figuresOf(connection, true) };
    });
    store.close();
    if (watches.length === 0)
      throw new CommandError(`No confirmed watch of ${settings.name} is in ${values.data}, so nothing was published.`);
    const { archiveFiles, zipped } = await import('../publish/archive/index.js');
    const today = Temporal.Now.plainDateISO(settings.timeZone).toString();
    const season = { ...figures, watching: where.result(), doubts: doubtful.result() };
    const data = publicTables(watches);
    const tables = [...data, columnsTable(data)];
    const pieces = [
      ...tables.map((table) => ({ file: `${table.name}.csv`, text: csvOf(table) })),
      { file: REPORT, text: await reportPage(season, survey) },
      { file: SPREADSHEET, text: await spreadsheet(tables, watches, today) },
      { file: ARCHIVE, text: await zipped(archiveFiles(watches, survey, today), today) },
    ];
    const files = pieces.map(({ file }) => file);
    writeWhole(folder, files, pieces, { mode: 0o644, ready: () => mkdirSync(folder, { recursive: true }) });
    const blurred = watches.filter(({ place }) => place !== null && place.generalized !== null).length;
    await write(
      `Published ${watches.length} confirmed watch${watches.length === 1 ? '' : 'es'} of ${settings.name} in ${folder}; ` +
        `${blurred} of them with a blurred place. Licence: ${settings.licence}.\n`,
    );
  },
};
