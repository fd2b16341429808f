/** How good somebody says their coordinates are: "accurate to 8 m", "(±12 m)", "+/- 30 ft", "8 m accuracy". */
import { metresPerUnit } from '../../../shared/units.js';
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { Span } from '../reading.js';
import { madeOnce } from '../text.js';

export interface Accuracy {
  readonly metres: number;
  readonly span: Span;
}

const patternsOf = madeOnce((words: Words) => {
  const { place, patch } = words;
  const units = Object.keys(patch.lengths)
    .sort((a, b) => b.length - a.length)
    .map((unit) => unit + (/\p{L}$/u.test(unit) ? '(?!\\p{L})' : ''))
    .join('|');
  const amount = `(?<number>\\d{1,6}(?:\\.\\d{1,6})?)\\s?-?(?<unit>${units})\\.?`;
  const before = `${anyOf(place.accuracyBefore)}[\\s:=]{0,3}(?:${anyOf(place.accuracySoft)}[\\s:=]{0,3}){0,3}`;
  return [
    // "within 10 m of the bridge" is a place
    new RegExp(`\\(?${before}${amount}(?!\\s+${anyOf(place.awayFrom)})\\)?`, 'u'),
    new RegExp(
      `\\(?(?<![\\d.])${amount}\\s?(?:${anyOf(place.accuracySoft)}\\s?)?${anyOf(place.accuracyAfter)}\\)?`,
      'u',
    ),
  ];
});

/** The accuracy said in the text, in metres; null where none is. `plain` as by `plainCoordinates`. */
export function accuracyIn(plain: string, words: Words): Accuracy | null {
  for (const pattern of patternsOf(words)) {
    const match = pattern.exec(plain);
    const unit = words.patch.lengths[match?.groups?.['unit'] ?? ''];
    if (!match || !unit) continue;
    const metres = Number(match.groups?.['number']) * metresPerUnit[unit];
    return { metres, span: [match.index, match.index + match[0].length] };
  }
  return null;
}
