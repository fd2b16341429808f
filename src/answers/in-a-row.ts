/**
 * Phrases one behind the other, whatever stands between them: "thanks, ok.". A pattern that repeats itself inside
 * (`(?:phrase[\s,]*)+`) takes time that doubles with every phrase of a text which ends otherwise; a step a phrase
 * does not.
 */

/** Where phrases in a row, the first at `from`, end; `from` where none stands there. */
export type InARow = (text: string, from?: number) => number;

/** `phrase` is a part of a pattern, `between` the inside of a class of characters that may follow each. */
export function inARow(phrase: string, between: string): InARow {
  const step = new RegExp(`${phrase}[${between}]*`, 'uy');
  return (text, from = 0) => {
    let end = from;
    for (;;) {
      step.lastIndex = end;
      const length = step.exec(text)?.[0].length ?? 0;
      if (length === 0) return end;
      end += length;
    }
  };
}

/** Whether a text is nothing but such phrases, one at least; `before` is what may stand in front of them. */
export function nothingBut(phrase: string, before: string, between: string): (text: string) => boolean {
  const row = inARow(phrase, between);
  const front = new RegExp(`^[${before}]*`, 'u');
  return (text) => {
    const from = front.exec(text)?.[0].length ?? 0;
    return from < text.length && row(text, from) === text.length;
  };
}
