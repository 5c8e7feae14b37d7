import fc from 'fast-check'
import { expect } from 'vitest'
import type { Given } from '../../functions/given.ts'
import type { FunctionDefinition } from '../../functions/define.ts'
import { isFault } from '../../functions/fault.ts'
import { unitCodes, units } from '../../functions/units/units.ts'

/** A finite number, a text, or a fault that says something. */
export function expectSound(result: number | string | object): void {
  if (isFault(result)) expect(result.message).not.toBe('')
  else if (typeof result === 'string') expect(result).not.toBe('')
  else expect(result).toSatisfy(Number.isFinite)
}

const anyUnit = fc.constantFrom(...units.map(({ code }) => code), 'furlong', '')
const anyNumber = fc.oneof(fc.double(), fc.constantFrom(0, -0, 5e-324, 1e308, -1e308), fc.double({ min: -500, max: 500, noNaN: true }))
const anyText = fc.oneof(fc.tuple(anyNumber, anyUnit).map(([value, unit]) => `${value} ${unit}`), anyUnit, fc.string())
const anyScalar = fc.oneof(anyNumber, anyText, fc.boolean(), fc.constant(null))
const anyRange = fc.oneof(
  fc.tuple(anyNumber, anyUnit).map((row) => ({ rows: [row] })),
  fc.array(fc.array(anyScalar, { maxLength: 3 }), { maxLength: 3 }).map((rows) => ({ rows })),
)
const anything: fc.Arbitrary<Given> = fc.oneof(anyScalar, anyRange, fc.constant(undefined))

/** Arguments of every kind, whatever the function. */
export const garbage: fc.Arbitrary<Given[]> = fc.array(anything, { maxLength: 9 })

// Garbage seldom passes the door: here each argument is of a kind it accepts, and only the numbers are wild.
const magnitude = fc.oneof(
  fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }), fc.double({ min: 1e-7, max: 400, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(0, 5e-324),
)

/** Arguments of the function's own dimensions and choices with numbers of any size; optional ones given or left out from the end. */
export function wildButFitting(definition: FunctionDefinition): fc.Arbitrary<Given[]> {
  const all = Object.values(definition.arguments)
  const required = all.filter(({ optional }) => !optional).length
  const given = all.map(({ kind, dimensions, choices }): fc.Arbitrary<Given> => {
    if (choices.length > 0) return fc.constantFrom(...choices)
    if (kind === 'number') return magnitude
    const codes = dimensions.flatMap(unitCodes)
    const unit = fc.constantFrom(...codes)
    return kind === 'unit' ? unit : fc.tuple(magnitude, unit).map(([value, code]) => `${value} ${code}`)
  })
  return fc.tuple(fc.tuple(...given), fc.integer({ min: required, max: all.length })).map(([values, count]) => values.slice(0, count))
}
