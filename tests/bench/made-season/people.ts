/** The observers: how keen, how well they know bees, where they go; and who tells of which watch. */
import type { SurveySettings } from '../../../shared/survey.js';
import type { Chance } from './chance.js';
import { gardenSpot, publicSpots, type Spot } from './places.js';

export interface Observer {
  readonly key: string;
  readonly channel: string;
  /** How many times more or fewer queens than usual they find. */
  readonly times: number;
  /** Share of bees that they name rightly. */
  readonly skill: number;
  readonly usualSpot: Spot;
  readonly otherSpot: Spot;
  /** Tells workers from queens, and tells of them. */
  readonly noticesWorkers: boolean;
  /** How often somebody comes along. */
  readonly company: number;
}

/** Spread of what observers find (log-normal). */
const SPREAD = 0.45;

/** `kf-07`: the first letters of the survey's key. It names nobody. */
function keysOf(settings: SurveySettings, observers: number): (index: number) => string {
  const initials = settings.key.split('-').map((part) => part.slice(0, 1));
  const digits = Math.max(2, String(observers).length);
  return (index) => `${initials.join('')}-${String(index + 1).padStart(digits, '0')}`;
}

export function observersOf(settings: SurveySettings, observers: number, chance: Chance): Observer[] {
  const { sites, others } = publicSpots(settings, chance);
  const keyOf = keysOf(settings, observers);
  return Array.from({ length: observers }, (_, index): Observer => {
    const garden = gardenSpot(settings, chance);
    const site = sites.length > 0 ? chance.one(sites) : garden;
    const how = chance.share();
    return {
      key: keyOf(index),
      channel: chance.one(['telegram', 'telegram', 'telegram', 'email', 'terminal']),
      times: chance.times(SPREAD),
      skill: Math.min(0.97, Math.max(0.5, 0.78 + 0.1 * chance.normal())),
      usualSpot: how < 0.5 ? site : garden,
      otherSpot: how < 0.3 ? chance.one(others) : how < 0.6 ? garden : site,
      noticesWorkers: chance.yes(0.3),
      company: chance.yes(0.12) ? 0.6 : 0.03,
    };
  });
}

/** Some watch once, most three to eight times, a few about twenty. */
function keenness(chance: Chance): number {
  const how = chance.share();
  if (how < 0.15) return 1;
  return how < 0.93 ? chance.whole(3, 8) : chance.whole(17, 22);
}

/** How many watches each makes: `watches` in all, and at least one each while there are so many. */
function sharesOf(observers: number, watches: number, chance: Chance): number[] {
  if (watches < observers) return Array.from({ length: observers }, (_, index) => (index < watches ? 1 : 0));
  const raw = Array.from({ length: observers }, () => keenness(chance));
  const all = raw.reduce((sum, share) => sum + share, 0);
  const larger = Math.max(1, Math.floor(watches / all));
  const shares = raw.map((share) => share * larger);
  let left = watches - all * larger;
  // Those who come often take or give what does not add up, so that those who came once did come once.
  const often = shares.flatMap((share, index) => (share > larger ? [index] : []));
  const [some, least] = often.length > 0 ? [often, 2] : [shares.map((_, index) => index), 1];
  for (let turn = 0; left !== 0; turn++) {
    const index = some[turn % some.length] ?? 0;
    const share = shares[index] ?? 0;
    if (left > 0) shares[index] = share + 1;
    else if (share > (turn < 20 * some.length ? least : 1)) shares[index] = share - 1;
    else continue;
    left -= Math.sign(left);
  }
  return shares;
}

/** Whose turn each watch is, as places in the list of observers: four bytes a watch are all that is kept of it. */
export function turnsOf(observers: number, watches: number, chance: Chance): Int32Array {
  const turns = new Int32Array(watches);
  let filled = 0;
  sharesOf(observers, watches, chance).forEach((share, index) => {
    turns.fill(index, filled, filled + share);
    filled += share;
  });
  for (let last = watches - 1; last > 0; last--) {
    const other = chance.whole(0, last);
    const kept = turns[last] ?? 0;
    turns[last] = turns[other] ?? 0;
    turns[other] = kept;
  }
  return turns;
}
