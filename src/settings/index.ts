/** What the rest of the program may use of the settings. */
export { SettingsError } from './errors.js';
export { DEMO_SURVEY, loadSurvey } from './load.js';
export { ROOT } from './root.js';
