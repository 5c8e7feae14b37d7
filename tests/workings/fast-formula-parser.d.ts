declare module 'fast-formula-parser' {
  type Value = number | string | boolean | null | object
  interface Cell { readonly sheet: string; readonly row: number; readonly col: number }
  interface Range { readonly sheet: string; readonly from: Omit<Cell, 'sheet'>; readonly to: Omit<Cell, 'sheet'> }
  interface Given { readonly value: Value | readonly (readonly Value[])[] }
  export default class FormulaParser {
    constructor(options: {
      functions: Readonly<Record<string, (...given: Given[]) => unknown>>
      onCell: (cell: Cell) => Value
      onRange: (range: Range) => Value[][]
      onVariable: (name: string) => Cell | Range | null
    })
    parse(formula: string, at: Cell, allowReturnArray?: boolean): unknown
  }
}
