/** Charts as SVG text, without network: nothing but the values in the specification is drawn. */
import { loader as vegaLoader, parse, resetSVGDefIds, View } from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';

/** Blue of Okabe & Ito, "Color Universal Design" (2008), told apart by people with colour vision deficiencies. */
export const BLUE = '#0072B2';

/** The same specification gives the same bytes. */
export async function chartSvg(spec: TopLevelSpec): Promise<string> {
  const loader = vegaLoader();
  loader.load = () => Promise.reject(new Error('A chart of the report fetches nothing: put its values into "data".'));
  resetSVGDefIds(); // ids of gradients count up over charts otherwise
  const view = new View(parse(compile(spec).spec), { renderer: 'none', loader });
  const svg = await view.toSVG();
  view.finalize();
  return svg;
}

/** A name with its value and the ends of its interval, null where it has none. */
export interface Dot {
  readonly name: string;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** A row a name: a dot at its value and a bar over its interval. `lineAt` draws a dashed line; null without a dot. */
export function rowsOfDots(dots: readonly Dot[], measure: string, lineAt: number | null = null): TopLevelSpec | null {
  if (dots.length === 0) return null;
  const y = { field: 'name', type: 'nominal', title: null, sort: null, axis: { labelLimit: 320 } } as const;
  return {
    data: { values: [...dots] },
    width: 300,
    layer: [
      ...(lineAt === null
        ? []
        : [
            {
              data: { values: [{}] },
              mark: { type: 'rule' as const, color: '#666', strokeDash: [4, 3] },
              encoding: { x: { datum: lineAt } },
            },
          ]),
      {
        transform: [{ filter: 'isValid(datum.low)' }],
        mark: { type: 'rule', color: BLUE },
        encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y },
      },
      {
        mark: { type: 'point', filled: true, size: 60, color: BLUE },
        encoding: { x: { field: 'value', type: 'quantitative', title: measure }, y },
      },
    ],
  };
}
