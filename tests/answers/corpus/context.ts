/** What a line of the corpus is read with: half past six in the evening of 6 May 2026, in the demo's survey. */
import type { Context } from '../../../src/answers/index.js';
import { demo } from '../../demo-survey.js';
import type { Line } from './lines.js';

export function contextOf({ ctx = {} }: Line): Context {
  return {
    ...demo,
    survey: {
      ...demo.survey,
      dateOrder: ctx.order ?? demo.survey.dateOrder,
      temperatureUnit: ctx.temperatureUnit ?? demo.survey.temperatureUnit,
      lengthUnit: ctx.lengthUnit ?? demo.survey.lengthUnit,
    },
    watched: ctx.watched ?? [],
    of: ctx.of ?? null,
  };
}
