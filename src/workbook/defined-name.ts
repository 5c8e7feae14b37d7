import { LETTERS } from './address.ts'
import { foldCase } from './document.ts'

const ACCEPTED = 'a letter or _, then letters, digits, _ or ., up to 255 characters, nothing that reads as a cell'
const SHAPE = new RegExp(`^[${LETTERS}_][${LETTERS}0-9_.]{0,254}$`)

/** What reads as an address (in either notation), a value, or a member that every object has. */
const TAKEN = /^(?:[a-z]+[0-9]+|r[0-9]*c?[0-9]*|c[0-9]*|true|false|__proto__|constructor|prototype)$/i

/** What is wrong with a defined name, with what is accepted; undefined if nothing is. */
export function definedNameProblem(name: string, others: Iterable<string> = []): string | undefined {
  const quoted = JSON.stringify(name)
  if (!SHAPE.test(name)) return `name ${quoted} is not accepted; accepted: ${ACCEPTED}`
  if (TAKEN.test(name)) return `name ${quoted} reads as something else; accepted: ${ACCEPTED}`
  const folded = foldCase(name)
  for (const other of others) {
    if (foldCase(other) === folded && other !== name) return `name ${quoted} is taken by "${other}", upper and lower case being the same`
  }
  return undefined
}
