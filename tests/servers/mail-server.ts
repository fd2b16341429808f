/** A mail server on loopback for the tests: nodemailer's own `smtp-server`, which refuses, delays or drops on order. */
import type { AddressInfo } from 'node:net';
import { SMTPServer } from 'smtp-server';

export interface MailServer {
  readonly port: number;
  /** Mails taken, as they came. */
  readonly taken: string[];
  readonly recipients: string[];
  close(): Promise<void>;
}

export interface Behaviour {
  /** An answer to the recipient: 550 refuses for good, 451 for now. */
  readonly toRecipient?: number;
  /** An answer to the whole text, after it was taken in: the effect is there, the sender does not know. */
  readonly toText?: number;
  readonly password?: string;
  readonly starttls?: boolean;
}

const refusal = (answer: number): Error => Object.assign(new Error('as ordered'), { responseCode: answer });

export async function mailServer(behaviour: Behaviour = {}): Promise<MailServer> {
  const taken: string[] = [];
  const recipients: string[] = [];
  const hidden = behaviour.starttls === true ? [] : ['STARTTLS'];
  const server = new SMTPServer({
    logger: false,
    disableReverseLookup: true,
    authOptional: behaviour.password === undefined,
    allowInsecureAuth: true,
    disabledCommands: behaviour.password === undefined ? [...hidden, 'AUTH'] : hidden,
    onAuth: ({ username, password }, _session, done) =>
      password === behaviour.password ? done(null, { user: username }) : done(refusal(535)),
    onRcptTo: ({ address }, _session, done) => {
      recipients.push(address);
      done(behaviour.toRecipient === undefined ? null : refusal(behaviour.toRecipient));
    },
    onData: (stream, _session, done) => {
      const pieces: Buffer[] = [];
      stream.on('data', (piece: Buffer) => pieces.push(piece));
      stream.on('end', () => {
        taken.push(Buffer.concat(pieces).toString('utf8'));
        done(behaviour.toText === undefined ? null : refusal(behaviour.toText));
      });
    },
  });
  // a client that breaks off is part of the tests
  server.on('error', () => undefined);
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  return {
    port: (server.server.address() as AddressInfo).port,
    taken,
    recipients,
    close: () => new Promise((closed) => server.close(() => closed())),
  };
}
