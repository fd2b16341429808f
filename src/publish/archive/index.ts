/** The season as a Darwin Core Archive with events as its core: the files by name, and all of them in one zip. */
import { buffer } from 'node:stream/consumers';
import { ZipFile } from 'yazl';
import type { Names } from '../../../shared/names.js';
import type { SurveySettings } from '../../../shared/survey.js';
import type { PublicWatch } from '../public/index.js';
import { emlXml, metaXml } from './descriptions.js';
import { efforts, events } from './events.js';
import { absentFrom, determinedSpecies, occurrences } from './occurrences.js';
import { csvOf } from './table.js';
import { visits } from './visits.js';

/** File name to text. `published` is a local day. */
export function archiveFiles(
  watches: readonly PublicWatch[],
  { settings, names }: { readonly settings: SurveySettings; readonly names: Names },
  published: string,
): Readonly<Record<string, string>> {
  const species = determinedSpecies(watches);
  const core = events(watches, settings);
  const extensions = [
    occurrences(watches, settings, names),
    visits(watches, settings),
    efforts(watches, settings, (watch) => absentFrom(watch, species)),
  ];
  return {
    'meta.xml': metaXml(core, extensions),
    'eml.xml': emlXml(settings, watches, published),
    ...Object.fromEntries([core, ...extensions].map((table) => [table.file, csvOf(table)])),
  };
}

/** The same files give the same bytes: their time in the zip is the beginning of the day of publication. */
export async function zipped(files: Readonly<Record<string, string>>, published: string): Promise<Buffer> {
  const zip = new ZipFile();
  const mtime = new Date(`${published}T00:00:00Z`);
  for (const [name, text] of Object.entries(files)) zip.addBuffer(Buffer.from(text, 'utf8'), name, { mtime });
  zip.end();
  return buffer(zip.outputStream);
}
