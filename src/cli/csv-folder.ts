import { lstat, mkdir, readdir, readFile, rm } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { METADATA_FILE } from '../exchange/csv/csv-metadata.ts'
import type { Part } from '../exchange/package/zip.ts'
import type { Io } from './io.ts'
import { Refusal } from './refusal.ts'
import { writeTo } from './workbook-file.ts'

/**
 * Writes files into a folder, which is made if there is none. An earlier export there is replaced, with the files of sheets that are no more.
 * @throws Refusal where something else is in the place
 */
export async function writeCsvFolder(path: string, parts: Iterable<Part>, io: Pick<Io, 'folder'>): Promise<void> {
  const folder = resolve(io.folder, path)
  const before = await earlierFiles(path, folder)
  await mkdir(folder, { recursive: true }).catch((error: unknown) => {
    throw new Refusal(`the folder ${path} cannot be made: ${error instanceof Error ? error.message : String(error)}`)
  })
  const written = new Set<string>()
  for (const { name, text } of parts) {
    await writeTo(join(path, name), [...text].join(''), false, io)
    written.add(name)
  }
  for (const name of before) if (!written.has(name)) await rm(join(folder, name), { force: true })
}

/** The tables that an earlier export has left in the folder. */
async function earlierFiles(path: string, folder: string): Promise<readonly string[]> {
  const there = await lstat(folder).catch(() => undefined)
  if (there === undefined) return []
  if (!there.isDirectory()) throw new Refusal(`${path} is a file, and values go into a folder, a file a sheet; give the folder another name, or move the file away`)
  const names = await readdir(folder)
  if (names.length === 0) return []
  const listed = await tablesOf(join(folder, METADATA_FILE))
  if (listed === undefined) throw new Refusal(`the folder ${path} holds other files; give the name of a new or empty folder, or of an earlier export`)
  return names.filter((name) => listed.has(name))
}

/** The files that a description of ours names; undefined where there is none. */
async function tablesOf(path: string): Promise<ReadonlySet<string> | undefined> {
  try {
    const described: unknown = JSON.parse(await readFile(path, 'utf8'))
    if (typeof described !== 'object' || described === null || !('dc:creator' in described) || described['dc:creator'] !== 'Lowside') return undefined
    const tables: readonly unknown[] = 'tables' in described && Array.isArray(described.tables) ? described.tables : []
    return new Set(tables.flatMap((table) => {
      const url = typeof table === 'object' && table !== null && 'url' in table ? table.url : undefined
      return typeof url === 'string' && url.endsWith('.csv') ? [decodeURIComponent(url)] : []
    }))
  } catch {
    return undefined
  }
}
