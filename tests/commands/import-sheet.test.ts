/** `import FILE.csv|FILE.xlsx` as coordinators run it: what is shown, what is stored, what is refused. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import Excel from 'exceljs';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { ZipFile } from 'yazl';
import { watchSchema, type Watch } from '../../shared/record.js';
import { exportPackage } from '../../src/commands/export.js';
import { importPackage } from '../../src/commands/import.js';
import { season } from '../../src/commands/season.js';
import { watches } from '../../src/commands/watches.js';
import type { Command } from '../../src/commands/command.js';
import { ROOT } from '../../src/settings/index.js';
import { keepPerson, openStore, peopleOf } from '../../src/store/index.js';
import { newFolder } from './program.js';

afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

type Then = BufferEncoding | ((error?: Error | null) => void);

/** What a command prints; its refusal in place of an exception. */
async function run(command: Command, ...args: readonly string[]): Promise<string> {
  let printed = '';
  const spy = vi.spyOn(process.stdout, 'write').mockImplementation((text: string | Uint8Array, then?: Then) => {
    printed += String(text);
    if (typeof then === 'function') then();
    return true;
  });
  try {
    await command.run(args);
  } catch (error) {
    printed += `! ${(error as Error).message}\n`;
  } finally {
    spy.mockRestore();
  }
  return printed;
}

const DEMO = join(ROOT, 'demo', 'spreadsheets');
const HEAD = 'Date,Start,End,Observer,Place,Temp (F),Plant,Flowers,Bee,Queens';
const ROW = '5/2/2026,10:40,10:55,Wren,Fen Boardwalk,68,dandelion,14,common eastern,2';
const OTHER = '5/3/2026,10:40,10:55,Lark,Heron Bend Landing,71,wild lupine,30,,';

function csv(...lines: readonly string[]): string {
  const file = join(newFolder(), 'may.csv');
  writeFileSync(file, `${lines.join('\n')}\n`);
  return file;
}

async function storedIn(data: string): Promise<Watch[]> {
  return watchSchema.array().parse(JSON.parse(await run(watches, '--json', '--data', data)));
}
const lastLine = (printed: string): string => printed.trimEnd().split('\n').at(-1) ?? '';

describe('what is shown and stored', () => {
  test('nothing without --yes, and all of it with', async () => {
    const data = join(newFolder(), 'data');
    const file = csv(HEAD, ROW, OTHER);
    const shown = await run(importPackage, file, '--data', data);
    expect(shown).toMatch(/^may\.csv: 2 watches\.\n/);
    expect(shown).toMatch(/2026-05-02 +Wren +68 °F +dandelion: 14 +2 common eastern/);
    expect(shown).toMatch(/10:40–10:55 +Heron Bend/);
    expect(shown).toContain('New observers: Wren, Lark.');
    expect(lastLine(shown)).toBe('Nothing is stored yet. To store 2 watches: the same command with --yes.');
    expect(await run(watches, '--data', data)).toMatch(/^! No watches are stored/);

    expect(lastLine(await run(importPackage, file, '--data', data, '--yes'))).toBe(
      'Stored 2 watches as watches 1 to 2.',
    );
    const [first, second] = await storedIn(data);
    expect(first).toMatchObject({
      number: 1,
      via: 'import',
      status: 'confirmed',
      survey: 'kestrel-fen',
      date: '2026-05-02',
      times: { start: '10:40', end: '10:55' },
      minutes: 15,
      place: { words: 'Fen Boardwalk', site: 'fen-boardwalk', private: false },
      temperature: { celsius: 20 },
      asTyped: { temperature: 'Temp (F): 68', place: 'Fen Boardwalk' },
      plants: [{ plant: 1, name: 'Taraxacum officinale', asTyped: 'dandelion', unit: 'head', flowers: { value: 14 } }],
      queens: [{ row: 1, plant: 1, bee: 'Bombus impatiens', count: 2, asTyped: 'common eastern' }],
      total: 2,
    });
    expect(second).toMatchObject({ number: 2, total: 0, queens: [], plants: [{ name: 'Lupinus perennis' }] });
    // a key that says nothing; the name is kept apart
    expect(first?.observer).toMatch(/^[0-9a-f-]{36}$/);
    expect(JSON.stringify(await storedIn(data))).not.toContain('Wren');
    const store = await openStore(join(data, 'queenpost.sqlite'), { readonly: true });
    expect(
      store.reading((connection) => peopleOf(connection, 'kestrel-fen')).map(({ name, key }) => [name, key]),
    ).toEqual([
      ['Lark', second?.observer],
      ['Wren', first?.observer],
    ]);
    store.close();
    expect(await run(season, '--data', data)).toMatch(/2 watches, 30 minutes/);
    expect(await run(exportPackage, join(newFolder(), 'copy'), '--data', data)).toMatch(/^Wrote 2 watches/);
  });

  test('the same file again adds nothing, and a change in it is named', async () => {
    const data = join(newFolder(), 'data');
    await run(importPackage, csv(HEAD, ROW, OTHER), '--data', data, '--yes');
    const before = await storedIn(data);
    const again = await run(importPackage, csv(HEAD, ROW, OTHER), '--data', data, '--yes');
    expect(again).toMatch(/is watch\n? /);
    expect(again).toContain('2 watches of it are stored already and will not be stored again.');
    expect(lastLine(again)).toBe('Nothing is left to store.');
    const changed = await run(
      importPackage,
      csv(HEAD, ROW.replace(',68,', ',70,').replace(/2$/, '3'), OTHER),
      '--data',
      data,
      '--yes',
    );
    expect(changed).toContain('Line 2 differs from watch 1 in temperature, queens; the stored one stays as it is.');
    expect(await storedIn(data)).toEqual(before);
    // and a new row beside the old ones is taken alone
    const third = ROW.replace('5/2', '5/4');
    const more = await run(importPackage, csv(HEAD, ROW, OTHER, third), '--data', data, '--yes');
    expect(lastLine(more)).toBe('Stored 1 watch as watch 3.');
    const all = await storedIn(data);
    expect(all.map(({ number }) => number)).toEqual([1, 2, 3]);
    expect(all[2]?.observer).toBe(all[0]?.observer);
  });

  test('what the checks notice is shown and stored; what they would ask the coordinator stays open', async () => {
    const data = join(newFolder(), 'data');
    const file = csv(HEAD, ROW.replace('10:55', '11:25').replace('dandelion', 'unknown white wildflower'));
    const shown = await run(importPackage, file, '--data', data, '--yes');
    expect(shown).toContain('line 2: 45 minutes were watched; the protocol asks for 15 ± 2.');
    expect(shown).toContain('On no list of plants, taken as written: unknown white wildflower.');
    const [watch] = await storedIn(data);
    expect(watch?.findings).toMatchObject([{ check: 'length', weight: 'query', values: { minutes: 45 } }]);
    expect(watch?.queries.map(({ check, state, question }) => [check, state, question.slice(0, 30)])).toEqual([
      [null, 'open', 'Which plant is “unknown white '],
      ['length', 'open', '45 minutes were watched; the p'],
    ]);
  });

  test('a place that nobody called public is private', async () => {
    const data = join(newFolder(), 'data');
    const shown = await run(
      importPackage,
      csv(HEAD, ROW.replace('Fen Boardwalk', 'behind the mill')),
      '--data',
      data,
      '--yes',
    );
    expect(shown).toContain(
      'The places of 1 watch are no sites of the survey and are taken as private; a column “private” with yes or no says otherwise.',
    );
    expect((await storedIn(data))[0]?.place).toMatchObject({ words: 'behind the mill', private: true });
  });

  test('the examples of the demo', async () => {
    const data = join(newFolder(), 'data');
    expect(lastLine(await run(importPackage, join(DEMO, 'may.csv'), '--data', data, '--yes'))).toBe(
      'Stored 4 watches as watches 1 to 4.',
    );
    expect(lastLine(await run(importPackage, join(DEMO, 'one-watch.csv'), '--data', data, '--yes'))).toBe(
      'Stored 1 watch as watch 5.',
    );
    expect((await storedIn(data)).map(({ total }) => total)).toEqual([3, 1, 0, 1, 5]);
  });
});

describe('whose a watch is', () => {
  const person = (name: string, key: string, thread: string) => ({
    survey: 'kestrel-fen',
    channel: 'telegram',
    person: thread,
    key,
    name,
    mail: null,
    consent: null,
    declined: [],
    photographLicence: null,
    nameShown: false,
    reminders: false,
  });
  async function withPeople(...people: ReturnType<typeof person>[]): Promise<string> {
    const data = join(newFolder(), 'data');
    const store = await openStore(join(data, 'queenpost.sqlite'));
    store.writing((transaction) => people.forEach((one) => keepPerson(transaction, one)));
    store.close();
    return data;
  }

  test('somebody who reports in a thread under that name, or by the key', async () => {
    const data = await withPeople(person('Wren', 'key-of-wren', '1'), person('Lark', 'key-of-lark', '2'));
    const shown = await run(
      importPackage,
      csv(HEAD, ROW.replace('Wren', ' WREN '), OTHER.replace('Lark', 'key-of-lark')),
      '--data',
      data,
      '--yes',
    );
    expect(shown).not.toContain('New observers');
    expect((await storedIn(data)).map(({ observer }) => observer)).toEqual(['key-of-wren', 'key-of-lark']);
  });

  test('two of one name are not told apart by chance', async () => {
    const data = await withPeople(person('Wren', 'one', '1'), person('wren', 'two', '2'));
    const shown = await run(importPackage, csv(HEAD, ROW), '--data', data, '--yes');
    expect(shown).toContain(
      'may.csv, line 2: more than one observer is called Wren; write the key of the right one: one or two.',
    );
    expect(lastLine(shown)).toMatch(/^! Nothing was stored/);
    await run(importPackage, csv(HEAD, ROW.replace('Wren', 'two')), '--data', data, '--yes');
    expect((await storedIn(data)).map(({ observer }) => observer)).toEqual(['two']);
  });
});

describe('all or nothing', () => {
  const doubtful = ROW.replace('5/2', '5/4').replace(',68,', ',hot,');

  test('one thing not understood, and nothing is stored, with --yes or without', async () => {
    const data = join(newFolder(), 'data');
    for (const yes of [[], ['--yes']]) {
      const shown = await run(importPackage, csv(HEAD, ROW, doubtful), '--data', data, ...yes);
      expect(shown).toContain('may.csv, line 3, column F “Temp (F)”: “hot” is not understood; write it like 68 F.');
      expect(lastLine(shown)).toBe(
        '! Nothing was stored: one thing was not understood. Put it right, or leave out the 1 watch with --leave-out.',
      );
    }
    expect(await run(watches, '--data', data)).toMatch(/^! No watches are stored/);
  });

  test('--leave-out stores the others, and says so', async () => {
    const data = join(newFolder(), 'data');
    const shown = await run(importPackage, csv(HEAD, ROW, doubtful), '--data', data, '--leave-out');
    expect(lastLine(shown)).toBe(
      'Nothing is stored yet. To store 1 watch, without 1 watch that was not understood: the same command with --yes --leave-out.',
    );
    const stored = await run(importPackage, csv(HEAD, ROW, doubtful), '--data', data, '--leave-out', '--yes');
    expect(lastLine(stored)).toBe('Stored 1 watch as watch 1, without 1 watch that was not understood.');
    expect((await storedIn(data)).map(({ date }) => date)).toEqual(['2026-05-02']);
  });

  test.each([
    ['a day that may be that of the watch above', ROW.replace('5/2/2026', '5/32/2026')],
    ['no observer', ROW.replace('Wren', '')],
    ['a place of another spelling', ROW.replace('Fen Boardwalk', 'Fen Bordwalk')],
  ])('--leave-out does not help with %s: a watch would be stored without one of its rows', async (_name, row) => {
    const shown = await run(
      importPackage,
      csv(HEAD, ROW, row),
      '--data',
      join(newFolder(), 'data'),
      '--yes',
      '--leave-out',
    );
    expect(lastLine(shown)).toBe(
      '! Nothing was stored: one thing was not understood. It tells of more than one watch, so none can be left out.',
    );
  });

  test('nor with a heading', async () => {
    const shown = await run(
      importPackage,
      csv(`${HEAD},Remarsk`, `${ROW},x`),
      '--data',
      join(newFolder(), 'data'),
      '--yes',
      '--leave-out',
    );
    expect(shown).toContain('column K: “Remarsk” is no heading that is known; if “remark” is meant, write that.');
    expect(lastLine(shown)).toMatch(/^! Nothing was stored/);
  });
});

/** Makes a workbook with the library that reads them. */
async function workbook(fill: (workbook: Excel.Workbook) => void): Promise<string> {
  const made = new Excel.Workbook();
  fill(made);
  const file = join(newFolder(), 'may.xlsx');
  await made.xlsx.writeFile(file);
  return file;
}

/**
 * A workbook written part by part after ECMA-376, with another packer and no library for spreadsheets: strings inline,
 * dates and times as serial numbers under the formats 14 and 20 (part 1, 18.8.30).
 */
async function byHand(sheet: string, { date1904 = false, names = '' } = {}): Promise<string> {
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const packaged = 'http://schemas.openxmlformats.org/package/2006';
  const type = (part: string, kind: string) =>
    `<Override PartName="/xl/${part}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.${kind}+xml"/>`;
  const parts: Record<string, string> = {
    '[Content_Types].xml': `<Types xmlns="${packaged}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${type('workbook', 'sheet.main')}${type('worksheets/sheet1', 'worksheet')}${type('styles', 'styles')}</Types>`,
    '_rels/.rels': `<Relationships xmlns="${packaged}/relationships"><Relationship Id="rId1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${office}"><workbookPr${date1904 ? ' date1904="1"' : ''}/><sheets><sheet name="May" sheetId="1" r:id="rId1"/></sheets>${names}</workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${packaged}/relationships"><Relationship Id="rId1" Type="${office}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${office}/styles" Target="styles.xml"/></Relationships>`,
    'xl/styles.xml': `<styleSheet xmlns="${main}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="3"><xf/><xf numFmtId="14" applyNumberFormat="1"/><xf numFmtId="20" applyNumberFormat="1"/></cellXfs></styleSheet>`,
    'xl/worksheets/sheet1.xml': `<worksheet xmlns="${main}">${sheet}</worksheet>`,
  };
  const zip = new ZipFile();
  for (const [name, text] of Object.entries(parts)) {
    zip.addBuffer(Buffer.from(`<?xml version="1.0" encoding="UTF-8" standalone="yes"?>${text}`), name);
  }
  zip.end();
  const file = join(newFolder(), 'may.xlsx');
  writeFileSync(file, await buffer(zip.outputStream));
  return file;
}

describe('workbooks', () => {
  const head = HEAD.split(',');
  /** ROW, with real dates, times and numbers. Days are counted from 1899-12-30: 2 May 2026 is 46144. */
  const row = [
    new Date('2026-05-02T00:00:00Z'),
    640 / 1440,
    655 / 1440,
    'Wren',
    'Fen Boardwalk',
    68,
    'dandelion',
    14,
    'common eastern',
    2,
  ];
  const format = (sheet: Excel.Worksheet): void => {
    sheet.getColumn(1).numFmt = 'm/d/yyyy';
    for (const column of [2, 3]) sheet.getColumn(column).numFmt = 'h:mm AM/PM';
  };
  const expected = {
    date: '2026-05-02',
    times: { start: '10:40', end: '10:55' },
    temperature: { celsius: 20 },
    plants: [{ asTyped: 'dandelion', flowers: { value: 14 } }],
    queens: [{ bee: 'Bombus impatiens', count: 2 }],
  };
  async function imported(file: string): Promise<Watch[]> {
    const data = join(newFolder(), 'data');
    const shown = await run(importPackage, file, '--data', data, '--yes');
    expect(lastLine(shown)).toMatch(/^Stored/);
    return storedIn(data);
  }

  test.each([false, true])('real dates and times, counted from 1904: %s', async (date1904) => {
    const file = await workbook((made) => {
      made.properties.date1904 = date1904;
      const sheet = made.addWorksheet('May');
      sheet.addRow(head);
      sheet.addRow(row);
      format(sheet);
    });
    expect(await imported(file)).toMatchObject([expected]);
  });

  test.each([
    [false, 46144],
    [true, 44682], // 1462 days later begins the other count
  ])('a workbook of another writer, counted from 1904: %s', async (date1904, day) => {
    const text = (value: string) => `<c t="inlineStr"><is><t>${value}</t></is></c>`;
    const [wren, place, dandelion, bee] = ['Wren', 'Fen Boardwalk', 'dandelion', 'common eastern'].map(text);
    const cells = `<c s="1"><v>${day}</v></c><c s="2"><v>0.444444444444444</v></c><c s="2"><v>0.454861111111111</v></c>${wren}${place}<c><v>68</v></c>${dandelion}<c><v>14</v></c>${bee}<c><v>2</v></c>`;
    const sheet = `<sheetData><row r="1">${head.map(text).join('')}</row><row r="2">${cells}</row></sheetData>`;
    // rows and cells of this writer do not say where they stand, or do
    const numbered = sheet.replace(/<row r="(\d)">(.*?)<\/row>/g, (_all, line: string, inner: string) => {
      let column = 0;
      return `<row r="${line}">${inner.replace(/<c(?=[ >])/g, () => `<c r="${'ABCDEFGHIJ'[column++]}${line}"`)}</row>`;
    });
    expect(await imported(await byHand(numbered, { date1904 }))).toMatchObject([expected]);
  });

  test('formulas by their results, rich text, links, percent, and cells merged downwards', async () => {
    const file = await workbook((made) => {
      const sheet = made.addWorksheet('May');
      sheet.addRow([...head, 'Cloud']);
      sheet.addRow([...row, 0.4]);
      sheet.addRow([...row.slice(0, 6), 'wild lupine', 30, 'half-black', 1]);
      format(sheet);
      sheet.getCell('C2').value = { formula: 'B2+15/1440', result: 655 / 1440 };
      sheet.getCell('D2').value = { richText: [{ text: 'Wr' }, { text: 'en', font: { bold: true } }] };
      sheet.getCell('E2').value = { text: 'Fen Boardwalk', hyperlink: 'https://kestrelfen.example/boardwalk' };
      sheet.getCell('J2').value = { formula: '1+1', result: 2 };
      sheet.getCell('K2').numFmt = '0%';
      for (const column of 'ABCDEF') sheet.mergeCells(`${column}2:${column}3`);
    });
    expect(await imported(file)).toMatchObject([
      {
        ...expected,
        sky: { cloud: 'scattered' },
        plants: [{}, { asTyped: 'wild lupine' }],
        queens: [{}, { bee: 'Bombus vagans' }],
      },
    ]);
  });

  test('a formula that was never computed, and an error', async () => {
    const file = await workbook((made) => {
      const sheet = made.addWorksheet('May');
      sheet.addRow(head);
      sheet.addRow(row);
      format(sheet);
      sheet.getCell('H2').value = { formula: 'SUM(A9:A12)' };
      sheet.getCell('F2').value = { error: '#N/A' };
    });
    const shown = await run(importPackage, file, '--data', join(newFolder(), 'data'));
    expect(shown).toContain(
      'may.xlsx, sheet “May”, line 2, column F “Temp (F)”: “#N/A” is an error of the spreadsheet; write the value.',
    );
    expect(shown).toContain('column H “Flowers”: “=SUM(A9:A12)” is a formula whose result is not in the file;');
    expect(lastLine(shown)).toMatch(/^! Nothing was stored: 2 things were not understood\./);
  });

  test('a watch to a sheet, a page of explanations, and a hidden sheet', async () => {
    const file = await workbook((made) => {
      for (const day of [2, 3]) {
        const sheet = made.addWorksheet(`May ${day}`);
        sheet.addRows([
          ['Date', new Date(`2026-05-0${day}T00:00:00Z`), null, 'Observer', 'Wren'],
          ['Start', 640 / 1440, null, 'End', 655 / 1440],
          ['Place', 'Fen Boardwalk', null, 'Temp (F)', 68],
          [],
          ['Bee', 'dandelion', 'wild lupine'],
          ['Open flowers', 14, 30],
          ['common eastern', 2, null],
          ['half-black', null, day],
        ]);
        sheet.getCell('B1').numFmt = 'm/d/yyyy';
        for (const cell of ['B2', 'E2']) sheet.getCell(cell).numFmt = 'h:mm';
      }
      made.addWorksheet('Help').addRow(['Take your time.']);
      made.addWorksheet('Old', { state: 'hidden' }).addRow(['Date']);
    });
    const shown = await run(importPackage, file, '--data', join(newFolder(), 'data'));
    expect(shown).toContain('sheet “Help” has no watches that could be found, and was passed over.');
    expect(shown).toContain('sheet “Old” is hidden and was passed over.');
    expect(shown).toMatch(/May 2 +2026-05-02/);
    expect(await imported(file)).toMatchObject([
      {
        date: '2026-05-02',
        times: { start: '10:40', end: '10:55' },
        total: 4,
        queens: [
          { plant: 1, count: 2 },
          { plant: 2, count: 2 },
        ],
      },
      { date: '2026-05-03', total: 5 },
    ]);
  });

  const cells = (count: number): string =>
    `<sheetData>${`<row>${'<c><v>1</v></c>'.repeat(100)}</row>`.repeat(count / 100)}</sheetData>`;
  const hostile: [name: string, sheet: string, names: string][] = [
    ['more bytes than can be read', ' '.repeat(50_000_000), ''],
    ['more cells', cells(700_000), ''],
    ['a merged sheet', '<sheetData/><mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>', ''],
    [
      'a name for a whole sheet',
      '<sheetData/>',
      '<definedNames><definedName name="all">May!$A$1:$XFD$1048576</definedName></definedNames>',
    ],
  ];
  test.each(hostile)('a small file of %s is refused with a sentence', async (_name, sheet, names) => {
    const shown = await run(importPackage, await byHand(sheet, { names }), '--data', join(newFolder(), 'data'));
    expect(shown).toMatch(/^! .*may\.xlsx unpacks to more than can be read\. Copy the watches alone into a new file/);
  });
});

describe('a whole season', () => {
  const SEASON = join(ROOT, 'demo', 'season');
  type Row = Readonly<Record<string, string>>;
  const rowsOf = (file: string): Row[] => parse(readFileSync(join(SEASON, file)), { columns: true });

  /** The demo's season as long rows, a row for each bee on each plant. */
  function longRows(): Row[] {
    const [plants, queens] = [rowsOf('plants.csv'), rowsOf('queens.csv')];
    const ofPlant = (one: Row, plant: Row): boolean =>
      one['watch'] === plant['watch'] && one['plant'] === plant['plant'];
    return rowsOf('watches.csv').flatMap((watch) =>
      plants
        .filter((plant) => plant['watch'] === watch['watch'])
        .flatMap((plant) => {
          const seen = queens.filter((one) => ofPlant(one, plant));
          const flowers = `${plant['flowers_about'] === 'true' ? 'about ' : ''}${plant['flowers']}`;
          const ofBoth = { ...watch, plant: plant['plant'] ?? '', 'open flowers': flowers };
          const none = { bee: '', count: '', seen_before: '', with_pollen: '', caste: '', doubt: '' };
          const rows = seen.map(
            ({ bee = '', count = '', seen_before = '', with_pollen = '', caste = '', doubt = '' }) => {
              return { ...ofBoth, bee, count, seen_before, with_pollen, caste, doubt };
            },
          );
          return rows.length > 0 ? rows : [{ ...ofBoth, ...none }];
        }),
    );
  }

  test(
    'that was brought in as an exact copy, and as long rows, has the same figures',
    { timeout: 120_000 },
    async () => {
      // what experts determined, and what checks noticed, has no columns in a spreadsheet of rows
      const copy = join(newFolder(), 'copy');
      for (const file of ['watches.csv', 'plants.csv', 'queens.csv']) cpSync(join(SEASON, file), join(copy, file));
      const [exact, told] = [join(newFolder(), 'data'), join(newFolder(), 'data')];
      expect(await run(importPackage, copy, '--data', exact)).toMatch(/^Took in 240 watches/);

      const rows = longRows();
      const observers = [...new Set(rows.map(({ observer = '' }) => observer))];
      // known by their keys, so that clusters of watches are drawn in the same order
      const store = await openStore(join(told, 'queenpost.sqlite'));
      store.writing((transaction) => {
        for (const key of observers) {
          const nobody = {
            name: null,
            mail: null,
            consent: null,
            declined: [],
            photographLicence: null,
            nameShown: false,
            reminders: false,
          };
          keepPerson(transaction, { survey: 'kestrel-fen', channel: 'telegram', person: key, key, ...nobody });
        }
      });
      store.close();
      const file = join(newFolder(), 'season.csv');
      writeFileSync(file, stringify(rows, { header: true }));
      const shown = await run(importPackage, file, '--data', told, '--yes');
      expect(shown).not.toContain('not read');
      expect(lastLine(shown)).toBe('Stored 240 watches as watches 1 to 240.');

      const figures = async (data: string) =>
        JSON.parse(await run(season, '--json', '--data', data)) as Record<string, unknown>;
      const [one, other] = [await figures(exact), await figures(told)];
      for (const [name, figure] of Object.entries(one)) expect([name, other[name]]).toEqual([name, figure]);
      const [before, after] = [await storedIn(exact), await storedIn(told)];
      const places = (all: readonly Watch[]) => all.map(({ place }) => place);
      expect(places(after)).toEqual(places(before));
    },
  );
});

describe('files that are none', () => {
  const table: [name: string, bytes: Buffer | string, said: RegExp][] = [
    ['may.xls', 'x', /is no \.csv or \.xlsx file; save it as one of these\.$/],
    ['may.xlsx', 'Date,Start', /is no \.xlsx workbook, whatever its name says; save it again as one, or as \.csv\.$/],
    ['may.xlsx', Buffer.from('504b0506'.padEnd(44, '0'), 'hex'), /is no \.xlsx workbook/],
    [
      'may.xlsx',
      Buffer.from('d0cf11e0a1b11ae1000000', 'hex'),
      /is under a password, or of an old format; save it as \.xlsx without one/,
    ],
    [
      'may.csv',
      Buffer.from('Date,Observer\n5/2/2026,J\xf6rg\n', 'latin1'),
      /may\.csv, line 2, is not UTF-8 text; save the file as “CSV UTF-8”/,
    ],
    ['may.csv', Buffer.from('\ufeffDate,Start', 'utf16le'), /is UTF-16; save it as “CSV UTF-8”/],
    ['may.csv', Buffer.alloc(20_000_001, 'a'), /has 21 MB; the most is 20 MB\. Split it/],
    ['may.csv', 'a\n'.repeat(50_001), /has 50001 rows; the most is 50000\. Split it/],
    ['may.csv', 'Date,"Start\n', /may\.csv, line 1.*: a quote \("\) is opened and never closed\.$/],
  ];
  test.each(table)('%s with %.12s', async (name, bytes, said) => {
    const file = join(newFolder(), name);
    writeFileSync(file, bytes);
    const data = join(newFolder(), 'data');
    expect((await run(importPackage, file, '--data', data, '--yes')).trimEnd()).toMatch(said);
    expect(await run(watches, '--data', data)).toMatch(/^! No watches are stored/);
  });

  test('a file that is not there', async () => {
    expect(await run(importPackage, 'nowhere.csv')).toBe('! There is no file nowhere.csv.\n');
  });
});
