import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ownWorkbook, type OwnWorkbook } from '../../src/exchange/return/own-workbook.ts'
import { changesInFile } from '../../src/exchange/return/find-changes.ts'
import { decisionsFor } from '../../src/exchange/return/return-workbook.ts'
import { takeOver } from '../../src/exchange/return/take-over.ts'
import type { FileContents } from '../../src/exchange/reading/contents.ts'
import { readFileContents } from '../../src/exchange/reading/read-file.ts'
import { isFormula, type Workbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { eachCell } from '../../src/workbook/cells.ts'
import { readWorkbook, writeWorkbook } from '../../src/workbook/file.ts'
import { perform, startHistory, undo } from '../../src/workbook/history.ts'
import { readTemplate } from '../templates/open-template.ts'
import { contentsOf, exported, openElsewhere, savedElsewhere, typeElsewhere } from '../unit/return/other-program.ts'
import { workbook as anyWorkbook } from './workbook/arbitraries.ts'

/** What a file of the workbook gives back: half characters, which no file has, as the writer writes them. */
const kept = (workbook: Workbook): Workbook => {
  const read = readWorkbook(writeWorkbook(workbook))
  return 'workbook' in read ? read.workbook : expect.fail(read.problems[0]?.message)
}

async function own(contents: FileContents): Promise<OwnWorkbook> {
  const found = await ownWorkbook(contents)
  return found === undefined || 'problem' in found ? expect.fail(found?.problem ?? 'not known as an own file') : found
}

async function contentsIn(bytes: Uint8Array, name = 'a.xlsx'): Promise<FileContents> {
  const contents = await readFileContents(bytes, name)
  return 'problem' in contents ? expect.fail(contents.problem) : contents
}

describe('any workbook as a spreadsheet file', () => {
  it('comes back as the same workbook without any change', async () => {
    await fc.assert(fc.asyncProperty(anyWorkbook.map(kept), async (workbook) => {
      const contents = await contentsIn(await exported(workbook))
      const found = await own(contents)
      expect(found.workbook).toEqual(workbook)
      expect(changesInFile(found, contents)).toEqual([])
    }), { numRuns: 60 })
  })
})

/** Cells of a workbook of one kind, as places in its file. */
function places(workbook: Workbook, fits: (cell: { readonly content: unknown; readonly role: string }) => boolean): { readonly sheet: string; readonly row: number; readonly column: number }[] {
  const found: { sheet: string; row: number; column: number }[] = []
  for (const sheet of workbook.sheets) eachCell(sheet, (cell, row, column) => fits(cell) && found.push({ sheet: sheet.name, row, column }))
  return found
}

const template = readTemplate('templates/vessel-sizing.lowside.json')
const file = await exported(template)
const inputs = places(template, ({ content, role }) => role === 'input' && typeof content === 'number')
const formulas = places(template, ({ content }) => isFormula(content as string))
const cellsAt = { inputs, formulas }

describe('a file changed by another program', () => {
  it('gives every changed input, and nothing else, in one step that can be undone', async () => {
    await fc.assert(fc.asyncProperty(
      fc.uniqueArray(fc.nat(inputs.length - 1), { minLength: 1, maxLength: 12 }), fc.double({ min: 1, max: 1000, noNaN: true }),
      async (chosen, factor) => {
        const book = openElsewhere(file)
        const typed = chosen.map((index) => ({ ...(inputs[index] ?? expect.fail()), value: Number((factor + index).toPrecision(15)) }))
        for (const { sheet, row, column, value } of typed) typeElsewhere(book, sheet, row, column, value)
        const contents = await contentsIn(savedElsewhere(book))
        const found = await own(contents)
        const changes = changesInFile(found, contents)
        const differing = typed.filter(({ sheet, row, column, value }) => template.sheets.find(({ name }) => name === sheet)?.rows[row]?.[column]?.content !== value)
        expect(changes.map(({ kind }) => kind)).toEqual(differing.map(() => 'input'))
        const edits = takeOver(found.workbook, changes, decisionsFor(changes, 'inputs'))
        const history = perform(startHistory(template), edits, 'Changes from the file').history
        for (const { sheet, row, column, value } of differing) expect(history.workbook.sheets.find(({ name }) => name === sheet)?.rows[row]?.[column]?.content).toBe(value)
        expect(undo(history).history.workbook).toEqual(template)
      },
    ), { numRuns: 12 })
  })

  it('tells of every formula overwritten or made another, and of every change of workings, as many as there are', async () => {
    const workings = openElsewhere(file).SheetNames.filter((name) => name.includes('.'))
    await fc.assert(fc.asyncProperty(
      fc.uniqueArray(fc.nat(formulas.length - 1), { maxLength: 6 }), fc.uniqueArray(fc.nat(formulas.length - 1), { maxLength: 6 }), fc.uniqueArray(fc.nat(workings.length - 1), { maxLength: 3 }),
      async (overwritten, others, edited) => {
        const book = openElsewhere(file)
        const remade = others.filter((index) => !overwritten.includes(index))
        for (const index of overwritten) typeElsewhere(book, cellsAt.formulas[index]?.sheet ?? '', cellsAt.formulas[index]?.row ?? 0, cellsAt.formulas[index]?.column ?? 0, 12345)
        for (const index of remade) typeElsewhere(book, cellsAt.formulas[index]?.sheet ?? '', cellsAt.formulas[index]?.row ?? 0, cellsAt.formulas[index]?.column ?? 0, '=1+MAX(1,2)')
        for (const index of edited) typeElsewhere(book, workings[index] ?? '', 5, 3, 12345)
        const contents = await contentsIn(savedElsewhere(book))
        const found = await own(contents)
        const changes = changesInFile(found, contents)
        const count = (kind: string): number => changes.filter((change) => change.kind === kind).length
        expect({ overwritten: count('formulaOverwritten'), changed: count('formulaChanged'), workings: count('workings') }).toEqual({ overwritten: overwritten.length, changed: remade.length, workings: edited.length })
        expect(changes.length).toBe(overwritten.length + remade.length + edited.length)
        const all = applyEdits(found.workbook, takeOver(found.workbook, changes, decisionsFor(changes, 'all'))).workbook
        for (const index of remade) {
          const { sheet, row, column } = formulas[index] ?? expect.fail()
          expect(all.sheets.find(({ name }) => name === sheet)?.rows[row]?.[column]?.content).toBe('=1+MAX(1,2)')
        }
        expect(applyEdits(found.workbook, takeOver(found.workbook, changes, decisionsFor(changes, 'inputs'))).workbook).toEqual(template)
      },
    ), { numRuns: 12 })
  })

  it('without changes stays without after another library has saved it', async () => {
    const contents = contentsOf(openElsewhere(savedElsewhere(openElsewhere(file))))
    expect(changesInFile(await own(contents), contents)).toEqual([])
  })
})
