import type { Layout } from './bands.ts'

/** On which pages each sheet stands, and the widths of its columns. */
export function sheetRules(sections: readonly { readonly className: string; readonly layout: Layout }[]): string {
  return sections
    .flatMap(({ className, layout }) => [
      `.report .${className} { page: ${className}; }`,
      ...layout.bands.flatMap(({ columns, rest }, index) =>
        [...columns.map(({ width }) => width), ...(rest > 0 ? [rest] : [])].map((width, place) => `.report .${className}-${index + 1} col:nth-child(${place + 1}) { width: ${width.toFixed(1)}px; }`)),
    ])
    .join('\n')
}
