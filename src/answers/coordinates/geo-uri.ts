/** geo URIs: "geo:45.0888,-93.6417;u=35" (RFC 5870). Another reference system than WGS 84 is not taken. */
import { unitOfLast, type CoordinatesFound, type CoordinatesForm } from './form.js';

const NUMBER = String.raw`-?\d{1,3}(?:\.\d{1,20})?`;
const PATTERN = new RegExp(
  `geo:(?<latitude>${NUMBER}),(?<longitude>${NUMBER})(?:,-?\\d{1,6}(?:\\.\\d{1,9})?)?(?<parameters>(?:;[\\w%.=:!~*'()+$-]{1,100}){0,12})` +
    `(?:\\?(?:[a-z]{1,10}=[^&\\s]{0,200}&){0,5}?(?:q=(?<pin>${NUMBER},${NUMBER})(?:\\([^)]{0,200}\\))?)?[^\\s]{0,200})?`,
  'giu',
);

const decimalsOf = (number: string): number => number.split('.')[1]?.length ?? 0;

/** Another reference system may carry other numbers. */
const ANY_GEO = /(?<!\p{L})geo:[-\d][^\s<>]{0,300}/giu;

const read = (plain: string): CoordinatesFound[] =>
  [...plain.matchAll(PATTERN)].map((match): CoordinatesFound => {
    const { latitude = '', longitude = '', parameters = '', pin } = match.groups ?? {};
    const span = [match.index, match.index + match[0].length] as const;
    const named = new Map(
      parameters
        .split(';')
        .filter((part) => part !== '')
        .map((part): [string, string] => {
          const [name = '', value = ''] = part.split('=');
          return [name, value];
        }),
    );
    if ((named.get('crs') ?? 'wgs84') !== 'wgs84') return { impossible: 'nowhere', span };
    const stated = Number(named.get('u') ?? Number.NaN);
    // "geo:0,0?q=45.1,-93.6(Label)" is how some telephones send a pin
    const [north = latitude, east = longitude] = pin?.split(',') ?? [];
    return {
      latitude: Number(north),
      longitude: Number(east),
      axesSaid: true,
      sideSaid: true,
      precisionMetres: unitOfLast(Math.min(decimalsOf(north), decimalsOf(east))),
      statedMetres: Number.isFinite(stated) && stated >= 0 ? stated : null,
      leastMetres: 0,
      unmistakable: true,
      span,
    };
  });

export const geoUri: CoordinatesForm = (plain) => {
  const found = read(plain);
  for (const match of plain.matchAll(ANY_GEO)) {
    const known = found.some(({ span }) => span[0] === match.index);
    if (!known) found.push({ impossible: 'nowhere', span: [match.index, match.index + match[0].length] });
  }
  return found;
};
