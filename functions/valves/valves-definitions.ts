import { saturationTemperatureArgument } from '../ammonia/saturation-argument.ts'
import { saturatedAt } from '../ammonia/saturation-workings.ts'
import { criticalPressurePa, liquidDensity, saturationPressure, vaporDensity } from '../ammonia/saturation.ts'
import { number, quantity, quantityOf, site, unit, type SiQuantity } from '../arguments.ts'
import { define, type FunctionDefinition, type Source } from '../define.ts'
import { outOfRange, type Fault } from '../fault.ts'
import { GAO_2023 } from '../sources.ts'
import { formatQuantity } from '../units/format.ts'
import { num, unless, type Expression } from '../workings/expression.ts'
import { bareSi, type Steps } from '../workings/workings.ts'
import { chokeDrop, chokeDropOf, liquidFlowCoefficient, liquidFlowCoefficientOf } from './liquid-valve.ts'
import { vaporFlowCoefficient, vaporFlowCoefficientSteps } from './vapor-valve.ts'

const group = 'Lines and valves'

/** Ratio of heat capacities of ammonia as an ideal gas at ordinary temperature, rounded. */
const GAMMA = 1.3

/** Printed saturation pressures have four or five figures: an inlet this little below saturation is saturated. */
const PRINTED = 1e-4

const massFlow = quantity('mass flow', 'mass flow through the valve', { min: 0, max: 1000, limit: 'the valves of refrigerating plants' })

const valvePressure = (words: string) => quantityOf(['pressure'], words, { above: 0, max: 20e6, limit: 'absolute pressures up to 200 bar' })

const liquidAtValve = {
  inlet: valvePressure('pressure before the valve'),
  liquid: saturationTemperatureArgument('temperature of the liquid before the valve'),
  FL: number('liquid pressure recovery factor of the valve, without fittings; its maker states it; 0.4 (ball) to 0.95 (globe), from memory', {
    above: 0, max: 1, limit: 'IEC 60534-2-1',
  }),
}

const IEC_LIQUID: Source = { cite: 'IEC 60534-2-1 (2011), incompressible fluids, turbulent, with FF and FL; examples 1 and 2 reproduced', confidence: 'confirmed' }
const IEC_VAPOR: Source = {
  cite: 'IEC 60534-2-1 (2011), compressible fluids, turbulent; N6 confirmed for kPa, 31.6 for bar by the algebra of units', confidence: 'confirmed',
}
const GAMMA_SOURCE: Source = { cite: 'γ = 1.3: ideal-gas heat capacities of ammonia, 1.308 at 60 °F, rounded down', confidence: 'common practice' }

const SELECTION =
  'The coefficient needed, without margin. The maker’s data of the valve decide: FL and xT change with opening, reducers (FP) and part load count, and a valve is commonly chosen to pass its flow at 60 to 80 % of opening (common practice).'
const GAUGE = 'psi, bar and kPa are absolute here; write psig, bar(g) or kPa(g) for gauge pressures.'
const FLASHING =
  'Saturated liquid flashes in the valve: only about a tenth of the inlet pressure drives the flow. The full drop in the liquid equation would give a valve 2.6 times too small. Vapour already in the liquid before the valve is not covered.'
const LIQUID_DENSITY = 'Density is that of saturated liquid at the liquid’s temperature; pressure above saturation changes it little.'

const CHOKE_EQUATION = 'Δpmax = FL² (p1 − FF pv), FF = 0.96 − 0.28 √(pv/pc), pv saturation pressure of the liquid, pc = 11.363 MPa'

export const valveFunctions: readonly FunctionDefinition[] = [
  define({
    name: 'VALVE.LIQUID', group,
    gives: 'the flow coefficient a valve needs for liquid ammonia, choking included',
    use: 'For feed, hand expansion and stop valves in liquid lines. Outlet is the pressure right after the valve.',
    arguments: {
      massFlow, inlet: liquidAtValve.inlet, outlet: valvePressure('pressure after the valve'), liquid: liquidAtValve.liquid, FL: liquidAtValve.FL,
      unit: unit(['flow coefficient']), site,
    },
    equation: `Kv = (m/ρ) √((ρ/999.1)/Δp), m/ρ in m³/h, Δp in bar, the smaller of p1 − p2 and Δpmax; ${CHOKE_EQUATION}; Cv = 1.1561 Kv`,
    sources: [IEC_LIQUID, GAO_2023],
    cautions: [FLASHING, SELECTION, GAUGE, LIQUID_DENSITY],
    examples: [{ formula: '=VALVE.LIQUID("0.16 kg/s","169.19 psia","48.18 psia","86 °F",0.9,"Cv")', value: '0.77993' }],
    result: 'flow coefficient',
    compute: ({ massFlow: massFlowKgPerS, inlet, outlet, liquid, FL }, { sitePa }) => {
      const impossible = flashedBefore(inlet, liquid, sitePa) ?? notDriven(inlet, outlet, sitePa)
      if (impossible !== undefined) return impossible
      const dropPa = Math.min(inlet.si - outlet.si, chokeDrop(inlet.si, saturationPressure(liquid), criticalPressurePa, FL))
      return liquidFlowCoefficient(massFlowKgPerS, liquidDensity(liquid), dropPa)
    },
    workings: (given, steps) => {
      const [inlet, outlet] = [bareSi(given.inlet), bareSi(given.outlet)]
      const { chokeDropPa, density } = liquidSteps({ ...given, inlet }, steps)
      const drop = steps.step('pressure drop that drives the flow', 'Pa', unless(`${outlet}<${inlet}`, `MIN(${inlet}-${outlet},${chokeDropPa})`))
      return liquidFlowCoefficientOf(given.massFlow, steps.step('density', 'kg/m3', density), drop)
    },
  }),
  define({
    name: 'VALVE.CHOKE', group,
    gives: 'the pressure drop above which the flow of liquid through a valve no longer rises',
    use: 'Tells whether a valve is choked: compare it with the drop across it. A lower outlet pressure then brings no more liquid.',
    arguments: { ...liquidAtValve, unit: unit(['pressure'], { gaugeRefused: 'difference' }), site },
    equation: CHOKE_EQUATION,
    sources: [IEC_LIQUID, GAO_2023],
    cautions: [FLASHING, GAUGE],
    examples: [{ formula: '=VALVE.CHOKE("169.19 psia","86 °F",0.9,"psi")', value: '17.775' }],
    result: 'pressure',
    compute: ({ inlet, liquid, FL }, { sitePa }) =>
      flashedBefore(inlet, liquid, sitePa) ?? chokeDrop(inlet.si, saturationPressure(liquid), criticalPressurePa, FL),
    workings: (given, steps) => liquidSteps({ ...given, inlet: bareSi(given.inlet) }, steps).chokeDropPa,
  }),
  define({
    name: 'VALVE.VAPOR', group,
    gives: 'the flow coefficient a valve needs for saturated ammonia vapour',
    use: 'For regulators and stop valves in suction and hot gas lines, at the drop that the line can afford (LINE.PENALTY shows its cost).',
    arguments: {
      massFlow, temperature: saturationTemperatureArgument('saturation temperature before the valve'),
      drop: quantityOf(['pressure'], 'pressure drop across the valve', { gaugeRefused: 'difference', above: 0, limit: 'without a drop nothing flows' }),
      xT: number('pressure drop ratio at which the valve chokes with air; its maker states it; 0.25 (ball) to 0.8 (globe), from memory', { above: 0, max: 1, limit: 'IEC 60534-2-1' }),
      unit: unit(['flow coefficient']),
    },
    equation:
      'Kv = m/(31.6 Y √(x p1 ρ1)), m in kg/h, p1 in bar, ρ1 in kg/m³; Y = 1 − x/(3 Fγ xT), x = Δp/p1 but at most Fγ xT, where the flow chokes; Fγ = γ/1.4, γ = 1.3; Cv = 1.1561 Kv',
    sources: [IEC_VAPOR, GAMMA_SOURCE, GAO_2023],
    cautions: [
      SELECTION,
      'γ is taken as 1.3; heat capacities of saturated vapour have a ratio of 1.35 to 1.41, its isentropic exponent is 1.29 to 1.32. Small drops hardly notice.',
      'Many pilot-operated regulators need about 2 psi to open fully (common practice): at −40 °F that alone costs 7 °F.',
    ],
    examples: [{ formula: '=VALVE.VAPOR("0.16 kg/s","20 °F","2 psi",0.7,"Cv")', value: '35.210' }],
    result: 'flow coefficient',
    compute: ({ massFlow: massFlowKgPerS, temperature, drop, xT }) => {
      const inletPa = saturationPressure(temperature)
      if (drop.si < inletPa) return vaporFlowCoefficient(massFlowKgPerS, inletPa, vaporDensity(temperature), drop.si, xT, GAMMA)
      const show = (si: number) => formatQuantity(si, drop.unit)
      return outOfRange(`drop is ${show(drop.si)}; accepted is less than ${show(inletPa)} (the saturation pressure before the valve)`)
    },
    workings: ({ massFlow: massFlowKgPerS, temperature, drop, xT }, steps) => {
      const saturated = saturatedAt(temperature, steps)
      const pressure = steps.step('pressure before the valve', 'Pa', saturated.pressure)
      const inletPa = steps.step('pressure before the valve, above the drop', 'Pa', unless(`${bareSi(drop)}<${pressure}`, pressure))
      return vaporFlowCoefficientSteps({ massFlow: massFlowKgPerS, inletPa, density: saturated.vaporDensity, drop: bareSi(drop), xT }, GAMMA, steps)
    },
  }),
]

/** An inlet below the liquid's saturation pressure: vapour would enter the valve with it. */
function flashedBefore(inlet: SiQuantity, liquidK: number, sitePa: number): Fault | undefined {
  const saturationPa = saturationPressure(liquidK)
  if (inlet.si >= saturationPa * (1 - PRINTED)) return undefined
  const show = (si: number) => formatQuantity(si, inlet.unit, sitePa)
  return outOfRange(`inlet is ${show(inlet.si)}; accepted is at least ${show(saturationPa)} (the saturation pressure of the liquid: below it the liquid would flash before the valve)`)
}

/** The liquid before the valve in workings; an error where {@link flashedBefore} refuses it. */
function liquidSteps({ inlet, liquid, FL }: Readonly<Record<'inlet' | 'liquid' | 'FL', Expression>>, steps: Steps) {
  const { pressure, liquidDensity: density } = saturatedAt(liquid, steps, 'liquid')
  const vaporPressure = steps.step('saturation pressure of the liquid', 'Pa', pressure)
  const reached = unless(`${inlet}>=${vaporPressure}*${num(1 - PRINTED)}`, chokeDropOf(inlet, vaporPressure, criticalPressurePa, FL))
  return { chokeDropPa: steps.step('pressure drop at which the flow chokes', 'Pa', reached), density }
}

function notDriven(inlet: SiQuantity, outlet: SiQuantity, sitePa: number): Fault | undefined {
  if (outlet.si < inlet.si) return undefined
  const show = (si: number) => formatQuantity(si, outlet.unit, sitePa)
  return outOfRange(`outlet is ${show(outlet.si)}; accepted is less than ${show(inlet.si)} (the pressure before the valve)`)
}
