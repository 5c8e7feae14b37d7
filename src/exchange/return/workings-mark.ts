import { catalogue } from '../../../functions/catalogue.ts'
import { workingsTables } from '../../../functions/workings/all-tables.ts'
import { sha256 } from './packed-text.ts'

let known: Promise<string> | undefined

/**
 * What the workings of all functions, and their tables, come to in a short text: where that of a file is another one, the file was exported by a Lowside whose
 * functions were written out otherwise, and its workings say nothing about what anyone changed in them.
 */
export function workingsMark(): Promise<string> {
  known ??= sha256(new TextEncoder().encode(rounded(JSON.stringify([catalogue.map(({ name, workings }) => [name, workings]), workingsTables])))).then((hash) => hash.slice(0, 16))
  return known
}

/** Some constants are computed as the program begins, by functions whose last digits differ from one machine to another. */
const rounded = (text: string): string => text.replace(/\d+\.\d+(?:e[+-]?\d+)?/g, (number) => String(Number(Number(number).toPrecision(11))))
