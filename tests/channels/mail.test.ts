/**
 * Mail as it goes out. Read back by `mailparser`, and taken by `smtp-server`: programs that are not ours.
 */
import { mkdtempSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { simpleParser, type AddressObject } from 'mailparser';
import { afterEach, expect, test } from 'vitest';
import type { Receipt } from '../../shared/receipt.js';
import type { SurveySettings } from '../../shared/survey.js';
import { mailTo } from '../../src/channels/mail/index.js';
import { SendNever, type Outgoing } from '../../src/exchange/index.js';
import { survey } from '../demo-survey.js';
import { mailServer, type Behaviour, type MailServer } from '../servers/mail-server.js';

const receipt: Receipt = {
  locale: 'en-US',
  subject: 'Watch 7 (Tue, May 5) is stored: Kestrel Fen Spring Queen Survey',
  opening: ['Hello Wren,', 'Your watch is stored.'],
  lines: [
    { label: 'Date', value: 'Tue, May 5' },
    { label: 'Queens', value: '2 two-spotted on bluebells' },
  ],
  closing: ['Thank you.'],
};
const ID = '0190a3b2-0000-7000-8000-000000000007';

const outgoing = (more: Partial<Receipt> = {}, person = 'wren@kestrelfen.example'): Outgoing => ({
  survey: 'kestrel-fen',
  channel: 'mail',
  person,
  id: ID,
  answers: 'm1',
  reply: { text: '', choices: [], silent: false, report: null, revision: 0, receipt: { ...receipt, ...more } },
  handle: null,
});

/** Writes one mail into a folder and reads it back. */
async function written(mail: Outgoing, settings = survey.settings) {
  const folder = join(mkdtempSync(join(tmpdir(), 'queenpost-')), 'mail');
  await mailTo({ settings, folder, password: undefined })(mail);
  const path = join(folder, `${ID}.eml`);
  return { folder, path, bytes: readFileSync(path, 'utf8'), mail: await simpleParser(readFileSync(path)) };
}

const addresses = (field: AddressObject | AddressObject[] | undefined): string[] =>
  [field ?? []].flat().flatMap(({ value }) => value.map(({ name, address }) => `${name} <${address}>`));

test('without a server a mail is a file that only its owner can read', async () => {
  const { folder, path, bytes, mail } = await written(outgoing());
  expect(statSync(path).mode & 0o777).toBe(0o600);
  expect(statSync(folder).mode & 0o777).toBe(0o700);
  expect(bytes.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/); // RFC 5322: lines end with CRLF and nothing else
  expect(addresses(mail.from)).toEqual(['Kestrel Fen Spring Queen Survey <queenpost@kestrelfen.example>']);
  expect(addresses(mail.to)).toEqual([' <wren@kestrelfen.example>']);
  expect(addresses(mail.replyTo)).toEqual(['Ines <coordinator@kestrelfen.example>']);
  expect(mail.messageId).toBe(`<${ID}@kestrelfen.example>`);
  expect(mail.headers.get('auto-submitted')).toBe('auto-generated');
  expect(mail.subject).toBe(receipt.subject);
  expect(mail.text).toBe(
    'Hello Wren,\n\nYour watch is stored.\n\n  1. Date: Tue, May 5\n  2. Queens: 2 two-spotted on bluebells\n\nThank you.\n',
  );
  expect(mail.html).toContain('<p>Your watch is stored.</p>');
  expect(mail.attachments).toEqual([]);
});

test('a second try writes the same file once', async () => {
  const { folder, bytes } = await written(outgoing());
  await mailTo({ settings: survey.settings, folder, password: undefined })(outgoing());
  expect(readdirSync(folder)).toEqual([`${ID}.eml`]);
  expect(readFileSync(join(folder, `${ID}.eml`), 'utf8')).toBe(bytes);
});

test('a survey without mail settings sends from the coordinator', async () => {
  const { mail: _mail, ...settings } = survey.settings;
  const { mail } = await written(outgoing(), settings);
  expect(addresses(mail.from)).toEqual(['Kestrel Fen Spring Queen Survey <coordinator@kestrelfen.example>']);
});

test('words of the watch stay words', async () => {
  const value = '<script>alert(1)</script> & "phlox" \u202eback\u202c \u{1F33C}';
  const { mail } = await written(outgoing({ lines: [{ label: 'Remark <b>', value }] }));
  expect(mail.html).toContain('&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;phlox&quot;');
  expect(mail.html).not.toMatch(/<script|<b>|http/);
  expect(mail.text).toContain(`  1. Remark <b>: ${value}\n`);
});

test('no word can become a header, and no address a list of addresses', async () => {
  const { bytes, mail } = await written(
    outgoing({ subject: 'Watch 7\r\nBcc: eve@kestrelfen.example' }, 'wren@kestrelfen.example'),
  );
  expect(bytes.split('\r\n\r\n')[0]).not.toMatch(/^Bcc:/m);
  expect(mail.bcc).toBeUndefined();
  const two = await written(outgoing({}, 'wren@kestrelfen.example, eve@kestrelfen.example')).catch(() => null);
  expect(addresses(two?.mail.to).length).toBeLessThan(2);
});

const servers: MailServer[] = [];
afterEach(async () => {
  await Promise.all(servers.splice(0).map((server) => server.close()));
});

type Server = NonNullable<NonNullable<SurveySettings['mail']>['server']>;

/** A server that behaves so, and what sends to it. */
async function sendingTo(behaviour: Behaviour, more: Partial<Server> = {}, password?: string) {
  const server = await mailServer(behaviour);
  servers.push(server);
  const settings: SurveySettings = {
    ...survey.settings,
    mail: {
      from: 'queenpost@kestrelfen.example',
      server: { host: '127.0.0.1', port: server.port, security: 'none', ...more },
    },
  };
  return { server, send: mailTo({ settings, folder: '/nowhere', password }) };
}

test('with a server a mail goes there, once, and to one person', async () => {
  const { server, send } = await sendingTo({});
  await send(outgoing());
  expect(server.recipients).toEqual(['wren@kestrelfen.example']);
  expect(server.taken).toHaveLength(1);
  const mail = await simpleParser(server.taken[0]!);
  expect(mail.messageId).toBe(`<${ID}@kestrelfen.example>`);
  expect(mail.subject).toBe(receipt.subject);
});

test('a mail that was taken, though the server said otherwise, goes again under the same Message-ID', async () => {
  const { server, send } = await sendingTo({ toText: 451 });
  await expect(send(outgoing())).rejects.not.toBeInstanceOf(SendNever);
  await expect(send(outgoing())).rejects.not.toBeInstanceOf(SendNever);
  const ids = await Promise.all(server.taken.map(async (text) => (await simpleParser(text)).messageId));
  expect(ids).toEqual([`<${ID}@kestrelfen.example>`, `<${ID}@kestrelfen.example>`]);
});

const refusals: [what: string, behaviour: Behaviour, more: Partial<Server>, forGood: boolean][] = [
  ['no such mailbox', { toRecipient: 550 }, {}, true],
  ['a text it does not want', { toText: 554 }, {}, true],
  ['a mailbox that is busy', { toRecipient: 450 }, {}, false],
  ['a wrong password', { password: 'right' }, { user: 'queenpost' }, false],
  ['a server that cannot keep the way private', {}, { security: 'starttls' }, false],
  ['a server whose certificate nobody vouches for', { starttls: true }, { security: 'starttls' }, false],
  ['a server that does not speak TLS', {}, { security: 'tls' }, false],
];
test.each(refusals)('%s: nothing is taken', async (_what, behaviour, more, forGood) => {
  const { server, send } = await sendingTo(behaviour, more, 'wrong');
  const error: unknown = await send(outgoing()).then(
    () => null,
    (refused: unknown) => refused,
  );
  expect(error).toBeInstanceOf(Error);
  expect(error instanceof SendNever).toBe(forGood);
  if (behaviour.toText === undefined) expect(server.taken).toEqual([]);
});

test('the password is that of the environment', async () => {
  const { server, send } = await sendingTo({ password: 'right' }, { user: 'queenpost' }, 'right');
  await send(outgoing());
  expect(server.taken).toHaveLength(1);
});

test('no server at all: it is tried again later', async () => {
  const { server, send } = await sendingTo({});
  await server.close();
  servers.pop();
  const error: unknown = await send(outgoing()).catch((refused: unknown) => refused);
  expect(error).toBeInstanceOf(Error);
  expect(error).not.toBeInstanceOf(SendNever);
});
