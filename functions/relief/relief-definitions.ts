import { saturatedAt, saturationTemperatureOf } from '../ammonia/saturation-workings.ts'
import { latentHeat, saturationTemperature } from '../ammonia/saturation.ts'
import { choice, number, optional, quantity, quantityOf, site, unit } from '../arguments.ts'
import { define, type FunctionDefinition, type Source } from '../define.ts'
import { isFault, outOfRange } from '../fault.ts'
import { GAO_2023 } from '../sources.ts'
import { formatQuantity } from '../units/format.ts'
import { bareSi } from '../workings/workings.ts'
import { ammoniaPerAir, ammoniaPerAirOf } from './ammonia-rating.ts'
import { chokedOutletPressure, dischargeFrictionFactor, dischargePipeLength, dischargePipeSteps } from './discharge-pipe.ts'
import { saturatedRelievingPressure, saturatedRelievingPressureSteps, setAboveAtmosphere, setAboveAtmosphereStep, setPressureArgument } from './relieving.ts'
import { combustibleCases, requiredCapacity, requiredCapacityOf, standardCubicFeetPerMinute, standardCubicFeetPerMinuteOf } from './vessel-capacity.ts'

const group = 'Pressure relief'

const IIAR_2: Source = { cite: 'ANSI/IIAR 2: the rule for relief of ammonia vessels. Its text was not at hand: read the adopted edition for what holds', confidence: 'confirmed' }
const ASHRAE_15: Source = {
  cite: 'ANSI/ASHRAE 15, earlier editions: the formula, with f = 0.5 for ammonia. ASHRAE 15-2022 excludes ammonia (R-717) by its own scope and points to IIAR 2', confidence: 'confirmed',
}
const COMBUSTIBLES: Source = { cite: 'That 0.5 does not hold within 20 ft of combustible material is confirmed; the factor 2.5 in its place is from memory', confidence: 'from memory' }
const STANDARD_AIR: Source = { cite: 'Air at 60 °F and 14.696 psia, 0.07633 lb/ft³, by the gas law', confidence: 'confirmed' }
const ASME_VIII: Source = { cite: 'ASME BPVC Section VIII Division 1, UG-131 and Appendix 11 (now Section XIII): W = K A P C √(M/T); k = 1.31 of ammonia', confidence: 'common practice' }
const DISCHARGE: Source = {
  cite: 'ANSI/ASHRAE 15-2004, Appendix H, as quoted by Jekel, IRC Research and Technology Forum (2005); constant 0.2146 checked by derivation for isothermal air at 60 °F', confidence: 'confirmed',
}
const BACK_PRESSURES: Source = { cite: 'Allowed back pressure 0.15 of set for conventional valves and 0.50 for rupture discs confirmed; 0.25 for balanced valves from memory', confidence: 'from memory' }
const EN_13136: Source = { cite: 'EN 13136, called up by EN 378-2: fire case, 10 kW/m²', confidence: 'from memory' }

const ESTIMATE =
  'An engineering estimate, no compliance finding. The adopted edition of the code, the MAWP stamped on the vessel and a licensed person decide. Undersized relief can burst the vessel.'
const DUAL_SET = 'Each valve of a dual set must carry the full capacity: the three-way valve may shut off the other.'
const ABSOLUTE = 'psi, bar and kPa are absolute here: write psig, bar(g) or kPa(g) for a set pressure in gauge, and give the site’s atmosphere where it is not sea level.'
const FIRE_ONLY = 'External fire only. Other causes (liquid trapped between valves, compressors, heat from within) may ask for more.'

const airFlow = (words: string) => quantityOf(['mass flow'], words, { above: 0, max: 1000, limit: 'relief valves of refrigerating plants' })
const ratedAir = airFlow('capacity stamped on the valve, as air')

export const reliefFunctions: readonly FunctionDefinition[] = [
  define({
    name: 'RELIEF.CAPACITY', group,
    gives: 'the least capacity, as air, of the relief of a pressure vessel',
    use: 'Choose a valve whose stamped capacity at its set pressure is at least this. The discharge pipe is sized for the stamped capacity, not for this (RELIEF.PIPE).',
    arguments: {
      outsideDiameter: quantity('length', 'outside diameter of the vessel', { above: 0, max: 10, limit: 'the vessels of refrigerating plants' }),
      length: quantity('length', 'length of the vessel over its heads', { above: 0, max: 100, limit: 'the vessels of refrigerating plants' }),
      unit: unit(['mass flow']),
      combustibles: optional(choice('combustible material near the vessel: "clear", or "within 20 ft" (6.1 m) of it', combustibleCases), 'clear', '"clear"'),
    },
    equation: 'C = f D L, C in lb/min of air, D and L in ft; f = 0.5 for ammonia, 2.5 times as much within 20 ft of combustible material',
    sources: [IIAR_2, ASHRAE_15, COMBUSTIBLES],
    cautions: [
      ESTIMATE, DUAL_SET, FIRE_ONLY,
      'The factor 2.5 near combustible material is from memory: look it up in the adopted code before relying on it.',
      'One valve on several vessels takes the sum of their capacities (from memory). Set pressure is never above the MAWP.',
    ],
    examples: [
      { formula: '=RELIEF.CAPACITY("6 ft","16 ft","lb/min")', value: '48.00' },
      { formula: '=RELIEF.CAPACITY("3 ft","10 ft","lb/min","within 20 ft")', value: '37.50' },
    ],
    result: 'mass flow',
    compute: ({ outsideDiameter, length, combustibles }) => requiredCapacity(outsideDiameter, length, combustibles),
    workings: ({ outsideDiameter, length, combustibles }) => requiredCapacityOf(outsideDiameter, length, combustibles),
  }),
  define({
    name: 'RELIEF.SCFM', group,
    gives: 'a mass flow of air in standard cubic feet a minute, at 60 °F and 14.696 psia',
    use: 'To compare with valve ratings printed in SCFM.',
    arguments: { airFlow: quantity('mass flow', 'flow of air', { min: 0, max: 1000, limit: 'relief valves of refrigerating plants' }) },
    equation: 'SCFM = C/0.07633, C in lb/min',
    sources: [STANDARD_AIR],
    cautions: ['Some tables count standard air at 70 °F: their figures are 2 % higher for the same mass. Ratings are of air, not of ammonia.', ESTIMATE],
    examples: [{ formula: '=RELIEF.SCFM("15 lb/min")', value: '196.5' }],
    result: 'number',
    compute: ({ airFlow: kgPerS }) => standardCubicFeetPerMinute(kgPerS),
    workings: ({ airFlow: kgPerS }) => standardCubicFeetPerMinuteOf(kgPerS),
  }),
  define({
    name: 'RELIEF.AMMONIA', group,
    gives: 'the flow of ammonia vapour through a valve with a capacity stamped as air',
    use: 'For dispersion, absorption tanks and headers. Vessel capacity and discharge pipe are both counted in air and need no conversion.',
    arguments: { airFlow: ratedAir, setPressure: setPressureArgument, unit: unit(['mass flow']), site },
    equation:
      'm = m_air (C/356) √[(17.03/28.97)(520/T)], C = 520 √{k [2/(k+1)]^((k+1)/(k−1))} = 347.9 for k = 1.31, T in °R saturation at 1.1 × set pressure (gauge) + atmosphere',
    sources: [ASME_VIII, GAO_2023],
    cautions: [ESTIMATE, ABSOLUTE, 'Saturated vapour as an ideal gas, no liquid: a vessel too full, or foaming, discharges liquid with it and far more mass.'],
    examples: [{ formula: '=RELIEF.AMMONIA("24 lb/min","250 psig","lb/min")', value: '17.021' }],
    result: 'mass flow',
    compute: ({ airFlow: { si }, setPressure }, { sitePa }) => {
      const relievingPa = saturatedRelievingPressure(setPressure, sitePa)
      return isFault(relievingPa) ? relievingPa : si * ammoniaPerAir(saturationTemperature(relievingPa))
    },
    workings: ({ airFlow: air, setPressure, site: sitePa }, steps) => {
      const relievingPa = saturatedRelievingPressureSteps(bareSi(setPressure), sitePa, steps)
      return `${bareSi(air)}*${ammoniaPerAirOf(saturationTemperatureOf(relievingPa, steps, 'relieving'))}`
    },
  }),
  define({
    name: 'RELIEF.PIPE', group,
    gives: 'the longest discharge pipe a relief valve may have, as equivalent length',
    use: 'Compare it with pipe, bends and fittings of the run to the open air. Capacity is the one stamped on the valve, which opens fully whatever the vessel requires.',
    arguments: {
      bore: quantity('length', 'inside diameter of the discharge pipe (PIPE.BORE)', { min: 0.006, max: 1, limit: 'discharge pipes of relief valves' }),
      ratedCapacity: ratedAir, setPressure: setPressureArgument, unit: unit(['length']),
      backPressure: optional(
        number('allowed back pressure as a share of the set pressure in gauge: 0.15 conventional valve, 0.25 balanced, 0.50 rupture disc', {
          above: 0, max: 0.5, limit: 'ASHRAE 15-2004 Appendix H, 0.50 for rupture discs',
        }),
        0.15, '0.15',
      ),
      site,
    },
    equation:
      'L = 0.2146 d⁵ (P0² − P2²)/(f C²) − d ln(P0/P2)/(6 f), L in ft, d in in, P in psia, C in lb/min of air; P0 = share × set pressure (gauge) + atmosphere; ' +
      'P2 = atmosphere, or 0.6226 C/d² where more (the outlet chokes); Darcy f fully rough, 1/√f = −2 log10[ε/(3.7 d)], ε = 0.00015 ft',
    sources: [DISCHARGE, IIAR_2, BACK_PRESSURES],
    cautions: [
      ESTIMATE, ABSOLUTE,
      'Take the rated (stamped) capacity, never the required one: with that the pipe would come out too long.',
      'The length is of equivalent pipe: add every elbow, tee and valve. For a header, more than one valve may discharge at once.',
      'f here is the Darcy factor, not the Fanning factor. The outlet must end where it harms no one: the code states height and distances.',
    ],
    examples: [{ formula: '=RELIEF.PIPE("1.610 in","24 lb/min","250 psig","ft")', value: '484.13' }],
    result: 'length',
    compute: ({ bore, ratedCapacity, setPressure, backPressure }, { sitePa }) => {
      const aboveAtmosphere = setAboveAtmosphere(setPressure, sitePa)
      if (isFault(aboveAtmosphere)) return aboveAtmosphere
      const allowedPa = backPressure * aboveAtmosphere + sitePa
      const outletPa = Math.max(sitePa, chokedOutletPressure(bore, ratedCapacity.si))
      const lengthM = dischargePipeLength(bore, ratedCapacity.si, allowedPa, outletPa, dischargeFrictionFactor(bore))
      if (allowedPa > outletPa && lengthM >= 0) return lengthM
      const show = (si: number) => formatQuantity(si, setPressure.unit, sitePa)
      return outOfRange(
        `rated capacity is ${formatQuantity(ratedCapacity.si, ratedCapacity.unit)}: at the outlet of this bore alone it stands at ${show(outletPa)}, against an allowed back pressure of ${show(allowedPa)}: no pipe is short enough, take a larger bore`,
      )
    },
    workings: ({ bore, ratedCapacity, setPressure, backPressure, site: sitePa }, steps) => {
      const aboveAtmosphere = setAboveAtmosphereStep(bareSi(setPressure), sitePa, steps)
      const allowed = steps.step('allowed back pressure, absolute', 'Pa', `${backPressure}*${aboveAtmosphere}+${sitePa}`)
      return dischargePipeSteps({ bore, flow: bareSi(ratedCapacity), allowed, site: sitePa }, steps)
    },
  }),
  define({
    name: 'RELIEF.FIRE', group,
    gives: 'the mass flow of ammonia that a fire around a vessel boils off, by EN 13136',
    use: 'Where EN 378 is the adopted standard. VESSEL.SURFACE gives the outside surface. Where IIAR 2 is, use RELIEF.CAPACITY.',
    arguments: {
      surface: quantity('area', 'total outside surface of the vessel, heads included', { above: 0, max: 1e4, limit: 'the vessels of refrigerating plants' }),
      setPressure: setPressureArgument, unit: unit(['mass flow']),
      heatFlux: optional(quantity('heat flux', 'heat flux of the fire into the vessel', { above: 0, max: 2e5, limit: 'up to 200 kW/m², an engulfing fire' }), 10e3, '10 kW/m²'),
      site,
    },
    equation: 'm = φ A/hfg, hfg latent heat at p0 = 1.1 × set pressure (gauge) + atmosphere',
    sources: [EN_13136, GAO_2023],
    cautions: [
      ESTIMATE, ABSOLUTE, DUAL_SET, FIRE_ONLY,
      '10 kW/m² is the standard’s figure for an ordinary fire; burning material close by brings more. Flow of ammonia, not of air: do not compare it with RELIEF.CAPACITY.',
    ],
    examples: [{ formula: '=RELIEF.FIRE("11.593 m2","21 bar(g)","kg/h")', value: '410.86' }],
    result: 'mass flow',
    compute: ({ surface, setPressure, heatFlux }, { sitePa }) => {
      const relievingPa = saturatedRelievingPressure(setPressure, sitePa)
      return isFault(relievingPa) ? relievingPa : (heatFlux * surface) / latentHeat(saturationTemperature(relievingPa))
    },
    workings: ({ surface, setPressure, heatFlux, site: sitePa }, steps) => {
      const relievingPa = saturatedRelievingPressureSteps(bareSi(setPressure), sitePa, steps)
      const saturated = saturatedAt(saturationTemperatureOf(relievingPa, steps, 'relieving'), steps, 'relieving')
      return `${heatFlux}*${surface}/(${saturated.vaporEnthalpy}-${saturated.liquidEnthalpy})`
    },
  }),
]
