/** The parts of a form: "Temp: 61 F", "Start - 1:05 pm; end - 1:20 pm", a label on one line and its value on the next. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { Span } from '../reading.js';
import { madeOnce } from '../text.js';

export type Label = keyof Words['note']['labels'];

export interface Labelled {
  readonly label: Label;
  /** The label with its sign. */
  readonly labelSpan: Span;
  readonly value: Span;
}

const formOf = madeOnce((labels: Words['note']['labels']) => {
  const labelOf = new Map<string, Label>();
  for (const label of Object.keys(labels) as Label[]) for (const phrase of labels[label]) labelOf.set(phrase, label);
  // a label begins a line or follows a sign; "wind: light" and "wind - light", but "bluebells - 85" only as a label
  const pattern = new RegExp(
    `(?<=^|[\\n;|,.•]|\\t|\\s{2}|[*-]\\s?)[ \\t*•#-]{0,4}(?<label>${anyOf([...labelOf.keys()])})[ \\t]*(?:\\([^()\\n]{0,30}\\))?[ \\t]*\\*{0,2}(?<sign>[:=]|[ \\t]-[ \\t]|\\t)\\*{0,2}`,
    'gu',
  );
  return { labelOf, pattern };
});

/** Labels with their values, left to right. `folded` is the writer's own text. */
export function labelledIn(folded: string, words: Words): Labelled[] {
  const { labelOf, pattern } = formOf(words.note.labels);
  const found = [...folded.matchAll(pattern)].flatMap((match) => {
    const label = labelOf.get((match.groups?.['label'] ?? '').replace(/\s+/g, ' '));
    return label === undefined ? [] : [{ label, from: match.index, to: match.index + match[0].length }];
  });
  return found.map(({ label, from, to }, at) => {
    const next = found[at + 1]?.from ?? folded.length;
    const line = folded.indexOf('\n', to);
    let end = Math.min(next, line === -1 ? folded.length : line);
    // the value stands on the next line
    if (line !== -1 && line < next && folded.slice(to, line).trim() === '') {
      const nextLine = folded.indexOf('\n', line + 1);
      end = Math.min(next, nextLine === -1 ? folded.length : nextLine);
    }
    return { label, labelSpan: [from, to] as const, value: [to, end] as const };
  });
}
