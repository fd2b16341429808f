/** Telegram: a message thread on the phone. It holds no state and no rules: updates become messages, replies calls. */
export { openTelegram, type Telegram, type TelegramParts } from './telegram.js';
export { TELEGRAM, TelegramRefused } from './api.js';
