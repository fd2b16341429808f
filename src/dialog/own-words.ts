/** What somebody writes in a mail that answers one question: without greeting, signature and what is quoted of ours. */
import { ownText } from '../answers/index.js';
import type { Scene, Thread } from './types.js';

/** "4. Temperature: 71 °F", the last line that is quoted above an answer. */
const QUOTED_LINE = /(?:^|\n)[ \t>]*(?<line>\d{1,2})[.):][ \t][^\n]*\s*$/u;

/**
 * A whole watch and the answers to a list find their own words themselves: quoted questions tell them what is answered.
 * Under a quoted line of the summary stands what that line should be.
 */
export function ownWords(text: string, { asking }: Thread, { message, survey }: Scene): string {
  if (message.manner !== 'all' || asking === null || asking.kind === 'list') return text;
  const { numbered, parts } = ownText(text, survey.words);
  const ofSummary = asking.kind === 'confirm' || asking.kind === 'correct';
  const said = parts.map(({ span, question }) => {
    const words = numbered.slice(...span).trim();
    const line = ofSummary && question !== null ? QUOTED_LINE.exec(question)?.groups?.['line'] : undefined;
    return line === undefined ? words : `${line}. ${words}`;
  });
  // a farewell alone is still an answer to be answered
  return said.join('\n').trim() || text.replace(/^[ \t]*>.*$/gmu, '');
}
