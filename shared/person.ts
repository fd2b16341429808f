/** People and their saved places: private, kept apart from the records, never published. */
import { z } from 'zod';
import { instant, localDate } from './record.js';
import { PHOTOGRAPH_LICENCES } from './vocabularies.js';

export const personSchema = z.strictObject({
  survey: z.string(),
  /** The observer's key in records: a UUID, says nothing about the person. */
  key: z.string(),
  channel: z.string(),
  /** The channel's own id of the person: a thread id, an address. */
  person: z.string(),
  name: z.string().nullable(),
  mail: z.string().nullable(),
  /** They typed a code that was mailed there; left out where the address is only claimed. */
  mailProven: z.literal(true).optional(),
  /** When they said yes, and to which version of the wording. */
  consent: z.strictObject({ at: instant, wordingVersion: z.int().positive() }).nullable(),
  /** What they declined for good ("mail"), or were asked or told once ("licence", "name-shown", "reminders"), so that it is not said again. */
  declined: z.array(z.string()),
  /** Under which their photographs may be published; null: not at all. */
  photographLicence: z.enum(PHOTOGRAPH_LICENCES).nullable(),
  /** Their name may stand with their watches in what is published; else a key stands there. */
  nameShown: z.boolean(),
  /** They asked to be reminded of the watches still wanted. */
  reminders: z.boolean(),
  /** The local day of their last reminder, in whichever thread; left out where there was none. */
  remindedOn: localDate.optional(),
});

export const savedPlaceSchema = z.strictObject({
  survey: z.string(),
  /** The observer's key. */
  observer: z.string(),
  /** Folded words by which it is found again: "my garden". */
  key: z.string(),
  words: z.string(),
  latitude: z.number().nullable(),
  longitude: z.number().nullable(),
  uncertaintyMetres: z.number().nullable(),
  site: z.string().nullable(),
  private: z.boolean(),
  lastUsed: instant,
});

export type Person = z.infer<typeof personSchema>;
export type SavedPlace = z.infer<typeof savedPlaceSchema>;
