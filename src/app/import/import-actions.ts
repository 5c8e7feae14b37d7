import { rowBlocks } from '../../calc/row-blocks.ts'
import { computedOtherwise, hasFormulas } from '../../exchange/import/compare-values.ts'
import { importedWorkbook, importEdits } from '../../exchange/import/import-edits.ts'
import type { ImportRemark } from '../../exchange/import/import-remark.ts'
import type { Imported } from '../../exchange/import/import-sheets.ts'
import { notesSheet } from '../../exchange/import/notes-sheet.ts'
import { MAX_CELLS } from '../../workbook/limits.ts'
import type { Workbook } from '../../workbook/document.ts'
import type { Session } from '../state/session.ts'
import { importingOf, type ImportSource } from './importing.ts'
import { prepareImport } from './preparing.ts'

/** Where the sheets of a file go. */
export type Destination = 'this workbook' | 'a new workbook'

/**
 * Brings sheets of a file in, then tells what became of them. Into the open workbook it is one step, which Undo takes back.
 * @param prepared what has been made of them already for the workbook as it is now
 */
export async function bringIn(session: Session, source: ImportSource, sheets: ReadonlySet<number>, destination: Destination, prepared?: Imported): Promise<void> {
  const { fileName, contents } = source
  const target = destination === 'this workbook' ? session.document.workbook() : undefined
  const problem = tooManyCells(contents.sheets.filter((_, position) => sheets.has(position)), target)
  if (problem !== undefined) return session.setNotice({ tone: 'problem', text: `${fileName}: ${problem}` })
  const imported = prepared ?? (await prepareInSight(session, source, sheets, target))
  if (imported === undefined) return
  const tell = () => void reportOn(session, fileName, imported)
  if (target === undefined) {
    session.open(importedWorkbook(titleOf(fileName), imported), false)
    return tell()
  }
  session.actInParts({
    label: `Import ${fileName}`,
    make: (workbook) => importEdits(workbook, imported.sheets.map(({ sheet }) => sheet), imported.names),
    done: () => {
      session.show(imported.sheets[0]?.sheet.name ?? session.sheetName())
      tell()
    },
  })
}

const titleOf = (fileName: string): string => fileName.replace(/\.[^.]*$/, '') || 'Untitled'

async function prepareInSight(session: Session, { fileName, contents }: ImportSource, sheets: ReadonlySet<number>, target: Workbook | undefined): Promise<Imported | undefined> {
  let isWanted = true
  const work = session.work.begin(`Bringing in ${fileName}`, () => (isWanted = false))
  const imported = await prepareImport(contents, sheets, target, (share) => work.report(share), () => isWanted)
  work.end()
  if (imported === undefined) session.setNotice({ tone: 'done', text: `${fileName} was not brought in: stopped` })
  return imported
}

interface Sized {
  readonly rows: readonly (readonly unknown[] | undefined)[]
}

function tooManyCells(sheets: readonly Sized[], target: Workbook | undefined): string | undefined {
  const count = (some: readonly Sized[]): number => some.reduce((sum, { rows }) => rows.reduce((cells, row) => cells + (row?.reduce<number>((filled) => filled + 1, 0) ?? 0), sum), 0)
  const cells = count(sheets) + (target === undefined ? 0 : count(target.sheets))
  return cells > MAX_CELLS ? `with it the workbook would have ${cells} cells; accepted: up to ${MAX_CELLS}` : undefined
}

/** Compares what Lowside computes with what the file holds, and shows all remarks. */
async function reportOn(session: Session, fileName: string, imported: Imported): Promise<void> {
  const remarks = [...imported.remarks, ...(await compareInSight(session, imported))]
  const sheets = imported.sheets.map(({ sheet }) => sheet.name)
  const count = `${sheets.length === 1 ? '1 sheet' : `${sheets.length} sheets`} of ${fileName} brought in`
  if (remarks.length === 0) session.setNotice({ tone: 'done', text: `${count}; nothing is left out` })
  else importingOf(session).setStage({ stage: 'report', fileName, sheets, remarks })
}

const ROWS_AT_ONCE = 500

async function compareInSight(session: Session, { sheets }: Imported): Promise<readonly ImportRemark[]> {
  const remarks: ImportRemark[] = []
  let isWanted = true
  const work = session.work.begin('Comparing with the values of the file', () => (isWanted = false))
  const stopped: ImportRemark = { place: '', words: 'the values were not all compared with those of the file: it was stopped', kind: 'computed otherwise' }
  try {
    for (const imported of sheets.filter(hasFormulas)) {
      const { rows } = imported.sheet
      for (const { top, end, width } of rowBlocks(rows, ROWS_AT_ONCE)) {
        const { values } = await session.service.read(imported.sheet.name, { top, left: 0, bottom: end - 1, right: width - 1 })
        if (!isWanted) return [...remarks, stopped]
        remarks.push(...computedOtherwise(imported, top, values))
        work.report(end / rows.length)
      }
    }
    return remarks
  } catch {
    // The calculation was stopped, or another workbook opened meanwhile: nothing to compare with.
    return [...remarks, stopped]
  } finally {
    work.end()
  }
}

/** Keeps the remarks of an import as a sheet of the workbook. */
export function keepNotes(session: Session, fileName: string, remarks: readonly ImportRemark[]): void {
  const workbook = session.document.workbook()
  const sheet = notesSheet(fileName, new Date(), remarks, workbook.sheets.map(({ name }) => name))
  session.actInParts({ label: 'Keep import notes', make: (before) => importEdits(before, [sheet]), done: () => session.show(sheet.name) })
}
