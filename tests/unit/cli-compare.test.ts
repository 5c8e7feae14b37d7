import { mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readWorkbook } from '../../src/workbook/file.ts'
import { commandLine, DRUM_FILE, type CommandLine } from './cli-fixture.ts'
import { exported, openElsewhere, savedElsewhere, typeElsewhere } from './return/other-program.ts'

let cli: CommandLine
const [BEFORE, NOW] = ['before.lowside.json', 'now.lowside.json']
/** The drum with another load, a row more, a formula written over and a sheet renamed. */
const NOW_FILE = DRUM_FILE.replace('"B1": [85, "input"]', '"B1": [105, "input"]')
  .replace('"A4": ["Load within reach", "label"], "B4": ["=B1<=100", "check"],', '"A4": ["Spare load", "label"], "B4": [3, "input"], "C4": ["TR", "unit"], "A5": ["Load within reach", "label"], "B5": ["=B1<=100", "check"],')
  .replace('"A5": ["Heads", "label"], "B5": ["2:1", "input"],', '"A6": ["Heads", "label"], "B6": ["2:1", "input"],')
  .replace('"A6": ["Spare", "label"], "B6": [null, "input"], "C6": ["=C1", "unit"]', '"A7": ["Spare", "label"], "B7": [null, "input"], "C7": ["=C1", "unit"]')
  .replace('"name": "Wet return"', '"name": "Wet line"').replace('"A4": ["=Load*1.5", "result"]', '"A4": [130, "result"]')

beforeAll(async () => {
  cli = await commandLine()
  await cli.write(BEFORE, DRUM_FILE)
  await cli.write(NOW, NOW_FILE)
})
afterAll(() => cli.remove())

async function refusal(...args: readonly string[]): Promise<string> {
  const { code, out, err } = await cli.run(args)
  expect({ code, out, lines: err.length }).toEqual({ code: 2, out: [], lines: 1 })
  return err.join()
}

describe('compare', () => {
  it('ends with 0 and says so where nothing differs', async () => {
    await cli.write('again.lowside.json', DRUM_FILE)
    expect(await cli.run(['compare', BEFORE, 'again.lowside.json'])).toEqual({ code: 0, out: ['no differences'], err: [] })
  })

  it('prints a difference a line, then effects, the check that turned first, and ends with 1', async () => {
    const { code, out, err } = await cli.run(['compare', BEFORE, NOW])
    expect({ code, err }).toEqual({ code: 1, err: [] })
    expect(out).toEqual([
      'input\tDrum!B1\tLoad: 85 TR → 105 TR',
      'rows inserted\tDrum\trow 4: not there → 1 row: Spare load 3 TR',
      "sheet renamed\t'Wet line'\tWet return → Wet line",
      "formula overwritten\t'Wet line'!A4\t=Load*1.5 → 130 ft",
      'effect\tDrum!B5\tLoad within reach: TRUE → FALSE, no longer met',
      'effect\tDrum!B3\tTwice the load: 170 TR → 210 TR, +24 %',
      "effect\t'Wet line'!A4\t127.5 ft → 130 ft, +2 %",
    ])
  })

  it('tells the effect on chosen cells alone, by their places now', async () => {
    const { out } = await cli.run(['compare', BEFORE, NOW, '--get', 'Drum!B3', '--get', 'Wet line!A2'])
    expect(out.filter((line) => line.startsWith('effect'))).toEqual(['effect\tDrum!B3\tTwice the load: 170 TR → 210 TR, +24 %', "effect\t'Wet line'!A2\t10 ft → 10 ft, no change"])
  })

  it('prints the same as JSON', async () => {
    const { code, out } = await cli.run(['compare', BEFORE, NOW, '--json'])
    expect(code).toBe(1)
    const told: unknown = JSON.parse(out.join('\n'))
    expect(told).toMatchObject({ resultsCompared: 3, effects: [{ now: 'Drum!B5', before: 'Drum!B4', was: true, is: false, turned: true }, { now: 'Drum!B3', was: 170, is: 210, unit: 'TR' }, {}] })
    expect(told).toHaveProperty('differences.0', { kind: 'input', sheet: 'Drum', now: 'Drum!B1', before: 'Drum!B1', label: 'Load', was: '85 TR', is: '105 TR' })
    expect(told).toHaveProperty('differences.length', 4)
  })

  it('writes a report to sign that loads nothing and runs nothing', async () => {
    const { code, out } = await cli.run(['compare', BEFORE, NOW, '-o', 'report.html'])
    expect({ code, out }).toEqual({ code: 1, out: [] })
    const html = await readFile(join(cli.folder, 'report.html'), 'utf8')
    for (const text of ['Differences between two workbooks', 'One drum: before.lowside.json', 'Checked by', 'Signature', 'not a compliance finding', '85 TR', '105 TR', 'Effects on results', 'no longer met', '=Load*1.5']) expect(html).toContain(text)
    expect(html).toContain("default-src 'none'")
    expect(html).not.toMatch(/<script|src=|https?:/)
  })

  it('takes spreadsheet files that Lowside exported, with formulas that another program wrote over', async () => {
    const read = readWorkbook(DRUM_FILE)
    const book = openElsewhere(await exported('workbook' in read ? read.workbook : expect.fail()))
    typeElsewhere(book, 'Drum', 2, 1, 200)
    await cli.write('back.xlsx', savedElsewhere(book))
    const { code, out } = await cli.run(['compare', BEFORE, 'back.xlsx'])
    expect(code).toBe(1)
    expect(out[0]).toBe('formula overwritten\tDrum!B3\tTwice the load: =B1*2 → 200 TR')
  })

  it('compares with the template that a workbook came from, in its units', async () => {
    const own = await commandLine()
    try {
      const template = await readFile(new URL('../../templates/vessel-sizing.lowside.json', import.meta.url), 'utf8')
      await own.write('vessel-sizing.lowside.json', template)
      // The folder is that of the templates too: workbooks go below it.
      await mkdir(join(own.folder, 'mine'))
      expect((await own.run(['new', 'vessel-sizing', '--units', 'si', '-o', 'mine/drum.lowside.json'])).code).toBe(0)
      expect(await own.run(['compare', 'mine/drum.lowside.json', '--template'])).toEqual({ code: 0, out: ['no differences'], err: [] })
      await own.write('mine/drum.lowside.json', template.replace('"title": "', '"title": "Ours, '))
      expect((await own.run(['compare', 'mine/drum.lowside.json', '--template'])).code).toBe(0)
      await own.write('mine/other.lowside.json', DRUM_FILE)
      expect(await own.run(['compare', 'mine/other.lowside.json', '--template'])).toMatchObject({ code: 2, err: [expect.stringContaining('it is like none of the templates')] })
    } finally {
      await own.remove()
    }
  })

  it('refuses what it cannot do', async () => {
    expect(await refusal('compare', BEFORE)).toContain('NOW missing; usage: compare')
    expect(await refusal('compare', BEFORE, 'none.lowside.json')).toContain('there is no such file')
    expect(await refusal('compare', BEFORE, NOW, '-o', 'report.pdf')).toContain('accepted: a file that ends in .html')
    expect(await refusal('compare', BEFORE, NOW, '-o', 'report.html', '--json')).toContain('give one of the two')
    expect(await refusal('compare', BEFORE, NOW, '--template')).toContain('one argument too many')
    expect(await refusal('compare', BEFORE, NOW, '--case', 'Hot day')).toContain('there is no case "Hot day"')
    expect(await refusal('compare', BEFORE, NOW, '--get', 'Nowhere!A1')).toContain('there is no sheet "Nowhere"')
  })
})
