/** Where a file goes: the place the user chooses, or the browser's folder for downloads. */
export interface FileKind {
  readonly description: string
  readonly mimeType: string
  readonly ending: `.${string}`
}

export const WORKBOOK_FILE: FileKind = { description: 'Lowside workbook', mimeType: 'application/json', ending: '.lowside.json' }
export const SPREADSHEET_FILE: FileKind = {
  description: 'Spreadsheet (ECMA-376)', mimeType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet', ending: '.xlsx',
}
export const OPEN_SPREADSHEET_FILE: FileKind = { description: 'Spreadsheet (OpenDocument)', mimeType: 'application/vnd.oasis.opendocument.spreadsheet', ending: '.ods' }
/** Several files of comma-separated values in one. */
export const VALUES_FILE: FileKind = { description: 'Values (RFC 4180) in one zip file', mimeType: 'application/zip', ending: '.csv.zip' }
export const DIFFERENCES_FILE: FileKind = { description: 'Report of differences', mimeType: 'text/html', ending: '.differences.html' }
export const REPORT_FILE: FileKind = { description: 'Calculation report', mimeType: 'text/html', ending: '.html' }

/** The part of the File System Access interface that is used; not every browser has it. */
interface SavePicker {
  showSaveFilePicker?(options: {
    readonly suggestedName: string
    readonly types: readonly { readonly description: string; readonly accept: Readonly<Record<string, readonly string[]>> }[]
  }): Promise<FileSystemFileHandle>
}

/** Writes a file; false if the user thought better of it. `content` is made after the place is chosen. */
export async function saveFile(title: string, kind: FileKind, content: () => Promise<BlobPart>): Promise<boolean> {
  const suggestedName = fileName(title) + kind.ending
  const { showSaveFilePicker } = globalThis as SavePicker
  if (!showSaveFilePicker) {
    download(new Blob([await content()], { type: kind.mimeType }), suggestedName)
    return true
  }
  try {
    // An ending of two parts is not accepted in the list of endings, but is in the name.
    const ending = kind.ending.slice(kind.ending.lastIndexOf('.'))
    const handle = await showSaveFilePicker.call(globalThis, { suggestedName, types: [{ description: kind.description, accept: { [kind.mimeType]: [ending] } }] })
    // All of it is made before any of it is written: what is stopped leaves the file as it was.
    const made = new Blob([await content()], { type: kind.mimeType })
    const writable = await handle.createWritable()
    await writable.write(made)
    await writable.close()
    return true
  } catch (problem) {
    if (problem instanceof DOMException && problem.name === 'AbortError') return false
    throw problem
  }
}

/** The file the user chooses; undefined if none. */
export function chooseFile(accept: string): Promise<File | undefined> {
  return new Promise((resolve) => {
    const input = document.createElement('input')
    input.type = 'file'
    input.accept = accept
    input.addEventListener('change', () => resolve(input.files?.[0]))
    input.addEventListener('cancel', () => resolve(undefined))
    input.click()
  })
}

/** A title as a file's name on any system. */
export const fileName = (title: string): string =>
  title.normalize('NFC').replace(/[^\p{L}\p{N} ._-]+/gu, ' ').replace(/\s+/g, ' ').replace(/^[. ]+|[. ]+$/g, '').slice(0, 80) || 'workbook'

function download(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // The browser has taken the address by the next task.
  setTimeout(() => URL.revokeObjectURL(url), 0)
}
