/** The season's report: one HTML file that needs neither scripts nor network. */
import { htmlEscape } from 'escape-goat';
import { chartSvg } from './chart.js';
import { FEW } from './few.js';
import type { Part, Season, Section, SectionOf } from './section.js';
import { accumulationSection } from './sections/accumulation.js';
import { doubtsSection } from './sections/doubts.js';
import { namesSection } from './sections/names.js';
import { perFlowersSection } from './sections/per-flowers.js';
import { preferenceSection } from './sections/preference.js';
import { ratesSection } from './sections/rates.js';
import { tableSection } from './sections/table.js';
import { weeksSection } from './sections/weeks.js';
import { whenSection } from './sections/when.js';
import { whereSection } from './sections/where.js';
import { STYLE } from './style.js';
import { voiceOf, type ReportSurvey, type Voice } from './voice.js';

export { doubts, type Doubts } from './doubts.js';
export { watching, type Watching } from './watching.js';
export type { Season } from './section.js';

/** In the order of the page. */
const SECTIONS = {
  where: whereSection,
  when: whenSection,
  table: tableSection,
  rates: ratesSection,
  'per-flowers': perFlowersSection,
  weeks: weeksSection,
  preference: preferenceSection,
  kinds: accumulationSection,
  names: namesSection,
  doubts: doubtsSection,
} as const satisfies Readonly<Record<string, SectionOf>>;

/** A number, or an interval of two: those stand to the right. */
const isNumber = (cell: string): boolean => /^[-−]?\d[\d.,\s]*(?:[–-][\d.,\s]+)?$|^·$/u.test(cell);

function tableHtml({ head, rows, title, upright = false }: Part, { words, say }: Voice): string {
  if (rows.length === 0) return `<p>${htmlEscape(words.missing.section)}</p>`;
  const cell = (text: string, at: number): string =>
    at === 0
      ? `<th scope="row">${htmlEscape(text)}</th>`
      : `<td${isNumber(text) ? ' class="n"' : ''}>${htmlEscape(text)}</td>`;
  const heads = head
    .map((text, at) => {
      const right = at > 0 && isNumber(rows[0]?.[at] ?? '');
      return `<th scope="col"${right ? ' class="n"' : ''}><span>${htmlEscape(text)}</span></th>`;
    })
    .join('');
  const body = rows.map((row) => `<tr>${row.map(cell).join('')}</tr>`).join('\n');
  return `<div class="wide" tabindex="0"><table${upright ? ' class="upright"' : ''}><caption>${htmlEscape(
    say(words.page.numbers, { part: title }),
  )}</caption><thead><tr>${heads}</tr></thead><tbody>${body}</tbody></table></div>`;
}

async function partHtml(part: Part, single: boolean, voice: Voice): Promise<string> {
  const heading = single ? '' : `<h3>${htmlEscape(part.title)}</h3>\n`;
  const svg = part.chart === null ? '' : await chartSvg(part.chart);
  const picture = svg && `<div class="chart" role="img" aria-label="${htmlEscape(part.title)}">${svg}</div>`;
  return `${heading}${picture}\n${tableHtml(part, voice)}`;
}

async function sectionHtml(section: Section & { readonly id: string }, voice: Voice): Promise<string> {
  const { id, title, shows, limits, computed, small, parts } = section;
  const drawn: string[] = [];
  for (const part of parts) drawn.push(await partHtml(part, parts.length === 1, voice));
  const note = small === null ? '' : `<p class="small">${htmlEscape(small)}</p>\n`;
  const { words } = voice;
  return `<section id="${id}"><h2>${htmlEscape(title)}</h2><p class="lead">${htmlEscape(`${shows} ${limits}`)}</p>
${note}${drawn.join('\n') || `<p>${htmlEscape(words.missing.section)}</p>`}
<p class="how">${htmlEscape(`${words.page.computed} ${computed}`)}</p></section>`;
}

/** The same season gives the same bytes. */
export async function reportPage(season: Season, survey: ReportSurvey): Promise<string> {
  const voice = voiceOf(survey);
  const { words, say } = voice;
  const { name, licence, citation } = survey.settings;
  const { watches, minutes, observers, withinProtocol, zeroWatches } = season.all.effort;
  const { first, last } = season.watching;
  const sections = Object.entries(SECTIONS).map(([id, section]) => ({ id, ...section(season, voice) }));
  const drawn: string[] = [];
  for (const section of sections) drawn.push(await sectionHtml(section, voice));
  const links = sections.map((one) => `<li><a href="#${one.id}">${htmlEscape(one.title)}</a></li>`).join('');
  const lead = say(words.page.lead, {
    from: first === null ? 'none' : voice.day(first),
    to: last === null ? '' : voice.day(last),
    observers,
    watches,
    minutes,
    within: withinProtocol,
    zero: zeroWatches,
  });
  const isSmall = observers > 0 && observers < FEW.observers;
  const title = htmlEscape(say(words.page.title, { survey: name }));
  return `<!doctype html>
<html lang="${htmlEscape(survey.wording.locale)}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1">
<title>${title}</title><style>${STYLE}</style></head><body>
<h1>${title}</h1>
<p>${htmlEscape(lead)}</p>
${isSmall ? `<p class="small">${htmlEscape(say(words.page.small, { observers }))}</p>\n` : ''}<p>${htmlEscape(words.page.terms)}</p>
<nav aria-label="${htmlEscape(words.page.contents)}"><ul>${links}</ul></nav>
${drawn.join('\n')}
<p class="how">${htmlEscape(say(words.page.close, { citation, licence }))}</p>
</body></html>
`;
}
