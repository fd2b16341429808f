/**
 * UTM: "15T 471230 4960112", "zone 15 north, 471230 E 4960112 N", "easting 471230 northing 4960112 15N". Without a zone
 * they cannot be read. A letter is a latitude band; "S" is the band from 32° N where the northing fits it, else south.
 */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { Span } from '../reading.js';
import { madeOnce } from '../text.js';
import type { CoordinatesFound, CoordinatesForm } from './form.js';
import { degreesOfGrid, isZoneOfBand, latitudesOfBand } from './grid.js';

const EAST = String.raw`\d{3},\d{3}(?:\.\d{1,3})?|\d{6}(?:\.\d{1,3})?|0\d{6}(?:\.\d{1,3})?`;
const NORTH = String.raw`\d{1,2},\d{3},\d{3}(?:\.\d{1,3})?|\d{6,8}(?:\.\d{1,3})?`;

const utmPhrases = madeOnce((place: Words['place']) => {
  const metre = String.raw`(?:\s?m(?!\p{L}))?`;
  const axis = (name: string, number: string, words: readonly string[]): string => {
    const letters = [...words].sort((a, b) => b.length - a.length).join('|');
    return `(?:(?<${name}Before>${letters})[\\s:=.]{0,3})?(?<${name}>${number})(?:\\s?m?\\s?(?<${name}After>${letters})(?!\\p{L}))?${metre}`;
  };
  const zone = `(?:${anyOf(place.utm)}[\\s:,]{0,3})?(?:(?<!\\p{L})(?:${place.zone.join('|')})[\\s:]{0,3})?(?<zone>60|[1-5]\\d|0?[1-9])(?!\\d)\\s?-?\\s?(?<band>north|south|[c-hj-np-x])?(?!\\p{L})`;
  const gap = String.raw`[\s,;/]{1,5}`;
  return {
    eastFirst: new RegExp(
      `(?<![\\d.,]|\\p{L}\\p{L}|(?<!\\d)\\p{L})${axis('east', EAST, place.easting)}${gap}${axis('north', NORTH, place.northing)}(?![\\d])`,
      'gu',
    ),
    northFirst: new RegExp(
      `(?<![\\d.,]|\\p{L}\\p{L}|(?<!\\d)\\p{L})${axis('north', NORTH, place.northing)}${gap}${axis('east', EAST, place.easting)}(?![\\d])`,
      'gu',
    ),
    zoneBefore: new RegExp(`(?<![\\d.])${zone}[\\s,;:.()]{0,4}$`, 'u'),
    zoneAfter: new RegExp(`^[\\s,;:.(]{0,4}${zone}\\)?`, 'u'),
    label: new RegExp(`${anyOf(place.utm)}[\\s:,]{0,3}$`, 'u'),
  };
});

/** "t" and "north" to a hemisphere; null where nothing was said. */
function hemisphereOf(band: string | undefined, northMetres: number): 'north' | 'south' | null {
  if (band === undefined) return null;
  if (band === 'north' || band === 'south') return band;
  // metres from the equator to 32° N and to 40° N
  if (band === 's') return northMetres >= 3_540_000 && northMetres <= 4_430_000 ? 'north' : 'south';
  return (latitudesOfBand(band)?.from ?? 0) >= 0 ? 'north' : 'south';
}

const metres = (typed: string): number => Number(typed.replaceAll(',', ''));

export const utm: CoordinatesForm = (plain, _typed, { words, hemisphere: own }) => {
  const phrases = utmPhrases(words);
  const found: CoordinatesFound[] = [];
  const patterns = [phrases.eastFirst, phrases.northFirst];
  for (const match of patterns.flatMap((pattern) => [...plain.matchAll(pattern)])) {
    const groups = match.groups ?? {};
    const east = metres(groups['east'] ?? '');
    const north = metres(groups['north'] ?? '');
    const from = match.index;
    const to = match.index + match[0].length;
    if (found.some(({ span }) => span[0] < to && from < span[1])) continue;
    // unlabelled numbers the wrong way round belong to the other pattern
    if (north < 1_000_000 && east > north && !groups['northBefore'] && !groups['northAfter']) continue;
    const before = phrases.zoneBefore.exec(plain.slice(Math.max(0, from - 40), from));
    const after = before ? null : phrases.zoneAfter.exec(plain.slice(to, to + 40));
    const zoned = before?.groups ?? after?.groups;
    if (!zoned) {
      const labels = [groups['eastBefore'] ?? groups['eastAfter'], groups['northBefore'] ?? groups['northAfter']];
      const labelled =
        labels.every((label) => label !== undefined) || phrases.label.test(plain.slice(Math.max(0, from - 20), from));
      if (labelled) found.push({ impossible: 'zone', span: [from, to] });
      continue;
    }
    const span: Span = [from - (before?.[0].length ?? 0), to + (after?.[0].length ?? 0)];
    const zone = Number(zoned['zone']);
    const band = zoned['band'];
    const hemisphere = hemisphereOf(band, north) ?? own;
    const onGrid = east >= 100_000 && east < 1_000_000 && north < 10_000_000;
    const degrees = onGrid && isZoneOfBand(zone, band ?? '') ? degreesOfGrid(zone, hemisphere, east, north) : null;
    found.push(
      degrees
        ? {
            ...degrees,
            axesSaid: true,
            sideSaid: true,
            precisionMetres: 1,
            statedMetres: null,
            leastMetres: 0,
            unmistakable: true,
            span,
          }
        : { impossible: 'nowhere', span },
    );
  }
  return found;
};
