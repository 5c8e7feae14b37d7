import type { DerivationAnswer, DerivationQuestion, DerivationRequest } from '../../../review/derivation/messages.ts'
import type { ThreadWork } from '../../state/in-sight.ts'
import { WorkStopped } from '../../state/long-work.ts'
import type { Session } from '../../state/session.ts'

type Told = Exclude<DerivationAnswer, { readonly fault: string }>

/** Asks a thread of its own, which gets the workbook and its values from the calculation's. */
export function askDerivation(service: Session['service'], question: DerivationQuestion): ThreadWork<Told> {
  const thread = new Worker(new URL('../../../review/derivation/worker.ts', import.meta.url), { type: 'module' })
  const { port1, port2 } = new MessageChannel()
  let stop = (): void => undefined
  const result = new Promise<Told>((resolve, reject) => {
    stop = () => reject(new WorkStopped('It was stopped.'))
    thread.addEventListener('message', ({ data }: MessageEvent<DerivationAnswer>) => ('fault' in data ? reject(new Error(data.fault)) : resolve(data)))
    thread.addEventListener('error', ({ message }) => reject(new Error(message ? `It ended before its end: ${message}` : NOT_SERVED)))
    thread.postMessage({ question, port: port2 } satisfies DerivationRequest, [port2])
    service.handOver(port1, false).catch(reject)
  }).finally(() => thread.terminate())
  return { result, stop: () => stop() }
}

const NOT_SERVED = 'What derives cannot be loaded: Lowside is served no more. Start it again where it was started, then try again; nothing of the workbook is lost.'
