import type { ExportFormat, ExportRequest, ExportResponse } from '../../calc/export-thread.ts'
import type { CalculationService } from '../../calc/service.ts'
import type { ThreadWork } from '../state/in-sight.ts'
import { WorkStopped } from '../state/long-work.ts'
import { templates } from './library.ts'

const sheetsThread = (): Worker => new Worker(new URL('../../exchange/worker.ts', import.meta.url), { type: 'module' })

const THREADS: Readonly<Record<ExportFormat, () => Worker>> = {
  xlsx: sheetsThread,
  ods: sheetsThread,
  csv: sheetsThread,
  html: () => new Worker(new URL('../../report/worker.ts', import.meta.url), { type: 'module' }),
}

/** Makes a file of the open workbook on a thread of its own, which gets what it needs from the calculation's thread. */
export function startExport(service: CalculationService, format: ExportFormat, date: Date, report: (share: number | undefined) => void): ThreadWork<Uint8Array<ArrayBuffer>> {
  const thread = THREADS[format]()
  const { port1, port2 } = new MessageChannel()
  let stop = (): void => undefined
  let isOver = false
  const result = new Promise<Uint8Array<ArrayBuffer>>((resolve, reject) => {
    stop = () => reject(new WorkStopped('The export was stopped.'))
    thread.addEventListener('message', ({ data }: MessageEvent<ExportResponse>) => {
      if ('share' in data) report(data.share)
      else if ('file' in data) resolve(data.file)
      else reject(new Error(data.fault))
    })
    thread.addEventListener('error', ({ message }) => reject(new Error(message ? `The export ended: ${message}` : NOT_SERVED)))
    begin().catch(reject)
  }).finally(() => {
    isOver = true
    thread.terminate()
  })
  return { result, stop: () => stop() }

  async function begin(): Promise<void> {
    // A report says what there is to look at, laid beside the template that it came from.
    const files = format === 'html' ? await Promise.all(templates.map((template) => template.file())) : []
    if (isOver) return
    thread.postMessage({ port: port2, format, date, templates: files } satisfies ExportRequest, [port2])
    // The other formats show the case that is current.
    await service.handOver(port1, format === 'xlsx' || format === 'ods')
  }
}

/** A thread whose script cannot be had ends with an event that says nothing. */
const NOT_SERVED = 'The export cannot be loaded: Lowside is served no more. Start it again where it was started, then export again; nothing of the workbook is lost.'
