import type { Workbook } from '../../../../src/workbook/document.ts'
import { workbookOf } from '../../workbook-of.ts'

/**
 * The least diameter of a vertical drum, for one of the cases of which the project's domain notes (section 2.5, computed with CoolProp 8.0.0 and the
 * equation of state of Gao et al. 2023) give the numbers: 50 TR, drum 20 °F, liquid 95 °F, K 0.0549 m/s.
 */
export const DRUM_BOOK: Workbook = workbookOf({
  Basis: {
    B4: ['Value', 'heading'], E4: ['Source', 'heading'],
    B5: ['Liquid fed', 'label'], C5: 95, D5: ['°F', 'unit'], E5: ['High side', 'text'],
    B6: ['Separation factor K', 'label'], C6: 0.0549, D6: ['m/s', 'unit'], E6: ['Common practice, no published source', 'text'],
  },
  Duty: {
    B4: ['What', 'heading'], C4: ['Value', 'heading'], E4: ['Method', 'heading'],
    B5: ['Load', 'label'], C5: 50, D5: ['TR', 'unit'],
    B6: ['Drum temperature', 'label'], C6: 20, D6: ['°F', 'unit'],
    B7: ['Liquid fed', 'label'], C7: '=UNIT.CONVERT(liquid,D7)', D7: ['°F', 'unit'],
    B9: ['Vapour flow', 'label'], C9: '=SUCTION.FLOW(C5:D5,C6:D6,C7:D7,D9)', D9: ['m3/s', 'unit'], E9: ['Flash gas counted', 'text'],
    B10: ['Velocity allowed', 'label'], C10: '=SEPARATION.VELOCITY(Basis!C6:D6,C6:D6,D10)', D10: ['m/s', 'unit'],
    B11: ['Least diameter', 'label'], C11: '=DRUM.DIAMETER(C9:D9,C10:D10,D11)', D11: ['in', 'unit'],
    B12: ['Diameter chosen', 'label'], C12: 12, D12: ['in', 'unit'],
    B13: ['Diameter suffices', 'label'], C13: ['=C12>=UNIT.CONVERT(C11:D11,D12)', 'check'],
  },
}, { liquid: 'Basis!$C$5:$D$5' })
