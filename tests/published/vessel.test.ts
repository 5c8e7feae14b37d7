import { describe, expect, it } from 'vitest'
import { liquidDensity, vaporDensity } from '../../functions/ammonia/saturation.ts'
import type { Given } from '../../functions/given.ts'
import { heads, type Head, type HeadName } from '../../functions/holdup/heads.ts'
import { torisphericalHead } from '../../functions/holdup/torispherical-head.ts'
import { vesselFunctions } from '../../functions/holdup/vessel-definitions.ts'
import { liquidVolume, vesselSurface, vesselVolume, type Position } from '../../functions/holdup/vessel.ts'

const POUND_KG = 0.45359237 // exact, NIST SP 811

/** |computed − published| as a share of the published value. */
const gap = (computed: number, published: number): number => Math.abs(computed / published - 1)

/** A value printed to `decimals` decimals is met within half of the last. */
const isPrinted = (computed: number, printed: string): boolean =>
  Math.abs(computed - Number(printed)) <= 0.5000001 * 10 ** -(printed.split('.')[1]?.length ?? 0)

const TABLE_HEADS: readonly HeadName[] = ['flat', '2:1', 'hemi', 'dished 6%']

// Computed with the open `fluids` library (class TANK; closed forms of Jones 2003 agree to 6 digits), m³. Columns as TABLE_HEADS.
const TABLES: readonly { position: Position; diameterM: number; lengthM: number; rows: readonly (readonly [levelM: number, ...printed: string[]])[] }[] = [
  {
    position: 'horizontal', diameterM: 0.9144, lengthM: 3.048,
    rows: [
      [0.1 * 0.9144, '0.104171', '0.109776', '0.115380', '0.107495'],
      [0.25 * 0.9144, '0.391315', '0.422590', '0.453865', '0.409884'],
      [0.4 * 0.9144, '0.747658', '0.818114', '0.888570', '0.790693'],
      [0.5 * 0.9144, '1.000800', '1.100880', '1.200960', '1.062728'],
      [0.7 * 0.9144, '1.496565', '1.653490', '1.810416', '1.594492'],
      [0.8 * 0.9144, '1.716615', '1.895959', '2.075302', '1.828220'],
      [0.9144, '2.001600', '2.201760', '2.401920', '2.125456'],
    ],
  },
  {
    position: 'horizontal', diameterM: 1.2, lengthM: 4,
    rows: [
      [0.3 * 1.2, '1.141450', '1.239166', '1.336882', '1.200052'],
      [0.8 * 1.2, '3.879788', '4.285129', '4.690470', '4.132031'],
    ],
  },
  {
    position: 'vertical', diameterM: 0.9144, lengthM: 2.4384,
    rows: [
      [0.1, '0.065669', '0.024538', '0.013316', '0.027680'],
      [0.5, '0.328346', '0.278306', '0.228266', '0.288591'],
      [2, '1.313386', '1.263346', '1.213306', '1.273630'],
    ],
  },
  {
    position: 'vertical', diameterM: 1.2, lengthM: 3,
    rows: [
      [0.2, '0.226195', '0.117286', '0.067021', '0.136342'],
      [2.8, '3.166725', '3.053628', '2.940531', '3.076872'],
    ],
  },
]

describe.each(TABLES)('liquid in a $position vessel of $diameterM m by $lengthM m (fluids library; Jones 2003)', ({ position, diameterM, lengthM, rows }) => {
  const cases = rows.flatMap(([levelM, ...printed]) => printed.map((value, i) => ({ levelM, value, headName: TABLE_HEADS[i] ?? 'flat' })))
  it.each(cases)('holds $value m³ at $levelM m with heads $headName', ({ levelM, value, headName }) => {
    // One more unit in the sixth decimal than half: the library's own figure is rounded as well.
    expect(Math.abs(liquidVolume({ diameterM, lengthM, headName, position }, levelM) - Number(value))).toBeLessThan(1.5e-6)
  })
})

// Crown and knuckle radii of the standards; depth, volume of one head by the fluids library and an independent integration, agreeing to 8 digits.
describe.each<{ name: string; head: Head; depth: string; volume: string }>([
  { name: 'ASME flanged and dished, 1 D and 6 %', head: heads['dished 6%'], depth: '0.169338', volume: '0.080999' },
  { name: 'Klöpper DIN 28011, 1 D and 10 %', head: heads['dished 10%'], depth: '0.193774', volume: '0.098966' },
  { name: 'Korbbogen DIN 28013, 0.8 D and 15.4 %', head: torisphericalHead(0.8, 0.154), depth: '0.254473', volume: '0.130772' },
])('$name', ({ head, depth, volume }) => {
  it(`is ${depth} D deep`, () => expect(head.depth).toSatisfy((computed: number) => isPrinted(computed, depth)))
  it(`holds ${volume} D³`, () => expect(head.volume).toSatisfy((computed: number) => isPrinted(computed, volume)))
})

// The same two ways of computation.
describe('one 6 % dished head filled in part', () => {
  const head = heads['dished 6%']
  it.each([[0.1, '0.00217385'], [0.25, '0.01214349'], [0.5, '0.04049950']])('lying, at %d D, holds %s D³', (level, printed) => {
    expect(head.lying(level)).toSatisfy((computed: number) => isPrinted(computed, printed))
  })
  it('lying, at 0.8 D, holds 0.07298678 D³', () => {
    expect(head.volume - head.lying(0.2)).toSatisfy((computed: number) => isPrinted(computed, '0.07298678'))
  })
  it.each([[0.05, '0.00772308'], [0.1, '0.03036873'], [0.16, '0.07367239']])('as a bottom head, at %d D, holds %s D³', (level, printed) => {
    expect(head.standing(level)).toSatisfy((computed: number) => isPrinted(computed, printed))
  })
})

describe('surfaces', () => {
  it('a 2:1 head has 1.0840 D² (half oblate spheroid)', () => expect(heads['2:1'].surface).toSatisfy((it: number) => isPrinted(it, '1.0840')))
  it('a 6 % dished head has 0.9306 D² (fluids library)', () => expect(heads['dished 6%'].surface).toSatisfy((it: number) => isPrinted(it, '0.9306')))
  it('a hemispherical head has π/2 D², a flat one π/4 D²', () => {
    expect(heads.hemi.surface).toBeCloseTo(Math.PI / 2, 14)
    expect(heads.flat.surface).toBeCloseTo(Math.PI / 4, 14)
  })
  it.each([[1, 3, '11.593'], [0.9, 2.4, '8.542'], [1.2, 4, '18.202']])(
    'a vessel of %d m by %d m with 2:1 heads has %s m² (fire case of EN 13136, fluids library)',
    (diameterM, lengthM, printed) => expect(vesselSurface(diameterM, lengthM, '2:1')).toSatisfy((computed: number) => isPrinted(computed, printed)),
  )
})

describe('a drum of 36 in by 10 ft with 2:1 heads (fluids library, tolerance 0.1 %)', () => {
  const drum = { diameterM: 0.9144, lengthM: 3.048, headName: '2:1', position: 'horizontal' } as const
  const at = (share: number) => liquidVolume(drum, share * drum.diameterM)

  it('holds 0.548270 m³ at 30 % of its diameter, 24.90 % of its volume', () => {
    expect(gap(at(0.3), 0.54827)).toBeLessThan(1e-3)
    expect(gap(at(0.3) / vesselVolume(drum), 0.249)).toBeLessThan(1e-3)
  })
  it('holds 1.895959 m³ at 80 % of its diameter, 86.11 % of its volume', () => {
    expect(gap(at(0.8), 1.895959)).toBeLessThan(1e-3)
    expect(gap(at(0.8) / vesselVolume(drum), 0.8611)).toBeLessThan(1e-3)
  })
  it('has 1.105220 m³ (39.03 ft³) between 30 and 70 % of its diameter', () => {
    expect(gap(at(0.7) - at(0.3), 1.10522)).toBeLessThan(1e-3)
    expect(gap((at(0.7) - at(0.3)) / 0.3048 ** 3, 39.03)).toBeLessThan(1e-3)
  })
  // Densities of Gao et al. 2023; tolerance 0.3 %.
  it('holds 529.8 kg of liquid and 3.75 kg of vapour, together 1176.3 lb, at 0.40 D and 20 °F', () => {
    const temperatureK = (20 + 459.67) / 1.8
    const liquidKg = at(0.4) * liquidDensity(temperatureK)
    const vaporKg = (vesselVolume(drum) - at(0.4)) * vaporDensity(temperatureK)
    expect(gap(liquidKg, 529.8)).toBeLessThan(3e-3)
    expect(gap(vaporKg, 3.75)).toBeLessThan(3e-3)
    expect(gap((liquidKg + vaporKg) / POUND_KG, 1176.3)).toBeLessThan(3e-3)
    expect(gap(call('VESSEL.CHARGE', '36 in', '10 ft', '2:1', 'horizontal', '40 %', '20 °F', 'lb'), 1176.3)).toBeLessThan(3e-3)
  })
})

describe('traps', () => {
  it('80 % of the diameter is not 80 % of the volume: 85.76 % in a flat-headed cylinder (circle segment)', () => {
    const drum = { diameterM: 1, lengthM: 3, headName: 'flat', position: 'horizontal' } as const
    expect(gap(liquidVolume(drum, 0.8) / vesselVolume(drum), 0.8576)).toBeLessThan(1e-4)
  })
  // 0.0810, 0.0990 and 0.1309 D³ (fluids library).
  it('a 6 % knuckle holds 18 % less than a 10 % one and 38 % less than a 2:1 head', () => {
    expect(1 - heads['dished 6%'].volume / heads['dished 10%'].volume).toBeCloseTo(1 - 0.080999 / 0.098966, 4)
    expect(1 - heads['dished 6%'].volume / heads['2:1'].volume).toBeCloseTo(1 - 0.080999 / 0.1309, 4)
  })
})

describe('worked examples of the VESSEL functions', () => {
  const examples = vesselFunctions.flatMap(({ name, examples: those }) => those.map((one) => ({ name, ...one })))
  it.each(examples)('$formula is $value', ({ name, formula, value }) => {
    const given = [...formula.matchAll(/"([^"]*)"/g)].map(([, text = '']) => text)
    expect(formula.startsWith(`=${name}(`)).toBe(true)
    expect(call(name, ...given)).toSatisfy((computed: number) => isPrinted(computed, value))
  })
})

function call(name: string, ...given: Given[]): number {
  const result = vesselFunctions.find((one) => one.name === name)?.call(given)
  if (typeof result !== 'number') throw new Error(`${name}: ${JSON.stringify(result)}`)
  return result
}
