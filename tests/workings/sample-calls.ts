import fc from 'fast-check'
import type { Argument, BlockRow } from '../../functions/arguments.ts'
import type { Given } from '../../functions/given.ts'
import type { FunctionDefinition } from '../../functions/define.ts'
import { fromSi } from '../../functions/units/convert.ts'
import { units, type Dimension, type Unit } from '../../functions/units/units.ts'

/** SI values as plants have them, where an argument's own range does not say. */
export const USUAL: Readonly<Record<Dimension, readonly [number, number]>> = {
  'temperature': [200, 370], 'temperature difference': [0.1, 50], 'pressure': [1e3, 3e6], 'length': [0.01, 30], 'area': [1e-3, 50], 'volume': [1e-3, 100],
  'mass': [0.1, 1e4], 'mass flow': [1e-3, 10], 'volume flow': [1e-4, 2], 'velocity': [1e-2, 50], 'density': [0.1, 700], 'specific volume': [1e-3, 10],
  'energy per mass': [1e3, 2e6], 'power': [1e3, 5e6], 'viscosity': [1e-6, 1e-3], 'surface tension': [1e-3, 0.05], 'flow coefficient': [0.1, 500],
  'pressure per temperature difference': [100, 1e5], 'specific charge': [1e-4, 1e-2], 'heat flux': [1e3, 2e4], 'mass flux': [1, 500], 'time': [1, 1e4], 'share': [0, 1],
}

/** Bounds for single arguments where two of them have to fit each other, in SI: by function, then argument (or row of a block). */
export type Bounds = Readonly<Record<string, readonly [number, number]>>

const within = ([low, high]: readonly [number, number]): fc.Arbitrary<number> => {
  // Evenly spread, with both ends now and then.
  const part = fc.oneof({ arbitrary: fc.noBias(fc.integer({ min: 0, max: 2 ** 31 })).map((one) => one / 2 ** 31), weight: 30 }, { arbitrary: fc.constantFrom(0, 1), weight: 1 })
  return part.map((share) => (low > 0 && high / low > 30 ? low * (high / low) ** share : low + (high - low) * share))
}

function bounds({ range, dimensions }: Argument<unknown> | BlockRow, own: readonly [number, number] | undefined): readonly [number, number] {
  const [low, high] = USUAL[dimensions[0] ?? 'share']
  return own ?? [range.min ?? range.above ?? Math.min(low, range.max ?? low), range.max ?? range.below ?? Math.max(high, range.min ?? high)]
}

/** Units of a dimension; gauge ones where they make sense. */
const unitOf = (dimensions: readonly Dimension[], gauge: boolean): fc.Arbitrary<Unit> =>
  fc.constantFrom(...units.filter((unit) => (dimensions.length === 0 || dimensions.includes(unit.dimension)) && (gauge || !unit.gauge)))

const numberWithUnit = (argument: Argument<unknown> | BlockRow, own: readonly [number, number] | undefined): fc.Arbitrary<readonly [number, string]> => {
  const gauge = !('gaugeRefused' in argument && argument.gaugeRefused !== undefined)
  return unitOf(argument.dimensions, gauge).chain((unit) =>
    within(unit.dimension === argument.dimensions[0] ? bounds(argument, own) : USUAL[unit.dimension]).map((si) => [fromSi(si, unit), unit.code] as const))
}

function argumentValue(argument: Argument<unknown>, key: string, own: Bounds, texts: Readonly<Record<string, readonly string[]>>): fc.Arbitrary<Given> {
  if (argument.kind === 'choice') return fc.constantFrom(...argument.choices)
  if (argument.kind === 'text') return fc.constantFrom(...(texts[key] ?? []))
  if (argument.kind === 'unit') return unitOf(argument.dimensions, argument.gaugeRefused === undefined).map(({ code }) => code)
  if (argument.kind === 'block') {
    return fc.tuple(...argument.rows.map((row) => numberWithUnit(row, own[row.name]))).map((rows) => ({ rows }))
  }
  if (argument.kind === 'number') return fc.oneof(within(bounds(argument, own[key])), numberWithUnit(argument, own[key]).map((row) => ({ rows: [row] })))
  return numberWithUnit(argument, own[key]).map((row) => ({ rows: [row] }))
}

/** Random calls of a function: most within the ranges of its arguments, omitted optional arguments now and then. */
export function sampleCalls(definition: FunctionDefinition, count: number, own: Bounds = {}, texts: Readonly<Record<string, readonly string[]>> = {}): (readonly Given[])[] {
  const values = Object.entries(definition.arguments).map(([key, argument]) => {
    const value = argumentValue(argument, key, own, texts)
    return argument.optional ? fc.option(value, { nil: undefined, freq: 3 }) : value
  })
  return fc.sample(fc.tuple(...values).map((call) => sameDimension(definition, call)), { numRuns: count, seed: 20231 })
}

/** A conversion asks for a unit of the quantity's dimension; one in five is left as it came. */
function sameDimension({ name }: FunctionDefinition, call: readonly Given[]): readonly Given[] {
  const [quantity, asked, ...rest] = call
  if (name !== 'UNIT.CONVERT' || typeof quantity !== 'object' || quantity === null) return call
  const given = units.find(({ code }) => code === quantity.rows[0]?.[1])
  const index = units.findIndex(({ code }) => code === asked)
  const fitting = units.filter(({ dimension }) => dimension === given?.dimension)
  return index % 5 === 0 ? call : [quantity, fitting[index % fitting.length]?.code, ...rest]
}
