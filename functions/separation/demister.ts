import { quantity, site, unit } from '../arguments.ts'
import { define } from '../define.ts'
import { fromSi, toSi } from '../units/convert.ts'
import { findUnit } from '../units/units.ts'
import { ROUNDING } from '../rounding.ts'
import { num } from '../workings/expression.ts'

// Non-null: both stand in the table of units. The fit is in these.
const psia = findUnit('psia')!
const footPerSecond = findUnit('ft/s')!

const low = { below: 15 * (1 - ROUNDING), constant: 0.1821, linear: 0.0029, logarithmic: 0.046 }
const middle = { upTo: 40 * (1 + ROUNDING), constant: 0.35 }
const high = { constant: 0.43, logarithmic: 0.023 }

/** Separation factor K, m/s, of a vertical drum with a wire-mesh pad: York's fit, 1 to 5500 psia. */
export function demisterFactorAt(pressurePa: number): number {
  const pressure = fromSi(pressurePa, psia)
  if (pressure < low.below) return toSi(low.constant + low.linear * pressure + low.logarithmic * Math.log(pressure), footPerSecond)
  if (pressure <= middle.upTo) return toSi(middle.constant, footPerSecond)
  return toSi(high.constant - high.logarithmic * Math.log(pressure), footPerSecond)
}

export const demisterFactor = define({
  name: 'DEMISTER.FACTOR',
  group: 'Vapour–liquid separation',
  gives: 'the separation factor K of a vertical drum with a wire-mesh pad',
  use: 'For SEPARATION.VELOCITY where a mesh pad catches the fine droplets. Not for a drum that separates by gravity alone.',
  arguments: {
    pressure: quantity('pressure', 'pressure in the drum', {
      min: toSi(1, psia), max: toSi(5500, psia), limit: 'the range of York’s fit, Svrcek and Monnery 1993',
    }),
    unit: unit(['velocity']),
    site,
  },
  result: 'velocity',
  equation:
    'K in ft/s, p in psia: below 15, K = 0.1821 + 0.0029 p + 0.0460 ln p; from 15 to 40, both included, K = 0.35; above 40, K = 0.430 − 0.023 ln p',
  sources: [
    { cite: 'Svrcek and Monnery, Chemical Engineering Progress, October 1993, 53: fit to the wire-mesh data of Otto H. York Company', confidence: 'confirmed' },
  ],
  cautions: [
    'The fit steps down by 0.0002 ft/s at 15 psia and by 0.0048 ft/s at 40 psia; both pressures themselves belong to K = 0.35.',
    'The pad’s maker gives the K that holds for it. Oil, ice and welding debris block a pad; frost and surges flood it.',
  ],
  examples: [
    { formula: '=DEMISTER.FACTOR("10 psia","ft/s")', value: '0.31702' },
    { formula: '=DEMISTER.FACTOR("33.5 psig","ft/s")', value: '0.34087' },
  ],
  compute: ({ pressure }) => demisterFactorAt(pressure),
  workings: ({ pressure }, steps) => {
    const p = steps.step('pressure in psia', 'psia', `${pressure}/${num(psia.factor)}`)
    const atLow = `${num(low.constant)}+${num(low.linear)}*${p}+${num(low.logarithmic)}*LN(${p})`
    const atHigh = `${num(high.constant)}-${num(high.logarithmic)}*LN(${p})`
    return `IF(${p}<${num(low.below)},${atLow},IF(${p}<=${num(middle.upTo)},${num(middle.constant)},${atHigh}))*${num(footPerSecond.factor)}`
  },
})
