/** What is asked of the person rather than of the watch once a first one is stored: name and mail. */
import { z } from 'zod';
import { anyOf, fold, readWish, readYesNo, saysAnyOf, type Wish } from '../../answers/index.js';
import type { Person } from '../../../shared/person.js';
import { fill, say } from '../../../shared/wording.js';
import { afterwards } from './afterwards.js';
import { contextOf } from '../hear.js';
import { mailCode } from './joining.js';
import { personOf } from './person-of.js';
import { sendReceipt } from './receipt.js';
import type { Effect, Outcome, Scene, Thread } from '../types.js';

const LONGEST_NAME = 60;
/** No name and no address, though they could be one. */
const NO_ANSWERS: ReadonlySet<Wish['wish']> = new Set<Wish['wish']>(['new', 'start', 'change-what']);

export function answerPerson(
  thread: Thread,
  field: 'name' | 'mail',
  text: string,
  wish: Wish | null,
  scene: Scene,
): Outcome | null {
  const { wording } = scene.survey;
  const person = personOf(scene);
  const done = (next: Person, said: readonly string[], more: readonly Effect[] = []): Outcome => {
    const photographed = scene.history.lastWatches.some(({ photographs }) => photographs.length > 0);
    const wanted = afterwards(next, { photographed, progress: scene.history.progress }, scene);
    return {
      thread: { ...thread, asking: wanted.asking },
      said: [...said, ...wanted.said],
      effects: [{ do: 'keep-person', person: next }, ...more, ...wanted.effects],
      then: wanted.asking === null ? 'rest' : 'repeat',
    };
  };
  const yesNo = readYesNo(text, contextOf(scene, null));
  const declines =
    wish?.wish === 'skip' ||
    endsInSkip(text, scene) ||
    wish?.wish === 'unknown' ||
    (yesNo.state === 'sure' &&
      yesNo.value.answer === 'no' &&
      (yesNo.value.rest === null || keepsBack(yesNo.value.rest, scene)));
  if (declines) {
    const all = { ...person, declined: [...new Set([...person.declined, field])] };
    return done(all, [say(wording, field === 'mail' ? 'mail-declined' : 'name-declined')]);
  }
  if (wish !== null && NO_ANSWERS.has(wish.wish)) return null;
  if (field === 'mail') {
    const mail = /[^\s<>,;:()"']{1,64}@[^\s<>,;:()"']{1,190}/u.exec(withSigns(text, scene))?.[0].replace(/[.!?]+$/, '');
    if (mail !== undefined && z.email().safeParse(mail).success)
      // the same for all: whether somebody else has that address is told to its readers alone
      return done(
        { ...person, mail },
        [say(wording, 'mail-kept', { mail })],
        [...lastReceipt(person.name, mail, scene), ...mailCode(mail, scene)],
      );
    return {
      thread,
      said: [fill(wording, wording.asks['no-mail'], { typed: text.slice(0, 60), offer: '' })],
      effects: [],
      then: 'rest',
    };
  }
  const name = nameIn(text, scene);
  if (name !== null) return done({ ...person, name }, [say(wording, 'name-kept', { name })]);
  return {
    thread,
    said: [fill(wording, wording.asks['no-name'], { typed: text.slice(0, 60), offer: '' })],
    effects: [],
    then: 'rest',
  };
}

/** "marlene at gmail dot com", as it is said aloud: with its signs. */
function withSigns(text: string, { survey }: Scene): string {
  if (text.includes('@')) return text;
  const { at, dot } = survey.words.wishes.mailSigns;
  return text
    .replace(new RegExp(`\\s*${anyOf(dot)}\\s*`, 'giu'), '.')
    .replace(new RegExp(`\\s*${anyOf(at)}\\s*`, 'iu'), '@');
}

/** "tess at … no wait, skip": what was begun is taken back. */
function endsInSkip(text: string, { survey: { words } }: Scene): boolean {
  const last = text.split(/[,.;…!]+/).at(-1) ?? '';
  return last !== text && readWish(last, words)?.wish === 'skip' && saysAnyOf(text, words.tally.takesBack);
}

/** The address is asked for after a watch was stored, so that watch's receipt is the first to go there. */
function lastReceipt(name: string | null, mail: string, scene: Scene): Effect[] {
  const { lastWatches, progress } = scene.history;
  const last = lastWatches.find(({ status }) => status === 'confirmed' || status === 'practice');
  return last === undefined ? [] : [sendReceipt(last, { name, mail }, progress, scene)];
}

/** "no, I won't give my name", "no email please"; "no, call me Bo" is none. */
const keepsBack = (rest: string, scene: Scene): boolean => !rest.includes('@') && nameIn(rest, scene) === null;

const bareEnd = (text: string): string => text.replace(/[\s.!]+$/, '');

/** A name as somebody writes their own: no digits, not long, "my name is" left out. */
function nameIn(text: string, scene: Scene): string | null {
  const { nameLead, nameUsed, nameTail } = scene.survey.words.wishes;
  const used = [...fold(text).matchAll(new RegExp(`${anyOf(nameUsed)}\\s+`, 'gu'))].at(-1);
  const own = text.slice(used === undefined ? 0 : used.index + used[0].length).trim();
  const lead = nameLead.find((words) => fold(own).startsWith(`${words} `));
  const tail = [...nameTail]
    .sort((a, b) => b.length - a.length)
    .find((words) => fold(bareEnd(own)).endsWith(` ${words}`));
  const told = bareEnd(own)
    .slice(lead?.length ?? 0, tail === undefined ? undefined : -tail.length)
    .trim();
  // "do I have to", "thanks, bye": nobody is called so, unless they say it is their name
  const { notNames } = scene.survey.words.wishes;
  const words = fold(told).match(/[\p{L}']+/gu) ?? [];
  if (lead === undefined && words.some((word) => notNames.includes(word))) return null;
  // "It's Philippa, with one l and two p's"
  const name = (told.split(/[,;(!?]|\.(?=\s|$)/)[0] ?? '').trim();
  if (name === '' || name.length > LONGEST_NAME || /[\p{N}@?]/u.test(name) || !/\p{L}/u.test(name)) return null;
  return name.split(/\s+/).length > 5 ? null : name;
}
