import type { Figure } from '../../../src/workbook/figure.ts'
import type { Workbook } from '../../../src/workbook/document.ts'
import { workbookOf, type Put } from '../workbook-of.ts'

/** An invented plant, for the looks and the tests of every kind of figure. No number in it is taken from anywhere. */

type Cells = Record<string, Put>

const unit = (text: string): Put => [text, 'unit']

const pairs = (column: 'C', from: number, rows: readonly (readonly [name: string, value: Put, unit: string])[]): Cells =>
  Object.fromEntries(rows.flatMap(([name, value, of], index) => [[`B${from + index}`, name], [`${column}${from + index}`, value], [`D${from + index}`, unit(of)]]))

export const drumCells = (diameter: number, lengthFt: number, heads: string, level: number, levels: readonly (readonly [string, number])[]): Cells => ({
  ...pairs('C', 2, [['Inside diameter', diameter, 'in'], ['Tangent length', lengthFt, 'ft']]),
  B4: 'Heads', C4: heads,
  ...pairs('C', 5, [['Liquid', level, 'in']]),
  ...pairs('C', 10, levels.map(([name, value]) => [name, value, 'in'])),
  ...pairs('C', 20, [['Wet return', 4, 'in'], ['Dry suction', 6, 'in'], ['Liquid leg', 3, 'in']]),
  B23: 'Wet returns', C23: 1,
})

export const LEVELS = [['Low-level cut-out', 5.8], ['Low alarm', 8.6], ['Control level (operating float)', 14.4], ['High alarm (high float)', 23], ['High-level cut-out', 27.8]] as const

export const drumFigure = (sheet: string, position: 'horizontal' | 'vertical', title: string, sized = true): Figure => ({
  kind: 'drum', title, sheet, options: { position },
  bindings: {
    diameter: `${sheet}!C2:D2`, length: `${sheet}!C3:D3`, heads: `${sheet}!C4`, level: `${sheet}!C5:D5`,
    levels: `${sheet}!C10:D14`, levelNames: `${sheet}!B10:B14`, operatingFloat: `${sheet}!C12:D12`, highFloat: `${sheet}!C13:D13`,
    ...(sized ? { returnSize: `${sheet}!C20:D20`, suctionSize: `${sheet}!C21`, legSize: `${sheet}!C22`, returns: `${sheet}!C23` } : {}),
  },
})

export type ZoneRow = readonly [name: string, room: number, coil: number, drum: number]

export const ZONES: readonly ZoneRow[] = [
  ['Ripening room', 50, 40, 38.5], ['Brine room', 46, 36, 34.5], ['Packing', 42, 32, 30.4], ['Dock', 38, 28, 26.2], ['Cooler A', 34, 24, 22.1],
  ['Cooler B with a name that is far too long for any label on a drawing', 33, 23, 18.9], ['Chill tunnel', 30, 18, 16], ['Whey tank', 36, 27, 25],
]

/** Names, rooms, coils, drums, set points (psig) as columns with the units at the head; house suction and site beside them. */
export const zoneCells = (zones: readonly ZoneRow[], suction = 20): Cells => ({
  B2: ['Zone', 'heading'], C3: unit('°F'), D3: unit('°F'), E3: unit('°F'), F3: unit('psig'), H2: suction, I2: unit('°F'), H3: 13.2, I3: unit('psia'),
  ...Object.fromEntries(zones.flatMap(([name, room, coil, drum], index) => {
    const row = index + 4
    return [[`B${row}`, name], [`C${row}`, room], [`D${row}`, coil], [`E${row}`, drum], [`F${row}`, `=SAT.PRESSURE(E${row}&E$3,F$3,H$3:I$3)`]]
  })),
})

export const zoneFigures = (sheet: string, count: number): Figure[] => {
  const column = (letter: string) => `${sheet}!$${letter}$4:$${letter}$${count + 3}`
  const named = { names: column('B'), room: column('C') }
  return [
    { kind: 'zones', title: 'Zones from room to house suction', sheet, options: {}, bindings: { ...named, coil: column('D'), drum: column('E'), suction: `${sheet}!$H$2:$I$2`, pressures: column('F'), site: `${sheet}!$H$3:$I$3` } },
    { kind: 'setPoints', title: 'Regulator set points', sheet, options: {}, bindings: { ...named, setPoints: column('F'), suction: `${sheet}!$H$2`, site: `${sheet}!$H$3` } },
    { kind: 'saturation', title: 'Levels of the plant', sheet, options: {}, bindings: { names: column('B'), levels: column('E') } },
  ]
}

const LOOP = Array.from({ length: 12 }, (_, index) => index + 1)

export const loopCells: Cells = {
  C3: unit('-'), D3: unit('psi'), E3: unit('psi'), F3: unit('psi'),
  ...Object.fromEntries(LOOP.flatMap((n, index) => [[`C${index + 4}`, n], [`D${index + 4}`, 2.31], [`E${index + 4}`, 0.6 + 0.034 * n ** 1.8], [`F${index + 4}`, 0.9 + 0.012 * n ** 1.8]])),
}

export const loopFigure: Figure = {
  kind: 'circulation', title: 'Circulation of the coil loop', sheet: 'Loop', options: {},
  bindings: { number: 'Loop!C4:C15', driving: 'Loop!D4:D15', losses: 'Loop!E4:E15', partLosses: 'Loop!F4:F15' },
}

export const chargeCells = (rows: readonly (readonly [name: string, lb: number, most: number])[]): Cells => ({
  C3: unit('lb'), D3: unit('lb'),
  ...Object.fromEntries(rows.flatMap(([name, lb, most], index) => [[`B${index + 4}`, name], [`C${index + 4}`, lb], [`D${index + 4}`, most]])),
  ...Object.fromEntries([['OSHA PSM', 'at or above', 10000, 'lb'], ['EPA RMP', 'more than', 10000, 'lb'], ['EPCRA 312', 'at or above', 500, 'lb'], ['Seveso lower tier', 'equal or more', 50, 't']].flatMap(
    ([name, words, amount, of], index) => [[`G${index + 4}`, name], [`H${index + 4}`, words], [`I${index + 4}`, amount], [`J${index + 4}`, unit(String(of))]],
  )),
})

export const PARTS = [['Surge drums', 2140, 2890], ['Coils', 1830, 2510], ['Receiver', 3120, 4020], ['Liquid lines', 610, 610], ['Coils', 410, 520], ['Condenser', 240, 300]] as const

export const chargeFigure = (sheet: string, count: number): Figure => ({
  kind: 'charge', title: 'Charge by part', sheet, options: {},
  bindings: {
    names: `${sheet}!B4:B${count + 3}`, amounts: `${sheet}!C4:C${count + 3}`, maximums: `${sheet}!D4:D${count + 3}`,
    thresholds: `${sheet}!I4:J7`, thresholdNames: `${sheet}!G4:G7`, thresholdWords: `${sheet}!H4:H7`,
  },
})

export const bookOf = (sheets: Record<string, Cells>, figures: readonly Figure[]): Workbook => ({ ...workbookOf(sheets), figures })

