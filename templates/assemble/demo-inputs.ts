import type { AcceptedOnSheets } from './accepted.ts'
import type { SheetInputs } from './typed-inputs.ts'

/** An invented plant: what differs from the template `plant`. */
export interface Demo {
  /** `demo-data/FILE.lowside.json` */
  readonly file: string
  readonly title: string
  readonly purpose: string
  readonly inputs: readonly SheetInputs[]
  readonly cases: readonly DemoCase[]
  readonly compared: readonly ComparedCells[]
  readonly accepted: readonly AcceptedOnSheets[]
}

/** What a case differs in from the demo's inputs. */
export interface DemoCase {
  readonly name: string
  readonly note: string
  readonly inputs: readonly SheetInputs[]
}

/** Results and checks by the words beside or over them; of a column, those in the rows with these words in them. */
export interface ComparedCells {
  readonly sheet: string
  readonly words: string
  readonly rows?: readonly string[]
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
  cases: [
    {
      name: 'Summer peak',
      note: 'Assumed: condensing and liquid 4 °F warmer, as on a wet-bulb day that comes once in ten years; loads of rooms with doors and fresh product a tenth up, of the store a twelfth, of the whey freezer a twentieth. Rooms, coils and suction stay.',
      inputs: [
        { sheet: 'Basis', values: { 'Condensing temperature': 96, 'Liquid at the feed valves': 90 } },
        { sheet: 'Zones', tables: [{ headings: ['Load'], rows: [[46], [42], [39.5], [70.5], [64], [56], [48.5], [54]] }] },
      ],
    },
    {
      name: 'Raised suction',
      note: 'Assumed: both levels raised to save compressor power, the high one by 3 °F and the low one by 2 °F, with everything else as it is. To see which zone is not served any more.',
      inputs: [{ sheet: 'Basis', tables: [{ headings: ['Suction'], rows: [[25], [-38], [null]] }] }],
    },
  ],
  compared: [
    { sheet: 'Zones', words: 'Zones not served', rows: ['High', 'Low'] },
    { sheet: 'Zones', words: 'Warmest that serves all', rows: ['High', 'Low'] },
    { sheet: 'Zones', words: 'Served?', rows: ['Cheese store', 'Blast tunnel'] },
    { sheet: 'Drums', words: 'Velocity there is', rows: ['Vat hall'] },
    { sheet: 'Drums', words: 'Vapour slow enough', rows: ['Vat hall'] },
    { sheet: 'Charge totals', words: 'Charge in operation' },
    { sheet: 'Charge totals', words: 'Maximum intended charge' },
    { sheet: 'Thresholds', words: 'Charge compared is below' },
  ],
  accepted: [{
    kind: 'default-values', key: 'as in the template',
    sheets: ['Basis', 'Duty', 'Nozzles', 'Practice values', 'Circulation', 'Feed', 'Accumulators', 'Relief', 'Charge', 'Charge totals', 'Thresholds', 'Comparison'],
    note: 'An invented plant: nobody stands up for its practice values. They are left as the template has them, with the words of doubt beside them, so that it shows what a plant of one’s own would have to confirm.',
  }],
}]
