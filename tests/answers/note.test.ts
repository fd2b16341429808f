import { describe, expect, test } from 'vitest';
import {
  FIELD_NAMES,
  readFields,
  readNote,
  type FieldName,
  type FieldReadings,
  type NoteReading,
} from '../../src/answers/note.js';
import type { Reading } from '../../src/answers/reading.js';
import type { Count } from '../../shared/record.js';
import { demo } from '../demo-survey.js';

type Shown = Partial<Record<FieldName, string>>;

const flowers = (count: Count | null): string => {
  if (count === null) return '?';
  if (!count.about) return String(count.value);
  if (count.high === null) return `${count.value}+`;
  return `~${count.value}`;
};
const species = (bee: string | null): string => bee?.replace('Bombus ', '') ?? '-';

const show: { readonly [Field in FieldName]: (value: never) => string } = {
  date: (value: string) => value,
  times: (value: { start: string; end: string | null }) => `${value.start}-${value.end ?? '?'}`,
  place: (value: { latitude: number | null; longitude: number | null; words: string }) =>
    [value.latitude === null ? '' : `${value.latitude} ${value.longitude}`, value.words]
      .filter((part) => part !== '')
      .join(' '),
  temperature: (value: { celsius: number }) => String(value.celsius),
  sky: (value: { cloud: string; rain: boolean }) => value.cloud + (value.rain ? ' rain' : ''),
  wind: (value: { beaufort: number }) => String(value.beaufort),
  patch: (value: { squareMetres: number; shape: string }) =>
    `${Math.round(value.squareMetres * 100) / 100} ${value.shape}`,
  plants: (value: readonly { name: string | null; flowers: Count | null }[]) =>
    value.map((plant) => `${plant.name ?? '-'} ${flowers(plant.flowers)}`).join(', '),
  tally: (
    value: readonly {
      count: number;
      bee: string | null;
      plant: string | null;
      doubt?: true;
      caste?: string;
      seenBefore?: number;
      withPollen?: number;
    }[],
  ) =>
    value
      .map(
        (row) =>
          `${row.count} ${species(row.bee)}${row.doubt ? '?' : ''}${row.caste ? ' worker' : ''}${row.seenBefore ? ' seen' : ''}${row.withPollen === undefined ? '' : ` pollen ${row.withPollen}`} @${row.plant ?? '?'}`,
      )
      .join(', '),
};

/** Each reading on one line: sure as it is, unsure with its best offer, none with what is asked. */
function shownFields(fields: FieldReadings): Shown {
  const all: Shown = {};
  for (const field of FIELD_NAMES) {
    const reading: Reading<unknown> | undefined = fields[field];
    if (reading?.state === 'sure') all[field] = show[field](reading.value as never);
    else if (reading?.state === 'unsure')
      all[field] = reading.offer.length === 0 ? 'unsure' : `unsure ${show[field](reading.offer[0] as never)}`;
    else if (reading) all[field] = `none ${reading.ask}`;
  }
  return all;
}

/** Sure fields as they are, unsure ones with "unsure" before the best offer. */
function shown({ value, offer }: NoteReading): Shown {
  const fields: Shown = {};
  for (const field of FIELD_NAMES) {
    const sure: unknown = value?.[field];
    const best: unknown = offer?.[field]?.[0];
    if (sure !== undefined) fields[field] = show[field](sure as never);
    else if (offer?.[field] !== undefined)
      fields[field] = best === undefined ? 'unsure' : `unsure ${show[field](best as never)}`;
  }
  return fields;
}

/** A note and all that it says, no more and no less. */
const notes: { readonly text: string; readonly fields: Shown }[] = [
  // a plant named twice in its list of flowers heads no queens
  {
    text: 'Monday 1:30 for 15 minutes, 65 F, partly sunny, breezy. Columbine (Aquilegia canadensis) 25 flowers, woodland phlox 70. 1 impatiens on the columbine, 2 bimaculatus on the phlox',
    fields: {
      date: '2026-05-04',
      times: '13:30-13:45',
      temperature: '18.3',
      sky: 'scattered',
      wind: '4',
      plants: 'Aquilegia canadensis 25, Phlox divaricata 70',
      tally: '1 impatiens @Aquilegia canadensis, 2 bimaculatus @Phlox divaricata',
    },
  },
  {
    text: 'waterleaf = Hydrophyllum virginianum, 60 flowers, wild geranium 24 flowers. 1 rusty patched on the waterleaf, 2 common eastern on the geranium',
    fields: {
      plants: 'Hydrophyllum virginianum 60, Geranium maculatum 24',
      tally: '1 affinis @Hydrophyllum virginianum, 2 impatiens @Geranium maculatum',
    },
  },
  {
    text: 'redbud and dandelions. redbud 250 flowers, dandelions 60, 2 imps on the redbud',
    fields: { plants: 'Cercis canadensis 250, Taraxacum officinale 60', tally: '2 impatiens @Cercis canadensis' },
  },
  // plants named without numbers, the numbers told behind with "on"
  {
    text: 'sat 4:20 til 4:35, 73, clear, windy, redbud and creeping charlie, 250 flowers on the redbud and 60 on the charlie. 2 eastern on the redbud, 1 half black on the creeping charlie',
    fields: {
      date: '2026-05-02',
      times: '16:20-16:35',
      temperature: '22.8',
      sky: 'clear',
      wind: '5',
      plants: 'Cercis canadensis 250, Glechoma hederacea 60',
      tally: '2 impatiens @Cercis canadensis, 1 vagans @Glechoma hederacea',
    },
  },
  ...[
    'redbud and creeping charlie: 250 flowers on the redbud, 60 on the charlie',
    'redbud and creeping charlie (250 flowers on the redbud, 60 on the charlie)',
    'redbud and creeping charlie. 250 on the redbud and 60 on the charlie',
    'redbud, creeping charlie, 250 on the redbud and 12 on the charlie',
    'redbud and creeping charlie, the redbud had about 250 flowers, the charlie 60',
  ].map((said) => ({
    text: `${said}. 2 eastern on the redbud`,
    fields: {
      plants: `Cercis canadensis ${said.includes('about') ? '~' : ''}250, Glechoma hederacea ${said.includes('12') ? 12 : 60}`,
      tally: '2 impatiens @Cercis canadensis',
    },
  })),
  // so few can be queens: asked back, and no flowers
  {
    text: 'redbud, dandelions, 2 on the redbud and 1 on the dandelions, all imps',
    fields: {
      plants: 'Cercis canadensis ?, Taraxacum officinale ?',
      tally: 'unsure 2 impatiens @Cercis canadensis, 3 impatiens @Taraxacum officinale',
    },
  },
  // flowers told under another plant's tree are those of the plant they stand behind
  {
    text: 'bluebells, 40 flowers under the redbud, and phlox, 30 flowers. 2 imps on the phlox',
    fields: { plants: 'Mertensia virginica 40, Phlox 30', tally: '2 impatiens @Phlox' },
  },
  // behind "and" a number is of the plant that follows, and "a few" is an amount of its own
  ...[
    ['dandelions and 200 violets', 'Taraxacum officinale ?, Viola 200'],
    ['some dandelions and 200 violets', 'Taraxacum officinale ?, Viola 200'],
    ['dandelions and 60 clusters of lilac', 'Taraxacum officinale ?, Syringa vulgaris 60'],
    ['bluebells 40 and 200 violets', 'Mertensia virginica 40, Viola 200'],
    ['bluebells and phlox 40', 'Mertensia virginica ?, Phlox 40'],
    ['violets, tons of them, 200+? and a few dandelions, 8', 'Viola ?, Taraxacum officinale 8'],
    ['violets, 60 flowers and phlox', 'Viola 60, Phlox ?'],
    ['skunk cabbage none open, marsh marigolds 75', 'Symplocarpus foetidus 0, Caltha palustris 75'],
  ].map(([text, plants]) => ({ text: text!, fields: { plants: plants! } })),
  // zeros told behind a plant's flowers are of bees, not of wind, and none is lost
  {
    text: 'bleeding heart, about 70 flowers nothing on it.',
    fields: { plants: 'Lamprocapnos spectabilis ~70', tally: '0 - @Lamprocapnos spectabilis' },
  },
  {
    text: 'may 4, creeping charlie 120 flowers, nothing. 54 degrees cloudy',
    fields: {
      date: '2026-05-04',
      temperature: '12.2',
      sky: 'overcast',
      plants: 'Glechoma hederacea 120',
      tally: '0 - @Glechoma hederacea',
    },
  },
  {
    text: 'wild columbine 20 flowers had nobody on it, woodland phlox 30 had 1 bimac',
    fields: {
      plants: 'Aquilegia canadensis 20, Phlox divaricata 30',
      tally: '0 - @Aquilegia canadensis, 1 bimaculatus @Phlox divaricata',
    },
  },
  // a plant told in full and called by its last word, or by its epithet behind "B."
  {
    text: 'Wood betony 48 fl + hoary puccoon 30 fl. 2 B. auricomus on the puccoon, 1 B. bimaculatus on the betony.',
    fields: {
      plants: 'Pedicularis canadensis 48, Lithospermum canescens 30',
      tally: '2 auricomus @Lithospermum canescens, 1 bimaculatus @Pedicularis canadensis',
    },
  },
  {
    text: 'Dicentra canadensis 95 flowers\nDicentra cucullaria 160 flowers\nB. bimaculatus: 2 on cucullaria, 1 on canadensis',
    fields: {
      plants: 'Dicentra canadensis 95, Dicentra cucullaria 160',
      tally: '2 bimaculatus @Dicentra cucullaria, 1 bimaculatus @Dicentra canadensis',
    },
  },
  // numbers beside names: a day, degrees, a decade put right
  {
    text: 'Pussy willow 4/18. 48F. Hazy sun.',
    fields: { date: '2026-04-18', temperature: '8.9', sky: 'few', plants: 'Salix discolor ?' },
  },
  {
    text: 'chives 50 heads 1 common eastern 73 and clear',
    fields: {
      temperature: '22.8',
      sky: 'clear',
      plants: 'Allium schoenoprasum 50',
      tally: '1 impatiens @Allium schoenoprasum',
    },
  },
  {
    text: '70s... say 72, some clouds, apple tree 300 blossoms',
    fields: { temperature: '22.2', sky: 'scattered', plants: 'Malus domestica 300' },
  },
  // no name makes it a place
  { text: '64F, dandelions 100 in the garden', fields: { temperature: '17.8', plants: 'Taraxacum officinale 100' } },
  // flowers beside "on" and "+", and their second number
  {
    text: 'zero queens on 30 trillium grandiflorum, yesterday 1:30 to 1:45, 63F',
    fields: {
      date: '2026-05-05',
      times: '13:30-13:45',
      temperature: '17.2',
      plants: 'Trillium grandiflorum 30',
      tally: '0 - @Trillium grandiflorum',
    },
  },
  {
    text: '30 flowers on the wild columbine and 45 on the wild geranium. 1 American on the columbine, 2 imp on the geranium.',
    fields: {
      plants: 'Aquilegia canadensis 30, Geranium maculatum 45',
      tally: '1 pensylvanicus @Aquilegia canadensis, 2 impatiens @Geranium maculatum',
    },
  },
  {
    text: 'jacobs ladder 65 + wild geranium 20',
    fields: { plants: 'Polemonium reptans 65, Geranium maculatum 20' },
  },
  // "zero" behind a plant is of its bees
  {
    text: 'garden strawberry with fifty flowers and kale about two hundred. On the kale 3 imp. On the strawberry zero.',
    fields: {
      plants: 'Fragaria × ananassa 50, Brassica oleracea ~200',
      tally: '3 impatiens @Brassica oleracea, 0 - @Fragaria × ananassa',
    },
  },
  { text: 'honey locust no sorry black locust 100 flowers', fields: { plants: 'Robinia pseudoacacia 100' } },
  { text: 'violets 20, i mean trillium 20', fields: { plants: 'Trillium 20' } },
  { text: '20 phlox, 40 violets, sorry phlox 30', fields: { plants: 'Viola 40, Phlox 30' } },
  // "the first one" and "the same one" count no flowers; "need not" ends its sentence
  {
    text: 'plum 30. 2 imps on the plum, the first one came early',
    fields: { plants: 'Prunus 30', tally: '2 impatiens @Prunus' },
  },
  { text: 'we need not. bluebells 20, plum 30', fields: { plants: 'Mertensia virginica 20, Prunus 30' } },
  { text: '4 lilac bushes', fields: { plants: 'Syringa vulgaris ?' } },
  { text: 'blueberries, 4 bushes, about 220 little bells open', fields: { plants: 'Vaccinium ~220' } },
  {
    text: 'lupine. Open flowers came to 250-300. Queens: 2 imps',
    fields: { plants: 'Lupinus ~275', tally: '2 impatiens @Lupinus' },
  },
  { text: 'lilac 45. Only two honey bees and a cabbage white', fields: { plants: 'Syringa vulgaris 45' } },
  {
    text: 'phlox 20. 1 two-spotted on it, the second is bigger',
    fields: { plants: 'Phlox 20', tally: '1 bimaculatus @Phlox' },
  },
  {
    text: 'phlox 20. I saw 3 common easterns and 1 that I think was a two-spotted.',
    fields: { plants: 'Phlox 20', tally: '3 impatiens @Phlox, 1 bimaculatus? @Phlox' },
  },
  // a side of a place is none
  { text: 'the thermometer in the shade of the shed said 63 degrees', fields: { temperature: '17.2' } },
  // a form that labels plants and flowers, and tells its bees without a label
  {
    text: 'Plant: Cercis canadensis\nOpen flowers: 325\nBombus impatiens: 2\nBombus griseocollis: 1',
    fields: {
      plants: 'Cercis canadensis 325',
      tally: '2 impatiens @Cercis canadensis, 1 griseocollis @Cercis canadensis',
    },
  },
  // times in words, with degrees right behind
  {
    text: 'today from eleven to eleven fifteen sixty four degrees, clear sky',
    fields: { date: '2026-05-06', times: '11:00-11:15', temperature: '17.8', sky: 'clear' },
  },
  { text: 'wind 5 miles an hour, 12:30 to 12:45', fields: { times: '12:30-12:45', wind: '2' } },
  // rain beside degrees is of this watch
  { text: '57 F, drizzle. 10:50 - 11:05', fields: { times: '10:50-11:05', temperature: '13.9', sky: 'overcast rain' } },
  { text: 'Watch: Sat. May 2\n11:30 to 11:45', fields: { date: '2026-05-02', times: '11:30-11:45' } },
  // the dash of a list is no minus
  { text: '- 44.97130, -93.20550\n- 18 °C', fields: { place: '44.9713 -93.2055', temperature: '18' } },
  { text: 'at Larkspur Point park. 68F', fields: { place: 'Larkspur Point park', temperature: '20' } },
  // a site of the survey, and a name behind "at", in small letters
  {
    text: 'today at the fen boardwalk 10 to 10:15',
    fields: { date: '2026-05-06', times: '10:00-10:15', place: 'fen boardwalk' },
  },
  { text: '10-10:15 at miller park, 68f', fields: { times: '10:00-10:15', place: 'miller park', temperature: '20' } },
  { text: '72F at noon on the hill', fields: { times: '12:00-?', temperature: '22.2' } },
  {
    text: 'place: Juniper Slough Preserve. Patch was 10 ft by 5 ft',
    fields: { place: 'Juniper Slough Preserve', patch: '4.65 rectangle' },
  },
  {
    text: 'Good day from Alder Falls,\n\nYesterday, 14h10 to 14h25, 13 C',
    fields: { date: '2026-05-05', times: '14:10-14:25', temperature: '13' },
  },
  // a plant by itself, and a temperature that may be °C
  {
    text: 'today, sunny, 70 degrees, redbud',
    fields: { date: '2026-05-06', temperature: '21.1', sky: 'clear', plants: 'Cercis canadensis ?' },
  },
  {
    text: 'today 3 to 3:15, 21, sunny',
    fields: { date: '2026-05-06', times: '15:00-15:15', temperature: 'unsure 21', sky: 'clear' },
  },
  // several lines below one label
  {
    text: 'Plants:\nCrabapple, 400 flowers\nCommon lilac, 60 flowers\n\nBees:\n4 common eastern on the crabapple\n1 brown-belted on the lilac',
    fields: { plants: 'Malus 400, Syringa vulgaris 60', tally: '4 impatiens @Malus, 1 griseocollis @Syringa vulgaris' },
  },
  // named, and then told with "it"
  { text: 'forgot the temp, it was 64', fields: { temperature: '17.8' } },
  { text: 'i forgot the wind, it was light', fields: { wind: '2' } },
  { text: 'the size - it was 10x12 ft', fields: { patch: '11.15 rectangle' } },
  {
    text: 'at Coldspring Landing boat ramp, 68F',
    fields: { place: 'Coldspring Landing boat ramp', temperature: '20' },
  },
  {
    text: 'Place: Kettle Fen boardwalk. Marsh marigold, 200 flowers, nothing.',
    fields: { place: 'Kettle Fen boardwalk', plants: 'Caltha palustris 200', tally: '0 - @Caltha palustris' },
  },
  // the one is a queen, no flower and not passed over
  {
    text: '2 impatiens on the bluebells and one big fuzzy one, no clue what kind',
    fields: {
      plants: 'Mertensia virginica ?',
      tally: '2 impatiens @Mertensia virginica, 1 Bombus @Mertensia virginica',
    },
  },
  {
    text: '2 impatiens on the bluebells, 1 big one',
    fields: {
      plants: 'Mertensia virginica ?',
      tally: 'unsure 2 impatiens @Mertensia virginica, 1 Bombus @Mertensia virginica',
    },
  },
  // a place in small letters, and behind a label on one line with the rest
  {
    text: 'today 2-2:15 at the library garden, 65F',
    fields: { date: '2026-05-06', times: '14:00-14:15', place: 'the library garden', temperature: '18.3' },
  },
  {
    text: 'Place: Alder Park. 2-2:15 today, 65F',
    fields: { date: '2026-05-06', times: '14:00-14:15', place: 'Alder Park', temperature: '18.3' },
  },
  // telegram style
  {
    text: 'yesterday 2:10-2:25, 66F, sunny, light breeze, prairie smoke 40 blooms, 1 bimac',
    fields: {
      date: '2026-05-05',
      times: '14:10-14:25',
      temperature: '18.9',
      sky: 'clear',
      wind: '2',
      plants: 'Geum triflorum 40',
      tally: '1 bimaculatus @Geum triflorum',
    },
  },
  {
    text: 'today 11 to 11:15 am 70 F overcast calm lilac 55 clusters no bees',
    fields: {
      date: '2026-05-06',
      times: '11:00-11:15',
      temperature: '21.1',
      sky: 'overcast',
      wind: '0',
      plants: 'Syringa vulgaris 55',
      tally: '0 - @Syringa vulgaris',
    },
  },
  {
    text: '5/4, 1:30pm-1:45pm, 72 F, partly cloudy, 8 mph, columbine 25 flowers, 2 imp, 1 half-black',
    fields: {
      date: '2026-05-04',
      times: '13:30-13:45',
      temperature: '22.2',
      sky: 'scattered',
      wind: '3',
      plants: 'Aquilegia canadensis 25',
      tally: '2 impatiens @Aquilegia canadensis, 1 vagans @Aquilegia canadensis',
    },
  },
  {
    text: 'Mon 10:05 to 10:20. 61F. Mostly cloudy, gentle breeze. Patch 10 x 12 ft. Virginia bluebells 150 flowers. 3 common easterns.',
    fields: {
      date: '2026-05-04',
      times: '10:05-10:20',
      temperature: '16.1',
      sky: 'broken',
      wind: '3',
      patch: '11.15 rectangle',
      plants: 'Mertensia virginica 150',
      tally: '3 impatiens @Mertensia virginica',
    },
  },
  {
    text: 'May 3 / 12:00-12:15 / 75F / clear / no wind / 4m x 3m / wild lupine ~80 flowers / 2 griseocollis',
    fields: {
      date: '2026-05-03',
      times: '12:00-12:15',
      temperature: '23.9',
      sky: 'clear',
      wind: '0',
      patch: '12 rectangle',
      plants: 'Lupinus perennis ~80',
      tally: '2 griseocollis @Lupinus perennis',
    },
  },
  {
    text: '4/29 3-3:15pm 19C half and half, breezy. dandelion 60 heads: 1 imp. redbud 200+ flowers: none',
    fields: {
      date: '2026-04-29',
      times: '15:00-15:15',
      temperature: '19',
      sky: 'scattered',
      wind: '4',
      plants: 'Taraxacum officinale 60, Cercis canadensis 200+',
      tally: '1 impatiens @Taraxacum officinale, 0 - @Cercis canadensis',
    },
  },
  // forms
  {
    text: "Date: May 2\nTime: 9:40 - 9:55 am\nLocation: Fen Boardwalk, second bench\nTemp: 58 F\nSky: mostly sunny\nWind: calm\nPlant: Jacob's ladder\nFlowers: 45\nQueens: 2 bimaculatus",
    fields: {
      date: '2026-05-02',
      times: '09:40-09:55',
      place: 'Fen Boardwalk, second bench',
      temperature: '14.4',
      sky: 'few',
      wind: '0',
      plants: 'Polemonium reptans 45',
      tally: '2 bimaculatus @Polemonium reptans',
    },
  },
  {
    text: 'Date - 4/30\nStart - 2:45 pm\nEnd - 3:00 pm\nTemperature - 64\nClouds - 50%\nWind - 6\nPlants - bluebells 70, white trout lily 12\nBees - none',
    fields: {
      date: '2026-04-30',
      times: '14:45-15:00',
      temperature: '17.8',
      sky: 'scattered',
      wind: '2',
      plants: 'Mertensia virginica 70, Erythronium albidum 12',
      tally: '0 - @Mertensia virginica, 0 - @Erythronium albidum',
    },
  },
  {
    text: 'When: Tuesday 4:10 to 4:25 pm\nWhere: Heron Bend\nWeather: 68, mostly sunny, light wind\nPatch size: 15 ft across\nFlowers: 30 wild geranium, 12 columbine\nBees: 1 impatiens on the geranium, nothing on the columbine',
    fields: {
      date: '2026-05-05',
      times: '16:10-16:25',
      place: 'Heron Bend',
      temperature: '20',
      sky: 'few',
      wind: '2',
      patch: '16.42 circle',
      plants: 'Geranium maculatum 30, Aquilegia canadensis 12',
      tally: '1 impatiens @Geranium maculatum, 0 - @Aquilegia canadensis',
    },
  },
  {
    text: 'date: yesterday; time: noon to 12:15; temp: 71F; sky: clear; wind: 5 mph; plant: crabapple 300 flowers; bees: 4 imp',
    fields: {
      date: '2026-05-05',
      times: '12:00-12:15',
      temperature: '21.7',
      sky: 'clear',
      wind: '2',
      plants: 'Malus 300',
      tally: '4 impatiens @Malus',
    },
  },
  {
    text: '1. May 1\n2. 10:30 to 10:45\n3. 63 F, overcast, gentle breeze\n4. pussy willow, 90 catkins\n5. 1 bimaculatus, 2 impatiens',
    fields: {
      date: '2026-05-01',
      times: '10:30-10:45',
      temperature: '17.2',
      sky: 'overcast',
      wind: '3',
      plants: 'Salix discolor 90',
      tally: '1 bimaculatus @Salix discolor, 2 impatiens @Salix discolor',
    },
  },
  // prose
  {
    text: 'Hi there! I watched the crabapple by the church yesterday from 3:30 to 3:45. It was 70 degrees F and sunny with a light breeze. About 250 blossoms were open. I saw two impatiens and one brown-belted. Thanks, Odile',
    fields: {
      date: '2026-05-05',
      times: '15:30-15:45',
      temperature: '21.1',
      sky: 'clear',
      wind: '2',
      plants: 'Malus ~250',
      tally: '2 impatiens @Malus, 1 griseocollis @Malus',
    },
  },
  {
    text: 'Dear Ines, this morning I sat beside my lilac for fifteen minutes beginning at 10:15. The thermometer said 62 F. Gray skies and no wind at all. I counted 80 clusters in bloom and did not see a single bumble bee. Yours, Maren',
    fields: {
      date: '2026-05-06',
      times: '10:15-10:30',
      temperature: '16.7',
      sky: 'overcast',
      wind: '0',
      plants: 'Syringa vulgaris 80',
      tally: '0 - @Syringa vulgaris',
    },
  },
  {
    text: 'Good morning,\n\nMy watch was on Sunday, May 3, from 1:15 to 1:30 pm. 74 F, partly sunny, breezy.\nThe patch is 8 by 10 feet. There were about 60 wild geranium flowers and 35 columbine flowers.\nOn the geranium I saw 2 impatiens. Nothing on the columbine.\n\nKind regards,\nTheo Aldersgate\n(715) 555-0188',
    fields: {
      date: '2026-05-03',
      times: '13:15-13:30',
      temperature: '23.3',
      sky: 'scattered',
      wind: '4',
      patch: '7.43 rectangle',
      plants: 'Geranium maculatum ~60, Aquilegia canadensis 35',
      tally: '2 impatiens @Geranium maculatum, 0 - @Aquilegia canadensis',
    },
  },
  {
    text: "Sat by the Dutchman's breeches today 1:05-1:20 pm, 57F, cloudy, hardly a breeze. Maybe 110 blossoms. One two-spotted queen with pollen on her legs.",
    fields: {
      date: '2026-05-06',
      times: '13:05-13:20',
      temperature: '13.9',
      sky: 'overcast',
      plants: 'unsure Dicentra cucullaria 110',
      tally: '1 bimaculatus pollen 1 @Dicentra cucullaria',
      wind: '1',
    },
  },
  {
    text: 'We did our watch on April 28 from 2 to 2:15 pm at Oak Rise Savanna. 65 F, clear, light breeze. Prairie smoke, 120 flowers. 1 rusty patched!! Photo attached.',
    fields: {
      date: '2026-04-28',
      times: '14:00-14:15',
      place: 'Oak Rise Savanna',
      temperature: '18.3',
      sky: 'clear',
      wind: '2',
      plants: 'Geum triflorum 120',
      tally: '1 affinis @Geum triflorum',
    },
  },
  {
    text: 'no bumble bees again, 15 min at the bluebells from 11:00 this morning, 59F and gloomy, calm, 85 flowers',
    fields: {
      date: '2026-05-06',
      times: '11:00-11:15',
      temperature: '15',
      sky: 'overcast',
      wind: '0',
      plants: 'Mertensia virginica 85',
      tally: '0 - @Mertensia virginica',
    },
  },
  {
    text: 'Quick note from the garden: phlox 70 flowers, wild geranium 22 flowers, 2 half-blacks on the phlox, none on the geranium. 3:00-3:15 today, 69F, sunny, 4 mph.',
    fields: {
      date: '2026-05-06',
      times: '15:00-15:15',
      temperature: '20.6',
      sky: 'clear',
      wind: '2',
      plants: 'Phlox 70, Geranium maculatum 22',
      tally: '2 vagans @Phlox, 0 - @Geranium maculatum',
    },
  },
  // two plants, headings and lists
  {
    text: 'May 4, 2:00-2:15 pm, 72F, clear, calm\nBluebells 90 flowers: 2 imp, 1 bimac\nRedbud 300 flowers: 1 auricomus',
    fields: {
      date: '2026-05-04',
      times: '14:00-14:15',
      temperature: '22.2',
      sky: 'clear',
      wind: '0',
      plants: 'Mertensia virginica 90, Cercis canadensis 300',
      tally: '2 impatiens @Mertensia virginica, 1 bimaculatus @Mertensia virginica, 1 auricomus @Cercis canadensis',
    },
  },
  {
    text: 'yesterday, 4:00 to 4:15, 66 and mostly sunny, light breeze. bluebells 85, phlox 40. 2 imp on the phlox, nothing on the bluebells.',
    fields: {
      date: '2026-05-05',
      times: '16:00-16:15',
      temperature: '18.9',
      sky: 'few',
      wind: '2',
      plants: 'Mertensia virginica 85, Phlox 40',
      tally: '2 impatiens @Phlox, 0 - @Mertensia virginica',
    },
  },
  {
    text: 'today 9:15-9:30, 60F, overcast, still. Plants: squirrel corn 45, white trout lily 30. No queens on either.',
    fields: {
      date: '2026-05-06',
      times: '09:15-09:30',
      temperature: '15.6',
      sky: 'overcast',
      wind: '0',
      plants: 'Dicentra canadensis 45, Erythronium albidum 30',
      tally: '0 - @Dicentra canadensis, 0 - @Erythronium albidum',
    },
  },
  {
    text: '4/27 1:00-1:15pm 65F clear 3mph\ndandelion 40 heads - 1 imp\nviolets 25 flowers - 0\n',
    fields: {
      date: '2026-04-27',
      times: '13:00-13:15',
      temperature: '18.3',
      sky: 'clear',
      wind: '1',
      plants: 'Taraxacum officinale 40, Viola 25',
      tally: '1 impatiens @Taraxacum officinale, 0 - @Viola',
    },
  },
  // more styles
  {
    text: 'CRABAPPLE IN FULL BLOOM, 350 BLOSSOMS. 2:30-2:45 PM YESTERDAY. 71F. SUNNY. LIGHT BREEZE. 3 IMPATIENS.',
    fields: {
      date: '2026-05-05',
      times: '14:30-14:45',
      temperature: '21.7',
      sky: 'clear',
      wind: '2',
      plants: 'Malus 350',
      tally: '3 impatiens @Malus',
    },
  },
  {
    text: 'may 2nd, eleven thirty to quarter to twelve, sixty four degrees, cloudy, little wind, forty bluebells, two common easterns',
    fields: {
      date: '2026-05-02',
      times: '11:30-11:45',
      temperature: '17.8',
      sky: 'overcast',
      wind: '2',
      plants: 'Mertensia virginica 40',
      tally: '2 impatiens @Mertensia virginica',
    },
  },
  {
    text: 'Today 1:10pm for 15 min. Sunny 73. Calm. Wild geranium (60 open). Queens: 1 griseocollis w/ pollen',
    fields: {
      date: '2026-05-06',
      times: '13:10-13:25',
      temperature: '22.8',
      sky: 'clear',
      wind: '0',
      plants: 'Geranium maculatum 60',
      tally: '1 griseocollis pollen 1 @Geranium maculatum',
    },
  },
  {
    text: '05/03/2026 10:00-10:15; 14 C; 6/8 cloud; Beaufort 2; 3 x 2 m; Mertensia virginica 120 fl.; B. impatiens 2, B. bimaculatus 1',
    fields: {
      date: '2026-05-03',
      times: '10:00-10:15',
      temperature: '14',
      sky: 'broken',
      wind: '2',
      patch: '6 rectangle',
      plants: 'Mertensia virginica 120',
      tally: '2 impatiens @Mertensia virginica, 1 bimaculatus @Mertensia virginica',
    },
  },
  {
    text: 'Watch 3\nMay 5, 2026\n3:05 pm - 3:20 pm\n43.5121, -90.6402\n67 F, partly cloudy, wind 6 mph\n5 ft x 8 ft\nbleeding heart 45 flowers\n2 impatiens',
    fields: {
      date: '2026-05-05',
      times: '15:05-15:20',
      place: '43.5121 -90.6402',
      temperature: '19.4',
      sky: 'scattered',
      wind: '2',
      patch: '3.72 rectangle',
      plants: 'Lamprocapnos spectabilis 45',
      tally: '2 impatiens @Lamprocapnos spectabilis',
    },
  },
  {
    text: 'Hey! Did one over my lunch break today, 12:10-12:25. 69 and sunny, calm. Chives, 60 heads. Zero queens :(',
    fields: {
      date: '2026-05-06',
      times: '12:10-12:25',
      temperature: '20.6',
      sky: 'clear',
      wind: '0',
      plants: 'Allium schoenoprasum 60',
      tally: '0 - @Allium schoenoprasum',
    },
  },
  {
    text: 'Tues. 5:15-5:30pm, 66F, overcast w/ light wind. honeysuckle 200 blossoms. 3 queens: 2 impatiens and 1 I could not identify.',
    fields: {
      date: '2026-05-05',
      times: '17:15-17:30',
      temperature: '18.9',
      sky: 'overcast',
      wind: '2',
      plants: 'Lonicera 200',
      tally: '2 impatiens @Lonicera, 1 Bombus @Lonicera',
    },
  },
  {
    text: 'Lovely afternoon yesterday! From 4 until 4:15 pm I watched the lilac hedge (about 90 clusters). One impatiens and maybe a bimac. 72 F, clear, gentle breeze.',
    fields: {
      date: '2026-05-05',
      times: '16:00-16:15',
      temperature: '22.2',
      sky: 'clear',
      wind: '3',
      plants: 'Syringa vulgaris ~90',
      tally: '1 impatiens @Syringa vulgaris, 1 bimaculatus? @Syringa vulgaris',
    },
  },
  {
    text: 'Saturday 9:00 - 9:15 am. 55 degrees F, foggy, still. 80 dandelion heads. Not a single bee.',
    fields: {
      date: '2026-05-02',
      times: '09:00-09:15',
      temperature: '12.8',
      sky: 'overcast',
      wind: '0',
      plants: 'Taraxacum officinale 80',
      tally: '0 - @Taraxacum officinale',
    },
  },
  {
    text: 'Apr 26, 1 to 1:15 pm\nAt Heron Bend Landing\n68F, sunny, light breeze\nPatch about 6 feet across\nPlants:\n- shooting star: 35 flowers\n- prairie smoke: 50 flowers\nBees:\n- 1 auricomus on shooting star\n- 2 bimaculatus on prairie smoke',
    fields: {
      date: '2026-04-26',
      times: '13:00-13:15',
      place: 'Heron Bend Landing',
      temperature: '20',
      sky: 'clear',
      wind: '2',
      patch: '2.63 circle',
      plants: 'Primula meadia 35, Geum triflorum 50',
      tally: '1 auricomus @Primula meadia, 2 bimaculatus @Geum triflorum',
    },
  },
  {
    text: 'no bees at the white trout lilies today (25 flowers), 11:40 to 11:55, 58 F, cloudy, windy',
    fields: {
      date: '2026-05-06',
      times: '11:40-11:55',
      temperature: '14.4',
      sky: 'overcast',
      wind: '5',
      plants: 'Erythronium albidum 25',
      tally: '0 - @Erythronium albidum',
    },
  },
  {
    text: 'Yesterday noon-12:15. 65F, partly cloudy, breeze about 5 mph. Redbud 300 flowers, Virginia bluebells 75. Redbud: 2 impatiens, 1 griseocollis. Bluebells: 1 bimaculatus.',
    fields: {
      date: '2026-05-05',
      times: '12:00-12:15',
      temperature: '18.3',
      sky: 'scattered',
      wind: '2',
      plants: 'Cercis canadensis 300, Mertensia virginica 75',
      tally: '2 impatiens @Cercis canadensis, 1 griseocollis @Cercis canadensis, 1 bimaculatus @Mertensia virginica',
    },
  },
  {
    text: 'May 1. Started 2:20pm, stopped 2:35pm. Temp was 70, sky clear, no wind. My patch of wild strawberry is 4 by 6 feet and had 90 open flowers. I saw 1 half-black and the same one came back twice.',
    fields: {
      date: '2026-05-01',
      times: '14:20-14:35',
      temperature: '21.1',
      sky: 'clear',
      wind: '0',
      patch: '2.23 rectangle',
      plants: 'Fragaria virginiana 90',
      tally: '1 vagans @Fragaria virginiana',
    },
  },
  {
    text: "My 2nd watch of the season: 5/5, 10:00 am to 10:15 am, 63°F, mostly sunny, 3-5 mph wind, Jacob's ladder (40 flowers), 1 B. bimaculatus, 2 honey bees, 1 small fly",
    fields: {
      date: '2026-05-05',
      times: '10:00-10:15',
      temperature: '17.2',
      sky: 'few',
      wind: '2',
      plants: 'Polemonium reptans 40',
      tally: '1 bimaculatus @Polemonium reptans',
    },
  },
  {
    text: 'yesterday 1-1:15pm 68F sunny calm; creeping charlie in the lawn, hundreds of flowers; 4 impatiens',
    fields: {
      date: '2026-05-05',
      times: '13:00-13:15',
      temperature: '20',
      sky: 'clear',
      wind: '0',
      plants: 'Glechoma hederacea ?',
      tally: '4 impatiens @Glechoma hederacea',
    },
  },
  // two watches: the first is read, and asked about
  {
    text: 'Two this week.\n\nMonday 3:00-3:15 pm, 65F, sunny, calm, lilac 40 clusters, 1 imp.\nTuesday 2:00-2:15 pm, 70F, cloudy, windy, lilac 45 clusters, none.',
    fields: {
      date: '2026-05-04',
      times: 'unsure 15:00-15:15',
      temperature: '18.3',
      sky: 'clear',
      wind: '0',
      plants: 'Syringa vulgaris 40',
      tally: '1 impatiens @Syringa vulgaris',
    },
  },
  // forms without signs, and codes
  {
    text: 'Report for Sunday May 3\nTime 2:15-2:30\nTemp 70\nSky sunny\nWind 5\nPlant lilac\nFlowers 75\nQueens 2 impatiens',
    fields: {
      date: '2026-05-03',
      times: '14:15-14:30',
      temperature: '21.1',
      sky: 'clear',
      wind: '2',
      plants: 'Syringa vulgaris 75',
      tally: '2 impatiens @Syringa vulgaris',
    },
  },
  {
    text: 'Bumblebee watch\n4/30/2026\n1530-1545\n18 C\n2/8\nB3\nTaraxacum officinale (50 heads)\nB. impatiens x1\nB. griseocollis x2',
    fields: {
      date: '2026-04-30',
      times: '15:30-15:45',
      temperature: '18',
      sky: 'few',
      wind: '3',
      plants: 'Taraxacum officinale 50',
      tally: '1 impatiens @Taraxacum officinale, 2 griseocollis @Taraxacum officinale',
    },
  },
  {
    text: 'Quick one: lilacs, yesterday, 4:10-4:25, 73, sunny, no breeze. 2 easterns. ~60 clusters.',
    fields: {
      date: '2026-05-05',
      times: '16:10-16:25',
      temperature: '22.8',
      sky: 'clear',
      wind: '0',
      plants: 'Syringa vulgaris ~60',
      tally: '2 impatiens @Syringa vulgaris',
    },
  },
  {
    text: '1:20-1:35 pm on 5/5. 68F, mostly sunny, wind NW 8. Violets (40 flowers) had nothing. Dandelions (65 heads) had 1 perplexus and 2 impatiens.',
    fields: {
      date: '2026-05-05',
      times: '13:20-13:35',
      temperature: '20',
      sky: 'few',
      wind: '3',
      plants: 'Viola 40, Taraxacum officinale 65',
      tally: '0 - @Viola, 1 perplexus @Taraxacum officinale, 2 impatiens @Taraxacum officinale',
    },
  },
  {
    text: 'On April 29th we watched the hawthorn from 10:20 until 10:35 am. 63 degrees, partly sunny, a light breeze. 52 blossoms. Two bumble bees came, both common eastern, and one of them had yellow pollen on its legs.',
    fields: {
      date: '2026-04-29',
      times: '10:20-10:35',
      temperature: '17.2',
      sky: 'scattered',
      wind: '2',
      plants: 'Crataegus 52',
      tally: '2 impatiens pollen 1 @Crataegus',
    },
  },
  {
    text: 'Patch watch #4 / May 5 / 11:20-11:35 / 65F mostly sunny breezy / Phlox divaricata 70, Geranium maculatum 22 / 2 impatiens + 1 vagans on phlox, none on geranium',
    fields: {
      date: '2026-05-05',
      times: '11:20-11:35',
      temperature: '18.3',
      sky: 'few',
      wind: '4',
      plants: 'Phlox divaricata 70, Geranium maculatum 22',
      tally: '2 impatiens @Phlox divaricata, 1 vagans @Phlox divaricata, 0 - @Geranium maculatum',
    },
  },
  {
    text: 'Yesterday evening 6:30-6:45pm 60F clear still. Honeysuckle 140 flowers. nothing.',
    fields: {
      date: '2026-05-05',
      times: '18:30-18:45',
      temperature: '15.6',
      sky: 'clear',
      wind: '0',
      plants: 'Lonicera 140',
      tally: '0 - @Lonicera',
    },
  },
  {
    text: 'Date 5/4 time 9:50-10:05 temp 62 sky cloudy wind light plant apple flowers 120 bees 1 impatiens 1 bimaculatus',
    fields: {
      date: '2026-05-04',
      times: '09:50-10:05',
      temperature: '16.7',
      sky: 'overcast',
      wind: '2',
      plants: 'Malus domestica 120',
      tally: '1 impatiens @Malus domestica, 1 bimaculatus @Malus domestica',
    },
  },
  {
    text: 'Sun 5/3 1p-1:15p 68 calm dandelion x70 imp x2',
    fields: {
      date: '2026-05-03',
      times: '13:00-13:15',
      temperature: '20',
      wind: '0',
      plants: 'Taraxacum officinale 70',
      tally: '2 impatiens @Taraxacum officinale',
    },
  },
  {
    text: 'Fri May 1, 4:00-4:15 pm, 67F, scattered clouds, 4 mph, American plum 400, tatarian honeysuckle 60. Plum: 3 impatiens 1 ternarius. Honeysuckle: 0.',
    fields: {
      date: '2026-05-01',
      times: '16:00-16:15',
      temperature: '19.4',
      sky: 'scattered',
      wind: '2',
      plants: 'Prunus americana 400, Lonicera tatarica 60',
      tally: '3 impatiens @Prunus americana, 1 ternarius @Prunus americana, 0 - @Lonicera tatarica',
    },
  },
  {
    text: 'Monday 1:30 to 1:45, 73F, not a cloud, slight breeze. Redbud still going, maybe 250 flowers left. Three brown belteds.',
    fields: {
      date: '2026-05-04',
      times: '13:30-13:45',
      temperature: '22.8',
      sky: 'clear',
      wind: '2',
      plants: 'unsure Cercis canadensis 250',
      tally: '3 griseocollis @Cercis canadensis',
    },
  },
  {
    text: 'It was 2 impatiens and 1 griseocollis on the lilac, not 3 impatiens.',
    fields: { plants: 'Syringa vulgaris ?', tally: '2 impatiens @Syringa vulgaris, 1 griseocollis @Syringa vulgaris' },
  },
  {
    text: '5-5-26 2:30-2:45p 68F wind 5-10 lupine 30 bimac 1 imp 2',
    fields: {
      date: '2026-05-05',
      times: '14:30-14:45',
      temperature: '20',
      wind: '2',
      plants: 'Lupinus 30',
      tally: '1 bimaculatus @Lupinus, 2 impatiens @Lupinus',
    },
  },
  {
    text: 'We had five queens on the crabapple (350 blossoms) today between 3 and 3:15: three impatiens, one griseocollis and one vagans. 72 F, clear and calm.',
    fields: {
      date: '2026-05-06',
      times: '15:00-15:15',
      temperature: '22.2',
      sky: 'clear',
      wind: '0',
      plants: 'Malus 350',
      tally: '3 impatiens @Malus, 1 griseocollis @Malus, 1 vagans @Malus',
    },
  },
  {
    text: 'Two-spotted bumble bee on the bleeding hearts! 1 queen, 40 flowers, yesterday 10:30-10:45 am, 60 F, partly cloudy, light breeze',
    fields: {
      date: '2026-05-05',
      times: '10:30-10:45',
      temperature: '15.6',
      sky: 'scattered',
      wind: '2',
      plants: 'Lamprocapnos spectabilis 40',
      tally: '1 bimaculatus @Lamprocapnos spectabilis',
    },
  },
  {
    text: 'Time 3:15 - 3:30 pm, Tues May 5. Temp 74. Sunny. Wind from SW at 9 mph. Plant: chokecherry, about 200 flowers in a 4 x 6 ft area. Bees: impatiens 3, bimaculatus 1, unknown 1.',
    fields: {
      date: '2026-05-05',
      times: '15:15-15:30',
      temperature: '23.3',
      sky: 'clear',
      wind: '3',
      patch: '2.23 rectangle',
      plants: 'Prunus virginiana ~200',
      tally: '3 impatiens @Prunus virginiana, 1 bimaculatus @Prunus virginiana, 1 Bombus @Prunus virginiana',
    },
  },
  {
    text: 'Date: 05/04/26\nTime: 1330 to 1345\nTemp (F): 68\nCloud cover (%): 75\nWind (mph): 7\nPatch (ft): 10 x 4\nPlant 1: prairie smoke, 60\nPlant 2: lilac, 35\nQueens: 2 B. bimaculatus on prairie smoke, none on lilac',
    fields: {
      date: '2026-05-04',
      times: '13:30-13:45',
      temperature: '20',
      sky: 'broken',
      wind: '2',
      patch: '3.72 rectangle',
      plants: 'Geum triflorum 60, Syringa vulgaris 35',
      tally: '2 bimaculatus @Geum triflorum, 0 - @Syringa vulgaris',
    },
  },
  // parts of a watch
  { text: 'it was 64 F with scattered clouds', fields: { temperature: '17.8', sky: 'scattered' } },
  { text: 'Forgot the wind: about 7 mph, and the patch was 6 m by 2 m', fields: { wind: '2', patch: '12 rectangle' } },
  {
    text: '2 impatiens on the lilac',
    fields: { plants: 'Syringa vulgaris ?', tally: '2 impatiens @Syringa vulgaris' },
  },
  { text: 'bluebells 85 flowers', fields: { plants: 'Mertensia virginica 85' } },
  { text: 'started at 2:15 pm and ended at 2:30', fields: { times: '14:15-14:30' } },
  // mail
  {
    text: 'Date: 5/1\nTime: 3:10-3:25 pm\nTemp: 66 F\nSky: clear\nWind: light\nPlant: redbud, 200 flowers\nQueens: 1 imp\n\nThanks!\nMaren\n\nOn Fri, May 1, 2026 at 8:00 AM Watch Helper <helper@kestrelfen.example> wrote:\n> Last time you told us of 2 bimaculatus at 55 F.\n> Reply with your next watch.',
    fields: {
      date: '2026-05-01',
      times: '15:10-15:25',
      temperature: '18.9',
      sky: 'clear',
      wind: '2',
      plants: 'Cercis canadensis 200',
      tally: '1 impatiens @Cercis canadensis',
    },
  },
  {
    text: '> Which day was it?\nyesterday\n> From when to when?\n2:15 to 2:30\n> How warm was it, and how were sky and wind?\n67, sunny, 5 mph\n> Which plants, and how many open flowers?\nlilac 60\n> How many queens?\nnone',
    fields: {
      date: '2026-05-05',
      times: '14:15-14:30',
      temperature: '19.4',
      sky: 'clear',
      wind: '2',
      plants: 'Syringa vulgaris 60',
      tally: '0 - @Syringa vulgaris',
    },
  },
  {
    text: 'Hello Ines,\n\nyesterday 5:00 to 5:15 pm, 70 F, clear, light air, hawthorn 150 flowers, 2 impatiens.\n\nBest,\nProf. T. Aldersgate\nRoom 316\n\n-----Original Message-----\nFrom: Helper\nSent: Monday\nTo: T. Aldersgate\nSubject: Reminder\n\nYour last watch: April 12, 1:00 to 1:15 pm, 50 F, no queens.',
    fields: {
      date: '2026-05-05',
      times: '17:00-17:15',
      temperature: '21.1',
      sky: 'clear',
      wind: '1',
      plants: 'Crataegus 150',
      tally: '2 impatiens @Crataegus',
    },
  },
  {
    text: 'today 1:30-1:45, 68F, sunny, calm, phlox 30 flowers, 1 bimac\n\nSent from my iPhone',
    fields: {
      date: '2026-05-06',
      times: '13:30-13:45',
      temperature: '20',
      sky: 'clear',
      wind: '0',
      plants: 'Phlox 30',
      tally: '1 bimaculatus @Phlox',
    },
  },
  // unsure fields stand beside sure ones
  {
    text: 'yesterday 1:00-1:15 pm, 72F, clear, calm. The bed is 20 feet long. chives 60 flowers, 2 brown belted',
    fields: {
      date: '2026-05-05',
      times: '13:00-13:15',
      temperature: '22.2',
      sky: 'clear',
      wind: '0',
      patch: 'unsure 37.16 rectangle',
      plants: 'Allium schoenoprasum 60',
      tally: '2 griseocollis @Allium schoenoprasum',
    },
  },
  {
    text: 'today 2:00-2:15 pm, 70F, sunny, calm, dandelion 50 heads, a few impatiens',
    fields: {
      date: '2026-05-06',
      times: '14:00-14:15',
      temperature: '21.1',
      sky: 'clear',
      wind: '0',
      plants: 'Taraxacum officinale 50',
      tally: 'unsure 3 impatiens @Taraxacum officinale',
    },
  },
  {
    text: 'today 2:00-2:15 pm, 70F, sunny, calm, spring beauty 50 flowers, 1 bimac',
    fields: {
      date: '2026-05-06',
      times: '14:00-14:15',
      temperature: '21.1',
      sky: 'clear',
      wind: '0',
      plants: 'unsure Claytonia caroliniana 50',
      tally: 'unsure 1 bimaculatus @Claytonia caroliniana',
    },
  },
  {
    text: 'today 2:00-2:15 pm, 18 degrees, sunny, calm, phlox 50 flowers, 3 queens',
    fields: {
      date: '2026-05-06',
      times: '14:00-14:15',
      temperature: 'unsure 18',
      sky: 'clear',
      wind: '0',
      plants: 'Phlox 50',
      tally: 'unsure 3 Bombus @Phlox',
    },
  },
  // numbers and what they count
  {
    text: 'today 2-2:15 71 clear calm 10x4 ft phlox 55 no bees',
    fields: {
      date: '2026-05-06',
      times: '14:00-14:15',
      temperature: '21.7',
      sky: 'clear',
      wind: '0',
      patch: '3.72 rectangle',
      plants: 'Phlox 55',
      tally: '0 - @Phlox',
    },
  },
  {
    text: 'It was 58F and cloudy, wind about 10 mph. 75 heads of dandelion open',
    fields: { temperature: '14.4', sky: 'overcast', wind: '3', plants: 'Taraxacum officinale 75' },
  },
  {
    text: 'bluebells 200, 66 F, 2 imps',
    fields: { temperature: '18.9', plants: 'Mertensia virginica 200', tally: '2 impatiens @Mertensia virginica' },
  },
  // a bare number in a list, beside the day, the times or the weather
  {
    text: 'Tues May 5. 3:20 pm to 3:35 pm. 66. Sky: hazy sun.',
    fields: { date: '2026-05-05', times: '15:20-15:35', temperature: '18.9', sky: 'few' },
  },
  {
    text: 'today 1-1:15, phlox, 60, 2 imps',
    fields: { date: '2026-05-06', times: '13:00-13:15', plants: 'Phlox 60', tally: '2 impatiens @Phlox' },
  },
  // the day is no part of the place
  {
    text: 'Did my watch at Otter Bend on Sunday, 1:15-1:30pm. 64F',
    fields: { date: '2026-05-03', times: '13:15-13:30', place: 'Otter Bend', temperature: '17.8' },
  },
  {
    text: 'at Pine Ridge Preserve May 5, 2-2:15, 66 F',
    fields: { date: '2026-05-05', times: '14:00-14:15', place: 'Pine Ridge Preserve', temperature: '18.9' },
  },
  { text: 'Start time was 3:10, end time 3:25. Date was May 1.', fields: { date: '2026-05-01', times: '15:10-15:25' } },
  // plants that are only mentioned
  {
    text: "Canada anemone isn't out so I used the marsh marigolds, 130 flowers. April 25, 1 to 1:15 pm. Zero bees.",
    fields: {
      date: '2026-04-25',
      times: '13:00-13:15',
      plants: 'Caltha palustris 130',
      tally: '0 - @Caltha palustris',
    },
  },
  {
    text: 'Lupines, 40 spikes open. 3:05 to 3:20 today. 3 auricomus queens. The hoary puccoon nearby was not open yet.',
    fields: { date: '2026-05-06', times: '15:05-15:20', plants: 'Lupinus 40', tally: '3 auricomus @Lupinus' },
  },
  {
    text: 'Lilac, 3 to 3:15 today. About 500 flowers. One brown-belted. She has a lovely garden with crabapples, and an old plum tree that hums.',
    fields: {
      date: '2026-05-06',
      times: '15:00-15:15',
      plants: 'Syringa vulgaris ~500',
      tally: '1 griseocollis @Syringa vulgaris',
    },
  },
  {
    text: 'Anemone... sorry, bloodroot 50\nno bumble bees',
    fields: { plants: 'Sanguinaria canadensis 50', tally: '0 - @Sanguinaria canadensis' },
  },
  // watched, though without a number
  {
    text: 'Phlox 60 and columbine. 2 imps on the phlox, none on the columbine',
    fields: { plants: 'Phlox 60, Aquilegia canadensis ?', tally: '2 impatiens @Phlox, 0 - @Aquilegia canadensis' },
  },
  // two watches: the first is offered
  {
    text: 'yesterday noon-12:15 dandelion 40 heads 1 bimac, and again today noon-12:15 dandelion 60 heads nothing',
    fields: {
      date: '2026-05-05',
      times: 'unsure 12:00-12:15',
      plants: 'Taraxacum officinale 40',
      tally: '1 bimaculatus @Taraxacum officinale',
    },
  },
  {
    text: '1) May 4, 1:00-1:15 pm, 66 F. Redbud, 150 flowers. 2 impatiens.\n2) May 5, 1:00-1:15 pm, 70 F. Redbud, 130 flowers. 1 bimaculatus.',
    fields: {
      date: '2026-05-04',
      times: 'unsure 13:00-13:15',
      temperature: '18.9',
      plants: 'Cercis canadensis 150',
      tally: '2 impatiens @Cercis canadensis',
    },
  },
  // a tally is as unsure as the name of its plant
  {
    text: 'trout lily 18, spring beauty 150. Two B. bimaculatus on the spring beauty.',
    fields: {
      plants: 'unsure Erythronium albidum 18, Claytonia caroliniana 150',
      tally: 'unsure 2 bimaculatus @Claytonia caroliniana',
    },
  },
  // a part of a name is enough where the plants are told
  {
    text: 'Prairie smoke, 90 flowers. Shooting star, 55 flowers. On the smoke: 1 impatiens. On the star: 2 bimaculatus.',
    fields: {
      plants: 'Geum triflorum 90, Primula meadia 55',
      tally: '1 impatiens @Geum triflorum, 2 bimaculatus @Primula meadia',
    },
  },
  // a number in words is no half of the sky
  { text: 'fifty nine degrees, overcast, no wind', fields: { temperature: '15', sky: 'overcast', wind: '0' } },
  {
    text: 'We had 2 impatiens on the redbud and 1 on the violets. Redbud has about 300 flowers, violets around 60.',
    fields: {
      plants: 'Cercis canadensis ~300, Viola ~60',
      tally: '2 impatiens @Cercis canadensis, 1 impatiens @Viola',
    },
  },
  {
    text: 'lilac - 90\nimpatiens 3',
    fields: { plants: 'Syringa vulgaris 90', tally: '3 impatiens @Syringa vulgaris' },
  },
  { text: 'A bush with 300 flowers, violets around 60', fields: { plants: 'Viola ~60' } },
  { text: 'Mostly sunny, 66 or so, gentle breeze', fields: { temperature: '18.9', sky: 'few', wind: '3' } },
  // who it is from ends with the sentence
  {
    text: 'Observer: Dale Moss. 1:15 p.m. to 1:30 p.m. Temperature 59 F. Sky overcast. Dicentra cucullaria, 88 flowers.',
    fields: { times: '13:15-13:30', temperature: '15', sky: 'overcast', plants: 'Dicentra cucullaria 88' },
  },
  // "of them" are the plant's flowers, and no degrees
  {
    text: 'dandelions, 60 of them, today 2-2:15',
    fields: { date: '2026-05-06', times: '14:00-14:15', plants: 'Taraxacum officinale 60' },
  },
  {
    text: 'dandelions in the boulevard, 60 or so of them. 63 degrees. 1 brown belted queen',
    fields: { temperature: '17.2', plants: 'Taraxacum officinale ~60', tally: '1 griseocollis @Taraxacum officinale' },
  },
  // … and of queens they are queens
  {
    text: 'violets 40. 3 imps on the violets, 2 of them with pollen',
    fields: { plants: 'Viola 40', tally: '3 impatiens pollen 2 @Viola' },
  },
  {
    text: '3 imps on the violets, 2 of them with pollen',
    fields: { plants: 'Viola ?', tally: '3 impatiens pollen 2 @Viola' },
  },
  // "bore" is no borealis
  {
    text: 'The Ohio buckeye bore 30 spikes of bloom. Two common eastern queens came to it.',
    fields: { plants: 'Aesculus glabra 30', tally: '2 impatiens @Aesculus glabra' },
  },
  // a weekday behind "on" is no part of the place's name
  {
    text: 'at Crane Landing on Monday May 4, 1:50 to 2:05 pm',
    fields: { date: '2026-05-04', times: '13:50-14:05', place: 'Crane Landing' },
  },
  {
    text: 'at Pheasant Run ball fields. 71, sunny',
    fields: { place: 'Pheasant Run ball fields', temperature: '21.7', sky: 'clear' },
  },
  {
    text: 'phlox 85, trillium 22. 1 two-spotted on the phlox, none on the rest.',
    fields: { plants: 'Phlox 85, Trillium 22', tally: '1 bimaculatus @Phlox, 0 - @Trillium' },
  },
  // not to be named
  {
    text: "Watched a white flower I don't know the name of, 30 blooms, from 1:30 to 1:45 yesterday. One common eastern.",
    fields: {
      date: '2026-05-05',
      times: '13:30-13:45',
      plants: '- 30',
      tally: "1 impatiens @white flower I don't know the name of",
    },
  },
];
describe('notes', () => {
  test.each(notes)('$text', ({ text, fields }) => {
    expect(shown(readNote(text, demo))).toEqual(fields);
  });
});

/** No watch is told. */
const chats = [
  "Sorry, I couldn't get out this week, it rained every day.",
  'Hello, I will not be able to do my watch on Saturday because my sister is visiting. Best, Maren',
  'Thanks for the reminder!',
  'When is my next watch due?',
  'The bluebells were so lovely along the river last Sunday that we stayed for hours and hours.',
  'ok',
  '',
  '-- \nMaren Tollefson, age 86\nRoom 212\n608-555-0142',
];
test.each(chats)('no watch is told in "%s"', (text) => {
  expect(readNote(text, demo).state).toBe('none');
});

const weather: FieldName[] = ['temperature', 'sky', 'wind'];
const when: FieldName[] = ['date', 'times'];

const weatherUnknown: Shown = {
  temperature: 'none temperature-unknown',
  sky: 'none sky-unknown',
  wind: 'none wind-unknown',
};

/** The fields asked for, a message, and all that it says. */
const answers: [asked: FieldName[], typed: string, fields: Shown][] = [
  // weather
  [weather, '68, mostly sunny, light breeze', { temperature: '20', sky: 'few', wind: '2' }],
  [weather, '68 sunny 5', { temperature: '20', sky: 'clear', wind: '2' }],
  [weather, '70, partly cloudy, 5', { temperature: '21.1', sky: 'scattered', wind: '2' }],
  [weather, '66 F / 50% cloud / 4 mph', { temperature: '18.9', sky: 'scattered', wind: '2' }],
  [weather, 'no idea how warm, sunny and calm', { sky: 'clear', wind: '0' }],
  [weather, '68/sunny/5mph', { temperature: '20', sky: 'clear', wind: '2' }],
  [weather, '68 F, clear, calm', { temperature: '20', sky: 'clear', wind: '0' }],
  [weather, 'sunny and 72, no wind', { temperature: '22.2', sky: 'clear', wind: '0' }],
  [weather, 'low 70s, overcast, breezy', { temperature: '22.2', sky: 'overcast', wind: '4' }],
  [weather, '72', { temperature: '22.2' }],
  [weather, 'sunny', { sky: 'clear' }],
  [weather, 'calm and sunny', { sky: 'clear', wind: '0' }],
  [weather, '10 mph', { wind: '3' }],
  [weather, '18, sunny, calm', { temperature: 'unsure 18', sky: 'clear', wind: '0' }], // perhaps °C
  [weather, '70F 30% clouds 8mph', { temperature: '21.1', sky: 'few', wind: '3' }],
  [weather, 'warm, 75ish. Blue sky, hardly any wind', { temperature: '23.9', sky: 'clear', wind: '1' }],
  [weather, '61\novercast\nlight wind', { temperature: '16.1', sky: 'overcast', wind: '2' }],
  [weather, 'temp 64, wind 6, sky clear', { temperature: '17.8', sky: 'clear', wind: '2' }],
  [
    weather,
    'Temperature: 64 F\nSky: mostly cloudy\nWind: gentle breeze',
    { temperature: '17.8', sky: 'broken', wind: '3' },
  ],
  [['wind'], '8', { wind: '3' }],
  [['temperature'], '66', { temperature: '18.9' }],
  [['temperature'], 'banana', { temperature: 'none temperature-unknown' }],
  // when
  [
    when,
    'yesterday 10:40 to 10:55, 66 and mostly sunny',
    { date: '2026-05-05', times: '10:40-10:55', temperature: '18.9', sky: 'few' },
  ],
  [when, 'today 3-3:15', { date: '2026-05-06', times: '15:00-15:15' }],
  [when, '5/4 2:30-2:45', { date: '2026-05-04', times: '14:30-14:45' }],
  [when, 'May 3rd from 1 to 1:15', { date: '2026-05-03', times: '13:00-13:15' }],
  [when, 'yesterday', { date: '2026-05-05' }],
  [when, 'noon to 12:15', { times: '12:00-12:15' }],
  [
    when,
    'yesterday 3:20 to 3:35, 2 imp on the lilac',
    { date: '2026-05-05', times: '15:20-15:35', tally: '2 impatiens @Syringa vulgaris' },
  ],
  [
    when,
    'yesterday noon to 12:15, lilac 60 clusters',
    { date: '2026-05-05', times: '12:00-12:15', plants: 'Syringa vulgaris 60' },
  ],
  [when, 'yesterday noon to 12:15 at the crabapple', { date: '2026-05-05', times: '12:00-12:15' }], // where, not what
  // plants and queens: numbers belong to what they stand beside
  [['plants'], 'bluebells 85, phlox 40', { plants: 'Mertensia virginica 85, Phlox 40' }],
  [['plants'], 'bluebells 85, phlox 40, 68F', { temperature: '20', plants: 'Mertensia virginica 85, Phlox 40' }],
  [
    ['plants'],
    'bluebells 85 flowers, 2 impatiens',
    { plants: 'Mertensia virginica 85', tally: '2 impatiens @Mertensia virginica' },
  ],
  [['plants'], 'windflower 20', { plants: 'unsure Anemonoides quinquefolia 20' }], // no wind
  [['plants'], 'hello', { plants: 'none plants-no-name' }],
  [['tally'], 'none', { tally: '0 - @?' }],
  [['tally'], '2 imp on phlox, 1 bimac on lilac', { tally: '2 impatiens @Phlox, 1 bimaculatus @Syringa vulgaris' }],
  [['tally'], '3', { tally: 'none tally-which-bees' }],
  [['tally'], '2 imp, it was 68 F by the way', { temperature: '20', tally: '2 impatiens @?' }],
  // patch
  [['patch'], '10 by 12 feet', { patch: '11.15 rectangle' }],
  [['patch'], '10 by 12', { patch: 'unsure 11.15 rectangle' }],
  [weather, 'fifty for fahrenheit', { temperature: '12.2' }],
  [weather, 'warm, 2 bees on the dandelions already', weatherUnknown],
  // a no or a zero tells of bees only beside a bee or a plant
  [weather, 'nope', weatherUnknown],
  [when, 'none', { date: 'none no-date', times: 'none no-time' }],
  [['patch'], 'zero', { patch: 'none patch-bare-number' }],
  [when, 'today 2-2:15, no bees', { date: '2026-05-06', times: '14:00-14:15', tally: '0 - @?' }],
  [[], 'none', {}],
  [[], 'No bees at all', { tally: '0 - @?' }],
  // nothing asked
  [[], 'it was 68 F', { temperature: '20' }],
  [[], '68', {}],
  [[], 'ok', {}],
];
test.each(answers)('asked %j, "%s" says %j', (asked, typed, fields) => {
  expect(shownFields(readFields(typed, demo, asked).fields)).toEqual(fields);
});

/** A place may have any words in its name. */
const places: [typed: string, fields: Shown][] = [
  ['Heron Bend, second bench', { place: 'Heron Bend, second bench' }],
  ['Clear Lake boat landing', { place: 'Clear Lake boat landing' }],
  ['Windy Hill Farm', { place: 'Windy Hill Farm' }],
  ['Sunny Slope, by the crabapple', { place: 'Sunny Slope, by the crabapple' }],
  ['May Prairie', { place: 'May Prairie' }],
  ['Heron Bend, 68 F, sunny', { place: 'Heron Bend', temperature: '20', sky: 'clear' }],
  ['at the fen boardwalk, it was sunny', { place: 'at the fen boardwalk', sky: 'clear' }],
  ['43.5121, -90.6402', { place: '43.5121 -90.6402' }],
  // no temperature and no feet
  [`43°24'18"N 90°12'45"W`, { place: '43.405 -90.2125' }],
];
test.each(places)('asked where, "%s" says %j', (typed, fields) => {
  expect(shownFields(readFields(typed, demo, ['place']).fields)).toEqual(fields);
});

/** What is asked together is told together. */
const together: [typed: string, asked: FieldName[], fields: Shown][] = [
  // the words of a day tell its half
  ['Yesterday evening, 6:10 to 6:25', ['date', 'times'], { date: '2026-05-05', times: '18:10-18:25' }],
  ['6:30 to 6:45 this morning', ['date', 'times'], { date: '2026-05-06', times: '06:30-06:45' }],
  // a doubt is of all that is told, not of a bee
  ['not sure but 72', ['temperature', 'sky', 'wind'], { temperature: 'unsure 22.2' }],
  ['not sure but april 28', ['date', 'times'], { date: 'unsure 2026-04-28' }],
  // no number of flowers
  ['6x3 flower garden', ['patch'], { patch: 'unsure 1.67 rectangle' }],
  ['6 by 3 flower bed', ['patch'], { patch: 'unsure 1.67 rectangle' }],
  // what is asked back tells nothing
  [
    '69, hazy sun. is gentle breeze the one where leaves move?',
    ['temperature', 'sky', 'wind'],
    { temperature: '20.6', sky: 'few' },
  ],
];
test.each(together)('"%s" for %j says %j', (typed, asked, fields) => {
  expect(shownFields(readFields(typed, demo, asked).fields)).toEqual(fields);
});

/** While queens are asked for, zeros and ordinals are of these. */
test('"zero. windy as heck" is a zero, and the wind', () => {
  const { fields } = readFields('zero. windy as heck', { ...demo, watched: ['Malus'] }, ['tally']);
  expect(shownFields(fields)).toEqual({ tally: '0 - @Malus', wind: 'unsure 5' });
});
test('"nothing on the second" is no day', () => {
  const watched = ['Cercis canadensis', 'Phlox divaricata'];
  const { fields } = readFields('2 two-spots on the first one, nothing on the second', { ...demo, watched }, ['tally']);
  expect(fields.date).toBeUndefined();
});

test('what nobody used is left', () => {
  expect(readFields('10 by 12 feet, edge of the woods', demo, ['patch']).left).toContain('edge of the woods');
});

const hostile: [what: string, typed: string][] = [
  ['rows', '1 imp on phlox '.repeat(400)],
  ['letters', 'a'.repeat(10_000)],
  ['numbers', '1 '.repeat(3000)],
  ['labels', 'Temp: 5\n'.repeat(700)],
  ['questions', '> how warm\n5\n'.repeat(400)],
  ['commas', ', '.repeat(3000)],
  ['thanks', 'thanks\n'.repeat(1400)],
  ['empty lines', '\n'.repeat(10_000)],
  ['a mail of a megabyte', 'word '.repeat(200_000)],
];
test.each(hostile)('a text of many %s is answered too', (_, typed) => {
  expect(['sure', 'unsure', 'none']).toContain(readNote(typed, demo).state);
});
