import { latentHeat } from '../ammonia/saturation.ts'
import { choice, number, optional, unit } from '../arguments.ts'
import { define, type FunctionDefinition, type Source } from '../define.ts'
import { isFault, wrong, type Fault } from '../fault.ts'
import { saturatedMixture } from '../lines/two-phase-loss.ts'
import { FENGHOUR_1995, GAO_2023 } from '../sources.ts'
import { units } from '../units/units.ts'
import { balanceAt, losses, slipModels, type LoopFluid, type SlipModel } from './balance.ts'
import { circulation, GREATEST_NUMBER, type Circulation } from './circulation.ts'
import { circulationSteps, lossSteps, partSteps } from './circulation-workings.ts'
import { loopBlock, loopOf, tooRough, type LoopRows } from './loop-block.ts'
import { PARTS, partNames } from './parts.ts'

const group = 'Static head and circulation'

const slipNames = Object.keys(slipModels) as readonly SlipModel[] // the keys are the models
const voidArgument = optional(choice('model of the vapour’s share of coil and return', slipNames), 'Zivi', '"Zivi"')

const TERMS =
  'leg loss = (f L/D + ΣK) ρL V²/2; coil friction = circuit length × mean over the circuit of Müller-Steinhagen & Heck’s [A + 2 (B − A) x] (1 − x)^(1/3) + B x³, ' +
  'A and B the gradients of the whole flow as liquid and as vapour; coil acceleration = G² [1/ρh − 1/ρL], 1/ρh = x/ρV + (1 − x)/ρL at the outlet; ' +
  'coil column = mean of [α ρV + (1 − α) ρL] over the height × g × coil height; return friction = the same gradient at x = 1/N × length + ΣK G²/(2 ρh); ' +
  'return column = [α ρV + (1 − α) ρL] at x = 1/N × g × return rise, and ρL g × what the level stands above the return’s end. ' +
  'In the coil x rises linearly from 0 to 1/N with length and with height; f is Darcy’s by Churchill; α has the slip 1 (homogeneous) or (ρL/ρV)^(1/3) (Zivi); properties are those of saturation in the drum'

const EQUATION =
  `ρL g × level = leg loss + coil friction + coil acceleration + coil column + return friction + return column at the fed flow m = N Q/hfg. ${TERMS}. ` +
  `The load fixes what evaporates and the liquid enters saturated, so every loss rises with N: the balance has one solution at most, a stable one. It is sought between 1 and ${GREATEST_NUMBER}`

const sources: readonly Source[] = [
  { cite: 'Pressure balance of a gravity-fed loop with linear quality along the coil', confidence: 'common practice' },
  { cite: 'Churchill, Chemical Engineering 84 (24), 91 (1977): friction factor', confidence: 'confirmed' },
  { cite: 'Müller-Steinhagen and Heck, Chem. Eng. Process. 20, 297 (1986): two-phase friction', confidence: 'confirmed' },
  { cite: 'Zivi, J. Heat Transfer 86, 247 (1964): void fraction', confidence: 'confirmed' },
  GAO_2023, FENGHOUR_1995,
]

const cautions = [
  'Check part load as well as full load: the number rises steeply as the load falls (two and a half to three times at half the load) and the fed flow may even grow, so the wet return and the drum can be worse off than at full load.',
  'An estimate: two-phase models of equal standing differ by 30 % in the number. Leave room, and compare both void models. Churchill’s friction factor, up to 1 % above Colebrook’s, lowers the number by half a percent at most.',
  'Usual numbers (common practice, to be confirmed): 4 to 8 for flooded coils, 3 to 5 for plates. A liquid leg runs at 1 to 2 ft/s, slower where oil has to settle in it (from memory).',
  'Coil and legs count as one loop with equal circuits at steady load. Liquid below the level is a little subcooled, which is not counted; vapour has the drum’s density throughout, which is rough where the level’s head is not small beside the drum’s pressure.',
  'A return that ends below the level has the drum’s liquid above it: this is counted in the return column.',
  'Codes and licensed practice govern the design; this balance replaces neither.',
]

const EXAMPLE_BLOCK =
  '{20,"TR";14,"°F";8.2,"ft";2.067,"in";13,"ft";2.5,"-";4,"ft";12,"-";0.83,"in";59,"ft";4.026,"in";10,"ft";2,"-";4.2,"ft";0.00015,"ft"}'

export const circulationFunctions: readonly FunctionDefinition[] = [
  define({
    name: 'CIRCULATION.NUMBER', group,
    gives: 'how many times the mass it evaporates a gravity-fed coil is fed',
    use: 'To see whether the level in the drum feeds the coil well: the vapour share at the coil’s outlet is 1/N. For the terms behind it use CIRCULATION.PART.',
    arguments: { block: loopBlock, void: voidArgument },
    equation: EQUATION, sources, cautions,
    examples: [
      { formula: `=CIRCULATION.NUMBER(${EXAMPLE_BLOCK})`, value: '12.330' },
      { formula: `=CIRCULATION.NUMBER(${EXAMPLE_BLOCK},"homogeneous")`, value: '15.821' },
    ],
    result: 'number',
    compute: ({ block: given, void: model }) => {
      const found = circulationOf(given, model)
      return isFault(found) ? found : found.circulationNumber
    },
    workings: ({ block: given, void: model }, steps) => circulationSteps(given, model, steps).circulationNumber,
  }),
  define({
    name: 'CIRCULATION.PART', group,
    gives: 'one term of the balance behind CIRCULATION.NUMBER, or a flow or velocity that belongs to it',
    use: 'To see what the driving head is spent on, and where a wider leg, return or circuit would help. The velocity in the return is that of the mixture, vapour and liquid equally fast.',
    arguments: {
      block: loopBlock,
      part: choice('which term: the driving head, what takes it up, or the flow that belongs to it', partNames),
      unit: unit(['pressure', 'velocity', 'mass flow'], { gaugeRefused: 'difference' }),
      void: voidArgument,
    },
    equation: EQUATION, sources, cautions,
    examples: [
      { formula: `=CIRCULATION.PART(${EXAMPLE_BLOCK},"coil friction","psi")`, value: '1.3579' },
      { formula: `=CIRCULATION.PART(${EXAMPLE_BLOCK},"leg velocity","ft/s")`, value: '1.5551' },
    ],
    result: 'as asked',
    compute: ({ block: given, part, unit: asked, void: model }) => {
      const [key, dimension] = PARTS[part]
      if (asked.dimension !== dimension) {
        const accepted = units.filter((one) => one.dimension === dimension && !one.gauge).map(({ code }) => code)
        return wrong(`unit of the result is ${asked.code}, a ${asked.dimension}, but ${part} is a ${dimension}: accepted is ${accepted.join(', ')}`)
      }
      const found = circulationOf(given, model)
      return isFault(found) ? found : found.balance[key]
    },
    workings: ({ block: given, part, unit: asked, void: model }, steps) => partSteps(given, part, asked.dimension, model, steps),
  }),
  define({
    name: 'CIRCULATION.LOSS', group,
    gives: 'what flow and columns of a gravity-fed loop would take up at a circulation number of your choice, all terms together',
    use: 'To draw the loop’s losses over the circulation number: it runs where they meet the driving head, HEAD.PRESSURE of the level. How flat they are tells how far it may swing.',
    arguments: {
      block: loopBlock,
      number: number('circulation number, liquid fed over liquid evaporated', { min: 1, max: GREATEST_NUMBER, limit: 'below 1 the coil dries out; above it is a loop of liquid' }),
      unit: unit(['pressure'], { gaugeRefused: 'difference' }),
      void: voidArgument,
    },
    equation: `leg loss + coil friction + coil acceleration + coil column + return friction + return column at m = N Q/hfg. ${TERMS}`, sources, cautions,
    examples: [{ formula: `=CIRCULATION.LOSS(${EXAMPLE_BLOCK},12.330,"psi")`, value: '2.3178' }],
    result: 'pressure',
    compute: ({ block: given, number: circulationNumber, void: model }) => {
      const loop = loopOf(given)
      return tooRough(loop) ?? losses(balanceAt(circulationNumber, loop, fluidAt(given['drum temperature']), given.load, model))
    },
    workings: ({ block: given, number: circulationNumber, void: model }, steps) => lossSteps(given, circulationNumber, model, steps),
  }),
]

function circulationOf(given: LoopRows, model: SlipModel): Circulation | Fault {
  const loop = loopOf(given)
  return tooRough(loop) ?? circulation(loop, fluidAt(given['drum temperature']), given.load, model)
}

const fluidAt = (drumK: number): LoopFluid => ({ ...saturatedMixture(drumK), latentHeat: latentHeat(drumK) })
