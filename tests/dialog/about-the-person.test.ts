/** What people say of themselves: a name, that they give none, that all of theirs is to be deleted. */
import { describe, expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

/** Stored a first watch, and is asked for a name. */
function askedForName(): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH, 'yes');
  expect(conversation.last.asking?.fields).toEqual(['name']);
  return conversation;
}

describe('a name', () => {
  const names: [said: string, name: string][] = [
    ['Wren', 'Wren'],
    ['Mary Beth', 'Mary Beth'],
    ['my name is Will', 'Will'],
    ['Beverly but everyone says Bev', 'Bev'],
    ['Elizabeth, but please call me Beth.', 'Beth'],
    ['just Bev is fine', 'Bev'],
    ['Robin', 'Robin'],
    ["It's Philippa, with one l and two p's", 'Philippa'],
    ['Mrs. Ellen Thorvald', 'Mrs. Ellen Thorvald'],
    ['My name is Orville Hendricksen, but Orv is fine', 'Orv'],
    ['just put Kath please', 'Kath'],
    ["I'm Priya 😊", 'Priya'],
    ['Hello, you may use Winifred. Thank you.', 'Winifred'],
    ['Mike no wait put Michael', 'Michael'],
    ['Pat (short for Patricia)', 'Pat'],
    ["name's Rosalind", 'Rosalind'],
    ['first name Anders', 'Anders'],
    ['My name is Skip', 'Skip'],
    ['Carol B.', 'Carol B'],
    ['My name is Noah, no need for the rest', 'Noah'],
    ['Ruth or Walt', 'Ruth or Walt'],
  ];
  test.each(names)('"%s" gives %s', (said, name) => {
    const conversation = askedForName();
    conversation.say(said);
    expect(conversation.person?.name).toBe(name);
  });

  const mails: [said: string, mail: string | null][] = [
    ['marlene at gmail dot com', 'marlene@gmail.com'],
    ['Tess (at) mail [dot] example', 'Tess@mail.example'],
    ['wren@kestrelfen.example', 'wren@kestrelfen.example'],
    ['tess at … no wait, skip', null],
    ['kath@example.com, sorry kathy@example.com', 'kathy@example.com'],
    ['Rosalind Meeks <rmeeks@example.org>', 'rmeeks@example.org'],
    ['no receipt needed', null],
    ["I don't have email", null],
    ["nah I'm good", null],
  ];
  test.each(mails)('"%s" is the address %s', (said, mail) => {
    const conversation = askedForName();
    conversation.all('Wren', said);
    expect(conversation.person?.mail).toBe(mail);
    expect(conversation.last.asking?.fields).toEqual(['confirm']);
  });

  const none = [
    'do I have to',
    'who wants to know',
    "I'd rather not say",
    'thanks, bye',
    'why do you need it',
    'same as last year',
    'yes',
  ];
  test.each(none)('"%s" is none', (said) => {
    const conversation = askedForName();
    conversation.say(said);
    expect(conversation.person?.name).toBeNull();
  });

  test('of two addresses neither is taken by guess', () => {
    const conversation = askedForName();
    conversation.all('Wren', 'wren@kestrelfen.example or finn@kestrelfen.example');
    expect(conversation.person?.mail).toBeNull();
    expect(conversation.last.asking?.fields).toEqual(['mail']);
  });

  const declined = [
    "no thanks I won't give my name",
    'no thank you',
    "I'd rather not",
    'none',
    'rather stay anonymous',
  ];
  test.each(declined)('"%s" is not asked again', (said) => {
    const conversation = askedForName();
    conversation.say(said);
    expect(conversation.person?.name).toBeNull();
    expect(conversation.person?.declined).toContain('name');
  });
});

test('"no, I would rather you didn\'t" keeps a name back', () => {
  const conversation = askedForName();
  conversation.all('Wren', 'skip');
  conversation.say("No, I would rather you didn't.");
  expect(conversation.person?.nameShown).toBe(false);
  expect(conversation.last.asking).toBeNull();
  expect(conversation.thread.report).toBeNull();
});

const deletions = [
  'delete everything you have about me',
  'please delete all my data',
  'remove me from this',
  'delete everything',
  'I want to be forgotten',
];
test.each(deletions)('"%s" is granted after a second yes', (said) => {
  const conversation = askedForName();
  conversation.all('skip', 'skip', said);
  expect(conversation.rights).toEqual([]);
  conversation.say('yes');
  expect(conversation.rights).toEqual(['forget-person']);
});

const places: [said: string, isPrivate: boolean | undefined][] = [
  ['is a public path a garden?', undefined],
  ['is my back yard private?', undefined],
  ['it belongs to the city', false],
  ['it is my back yard', true],
  ["It's my own yard", true],
  ['private', true],
  ["my neighbor's garden, she said it's ok", true],
  ['not private, anyone can walk there', false],
  ["It's the school garden, not a private one", false],
  ['state forest land', false],
  ["not anyone's yard, just a ditch along the highway", false],
  ["half and half, bed's in my yard but I watched the park side too", undefined],
];
test.each(places)('whether a place is private, "%s" settles as %s', (said, isPrivate) => {
  const conversation = new Conversation().agreed();
  conversation.all(WATCH[0], 'behind the old mill');
  expect(conversation.last.asking?.fields).toContain('private');
  conversation.say(said);
  expect(conversation.thread.report?.fields['private']?.value).toBe(isPrivate);
  expect(conversation.thread.report?.fields['place']?.value).toMatchObject({ words: 'behind the old mill' });
  expect(conversation.thread.report?.fields['sky']).toBeUndefined();
});
