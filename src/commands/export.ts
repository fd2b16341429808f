/** `queenpost export DIR`: the exact copy of all watches as a CSV data package, for its owner alone. */
import { LAYOUTS } from '../../shared/columns.js';
import type { Watch } from '../../shared/record.js';
import { descriptorOf, writePackage, type Piece } from '../publish/package/index.js';
import { watchesOf } from '../store/index.js';
import { CommandError, optionsOf, surveyFrom, type Command } from './command.js';
import { writeOwnerOnly } from './owner-only.js';
import { openStored } from './stored.js';
import { write } from './write.js';

const DESCRIPTOR = 'datapackage.json';
const FILES = [...LAYOUTS.map(({ file }) => file), DESCRIPTOR] as const;

/** What the columns have no room for. */
const LEFT_OUT =
  'Not in it: names and addresses, photographs, queries, history, fields of other dialogs, sides of patches, and words ' +
  'as typed other than of plants and queens.';

/** The watches, each counted as it goes by. */
function* counted(watches: Iterable<Watch>, count: (watch: Watch) => void): Generator<Watch> {
  for (const watch of watches) {
    count(watch);
    yield watch;
  }
}

export const exportPackage: Command = {
  name: 'export',
  does: "the exact copy of all watches as CSV, owner's eyes only",
  usage: 'DIR [--survey FILE] [--data DIR]',
  async run(args) {
    const { values, positionals } = optionsOf(this, args, {}, 1);
    const [folder] = positionals;
    if (folder === undefined) throw new CommandError(`Say where to. Usage: queenpost ${this.name} ${this.usage}`);
    const { settings } = surveyFrom(values.survey);
    const store = await openStored(values.data);
    let watches = 0;
    function* pieces(all: Iterable<Watch>): Generator<Piece | { file: typeof DESCRIPTOR; text: string }> {
      yield { file: DESCRIPTOR, text: descriptorOf(settings) };
      yield* writePackage(counted(all, () => watches++));
    }
    // One reading transaction: the files are of one moment, whatever comes in meanwhile.
    store.reading((connection) => writeOwnerOnly(folder, FILES, pieces(watchesOf(connection, settings.key))));
    store.close();
    const copied = `${watches} watch${watches === 1 ? '' : 'es'}`;
    await write(
      `Wrote ${copied} of ${settings.name} to ${folder}. Owner's eyes only: private places are in it. ${LEFT_OUT}\n`,
    );
  },
};
