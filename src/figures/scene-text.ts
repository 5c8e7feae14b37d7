import type { Scene, SceneNode } from './scene.ts'

/** A scene as SVG inside HTML, named and described for whoever cannot see it. No style of its own: figures.css has the looks. */
export function sceneText({ width, height, nodes }: Scene, name: string, description: string): string {
  return (
    `<svg class="figure-drawing" role="img" width="${width}" height="${Math.ceil(height)}" viewBox="0 0 ${width} ${Math.ceil(height)}">` +
    `<title>${escaped(name)}</title><desc>${escaped(description)}</desc>${nodes.map(nodeText).join('')}</svg>`
  )
}

function nodeText(node: SceneNode): string {
  switch (node.is) {
    case 'group': return `<g>${node.nodes.map(nodeText).join('')}</g>`
    case 'path': return `<path class="figure-${node.look}" d="${node.d}"/>`
    case 'line': return `<line class="figure-${node.look}" x1="${node.x1}" y1="${node.y1}" x2="${node.x2}" y2="${node.y2}"/>`
    case 'text': return `<text class="figure-${node.look} figure-${node.anchor}" x="${node.x}" y="${node.y}">${escaped(node.text)}</text>`
  }
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** Text for the inside of an element or an attribute. Characters that no XML may hold are left out. */
export const escaped = (text: string): string =>
  // oxlint-disable-next-line no-control-regex -- these are what is to be left out
  text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '').replace(/[&<>"]/g, (sign) => ESCAPES[sign] ?? sign)
