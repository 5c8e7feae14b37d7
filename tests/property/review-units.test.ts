import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findUnit, units, type Dimension, type Unit } from '../../functions/units/units.ts'
import { kindsFound } from '../unit/review/unit-fixture.ts'

/*
 * Arithmetic that is right in its units gives no finding, however it is written; with the unit of one of its cells changed it does.
 * Factors are those of `functions/units/units.ts`, which tests/published holds to NIST SP 811.
 */

/** Relations that a sheet computes by: result = one × other, or one / other. */
const RELATIONS: readonly (readonly [result: Dimension, one: Dimension, operator: '*' | '/', other: Dimension])[] = [
  ['area', 'length', '*', 'length'], ['volume', 'area', '*', 'length'], ['volume flow', 'area', '*', 'velocity'], ['mass', 'volume', '*', 'density'], ['mass flow', 'volume flow', '*', 'density'],
  ['mass flow', 'power', '/', 'energy per mass'], ['power', 'mass flow', '*', 'energy per mass'], ['volume flow', 'mass flow', '/', 'density'], ['velocity', 'volume flow', '/', 'area'], ['time', 'mass', '/', 'mass flow'],
  ['mass', 'mass flow', '*', 'time'], ['specific volume', 'volume', '/', 'mass'], ['mass flux', 'mass flow', '/', 'area'], ['heat flux', 'power', '/', 'area'], ['specific charge', 'mass', '/', 'power'], ['length', 'velocity', '*', 'time'],
]
const DIMENSIONS = [...new Set(RELATIONS.map(([result]) => result))]

const unitsOf = (dimension: Dimension): readonly Unit[] => units.filter((unit) => unit.dimension === dimension)
const unitOf = (dimension: Dimension): fc.Arbitrary<Unit> => fc.constantFrom(...unitsOf(dimension))

interface Written {
  readonly formula: string
  readonly inputs: readonly string[]
}

interface Writing {
  readonly inputs: string[]
  /** A literal factor, as people type it: the digits that a handbook prints. */
  readonly factor: (value: number) => string
  readonly choose: <T>(items: readonly T[]) => T
  readonly depth: number
  /** The units that are chosen from. */
  readonly unitsOf: (dimension: Dimension) => readonly Unit[]
}

/** A number in the unit: a cell, a cell converted by a factor or by UNIT.CONVERT, a sum, a share of it, or a relation. */
function write(unit: Unit, writing: Writing): string {
  const way = writing.choose(writing.depth > 0 ? ['cell', 'factor', 'over', 'convert', 'sum', 'difference', 'share', 'greatest', 'relation', 'relation'] : ['cell', 'factor', 'over', 'convert'])
  const deeper = { ...writing, depth: writing.depth - 1 }
  const other = writing.choose(writing.unitsOf(unit.dimension))
  if (way === 'cell') return cell(unit, writing)
  if (way === 'factor') return `${cell(other, writing)}*${writing.factor(other.factor / unit.factor)}`
  if (way === 'over') return `${cell(other, writing)}/${writing.factor(unit.factor / other.factor)}`
  if (way === 'convert') {
    const at = cell(other, writing)
    return `UNIT.CONVERT(${at}:${at.replace('C', 'D')},"${unit.code}")`
  }
  if (way === 'sum' || way === 'difference') return `(${write(unit, deeper)}${way === 'sum' ? '+' : '-'}${write(unit, deeper)})`
  if (way === 'share') return `${write(unit, deeper)}*${writing.choose(['0.85', '1.15', '2', '(1-0.2)'])}`
  if (way === 'greatest') return `MAX(0,${write(unit, deeper)},${write(unit, deeper)})`
  const relations = RELATIONS.filter(([result]) => result === unit.dimension)
  if (relations.length === 0) return cell(unit, writing)
  const [, one, operator, second] = writing.choose(relations)
  const [mine, theirs] = [writing.choose(writing.unitsOf(one)), writing.choose(writing.unitsOf(second))]
  const made = operator === '*' ? mine.factor * theirs.factor : mine.factor / theirs.factor
  return `(${write(mine, deeper)})${operator}(${write(theirs, deeper)})*${writing.factor(made / unit.factor)}`
}

function cell(unit: Unit, { inputs }: Writing): string {
  inputs.push(`${inputs.length + 3} ${unit.code}`)
  return `C${inputs.length}`
}

/** @param seed of the choices, so that what fails can be made again */
function written(unit: Unit, seed: readonly number[], depth: number, ofUnits = unitsOf): Written {
  const inputs: string[] = []
  let at = 0
  const choose = <T>(items: readonly T[]): T => items[(seed[at++ % seed.length] ?? 0) % items.length] as T // the remainder is within bounds
  const formula = write(unit, { inputs, choose, depth, unitsOf: ofUnits, factor: (value) => String(Number(value.toPrecision(8))) })
  return { formula: `=${formula}`, inputs }
}

const seeds = fc.array(fc.nat(9999), { minLength: 12, maxLength: 40 })
const targets = fc.constantFrom(...DIMENSIONS).chain(unitOf)
// C9 holds the formula: what needs more cells than there are before it is left out.
const fits = ({ inputs, formula }: Written): boolean => inputs.length <= 8 && inputs.length > 0 && formula.length < 400 && (formula.match(/\*|\//g)?.length ?? 0) <= 8

describe('arithmetic that is right in its units', () => {
  it('gives no finding, with conversions by factors and functions, in sums, shares and products of units', () => {
    fc.assert(fc.property(targets, seeds, fc.integer({ min: 0, max: 3 }), (unit, seed, depth) => {
      const { formula, inputs } = written(unit, seed, depth)
      fc.pre(fits({ formula, inputs }))
      expect([formula, ...inputs, unit.code, ...kindsFound(formula, unit.code, inputs)]).toEqual([formula, ...inputs, unit.code])
    }), { numRuns: 300 })
  })

  it('gives one with the unit of one of its cells changed for that of another kind', () => {
    // In units of SI alone: a factor between units of different kinds may be of an empirical formula, and have a unit itself.
    const coherent = (dimension: Dimension): readonly Unit[] => unitsOf(dimension).filter(({ factor }) => factor === 1)
    fc.assert(fc.property(fc.constantFrom(...DIMENSIONS.flatMap(coherent)), seeds, fc.integer({ min: 0, max: 2 }), fc.nat(7), (unit, seed, depth, which) => {
      const { formula, inputs } = written(unit, seed, depth, (dimension) => (coherent(dimension).length > 0 ? coherent(dimension) : unitsOf(dimension)))
      fc.pre(!inputs.some((input) => /kg\/kW|lb\/TR/.test(input)))
      fc.pre(fits({ formula, inputs }))
      const at = which % inputs.length
      // What a function converts it refuses by itself.
      fc.pre(!formula.includes(`UNIT.CONVERT(C${at + 1}:`))
      const changed = inputs.with(at, `${at + 3} lb/(ft·s)`)
      expect([formula, ...changed, kindsFound(formula, unit.code, changed).length > 0]).toEqual([formula, ...changed, true])
    }), { numRuns: 300 })
  })

  it('gives one with the unit of one of its cells changed for another of its kind', () => {
    fc.assert(fc.property(fc.constantFrom(...RELATIONS), fc.constantFrom('', '*1.1', '/2'), fc.nat(99), fc.nat(99), fc.nat(99), fc.boolean(), ([result, one, operator, other], share, a, b, c, isFirst) => {
      const pick = (dimension: Dimension, at: number): Unit => unitsOf(dimension)[at % unitsOf(dimension).length] as Unit // the remainder is within bounds
      const [mine, theirs, unit] = [pick(one, a), pick(other, b), pick(result, c)]
      const made = operator === '*' ? mine.factor * theirs.factor : mine.factor / theirs.factor
      const factor = Number((made / unit.factor).toPrecision(8))
      const formula = `=C1${operator}C2*${factor}${share}`
      const changed = pick(isFirst ? one : other, (isFirst ? a : b) + 1)
      const before = isFirst ? mine : theirs
      // A conversion that people would type takes a hundredth for itself: units closer than that are the same.
      const ratio = operator === '/' && !isFirst ? before.factor / changed.factor : changed.factor / before.factor
      const given = (first: Unit, second: Unit): readonly string[] => kindsFound(formula, unit.code, [`3 ${first.code}`, `4 ${second.code}`])
      expect([formula, mine.code, theirs.code, unit.code, ...given(mine, theirs)]).toEqual([formula, mine.code, theirs.code, unit.code])
      fc.pre(!couldBeRead(ratio, factor, share === '*1.1' ? 1.1 : share === '/2' ? 0.5 : 1))
      const found = isFirst ? given(changed, theirs) : given(mine, changed)
      expect([formula, before.code, changed.code, unit.code, found.length]).toEqual([formula, before.code, changed.code, unit.code, 1])
    }), { numRuns: 400 })
  })
})

/** Whether the formula is right with the changed unit too, once other numbers of it are read as the conversion, or as one with a circle’s π in it: with a 2 that makes up for an 8.02 there is nothing to be found. */
const couldBeRead = (ratio: number, conversion: number, share: number): boolean =>
  [1, conversion, share, conversion * share].some((read) => [1, Math.PI / 4, Math.PI, Math.sqrt(Math.PI / 4)].some((circle) =>
    [circle, 1 / circle].some((one) => Math.abs((ratio * conversion) / read / one - 1) < 0.02)))

describe('temperatures and pressures', () => {
  const temperature = fc.constantFrom('°F', '°C')
  it('of one unit may be averaged, set off and converted; a difference of them is one', () => {
    fc.assert(fc.property(temperature, fc.integer({ min: 2, max: 6 }), fc.boolean(), (code, count, isWritten) => {
      const inputs = Array.from({ length: count }, (_, index) => `${20 + index} ${code}`)
      const mean = isWritten ? `(${inputs.map((_, index) => `C${index + 1}`).join('+')})/${count}` : `AVERAGE(C1:C${count})`
      const difference = code === '°F' ? 'Δ°F' : 'ΔK'
      expect(kindsFound(`=${mean}`, code, inputs)).toEqual([])
      expect(kindsFound(`=${mean}-C1`, difference, inputs)).toEqual([])
      expect(kindsFound(`=${mean}-C1`, code, inputs)).toEqual(['difference-as-temperature'])
      expect(kindsFound(`=${mean}`, code === '°F' ? '°C' : '°F', inputs).length).toBe(1)
    }), { numRuns: 30 })
  })

  it('gauge and absolute never stand for each other without a finding', () => {
    const absolute: Readonly<Record<string, string>> = { 'psig': 'psia', 'kPa(g)': 'kPa', 'bar(g)': 'bar' }
    fc.assert(fc.property(fc.constantFrom('psig', 'kPa(g)', 'bar(g)'), fc.constantFrom('=C1', '=C1*1.1', '=MAX(C1,C2)', '=IF(C1>C2,C1,C2)', '=(C1+C2)/2', '=ROUND(C1,1)'), (code, formula) => {
      const to = absolute[code] ?? ''
      expect([formula, ...kindsFound(formula, code, [`30 ${code}`, `40 ${code}`])]).toEqual([formula])
      expect(kindsFound(formula, to, [`30 ${code}`, `40 ${code}`]).length).toBe(1)
      expect(kindsFound(formula, code, [`30 ${to}`, `40 ${to}`]).length).toBe(1)
    }), { numRuns: 40 })
  })

  it('of every unit that is known, a cell shown in its own unit is in order', () => {
    for (const { code } of units) expect([code, ...kindsFound('=C1', code, [`30 ${findUnit(code)?.code ?? ''}`])]).toEqual([code])
  })
})
