import type { SheetInputs } from './typed-inputs.ts'

/** Inputs that suit a template by itself, and another value in the plant, where its neighbours give it other loads and vessels. */
export const PLANT_INPUTS: readonly SheetInputs[] = [
  {
    sheet: 'Drums',
    tables: [{
      headings: ['Position', 'Inside diameter', 'Tangent length', 'Volume of its coils', 'Control level', 'High-level cut-out', 'Wet return inlets'],
      rows: [
        ['vertical', 30, 6.5, 8, 20, 'highest', 1],
        ['vertical', 30, 6.5, 8, 20, 'highest', 1],
        ['vertical', 24, 7, 5, 20, 'highest', 1],
        ['horizontal', 30, 12, 10, 30, 'highest', 2],
        ['vertical', 30, 6.5, 7, 20, 'highest', 1],
        ['vertical', 24, 7, 5, 20, 'highest', 1],
        ['vertical', 30, 7, 10, 20, 'highest', 1],
        ['vertical', 36, 7, 11, 20, 'highest', 1],
      ],
    }],
  },
  { sheet: 'Circulation', values: { 'Refrigeration load of the coils': 27.5, 'Liquid leg, bore': 2.469 } },
  {
    sheet: 'Relief',
    tables: [{ headings: ['Rating of one valve, air'], rows: [[12.9], [12.9], [9], [24.5], [12.9], [9], [12.9], [17], [24.5], [24.5], [37]] }],
  },
]
