import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { setEntry } from '../../src/workbook/commands.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { readWorkbook, writeWorkbook } from '../../src/workbook/file.ts'
import { markChecked } from '../../src/workbook/review/review-commands.ts'
import { commandLine, DRUM_FILE, type CommandLine } from './cli-fixture.ts'

const AT = '2026-03-02T14:05:00Z'
const KINDS = ['--kind', 'stale-marks', '--kind', 'broken-record']

let cli: CommandLine
beforeAll(async () => {
  cli = await commandLine()
})
afterAll(() => cli.remove())

function marked(): Workbook {
  const read = readWorkbook(DRUM_FILE)
  if (!('workbook' in read)) throw new Error('the drum cannot be read')
  const area = { top: 2, bottom: 2, left: 1, right: 1 }
  return applyEdits(read.workbook, markChecked(read.workbook, { sheet: 'Drum', area, by: 'R. Smith', at: AT, method: 'by hand', note: '' }, () => 170)).workbook
}

describe('check, of a workbook that was reviewed', () => {
  it('is content with marks that stand, and lists those that are stale', async () => {
    const workbook = marked()
    await cli.write('good.lowside.json', writeWorkbook(workbook))
    expect(await cli.run(['check', 'good.lowside.json', ...KINDS])).toEqual({ code: 0, out: ['no findings of this kind'], err: [] })
    await cli.write('stale.lowside.json', writeWorkbook(applyEdits(workbook, setEntry(workbook, 'Drum', { row: 0, column: 1 }, '90')).workbook))
    expect(await cli.run(['check', 'stale.lowside.json', ...KINDS])).toEqual({
      code: 1, err: [], out: ['warning\tDrum!B3\tTwice the load: Mark 1 on Drum!B3, checked by R. Smith on 2026-03-02, is stale: Load (Drum!B1) was 85 TR, is 90 TR.'],
    })
  })

  it('lists a record that was changed outside, as an error', async () => {
    await cli.write('broken.lowside.json', writeWorkbook(marked()).replace(/("what": "marked".*)"by": "R. Smith"/, '$1"by": "A. Jones"'))
    const { code, out } = await cli.run(['check', 'broken.lowside.json', ...KINDS])
    expect([code, out.map((line) => line.split('\t').filter((_, index) => index !== 2))]).toEqual([1, [['error', 'Drum!A1']]])
    expect(out[0]).toContain(`Line 1 of the record (marked, Drum!B3, ${AT}) does not fit`)
  })

  it('keeps marks through a file that other programs read', async () => {
    await cli.write('good.lowside.json', writeWorkbook(marked()))
    expect((await cli.run(['export', 'good.lowside.json', '-o', 'good.xlsx'])).code).toBe(0)
    expect(await cli.run(['check', 'good.xlsx', ...KINDS])).toEqual({ code: 0, out: ['no findings of this kind'], err: [] })
  })
})
