import type { HandedOver } from '../../calc/messages.ts'
import { answerDerivation } from './answer.ts'
import type { DerivationAnswer, DerivationRequest } from './messages.ts'

/** Derivations on a thread of their own, with a workbook and its values that are handed over: one question, then the thread has served. */
addEventListener('message', ({ data: { question, port } }: MessageEvent<DerivationRequest>) => {
  port.onmessage = ({ data }: MessageEvent<HandedOver>) => {
    try {
      tell(answerDerivation(question, data))
    } catch (fault) {
      tell({ fault: fault instanceof Error ? fault.message : String(fault) })
    }
  }
})

const tell = (answer: DerivationAnswer): void => postMessage(answer)
