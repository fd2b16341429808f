/** What happened to a watch after it was stored: queries, corrections, watches that do not count. */
import type { Change, Query, Watch } from '../../../shared/record.js';
import type { Survey } from '../../../shared/survey.js';
import { say } from '../../../shared/wording.js';
import { instantOf, MINUTE_MILLISECONDS } from './calendar.js';
import type { Chance } from './chance.js';
import type { Expert } from './experts.js';

/** Whether the watch counts. */
export type Standing = Pick<Watch, 'status' | 'statusReason'>;

const UNCONFIRMED = 0.018;
const SET_ASIDE = 0.012;
const ASIDE_REASONS = ['told twice', 'a walk along the path, not one patch', 'the day cannot be right'] as const;

/** Whether a watch counts: about three in a hundred were never confirmed or were set aside. */
export function standingOf(survey: Survey, chance: Chance): (isPractice: boolean) => Standing {
  const neverConfirmed = say(survey.wording, 'reason-unconfirmed');
  return (isPractice) => {
    if (isPractice) return { status: 'practice', statusReason: null };
    const how = chance.share();
    if (how < UNCONFIRMED) return { status: 'unconfirmed', statusReason: neverConfirmed };
    if (how < UNCONFIRMED + SET_ASIDE) return { status: 'set-aside', statusReason: chance.one(ASIDE_REASONS) };
    return { status: 'confirmed', statusReason: null };
  };
}

type Exchange = readonly [question: string, answer: string];
const QUESTIONS: readonly Exchange[] = [
  ['Did you take a photograph of the bee you were unsure of?', 'Sorry, she was off before I had the phone out.'],
  ['Was the end of the watch the time you typed?', 'Yes, that is right.'],
  ['Did you count single flowers or whole clusters?', 'Single flowers, I counted one branch and multiplied.'],
  ['Could the small one have been a worker?', 'It could. She was half the size of the others.'],
  ['Was that the patch by the gate again?', 'No, the one across the path.'],
];

function queryOf(number: number, to: Query['to'], question: string, opened: number): Query {
  return {
    number,
    check: null,
    to,
    question,
    state: 'open',
    answer: null,
    by: null,
    openedAt: instantOf(opened),
    closedAt: null,
  };
}

/** Queries of one watch: a plant that no list names is always asked about, other things now and then. */
export function queriesOf(
  unnamed: readonly string[],
  observer: string,
  stored: number,
  survey: Survey,
  chance: Chance,
): Query[] {
  const queries = unnamed.map((plant, index) =>
    queryOf(index + 1, 'coordinator', say(survey.wording, 'query-plant-name', { plant }), stored),
  );
  if (!chance.yes(0.06)) return queries;
  const [question, answer] = chance.one(QUESTIONS);
  const opened = stored + chance.whole(300, 3000) * MINUTE_MILLISECONDS;
  const query = queryOf(queries.length + 1, 'observer', question, opened);
  const how = chance.share();
  if (how < 0.25) return [...queries, query];
  if (how < 0.35) return [...queries, { ...query, state: 'later' }];
  const closedAt = instantOf(opened + chance.whole(20, 4000) * MINUTE_MILLISECONDS);
  return [...queries, { ...query, state: 'answered', answer, by: observer, closedAt }];
}

/** What the observer mended and the coordinator set aside, oldest first. */
export function changesOf(
  { status, statusReason }: Standing,
  told: Pick<Watch, 'observer' | 'via' | 'wind'>,
  stored: number,
  coordinator: Expert,
  chance: Chance,
): Change[] {
  const changes: Change[] = [];
  if (told.wind !== null && chance.yes(0.03)) {
    const { beaufort } = told.wind;
    changes.push({
      at: instantOf(stored + chance.whole(1, 60) * MINUTE_MILLISECONDS),
      by: told.observer,
      role: 'observer',
      through: told.via,
      path: '/wind',
      from: { beaufort: beaufort === 0 ? 1 : beaufort - 1 },
      to: { beaufort },
      why: null,
    });
  }
  if (status === 'set-aside') {
    changes.push({
      at: instantOf(stored + chance.whole(600, 9000) * MINUTE_MILLISECONDS),
      by: coordinator.key,
      role: 'coordinator',
      through: 'desk',
      path: '/status',
      from: 'confirmed',
      to: 'set-aside',
      why: statusReason,
    });
  }
  return changes;
}
