/** `queenpost season`: the season's figures, as a table for people or, with `--json`, for programs. */
import { say } from '../../shared/wording.js';
import type { Survey } from '../../shared/survey.js';
import { seasonFigures, type Planning } from '../season/index.js';
import { confirmedCountsOf, queensPerWatch, type Connection } from '../store/index.js';
import { CommandError, optionsOf, SEASON_SEED, surveyFrom, type Command } from './command.js';
import { seasonTable, TERMINAL_COLUMNS } from './season-table.js';
import { wrapped } from './plain-text.js';
import { Progress } from './progress.js';
import { openStored } from './stored.js';
import { write } from './write.js';

/** Sets `--plan -30` right, whose minus would be taken for another option. */
const withMinus = (args: readonly string[]): string[] =>
  args.flatMap((arg, at) => {
    if (args[at - 1] === '--plan' && /^[-−]\d/.test(arg)) return [];
    const next = args[at + 1] ?? '';
    return arg === '--plan' && /^[-−]\d/.test(next) ? [`--plan=${next}`] : [arg];
  });

/** A change in percent, "-30" or "-30 %"; null where none was asked about. */
function changeFrom(text: string | undefined): number | null {
  if (text === undefined) return null;
  const change = Number(text.replace('−', '-').replace(/\s*%$/, '') || NaN);
  // a fall by all there is leaves no queens to compare, and beyond a tenfold rise nobody plans
  if (change > -100 && change <= 1000 && change !== 0) return change;
  throw new CommandError(
    `"${text}" is no change to plan for: it takes percent above -100, as in "queenpost season --plan -30".`,
  );
}

/** In sentences, the one about two years always among them. */
function plannedLines(
  planning: Planning | null,
  changePercent: number,
  { wording }: Pick<Survey, 'wording'>,
  columns: number,
): string {
  const inPercent = (share: number, signDisplay: 'auto' | 'always'): string =>
    new Intl.NumberFormat(wording.locale, { style: 'percent', maximumFractionDigits: 1, signDisplay }).format(share);
  const number = new Intl.NumberFormat(wording.locale);
  const change = inPercent(changePercent / 100, 'always');
  const said = (): string => {
    if (planning === null) return say(wording, 'season-plan-none', { change });
    const { watches, powerAt, by } = planning;
    if (watches !== null) return say(wording, 'season-plan', { watches: number.format(watches), change, by });
    const last = powerAt.at(-1) ?? { watches: 0, power: 0 };
    return say(wording, 'season-plan-beyond', {
      watches: number.format(last.watches),
      change,
      power: inPercent(last.power, 'auto'),
    });
  };
  return [said(), say(wording, 'season-two-years')].map((text) => wrapped(text, columns).join('\n')).join('\n');
}

/** The watches that count, with progress said where there are many. */
function* watchesOf(connection: Connection, survey: string, progress: Progress) {
  const of = queensPerWatch(connection, survey).reduce((sum, { watches }) => sum + watches, 0);
  yield* progress.through(confirmedCountsOf(connection, survey), of, 'Reading watches');
  progress.stage('Working out the figures and how sure they are');
}

export const season: Command = {
  name: 'season',
  does: "shows the season's figures",
  usage: '[--json] [--protocol] [--plan PERCENT] [--survey FILE] [--data DIR]',
  async run(args) {
    const { values } = optionsOf(this, withMinus(args), {
      json: { type: 'boolean', default: false },
      protocol: { type: 'boolean', default: false },
      plan: { type: 'string' },
    });
    const planFor = changeFrom(values.plan);
    const survey = surveyFrom(values.survey);
    const store = await openStored(values.data);
    const progress = new Progress();
    // One reading transaction: the figures are of one moment, whatever comes in meanwhile.
    const figures = store.reading((connection) =>
      seasonFigures(watchesOf(connection, survey.settings.key, progress), {
        survey,
        protocolOnly: values.protocol,
        seed: SEASON_SEED,
        planFor,
      }),
    );
    store.close();
    progress.end();
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
    if (planFor !== null) await write(`${plannedLines(figures.planning ?? null, planFor, survey, columns)}\n`);
  },
};
