import { factorWords, numberWords } from './constants.ts'
import { dimensionWords } from './dimension.ts'
import { say, type FaultKind, type Piece } from './fault.ts'
import type { Quantity } from './meaning.ts'
import type { Misfit } from './misfit.ts'
import { unitWords } from './unit-words.ts'

export const KIND_OF_MISFIT: Readonly<Record<Misfit['how'], FaultKind>> = {
  'dimension': 'result-unit', 'factor': 'result-unit', 'surplus': 'result-unit', 'inverted': 'result-unit', 'share': 'percent-as-share',
  'gauge': 'gauge-as-absolute', 'absolute': 'gauge-as-absolute', 'pressure difference': 'gauge-as-absolute', 'sum of gauges': 'gauge-as-absolute',
  'difference': 'difference-as-temperature', 'temperature': 'difference-as-temperature', 'zero': 'difference-as-temperature', 'sum of temperatures': 'difference-as-temperature', 'part of a temperature': 'difference-as-temperature',
}

/** What is wrong with a number in a unit, after "… is in psig, … in psia: ". */
export function misfitWords(misfit: Misfit, quantity: Quantity, unit: Quantity, unitText: string): readonly Piece[] {
  const own = unitWords(quantity)
  switch (misfit.how) {
    case 'dimension': {
      const [is, shown] = [dimensionWords(quantity.dimension), dimensionWords(unit.dimension)]
      return [`${is === undefined ? `${own} is` : `${is} is`} no number in ${unitText}${shown === undefined ? '' : `, ${shown}`}`]
    }
    case 'factor': return [missing(misfit.needed)]
    case 'surplus': return [`the factor ${factorWords(misfit.constant)} is one too many`]
    case 'inverted': return [`${factorWords(misfit.constant)} ${misfit.constant < 1 ? 'divides where it should multiply' : 'multiplies where it should divide'}`]
    case 'share': return [misfit.needed > 1 ? 'a factor 100 is missing' : 'it is 100 times too large']
    case 'gauge': return [`it counts from the atmosphere, a number in ${unitText} does not`]
    case 'absolute': return [`it does not count from the atmosphere, as a number in ${unitText} does`]
    case 'pressure difference': return [unit.zero.gauge === 0 ? `it is a difference of two pressures, which psi states, not a pressure in ${unitText}` : `it is a difference of two pressures, and does not count from the atmosphere as a number in ${unitText} does`]
    case 'sum of gauges': return ['it adds two pressures that both count from the atmosphere']
    case 'difference': return [`it is a difference of temperatures, not a temperature in ${unitText}`]
    case 'temperature': return [`it is a temperature, not a difference in ${unitText}`]
    case 'sum of temperatures': return say`it adds temperatures, of which one would have to be a difference`
    case 'part of a temperature': return ['it is a temperature times a number, and its degrees do not count from nothing']
    case 'zero': return ['the degrees count from different zeros: 0 °C is 32 °F, 273.15 K and 491.67 °R']
  }
}

const missing = (needed: number): string =>
  needed < 0 ? 'its sign is the other one' : needed > 1 ? `a factor ${factorWords(needed)} is missing` : `it is ${factorWords(needed, ' times too large')}`

/** Without addresses, for what is accepted. */
export const misfitKey = (misfit: Misfit, quantity: Quantity, unitText: string): string =>
  `${unitWords(quantity)} as ${unitText}${'needed' in misfit ? ` ${numberWords(misfit.needed)}` : 'constant' in misfit ? ` ${numberWords(misfit.constant)}` : ''}`
