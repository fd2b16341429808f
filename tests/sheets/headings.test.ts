/** Headings as coordinators write them. */
import { expect, test } from 'vitest';
import { readHeading } from '../../src/sheets/index.js';
import { survey } from '../demo-survey.js';

const table: [heading: string, expected: string][] = [
  // any case, signs and blanks
  ['Date', 'date'],
  ['DATE', 'date'],
  [' watch date ', 'date'],
  ['Date:', 'date'],
  ['start_time', 'start'],
  ['startTime', 'start'],
  ['Start-Time', 'start'],
  ['Time (start)', 'start'],
  ['Start time (24h)', 'start'],
  ['Start/End', 'times'],
  ['Time', 'times'],
  ['End', 'end'],
  ['Time ended', 'end'],
  ['Duration (min)', 'minutes min'],
  ['minutes', 'minutes'],
  ['Duration (h:mm)', 'minutes :'],
  ['Observer', 'observer'],
  ['Volunteer name', 'observer'],
  ['Observer (first name)', 'observer'],
  ['Location', 'place'],
  ['Site', 'site'],
  ['Lat', 'latitude'],
  ['Decimal Longitude', 'longitude'],
  ['uncertainty_m', 'uncertainty m'],
  ['GPS accuracy (ft)', 'uncertainty ft'],
  ['Watch #', 'watch'],
  ['Survey No.', 'watch'],
  // units in brackets, behind a comma, as the last word
  ['Temp (F)', 'temperature F'],
  ['Temp (°F)', 'temperature F'],
  ['temperature_c', 'temperature C'],
  ['Temperature, °C', 'temperature C'],
  ['Air temperature in Celsius', 'temperature C'],
  ['Temp [deg F]', 'temperature F'],
  ['Temp', 'temperature'],
  ['Temp (optional)', 'temperature'],
  ['wind mph', 'wind mph'],
  ['Wind speed (km/h)', 'wind km/h'],
  ['Wind (Beaufort)', 'wind bft'],
  ['wind_beaufort', 'wind bft'],
  ['Cloud cover (%)', 'sky %'],
  ['Cloud %', 'sky %'],
  ['clouds, oktas', 'sky /8'],
  ['patch m2', 'patch m2'],
  ['Patch size (m²)', 'patch m2'],
  ['patch_m2', 'patch m2'],
  ['Patch (sq ft)', 'patch sq ft'],
  ['Patch length (ft)', 'patchLength ft'],
  ['Width (m)', 'patchWidth m'],
  ['Date (MM/DD/YYYY)', 'date MDY'],
  ['Date (DD/MM/YYYY)', 'date DMY'],
  // one bee on one plant
  ['Plant', 'plant'],
  ['Flower', 'plant'],
  ['Flower species', 'plant'],
  ['Flowers', 'flowers'],
  ['# of open flowers', 'flowers'],
  ['No. of open flowers', 'flowers'],
  ['Open Flowers', 'flowers'],
  ['Bee', 'bee'],
  ['Bumble bee species', 'bee'],
  ['Queens', 'count'],
  ['Queens (#)', 'count'],
  ['Number of queens', 'count'],
  ['How many?', 'count'],
  ['Remarks', 'remark'],
  // a slip must not lose a column; a unit that is none must not be passed over
  ['Temprature (F)', 'slip of temperature'],
  ['Obsever', 'slip of observer'],
  ['Temp (K)', 'unit k of temperature: F, C'],
  ['Wind (furlongs)', 'unit furlongs of wind: mph, km/h, m/s, knots, bft'],
  // what is none
  ['Volunteer ID card', 'unknown'],
  ['Camera', 'unknown'],
  ['Species', 'unknown'], // of bee or of plant
  ['No.', 'unknown'], // of watch, row or queens
  ['x', 'unknown'],
  ['', 'unknown'],
];

test.each(table)('heading "%s" is %s', (heading, expected) => {
  const read = readHeading(heading, survey.words);
  const said = {
    known: () => (read.state === 'known' ? [read.column, read.unit].filter((part) => part !== null).join(' ') : ''),
    slip: () => (read.state === 'slip' ? `slip of ${read.near}` : ''),
    unit: () => (read.state === 'unit' ? `unit ${read.said} of ${read.column}: ${read.known.join(', ')}` : ''),
    unknown: () => 'unknown',
  }[read.state]();
  expect(said).toBe(expected);
});

test('each heading is a word of one column, and is found', () => {
  const { headings } = survey.words.sheets;
  const wrong = Object.entries(headings).flatMap(([column, words]) =>
    words.filter((word) => {
      const read = readHeading(word.toUpperCase(), survey.words);
      return read.state !== 'known' || read.column !== column;
    }),
  );
  expect(wrong).toEqual([]);
});

test.each(['a', '(', 'temp ', 'temp (', ', ', '_', 'date (mm/'])(
  'ten thousand letters of "%s" are no heading',
  (piece) => {
    expect(readHeading(piece.repeat(Math.ceil(10_000 / piece.length)), survey.words).state).not.toBe('slip');
  },
);
