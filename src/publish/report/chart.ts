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
