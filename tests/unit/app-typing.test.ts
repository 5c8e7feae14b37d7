import { describe, expect, it } from 'vitest'
import { accept, completionAt } from '../../src/app/entry-line/completion.ts'
import { cycleReference } from '../../src/app/entry-line/cycling.ts'
import { hintAt } from '../../src/app/entry-line/hint.ts'
import { putReference, referenceFits } from '../../src/app/entry-line/pointing.ts'
import { standardSignatures } from '../../src/app/entry-line/standard-signatures.ts'
import { Graph } from '../../src/calc/graph.ts'
import { emptySheet, emptyWorkbook } from '../../src/workbook/document.ts'
import { unreadableAt } from '../../src/workbook/formula/unreadable.ts'

/** A text with its caret at the bar. */
const at = (marked: string) => ({ text: marked.replace('|', ''), caret: marked.indexOf('|') })

const workbook = { sheets: ['Duty', 'Vertical drum', "O'Hara"].map(emptySheet), names: new Map([['PLANT.PRESSURE', 'Basis!$C$4']]) }
const complete = (marked: string, unitCell = false) => completionAt(at(marked), { workbook, unitCell, dimension: undefined })
const labels = (marked: string) => complete(marked)?.suggestions.map(({ label }) => label) ?? []
/** What the text becomes when that suggestion is taken, with a bar at the caret. */
function taken(marked: string, label: string, unitCell = false): string {
  const completion = complete(marked, unitCell)
  const suggestion = completion?.suggestions.find((one) => one.label === label)
  if (!completion || !suggestion) throw new Error(`${label} is not suggested`)
  const { text, caret } = accept(at(marked).text, completion, suggestion)
  return `${text.slice(0, caret)}|${text.slice(caret)}`
}

describe('suggestions', () => {
  it('are own functions, names, sheets and standard functions that begin so', () => {
    expect(labels('=SAT.PR|')[0]).toBe('SAT.PRESSURE')
    expect(labels('=plant.pr|')).toContain('PLANT.PRESSURE')
    expect(labels('=Vert|')).toContain('Vertical drum')
    expect(labels('=SU|')).toContain('SUMPRODUCT')
  })

  it('are found by a later word too', () => {
    expect(labels('=slope|')).toContain('SAT.SLOPE')
    expect(labels('=1+drum|')).toContain('Vertical drum')
  })

  it('are units of the dimension asked for, inside quotes', () => {
    expect(labels('=SAT.PRESSURE(C5:D5,"ps|')).toEqual(['psi', 'psia', 'psig'])
    expect(labels('=SAT.PRESSURE("31 |')).toEqual(['°F', '°C', 'K', '°R'])
    expect(labels('=SAT.PRESSURE("|')).toEqual([])
    expect(labels('="ps|')).toEqual([])
  })

  it('are taken in place of their token alone, brackets and quotes written once', () => {
    expect(taken('=1+SAT.PR|*2', 'SAT.PRESSURE')).toBe('=1+SAT.PRESSURE(|*2')
    expect(taken('=SAT.PR|(C5)', 'SAT.PRESSURE')).toBe('=SAT.PRESSURE(|C5)')
    expect(taken('=Vert|', 'Vertical drum')).toBe("='Vertical drum'!|")
    expect(taken("='O|", "O'Hara")).toBe("='O''Hara'!|")
    expect(taken('=SAT.PRESSURE(C5:D5,"ps|', 'psig')).toBe('=SAT.PRESSURE(C5:D5,"psig"|')
    expect(taken('=SAT.PRESSURE("31 |","psig")', '°F')).toBe('=SAT.PRESSURE("31 °F"|,"psig")')
  })

  it('come in a unit cell, without an equals sign', () => {
    expect(taken('psi|', 'psig', true)).toBe('psig|')
    expect(complete('psi|')).toBeUndefined()
  })

  it('leave Enter to a text that means something as it stands', () => {
    expect(complete('psi|', true)?.isComplete).toBe(true)
    expect(complete('ps|', true)?.isComplete).toBe(false)
    expect(complete('=PLANT.PRESSURE|')).toBeUndefined()
  })

  it('are none for references and numbers', () => {
    expect([complete('=C5|'), complete('=C5:D|5'), complete('=12|'), complete('=|')]).toEqual([undefined, undefined, undefined, undefined])
  })
})

describe('pointing', () => {
  it('fits where a value is wanted and none stands', () => {
    for (const marked of ['=|', '=1+|', '=SUM(|)', '=SUM(C5,|)', '=-|', '=C5:|', '=SUM(|,2)', '=(1+ |)']) expect([marked, referenceFits(at(marked))]).toEqual([marked, true])
    for (const marked of ['|', '1+|', '=C5|', '=5%|', '="a|"', '=+|C5', '={1,|', '|=1', '=SUM|(']) expect([marked, referenceFits(at(marked))]).toEqual([marked, false])
  })

  it('writes cells, ranges, whole rows and columns, and other sheets in quotes where they need them', () => {
    const area = { top: 4, left: 2, bottom: 5, right: 3 }
    const put = (more: Partial<Parameters<typeof putReference>[2]>) => putReference('=1+*2', { start: 3, end: 3 }, { sheet: null, area, ...more })
    expect(put({}).text).toBe('=1+C5:D6*2')
    expect(put({ area: { top: 4, left: 2, bottom: 4, right: 2 } })).toEqual({ text: '=1+C5*2', caret: 5, extent: { start: 3, end: 5 } })
    expect(put({ whole: 'columns' }).text).toBe('=1+C:D*2')
    expect(put({ whole: 'rows', sheet: 'Vertical drum' }).text).toBe("=1+'Vertical drum'!5:6*2")
  })
})

describe('cycling', () => {
  it('goes through the four kinds of reference and back', () => {
    const seen: string[] = []
    let typed = at('=c5|*2')
    for (let time = 0; time < 4; time++) {
      typed = cycleReference(typed) ?? typed
      seen.push(typed.text)
    }
    expect(seen).toEqual(['=$c$5*2', '=c$5*2', '=$c5*2', '=c5*2'])
  })

  it('takes the reference that the caret touches, and both ends of a range', () => {
    expect(cycleReference(at('=A1+|C5:D6'))).toEqual({ text: '=A1+$C$5:$D$6', caret: 13 })
    expect(cycleReference(at("=1+'My sheet'!A:C|"))?.text).toBe("=1+'My sheet'!$A:$C")
    expect([cycleReference(at('=1+|2')), cycleReference(at('C5|'))]).toEqual([undefined, undefined])
  })
})

describe('the hint', () => {
  it('gives words and range of the argument at hand, from the definition', () => {
    const part = hintAt('=SAT.PRESSURE(', 14)?.parts.find(({ current }) => current)
    expect(part?.accepts).toMatch(/temperature -77\.6 °C = -107\.68 °F to 100 °C = 212 °F/)
    expect(part?.words).toMatch(/temperature/)
  })

  it('lists the rows of a block', () => {
    const name = '=CIRCULATION.NUMBER('
    expect(hintAt(name, name.length)?.parts.find(({ current }) => current)?.rows.map((row) => row.name).slice(0, 2)).toEqual(['load', 'drum temperature'])
  })

  it('knows standard functions, whose last argument may repeat', () => {
    const current = (formula: string) => hintAt(formula, formula.length)?.parts.find((part) => part.current)?.label
    expect([current('=ROUND(C5,'), current('=SUM(C5,C6,C7,'), current('=SAT.PRESSURE(ROUND(C5,')]).toEqual(['digits', 'more', 'digits'])
  })
})

describe('the standard functions of the hint', () => {
  it('are all known to the calculation', () => {
    const graph = new Graph(emptyWorkbook())
    const unknown = standardSignatures.filter(({ name }) => JSON.stringify(graph.evaluate(`=${name}()`, 'Sheet')).includes('#NAME?'))
    expect(JSON.stringify(graph.evaluate('=NO.SUCH()', 'Sheet'))).toContain('#NAME?')
    expect(unknown).toEqual([])
  })
})

describe('what cannot be read', () => {
  it('is said with its place', () => {
    const cases: readonly (readonly [string, string, number])[] = [
      ['=1+*2', 'a value is missing between + and *', 3],
      ['=C5 D6', 'an operator is missing between C5 and D6', 4],
      ['=(1+2))', 'a closing bracket without its opening one', 6],
      ['=1,2', '"," stands outside of a function: it separates arguments', 2],
      ['=SUM(1,+)', 'a value is missing between + and )', 8],
      ['=1 § 2', '"§" has no meaning in a formula', 3],
      ['=*2', 'a value is missing before *', 1],
    ]
    for (const [formula, words, start] of cases) expect(unreadableAt(formula)).toMatchObject({ words, start, unfinished: false })
  })

  it('is unfinished where only something at the end is missing', () => {
    for (const formula of ['=', '=1+', '=SUM(1', '=SUM(', '="abc', "='Vertical dr"]) expect([formula, unreadableAt(formula)?.unfinished]).toEqual([formula, true])
    expect(unreadableAt('=SUM(1,(2')?.words).toBe('the closing ) of ( is missing')
  })

  it('is nothing in what other programs write too', () => {
    for (const formula of ['=1E-5*TRUE', '="3/4"" NPS"', '=IF(A1,,2)', '=SUM({1,2;3,4})', '=-+5%', '=A1:B2', '=SUM(A:A,2:2)', "='My sheet'!$A$1^2", '=#REF!+1', '=PI()', '=a1<>"x"&\n"y"', '=SUM(1;2)', '=A1:INDEX(A:A,3)']) {
      expect([formula, unreadableAt(formula)]).toEqual([formula, undefined])
    }
  })
})
