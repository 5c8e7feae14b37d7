import type { HandedOver } from './messages.ts'

/** What a workbook can be exported as: the kinds of file by their endings. */
export type ExportFormat = 'xlsx' | 'ods' | 'csv' | 'html'

/** What an export needs: where the workbook and its values come in, what is wanted of them, and the day that the file names. */
export interface ExportRequest {
  readonly port: MessagePort
  readonly format: ExportFormat
  readonly date: Date
  /** The workbook files of the templates, for what holds the workbook against them. */
  readonly templates: readonly Blob[]
}

/** How much of an export is done, from 0 to 1, and at last the file; or in words why there is none. */
export type ExportResponse = { readonly share: number | undefined } | { readonly file: Uint8Array<ArrayBuffer> } | { readonly fault: string }

/** Makes the file, and may tell from time to time what share of it is done. */
type Make = (handed: HandedOver, date: Date, report: (share: number | undefined) => void, format: ExportFormat, templates: readonly Blob[]) => Uint8Array | Promise<Uint8Array>

/** On a thread for exports: answers each request with what is made of the workbook that comes over its port. */
export function answerExports(make: Make): void {
  addEventListener('message', ({ data: { port, format, date, templates } }: MessageEvent<ExportRequest>) => {
    port.onmessage = async ({ data }: MessageEvent<HandedOver>) => {
      try {
        const file = new Uint8Array(await make(data, date, (share) => answer({ share }), format, templates))
        answer({ file }, [file.buffer])
      } catch (fault) {
        answer({ fault: fault instanceof Error ? fault.message : String(fault) })
      }
    }
  })
}

const answer = (response: ExportResponse, transfer: Transferable[] = []): void => postMessage(response, { transfer })
