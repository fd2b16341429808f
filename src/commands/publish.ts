/** `queenpost publish DIR`: the season as others may have it: report page, CSV, spreadsheet, Darwin Core Archive. */
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Temporal } from 'temporal-polyfill';
import { csvOf, forFigures, observerKeys, publicTables, publicWatch, spreadsheet } from '../publish/public/index.js';
import { seasonFigures, type SeasonFigures } from '../season/index.js';
import { watchesOf } from '../store/index.js';
import { CommandError, optionsOf, SEASON_SEED, surveyFrom, type Command } from './command.js';
import { openStored } from './stored.js';
import { write } from './write.js';

const ARCHIVE = 'darwin-core.zip';
const REPORT = 'report.html';
const SPREADSHEET = 'season.xlsx';

/** Each file is whole or not there: it stands under another name until it is written. */
function writeAll(folder: string, files: Readonly<Record<string, string | Buffer>>): void {
  try {
    mkdirSync(folder, { recursive: true });
    for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, `${name}.part`), content);
    for (const name of Object.keys(files)) renameSync(join(folder, `${name}.part`), join(folder, name));
  } catch (cause) {
    if (!(cause instanceof Error) || !('syscall' in cause)) throw cause;
    throw new CommandError(`${folder} cannot be written: ${cause.message}.`, { cause });
  }
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
    const stored = [...watchesOf(store, settings.key)];
    store.close();
    const watches = stored.flatMap((watch) => publicWatch(watch, survey, keyOf) ?? []);
    if (watches.length === 0)
      throw new CommandError(`No confirmed watch of ${settings.name} is in ${values.data}, so nothing was published.`);
    const { archiveFiles, zipped } = await import('../publish/archive/index.js');
    const today = Temporal.Now.plainDateISO(settings.timeZone).toString();
    const archive = await zipped(archiveFiles(watches, survey, today), today);
    const { reportPage } = await import('../publish/report/index.js');
    const figuresOf = (protocolOnly: boolean): SeasonFigures =>
      seasonFigures(stored.map(forFigures), { survey, protocolOnly, seed: SEASON_SEED });
    const tables = publicTables(watches);
    writeAll(folder, {
      ...Object.fromEntries(tables.map((table) => [`${table.name}.csv`, csvOf(table)])),
      [REPORT]: await reportPage(figuresOf(false), figuresOf(true), settings),
      [SPREADSHEET]: await spreadsheet(tables, watches, today),
      [ARCHIVE]: archive,
    });
    const blurred = watches.filter(({ place }) => place !== null && place.generalized !== null).length;
    await write(
      `Published ${watches.length} confirmed watch${watches.length === 1 ? '' : 'es'} of ${settings.name} in ${folder}; ` +
        `${blurred} of them with a blurred place. Licence: ${settings.licence}.\n`,
    );
  },
};
