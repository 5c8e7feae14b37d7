import { deflateRawSync, inflateRawSync } from 'node:zlib'
import { buildOds, odsParts, tableXml } from '../../unit/reading/build-ods.ts'
import { rowsXml, xlsxParts, buildXlsx } from '../../unit/reading/build-xlsx.ts'
import { buildZip, type PartToBuild } from '../../unit/reading/build-zip.ts'

/** A damaged or random file: the same for the same seed. */
export function damagedFile(seed: number): { readonly bytes: Uint8Array; readonly name: string; readonly how: string } {
  const random = generator(seed)
  const [how, make] = pick(random, WAYS)
  return { how, ...make(random) }
}

type Random = () => number
interface Made { readonly bytes: Uint8Array; readonly name: string }

/** Mulberry32: 32 bits of state, from a seed. */
function generator(seed: number): Random {
  let state = (seed * 0x9e3779b1) >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

const below = (random: Random, end: number): number => Math.floor(random() * end)
function pick<T>(random: Random, from: readonly T[]): T {
  const found = from[below(random, from.length)]
  if (found === undefined) throw new Error('nothing to pick from')
  return found
}

const XLSX: readonly PartToBuild[] = xlsxParts({
  sheets: [
    ['Duty', `<sheetViews><sheetView><pane xSplit="1" ySplit="2" state="frozen"/></sheetView></sheetViews><cols><col min="1" max="3" width="12.5"/></cols>${rowsXml(
      '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="inlineStr"><is><r><t>Duty </t></r><r><t>kW</t></r></is></c></row>' +
      '<row r="2"><c r="A2" s="1"><v>1.5</v></c><c r="B2"><f t="shared" ref="B2:B4" si="0">A2*2+Loads!$B$2</f><v>3</v></c><c r="C2" t="b"><v>1</v></c></row>' +
      '<row r="3"><c r="A3" s="2"><v>45000</v></c><c r="B3"><f t="shared" si="0"/><v>4</v></c><c r="C3" t="e"><v>#DIV/0!</v></c></row>' +
      '<row r="4"><c r="B4"><f t="shared" si="0"/><v>5</v></c><c r="C4" t="str"><f>"a"&amp;[1]Other!A1</f><v>a_x000A_b</v></c><c r="D4"><f t="array" ref="D4:D5">SUM(A2:A3*2)</f><v>7</v></c></row>')}<mergeCells><mergeCell ref="A5:B6"/></mergeCells>`],
    ['Loads', rowsXml('<row><c><v>1</v></c><c t="d"><v>2026-11-27</v></c></row>')],
  ],
  styles: '<numFmts><numFmt numFmtId="164" formatCode="0.00&quot; kW&quot;"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="164"/><xf numFmtId="14"/></cellXfs>',
  texts: '<si><t xml:space="preserve"> Low &amp; high </t></si>', notes: '<comment ref="A2"><text><r><t>From the sheet</t></r></text></comment>',
  book: '<definedNames><definedName name="Rate">Duty!$A$2</definedName><definedName name="Local" localSheetId="1">Loads!$A$1</definedName></definedNames>',
})
const ODS: readonly PartToBuild[] = odsParts(
  tableXml(
    '<table:table-column table:style-name="co1" table:number-columns-repeated="3"/><table:table-row><table:table-cell office:value-type="string" table:number-columns-spanned="2"><text:p>A<text:s text:c="3"/>b</text:p><text:p>c<text:tab/></text:p><office:annotation><text:p>Note</text:p></office:annotation></table:table-cell><table:covered-table-cell/></table:table-row>' +
    '<table:table-row table:number-rows-repeated="3"><table:table-cell table:style-name="ce1" office:value-type="float" office:value="1.5" table:number-columns-repeated="2"/><table:table-cell table:formula="of:=SUM([.A1:.B2];[$\'My sheet\'.C3])*{1;2|3;4}" office:value-type="float" office:value="3"/></table:table-row>' +
    '<table:table-row table:number-rows-repeated="1048000"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>') +
  tableXml('<table:table-row><table:table-cell office:value-type="date" office:date-value="2026-11-27"/><table:table-cell office:value-type="time" office:time-value="PT08H30M00S"/><table:table-cell office:value-type="boolean" office:boolean-value="true"/></table:table-row>', 'My sheet') +
  '<table:named-expressions><table:named-range table:name="Rate" table:cell-range-address="$Sheet.$A$1:.$B$2"/></table:named-expressions>',
  '<number:number-style style:name="N1"><number:number number:decimal-places="2" number:min-integer-digits="1"/><number:text> kW</number:text></number:number-style><style:style style:name="ce1" style:family="table-cell" style:data-style-name="N1"/><style:style style:name="co1" style:family="table-column"><style:table-column-properties style:column-width="2.5cm"/></style:style>',
)
const CSV = [
  'Tag,Size,Duty kW\r\nV-101,"3/4",1.5\r\n"Drum ""A""","1 1/2",12E4\r\n=1+1,007,-5\r\n', 'sep=;\nTag;Wert\nV1;1,5\nV2;1.234,5\n\n', 'a\tb\n1\t2\n"x\ny"\t3\n', 'a|b|c\n1|2|3\n\'=x|@y|+z\n',
]
const FILES = [buildZip(XLSX), buildZip(ODS), buildXlsx({ sheets: [['One', rowsXml('<row><c><v>1</v></c></row>')]] }), buildOds(tableXml('')), ...CSV.map((text) => new TextEncoder().encode(text))]
const TEXTS = CSV.map((text) => new TextEncoder().encode(text))

const HOSTILE = [
  '', '-1', '0', '1e999', 'NaN', '4294967296', '9007199254740993', '1048577', 'XFE1', 'A0', 'ZZZZZZ99999999', '__proto__', 'constructor', '$A$1:$XFD$1048576', '#REF!', '[1]x!A1', "'", "''''", '[', ']', '[.A1', '"', '\u0000', '\ud800', '\ufffe', '&amp;',
  '&#0;', '&#x110000;', '&bogus;', '../../x', 'file:///x', 'A'.repeat(9000), '('.repeat(500), '{'.repeat(50), '_x0000_', '1904', 'true', 'shared', 'array', 'e', 's', 'd', 'inlineStr', 'float', 'error',
  '<!DOCTYPE x [<!ENTITY a "b">]>', '<![CDATA[ x ]]>', '<!--', '<?x?>', '<v>', '</c>', '<c><c>', '<f t="shared" si="0"/>', '<is>', '<table:table table:name="x">', '<text:p>', '<office:annotation>', '<row r="1048577">', '\n', '\r\n', '\t', ',', ';;;;', '=cmd|x', '""""', '12E4', '1.234.567,8',
]

const WAYS: readonly (readonly [how: string, make: (random: Random) => Made])[] = [
  ['bytes flipped', (random) => named(random, flipped(random, pick(random, FILES), 1 + below(random, 12)))],
  ['cut off', (random) => { const file = pick(random, FILES); return named(random, file.slice(0, below(random, file.length))) }],
  ['something put in', (random) => named(random, withInsert(random, pick(random, FILES)))],
  ['pieces swapped', (random) => named(random, swapped(random, pick(random, FILES)))],
  ['XML changed', (random) => named(random, withChangedXml(random, XLSX))],
  ['XML changed', (random) => named(random, withChangedXml(random, ODS))],
  ['XML changed', (random) => named(random, withChangedXml(random, random() < 0.5 ? XLSX : ODS))],
  ['statements of the package false', (random) => named(random, lying(random))],
  ['text changed', (random) => named(random, times<Uint8Array>(random, pick(random, TEXTS), 4, (file) => pick(random, [flipped(random, file, 2), withInsert(random, file), swapped(random, file)])))],
  ['random', (random) => named(random, randomBytes(random))],
]

const named = (random: Random, bytes: Uint8Array): Made => ({ bytes, name: `file${pick(random, ['.xlsx', '.ods', '.csv', '.tsv', '', '.__proto__'])}` })

function times<T>(random: Random, first: T, most: number, change: (before: T) => T): T {
  let made = first
  for (let count = 1 + below(random, most); count > 0; count--) made = change(made)
  return made
}

function flipped(random: Random, file: Uint8Array, count: number): Uint8Array {
  const copy = file.slice()
  for (let left = count; left > 0; left--) copy[below(random, copy.length)] = below(random, 256)
  return copy
}

function withInsert(random: Random, file: Uint8Array): Uint8Array {
  const at = below(random, file.length + 1)
  const from = below(random, file.length)
  const chunk = random() < 0.5 ? new TextEncoder().encode(pick(random, HOSTILE)) : file.slice(from, from + below(random, 200))
  return joined(file.slice(0, at), chunk, file.slice(at))
}

function swapped(random: Random, file: Uint8Array): Uint8Array {
  const [a = 0, b = 0, c = 0] = [0, 0, 0].map(() => below(random, file.length + 1)).toSorted((one, other) => one - other)
  return joined(file.slice(0, a), file.slice(b, c), file.slice(a, b), file.slice(c))
}

function joined(...pieces: readonly Uint8Array[]): Uint8Array {
  return new Uint8Array(Buffer.concat(pieces))
}

/** The package is whole, so that what reads the part is reached. */
function withChangedXml(random: Random, parts: readonly PartToBuild[]): Uint8Array {
  const chosen = below(random, parts.length)
  return buildZip(parts.map((part, index) => (index === chosen || random() < 0.05 ? { ...part, data: times(random, String(part.data), 4, (text) => changedXml(random, text)) } : part)))
}

function changedXml(random: Random, text: string): string {
  const attributes = [...text.matchAll(/="([^"]*)"/g)]
  const attribute = attributes.length > 0 ? pick(random, attributes) : undefined
  switch (below(random, 10)) {
    case 0: case 1: case 2: {
      // Elements with nothing or a text inside: without one, with many of it, with another in its place, all is still well-formed.
      const elements = [...text.matchAll(/<([\w:]+)[^<>]*?(?:\/>|>[^<]*<\/\1>)/g)]
      return withChangedPiece(random, text, elements)
    }
    case 3: case 4: case 5: case 6: {
      const value = pick(random, HOSTILE).replace(/[<"]/g, (sign) => (random() < 0.97 ? (sign === '<' ? '&lt;' : '&quot;') : sign))
      return attribute ? `${text.slice(0, attribute.index)}="${value}"${text.slice(attribute.index + attribute[0].length)}` : text
    }
    case 7: return withChangedPiece(random, text, [...text.matchAll(/<[^>]+>/g)])
    case 8: {
      const at = below(random, text.length + 1)
      return text.slice(0, at) + pick(random, HOSTILE) + text.slice(at)
    }
    default: return text.replace(/>([^<]+)</g, (whole) => (random() < 0.2 ? `>${pick(random, HOSTILE).replaceAll('<', () => (random() < 0.9 ? '&lt;' : '<'))}<` : whole))
  }
}

function withChangedPiece(random: Random, text: string, pieces: readonly RegExpMatchArray[]): string {
  if (pieces.length === 0) return text
  const [one, other] = [pick(random, pieces), pick(random, pieces)]
  const [before, after] = [text.slice(0, one.index), text.slice((one.index ?? 0) + one[0].length)]
  return before + pick(random, ['', one[0].repeat(2 + below(random, 200)), other[0], one[0] + other[0]]) + after
}

function lying(random: Random): Uint8Array {
  const parts = pick(random, [XLSX, ODS])
  const size = (): number => pick(random, [0, 1, 100, 5000, 0x7fffffff, 0xfffffffe, 0xffffffff, below(random, 2000)])
  return buildZip(parts.map((part, index) => {
    if (random() > 0.3) return part
    const lies: Partial<PartToBuild>[] = [
      { statedSize: size() }, { statedPackedSize: size() }, { crc: below(random, 2 ** 32) }, { method: pick(random, [0, 1, 8, 9, 12, 99]) }, { flags: below(random, 0x10000) }, { name: pick(random, HOSTILE) },
      { localName: pick(random, HOSTILE) }, { sharesDataOf: below(random, index + 1) }, { stored: true }, { data: joined(inflateRawSync(deflateRawSync(Buffer.from(String(part.data)))), new Uint8Array(5)) }, { data: new Uint8Array(200_000) },
    ]
    return { ...part, ...pick(random, lies) }
  }), random() < 0.3 ? { count: below(random, 70_000) & 0xffff, zip64: random() < 0.5 } : {})
}

function randomBytes(random: Random): Uint8Array {
  const length = below(random, 600)
  const kind = below(random, 4)
  if (kind === 0) return Uint8Array.from({ length }, () => below(random, 256))
  if (kind === 1) return joined(Uint8Array.from([0x50, 0x4b, 3, 4]), Uint8Array.from({ length }, () => below(random, 256)))
  const words = Array.from({ length: length / 4 }, () => (kind === 2 ? pick(random, HOSTILE).slice(0, 30) : pick(random, [',', ';', '\n', '"', '1', '.', ' ', 'a', '\t', '=', '-', '\r', '|', "'", 'é', '0', 'E'])))
  const text = words.join('')
  return random() < 0.2 ? new Uint8Array(Buffer.from(text, 'utf16le')) : new TextEncoder().encode(text)
}
