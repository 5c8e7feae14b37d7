import type { Workbook } from '../../../src/workbook/document.ts'
import { bookOf, page, type Typed } from './page.ts'

const ZONES: readonly (readonly [string, number, number])[] = [
  ['Ante room', 40, 12], ['Cooler A', 34, 10], ['Cooler B', 36, 10], ['Dock', 42, 12], ['Cut room', 46, 12], ['Egg store', 38, 9],
]

/** Set points of regulators, a row a zone, at a site of 3 500 ft (atmosphere 12.91 psia by ISO 2533). */
export const regulatorsByHand: Workbook = bookOf('Regulators by hand', page('Regulators', {
  B1: ['Set points of the regulators', 'title'],
  B3: ['Atmosphere of the site', 'label'], C3: 12.91, D3: ['psia', 'unit'], E3: ['ISO 2533 at 3 500 ft', 'text'],
  B4: ['Loss from coil to regulator', 'label'], C4: 0.4, D4: ['psi', 'unit'], E4: ['Line list', 'text'],
  B6: ['Zone', 'heading'], C6: ['Room', 'heading'], D6: ['TD', 'heading'], E6: ['Coil', 'heading'], F6: ['Pressure in the coil', 'heading'],
  G6: ['Pressure at the regulator', 'heading'], H6: ['Set point', 'heading'], I6: ['Source', 'heading'],
  C7: ['°F', 'unit'], D7: ['Δ°F', 'unit'], E7: ['°F', 'unit'], F7: ['psia', 'unit'], G7: ['psia', 'unit'], H7: ['psig', 'unit'],
  ...Object.assign({}, ...ZONES.map(([name, room, difference], index): Record<string, Typed> => {
    const row = 8 + index
    return {
      [`B${row}`]: [name, 'label'], [`C${row}`]: room, [`D${row}`]: difference, [`E${row}`]: `=C${row}-D${row}`, [`F${row}`]: `=SAT.PRESSURE(E${row}&E$7,F$7)`,
      [`G${row}`]: `=F${row}-$C$4`, [`H${row}`]: `=G${row}-$C$3`, [`I${row}`]: ['Room data sheet', 'text'],
    }
  })),
  B15: ['Lowest set point', 'label'], C15: '=MIN(H8:H13)', D15: ['psig', 'unit'],
  B16: ['House suction', 'label'], C16: 30, D16: ['psig', 'unit'], E16: ['Engine room log', 'text'],
  B17: ['Drop that a regulator needs', 'label'], C17: 2, D17: ['psi', 'unit'], E17: ['Valve maker', 'text'],
  B18: ['House suction serves all zones', 'label'], C18: ['=C15-C16>=C17', 'check'],
}))
