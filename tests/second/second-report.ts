/**
 * The report of a workshop, reckoned a second time: naive, exact and without a line of the product's own code, so that
 * the two can be held against each other. Slow on purpose; written to be obviously right.
 */
import { type CostBasis, costRow } from "./costs";
import { day, diaryOf } from "./days";
import type { FileProduct, FileRun, WorkshopFile } from "./file-shape";
import { runRows } from "./making";
import { found, shares, usesOf } from "./needs";
import { materialRow } from "./projection";

type UsesOfUnits = (product: FileProduct, units: bigint) => ReturnType<typeof usesOf>;

/**
 * The report without its basket. `error` lists the ids of the materials without a price; the product's text is free.
 * @param realToday  the day to plan from where the file sets none, as YYYY-MM-DD
 */
export const secondReport = (file: WorkshopFile, basis: CostBasis, realToday: string) =>
  secondReports(file, realToday)(basis);

/** The same for each basis that is asked: costs alone follow it, so that the rest is reckoned once. */
export function secondReports(file: WorkshopFile, realToday: string) {
  const todayText = file.workshop.today ?? realToday;
  const today = day(todayText);
  const shareByProduct = new Map(file.products.map((product) => [product.id, shares(file, product.formula)]));
  const uses: UsesOfUnits = (product, units) =>
    usesOf(file, product, shareByProduct.get(product.id) ?? new Map(), units);
  const rows = rowsOnAnyBasis(file, today, uses);
  return (basis: CostBasis) => ({
    format: "stillroom-report",
    version: 1,
    today: todayText,
    currency: file.workshop.currency,
    costs: file.products.map((product) =>
      costRow(file, today, product, uses(product, BigInt(product.usualRun)), basis),
    ),
    ...rows,
  });
}

function rowsOnAnyBasis(file: WorkshopFile, today: number, uses: UsesOfUnits) {
  const diary = diaryOf(file);
  const usesFor = (run: FileRun, units: bigint) => uses(found(file.products, run.product), units);
  const usesByRun = new Map(file.runs.map((run) => [run.id, usesFor(run, BigInt(run.units))]));
  const runs = runRows(file, diary, today, usesFor);
  return {
    runs: file.runs.flatMap((run) => runs.get(run.id) ?? []),
    materials: file.materials.map((material) =>
      materialRow(file, diary, today, material, (runId) => usesByRun.get(runId) ?? new Map()),
    ),
  };
}
