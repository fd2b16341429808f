/** `queenpost season`: the season's figures, as a table for people or, with `--json`, for programs. */
import { say } from '../../shared/wording.js';
import { seasonFigures } from '../season/index.js';
import { watchesOf } from '../store/index.js';
import { optionsOf, SEASON_SEED, surveyFrom, type Command } from './command.js';
import { seasonTable, TERMINAL_COLUMNS } from './season-table.js';
import { openStored } from './stored.js';
import { write } from './write.js';

export const season: Command = {
  name: 'season',
  does: "shows the season's figures",
  usage: '[--json] [--protocol] [--survey FILE] [--data DIR]',
  async run(args) {
    const { values } = optionsOf(this, args, {
      json: { type: 'boolean', default: false },
      protocol: { type: 'boolean', default: false },
    });
    const survey = surveyFrom(values.survey);
    const store = await openStored(values.data);
    const figures = seasonFigures(watchesOf(store, survey.settings.key), {
      survey,
      protocolOnly: values.protocol,
      seed: SEASON_SEED,
    });
    store.close();
    if (values.json) {
      await write(`${JSON.stringify(figures)}\n`);
      return;
    }
    const { effort, participation } = figures;
    const reached = participation.filter((observer) => observer.reached).length;
    const columns = Math.max(40, process.stdout.columns ?? TERMINAL_COLUMNS);
    await write(`${seasonTable(figures, survey, { protocolOnly: values.protocol, columns })}\n\n`);
    await write(
      `${say(survey.wording, 'season-participation', { observers: effort.observers, reached, target: survey.settings.target })}\n`,
    );
  },
};
