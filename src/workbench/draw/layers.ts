/** A directed edge between two of the nodes that are numbered from 0. */
export type Link = { from: number; to: number };

/**
 * The layer of each node, so that links lead to a later layer wherever they can: the longest way from the first node,
 * with links that close a ring left out.
 */
export function layersOf(count: number, links: Link[]): number[] {
  const closing = ringClosers(count, links);
  const layers = new Array<number>(count).fill(0);
  // With rings opened, as many rounds as there are nodes settle every layer.
  for (let round = 0; round < count; round++)
    for (const link of links)
      if (!closing.has(link)) layers[link.to] = Math.max(layers[link.to] ?? 0, (layers[link.from] ?? 0) + 1);
  return layers;
}

/** The links that lead back to a node which is still being followed. */
function ringClosers(count: number, links: Link[]): Set<Link> {
  const closing = new Set<Link>();
  const state = new Array<"new" | "open" | "done">(count).fill("new");
  const follow = (node: number) => {
    state[node] = "open";
    for (const link of links) {
      if (link.from !== node) continue;
      if (state[link.to] === "open") closing.add(link);
      else if (state[link.to] === "new") follow(link.to);
    }
    state[node] = "done";
  };
  for (let node = 0; node < count; node++) if (state[node] === "new") follow(node);
  return closing;
}
