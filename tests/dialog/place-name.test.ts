/** A place sent as a position gets a name, so that it can be offered: a venue's own, else asked for once. */
import { describe, expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

const HERE = { kind: 'place', latitude: 43.9001, longitude: -90.1002, uncertaintyMetres: 8 } as const;
const said = ({ last }: Conversation): string => last.replies.join('\n');

/** A watch at a position, stored. */
function stored(conversation: Conversation, where: Parameters<Conversation['send']>[0]): Conversation {
  conversation.say(`today ${conversation.watches.length + 1}:10 to ${conversation.watches.length + 1}:25 pm`);
  conversation.send(where);
  if (conversation.last.asking?.fields.includes('private') === true) conversation.say('no');
  conversation.all(...WATCH.slice(2), 'yes');
  return conversation;
}

describe('a venue', () => {
  test('is called by its title, and offered next time', () => {
    const conversation = stored(new Conversation().agreed(), { ...HERE, words: 'Marlgate Pond' });
    expect(conversation.watch.place).toMatchObject({ words: 'Marlgate Pond', latitude: 43.9001 });
    expect(conversation.last.asking?.fields).toEqual(['name']);
    conversation.all('skip', 'skip', 'today 4:10 to 4:25 pm');
    expect(conversation.sent.at(-1)?.choices).toContain('Marlgate Pond');
  });
});

describe('a position without words', () => {
  test('is asked its name once, and known by it from then on', () => {
    const conversation = stored(new Conversation().agreed(), HERE);
    expect(said(conversation)).toMatch(/What do you call that place\?/);
    conversation.say('Willow corner');
    expect(said(conversation)).toMatch(/“Willow corner” it is/);
    expect(conversation.last.asking?.fields).toEqual(['name']);
    conversation.all('skip', 'skip', 'today 3:10 to 3:25 pm');
    expect(conversation.sent.at(-1)?.choices).toEqual(['Willow corner']);
    conversation.press('Willow corner');
    expect(conversation.last.asking?.fields).toEqual(['temperature', 'sky', 'wind']);
    conversation.all(...WATCH.slice(2), 'yes');
    expect(conversation.watch.place).toMatchObject({ words: 'Willow corner', latitude: 43.9001, private: false });
    // the same place sent again is that place: neither its name nor whether it is private is asked
    stored(conversation, { ...HERE, latitude: 43.90015 });
    expect(conversation.watch.place).toMatchObject({ words: 'Willow corner', latitude: 43.90015 });
    expect(said(conversation)).not.toMatch(/What do you call/);
  });

  test('"skip" leaves it so, and what is no name begins a watch', () => {
    const skipped = stored(new Conversation().agreed(), HERE);
    skipped.press('skip');
    expect(skipped.last.asking?.fields).toEqual(['name']);
    expect(skipped.places).toMatchObject([{ words: '' }]);
    const other = stored(new Conversation().agreed(), HERE);
    other.say('today 4:10 to 4:25 pm, 71 F, sunny');
    expect(other.last.asking?.fields).toEqual(['place']);
    expect(other.places.map(({ words }) => words)).toEqual(['']);
  });

  test('a site of the survey needs none', () => {
    const { latitude, longitude, name } = new Conversation().survey.settings.sites[0]!;
    const conversation = stored(new Conversation().agreed(), { ...HERE, latitude, longitude });
    expect(conversation.watch.place?.words).toBe(name);
    expect(conversation.last.asking?.fields).toEqual(['name']);
  });
});
