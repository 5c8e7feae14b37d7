import { findUnit } from '../../functions/units/units.ts'
import { eachCell } from './cells.ts'
import type { Workbook } from './document.ts'
import { meantText } from './entry.ts'
import { counterpart, type UnitSystem } from './unit-pairs.ts'

/** Of which system the unit cells of a workbook are; undefined where none belongs to one of them alone. */
export function unitsInUse({ sheets }: Workbook): UnitSystem | 'mixed' | undefined {
  const systems = new Set<UnitSystem>()
  for (const sheet of sheets) {
    eachCell(sheet, ({ role, content }) => {
      const code = role === 'unit' ? findUnit(meantText(content) ?? '')?.code : undefined
      if (code === undefined) return
      if (counterpart(code, 'SI') !== undefined) systems.add('US')
      if (counterpart(code, 'US') !== undefined) systems.add('SI')
    })
  }
  const [system] = systems
  return systems.size === 2 ? 'mixed' : system
}
