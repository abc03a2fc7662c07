import { describe, expect, test } from "vitest";
import { type Day, dayOf } from "@/lib/domain/calendar";
import type { CurrencyCode } from "@/lib/domain/money";
import { plan } from "@/lib/domain/plan";
import type { Workshop } from "@/lib/domain/workshop";
import { moneyShown } from "@/lib/edge/figures";
import { putFirstProduct } from "@/lib/edge/forms/first-product";
import type { SentForm } from "@/lib/edge/forms/form-reading";
import { emptyWorkshopFile } from "@/lib/edge/empty-workshop";
import { readWorkshopFile } from "@/lib/edge/workshop-file";

const TODAY = dayOf("2026-11-25") as Day;
const READ = readWorkshopFile(emptyWorkshopFile({ name: "Merrow bench", currency: "GBP" }), TODAY);
if (READ.kind === "refused") throw new Error(READ.faults.join("\n"));
const EMPTY = READ.workshop;

const CREAM = {
  id: "cream",
  name: "Hand cream",
  fill: "100 g",
  "lines.0.material": "Water",
  "lines.0.percent": "qs",
  "lines.0.pack": "10 kg",
  "lines.0.price": "10",
  // A row that was left empty, and one further down.
  "lines.1.material": "",
  "lines.1.percent": "",
  "lines.4.material": "Glycerin",
  "lines.4.percent": "5 %",
  "lines.4.pack": "1 L",
  "lines.4.price": "£12.50",
  "lines.4.density": "1,25",
  "packaging.0.material": "Jar",
  "packaging.0.pack": "50 each",
  "packaging.0.price": "20",
  usualRun: "10",
  supplier: "Hollin Wharf",
  leadDays: "3",
};

const sent = (fields: Readonly<Record<string, string>>): SentForm => ({
  get: (name) => fields[name] ?? null,
  getAll: (name) => (fields[name] === undefined ? [] : [fields[name]]),
  keys: () => Object.keys(fields),
});

function put(workshop: Workshop, fields: Readonly<Record<string, string>>): Workshop {
  const result = putFirstProduct(workshop, sent(fields), TODAY);
  if (result.kind === "refused") throw new Error(JSON.stringify(result));
  return result.workshop;
}

const refusedFor = (fields: Readonly<Record<string, string>>) => {
  const result = putFirstProduct(EMPTY, sent(fields), TODAY);
  return result.kind === "refused" ? result.faults.map(({ name, message }) => `${String(name)}: ${message}`) : [];
};

describe("a product in one go", () => {
  test("everything that it names is made, and one has a price", () => {
    const workshop = put(EMPTY, CREAM);
    expect(workshop.materials.map(({ name, kind }) => `${name}, ${kind}`)).toEqual([
      "Water, ingredient",
      "Glycerin, ingredient",
      "Jar, packaging",
    ]);
    const [cost] = plan(workshop, TODAY).costs;
    // 95 g × 0.001 + 5 g × 12.50 ÷ 1,250 g + 20 ÷ 50 = 0.095 + 0.05 + 0.40
    expect(moneyShown(cost?.byBasis.replacement.perUnit ?? 0n, "GBP" as CurrencyCode, 2)).toBe("£0.5450");
  });

  test.each(["50", " 50 ", "50 each"])("a pack of jars typed as “%s” is of fifty pieces", (pack) => {
    const [jars] = put(EMPTY, { ...CREAM, "packaging.0.pack": pack }).offers.slice(-1);
    expect(jars?.pack.typed).toEqual({ number: "50", unit: "each" });
  });

  test("a pack of what goes in keeps asking for its unit", () => {
    expect(refusedFor({ ...CREAM, "lines.0.pack": "10" })).not.toEqual([]);
  });

  test("sent twice, it is there once", () => {
    const once = put(EMPTY, CREAM);
    expect(put(once, CREAM)).toEqual(once);
  });

  test("what the workshop has by that name is used and not made again", () => {
    const first = put(EMPTY, CREAM);
    const second = put(first, {
      id: "lotion",
      name: "Lotion",
      fill: "50 g",
      "lines.0.material": "glycerin ",
      "lines.0.percent": "100",
      usualRun: "20",
      supplier: "HOLLIN WHARF",
      leadDays: "3",
    });
    expect([second.materials.length, second.suppliers.length, second.offers.length]).toEqual([3, 1, 3]);
    expect(second.formulas.find(({ id }) => id === "lotion-f")?.lines[0]?.of.id).toBe("cream-m2");
  });

  const LOTION = {
    id: "lotion",
    name: "Lotion",
    fill: "50 g",
    "lines.0.material": "Glycerin",
    "lines.0.percent": "100",
    usualRun: "20",
    supplier: "Hollin Wharf",
    leadDays: "3",
  };

  test.each([
    [{ "lines.0.density": "1.250" }, []],
    [
      { "lines.0.density": "1.0" },
      [`lines.0.density: there is "Glycerin" already, with 1.25; write the same here, or change that first`],
    ],
    [{ "lines.0.density": "1,2,5" }, [`lines.0.density: must be a number, as 12.5, not "1,2,5"`]],
    [
      { leadDays: "9" },
      [`leadDays: there is "Hollin Wharf" already, with 3; write the same here, or change that first`],
    ],
    [
      { "lines.0.material": "Water", "lines.0.density": "1" },
      [`lines.0.density: there is "Water" already, without one; write the same here, or change that first`],
    ],
    [
      // Twice in one form, with two densities.
      {
        "lines.0.material": "Olive oil",
        "lines.0.percent": "50",
        "lines.0.density": "0.91",
        "lines.1.material": "olive oil",
        "lines.1.percent": "50",
        "lines.1.density": "0.9",
      },
      [`lines.1.density: there is "olive oil" already, with 0.91; write the same here, or change that first`],
    ],
  ])("what the workshop has otherwise is not dropped unsaid: %o", (change, told) => {
    const result = putFirstProduct(put(EMPTY, CREAM), sent({ ...LOTION, ...change }), TODAY);
    const faults = result.kind === "refused" ? result.faults : [];
    expect(faults.map(({ name, message }) => `${String(name)}: ${message}`)).toEqual(told);
  });

  test.each([
    [{ "lines.4.density": "" }, /^lines\.4\.pack: .*density/],
    [{ "lines.4.percent": "" }, /^lines\.4\.percent: is needed/],
    [{ "lines.4.price": "" }, /^lines\.4\.price: is needed for the pack/],
    [{ "lines.4.pack": "" }, /^lines\.4\.pack: is needed for the price/],
    [{ "lines.4.material": "" }, /^lines\.4\.material: is needed/],
    [{ "lines.4.percent": "120" }, /^lines\.4\.percent: /],
    [{ "lines.0.percent": "5" }, /^lines: .*add up to 10 %/],
    [{ fill: "100" }, /^fill: .*no unit/],
    [{ name: "" }, /^name: is needed/],
    [{ leadDays: "-1" }, /^leadDays: must not be below zero/],
    [{ "packaging.0.price": "1,500" }, /^packaging\.0\.price: .*two ways/],
  ])("%o is told at its field, and nothing else of it", (change, told) => {
    const faults = refusedFor({ ...CREAM, ...change });
    expect(faults.filter((fault) => told.test(fault))).toHaveLength(1);
    expect(faults).toHaveLength(1);
  });

  test("nothing of it is made where anything is wrong", () => {
    const result = putFirstProduct(EMPTY, sent({ ...CREAM, fill: "" }), TODAY);
    expect(result).toMatchObject({ kind: "refused", faults: [{ name: "fill" }] });
  });
});
