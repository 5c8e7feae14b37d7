import { chargeAsTyped } from '../by-hand/charge-as-typed.ts'
import { drumByHand } from '../by-hand/drum.ts'
import { suctionLineByHand } from '../by-hand/suction-line.ts'
import { demo, edited, filled, template, typed, type Plant } from './plant.ts'

/** Numbers in places where nobody sees them, numbers that are none, and numbers that a method was not made for. */
export const NUMBER_PLANTS: readonly Plant[] = [
  {
    fault: 'Latent heat typed into the formula in place of the difference of enthalpies',
    matters: 'Flash gas is left out: a drum for 95 °F liquid is taken as 15 % smaller than it must be.',
    base: drumByHand, plant: typed({ 'Drum!C9': '=C6*12000/553.1/60' }), leads: ['Drum!C9', 'Drum!C7:C8'], before: false,
  },
  {
    fault: 'A margin of 15 % buried in a column of formulas',
    matters: 'The load has its margin twice, once where it can be seen and once where it cannot: every drum is oversized, and nobody knows why.',
    base: demo, plant: typed(filled('Drums', 'O', [7, 14], '=UNIT.CONVERT(F{}&F$6,O$6)*(1+UNIT.CONVERT(load_margin,"-"))*1.15')), leads: ['Drums!O7:O14'], before: true,
  },
  {
    fault: 'The factor 4 of Fanning’s equation with Darcy’s friction factor',
    matters: 'The loss comes out four times too high; the other way round a suction line is two sizes too small.',
    base: suctionLineByHand, plant: typed({ 'Dry suction!C13': '=4*C12*C6/(C5/12)*C7*C10^2/(2*32.174)/144' }), leads: ['Dry suction!C13'], before: false,
  },
  {
    fault: 'A number stored as text in a list',
    matters: 'The sum passes over it: 185 kg are missing, and the charge seems below its threshold.',
    base: chargeAsTyped, plant: typed({ 'Charge!B5': "'185" }), leads: ['Charge!B5', 'Charge!B7'], before: false,
  },
  {
    fault: 'A height near the end of the method’s range: 90 ft for 9.0',
    matters: 'The drum comes out far too cold for its zone, by a decimal point that is missing.',
    base: template('zone-setpoints'), plant: typed({ 'Zones!G9': '90' }), leads: ['Zones!G9', 'Zones!J9', 'Zones!T9'], before: true,
  },
  {
    fault: 'A formula typed over in a column too narrow to be seen',
    matters: 'The relief capacity wanted of the largest drum is a number that somebody liked: its valve is undersized and passes.',
    base: demo,
    plant: edited((base) => {
      const relief = base.sheets.find(({ name }) => name === 'Relief')
      const columns = Array.from({ length: Math.max(10, relief?.columns.length ?? 0) }, (_, index) => (index === 9 ? 3 : relief?.columns[index] ?? 96))
      return [
        { kind: 'columnWidths', sheet: 'Relief', columns },
        { kind: 'cells', sheet: 'Relief', cells: [{ row: 13, column: 9, cell: { content: 9.5, role: 'result', digits: 3 } }] },
      ]
    }),
    leads: ['Relief!J14'], before: true,
  },
  {
    fault: 'A practice value changed without a source',
    matters: 'The velocity allowed goes up by a third: flow that pulses carries liquid over to the compressors.',
    base: demo, plant: typed({ 'Basis!C33': '100' }), leads: ['Basis!C33'], before: true,
  },
]
