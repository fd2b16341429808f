/** How values are shown to a person: in the survey's units and the language's way of writing dates and times. */
import { fold, labelOf, rankOf, type Context } from '../answers/index.js';
import { plainNumber, showClockRange, showClock, showDegrees } from '../../shared/display.js';
import type { Count, Patch, Sky, Temperature, Wind } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import { metresPerUnit } from '../../shared/units.js';
import type { LengthUnit } from '../../shared/vocabularies.js';
import { say } from '../../shared/wording.js';
import type { PlantInPatch, TallyLine } from './types.js';

export function showTimes({ start, end }: { start: string; end: string | null }, { wording }: Survey): string {
  return end === null ? showClock(start, wording.locale) : showClockRange(start, end, wording.locale);
}

export const showTemperature = ({ celsius }: Temperature, { settings }: Survey): string =>
  showDegrees(celsius, settings.temperatureUnit);

/** "19 °C (66 °F)": where the unit is what is in doubt, the one that makes a whole number comes first. */
export function showBothScales({ celsius }: Temperature, { settings }: Survey): string {
  const [f, c] = [showDegrees(celsius, 'F'), showDegrees(celsius, 'C')];
  if (settings.temperatureUnit === 'C') return c;
  return Number.isInteger(celsius) ? `${c} (${f})` : `${f} (${c})`;
}

export function showSky({ cloud, rain }: Sky, survey: Survey): string {
  const clouds = survey.wording.labels.clouds[cloud];
  return rain ? say(survey.wording, 'show-rain', { clouds }) : clouds;
}

export function showWind({ beaufort }: Wind, survey: Survey): string {
  return survey.wording.labels.winds[beaufort] ?? String(beaufort);
}

export function showPatch(patch: Patch, survey: Survey, unit: LengthUnit = survey.settings.lengthUnit): string {
  const metres = metresPerUnit[unit];
  const length = (value: number): string => plainNumber(value / metres, 1);
  if (patch.shape === 'rectangle' && patch.lengthMetres !== null && patch.widthMetres !== null) {
    return `${length(patch.lengthMetres)} × ${length(patch.widthMetres)} ${unit}`;
  }
  if (patch.shape === 'circle' && patch.diameterMetres !== null) {
    return say(survey.wording, 'show-circle', { across: `${length(patch.diameterMetres)} ${unit}` });
  }
  const area = patch.squareMetres / metres ** 2;
  return say(survey.wording, 'show-area', { area: plainNumber(area, area < 10 ? 1 : 0), unit });
}

export interface ShownPlace {
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly uncertaintyMetres: number | null;
  readonly words: string;
}

export function showPlace(place: ShownPlace): string {
  if (place.latitude === null || place.longitude === null) return place.words;
  const uncertainty = place.uncertaintyMetres === null ? '' : ` (± ${plainNumber(place.uncertaintyMetres, 0)} m)`;
  const position = `${place.latitude.toFixed(5)}, ${place.longitude.toFixed(5)}${uncertainty}`;
  return place.words === '' ? position : `${place.words}, ${position}`;
}

export function showCount(count: Count, survey: Survey): string {
  const { value, low, high, about } = count;
  if (low !== null && high !== null && low !== high) return `${low}–${high}`;
  if (low !== null && high === null) return say(survey.wording, 'show-over', { value });
  if (low === null && high !== null) return say(survey.wording, 'show-under', { value: high });
  return about ? say(survey.wording, 'show-about', { value }) : String(value);
}

const namesOfPlant = (name: string, { names }: Context): readonly string[] =>
  names.plants.find((plant) => plant.name === name)?.common ?? [];

/**
 * "Virginia bluebells"; of a genus with several names the one they used, so that a plum is said back as no cherry. Where the
 * list has no such plant, its words as typed.
 */
export function showPlant({ name, typed }: { name: string | null; typed: string }, context: Context): string {
  if (name === null) return typed;
  const said = fold(typed).trim();
  const common = rankOf(name, context) === 'genus' ? namesOfPlant(name, context) : [];
  return common.find((each) => [said, said.replace(/s$/, '')].includes(fold(each))) ?? labelOf(name, context);
}

export function showPlantWithFlowers(plant: PlantInPatch, survey: Survey, context: Context): string {
  const name = showPlant(plant, context);
  if (plant.flowers === null) return say(survey.wording, 'show-plant-open', { plant: name });
  const { value, low, high } = plant.flowers;
  const isOne = value === 1 && low === high;
  const unit = survey.wording.labels[isOne ? 'oneUnit' : 'units'][unitOf(plant.name, survey)];
  return say(survey.wording, 'show-plant', { plant: name, flowers: showCount(plant.flowers, survey), unit });
}

/** What is counted as one open flower of that plant; "flower" for a plant that is not on the list. */
export function unitOf(name: string | null, survey: Survey) {
  return survey.names.plants.find((plant) => plant.name === name)?.unit ?? 'flower';
}

/** "2 two-spotted (B. bimaculatus) on Virginia bluebells". */
export function showLine(line: TallyLine, plants: readonly PlantInPatch[], survey: Survey, context: Context): string {
  const onPlant = plants.find((plant) => (plant.name ?? plant.typed) === line.plant);
  const plant = onPlant ? showPlant(onPlant, context) : line.plant === null ? null : labelOf(line.plant, context);
  const bee = line.bee === null ? '' : showBee(line.bee, line.count, survey, context);
  const values = { count: line.count, bee, plant: plant ?? '', placed: plant !== null };
  let text =
    line.count === 0 ? say(survey.wording, 'show-line-none', values) : say(survey.wording, 'show-line', values);
  if (line.seenBefore > 0) text += say(survey.wording, 'show-seen-before', { count: line.seenBefore });
  if (line.caste === 'worker') text += say(survey.wording, 'show-worker');
  if (line.withPollen !== null && line.withPollen > 0) {
    const all = line.withPollen === line.count;
    text += say(survey.wording, 'show-pollen', { all, count: line.withPollen });
  }
  if (line.doubt) text += say(survey.wording, 'show-doubt');
  return text;
}

/** "two-spotted (B. bimaculatus)"; a bee known to its genus alone is "bumble bee, kind not known". */
export function showBee(name: string, count: number, survey: Survey, context: Context): string {
  if (name === 'Bombus') return say(survey.wording, 'show-genus-bee', { count });
  const label = labelOf(name, context).replace(/ bumble ?bee$/i, '');
  const scientific = name.replace(/^Bombus /, 'B. ');
  return label === name ? scientific : `${label} (${scientific})`;
}
