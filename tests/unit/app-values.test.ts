import { createRoot, createSignal } from 'solid-js'
import { describe, expect, it } from 'vitest'
import type { CalculationService } from '../../src/calc/service.ts'
import type { AreaValues } from '../../src/calc/values.ts'
import type { Area } from '../../src/workbook/address.ts'
import { createValues } from '../../src/app/state/values.ts'

/** A graph whose every value is its version, answering when told to. */
function setUp() {
  const [version, setVersion] = createSignal(1)
  const asked: { readonly area: Area; readonly answer: () => Promise<void> }[] = []
  const read = (_sheet: string, area: Area): Promise<AreaValues> =>
    new Promise((resolve) => {
      const at = version()
      const row = Array.from({ length: area.right - area.left + 1 }, () => at)
      asked.push({ area, answer: async () => {
        resolve({ values: Array.from({ length: area.bottom - area.top + 1 }, () => row), checks: new Map() })
        await new Promise((next) => setTimeout(next))
      } })
    })
  const service = { read } as unknown as CalculationService // only `read` is called here
  const values = createRoot(() => createValues({ version, ask: (call) => call(service) }))
  return { values, asked, setVersion }
}

const FIRST: Area = { top: 0, left: 0, bottom: 3, right: 3 }

describe('the values shown', () => {
  it('are unknown until they are read', async () => {
    const { values, asked } = setUp()
    values.need('Duty', FIRST)
    expect(values.at('Duty', 1, 1)).toBeUndefined()
    await asked[0]?.answer()
    expect(values.at('Duty', 1, 1)).toBe(1)
  })

  it('are not read again while nothing has changed', async () => {
    const { values, asked } = setUp()
    values.need('Duty', FIRST)
    await asked[0]?.answer()
    values.need('Duty', FIRST)
    expect(asked).toHaveLength(1)
  })

  it('stay until the next ones are there', async () => {
    const { values, asked, setVersion } = setUp()
    values.need('Duty', FIRST)
    await asked[0]?.answer()
    setVersion(2)
    values.need('Duty', FIRST)
    expect(values.at('Duty', 1, 1)).toBe(1)
    await asked[1]?.answer()
    expect(values.at('Duty', 1, 1)).toBe(2)
  })

  it('follow many changes during one reading with one reading more', async () => {
    const { values, asked, setVersion } = setUp()
    values.need('Duty', FIRST)
    for (const version of [2, 3, 4]) {
      setVersion(version)
      values.need('Duty', FIRST)
    }
    await asked[0]?.answer()
    await asked[1]?.answer()
    expect(asked).toHaveLength(2)
    expect(values.at('Duty', 1, 1)).toBe(4)
  })

  it('are read in whole blocks that cover what is needed', () => {
    const { values, asked } = setUp()
    values.need('Duty', { top: 60, left: 0, bottom: 70, right: 5 })
    expect(asked.map(({ area }) => [area.top, area.bottom])).toEqual([[0, 63], [64, 127]])
  })

  it('are forgotten with the workbook', async () => {
    const { values, asked } = setUp()
    values.need('Duty', FIRST)
    await asked[0]?.answer()
    values.clear()
    expect(values.at('Duty', 1, 1)).toBeUndefined()
  })
})
