import { describe, expect, it } from 'vitest'
import { catalogue, functionByName } from '../../functions/catalogue.ts'
import { isCellError } from '../../src/calc/values.ts'
import { calls } from '../../src/workbook/formula/calls.ts'
import { tokenise } from '../../src/workbook/formula/tokenise.ts'
import { evaluate } from '../unit/catalogue-examples.ts'
import { checkValues, type CheckValue, type Kind } from './catalogue-check-values.ts'

/** What is derived here or remembered is a check, but does not come from outside the project. */
const KINDS: Readonly<Record<Kind, { readonly column: string; readonly outside: boolean }>> = {
  'printed in a published document': { column: 'printed', outside: true },
  'computed with an independent library': { column: 'library', outside: true },
  'derived in closed form': { column: 'derived', outside: false },
  'from memory': { column: 'memory', outside: false },
}
const kinds = Object.keys(KINDS) as readonly Kind[] // the keys are the kinds

const rowsOf = (name: string): readonly CheckValue[] => checkValues.filter((row) => row.function === name)

describe.each(catalogue.map(({ name }) => name))('%s', (name) => {
  it.each(rowsOf(name))('$formula is $value ($kind: $source)', ({ formula, value, tolerance }) => {
    expect(calls(tokenise(formula)).map((call) => call.name)).toContain(name)
    const computed = evaluate(formula)
    if (tolerance === 'same text') expect(computed).toBe(value)
    else {
      expect(computed, isCellError(computed) ? computed.message : '').toEqual(expect.any(Number))
      expect(Math.abs(Number(computed) - Number(value))).toBeLessThanOrEqual('absolute' in tolerance ? tolerance.absolute : tolerance.relative * Math.abs(Number(value)))
    }
  })
})

it('checks no function that there is not', () => {
  expect(checkValues.filter((row) => functionByName(row.function)?.name !== row.function)).toEqual([])
})

it('every function has a check value from outside the project, and workings', () => {
  const unchecked = catalogue.filter(({ name }) => !rowsOf(name).some(({ kind }) => KINDS[kind].outside)).map(({ name }) => name)
  const unworked = catalogue.filter(({ workings }) => workings === undefined).map(({ name }) => name)
  const heads = ['group', 'function', ...kinds.map((kind) => KINDS[kind].column), 'examples', 'workings']
  const lines = catalogue.map(({ name, group, examples, workings }) => [
    group, name, ...kinds.map((kind) => String(rowsOf(name).filter((row) => row.kind === kind).length)), String(examples.length), workings === undefined ? 'no' : 'yes',
  ])
  const count = catalogue.length
  const totals = `${count} functions; ${count - unchecked.length} with a check value from outside; ${count - unworked.length} with workings`
  console.log([...padded([heads, ...lines]), totals].join('\n'))
  expect({ unchecked, unworked }).toEqual({ unchecked: [], unworked: [] })
})

/** Columns of one width each, a rule under the heads; words to the left, counts to the right. */
function padded(table: readonly (readonly string[])[]): string[] {
  const widths = (table[0] ?? []).map((_, column) => Math.max(...table.map((row) => (row[column] ?? '').length)))
  const [head = '', ...body] = table.map((row) => row.map((text, i) => (i < 2 ? text.padEnd(widths[i] ?? 0) : text.padStart(widths[i] ?? 0))).join('  ').trimEnd())
  return [head, widths.map((width) => '-'.repeat(width)).join('  '), ...body]
}
