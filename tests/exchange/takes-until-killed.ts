/**
 * A program that takes messages until it is killed: `takes-until-killed.ts DATABASE SURVEY DIES-AT`, the survey as a
 * JSON file. It prints the id of each message when it is acknowledged. In the step of message DIES-AT it kills itself,
 * in the middle of a transaction.
 */
import { readFileSync } from 'node:fs';
import { v7 } from 'uuid';
import type { Survey } from '../../shared/survey.js';
import { openExchange } from '../../src/exchange/index.js';
import { openStore } from '../../src/store/index.js';
import { echo, NOW } from './echo.js';
import { BATCH, MESSAGES } from './kill-messages.js';

const [path, surveyFile, diesAt] = process.argv.slice(2);
if (path === undefined || surveyFile === undefined || diesAt === undefined) throw new Error('Three words are needed.');

// Ready-made: to load and check the survey's own files would take longer than the rest of the test.
const survey = JSON.parse(readFileSync(surveyFile, 'utf8')) as Survey;

const conversation = echo((message) => {
  if (message.id === diesAt) process.kill(process.pid, 'SIGKILL');
});
const exchange = openExchange({
  store: await openStore(path),
  survey,
  conversation,
  now: () => NOW,
  newId: v7,
  newCode: () => '000000',
});

for (let from = 0; from < MESSAGES.length; from += BATCH) {
  const batch = MESSAGES.slice(from, from + BATCH).map(async (message) => {
    await exchange.receive(message);
    console.log(message.id);
  });
  await Promise.all(batch);
}
