import { describe, expect, it } from 'vitest'
import type { Given } from '../../functions/given.ts'
import { functionByName } from '../../functions/catalogue.ts'
import { isFault } from '../../functions/fault.ts'
import { headNames, heads, type HeadName } from '../../functions/holdup/heads.ts'
import { insideHeight, liquidLevel, liquidVolume, vesselVolume, type Position, type Vessel } from '../../functions/holdup/vessel.ts'
import { expectWorkingsToAgree } from './compare.ts'
import { workingsValues } from './plain-engine.ts'

describe('workings of the vessel functions in a plain engine against the computation, 1 000 random calls each', () => {
  it('VESSEL.VOLUME', () => expectWorkingsToAgree('VESSEL.VOLUME', { bounds: { length: [0, 10] } }))
  it('VESSEL.SURFACE', () => expectWorkingsToAgree('VESSEL.SURFACE', { bounds: { length: [0, 10] } }))
  it('VESSEL.LIQUID', () => expectWorkingsToAgree('VESSEL.LIQUID', { bounds: { diameter: [0.3, 3], length: [0, 6], level: [0, 4] } }))
  it('VESSEL.LEVEL', () => expectWorkingsToAgree('VESSEL.LEVEL', { bounds: { diameter: [0.3, 3], length: [0, 6], liquidVolume: [0.01, 10] } }))
  it('VESSEL.CHARGE', () => expectWorkingsToAgree('VESSEL.CHARGE', { bounds: { diameter: [0.3, 3], length: [0, 6], level: [0, 4] } }))
})

const written = (name: string, calls: readonly (readonly Given[])[]) => {
  const definition = functionByName(name)
  if (definition === undefined) throw new Error(`there is no function ${name}`)
  return { computed: calls.map((call) => definition.call(call)), values: workingsValues(definition, calls) }
}
const pair = (value: number, unit: string): Given => ({ rows: [[value, unit]] })
const shape = ({ diameterM, lengthM, headName, position }: Vessel): readonly Given[] => [pair(diameterM, 'm'), pair(lengthM, 'm'), headName, position]
const gap = (one: number | string, other: number): number => Math.abs(Number(one) / other - 1)

/** From a sphere or lens without a shell to a pipe. */
const vessels: readonly Vessel[] = headNames.flatMap((headName) =>
  (['horizontal', 'vertical'] as const).flatMap((position) =>
    [0, 1e-4, 0.03, 0.5, 2, 10, 100].flatMap((lengthM) => (headName === 'flat' && lengthM === 0 ? [] : [{ diameterM: 0.9, lengthM, headName, position }]))))

describe('the level that holds a volume, in vessels from a lens to a pipe', () => {
  const held = [1e-6, 1e-5, 1e-4, 1e-3, 0.01, 0.03, 0.1, 0.2, 0.35, 0.499, 0.501, 0.7, 0.9, 0.97, 0.99, 1 - 1e-3, 1 - 1e-4]
  const calls = vessels.flatMap((vessel) => held.map((share) => ({ vessel, volumeM3: share * vesselVolume(vessel) })))

  it.each<Position>(['horizontal', 'vertical'])('%s: is the computed one, and holds that volume, from a millionth of the vessel to all but 1/10 000 of it, to 1e-11', (position) => {
    const own = calls.filter(({ vessel }) => vessel.position === position)
    expect(own.length).toBeGreaterThan(500)
    const { values } = written('VESSEL.LEVEL', own.map(({ vessel, volumeM3 }) => [...shape(vessel), pair(volumeM3, 'm3'), 'm']))
    const differing = own
      .map(({ vessel, volumeM3 }, index) => {
        const value = values[index] ?? ''
        return { ...vessel, share: volumeM3 / vesselVolume(vessel), level: gap(value, liquidLevel(vessel, volumeM3)), volume: gap(liquidVolume(vessel, Number(value)), volumeM3) }
      })
      .filter(({ level, volume }) => !(level < 1e-11 && volume < 1e-11))
    expect(differing).toEqual([])
  })

  it('is 0 for no liquid, the height for a full vessel, half the height for half of it', () => {
    const volumes = (share: number) => written('VESSEL.LEVEL', vessels.map((vessel) => [...shape(vessel), pair(share * vesselVolume(vessel), 'm3'), 'm'])).values
    expect(volumes(0)).toEqual(vessels.map(() => 0))
    for (const [share, values] of [[0.5, volumes(0.5)], [1, volumes(1)]] as const) {
      for (const [index, vessel] of vessels.entries()) expect(gap(values[index] ?? '', share * insideHeight(vessel))).toBeLessThan(1e-14)
    }
  })

  // At a dome's very top a level is the root of what is missing: the engine takes less than 1e-13 of the vessel for nothing, where the code still sees 3e-7 of the height.
  it('agrees to a millionth of the height however little is missing', () => {
    const missing = [1e-6, 1e-8, 1e-10, 1e-12, 1e-13, 1e-14, 1e-15]
    const full = vessels.flatMap((vessel) => missing.map((share) => ({ vessel, volumeM3: (1 - share) * vesselVolume(vessel) })))
    const { values } = written('VESSEL.LEVEL', full.map(({ vessel, volumeM3 }) => [...shape(vessel), pair(volumeM3, 'm3'), 'm']))
    for (const [index, { vessel, volumeM3 }] of full.entries()) expect(gap(values[index] ?? '', liquidLevel(vessel, volumeM3))).toBeLessThan(1e-6)
  })
})

describe('the liquid at a level where the formula changes', () => {
  const special = (vessel: Vessel): readonly number[] => {
    const { depth, torisphere } = heads[vessel.headName]
    const heightM = insideHeight(vessel)
    const touch = torisphere === undefined ? [] : [vessel.position === 'vertical' ? torisphere.crownHeight : 0.5 - torisphere.touchRadius]
    const lower = [...touch, depth].map((level) => level * vessel.diameterM)
    return [...[0, 1e-6, 0.001, 0.5].map((share) => share * heightM), ...lower.flatMap((level) => [level * (1 - 1e-6), level, level * (1 + 1e-6)])].filter((level) => level <= heightM / 2)
  }
  const calls = vessels.flatMap((vessel) => special(vessel).flatMap((levelM) => [levelM, insideHeight(vessel) - levelM].map((level) => ({ vessel, level }))))

  it.each<Position>(['horizontal', 'vertical'])('%s: is the computed one, at empty and full exactly none and all', (position) => {
    const own = calls.filter(({ vessel }) => vessel.position === position)
    expect(own.length).toBeGreaterThan(400)
    const { computed, values } = written('VESSEL.LIQUID', own.map(({ vessel, level }) => [...shape(vessel), pair(level, 'm'), 'm3']))
    const differing = own
      .map(({ vessel, level }, index) => ({ ...vessel, level, computed: computed[index], workings: values[index] ?? '' }))
      .filter(({ computed: code, workings }) => (code === 0 ? workings !== 0 : typeof code !== 'number' || !(gap(workings, code) < 1e-9)))
    expect(differing).toEqual([])
  })
})

describe('what the computation refuses is an error in the workings', () => {
  const drum = (headName: HeadName, position: Position, length = 2): readonly Given[] => [pair(1, 'm'), pair(length, 'm'), headName, position]
  const refused: readonly (readonly [string, string, readonly Given[]])[] = [
    ['a level above the top', 'VESSEL.LIQUID', [...drum('2:1', 'horizontal'), pair(1.001, 'm'), 'm3']],
    ['a level below the bottom', 'VESSEL.LIQUID', [...drum('2:1', 'horizontal'), pair(-0.001, 'm'), 'm3']],
    ['a level of more than all', 'VESSEL.CHARGE', [...drum('hemi', 'vertical'), pair(100.1, '%'), pair(20, '°F'), 'kg']],
    ['a level in a unit of time', 'VESSEL.LIQUID', [...drum('2:1', 'horizontal'), pair(1, 's'), 'm3']],
    ['a temperature beyond the property range', 'VESSEL.CHARGE', [...drum('hemi', 'vertical'), pair(10, '%'), pair(101, '°C'), 'kg']],
    ['more liquid than the vessel holds', 'VESSEL.LEVEL', [...drum('flat', 'vertical'), pair(1.5709, 'm3'), 'm']],
    ['less than no liquid', 'VESSEL.LEVEL', [...drum('dished 6%', 'vertical'), pair(-1e-6, 'm3'), 'm']],
    ['flat heads without a shell: volume', 'VESSEL.VOLUME', [...drum('flat', 'horizontal', 0), 'm3']],
    ['flat heads without a shell: surface', 'VESSEL.SURFACE', [pair(1, 'm'), pair(0, 'm'), 'flat', 'm2']],
    ['flat heads without a shell: liquid', 'VESSEL.LIQUID', [...drum('flat', 'vertical', 0), pair(0, 'm'), 'm3']],
    ['flat heads without a shell: level', 'VESSEL.LEVEL', [...drum('flat', 'horizontal', 0), pair(0, 'm3'), 'm']],
    ['an unknown head', 'VESSEL.SURFACE', [pair(1, 'm'), pair(1, 'm'), 'cone', 'm2']],
    ['an unknown position', 'VESSEL.VOLUME', [pair(1, 'm'), pair(1, 'm'), 'flat', 'askew', 'm3']],
    ['a diameter out of range', 'VESSEL.VOLUME', [pair(11, 'm'), pair(1, 'm'), 'flat', 'vertical', 'm3']],
  ]
  it.each(refused)('%s: %s', (_, name, call) => {
    const { computed, values } = written(name, [call])
    expect(isFault(computed[0])).toBe(true)
    expect(values[0]).toMatch(/^#/)
  })

  it('full to rounding is full, not refused: 36 in against 3 ft', () => {
    const full = written('VESSEL.LIQUID', [[pair(36, 'in'), pair(10, 'ft'), '2:1', 'horizontal', pair(3, 'ft'), 'ft3'], [pair(36, 'in'), pair(10, 'ft'), '2:1', 'horizontal', pair(100, '%'), 'ft3']])
    for (const value of full.values) expect(Number(value)).toBeCloseTo(77.7544, 4) // π/4 D² L + 2 π/24 D³
  })
})
