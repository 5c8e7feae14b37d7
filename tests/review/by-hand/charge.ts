import type { Workbook } from '../../../src/workbook/document.ts'
import { bookOf, page, type Typed } from './page.ts'

const VESSELS: readonly (readonly [tag: string, level: string, volumeFt3: number, fillPercent: number])[] = [
  ['Drum 1', 'High', 36, 30], ['Drum 2', 'High', 36, 30], ['Drum 3', 'High', 22, 30], ['Drum 4', 'Low', 39, 25], ['Drum 5', 'Low', 57, 25],
  ['Accumulator', 'Low', 88, 5], ['Intercooler', 'High', 64, 40], ['Receiver', 'HP', 151, 60],
]

/** The charge of vessels by volume, fill and density of the liquid, which a small table beside gives by level; against the OSHA threshold. */
export const chargeByHand: Workbook = bookOf('Charge by hand', page('Charge', {
  B1: ['Ammonia in the vessels', 'title'],
  J4: ['Level', 'heading'], K4: ['Liquid', 'heading'], L4: ['Source', 'heading'], K5: ['lb/ft3', 'unit'],
  J6: ['High', 'label'], K6: 40.43, L6: ['Ammonia table at 20 °F', 'text'],
  J7: ['Low', 'label'], K7: 43.06, L7: ['Ammonia table at −40 °F', 'text'],
  J8: ['HP', 'label'], K8: 36.92, L8: ['Ammonia table at 91 °F', 'text'],
  B4: ['Vessel', 'heading'], C4: ['Level', 'heading'], D4: ['Volume', 'heading'], E4: ['Filled', 'heading'], F4: ['Liquid', 'heading'], G4: ['Charge', 'heading'], H4: ['Source', 'heading'],
  D5: ['ft3', 'unit'], E5: ['%', 'unit'], F5: ['lb/ft3', 'unit'], G5: ['lb', 'unit'],
  ...Object.assign({}, ...VESSELS.map(([tag, level, volume, fill], index): Record<string, Typed> => {
    const row = 6 + index
    return {
      [`B${row}`]: [tag, 'label'], [`C${row}`]: [level, 'input'], [`D${row}`]: volume, [`E${row}`]: fill, [`F${row}`]: `=INDEX($K$6:$K$8,MATCH(C${row},$J$6:$J$8,0))`,
      [`G${row}`]: `=D${row}*E${row}/100*F${row}`, [`H${row}`]: ['Vessel data sheet; fill by the operator', 'text'],
    }
  })),
  B14: ['Sum', 'label'], G14: '=SUM(G6:G13)',
  B16: ['Charge of the vessels', 'label'], C16: '=G14', D16: ['lb', 'unit'],
  B17: ['Threshold of process safety management', 'label'], C17: 10000, D17: ['lb', 'unit'], E17: ['29 CFR 1910.119, appendix A: at or above', 'text'],
  B18: ['Below the threshold', 'label'], C18: ['=C16<C17', 'check'],
  B19: ['The same for the client abroad', 'label'], C19: '=C16*0.45359237', D19: ['kg', 'unit'],
}))
