/** `queenpost publish DIR`: the season as others may have it: report page, CSV, spreadsheet, Darwin Core Archive. */
import { mkdirSync } from 'node:fs';
import { Temporal } from 'temporal-polyfill';
import {
  columnsTable,
  csvOf,
  withoutPlantWords,
  observerKeys,
  publicTables,
  publicWatch,
  spreadsheet,
} from '../publish/public/index.js';
import { seasonFigures, type SeasonFigures } from '../season/index.js';
import { namesShown, watchesOf } from '../store/index.js';
import { CommandError, optionsOf, SEASON_SEED, surveyFrom, type Command } from './command.js';
import { openStored } from './stored.js';
import { writeWhole } from './whole-files.js';
import { write } from './write.js';

const ARCHIVE = 'darwin-core.zip';
const REPORT = 'report.html';
const SPREADSHEET = 'season.xlsx';

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
    const stored = [...watchesOf(store, settings.key)];
    const names = namesShown(store, settings.key);
    store.close();
    const watches = stored.flatMap((watch) => publicWatch(watch, survey, keyOf, names) ?? []);
    if (watches.length === 0)
      throw new CommandError(`No confirmed watch of ${settings.name} is in ${values.data}, so nothing was published.`);
    const { archiveFiles, zipped } = await import('../publish/archive/index.js');
    const today = Temporal.Now.plainDateISO(settings.timeZone).toString();
    const { doubts, reportPage, watching } = await import('../publish/report/index.js');
    const figuresOf = (protocolOnly: boolean): SeasonFigures =>
      seasonFigures(stored.map(withoutPlantWords), { survey, protocolOnly, seed: SEASON_SEED });
    const [where, doubtful] = [watching(settings), doubts(settings)];
    for (const watch of watches) where.add(watch);
    for (const watch of stored) doubtful.add(watch);
    const season = {
      all: figuresOf(false),
      within: figuresOf(true),
      watching: where.result(),
      doubts: doubtful.result(),
    };
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
