import { readdirSync } from 'node:fs'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'
import { init } from 'excelize-wasm'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { numberCode } from '../../src/exchange/number-code.ts'
import { exportXlsx } from '../../src/exchange/xlsx.ts'
import { columnLetters, printAddress } from '../../src/workbook/address.ts'
import { eachCell } from '../../src/workbook/cells.ts'
import { columnWidth, usedRange, type Cell, type Role } from '../../src/workbook/document.ts'
import { readTemplate } from '../templates/open-template.ts'
import { workbookOf } from './workbook-of.ts'

/*
 * Exported files as a library sees them that has not written them. It is a build of a Go library for WebAssembly, and reads styles, panes and
 * notes, which the library that reads files in Lowside passes over.
 */

const TEMPLATES = readdirSync(fileURLToPath(new URL('../../templates', import.meta.url))).filter((name) => name.endsWith('.lowside.json')).map((name) => `templates/${name}`)
const library = await init(createRequire(import.meta.url).resolve('excelize-wasm/excelize.wasm.gz'))
const DATE = new Date('2025-03-04T05:06:07Z')

/** Of so many cells of each sheet the style is looked at. */
const LOOKED_AT = 60

const BOLD: ReadonlySet<Role> = new Set<Role>(['title', 'heading', 'result'])

describe.each([...TEMPLATES, 'demo-data/tallowmere.lowside.json'])('%s, exported, in an independent reader', { timeout: 300_000 }, async (path) => {
  const workbook = readTemplate(path)
  const areas = new Graph(workbook).allAreas()
  const values = new Map([...areas].map(([sheet, area]) => [sheet, area.values] as const))
  const file = library.OpenReader(await exportXlsx(workbook, values, { date: DATE, checks: areas }))
  const shown = (cell: Cell, value: unknown): number | undefined => (typeof value === 'number' ? value : typeof cell.content === 'number' ? cell.content : undefined)

  it('opens, with its sheets in their order, the document hidden', () => {
    expect(file.error).toBeNull()
    const { list } = file.GetSheetList()
    expect(list.slice(0, workbook.sheets.length + 1)).toEqual(['Cover', ...workbook.sheets.map(({ name }) => name)])
    expect(list.filter((name) => !file.GetSheetVisible(name).visible)).toEqual(['Lowside workbook'])
  })

  it('has title, subject and day among its properties, and no author', () => {
    expect(file.GetDocProps().props).toMatchObject({ Title: workbook.title, Subject: workbook.purpose, Created: '2025-03-04T05:06:07Z', Creator: '' })
  })

  it('has the names of the workbook', () => {
    const { definedNames } = file.GetDefinedName()
    expect(definedNames.map(({ Name = '' }) => Name).filter((name) => !name.startsWith('_xlnm.')).toSorted()).toEqual([...workbook.names.keys()].toSorted())
  })

  it('keeps rows and columns in view, and widths', () => {
    for (const sheet of workbook.sheets) {
      const [rows, columns] = sheet.frozen
      const { panes } = file.GetPanes(sheet.name)
      expect({ frozen: panes.Freeze ?? false, rows: panes.YSplit ?? 0, columns: panes.XSplit ?? 0 }, sheet.name).toEqual({ frozen: rows + columns > 0, rows, columns })
      for (const column of [0, 1, 2].filter((one) => one < usedRange(sheet).columns)) expect(file.GetColWidth(sheet.name, columnLetters(column)).width).toBeCloseTo(columnWidth(sheet, column) / 7, 1)
    }
  })

  it('has headings and results bold, inputs tinted, framed and unlocked, numbers in their formats', () => {
    const rows: string[] = []
    for (const sheet of workbook.sheets) {
      let looked = 0
      eachCell(sheet, (cell, row, column) => {
        if (looked++ > LOOKED_AT) return
        const address = printAddress(row, column)
        const { style } = file.GetStyle(file.GetCellStyle(sheet.name, address).style)
        const isInput = cell.role === 'input'
        const value = shown(cell, values.get(sheet.name)?.[row]?.[column])
        const code = value === undefined ? 'General' : numberCode(value, cell)
        const format = style.CustomNumFmt ?? BUILT_IN[style.NumFmt ?? 0] ?? String(style.NumFmt)
        const found = {
          bold: style.Font?.Bold ?? false, tinted: style.Fill?.Pattern === 1, framed: (style.Border ?? []).filter(({ Style }) => Style === 1).length === 4, unlocked: style.Protection?.Locked === false,
          format,
        }
        const wanted = { bold: BOLD.has(cell.role), tinted: isInput || cell.role === 'check', framed: isInput, unlocked: isInput, format: code }
        if (JSON.stringify(found) !== JSON.stringify(wanted)) rows.push(`${sheet.name}!${address} ${cell.role}: ${JSON.stringify(found)}, wanted ${JSON.stringify(wanted)}`)
      })
    }
    expect(rows).toEqual([])
  })

  it('has the notes of its cells', () => {
    for (const sheet of workbook.sheets) {
      const notes: string[] = []
      eachCell(sheet, ({ note }, row, column) => void (note !== undefined && notes.push(`${printAddress(row, column)} ${note}`)))
      const found = (file.GetComments(sheet.name).comments ?? []).map(({ Cell: address, Paragraph = [], Text = '' }) => `${address} ${Text || Paragraph.map((run) => run.Text).join('')}`)
      for (const note of notes) expect(found.some((one) => one.startsWith(note)), `${sheet.name}: ${note}`).toBe(true)
    }
  })

  it('goes on paper across, with title, sheet and page on each', () => {
    for (const name of ['Cover', ...workbook.sheets.map((sheet) => sheet.name)]) {
      expect(file.GetPageLayout(name).opts, name).toMatchObject({ Orientation: 'landscape', Size: workbook.report?.paper === 'A4' ? 9 : 1 })
      const { OddHeader = '', OddFooter = '' } = file.GetHeaderFooter(name).opts
      expect(OddHeader).toContain(workbook.title.slice(0, 20))
      expect(OddHeader).toContain('&A')
      expect(OddFooter).toMatch(/not a compliance finding.*&P.*&N/)
    }
  })

  it('has rows high enough for every text on several lines', () => {
    for (const sheet of workbook.sheets) {
      eachCell(sheet, ({ content, wrap }, row, column) => {
        if (wrap !== true || typeof content !== 'string' || content.startsWith('=')) return
        // No text of words has letters of less than 4.5 px on the whole: it takes so many lines at least.
        const least = Math.floor((content.length * 4.5) / Math.max(1, columnWidth(sheet, column)))
        expect(file.GetRowHeight(sheet.name, row + 1).height, `${sheet.name}!${printAddress(row, column)}`).toBeGreaterThanOrEqual(Math.min(400, Math.max(1, least) * 12))
      })
    }
  })
})

it('notes at their cells, and texts that go across, are what another reader sees', async () => {
  const made = workbookOf({ Duty: { A1: [85, 'input'], B1: ['TR', 'unit'], C1: ['=A1<100', 'check'] } })
  const noted = { ...made, sheets: made.sheets.map((sheet) => ({ ...sheet, rows: sheet.rows.map((row) => row?.map((cell) => cell && { ...cell, note: `why ${String(cell.content)}` })) })) }
  const file = library.OpenReader(await exportXlsx(noted, new Graph(noted).allValues(), { date: DATE }))
  const { comments } = file.GetComments('Duty')
  const texts = comments.map(({ Cell: address, Paragraph = [], Text = '' }) => `${address} ${Text || Paragraph.map((run) => run.Text).join('')}`)
  expect(texts).toEqual(['A1 why 85', 'B1 why TR', 'C1 why =A1<100'])
  expect(file.GetMergeCells('Cover').mergeCells.length).toBeGreaterThan(5)
})

/** Number formats that every program has by these numbers (ECMA-376, part 1, 18.8.30). */
const BUILT_IN: Readonly<Record<number, string>> = { 0: 'General', 1: '0', 2: '0.00' }
