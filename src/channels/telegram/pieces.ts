/** Cuts a text into messages that Telegram takes. */

/** Telegram takes 4,096 characters a message; counted in UTF-16 units, which are never fewer. */
export const LONGEST_MESSAGE = 4096;

/** Where a text may be cut, the best first; each match ends where the next piece begins. */
const CUTS = [/\n/g, /[.!?…]["”’)]*\s/g, /\s/g] as const;

/** The end of the last match that leaves at least half of what fits; 0 where there is none. */
function cutAt(text: string, most: number, cut: RegExp): number {
  // one more, since the white space at a cut is left out
  const end = [...text.slice(0, most + 1).matchAll(cut)].at(-1);
  const at = end === undefined ? 0 : end.index + end[0].length;
  return at > most / 2 ? at : 0;
}

/** Never between the two units of one letter. */
function hardCut(text: string, most: number): number {
  const last = text.charCodeAt(most - 1);
  return last >= 0xd800 && last <= 0xdbff ? most - 1 : most;
}

/** Pieces of at most so many UTF-16 units, cut at line ends, else after sentences, else between words. */
export function pieces(text: string, most: number = LONGEST_MESSAGE): string[] {
  const all: string[] = [];
  let rest = text.trim();
  while (rest.length > most) {
    const at = CUTS.map((cut) => cutAt(rest, most, cut)).find((found) => found > 0) ?? hardCut(rest, most);
    all.push(rest.slice(0, at).trim());
    rest = rest.slice(at).trim();
  }
  return rest === '' ? all : [...all, rest];
}
