import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { workbookOf, type Put } from '../unit/workbook-of.ts'
import { differences, exported } from './exported.ts'
import { recalculatedPlainly, type FileInput } from './recalculated.ts'

/** A workbook of one sheet, with an error of each kind of argument beside what is right. Its numbers are invented. */
const one = (cells: Readonly<Record<string, Put>>, names: Readonly<Record<string, string>> = {}): Workbook => workbookOf({ Duty: cells }, names)

const cellOf = (file: FileInput, sheet: string, row: number, column: number) => file.sheets.get(sheet)?.[row]?.[column]

async function agrees(workbook: Workbook): Promise<FileInput> {
  const file = await exported(workbook)
  expect(differences(workbook, new Graph(workbook).allValues(), recalculatedPlainly(file))).toEqual([])
  return file
}

/** Errors are part of the agreement: those that a test does not want are counted. */
const errorsIn = (workbook: Workbook): number => new Graph(workbook).errors().length

describe('a call of a function of Lowside in an exported file', () => {
  it('is a reference to its row, after a header that stays in view', async () => {
    const file = await agrees(one({ A1: 31, B1: ['°F', 'unit'], C1: '=SAT.PRESSURE(A1:B1,"psia")' }))
    expect(cellOf(file, 'Duty', 0, 2)?.f).toBe("'SAT.PRESSURE'!T6")
    const labels = file.sheets.get('SAT.PRESSURE')?.[3]?.map((cell) => cell?.v)
    expect(labels?.slice(0, 2)).toEqual(['first called in', 'site'])
    expect(labels?.at(-1)).toBe('result')
    expect(cellOf(file, 'SAT.PRESSURE', 5, 0)?.v).toBe('Duty!C1')
  })

  it('shares its row with calls of the same arguments, whatever their dollar signs and sheets', async () => {
    const workbook = workbookOf({ Duty: { A1: 31, B1: ['°F', 'unit'], C1: '=SAT.PRESSURE(A1:B1,"psia")', C2: '=2*SAT.PRESSURE($A$1:B$1,"psia")' }, Other: { A1: '=SAT.PRESSURE(Duty!A1:B1," psia ")' } })
    const file = await agrees(workbook)
    expect(file.sheets.get('SAT.PRESSURE')?.length).toBe(6)
    expect(cellOf(file, 'Duty', 1, 2)?.f).toBe("2*'SAT.PRESSURE'!T6")
  })

  it.each<[string, Readonly<Record<string, Put>>, Readonly<Record<string, string>>, number]>([
    ['a text', { A1: '=SAT.PRESSURE("31 °F","psia")' }, {}, 0],
    ['a text whose unit is spelled otherwise', { A1: '=SAT.PRESSURE("31 ºF","psia")', A2: '=UNIT.CONVERT("3 ft³","m³")' }, {}, 0],
    ['a number joined to a header', { A1: ['°F', 'unit'], A2: 31, B2: '=SAT.PRESSURE(A2&A$1,"psia")' }, {}, 0],
    ['a negative number joined to a header', { A1: ['°F', 'unit'], A2: -28, B2: '=SAT.PRESSURE(A2&A$1,"psia")', B3: '=SAT.PRESSURE(-28&" °F","psia")' }, {}, 0],
    ['a number joined to an empty header, an empty cell to a header', { A1: ['°F', 'unit'], A2: 31, B2: '=SAT.PRESSURE(A2&B1,"psia")', B3: '=SAT.PRESSURE(A3&A$1,"psia")' }, {}, 2],
    ['a call in a call', { A1: 31, B1: ['°F', 'unit'], C1: '=SAT.TEMPERATURE(SAT.PRESSURE(A1:B1,"psia")+5&" psia","°F")' }, {}, 0],
    ['calls in calls in calls', { A1: '=UNIT.CONVERT(SAT.TEMPERATURE(SAT.PRESSURE("31 °F","psia")*2&" psia","°F")&"°F","K")+LIQUID.DENSITY("0 °C","kg/m3")' }, {}, 0],
    ['a name of a pair, of a number and of a unit', { A1: 31, B1: ['°F', 'unit'], C1: '=SAT.PRESSURE(drum,"psia")', C2: '=SAT.PRESSURE(cold&deg,"psia")' }, { drum: 'Duty!$A$1:$B$1', cold: 'Duty!$A$1', deg: 'Duty!$B$1' }, 0],
    ['a name that calls a function', { A1: '=p*2', A2: '=SAT.TEMPERATURE(p&" psia","°F")' }, { p: 'SAT.PRESSURE("31 °F","psia")' }, 0],
    ['a text in a cell', { A1: '31 °F', A2: ' -28.5  °F', B1: '=SAT.PRESSURE(A1,"psia")', B2: '=SAT.PRESSURE(A2,"psia")' }, {}, 0],
    ['text that is no quantity, and a number without unit', { A1: 'warm', B1: '=SAT.PRESSURE(A1,"psia")', A2: 31, B2: '=SAT.PRESSURE(A2,"psia")', B3: '=SAT.PRESSURE(31,"psia")' }, {}, 3],
    ['empty cells', { A2: 31, C1: '=SAT.PRESSURE(A1:B1,"psia")', C2: '=SAT.PRESSURE(A2:B2,"psia")', D1: '=SAT.PRESSURE("31 °F",F9)' }, {}, 3],
    ['a cell that depends on itself', { A1: '=SAT.PRESSURE(A1:B1,"psia")' }, {}, 1],
    ['a unit of another kind, or none at all', { A1: 31, B1: ['kg', 'unit'], C1: '=SAT.PRESSURE(A1:B1,"psia")', C2: '=SAT.PRESSURE("31 °F","furlong")' }, {}, 2],
    ['a branch that is not taken and would be an error', { A1: 0, B1: '=IF(A1=0,1,SAT.PRESSURE(A1&" kg","psia"))', B2: '=IFERROR(SAT.PRESSURE("1 kg","psia"),7)' }, {}, 0],
    ['a choice of two quantities', { A1: 'vertical', A2: 2, B2: ['m', 'unit'], A3: 5, B3: ['ft', 'unit'], C1: '=UNIT.CONVERT(IF(A1="vertical",A2&B2,A3&B3),"m")', C2: '=UNIT.CONVERT(IF(A1="x",A2&B2,A3&B3),"m")' }, {}, 0],
    ['a sum in brackets', { A1: 1, A2: 2, B1: '=UNIT.CONVERT((A1+A2)&" m","ft")', B2: '=UNIT.CONVERT(MAX(A1:A2)&" m","ft")', B3: '=UNIT.CONVERT(INDEX(A1:A2,2)&" m","ft")' }, {}, 0],
    ['a comparison as an argument', { A1: '=UNIT.CONVERT(1=1,"m")' }, {}, 1],
    ['the row that it stands in', { A5: 1, B5: '=UNIT.CONVERT(ROW()-ROW(B$3)&" m","ft")', B6: '=UNIT.CONVERT(ROW()-ROW(B$3)&" m","ft")' }, {}, 0],
    ['a size as text, as a number, with a fraction, in two cells', { A1: '2', A2: 2, A3: '1-1/2', A4: 2, B4: 'in', C1: '=PIPE.BORE(A1,"40","in")', C2: '=PIPE.BORE(A2,"80","in")', C3: '=PIPE.BORE(A3,"40","in")', C4: '=PIPE.BORE(A4:B4,40,"in")', C5: '=PIPE.BORE("NPS 1½","40","mm")', C6: '=PIPE.BORE(A9,"40","mm")' }, {}, 1],
    ['a result that is a text', { A1: '=PIPE.NEXT("2.2 in","40")', A2: '=PIPE.BORE(PIPE.NEXT("2.2 in","40"),"40","in")', A3: '=A1&" in"' }, {}, 0],
    ['a plain number, a share in percent and an omitted one', { A1: 0.4, A2: '40 %', A3: 40, B3: ['%', 'unit'], A4: '0.4', B1: '=HOLDUP.MASS("2 ft3",A1,"31 °F","lb")', B2: '=HOLDUP.MASS("2 ft3",A2,"31 °F","lb")', B4: '=HOLDUP.MASS("2 ft3",A3:B3,"31 °F","lb")', B5: '=HOLDUP.MASS("2 ft3","40 %","31 °F","lb")', B6: '=HOLDUP.MASS("2 ft3",,"31 °F","lb")', B7: '=HOLDUP.MASS("2 ft3",1-0.6,"31 °F","lb")', B8: '=HOLDUP.MASS("2 ft3",A1&"","31 °F","lb")' }, {}, 1],
    ['a site with and without, whose unit is missing', { A1: 90, B1: ['kPa', 'unit'], C1: '=SAT.PRESSURE("31 °F","psig",A1:B1)', C2: '=SAT.PRESSURE("31 °F","psig")', C3: '=SAT.PRESSURE("31 °F","psig",A1:B2)', C4: '=SAT.PRESSURE("31 °F","psig",A1:A1)', C5: '=SAT.PRESSURE("31 °F","psig",A1&B9)', C6: '=SAT.PRESSURE("31 °F","psig",A8:B8)' }, {}, 4],
    ['too few and too many arguments', { A1: '=SAT.PRESSURE("31 °F")', A2: '=SAT.PRESSURE()', A3: '=RELIEF.SCFM("10 lb/min","x")' }, {}, 3],
    ['an array constant', { A1: '=SAT.PRESSURE({31,"°F"},"psia")', A2: '=SAT.PRESSURE({31,"°F";32,"°F"},"psia")' }, {}, 1],
    ['a sheet with a blank and a mark in its name', { A1: "=UNIT.CONVERT('Duty'!B1&\" m\",\"ft\")", B1: 2 }, {}, 0],
  ])('takes %s', async (_, cells, names, errors) => {
    const workbook = one(cells, names)
    expect(errorsIn(workbook)).toBe(errors)
    await agrees(workbook)
  })

  it('goes to a sheet whose name no sheet of the workbook has', async () => {
    const workbook = workbookOf({ 'unit.convert': { A1: '=UNIT.CONVERT("1 m","ft")' }, "Units": { A1: 1 }, "It's mine": { A1: "=UNIT.CONVERT('unit.convert'!A1&\" ft\",\"m\")" } })
    const file = await agrees(workbook)
    expect([...file.sheets.keys()]).toEqual(['Cover', 'unit.convert', 'Units', "It's mine", 'UNIT.CONVERT 2', 'Units 2', 'Lowside workbook'])
  })

  it('has the values of its workings in the file, for viewers that do not compute', async () => {
    const workbook = one({ A1: 31, B1: ['°F', 'unit'], C1: '=SAT.PRESSURE(A1:B1,"psia")', C2: '=SAT.TEMPERATURE(C1+5&" psia","°F")', C3: '=VESSEL.VOLUME("36 in","10 ft","2:1","vertical","ft3")', C4: '=SAT.PRESSURE("1 kg","psia")' })
    const file = await exported(workbook)
    const again = recalculatedPlainly(file)
    for (const [name, rows] of file.sheets) {
      rows.forEach((row, at) => row?.forEach((cell, column) => {
        if (cell?.f === undefined) return
        const other = again.get(name)?.[at]?.[column]
        if (cell.t === 'e') expect(String(other)).toMatch(/^#/)
        else if (typeof cell.v === 'number') expect(Math.abs(cell.v - Number(other))).toBeLessThanOrEqual(1e-9 * Math.abs(cell.v))
        else expect(cell.v).toBe(other)
      }))
    }
  })
})
