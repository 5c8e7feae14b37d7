import type { Link } from './link.ts'

const LOAD = '=UNIT.CONVERT({Zones: Load},{unit})'
const DRUM_TEMPERATURE = '=UNIT.CONVERT({Zones: Drum},{unit})'
const COIL_VOLUME = '=UNIT.CONVERT({Drums: Volume of its coils},{unit})'
const DRUM_DIAMETER = '=UNIT.CONVERT({Drums: Inside diameter},{unit})'
const DRUM_LENGTH = '=UNIT.CONVERT({Drums: Tangent length},{unit})'
const ACCUMULATOR_DIAMETER = '=UNIT.CONVERT({Accumulators: Inside diameter},{unit})'
const ACCUMULATOR_LENGTH = '=UNIT.CONVERT({Accumulators: Tangent length},{unit})'

/** What comes from another sheet in the plant. Zones and drums stand in the same order on every sheet. */
export const LINKS: readonly Link[] = [
  { sheet: 'Drums', input: 'Zone', formula: '={Zones: Zone}' },
  { sheet: 'Drums', input: 'Suction level', formula: '={Zones: Suction level}' },
  { sheet: 'Drums', input: 'Load', formula: LOAD },
  { sheet: 'Drums', input: 'Drum temperature', formula: DRUM_TEMPERATURE },

  { sheet: 'Circulation', input: 'Drum temperature (saturation)', formula: '=UNIT.CONVERT({Duty: Drum temperature (saturation)},{unit})' },

  { sheet: 'Feed', input: 'Drum', formula: '={Drums: Drum}' },
  { sheet: 'Feed', input: 'Load', formula: LOAD },
  { sheet: 'Feed', input: 'Drum temperature', formula: DRUM_TEMPERATURE },

  { sheet: 'Accumulators', input: 'Drums that return', formula: '={Zones: Zone}' },
  { sheet: 'Accumulators', input: 'Suction level', formula: '={Zones: Suction level}' },
  { sheet: 'Accumulators', input: 'Load', formula: LOAD },
  { sheet: 'Accumulators', input: 'Drum temperature', formula: DRUM_TEMPERATURE },
  { sheet: 'Accumulators', input: 'Coil volume', formula: COIL_VOLUME },

  { sheet: 'Relief', input: 'Vessel', formula: '={Drums: Drum}' },
  { sheet: 'Relief', input: 'Inside diameter', formula: DRUM_DIAMETER },
  { sheet: 'Relief', input: 'Tangent length', formula: DRUM_LENGTH },
  { sheet: 'Relief', input: 'Inside diameter', formula: ACCUMULATOR_DIAMETER, from: [9] },
  { sheet: 'Relief', input: 'Tangent length', formula: ACCUMULATOR_LENGTH, from: [9] },

  { sheet: 'Charge', input: 'Part (tag)', formula: '={Drums: Drum}' },
  { sheet: 'Charge', input: 'Shape', formula: '={Drums: Position}' },
  { sheet: 'Charge', input: 'Heads', formula: '=vessel_heads', from: [1, 2, 3, 4, 5, 6, 7, 8] },
  { sheet: 'Charge', input: 'Inside diameter', formula: DRUM_DIAMETER },
  { sheet: 'Charge', input: 'Length', formula: DRUM_LENGTH },
  { sheet: 'Charge', input: 'Filled in operation', formula: '=UNIT.CONVERT({Drums: Control level},{unit})' },
  { sheet: 'Charge', input: 'Volume given', formula: COIL_VOLUME, from: [9] },
  { sheet: 'Charge', input: 'Zone', formula: '={Zones: Zone}', from: [1, 9, 17, 25, 33, 41] },
  { sheet: 'Charge', input: 'Suction level', formula: '={Zones: Suction level}', from: [1, 9, 17, 25, 33, 41] },
  { sheet: 'Charge', input: 'Temperature', formula: DRUM_TEMPERATURE, from: [1, 9, 17, 25, 33] },
  { sheet: 'Charge', input: 'Shape', formula: '={Accumulators: Position (vertical, horizontal)}', from: [49] },
  { sheet: 'Charge', input: 'Inside diameter', formula: ACCUMULATOR_DIAMETER, from: [49] },
  { sheet: 'Charge', input: 'Length', formula: ACCUMULATOR_LENGTH, from: [49] },
  { sheet: 'Charge', input: 'Temperature', formula: '=UNIT.CONVERT({Accumulators: House suction},{unit})', from: [49] },
  { sheet: 'Charge totals', input: 'Refrigeration load of the plant', formula: '=UNIT.CONVERT(SUM(zone_loads)&zone_loads_unit,{unit})' },
  { sheet: 'Charge totals', input: 'By zone', formula: '={Zones: Zone}', from: [3] },

  { sheet: 'Interlocks', input: 'Low level', formula: heightShown('Low alarm') },
  { sheet: 'Interlocks', input: 'Operating float', formula: heightShown('Control level (operating float)') },
  { sheet: 'Interlocks', input: 'High float, alarm', formula: heightShown('High alarm (high float)') },
  { sheet: 'Interlocks', input: 'High-level cut-out', formula: heightShown('High-level cut-out') },
]

/** A level of the drum that Duty shows in detail. */
function heightShown(level: string): string {
  return `=UNIT.CONVERT(IF({Duty: Position}="vertical",{Vertical drum: ${level}},{Horizontal drum: ${level}}),{unit})`
}
