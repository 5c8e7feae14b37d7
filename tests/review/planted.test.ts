import { describe, expect, it } from 'vitest'
import { findingPlace, findingWords } from '../../src/review/finding-words.ts'
import { cleanWorkbooks } from './clean.ts'
import { PLANTS } from './planted/all.ts'
import { falseAlarms, howFound, openFindings, review } from './score.ts'

/*
 * Forty workbooks with a fault each, as reviewers meet them, and workbooks with none. The set was made before what finds them; nobody tunes it to
 * what is found. It prints how each is found, so that a fault that is found by less than before is seen.
 */

describe('faults planted in workbooks', () => {
  const led = PLANTS.map(review)
  const byFindings = led.filter(({ findings }) => findings.length > 0)
  const byWarnings = led.filter(({ findings }) => findings.some(({ severity }) => severity !== 'remark'))
  const found = led.filter(({ findings, differences }) => findings.length + differences.length > 0)

  console.log(led.map((one) => {
    const kinds = [howFound(one).join(', '), [...new Set(one.differences.map(({ kind }) => kind))].join(', ')]
    return `${one.plant.fault}\n    findings: ${kinds[0] || '–'}; differences: ${one.plant.before ? kinds[1] || '–' : 'nothing to compare with'}`
  }).join('\n'))
  console.log(`${found.length} of ${PLANTS.length} found; ${byFindings.length} by findings alone, ${byWarnings.length} of them by an error or a warning`)

  it('are forty, each of which changes its workbook', () => {
    expect(PLANTS).toHaveLength(40)
    expect(new Set(PLANTS.map(({ fault }) => fault)).size).toBe(40)
    for (const { fault, base, plant } of PLANTS) expect(plant(base), fault).not.toBe(base)
  })

  it('are found by findings and differences: at least 38', () => {
    expect(led.filter((one) => !found.includes(one)).map(({ plant }) => plant.fault).slice(2)).toEqual([])
    expect(found.length).toBeGreaterThanOrEqual(38)
  })
})

describe('what is said of them', () => {
  it('is in sentences, each beginning with no small letter', () => {
    const reasons = PLANTS.flatMap(({ base, plant }) => openFindings(plant(base)).map(({ reason }) => reason))
    expect(reasons.length).toBeGreaterThan(40)
    expect([...new Set(reasons)].filter((reason) => /^[a-z]/.test(reason) || !/[.!?]$/.test(reason))).toEqual([])
  })
})

describe('a workbook in which nothing is wrong', () => {
  it.each(cleanWorkbooks())('$name: at most one false alarm', ({ workbook }) => {
    const alarms = falseAlarms(workbook).map((finding) => `${finding.kind}, ${findingPlace(finding)}: ${findingWords(finding)}`)
    if (alarms.length > 0) console.log(alarms.join('\n'))
    expect(alarms.slice(1)).toEqual([])
  })
})
