/** Ways to cover a material, as far as thresholds are concerned. */
import type { Effort } from "./material-covers";

/** A way to cover a material: what it costs, and its goods towards each threshold. */
export interface Way {
  readonly cost: number;
  readonly goods: readonly number[];
}

/** Without those that bring no more goods to any threshold than another that costs no more; fewer where effort runs out. */
export function undominated<W extends Way>(ways: W[], effort: Effort): readonly W[] {
  ways.sort((a, b) => a.cost - b.cost || compareGoods(b.goods, a.goods));
  const kept: W[] = [];
  let most = -1;
  for (const way of ways) {
    const [only] = way.goods;
    if (way.goods.length === 1 && only !== undefined) {
      if (only <= most) continue;
      most = only;
    } else {
      effort.left -= 1 + (kept.length >> 3);
      if (effort.left < 0) return kept;
      if (kept.some(({ goods }) => goods.every((sum, at) => sum >= (way.goods[at] ?? 0)))) continue;
    }
    kept.push(way);
  }
  return kept;
}

function compareGoods(a: readonly number[], b: readonly number[]): number {
  for (const [at, sum] of a.entries()) if (sum !== b[at]) return sum - (b[at] ?? 0);
  return 0;
}
