/** `datapackage.json`: the five files described by the Frictionless Data Package and Table Schema specifications, 1.0. */
import { LAYOUTS, type Column, type Layout } from '../../../shared/columns.js';
import type { SurveySettings } from '../../../shared/survey.js';

/** Types whose cells are not of the specification's own default form. */
const FORMATS: Readonly<Partial<Record<Column['type'], string>>> = { time: '%H:%M', datetime: 'any' };

function fieldOf(name: string, column: Column) {
  const { type, means, required, words, least, most, above } = column;
  // The specification has no "greater than": `above` is told as the least, and its reader here is stricter.
  const minimum = least ?? above;
  const constraints = {
    ...(required === undefined ? {} : { required }),
    ...(words === undefined ? {} : { enum: words }),
    ...(minimum === undefined ? {} : { minimum }),
    ...(most === undefined ? {} : { maximum: most }),
  };
  return {
    name,
    type,
    format: FORMATS[type] ?? 'default',
    description: means,
    ...(Object.keys(constraints).length === 0 ? {} : { constraints }),
  };
}

/** The specification names a file's rows by the resource's name: the file's without its ending. */
const resourceName = (file: string): string => file.replace(/\.csv$/, '');

/** By the specification no cell of a primary key may be empty. */
const isPrimaryKey = ({ key, columns }: Layout): boolean =>
  key.length > 0 && key.every((name) => columns[name]?.required === true);

/** Without a reference that another implies: a row of a plant that was watched has a watch. */
const foreignKeys = ({ refersTo }: Layout) =>
  refersTo
    .filter((one) => !refersTo.some(({ columns }) => columns.length > one.columns.length))
    .map(({ file, columns }) => ({
      fields: columns,
      reference: { resource: resourceName(file), fields: columns },
    }));

const resourceOf = (layout: Layout) => ({
  name: resourceName(layout.file),
  path: layout.file,
  profile: 'tabular-data-resource',
  title: layout.title,
  format: 'csv',
  mediatype: 'text/csv',
  encoding: 'utf-8',
  dialect: { delimiter: ',', lineTerminator: '\n', quoteChar: '"', doubleQuote: true, header: true },
  schema: {
    fields: Object.entries(layout.columns).map(([name, column]) => fieldOf(name, column)),
    missingValues: [''],
    ...(isPrimaryKey(layout) ? { primaryKey: layout.key } : {}),
    ...(layout.refersTo.length === 0 ? {} : { foreignKeys: foreignKeys(layout) }),
  },
});

/** Its text follows from the survey's settings alone, so that the copy of a copy is the same. */
export function descriptorOf({ key, name }: SurveySettings): string {
  const descriptor = {
    profile: 'tabular-data-package',
    name: key,
    title: name,
    description:
      "The exact copy of the survey's watches, for the eyes of its owner: places are as precise as they were given, " +
      'private ones too. Not in it: history, queries, photographs, and who the observers are.',
    resources: LAYOUTS.map(resourceOf),
  };
  return `${JSON.stringify(descriptor, null, 2)}\n`;
}
