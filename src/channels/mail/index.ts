/** Mail: replies go out through the survey's mail server or, without one, into files that any mail program opens. */
export { mailTo, type MailSettings } from './sending.js';
