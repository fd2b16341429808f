/** `queenpost demo`: the invented season with its recorded conversations replayed into it, and the table of both. */
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { load } from 'js-yaml';
import { z } from 'zod';
import { ROOT } from '../settings/index.js';
import { databaseIn, optionsOf, CommandError, type Command } from './command.js';
import { importPackage } from './import.js';
import { season } from './season.js';
import { Terminal } from './terminal.js';
import { write } from './write.js';

const SEASON = join(ROOT, 'demo', 'season');
const CONVERSATIONS = join(ROOT, 'demo', 'conversations');

/** A recorded conversation: what one person said, at which moment, and what must have been stored. */
const conversationSchema = z.strictObject({
  about: z.string(),
  now: z.string(),
  said: z.array(z.union([z.string(), z.strictObject({ advance: z.number() })])),
  stored: z.array(z.record(z.string(), z.json())),
});

/** Replays one; the numbers of the watches it stored. */
async function replay(file: string, values: { survey: string; data: string }): Promise<string> {
  const { about, now, said } = conversationSchema.parse(load(readFileSync(join(CONVERSATIONS, file), 'utf8')));
  const terminal = await Terminal.open({ ...values, now, person: file.replace(/\.yaml$/, '') });
  const numbers = new Set<number>();
  const note = (): void => {
    const { stored } = terminal.taken();
    if (stored !== null) numbers.add(stored);
  };
  await terminal.take({ kind: 'opened' });
  for (const one of said) {
    if (typeof one === 'string') await terminal.take({ kind: 'text', text: one });
    else await terminal.advance(one.advance);
    note();
  }
  await terminal.close();
  return `${about} ${numbers.size === 0 ? '(nothing stored)' : `(watch ${[...numbers].join(', ')})`}`;
}

export const demo: Command = {
  name: 'demo',
  does: 'makes the invented season in a folder of its own and shows its table',
  usage: '[--survey FILE] [--data DIR]',
  async run(args) {
    const { values } = optionsOf(this, args, {});
    const data = join(values.data, 'demo');
    const database = databaseIn(data);
    // made anew each time: the folder is the demo's own
    if (existsSync(database)) {
      try {
        rmSync(data, { recursive: true });
      } catch (cause) {
        throw new CommandError(`The demo's folder ${data} cannot be made anew; is it in use?`, { cause });
      }
    }
    const options = ['--survey', values.survey, '--data', data];
    await importPackage.run([SEASON, ...options]);
    for (const file of readdirSync(CONVERSATIONS).filter((name) => name.endsWith('.yaml'))) {
      await write(`${await replay(file, { survey: values.survey, data })}\n`);
    }
    await write('\n');
    await season.run(options);
    await write(
      `\nThe demo's data are in ${data}, its receipts by mail in ${join(data, 'mail')}; look further with --data ${data}, for example: npm run -s queenpost -- watches --data ${data}. Its settings, season and conversations are in demo/.\n`,
    );
  },
};
