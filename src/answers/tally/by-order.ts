/** Plants by their place in the list of the watched: "on the first one", "plant 2: none", "the latter". */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { Context, Span } from '../reading.js';
import { madeOnce } from '../text.js';

export interface PlantByOrder {
  readonly name: string;
  readonly span: Span;
}

const patterns = madeOnce(({ tally, numbers }: Words) => {
  const order = anyOf(Object.keys(tally.plantByOrder));
  const plant = anyOf(tally.plantWords);
  const noun = anyOf(tally.plantWords.filter((word) => word !== 'one'));
  const placing = anyOf(tally.onPlants, tally.prepositions);
  const what = anyOf(tally.zero, tally.ands, tally.filler, Object.keys(numbers.units));
  return [
    // "on the first one", "on the second plant"
    new RegExp(`${placing}\\s+(?<said>(?:the\\s+)?(?<nth>${order})\\s+${plant})`, 'gu'),
    // "on the first, none on the second"; not "on the first day"
    new RegExp(`${placing}\\s+(?<said>the\\s+(?<nth>${order}))\\s*(?:[^\\p{L}\\s]|$|${what})`, 'gu'),
    // "first plant: 2 imps"
    new RegExp(`(?<said>(?:the\\s+)?(?<nth>${order})\\s+${noun})`, 'gu'),
    // "#1: 2 imps #2: none"
    /(?<said>#\s?(?<digit>\d))(?=[\s:.)=-])/gu,
    // "plant 2", "flower #1"
    new RegExp(`(?<said>${noun}\\s*(?:#|no\\.?\\s)?\\s*(?<digit>\\d))\\s*(?:[^\\p{L}\\p{Nd}\\s]|$|${what})`, 'gu'),
  ] as const;
});

/** "First plant 2 imps, second 1 bimac, third nothing": without a noun, behind a plant told so. */
const goingOn = madeOnce(({ tally, numbers }: Words) => {
  const count = `(?:\\d+|${anyOf(tally.zero, Object.keys(numbers.units))})`;
  const unit = anyOf(tally.unitsOfOtherThings);
  return new RegExp(
    `[,;.\\n]\\s*(?<said>(?:the\\s+)?(?<nth>${anyOf(Object.keys(tally.plantByOrder))}))\\s*:?\\s+${count}(?!\\s*${unit})`,
    'gu',
  );
});

/**
 * `named`: the plants that the text names, left to right. Where it names several, the order is theirs: "phlox and redbud:
 * 2 imps on the first". One named, and nobody knows whose order it is.
 */
export function plantsByOrder(
  folded: string,
  named: readonly { readonly name: string; readonly at: number }[],
  context: Context,
): PlantByOrder[] {
  const { plantByOrder } = context.words.tally;
  if (context.watched.length < 2) return [];
  const found: PlantByOrder[] = [];
  for (const pattern of [...patterns(context.words), goingOn(context.words)]) {
    if (pattern === goingOn(context.words) && found.length === 0) continue;
    for (const match of folded.matchAll(pattern)) {
      const { said = '', nth, digit } = match.groups ?? {};
      const from = match.index + match[0].indexOf(said);
      const names = [...new Set(named.filter(({ at }) => at < from).map(({ name }) => name))];
      const plants = names.length > 1 ? names : context.watched;
      const place = digit === undefined ? (plantByOrder[nth ?? ''] ?? 0) : Number(digit);
      // the last of the list is said as -1
      const name = place < 0 ? plants.at(place) : plants[place - 1];
      const span: Span = [from, from + said.length];
      const taken = found.some((other) => other.span[0] < span[1] && span[0] < other.span[1]);
      if (name !== undefined && names.length !== 1 && !taken) found.push({ name, span });
    }
  }
  return found;
}
