import { createInterface } from 'node:readline'
import { Graph } from '../calc/graph.ts'
import { isCellError, type CellValue } from '../calc/values.ts'
import { emptyWorkbook } from '../workbook/document.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { printValue } from './print-value.ts'
import { BadUsage } from './refusal.ts'

/** Values of formulas without a workbook. No options: a formula may begin with "-". */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const formulas = args[0] === '--' ? args.slice(1) : args
  if (formulas.length === 0) throw new BadUsage('FORMULA missing')
  const evaluate = evaluator()
  if (args.length === 1 && args[0] === '-') return evaluateLines(evaluate, io)
  let failed = false
  for (const formula of formulas) {
    const value = evaluate(formula)
    if (isCellError(value)) {
      failed = true
      io.err(`${value.error}: ${formula}: ${value.message}`)
    } else io.out(printValue(value))
  }
  return failed ? NOT_MET : FINE
}

async function evaluateLines(evaluate: Evaluate, { input, out }: Io): Promise<ExitCode> {
  let failed = false
  for await (const formula of createInterface({ input, crlfDelay: Infinity })) {
    const value = evaluate(formula)
    if (isCellError(value)) failed = true
    out(JSON.stringify(isCellError(value) ? { formula, ...value } : { formula, value }))
  }
  return failed ? NOT_MET : FINE
}

type Evaluate = (formula: string) => CellValue

function evaluator(): Evaluate {
  const graph = new Graph(emptyWorkbook())
  const sheet = graph.workbook.sheets[0]?.name ?? ''
  return (formula) => {
    const trimmed = formula.trim()
    return graph.evaluate(trimmed.startsWith('=') ? trimmed : `=${trimmed}`, sheet)
  }
}
