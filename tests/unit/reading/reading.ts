import type { FileContents, ReadCell } from '../../../src/exchange/reading/contents.ts'
import { readFileContents, type ReadingOptions } from '../../../src/exchange/reading/read-file.ts'
import { parseAddress } from '../../../src/workbook/address.ts'

/** The contents of a file that is expected to be read. */
export async function contents(file: Uint8Array | string, name = 'file.csv', options: ReadingOptions = {}): Promise<FileContents> {
  const found = await readFileContents(typeof file === 'string' ? new TextEncoder().encode(file) : file, name, options)
  if ('problem' in found) throw new Error(found.problem)
  return found
}

/** Why a file is not read; empty if it is. */
export async function problem(file: Uint8Array | string, name = 'file.xlsx'): Promise<string> {
  const found = await readFileContents(typeof file === 'string' ? new TextEncoder().encode(file) : file, name)
  return 'problem' in found ? found.problem : ''
}

export function cell(of: FileContents, address: string, sheet = 0): ReadCell | undefined {
  const place = parseAddress(address)
  return place && of.sheets[sheet]?.rows[place.row]?.[place.column]
}

export const values = (of: FileContents, sheet = 0): unknown[][] => Array.from(of.sheets[sheet]?.rows ?? [], (row) => Array.from(row ?? [], (one) => one?.value ?? null))

export const words = (of: FileContents): string => of.remarks.map(({ place, words: said }) => `${place}: ${said}`).join('\n')
