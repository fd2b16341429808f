/** What would be done with the watches of a spreadsheet: which are new, which are stored already, who watched them. */
import { fold } from '../answers/index.js';
import { CHECKS, missingFindings, sayFinding } from '../checks/index.js';
import type { Person } from '../../shared/person.js';
import type { Query, Watch } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import { differences, watchOf, type Complaint, type SheetsRead, type SheetWatch } from '../sheets/index.js';

/** What the survey has already. */
export interface Standing {
  readonly watches: readonly Watch[];
  readonly people: readonly Person[];
  readonly nextNumber: number;
}

export type Fate =
  /** Something was not understood; it is not stored. */
  | { readonly kind: 'doubtful' }
  /** The same observer has a watch that began then; `differs` names what that one has otherwise. */
  | { readonly kind: 'stored'; readonly number: number; readonly differs: readonly string[] }
  | { readonly kind: 'new'; readonly watch: Watch; readonly noticed: readonly string[] };

export interface Planned {
  readonly told: SheetWatch;
  /** Its observer was not known before. */
  readonly isNewObserver: boolean;
  readonly fate: Fate;
}

export interface Plan {
  readonly planned: readonly Planned[];
  /** Of sheets, headings and cells, and of observers that could be two. */
  readonly complaints: readonly Complaint[];
  /** Some complaint is of a sheet, or of what tells watches apart: to leave out single watches does not help. */
  readonly isAstray: boolean;
  /** People to be kept with the new watches. */
  readonly newPeople: readonly Person[];
}

interface Makers {
  readonly survey: Survey;
  /** An instant. */
  readonly now: string;
  readonly newId: () => string;
}

/** The channel of those who are known from spreadsheets alone: nothing is ever sent to them. */
const CHANNEL = 'import';

type Observer = { readonly key: string; readonly newPerson: Person | null } | { readonly several: readonly string[] };

const nameKey = (name: string): string => fold(name).replace(/\s+/g, ' ').trim();

/** Finds whose a name, or a key, is; the same name in one file is the same person. */
function observersOf({ watches, people }: Standing, { survey, newId }: Makers): (name: string) => Observer {
  const keys = new Set([...watches.map(({ observer }) => observer), ...people.map(({ key }) => key)]);
  const named = new Map<string, Set<string>>();
  for (const { name, key, channel, person } of people) {
    for (const known of channel === CHANNEL ? [person] : name === null ? [] : [nameKey(name)]) {
      named.set(known, (named.get(known) ?? new Set()).add(key));
    }
  }
  const found = new Map<string, Observer>();
  return (name) => {
    if (keys.has(name)) return { key: name, newPerson: null };
    const key = nameKey(name);
    const known = found.get(key) ?? observerOf(key, name);
    found.set(key, known);
    return known;
  };

  function observerOf(person: string, name: string): Observer {
    const [only, ...others] = named.get(person) ?? [];
    if (only !== undefined) return others.length > 0 ? { several: [only, ...others] } : { key: only, newPerson: null };
    const key = newId();
    const newPerson: Person = {
      survey: survey.settings.key,
      channel: CHANNEL,
      person,
      key,
      name,
      mail: null,
      consent: null,
      declined: [],
      photographLicence: null,
      nameShown: false,
      reminders: false,
    };
    return { key, newPerson };
  }
}

/** Two people of one name: whose watch it is, only a key tells. */
function severalPeople(told: SheetWatch, keys: readonly string[]): Complaint {
  const what = `more than one observer is called ${told.observer ?? ''}; write the key of the right one: ${keys.join(' or ')}`;
  const { file, sheet, line } = told;
  return { about: 'observer', file, sheet, line, column: null, heading: null, value: null, what };
}

/** What the checks put before the coordinator stays open until it is settled. */
function withFindings(watch: Watch, found: ReturnType<typeof missingFindings>, { survey, now }: Makers) {
  const findings = found.get(watch.id) ?? [];
  const sentences = findings.map((finding) => ({ finding, question: sayFinding(finding, 'coordinator', survey) }));
  const asked = sentences.filter(({ finding }) => finding.weight === 'query');
  const queries = asked.map(({ finding, question }, at): Query => ({
    number: watch.queries.length + at + 1,
    check: finding.check,
    to: 'coordinator',
    question,
    state: 'open',
    answer: null,
    by: null,
    openedAt: now,
    closedAt: null,
  }));
  return {
    watch: {
      ...watch,
      findings: findings.map((finding) => ({ ...finding, reply: null, at: now })),
      queries: [...watch.queries, ...queries],
    },
    noticed: sentences.filter(({ finding }) => finding.weight !== 'keep').map(({ question }) => question),
  };
}

export function planOf(read: SheetsRead, standing: Standing, makers: Makers): Plan {
  const observerOf = observersOf(standing, makers);
  const taken = new Map(
    standing.watches.map((watch) => [momentOf(watch.observer, watch.date, watch.times.start), watch]),
  );
  const several: Complaint[] = [];
  let number = standing.nextNumber;
  const known = read.watches.map((told) => {
    const observer = told.observer === null ? null : observerOf(told.observer);
    if (observer !== null && 'several' in observer) {
      several.push(severalPeople(told, observer.several));
      return { told, newPerson: null, whole: null };
    }
    const newPerson = observer?.newPerson ?? null;
    if (observer === null || told.complaints.length > 0) return { told, newPerson, whole: null };
    const { survey, now, newId } = makers;
    const whole = watchOf(told, { id: newId(), number, observer: observer.key, now, survey });
    const same = taken.get(momentOf(whole.observer, whole.date, whole.times.start));
    if (same !== undefined) return { told, newPerson, whole, same };
    number += 1;
    return { told, newPerson, whole };
  });
  const fresh = known.flatMap(({ whole, same }) => (whole === null || same !== undefined ? [] : [whole]));
  const found = missingFindings(fresh, standing.watches, { checks: CHECKS, survey: makers.survey });
  const planned = known.map(({ told, newPerson, whole, same }): Planned => {
    const of = { told, isNewObserver: newPerson !== null };
    if (whole === null) return { ...of, fate: { kind: 'doubtful' } };
    if (same !== undefined) {
      return { ...of, fate: { kind: 'stored', number: same.number, differs: differences(same, whole) } };
    }
    return { ...of, fate: { kind: 'new', ...withFindings(whole, found, makers) } };
  });
  const newKeys = new Set(fresh.map(({ observer }) => observer));
  const people = new Map(known.flatMap(({ newPerson }) => (newPerson === null ? [] : [[newPerson.key, newPerson]])));
  return {
    planned,
    complaints: [...read.complaints, ...read.watches.flatMap(({ complaints }) => complaints), ...several],
    isAstray: read.complaints.length > 0 || read.watches.some(({ astray }) => astray),
    newPeople: [...people.values()].filter(({ key }) => newKeys.has(key)),
  };
}

const momentOf = (observer: string, date: string, start: string): string => JSON.stringify([observer, date, start]);
