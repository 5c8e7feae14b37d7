import { compressorByHand } from '../by-hand/compressor.ts'
import { drumByHand } from '../by-hand/drum.ts'
import { regulatorsByHand } from '../by-hand/regulators.ts'
import { reliefByHand } from '../by-hand/relief.ts'
import { staticHeadByHand } from '../by-hand/static-head.ts'
import { suctionLineByHand } from '../by-hand/suction-line.ts'
import { demo, filled, typed, type Plant } from './plant.ts'

/** Quantities of different units taken together, and units that say something else than the number. */
export const UNIT_PLANTS: readonly Plant[] = [
  {
    fault: 'High-level cut-out given in inches where the column is in per cent',
    matters: '24 in of a 30 in drum became 24 % of its height, below the control level: the compressors stop as soon as the drum fills to where it works.',
    base: demo, plant: typed({ 'Drums!M10': '24' }), leads: ['Drums!M10', 'Drums!M6', 'Drums!AV10', 'Drums!AU10', 'Drums!AD10'], before: true,
  },
  {
    fault: 'Set points in psia under a heading of psig',
    matters: 'Every regulator is set some 13 psi too high, and no zone reaches its temperature.',
    base: demo, plant: typed(filled('Zones', 'L', [8, 15], '=IF(AND(ISNUMBER(K{}),ISNUMBER(H{})),K{}-H{},"–")')), leads: ['Zones!L8:L15', 'Zones!L7'], before: true,
  },
  {
    fault: 'Feet added to inches',
    matters: 'The drum is taken as 14.5 in high instead of 86 in: it is ordered for a room that it does not fit into.',
    base: drumByHand, plant: typed({ 'Drum!C21': '=C19+2*C20' }), leads: ['Drum!C21'], before: false,
  },
  {
    fault: 'A flow per hour declared per minute: the factor 60 is missing',
    matters: 'The vapour flow is sixty times too high; turned round, with a factor too many, the drum would be far too small.',
    base: drumByHand, plant: typed({ 'Drum!C9': '=C6*12000/(C7-C8)' }), leads: ['Drum!C9'], before: false,
  },
  {
    fault: 'Pounds per square foot declared psi: the factor 144 is missing',
    matters: 'The loss looks 144 times as large as it is, and a line two sizes too wide is bought.',
    base: suctionLineByHand, plant: typed({ 'Dry suction!C13': '=C12*C6/(C5/12)*C7*C10^2/(2*32.174)' }), leads: ['Dry suction!C13'], before: false,
  },
  {
    fault: 'A temperature difference declared as a temperature',
    matters: 'Restated in SI, a difference of 10 °F becomes −12 °C, and coils come out above their rooms.',
    base: regulatorsByHand, plant: typed({ 'Regulators!D7': '°F' }), leads: ['Regulators!D7', 'Regulators!D8:D13', 'Regulators!E8:E13'], before: false,
  },
  {
    fault: '32 added to a temperature difference',
    matters: 'The client abroad is told of 46 °F of difference where there are 14, and leaves out a row of tubes.',
    base: staticHeadByHand, plant: typed({ 'Head!C18': '=C15*9/5+32' }), leads: ['Head!C18'], before: false,
  },
  {
    fault: 'Per cent taken as a share',
    matters: 'A margin of 10 % makes the load eleven times what it is.',
    base: drumByHand, plant: typed({ 'Drum!C6': '=C4*(1+C5)' }), leads: ['Drum!C6', 'Drum!C5'], before: false,
  },
  {
    fault: 'cfm compared with m³/h',
    matters: 'A compressor of 240 m³/h passes for 198 cfm, which is 336 m³/h: the plant does not hold its suction.',
    base: compressorByHand,
    plant: typed({ 'Compressor!C9': '=C7*C8*2118.88', 'Compressor!D9': 'cfm', 'Compressor!D11': 'cfm', 'Compressor!C12': '240' }), leads: ['Compressor!C13'], before: false,
  },
  {
    fault: 'Unit misspelt',
    matters: 'Nothing can check or convert the flow, and Restate leaves it as it is among converted numbers.',
    base: compressorByHand, plant: typed({ 'Compressor!D7': 'kg/sec' }), leads: ['Compressor!D7', 'Compressor!C7'], before: false,
  },
  {
    fault: 'An input without its unit',
    matters: 'Nobody can say whether the diameter is in inches or in feet; the capacity of the relief valve hangs on it.',
    base: reliefByHand, plant: typed({ 'Relief!D4': '' }), leads: ['Relief!C4', 'Relief!D4'], before: false,
  },
]
