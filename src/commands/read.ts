/** `queenpost read KIND`: shows how answers would be understood, one line in, one line out. */
import { createInterface } from 'node:readline';
import { Temporal } from 'temporal-polyfill';
import { z } from 'zod';
import { localDate } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import { DATE_ORDERS, LENGTH_UNITS, TEMPERATURE_UNITS } from '../../shared/vocabularies.js';
import { printed, PRINTED_KINDS, type Context, type PrintedReading } from '../answers/index.js';
import { CommandError, optionsOf, surveyFrom, type Command } from './command.js';
import { write } from './write.js';

/** `today` in an input means this time of that day. */
const EVENING = '18:30';

/** Keys besides these are passed over: a labelled line may be piped in as it is. */
const inputSchema = z.object({
  text: z.string(),
  today: localDate.optional(),
  order: z.enum(DATE_ORDERS).optional(),
  temperatureUnit: z.enum(TEMPERATURE_UNITS).optional(),
  lengthUnit: z.enum(LENGTH_UNITS).optional(),
  watched: z.array(z.string()).optional(),
  of: z.enum(['queens', 'flowers']).optional(),
});
type Input = z.infer<typeof inputSchema>;

function contextOf(input: Input, survey: Survey, today: string, time: string): Context {
  const { settings } = survey;
  return {
    survey: {
      ...settings,
      dateOrder: input.order ?? settings.dateOrder,
      temperatureUnit: input.temperatureUnit ?? settings.temperatureUnit,
      lengthUnit: input.lengthUnit ?? settings.lengthUnit,
    },
    words: survey.words,
    names: survey.names,
    today: input.today ?? today,
    time: input.today === undefined ? time : EVENING,
    watched: input.watched ?? [],
    of: input.of ?? null,
  };
}

/** A line that is no such object is answered like any other, so that answers stay in step with lines. */
const malformed = (line: string): PrintedReading => ({
  text: line,
  state: 'none',
  value: null,
  offer: null,
  ask: 'malformed-line',
});

function inputOf(line: string, isJson: boolean): Input | null {
  if (!isJson) return { text: line };
  try {
    return inputSchema.parse(JSON.parse(line));
  } catch {
    return null;
  }
}

export const read: Command = {
  name: 'read',
  does: 'shows how answers would be understood',
  usage: `KIND [--jsonl] [--today 2026-05-06] [--survey FILE]; KIND is one of ${PRINTED_KINDS.join(', ')}`,
  async run(args) {
    const { values, positionals } = optionsOf(
      this,
      args,
      { jsonl: { type: 'boolean', default: false }, today: { type: 'string' } },
      1,
    );
    const kind = PRINTED_KINDS.find((name) => name === positionals[0]);
    if (kind === undefined) {
      throw new CommandError(
        `No kind of answer is called "${positionals[0] ?? ''}". Known: ${PRINTED_KINDS.join(', ')}.`,
      );
    }
    if (values.today !== undefined && !localDate.safeParse(values.today).success) {
      throw new CommandError(`--today ${values.today} is not a day; write it like 2026-05-06.`);
    }
    const survey = surveyFrom(values.survey);
    const moment = Temporal.Now.zonedDateTimeISO(survey.settings.timeZone);
    const today = values.today ?? moment.toPlainDate().toString();
    const time = values.today === undefined ? moment.toPlainTime().toString({ smallestUnit: 'minute' }) : EVENING;
    for await (const line of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
      const input = inputOf(line, values.jsonl);
      const reading =
        input === null ? malformed(line) : printed(kind, input.text, contextOf(input, survey, today, time));
      await write(`${JSON.stringify(reading)}\n`);
    }
  },
};
