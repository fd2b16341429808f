/** A sheet for each watch: labels, plants across, bees down. */
import { describe, expect, test } from 'vitest';
import { brief, cells, complaintsOf, read, readAll, sheetOf } from './a-sheet.js';

const TOP = `Kestrel Fen Spring Queen Survey
Date:,5/4/2026,,Observer:,Juniper
Start,9:30 am,,End,9:45 am
Place: Heron Bend Landing
Temperature (F),61,,Sky,partly cloudy
`;
const GRID = `,Virginia bluebells,wild geranium,columbine
Open flowers,80,25,12
two-spotted,2,,
common eastern,1,0,1
unknown bumble bee,,-,1
`;
const TEXT = `${TOP}\n${GRID}`;
const READ =
  '2026-05-04 09:30–09:45 Juniper @Heron Bend Landing | Virginia bluebells 80, wild geranium 25, columbine 12 | ' +
  '2 Bombus bimaculatus on 1, 1 Bombus impatiens on 1, 1 Bombus impatiens on 3, 1 Bombus on 3';

describe('what is understood', () => {
  const same: [name: string, text: string][] = [
    ['an empty corner', TEXT],
    ['a corner that says bees', TEXT.replace(',Virginia', 'Bee,Virginia')],
    ['a corner that says both', TEXT.replace(',Virginia', 'Bees \\ Plants,Virginia')],
    ['semicolons', TEXT.replaceAll(',', ';')],
    ['right sums', `${TEXT.replace('columbine', 'columbine,Total')}Total,3,0,2,5\n`],
    ['bees of the form that nobody saw', `${TEXT}half-black,,,\nsome other bee we print,,,\n`],
    ['a blank line between the bees', TEXT.replace('common eastern', '\ncommon eastern')],
    ['a remark below', `${TEXT}\nRemark:,breezy at the end\n`],
    ['another column for the labels', TEXT.replaceAll(/^(?=.)/gm, ',')],
  ];
  test.each(same)('with %s', (_name, text) => {
    expect(complaintsOf(read(text))).toEqual([]);
    expect(read(text).watches.map(brief)).toEqual([READ]);
    expect(read(text).watches[0]).toMatchObject({
      temperature: { celsius: 16.1 },
      sky: { cloud: 'scattered' },
      minutes: 15,
    });
  });

  test('no bees at all is a watch with none seen', () => {
    const text = `${TOP}\n,dandelion\nFlowers,14\ncommon eastern,\n`;
    expect(complaintsOf(read(text))).toEqual([]);
    expect(read(text).watches.map(brief)).toEqual([
      '2026-05-04 09:30–09:45 Juniper @Heron Bend Landing | dandelion 14 | ',
    ]);
  });

  test('several watches below one another, and on sheets of their own', () => {
    const other = TEXT.replace('5/4', '5/5');
    expect(complaintsOf(read(`${TEXT}\n${other}`))).toEqual([]);
    expect(read(`${TEXT}\n${other}`).watches.map(brief)).toEqual([READ, READ.replace('05-04', '05-05')]);
    const found = readAll({ ...sheetOf(TEXT), name: 'one' }, { ...sheetOf(other), name: 'two' });
    expect(complaintsOf(found)).toEqual([]);
    expect(found.watches.map(({ sheet, line }) => `${sheet} ${line}`)).toEqual(['one 1', 'two 1']);
  });

  test('a page of explanations beside them is passed over, and that is said', () => {
    const found = readAll(
      { ...sheetOf(TEXT), name: 'one' },
      cells([['How to fill this in'], ['Take your time.']], 'Help'),
    );
    expect(complaintsOf(found)).toEqual([]);
    expect(found.notices).toEqual(['t.xlsx: sheet “Help” has no watches that could be found, and was passed over.']);
  });
});

describe('what is not understood', () => {
  const table: [replaced: string, by: string, said: string][] = [
    ['5/4/2026', 'soon', 'line 2, column B “Date”: “soon” is not understood; write it like 2026-05-02.'],
    ['Observer:,Juniper', '', 'line 1: no label “observer” was found; add it with its value.'],
    ['Observer:,Juniper', 'Observer:,', 'line 1: the watch has no observer; write a first name.'],
    [
      'Observer:',
      'Hat:',
      'line 2, column D: “Hat:” is no label that is known here; take it out, or write it as a remark.',
    ],
    [
      'Temperature',
      'Temprature',
      'line 5, column A: “Temprature (F)” is no heading that is known; if “temperature” is meant, write that.',
    ],
    ['wild geranium', 'honey bee', 'line 7, column C: “honey bee” is not understood; write it like wild lupine.'],
    ['wild geranium', '', 'line 8, column C: “25” stands under no plant; name the plant above it.'],
    [
      'common eastern',
      'wasp',
      'line 10, column A: “wasp” is not understood; write it like common eastern, or unknown bumble bee.',
    ],
    [
      'common eastern',
      '',
      'line 10, column B “Virginia bluebells”: “1” stands beside no bee; name the bee in front of it.',
    ],
    [
      'two-spotted,2',
      'two-spotted,lots',
      'line 9, column B “Virginia bluebells”: “lots” is not understood; write it like 2.',
    ],
    [
      '80,25,12\ntwo-spotted,2,,\ncommon eastern,1,0,1',
      '80,,12\ntwo-spotted,2,,\ncommon eastern,1,,1',
      'line 7, column C: “wild geranium” has neither open flowers nor bees, though other plants have; write how many, or take the plant out.',
    ],
  ];
  test.each(table)('"%s" by "%s": %s', (replaced, by, said) => {
    expect(complaintsOf(read(TEXT.replace(replaced, by)))).toContain(`t.csv, ${said}`);
  });

  test('sums that are none', () => {
    expect(
      complaintsOf(
        read(
          `${TEXT.replace('columbine', 'columbine,Total').replace('two-spotted,2,,', 'two-spotted,2,,,3')}Total,3,0,3\n`,
        ),
      ),
    ).toEqual([
      't.csv, line 9, column E “Total”: “3” is no sum of its counts, which come to 2; put right what is wrong.',
      't.csv, line 12, column D “columbine”: “3” is no sum of its counts, which come to 2; put right what is wrong.',
    ]);
  });

  test('labels without a grid', () => {
    expect(complaintsOf(read(TOP))).toEqual([
      't.csv, line 1: no line of plants was found; put them above the counts, the bees in front.',
    ]);
  });

  test('one watch on two sheets', () => {
    const found = readAll({ ...sheetOf(TEXT), name: 'one' }, { ...sheetOf(TEXT), name: 'two' });
    expect(complaintsOf(found)[0]).toMatch(
      /^t\.csv, sheet “two”, line 1: the watch of Juniper on 2026-05-04 began at 09:30, and so did the one in line 1 of sheet “one”/,
    );
  });
});
