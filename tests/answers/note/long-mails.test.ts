/** Long mails: the watch among other years, plans, questions, gardens and work days. The mails are invented. */
import { expect, test } from 'vitest';
import { readNote, type Note } from '../../../src/answers/note.js';
import { demo } from '../../demo-survey.js';

const told = (text: string): Note => readNote(text, demo).value ?? {};

const WATCH = `I started at 10:20 and stopped at 10:35 this morning. It was 63 F and overcast with a light breeze.
The patch was 10 by 6 feet. Phlox, 40 flowers. Two common eastern queens on the phlox.`;

const around = (before: string, behind: string): string =>
  `Hi Marta,\n\n${before}\n\n${WATCH}\n\n${behind}\n\nWarm regards,\nAgnes`;

const plain = told(around('I hope you are well.', 'That is all for today.'));

test('the watch itself is read whole', () => {
  expect(plain).toMatchObject({
    date: '2026-05-06',
    times: { start: '10:20', end: '10:35' },
    temperature: { celsius: 17.2 },
    sky: { cloud: 'overcast', rain: false },
    wind: { beaufort: 2 },
    plants: [{ name: 'Phlox', flowers: { value: 40 } }],
    tally: [{ count: 2, bee: 'Bombus impatiens', plant: 'Phlox' }],
  });
});

test.each([
  // questions to us
  ['I hope you are well.', 'Do you want me to go again on Saturday the 9th, or is one enough?'],
  ['I hope you are well.', 'One question: should I count the dandelions under the plum too, there are about 90?'],
  // other years, and what is to come
  ['I hope you are well.', 'Last spring I saw eleven bimaculatus on the same bed, so the cold has put them back.'],
  ['We had frost twice last week, and the tulips only came on over the weekend.', 'That is all.'],
  ['I hope you are well.', 'We will try for the rusty patched next weekend, it is a 40 min drive.'],
  ['I hope you are well.', 'My grandson graduates on the 23rd. Tomorrow I will look at the redbud.'],
  // above the watch: gardens, sales and work days
  ['The hostas are up 4 inches, the deer had all thirty tulips, and 6 tomato seedlings died.', 'That is all.'],
  ['We pulled 17 bags of garlic mustard with 12 people on Thursday, down from 29.', 'That is all.'],
  // other days and times than those of the watch
  ['We had birthday cake on Saturday and I got up at 7.', 'The mail comes at 2:10 pm here.'],
  ['I hope you are well.', 'The paper says it warms up by Friday, so the lilacs get their turn then.'],
  [
    'I hope you are well.',
    'The chickens got into the lettuce while I was sitting there, an expensive fifteen minutes.',
  ],
  ['I hope you are well.', 'Thank you for your patience with my questions.'],
  ['A front came through with a 22 mph wind and it was 41 F at the airport.', 'That is all.'],
  // stories without bees
  ['It is the two loud ones from training again.', 'That is all.'],
  ['I hope you are well.', 'We are the two loud ones from training.'],
  ['I hope you are well.', 'I counted one branch and there are 14. I was a nurse for 41 years.'],
  ['I hope you are well.', 'We also had two honey bees, 3 ticks and a cabbage white.'],
])('"%s" and "%s" are no part of the watch', (before, behind) => {
  expect(told(around(before, behind))).toEqual(plain);
});

test('what the mail says of its watch behind a story still counts', () => {
  const more = told(around('I hope you are well.', 'One of the common easterns had pollen. Nothing on the violets.'));
  expect(more.tally).toMatchObject([
    { count: 2, bee: 'Bombus impatiens', plant: 'Phlox', withPollen: 1 },
    { count: 0, bee: null, plant: 'Viola' },
  ]);
});

test.each([
  ['2 common eastern on the phlox, will go again tomorrow.', 2],
  ['Last year none, but this year 2 common eastern on the phlox.', 2],
])('"%s" tells its queens', (sentence, count) => {
  const text = around('I hope you are well.', 'That is all.').replace(
    'Two common eastern queens on the phlox.',
    sentence,
  );
  expect(told(text)).toMatchObject({ date: '2026-05-06', tally: [{ count, bee: 'Bombus impatiens', plant: 'Phlox' }] });
});

test.each(['Phlox 40, violets 30.', 'The violets by the old stone wall had 30 flowers open when I came out.'])(
  '"%s" above the times tells what was watched',
  (above) => {
    const { plants } = told(around(above, 'That is all.'));
    expect(plants).toContainEqual({ name: 'Viola', flowers: { value: 30, low: 30, high: 30, about: false } });
  },
);

test('a sentence that tells the times is of the watch, whatever else it says', () => {
  const text = around('I hope you are well.', 'That is all.').replace(
    'I started at 10:20 and stopped at 10:35 this morning.',
    'Next time I will sit down earlier, this time it was from 10:20 to 10:35 am.',
  );
  expect(told(text).times).toEqual(plain.times);
});

test('a plant told beside another time is still watched', () => {
  const text = around('I hope you are well.', 'That is all.').replace(
    'Phlox, 40 flowers. Two common eastern queens on the phlox.',
    'We lost the maple two weeks ago, so the wild geraniums have gone mad. I counted 40 flowers. 2 common eastern.',
  );
  expect(told(text)).toMatchObject({
    plants: [{ name: 'Geranium maculatum', flowers: { value: 40 } }],
    tally: [{ count: 2, bee: 'Bombus impatiens', plant: 'Geranium maculatum' }],
  });
});

test('in a short note a question takes nothing along', () => {
  expect(told('do you need the size too, it has 40 phlox? 2 imps on it')).toMatchObject({
    plants: [{ name: 'Phlox', flowers: { value: 40 } }],
    tally: [{ count: 2, bee: 'Bombus impatiens' }],
  });
});
