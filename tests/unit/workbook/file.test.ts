import { describe, expect, it } from 'vitest'
import type { Workbook } from '../../../src/workbook/document.ts'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'

const sample = `{"lowside": 1,
 "title": "Drum \\"A\\"",
 "purpose": "",
 "sheets": [
  {"name": "Drum", "columns": [240, 96], "frozen": [4, 1],
   "cells": {
    "B5": ["Refrigeration load", "label"],
    "C5": [85, "input", {"digits": 4, "note": "from the room list"}],
    "D5": ["TR", "unit"],
    "A6": [null, "input"],
    "C9": ["=FEED.FLOW(C5:D5,C6:D6,C7:D7,D9)", "result", {"decimals": 1, "wrap": true}]
   }},
  {"name": "Head", "columns": [], "frozen": [0, 0],
   "cells": {}}
 ],
 "names": {
  "load": "Drum!$C$5"
 }}
`

const withCells = (cells: string) => `{"lowside": 1, "title": "t",\n"sheets": [{"name": "Drum", "cells": {\n${cells}\n}}]}`

const messages = (text: string) => {
  const read = readWorkbook(text)
  return 'problems' in read ? read.problems.map(({ message }) => message) : []
}

const workbookOf = (text: string): Workbook => {
  const read = readWorkbook(text)
  if ('problems' in read) throw new Error(read.problems[0]?.message)
  return read.workbook
}

describe('a workbook file', () => {
  it('is written one cell a line, in reading order, and read back', () => {
    const workbook = workbookOf(sample)
    expect(writeWorkbook(workbook)).toBe(sample)
    expect(workbook.sheets[0]?.rows[4]?.[2]).toEqual({ content: 85, role: 'input', digits: 4, note: 'from the room list' })
    expect(workbook.names.get('load')).toBe('Drum!$C$5')
  })

  it('may leave out purpose, columns, frozen and names, and list cells and names in any order', () => {
    const text = writeWorkbook(workbookOf('\uFEFF{"lowside":1,"title":"t","sheets":[{"name":"S","cells":{"B2":[1,"input"],"A1":[2,"input"]}}],"names":{"b":"S!A1","a":"S!B2"}}'))
    expect(text.match(/"[AB]\d"/g)).toEqual(['"A1"', '"B2"'])
    expect(text.match(/"[ab]"/g)).toEqual(['"a"', '"b"'])
  })

  it('text that looks like a number is text, and is kept with the mark that says so', () => {
    expect(workbookOf(withCells('"A1": ["85", "text"]')).sheets[0]?.rows[0]?.[0]?.content).toBe("'85")
  })

  it('lists that tell of figures, cases and reviews may be there, empty', () => {
    expect(messages('{"lowside":1,"title":"t","sheets":[{"name":"S","cells":{}}],"figures":[],"cases":[],"marks":[],"accepted":[],"record":[]}')).toEqual([])
  })
})

describe('a cell that is not accepted is named by line, sheet and address', () => {
  const cases: readonly (readonly [string, RegExp])[] = [
    ['"C9": [1, "resul"]', /^line 3, sheet "Drum", cell C9: unknown role "resul"; accepted: title, heading, label/],
    ['"C9": [{}, "text"]', /^line 3, sheet "Drum", cell C9: accepted as content: a number, true, false, null or a text/],
    ['"C9": [1e999, "input"]', /^line 3, sheet "Drum", cell C9: accepted as content/],
    ['"C9": ["", "text"]', /^line 3, sheet "Drum", cell C9: empty text; accepted: null/],
    ['"C9": [1]', /^line 3, sheet "Drum", cell C9: accepted: a cell: \[content, role\]/],
    ['"C9": 1', /^line 3, sheet "Drum", cell C9: accepted: a cell/],
    ['"C9": [1, "input", {"digts": 3}]', /^line 3, sheet "Drum", cell C9: unknown "digts" in the third place of a cell; accepted: digits/],
    ['"C9": [1, "input", {"digits": 16}]', /^line 3, sheet "Drum", cell C9: accepted: digits: a whole number from 1 to 15/],
    ['"C9": [1, "input", {"decimals": 1.5}]', /^line 3, sheet "Drum", cell C9: accepted: decimals: a whole number from 0 to 12/],
    ['"C9": [1, "input", {"wrap": false}]', /^line 3, sheet "Drum", cell C9: accepted: wrap: true/],
    ['"A1": [1, "input"],\n"c9": [1, "input"]', /^line 4, sheet "Drum", cell c9: "c9" is no address; accepted: A1 to XFD1048576, in capitals/],
    ['"XFE1": [1, "input"]', /^line 3, sheet "Drum", cell XFE1: "XFE1" is no address/],
    ['"C9": [1, "input"],\n"C9": [2, "input"]', /^line 4, sheet "Drum", cell C9: "C9" is written twice, first in line 3/],
    [`"C9": ["${'x'.repeat(32_768)}", "text"]`, /^line 3, sheet "Drum", cell C9: accepted as content: .* up to 32767 characters/],
    ['"C9": [1, "input", {"__proto__": {}}]', /^line 3, sheet "Drum", cell C9: the key "__proto__" is not accepted/],
    ['"__proto__": [1, "input"]', /^line 3, sheet "Drum": the key "__proto__" is not accepted/],
  ]
  for (const [cells, message] of cases) {
    it(cells.slice(0, 50), () => {
      expect(messages(withCells(cells))).toEqual([expect.stringMatching(message)])
    })
  }

  it('several at once, each with its place as data, and not more than 20', () => {
    const bad = Array.from({ length: 30 }, (_, index) => `"A${index + 1}": [1, "x"]`).join(',\n')
    const read = readWorkbook(withCells(bad))
    expect('problems' in read && read.problems).toHaveLength(20)
    expect('problems' in read && read.problems[19]).toMatchObject({ at: { line: 22, column: 12 }, sheet: 'Drum', cell: 'A20' })
  })
})

describe('a file that is not accepted', () => {
  const cases: readonly (readonly [string, RegExp])[] = [
    ['', /^line 1, column 1: the file is no valid JSON: a value is missing/],
    ['{"lowside": 1,\n "title" "t"}', /^line 2, column 10: the file is no valid JSON: ":" is missing/],
    [sample.slice(0, 200), /^line 8, column 16: the file is no valid JSON: a text without its closing "/],
    ['{"lowside": 1, }', /no valid JSON/],
    ['// a comment\n{}', /a comment, which JSON has not/],
    ['['.repeat(100_000), /nested deeper than 32/],
    ['[]', /no workbook of Lowside; accepted: a file that begins with/],
    ['{"title": "t"}', /no workbook of Lowside/],
    ['{"lowside": 2}', /made by a newer Lowside \(file version 2\); this one reads versions up to 1/],
    ['{"lowside": "1"}', /lowside: "1" is no version/],
    ['{"lowside": 0}', /file version 0 cannot be read/],
    ['{"lowside": 1, "title": "t", "sheets": []}', /sheets: at least one sheet/],
    ['{"lowside": 1, "title": "t", "sheets": [{"name": "a/b", "cells": {}}]}', /sheet "a\/b": sheet name "a\/b" has a character of/],
    ['{"lowside": 1, "title": "t", "sheets": [{"name": "S", "cells": {}},\n{"name": "s", "cells": {}}]}', /^line 2, sheet "s": sheet name "s" is taken by "S"/],
    ['{"lowside": 1, "title": "t", "sheets": [{"name": "S", "cells": {}}], "names": {"A1": "S!A1"}}', /name "A1" reads as something else/],
    ['{"lowside": 1, "title": "t", "sheets": [{"name": "S", "cells": {}}], "names": {"load": "S!A1",\n"LOAD": "S!A2"}}', /^line 2: name "LOAD" is taken by "load"/],
    ['{"lowside": 1, "title": "t", "sheets": [{"name": "S", "columns": [0], "cells": {}}]}', /sheet "S": accepted: a column width: above 0/],
    ['{"lowside": 1, "title": "t", "sheets": [{"name": "S", "cells": {}}], "macros": []}', /unknown "macros" in a workbook file; accepted: lowside, title/],
    ['{"lowside": 1, "lowside": 1, "title": "t", "sheets": [{"name": "S", "cells": {}}]}', /"lowside" is written twice/],
  ]
  for (const [text, message] of cases) {
    it(`${text.slice(0, 60)} (${message.source.slice(0, 60)})`, () => {
      expect(messages(text)).toEqual([expect.stringMatching(message)])
    })
  }
})

describe('an older version', () => {
  it('is run through every migration from its own on, and then read as the present one', () => {
    const migrations = new Map<number, (file: object) => object>([
      [-1, (file) => ({ ...file, lowside: 0, sheets: [{ name: 'S', cells: {} }] })],
      [0, (file) => ({ ...file, lowside: 1, title: 'migrated' })],
    ])
    const read = readWorkbook('{"lowside": -1}', migrations)
    expect('workbook' in read && read.workbook.title).toBe('migrated')
    expect('workbook' in read && read.workbook.sheets.map(({ name }) => name)).toEqual(['S'])
  })
})

describe('prototype keys', () => {
  it('reach no object', () => {
    readWorkbook(withCells('"A1": [1, "input", {"__proto__": {"polluted": true}}]'))
    expect('polluted' in {}).toBe(false)
  })
})

describe('a figure that is not accepted is named by line and number', () => {
  const withFigure = (figure: string) => messages(`{"lowside":1,"title":"t","sheets":[{"name":"S","cells":{}}],\n"figures":[\n${figure}]}`)

  it.each([
    ['{"kind":"pie","title":""}', /^line 3, figure 1: unknown kind of figure "pie"; accepted: drum, zones, circulation, charge/],
    ['{"kind":"drum"}', /^line 3, figure 1: accepted: the title of a figure: text/],
    ['{"kind":"drum","title":"","bindings":{"room":"S!A1"}}', /^line 3, figure 1: unknown part "room" of a drum figure; accepted: diameter, length/],
    ['{"kind":"drum","title":"","bindings":{"level":""}}', /^line 3, figure 1: level: accepted: reference text such as Drum!\$C\$5:\$D\$5/],
    ['{"kind":"drum","title":"","bindings":{"level":5}}', /^line 3, figure 1: accepted: a binding: text/],
    ['{"kind":"drum","title":"","options":{"position":"flat"}}', /^line 3, figure 1: position: "flat"; accepted: horizontal, vertical/],
    ['{"kind":"zones","title":"","options":{"position":"vertical"}}', /^line 3, figure 1: unknown option "position" of a zones figure; accepted: none/],
    ['{"kind":"drum","title":"","colour":"red"}', /^line 3, figure 1: unknown "colour" in a figure; accepted: kind, title, sheet, options, bindings/],
    ['{"kind":"drum","title":"","bindings":{"__proto__":"S!A1"}}', /^line 3, figure 1: the key "__proto__" is not accepted/],
  ])('%s', (figure, message) => {
    expect(withFigure(figure)).toEqual([expect.stringMatching(message)])
  })

  it('and one that is accepted may say no more than its kind and title', () => {
    expect(withFigure('{"kind":"drum","title":"Drum"}')).toEqual([])
  })
})

describe('what a report says of its making', () => {
  const withReport = (report: string) => `{"lowside":1,"title":"t","sheets":[{"name":"S","cells":{}}],\n"report":${report}}`

  it('is read and written, and absent from a file of before', () => {
    const read = readWorkbook(withReport('{"preparedBy":"A \\"B\\"","checkedBy":"","paper":"A4"}'))
    if ('problems' in read) throw new Error(read.problems[0]?.message)
    expect(read.workbook.report).toEqual({ preparedBy: 'A "B"', checkedBy: '', paper: 'A4' })
    expect(writeWorkbook(read.workbook)).toContain('\n "report": {"preparedBy": "A \\"B\\"", "checkedBy": "", "paper": "A4"}}')
    const before = readWorkbook('{"lowside":1,"title":"t","sheets":[{"name":"S","cells":{}}]}')
    expect('workbook' in before && 'report' in before.workbook).toBe(false)
  })

  it.each([
    ['{"preparedBy":"","checkedBy":"","paper":"Napkin"}', /^line 2: unknown paper "Napkin"; accepted: Letter, A4/],
    ['{"preparedBy":1,"checkedBy":"","paper":"A4"}', /^line 2: accepted: preparedBy: text/],
    ['{"preparedBy":"","checkedBy":"","paper":"A4","ink":"red"}', /^line 2: unknown "ink" in a report; accepted: preparedBy, checkedBy, paper/],
    ['[]', /^line 2: accepted in a report: an object/],
  ])('%s is refused', (report, message) => {
    expect(messages(withReport(report))).toEqual([expect.stringMatching(message)])
  })
})
