/**
 * Messages of a live watch: each is a tally, or a word about the clock. While it runs the helper only acknowledges,
 * silently, in a word or two; what could not be read waits until time is up.
 */
import { namedIn, type Wish } from '../../answers/index.js';
import { say } from '../../../shared/wording.js';
import { queensOf } from '../fields.js';
import { contextOf } from '../hear.js';
import { showLine, showPlant, showPlantWithFlowers } from '../show.js';
import { changed } from '../thread.js';
import type { Live, Outcome, Report, Scene, TallyLine, Thread } from '../types.js';
import { acknowledged, softly } from './acknowledge.js';
import { correctLive, takeOutLive, type PutRight } from './correct.js';
import { asksSameOne, combinationSaid, whereSameOne } from './buttons.js';
import { endLive, pauseLive, resumeLive } from './clock.js';
import { countsNothing, saysNothingYet, timeLeft, withPlantOfLast } from './passing.js';
import { withPlantsNamed } from './plants.js';
import { countLines, messagesOf, readLiveTally, withEntries } from './tally.js';

type Running = Report & { live: Live };

const queensSoFar = (report: Report): number => queensOf(report.tally ?? []);

/** One message while the clock runs or is stopped. */
export function hearLive(thread: Thread, before: Running, text: string, wish: Wish | null, scene: Scene): Outcome {
  const { wording } = scene.survey;
  // "where is she now?" is about the next message alone
  const wasAsked = before.live.asksSame === true;
  const report: Running = wasAsked ? { ...before, live: { ...before.live, asksSame: false } } : before;
  if (combinationSaid(report, text, scene) !== null) return hearTally(thread, report, text, scene);
  switch (wish?.wish) {
    case 'pause':
      return pauseLive(thread, report, scene);
    case 'start':
    case 'go-on':
      return resumeLive(thread, report, scene);
    case 'stop':
    case 'all-done':
      return endLive(thread, report, scene);
    case 'undo':
      return wasAsked ? notTheSame(thread, report, scene) : undoTally(thread, report, scene);
    case 'so-far':
      return softly(thread, report, tallySoFar(report, scene));
    case 'help':
      return softly(thread, report, say(wording, 'live-help'));
    case 'take-out':
      return putRight(thread, report, takeOutLive(report, wish.what, text, scene), text, scene);
    case 'change': {
      const right = correctLive(report, wish.what, scene, true);
      return right === null ? noted(thread, report, text, scene) : putRight(thread, report, right, text, scene);
    }
    case 'change-what':
      return softly(thread, report, say(wording, 'live-which', { queens: queensSoFar(report) }));
    case 'throw-away':
      return {
        thread: { ...thread, asking: { kind: 'throw-away' } },
        said: [],
        effects: [],
        then: 'repeat',
      };
    default:
      break;
  }
  const left = timeLeft(thread, report, text, scene);
  if (left !== null) return left;
  if (asksSameOne(text, scene)) return sameOne(thread, report, scene);
  return hearTally(thread, report, wasAsked ? sameOneOn(report, text, scene) : text, scene);
}

function hearTally(thread: Thread, report: Running, text: string, scene: Scene): Outcome {
  const right = combinationSaid(report, text, scene) === null ? correctLive(report, text, scene) : null;
  if (right !== null) return putRight(thread, report, right, text, scene);
  const placed = withPlantOfLast(report, text, scene);
  if (placed !== null) return counted(thread, placed.report, placed.lines, scene);
  const named = withPlantsNamed(report, text, scene);
  if (named !== null) return plantsNamed(thread, named, scene);
  const isNone = saysNothingYet(text, scene);
  const lines = readLiveTally(report, isNone ? scene.survey.words.tally.zero[0]! : text, scene);
  if (lines === null) return countsNothing(thread, report, text, scene) ?? noted(thread, report, text, scene);
  if (saysNoneMore(report, lines, text, scene)) {
    return acknowledged(thread, report, say(scene.survey.wording, 'live-none-more', { queens: queensSoFar(report) }));
  }
  return counted(thread, countLines(report, lines, text, scene), lines, scene);
}

/**
 * "No" and "nothing" once queens were counted: none came just now, or something was wrong. No plant was watched in vain by
 * that; a plant is where it is named.
 */
const saysNoneMore = (report: Running, lines: readonly TallyLine[], text: string, scene: Scene): boolean =>
  queensSoFar(report) > 0 &&
  lines.every(({ count }) => count === 0) &&
  namedIn(text, contextOf(scene, report)).plants.length === 0;

/** A correction; where it is not clear what it is about, that is asked, and again once time is up. */
function putRight(thread: Thread, report: Running, right: PutRight, text: string, scene: Scene): Outcome {
  const { wording } = scene.survey;
  if (right === 'unclear') {
    const asked = noted(thread, report, text, scene);
    return { ...asked, said: [say(wording, 'live-which', { queens: queensSoFar(report) })] };
  }
  const { report: next, lines } = right;
  const context = contextOf(scene, next);
  const shown = lines.map((line) => showLine(line, next.plants ?? [], scene.survey, context)).join('; ');
  return acknowledged(
    thread,
    next,
    say(wording, 'live-put-right', { lines: shown, taken: lines.length === 0, queens: queensSoFar(next) }),
  );
}

function noted(thread: Thread, report: Running, text: string, scene: Scene): Outcome {
  const { live } = report;
  const unreadSince = (live.unreadSince ?? 0) + 1;
  const unread = changed(report, { live: { ...live, unread: [...live.unread, text], unreadSince } });
  return acknowledged(thread, unread, say(scene.survey.wording, 'live-noted'));
}

function counted(thread: Thread, next: Report, lines: readonly TallyLine[], scene: Scene): Outcome {
  const { wording } = scene.survey;
  const context = contextOf(scene, next);
  const shown = lines.map((line) => showLine(line, next.plants ?? [], scene.survey, context)).join('; ');
  return acknowledged(thread, next, say(wording, 'live-counted', { lines: shown, queens: queensSoFar(next) }));
}

function plantsNamed(thread: Thread, next: Report, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const context = contextOf(scene, next);
  const plants = (next.plants ?? []).map((plant) =>
    plant.flowers === null ? showPlant(plant, context) : showPlantWithFlowers(plant, scene.survey, context),
  );
  return acknowledged(thread, next, say(wording, 'live-plants', { plants: plants.join(', ') }));
}

/** "Same one" alone: counted where only one other plant is known, else it is asked where she is now. */
function sameOne(thread: Thread, report: Running, scene: Scene): Outcome {
  const [only, ...others] = whereSameOne(report, scene);
  if (only !== undefined && others.length === 0) return hearTally(thread, report, only.words, scene);
  if (report.live.entries.length === 0) return acknowledged(thread, report, say(scene.survey.wording, 'live-none-yet'));
  const asked = changed(report, { live: { ...report.live, asksSame: true } });
  return acknowledged(thread, asked, say(scene.survey.wording, 'live-same-where'));
}

/** Asked where the same one is now, "bluebells" and "on the phlox" say just that. */
function sameOneOn(report: Running, text: string, scene: Scene): string {
  const { bees, plants } = namedIn(text, contextOf(scene, report));
  if (bees.length > 0 || plants.length === 0) return text;
  const same = say(scene.survey.wording, 'choice-live-same');
  const asSame = [`${same} ${text}`, say(scene.survey.wording, 'choice-live-same-on', { plant: text })];
  const isSame = (said: string): boolean =>
    readLiveTally(report, said, scene)?.every(({ seenBefore }) => seenBefore > 0) ?? false;
  return asSame.find(isSame) ?? text;
}

/** "Same one" was not meant, and nothing was counted. */
const notTheSame = (thread: Thread, report: Running, scene: Scene): Outcome =>
  acknowledged(thread, changed(report, {}), say(scene.survey.wording, 'live-undone', { queens: queensSoFar(report) }));

/** A message that was changed while the clock runs is counted again in its own place; null where it counted nothing. */
export function recountLive(
  thread: Thread,
  report: Running,
  earlier: string,
  text: string,
  scene: Scene,
): Outcome | null {
  const { live } = report;
  const at = messagesOf(live).lastIndexOf(earlier);
  if (at === -1) return null;
  const before = { ...report, live: { ...live, entries: live.entries.slice(0, at) } };
  const lines = readLiveTally(before, text, scene);
  if (lines === null) return noted(thread, report, text, scene);
  const entries = live.entries.map((entry, index) => (index === at ? lines : entry));
  const next = withEntries(report, entries, messagesOf(live));
  return counted(thread, { ...next, tallyTyped: [...next.tallyTyped, text] }, lines, scene);
}

function tallySoFar(report: Report, scene: Scene): string {
  const context = contextOf(scene, report);
  const lines = (report.tally ?? []).map((line) => showLine(line, report.plants ?? [], scene.survey, context));
  return lines.length === 0 ? say(scene.survey.wording, 'live-none-yet') : lines.join('\n');
}

/** What was said last goes: where that was only noted, nothing that was counted. */
function undoTally(thread: Thread, report: Running, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const { unread, unreadSince = 0 } = report.live;
  if (unreadSince > 0) {
    const live = { ...report.live, unread: unread.slice(0, -1), unreadSince: unreadSince - 1 };
    const said = say(wording, 'live-undone-noted', { typed: unread.at(-1) ?? '', queens: queensSoFar(report) });
    return acknowledged(thread, changed(report, { live }), said);
  }
  const { corrected } = report.live;
  if (corrected === undefined && report.live.entries.length === 0)
    return softly(thread, report, say(wording, 'live-nothing-to-undo'));
  const next = corrected
    ? withEntries(report, corrected.entries, corrected.entryMessages ?? [])
    : withEntries(report, report.live.entries.slice(0, -1), messagesOf(report.live).slice(0, -1));
  return acknowledged(thread, next, say(wording, 'live-undone', { queens: queensSoFar(next) }));
}

/** A button of something earlier: it changes nothing, says so, and gives the buttons of now. */
export const staleInLive = (thread: Thread, report: Running, scene: Scene): Outcome => ({
  ...acknowledged(thread, report, say(scene.survey.wording, 'live-stale-button', { queens: queensSoFar(report) })),
  thread,
});
