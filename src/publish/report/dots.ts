/** The chart that most sections share: a row a name, the name above it, a dot at its value and a bar over its interval. */
import type { TopLevelSpec } from 'vega-lite';
import { BLUE, ORANGE, type Chart } from './chart.js';

/** Height of a row, pixels. */
const ROW = 32;
/** How far the dot stands below the middle of its row: the name is above. */
const UNDER = 7;

/** A name with its value and the ends of its interval, null where it has none. */
export interface Dot {
  readonly name: string;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** A second value for each name, drawn as a ring. */
export interface Second {
  /** What the dots and the rings are, for the legend. */
  readonly dots: string;
  readonly rings: string;
  readonly values: ReadonlyMap<string, number | null>;
}

type Layer = Extract<TopLevelSpec, { layer: unknown }>['layer'][number];

/** `lineAt` draws a dashed line. Null without a dot. */
export function rowsOfDots(
  dots: readonly Dot[],
  measure: string,
  { lineAt = null, second = null }: { lineAt?: number | null; second?: Second | null } = {},
): Chart | null {
  if (dots.length === 0) return null;
  const y = { field: 'name', type: 'nominal', sort: null, axis: null } as const;
  const x = (field: string) => ({
    field,
    type: 'quantitative' as const,
    title: measure,
    axis: { tickCount: 5, grid: true },
  });
  const paint = (name: string) =>
    second && {
      color: { datum: name, scale: { domain: [second.dots, second.rings], range: [BLUE, ORANGE] } },
    };
  const line: Layer = {
    data: { values: [{}] },
    mark: { type: 'rule', color: '#666', strokeDash: [4, 3] },
    encoding: { x: { datum: lineAt } },
  };
  const bars: Layer = {
    transform: [{ filter: 'isValid(datum.low)' }],
    mark: { type: 'rule', color: BLUE, strokeWidth: 2, yOffset: UNDER },
    encoding: { x: x('low'), x2: { field: 'high' }, y },
  };
  const points: Layer = {
    mark: { type: 'point', filled: true, size: 60, color: BLUE, opacity: 1, yOffset: UNDER },
    encoding: { x: x('value'), y, ...paint(second?.dots ?? '') },
  };
  const rings: Layer = {
    transform: [{ filter: 'isValid(datum.ring)' }],
    mark: { type: 'point', filled: false, size: 110, strokeWidth: 2, opacity: 1, yOffset: UNDER },
    encoding: { x: x('ring'), y, ...paint(second?.rings ?? '') },
  };
  const names: Layer = {
    mark: { type: 'text', align: 'left', baseline: 'bottom', fontSize: 12, color: '#222', x: 0 },
    encoding: { y, text: { field: 'name' } },
  };
  return {
    height: { step: ROW },
    room: { left: 10, bottom: 44, top: second === null ? 10 : 52 },
    spec: {
      data: { values: dots.map((dot) => ({ ...dot, ring: second?.values.get(dot.name) ?? null })) },
      layer: [...(lineAt === null ? [] : [line]), bars, points, ...(second === null ? [] : [rings]), names],
    },
  };
}
