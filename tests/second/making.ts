/** Which runs can be made with what is here and on order: the second implementation, all or nothing, run after run. */
import { byCodePoint, exact, quantityText } from "./exact";
import { day, type Diary } from "./days";
import type { FileMaterial, FileRun, WorkshopFile } from "./file-shape";
import type { There } from "./ahead";
import { leastOf, needOf, type Uses } from "./needs";
import { heldBy, lotsHere, lotsOnOrder, runsInOrder, take, usable } from "./shelf";

type UsesFor = (run: FileRun, units: bigint, there: There) => ReadonlyMap<FileMaterial, Uses>;

const MANY = 10n ** 30n;

/** The largest number of units whose least of one material is there; null where no number is too many. */
function mostFor(material: FileMaterial, on: There, run: FileRun, usesFor: UsesFor): bigint | null {
  const there = on(material);
  const least = (units: bigint) => {
    const uses = usesFor(run, units, on).get(material);
    return uses === undefined ? 0n : leastOf(uses);
  };
  if (least(1n) > there) return 0n;
  if (least(MANY) <= there) return null;
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
    const onShelf: There = (material) => heldBy(usable(lots, material, on));
    const byMaterial = usesFor(run, BigInt(run.units), onShelf);
    const uses = [...byMaterial].sort(([a], [b]) => byCodePoint(a.id, b.id));
    const short = [];
    let limit: { most: bigint; material: string } | null = null;
    for (const [material, used] of uses) {
      const lacking = leastOf(used) - onShelf(material);
      if (lacking > 0n) short.push({ material: material.id, by: quantityText(exact(lacking), material.measure) });
    }
    // More units may need what these do not: the shelf has made some of it ahead.
    const ever = [...new Set([...byMaterial.keys(), ...usesFor(run, MANY, onShelf).keys()])];
    for (const material of ever.sort((a, b) => byCodePoint(a.id, b.id))) {
      const most = mostFor(material, onShelf, run, usesFor);
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
