import type { CellValue } from '../../calc/values.ts'
import type { ReadValue } from '../reading/contents.ts'

/**
 * A number with fifteen significant digits, as other programs write them: what differs in the sixteenth, where a double has one, is the same. Writing it out
 * so again changes nothing, so that a file may go through any number of programs.
 */
export const sameDigits = (value: number): string => String(Number(value.toPrecision(15)) + 0)

/** A text as every program gives it back: line breaks in one form, and what XML cannot hold as the sign for that. */
export function sameText(text: string): string {
  return PLAIN.test(text) ? text : text.replace(/\r\n?/g, '\n').replace(/\p{Surrogate}/gu, '\ufffd').replace(NOT_XML, '\ufffd')
}

const PLAIN = /^[\t\n\u0020-\ud7ff]*$/
// oxlint-disable-next-line no-control-regex
const NOT_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g

/** A value in a short form that is the same for values that are; an error is an error of whatever kind, no text is nothing. */
export function valueKey(value: CellValue | ReadValue): string {
  if (value === null || value === '') return ''
  if (typeof value === 'number') return `n${sameDigits(value)}`
  if (typeof value === 'boolean') return `b${value}`
  return typeof value === 'object' ? 'e' : `t${sameText(value)}`
}

/** Numbers that two machines come to from the same: the last digits of powers and logarithms differ between them. */
export const isNear = (one: number, other: number): boolean => Math.abs(one - other) <= 1e-12 * Math.max(Math.abs(one), Math.abs(other))

/** Whether what one machine has computed is what another has. */
export const sameComputed = (one: CellValue | ReadValue, other: CellValue | ReadValue): boolean =>
  typeof one === 'number' && typeof other === 'number' ? isNear(one, other) : valueKey(one) === valueKey(other)

/** A value as a line of a list shows it. */
export function valueWords(value: CellValue | ReadValue): string {
  if (value === null || value === '') return 'nothing'
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE'
  return typeof value === 'object' ? value.error : String(value)
}
