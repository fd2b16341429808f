/** Replays the recorded conversations of the demo: what was said to them, and what was stored. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { ROOT } from '../../src/settings/index.js';
import { Conversation } from './converse.js';

interface Recorded {
  readonly about: string;
  readonly now: string;
  readonly said: readonly (string | { readonly advance: number })[];
  /** What must stand in the stored watches, as far as it is named here. */
  readonly stored: readonly Record<string, unknown>[];
}

const folder = join(ROOT, 'demo', 'conversations');

test.each(readdirSync(folder).filter((file) => file.endsWith('.yaml')))('%s goes as recorded', async (file) => {
  const recorded = parse(readFileSync(join(folder, file), 'utf8')) as Recorded;
  const conversation = new Conversation(undefined, recorded.now);
  conversation.open();
  for (const said of recorded.said) {
    if (typeof said === 'string') conversation.say(said);
    else conversation.advance(said.advance);
  }
  expect(conversation.watches).toHaveLength(recorded.stored.length);
  recorded.stored.forEach((watch, at) => expect(conversation.watches[at]).toMatchObject(watch));
  const transcript = `${recorded.about}\n\n${conversation.transcript.join('\n')}\n`;
  await expect(transcript).toMatchFileSnapshot(join('transcripts', file.replace('.yaml', '.txt')));
});
