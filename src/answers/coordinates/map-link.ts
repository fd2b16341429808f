/**
 * Links to web maps that carry a pair: "…/maps/@45.0888,-93.6417,17z", "?q=45.0888,-93.6417", "#map=17/45.0888/-93.6417".
 * A pin set with a finger is never surer than 30 m. Shortened links carry no pair and are not found.
 */
import { unitOfLast, type Coordinates, type CoordinatesFound, type CoordinatesForm } from './form.js';

/** How well people set a pin, metres: common practice, no source. */
const PIN_METRES = 30;

export const LINK =
  /(?:https?:\/\/|(?<![\p{L}\d.@-])(?:[a-z\d-]{1,40}\.){1,4}(?:com|org|net|gl|gov|edu|io|me|app|link|de|uk|ca|us)\/)[^\s<>"]{1,2000}/gu;

const NUMBER = String.raw`[+-]?\d{1,3}(?:\.\d{1,20})?`;
const DECIMAL = String.raw`[+-]?\d{1,3}\.\d{1,20}`;
const pair = (between: string, number = NUMBER): string =>
  `(?<first>${number})${between}(?<second>${number})(?![\\d.])`;
const COMMA = String.raw`\s*,\s*`;

/** In the order of how surely they are the pin; a view's middle comes last. */
const PATTERNS: readonly { readonly pattern: RegExp; readonly lonFirst?: true; readonly axesSaid?: false }[] = [
  { pattern: new RegExp(`!3d(?<first>${NUMBER})!4d(?<second>${NUMBER})`, 'u') },
  {
    pattern: new RegExp(
      `[?&#]m?lat(?:itude)?=(?<first>${NUMBER})(?:&[^&]{0,200}){0,8}?&m?(?:lon|lng|long|longitude)=(?<second>${NUMBER})`,
      'u',
    ),
  },
  {
    pattern: new RegExp(
      `[?&#]m?(?:lon|lng|long|longitude)=(?<first>${NUMBER})(?:&[^&]{0,200}){0,8}?&m?lat(?:itude)?=(?<second>${NUMBER})`,
      'u',
    ),
    lonFirst: true,
  },
  {
    pattern: new RegExp(
      `[?&#](?:q|query|ll|sll|coordinate|daddr|destination|pin|point|where1|near|viewpoint|sp|to|loc|mlatlon|rtp)=(?:loc:|ll\\.|point\\.|adr\\.|pos\\.)?\\s*${pair(String.raw`\s*[,_~+ ]\s*`)}`,
      'u',
    ),
  },
  {
    pattern: new RegExp(
      `[?&#](?:markers?|center|cp|c|map)=(?:[^&]{0,60}?[|:])?${pair(String.raw`\s*[,~]\s*`, DECIMAL)}`,
      'u',
    ),
    axesSaid: false,
  },
  { pattern: new RegExp(`[?&#]loc=\\d{1,2}(?:\\.\\d{1,4})?/${pair('/', DECIMAL)}`, 'u'), lonFirst: true },
  { pattern: new RegExp(`/(?:place|search|dir)/(?:[^@]{0,300}/)?${pair(COMMA, DECIMAL)}`, 'u') },
  { pattern: new RegExp(`/l/${pair(',', DECIMAL)}`, 'u') },
  { pattern: new RegExp(`#(?:map=)?\\d{1,2}(?:\\.\\d{1,4})?/${pair('/', DECIMAL)}`, 'u') },
  { pattern: new RegExp(`@${pair(COMMA)}`, 'u') },
  { pattern: new RegExp(`[/=#?&]${pair(String.raw`\s*[,/]\s*`, String.raw`[+-]?\d{1,3}\.\d{3,20}`)}`, 'u') },
];

/** Percent signs undone; a link that only looks encoded stays as it is. */
function decoded(link: string): string {
  try {
    return decodeURIComponent(link.replaceAll('+', ' '));
  } catch (error) {
    if (error instanceof URIError) return link;
    throw error;
  }
}

const decimalsOf = (number: string): number => number.split('.')[1]?.length ?? 0;

function pinOf(link: string): Omit<Coordinates, 'span'> | null {
  const text = decoded(link);
  for (const { pattern, lonFirst, axesSaid } of PATTERNS) {
    const { first, second } = pattern.exec(text)?.groups ?? {};
    if (first === undefined || second === undefined) continue;
    const [north, east] = lonFirst ? [second, first] : [first, second];
    const [latitude, longitude] = [Number(north), Number(east)];
    if (latitude === 0 && longitude === 0) continue;
    return {
      latitude,
      longitude,
      axesSaid: axesSaid ?? true,
      sideSaid: true,
      precisionMetres: unitOfLast(Math.min(decimalsOf(north), decimalsOf(east))),
      statedMetres: null,
      leastMetres: PIN_METRES,
      unmistakable: true,
    };
  }
  return null;
}

export const mapLink: CoordinatesForm = (plain, typed) =>
  [...plain.matchAll(LINK)].flatMap((match): CoordinatesFound[] => {
    const link = typed.slice(match.index, match.index + match[0].length).replace(/[).,;!>]+$/u, '');
    const pin = pinOf(link.toLowerCase());
    return pin ? [{ ...pin, span: [match.index, match.index + link.length] }] : [];
  });
