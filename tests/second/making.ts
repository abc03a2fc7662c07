/** Which runs can be made with what is here and on order: the second implementation, all or nothing, run after run. */
import { byCodePoint, exact, quantityText } from "./exact";
import { day, type Diary } from "./days";
import type { FileMaterial, FileRun, WorkshopFile } from "./file-shape";
import { leastOf, needOf, type Uses } from "./needs";
import { heldBy, lotsHere, lotsOnOrder, runsInOrder, take, usable } from "./shelf";

type UsesFor = (run: FileRun, units: bigint) => ReadonlyMap<FileMaterial, Uses>;

/** The largest number of units whose least of one material is there; null where no number is too many. */
function mostFor(material: FileMaterial, there: bigint, run: FileRun, usesFor: UsesFor): bigint | null {
  const least = (units: bigint) => {
    const uses = usesFor(run, units).get(material);
    return uses === undefined ? 0n : leastOf(uses);
  };
  if (least(1n) > there) return 0n;
  if (least(10n ** 30n) <= there) return null;
  let [enough, tooMany] = [1n, 2n];
  while (least(tooMany) <= there) [enough, tooMany] = [tooMany, 2n * tooMany];
  while (tooMany - enough > 1n) {
    const middle = (enough + tooMany) / 2n;
    if (least(middle) <= there) enough = middle;
    else tooMany = middle;
  }
  return enough;
}

interface RunRow {
  readonly run: string;
  readonly makeable: boolean;
  readonly mostUnits: number;
  readonly limiting: string | undefined;
  readonly short: readonly { readonly material: string; readonly by: string }[];
}

/** The rows of the report's runs, by run id. */
export function runRows(file: WorkshopFile, diary: Diary, today: number, usesFor: UsesFor) {
  const lots = [...lotsHere(file), ...lotsOnOrder(file, diary, today)];
  const rows = new Map<string, RunRow>();
  for (const run of runsInOrder(file)) {
    const on = Math.max(day(run.date), today);
    const uses = [...usesFor(run, BigInt(run.units))].sort(([a], [b]) => byCodePoint(a.id, b.id));
    const short = [];
    let limit: { most: bigint; material: string } | null = null;
    for (const [material, used] of uses) {
      const there = heldBy(usable(lots, material, on));
      const lacking = leastOf(used) - there;
      if (lacking > 0n) short.push({ material: material.id, by: quantityText(exact(lacking), material.measure) });
      const most = mostFor(material, there, run, usesFor);
      if (most !== null && (limit === null || most < limit.most)) limit = { most, material: material.id };
    }
    if (short.length === 0) for (const [material, used] of uses) take(usable(lots, material, on), needOf(used));
    rows.set(run.id, {
      run: run.id,
      makeable: short.length === 0,
      mostUnits: Number(limit?.most),
      limiting: limit?.material,
      short,
    });
  }
  return rows;
}
