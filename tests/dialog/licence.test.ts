/** Whether photographs may be published is asked once, kept with the person, set on every photograph, and can change. */
import { describe, expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

const photo = (letter: string) => ({
  kind: 'photo' as const,
  sha256: letter.repeat(64),
  type: 'image/jpeg',
  takenAt: null,
});
const asked = ({ last }: Conversation) => last.asking?.fields;
const licences = ({ watches }: Conversation) => watches.map(({ photographs }) => photographs.map((one) => one.licence));

/** Stored a first watch with a photograph, and gave no name and no mail. */
function photographed(): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH);
  conversation.send(photo('a'));
  conversation.all('yes', 'skip', 'skip');
  return conversation;
}

describe('it is asked', () => {
  test('after the first watch with a photograph is stored, behind name and mail, with four answers', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH);
    conversation.send(photo('a'));
    expect(asked(conversation)).toEqual(['confirm']);
    conversation.say('yes');
    expect(asked(conversation)).toEqual(['name']);
    conversation.say('Wren');
    expect(asked(conversation)).toEqual(['mail']);
    conversation.say('skip');
    expect(asked(conversation)).toEqual(['photo']);
    expect(conversation.last.replies[0]).toMatch(/CC BY 4\.0.*CC BY-NC 4\.0.*CC0.*no/);
    expect(licences(conversation)).toEqual([[null]]);
  });

  test('after a photograph that joined a stored watch', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH, 'yes', 'skip', 'skip');
    expect(asked(conversation)).toBeUndefined();
    conversation.send(photo('a'));
    conversation.say('yes');
    expect(asked(conversation)).toEqual(['photo']);
    conversation.say('CC0');
    expect(licences(conversation)).toEqual([['CC0-1.0']]);
  });

  test('never of who sent no photograph', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH, 'yes', 'skip', 'skip');
    expect(asked(conversation)).toBeUndefined();
    expect(conversation.person?.photographLicence).toBeNull();
    expect(conversation.person?.declined).not.toContain('licence');
  });

  test('once, and a question that was passed over publishes nothing', () => {
    const conversation = photographed();
    conversation.all(...WATCH);
    conversation.send(photo('b'));
    conversation.say('yes');
    expect(asked(conversation)).toBeUndefined();
    expect(conversation.watches).toHaveLength(2);
    expect(licences(conversation)).toEqual([[null], [null]]);
  });
});

describe('the answer', () => {
  const answers: [said: string, licence: string | null, reply: RegExp][] = [
    ['CC BY 4.0', 'CC-BY-4.0', /may be published under CC BY 4\.0/],
    ['cc by-nc', 'CC-BY-NC-4.0', /may be published under CC BY-NC 4\.0/],
    ['CC0', 'CC0-1.0', /may be published under CC0/],
    ['no', null, /are not published/],
    ['skip', null, /are not published/],
  ];
  test.each(answers)('"%s" is kept and set: %s', (said, licence, reply) => {
    const conversation = photographed();
    expect(conversation.say(said).replies[0]).toMatch(reply);
    expect(asked(conversation)).toBeUndefined();
    expect(conversation.person?.photographLicence).toBe(licence);
    expect(licences(conversation)).toEqual([[licence]]);
  });

  test.each(['yes', 'CC BY-SA'])('"%s" names no licence of ours, and is asked back', (said) => {
    const conversation = photographed();
    expect(conversation.say(said).replies[0]).toMatch(/CC BY, CC BY-NC, CC0 or no/);
    expect(asked(conversation)).toEqual(['photo']);
    expect(licences(conversation)).toEqual([[null]]);
  });

  test('each button is understood', () => {
    const conversation = photographed();
    for (const choice of ['choice-cc-by', 'choice-cc-by-nc', 'choice-cc0'] as const)
      conversation.say(`my photos: ${conversation.survey.wording.phrases[choice]}`);
    expect(conversation.watch.history.map(({ to }) => (to as { licence: string }[])[0]?.licence)).toEqual([
      'CC-BY-4.0',
      'CC-BY-NC-4.0',
      'CC0-1.0',
    ]);
  });

  test('holds for later photographs', () => {
    const conversation = photographed();
    conversation.all('CC BY', ...WATCH);
    conversation.send(photo('b'));
    conversation.say('yes');
    expect(licences(conversation)).toEqual([['CC-BY-4.0'], ['CC-BY-4.0']]);
  });
});

describe('plain words change it later', () => {
  test('both ways, for every photograph, with the change in the history of the watch', () => {
    const conversation = photographed();
    conversation.all('CC BY', 'do not publish my photos');
    expect(conversation.last.replies[0]).toMatch(/are not published/);
    expect(licences(conversation)).toEqual([[null]]);
    conversation.say('my photos: CC BY-NC');
    expect(licences(conversation)).toEqual([['CC-BY-NC-4.0']]);
    expect(conversation.watch.history.map(({ path, role, by }) => [path, role, by])).toEqual(
      Array.from({ length: 3 }, () => ['/photographs', 'observer', conversation.person?.key]),
    );
  });

  test('in the middle of a report, which goes on where it was', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2));
    const before = asked(conversation);
    expect(conversation.say('my photos: CC0').replies[0]).toMatch(/under CC0/);
    expect(asked(conversation)).toEqual(before);
    conversation.all(...WATCH.slice(2));
    conversation.send(photo('a'));
    conversation.all('yes', 'skip', 'skip');
    // told already, so not asked
    expect(asked(conversation)).toBeUndefined();
    expect(licences(conversation)).toEqual([['CC0-1.0']]);
  });

  test('of a watch that is open for mending', () => {
    const conversation = photographed();
    conversation.all('CC BY', 'fix my last watch', 'do not publish my photos', 'temperature 68 F', 'yes');
    expect(licences(conversation)).toEqual([[null]]);
    expect(conversation.watch.history.map(({ path }) => path)).toEqual([
      '/photographs',
      '/photographs',
      '/temperature',
    ]);
  });

  test('while the clock of a watch runs, and nothing is counted', () => {
    const conversation = photographed();
    conversation.all('CC BY', 'start', '2 imp on dandelion', 'do not publish my photos');
    expect(conversation.last.replies[0]).toMatch(/are not published/);
    expect(conversation.thread.report?.live).toMatchObject({ unread: [], entries: [[{ count: 2 }]] });
  });

  test('asked how, says how', () => {
    expect(photographed().say('which licence?').replies[0]).toMatch(/“my photos: CC BY”/);
  });
});

test('words that are no answer and tell of no watch do not do away with the question', () => {
  const conversation = photographed();
  expect(conversation.say('what does that mean').replies).toEqual([
    'I can take CC BY, CC BY-NC, CC0 or no. For example: “my photos: CC BY” or “do not publish my photos”.',
  ]);
  expect(conversation.thread.report).toBeNull();
  conversation.say('CC0');
  expect(licences(conversation)).toEqual([['CC0-1.0']]);
});
