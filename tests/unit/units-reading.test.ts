import { describe, expect, it } from 'vitest'
import { formatForReading } from '../../functions/units/reading.ts'

// 1 TR = 12 000 Btu/h, 1 ft = 0.3048 m, 1 lbf/in² = 6894.757 Pa: NIST SP 811, B.8.
describe('a limit for someone who reads', () => {
  it.each([
    [100e6, 'power', false, '100000 kW = 28434.5 TR'], [2, 'length', false, '2 m = 6.56168 ft'], [0.006, 'length', false, '6 mm = 0.23622 in'], [373.15, 'temperature', false, '100 °C = 212 °F'],
    [6894.757, 'pressure', false, '6.89476 kPa = 1 psia'], [6894.757, 'pressure', true, '6.89476 kPa = 1 psi'],
  ] as const)('%s of %s stands in both systems, large or small as it is', (si, dimension, isDifference, words) => {
    expect(formatForReading(si, dimension, isDifference)).toBe(words)
  })

  it('is said once where it is nothing, or where there is one unit', () => {
    expect(formatForReading(0, 'velocity', false)).toBe('0 m/s')
    expect(formatForReading(0, 'length', false)).toBe('0 m')
    expect(formatForReading(60, 'time', false)).toBe('60 s')
    expect(formatForReading(0, 'temperature', false)).toBe('-273.15 °C = -459.67 °F')
  })
})
