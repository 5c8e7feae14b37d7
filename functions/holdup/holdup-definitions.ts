import { saturationTemperatureArgument } from '../ammonia/saturation-argument.ts'
import { saturatedAt } from '../ammonia/saturation-workings.ts'
import { liquidDensity, vaporDensity } from '../ammonia/saturation.ts'
import { choice, number, optional, optionalWithout, quantity, unit } from '../arguments.ts'
import { define, type FunctionDefinition, type Source } from '../define.ts'
import { wrong } from '../fault.ts'
import { saturatedMixture } from '../lines/two-phase-loss.ts'
import { FENGHOUR_1995, GAO_2023, MULERO_2012 } from '../sources.ts'
import { voidFraction, voidModels, type VoidModel } from './void-fraction.ts'
import { voidFractionSteps } from './void-fraction-workings.ts'

const group = 'Liquid holdup and charge'
const modelNames = Object.keys(voidModels) as readonly VoidModel[] // the keys are the models

const confirmed = (cite: string): Source => ({ cite, confidence: 'confirmed' })
const fromMemory = (cite: string): Source => ({ cite, confidence: 'from memory' })

const MODEL_SOURCES: readonly Source[] = [
  confirmed('Zivi, J. Heat Transfer 86, 247 (1964)'),
  confirmed('Chisholm, Int. J. Heat Mass Transfer 16, 347 (1973)'),
  confirmed('Smith, Proc. Inst. Mech. Eng. 184, 647 (1969)'),
  confirmed('Baroczy, in the form of Butterworth, Int. J. Multiphase Flow 1, 845 (1975)'),
  fromMemory('Lockhart and Martinelli (1949), constants of Butterworth (1975)'),
  { cite: 'Rouhani and Axelsson, Int. J. Heat Mass Transfer 13, 383 (1970); the distribution parameter C0 as later authors print it', confidence: 'common practice' },
  confirmed('Steiner, VDI Heat Atlas: C0 for horizontal lines'),
  fromMemory('Premoli et al., CISE (1970)'),
]

export const holdupFunctions: readonly FunctionDefinition[] = [
  define({
    name: 'VOID.FRACTION', group,
    gives: 'the share of a line’s cross-section that vapour takes where liquid and vapour flow together',
    use: 'For the liquid that stands in coils and wet returns: the liquid share is 1 less this. Vapour runs ahead of the liquid, so it takes far less of the line than volumes at equal speed would.',
    arguments: {
      quality: number('share of the mass flow that is vapour; 1/N at a coil’s outlet', { min: 0, max: 1, limit: 'from liquid alone to vapour alone' }),
      temperature: saturationTemperatureArgument('saturation temperature in the line'),
      model: optional(choice('model of how much faster the vapour runs', modelNames), 'Zivi', '"Zivi"'),
      massFlux: optionalWithout(
        quantity('mass flux', 'mass flow of both phases for each area of the bore', { min: 0.1, max: 1e4, limit: 'from all but standing to far above what refrigerant lines carry; from memory' }),
        'needed by "Rouhani", "Steiner" and "Premoli"',
      ),
      bore: optionalWithout(quantity('length', 'inside diameter of the line', { min: 1e-3, max: 2, limit: 'tubes and pipes of refrigerating plants' }), 'needed by "Premoli"'),
    },
    equation: `α = 1/[1 + S (1 − x)/x ρV/ρL] where a model gives the slip S. ${modelNames.map((name) => `${name}: ${voidModels[name].equation}`).join('; ')}`,
    sources: [...MODEL_SOURCES, GAO_2023, FENGHOUR_1995, MULERO_2012],
    cautions: [
      'Homogeneous flow leaves no slip: it counts about an order of magnitude too little liquid. Do not use it for the charge.',
      'Models differ: at a quality of 0.1 the liquid share lies between 0.15 and 0.28 by all but the homogeneous one. Take the largest liquid share for a maximum inventory.',
      'For steady flow. At part load and at standstill a coil holds more liquid; the maximum intended inventory counts that. Codes and licensed practice decide which figure counts.',
      'The form of Rouhani’s C0 that contains mass flux and bore is not offered: at the mass fluxes of refrigerant returns it collapses to α of 0.4 to 0.6.',
      '"Baroczy" and "Lockhart" are fits: at qualities of a few percent and less, the more so the warmer, they give more vapour than flow without slip, which level and rising lines do not have.',
    ],
    examples: [
      { formula: '=VOID.FRACTION(0.25,"20 °F")', value: '0.9277' },
      { formula: '=VOID.FRACTION(0.25,"20 °F","Rouhani","25 kg/(m2·s)")', value: '0.8201' },
    ],
    result: 'number',
    compute: ({ quality, temperature, model, massFlux, bore: boreM }) => {
      const given = { 'mass flux': massFlux, 'bore': boreM }
      const missing = voidModels[model].needs.find((name) => given[name] === undefined)
      return missing !== undefined
        ? wrong(`${missing} is missing: "${model}" ${NEED_REASON[missing]}; give it, or take a model without it, such as "Zivi"`)
        : voidFraction(model, { quality, ...saturatedMixture(temperature), massFlux, boreM })
    },
    workings: voidFractionSteps,
  }),
  define({
    name: 'HOLDUP.MASS', group,
    gives: 'the mass of ammonia in a volume partly filled with liquid',
    use: 'For coils, lines and heat exchangers, one row each; for vessels VESSEL.CHARGE. The liquid share of a wet return or a coil in operation comes from VOID.FRACTION, of a coil at standstill it is 1 up to the drum’s level.',
    arguments: {
      volume: quantity('volume', 'internal volume', { min: 0, max: 1e4, limit: 'the parts of refrigerating plants' }),
      liquidShare: number('share of the volume that is liquid', { min: 0, max: 1, limit: 'from vapour alone to liquid alone' }),
      temperature: saturationTemperatureArgument('saturation temperature in it'),
      unit: unit(['mass']),
    },
    equation: 'm = V [φ ρL + (1 − φ) ρV], ρL and ρV at saturation',
    sources: [GAO_2023],
    cautions: [
      'Usual shares for an inventory (from memory, to be confirmed): flooded coil 0.7–0.8, pumped overfeed 0.5–0.8 fed from below and 0.25–0.35 from above, direct expansion 0.15–0.3, liquid lines 1, dry suction 0.',
      'State both the mass in operation at load and the maximum intended inventory. Which one a rule counts, codes and licensed practice decide.',
    ],
    examples: [
      { formula: '=HOLDUP.MASS("20.063 ft3",0,"0 °F","lb")', value: '2.20' },
      { formula: '=HOLDUP.MASS("2.330 ft3","100 %","86 °F","lb")', value: '86.6' },
    ],
    result: 'mass',
    compute: ({ volume, liquidShare, temperature }) => volume * (liquidShare * liquidDensity(temperature) + (1 - liquidShare) * vaporDensity(temperature)),
    workings: ({ volume, liquidShare, temperature }, steps) => {
      const ammonia = saturatedAt(temperature, steps)
      return `${volume}*(${liquidShare}*${ammonia.liquidDensity}+(1-${liquidShare})*${ammonia.vaporDensity})`
    },
  }),
]

const NEED_REASON = {
  'mass flux': 'lets the vapour drift faster through slow liquid than through fast',
  'bore': 'depends on the Reynolds and Weber numbers of the line',
} as const
