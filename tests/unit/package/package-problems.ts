import { areaOf, parseReference } from '../../../src/workbook/address.ts'
import { orderProblems } from './element-order.ts'
import { sheetProblems } from './sheet-problems.ts'
import { childOf, childrenOf, descendants, parseXml, type XmlElement } from './xml-tree.ts'

const MAIN_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml'

/** What is wrong with the parts of a spreadsheet package, by the rules of ECMA-376, parts 1 and 2; nothing where it is sound. */
export function packageProblems(parts: ReadonlyMap<string, string>): readonly string[] {
  const problems: string[] = []
  const trees = new Map<string, XmlElement>()
  for (const [name, text] of parts) {
    if (!/\.(xml|rels|vml)$/.test(name)) continue
    try {
      trees.set(name, parseXml(text))
    } catch (error) {
      problems.push(`${name}: ${String(error)}`)
    }
  }
  const say = (name: string, found: readonly string[]): void => void problems.push(...found.map((one) => `${name}: ${one}`))
  const related = relationsOf(trees)
  say('content types', typeProblems(parts, trees))
  say('relationships', relationProblems(parts, related))
  const styles = trees.get('xl/styles.xml')
  say('xl/styles.xml', styles ? styleProblems(styles) : ['is not there'])
  const book = trees.get('xl/workbook.xml')
  say('xl/workbook.xml', book ? bookProblems(book, related.get('xl/workbook.xml') ?? []) : ['is not there'])
  const offered = { cellFormats: childOf(styles, 'cellXfs')?.children.length ?? 0, differentialFormats: childOf(styles, 'dxfs')?.children.length ?? 0 }
  for (const [name, tree] of trees) {
    if (!name.endsWith('.vml') && !name.startsWith('docProps/')) say(name, orderProblems(tree))
    if (name.startsWith('xl/worksheets/sheet')) say(name, [...sheetProblems(tree, offered), ...noteProblems(tree, related.get(name) ?? [], trees)])
  }
  return problems
}

interface Relation {
  readonly id: string
  readonly type: string
  readonly target: string
}

/** The relationships of each part, "" being the package, targets as names of parts. */
function relationsOf(trees: ReadonlyMap<string, XmlElement>): ReadonlyMap<string, readonly Relation[]> {
  return new Map([...trees].filter(([name]) => name.endsWith('.rels')).map(([name, tree]) => {
    const source = name.replace(/_rels\/([^/]*)\.rels$/, '$1')
    return [source, tree.children.map(({ attributes }) => ({ id: attributes.get('Id') ?? '', type: attributes.get('Type') ?? '', target: new URL(attributes.get('Target') ?? '', `file:///${source}`).pathname.slice(1) }))] as const
  }))
}

function relationProblems(parts: ReadonlyMap<string, string>, related: ReadonlyMap<string, readonly Relation[]>): string[] {
  const problems: string[] = []
  const reached = new Set<string>()
  for (const [source, relations] of related) {
    if (source !== '' && !parts.has(source)) problems.push(`of ${source}, which is not there`)
    if (new Set(relations.map(({ id }) => id)).size < relations.length) problems.push(`of ${source}: two with one id`)
    for (const { target } of relations) {
      reached.add(target)
      if (!parts.has(target)) problems.push(`of ${source}: ${target} is not there`)
    }
  }
  return [...problems, ...[...parts.keys()].filter((name) => !reached.has(name) && !name.endsWith('.rels') && name !== '[Content_Types].xml').map((name) => `${name} belongs to nothing`)]
}

function typeProblems(parts: ReadonlyMap<string, string>, trees: ReadonlyMap<string, XmlElement>): string[] {
  const types = trees.get('[Content_Types].xml')
  const endings = new Set(childrenOf(types, 'Default').map(({ attributes }) => attributes.get('Extension')))
  const named = childrenOf(types, 'Override').map(({ attributes }) => (attributes.get('PartName') ?? '').slice(1))
  const main = childrenOf(types, 'Override').filter(({ attributes }) => attributes.get('ContentType') === MAIN_TYPE)
  return [
    ...(new Set(named).size < named.length ? ['a part is named twice'] : []),
    ...named.filter((name) => !parts.has(name)).map((name) => `${name} is not there`),
    ...[...parts.keys()].filter((name) => name !== '[Content_Types].xml' && !named.includes(name) && !endings.has(name.slice(name.lastIndexOf('.') + 1))).map((name) => `${name} has none`),
    ...(main.length === 1 ? [] : [`${main.length} workbooks`]),
  ]
}

function styleProblems(styles: XmlElement): string[] {
  const sizes = new Map(styles.children.map((list) => [list.name, list.children.length]))
  const formats = childrenOf(childOf(styles, 'numFmts'), 'numFmt').map(({ attributes }) => Number(attributes.get('numFmtId')))
  const within = (xf: XmlElement, attribute: string, list: string): boolean => Number(xf.attributes.get(attribute)) < (sizes.get(list) ?? 0)
  return [
    ...styles.children.filter((list) => Number(list.attributes.get('count')) !== list.children.length).map(({ name }) => `${name} counts wrong`),
    ...(new Set(formats).size < formats.length || formats.some((id) => !(id >= 164)) ? ['numbers of number formats'] : []),
    ...childrenOf(childOf(styles, 'cellXfs'), 'xf').filter((xf) => !(within(xf, 'fontId', 'fonts') && within(xf, 'fillId', 'fills') && within(xf, 'borderId', 'borders') && within(xf, 'xfId', 'cellStyleXfs')))
      .map(() => 'a cell format of parts that are not there'),
    // Below 164 the format is one that every program has (18.8.30).
    ...childrenOf(childOf(styles, 'cellXfs'), 'xf').map(({ attributes }) => Number(attributes.get('numFmtId'))).filter((id) => !(id >= 0 && (id < 50 || formats.includes(id)))).map((id) => `no number format ${id}`),
  ]
}

function bookProblems(book: XmlElement, relations: readonly Relation[]): string[] {
  const sheets = childrenOf(childOf(book, 'sheets'), 'sheet')
  const names = sheets.map(({ attributes }) => attributes.get('name') ?? '')
  const ids = sheets.map(({ attributes }) => attributes.get('sheetId'))
  const defined = childrenOf(childOf(book, 'definedNames'), 'definedName')
  const keys = defined.map(({ attributes }) => `${attributes.get('name')?.toLowerCase()} ${attributes.get('localSheetId') ?? ''}`)
  const active = Number(childOf(childOf(book, 'bookViews'), 'workbookView')?.attributes.get('activeTab') ?? 0)
  return [
    ...names.filter((name) => name.length < 1 || name.length > 31 || /[[\]:*?/\\]|^'|'$/.test(name)).map((name) => `a sheet named ${name}`),
    ...(new Set(names.map((name) => name.toLowerCase())).size < names.length || new Set(ids).size < ids.length ? ['two sheets of one name or number'] : []),
    ...sheets.filter(({ attributes }) => !relations.some(({ id, type }) => id === attributes.get('r:id') && type.endsWith('/worksheet'))).map(() => 'a sheet without a part'),
    ...(sheets[active]?.attributes.has('state') === false ? [] : ['opens on a sheet that is hidden, or not there']),
    ...(new Set(keys).size < keys.length ? ['a name is defined twice'] : []),
    ...defined.filter(({ attributes, text }) => !isName(attributes.get('name') ?? '') || text === '' || !(Number(attributes.get('localSheetId') ?? 0) < sheets.length)).map(({ attributes }) => `the name ${attributes.get('name')}`),
  ]
}

/** 18.2.5: a letter, underscore or backslash first, and nothing that reads as a cell. */
const isName = (name: string): boolean => /^[\p{L}_\\][\p{L}\p{N}_.\\]{0,254}$/u.test(name) && !/^([A-Za-z]{1,3}\d+|[Rr]\d*([Cc]\d*)?|[Cc]\d*)$/.test(name)

/** A sheet's notes: each once, with a box at the same cell. */
function noteProblems(sheet: XmlElement, relations: readonly Relation[], trees: ReadonlyMap<string, XmlElement>): string[] {
  const id = childOf(sheet, 'legacyDrawing')?.attributes.get('r:id')
  const partOf = (kind: string): Relation | undefined => relations.find(({ type }) => type.endsWith(kind))
  const [comments, drawing] = [partOf('/comments'), partOf('/vmlDrawing')]
  if (id === undefined && comments === undefined && drawing === undefined) return []
  if (id !== drawing?.id) return ['the drawing of its notes is not the one it names']
  const places = childrenOf(childOf(trees.get(comments?.target ?? ''), 'commentList'), 'comment').map(({ attributes }) => attributes.get('ref') ?? '')
  const root = trees.get(drawing?.target ?? '')
  const boxes = root === undefined ? [] : [...descendants(root)].filter(({ name }) => name === 'x:ClientData').map((box) => `${childOf(box, 'x:Row')?.text},${childOf(box, 'x:Column')?.text}`)
  const shapes = root === undefined ? [] : [...descendants(root)].filter(({ name }) => name === 'v:shape').map(({ attributes }) => attributes.get('id'))
  return [
    ...(new Set(places).size < places.length || new Set(shapes).size < shapes.length ? ['two notes at one cell, or two boxes of one name'] : []),
    ...(places.map(cornerOf).toSorted().join(' ') === boxes.toSorted().join(' ') ? [] : ['notes and their boxes are not the same']),
  ]
}

function cornerOf(address: string): string {
  const reference = parseReference(address)
  return reference ? `${areaOf(reference).top},${areaOf(reference).left}` : address
}
