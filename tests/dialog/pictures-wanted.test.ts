/** Pictures of back, face and hind leg are asked for once, where an expert's look would help; never by handling her. */
import { describe, expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

const ASKED = /back, her face or a hind leg.*as a file.*never catch or handle/;
const said = ({ last }: Conversation): string => last.replies.join('\n');
const atSummary = (queens: string): Conversation => {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH.slice(0, -1), queens);
  expect(conversation.last.asking?.fields).toEqual(['confirm']);
  return conversation;
};
const picture = (n: number, compressed: boolean) =>
  ({
    kind: 'photo',
    sha256: String(n).repeat(64),
    type: 'image/jpeg',
    takenAt: null,
    ...(compressed ? { compressed: true as const } : {}),
  }) as const;

describe('pictures', () => {
  // the demo survey protects B. affinis
  test.each(['1 bimaculatus I think', '1 not sure', '1 rusty patched', '2 impatiens, 1 unknown'])(
    'are asked for: %s',
    (queens) => {
      expect(said(atSummary(queens))).toMatch(ASKED);
    },
  );
  test.each(['none', '1 impatiens', '1 bimaculatus worker'])('are not asked for: %s', (queens) => {
    expect(said(atSummary(queens))).not.toMatch(/hind leg/);
  });

  test('once: not with the same summary again, nor with a changed one', () => {
    const conversation = atSummary('1 not sure');
    conversation.say('what have you got');
    expect(said(conversation)).not.toMatch(/hind leg/);
    conversation.say('4 should be 68 F');
    expect(said(conversation)).toMatch(/Now it reads/);
    expect(said(conversation)).not.toMatch(/hind leg/);
    expect(conversation.say('yes').stored).toBe(1);
  });

  test('with a changed summary, where only now a queen is doubtful', () => {
    const conversation = atSummary('1 impatiens');
    conversation.say('the impatiens was a rusty patched');
    expect(said(conversation)).toMatch(ASKED);
  });

  test('not of who has sent one', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, -1));
    conversation.send(picture(1, false));
    conversation.say('1 not sure');
    expect(said(conversation)).not.toMatch(/hind leg/);
  });

  test('that come made smaller are told once that a file keeps more; a file is not', () => {
    const conversation = atSummary('1 not sure');
    conversation.send(picture(1, true));
    expect(said(conversation)).toMatch(/sent as a file it keeps/);
    conversation.send(picture(2, true));
    expect(said(conversation)).not.toMatch(/sent as a file it keeps/);
    conversation.say('yes');
    expect(conversation.watch.photographs).toHaveLength(2);
    const file = atSummary('1 not sure');
    file.send(picture(1, false));
    expect(said(file)).not.toMatch(/sent as a file it keeps/);
    const certain = atSummary('1 impatiens');
    certain.send(picture(1, true));
    expect(said(certain)).not.toMatch(/sent as a file it keeps/);
  });
});
