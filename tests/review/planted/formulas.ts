import { chargeAsTyped } from '../by-hand/charge-as-typed.ts'
import { chargeByHand } from '../by-hand/charge.ts'
import { drumByHand } from '../by-hand/drum.ts'
import { regulatorsByHand } from '../by-hand/regulators.ts'
import { staticHeadByHand } from '../by-hand/static-head.ts'
import { suctionLineByHand } from '../by-hand/suction-line.ts'
import { demo, filled, template, typed, type Plant } from './plant.ts'

/** Formulas that take the wrong cells, or are no formulas any more. */
export const FORMULA_PLANTS: readonly Plant[] = [
  {
    fault: 'A formula overwritten with a number',
    matters: 'The vapour of drum 4 stays what it was when its load goes up, and its velocity is passed at any load.',
    base: template('vessel-sizing'), plant: typed({ 'Drums!Q10': '148' }), leads: ['Drums!Q10'], before: true,
  },
  {
    fault: 'Loads pasted as values from an earlier zone list',
    matters: 'The accumulators are sized for the loads of last winter, whatever the zones say now.',
    base: demo,
    plant: typed(Object.fromEntries(['38', '38', '32', '58', '54', '48', '42', '50'].map((load, index) => [`Accumulators!D${60 + index}`, load]))),
    leads: ['Accumulators!D60:D67'], before: true,
  },
  {
    fault: 'The wrong row of a lookup: an approximate match over names in no order',
    matters: 'Every vessel takes the density of the warm receiver: the charge comes out 5 % too low, with nothing to show for it.',
    base: chargeByHand, plant: typed(filled('Charge', 'F', [6, 13], '=INDEX($K$6:$K$8,MATCH(C{},$J$6:$J$8))')), leads: ['Charge!F6:F13'], before: true,
  },
  {
    fault: 'A lookup that ends one row short of its table',
    matters: 'At the warmest drum of the table the pressure of the row above is taken, 71 kPa too low.',
    base: staticHeadByHand, plant: typed({ 'Head!C9': '=INDEX(H6:H9,MATCH(C8,G6:G9,1))' }), leads: ['Head!C9', 'Head!G10:H10'], before: false,
  },
  {
    fault: 'Gauge pressures without the altitude of the site',
    matters: 'At 2 900 ft the house suction reads 1.5 psi too low at the gauge, and the compressors are set by it.',
    base: demo, plant: typed({ 'Accumulators!C23': '=SAT.PRESSURE(C22:D22,D23)', 'Accumulators!E23': '=SAT.PRESSURE(E22:F22,F23)' }),
    leads: ['Accumulators!C23', 'Accumulators!E23'], before: true,
  },
  {
    fault: 'A sum that leaves out the last part',
    matters: 'The receiver with a third of the charge is not counted, and the plant seems far below its threshold.',
    base: chargeAsTyped, plant: typed({ 'Charge!B12': '=B7+SUM(B8:B9)' }), leads: ['Charge!B12', 'Charge!B10'], before: false,
  },
  {
    fault: 'Drums counted twice: a subtotal inside the sum',
    matters: 'The charge is a tonne too high: the plant takes on duties and training that it does not need.',
    base: chargeAsTyped, plant: typed({ 'Charge!B12': '=SUM(B3:B10)' }), leads: ['Charge!B12', 'Charge!B7'], before: true,
  },
  {
    fault: 'A $ missing in a filled column',
    matters: 'Only the first zone is read at the atmosphere of the site; the others take the number below it, or nothing: their regulators are set wrong.',
    base: regulatorsByHand, plant: typed(Object.fromEntries([8, 9, 10, 11, 12, 13].map((row) => [`Regulators!H${row}`, `=G${row}-C${row - 5}`]))),
    leads: ['Regulators!H8:H13'], before: false,
  },
  {
    fault: 'A zone’s row reads its neighbour’s drum',
    matters: 'The feed valve of the brine room is sized for the vat hall’s temperature; the error stays when either changes.',
    base: demo, plant: typed({ 'Feed!D28': '=UNIT.CONVERT(Zones!$J11&Zones!$J$7,D$25)' }), leads: ['Feed!D28'], before: true,
  },
  {
    fault: 'A formula that runs in a circle',
    matters: 'The density at the mean pressure waits for the loss that waits for the density: the line has no result.',
    base: suctionLineByHand, plant: typed({ 'Dry suction!C7': '=0.1693*(C14+C15)/2/C14' }), leads: ['Dry suction!C7', 'Dry suction!C13', 'Dry suction!C15'], before: false,
  },
  {
    fault: 'The smallest surge taken where the largest counts',
    matters: 'The low accumulator is held to hold nothing at all: liquid of the largest drum goes on to the compressors.',
    base: demo, plant: typed({ 'Accumulators!E47': '=UNIT.CONVERT(SUMPRODUCT(MIN(($C$60:$C$67=E7)*$F$60:$F$67))&$F$59,F47)*UNIT.CONVERT(thrown_back_share,"-")' }),
    leads: ['Accumulators!E47'], before: true,
  },
  {
    fault: 'The load without its margin: an input feeds nothing since the formula was changed',
    matters: 'The margin stands in the sheet and in the report, and the drum is sized without it.',
    base: drumByHand, plant: typed({ 'Drum!C9': '=C4*12000/(C7-C8)/60' }), leads: ['Drum!C9', 'Drum!C6', 'Drum!C5'], before: true,
  },
  {
    fault: 'Errors of a lookup turned into nought',
    matters: 'The level of a drum is misspelt, its charge is counted as nothing, and no error shows.',
    base: chargeByHand,
    plant: typed({ ...filled('Charge', 'F', [6, 13], '=IFERROR(INDEX($K$6:$K$8,MATCH(C{},$J$6:$J$8,0)),0)'), 'Charge!C10': 'Lwo' }),
    leads: ['Charge!F6:G13', 'Charge!C10'], before: true,
  },
]
