import { saturationTemperatureArgument } from '../ammonia/saturation-argument.ts'
import { criticalPressurePa, saturationRange } from '../ammonia/saturation.ts'
import { saturatedAt, saturationTemperatureOf } from '../ammonia/saturation-workings.ts'
import { choice, number, optional, quantity, quantityOf, unit } from '../arguments.ts'
import { define, type FunctionDefinition, type Source } from '../define.ts'
import { outOfRange, type Fault } from '../fault.ts'
import { FENGHOUR_1995, GAO_2023, MULERO_2012 } from '../sources.ts'
import { formatQuantity } from '../units/format.ts'
import type { Unit } from '../units/units.ts'
import { num, unless } from '../workings/expression.ts'
import { bareSi } from '../workings/workings.ts'
import { choked, lossTooGreat, tooRough } from './flow-limits.ts'
import { frictionFactor, GREATEST_RELATIVE_ROUGHNESS } from './friction.ts'
import { churchillFactor } from './friction-workings.ts'
import { boreArgument, lengthArgument, massFlowArgument, roughnessArgument } from './line-arguments.ts'
import { greatestLoss, linePenalty } from './line-penalty.ts'
import { pipeLossSteps, wetReturnLossSteps } from './loss-workings.ts'
import { crossSection, crossSectionOf, pipeLoss } from './pipe-loss.ts'
import { saturatedMixture, twoPhaseGradient } from './two-phase-loss.ts'

const group = 'Lines and valves'

const confirmed = (cite: string): Source => ({ cite, confidence: 'confirmed' })
const CHURCHILL = confirmed('Churchill, Friction-factor equation spans all fluid-flow regimes, Chemical Engineering 84 (24), 91 (1977)')
const MOODY = confirmed('Moody, Trans. ASME 66, 671 (1944): roughness of commercial steel 0.00015 ft; chart up to Reynolds number 1e8 and relative roughness 0.05')
const DARCY = confirmed('Darcy–Weisbach equation')
const MSH = confirmed('Müller-Steinhagen and Heck, Chem. Eng. Process. 20, 297 (1986)')
const FRIEDEL = confirmed('Friedel, European Two-Phase Flow Group Meeting, Ispra (1979), paper E2: horizontal flow, exponent of the Froude number 0.0454')

const ESTIMATE = 'An engineering estimate: the piping code adopted and a competent person decide.'
const EQUIVALENT = 'Length is the equivalent length, fittings and valves included as lengths of pipe, unless ΣK counts them: never both.'
const LEVEL_PIPE = 'Friction only: a rise or fall of the line is not in it.'

const churchillRange = 'Moody’s chart, 1944'

export const lossDefinitions: readonly FunctionDefinition[] = [
  define({
    name: 'PIPE.VELOCITY', group,
    gives: 'the mean velocity in a pipe',
    use: 'For a first look at a line; what decides is its loss (PIPE.LOSS, LINE.PENALTY).',
    arguments: {
      volumeFlow: quantity('volume flow', 'volume flow', { min: 0, max: 1000, limit: 'the lines of refrigerating plants' }),
      bore: boreArgument, unit: unit(['velocity']),
    },
    equation: 'w = 4 V / (π D²)',
    sources: [confirmed('Continuity of flow')],
    cautions: ['The same mass has 66 times the volume as vapour at 86 °F, 1070 times at −40 °F: take SUCTION.FLOW for vapour, mass flow divided by LIQUID.DENSITY for liquid.'],
    examples: [{ formula: '=PIPE.VELOCITY("126 cfm","4.026 in","ft/min")', value: '1425' }],
    result: 'velocity',
    compute: ({ volumeFlow, bore }) => volumeFlow / crossSection(bore),
    workings: ({ volumeFlow, bore }) => `${volumeFlow}/${crossSectionOf(bore)}`,
  }),
  define({
    name: 'FRICTION.FACTOR', group,
    gives: 'the Darcy friction factor of a round pipe',
    use: 'For a loss of your own: Δp = f (L/D) ρ w²/2. PIPE.LOSS does all of it.',
    arguments: {
      Reynolds: number('Reynolds number w D ρ/μ', { above: 0, max: 1e8, limit: churchillRange }),
      relativeRoughness: number('roughness divided by bore', { min: 0, max: GREATEST_RELATIVE_ROUGHNESS, limit: churchillRange }),
    },
    equation: 'f = 8 [(8/Re)¹² + (A + B)^−1.5]^(1/12), A = {2.457 ln[1/((7/Re)^0.9 + 0.27 ε/D)]}¹⁶, B = (37530/Re)¹⁶',
    sources: [CHURCHILL, MOODY],
    cautions: [
      'This is the Darcy (Moody) factor, four times the Fanning factor.',
      'Turbulent values lie within 2 % of Colebrook’s from Reynolds 10 000 on, within 3.2 % from 4000. Between Reynolds 2000 and 4000 the flow itself is not definite.',
    ],
    examples: [
      { formula: '=FRICTION.FACTOR(100000,0.00045)', value: '0.020201' },
      { formula: '=FRICTION.FACTOR(1000,0)', value: '0.064000' },
    ],
    result: 'number',
    compute: ({ Reynolds, relativeRoughness }) => frictionFactor(Reynolds, relativeRoughness),
    workings: ({ Reynolds, relativeRoughness }) => churchillFactor(Reynolds, relativeRoughness),
  }),
  define({
    name: 'PIPE.LOSS', group,
    gives: 'the pressure loss of saturated liquid or vapour in a pipe',
    use: 'For liquid lines and dry suction lines. For the mixture in a wet return use WETRETURN.LOSS; the cost of the loss is LINE.PENALTY.',
    arguments: {
      massFlow: massFlowArgument('mass flow'), bore: boreArgument, length: lengthArgument('equivalent length of the line'),
      temperature: saturationTemperatureArgument('saturation temperature at the inlet'),
      phase: choice('what flows', ['liquid', 'vapor']), unit: unit(['pressure'], { gaugeRefused: 'difference' }),
      roughness: roughnessArgument,
      ΣK: optional(number('sum of the loss coefficients of bends, fittings and valves', { min: 0, max: 1e4, limit: 'the fittings of a line' }), 0, '0'),
    },
    equation: 'Δp = (f L/D + ΣK) ρ w²/2, f by FRICTION.FACTOR, ρ and μ of saturation at the inlet',
    sources: [DARCY, CHURCHILL, MOODY, GAO_2023, FENGHOUR_1995],
    cautions: [
      ESTIMATE, EQUIVALENT, LEVEL_PIPE,
      'Vapour counts with its density at the inlet. The true loss is larger, by 6 % where it is a tenth of the inlet pressure, by 13 % where it is a fifth: divide the line then. Beyond half of the pressure there is no flow at all, and no result.',
      'Saturated liquid flashes as soon as its pressure falls. The result holds only where static head or subcooling covers the loss; with flash gas the loss is several times as large.',
      'Dry suction means dry: liquid carried over multiplies the loss.',
    ],
    examples: [
      { formula: '=PIPE.LOSS("25 lb/min","4.026 in","100 ft","20 °F","vapor","psi")', value: '0.07677' },
      { formula: '=PIPE.LOSS("0.5 kg/s","1.278 in","100 ft","95 °F","liquid","psi")', value: '0.9688' },
    ],
    result: 'pressure',
    compute: ({ massFlow, bore, length, temperature, phase, unit: shownIn, roughness, ΣK }) => {
      const impossible = tooRough(roughness, bore) ?? (phase === 'vapor' ? choked(massFlow, 1, bore, temperature) : undefined)
      if (impossible !== undefined) return impossible
      const lossPa = pipeLoss(massFlow.si, { boreM: bore, lengthM: length, roughnessM: roughness.si }, temperature, phase, ΣK)
      const beyond = phase === 'vapor' ? lossTooGreat(lossPa, temperature, shownIn) : liquidLossTooGreat(lossPa, shownIn)
      return beyond ?? lossPa
    },
    workings: (given, steps) => pipeLossSteps({ ...given, massFlow: bareSi(given.massFlow), roughness: bareSi(given.roughness) }, steps),
  }),
  define({
    name: 'WETRETURN.LOSS', group,
    gives: 'the friction loss of a mixture of liquid and vapour in a pipe',
    use: 'For the return line of a flooded or overfed coil. Quality is the share of vapour by mass: 1 divided by the circulation number.',
    arguments: {
      massFlow: massFlowArgument('mass flow of liquid and vapour together'),
      quality: number('vapour by mass, share of the whole flow', { min: 0, max: 1, limit: '0 is liquid alone, 1 vapour alone' }),
      bore: boreArgument, length: lengthArgument('equivalent length of the line'),
      temperature: saturationTemperatureArgument('saturation temperature in the line'),
      unit: unit(['pressure'], { gaugeRefused: 'difference' }),
      model: optional(choice('"MSH" Müller-Steinhagen and Heck, "Friedel"', ['MSH', 'Friedel']), 'MSH', '"MSH"'),
      roughness: roughnessArgument,
    },
    equation:
      'A, B gradients of the whole flow as liquid, as vapour (f by FRICTION.FACTOR). MSH: Δp/L = [A + 2 (B − A) x] (1 − x)^(1/3) + B x³. ' +
      'Friedel: Δp/L = (1 − x)² A + x² B + A 3.24 F H/(Fr^0.0454 We^0.035), F = x^0.78 (1 − x)^0.224, H = (ρL/ρV)^0.91 (μV/μL)^0.19 (1 − μV/μL)^0.7, ' +
      'Fr = G²/(g D ρh²), We = G² D/(σ ρh), ρh homogeneous density',
    sources: [MSH, FRIEDEL, CHURCHILL, GAO_2023, FENGHOUR_1995, MULERO_2012],
    cautions: [
      ESTIMATE,
      'Two-phase laws scatter by 30 to 50 % (common practice): compare both models, and size with a margin. Values computed with Colebrook’s law differ by about 1 %.',
      'Friction only: a riser adds the weight of the mixture, evaporation in the line adds acceleration.',
      'A wet return at circulation number 3 to 4 costs 4.5 to 7 times the gradient of its dry vapour.',
    ],
    examples: [{ formula: '=WETRETURN.LOSS("72.4 lb/min",0.25,"4.026 in","100 ft","20 °F","psi")', value: '0.28582' }],
    result: 'pressure',
    compute: ({ massFlow, quality, bore, length, temperature, unit: shownIn, model, roughness }) => {
      const impossible = tooRough(roughness, bore) ?? choked(massFlow, quality, bore, temperature)
      if (impossible !== undefined) return impossible
      const gradient = twoPhaseGradient[model](massFlow.si / crossSection(bore), quality, bore, roughness.si, saturatedMixture(temperature))
      return lossTooGreat(gradient * length, temperature, shownIn) ?? gradient * length
    },
    workings: (given, steps) => wetReturnLossSteps({ ...given, massFlow: bareSi(given.massFlow), roughness: bareSi(given.roughness) }, steps),
  }),
  define({
    name: 'LINE.PENALTY', group,
    gives: 'a pressure loss as a fall of the saturation temperature',
    use: 'What a loss in a suction or return line costs: the compressor must pull that much colder. Common practice allows 0.5 to 2 °F a line.',
    arguments: {
      temperature: saturationTemperatureArgument('saturation temperature at the line’s inlet'),
      loss: quantityOf(['pressure'], 'pressure loss along the line', { gaugeRefused: 'difference', min: 0, limit: 'a loss, not a gain' }),
      unit: unit(['temperature difference']),
    },
    equation: 'ΔT = T − Tsat(psat(T) − Δp), on the curve, not its tangent',
    sources: [GAO_2023],
    cautions: ['The same loss costs several times as much at low temperature: 1 psi is 0.95 °F at 20 °F, 3.4 °F at −40 °F.'],
    examples: [{ formula: '=LINE.PENALTY("-40 °F","1 psi","Δ°F")', value: '3.3684' }],
    result: 'temperature difference',
    compute: ({ temperature, loss }) => {
      const mostPa = greatestLoss(temperature)
      if (loss.si <= mostPa) return linePenalty(temperature, loss.si)
      const show = (si: number) => formatQuantity(si, loss.unit)
      return outOfRange(`loss is ${show(loss.si)}; accepted is at most ${show(mostPa)} (saturation pressure at the inlet less that at −77.6 °C = −107.7 °F, where the property range ends)`)
    },
    workings: ({ temperature, loss }, steps) => {
      const inlet = steps.step('pressure at the inlet', 'Pa', saturatedAt(temperature, steps).pressure)
      const outlet = unless(`${bareSi(loss)}<=${inlet}-${num(saturationRange.minPa)}`, `${inlet}-${bareSi(loss)}`)
      return `${temperature}-${saturationTemperatureOf(outlet, steps, 'after the loss')}`
    },
  }),
]

/** Liquid that loses more than the critical pressure must have entered above it, where saturation no longer describes it. */
const liquidLossTooGreat = (lossPa: number, shownIn: Unit): Fault | undefined =>
  lossPa <= criticalPressurePa
    ? undefined
    : outOfRange(
        `the loss would be ${formatQuantity(lossPa, shownIn)}; accepted is at most ${formatQuantity(criticalPressurePa, shownIn)} (the critical pressure of ammonia: liquid that can lose more is not near saturation): take a larger bore, a shorter line or less flow`,
      )
