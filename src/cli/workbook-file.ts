import { readFile, writeFile } from 'node:fs/promises'
import { resolve } from 'node:path'
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

/** @throws Refusal, BadWorkbook */
export async function openWorkbook(path: string, io: Pick<Io, 'folder'>): Promise<Workbook> {
  if (/\.xlsx$/i.test(path)) throw new Refusal(`${path}: this version reads ${WORKBOOK_ENDING} files only, no spreadsheet files; give the workbook it was exported from`)
  const result = readWorkbook(utf8(path, await bytesOf(path, io)))
  if ('problems' in result) throw new BadWorkbook(path, result.problems)
  return result.workbook
}

/** @throws Refusal, where `keep` is set also if there is such a file already */
export async function writeTo(path: string, data: string | Uint8Array, keep: boolean, io: Pick<Io, 'folder'>): Promise<void> {
  try {
    await writeFile(resolve(io.folder, path), data, { flag: keep ? 'wx' : 'w' })
  } catch (error) {
    throw new Refusal(`${path} cannot be written: ${fileReason(error)}`)
  }
}

async function bytesOf(path: string, { folder }: Pick<Io, 'folder'>): Promise<Uint8Array> {
  try {
    return await readFile(resolve(folder, path))
  } catch (error) {
    throw new Refusal(`${path} cannot be read: ${fileReason(error)}`)
  }
}

function utf8(path: string, bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    throw new Refusal(`${path}: this is no text in UTF-8; accepted: a workbook file (${WORKBOOK_ENDING})`)
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
