/** What stands on a button: its choice's words, shortened to what fits one line of a phone, and back again. */

/** About what a phone shows on a button as wide as the screen; the Bot API names no limit, and its clients cut the end off. */
const MOST_LETTERS = 40;
/** Of a long one the end is kept too: bees and places often differ there. */
const LETTERS_AT_END = 15;

export function buttonText(words: string): string {
  const line = words.trim().replace(/\s*\n\s*/g, '; ');
  const letters = [...line];
  if (letters.length <= MOST_LETTERS) return line;
  const head = letters.slice(0, MOST_LETTERS - LETTERS_AT_END - 1).join('');
  return `${head.trimEnd()}…${letters.slice(-LETTERS_AT_END).join('').trimStart()}`;
}

/** Of all choices below one message; those that would look the same are numbered. */
export function buttonTexts(choices: readonly string[]): string[] {
  const texts = choices.map(buttonText);
  return texts.map((text, at) => {
    const sameBefore = new Set(choices.filter((_, before) => before < at && texts[before] === text));
    sameBefore.delete(choices[at]!);
    return sameBefore.size === 0 ? text : `${text} (${sameBefore.size + 1})`;
  });
}

/** The choice behind a button's text; the text itself where it is none of these. */
export const choiceOf = (text: string, choices: readonly string[]): string =>
  choices[buttonTexts(choices).indexOf(text)] ?? text;
