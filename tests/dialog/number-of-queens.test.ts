/** A number of queens told by itself, and what is said when their bees are asked for. */
import { expect, test } from 'vitest';
import { Conversation } from './converse.js';

const WATCH = 'today 3 to 3:15, Fen Boardwalk, 66 sunny calm, 4x4 ft meadow, ';
const said = ({ last }: Conversation): string => last.replies.join('\n');

test('"one on each" of two tells where they were, and the number stands', () => {
  const conversation = new Conversation().agreed();
  conversation.all(`${WATCH}20 violets, 10 phlox`, 'a couple', 'one on each I think');
  expect(said(conversation)).toMatch(/^You did not say which bees\. Would it be 1 .* on violet; 1 .* on phlox/);
  conversation.all('yes', 'yes');
  expect(conversation.watch.queens.map(({ bee, count, plant }) => [bee, count, plant])).toEqual([
    ['Bombus', 1, 1],
    ['Bombus', 1, 2],
  ]);
});

test('"one on each" of three fits no two plants, and is asked back', () => {
  const conversation = new Conversation().agreed();
  conversation.all(`${WATCH}20 violets, 10 phlox`, '3', 'one on each');
  expect(conversation.thread.report?.total).toBe(3);
});

test('other bees are no queens: asked about they are explained, told they count none', () => {
  const conversation = new Conversation().agreed();
  conversation.all(`${WATCH}20 violets`, 'does a honeybee count');
  expect(said(conversation)).toMatch(/^Only bumble bee queens are counted here/);
  expect(conversation.last.asking?.fields).toEqual(['tally']);
  conversation.say('just one honeybee then');
  expect(conversation.thread.report?.total ?? 0).toBe(0);
});

test('a number beside a yes is no remark', () => {
  const conversation = new Conversation().agreed();
  conversation.all(`${WATCH}20 violets, 1 imp`, 'yes one');
  expect(conversation.thread.report?.fields['remark']).toBeUndefined();
});
