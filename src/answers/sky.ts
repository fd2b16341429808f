/** Cloud and rain: "mostly sunny", "partly cloudy", "30% cloud", "3/8", "overcast, drizzle". Cloud by okta classes. */
import type { Ask } from '../../shared/phrases.js';
import type { Sky } from '../../shared/record.js';
import { CLOUDS, type Cloud } from '../../shared/vocabularies.js';
import {
  LONGEST_TEXT,
  none,
  sure,
  unsure,
  type Context,
  type Finder,
  type Reader,
  type Reading,
  type Span,
} from './reading.js';
import { coversIn, type Cover } from './weather/cover.js';
import { inAny } from './weather/phrases.js';
import { amongWeather, type Finding } from './weather/place.js';
import {
  asksMeaning,
  changedInto,
  changesIn,
  doubtedClauses,
  lastSaid,
  ofTheWatch,
  otherTimeClauses,
  partlySo,
} from './weather/said.js';
import type { SkyHit, SkyPart, SkyWord } from './weather/sky-word.js';
import { madeOnce } from './text.js';
import { asMeant, slurredBefore } from './weather/heard.js';
import { foldDegrees, spoken, type Spoken } from './weather/spoken.js';

/** What is made of the cloud said: the best class first; `ask` is null where there is no doubt. */
interface Meant {
  readonly clouds: readonly Cloud[];
  readonly ask: Ask | null;
}

const clearly = (cloud: Cloud): Meant => ({ clouds: [cloud], ask: null });
const amount = (cloud: Cloud): number => CLOUDS.indexOf(cloud);

/** What is left open, the best first; two skies of one watch may also have been what lies between them. */
function openly(clouds: readonly Cloud[], ask: Ask): Meant {
  const all = [...new Set(clouds)];
  const [first, last] = [Math.min(...all.map(amount)), Math.max(...all.map(amount))];
  const between = all.length === 2 && last - first > 1 ? CLOUDS[Math.ceil((first + last) / 2)] : undefined;
  return { clouds: ask === 'sky-between' && between ? [...all, between] : all, ask };
}

const cloudierFirst = (clouds: readonly Cloud[]): Cloud[] => [...clouds].sort((a, b) => amount(b) - amount(a));

/** What the parts say where the whole sky is not named: "a few clouds", "some sun". */
function fromParts(parts: ReadonlySet<SkyPart>): Meant | null {
  const shines = parts.has('sun') || parts.has('blue');
  const open = parts.has('gaps') || parts.has('holes');
  if (parts.has('gloom')) {
    if (shines) return openly(['scattered', 'overcast'], 'sky-between');
    return clearly(open ? 'broken' : 'overcast');
  }
  if (parts.has('many-clouds')) return clearly('broken');
  if (parts.has('some-cloud')) return clearly('scattered');
  // "a little sun, a little cloud"
  if (parts.has('few-clouds') && parts.has('gaps')) return clearly('scattered');
  if (parts.has('few-clouds') || parts.has('haze')) return clearly('few');
  if (parts.has('bare-cloud')) {
    if (shines) return clearly('scattered');
    return open ? clearly('broken') : openly(['broken', 'overcast'], 'sky-vague');
  }
  if (parts.has('gaps')) return openly(['scattered', 'broken'], 'sky-vague');
  return shines || parts.has('bright') ? clearly('clear') : null;
}

/** What the parts make of a whole sky: "sunny, a few clouds" is few, "cloudy with sunny breaks" is broken. */
function withParts(whole: Cloud, parts: ReadonlySet<SkyPart>): Meant {
  const open = parts.has('gaps') || parts.has('holes') || parts.has('blue');
  switch (whole) {
    case 'clear':
      if (parts.has('gloom')) return openly(['scattered', 'overcast'], 'sky-between');
      if (parts.has('many-clouds')) return clearly('broken');
      if (parts.has('some-cloud') || parts.has('bare-cloud')) return clearly('scattered');
      return clearly(parts.has('few-clouds') || parts.has('haze') ? 'few' : 'clear');
    case 'few':
    case 'scattered':
      return parts.has('gloom') || parts.has('many-clouds') ? openly(['broken', whole], 'sky-between') : clearly(whole);
    case 'broken':
      return clearly('broken');
    case 'overcast':
      if (parts.has('few-clouds') || parts.has('some-cloud')) return openly(['overcast', 'broken'], 'sky-between');
      if (parts.has('sun') && !open) return openly(['broken', 'scattered'], 'sky-between');
      return clearly(open ? 'broken' : 'overcast');
  }
}

/** Classes that together are no contradiction: "sunny, partly cloudy". */
function compatible(wholes: readonly Cloud[]): Cloud | null {
  const [low, high, ...more] = [...wholes].sort((a, b) => amount(a) - amount(b));
  if (more.length > 0 || low !== 'clear') return null;
  return high === 'few' || high === 'scattered' ? high : null;
}

const isWhole = (hit: SkyHit): hit is SkyHit & { value: SkyWord & { says: 'cloud' } } => hit.value.says === 'cloud';
const isOfCloud = ({ value }: SkyHit): boolean =>
  value.says === 'cloud' || value.says === 'part' || value.says === 'vague';
const isVague = (hit: SkyHit): hit is SkyHit & { value: SkyWord & { says: 'vague' } } => hit.value.says === 'vague';

/** "sunny/cloudy" is a mix of both, "partly/mostly cloudy" one or the other. */
const opposite = (left: SkyHit, right: SkyHit): boolean =>
  isWhole(left) &&
  isWhole(right) &&
  Math.abs(amount(left.value.cloud) - amount(right.value.cloud)) === CLOUDS.length - 1;

/** "not overcast, just partly cloudy": what it was not leaves nothing open. */
const startsNegated = (hit: SkyHit, { tokens }: Spoken, { weather }: Context['words']): boolean =>
  weather.negators.includes(tokens[hit.from]?.word ?? '');

/** "sunny to partly cloudy", "clear or mostly sunny", "few/scattered": two classes with only a joining word between. */
function joined(left: SkyHit, right: SkyHit, { folded, tokens }: Spoken, words: Context['words']): boolean {
  // "sun shining through thin clouds"
  if (words.sky.sun.includes(tokens[left.from]?.word ?? '')) return false;
  const between = tokens.slice(left.to, right.from).filter((token) => !token.skipped);
  if (between.length === 0)
    return /^\s*[/-]\s*$/.test(folded.slice(left.span[1], right.span[0])) && !opposite(left, right);
  return (
    between.length === 1 && [...words.weather.rangeJoins, ...words.weather.alternativeJoins].includes(between[0]!.word)
  );
}

/** "mostly sunny, one cloud went over the sun for a minute" and "mostly cloudy, the sun out for a minute" stay what they are. */
const LITTLE_SUN: readonly SkyPart[] = ['sun', 'gaps', 'holes', 'blue'];
const LITTLE_CLOUD: readonly SkyPart[] = ['few-clouds', 'sun', 'blue', 'haze', 'bright'];
const agrees = (whole: Cloud, { value }: SkyHit): boolean =>
  value.says === 'part' &&
  (((whole === 'clear' || whole === 'few') && LITTLE_CLOUD.includes(value.part)) ||
    (whole === 'broken' && LITTLE_SUN.includes(value.part)));

/** "overcast with drizzle at the end": the rain was only then. */
const rainBehind = (hit: SkyHit, rain: readonly SkyHit[]): boolean =>
  rain.some((each) => each.clause === hit.clause && each.from >= hit.to);

/** Puts the words for cloud together; null where there are none. */
function meantBy(
  hits: readonly SkyHit[],
  covers: readonly Cover[],
  rain: readonly SkyHit[],
  text: Spoken,
  words: Context['words'],
): Meant | null {
  const all = hits.filter(isWhole);
  // "grey, mostly cloudy": a mood, and then how much
  const said = all.some((hit) => hit.value.cloud === 'broken')
    ? all.filter((hit) => hit.value.cloud !== 'overcast' || hit.value.trust === 'anywhere')
    : all;
  const wholes = [...new Set(said.map((hit) => hit.value.cloud))];
  const parts = new Set(hits.flatMap(({ value }) => (value.says === 'part' ? [value.part] : [])));
  const vague = hits.find(isVague);
  const byWords = ((): Meant | null => {
    const [only, second] = wholes;
    if (only === undefined) {
      const meant = vague ? openly(vague.value.offer, 'sky-vague') : fromParts(parts);
      // "sun, then clouds"
      const moved = parts.size > 1 && changesIn(text, words)(hits[0]!.clause, hits.at(-1)!.clause);
      return meant && moved ? openly(meant.clouds, 'sky-between') : meant;
    }
    if (second === undefined) {
      const meant = withParts(only, parts);
      const partly = partlySo(text, words);
      const told = vague && !startsNegated(vague, text, words) ? vague.value.offer : undefined;
      if (told && !told.includes(only)) return openly([only, told[0]!], 'sky-between');
      const forAWhile = hits.some((hit) => partly(hit) && !rainBehind(hit, rain) && !agrees(only, hit));
      if (forAWhile) return openly([only, ...meant.clouds], 'sky-between');
      // "sunny, clouds later"
      const moved = meant.clouds[0] !== only && changesIn(text, words)(hits[0]!.clause, hits.at(-1)!.clause);
      return moved ? openly([only, ...meant.clouds], 'sky-between') : meant;
    }
    if (
      said.some(
        (hit, at) => at > 0 && hit.value.cloud !== said[at - 1]!.value.cloud && joined(said[at - 1]!, hit, text, words),
      )
    ) {
      const near = Math.abs(amount(only) - amount(second)) <= 2;
      return openly(near ? cloudierFirst(wholes) : wholes, 'sky-between');
    }
    if (changesIn(text, words)(said[0]!.clause, said.at(-1)!.clause) || said.some(partlySo(text, words)))
      return openly(wholes, 'sky-between');
    const both = compatible(wholes);
    if (both) return withParts(both, parts);
    // "sunny and cloudy": neither, but something between
    if (wholes.length === 2 && wholes.includes('clear') && wholes.includes('overcast')) {
      return openly(parts.has('gaps') ? ['broken', 'scattered'] : ['scattered', 'broken'], 'sky-between');
    }
    return openly(cloudierFirst(wholes), 'sky-between');
  })();

  const [counted, ...more] = covers;
  if (!counted) return byWords;
  const classes = [...new Set(covers.flatMap((cover) => cover.clouds))];
  if (more.length > 0 && classes.length > 1) return openly(classes, 'sky-between');
  if (byWords && Math.abs(amount(byWords.clouds[0]!) - amount(classes[0]!)) > 1) {
    return openly([classes[0]!, byWords.clouds[0]!], 'sky-between');
  }
  return classes.length > 1 || counted.doubtful ? openly(classes, 'sky-vague') : clearly(classes[0]!);
}

/** Of two lists in order, those of the first that overlap none of the second. */
function outside<Told extends { readonly span: Span }>(
  told: readonly Told[],
  taken: readonly { readonly span: Span }[],
): Told[] {
  let at = 0;
  return told.filter(({ span: [from, to] }) => {
    while (at < taken.length && taken[at]!.span[1] <= from) at++;
    return (taken[at]?.span[0] ?? Infinity) >= to;
  });
}

const degreeWords = madeOnce(({ units }: Context['words']['temperature']) => new Set(Object.values(units).flat()));

/** In the same clause as wind or degrees, or in the next to it. */
function besideWeather(
  rain: readonly SkyHit[],
  wind: readonly { readonly clause: number }[],
  { tokens }: Spoken,
  words: Context['words'],
): boolean {
  const isDegrees = (word: string, before: string | undefined): boolean =>
    /^\d{1,3}[cf]$/.test(word) || (degreeWords(words.temperature).has(word) && /^\d/.test(before ?? ''));
  const degrees = tokens.filter(({ word }, at) => isDegrees(word, tokens[at - 1]?.word));
  return rain.some((hit) => [...wind, ...degrees].some(({ clause }) => Math.abs(clause - hit.clause) <= 1));
}

/** Reads one text without corrections in it. */
function readOnce(typed: string, { words }: Context, finding: Finding): Reading<Sky> {
  const text = finding === 'answer' ? asMeant(spoken(typed, words), words) : spoken(typed, words);
  const otherTimes = otherTimeClauses(text, words);
  const { sky: kept, wind, left } = amongWeather(text, words, finding);
  const bare = finding === 'answer' && kept.length === 0;
  // the half of "in the second half" is no share of the sky
  const passedOver = kept.filter(({ value }) => value.says === 'nothing');
  const covers = outside(coversIn(text, words), passedOver)
    .filter((cover) => cover.marked || finding === 'answer')
    .filter((cover) => !cover.doubtful || bare);
  const hits = outside(kept, covers).filter((hit) => !hit.negated);

  const cloudHits = hits.filter(isOfCloud);
  const counted = ofTheWatch(cloudHits, text, words);
  const raining = hits.filter(
    (hit) => (hit.value.says === 'rain' || (isVague(hit) && hit.value.rain)) && !otherTimes.has(hit.clause),
  );
  const meant = meantBy(counted, covers, raining, text, words) ?? (raining.length > 0 ? clearly('overcast') : null);
  const used = [...counted, ...raining, ...covers].map((each) => each.span);
  if (!meant) return none('sky-unknown', used);

  const rain = raining.length > 0;
  const offer = meant.clouds.map((cloud): Sky => ({ cloud, rain }));
  // "rain at first, then it cleared up"
  const clauses = [...raining, ...counted].map(({ clause }) => clause);
  const rainedBefore = rain && changesIn(text, words)(Math.min(...clauses), Math.max(...clauses));
  const withRain: readonly Sky[] =
    rainedBefore && !meant.clouds.includes('overcast') ? [...offer, { cloud: 'overcast', rain }] : offer;
  if (meant.ask) return unsure(withRain, meant.ask, used);
  const others = left.sky.filter((hit) => isOfCloud(hit));
  if (changedInto(others, text, words)) {
    const { clouds } = openly(
      [...meant.clouds, ...others.filter(isWhole).map(({ value }) => value.cloud)],
      'sky-between',
    );
    return unsure(
      clouds.map((cloud): Sky => ({ cloud, rain })),
      'sky-between',
      used,
    );
  }
  if (withRain !== offer) return unsure(withRain, 'sky-between', used);
  // the only word on the sky in a longer text, and it could be of another day; "57 F, drizzle" is of this one
  const alone = counted.length === 0 && covers.length === 0;
  if (finding === 'passing' && alone && !besideWeather(raining, [...wind.words, ...wind.effects], text, words))
    return unsure(offer, 'sky-doubt', used);
  const doubted = doubtedClauses(text, words);
  const isWeather = inAny([...kept, ...left.sky, ...wind.words, ...wind.effects]);
  const hedged =
    [...counted, ...raining, ...covers].some((each) => doubted.has(each.clause)) ||
    (finding === 'answer' && counted.some((hit) => isWhole(hit) && slurredBefore(hit, text, isWeather, words)));
  return hedged ? unsure(offer, 'sky-doubt', used) : sure(offer[0]!, used);
}

/**
 * Reads cloud and rain. A percentage or eighths go to the nearest okta; rain alone means overcast; rain before or after
 * the watch is passed over. A sky that changed, or two that do not agree, is unsure.
 */
export const readSky: Reader<Sky> = (text, context) => {
  if (text.trim() === '') return none('empty');
  if (text.length > LONGEST_TEXT) return none('too-long');
  const folded = foldDegrees(text);
  if (asksMeaning(folded, context.words)) return none('sky-unknown');
  return lastSaid(text, folded, context.words, (part) => readOnce(part, context, 'answer'));
};

/** Finds cloud and rain in a longer text: unmistakable words, or any sky word under a label or among other weather. */
export const findSky: Finder<Sky> = (text, context) => {
  const reading = lastSaid(text, foldDegrees(text), context.words, (part) => readOnce(part, context, 'passing'));
  return reading.state === 'none' ? [] : [reading];
};
