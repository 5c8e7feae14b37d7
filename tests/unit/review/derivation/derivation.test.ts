import { describe, expect, it } from 'vitest'
import { derivationText } from '../../../../src/review/derivation/derivation-text.ts'
import { shownEqualities } from '../../../../src/review/derivation/shown-lines.ts'
import { readTemplate } from '../../../templates/open-template.ts'
import { at, workbookOf } from '../../workbook-of.ts'
import { DRUM_BOOK } from './drum-book.ts'
import { deriveCell, deriveIn, stepAt } from './survey-of.ts'

describe('the derivation of a drum’s diameter', () => {
  const derivation = deriveIn(DRUM_BOOK, 'Duty!C13')

  it('reads from the inputs to the check: every step with its number, its words and its values', () => {
    const lines = derivationText(derivation)
    const end = lines.indexOf('Functions')
    // 0.059577 m3/s, 0.84661 m/s and 11.78 in are those of the domain notes, section 2.5, for this case.
    expect(lines.slice(0, end).join('\n')).toBe(`Test: derivation of Diameter suffices (Duty!C13)

Given
[1] Basis!C5  Liquid fed: 95 °F
      Source: High side
      passed on at Duty!C7 (95 °F)
[2] Basis!C6  Separation factor K: 0.0549 m/s (common practice, to be confirmed)
      Source: Common practice, no published source
[3] Duty!C5  Load: 50 TR
[4] Duty!C6  Drum temperature: 20 °F
[5] Duty!C12  Diameter chosen: 12 in

Steps
— Duty —
[6] Duty!C9  Vapour flow: 0.059577 m3/s
      = volume flow of saturated vapour leaving the drum for load (Load [3]), drum (Drum temperature [4]), liquid (Liquid fed [1])
      = volume flow of saturated vapour leaving the drum for load 50 TR, drum 20 °F, liquid 95 °F
      = 0.059577 m3/s
      SUCTION.FLOW: V = Q / (hg,drum − hf,liquid) / ρV,drum
      Method: Flash gas counted
      =SUCTION.FLOW(C5:D5,C6:D6,C7:D7,D9)
[7] Duty!C10  Velocity allowed: 0.84661 m/s
      = SEPARATION.VELOCITY(K (Separation factor K [2]), temperature (Drum temperature [4]))
      = SEPARATION.VELOCITY(K 0.0549 m/s, temperature 20 °F)
      = 0.84661 m/s
      SEPARATION.VELOCITY: v = K √((ρL − ρV) / ρV), ρL and ρV at saturation
      =SEPARATION.VELOCITY(Basis!C6:D6,C6:D6,D10)
[8] Duty!C11  Least diameter: 11.785 in
      = least inside diameter of a vertical drum for vapour flow (Vapour flow [6]), velocity (Velocity allowed [7])
      = least inside diameter of a vertical drum for vapour flow 0.059577 m3/s, velocity 0.84661 m/s
      = 11.785 in
      DRUM.DIAMETER: D = √(4 V / (π v))
      =DRUM.DIAMETER(C9:D9,C10:D10,D11)
[9] Duty!C13  Diameter suffices – result: met, 0.215 in (1.8 %) to spare
      = Diameter chosen [5] ≥ Least diameter [8]
      = 12 in ≥ 11.785 in
      = met, 0.215 in (1.8 %) to spare
      =C12>=UNIT.CONVERT(C11:D11,D12)
`)
  })

  it('gives each function once, with its words, what it accepts, its sources with confidence, and its cautions', () => {
    const lines = derivationText(derivation)
    const functions = lines.slice(lines.indexOf('Functions') + 1)
    expect(functions.filter((line) => /^[A-Z]/.test(line))).toEqual([
      'SUCTION.FLOW: the volume flow of saturated vapour leaving the drum', 'SEPARATION.VELOCITY: the vapour velocity that a separation factor K allows in saturated ammonia', 'DRUM.DIAMETER: the least inside diameter of a vertical drum',
    ])
    expect(functions.join('\n')).toContain('Source: Souders and Brown, Industrial and Engineering Chemistry 26, 98 (1934) [confirmed]')
    expect(functions.join('\n')).toMatch(/velocity: velocity allowed for the rising vapour; accepted: a velocity more than 0 m\/s/)
    expect(functions.join('\n')).toContain('Caution: A least value: the next size made')
  })

  it('has the numbers of the domain notes, section 2.5, to a tenth of a per cent', () => {
    const number = (address: string): number => Number.parseFloat(stepAt(derivation, `Duty!${address}`).value)
    for (const [address, expected] of [['C9', 0.059577], ['C10', 0.84661], ['C11', 11.78]] as const) expect(Math.abs(number(address) / expected - 1), address).toBeLessThan(1e-3)
  })
})

describe('the derivation of a template’s drum', () => {
  it('follows the drum looked up, and only it, down to its typed inputs', () => {
    const derivation = deriveIn(readTemplate('templates/vessel-sizing.lowside.json'), 'Duty!C43')
    expect(derivation.steps.filter(({ kind }) => kind === 'given').map(({ place: { sheet, row, column }, value }) => [sheet, row, column, value])).toEqual([
      ['Basis', ...rowAndColumn('C8'), '95 °F'], ['Basis', ...rowAndColumn('C9'), '10 %'],
      ['Drums', ...rowAndColumn('B7'), 'Drum 1'], ['Drums', ...rowAndColumn('F7'), '50 TR'], ['Drums', ...rowAndColumn('G7'), '20 °F'], ['Duty', ...rowAndColumn('C6'), 'Drum 1'],
    ])
    const load = stepAt(derivation, 'Duty!C12')
    expect(load.formula).toMatchObject({ words: 'Drum 1: Load [5]', wheres: [{ what: 'row 1 of Drums!F7:F15 is Drums!F7' }] })
    expect(shownEqualities(stepAt(derivation, 'Duty!C41'))).toEqual(['50 TR × (1 + 0.1)', '55 TR'])
    // m = 0.161563 kg/s for 50 TR, 20 °F and liquid of 95 °F (domain notes, section 2.5); here with the margin of 10 %.
    const kgPerS = (Number.parseFloat(stepAt(derivation, 'Duty!C43').value) * 0.45359237) / 60
    expect(Math.abs(kgPerS / (0.161563 * 1.1) - 1)).toBeLessThan(1e-3)
    // The other drums are told of all the same.
    expect(derivation.noPart).toContainEqual({ sheet: 'Drums', area: { top: 7, left: 5, bottom: 14, right: 6 } })
  })
})

const rowAndColumn = (address: string): readonly [number, number] => [at(address).row, at(address).column]

describe('a step', () => {
  it('takes one branch, says why, and tells of the other as without part', () => {
    const derivation = deriveCell({ A1: ['Position', 'label'], B1: 'vertical', A2: ['Depth', 'label'], B2: 3, A3: ['Length', 'label'], B3: 4, A4: ['Taken', 'label'], B4: '=IF(B1="horizontal",B2,B3*2)' }, 'B4')
    const step = stepAt(derivation, 'S!B4')
    expect(step.formula).toMatchObject({ words: 'Length [2] × 2', equalities: ['4 × 2'], reasons: ['since Position [1] is “vertical”, not “horizontal”'] })
    expect(derivation.noPart).toEqual([{ sheet: 'S', area: { top: 1, left: 1, bottom: 1, right: 1 } }])
  })

  it('says what an IFERROR has caught', () => {
    const step = stepAt(deriveCell({ A1: 0, A2: '=IFERROR(1/A1,7)' }, 'A2'), 'S!A2')
    expect(step.formula?.reasons).toEqual(['since 1 / A1 [1] is an error, #DIV/0!'])
    expect(shownEqualities(step)).toEqual(['7'])
  })

  it('does not count links and conversions as steps: it says where the value is passed on and what it is there', () => {
    const derivation = deriveIn(workbookOf({
      Basis: { B1: ['Load', 'label'], C1: 100, D1: ['kW', 'unit'] },
      Duty: { B1: ['Load', 'label'], C1: '=UNIT.CONVERT(Basis!C1:D1,D1)', D1: ['TR', 'unit'], B2: ['Twice', 'label'], C2: '=C1*2', D2: ['TR', 'unit'] },
    }), 'Duty!C2')
    expect(derivation.steps).toHaveLength(2)
    expect(derivation.steps[0]).toMatchObject({ label: 'Load', value: '100 kW', passedOn: [{ place: { sheet: 'Duty', row: 0, column: 2 }, value: '28.435 TR' }] })
    expect(derivation.steps[1]?.formula).toMatchObject({ words: 'Load [1] × 2', equalities: ['28.435 TR × 2'], wheres: [{ what: '100 kW', comes: '28.435 TR' }] })
  })

  it('tells an error with its message, and what cannot be read as it stands', () => {
    const derivation = deriveCell({ A1: 2, B1: ['°F', 'unit'], A2: '=SAT.PRESSURE(A1,"psia")', A3: '=A2*2', A4: '=A3+)' }, 'A3')
    expect(stepAt(derivation, 'S!A2').error).toMatch(/temperature needs a unit/)
    expect(stepAt(derivation, 'S!A3').value).toBe('#VALUE!')
    expect(stepAt(deriveCell({ A1: '=1+)' }, 'A1'), 'S!A1').formula).toMatchObject({ raw: '=1+)', words: '' })
  })

  it('does not hang on circles and sheets that are gone', () => {
    const circle = deriveCell({ A1: '=A2+1', A2: '=A3*2', A3: '=A1-1' }, 'A1')
    expect(circle.steps.map(({ value }) => value)).toEqual(['#CYCLE!', '#CYCLE!', '#CYCLE!'])
    expect(circle.steps.some((step) => step.circular)).toBe(true)
    const gone = stepAt(deriveCell({ A1: '=Nowhere!B2*2' }, 'A1'), 'S!A1')
    expect(gone.formula).toMatchObject({ words: 'Nowhere!B2 × 2', wheres: [{ what: 'there is no sheet “Nowhere”' }] })
  })

  it('has note, tolerance, and what the base holds where a case has a value of its own', () => {
    const book = workbookOf({ S: { A1: ['Load', 'label'], B1: 60, C1: ['TR', 'unit'], A2: ['Twice', 'label'], B2: '=B1*2' } })
    const [sheet] = book.sheets
    if (sheet === undefined) throw new Error('a sheet is there')
    const rows = sheet.rows.map((row, index) => (index > 0 ? row : row?.map((cell, column) => (column === 1 && cell ? { ...cell, note: 'Of 2026' } : cell))))
    const place = { sheet: 'S', row: 0, column: 1 }
    const derivation = deriveIn({
      ...book, sheets: [{ ...sheet, rows }], tolerances: [{ place, tolerance: { kind: 'share', share: 0.05 } }],
      cases: { list: [{ name: 'Summer', aside: [{ ...place, content: 50 }] }], current: 0, compared: [] },
    }, 'S!B2')
    expect(derivation.caseWords).toBe('Summer, not the base: 1 input differs')
    expect(derivationText(derivation)).toEqual(expect.arrayContaining(['[1] \'S\'!B1  Load: 60 TR (± 5 %; base: 50 TR)', '      Note: Of 2026']))
  })
})

describe('ranges and tables', () => {
  const rows = Array.from({ length: 60 }, (_, index) => index + 3)
  const table = (filled: (row: number) => boolean) => Object.fromEntries([
    ['A1', ['Vessel', 'heading']], ['B1', ['Volume', 'heading']], ['C1', ['Charge', 'heading']], ['B2', ['ft3', 'unit']], ['C2', ['lb', 'unit']],
    ...rows.flatMap((row) => [[`A${row}`, `V${row}`], ...(filled(row) ? [[`B${row}`, row], [`C${row}`, `=B${row}*E$1`]] : [])]),
    ['D1', ['Density', 'label']], ['E1', 40], ['G1', ['Total', 'label']], ['H1', '=SUM(C3:C62)'], ['I1', ['lb', 'unit']],
  ]) as Parameters<typeof deriveCell>[0]

  it('are told in a line, with how much of them holds something, and formula and values of the first', () => {
    const derivation = deriveCell(table((row) => row % 3 !== 0), 'H1')
    const charge = stepAt(derivation, 'S!C4')
    expect(charge).toMatchObject({ kind: 'range', label: 'Charge', count: 60, value: '60 cells, of which 40 hold something, 160 to 2480 lb, sum 52800 lb' })
    expect(charge.formula).toMatchObject({ words: 'V4: Volume [2] × Density [1]', equalities: ['4 ft3 × 40'] })
    expect(stepAt(derivation, 'S!B4')).toMatchObject({ kind: 'range', value: '59 cells, of which 40 hold something, 4 to 62 ft3, sum 1320 ft3' })
    expect(stepAt(derivation, 'S!H1').formula?.words).toBe("sum of (Charge ('S'!C3:C62) [3])")
    expect(shownEqualities(stepAt(derivation, 'S!H1'))).toEqual(['52800 lb'])
    expect(derivation.steps).toHaveLength(4)
    expect(derivationText(derivation).join('\n')).not.toContain('V5: Charge')
  })

  it('are unfolded where that is asked for', () => {
    const lines = derivationText(deriveCell(table(() => true), 'H1'), { unfold: true })
    expect(lines).toContain("        'S'!C5  V5: Charge: 200 lb")
  })

  it('rows alike that are referred to one by one are one step with its rows', () => {
    const derivation = deriveCell({ A1: 1, A2: 2, A3: 3, B1: '=A1*2', B2: '=A2*2', B3: '=A3*2', C1: '=B1+B2+B3' }, 'C1')
    expect(stepAt(derivation, 'S!B2')).toMatchObject({ kind: 'rows', count: 3, rows: [{ line: '1 × 2', value: '2' }, { line: '2 × 2', value: '4' }, { line: '3 × 2', value: '6' }] })
    expect(stepAt(derivation, 'S!C1').formula?.words).toBe('B1 [4] + B2 [4] + B3 [4]')
  })

  it('rows of which one is computed from another by way of a third stay apart, so that each step comes after what it uses', () => {
    const derivation = deriveCell({ A1: 1, B1: '=A1*2', B2: '=A2*2', B3: '=A3*2', A2: '=B1+1', A3: '=B2+1', C1: '=B3' }, 'B3')
    for (const { number, uses } of derivation.steps) for (const used of uses) expect(used).toBeLessThan(number)
  })

  it('a running total of ten thousand rows is told without end of patience', () => {
    const cells = Object.fromEntries([['A1', 1], ...Array.from({ length: 10_000 }, (_, index) => [`A${index + 2}`, `=A${index + 1}+1`])]) as Parameters<typeof deriveCell>[0]
    const derivation = deriveCell(cells, 'A10001')
    expect(derivation.steps.at(-1)?.value).toBe('10001')
    expect(derivation.cut).toBeGreaterThan(0)
    expect(derivation.noPart).toEqual([{ sheet: 'S', area: { top: 0, left: 0, bottom: 7000, right: 0 } }])
  })
})
