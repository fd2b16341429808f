/**
 * `queenpost serve`: runs the channels that the settings name, until it is told to stop. All that it knows is in the
 * database: however it ends, the next run goes on where it was.
 */
import type { Survey } from '../../shared/survey.js';
import { CommandError, optionsOf, surveyFrom, type Command } from './command.js';

/** The variable with the token that BotFather gave. */
const TOKEN = 'QUEENPOST_TELEGRAM_TOKEN';

/** Ends what runs, cleanly, at the first signal of either kind; the second ends the program at once. */
function stopAtSignal(): AbortController {
  const stop = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => stop.abort());
  return stop;
}

/** What runs, in one line. */
function runs({ settings: { name, telegram, mail } }: Survey, data: string, bot: string): string {
  const way = telegram?.webhook ? `brought to ${telegram.webhook.url}` : 'asked for';
  const mails = mail?.server ? `sent through ${mail.server.host}` : `written into ${data}/mail`;
  return `${name}: Telegram as @${bot}, messages ${way}; receipts ${mails}. Ctrl-C stops.\n`;
}

const isPortTaken = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && (error.code === 'EADDRINUSE' || error.code === 'EACCES');

export const serve: Command = {
  name: 'serve',
  does: 'runs the channels that the settings name, until it is stopped',
  usage: '[--survey FILE] [--data DIR]',
  async run(args) {
    const { survey: file, data } = optionsOf(this, args, {}).values;
    const survey = surveyFrom(file);
    const { telegram } = survey.settings;
    if (telegram === undefined) {
      throw new CommandError(`${file} names no channel to serve; add the line "telegram: {}".`);
    }
    const token = process.env[TOKEN] ?? '';
    if (!/^\S+$/.test(token)) {
      throw new CommandError(`The environment has no ${TOKEN}; BotFather gives the token of a bot, see README.md.`);
    }
    // loaded here, since no other command needs what it brings
    const { serveSurvey } = await import('./serving.js');
    const { TelegramRefused } = await import('../channels/telegram/index.js');
    const report = (line: string): void => void process.stderr.write(`${line}\n`);
    const ready = (bot: string): void => void process.stdout.write(runs(survey, data, bot));
    try {
      await serveSurvey({ survey, data, token, stop: stopAtSignal(), report, ready });
    } catch (error) {
      if (error instanceof TelegramRefused) throw new CommandError(error.message, { cause: error });
      if (telegram.webhook && isPortTaken(error)) {
        const { port } = telegram.webhook;
        throw new CommandError(`Port ${port} of this machine cannot be listened at; name another in ${file}.`, {
          cause: error,
        });
      }
      throw error;
    }
    process.stdout.write('Stopped.\n');
  },
};
