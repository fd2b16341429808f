/** Text for a terminal: lines of a given width, and nothing that steers it. */

/** What people typed must not steer the terminal: control characters and changes of direction become a space. */
export const harmless = (text: string): string => text.replaceAll(/[\p{Cc}\u202a-\u202e\u2066-\u2069]+/gu, ' ').trim();

/** How many columns a text takes, counted in code points: right for Latin letters, one short for most emoji. */
export const columnsOf = (text: string): number => [...text].length;

/** Cuts a word longer than a line into pieces that fit. */
function pieces(word: string, columns: number): string[] {
  const letters = [...word];
  const count = Math.max(1, Math.ceil(letters.length / columns));
  return Array.from({ length: count }, (_, piece) => letters.slice(piece * columns, (piece + 1) * columns).join(''));
}

/** Breaks a text at spaces into lines of at most so many columns. */
export function wrapped(text: string, columns: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).flatMap((one) => pieces(one, columns))) {
    const last = lines.at(-1);
    if (last === undefined || columnsOf(last) + 1 + columnsOf(word) > columns) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}
