import { describe, expect, it } from 'vitest'
import { fitSaturationTable, type SeriesName } from '../../functions/ammonia/fit-saturation.ts'
import { saturationTable } from '../../functions/ammonia/saturation-table.ts'

const regenerated = fitSaturationTable()
const names = Object.keys(saturationTable.series) as SeriesName[]

/** Another engine version may round a power or logarithm the other way in its last bit; the table keeps well above that. */
const lastBits = 1e-13

describe('the checked-in saturation table is what its generator makes', () => {
  it('same series and intervals', () => {
    expect(names).toEqual(Object.keys(regenerated.series))
    expect(saturationTable.intervals.length).toBe(regenerated.intervals.length)
    saturationTable.intervals.forEach((interval, index) => {
      const fresh = regenerated.intervals[index]
      expect([interval.fromK, interval.toK]).toEqual([fresh?.fromK, fresh?.toK])
      expect(interval.fromLnPa).toBeCloseTo(fresh?.fromLnPa ?? Number.NaN, 12)
      expect(interval.toLnPa).toBeCloseTo(fresh?.toLnPa ?? Number.NaN, 12)
    })
  })

  it.each(names)('same coefficients of %s, to 1e-13 of the largest', (name) => {
    saturationTable.series[name].forEach((row, interval) => {
      const fresh = regenerated.series[name][interval] ?? []
      expect(row).toHaveLength(fresh.length)
      const largest = Math.max(...fresh.map(Math.abs))
      row.forEach((coefficient, k) => {
        expect(Math.abs(coefficient - (fresh[k] ?? Number.NaN))).toBeLessThanOrEqual(lastBits * largest)
      })
    })
  })
})

describe('the table is a plain regular structure, as exported workings need it', () => {
  it('intervals join: 195.55, 240.25, 300.25, 346.75, 373.15 K', () => {
    const { intervals } = saturationTable
    expect(intervals.map(({ fromK }) => fromK)).toEqual([195.55, 240.25, 300.25, 346.75])
    expect(intervals.map(({ toK }) => toK)).toEqual([240.25, 300.25, 346.75, 373.15])
    intervals.slice(1).forEach(({ fromLnPa }, index) => expect(fromLnPa).toBe(intervals[index]?.toLnPa))
  })

  it.each(names)('%s has a row an interval, 13 coefficients a row, falling by 1e9 at least from first to last', (name) => {
    const rows = saturationTable.series[name]
    expect(rows).toHaveLength(saturationTable.intervals.length)
    for (const row of rows) {
      expect(row).toHaveLength(13)
      expect(Math.abs(row[12] ?? Number.NaN)).toBeLessThan(1e-9 * Math.max(...row.map(Math.abs)))
    }
  })
})
