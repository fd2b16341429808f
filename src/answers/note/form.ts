/** Fields that stand in a form under their labels. */
import type { Span } from '../reading.js';
import { keepOnly } from './blank-lines.js';
import { askInto, IN_TURN, isWeather, toldBehind, WEATHER, type FieldName, type Gathering } from './gathering.js';
import type { Label, Labelled } from './labels.js';
import { readWeather } from './weather-told.js';

/** "Place: Otter Bend, 2 to 2:15, 65 F" on one line: what is told behind the place is no part of it. */
function withoutOthers(part: Labelled, gathering: Gathering): Labelled {
  const { text, context } = gathering;
  const [from, to] = part.value;
  const [other] = toldBehind(text, [part.value], context);
  const end = Math.min(other?.[0] ?? to, sentenceBeforePlant(gathering, [from, to]) ?? to);
  return end < to ? { ...part, value: [from, end] } : part;
}

/** Where the sentence ends behind which a plant is told: "Place: Kettle Fen boardwalk. Marsh marigold, 200 flowers". */
function sentenceBeforePlant(gathering: Gathering, [from, to]: Span): number | null {
  const { plants } = gathering.names();
  const first = plants.find(({ span }) => span[0] >= from && span[1] <= to);
  const ends = first ? [...gathering.text.slice(from, first.span[0]).matchAll(/(?<=\p{L}{4})[.;](?=\s)/gu)] : [];
  const last = ends.at(-1);
  return last === undefined ? null : from + last.index;
}

/** "Dale Moss. 1:15 to 1:30 pm" up to the stop; the one of "Dr. J. Moss" is none. */
function firstSentence(text: string, [from, to]: Span): Span {
  const end = /(?<=\p{L}{3})[.;]\s/u.exec(text.slice(from, to));
  return end === null ? [from, to] : [from, from + end.index];
}

/** What has a label but no meaning is dropped, unless it is asked for. */
export function readLabelled(gathering: Gathering, labelled: readonly Labelled[], asked: readonly FieldName[]): void {
  const { text } = gathering;
  const under = (label: Label): Labelled[] => labelled.filter((each) => each.label === label);
  for (const field of IN_TURN) {
    const parts = field === 'place' ? under(field).map((part) => withoutOthers(part, gathering)) : under(field);
    if (parts.length === 0) continue;
    // "Start: 1:05 pm", "End: 1:20 pm" need their labels
    const spans = parts.map(({ labelSpan, value }): Span => (field === 'times' ? [labelSpan[0], value[1]] : value));
    const kept = keepOnly(text, spans);
    const [only] = parts;
    // "Wind (mph): 7"
    const withUnit =
      parts.length === 1 && only?.unit
        ? `${kept.slice(0, only.value[1]).trimEnd()}${only.unit === '%' ? '' : ' '}${only.unit}`
        : kept;
    askInto(gathering, field, withUnit, spans);
    if (!gathering.has(field)) {
      if (!asked.includes(field)) gathering.drop(field);
      // a number under "Clouds" that is no sky is no temperature either
      if (isWeather(field) || field === 'patch') gathering.setAside(spans);
      continue;
    }
    gathering.setAside(parts.map(({ labelSpan }) => labelSpan));
    if (field === 'place') gathering.setAside(parts.map(({ value }) => value));
  }
  const weather = under('weather');
  if (weather.length > 0) {
    const part = keepOnly(
      text,
      weather.map(({ value }) => value),
    );
    const open = WEATHER.filter((field) => !gathering.has(field));
    readWeather(gathering, part, open);
    for (const field of open) if (!gathering.has(field)) gathering.drop(field);
    gathering.setAside(weather.map(({ labelSpan }) => labelSpan));
  }
  // "Watch: Sat. May 2"; a bare number behind it counts watches
  const headed = under('heading');
  gathering.setAside(headed.map(({ labelSpan }) => labelSpan));
  gathering.setAside(headed.map(({ value }) => value).filter((value) => /^\W*\d{1,3}\W*$/.test(text.slice(...value))));
  const people = under('person').map((part): Labelled => ({ ...part, value: firstSentence(text, part.value) }));
  gathering.setAside([...people, ...under('other')].flatMap(({ labelSpan, value }): Span[] => [labelSpan, value]));
}
