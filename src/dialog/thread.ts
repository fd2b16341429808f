/** Makes threads and reports, and brings a thread kept by an older program up to date. */
import type { Message } from '../../shared/message.js';
import type { Survey } from '../../shared/survey.js';
import type { Report, Thread } from './types.js';

export function newThread(survey: Survey): Thread {
  return {
    shape: 1,
    dialog: survey.dialog.name,
    dialogVersion: survey.dialog.version,
    report: null,
    parked: [],
    asking: null,
    held: [],
    photographs: [],
    lastAt: null,
  };
}

export function newReport(id: string, message: Message): Report {
  return {
    id,
    revision: 1,
    begunAt: message.at,
    stored: null,
    practice: false,
    fields: {},
    skipped: [],
    asked: [],
    plants: null,
    plantsOpen: false,
    tally: null,
    total: null,
    restNone: false,
    tallyTyped: [],
    tallyMessage: null,
    plantsTyped: [],
    doubts: [],
    live: null,
    liveMinutes: null,
    photographs: [],
    summarised: false,
  };
}

/** A report with a change: its revision tells older buttons that they are stale. */
export function changed(report: Report, change: Partial<Omit<Report, 'id' | 'revision'>>): Report {
  return { ...report, ...change, revision: report.revision + 1 };
}

/** Nothing told yet: such a report may be replaced without a word. */
export const isEmpty = (report: Report | null): boolean =>
  report === null ||
  (Object.keys(report.fields).length === 0 &&
    report.plants === null &&
    report.tally === null &&
    report.photographs.length === 0 &&
    report.live === null);

export const withReport = (thread: Thread, report: Report | null): Thread => ({ ...thread, report });

/**
 * A thread carries the version of the dialog it was begun with. Where the dialog has changed since, fields it no longer
 * has are let go and what was being asked is asked anew; `true` says that the observer should be told.
 */
export function upToDate(thread: Thread, survey: Survey): { readonly thread: Thread; readonly told: boolean } {
  if (thread.dialog === survey.dialog.name && thread.dialogVersion === survey.dialog.version)
    return { thread, told: false };
  const known = new Set(Object.keys(survey.dialog.fields));
  const kept = (report: Report): Report => {
    const fields = Object.fromEntries(
      Object.entries(report.fields).filter(([field]) => known.has(field) || field === 'remark'),
    );
    const questions = new Set(survey.dialog.questions.map(({ question }) => question));
    return changed(report, {
      fields,
      skipped: report.skipped.filter((field) => known.has(field)),
      asked: report.asked.filter((question) => questions.has(question)),
      doubts: report.doubts.filter((doubt) => known.has(doubt.field)),
      plants: known.has('plants') ? report.plants : null,
      tally: known.has('tally') ? report.tally : null,
    });
  };
  const asking = thread.asking?.kind === 'consent' || thread.asking?.kind === 'person' ? thread.asking : null;
  return {
    thread: {
      ...thread,
      dialog: survey.dialog.name,
      dialogVersion: survey.dialog.version,
      report: thread.report === null ? null : kept(thread.report),
      parked: thread.parked.map(kept),
      asking,
    },
    told: thread.report !== null,
  };
}

/** Whether a watch is being told in the thread, or was put aside in it: the person is not to be reminded of one. */
export const isTelling = ({ report, parked }: Thread): boolean => !isEmpty(report) || parked.length > 0;
