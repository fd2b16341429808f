/** A settings, dialog, wording or words file that cannot be used is refused with file, line, key and value. */
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { surveySettingsSchema } from '../../shared/survey.js';
import { DEMO_SURVEY, loadSurvey, ROOT, SettingsError } from '../../src/settings/index.js';
import { readYaml } from '../../src/settings/yaml-file.js';

const settings = readFileSync(DEMO_SURVEY, 'utf8');

/** Loads a copy of a file in which one line was changed, and gives the sentence it is refused with. */
function refusal(load: () => unknown): string {
  try {
    load();
  } catch (error) {
    if (error instanceof SettingsError) return error.message;
    throw error;
  }
  return 'loaded';
}

function withSettings(from: RegExp, to: string): string {
  const changed = settings.replace(from, to);
  expect(changed).not.toBe(settings);
  const path = join(mkdtempSync(join(tmpdir(), 'queenpost-')), 'survey.yaml');
  writeFileSync(path, changed);
  return refusal(() => loadSurvey(path));
}

describe('each key of survey.yaml', () => {
  const table: [key: string, from: RegExp, to: string, said: RegExp][] = [
    ['key', /^key: .*/m, 'key: Kestrel Fen', /key: small letters, digits and hyphens.*"Kestrel Fen"/],
    ['name', /^name: .*/m, "name: ''", /name: .*""/],
    ['language', /^language: .*/m, 'language: English', /language: a language folder, for example en.*"English"/],
    ['language', /^language: .*/m, 'language: xx', /dialogs\/xx\/wording\.yaml: cannot be read/],
    ['dialog', /^dialog: .*/m, 'dialog: Flower Watch', /dialog: a dialog file without its ending.*"Flower Watch"/],
    ['dialog', /^dialog: .*/m, 'dialog: moth-trap', /dialogs\/moth-trap\.yaml: cannot be read/],
    ['timeZone', /^timeZone: .*/m, 'timeZone: Chicago', /timeZone: not a time zone; .*America\/Chicago.*"Chicago"/],
    [
      'season',
      /^season: .*/m,
      "season: {from: '2026-07-01', to: '2026-06-20'}",
      /season: the season ends before it begins/,
    ],
    ['season', /^season: .*/m, "season: {from: 'April', to: '2026-06-20'}", /season\.from: .*"April"/],
    ['dateOrder', /^dateOrder: .*/m, 'dateOrder: YMD', /dateOrder: .*MDY.*"YMD"/],
    ['temperatureUnit', /^temperatureUnit: .*/m, 'temperatureUnit: K', /temperatureUnit: .*"K"/],
    ['lengthUnit', /^lengthUnit: .*/m, 'lengthUnit: yards', /lengthUnit: .*"yards"/],
    ['speedUnit', /^speedUnit: .*/m, 'speedUnit: furlongs', /speedUnit: .*mph.*"furlongs"/],
    [
      'region',
      /^ {2}- \{latitude: 42\.4, longitude: -93\.6\}/m,
      '  - {latitude: 142.4, longitude: -93.6}',
      /line \d+: region\.0\.latitude: .*142\.4/,
    ],
    ['protocol', /^ {2}minutes: .*/m, '  minutes: -15', /protocol\.minutes: .*-15/],
    ['protocol', /^ {2}mostBeaufort: .*/m, '  mostBeaufort: 13', /protocol\.mostBeaufort: .*13/],
    ['target', /^target: .*/m, 'target: three', /target: .*"three"/],
    ['reminders', /^(reminders: .*)saturday/m, '$1saturnday', /reminders\.days\.0: .*"saturnday"/],
    ['reminders', /^(reminders: .*)\[saturday, sunday\]/m, '$1[]', /reminders\.days: /],
    ['reminders', /^(reminders: .*)'09:00'/m, "$1'06:30'", /reminders\.at: a time of the day, from 08:00.*"06:30"/],
    ['reminders', /^(reminders: .*)'2026-05-23'/m, '$1Memorial Day', /reminders\.quiet\.0: .*"Memorial Day"/],
    ['coordinator', /^coordinator: .*/m, 'coordinator: {name: Ines, mail: ines}', /coordinator\.mail: .*"ines"/],
    [
      'coordinator',
      /^coordinator: .*/m,
      "coordinator: {name: Ines, mail: ines@kestrelfen.example, telegram: '@ines'}",
      /coordinator\.telegram: a number, for example 123456789.*"@ines"/,
    ],
    ['helpers', /^helpers: .*/m, 'helpers: [{name: Otto}]', /helpers\.0: needs mail or telegram/],
    ['mail', /^mail: .*/m, 'mail: {from: Queenpost}', /mail\.from: .*"Queenpost"/],
    ['mail', /^mail: .*/m, 'mail: {server: {host: localhost, port: 25, security: none}}', /mail\.from: .*/],
    [
      'mail',
      /^mail: .*/m,
      'mail: {from: a@kestrelfen.example, server: {host: localhost, port: 0, security: none}}',
      /mail\.server\.port: .*0/,
    ],
    [
      'mail',
      /^mail: .*/m,
      'mail: {from: a@kestrelfen.example, server: {host: localhost, port: 25, security: ssl}}',
      /mail\.server\.security: .*starttls.*"ssl"/,
    ],
    [
      'mail',
      /^mail: .*/m,
      'mail: {from: a@kestrelfen.example, server: {host: mail.kestrelfen.example, port: 25, security: none}}',
      /mail\.server: mail to another machine needs security: tls or starttls/,
    ],
    [
      'telegram',
      /^helpers: .*\n([^]*)^telegram: .*/m,
      'helpers: [{name: Otto, telegram: 12}]\n$1',
      /telegram: is missing, and coordinator or helpers have a thread there/,
    ],
    ['telegram', /^telegram: .*/m, 'telegram: {apiRoot: localhost}', /telegram\.apiRoot: .*"localhost"/],
    [
      'telegram',
      /^telegram: .*/m,
      "telegram: {apiRoot: 'http://bots.kestrelfen.example'}",
      /telegram\.apiRoot: another machine needs https/,
    ],
    [
      'telegram',
      /^telegram: .*/m,
      "telegram: {webhook: {url: 'http://kestrelfen.example/u', port: 8081, path: /u}}",
      /telegram\.webhook\.url: another machine needs https/,
    ],
    [
      'telegram',
      /^telegram: .*/m,
      "telegram: {webhook: {url: 'https://kestrelfen.example/u', port: 8081, path: u}}",
      /telegram\.webhook\.path: a path, for example.*"u"/,
    ],
    [
      'telegram',
      /^telegram: .*/m,
      "telegram: {webhook: {url: 'https://kestrelfen.example/u', port: 70000, path: /u}}",
      /telegram\.webhook\.port: .*70000/,
    ],
    ['sites', /radiusMetres: 250/, 'radiusMetres: 0', /sites\.0\.radiusMetres: .*0/],
    ['publish', /cellDegrees: 0.1/, 'cellDegrees: 0', /publish\.cellDegrees: .*0/],
    ['publish', /protected: \[Bombus affinis\]/, 'protected: [Bombus afinis]', /publish\.protected\.0.*Bombus afinis/],
    ['licence', /^licence: .*/m, "licence: ''", /licence: .*""/],
    ['citation', /^citation: .*/m, 'citation: 7', /citation: .*7/],
  ];
  test.each(table)('%s: a wrong value is refused (%s)', (_key, from, to, said) => {
    const sentence = withSettings(from, to);
    expect(sentence).toMatch(said);
    expect(sentence).not.toContain('\n');
  });

  test('every key has a case here, and a comment in the file', () => {
    const keys = Object.keys(surveySettingsSchema.shape);
    expect([...new Set(table.map(([key]) => key))].sort()).toEqual([...keys].sort());
    const lines = settings.split('\n');
    const commented = keys.filter((key) =>
      lines[lines.findIndex((line) => line.startsWith(`${key}:`)) - 1]?.startsWith('#'),
    );
    expect(commented).toEqual(keys);
  });

  test('a key that nobody knows is named with its line', () => {
    expect(withSettings(/^target: /m, 'tarket: 3\ntarget: ')).toMatch(/survey\.yaml, line \d+: tarket: no such key/);
  });

  test('a file that is no YAML is named with its line', () => {
    expect(withSettings(/^target: .*/m, 'target: [3')).toMatch(/survey\.yaml, line \d+: is not YAML/);
  });

  const elsewhere: [where: string, from: RegExp, to: string, line: string][] = [
    ['a key', /^target: .*/m, 'target: three', 'target: three'],
    ['a key inside a map', /^ {2}minutes: .*/m, '  minutes: -15', '  minutes: -15'],
    [
      'an item of a list',
      /^ {2}- \{latitude: 42\.4, .*/m,
      '  - {latitude: 142.4, longitude: 1}',
      '  - {latitude: 142.4',
    ],
    ['a missing key, by the one around it', /^ {2}mostBeaufort: .*\n/m, '', 'protocol:'],
    ['broken YAML', /^target: .*/m, 'target: 3: 4', 'target: 3: 4'],
  ];
  test.each(elsewhere)('the line is that of %s', (_where, from, to, line) => {
    const lines = settings.replace(from, to).split('\n');
    const at = lines.findIndex((one) => one.startsWith(line)) + 1;
    expect(withSettings(from, to)).toContain(`survey.yaml, line ${at}: `);
  });

  test.each([
    ['an empty file', ''],
    ['two documents', 'name: one\n---\nname: two\n'],
    ['a key that stands twice', 'name: one\nname: two\n'],
  ])('%s is refused', (_what, text) => {
    expect(withSettings(/^[^]*$/, text)).toMatch(/survey\.yaml(, line 2)?: /);
  });

  test('a file that is not there is named', () => {
    expect(refusal(() => loadSurvey('/nowhere/survey.yaml'))).toBe(
      '/nowhere/survey.yaml: cannot be read. Does the file exist?',
    );
  });
});

test.each([
  'demo/survey.yaml',
  'dialogs/flower-watch.yaml',
  'dialogs/en/wording.yaml',
  'dialogs/en/report.yaml',
  'dialogs/en/words.yaml',
])('%s says the same to another reader of YAML', (file) => {
  const path = join(ROOT, file);
  expect(readYaml(path, z.unknown())).toEqual(parse(readFileSync(path, 'utf8')));
});

describe('the files of a dialog', () => {
  /** Loads the demo survey with a copy of `dialogs/` in which one thing was changed. */
  function withDialogs(file: string, from: string, to: string): string {
    const folder = join(mkdtempSync(join(tmpdir(), 'queenpost-')), 'dialogs');
    cpSync(join(ROOT, 'dialogs'), folder, { recursive: true });
    const path = join(folder, file);
    const text = readFileSync(path, 'utf8');
    expect(text).toContain(from);
    writeFileSync(path, text.replace(from, to));
    return refusal(() => loadSurvey(DEMO_SURVEY, folder));
  }

  const table: [file: string, from: string, to: string, said: RegExp][] = [
    [
      'flower-watch.yaml',
      'sky: {reader: sky,',
      'sky: {reader: skye,',
      /flower-watch\.yaml, line \d+: fields\.sky\.reader: .*"skye"/,
    ],
    ['flower-watch.yaml', 'fields: [place]', 'fields: [plaice]', /"plaice". Known: date, times, place/],
    ['flower-watch.yaml', 'fields: [date, times]', 'fields: [date]', /no question asks "times"/],
    ['flower-watch.yaml', 'when: {place: new}', 'when: {spot: new}', /fields\.private\.when: names the field "spot"/],
    ['flower-watch.yaml', 'question: where', 'question: whither', /questions\.whither: is missing/],
    ['en/wording.yaml', '  stored-fix:', '  stored-fixx:', /wording\.yaml, line \d+: phrases/],
    ['en/wording.yaml', '{count, plural, one {one}', '{count, plural, one {one', /is no ICU message/],
    [
      'en/report.yaml',
      '{minutes, number} minutes',
      '{minuets, number} minutes',
      /report\.yaml, line \d+: page\.lead: names \{minuets\}; known here: from, to, .*minutes/,
    ],
    ['en/report.yaml', 'one {one person}', 'one {one person', /report\.yaml, line \d+: page\.lead: is no ICU message/],
    ['en/report.yaml', '  terms:', '  term:', /report\.yaml, line \d+: page/],
    ['en/words.yaml', '  tens:', '  teens:', /words\.yaml.*numbers\.t/],
  ];
  test.each(table)('%s: "%s" changed to "%s" is refused', (file, from, to, said) => {
    const sentence = withDialogs(file, from, to);
    expect(sentence).toMatch(said);
    expect(sentence).not.toContain('\n');
  });
});
