import { describe, expect, test } from 'vitest';
import { findPlace, readPlace, type PlaceRead } from '../../src/answers/place.js';
import { brief, demo } from '../demo-survey.js';

/** `45.1 -93.2 ±11.1` with the words in brackets, or the words alone. */
const show = ({ latitude, longitude, uncertaintyMetres, words }: PlaceRead): string => {
  const said = words === '' ? '' : `[${words}]`;
  return latitude === null
    ? said
    : [latitude, longitude, `±${uncertaintyMetres}`, said].filter((part) => part !== '').join(' ');
};

const decimals: [typed: string, expected: string][] = [
  ['45.12345, -92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['45.1234, -92.5432', 'sure 45.1234 -92.5432 ±11.1'],
  ['45.123, -92.543', 'sure 45.123 -92.543 ±111.3'],
  ['45.12, -92.54', 'sure 45.12 -92.54 ±1113.2'],
  ['45.1, -92.5', 'sure 45.1 -92.5 ±11132'],
  ['45, -92', 'sure 45 -92 ±111320'],
  ['45.1234, -92.543', 'sure 45.1234 -92.543 ±111.3'], // the coarser of the two
  ['45.1200, -92.5400', 'sure 45.12 -92.54 ±11.1'], // zeros are digits
  ['45.12345,-92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345 -92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['(45.12345, -92.54321)', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345 / -92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345\n-92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345, −92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345, –92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345° N, 92.54321° W', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345°, -92.54321°', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345N 92.54321W', 'sure 45.12345 -92.54321 ±5'],
  ['N45.12345 W92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['N 45.12345, W 92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345 north, 92.54321 west', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345 degrees N 92.54321 degrees W', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345, 92.54321 W', 'sure 45.12345 -92.54321 ±5'],
  ['-92.54321 W, 45.12345 N', 'sure 45.12345 -92.54321 ±5'],
  ['92.54321 W, 45.12345 N', 'sure 45.12345 -92.54321 ±5'],
  ['W92.54321 N45.12345', 'sure 45.12345 -92.54321 ±5'],
  ['lat 45.12345 lon -92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['Lat: 45.12345\nLong: -92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['latitude 45.12345, longitude -92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['lon -92.54321, lat 45.12345', 'sure 45.12345 -92.54321 ±5'],
  ['lat=45.12345&lon=-92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['+45.12345-092.54321/', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345-92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['GPS: 45.12345, -92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['my location is 45.12345, -92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['coordinates 45.12345, -92.54321 (WGS84)', 'sure 45.12345 -92.54321 ±5'],
  // outside the region it is sure
  ['41.5, -81.7', 'sure 41.5 -81.7 ±11132'],
  ['48.8566 N, 2.3522 E', 'sure 48.8566 2.3522 ±11.1'],
  ['-33.8568, 151.2153', 'unsure -33.8568 -151.2153 ±11.1 | -33.8568 151.2153 ±11.1, place-western'],
  // accuracy
  ['45.12345, -92.54321 accurate to 9 m', 'sure 45.12345 -92.54321 ±9'],
  ['45.12345, -92.54321 (±15 m)', 'sure 45.12345 -92.54321 ±15'],
  ['45.12345, -92.54321 +/- 40 ft', 'sure 45.12345 -92.54321 ±12.2'],
  ['45.12345, -92.54321, accuracy 20 metres', 'sure 45.12345 -92.54321 ±20'],
  ['45.12345, -92.54321 accuracy: about 20m', 'sure 45.12345 -92.54321 ±20'],
  ['45.12345, -92.54321 within 10 yards', 'sure 45.12345 -92.54321 ±9.1'],
  ['45.12345, -92.54321, 12 m accuracy', 'sure 45.12345 -92.54321 ±12'],
  ['45.12345, -92.54321 give or take 50 meters', 'sure 45.12345 -92.54321 ±50'],
  ['45.12345, -92.54321 (± 2 m)', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345, -92.54321 within 10 m of the bridge', 'sure 45.12345 -92.54321 ±5 [within 10 m of the bridge]'],
  // words beside
  ['Osprey Ridge, 45.12345, -92.54321', 'sure 45.12345 -92.54321 ±5 [Osprey Ridge]'],
  ['Osprey Ridge (45.12345, -92.54321)', 'sure 45.12345 -92.54321 ±5 [Osprey Ridge]'],
  ['45.12345, -92.54321 Osprey Ridge', 'sure 45.12345 -92.54321 ±5 [Osprey Ridge]'],
  ['45.12345, -92.54321 - by the pump house', 'sure 45.12345 -92.54321 ±5 [by the pump house]'],
  ['Osprey Ridge gps 45.12345, -92.54321', 'sure 45.12345 -92.54321 ±5 [Osprey Ridge]'],
  ['by the pump house at 45.12345, -92.54321, north side', 'sure 45.12345 -92.54321 ±5 [by the pump house north side]'],
  ['45.12345, -92.54321 west of the pump house', 'sure 45.12345 -92.54321 ±5 [west of the pump house]'],
  ['45.12345, -92.54321 alt 260 m', 'sure 45.12345 -92.54321 ±5'],
  ['45.12345, -92.54321, yes, sorry it took so long', 'sure 45.12345 -92.54321 ±5 [yes, sorry it took so long]'],
  ['45.1o345, -92.54321', 'sure 45.10345 -92.54321 ±5'], // a letter for a zero
  ['{"lat":45.12345,"lng":-92.54321}', 'sure 45.12345 -92.54321 ±5'],
  // asked back
  ['45.12345, 92.54321', 'unsure 45.12345 -92.54321 ±5 | 45.12345 92.54321 ±5, place-western'],
  ['45.12345 N, 92.54321', 'unsure 45.12345 -92.54321 ±5 | 45.12345 92.54321 ±5, place-western'],
  ['lat 45.12345 lon 92.54321', 'unsure 45.12345 -92.54321 ±5 | 45.12345 92.54321 ±5, place-western'],
  ['-92.54321, 45.12345', 'unsure 45.12345 -92.54321 ±5, place-swapped'],
  ['92.54321, 45.12345', 'unsure 45.12345 -92.54321 ±5, place-swapped'],
  ['-88.95022, 44.20118', 'unsure 44.20118 -88.95022 ±5, place-swapped'], // a latitude, but in the region only swapped
  ['maybe 45.12345, -92.54321', 'unsure 45.12345 -92.54321 ±5, place-doubt'],
  ['45.12345, -92.54321?', 'unsure 45.12345 -92.54321 ±5, place-doubt'],
  [
    '45.12345, -92.54321 and 45.22345, -92.64321',
    'unsure 45.12345 -92.54321 ±5 | 45.22345 -92.64321 ±5, place-several',
  ],
  ['45.12345, -92.54321, sorry, 45.22345, -92.54321', 'sure 45.22345 -92.54321 ±5'],
  ['45.12345, -92.54321 (45°07\'24.4"N 92°32\'35.6"W)', 'sure 45.12345 -92.54321 ±5'],
  // no place on the earth
  ['45.12345x, -92.54321y', 'not understood, place-impossible'],
  ['95.12345, -192.54321', 'not understood, place-impossible'],
  ['45.12345 N, 92.54321 N', 'not understood, place-impossible'],
  ['45.12345 N, 192.5432 W', 'not understood, place-impossible'],
];
test.each(decimals)('decimal degrees "%s" are %s', (typed, expected) => {
  expect(brief(readPlace(typed, demo), show)).toBe(expected);
});

// worked out by hand: 45°07'30" is 45.125, 92°32'15" is 92.5375; a second is 30.9 m, a minute 1855.3 m
const sexagesimal: [typed: string, expected: string][] = [
  ['45°07\'30" N 92°32\'15" W', 'sure 45.125 -92.5375 ±30.9'],
  ['45° 7\' 30" N, 92° 32\' 15" W', 'sure 45.125 -92.5375 ±30.9'],
  ['45°07′30″N 92°32′15″W', 'sure 45.125 -92.5375 ±30.9'],
  ['45º07’30”N, 92º32’15”W', 'sure 45.125 -92.5375 ±30.9'],
  ["45°07'30''N 92°32'15''W", 'sure 45.125 -92.5375 ±30.9'],
  ['N45°07\'30" W92°32\'15"', 'sure 45.125 -92.5375 ±30.9'],
  ['N 45 07 30 W 92 32 15', 'sure 45.125 -92.5375 ±30.9'],
  ['45 07 30 N, 92 32 15 W', 'sure 45.125 -92.5375 ±30.9'],
  ['45-07-30 N 92-32-15 W', 'sure 45.125 -92.5375 ±30.9'],
  ['45:07:30N 92:32:15W', 'sure 45.125 -92.5375 ±30.9'],
  ['45d07m30s N 92d32m15s W', 'sure 45.125 -92.5375 ±30.9'],
  ['45 deg 7 min 30 sec N, 92 deg 32 min 15 sec W', 'sure 45.125 -92.5375 ±30.9'],
  ['45 degrees 7 minutes 30 seconds north, 92 degrees 32 minutes 15 seconds west', 'sure 45.125 -92.5375 ±30.9'],
  ['92°32\'15" W 45°07\'30" N', 'sure 45.125 -92.5375 ±30.9'],
  ['45°07\'30", -92°32\'15"', 'sure 45.125 -92.5375 ±30.9'],
  ['450730N 0923215W', 'sure 45.125 -92.5375 ±30.9'],
  ['N450730 W0923215', 'sure 45.125 -92.5375 ±30.9'],
  ['+450730-0923215/', 'sure 45.125 -92.5375 ±30.9'],
  ['45°07\'30.5" N 92°32\'15.5" W', 'sure 45.125139 -92.537639 ±5'],
  ["45°07.500' N 92°32.250' W", 'sure 45.125 -92.5375 ±5'],
  ["45°07.5' N 92°32.25' W", 'sure 45.125 -92.5375 ±185.5'],
  ['45 07.500 N, 92 32.250 W', 'sure 45.125 -92.5375 ±5'],
  ['N45 07.500 W92 32.250', 'sure 45.125 -92.5375 ±5'],
  ['4507.500N 09232.250W', 'sure 45.125 -92.5375 ±5'],
  ["45°07' N 92°32' W", 'sure 45.116667 -92.533333 ±1855.3'],
  ['45° N 92° W', 'sure 45 -92 ±111320'],
  ['Osprey Ridge 45°07\'30" N 92°32\'15" W', 'sure 45.125 -92.5375 ±30.9 [Osprey Ridge]'],
  // asked back
  ['45 07 30, 92 32 15', 'unsure 45.125 -92.5375 ±30.9 | 45.125 92.5375 ±30.9, place-western'],
  ['45°07\'30", 92°32\'15"', 'unsure 45.125 -92.5375 ±30.9 | 45.125 92.5375 ±30.9, place-western'],
  ['45 07 30 92 32 15', 'unsure 45.125 -92.5375 ±30.9 | 45.125 92.5375 ±30.9, place-western'],
  // sixty minutes are a degree
  ['45°60\'30" N 92°32\'15" W', 'not understood, place-impossible'],
  ['45°07\'75" N 92°32\'15" W', 'not understood, place-impossible'],
];
test.each(sexagesimal)('degrees and minutes "%s" are %s', (typed, expected) => {
  expect(brief(readPlace(typed, demo), show)).toBe(expected);
});

const links: [typed: string, expected: string][] = [
  ['https://www.google.com/maps/@45.12345,-92.54321,17z', 'sure 45.12345 -92.54321 ±30'],
  ['https://maps.google.com/?q=45.12345,-92.54321', 'sure 45.12345 -92.54321 ±30'],
  ['https://maps.google.com/maps?q=45.12345%2C-92.54321&z=17', 'sure 45.12345 -92.54321 ±30'],
  ['https://www.google.com/maps/search/?api=1&query=45.12345,-92.54321', 'sure 45.12345 -92.54321 ±30'],
  ['https://www.google.com/maps/search/45.12345,+-92.54321', 'sure 45.12345 -92.54321 ±30'],
  [
    'https://www.google.com/maps/place/Osprey+Ridge/@45.1,-92.5,17z/data=!3m1!4b1!4m5!3m4!1s0x0:0x0!8m2!3d45.12345!4d-92.54321',
    'sure 45.12345 -92.54321 ±30',
  ],
  ['https://www.google.com/maps/place/45.12345,-92.54321/@45.1,-92.5,15z', 'sure 45.12345 -92.54321 ±30'],
  ['https://www.openstreetmap.org/#map=17/45.12345/-92.54321', 'sure 45.12345 -92.54321 ±30'],
  ['https://www.openstreetmap.org/?mlat=45.12345&mlon=-92.54321#map=15/45.1/-92.5', 'sure 45.12345 -92.54321 ±30'],
  ['https://maps.apple.com/?ll=45.12345,-92.54321&q=Dropped%20Pin', 'sure 45.12345 -92.54321 ±30'],
  ['http://maps.apple.com/?q=45.12345,-92.54321', 'sure 45.12345 -92.54321 ±30'],
  ['https://maps.apple.com/place?coordinate=45.12345,-92.54321', 'sure 45.12345 -92.54321 ±30'],
  ['https://www.bing.com/maps?cp=45.12345~-92.54321&lvl=17', 'sure 45.12345 -92.54321 ±30'],
  ['https://waze.com/ul?ll=45.12345%2C-92.54321&navigate=yes', 'sure 45.12345 -92.54321 ±30'],
  ['https://example.org/view?lat=45.12345&lng=-92.54321', 'sure 45.12345 -92.54321 ±30'],
  ['https://example.org/view?lon=-92.54321&lat=45.12345', 'sure 45.12345 -92.54321 ±30'],
  ['https://maps.google.com/?q=45.12,-92.54', 'sure 45.12 -92.54 ±1113.2'],
  ['https://maps.google.com/?q=45.12345,-92.54321 accurate to 8 m', 'sure 45.12345 -92.54321 ±30'],
  ['here: https://maps.google.com/?q=45.12345,-92.54321 .', 'sure 45.12345 -92.54321 ±30'],
  ['Osprey Ridge https://maps.google.com/?q=45.12345,-92.54321', 'sure 45.12345 -92.54321 ±30 [Osprey Ridge]'],
  [
    'https://maps.google.com/?q=45.12345,92.54321',
    'unsure 45.12345 -92.54321 ±30 | 45.12345 92.54321 ±30, place-western',
  ],
  ['https://maps.google.com/?q=48.2010,16.3695', 'sure 48.201 16.3695 ±30'],
  ['https://maps.app.goo.gl/AbCdEfGhIjK', 'not understood, place-link'],
  ['google.com/maps/@45.12345,-92.54321,17z', 'sure 45.12345 -92.54321 ±30'],
  ['https://caltopo.com/map.html#ll=45.12345,-92.54321&z=16', 'sure 45.12345 -92.54321 ±30'],
  ['https://www.gaiagps.com/map/?loc=15.0/-92.54321/45.12345', 'sure 45.12345 -92.54321 ±30'], // longitude first there
  ['https://example.org', 'not understood, place-link'],
  // geo URIs; the first three after the examples of RFC 5870
  ['geo:37.786971,-122.399677', 'sure 37.786971 -122.399677 ±5'],
  ['geo:48.198634,16.371648;crs=wgs84;u=40', 'sure 48.198634 16.371648 ±40'],
  ['geo:48.2010,16.3695,183', 'sure 48.201 16.3695 ±11.1'],
  ['geo:45.12345,-92.54321', 'sure 45.12345 -92.54321 ±5'],
  ['geo:45.12345,-92.54321;u=12', 'sure 45.12345 -92.54321 ±12'],
  ['GEO:45.12345,-92.54321;CRS=WGS84;U=12.5', 'sure 45.12345 -92.54321 ±12.5'],
  ['geo:45.12345,-92.54321;u=0', 'sure 45.12345 -92.54321 ±5'],
  ['geo:0,0?q=45.12345,-92.54321(Osprey Ridge)', 'sure 45.12345 -92.54321 ±5'],
  ['geo:323482,4306480;crs=EPSG:32618', 'not understood, place-impossible'],
  ['geo:45.1,-92.5;crs=nad27', 'not understood, place-impossible'],
];
test.each(links)('link "%s" is %s', (typed, expected) => {
  expect(brief(readPlace(typed, demo), show)).toBe(expected);
});

const words: [typed: string, expected: string][] = [
  ['Osprey Ridge Preserve', 'sure [Osprey Ridge Preserve]'],
  ['osprey ridge', 'sure [osprey ridge]'],
  ['my back yard', 'sure [my back yard]'],
  ['home', 'sure [home]'],
  ['behind the library', 'sure [behind the library]'],
  ['by the old pump', 'sure [by the old pump]'],
  ['next to our hedge', 'sure [next to our hedge]'],
  ['under the apple tree', 'sure [under the apple tree]'],
  ['front yard, 212 Sorrel St', 'sure [front yard, 212 Sorrel St]'],
  ['Sec 9, T44N R11W', 'sure [Sec 9, T44N R11W]'],
  ['mile 3.5 of the rail trail', 'sure [mile 3.5 of the rail trail]'],
  ['Hwy 12 and County Road 45', 'sure [Hwy 12 and County Road 45]'],
  ['plot 12', 'sure [plot 12]'],
  ['S 45 W 93 Sorrel Rd', 'sure [S 45 W 93 Sorrel Rd]'],
  ['N4567 County Road G', 'sure [N4567 County Road G]'],
  ['N end of the marsh', 'sure [N end of the marsh]'],
  ['yes, osprey ridge', 'sure [osprey ridge]'],
  ['Osprey Ridge, no wait, Heron Bend', 'sure [Heron Bend]'],
  ['Osprey Ridge, sorry for the delay', 'sure [Osprey Ridge, sorry for the delay]'],
  ['Marker 7.', 'sure [Marker 7.]'],
  ['Place: Osprey Ridge', 'sure [Osprey Ridge]'],
  ['I think it was Osprey Ridge', 'sure [I think it was Osprey Ridge]'],
  ['where the creek meets the road', 'sure [where the creek meets the road]'],
  ['G9PH+2C Viroqua', 'sure [G9PH+2C Viroqua]'],
  ['maybe Osprey Ridge', 'unsure [Osprey Ridge], place-doubt'],
  // trees and numbers, but written as a name
  ['Three Oaks', 'unsure [Three Oaks], place-doubt'],
  ['Twelve Oaks', 'unsure [Twelve Oaks], place-doubt'],
  ['Partly Cloudy', 'not understood, place-unclear'],
  ['Two Common Easterns', 'not understood, place-unclear'],
  ['Osprey Ridge?', 'unsure [Osprey Ridge], place-doubt'],
  // an answer to another question is no place
  ...[
    [
      'sixty three',
      'i think 65',
      "low to mid 70s i'd say",
      'weather app says its 57 rn',
      '59 no wait 61',
      'tractor said 74',
    ],
    [
      'The mercury stood at sixty-four degrees in the shade of the barn.',
      '68 on the phone, 72 on the porch',
      '55 brrr',
    ],
    ['it looks ok', 'There is a mistake in it.', 'Sorry, wrong day. It was Wednesday.', "that isn't mine", 'ship it'],
    [
      '12 of them',
      '10 by 4 ft',
      '30 sq yards',
      '6 ft by 10 ft garden bed by the mailbox',
      '1000 or so',
      '25 open flowers',
    ],
    [
      '10:05 - 10:20',
      '3.05 - 3.20',
      'I sat from 7:40 to 7:55 on the porch',
      'thrusday',
      'the first of May',
      'half past ten',
    ],
    [
      'flat calm on the pond, like glass',
      'partly cloudy',
      'small branches were moving',
      'foggy',
      'not a cloud in the sky',
    ],
    ['2 queens, both impatiens', 'half black', 'one queen by the barn', 'spring beauty', 'trilliums'],
    ['by the way it was 68', 'by the way', 'under the weather', 'behind the clouds', 'near the bees', 'past two'],
  ]
    .flat()
    .map((typed): [string, string] => [typed, 'not understood, place-unclear']),
  // what another reader would take is the place's here
  ['the clearing past the Ferncliff footbridge', 'sure [the clearing past the Ferncliff footbridge]'],
  ['still the same garden on Ash Street', 'sure [still the same garden on Ash Street]'],
  ['77 Birch St.', 'sure [77 Birch St.]'],
  ['food plot on grandpas 80', 'sure [food plot on grandpas 80]'],
  ['sedge meadow N of Jct 21/73', 'sure [sedge meadow N of Jct 21/73]'],
  ['zip 54868', 'sure [zip 54868]'],
  ['site 7', 'sure [site 7]'],
  ['the point', 'sure [the point]'],
  ['the spot we talked about on the phone', 'sure [the spot we talked about on the phone]'],
  ['East Fork group site', 'sure [East Fork group site]'],
  ['dashboard said 74 in the driveway', 'not understood, place-unclear'],
  ['75 in the driveway', 'not understood, place-unclear'],
  ['light breeze across the pond', 'not understood, place-unclear'],
  ['Ostermoor Preserve, trail marker 12', 'sure [Ostermoor Preserve, trail marker 12]'],
  ['behind the barn', 'sure [behind the barn]'],
  ['Sunday Lake', 'sure [Sunday Lake]'],
  ['Queen Street median', 'sure [Queen Street median]'],
  ['1223 3rd Ave N', 'sure [1223 3rd Ave N]'],
  ['5 miles south of Viroqua', 'sure [5 miles south of Viroqua]'],
  ['rest area on 94', 'sure [rest area on 94]'],
  ['lower loop, it was windy there', 'sure [lower loop, it was windy there]'],
  ['La Crosse', 'sure [La Crosse]'],
  // not understood
  ['where do I find that?', 'not understood, place-question'],
  ['what do you mean', 'not understood, place-question'],
  ['do you need coordinates', 'not understood, place-question'],
  ['is a street name ok?', 'not understood, place-question'],
  ["don't know", 'not understood, place-unclear'],
  ['idk', 'not understood, place-unclear'],
  ['not sure', 'not understood, place-unclear'],
  ['yes', 'not understood, place-unclear'],
  ['no', 'not understood, place-unclear'],
  ['ok', 'not understood, place-unclear'],
  ['👍', 'not understood, place-unclear'],
  ['📍', 'not understood, place-unclear'],
  ['hello', 'not understood, place-unclear'],
  ['here', 'not understood, place-unclear'],
  ['45.12345', 'not understood, place-unclear'],
  ['12', 'not understood, place-unclear'],
  ['10:40 to 10:55', 'not understood, place-unclear'],
  ['yesterday', 'not understood, place-unclear'],
  ['2 bimacs on the plum', 'not understood, place-unclear'],
  ['66 and sunny', 'not understood, place-unclear'],
  ['skip', 'not understood, place-unclear'],
  ['G9PH+2C', 'not understood, place-short-code'],
  ['...', 'not understood, place-unclear'],
  ['', 'not understood, empty'],
];
test.each(words)('words "%s" are %s', (typed, expected) => {
  expect(brief(readPlace(typed, demo), show)).toBe(expected);
});

const passing: [typed: string, expected: string][] = [
  ['72F, sunny, 45.12345, -92.54321, 40 phlox', 'sure 45.12345 -92.54321 ±5'],
  ['I sat at 45.12345, -92.54321 (±8 m) for 15 min', 'sure 45.12345 -92.54321 ±8'],
  ['geo:45.12345,-92.54321;u=12 70F calm', 'sure 45.12345 -92.54321 ±12'],
  ['Place: Osprey Ridge, lower loop\nWind: calm', 'sure [Osprey Ridge, lower loop]'],
  ['2 bimacs at Osprey Ridge Preserve, 70F', 'sure [Osprey Ridge Preserve]'],
  ['we were at the Osprey Ridge Preserve', 'sure [Osprey Ridge Preserve]'],
  ['watched at heron bend landing yesterday', 'sure [heron bend landing]'],
  ['sat in my back yard, 3 queens', 'sure [my back yard]'],
  ['my garden, 70F, calm', 'sure [my garden]'],
  ['at home in my garden', 'sure [my garden]'],
  ['3 in Prairie du Sac', 'sure [Prairie du Sac]'],
  ['site - Osprey Ridge', 'sure [Osprey Ridge]'],
  ['behind the library, 3 queens', 'sure [behind the library]'],
  ['Fen Boardwalk 45.12345, -92.54321', 'sure 45.12345 -92.54321 ±5 [Fen Boardwalk]'],
  // what begins a site's name, and no other's
  ['yesterday 2 to 2:15, oak rise', 'sure [oak rise]'],
  ['heron bend 66F', 'sure [heron bend]'],
  ['2 imps on the oak', ''],
  ['45.12345, 92.54321, 40 phlox', 'unsure 45.12345 -92.54321 ±5 | 45.12345 92.54321 ±5, place-western'],
  // not in passing
  ['at 10:40 for 15 minutes', ''],
  ['2 queens at the redbud', ''],
  ['at noon, 70F', ''],
  ['at Noon', ''],
  ['at home today', ''],
  ['on the plum by the driveway', ''],
  ['in the shade', ''],
  ['from the house to the road', ''],
  ['in May', ''],
  ['70.5, 12.5', ''],
  ['10:40 to 10:55', ''],
  ['4 x 3 m, 200 flowers', ''],
  ['3 queens on the bluebells', ''],
  ['Bombus impatiens 2', ''],
  ['phone 608 555 0142', ''],
  ['45, 92 and 15', ''],
];
test.each(passing)('in passing "%s" is %s', (typed, expected) => {
  expect(
    findPlace(typed, demo)
      .map((reading) => brief(reading, show))
      .join(' + '),
  ).toBe(expected);
});

test('in a survey of the east a bare longitude is as written', () => {
  const region = [
    { latitude: 50, longitude: 5 },
    { latitude: 50, longitude: 15 },
    { latitude: 55, longitude: 15 },
  ];
  expect(brief(readPlace('51.2345, 12.3456', { ...demo, survey: { ...demo.survey, region } }), show)).toBe(
    'sure 51.2345 12.3456 ±11.1',
  );
});

describe('a hostile text', () => {
  test.each([
    ['45.1, '.repeat(330)],
    ['N 45 12 '.repeat(240)],
    ['https://a.b/'.repeat(160)],
    ['at The Big '.repeat(180)],
    [`${'thanks, '.repeat(200)}%`],
    [`${'the coordinates are '.repeat(90)}%45.12345, -92.54321`],
    ['°'.repeat(1900)],
    [' '.repeat(1900) + '5'],
  ])('is read to its end', (text) => {
    expect(['sure', 'unsure', 'none']).toContain(readPlace(text, demo).state);
    expect(findPlace(text.repeat(5), demo).length).toBeLessThan(2);
  });
});
