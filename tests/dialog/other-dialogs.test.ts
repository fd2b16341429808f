/** The conversation follows its dialog file: fields of another survey, another order, other words. */
import { expect, test } from 'vitest';
import { dialogSchema } from '../../shared/dialog.js';
import type { Survey } from '../../shared/survey.js';
import { survey } from '../demo-survey.js';
import { Conversation } from './converse.js';

/** An invented survey of nest searching: fields that the record does not know. */
const nestSearch: Survey = {
  ...survey,
  dialog: dialogSchema.parse({
    name: 'nest-search',
    version: 3,
    fields: {
      date: { reader: 'date' },
      times: { reader: 'times' },
      burrows: { reader: 'count' },
      'soil-temperature': { reader: 'temperature', skippable: true },
      burned: { reader: 'yes-no' },
      'burned-when': { reader: 'date', when: { burned: true } },
      ground: { reader: 'words' },
    },
    questions: [
      { question: 'when', fields: ['date', 'times'] },
      { question: 'nests', fields: ['burrows'] },
      { question: 'soil', fields: ['soil-temperature'] },
      { question: 'fire', fields: ['burned'] },
      { question: 'fire-day', fields: ['burned-when'] },
      { question: 'ground', fields: ['ground'] },
    ],
  }),
  wording: {
    ...survey.wording,
    questions: {
      when: { ask: 'When did you search?', example: 'today 2 to 2:15 pm' },
      nests: { ask: 'How many burrows did you find?', example: '4' },
      soil: { ask: 'How warm was the soil?', example: '60 F' },
      fire: { ask: 'Was the ground burned this year?', example: 'no' },
      'fire-day': { ask: 'When was it burned?', example: 'April 2' },
      ground: { ask: 'What is the ground like?', example: 'sandy' },
    },
    fields: {
      ...survey.wording.fields,
      burrows: { label: 'Burrows', ask: 'How many burrows?', example: '4' },
      'soil-temperature': { label: 'Soil', ask: 'How warm was the soil?', example: '60 F' },
      burned: { label: 'Burned', ask: 'Was it burned?', example: 'no' },
      'burned-when': { label: 'Burned on', ask: 'When was it burned?', example: 'April 2' },
      ground: { label: 'Ground', ask: 'What is the ground like?', example: 'sandy' },
    },
  },
};

test('a dialog of invented fields runs whole, and they land in "more"', () => {
  const conversation = new Conversation(nestSearch).agreed();
  const asked: (string | undefined)[] = [];
  for (const text of ['today 2 to 2:15 pm', '4', '60 F', 'yes', 'April 2', 'sandy with moss', 'yes']) {
    asked.push(conversation.last.asking?.fields.join('+'));
    conversation.say(text);
  }
  expect(asked).toEqual(['date+times', 'burrows', 'soil-temperature', 'burned', 'burned-when', 'ground', 'confirm']);
  expect(conversation.watch).toMatchObject({
    dialog: 'nest-search',
    dialogVersion: 3,
    status: 'confirmed',
    plants: [],
    total: 0,
    more: {
      burrows: { value: 4, low: 4, high: 4, about: false },
      'soil-temperature': { celsius: 15.6 },
      burned: true,
      'burned-when': '2026-04-02',
      ground: 'sandy with moss',
    },
  });
});

test('a condition that does not hold leaves its question out', () => {
  const conversation = new Conversation(nestSearch).agreed();
  conversation.all('today 2 to 2:15 pm', '4', 'skip', 'no');
  expect(conversation.last.asking?.fields).toEqual(['ground']);
});

test('a question is reworded, reordered and dropped by data alone', () => {
  const { questions } = survey.dialog;
  const weatherFirst = [
    ...questions.filter(({ question }) => question === 'weather'),
    ...questions.filter(({ question }) => question !== 'weather' && question !== 'patch'),
  ];
  const weather = { ask: 'Was it warm, bright and still?', example: '70 F, sunny, calm' };
  const changed: Survey = {
    ...survey,
    dialog: { ...survey.dialog, questions: weatherFirst },
    wording: { ...survey.wording, questions: { ...survey.wording.questions, weather } },
  };
  const conversation = new Conversation(changed).agreed();
  expect(conversation.last.replies[0]).toContain('Was it warm, bright and still?');
  conversation.all('70 F, sunny, calm', 'today 2 to 2:15 pm', 'Fen Boardwalk');
  expect(conversation.last.asking?.fields).toEqual(['plants']);
  conversation.all('bluebells 40', 'none', 'yes');
  expect(conversation.watch).toMatchObject({ patch: null, habitat: null, temperature: { celsius: 21.1 } });
});

test('a report begun with an older dialog is brought up to date, and its observer is told', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2 to 2:15 pm', 'Fen Boardwalk', '70 F, sunny, calm');
  const { sky: _sky, ...fields } = survey.dialog.fields;
  const questions = survey.dialog.questions.map((question) => ({
    ...question,
    fields: question.fields.filter((field) => field !== 'sky'),
  }));
  const later = new Conversation({
    ...survey,
    dialog: { ...survey.dialog, version: survey.dialog.version + 1, fields, questions },
  });
  later.thread = conversation.thread;
  later.person = conversation.person;
  later.say('12 by 8 feet');
  expect(later.last.replies[0]).toMatch(/questions have changed/);
  expect(Object.keys(later.thread.report?.fields ?? {})).toEqual([
    'date',
    'times',
    'place',
    'temperature',
    'wind',
    'patch',
  ]);
  expect(later.last.asking?.fields).toEqual(['plants']);
});
