import type { SheetInputs } from './typed-inputs.ts'

/** An invented plant: what differs from the template `plant`. */
export interface Demo {
  /** `demo-data/FILE.lowside.json` */
  readonly file: string
  readonly title: string
  readonly purpose: string
  readonly inputs: readonly SheetInputs[]
}

const ZONES = ['Ripening room 1', 'Ripening room 2', 'Brine room', 'Vat hall', 'Packing hall', 'Cheese store', 'Whey freezer', 'Blast tunnel'] as const

/** Tallowmere cheese works: eight flooded zones on two suction levels at 2 900 ft, a little below the charge that it means to stay under. */
export const DEMOS: readonly Demo[] = [{
  file: 'tallowmere',
  title: 'Tallowmere cheese works',
  purpose: 'An invented cheese works: eight flooded zones on two suction levels at 2 900 ft, from basis to charge.',
  inputs: [
    { sheet: 'Basis', values: { Project: 'Tallowmere cheese works (invented)', 'Site elevation': 2900, 'Condensing temperature': 92, 'Liquid at the feed valves': 86 }, tables: [{ headings: ['House suction', 'Suction'], rows: [['High', 22], ['Low', -40], [null, null]] }] },
    {
      sheet: 'Zones',
      tables: [{
        headings: ['Zone', 'Load', 'Room', 'TD: air on less coil', 'Suction level', 'Drum level above coil', 'Loss to the regulator'],
        rows: [
          [ZONES[0], 42, 52, 12, 'High', 5, 0.4],
          [ZONES[1], 38, 55, 12, 'High', 5, 0.4],
          [ZONES[2], 36, 46, 11, 'High', 4, 0.3],
          [ZONES[3], 64, 44, 10, 'High', 4, 0.5],
          [ZONES[4], 58, 45, 12, 'High', 5, 0.4],
          [ZONES[5], 52, 37, 9, 'High', 4, 0.3],
          [ZONES[6], 46, -8, 12, 'Low', 4, 0.2],
          [ZONES[7], 54, -18, 10, 'Low', 3, 0.2],
        ],
      }],
    },
    { sheet: 'Feed', tables: [{ headings: ['Solenoid, Cv chosen', 'Its Cv, full open'], rows: [[4.5, 2.6], [4.5, 2.6], [3.5, 1.8], [6, 3.6], [6, 3], [4.5, 2.6], [4.5, 2.6], [6, 3.6]] }] },
  ],
}]
