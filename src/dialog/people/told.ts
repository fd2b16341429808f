/** What somebody tells of themselves when asked: a name as they write their own, an address to mail to. */
import { z } from 'zod';
import { anyOf, fold } from '../../answers/index.js';
import type { Scene } from '../types.js';

const LONGEST_NAME = 60;
const MOST_WORDS = 5;

/** Of "Mike, no wait, put Michael" what stands behind the taking back; all of it where nothing is taken back. */
function lastSaid(text: string, { survey: { words } }: Scene): string {
  const back = [...text.matchAll(new RegExp(`(?<![\\p{L}@.])${anyOf(words.tally.takesBack)}(?![\\p{L}@.])`, 'giu'))].at(
    -1,
  );
  const rest = back === undefined ? '' : text.slice(back.index + back[0].length).replace(/^[\s,;:.–-]+/u, '');
  return rest === '' ? text : rest;
}

/** "marlene at gmail dot com", as it is said aloud: with its signs. */
function withSigns(text: string, { survey }: Scene): string {
  if (text.includes('@')) return text;
  const { at, dot } = survey.words.wishes.mailSigns;
  return text
    .replace(new RegExp(`\\s*${anyOf(dot)}\\s*`, 'giu'), '.')
    .replace(new RegExp(`\\s*${anyOf(at)}\\s*`, 'iu'), '@');
}

/** The address in a text, the last one where one is taken back; null where there is none, or several to choose from. */
export function mailIn(text: string, scene: Scene): string | null {
  const all = (of: string): string[] => [
    ...new Set(
      [...of.matchAll(/[^\s<>,;:()"']{1,64}@[^\s<>,;:()"']{1,190}/gu)].map(([mail]) => mail.replace(/[.!?]+$/, '')),
    ),
  ];
  const told = withSigns(text, scene);
  const behind = all(lastSaid(told, scene));
  const mails = behind.length > 0 ? behind : all(told);
  const [mail] = mails;
  return mail !== undefined && mails.length === 1 && z.email().safeParse(mail).success ? mail : null;
}

const bareEnd = (text: string): string => text.replace(/[\s.!]+$/, '');

/** Without "my name is", "just put", "hello": all that leads to a name. */
function withoutLeads(text: string, leads: readonly string[]): { readonly own: string; readonly isLed: boolean } {
  const longest = [...leads].sort((a, b) => b.length - a.length);
  let own = text.trim();
  let isLed = false;
  for (;;) {
    const lead = longest.find((words) => new RegExp(`^${anyOf([words])}[\\s,!.]`, 'u').test(fold(own)));
    if (lead === undefined) return { own, isLed };
    own = own.slice(lead.length).replace(/^[\s,.!]+/, '');
    isLed = true;
  }
}

/** Of "Orville Hendricksen, but Orv is fine" the last part, where it ends as an offer of a name does. */
function offered(text: string, { survey }: Scene): string {
  const { nameTail, nameBut } = survey.words.wishes;
  const but = [...fold(text).matchAll(new RegExp(`[\\s,]${anyOf(nameBut)}\\s`, 'gu'))].at(-1);
  if (but === undefined) return text;
  const part = text.slice(but.index + but[0].length);
  return nameTail.some((words) => fold(bareEnd(part)).endsWith(` ${words}`)) ? part : text;
}

/** A name as somebody writes their own: no digits, not long, "my name is" left out; null where there is none. */
export function nameIn(text: string, scene: Scene): string | null {
  const { nameHello, nameLead, nameUsed, nameTail, nameWhole, notNames, notNamed, nameTitles, acknowledges } =
    scene.survey.words.wishes;
  // "Priya 😊"; "Pat (short for Patricia)" is Pat, "Beverly (everyone says Bev)" Bev
  const plain = lastSaid(text, scene).replace(/\p{Extended_Pictographic}|\uFE0F|\u200D/gu, '');
  const short = plain.split(new RegExp(`[\\s,(]+${anyOf(nameWhole)}\\s`, 'iu'))[0] ?? '';
  const used = [...fold(short).matchAll(new RegExp(`${anyOf(nameUsed)}\\s+`, 'gu'))].at(-1);
  const said = used === undefined ? offered(short, scene) : short.slice(used.index + used[0].length);
  const { own, isLed } = withoutLeads(withoutLeads(said, nameHello).own, nameLead);
  const tail = [...nameTail]
    .sort((a, b) => b.length - a.length)
    .find((words) => fold(bareEnd(own)).endsWith(` ${words}`));
  const told = bareEnd(own)
    .slice(0, tail === undefined ? undefined : -tail.length)
    .trim();
  // "do I have to", "thanks, bye", "same as last year": nobody is called so, unless they say it is their name
  const words = fold(told).match(/[\p{L}']+/gu) ?? [];
  if (!isLed && words.some((word) => notNames.includes(word))) return null;
  if (acknowledges.includes(fold(told))) return null;
  if (new RegExp(`^${anyOf(notNamed)}(?![\\p{L}'-])`, 'u').test(fold(told))) return null;
  // "It's Philippa, with one l and two p's"; the point of "Mrs. Thorvald" ends nothing
  const ends = new RegExp(`[,;(!?]|(?<!(?:^|\\s)${anyOf(nameTitles)})\\.(?=\\s|$)`, 'iu');
  const name = (told.split(ends)[0] ?? '').replace(/[\s):–-]+$/u, '').trim();
  if (name === '' || name.length > LONGEST_NAME || /[\p{N}@?]/u.test(name) || !/\p{L}/u.test(name)) return null;
  return name.split(/\s+/).length > MOST_WORDS ? null : name;
}
