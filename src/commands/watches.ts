/** `queenpost watches`: lists stored watches; `--json` prints the whole records. */
import type { Watch } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import { watchesOf } from '../store/index.js';
import { optionsOf, surveyFrom, type Command } from './command.js';
import { harmless } from './plain-text.js';
import { openStored } from './stored.js';
import { write } from './write.js';

/** One line a watch: number, day, start, status, queens, plants, place. */
function lineOf(watch: Watch, survey: Survey): string {
  const plants = watch.plants.map(
    ({ name, asTyped }) => survey.names.plants.find((plant) => plant.name === name)?.common[0] ?? name ?? asTyped,
  );
  const place =
    watch.place === null ? '' : watch.place.private ? '(private place)' : watch.place.words || (watch.place.site ?? '');
  const open = watch.queries.filter(({ state }) => state === 'open').length;
  const parts = [
    String(watch.number).padStart(5),
    watch.date,
    `${watch.times.start}–${watch.times.end}`,
    watch.status.padEnd(11),
    `${watch.total} queen${watch.total === 1 ? '' : 's'}`.padEnd(10),
    plants.join(', '),
    place,
    open > 0 ? `${open} open quer${open === 1 ? 'y' : 'ies'}` : '',
  ];
  return harmless(parts.filter((part) => part !== '').join('  ')).padStart(0);
}

export const watches: Command = {
  name: 'watches',
  does: 'lists stored watches',
  usage: '[--json] [--survey FILE] [--data DIR]',
  async run(args) {
    const { values } = optionsOf(this, args, { json: { type: 'boolean', default: false } });
    const survey = surveyFrom(values.survey);
    const store = await openStored(values.data);
    const all = watchesOf(store, survey.settings.key);
    let count = 0;
    for (const watch of all) {
      if (values.json) await write(`${count === 0 ? '[' : ','}\n${JSON.stringify(watch)}`);
      else await write(`${lineOf(watch, survey)}\n`);
      count++;
    }
    if (values.json) await write(count === 0 ? '[]\n' : '\n]\n');
    else await write(`${count} watch${count === 1 ? '' : 'es'} stored for ${survey.settings.name}.\n`);
    store.close();
  },
};
