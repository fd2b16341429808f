import { expect, test } from 'vitest';
import { ownText } from '../../../src/answers/note/mail-text.js';
import { demo } from '../../demo-survey.js';

/** What is left, its lines trimmed and joined by " / ". */
const left = (text: string): string =>
  ownText(text, demo.words)
    .text.split('\n')
    .map((line) => line.trim().replace(/ +/g, ' '))
    .filter((line) => line !== '')
    .join(' / ');

const table: [typed: string, expected: string][] = [
  ['two imps on the plum', 'two imps on the plum'],
  ['Hi, two imps on the plum', 'two imps on the plum'],
  ['Hi there! Two imps.', 'Two imps.'],
  ['Hello Ines, two imps', 'two imps'],
  ['Dear Dr. Ines Holm:\n\ntwo imps', 'two imps'],
  ['hi yesterday 3 to 3:15', 'yesterday 3 to 3:15'], // no comma, no capital: not a name
  ['Good morning! This morning at 9', 'This morning at 9'],
  ['Good evening,\nsat this evening', 'sat this evening'],
  ['Hi team, hope all is well.\nTemp 64 F', 'hope all is well. / Temp 64 F'],
  // signatures
  ['two imps\n\nBest,\nMaren Tollefson\nDept. of Botany, Room 140', 'two imps'],
  ['two imps\nThanks!\nMaren', 'two imps'],
  ['Thanks for the reminder! two imps', 'Thanks for the reminder! two imps'],
  ['Thanks!\n\ntwo imps', 'two imps'], // a thank-you at the top
  ['Hello,\nsorry this is late.\nThanks,\n2 imps on the plum', 'sorry this is late. / Thanks, / 2 imps on the plum'],
  ['no bees. Yours truly, Odile P. Brandvold (age 79)', 'no bees.'],
  ['no bees. Regards, Odile', 'no bees.'],
  ['> Bees?\nnone\n\nR', 'none'], // an initial behind the last answer
  ['> Bees?\nnone\n> Sky?\n\nClear', 'none / Clear'], // an answer, though it looks like a name
  ['no bees. thanks, Odile', 'no bees.'],
  ['I did my best\nand saw 3 imps', 'I did my best / and saw 3 imps'],
  ['two imps\n-- \nMaren Tollefson\n(608) 555-0142', 'two imps'],
  ['two imps\n--\nMaren', 'two imps'],
  ['two imps\n\n- Rose', 'two imps'],
  ['two imps. -Rose', 'two imps.'],
  ['two imps\n\nViolet', 'two imps'],
  ['redbud 40\nViolet', 'redbud 40 / Violet'], // a list of plants goes on
  ['two imps\nSent from my iPhone', 'two imps'],
  ['two imps\nCheers,\nMaren\nP.S. it was 68 F', 'two imps / it was 68 F'],
  ['call me at 608-555-0142, I am 86 years old, age 86', 'call me at , I am ,'],
  ['Watch no. 2, as promised. Survey #4. my third watch', ', as promised. .'],
  // quoted and forwarded
  ['two imps\n> how many queens?\n> 12 of them?', 'two imps'],
  ['two imps\n\nOn Sun, Apr 26, 2026 at 6:00 PM Helper <a@b.example> wrote:\n> 55 F?', 'two imps'],
  ['two imps\n\nOn Sun, Apr 26, 2026 at 6:00 PM Helper\n<a@b.example> wrote:\n\nLast time 55 F', 'two imps'],
  ['two imps\n\n-----Original Message-----\nFrom: Helper\nSent: Sunday\n\n55 F', 'two imps'],
  ['two imps\n\n---------- Forwarded message ---------\nFrom: Helper\n55 F', 'two imps'],
  ['two imps\n\nFrom: Helper\nSent: Sunday\nTo: Maren\nSubject: 55 F', 'two imps'],
  ['two imps\n________________________________\nFrom: Helper\n55 F', 'two imps'],
  ['From: Maren\nSubject: my watch\n\ntwo imps', 'two imps'],
  ['Date: April 20\nStart: 2 pm', 'Date: April 20 / Start: 2 pm'], // a form, not a mail's head
  ['> How warm was it?\n68\n> Wind?\ncalm', '68 / calm'],
  // numbered lines
  ['1. April 27\n2. 3 to 3:15\n3. 66 F', 'April 27 / 3 to 3:15 / 66 F'],
  ['2. imps', '2. imps'],
  ['2 imps\n3 bimacs', '2 imps / 3 bimacs'],
];
test.each(table)('of "%s" stays "%s"', (typed, expected) => {
  expect(left(typed)).toBe(expected);
});

test('positions and line ends stay', () => {
  const typed = 'Hi Ines,\r\ntwo imps\r\n\r\nBest,\r\nMaren';
  const { text } = ownText(typed, demo.words);
  expect(text).toHaveLength(typed.length);
  expect(text.indexOf('two imps')).toBe(typed.indexOf('two imps'));
  expect(text.split('\n')).toHaveLength(typed.split('\n').length);
});

test('an answer under a quoted question knows it', () => {
  const typed = '> How warm was it?\n> And the wind?\n68, calm\n> Queens?\nnone';
  expect(ownText(typed, demo.words).parts.map(({ span, question }) => [typed.slice(...span), question])).toEqual([
    ['68, calm', 'how warm was it?\nand the wind?'],
    ['none', 'queens?'],
  ]);
});
