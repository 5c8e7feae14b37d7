import { buildZip, type PartToBuild } from './build-zip.ts'

const NAMESPACES = ['office', 'table', 'text', 'style', 'number', 'draw', 'script'].map((name) => `xmlns:${name}="urn:oasis:names:tc:opendocument:xmlns:${name === 'number' ? 'datastyle' : name}:1.0"`).join(' ')

/** The parts of a small OpenDocument spreadsheet (OpenDocument 1.3, part 2, 3). */
export const odsParts = (spreadsheet: string, styles = '', more: readonly PartToBuild[] = []): PartToBuild[] => [
  { name: 'mimetype', data: 'application/vnd.oasis.opendocument.spreadsheet', stored: true },
  { name: 'META-INF/manifest.xml', data: '<manifest:manifest xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"/>' },
  {
    name: 'content.xml',
    data: `<office:document-content ${NAMESPACES} xmlns:calcext="urn:example:calcext"><office:automatic-styles>${styles}</office:automatic-styles><office:body><office:spreadsheet>${spreadsheet}</office:spreadsheet></office:body></office:document-content>`,
  },
  ...more,
]

export const buildOds = (spreadsheet: string, styles = ''): Uint8Array => buildZip(odsParts(spreadsheet, styles))

export const tableXml = (rows: string, name = 'Sheet'): string => `<table:table table:name="${name}">${rows}</table:table>`
