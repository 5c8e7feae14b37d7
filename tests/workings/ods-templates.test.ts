import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { exportOds } from '../../src/exchange/ods.ts'
import { readTemplate } from '../templates/open-template.ts'
import { changedInputs, DATE, differences, formulasKept, inputAfter, valuesAfter } from './exported.ts'
import { openInput } from './open-document.ts'
import { recalculatedPlainly } from './recalculated.ts'

const TEMPLATES = readdirSync(fileURLToPath(new URL('../../templates', import.meta.url))).filter((name) => name.endsWith('.lowside.json')).map((name) => `templates/${name}`)
const TIMEOUT = 600_000

describe.each([...TEMPLATES, 'demo-data/tallowmere.lowside.json'])('%s, exported to OpenDocument', (path) => {
  const workbook = readTemplate(path)

  it('recalculates from changed inputs alone in an engine of standard functions, to 1e-9 of Lowside', { timeout: TIMEOUT }, async () => {
    const file = openInput(await exportOds(workbook, new Graph(workbook).allValues(), { date: DATE }))
    const { kept, all } = formulasKept(workbook, file)
    expect(kept).toBe(all)
    const changes = changedInputs(workbook, 5)
    const values = valuesAfter(workbook, changes)
    expect(values).not.toEqual(new Graph(workbook).allValues())
    expect(differences(workbook, values, recalculatedPlainly(inputAfter(file, changes)))).toEqual([])
  })
})
