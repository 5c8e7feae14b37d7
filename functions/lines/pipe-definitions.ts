import { choice, quantityOf, unit, type SiQuantity } from '../arguments.ts'
import { define, type FunctionDefinition, type Source } from '../define.ts'
import { outOfRange, type Fault } from '../fault.ts'
import { formatQuantity } from '../units/format.ts'
import { bareSi } from '../workings/workings.ts'
import { boreArgument, lengthArgument } from './line-arguments.ts'
import { crossSection, crossSectionOf } from './pipe-loss.ts'
import { pipeSizeArgument } from './pipe-size-argument.ts'
import { nextPipeSizeSteps, pipeBoreSteps } from './pipe-sizes-workings.ts'
import { largestBore, nextPipeSize, pipeBore, schedules, schedulesOf, type Schedule } from './pipe-sizes.ts'

const group = 'Liquid holdup and charge'

const schedule = choice('schedule of the wall: "40", "80", or the weights "STD" standard and "XS" extra strong', schedules)

const B36_10M: Source = {
  cite: 'ASME B36.10M, welded and seamless wrought steel pipe: diameters and walls in inches written down from memory, agreeing with the standard’s metric walls in the public library fluids to 0.02 mm',
  confidence: 'confirmed',
}
const CYLINDER: Source = { cite: 'Volume of a cylinder', confidence: 'confirmed' }

const SCHEDULES =
  'Schedule 40 is STD up to 10 in, schedule 80 is XS up to 8 in; above, they differ. The standard has no schedule 40 of size 22. Sizes 3-1/2, 5 and 22 are seldom in stock.'
const WALL_BY_CODE =
  'A size is not a pressure rating: the wall follows from the piping code adopted (ASME B31.5), with material, mill tolerance, corrosion and threads; small threaded ammonia lines take schedule 80 (common practice).'

export const pipeDefinitions: readonly FunctionDefinition[] = [
  define({
    name: 'PIPE.VOLUME', group,
    gives: 'the internal volume of a straight pipe',
    use: 'For the charge of a line (HOLDUP.MASS) and the holdup of headers and coils. For vessels with heads use VESSEL.VOLUME.',
    arguments: { bore: boreArgument, length: lengthArgument('length of the pipe, fittings included as they lie'), unit: unit(['volume']) },
    equation: 'V = π/4 D² L',
    sources: [CYLINDER],
    cautions: ['Give the length that is laid, not the equivalent length used for pressure losses.'],
    examples: [{ formula: '=PIPE.VOLUME("4.026 in","100 ft","ft3")', value: '8.8405' }],
    result: 'volume',
    compute: ({ bore, length }) => crossSection(bore) * length,
    workings: ({ bore, length }) => `${crossSectionOf(bore)}*${length}`,
  }),
  define({
    name: 'PIPE.BORE', group,
    gives: 'the inside diameter of standard steel pipe',
    use: 'Wherever a function asks for a bore. The inverse is PIPE.NEXT.',
    arguments: { size: pipeSizeArgument, schedule, unit: unit(['length']) },
    equation: 'D = outside diameter − 2 × wall, by nominal size and schedule',
    sources: [B36_10M], cautions: [SCHEDULES, WALL_BY_CODE],
    examples: [
      { formula: '=PIPE.BORE("4","40","in")', value: '4.026' },
      { formula: '=PIPE.BORE("1-1/4","XS","in")', value: '1.278' },
    ],
    result: 'length',
    compute: ({ size, schedule: wanted }) =>
      pipeBore(size, wanted) ?? outOfRange(`schedule is ${wanted}; accepted for size ${size} is ${schedulesOf(size).join(', ')} (ASME B36.10M has no other wall for it here)`),
    workings: (given, steps) => pipeBoreSteps(given.size, given.schedule, steps),
  }),
  define({
    name: 'PIPE.NEXT', group,
    gives: 'the smallest standard pipe size with at least a bore, as text',
    use: 'From a computed bore to a pipe that can be bought; put it into PIPE.BORE and compute the line again with the bore it really has.',
    arguments: { bore: quantityOf(['length'], 'inside diameter needed', { above: 0, limit: 'a pipe has a bore' }), schedule },
    equation: 'the first of the sizes 1/2 … 24 whose bore is at least the bore given (within 1e-9 of it)',
    sources: [B36_10M], cautions: [SCHEDULES, WALL_BY_CODE],
    examples: [{ formula: '=PIPE.NEXT("2.2 in","40")', value: '2-1/2' }],
    result: 'text',
    compute: ({ bore, schedule: wanted }) => nextPipeSize(bore.si, wanted) ?? largerThanListed(bore, wanted),
    workings: (given, steps) => nextPipeSizeSteps(bareSi(given.bore), given.schedule, steps),
  }),
]

function largerThanListed(bore: SiQuantity, schedule: Schedule): Fault {
  const show = (si: number) => formatQuantity(si, bore.unit)
  return outOfRange(`bore is ${show(bore.si)}; accepted is at most ${show(largestBore(schedule))} (size 24, the largest listed, in schedule ${schedule})`)
}
