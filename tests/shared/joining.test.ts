/** What is kept of a person whose threads are joined: of two answers the one that publishes less. */
import { expect, test } from 'vitest';
import { joinedPerson } from '../../shared/joining.js';
import type { Person } from '../../shared/person.js';

const person = (more: Partial<Person>): Person => ({
  survey: 'kestrel-fen',
  key: 'wren',
  channel: 'terminal',
  person: 'wren',
  name: null,
  mail: null,
  consent: null,
  declined: [],
  photographLicence: null,
  nameShown: false,
  reminders: false,
  ...more,
});
const yes = { nameShown: true, declined: ['name-shown'] };
const no = { nameShown: false, declined: ['name-shown'] };

const table: [what: string, own: Partial<Person>, other: Partial<Person>, shown: boolean][] = [
  ['nobody was asked', { name: 'Wren' }, { name: 'Wren' }, false],
  ['yes in the other thread, not asked in this', { name: 'Wren' }, { name: 'Wren', ...yes }, true],
  ['yes in this thread, not asked in the other', { name: 'Wren', ...yes }, { name: 'Wren' }, true],
  ['yes in this thread to a name that no longer stands', { name: 'Wren', ...yes }, { name: 'Wren Fen' }, false],
  ['yes in this thread, no name in the other', { name: 'Wren', ...yes }, {}, true],
  ['yes and no', { name: 'Wren', ...yes }, { name: 'Wren', ...no }, false],
  ['no and yes', { name: 'Wren', ...no }, { name: 'Wren', ...yes }, false],
  ['yes twice', { name: 'Wren', ...yes }, { name: 'Wren', ...yes }, true],
];
test.each(table)('the name, %s', (_what, own, other, shown) => {
  expect(joinedPerson(person(own), person(other)).nameShown).toBe(shown);
});

test('the last reminder is the later one of either thread', () => {
  const [early, late] = [{ remindedOn: '2026-05-02' }, { remindedOn: '2026-05-09' }];
  for (const [own, other] of [
    [early, late],
    [late, early],
    [late, {}],
    [{}, late],
  ] as const)
    expect(joinedPerson(person(own), person(other)).remindedOn).toBe('2026-05-09');
  expect(joinedPerson(person({}), person({}))).not.toHaveProperty('remindedOn');
});
