import { MAX_NAMES } from '../../workbook/limits.ts'
import { Holdings } from './cell-rows.ts'
import type { FileContents, ReadSheet } from './contents.ts'
import { isExternal } from './foreign-formula.ts'
import { ACCEPTED, damaged, Refusal, tooLarge } from './refusal.ts'
import { RemarkBook } from './remark-book.ts'
import { readBook, relations, type Book, type Parts, type Relations } from './xlsx-book.ts'
import { readXlsxSheet } from './xlsx-sheet.ts'
import { readFormats } from './xlsx-styles.ts'
import { readNotes, readSharedTexts } from './xlsx-texts.ts'

/**
 * A spreadsheet file after ECMA-376, transitional or strict. Only the parts that hold sheets, texts, number formats and notes are expanded:
 * macros, embedded files, pictures, links and connections never are.
 */
export async function readXlsx(parts: Parts, report: (share: number) => void): Promise<FileContents> {
  const main = await mainPart(parts)
  const remarks = new RemarkBook()
  const holdings = new Holdings()
  const links = await relations(parts, main.name.toLowerCase())
  const book = await readBook(main)
  const byType = (type: string) => {
    const found = [...links.values()].find((link) => link.type === type && !link.external)
    return found === undefined ? undefined : parts.get(found.target)
  }
  const passed = progress(parts, links, report)
  const [styles, shared] = [byType('styles'), byType('sharedStrings')]
  const formats = styles ? await readFormats(styles) : []
  const texts = shared ? await readSharedTexts(shared, holdings, passed) : []
  remarkParts(parts, book, remarks)

  const sheets: ReadSheet[] = []
  for (const { name, relation, hidden } of book.sheets) {
    const link = links.get(relation)
    if (link === undefined || link.type !== 'worksheet') {
      remarks.say(name, `The sheet is ${link === undefined ? 'not in the file' : (SHEET_KINDS.get(link.type) ?? 'of a kind that holds no cells')}; it is left out.`)
      continue
    }
    const entry = parts.get(link.target)
    if (entry === undefined) {
      remarks.say(name, 'The sheet is not in the file; it is left out.')
      continue
    }
    const ofSheet = await relations(parts, link.target)
    const comments = [...ofSheet.values()].find(({ type }) => type === 'comments')
    const commentsPart = comments && parts.get(comments.target)
    const notes = commentsPart ? await readNotes(commentsPart, holdings) : []
    sheets.push(await readXlsxSheet(entry, { name, hidden, texts, formats, notes, from1904: book.from1904, holdings, remarks, passed }))
  }
  if (sheets.length === 0) throw new Refusal(`The file has no sheet with cells. ${ACCEPTED}`)
  const names = bookNames(book, remarks)
  return { kind: 'xlsx', sheets, names, remarks: remarks.remarks() }
}

const SHEET_KINDS: ReadonlyMap<string, string> = new Map([['chartsheet', 'a chart'], ['dialogsheet', 'a dialog'], ['xlMacrosheet', 'a sheet of macros, which are not run'], ['xlIntlMacrosheet', 'a sheet of macros, which are not run']])

async function mainPart(parts: Parts) {
  const link = [...(await relations(parts, '')).values()].find(({ type }) => type === 'officeDocument')
  const main = parts.get(link?.target ?? 'xl/workbook.xml')
  if (main === undefined || main.name.toLowerCase().endsWith('.bin')) {
    const what = main !== undefined || parts.has('xl/workbook.bin') ? 'a spreadsheet in binary form' : undefined
    if (what === undefined) throw damaged('it has no part for the workbook')
    throw new Refusal(`The file is ${what}, which is not read. Save it as .xlsx or .ods in the program that wrote it. ${ACCEPTED}`)
  }
  if (/^(word|ppt)\//i.test(main.name)) throw new Refusal(`The file is a ${/^word/i.test(main.name) ? 'text document' : 'presentation'}, not a spreadsheet. ${ACCEPTED}`)
  return main
}

/** Tells the share of the bytes of what is long that have gone through. */
function progress(parts: Parts, links: Relations, report: (share: number) => void): (bytes: number) => void {
  let [all, done] = [1, 0]
  for (const { type, target } of links.values()) if (type === 'worksheet' || type === 'sharedStrings') all += parts.get(target)?.size ?? 0
  return (bytes) => {
    done += bytes
    report(Math.min(1, done / all))
  }
}

function remarkParts(parts: Parts, { from1904, hasLinks }: Book, remarks: RemarkBook): void {
  const has = (pattern: RegExp): boolean => [...parts.keys()].some((name) => pattern.test(name))
  if (has(/vbaproject|^xl\/macrosheets\//)) remarks.say('', 'The file has macros. They are neither read nor run.')
  if (hasLinks || has(/^xl\/externallinks\//)) remarks.say('', 'The file has links to other files or programs. They are not followed; cells that use them keep their last values.')
  if (has(/^xl\/(connections\.xml|querytables\/)/)) remarks.say('', 'The file has connections to data elsewhere. They are not followed; what they last brought is kept.')
  if (has(/^xl\/(charts|media|drawings\/drawing)/)) remarks.say('', 'Charts, pictures and drawings are left out.')
  if (has(/^xl\/(embeddings|activex|ctrlprops)\//)) remarks.say('', 'Embedded files and controls are left out, unopened.')
  if (has(/^xl\/pivottables\//)) remarks.say('', 'Pivot tables are taken over as the values that they last showed.')
  if (from1904) remarks.say('', 'The file counts days from 1904. Dates are counted from 1900 here, and show the same day.')
}

function bookNames({ names, sheets }: Book, remarks: RemarkBook): ReadonlyMap<string, string> {
  const found = new Map<string, string>()
  const ordered = [...names.filter(({ sheet }) => sheet === undefined), ...names.filter(({ sheet }) => sheet !== undefined)]
  for (const { name, text, sheet } of ordered) {
    // What belongs to printing and filters is no name of the user's.
    if (/^_xlnm\./i.test(name) || name === '') continue
    const place = sheet === undefined ? '' : (sheets[sheet]?.name ?? '')
    if (found.has(name)) remarks.say(place, `The name “${name}” stands for something else on this sheet (${text}); it is left out.`)
    else {
      if (sheet !== undefined) remarks.say(place, `The name “${name}” held on this sheet only; it holds everywhere now.`)
      if (isExternal(text)) remarks.say('', `The name “${name}” refers to another file (${text}), which is not opened.`)
      found.set(name, text.replace(/^\s*=/, '').replace(/_xlfn\.|_xlws\./g, ''))
    }
  }
  if (found.size > MAX_NAMES) throw tooLarge(`it has ${found.size} names`, `up to ${MAX_NAMES}`)
  return found
}
