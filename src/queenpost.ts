#!/usr/bin/env node
/** The way in: `queenpost COMMAND …`. A command is a file in `src/commands` and a line in `COMMANDS`. */
import { CommandError, sentenceOf, type Command } from './commands/command.js';
import { demo } from './commands/demo.js';
import { exportPackage } from './commands/export.js';
import { importPackage } from './commands/import.js';
import { publish } from './commands/publish.js';
import { read } from './commands/read.js';
import { season } from './commands/season.js';
import { serve } from './commands/serve.js';
import { talk } from './commands/talk.js';
import { watches } from './commands/watches.js';

const COMMANDS: readonly Command[] = [talk, serve, read, watches, season, exportPackage, importPackage, publish, demo];

const list = (): string =>
  COMMANDS.map(({ name, does, usage }) => `  ${name.padEnd(9)} ${does}\n            queenpost ${name} ${usage}`).join(
    '\n',
  );

async function main([name, ...args]: readonly string[]): Promise<void> {
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') {
    process.stdout.write(`Commands of queenpost:\n${list()}\n`);
    return;
  }
  const command = COMMANDS.find((candidate) => candidate.name === name);
  if (command === undefined) {
    throw new CommandError(`No command is called "${name}". Known: ${COMMANDS.map((known) => known.name).join(', ')}.`);
  }
  if (args.includes('--help')) {
    process.stdout.write(`queenpost ${command.name} ${command.usage}\n  ${command.does}\n`);
    return;
  }
  await command.run(args);
}

try {
  await main(process.argv.slice(2));
} catch (error) {
  process.stderr.write(`${sentenceOf(error)}\n`);
  process.exitCode = 1;
}
