import { describe, expect, it } from 'vitest'
import { startReading } from '../../../src/app/files/reading-client.ts'
import { WorkStopped } from '../../../src/app/state/long-work.ts'
import type { FileContents } from '../../../src/exchange/reading/contents.ts'
import { contentsInParts, type ReadingRequest, type ReadingResponse } from '../../../src/exchange/reading/messages.ts'

/** A thread that does what a test says, and knows whether it was ended. */
class TestThread extends EventTarget {
  ended = false
  readonly #does: (thread: TestThread, request: ReadingRequest) => void
  constructor(does: (thread: TestThread, request: ReadingRequest) => void) {
    super()
    this.#does = does
  }
  postMessage(request: ReadingRequest): void {
    queueMicrotask(() => this.#does(this, request))
  }
  terminate(): void {
    this.ended = true
  }
  answer(data: ReadingResponse): void {
    this.dispatchEvent(new MessageEvent('message', { data: structuredClone(data) }))
  }
  fail(message?: string): void {
    this.dispatchEvent(Object.assign(new Event('error', { cancelable: true }), { message }))
  }
}

const FILE = new File(['a,b'], 'vessels.csv')
function start(does: (thread: TestThread, request: ReadingRequest) => void, secondsAtMost = 60) {
  const thread = new TestThread(does)
  const shares: (number | undefined)[] = []
  // Only what is used of a thread is there.
  return { thread, shares, ...startReading(FILE, (share) => shares.push(share), { secondsAtMost, thread: () => thread as unknown as Worker }) }
}

const CONTENTS: FileContents = {
  kind: 'xlsx', names: new Map([['Rate', 'A!$A$1']]), remarks: [{ place: '', words: 'x' }],
  sheets: [
    { name: 'A', hidden: false, widthsPx: [64], rows: Array.from({ length: 30_000 }, (_, row) => (row % 3 === 1 ? undefined : [{ value: row }, undefined, { value: `t${row}`, formula: 'A1' }])) },
    { name: 'Empty', hidden: true, widthsPx: [], rows: [] },
    { name: '__proto__', hidden: false, widthsPx: [], rows: [undefined, [{ value: { error: '#N/A' } }]] },
  ],
}

describe('reading on a thread', () => {
  it('contents come in parts and are the same as before', async () => {
    const messages = [...contentsInParts(CONTENTS)]
    expect(messages.length).toBeGreaterThan(5)
    const { result, thread, shares } = start((own) => {
      own.answer({ share: 0.5 })
      for (const message of messages) own.answer(message)
    })
    const found = await result
    expect('sheets' in found && found.sheets.map(({ rows }) => rows.length)).toEqual([30_000, 0, 2])
    expect(found).toEqual(CONTENTS)
    expect(shares).toEqual([0.5])
    expect(thread.ended).toBe(true)
  })

  it('why a file is not read', async () => {
    expect(await start((own) => own.answer({ unreadable: { problem: 'No.' } })).result).toEqual({ problem: 'No.' })
  })

  it('stopped: the thread is ended', async () => {
    const { result, stop, thread } = start(() => undefined)
    stop()
    await expect(result).rejects.toBeInstanceOf(WorkStopped)
    expect(thread.ended).toBe(true)
  })

  it('too slow: given up with a message', async () => {
    const { result, thread } = start(() => undefined, 0.01)
    expect(await result).toEqual({ problem: '“vessels.csv” took longer than 0.01 seconds to read and was given up. Leave out sheets that are not needed, save it again, and try that. The open workbook is as it was.' })
    expect(thread.ended).toBe(true)
  })

  it('a thread that dies: a message, nothing thrown', async () => {
    const { result, thread } = start((own) => {
      own.answer({ share: 0.1 })
      own.fail()
    })
    expect(await result).toEqual({ problem: 'Reading “vessels.csv” ended before its end, most likely because memory ran out. Leave out sheets that are not needed, save it again, and try that. The open workbook is as it was.' })
    expect(thread.ended).toBe(true)
  })

  it('a thread whose script cannot be had', async () => {
    expect(await start((own) => own.fail()).result).toEqual({ problem: 'The file cannot be read: Lowside is served no more. Start it again where it was started, then try again; nothing of the workbook is lost.' })
  })
})
