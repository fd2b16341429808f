/** What the rest of the program may use of the store. Functions that write take the open `Transaction`. */
export {
  bared,
  bareLater,
  filesToRemove,
  photographsToBare,
  removed,
  removeLater,
  threadsToBare,
  type PhotographToBare,
} from './bare-photographs.js';
export { codeOf, codeSpent, codeTried, keepCode, type StoredCode } from './codes.js';
export { Connection, Store, Transaction } from './connection.js';
export { queensPerWatch } from './counts.js';
export { erasePerson, everythingOf, keptFiles, picturesOf } from './erase.js';
export { StoreError, UnreadableRecord, type StoreFailure } from './errors.js';
export { contentCame, messagesToCome, type MessageToCome } from './files-to-come.js';
export {
  firstWaiting,
  keepMessage,
  messageDone,
  messageFailed,
  messageStuck,
  readWaiting,
  settleStuck,
  stuckMessages,
  waitingMessages,
  waitingThreads,
  type MessageKey,
  type StuckMessage,
  type ThreadKey,
  type WaitingMessage,
} from './inbox.js';
export { sortable } from './instant.js';
export { keepWatch } from './keep-watch.js';
export { openStore, type OpenOptions } from './open.js';
export {
  addReply,
  failedReplies,
  nextReplyDue,
  replyFailed,
  replyLater,
  replySaid,
  replySent,
  waitingReplies,
  type OutboxKey,
  type WaitingReply,
} from './outbox.js';
export {
  joinPersons,
  keepPerson,
  keepPlace,
  namesShown,
  peopleOf,
  personOf,
  personsByMail,
  placesOf,
  threadsOfObserver,
} from './people.js';
export { keepThread, threadOf, type StoredThread } from './threads.js';
export { clearTimer, dueTimers, nextTimerDue, setTimer, takeTimer, type StoredTimer } from './timers.js';
export { confirmedCountsOf } from './watch-counts.js';
export {
  lastWatchesOf,
  nextWatchNumber,
  progressOf,
  watchById,
  watchByNumber,
  watchesNearOn,
  watchesOf,
} from './watches.js';
