import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { writeWorkbook } from '../../../src/workbook/file.ts'
import { commandLine, type CommandLine } from '../cli-fixture.ts'
import { inventory, vesselListText } from './read-list.ts'

const BAD = 'Tag,Orientation,ID [mm],Length [m],Heads,Temp [°C],Qty,Room,Suction,Normal fill [%],Max fill [%],Type\nV-1,Vert.,600,2.5,2:1,-10,1,Dock,High,25,30,Surge drum\nV-2,Vert.,abc,2.5,2:1,-10,1,Dock,High,25,30,Surge drum\n'

describe('import --list', () => {
  let line: CommandLine
  const into = ['--into', 'plant.lowside.json', '--list', 'Charge']
  beforeAll(async () => {
    line = await commandLine()
    await line.write('plant.lowside.json', writeWorkbook(inventory()))
    await line.write('vessels.csv', vesselListText())
    await line.write('bad.csv', BAD)
  })
  afterAll(() => line.remove())

  it('appends the rows of a file and ends with 0', async () => {
    expect(await line.run(['import', 'vessels.csv', ...into, '-o', 'all.lowside.json'])).toEqual({ code: 0, out: ['300 rows appended to Charge'], err: [] })
    const { out } = await line.run(['calc', 'all.lowside.json', '--get', 'Charge!O7'])
    expect(out[0]).toMatch(/^Charge!O7\t5106\.4/)
  })
  it('tells problems row by row, and writes nothing while there are some', async () => {
    const ended = await line.run(['import', 'bad.csv', ...into, '-o', 'none.lowside.json'])
    expect(ended.code).toBe(2)
    expect(ended.err).toEqual([
      'bad.csv: row 3, Inside diameter: “abc” not a number; accepted: a number in a unit of length: m, mm, cm, in, ft, µm',
      'lowside import: bad.csv: 1 of 2 rows have problems, nothing is written; --skip-bad leaves them out',
    ])
    await expect(readFile(join(line.folder, 'none.lowside.json'))).rejects.toThrow('ENOENT')
  })
  it('leaves bad rows out if asked to, and ends with 1', async () => {
    const ended = await line.run(['import', 'bad.csv', ...into, '-o', 'some.lowside.json', '--skip-bad'])
    expect([ended.code, ended.out]).toEqual([1, ['1 row appended to Charge, 1 left out']])
  })
  it('takes a mapping from a file, and says what does not fit', async () => {
    const mapping = { name: 'Client', list: 'Charge', headings: [], columns: [{ to: 'Part (tag)', from: 'Tag' }, { to: 'Shape', constant: 'volume' }, { to: 'Volume given', constant: '2' }, { to: 'How many', from: 'Qty' }, { to: 'Temperature', from: 'Temp [°C]', unit: '°C' }, { to: 'Filled in operation', constant: '20' }, { to: 'Filled at most', constant: '30' }] }
    await line.write('client.json', JSON.stringify(mapping))
    expect(await line.run(['import', 'bad.csv', ...into, '--mapping', 'client.json', '-o', 'mapped.lowside.json'])).toMatchObject({ code: 0, out: ['2 rows appended to Charge'] })
    await line.write('client.json', JSON.stringify({ ...mapping, columns: [{ to: 'Part (tag)', from: 'Number' }] }))
    expect((await line.run(['import', 'bad.csv', ...into, '--mapping', 'client.json', '-o', 'x.lowside.json'])).err[0]).toContain('the file has no column “Number”; the file has "Tag"')
  })
  it('refuses a list that is not there, and its options without one', async () => {
    expect((await line.run(['import', 'bad.csv', '--into', 'plant.lowside.json', '--list', 'Vessels', '-o', 'x.lowside.json'])).err[0]).toContain('has no such list; it has "Charge", "Charge totals: By zone"')
    expect(await line.run(['import', 'bad.csv', '--list', 'Charge', '-o', 'x.lowside.json'])).toMatchObject({ code: 2 })
    expect(await line.run(['import', 'bad.csv', '--skip-bad', '-o', 'x.lowside.json'])).toMatchObject({ code: 2 })
  })
})
