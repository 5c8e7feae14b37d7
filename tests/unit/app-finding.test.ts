import { createRoot } from 'solid-js'
import { describe, expect, it } from 'vitest'
import { createFinding } from '../../src/app/state/finding.ts'
import { createLongWork, type LongWork } from '../../src/app/state/long-work.ts'
import type { Session } from '../../src/app/state/session.ts'
import { emptyWorkbook, type Workbook } from '../../src/workbook/document.ts'

const ROWS = 60_000
const workbook: Workbook = {
  ...emptyWorkbook(),
  sheets: [{ name: 'List', columns: [], frozen: [0, 0], rows: Array.from({ length: ROWS }, (_, row) => [{ content: `V-${row}`, role: 'label' as const }, { content: `=${row}*2`, role: 'result' as const }]) }],
}

/** A finding whose graph answers a moment after it is asked. */
function open(work: LongWork = createLongWork()) {
  const session = {
    work, sheetName: () => 'List', document: { workbook: () => workbook },
    recalculation: {
      ask: (call: (service: unknown) => unknown) => new Promise((resolve) => setTimeout(() => resolve(call({
        read: (_sheet: string, { top, bottom }: { top: number; bottom: number }) => ({ values: Array.from({ length: bottom - top + 1 }, (_, row) => [(top + row) * 2]), checks: new Map() }),
      })))),
    },
  } as unknown as Session
  return createRoot((close) => ({ ...createFinding(session), close }))
}

const isWhole = ({ state, found }: ReturnType<typeof open>) => expect.poll(() => state() === 'whole' && found().length > 0, { timeout: 30_000 }).toBe(true)

describe('looking through a large workbook', () => {
  it('finds all that each cell alone has, in the order of the rows, and lets others go first meanwhile', async () => {
    const finding = open()
    finding.setText('99')
    let turns = 0
    const timer = setInterval(() => turns++)
    await isWhole(finding)
    clearInterval(timer)
    const expected = Array.from({ length: ROWS }, (_, row) => row).filter((row) => `V-${row}`.includes('99') || `=${row}*2`.includes('99'))
    expect([...new Set(finding.found().map(({ row }) => row))]).toEqual(expected)
    expect(turns).toBeGreaterThan(0)
    finding.close()
  })

  it('shows what is found of values before it is through, and keeps that after a stop', async () => {
    let stop = (): void => undefined
    const finding = open({ ...createLongWork(), begin: (_words, given = () => undefined) => ((stop = given), { report: () => undefined, end: () => undefined }) })
    finding.setPlace('values')
    finding.setText('0')
    await expect.poll(finding.state, { interval: 2, timeout: 30_000 }).toBe('searching')
    expect(finding.found()[0]).toEqual({ sheet: 'List', row: 0, column: 0, text: 'V-0' })
    stop()
    await expect.poll(finding.state, { timeout: 30_000 }).toBe('stopped')
    const stoppedAt = finding.found().length
    finding.setWhole(true)
    finding.setText('2000')
    await isWhole(finding)
    expect(finding.found()).toEqual([{ sheet: 'List', row: 1000, column: 1, text: '2000' }])
    expect(stoppedAt).toBeGreaterThan(0)
    finding.close()
  })
})
