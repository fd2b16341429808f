/** What channels, the page and the commands may use of the exchange. */
export { openBaring, type Baring, type Copy } from './bare.js';
export type { Conversation, Effect, Step } from './conversation.js';
export { openExchange, type Exchange, type Failure, type How, type Received } from './exchange.js';
export { openFetching, type Fetch, type Fetching } from './fetching.js';
export { openSender, SendLater, SendNever, type Outgoing, type Send, type Sender, type SenderRun } from './sender.js';
export { notStored } from './sentences.js';
export { sentAt } from './sent-at.js';
export type { ExchangeParts } from './take.js';
export { openTimers, type Timers } from './timers.js';
