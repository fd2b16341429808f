/** The licence of photographs reaches every watch of its observer, and nobody else's. */
import { expect, test } from 'vitest';
import { keepPerson, keepWatch, lastWatchesOf, personOf } from '../../src/store/index.js';
import { consented, exchangeWithDialog, text } from '../bench/measures/talking.js';
import { sampleWatch, uuid } from '../store/sample.js';
import { openScratch } from '../store/scratch.js';

test('more watches than a step is shown, each changed once', async () => {
  const store = await openScratch();
  const [wren, other] = [consented('wren', uuid(1)), consented('other', uuid(2))];
  const photographs = [
    { sha256: 'a'.repeat(64), type: 'image/jpeg', takenAt: null, queensRow: null, licence: null },
  ] as const;
  store.writing((transaction) => {
    keepPerson(transaction, wren);
    keepPerson(transaction, other);
    for (let number = 1; number <= 26; number += 1) {
      const observer = number === 26 ? other.key : wren.key;
      // the last of hers has no photograph
      keepWatch(transaction, sampleWatch({ number, observer, photographs: number === 25 ? [] : [...photographs] }));
    }
  });
  const of = (observer: string) => lastWatchesOf(store, { survey: wren.survey, observer, most: 100 });
  const before = of(wren.key).map(({ history }) => history.length);
  const exchange = exchangeWithDialog(store);
  for (let time = 1; time <= 2; time += 1)
    expect(await exchange.receive(text('wren', 'my photos: CC BY'))).toMatchObject({ failures: [], replies: [{}] });
  expect(personOf(store, wren)?.photographLicence).toBe('CC-BY-4.0');
  const licences = of(wren.key).map(({ photographs }) => photographs.map(({ licence }) => licence));
  expect(licences).toEqual([[], ...Array.from({ length: 24 }, () => ['CC-BY-4.0'])]);
  expect(of(wren.key).map(({ history }, at) => history.length - (before[at] ?? 0))).toEqual([
    0,
    ...Array.from({ length: 24 }, () => 1),
  ]);
  expect(of(other.key)[0]?.photographs).toEqual(photographs);
});
