/** What a part of the report is made of. A section is a file in `sections/`, a line in `index.ts`. */
import type { SeasonFigures } from '../../season/index.js';
import type { Chart } from './chart.js';
import type { Doubts } from './doubts.js';
import type { Voice } from './voice.js';
import type { Watching } from './watching.js';

/** A chart with its numbers. */
export interface Part {
  readonly title: string;
  /** Null where there is nothing to draw. */
  readonly chart: Chart | null;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Many narrow columns: their heads stand upright. */
  readonly upright?: boolean;
}

export interface Section {
  readonly title: string;
  /** One sentence: what it shows. */
  readonly shows: string;
  /** One sentence: what it does not show. */
  readonly limits: string;
  readonly computed: string;
  /** Said where there is little to go by. */
  readonly small: string | null;
  readonly parts: readonly Part[];
}

/** All that a section may draw on. */
export interface Season {
  /** Of all confirmed watches. */
  readonly all: SeasonFigures;
  /** Of those within the survey's protocol. */
  readonly within: SeasonFigures;
  readonly watching: Watching;
  readonly doubts: Doubts;
}

export type SectionOf = (season: Season, voice: Voice) => Section;
