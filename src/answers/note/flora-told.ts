/** Plants and tally of a message: each by its own reader where it is asked for alone, both together where both are told. */
import { readPlants } from '../plants.js';
import { none, type Reading } from '../reading.js';
import { findTallyAmong, readTally, type TallyRow } from '../tally.js';
import { fold } from '../text.js';
import { blankLines, keepOnly } from './blank-lines.js';
import { readFlora, visibleNames, watchedWith } from './flora.js';
import { floraIn } from './flowers.js';
import { within, type FieldName, type Gathering } from './gathering.js';
import type { Labelled } from './labels.js';
import { noteWords } from './vocabulary.js';

const isZero = (tally: Reading<TallyRow[]> | null): boolean => {
  if (tally === null || tally.state === 'none') return false;
  const rows = tally.state === 'sure' ? tally.value : tally.offer.flat();
  return rows.every(({ count }) => count === 0);
};

/** `wholeNote`: a plant named without a count was watched too. */
export function readPlantsAndTally(
  gathering: Gathering,
  asked: readonly FieldName[],
  labelled: readonly Labelled[],
  wholeNote: boolean,
): void {
  const { context } = gathering;
  const text = gathering.rest();
  const folded = fold(text);
  const names = gathering.names();
  const wantsPlants = asked.includes('plants');
  const wantsTally = asked.includes('tally');
  const { saysFlowers, saysBees } = noteWords(context.words);
  const tellsFlowers = floraIn(folded, names, context.words).flowers.some(({ span }) =>
    saysFlowers(folded.slice(...span)),
  );
  const valueOf = (label: 'plants' | 'tally'): string | null => {
    const parts = labelled.filter((each) => each.label === label);
    return parts.length === 0
      ? null
      : keepOnly(
          text,
          parts.map(({ value }) => value),
        );
  };

  if (wantsPlants && !wantsTally && names.bees.length === 0) {
    gathering.take('plants', readPlants(text, context));
    return;
  }
  if (wantsTally && !wantsPlants && !tellsFlowers) {
    gathering.take('tally', readTally(text, context));
    return;
  }
  const formPlants = valueOf('plants');
  const formTally = valueOf('tally');
  const isForm = formPlants !== null && visibleNames(formPlants, names).bees.length === 0;
  const plants = isForm ? readPlants(formPlants, context) : null;
  if (plants && plants.state !== 'none') {
    gathering.take('plants', plants);
    const told = gathering.plants();
    const labels = labelled.filter(({ label }) => label === 'plants').map(({ labelSpan }) => labelSpan);
    // a bare number may use all it was shown: what stands beside the plants' lines is not theirs
    const values = labelled.filter(({ label }) => label === 'plants').map(({ value }) => value);
    const rest = blankLines(text, [...labels, ...within(plants.used, values)]);
    const watching = watchedWith(context, told);
    const tally = formTally === null ? findTallyAmong(rest, watching)[0] : readTally(formTally, watching);
    if (tally && (tally.state !== 'none' || wantsTally)) gathering.take('tally', tally);
    return;
  }
  const flora = readFlora(text, context, names, wantsTally);
  const tallyTold = flora.tally !== null && flora.tally.state !== 'none';
  // "nope", "none so far" answer what was asked; of bees they tell only beside a bee or plant
  const spoken = wholeNote || !isZero(flora.tally) || names.plants.length > 0 || saysBees(folded);
  if (flora.tally && ((tallyTold && spoken) || wantsTally)) gathering.take('tally', flora.tally);
  if (flora.plants) {
    const counted = flora.plants.state === 'sure' ? flora.plants.value.some(({ flowers }) => flowers !== null) : true;
    // "by the crabapple" in an answer about the day is no plant watched
    if (wantsPlants || wholeNote || counted) gathering.take('plants', flora.plants);
  } else if (wantsPlants) gathering.take('plants', none('plants-no-name'));
}
