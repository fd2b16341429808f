/** All migrations, in order of their names. A new one is a file here and a line in this list. */
import type { Migration } from 'kysely';
import * as start from './0001-start.js';
import * as slots from './0002-slots.js';
import * as photographLicence from './0003-photograph-licence.js';
import * as reminders from './0004-reminders.js';
import * as codes from './0005-codes.js';
import * as nameShown from './0006-name-shown.js';
import * as barePhotographs from './0007-bare-photographs.js';
import * as remindedOn from './0008-reminded-on.js';
import * as filesToCome from './0009-files-to-come.js';

export const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '0001-start': start,
  '0002-slots': slots,
  '0003-photograph-licence': photographLicence,
  '0004-reminders': reminders,
  '0005-codes': codes,
  '0006-name-shown': nameShown,
  '0007-bare-photographs': barePhotographs,
  '0008-reminded-on': remindedOn,
  '0009-files-to-come': filesToCome,
};
