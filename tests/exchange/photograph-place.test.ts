/** The place of a picture is nowhere in the database without a yes, whatever becomes of its message. */
import { expect, test } from 'vitest';
import { keepPerson, replySent, waitingReplies, type Store } from '../../src/store/index.js';
import { consented, exchangeWithDialog, messageOf, NOW, text } from '../bench/measures/talking.js';
import { uuid } from '../store/sample.js';
import { openScratch } from '../store/scratch.js';

const picture = () =>
  messageOf('wren', {
    kind: 'photo',
    sha256: 'a'.repeat(64),
    type: 'image/jpeg',
    takenAt: null,
    place: { latitude: 43.60001, longitude: -90.70002, uncertaintyMetres: 8 },
  });

/** Sends what waits to be sent. */
function sendAll(store: Store): string[] {
  const said: string[] = [];
  for (;;) {
    const waiting = waitingReplies(store, { survey: picture().survey, channel: 'bench', now: NOW, most: 9 });
    if (waiting.length === 0) return said;
    store.writing((transaction) => {
      for (const { survey, sequence, reply } of waiting) {
        said.push(reply.text);
        replySent(transaction, { survey, sequence }, { handle: null, at: NOW });
      }
    });
  }
}
const all = (store: Store): string =>
  ['inbox', 'outbox', 'threads', 'places', 'watches']
    .map((table) => JSON.stringify(store.prepared(`select * from ${table}`).all()))
    .join('\n');

test.each([false, true])('held before it was taken: %s', async (held) => {
  const store = await openScratch();
  store.writing((transaction) => keepPerson(transaction, consented('wren', uuid(1))));
  const exchange = exchangeWithDialog(store);
  await exchange.receive(text('wren', 'today 2:10 to 2:25 pm'));
  await exchange.receive(picture(), undefined, { held });
  if (held) exchange.receiveWaiting();
  expect(sendAll(store).join()).toContain('Your picture says 43.60001, -90.70002');
  // it waits for an answer in the thread, and is nowhere else
  expect(JSON.stringify(store.prepared('select * from inbox').all())).not.toContain('43.6');
  expect(JSON.stringify(store.prepared('select * from outbox').all())).not.toContain('43.6');
  await exchange.receive(text('wren', 'no'));
  sendAll(store);
  expect(all(store)).not.toMatch(/43\.6000|90\.7000/);
  expect(all(store)).toContain('a'.repeat(64)); // the picture stays
});
