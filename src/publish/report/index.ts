/** The season's report: one HTML file that needs neither scripts nor network. */
import { htmlEscape } from 'escape-goat';
import type { SurveySettings } from '../../../shared/survey.js';
import type { SeasonFigures } from '../../season/index.js';
import { chartSvg } from './chart.js';
import type { Section } from './section.js';
import { accumulationSection } from './sections/accumulation.js';
import { namesSection } from './sections/names.js';
import { preferenceSection } from './sections/preference.js';
import { protocolSection } from './sections/protocol.js';
import { ratesSection } from './sections/rates.js';
import { tableSection } from './sections/table.js';
import { weeksSection } from './sections/weeks.js';

/** In the order of the page. Each is given the figures of all watches, and those of the watches within the protocol. */
const SECTIONS: readonly ((all: SeasonFigures, within: SeasonFigures) => Section)[] = [
  tableSection,
  ratesSection,
  weeksSection,
  preferenceSection,
  accumulationSection,
  namesSection,
  protocolSection,
];

const STYLE = `body{font:1rem/1.5 Georgia,serif;max-width:44rem;margin:0 auto;padding:1rem;color:#222;background:#fff}
.wide{overflow-x:auto}svg{max-width:100%;height:auto}table{border-collapse:collapse;font-size:.85rem}
caption{text-align:left}th,td{border-bottom:1px solid #999;padding:.2rem .5rem;text-align:left}
@page{margin:18mm}@media print{body{max-width:none;padding:0}.wide{overflow:visible}table{font-size:.6rem}th,td{padding:.1rem .2rem;overflow-wrap:anywhere}td:first-child{white-space:nowrap}tr,svg{break-inside:avoid}}`;

async function sectionHtml({ title, shows, limits, computed, chart, head, rows }: Section): Promise<string> {
  const svg = chart === null ? '' : await chartSvg(chart);
  const cells = (tag: 'td' | 'th', row: readonly string[]) =>
    `<tr>${row.map((cell) => `<${tag}>${htmlEscape(cell)}</${tag}>`).join('')}</tr>`;
  const picture = svg && `<div role="img" aria-label="${htmlEscape(`${title}. ${shows}`)}">${svg}</div>`;
  const table = `<table><caption>${htmlEscape(title)}, as numbers</caption><thead>${cells('th', head)}</thead><tbody>${rows
    .map((row) => cells('td', row))
    .join('\n')}</tbody></table>`;
  return `<section><h2>${htmlEscape(title)}</h2><p>${htmlEscape(`${shows} ${limits}`)}</p>
${picture}<div class="wide">${rows.length === 0 ? '<p>not enough data</p>' : table}</div>
<p><small>How it was computed: ${htmlEscape(computed)}</small></p></section>`;
}

/** The same figures give the same bytes. */
export async function reportPage(
  figures: SeasonFigures,
  within: SeasonFigures,
  { name, licence, citation }: Pick<SurveySettings, 'name' | 'licence' | 'citation'>,
): Promise<string> {
  const { watches, minutes, observers, withinProtocol, zeroWatches } = figures.effort;
  const sections: string[] = [];
  for (const section of SECTIONS) sections.push(await sectionHtml(section(figures, within)));
  const small = observers < 10 ? ' This is a small sample: one person more could change what is below.' : '';
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1">
<title>${htmlEscape(name)}: the season</title><style>${STYLE}</style></head><body>
<h1>${htmlEscape(name)}: the season</h1>
<p>${watches} watches (${withinProtocol} within the protocol, ${zeroWatches} without a queen), ${minutes} minutes, ${observers} observers.${small}</p>
${sections.join('\n')}
<p><small>${htmlEscape(citation)} Licence: ${htmlEscape(licence)}.</small></p>
</body></html>
`;
}
