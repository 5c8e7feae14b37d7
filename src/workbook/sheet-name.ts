import { foldCase } from './document.ts'

const ACCEPTED = "1 to 31 characters, none of []:*?/\\, no ' at either end"

/** Names that stand for something else in the objects that file libraries keep sheets in. */
const RESERVED = new Set(['__proto__', 'constructor', 'prototype', 'hasownproperty', 'tostring', 'valueof', 'history'])

/**
 * What is wrong with a sheet's name, with what is accepted; undefined if nothing is.
 * The bounds are those of the spreadsheet files that a workbook is exported to.
 */
export function sheetNameProblem(name: string, others: Iterable<string> = []): string | undefined {
  const quoted = JSON.stringify(name)
  const wrong =
    name.trim() === '' ? 'is blank'
    : name.length > 31 ? `has ${name.length} characters`
    : /[[\]:*?/\\]/.test(name) ? 'has a character of []:*?/\\'
    : hasControlCharacter(name) ? 'has a control character'
    : name.startsWith("'") || name.endsWith("'") ? "begins or ends with '"
    : RESERVED.has(foldCase(name)) ? 'is reserved'
    : undefined
  if (wrong) return `sheet name ${quoted} ${wrong}; accepted: ${ACCEPTED}`
  const folded = foldCase(name)
  for (const other of others) {
    if (foldCase(other) === folded) return `sheet name ${quoted} is taken by "${other}"; accepted: a name that no other sheet has, in upper or lower case`
  }
  return undefined
}

function hasControlCharacter(name: string): boolean {
  return [...name].some((character) => character < ' ' || character === '\u007f')
}
