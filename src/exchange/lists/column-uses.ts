import { functionByName } from '../../../functions/catalogue.ts'
import { parseReference, type Reference } from '../../workbook/address.ts'
import { calls, type Call } from '../../workbook/formula/calls.ts'
import { referencesIn } from '../../workbook/formula/references.ts'
import { tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import type { ColumnUse, Condition } from './list.ts'

/** What the formulas of a row take from the row itself: by column, the uses and the texts that they understand. */
export interface RowUses {
  readonly uses: ReadonlyMap<number, readonly ColumnUse[]>
  readonly choices: ReadonlyMap<number, readonly string[]>
}

/**
 * Reads the formulas of one row. A use under IF(F8="pipe", …) knows its condition; one under another condition counts as uncertain, since the
 * formula may have provided for what is missing.
 */
export function usesOfRow(formulas: readonly string[], row: number): RowUses {
  const uses = new Map<number, ColumnUse[]>()
  const choices = new Map<number, string[]>()
  const columnHere = (text: string): number | undefined => columnOfRow(parseReference(text.trim()), row)

  for (const formula of formulas) {
    const tokens = tokenise(formula)
    const found = calls(tokens)
    for (const { reference, token } of referencesIn(tokens)) {
      const column = columnOfRow(reference, row)
      if (column === undefined) continue
      const around = found.filter(({ start, end }) => start <= token.start && token.end <= end).toSorted((a, b) => a.depth - b.depth)
      const place = placeOf(formula, around, token, columnHere)
      if (place === undefined) continue
      const inner = around.at(-1)
      const use = inner ? asArgument(formula, inner, token) : undefined
      add(uses, column, { ...place, of: use?.of, range: use?.range, dimension: use?.dimension })
      for (const choice of use?.choices ?? []) addOnce(choices, column, choice)
    }
    for (const { column, text } of comparisons(formula, tokens, columnHere)) addOnce(choices, column, text)
  }
  return { uses, choices }
}

/** Where a token stands among IFs; undefined where it only decides, in a condition. */
function placeOf(formula: string, around: readonly Call[], token: Token, columnHere: (text: string) => number | undefined): Pick<ColumnUse, 'when' | 'certain'> | undefined {
  const when: Condition[] = []
  let certain = true
  for (const call of around) {
    const name = call.name.toUpperCase()
    const at = call.arguments.findIndex(({ start, end }) => start <= token.start && token.end <= end)
    if (name === 'IFERROR') certain = false
    if (name !== 'IF') continue
    if (at === 0) return undefined
    const [test] = call.arguments
    const condition = test && conditionOf(formula.slice(test.start, test.end), columnHere)
    if (condition) when.push(at === 1 ? condition : { ...condition, isOneOf: !condition.isOneOf })
    else certain = false
  }
  return { when, certain }
}

/** `F8="pipe"`, `F8<>"pipe"` or OR(…) of such on one column. */
function conditionOf(text: string, columnHere: (text: string) => number | undefined): Condition | undefined {
  const inside = /^\s*OR\((.*)\)\s*$/is.exec(text)?.[1]
  const parts = (inside ?? text).split(',').map((part) => /^\s*(\$?[A-Z]{1,3}\$?\d+)\s*(=|<>)\s*"([^"]*)"\s*$/i.exec(part))
  const [first] = parts
  const column = first?.[1] === undefined ? undefined : columnHere(first[1])
  if (column === undefined || (inside === undefined && parts.length > 1)) return undefined
  if (parts.some((part) => part?.[1] === undefined || columnHere(part[1]) !== column || part[2] !== first?.[2])) return undefined
  if (inside !== undefined && first?.[2] === '<>') return undefined
  return { column, isOneOf: first?.[2] === '=', texts: parts.flatMap((part) => part?.[3] ?? []) }
}

interface Argued extends Pick<ColumnUse, 'of' | 'range' | 'dimension'> {
  readonly choices: readonly string[]
}

/** What an own function accepts where the token, alone or with its unit, is an argument. */
function asArgument(formula: string, call: Call, token: Token): Argued | undefined {
  const definition = functionByName(call.name)
  const index = call.arguments.findIndex(({ start, end }) => start <= token.start && token.end <= end)
  const extent = call.arguments[index]
  const [name, argument] = definition ? (Object.entries(definition.arguments)[index] ?? []) : []
  if (!definition || !extent || !argument || name === undefined) return undefined
  const text = formula.slice(extent.start, extent.end).trim()
  const isAlone = text === token.text
  const isQuantity = (argument.kind === 'quantity' || argument.kind === 'number') && text.startsWith(`${token.text}&`)
  if (!isAlone && !isQuantity) return undefined
  return {
    of: `${definition.name}: ${argument.words}`,
    range: isQuantity ? argument.range : undefined,
    dimension: isQuantity ? argument.dimensions[0] : undefined,
    choices: isAlone && argument.kind === 'choice' ? argument.choices : [],
  }
}

/** Texts that cells of the row are compared with. */
function comparisons(formula: string, tokens: readonly Token[], columnHere: (text: string) => number | undefined): { readonly column: number; readonly text: string }[] {
  const solid = tokens.filter(({ kind }) => kind !== 'whitespace')
  return solid.flatMap((token, index) => {
    const [operator, text] = [solid[index + 1], solid[index + 2]]
    if (token.kind !== 'reference' || (operator?.text !== '=' && operator?.text !== '<>') || text?.kind !== 'string') return []
    const column = columnHere(formula.slice(token.start, token.end))
    const meant = text.text.slice(1, -1)
    return column === undefined || meant === '' ? [] : [{ column, text: meant }]
  })
}

/** The column of a reference to one cell of that very row of the same sheet. */
function columnOfRow(reference: Reference | undefined, row: number): number | undefined {
  if (!reference || reference.sheet !== null || reference.to !== null || reference.from.row !== row || reference.from.rowAbsolute) return undefined
  return reference.from.column ?? undefined
}

function add<Item>(map: Map<number, Item[]>, key: number, item: Item): void {
  const list = map.get(key)
  if (list) list.push(item)
  else map.set(key, [item])
}

function addOnce(map: Map<number, string[]>, key: number, text: string): void {
  if (!map.get(key)?.includes(text)) add(map, key, text)
}
