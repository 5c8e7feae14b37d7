import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { commandLine, DRUM_FILE, type CommandLine } from '../cli-fixture.ts'
import { openElsewhere, savedElsewhere, typeElsewhere } from './other-program.ts'

let cli: CommandLine

beforeAll(async () => {
  cli = await commandLine()
  await cli.write('drum.lowside.json', DRUM_FILE)
  expect((await cli.run(['export', 'drum.lowside.json', '-o', 'drum.xlsx'])).code).toBe(0)
})
afterAll(() => cli.remove())

/** The exported file with cells of the sheet Drum typed over by another library. */
async function edited(name: string, ...cells: readonly (readonly [row: number, column: number, typed: number | string])[]): Promise<void> {
  const book = openElsewhere(await readFile(join(cli.folder, 'drum.xlsx')))
  for (const [row, column, typed] of cells) typeElsewhere(book, 'Drum', row, column, typed)
  await cli.write(name, savedElsewhere(book))
}

describe('commands on an exported spreadsheet file', () => {
  it('work as on the workbook', async () => {
    for (const args of [['calc'], ['check'], ['check', '--json']]) {
      const [own, file] = [await cli.run([...args, 'drum.lowside.json']), await cli.run([...args, 'drum.xlsx'])]
      expect(file).toEqual(own)
    }
  })

  it('take inputs over that were changed', async () => {
    await edited('changed.xlsx', [0, 1, 90])
    expect(await cli.run(['calc', 'changed.xlsx', '--get', 'Drum!B3'])).toEqual({ code: 0, out: ['Drum!B3\t180\tTR'], err: [] })
  })

  it('set aside what else was changed, and say so', async () => {
    await edited('overwritten.xlsx', [0, 1, 90], [2, 1, 200])
    const calc = await cli.run(['calc', 'overwritten.xlsx', '--get', 'Drum!B3'])
    expect(calc).toEqual({ code: 0, out: ['Drum!B3\t180\tTR'], err: ['overwritten.xlsx: a change beside inputs set aside: Drum!B3: in the file 200, in Lowside =B1*2'] })
    const check = await cli.run(['check', 'overwritten.xlsx'])
    expect(check.code).toBe(1)
    expect(check.out).toContain('warning\tDrum!B3\tset aside: in the file 200, in Lowside =B1*2')
  })

  it('export it again as the same workbook', async () => {
    await edited('again.xlsx', [0, 1, 90])
    expect((await cli.run(['export', 'again.xlsx', '-o', 'twice.xlsx'])).code).toBe(0)
    expect((await cli.run(['calc', 'twice.xlsx', '--get', 'Drum!B1'])).out).toEqual(['Drum!B1\t90\tTR'])
  })

  it('refuse a file that Lowside did not export, and say what would do', async () => {
    const book = openElsewhere(await readFile(join(cli.folder, 'drum.xlsx')))
    delete book.Sheets['Lowside workbook']
    book.SheetNames.pop()
    if (book.Workbook?.Sheets) book.Workbook.Sheets.pop()
    await cli.write('foreign.xlsx', savedElsewhere(book))
    const { code, err } = await cli.run(['calc', 'foreign.xlsx'])
    expect({ code, err }).toEqual({ code: 2, err: ['lowside calc: foreign.xlsx: Lowside did not export this file; "import foreign.xlsx -o OUT.lowside.json" makes a workbook of its sheets'] })
  })
})

