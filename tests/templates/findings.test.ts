import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import type { Finding } from '../../src/review/finding.ts'
import { findingPlace, findingWords } from '../../src/review/finding-words.ts'
import { KINDS } from '../../src/review/kinds.ts'
import { reviewed } from '../../src/review/reviewed.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { at } from '../unit/workbook-of.ts'
import { readTemplate } from './open-template.ts'

const files = readdirSync(new URL('../../templates', import.meta.url)).filter((name) => name.endsWith('.lowside.json'))
const templates = files.map((name) => readTemplate(`templates/${name}`))
const shipped = [...files.map((name, index) => [name, templates[index]] as const), ['demo-data/tallowmere', readTemplate('demo-data/tallowmere.lowside.json')] as const]
  .flatMap(([name, workbook]) => (workbook ? [{ name, workbook }] : []))

const findingsOf = (workbook: Workbook): readonly Finding[] => reviewed(workbook, new Graph(workbook).allAreas(), templates).findings
const isOpen = ({ accepted }: Finding): boolean => accepted === undefined
const told = (finding: Finding): string => `${finding.kind}, ${findingPlace(finding)}: ${findingWords(finding)}`

describe('findings in what comes with Lowside', () => {
  const found = new Map(shipped.map(({ name, workbook }) => [name, findingsOf(workbook)]))

  it.each(shipped)('$name has none that is not accepted', ({ name }) => {
    expect(found.get(name)?.filter(isOpen).map(told)).toEqual([])
  })

  it.each(shipped)('each acceptance in $name counts for a finding, says why, and came with the template', ({ name, workbook }) => {
    for (const one of workbook.review?.accepted ?? []) {
      expect(found.get(name)?.filter(({ accepted }) => accepted === one).map(told), `${one.kind} ${one.key}`).not.toEqual([])
      expect(one.note).toMatch(/^\p{Lu}.{40,}\.$/u)
      expect([one.by, one.at]).toEqual([undefined, undefined])
    }
    expect(workbook.review?.record ?? []).toEqual([])
    expect(workbook.review?.marks ?? []).toEqual([])
  })

  it('are few, so that accepting is no habit', () => {
    const counts = KINDS.flatMap(({ kind }) => {
      const count = shipped.reduce((sum, { workbook }) => sum + (workbook.review?.accepted.filter((one) => one.kind === kind).length ?? 0), 0)
      return count === 0 ? [] : [[kind, count] as const]
    })
    console.log(`accepted in the templates and the demo: ${counts.map(([kind, count]) => `${kind} ${count}`).join(', ')}`)
    const inTemplates = templates.reduce((sum, { review }) => sum + (review?.accepted.length ?? 0), 0)
    expect(inTemplates).toBeLessThanOrEqual(2 * templates.length)
  })

  it('come up as soon as what was accepted is something else', () => {
    const basis = templates[files.indexOf('basis.lowside.json')]
    if (basis === undefined) throw new Error('no template basis')
    const changed = applyEdits(basis, setEntry(basis, 'Basis', at('C50'), '=AND(UNIT.CONVERT(site_elevation,"m")>=-500,UNIT.CONVERT(site_elevation,"m")<=4000)')).workbook
    expect(findingsOf(changed).filter(isOpen).filter(({ kind }) => kind === 'buried-numbers').map(({ key }) => key)).toEqual(['−500; 4000'])
  })
})
