/** Checks that span two files: what a dialog names must be said by the wording, and every sentence must parse. */
import { IntlMessageFormat } from 'intl-messageformat';
import type { Dialog } from '../../shared/dialog.js';
import type { Wording } from '../../shared/wording.js';
import { SettingsError } from './errors.js';

/** A record without these is no watch. */
const ALWAYS_ASKED = ['date', 'times'] as const;

/** Throws `SettingsError` for the first thing that would fail in front of an observer. */
export function crossCheck(dialog: Dialog, dialogFile: string, wording: Wording, wordingFile: string): void {
  const asked = dialog.questions.flatMap(({ fields }) => fields);
  for (const field of ALWAYS_ASKED) {
    if (!asked.includes(field))
      throw new SettingsError(dialogFile, null, 'questions', `no question asks "${field}", and every watch needs it.`);
  }
  dialog.questions.forEach(({ question, fields }, at) => {
    if (wording.questions[question] === undefined) {
      throw new SettingsError(wordingFile, null, `questions.${question}`, `is missing, and ${dialogFile} asks it.`);
    }
    for (const field of fields) {
      if (dialog.fields[field] === undefined) {
        const known = Object.keys(dialog.fields).join(', ');
        throw new SettingsError(
          dialogFile,
          null,
          `questions.${at}.fields`,
          `asks the field "${field}". Known: ${known}.`,
        );
      }
    }
  });
  for (const [field, { when }] of Object.entries(dialog.fields)) {
    if (wording.fields[field] === undefined) {
      throw new SettingsError(wordingFile, null, `fields.${field}`, `is missing, and ${dialogFile} has that field.`);
    }
    for (const other of Object.keys(when ?? {})) {
      if (dialog.fields[other] === undefined) {
        throw new SettingsError(
          dialogFile,
          null,
          `fields.${field}.when`,
          `names the field "${other}", which this dialog does not have.`,
        );
      }
    }
  }
  for (const [key, sentence] of sentencesOf(wording)) {
    try {
      new IntlMessageFormat(sentence, wording.locale, undefined, { ignoreTag: true });
    } catch (cause) {
      throw new SettingsError(wordingFile, null, key, `is no ICU message: ${(cause as Error).message}`, { cause });
    }
  }
}

/** Every sentence with its key. */
function sentencesOf(wording: Wording): [key: string, sentence: string][] {
  const found: [string, string][] = [];
  const walk = (key: string, node: unknown): void => {
    if (typeof node === 'string') found.push([key, node]);
    else if (typeof node === 'object' && node !== null) {
      for (const [name, child] of Object.entries(node)) walk(key === '' ? name : `${key}.${name}`, child);
    }
  };
  walk('', wording);
  return found;
}
