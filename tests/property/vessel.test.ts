import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bracketedRoot } from '../../functions/holdup/bracketed-root.ts'
import { gaussLegendre, integrate } from '../../functions/holdup/gauss-legendre.ts'
import { headNames, heads } from '../../functions/holdup/heads.ts'
import { KNUCKLE_RULE, torisphericalHead } from '../../functions/holdup/torispherical-head.ts'
import { insideHeight, liquidLevel, liquidVolume, vesselVolume, type Position, type Vessel } from '../../functions/holdup/vessel.ts'

const positions: readonly Position[] = ['horizontal', 'vertical']

const vessels: fc.Arbitrary<Vessel> = fc
  .record({
    diameterM: fc.double({ min: 0.01, max: 10, noNaN: true }),
    lengthM: fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 100, noNaN: true })),
    headName: fc.constantFrom(...headNames),
    position: fc.constantFrom(...positions),
  })
  .filter(({ headName, lengthM }) => headName !== 'flat' || lengthM > 0)

const shares = fc.double({ min: 0, max: 1, noNaN: true })

describe('liquid in a vessel', () => {
  it('is nothing when empty, the vessel when full, half of it at half height', () => {
    fc.assert(fc.property(vessels, (vessel) => {
      const full = vesselVolume(vessel)
      const heightM = insideHeight(vessel)
      expect(liquidVolume(vessel, 0)).toBe(0)
      expect(liquidVolume(vessel, heightM)).toBe(full)
      expect(Math.abs(liquidVolume(vessel, heightM / 2) / full - 0.5)).toBeLessThan(1e-13)
    }))
  })

  it('below h and below H − h fill the vessel together', () => {
    fc.assert(fc.property(vessels, shares, (vessel, share) => {
      const heightM = insideHeight(vessel)
      const both = liquidVolume(vessel, share * heightM) + liquidVolume(vessel, heightM - share * heightM)
      expect(Math.abs(both / vesselVolume(vessel) - 1)).toBeLessThan(1e-12)
    }))
  })

  it('grows with the level', () => {
    fc.assert(fc.property(vessels, shares, fc.double({ min: 1e-6, max: 1, noNaN: true }), (vessel, share, step) => {
      const heightM = insideHeight(vessel)
      const higher = Math.min(1, share + step)
      fc.pre(higher - share >= 1e-6)
      expect(liquidVolume(vessel, higher * heightM)).toBeGreaterThan(liquidVolume(vessel, share * heightM))
    }))
  })

  it('goes with the cube of the size', () => {
    fc.assert(fc.property(vessels, shares, fc.double({ min: 0.1, max: 10, noNaN: true }), (vessel, share, scale) => {
      const larger = { ...vessel, diameterM: vessel.diameterM * scale, lengthM: vessel.lengthM * scale }
      const of = (one: Vessel) => liquidVolume(one, share * insideHeight(one))
      expect(Math.abs(of(larger) - scale ** 3 * of(vessel))).toBeLessThanOrEqual(1e-12 * vesselVolume(larger))
    }))
  })

  it('is least between flat heads and most between hemispheres of the same shell, horizontal', () => {
    fc.assert(fc.property(vessels, fc.double({ min: 1e-3, max: 1, noNaN: true }), (vessel, share) => {
      const of = (headName: Vessel['headName']) => liquidVolume({ ...vessel, position: 'horizontal', headName }, share * vessel.diameterM)
      const ranked = (['flat', 'dished 6%', 'dished 10%', '2:1', 'hemi'] as const).map((headName) => of(headName))
      for (let i = 1; i < ranked.length; i++) expect(ranked[i]).toBeGreaterThan(ranked[i - 1] ?? Infinity)
    }))
  })

  it('runs on without step or kink from head to shell, vertical', () => {
    fc.assert(fc.property(vessels.filter(({ lengthM }) => lengthM > 0.01), (drawn) => {
      const vessel: Vessel = { ...drawn, position: 'vertical' }
      fc.pre(vessel.headName !== 'flat')
      const areaM2 = (Math.PI / 4) * vessel.diameterM ** 2
      const stepM = 1e-6 * vessel.diameterM
      for (const tangentM of [heads[vessel.headName].depth * vessel.diameterM, insideHeight(vessel) - heads[vessel.headName].depth * vessel.diameterM]) {
        const below = liquidVolume(vessel, tangentM) - liquidVolume(vessel, tangentM - stepM)
        const above = liquidVolume(vessel, tangentM + stepM) - liquidVolume(vessel, tangentM)
        // The volume's own rounding is what remains beside 1e-4 of a slice.
        const tolerance = 1e-4 * areaM2 * stepM + 1e-14 * vesselVolume(vessel)
        expect(Math.abs(below - areaM2 * stepM)).toBeLessThan(tolerance)
        expect(Math.abs(above - areaM2 * stepM)).toBeLessThan(tolerance)
      }
    }))
  })
})

describe('the level that holds a volume', () => {
  it('is the level the volume came from, to 1e-9 of it', () => {
    // Nearer to the top of a dome than 1e-4 of the height a volume in double precision no longer tells levels apart to nine digits.
    fc.assert(fc.property(vessels, fc.double({ min: 1e-6, max: 0.9999, noNaN: true }), (vessel, share) => {
      const levelM = share * insideHeight(vessel)
      expect(Math.abs(liquidLevel(vessel, liquidVolume(vessel, levelM)) / levelM - 1)).toBeLessThan(1e-9)
    }))
  })

  it('holds that volume, to 1e-10 of it, from a billionth of the vessel to all but a billionth', () => {
    const tiny = fc.double({ min: -9, max: -1, noNaN: true }).map((power) => 10 ** power)
    const fill = fc.oneof(fc.double({ min: 1e-9, max: 1, noNaN: true }), tiny, tiny.map((share) => 1 - share))
    fc.assert(fc.property(vessels, fill, (vessel, share) => {
      const volumeM3 = share * vesselVolume(vessel)
      const levelM = liquidLevel(vessel, volumeM3)
      expect(levelM).toBeGreaterThanOrEqual(0)
      expect(levelM).toBeLessThanOrEqual(insideHeight(vessel))
      expect(Math.abs(liquidVolume(vessel, levelM) - volumeM3)).toBeLessThanOrEqual(1e-10 * volumeM3)
    }), { numRuns: 500 })
  })

  it('is the bottom for nothing and the top for all', () => {
    fc.assert(fc.property(vessels, (vessel) => {
      expect(liquidLevel(vessel, 0)).toBe(0)
      expect(liquidLevel(vessel, vesselVolume(vessel))).toBe(insideHeight(vessel))
    }))
  })
})

describe('the knuckle of a lying dished head, 12 nodes', () => {
  it('uses 12 nodes', () => expect(KNUCKLE_RULE.nodes).toHaveLength(12))

  // Independent of the closed forms: circle segments stacked along the axis of the profile, integrated adaptively.
  it.each([[1, 0.06], [1, 0.1], [0.8, 0.154]])('crown %d D and knuckle %d D: within 1e-11 of an adaptive integration at every level', (crown, knuckle) => {
    const head = torisphericalHead(crown, knuckle)
    const ring = 0.5 - knuckle
    const centre = Math.sqrt((crown - knuckle) ** 2 - ring ** 2)
    const touch = (knuckle * centre) / (crown - knuckle)
    const radius = (z: number) => (z <= touch ? ring + Math.sqrt(knuckle ** 2 - z ** 2) : Math.sqrt(Math.max(0, crown ** 2 - (z + centre) ** 2)))
    const depthAt = (r: number) => (r > radius(touch) ? Math.sqrt(Math.max(0, knuckle ** 2 - (r - ring) ** 2)) : Math.sqrt(crown ** 2 - r ** 2) - centre)
    for (const level of [1e-4, 0.01, 0.03, 0.0319, 0.05, 0.0555, 0.0715, 0.1, 0.2, 0.35, 0.49, 0.499999, 0.5]) {
      const chord = 0.5 - level
      const slice = (z: number) => segment(radius(z), chord)
      const end = depthAt(chord)
      const expected = adaptive(slice, 0, Math.min(end, touch)) + (end > touch ? adaptive(slice, touch, end) : 0)
      expect(Math.abs(head.lying(level) - expected)).toBeLessThan(1e-11 * head.volume)
    }
  })
})

describe('Gauss–Legendre rules', () => {
  it('have the nodes and weights of Abramowitz & Stegun table 25.4 for n = 3', () => {
    const { nodes, weights } = gaussLegendre(3)
    expect(nodes[0]).toBeCloseTo(0.774596669241483, 14)
    expect(nodes[1]).toBeCloseTo(0, 15)
    expect(weights[0]).toBeCloseTo(0.555555555555556, 14)
    expect(weights[1]).toBeCloseTo(0.888888888888889, 14)
  })

  it('integrate polynomials up to degree 2n − 1 exactly', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 30 }), fc.nat(59), (count, degree) => {
      fc.pre(degree <= 2 * count - 1)
      expect(integrate((x) => (degree + 1) * x ** degree, 0, 1, gaussLegendre(count))).toBeCloseTo(1, 12)
    }))
  })
})

it('a bracketed root is found to rounding, however flat the curve', () => {
  fc.assert(fc.property(fc.double({ min: 1e-6, max: 1, noNaN: true }), fc.constantFrom(1, 1.5, 2, 3), (root, power) => {
    const found = bracketedRoot((x) => x ** power - root ** power, 0, 1)
    expect(Math.abs(found / root - 1)).toBeLessThan(1e-14)
  }))
})

function segment(radius: number, chord: number): number {
  if (chord >= radius) return 0
  return radius ** 2 * Math.acos(chord / radius) - chord * Math.sqrt(radius ** 2 - chord ** 2)
}

/** Adaptive Simpson integration (Lyness 1969). */
function adaptive(f: (x: number) => number, from: number, to: number): number {
  const refine = (a: number, fa: number, b: number, fb: number, m: number, fm: number, whole: number, tolerance: number, depth: number): number => {
    const [left, right] = [(a + m) / 2, (m + b) / 2]
    const [fl, fr] = [f(left), f(right)]
    const first = ((m - a) / 6) * (fa + 4 * fl + fm)
    const second = ((b - m) / 6) * (fm + 4 * fr + fb)
    const error = first + second - whole
    if (depth === 0 || Math.abs(error) <= 15 * tolerance) return first + second + error / 15
    return refine(a, fa, m, fm, left, fl, first, tolerance / 2, depth - 1) + refine(m, fm, b, fb, right, fr, second, tolerance / 2, depth - 1)
  }
  const middle = (from + to) / 2
  const [fa, fm, fb] = [f(from), f(middle), f(to)]
  return refine(from, fa, to, fb, middle, fm, ((to - from) / 6) * (fa + 4 * fm + fb), 1e-15, 40)
}
