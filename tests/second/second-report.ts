/**
 * The report of a workshop, reckoned a second time: naive, exact and without a line of the product's own code, so that
 * the two can be held against each other. Slow on purpose; written to be obviously right.
 */
import { type Opener, openerOf, usesInTurn } from "./ahead";
import { type CostBasis, costRow } from "./costs";
import { day, diaryOf } from "./days";
import type { FileProduct, WorkshopFile } from "./file-shape";
import { runRows } from "./making";
import { found, shares, usesOf } from "./needs";
import { materialRow } from "./projection";
import { heldBy, lotsHere, usable } from "./shelf";

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
  const open = openerOf(file);
  const onShelf = lotsHere(file);
  const usualUses = (product: FileProduct, basis: CostBasis) =>
    basis === "shelf"
      ? open(product, BigInt(product.usualRun), (material) => heldBy(usable(onShelf, material, today)), "exact")
      : usesOf(file, product, shares(file, product.formula), BigInt(product.usualRun));
  const rows = rowsOnAnyBasis(file, today, open);
  return (basis: CostBasis) => ({
    format: "stillroom-report",
    version: 1,
    today: todayText,
    currency: file.workshop.currency,
    costs: file.products.map((product) => costRow(file, today, product, usualUses(product, basis), basis)),
    ...rows,
  });
}

function rowsOnAnyBasis(file: WorkshopFile, today: number, open: Opener) {
  const diary = diaryOf(file);
  const usesOfRun = usesInTurn(file, diary, today, open);
  const runs = runRows(file, diary, today, (run, units, there) =>
    open(found(file.products, run.product), units, there),
  );
  return {
    runs: file.runs.flatMap((run) => runs.get(run.id) ?? []),
    materials: file.materials.map((material) => materialRow(file, diary, today, material, usesOfRun)),
  };
}
