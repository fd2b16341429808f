/** Long rows: what becomes one watch, what is read in each column, and what is refused with which words. */
import { describe, expect, test } from 'vitest';
import { brief, cells, complaintsOf, read, readAll } from './a-sheet.js';
import type { Cell } from '../../src/sheets/index.js';

const HEAD = 'Date,Start,End,Observer,Place,Plant,Flowers,Bee,Queens';
const ROW = '5/2/2026,10:40,10:55,Wren,Fen Boardwalk,dandelion,14,common eastern,2';

const briefs = (text: string): string[] => read(text).watches.map(brief);
/** What is said of a sheet of this column beside the usual ones. */
const withColumn = (heading: string, value: string) => read(`${HEAD},${heading}\n${ROW},"${value}"\n`);

describe('what is one watch', () => {
  test('rows of the same observer, day, start and place', () => {
    const text = `${HEAD}
5/2/2026,10:40,10:55,Wren,Fen Boardwalk,Virginia bluebells,about 120,two-spotted,2
2026-05-02,10:40,10:55,Wren,Fen Boardwalk,Virginia bluebells,about 120,half-black,1
5/2/2026,10:40,10:55, wren ,Fen Boardwalk,dandelion,14,,
5/2/2026,11:40,11:55,Wren,Fen Boardwalk,dandelion,14,none,0
5/2/2026,10:40,10:55,Lark,Fen Boardwalk,dandelion,9,B. impatiens,1
`;
    expect(complaintsOf(read(text))).toEqual([]);
    expect(briefs(text)).toEqual([
      '2026-05-02 10:40–10:55 Wren @Fen Boardwalk | Virginia bluebells 120, dandelion 14 | 2 Bombus bimaculatus on 1, 1 Bombus vagans on 1',
      '2026-05-02 11:40–11:55 Wren @Fen Boardwalk | dandelion 14 | ',
      '2026-05-02 10:40–10:55 Lark @Fen Boardwalk | dandelion 9 | 1 Bombus impatiens on 1',
    ]);
  });

  test('rows of the same number, whatever else they repeat', () => {
    const text = `Watch,${HEAD}
7,5/2/2026,10:40,10:55,Wren,Fen Boardwalk,dandelion,14,impatiens,2
7,,,,,,wild lupine,,,
8,5/2/2026,10:40,10:55,Wren,Heron Bend Landing,dandelion,14,,
`;
    expect(complaintsOf(read(text))).toEqual([]);
    expect(briefs(text)).toEqual([
      '2026-05-02 10:40–10:55 Wren @Fen Boardwalk | dandelion 14, wild lupine ? | 2 Bombus impatiens on 1',
      '2026-05-02 10:40–10:55 Wren @Heron Bend Landing | dandelion 14 | ',
    ]);
  });

  test('rows that say nothing of a watch belong to the one above, and that is said', () => {
    const text = `${HEAD}\n${ROW}\n,,,,,wild lupine,30,vagans,1\n`;
    expect(briefs(text)).toEqual([
      '2026-05-02 10:40–10:55 Wren @Fen Boardwalk | dandelion 14, wild lupine 30 | 2 Bombus impatiens on 1, 1 Bombus vagans on 2',
    ]);
    expect(read(text).notices).toEqual([
      't.csv: rows that say nothing of a watch belong to the one above them: line 3.',
    ]);
  });

  test('but not across a blank line', () => {
    expect(complaintsOf(read(`${HEAD}\n${ROW}\n\n,,,,,wild lupine,30,vagans,1\n`))).toEqual([
      't.csv, line 4: the row does not say of which watch it is.',
    ]);
  });

  test('labels above the headings tell of every row', () => {
    const text = `Kestrel Fen\nObserver:,Wren,,Date:,5/2/2026\nPlace: Fen Boardwalk\nStart,Minutes,Plant,Bee,Count\n13:05,15,dandelion,vagans,1\n14:05,15,dandelion,,\n`;
    expect(complaintsOf(read(text))).toEqual([]);
    expect(briefs(text)).toEqual([
      '2026-05-02 13:05–13:20 Wren @Fen Boardwalk | dandelion ? | 1 Bombus vagans on 1',
      '2026-05-02 14:05–14:20 Wren @Fen Boardwalk | dandelion ? | ',
    ]);
  });

  test('headings over several columns are no labels', () => {
    const text = `Watch,,,Observer,Where,Flowers,,Bees,\n${HEAD}\n${ROW}\n`;
    expect(complaintsOf(read(text))).toEqual([]);
    expect(read(text).watches).toHaveLength(1);
  });

  test('a row of sums is passed over, and that is said', () => {
    const text = `${HEAD}\n${ROW}\nTotal,,,,,,,,2\n`;
    expect(complaintsOf(read(text))).toEqual([]);
    expect(read(text).notices).toEqual(['t.csv: line 3 is a sum and was passed over.']);
  });

  test('the same row twice counts twice, and that is said', () => {
    const { watches, notices } = read(`${HEAD}\n${ROW}\n${ROW}\n`);
    expect(watches.map(({ queens }) => queens.map(({ count }) => count))).toEqual([[2, 2]]);
    expect(notices).toEqual(['t.csv: rows that are the same as one above are counted with it: line 3.']);
  });

  test('one observer is not at two places at once: a slip would cut a watch in two', () => {
    const text = `${HEAD}\n${ROW}\n${ROW.replace('Fen Boardwalk', 'Fen Bordwalk')}\n`;
    const { watches } = read(text);
    expect(watches.map(({ astray }) => astray)).toEqual([false, true]);
    expect(complaintsOf(read(text))).toEqual([
      't.csv, line 3: the watch of Wren on 2026-05-02 began at 10:40, and so did the one in line 2; write place and times alike in all rows of a watch, give each watch a number in a column “watch”, or leave one out.',
    ]);
  });
});

describe('the text of the file', () => {
  const table: [name: string, text: string][] = [
    ['CRLF', `${HEAD}\r\n${ROW}\r\n`],
    ['a byte order mark', `\uFEFF${HEAD}\n${ROW}\n`],
    ['semicolons', `${HEAD}\n${ROW}\n`.replaceAll(',', ';')],
    ['semicolons, and a comma in words', `${HEAD};Sky\n${ROW};"sunny, calm, warm"\n`.replaceAll(/,(?! )/g, ';')],
    ['tabs', `${HEAD}\n${ROW}\n`.replaceAll(',', '\t')],
    ['the first line that names the sign', `sep=;\n${`${HEAD}\n${ROW}\n`.replaceAll(',', ';')}`],
    ['no line end at the end', `${HEAD}\n${ROW}`],
    ['blank lines and columns', `\n,,,,,,,,,,\n${HEAD},,\n\n${ROW},,\n,,,\n`],
  ];
  test.each(table)('%s', (_name, text) => {
    expect(complaintsOf(read(text))).toEqual([]);
    expect(briefs(text)).toEqual([
      '2026-05-02 10:40–10:55 Wren @Fen Boardwalk | dandelion 14 | 2 Bombus impatiens on 1',
    ]);
  });

  test('lines are those of the text, past line ends within quotes', () => {
    const text = `${HEAD},Remark\r\n${ROW},"one\r\ntwo\r\n"\r\n${ROW.replace('2026', '20x6')},\r\n`;
    expect(complaintsOf(read(text))).toEqual([
      't.csv, line 5, column A “Date”: “5/2/20x6” is not understood; write it like 2026-05-02.',
    ]);
  });

  test('an open quote is told with its line', () => {
    expect(() => read(`${HEAD}\n${ROW},"open\n`)).toThrow(/t\.csv, line 2.*a quote \("\) is opened and never closed/);
  });
});

describe('values', () => {
  const table: [heading: string, value: string, part: 'temperature' | 'sky' | 'wind' | 'patch', expected: unknown][] = [
    ['Temp (F)', '68', 'temperature', { celsius: 20 }],
    ['Temp (C)', '20', 'temperature', { celsius: 20 }],
    ['Temp (C)', '48', 'temperature', { celsius: 48 }], // bare, it would be °F
    ['Temp (F)', '20 C', 'temperature', { celsius: 20 }], // its own unit
    ['temperature_c', '21.5', 'temperature', { celsius: 21.5 }],
    ['Temp', 'low 70s', 'temperature', { celsius: 22.2 }],
    ['Temp', '', 'temperature', null],
    ['Temp', 'n/a', 'temperature', null],
    ['Sky', 'partly cloudy', 'sky', { cloud: 'scattered', rain: false }],
    ['cloud', 'broken', 'sky', { cloud: 'broken', rain: false }],
    ['Cloud %', '40', 'sky', { cloud: 'scattered', rain: false }],
    ['Cloud (oktas)', '3', 'sky', { cloud: 'scattered', rain: false }],
    ['Wind', 'calm', 'wind', { beaufort: 0 }],
    ['Wind (mph)', '5', 'wind', { beaufort: 2 }],
    ['Wind (Beaufort)', '5', 'wind', { beaufort: 5 }],
    ['Wind (km/h)', '12', 'wind', { beaufort: 3 }],
    ['Wind (mph)', 'light breeze', 'wind', { beaufort: 2 }],
    [
      'Patch (m2)',
      '12',
      'patch',
      { squareMetres: 12, shape: 'area', lengthMetres: null, widthMetres: null, diameterMetres: null },
    ],
    [
      'Patch (ft)',
      '10 x 10',
      'patch',
      { squareMetres: 9.290304, shape: 'rectangle', lengthMetres: 3.048, widthMetres: 3.048, diameterMetres: null },
    ],
  ];
  test.each(table)('%s "%s": %s is %j', (heading, value, part, expected) => {
    const { watches, complaints } = withColumn(heading, value);
    expect(complaintsOf({ watches, complaints, notices: [] })).toEqual([]);
    expect(watches[0]?.[part]).toEqual(expected);
  });

  test('length and width in two columns; cloud and rain in two', () => {
    const head = `${HEAD},Patch length (ft),Patch width (ft),Cloud,Rain`;
    const [watch] = read(`${head}\n${ROW},12,8,few,yes\n`).watches;
    expect(watch?.patch?.squareMetres).toBeCloseTo(12 * 8 * 0.3048 ** 2, 5);
    expect(watch?.sky).toEqual({ cloud: 'few', rain: true });
  });

  test('coordinates, their uncertainty, and the site they are in', () => {
    const head = `${HEAD.replace('Place', 'Lat')},Long,Accuracy (m)`;
    const [watch] = read(`${head}\n${ROW.replace('Fen Boardwalk', '43.5121')},-90.6402,12\n`).watches;
    expect(watch?.place).toEqual({
      latitude: 43.5121,
      longitude: -90.6402,
      uncertaintyMetres: 12,
      words: '',
      site: 'fen-boardwalk',
      private: false,
    });
  });

  const privacy: [place: string, column: string, expected: boolean | null][] = [
    ['Fen Boardwalk', '', false],
    ['my back yard', '', true],
    ['Mill Creek state park', '', false],
    ['behind the mill', '', null], // nobody said so
    ['behind the mill', 'no', false],
    ['Fen Boardwalk', 'yes', true],
    ['behind the mill', 'TRUE', true],
  ];
  test.each(privacy)('place "%s", private "%s": %s', (place, column, expected) => {
    const [watch] = read(`${HEAD},Private garden\n${ROW.replace('Fen Boardwalk', place)},${column}\n`).watches;
    expect(watch?.place?.private).toBe(expected);
  });

  test('words stand as they were typed, with the heading where it told their unit', () => {
    const [watch] = read(`${HEAD},Temp (F),Sky\n${ROW},68,sunny\n`).watches;
    expect(watch?.asTyped).toMatchObject({ date: '5/2/2026', temperature: 'Temp (F): 68', sky: 'sunny' });
    expect(watch?.asTyped).not.toHaveProperty('observer');
    expect(watch?.plants[0]).toMatchObject({
      asTyped: 'dandelion',
      name: 'Taraxacum officinale',
      unit: 'head',
      flowers: { value: 14, asTyped: '14' },
    });
    expect(watch?.queens[0]).toMatchObject({ asTyped: 'common eastern', bee: 'Bombus impatiens', doubt: false });
  });

  test('a doubt of the name, pollen, caste, and queens seen before', () => {
    const head = `${HEAD},With pollen,Caste,Seen before`;
    const [watch] = read(`${head}\n${ROW.replace('common eastern', 'impatiens?')},1,worker,1\n`).watches;
    expect(watch?.queens[0]).toMatchObject({ doubt: true, withPollen: 1, caste: 'worker', seenBefore: 1, count: 2 });
  });

  const times: [start: string, end: string, expected: string][] = [
    ['9:30 am', '9:45 am', '09:30–09:45'],
    ['1:05', '1:20', '13:05–13:20'],
    ['13:05:00', '13:20:00', '13:05–13:20'],
    ['noon', '12:15', '12:00–12:15'],
    ['2026-05-02 13:05', '2026-05-02T13:20:00', '13:05–13:20'],
  ];
  test.each(times)('from "%s" to "%s" is %s', (start, end, expected) => {
    const { watches } = read(`${HEAD}\n${ROW.replace('10:40', start).replace('10:55', end)}\n`);
    expect(`${watches[0]?.times?.start}–${watches[0]?.times?.end}`).toBe(expected);
  });

  test('where hours run to 23, 06:40 is in the morning; else it may be either', () => {
    const early = ROW.replace('10:40', '06:40').replace('10:55', '06:55');
    const late = ROW.replace('10:40', '16:40').replace('10:55', '16:55');
    expect(briefs(`${HEAD}\n${early}\n${late}\n`).map((line) => line.slice(11, 22))).toEqual([
      '06:40–06:55',
      '16:40–16:55',
    ]);
    expect(complaintsOf(read(`${HEAD}\n${early}\n`))).toEqual([
      't.csv, line 2, column B “Start”: “06:40” is not clear: 06:40–06:55 or 18:40–18:55? Write it with am or pm, like 6:40 am.',
    ]);
  });

  test('an old season with its years written out is no slip', () => {
    expect(briefs(`${HEAD}\n${ROW.replace('5/2/2026', '5/2/2024')}\n`)[0]).toMatch(/^2024-05-02 /);
  });

  test('a day that can only be day first makes the others doubtful', () => {
    const text = `${HEAD}\n${ROW.replace('5/2/2026', '17/4/2026')}\n${ROW.replace('5/2/2026', '4/5/2026')}\n`;
    expect(complaintsOf(read(text))).toEqual([
      't.csv, line 3, column A “Date”: “4/5/2026” may be two days, since “17/4/2026” in line 2 has its parts in the other order; write it like 2026-05-02, or head the column “Date (DD/MM/YYYY)”.',
    ]);
    expect(briefs(text.replace('Date', 'Date (DD/MM/YYYY)')).map((line) => line.slice(0, 10))).toEqual([
      '2026-04-17',
      '2026-05-04',
    ]);
  });

  const moment = (date: string | null, time: string | null): Cell => ({ kind: 'moment', date, time });
  test('real dates, times, lengths, numbers and truths of a spreadsheet', () => {
    const head = [
      'Date',
      'Start',
      'Minutes',
      'Observer',
      'Plant',
      'Flowers',
      'Bee',
      'Queens',
      'Cloud',
      'Private',
      'Place',
    ];
    const row = [
      moment('2026-05-02', null),
      moment(null, '06:40'),
      moment(null, '00:15'),
      'Wren',
      'dandelion',
      number(14),
      'vagans',
      number(2),
      { kind: 'number', number: 0.4, percent: true } as const,
      { kind: 'truth', truth: false } as const,
      'behind the mill',
    ];
    const found = readAll(cells([head, row]));
    expect(complaintsOf(found)).toEqual([]);
    expect(found.watches.map(brief)).toEqual([
      '2026-05-02 06:40–06:55 Wren @behind the mill | dandelion 14 | 2 Bombus vagans on 1',
    ]);
    expect(found.watches[0]).toMatchObject({ sky: { cloud: 'scattered' }, place: { private: false }, minutes: 15 });
  });
});

const number = (value: number): Cell => ({ kind: 'number', number: value, percent: false });

describe('what is not understood', () => {
  const table: [replaced: string, by: string, said: string][] = [
    ['5/2/2026', '5/32/2026', 'line 2, column A “Date”: “5/32/2026” is not understood; write it like 2026-05-02.'],
    ['5/2/2026', '5/7/2026', 'line 2, column A “Date”: “5/7/2026” is still ahead; put the day, or its year, right.'],
    ['5/2/2026', '46144', 'line 2, column A “Date”: “46144” is not understood; write it like 2026-05-02.'],
    ['5/2/2026', '', 'line 2: the watch has no day; write it like 2026-05-02.'],
    ['10:40', '', 'line 2: the watch has no start; write when it began, like 13:05.'],
    ['10:55', '', 'line 2: the watch has no end and no length; write when it ended, like 13:20, or its minutes.'],
    ['10:55', '10:30', 'line 2, column C “End”: “10:30” is not understood; write it like 13:20.'],
    ['10:40', 'soonish', 'line 2, column B “Start”: “soonish” is not understood; write it like 13:05.'],
    ['Wren', '', 'line 2: the watch has no observer; write a first name.'],
    [
      'Wren',
      'wren@kestrelfen.example',
      'line 2, column D “Observer”: a mail address is no observer; write a first name, or the key.',
    ],
    ['dandelion', '', 'line 2: the row names no plant; write on which flowers it was.'],
    ['dandelion', 'honey bee', 'line 2, column F “Plant”: “honey bee” is not understood; write it like wild lupine.'],
    [
      'dandelion',
      'spring beauty',
      /line 2, column F “Plant”: “spring beauty” is not clear; write Claytonia \w+, or .* if that is meant\./.source,
    ],
    ['14', 'lots', 'line 2, column G “Flowers”: “lots” is not understood; write it like 120 or about 120.'],
    [
      'common eastern',
      'honey bee',
      'line 2, column H “Bee”: “honey bee” is not understood; write it like common eastern, or unknown bumble bee.',
    ],
    [
      'common eastern',
      '',
      'line 2, column I “Queens”: “2” counts bees, but the row names none; write which bee, or “unknown bumble bee”.',
    ],
    [
      'common eastern',
      'none',
      'line 2, column I “Queens”: “2” counts bees, but the row says “none”; write which bee, or “unknown bumble bee”.',
    ],
    ['common eastern,2', 'common eastern,', 'line 2: “common eastern” has no count; write how many there were, or 0.'],
    [
      'common eastern,2',
      'common eastern,3 or 4',
      'line 2, column I “Queens”: “3 or 4” is not clear; write 4, or 3 if that is meant.',
    ],
    ['common eastern,2', 'common eastern,2.5', 'line 2, column I “Queens”: “2.5” is not understood; write it like 2.'],
    ['common eastern,2', 'common eastern,-1', 'line 2, column I “Queens”: “-1” is not understood; write it like 2.'],
  ];
  test.each(table)('"%s" by "%s": %s', (replaced, by, said) => {
    const found = complaintsOf(read(`${HEAD}\n${ROW.replace(replaced, by)}\n`));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(said.includes('\\w') ? new RegExp(said) : `t.csv, ${said}`);
  });

  const made = 'is a date; spreadsheets make one of a cell such as 10-12, so write it as text.';
  const dates: [column: number, cell: Cell | string, said: string][] = [
    [6, { kind: 'moment', date: '2026-10-20', time: null }, `line 2, column G “Flowers”: “2026-10-20” ${made}`],
    [6, '20-Oct', `line 2, column G “Flowers”: “20-Oct” ${made}`],
    [6, 'Oct-20', `line 2, column G “Flowers”: “Oct-20” ${made}`],
    [8, '3-Feb', `line 2, column I “Queens”: “3-Feb” ${made}`],
    [8, { kind: 'moment', date: '2026-02-03', time: null }, `line 2, column I “Queens”: “2026-02-03” ${made}`],
  ];
  test.each(dates)('what a spreadsheet made a date of: column %i with %j', (column, cell, said) => {
    const row = ROW.split(',').map((text, at) => (at === column ? cell : text));
    expect(complaintsOf(readAll(cells([HEAD.split(','), row])))).toContain(`t.xlsx, ${said}`);
  });

  test.each([
    ['2 impatiens', []],
    [
      '3 impatiens',
      ['t.csv, line 2, column H “Bee”: “3 impatiens” is another count than the 2 of its row; put one of them right.'],
    ],
  ])('a count that stands with the name: %s', (bee, said) => {
    expect(complaintsOf(read(`${HEAD}\n${ROW.replace('common eastern', bee)}\n`))).toEqual(said);
  });

  test('flowers that stand with the name, where they have no cell', () => {
    const row = ROW.replace('dandelion,14', 'dandelion (about 30),');
    expect(read(`${HEAD}\n${row}\n`).watches[0]?.plants[0]).toMatchObject({
      name: 'Taraxacum officinale',
      flowers: { value: 30, about: true, asTyped: 'dandelion (about 30)' },
    });
  });

  const columns: [heading: string, value: string, said: string][] = [
    ['Temp', 'hot', 'line 2, column J “Temp”: “hot” is not understood; write it like 68 F.'],
    ['Temp', '21', 'line 2, column J “Temp”: “21” is not clear; write 21 C if that is meant.'],
    ['Cloud', '40', 'line 2, column J “Cloud”: “40” is not understood; write it like partly cloudy or 30%.'],
    ['Patch', '12', 'line 2, column J “Patch”: “12” is not understood; write it like 12 x 8 ft or 9 m2.'],
    [
      'Site',
      'Nowhere',
      'line 2, column J “Site”: “Nowhere” is no site of the survey; known: fen-boardwalk, heron-bend, oak-rise.',
    ],
    ['Private', 'perhaps', 'line 2, column J “Private”: “perhaps” is not understood; write it like yes or no.'],
    ['Lat', '43.5', 'line 2, column J “Lat”: “43.5” stands alone; write latitude and longitude, or neither.'],
    [
      'Minutes',
      '20',
      'line 2, column J “Minutes”: “20” is more than the 15 minutes from start to end; put one of them right.',
    ],
    [
      'Time zone',
      'America/Denver',
      'line 2, column J “Time zone”: “America/Denver” is not the time zone of the survey, America/Chicago; write its times there.',
    ],
    ['Status', 'lost', 'line 2, column J “Status”: “lost” is not understood; write it like confirmed or practice.'],
    ['Seen before', '3', 'line 2, column J “Seen before”: “3” is more than the count of the row, 2.'],
    [
      'Temprature',
      '68 F',
      'line 1, column J: “Temprature” is no heading that is known; if “temperature” is meant, write that.',
    ],
    [
      'Temp (K)',
      '290',
      'line 1, column J: “Temp (K)” has a unit that is not known here; write it like “temperature (F)”; known: F, C.',
    ],
    ['Bumblebee', 'vagans', 'line 1, column J: “Bumblebee” means the same as “Bee” in column H; leave one out.'],
    [
      '',
      'vagans',
      'line 2, column J: “vagans” stands under no heading; give the column one, or put a cell that holds a comma into quotes.',
    ],
  ];
  test.each(columns)('column "%s" with "%s": %s', (heading, value, said) => {
    expect(complaintsOf(withColumn(heading, value))).toEqual([`t.csv, ${said}`]);
  });

  test('a heading that means nothing here is named and passed over', () => {
    const { complaints, notices, watches } = withColumn('Camera', 'red one');
    expect(complaints).toEqual([]);
    expect(watches).toHaveLength(1);
    expect(notices).toEqual(['t.csv: not read, since no such heading is known: column J “Camera”.']);
  });

  test('values of one watch that are not the same in its rows', () => {
    const text = `${HEAD},Temp\n${ROW},68 F\n${ROW.replace('common eastern', 'vagans')},70 F\n`;
    expect(complaintsOf(read(text))).toEqual([
      't.csv, line 3, column J “Temp”: “70 F” is not the same as “68 F” in line 2, though both rows are of one watch; put one right.',
    ]);
  });

  test('two counts of the same flowers', () => {
    expect(complaintsOf(read(`${HEAD}\n${ROW}\n${ROW.replace(',14,', ',15,')}\n`))).toEqual([
      't.csv, line 3, column G “Flowers”: “15” is another count of the same flowers than “14” in line 2; put one right.',
    ]);
  });

  test('a column that every watch needs', () => {
    expect(complaintsOf(read('Date,Plant,Bee\n5/2/2026,dandelion,vagans\n'))).toEqual([
      't.csv: no column is headed “observer”; add it.',
      't.csv: no column is headed “end”; add it.',
      't.csv: no column is headed “count”; add it.',
    ]);
  });

  test('a table of watches alone', () => {
    const text = 'Date,Start,End,Observer,Place,Temp (F)\n5/2/2026,10:40,10:55,Wren,Fen Boardwalk,68\n';
    expect(complaintsOf(read(text))).toEqual(
      ['plant', 'bee', 'count'].map((column) => `t.csv: no column is headed “${column}”; add it.`),
    );
  });

  test('a formula without its result, and an error of the spreadsheet', () => {
    const head = HEAD.split(',');
    const row = (flowers: Cell): (Cell | string)[] => ROW.split(',').map((text, at) => (at === 6 ? flowers : text));
    const what = 'is a formula whose result is not in the file';
    expect(complaintsOf(readAll(cells([head, row({ kind: 'broken', text: '=A1+1', what })])))).toEqual([
      `t.xlsx, line 2, column G “Flowers”: “=A1+1” ${what}.`,
    ]);
  });

  test('one merged cell for the counts of several rows', () => {
    const sheet = cells([HEAD.split(','), ROW.split(','), ROW.replace('common eastern', 'vagans').split(',')]);
    const rows = sheet.rows.map((row) => (row.line === 3 ? { ...row, merged: new Set([8]) } : row));
    expect(complaintsOf(readAll({ ...sheet, rows }))).toEqual([
      't.xlsx, line 3, column I “Queens”: “2” is one cell for several rows; split it, and give each row its own number.',
    ]);
  });

  const strange: [name: string, text: string, said: RegExp][] = [
    ['nothing', '', /^t\.csv: is empty\.$/],
    ['blanks', '\n,,\n', /^t\.csv: is empty\.$/],
    ['headings alone', `${HEAD}\n`, /^t\.csv: has headings, but no watch below them\.$/],
    ['other words', 'a,b,c\n1,2,3\n', /^t\.csv: has neither a line of headings/],
  ];
  test.each(strange)('a file of %s', (_name, text, said) => {
    const found = complaintsOf(read(text));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(said);
  });
});
