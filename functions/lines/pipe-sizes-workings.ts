import { block, num, unless, type Expression } from '../workings/expression.ts'
import type { WorkingsTable } from '../workings/tables.ts'
import type { Steps } from '../workings/workings.ts'
import { inchesIn } from './pipe-size-argument.ts'
import { pipeBore, pipeSizes, REACHED, schedules, type PipeSize } from './pipe-sizes.ts'

/** How people write a size of so many inches; formulas look for the very text, whatever its capitals. */
export function pipeSizeSpellings(size: PipeSize): string[] {
  const [whole, fraction] = /^(?:(\d+)-)?(\d\/\d)$/.exec(size)?.slice(1) ?? [size]
  const sign = fraction === undefined ? undefined : SIGNS[fraction]
  const decimal = String(inchesIn(size))
  const bare = sign === undefined
    ? [size]
    : whole === undefined ? [size, sign, decimal, decimal.slice(1)] : [size, `${whole} ${fraction}`, `${whole}${sign}`, `${whole} ${sign}`, decimal]
  return bare.flatMap((text) => [`NPS ${text}`, `NPS${text}`, ...['', ' in', 'in', ' in.', 'in.', ' inch', ' inches', '"', '″', ' NPS'].map((unit) => text + unit)])
}

const SIGNS: Readonly<Record<string, string>> = { '1/4': '¼', '1/2': '½', '3/4': '¾' }

const spelled = pipeSizes.flatMap((size, index) => pipeSizeSpellings(size).map((spelling) => ({ spelling, row: index + 1 })))

/** Sizes a row, schedules a column; then how a size may be written in a cell. */
export const pipeSizesWorkingsTable: WorkingsTable = {
  name: 'pipe',
  title: 'Steel pipe: inside diameters (m), a row a nominal size, a column a schedule; 0 where the standard has no such wall',
  source: 'ASME B36.10M, walls in inches from memory, agreeing with the standard’s metric walls to 0.02 mm',
  blocks: {
    row: pipeSizes.map((_, index) => [index + 1]),
    size: pipeSizes.map((size) => [size]),
    // Non-null: the table's own sizes are numbers of inches.
    inches: pipeSizes.map((size) => [inchesIn(size)!]),
    schedule: [schedules],
    bore: pipeSizes.map((size) => schedules.map((schedule) => pipeBore(size, schedule) ?? 0)),
    spelling: spelled.map(({ spelling }) => [spelling]),
    spelledRow: spelled.map(({ row }) => [row]),
  },
}

const of = (name: string): Expression => block('pipe', name)

/** The inside diameter of a size, m, in workings; an error where the size is not written as listed, or has no such wall. */
export function pipeBoreSteps(size: Expression, schedule: Expression, steps: Steps): Expression {
  const at = steps.step('size, row of its spelling', '', `IF(ISNUMBER(${size}),0,MATCH(TRIM(${size}),${of('spelling')},0))`)
  // MATCH takes * and ? for any letters: what it finds has to be the text itself.
  const listed = unless(`INDEX(${of('spelling')},${at})=TRIM(${size})`, `INDEX(${of('spelledRow')},${at})`)
  const row = steps.step('size, row of the pipe', '', `IF(ISNUMBER(${size}),MATCH(${size},${of('inches')},0),${listed})`)
  const bore = steps.step('bore, 0 where there is none', 'm', `INDEX(${of('bore')},${row},MATCH(${schedule},${of('schedule')},0))`)
  return unless(`${bore}>0`, bore)
}

/** The smallest size with at least a bore, in workings; an error where even the largest has less. */
export function nextPipeSizeSteps(boreM: Expression, schedule: Expression, steps: Steps): Expression {
  const tooSmall = `(${of('bore')}<${boreM}*${num(1 - REACHED)})`
  const first = `SUMPRODUCT(MIN(${of('row')}+${BEYOND}*${tooSmall}+${BEYOND}*(${of('schedule')}<>${schedule})))`
  const row = steps.step(`row of the first pipe that is wide enough, above ${BEYOND} where none is`, '', first)
  return `INDEX(${of('size')},${unless(`${row}<${BEYOND}`, row)})`
}

/** Above any row of the table. */
const BEYOND = 1000
