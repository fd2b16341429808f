/** What a command is, and the options that all share. A command is a file here and a line in `src/queenpost.ts`. */
import { join } from 'node:path';
import { parseArgs, type ParseArgsConfig } from 'node:util';
import type { Survey } from '../../shared/survey.js';
import { DEMO_SURVEY, loadSurvey, SettingsError } from '../settings/index.js';
import { StoreError } from '../store/index.js';

/** A command that could not do its work: one sentence for standard error. */
export class CommandError extends Error {
  override readonly name = 'CommandError';
}

export interface Command {
  readonly name: string;
  /** One line for the list of commands. */
  readonly does: string;
  /** What follows the command's name. */
  readonly usage: string;
  /** Throws `CommandError`, or an error of the folder that failed. */
  run(args: readonly string[]): Promise<void>;
}

type Options = NonNullable<ParseArgsConfig['options']>;

/** Every command takes these. */
export const COMMON_OPTIONS = {
  survey: { type: 'string', default: DEMO_SURVEY },
  data: { type: 'string', default: './data' },
} as const satisfies Options;

/** Of resampling: the same watches give the same intervals each time, in whichever command. */
export const SEASON_SEED = 1;

/** Reads options; an unknown one, or a word too many, is said with the usage that would do. */
export function optionsOf<const Known extends Options>(
  command: Pick<Command, 'name' | 'usage'>,
  args: readonly string[],
  known: Known,
  words = 0,
) {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { ...COMMON_OPTIONS, ...known },
      allowPositionals: true,
      strict: true,
    });
    if (positionals.length > words) throw new Error(`"${positionals[words]}" is not expected.`);
    return { values, positionals };
  } catch (cause) {
    const problem = (cause as Error).message.split('. To specify')[0]?.replace(/\.$/, '');
    throw new CommandError(`${problem}. Usage: queenpost ${command.name} ${command.usage}`, { cause });
  }
}

export const surveyFrom = (path: string): Survey => loadSurvey(path);

/** The database of a data folder. */
export const databaseIn = (data: string): string => join(data, 'queenpost.sqlite');

/** What can go wrong in use is one sentence; anything else is a mistake of ours and keeps its trace. */
export function sentenceOf(error: unknown): string {
  if (error instanceof CommandError || error instanceof SettingsError || error instanceof StoreError)
    return error.message;
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
