import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../../src/calc/graph.ts'
import { exportOds } from '../../../src/exchange/ods.ts'
import { readFileContents } from '../../../src/exchange/reading/read-file.ts'
import { changesInFile } from '../../../src/exchange/return/find-changes.ts'
import { ownWorkbook } from '../../../src/exchange/return/own-workbook.ts'
import type { Workbook } from '../../../src/workbook/document.ts'
import { readTemplate } from '../../templates/open-template.ts'
import { contentsOf, EXPORTED, exported, openElsewhere, savedElsewhere } from './other-program.ts'

const FILES = ['templates', 'demo-data'].flatMap((folder) => readdirSync(new URL(`../../../${folder}`, import.meta.url)).filter((name) => name.endsWith('.lowside.json')).map((name) => `${folder}/${name}`))

describe.each(FILES)('%s as a spreadsheet file', (path) => {
  const workbook: Workbook = readTemplate(path)

  it('comes back as the same workbook, without any change', async () => {
    const contents = contentsOf(openElsewhere(await exported(workbook)))
    const own = await ownWorkbook(contents)
    if (own === undefined || 'problem' in own) return expect.fail(own?.problem ?? 'not known as an own file')
    expect(own.workbook).toEqual(workbook)
    expect(changesInFile(own, contents)).toEqual([])
  })

  it('comes back so after another library has read and written it', async () => {
    const contents = contentsOf(openElsewhere(savedElsewhere(openElsewhere(await exported(workbook)))))
    const own = await ownWorkbook(contents)
    if (own === undefined || 'problem' in own) return expect.fail(own?.problem ?? 'not known as an own file')
    expect(own.workbook).toEqual(workbook)
    expect(changesInFile(own, contents)).toEqual([])
  })

  it('comes back so as an OpenDocument file', async () => {
    const contents = await readFileContents(await exportOds(workbook, new Graph(workbook).allValues(), { date: EXPORTED }), 'a.ods')
    if ('problem' in contents) return expect.fail(contents.problem)
    const own = await ownWorkbook(contents)
    if (own === undefined || 'problem' in own) return expect.fail(own?.problem ?? 'not known as an own file')
    expect(own.workbook).toEqual(workbook)
    expect(changesInFile(own, contents)).toEqual([])
  })
})
