/** The demo survey for tests, and the context in which its answers are read: 6 May 2026, half past six in the evening. */
import type { Context, Reading } from '../src/answers/index.js';
import { loadSurvey } from '../src/settings/index.js';

export const survey = loadSurvey();

export const demo: Context = {
  survey: survey.settings,
  words: survey.words,
  names: survey.names,
  today: '2026-05-06',
  time: '18:30',
  watched: [],
  of: null,
};

/** A reading on one line: `sure 22.2` · `unsure 6.7 | 44, no-unit` · `not understood, no-number`. */
export function brief<Value>(
  reading: Reading<Value>,
  show: (value: Value) => string = (value) => JSON.stringify(value),
): string {
  switch (reading.state) {
    case 'sure':
      return `sure ${show(reading.value)}`;
    case 'unsure':
      return `unsure ${reading.offer.map(show).join(' | ')}, ${reading.ask}`;
    case 'none':
      return `not understood, ${reading.ask}`;
  }
}
