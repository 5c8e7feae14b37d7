import { readFile, writeFile } from 'node:fs/promises'
import { basename, resolve } from 'node:path'
import type { Change } from '../exchange/return/changes.ts'
import type { Accept } from '../exchange/return/return-workbook.ts'
import { readWorkbook, type ReadProblem } from '../workbook/file.ts'
import type { Workbook } from '../workbook/document.ts'
import type { Io } from './io.ts'
import { Refusal } from './refusal.ts'

export const WORKBOOK_ENDING = '.lowside.json'

/** A file that is there but is no workbook, with everything that is wrong with it. */
export class BadWorkbook extends Refusal {
  constructor(path: string, readonly problems: readonly ReadProblem[]) {
    const [first, ...others] = problems
    const more = others.length === 0 ? '' : `; and ${others.length} more: "check ${path}" lists all ${problems.length}`
    super(`${path}: ${first?.message ?? 'cannot be read'}${more}`)
  }
}

/**
 * The workbook of a workbook file, or of a spreadsheet file that Lowside exported: with the inputs that were changed in it since, or with all that was, and a line on
 * standard error about what else was.
 * @throws Refusal, BadWorkbook
 */
export async function openWorkbook(path: string, io: Pick<Io, 'folder'> & Partial<Pick<Io, 'err'>>, accept: Accept = 'inputs'): Promise<Workbook> {
  const { workbook, setAside } = await openWithChanges(path, io, accept)
  const [first] = setAside
  if (first !== undefined) {
    const listed = setAside.slice(0, LISTED).map(changeWords).join('; ')
    const count = setAside.length === 1 ? 'a change' : `${setAside.length} changes`
    io.err?.(`${path}: ${count} ${accept === 'inputs' ? 'beside inputs set aside' : 'that cannot be taken over'}: ${listed}${setAside.length > LISTED ? `; and ${setAside.length - LISTED} more: "check ${path}" lists all` : ''}`)
  }
  return workbook
}

const OPENED = `a workbook file (${WORKBOOK_ENDING}), or a spreadsheet file that Lowside exported (.xlsx, .ods)`

const LISTED = 3

/** The same, with what is not taken over of a spreadsheet file. */
export async function openWithChanges(path: string, io: Pick<Io, 'folder'>, accept: Accept = 'inputs'): Promise<{ readonly workbook: Workbook; readonly setAside: readonly Change[] }> {
  const bytes = await bytesOf(path, io)
  if (isSpreadsheet(path, bytes)) return fromSpreadsheet(path, bytes, accept)
  const result = readWorkbook(utf8(path, bytes, OPENED))
  if ('problems' in result) throw new BadWorkbook(path, result.problems)
  return { workbook: result.workbook, setAside: [] }
}

/** What was changed in a spreadsheet file, in a line without the place. */
export const changeReason = ({ was, is }: Change): string => `in the file ${is}, in Lowside ${was}`

const changeWords = (change: Change): string => `${change.place}: ${changeReason(change)}`

/** By what a zip file begins with, or by the name. */
const isSpreadsheet = (path: string, [first, second]: Uint8Array): boolean => /\.(?:xlsx|ods)$/i.test(path) || (first === 0x50 && second === 0x4b)

async function fromSpreadsheet(path: string, bytes: Uint8Array, accept: Accept) {
  // Most commands begin without.
  const [{ readFileContents }, { returnedWorkbook }] = await Promise.all([import('../exchange/reading/read-file.ts'), import('../exchange/return/return-workbook.ts')])
  const contents = await readFileContents(bytes, basename(path))
  if ('problem' in contents) throw new Refusal(`${path}: ${contents.problem}`)
  const returned = await returnedWorkbook(contents, accept)
  if (returned === undefined) throw new Refusal(`${path}: Lowside did not export this file; "import ${path} -o OUT${WORKBOOK_ENDING}" makes a workbook of its sheets`)
  if ('problem' in returned) throw new Refusal(`${path}: ${returned.problem} "import ${path} -o OUT${WORKBOOK_ENDING}" does that`)
  return returned
}

/** @throws Refusal, where `keep` is set also if there is such a file already */
export async function writeTo(path: string, data: string | Uint8Array, keep: boolean, io: Pick<Io, 'folder'>): Promise<void> {
  try {
    await writeFile(resolve(io.folder, path), data, { flag: keep ? 'wx' : 'w' })
  } catch (error) {
    throw new Refusal(`${path} cannot be written: ${fileReason(error)}`)
  }
}

/** @throws Refusal */
export async function bytesOf(path: string, { folder }: Pick<Io, 'folder'>): Promise<Uint8Array> {
  try {
    return await readFile(resolve(folder, path))
  } catch (error) {
    throw new Refusal(`${path} cannot be read: ${fileReason(error)}`)
  }
}

/** @throws Refusal, which names what is accepted */
export function utf8(path: string, bytes: Uint8Array, accepted: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    throw new Refusal(`${path}: this is no text in UTF-8; accepted: ${accepted}`)
  }
}

const FILE_REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of the path is a file, not a folder',
  EACCES: 'it is not permitted',
  EEXIST: 'there is such a file already; --force replaces it',
  ENOSPC: 'the disk is full',
}

function fileReason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  return FILE_REASONS[code] ?? (error instanceof Error ? error.message : String(error))
}
