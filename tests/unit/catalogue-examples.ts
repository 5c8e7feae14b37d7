import { expect } from 'vitest'
import type { Given, Scalar } from '../../functions/given.ts'
import type { Example, FunctionDefinition } from '../../functions/define.ts'
import { Graph } from '../../src/calc/graph.ts'
import { emptyWorkbook } from '../../src/workbook/document.ts'
import { calls } from '../../src/workbook/formula/calls.ts'
import { tokenise } from '../../src/workbook/formula/tokenise.ts'
import { printedGap } from '../published/ammonia-printed.ts'

const graph = new Graph(emptyWorkbook('', 'Sheet'))

/** The value of a formula in an empty workbook, through the formula engine as any cell's. */
export const evaluate = (formula: string) => graph.evaluate(formula, 'Sheet')

/** Holds a computed value to the one that an example prints: a number within half a unit of the last printed digit, a text exactly. */
export function expectPrinted(computed: unknown, { value }: Example, { result }: FunctionDefinition): void {
  if (result === 'text') expect(computed).toBe(value)
  else {
    expect(value).toMatch(/^-?\d+(\.\d+)?(e-?\d+)?$/)
    expect(computed).toEqual(expect.any(Number))
    expect(printedGap(Number(computed), value)).toBeLessThanOrEqual(1)
  }
}

/** What the function's first example hands to it: values that are right, for tests that then spoil one of them. */
export function exampleArguments(definition: FunctionDefinition): Given[] {
  const { formula } = definition.examples[0]
  const call = calls(tokenise(formula)).find(({ name }) => name.toUpperCase() === definition.name)
  if (call === undefined) throw new Error(`the example ${formula} does not call ${definition.name}`)
  return call.arguments.map(({ start, end }) => given(formula.slice(start, end)))
}

function given(text: string): Given {
  const block = /^\s*\{(.*)\}\s*$/s.exec(text)?.[1]
  if (block !== undefined) return { rows: block.split(';').map((row) => row.split(',').map(scalar)) }
  return scalar(text)
}

function scalar(text: string): Scalar {
  const value = evaluate(`=${text}`)
  if (typeof value === 'object' && value !== null) throw new Error(`${text} in an example gives ${value.error}: ${value.message}`)
  return value
}
