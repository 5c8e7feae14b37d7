import { argumentLabel } from './argument-label.ts'
import type { Argument } from './arguments.ts'
import type { Given } from './given.ts'
import { STANDARD_ATMOSPHERE_PA } from './units/constants.ts'
import { fromSi } from './units/convert.ts'
import type { Dimension, Unit } from './units/units.ts'
import { isFault, notAvailable, outOfRange, type Fault } from './fault.ts'
import type { Expression } from './workings/expression.ts'
import { layOut, type FunctionWorkings, type Steps, type Written } from './workings/workings.ts'

export { argumentLabel }

export type Group =
  | 'Site and units' | 'Ammonia at saturation' | 'Load and flow' | 'Vapour–liquid separation' | 'Static head and circulation'
  | 'Liquid holdup and charge' | 'Lines and valves' | 'Pressure relief'

/** Where an equation or a number comes from, and how sure that is. */
export interface Source {
  readonly cite: string
  readonly confidence: 'confirmed' | 'common practice' | 'from memory'
}

/** A call with its value, shown in the guide and held to by a test: |computed − value| ≤ 0.5 of its last printed digit. */
export interface Example {
  readonly formula: string
  readonly value: string
}

type Named = Readonly<Record<string, Argument<unknown>>>
type Resolved<A extends Named> = { readonly [K in keyof A]: A[K] extends Argument<infer T> ? T : never }

interface Words<A extends Named> {
  readonly name: string
  readonly group: Group
  /** What it gives, a noun phrase. */
  readonly gives: string
  /** When to use it, and when not. */
  readonly use: string
  /** In the order of the call; the key is the argument's name, camel case standing for words. */
  readonly arguments: A
  readonly equation: string
  readonly sources: readonly Source[]
  readonly cautions?: readonly string[]
  readonly examples: readonly [Example, ...Example[]]
}

/** What the computation is given beside its arguments. */
export interface Surroundings {
  /** The site's atmospheric pressure, the standard atmosphere where the function has no `site` argument. */
  readonly sitePa: number
  /** The unit of the result where the function has a `unit` argument. */
  readonly unit: Unit | undefined
}

interface Definition<A extends Named> extends Words<A> {
  /**
   * What the computation returns: an SI value of this dimension, turned into the result's unit afterwards;
   * `'number'` for a plain number, `'text'` for a text, `'as asked'` for an SI value of whatever dimension the unit has.
   */
  readonly result: Dimension | 'number' | 'text' | 'as asked'
  readonly compute: (given: Resolved<A>, surroundings: Surroundings) => number | string | Fault
  /**
   * The same computation as steps in standard spreadsheet formulas, from the arguments' SI values to the SI value of the result.
   * What `compute` refuses by a fault becomes an error there too.
   */
  readonly workings: (given: { readonly [K in keyof A]: A[K] extends Argument<infer T> ? Written<T> : never }, steps: Steps) => Expression
}

/** A function of the catalogue, its argument types folded away: what registration, hints, guide and export work with. */
export interface FunctionDefinition extends Words<Named> {
  readonly result: Dimension | 'number' | 'text' | 'as asked'
  readonly call: (given: readonly Given[]) => number | string | Fault
  readonly workings: FunctionWorkings
}

/**
 * Makes a function of the catalogue. Arguments are resolved to SI once, at the door; `compute` sees valid values only and says by a
 * {@link Fault} what no argument's own range can (a liquid colder than its drum, a level without solution).
 */
export function define<const A extends Named>(definition: Definition<A>): FunctionDefinition {
  const { compute, result, workings } = definition
  const entries = Object.entries(definition.arguments).map(([key, argument]) => ({ key, argument, label: argumentLabel(key) }))
  const required = entries.filter(({ argument }) => !argument.optional).length
  const siteIndex = entries.findIndex(({ key }) => key === 'site')
  const unitIndex = entries.findIndex(({ key }) => key === 'unit')

  const call = (given: readonly Given[]): number | string | Fault => {
    if (given.length < required || given.length > entries.length) {
      return notAvailable(`${definition.name} takes ${countWords(required, entries.length)}: ${signature(definition)}`)
    }
    let sitePa = STANDARD_ATMOSPHERE_PA
    const resolved: Record<string, unknown> = {}
    const site = entries[siteIndex]
    if (site !== undefined) {
      const pressure = site.argument.resolve(given[siteIndex], site.label, sitePa)
      if (isFault(pressure)) return pressure
      sitePa = pressure as number // the site argument is a pressure by `site` in arguments.ts
      resolved['site'] = sitePa
    }
    for (let i = 0; i < entries.length; i++) {
      if (i === siteIndex) continue
      const { key, argument, label } = entries[i]! // i is within bounds
      const value = argument.resolve(given[i], label, sitePa)
      if (isFault(value)) return value
      resolved[key] = value
    }
    const unit = unitIndex < 0 ? undefined : (resolved['unit'] as Unit)
    // The keys and their types are those of `definition.arguments`, which `resolve` has just followed.
    const computed = compute(resolved as Resolved<A>, { sitePa, unit })
    if (typeof computed !== 'number') return computed
    const stated = unit === undefined ? computed : stateIn(unit, computed, sitePa)
    return Number.isFinite(stated) ? stated : outOfRange(`${definition.name} has no finite result for these values`)
  }
  /** The result in the unit asked for. */
  const stateIn = (unit: Unit, si: number, sitePa: number): number =>
    result === 'density' && unit.dimension === 'specific volume' ? 1 / si / unit.factor : fromSi(si, unit, sitePa)

  return { ...definition, call, workings: layOut(definition.arguments, result, workings) }
}

/** `SAT.PRESSURE(temperature, unit, [site])` */
export const signature = (definition: Pick<FunctionDefinition, 'name' | 'arguments'>): string =>
  `${definition.name}(${Object.entries(definition.arguments)
    .map(([key, { optional }]) => (optional ? `[${argumentLabel(key)}]` : argumentLabel(key)))
    .join(', ')})`

const countWords = (least: number, most: number): string => {
  const plural = most === 1 ? 'argument' : 'arguments'
  return least === most ? `${least} ${plural}` : `${least} to ${most} ${plural}`
}
