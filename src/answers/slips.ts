/** What a thumb makes of a word: "thrity", "fity", "twellve". */

/** Of shorter words too many slips are words of their own: "ten" and "tne", but "for" and "four". */
const SHORTEST = 5;

/** The word with two letters changed about, one left out or one doubled; its first and last letter stay. */
export function slipsOf(word: string): string[] {
  if (word.length < SHORTEST) return [];
  const slips: string[] = [];
  for (let at = 1; at < word.length - 1; at++) {
    const [before, letter, after] = [word.slice(0, at), word[at]!, word.slice(at + 1)];
    slips.push(before + after, before + letter + letter + after);
    if (at < word.length - 2) slips.push(before + after[0]! + letter + after.slice(1));
  }
  return slips.filter((slip) => slip !== word);
}
