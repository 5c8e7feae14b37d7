import type { Unreadable } from '../reading/contents.ts'
import type { ReadingResponse } from '../reading/messages.ts'
import type { Change } from './changes.ts'

export interface ReturnRequest {
  readonly file: File
}

/** Reading the file; comparing it with what the export of its workbook writes. */
export type ReturnStep = 'reading' | 'comparing'

/** A file that came back: its workbook as the text of a workbook file, and what was changed. */
export interface ReturnedFile {
  readonly text: string
  readonly title: string
  readonly exported: Date
  readonly changes: readonly Change[]
}

/** How far it is; and at last what the file is. Of a foreign file, and of one whose workbook is damaged, the contents follow as from reading alone. */
export type ReturnResponse =
  | { readonly step: ReturnStep; readonly share: number | undefined }
  | { readonly unreadable: Unreadable }
  | { readonly returned: ReturnedFile }
  | { readonly foreign: { readonly damaged?: string } }
  | { readonly part: ReadingResponse }
