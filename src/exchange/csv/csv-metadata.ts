import { CAUTIONS } from '../../../functions/cautions.ts'
import { columnLetters } from '../../workbook/address.ts'
import type { Extent } from './csv-text.ts'

/** A file of values, and the sheet that it holds. */
export interface CsvFile extends Extent {
  readonly sheet: string
  readonly file: string
}

export interface CsvFacts {
  readonly title: string
  readonly subject: string
  readonly date: Date
  readonly files: readonly CsvFile[]
  /** How it stands with check marks, accepted findings and their record, a sentence each; none where nobody has reviewed anything. */
  readonly review?: readonly string[]
}

export const METADATA_FILE = 'csv-metadata.json'

/** What must be known to read the values, in words; the README and the metadata say the same. */
export const READING_NOTES: readonly string[] = [
  'Values only: formulas, workings, notes, names and looks are not here. The spreadsheet files that Lowside exports have them.',
  'Units stand in the cells beside the numbers or above their columns, as in the workbook. Pressures in gauge units count from the atmosphere that the workbook states.',
  'Numbers have every digit, a point before the fraction and no separator of thousands; very large and very small ones have an exponent, such as 1e-7.',
  'Truth values are TRUE and FALSE. A cell in error holds the code of its error, such as #VALUE!.',
  'A text that begins with = + - @, a tab or a line end has an apostrophe before it, so that no program takes it for a formula; so has one that already begins with apostrophes before such a sign. To have the text itself, take one apostrophe away. Numbers below zero have none.',
]

/** How the files are written (RFC 4180; W3C Metadata Vocabulary for Tabular Data, 2015, 5.9). A line that begins with # is a line like any other. */
const DIALECT = {
  encoding: 'utf-8', delimiter: ',', quoteChar: '"', doubleQuote: true, lineTerminators: ['\r\n'], header: false, headerRowCount: 0,
  skipRows: 0, skipColumns: 0, skipBlankRows: false, skipInitialSpace: false, trim: false, commentPrefix: null,
} as const

/** The description of the files for programs (W3C Metadata Vocabulary for Tabular Data): columns by their letters, cells as texts. */
export function metadataText({ title, subject, date, files }: CsvFacts): string {
  return `${JSON.stringify({
    '@context': ['http://www.w3.org/ns/csvw', { '@language': 'en' }],
    'dc:title': title,
    ...(subject === '' ? {} : { 'dc:description': subject }),
    'dc:date': { '@value': `${date.toISOString().slice(0, 19)}Z`, '@type': 'xsd:dateTime' },
    'dc:creator': 'Lowside',
    'rdfs:comment': CAUTIONS,
    notes: READING_NOTES.map((words) => ({ 'rdfs:comment': words })),
    dialect: DIALECT,
    tables: files.map(({ sheet, file, columns }) => ({
      url: encodeURIComponent(file),
      'dc:title': sheet,
      // A sheet without a value is a file without a column, which the vocabulary has no way to describe.
      ...(columns === 0 ? {} : { tableSchema: { columns: Array.from({ length: columns }, (_, column) => ({ name: columnLetters(column), titles: columnLetters(column), datatype: 'string' })) } }),
    })),
  }, undefined, 2)}\n`
}
