import { describe, expect, it } from 'vitest'
import type { CalculationRequest, CalculationResponse, LoadRequest } from '../../src/calc/messages.ts'
import { createCalculationClient, type CalculationThread } from '../../src/app/calculation/client.ts'

/** A thread whose answers the test gives itself. */
function fakeThread() {
  const sent: (CalculationRequest | LoadRequest)[] = []
  const listeners: { message?: (event: { data: CalculationResponse }) => void; error?: (event: { message: string }) => void } = {}
  const thread: CalculationThread = {
    postMessage: (message) => void sent.push(message),
    addEventListener: (type: 'message' | 'error', listener: unknown) => void Object.assign(listeners, { [type]: listener }),
    terminate: () => undefined,
  }
  return { thread, sent, answer: (data: CalculationResponse) => listeners.message?.({ data }), fail: (message: string) => listeners.error?.({ message }) }
}

describe('the calculation client', () => {
  it('sends a call as one message with its method and arguments', () => {
    const { thread, sent } = fakeThread()
    void createCalculationClient(thread).read('Duty', { top: 0, left: 0, bottom: 1, right: 1 })
    expect(sent).toEqual([{ id: 1, method: 'read', args: ['Duty', { top: 0, left: 0, bottom: 1, right: 1 }] }])
  })

  it('gives each call its own answer, in whatever order they come', async () => {
    const { thread, answer } = fakeThread()
    const client = createCalculationClient(thread)
    const both = Promise.all([client.evaluate('=1+1', 'Duty'), client.evaluate('=2+2', 'Duty')])
    answer({ id: 2, result: 4 })
    answer({ id: 1, result: 2 })
    expect(await both).toEqual([2, 4])
  })

  it('rejects with the fault’s message', async () => {
    const { thread, answer } = fakeThread()
    const call = createCalculationClient(thread).states()
    answer({ id: 1, fault: 'no workbook has been opened' })
    await expect(call).rejects.toThrow('no workbook has been opened')
  })

  it('rejects what is waiting when the thread fails or is closed', async () => {
    const { thread, fail } = fakeThread()
    const client = createCalculationClient(thread)
    const failed = client.states()
    fail('out of memory')
    await expect(failed).rejects.toThrow('The calculation stopped: out of memory')
    const closed = client.states()
    client.close()
    await expect(closed).rejects.toThrow('closed')
  })
})
