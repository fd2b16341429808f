/** What people ask of the conversation itself. */
import { z } from 'zod';
import { PHOTOGRAPH_LICENCES } from '../vocabularies.js';
import { valued, words } from './kinds.js';
import { questionWords } from './questions.js';

export const wishesSection = z.strictObject({
  /** A whole message, without marks at its end. */
  plain: z.strictObject({
    help: words,
    example: words,
    back: words,
    skip: words,
    /** "don't know": skips what may be skipped. */
    unknown: words,
    'so-far': words,
    /** "change": something is to be put right, and it is not said what. */
    'change-what': words,
    pause: words,
    'go-on': words,
    'throw-away': words,
    start: words,
    stop: words,
    undo: words,
    new: words,
    practice: words,
    real: words,
    'same-place': words,
    /** "that's all": nothing more on the plants not named. */
    'all-done': words,
    /** Asking whether, or saying that, there is a photograph. */
    photograph: words,
    /** Asking how photographs are published, without a licence. */
    licences: words,
    /** Their name may, or may not, stand in what is published. */
    'show-name': words,
    'hide-name': words,
    'remind-me': words,
    'no-reminders': words,
    /** A code that joins two threads of one person is to be mailed, once more. */
    'new-code': words,
    'my-data': words,
    'forget-me': words,
    greeting: words,
    /** No watch was made yet: one is about to begin, or planned. */
    'not-yet': words,
  }),
  /** Of a field: that its value is not known, "I have no thermometer". */
  unknownOf: z.record(z.string(), words),
  /** Of the greetings, those that begin nothing. */
  thanks: words,
  /** With no report open they end the conversation: "see you", or take note: "ok". */
  farewells: words,
  acknowledges: words,
  /** Left out at either end: "please", "can we". */
  polite: words,
  /** "fix my last watch"; a number may follow. */
  fix: words,
  watchNumber: words,
  /** Before the number of a line of the summary. */
  lineNumber: words,
  photographs: z.strictObject({
    /** Whose photographs: "my photos". */
    mine: words,
    /** By the licence, each with blanks for hyphens. */
    licences: z.record(z.enum(PHOTOGRAPH_LICENCES), words),
    /** Stand around a licence and say nothing more: "publish", "under". */
    around: words,
    /** Of which licence-like words are made, known or not. */
    licenceWords: words,
    /** Before or behind "my photos": they are not to be published. */
    keepBack: words,
    /** The same, where it was asked. */
    keptBack: words,
  }),
  /** Before a code that was mailed: "the code is". */
  code: words,
  /** What follows is a field, perhaps with its value. */
  change: words,
  add: words,
  takeOut: words,
  /** Around what is to be taken out: "take the violets away". */
  takeOutApart: z.strictObject({ before: words, after: words }),
  remark: words,
  /** Before a remark that follows without a colon: "note that". */
  remarkThat: words,
  /** What a person may call each field when they want to change it. */
  fields: z.record(z.string(), words),
  /** Between a field and its new value: "to", "should be", "was". */
  becomes: words,
  /** Behind these, and no part of the new value: "should read simply: wetland". */
  beforeValue: words,
  /** A place that is asked about once: the words that make it one's own. */
  own: words,
  /** Words by which a habitat is told in passing. */
  habitat: words,
  /** Words that answer whether a place is private: "it's a park". */
  publicPlace: words,
  /** Words that answer that a place is not private: "not anyone's yard". */
  notPrivate: words,
  /** Words that make a place private where that was asked, and only there: "my neighbor's garden" (of a place, `own`). */
  privateAnswer: words,
  /** A greeting or a yes before a name, which says nothing of what follows. */
  nameHello: words,
  /** Before a name: "my name is". */
  nameLead: words,
  /** Before another name that is offered: "but" of "but Orv is fine". */
  nameBut: words,
  /** Between the name that is used and the whole one: "short for". */
  nameWhole: words,
  /** Written before a name, with a point: "Mrs." */
  nameTitles: words,
  /** A name or an address is not given: "I don't have email". */
  keepsBack: words,
  /** Words of sentences that are no part of a name, told where a name was asked for. */
  notNames: words,
  /** What people are, not what they are called: "I'm done". */
  notNamed: words,
  /** "the first one", by the position it stands for. */
  ordinals: valued,
  /** "either", "can't tell": takes the genus at the end of the offers. */
  either: words,
  /** Words of questions that people ask back, by what they are about. */
  questions: questionWords,
  /** How an address is said aloud: "wren at kestrelfen dot example". */
  mailSigns: z.strictObject({ at: words, dot: words }),
  /** Between a whole name and the one that is used: "everyone calls me". */
  nameUsed: words,
  /** Behind a name: "is fine". */
  nameTail: words,
  /** A yes to the question whether their answers may be kept. */
  consents: words,
  /** Before the words of a kind of place, and no part of it: "it is a". */
  habitatAround: words,
  /** Stand around the words that choose an offer and say nothing more: "I think", "please". */
  aroundChoice: words,
});
