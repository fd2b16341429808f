/** The table of what was understood fits into the terminal it is drawn for. */
import { expect, test } from 'vitest';
import { columnsOf } from '../../src/commands/plain-text.js';
import { planOf } from '../../src/commands/sheet-plan.js';
import { sheetTable } from '../../src/commands/sheet-table.js';
import { survey } from '../demo-survey.js';
import { readAll, sheetOf } from '../sheets/a-sheet.js';

const HEAD = 'Date,Start,End,Observer,Place,Temp (F),Sky,Wind,Patch (sq ft),Plant,Flowers,Bee,Queens';
const ROW = '5/2/2026,10:40,10:55,Wren,"Fen Boardwalk, the far north end by the gate",68,partly cloudy,light breeze,96';
const TEXT = `${HEAD}
${ROW},Virginia bluebells,about 1200,rusty patched,2
${ROW},Averyveryverylongnameofaplantthatnolistholds whiteflower,30,half-black,11
${ROW.replace('10:40', '11:40').replace('10:55', 'soon')},dandelion,3,,
`;
const MAKERS = { survey, now: '2026-05-06T23:30:00Z', newId: () => '0196a3a0-0000-7000-8000-000000000001' };
const NOBODY = { watches: [], people: [], nextNumber: 1 };

test.each([
  [79, false, 80],
  [80, false, 80],
  [99, false, 99],
  [100, false, 100],
  [120, false, 120],
  [500, false, 140],
  [80, true, 80],
  [100, true, 100],
])('for %i columns, names of sheets %s: no line is longer than %i', (columns, inSheets, most) => {
  const names = inSheets ? ['the first week of May', 'the second week'] : [null];
  const read = readAll(...names.map((name) => ({ ...sheetOf(TEXT), name })));
  const lines = sheetTable(planOf(read, NOBODY, MAKERS).planned, survey, columns).split('\n');
  expect(Math.max(...lines.map(columnsOf))).toBeLessThanOrEqual(most);
  const drawn = lines.join(' ');
  for (const word of ['2026-05-02', '10:40–10:55', 'Wren', '68', '1200', '11', 'doubt']) expect(drawn).toContain(word);
});

test('what steers a terminal is not drawn', () => {
  const read = readAll(sheetOf(TEXT.replace('Fen Boardwalk', '\u001b[31mFen\u202eBoardwalk')));
  const drawn = sheetTable(planOf(read, NOBODY, MAKERS).planned, survey, 100);
  expect(drawn).toContain('Fen');
  expect(drawn).not.toMatch(/[\u001b\u202e]/);
});
