/** Sends a reply as a mail: by SMTP where the survey names a server, else as a file in a folder of the data. */
import { existsSync, mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createTransport, type SendMailOptions } from 'nodemailer';
import type { SurveySettings } from '../../../shared/survey.js';
import { SendNever, type Outgoing, type Send } from '../../exchange/index.js';
import { receiptHtml, receiptText } from './receipt.js';

export interface MailSettings {
  readonly settings: SurveySettings;
  /** Where mails are written when the survey names no server. */
  readonly folder: string;
  /** Of the user that the survey names for its server; from the environment, never from a file. */
  readonly password: string | undefined;
}

/** A server that does not answer for this long is tried again later. */
const PATIENCE_MILLISECONDS = 20_000;
/** Answers to an address or a text that will be the same at each try: "no such mailbox" (RFC 5321, section 4.2.1). */
const FOR_GOOD = { from: 500, to: 599 };
/** nodemailer's names for a refused address and a refused text; a refused password is the settings' fault, not theirs. */
const ABOUT_THE_MAIL = new Set<unknown>(['EENVELOPE', 'EMESSAGE']);

/** The outbox's id stays the same at each try, so a mail that goes out twice is one mail to the reader's program. */
function mailOf({ id, person, reply }: Outgoing, { name, mail, coordinator }: SurveySettings): SendMailOptions {
  const from = mail?.from ?? coordinator.mail;
  const { receipt } = reply;
  return {
    from: { name, address: from },
    // as an object: an address is never read as a list of addresses
    to: { name: '', address: person },
    replyTo: { name: coordinator.name, address: coordinator.mail },
    messageId: `<${id}@${from.slice(from.lastIndexOf('@') + 1)}>`,
    // no "out of office" comes back to what a program sent (RFC 3834)
    headers: { 'Auto-Submitted': 'auto-generated' },
    subject: receipt?.subject ?? name,
    text: receipt === undefined ? reply.text : receiptText(receipt),
    ...(receipt === undefined ? {} : { html: receiptHtml(receipt) }),
    disableFileAccess: true,
    disableUrlAccess: true,
  };
}

/** Writes mails to `folder`, one file each, named by their ids; a second try writes the same file. */
function intoFolder(folder: string, settings: SurveySettings): Send {
  const writer = createTransport({ streamTransport: true, buffer: true, newline: 'windows' });
  return async (outgoing) => {
    const path = join(folder, `${outgoing.id}.eml`);
    if (existsSync(path)) return;
    const { message } = await writer.sendMail(mailOf(outgoing, settings));
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    writeFileSync(`${path}.part`, message as Buffer, { mode: 0o600 });
    renameSync(`${path}.part`, path);
  };
}

/** The server's answer, where it refused the mail and will refuse it again. */
function refusedForGood(error: unknown): number | null {
  if (!(error instanceof Error && 'responseCode' in error && 'code' in error)) return null;
  const answer = Number(error.responseCode);
  return ABOUT_THE_MAIL.has(error.code) && answer >= FOR_GOOD.from && answer <= FOR_GOOD.to ? answer : null;
}

function throughServer(
  { host, port, security, user }: NonNullable<NonNullable<SurveySettings['mail']>['server']>,
  settings: SurveySettings,
  password: string | undefined,
): Send {
  const transport = createTransport({
    host,
    port,
    secure: security === 'tls',
    requireTLS: security === 'starttls',
    ignoreTLS: security === 'none',
    ...(user === undefined ? {} : { auth: { user, pass: password ?? '' } }),
    connectionTimeout: PATIENCE_MILLISECONDS,
    greetingTimeout: PATIENCE_MILLISECONDS,
    socketTimeout: PATIENCE_MILLISECONDS,
  });
  return async (outgoing) => {
    try {
      await transport.sendMail(mailOf(outgoing, settings));
    } catch (cause) {
      const answer = refusedForGood(cause);
      if (answer !== null) throw new SendNever(`the mail server refused it with ${answer}`, { cause });
      throw cause;
    }
  };
}

/** The sending function of mail for a survey. */
export function mailTo({ settings, folder, password }: MailSettings): Send {
  const server = settings.mail?.server;
  return server === undefined ? intoFolder(folder, settings) : throughServer(server, settings, password);
}
