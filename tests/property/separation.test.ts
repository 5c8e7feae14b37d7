import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { liquidDensity, saturationRange, vaporDensity, vaporViscosity } from '../../functions/ammonia/saturation.ts'
import { demisterFactorAt } from '../../functions/separation/demister.ts'
import { dragLaws, type DragLaw } from '../../functions/separation/drag.ts'
import { dropletDiameter, dropletVelocity } from '../../functions/separation/droplet.ts'
import { liquidAreaBelow, vaporAreaAbove } from '../../functions/separation/drum-area.ts'
import { diameterForFlow } from '../../functions/separation/drum-diameter.ts'
import { leastTravel } from '../../functions/separation/drum-travel.ts'
import { terminalDiameter, terminalVelocity } from '../../functions/separation/settling.ts'
import { soudersBrownFactor, soudersBrownVelocity } from '../../functions/separation/souders-brown.ts'

const anyLaw = fc.constantFrom(...(Object.keys(dragLaws) as DragLaw[])) // the keys are the laws
const anyTemperature = fc.double({ min: saturationRange.minK, max: saturationRange.maxK, noNaN: true })
/** Even in the logarithm. */
const between = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map((ln) => Math.min(most, Math.max(least, Math.exp(ln))))
const anyDroplet = between(1e-6, 5e-3)
const anyDrum = between(0.05, 10)
const anyShare = fc.double({ min: 0, max: 1, noNaN: true })

const phasesAt = (temperatureK: number) => [liquidDensity(temperatureK), vaporDensity(temperatureK), vaporViscosity(temperatureK)] as const
const gap = (value: number, expected: number): number => Math.abs(value / expected - 1)

describe('a settling droplet', () => {
  it('falls at the velocity that bisection of its force balance finds, to 1e-12', () => {
    fc.assert(
      fc.property(anyDroplet, anyTemperature, anyLaw, (diameter, temperature, law) => {
        const phases = phasesAt(temperature)
        expect(gap(terminalVelocity(diameter, ...phases, law), bisectedVelocity(diameter, ...phases, law))).toBeLessThan(1e-12)
      }),
      { numRuns: 500 },
    )
  })

  it('stays within the Reynolds numbers of its law, 200 000 (Haider and Levenspiel 1989)', () => {
    fc.assert(
      fc.property(anyDroplet, anyTemperature, anyLaw.filter((law) => law !== 'Stokes'), (diameter, temperature, law) => {
        const [liquid, vapor, viscosity] = phasesAt(temperature)
        expect((vapor * diameter * terminalVelocity(diameter, liquid, vapor, viscosity, law)) / viscosity).toBeLessThan(2e5)
      }),
    )
  })

  it('has the diameter that its velocity gives back, to 1e-12', () => {
    fc.assert(
      fc.property(anyDroplet, anyTemperature, anyLaw, (diameter, temperature, law) => {
        const phases = phasesAt(temperature)
        expect(gap(terminalDiameter(terminalVelocity(diameter, ...phases, law), ...phases, law), diameter)).toBeLessThan(1e-12)
      }),
      { numRuns: 1000, examples: [[1e-6, saturationRange.minK, 'Stokes'], [5e-3, saturationRange.maxK, 'Haider']] },
    )
  })

  it('comes back through the two functions, in units of the trade, to 1e-9, the ends of the range included', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 5000, noNaN: true }), anyTemperature, anyLaw, (micrometres, temperatureK, law) => {
        const temperature = `${temperatureK} K`
        const velocity = dropletVelocity.call([`${micrometres} um`, temperature, 'ft/min', law])
        const back = dropletDiameter.call([`${String(velocity)} ft/min`, temperature, 'um', law])
        expect(gap(Number(back), micrometres)).toBeLessThan(1e-9)
      }),
      { examples: [[1, 233.15, 'Haider'], [5000, 233.15, 'Haider'], [1, 300, 'Stokes'], [5000, 300, 'Cheng']] },
    )
  })

  it('falls faster the larger it is', () => {
    fc.assert(
      fc.property(between(1e-6, 4.9e-3), anyTemperature, anyLaw, (diameter, temperature, law) => {
        const phases = phasesAt(temperature)
        expect(terminalVelocity(diameter * 1.01, ...phases, law)).toBeGreaterThan(terminalVelocity(diameter, ...phases, law))
      }),
    )
  })

  it('falls slower in denser vapour', () => {
    fc.assert(
      fc.property(anyDroplet, anyTemperature, anyLaw, (diameter, temperature, law) => {
        const [liquid, vapor, viscosity] = phasesAt(temperature)
        expect(terminalVelocity(diameter, liquid, vapor * 1.05, viscosity, law)).toBeLessThan(
          terminalVelocity(diameter, liquid, vapor, viscosity, law),
        )
      }),
    )
  })

  it('approaches Stokes’ law as it shrinks, from below: within 0.1 % at 1 µm', () => {
    fc.assert(
      fc.property(anyDroplet, anyTemperature, fc.constantFrom('Haider', 'Clift', 'Cheng'), (diameter, temperature, law) => {
        const phases = phasesAt(temperature)
        const ofStokes = (d: number) => terminalVelocity(d, ...phases, law) / terminalVelocity(d, ...phases, 'Stokes')
        expect(ofStokes(diameter)).toBeLessThan(1)
        expect(ofStokes(diameter / 2)).toBeGreaterThan(ofStokes(diameter))
        expect(ofStokes(1e-6)).toBeGreaterThan(0.999)
      }),
    )
  })

  it('falls by Stokes at g d² Δρ / 18 μ', () => {
    fc.assert(
      fc.property(anyDroplet, anyTemperature, (diameter, temperature) => {
        const [liquid, vapor, viscosity] = phasesAt(temperature)
        const closedForm = (9.80665 * diameter ** 2 * (liquid - vapor)) / (18 * viscosity)
        expect(gap(terminalVelocity(diameter, liquid, vapor, viscosity, 'Stokes'), closedForm)).toBeLessThan(1e-12)
      }),
    )
  })
})

describe('velocity and separation factor', () => {
  it('undo each other', () => {
    fc.assert(
      fc.property(between(1e-3, 1), anyTemperature, (factor, temperature) => {
        const [liquid, vapor] = phasesAt(temperature)
        expect(gap(soudersBrownFactor(soudersBrownVelocity(factor, liquid, vapor), liquid, vapor), factor)).toBeLessThan(1e-14)
      }),
    )
  })

  it('with a mesh pad never exceeds 0.3503 ft/s nor falls below 0.18 ft/s (York fit, 1 to 5500 psia)', () => {
    fc.assert(
      fc.property(between(6894.757293168362, 5500 * 6894.757293168361), (pressure) => {
        const feetPerSecond = demisterFactorAt(pressure) / 0.3048
        expect(feetPerSecond).toBeGreaterThan(0.18)
        expect(feetPerSecond).toBeLessThan(0.3503)
      }),
    )
  })

  it('drum diameter passes the flow at the velocity', () => {
    fc.assert(
      fc.property(between(1e-4, 10), between(0.01, 10), (flow, velocity) => {
        expect(gap((Math.PI / 4) * diameterForFlow(flow, velocity) ** 2 * velocity, flow)).toBeLessThan(1e-14)
      }),
    )
  })
})

describe('cross-sections of a horizontal drum', () => {
  const circle = (diameter: number) => (Math.PI / 4) * diameter ** 2

  it('add up to the circle', () => {
    fc.assert(
      fc.property(anyDrum, anyShare, (diameter, share) => {
        const level = diameter * share
        expect(Math.abs(liquidAreaBelow(diameter, level) + vaporAreaAbove(diameter, level) - circle(diameter))).toBeLessThan(1e-12 * circle(diameter))
      }),
      { examples: [[1, 0], [1, 1], [1, 1e-300], [1, 1 - 2 ** -53]] },
    )
  })

  it('are those of R² acos((R−h)/R) − (R−h) √(2Rh−h²) (Jones 2003)', () => {
    fc.assert(
      fc.property(anyDrum, anyShare, (diameter, share) => {
        const radius = diameter / 2
        const level = diameter * share
        const printed = radius ** 2 * Math.acos((radius - level) / radius) - (radius - level) * Math.sqrt(Math.max(0, 2 * radius * level - level ** 2))
        expect(Math.abs(liquidAreaBelow(diameter, level) - printed)).toBeLessThan(1e-7 * circle(diameter))
      }),
    )
  })

  it('grow with the level, from nothing to the circle', () => {
    fc.assert(
      fc.property(anyDrum, fc.double({ min: 1e-4, max: 0.99, noNaN: true }), (diameter, share) => {
        expect(liquidAreaBelow(diameter, diameter * share * 1.01)).toBeGreaterThan(liquidAreaBelow(diameter, diameter * share))
        expect(liquidAreaBelow(diameter, 0)).toBe(0)
        expect(gap(liquidAreaBelow(diameter, diameter), circle(diameter))).toBeLessThan(1e-14)
        expect(gap(liquidAreaBelow(diameter, diameter / 2), circle(diameter) / 2)).toBeLessThan(1e-14)
      }),
    )
  })
})

describe('travel in a horizontal drum', () => {
  it('takes as long as the fall from top to level; two inlets halve it', () => {
    fc.assert(
      fc.property(anyDrum, fc.double({ min: 0, max: 0.999, noNaN: true }), between(1e-4, 10), between(1e-3, 10), (diameter, share, flow, fall) => {
        const level = diameter * share
        const travel = leastTravel(diameter, level, flow, fall, 1)
        expect(gap(travel / (flow / vaporAreaAbove(diameter, level)), (diameter - level) / fall)).toBeLessThan(1e-12)
        expect(gap(leastTravel(diameter, level, flow, fall, 2), travel / 2)).toBeLessThan(1e-14)
      }),
    )
  })
})

/** Terminal velocity by halving an interval on weight less buoyancy against drag, which shares nothing with the code but the drag law. */
function bisectedVelocity(diameter: number, liquid: number, vapor: number, viscosity: number, law: DragLaw): number {
  const weight = (Math.PI / 6) * diameter ** 3 * (liquid - vapor) * 9.80665
  const resistance = (velocity: number) =>
    (dragLaws[law]((vapor * velocity * diameter) / viscosity) * (Math.PI / 4) * diameter ** 2 * vapor * velocity ** 2) / 2
  let slow = 1e-9
  let fast = 1e5
  for (let i = 0; i < 200; i++) {
    const middle = Math.sqrt(slow * fast)
    if (resistance(middle) < weight) slow = middle
    else fast = middle
  }
  return Math.sqrt(slow * fast)
}
