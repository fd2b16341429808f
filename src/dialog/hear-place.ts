/** What a message tells of the place: by its own words, as a saved one, as a site of the survey, and whose it is. */
import { correctsOnly, fold, readYesNo, saysAnyOf, type Context, type Reading } from '../answers/index.js';
import { tell } from './fields.js';
import { lastPlaceOf, placeNamed, savedPlaceOf, siteMeant, type ToldPlace } from './places.js';
import type { Report, Scene } from './types.js';

/** The words in a text that say whose a place is; both for "my yard, but I watched the park side too". */
function ownership(
  text: string,
  { words: { wishes } }: Context,
): { readonly isOwn: boolean; readonly isPublic: boolean } {
  // "not a private one", "not anyone's yard"
  if (saysAnyOf(text, wishes.notPrivate)) return { isOwn: false, isPublic: true };
  return {
    isOwn: saysAnyOf(text, wishes.own) || saysAnyOf(text, wishes.privateAnswer),
    isPublic: saysAnyOf(text, wishes.publicPlace),
  };
}

/** Whether a place is private: a yes or no, or words that settle it ("it's a park", "my back yard"). */
export function readPrivate(text: string, context: Context): Reading<unknown> | null {
  const reading = readYesNo(text, context);
  // a correction of something else is a "no" to a summary, not to this
  if (reading.state === 'sure' && !correctsOnly(reading, text))
    return { ...reading, value: reading.value.answer === 'yes' };
  // "is my back yard private?" asks, and settles nothing
  if (/\?\s*$/.test(text)) return null;
  const { isOwn, isPublic } = ownership(text, context);
  if (isOwn === isPublic) return null;
  return { state: 'sure', value: isOwn, used: [[0, text.length]] };
}

/** Asked whose a place is, a text that says it tells no other place and no weather: "half and half, my yard and the park". */
export function tellsWhose(text: string, asked: readonly string[], context: Context): boolean {
  if (asked.length !== 1 || asked[0] !== 'private') return false;
  const { isOwn, isPublic } = ownership(text, context);
  return isOwn || isPublic;
}

/** "My back yard" says by itself that the place is private. */
export function privateByWords(report: Report, text: string, { survey, message }: Scene): Report {
  const { wishes } = survey.words;
  const isOwn = saysAnyOf(text, wishes.own) && !saysAnyOf(text, wishes.publicPlace);
  return isOwn && survey.dialog.fields['private'] !== undefined
    ? tell(report, 'private', true, text, message.id)
    : report;
}

/** A place said by the words of a saved one is that place, with its position. */
function fromSaved(reading: Reading<unknown>, scene: Scene): Reading<unknown> {
  if (reading.state !== 'sure') return reading;
  const place = reading.value as { latitude: number | null; words: string };
  if (place.latitude !== null || place.words === '') return reading;
  const saved = savedPlaceOf(place.words, scene.history.places);
  if (!saved) return reading;
  const { latitude, longitude, uncertaintyMetres, words } = saved;
  return { ...reading, value: { latitude, longitude, uncertaintyMetres, words } };
}

/** The place used last, told again; null where this person has none. */
export function samePlace(report: Report, typed: string, scene: Scene): Report | null {
  const saved = lastPlaceOf(scene.history.places);
  if (!saved) return null;
  const { latitude, longitude, uncertaintyMetres, words } = saved;
  return tell(report, 'place', { latitude, longitude, uncertaintyMetres, words }, typed, scene.message.id);
}

/** "It was at the Fen Boardwalk" is the Fen Boardwalk. */
function withoutLead(reading: Reading<unknown>, { survey }: Scene): Reading<unknown> {
  if (reading.state !== 'sure') return reading;
  const value = reading.value as ToldPlace;
  const { sentenceLeads, nameAfter, nameArticles } = survey.words.place;
  const said = fold(value.words);
  const leads = sentenceLeads.flatMap((lead) => nameAfter.map((preposition) => `${lead} ${preposition} `));
  const lead =
    leads.find((each) => said.startsWith(each)) ??
    // "it is the clinic grounds"
    sentenceLeads
      .map((each) => `${each} `)
      .find((each) => nameArticles.some((article) => said.startsWith(`${each}${article} `)));
  return lead === undefined ? reading : { ...reading, value: { ...value, words: value.words.slice(lead.length) } };
}

/** The place a reading means: a saved one, else the site whose name its words begin, as that site is called. */
export function placeMeant(given: Reading<unknown>, left: string, scene: Scene): Reading<unknown> {
  const reading = withoutLead(given, scene);
  const known = fromSaved(reading, scene);
  if (known !== reading) return known;
  const read = reading.state === 'sure' ? reading.value : reading.state === 'unsure' ? reading.offer[0] : undefined;
  const { latitude, words } = (read ?? { latitude: null, words: left }) as ToldPlace;
  const meant = latitude === null ? siteMeant(words, scene.survey) : null;
  if (meant === null) return reading;
  const place = placeNamed(meant.words);
  if (meant.isSure && !words.includes('?')) return { state: 'sure', value: place, used: reading.used };
  return reading.state === 'sure'
    ? reading
    : { state: 'unsure', offer: [place], ask: 'place-doubt', used: reading.used };
}

/** Of "to at heron bend", left of "2 to 2:15 at heron bend", the last two words. */
function withoutSmall(clause: string, { survey }: Scene): string {
  const { place, times } = survey.words;
  const small = new Set([...place.nameAfter, ...place.nameArticles, ...times.to, ...times.between, ...times.and]);
  const words = clause.trim().split(/\s+/);
  const from = words.findIndex((word) => !small.has(fold(word)));
  return words.slice(Math.max(0, from)).join(' ');
}

/** A site named in a clause of its own among words that nothing else was read from: "5/6 0930-0945 Oak Rise". */
export function siteAmong(left: string, scene: Scene): Reading<unknown> | null {
  for (const clause of left.split(/[,;.\n]+|(?<=^|\s)-(?=\s)/)) {
    const meant = siteMeant(withoutSmall(clause, scene), scene.survey);
    if (meant?.isSure === true) return { state: 'sure', value: placeNamed(meant.words), used: [] };
    // "mon 4:20-4:35pm my yard."
    const own = withoutSmall(clause, scene);
    if (scene.survey.words.wishes.own.includes(fold(own))) return { state: 'sure', value: placeNamed(own), used: [] };
  }
  return null;
}
