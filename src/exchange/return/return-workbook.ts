import type { Workbook } from '../../workbook/document.ts'
import { applyEdits } from '../../workbook/edits.ts'
import type { FileContents } from '../reading/contents.ts'
import { canBeTaken, isAsked, type Change } from './changes.ts'
import { changesInFile } from './find-changes.ts'
import { ownWorkbook, type DamagedWorkbook } from './own-workbook.ts'
import { isTaken, takeOver, type Decisions } from './take-over.ts'

/** How much of what was changed in a file is taken over without asking. */
export type Accept = 'all' | 'inputs' | 'none'

export interface Returned {
  readonly workbook: Workbook
  readonly taken: readonly Change[]
  /** What is not taken over. */
  readonly setAside: readonly Change[]
}

/** The workbook of a file that Lowside exported, with what was changed in it since; undefined of a file of anyone else's. */
export async function returnedWorkbook(contents: FileContents, accept: Accept): Promise<Returned | DamagedWorkbook | undefined> {
  const own = await ownWorkbook(contents)
  if (own === undefined || 'problem' in own) return own
  const changes = changesInFile(own, contents)
  const decisions = decisionsFor(changes, accept)
  return {
    workbook: applyEdits(own.workbook, takeOver(own.workbook, changes, decisions)).workbook,
    taken: changes.filter((change) => isTaken(change, decisions)),
    setAside: changes.filter((change) => !isTaken(change, decisions)),
  }
}

export const decisionsFor = (changes: readonly Change[], accept: Accept): Decisions => ({
  inputs: accept !== 'none',
  taken: new Set(accept === 'all' ? changes.filter((change) => isAsked(change) && canBeTaken(change)).map(({ id }) => id) : []),
  setAside: false,
})
