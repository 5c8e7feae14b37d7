import type { Token } from '../../workbook/formula/tokenise.ts'

/** The rows of an array constant `{1,"m";2,"kg"}`; undefined where the tokens are something else. */
export function arrayConstant(tokens: readonly Token[]): readonly (readonly (number | string)[])[] | undefined {
  if (tokens[0]?.kind !== 'openBrace' || tokens.at(-1)?.kind !== 'closeBrace') return undefined
  const rows: (number | string)[][] = [[]]
  let sign = 1
  for (const { kind, text } of tokens.slice(1, -1)) {
    const row = rows.at(-1)
    if (kind === 'number') row?.push(sign * Number(text))
    else if (kind === 'string') row?.push(text.slice(1, -1).replaceAll('""', '"'))
    else if (kind === 'separator' && text === ';') rows.push([])
    else if (kind !== 'separator' && kind !== 'whitespace' && text !== '-') return undefined
    sign = text === '-' ? -1 : 1
  }
  return rows
}
