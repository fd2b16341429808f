/** Charts as SVG text, without network: nothing but the values in the specification is drawn. */
import { loader as vegaLoader, parse, resetSVGDefIds, View } from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';

/** Of Okabe & Ito, "Color Universal Design" (2008), told apart by people with colour vision deficiencies. */
export const BLUE = '#0072B2';
export const ORANGE = '#D55E00';
/** Light beside `BLUE` in black and white too. */
export const YELLOW = '#F0E442';

/** How wide all charts are drawn, pixels: the page of a small phone, so that words in them keep their size there. */
const WIDTH = 328;

/**
 * A chart without its frame. Room around the plot is given, not found out: without a browser the width of words is
 * only guessed. `room` is that for words, pixels.
 */
export interface Chart {
  readonly spec: TopLevelSpec;
  /** Of the plot, pixels. */
  readonly height: number | { readonly step: number };
  readonly room: { readonly left: number; readonly top?: number; readonly bottom: number };
}

/** For `labelExpr`: the words that stand at each value of an axis. */
export const labelled = (values: readonly (string | number)[], labels: readonly string[]): string =>
  `${JSON.stringify(labels)}[indexof(${JSON.stringify(values)}, datum.value)]`;

/** The same chart gives the same bytes. */
export async function chartSvg({ spec, height, room }: Chart): Promise<string> {
  const loader = vegaLoader();
  loader.load = () => Promise.reject(new Error('A chart of the report fetches nothing: put its values into "data".'));
  resetSVGDefIds(); // ids of gradients count up over charts otherwise
  const { left, top = 10, bottom } = room;
  const right = 14;
  const whole = {
    ...spec,
    width: WIDTH - left - right,
    height,
    padding: { left, right, top, bottom },
    autosize: 'none',
    background: 'transparent',
    config: {
      axis: { labelFontSize: 12, titleFontSize: 12, titleFontWeight: 'normal', labelColor: '#222', titleColor: '#222' },
      legend: {
        labelFontSize: 12,
        labelLimit: 0,
        orient: 'top',
        direction: 'vertical',
        title: null,
        symbolSize: 80,
        offset: 4,
      },
      view: { stroke: null },
    },
  } as TopLevelSpec;
  const view = new View(parse(compile(whole).spec), { renderer: 'none', loader });
  const svg = await view.toSVG();
  view.finalize();
  return svg;
}
