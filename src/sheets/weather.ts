/** Temperature, sky, wind and patch of a watch. */
import type { Patch, Sky, Temperature, Wind } from '../../shared/record.js';
import type { WatchColumn } from '../../shared/words/sheets.js';
import type { Complaint } from './complaint.js';
import { withUnit, wrong, type Told } from './told.js';
import { truthOf, valueOf, writtenPatch, writtenSky, writtenTemperature, writtenWind } from './value.js';
import { notUnderstood } from './say.js';
import type { Readers } from './readers.js';

export interface Weather {
  readonly temperature: Temperature | null;
  readonly sky: Sky | null;
  readonly wind: Wind | null;
  readonly patch: Patch | null;
}

type Only = (column: WatchColumn) => Told | null;

const TEMPERATURE = { example: '68 F', written: writtenTemperature };
const SKY = { example: 'partly cloudy or 30%', written: writtenSky };
const WIND = { example: 'light breeze or 8 mph', written: writtenWind };
const PATCH = { example: '12 x 8 ft or 9 m2', written: writtenPatch };

export const readWeather = (only: Only, readers: Readers, complaints: Complaint[]): Weather => ({
  temperature: valueOf(only('temperature'), readers.temperature, TEMPERATURE, complaints),
  sky: skyOf(only, readers, complaints),
  wind: valueOf(only('wind'), readers.wind, WIND, complaints),
  patch: patchOf(only, readers, complaints),
});

/** Cloud and rain, in one column or in two. */
function skyOf(only: Only, readers: Readers, complaints: Complaint[]): Sky | null {
  const [told, rained] = [only('sky'), only('rain')];
  const { cell, unit } = told ?? {};
  if (told !== null && cell?.kind === 'number' && unit === '%' && !cell.percent && cell.number > 0 && cell.number < 1) {
    complaints.push(
      wrong(told, `is less than one percent; if ${Math.round(cell.number * 100)} % is meant, write that`),
    );
    return null;
  }
  const sky = valueOf(told, readers.sky, SKY, complaints);
  if (rained === null) return sky;
  const inWords = readers.sky(rained.text);
  const rain = inWords.state === 'sure' && inWords.value.rain ? true : truthOf(rained, readers.yesNo, complaints);
  if (rain === null) return null;
  // rain alone is an overcast sky, as in an answer; no rain says nothing of the clouds
  if (sky === null) return rain && told === null ? { cloud: 'overcast', rain } : null;
  if (sky.rain && !rain) {
    complaints.push(wrong(rained, `does not go with the sky, “${told?.text ?? ''}”; put one of them right`));
    return null;
  }
  return { ...sky, rain };
}

/** A size in one column, or length and width in two. */
function patchOf(only: Only, readers: Readers, complaints: Complaint[]): Patch | null {
  const [size, length, width] = [only('patch'), only('patchLength'), only('patchWidth')];
  if (size !== null && (length !== null || width !== null)) {
    complaints.push(wrong(size, 'is told beside a length or a width; leave one out'));
    return null;
  }
  if (length === null && width === null) return valueOf(size, readers.patch, PATCH, complaints);
  if (length === null || width === null) {
    complaints.push(wrong((length ?? width)!, 'is one side alone; write the other one too'));
    return null;
  }
  const reading = readers.patch(`${withUnit(length)} x ${withUnit(width)}`);
  if (reading.state === 'sure') return reading.value;
  const example = reading.state === 'unsure' ? '12 ft, or put the unit into the heading' : '12 ft';
  complaints.push(notUnderstood(length, example));
  return null;
}
