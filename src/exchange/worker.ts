import type { HandedOver } from '../calc/messages.ts'
import { exportXlsx } from './xlsx.ts'

/** What an export needs: where the workbook and its values come in, and the day that the file names. */
export interface ExportRequest {
  readonly port: MessagePort
  readonly date: Date
}

/** How much of an export is done, from 0 to 1, and at last the file; or in words why there is none. */
export type ExportResponse = { readonly share: number | undefined } | { readonly file: Uint8Array<ArrayBuffer> } | { readonly fault: string }

addEventListener('message', ({ data: { port, date } }: MessageEvent<ExportRequest>) => {
  port.onmessage = ({ data: { workbook, values } }: MessageEvent<HandedOver>) => {
    try {
      const file = new Uint8Array(exportXlsx(workbook, values, { date, report: (share) => answer({ share }) }))
      answer({ file }, [file.buffer])
    } catch (fault) {
      answer({ fault: fault instanceof Error ? fault.message : String(fault) })
    }
  }
})

const answer = (response: ExportResponse, transfer: Transferable[] = []): void => postMessage(response, { transfer })
