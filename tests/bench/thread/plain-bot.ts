/** The bot to compare with: grammY as its documentation shows it, one row kept durably for each message, and an echo. */
import Database from 'better-sqlite3';
import { Bot } from 'grammy';

const [apiRoot = '', path = ''] = process.argv.slice(2);
const database = new Database(path);
database.pragma('journal_mode = WAL');
database.pragma('synchronous = FULL');
database.exec('create table messages (id integer primary key, chat integer not null, text text not null)');
const insert = database.prepare('insert into messages (chat, text) values (?, ?)');

const bot = new Bot(process.env['QUEENPOST_TELEGRAM_TOKEN'] ?? '', { client: { apiRoot } });
bot.on('message:text', async (context) => {
  insert.run(context.chat.id, context.message.text);
  await context.reply(context.message.text);
});
await bot.start({ onStart: () => console.log('ready') });
