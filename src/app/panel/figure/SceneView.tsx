import { For, Match, Switch, type JSX } from 'solid-js'
import type { Group, Label, Line, Path, Scene, SceneNode } from '../../../figures/scene.ts'

/** A scene on the screen, named and described for whoever cannot see it. */
export function SceneView(props: { readonly scene: Scene; readonly name: string; readonly description: string; readonly children?: JSX.Element }): JSX.Element {
  const height = () => Math.ceil(props.scene.height)
  return (
    <svg class="figure-drawing" role="img" width={props.scene.width} height={height()} viewBox={`0 0 ${props.scene.width} ${height()}`}>
      <title>{props.name}</title>
      <desc>{props.description}</desc>
      <For each={props.scene.nodes}>{(node) => <NodeView node={node} />}</For>
      {props.children}
    </svg>
  )
}

function NodeView(props: { readonly node: SceneNode }): JSX.Element {
  return (
    <Switch>
      <Match when={props.node.is === 'group' && (props.node as Group)}>{(one) => <g><For each={one().nodes}>{(node) => <NodeView node={node} />}</For></g>}</Match>
      <Match when={props.node.is === 'path' && (props.node as Path)}>{(one) => <path class={`figure-${one().look}`} d={one().d} />}</Match>
      <Match when={props.node.is === 'line' && (props.node as Line)}>{(one) => <line class={`figure-${one().look}`} x1={one().x1} y1={one().y1} x2={one().x2} y2={one().y2} />}</Match>
      <Match when={props.node.is === 'text' && (props.node as Label)}>{(one) => <text class={`figure-${one().look} figure-${one().anchor}`} x={one().x} y={one().y}>{one().text}</text>}</Match>
    </Switch>
  )
}
