import { readdir } from 'node:fs/promises'
import type { Workbook } from '../workbook/document.ts'
import type { Io } from './io.ts'
import { Refusal } from './refusal.ts'
import { openWorkbook, WORKBOOK_ENDING } from './workbook-file.ts'

/** The names of the templates, in their order. */
export async function templateNames({ templates }: Pick<Io, 'templates'>): Promise<string[]> {
  const files = await readdir(templates)
  return files.filter((file) => file.endsWith(WORKBOOK_ENDING)).map((file) => file.slice(0, -WORKBOOK_ENDING.length)).toSorted()
}

/** @throws Refusal */
export const templateCalled = (name: string, { templates }: Pick<Io, 'templates'>): Promise<Workbook> => openWorkbook(`${name}${WORKBOOK_ENDING}`, { folder: templates })

/** All templates that can be read: one that cannot is one less for a workbook to be like. */
export async function allTemplates(io: Pick<Io, 'templates'>): Promise<Workbook[]> {
  const opened = (await templateNames(io)).map((name) => templateCalled(name, io).catch((fault: unknown) => {
    if (fault instanceof Refusal) return undefined
    throw fault
  }))
  return (await Promise.all(opened)).filter((workbook) => workbook !== undefined)
}
