/** Loads a survey with everything that belongs to it, checked whole before the first observer writes. */
import { join } from 'node:path';
import { dialogSchema } from '../../shared/dialog.js';
import { beeRow, plantRow, type Names } from '../../shared/names.js';
import { surveySettingsSchema, type Survey } from '../../shared/survey.js';
import { wordingSchema } from '../../shared/wording.js';
import { wordsSchema } from '../../shared/words.js';
import { readNames } from './names-file.js';
import { ROOT } from './root.js';
import { readYaml } from './yaml-file.js';

export const DEMO_SURVEY = join(ROOT, 'demo', 'survey.yaml');

export function loadNames(): Names {
  return {
    bees: readNames(join(ROOT, 'shared', 'names', 'bees.csv'), beeRow),
    plants: readNames(join(ROOT, 'shared', 'names', 'plants.csv'), plantRow),
  };
}

/** Throws `SettingsError` naming file, line, key and value. */
export function loadSurvey(path: string = DEMO_SURVEY): Survey {
  const settings = readYaml(path, surveySettingsSchema);
  const dialogs = join(ROOT, 'dialogs');
  return {
    settings,
    dialog: readYaml(join(dialogs, `${settings.dialog}.yaml`), dialogSchema),
    wording: readYaml(join(dialogs, settings.language, 'wording.yaml'), wordingSchema),
    words: readYaml(join(dialogs, settings.language, 'words.yaml'), wordsSchema),
    names: loadNames(),
  };
}
