/** A survey's settings (`survey.yaml`) and what is loaded with them: dialog, wording, words, names. */
import { z } from 'zod';
import type { Dialog } from './dialog.js';
import type { Names } from './names.js';
import { localDate, localTime } from './record.js';
import { DATE_ORDERS, LENGTH_UNITS, MAIL_SECURITY, SPEED_UNITS, TEMPERATURE_UNITS, WEEKDAYS } from './vocabularies.js';
import type { ReportWording } from './report-wording.js';
import type { Wording } from './wording.js';
import type { Words } from './words.js';

const position = z.strictObject({ latitude: z.number().min(-90).max(90), longitude: z.number().min(-180).max(180) });

const timeZone = z.string().refine((zone) => {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}, 'not a time zone; take an IANA name, for example America/Chicago');

/** This machine. */
const LOOPBACK = new Set(['localhost', '127.0.0.1', '::1']);

/** Nobody on the way can read what goes to this address. That it is an address is checked beside this. */
const isSafe = (url: string): boolean =>
  !URL.canParse(url) || url.startsWith('https:') || LOOPBACK.has(new URL(url).hostname);

/** The id of somebody's thread on the phone, a number. */
const telegramThread = z.int('a number, for example 123456789').positive();

export const surveySettingsSchema = z.strictObject({
  /** Stands in every stored key; never changed once watches are stored. */
  key: z.string().regex(/^[a-z0-9][a-z0-9-]*$/, 'small letters, digits and hyphens, for example kestrel-fen'),
  name: z.string().min(1),
  /** A folder of `dialogs/`. */
  language: z.string().regex(/^[a-z]{2,3}$/, 'a language folder, for example en'),
  /** A file of `dialogs/`, without its ending. */
  dialog: z.string().regex(/^[a-z0-9-]+$/, 'a dialog file without its ending, for example flower-watch'),
  timeZone,
  season: z
    .strictObject({ from: localDate, to: localDate })
    .refine((season) => season.from <= season.to, 'the season ends before it begins'),
  dateOrder: z.enum(DATE_ORDERS),
  temperatureUnit: z.enum(TEMPERATURE_UNITS),
  lengthUnit: z.enum(LENGTH_UNITS),
  speedUnit: z.enum(SPEED_UNITS),
  /** Corners of the region's polygon, in order; the last joins the first. */
  region: z.array(position).min(3),
  protocol: z.strictObject({
    minutes: z.number().positive(),
    /** A watch this many minutes shorter or longer than `minutes` is still within the protocol. */
    toleranceMinutes: z.number().nonnegative(),
    leastCelsius: z.number(),
    mostCelsius: z.number(),
    mostBeaufort: z.int().min(0).max(12),
  }),
  /** Watches asked of each observer in a season. */
  target: z.int().positive(),
  /** When those who asked for it are reminded, in the season, until they reached the target: at most once a week. */
  reminders: z
    .strictObject({
      days: z.array(z.enum(WEEKDAYS)).min(1),
      /** Local time. */
      at: localTime.refine((at) => at >= '08:00' && at <= '20:00', 'a time of the day, from 08:00 to 20:00'),
      /** Days on which nobody is reminded. */
      quiet: z.array(localDate).default([]),
    })
    .default({ days: ['saturday', 'sunday'], at: '09:00', quiet: [] }),
  coordinator: z.strictObject({ name: z.string().min(1), mail: z.email(), telegram: telegramThread.optional() }),
  /** Who assists the coordinator: known by these alone, never by what somebody says of themselves. */
  helpers: z
    .array(
      z
        .strictObject({ name: z.string().min(1), mail: z.email().optional(), telegram: telegramThread.optional() })
        .refine(({ mail, telegram }) => mail !== undefined || telegram !== undefined, 'needs mail or telegram'),
    )
    .default([]),
  /** How mail goes out; without it, mails are written into files and come from the coordinator's address. */
  mail: z
    .strictObject({
      from: z.email(),
      server: z
        .strictObject({
          host: z.string().min(1),
          port: z.int().min(1).max(65535),
          /** `none` only on this machine: mail of others' is not sent for all to read. */
          security: z.enum(MAIL_SECURITY),
          user: z.string().min(1).optional(),
        })
        .refine(
          ({ host, security }) => security !== 'none' || LOOPBACK.has(host),
          'mail to another machine needs security: tls or starttls',
        )
        .optional(),
    })
    .optional(),
  /** The message thread on the phone; without it nothing is asked of Telegram. The token is taken from the environment. */
  telegram: z
    .strictObject({
      /** A Bot API server of one's own. */
      apiRoot: z
        .url({ protocol: /^https?$/ })
        .refine((url) => !url.endsWith('/'), 'an address without the last /')
        .refine(isSafe, 'another machine needs https: the token is part of every address')
        .optional(),
      /** Updates are brought to `url`; whatever answers there passes them on to `port` and `path` of this machine. */
      webhook: z
        .strictObject({
          url: z.url({ protocol: /^https?$/ }).refine(isSafe, 'another machine needs https'),
          port: z.int().min(1).max(65535),
          path: z.string().regex(/^\/[\w./-]*$/, 'a path, for example /updates'),
        })
        .optional(),
    })
    .optional(),
  sites: z.array(
    z.strictObject({
      key: z.string().min(1),
      name: z.string().min(1),
      latitude: z.number().min(-90).max(90),
      longitude: z.number().min(-180).max(180),
      radiusMetres: z.number().positive(),
    }),
  ),
  /** What the public form hides: private places and those of protected species are shown as cells this wide. */
  publish: z
    .strictObject({
      /** Side of a cell, degrees of latitude and longitude. */
      cellDegrees: z.number().positive().max(5),
      /** Accepted names of bees and plants whose places are not shown exactly. */
      protected: z.array(z.string().min(1)),
    })
    .default({ cellDegrees: 0.1, protected: [] }),
  licence: z.string().min(1),
  citation: z.string().min(1),
});

/** The settings as a file holds them: each value by itself, and those that need another one. */
export const surveyFileSchema = surveySettingsSchema.refine(
  ({ telegram, coordinator, helpers }) =>
    telegram !== undefined || [coordinator, ...helpers].every((one) => one.telegram === undefined),
  { path: ['telegram'], error: 'is missing, and coordinator or helpers have a thread there; write telegram: {}' },
);

/** Coordinator and helpers that have a thread on the phone, by its id; the coordinator first, each once. */
export const deskThreads = ({ coordinator, helpers, telegram }: SurveySettings): string[] =>
  telegram === undefined
    ? []
    : [...new Set([coordinator, ...helpers].flatMap((one) => one.telegram ?? []))].map(String);

export type SurveySettings = z.infer<typeof surveySettingsSchema>;

/** Everything a step needs to know of its survey. Plain data, loaded once, never changed. */
export interface Survey {
  readonly settings: SurveySettings;
  readonly dialog: Dialog;
  readonly wording: Wording;
  /** What the report page says. */
  readonly report: ReportWording;
  readonly words: Words;
  readonly names: Names;
}
