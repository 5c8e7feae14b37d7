import { CAUTIONS } from '../../../functions/cautions.ts'
import { METADATA_FILE, READING_NOTES, type CsvFacts } from './csv-metadata.ts'

export const README_FILE = 'README.txt'

/** What the files are, in words; lines of a width that any screen has, ends of lines as every system reads them. */
export function readmeText({ title, subject, date, files, review = [] }: CsvFacts): string {
  const width = Math.max(...files.map(({ file }) => file.length))
  return [
    ...wrapped(title), ...wrapped(subject), '',
    `Exported by Lowside on ${date.toISOString().slice(0, 16).replace('T', ' ')} UTC.`, '',
    'CAUTIONS', '', ...CAUTIONS.flatMap((caution) => wrapped(caution, '- ')), '',
    ...(review.length === 0 ? [] : ['REVIEW', '', ...review.flatMap((words) => wrapped(words, '- ')), '']),
    'FILES', '', ...files.map(({ file, sheet, rows, columns }) => `${file.padEnd(width)}  sheet ${sheet}: ${rows} rows, ${columns} columns`), '',
    'HOW THEY ARE WRITTEN', '',
    ...wrapped('Comma-separated values after RFC 4180: text in UTF-8 with a byte order mark, cells divided by commas, lines ended by CR LF. A cell with a comma, a quotation mark or a line end in it stands in quotation marks, those inside it doubled. There is no header line: the first line is row 1 of the sheet, the first cell column A.', '- '),
    ...READING_NOTES.flatMap((words) => wrapped(words, '- ')),
    ...wrapped(`${METADATA_FILE} says this for programs, in the W3C's vocabulary for tabular data (CSV on the Web).`, '- '),
    '',
  ].join('\r\n')
}

const WIDTH = 78

function wrapped(text: string, mark = ''): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/\s+/).filter((one) => one !== '')) {
    const indent = ' '.repeat(mark.length)
    if (line === '') line = (lines.length === 0 ? mark : indent) + word
    else if (line.length + 1 + word.length <= WIDTH) line += ` ${word}`
    else {
      lines.push(line)
      line = indent + word
    }
  }
  return line === '' ? lines : [...lines, line]
}
