/** Loads a survey with everything that belongs to it, checked whole before the first observer writes. */
import { join } from 'node:path';
import { dialogSchema } from '../../shared/dialog.js';
import { beeRow, plantRow, type Names } from '../../shared/names.js';
import { reportWordingSchema } from '../../shared/report-wording.js';
import { surveyFileSchema, type Survey, type SurveySettings } from '../../shared/survey.js';
import { wordingSchema } from '../../shared/wording.js';
import { wordsSchema } from '../../shared/words.js';
import { crossCheck } from './cross-check.js';
import { readDictionary } from './dictionary.js';
import { SettingsError } from './errors.js';
import { readNames } from './names-file.js';
import { ROOT } from './root.js';
import { fileName, readYaml } from './yaml-file.js';

const DIALOGS = join(ROOT, 'dialogs');
export const DEMO_SURVEY = join(ROOT, 'demo', 'survey.yaml');

export function loadNames(): Names {
  return {
    bees: readNames(join(ROOT, 'shared', 'names', 'bees.csv'), beeRow),
    plants: readNames(join(ROOT, 'shared', 'names', 'plants.csv'), plantRow),
  };
}

/** A misspelt protected species would be published with its exact places. */
function protectedAreListed({ publish }: SurveySettings, names: Names, file: string): void {
  const listed = new Set([...names.bees, ...names.plants].map(({ name }) => name));
  publish.protected.forEach((name, at) => {
    if (!listed.has(name))
      throw new SettingsError(
        file,
        null,
        `publish.protected.${at}`,
        `is "${name}", which is on no list of names; take an accepted name, for example Bombus affinis.`,
      );
  });
}

/** `folder` is where dialogs and languages are. Throws `SettingsError` naming file, line, key and value. */
export function loadSurvey(path: string = DEMO_SURVEY, folder: string = DIALOGS): Survey {
  const settings = readYaml(path, surveyFileSchema);
  const dialogFile = join(folder, `${settings.dialog}.yaml`);
  const wordingFile = join(folder, settings.language, 'wording.yaml');
  const dialog = readYaml(dialogFile, dialogSchema);
  const wording = readYaml(wordingFile, wordingSchema);
  crossCheck(dialog, fileName(dialogFile), wording, fileName(wordingFile));
  const report = readYaml(join(folder, settings.language, 'report.yaml'), reportWordingSchema);
  const words = {
    ...readYaml(join(folder, settings.language, 'words.yaml'), wordsSchema),
    dictionary: readDictionary(settings.language),
  };
  const names = loadNames();
  protectedAreListed(settings, names, fileName(path));
  return { settings, dialog, wording, report, words, names };
}
