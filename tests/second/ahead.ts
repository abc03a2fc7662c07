/** Premixes made ahead, in the second implementation: every formula is poured out anew for every run. */
import { add, type Exact, divide, exact, isLess, multiply, upward } from "./exact";
import { day, type Diary } from "./days";
import type { FileMaterial, FileProduct, WorkshopFile } from "./file-shape";
import { bulkOf, found, linesOf, needOf, shares, type Uses, usesOf } from "./needs";
import { heldBy, lotsHere, lotsOnOrder, runsInOrder, take, usable } from "./shelf";

export type There = (material: FileMaterial) => bigint;

/** The material that is made of a formula ahead, by formula. */
const materialByFormula = (file: WorkshopFile): ReadonlyMap<string, string> =>
  new Map(
    file.products.flatMap(({ formula, madeInto }) => (typeof madeInto === "string" ? [[formula, madeInto]] : [])),
  );

/** Whether opening one formula can ask for another, or for the material that is made of it. */
function asksFor(file: WorkshopFile, formula: string, other: string, made: string): boolean {
  return linesOf(file, formula).some(
    ({ line }) =>
      line.material === made ||
      line.formula === other ||
      (line.formula !== undefined && asksFor(file, line.formula, other, made)),
  );
}

/** What so many units use where the shelf holds so much; exact where nothing is rounded. */
export type Opener = (
  product: FileProduct,
  units: bigint,
  there: There,
  rounding?: "whole" | "exact",
) => ReadonlyMap<FileMaterial, Uses>;

/** Opens products; one without premixes made ahead uses the same shares whatever is there. */
export function openerOf(file: WorkshopFile): Opener {
  const madeOf = materialByFormula(file);
  const shareByProduct = new Map(
    file.products
      .filter(({ formula }) => ![...madeOf.keys()].some((premix) => asksFor(file, formula, premix, "")))
      .map((product) => [product.id, shares(file, product.formula)]),
  );
  return (product, units, there, rounding = "whole") => {
    const share = shareByProduct.get(product.id);
    return share === undefined
      ? usesGiven(file, madeOf, product, units, there, rounding)
      : usesOf(file, product, share, units);
  };
}

function usesGiven(
  file: WorkshopFile,
  madeOf: ReadonlyMap<string, string>,
  product: FileProduct,
  units: bigint,
  there: There,
  rounding: "whole" | "exact",
): ReadonlyMap<FileMaterial, Uses> {
  const poured = new Map<string, Exact>();
  const waiting = new Map<string, Exact>();
  const more = (into: Map<string, Exact>, id: string, mass: Exact) =>
    into.set(id, add(into.get(id) ?? exact(0n), mass));
  const pour = (formula: string, mass: Exact): void => {
    for (const { line, share } of linesOf(file, formula)) {
      const part = multiply(mass, share);
      if (line.formula === undefined) more(poured, line.material, part);
      else if (madeOf.has(line.formula)) more(waiting, line.formula, part);
      else pour(line.formula, part);
    }
  };
  const beside = usesOf(file, product, new Map(), units);
  const bulk = bulkOf(file, product, units);
  pour(product.formula, bulk);
  const drawn: [string, Exact][] = [];
  while (waiting.size > 0) {
    const next = [...waiting].find(([formula]) =>
      [...waiting.keys()].every(
        (other) => other === formula || !asksFor(file, other, formula, madeOf.get(formula) ?? ""),
      ),
    );
    if (next === undefined) throw new Error("premixes made ahead go round");
    const [formula, wanted] = next;
    waiting.delete(formula);
    const material = found(file.materials, madeOf.get(formula) ?? "");
    const own = add(poured.get(material.id) ?? exact(0n), beside.get(material)?.packaging ?? exact(0n));
    const [ownNeed, most] = rounding === "whole" ? [exact(upward(own)), exact(upward(wanted))] : [own, wanted];
    const free = add(exact(there(material)), exact(-ownNeed[0], ownNeed[1]));
    const taken = free[0] <= 0n ? exact(0n) : isLess(free, most) ? free : most;
    if (taken[0] > 0n) drawn.push([material.id, taken]);
    if (isLess(taken, wanted)) pour(formula, add(wanted, exact(-taken[0], taken[1])));
  }
  for (const [id, taken] of drawn) more(poured, id, taken);
  const share = new Map([...poured].map(([id, mass]) => [id, divide(mass, bulk)]));
  return usesOf(file, product, share, units);
}

/** What each run uses up to the horizon if all go ahead: the materials made of premixes drawn day by day. */
export function usesInTurn(
  file: WorkshopFile,
  diary: Diary,
  today: number,
  open: Opener,
): (runId: string) => ReadonlyMap<FileMaterial, Uses> {
  const lots = [...lotsHere(file), ...lotsOnOrder(file, diary, today)];
  const made = file.materials.filter(({ id }) => file.products.some(({ madeInto }) => madeInto === id));
  const runs = runsInOrder(file);
  const owed = new Map<FileMaterial, bigint>(made.map((material) => [material, 0n]));
  const byRun = new Map<string, ReadonlyMap<FileMaterial, Uses>>();
  for (let on = today; on <= today + (file.workshop.horizonDays ?? 56); on += 1) {
    for (const material of made) owed.set(material, take(usable(lots, material, on), owed.get(material) ?? 0n));
    for (const run of runs.filter((each) => Math.max(day(each.date), today) === on)) {
      const uses = open(found(file.products, run.product), BigInt(run.units), (material) =>
        heldBy(usable(lots, material, on)),
      );
      byRun.set(run.id, uses);
      for (const material of made) {
        const used = uses.get(material);
        if (used !== undefined)
          owed.set(material, (owed.get(material) ?? 0n) + take(usable(lots, material, on), needOf(used)));
      }
    }
  }
  return (runId) => byRun.get(runId) ?? new Map();
}
