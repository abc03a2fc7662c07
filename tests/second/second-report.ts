/**
 * The report of a workshop, reckoned a second time: naive, exact and without a line of the product's own code, so that
 * the two can be held against each other. Slow on purpose; written to be obviously right.
 */
import { usesGiven, usesInTurn, usesOfRunGiven } from "./ahead";
import { type CostBasis, costRow } from "./costs";
import { day, diaryOf } from "./days";
import type { FileProduct, WorkshopFile } from "./file-shape";
import { runRows } from "./making";
import { shares, usesOf } from "./needs";
import { materialRow } from "./projection";
import { heldBy, lotsHere, usable } from "./shelf";

/**
 * The report without its basket. `error` lists the ids of the materials without a price; the product's text is free.
 * @param realToday  the day to plan from where the file sets none, as YYYY-MM-DD
 */
export function secondReport(file: WorkshopFile, basis: CostBasis, realToday: string) {
  const todayText = file.workshop.today ?? realToday;
  const today = day(todayText);
  const diary = diaryOf(file);

  const lots = lotsHere(file);
  const uses = (product: FileProduct) =>
    basis === "shelf"
      ? usesGiven(file, product, BigInt(product.usualRun), (material) => heldBy(usable(lots, material, today)), "exact")
      : usesOf(file, product, shares(file, product.formula), BigInt(product.usualRun));
  const usesOfRun = usesInTurn(file, diary, today);

  const runs = runRows(file, diary, today, usesOfRunGiven(file));
  return {
    format: "stillroom-report",
    version: 1,
    today: todayText,
    currency: file.workshop.currency,
    costs: file.products.map((product) => costRow(file, today, product, uses(product), basis)),
    runs: file.runs.flatMap((run) => runs.get(run.id) ?? []),
    materials: file.materials.map((material) => materialRow(file, diary, today, material, usesOfRun)),
  };
}
