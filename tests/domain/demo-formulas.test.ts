/** What the checks find in the demo's formulas, as seed/WORKED.md works it. Everything in the demo is invented. */
import { describe, expect, test } from "vitest";
import { checksOf } from "@/lib/domain/formula-book/checks";
import { errorsOf } from "@/lib/domain/formula-book/accepted-warnings";
import type { Finding } from "@/lib/domain/formula-book/findings";
import { byId } from "@/lib/domain/index-by-id";
import { type Micrograms, quantity } from "@/lib/domain/quantity";
import { readDemo } from "./demo-workshop";

const { workshop, plan } = readDemo();

/** For a batch of one kilogram. */
const findingsOf = (id: string): readonly Finding[] =>
  checksOf(byId("formula", workshop.formulas)(id), {
    ...workshop,
    today: plan.today,
    step: workshop.settings.balanceStep.quantity,
    batch: quantity<Micrograms>(1_000_000_000n),
  });

const about = (finding: Finding): string => {
  switch (finding.code) {
    case "over a legal maximum": {
      const { amount } = finding;
      const ppm = (amount.over * 1_000_000n) / amount.under;
      return `${finding.code}: ${finding.substance}, ${ppm.toString()} ppm`;
    }
    case "outside its use range":
      return `${finding.side} its use range: ${finding.material.id}`;
    case "balance too coarse":
      return `${finding.code}: ${finding.line.of.id}`;
    case "lot expires before the product":
    case "lot is out of date":
      return `${finding.code}: ${finding.lot.id}`;
    case "caution":
      return `${finding.of}: ${finding.material.id}`;
    case "no limit held for this use":
      return `${finding.code}: ${finding.substance}`;
    case "too hot for it":
    case "a step is hotter":
    case "phase without a temperature":
    case "pH outside its window":
    case "no target pH":
    case "sheet to review":
      return `${finding.code}: ${finding.material.id}`;
    case "does not add up":
    case "water and no preservative":
    case "no market":
    case "no published maxima":
    case "nothing marked as water or preservative":
      return finding.code;
  }
};

const BENZOIC = "benzoic acid and its sodium salt, as acid";

describe("the demo shows", () => {
  test.each([
    {
      rule: "CHECK-2, CHECK-4, CHECK-5, CHECK-7",
      formula: "f-gel",
      found: [
        `over a legal maximum: ${BENZOIC}, 5084 ppm`,
        "over a legal maximum: benzyl alcohol, 28000 ppm",
        "too hot for it: m-preservative",
        "above its use range: m-propanediol",
        "below its use range: m-xanthan",
        "above its use range: m-preservative",
        "pH outside its window: m-preservative",
        "balance too coarse: m-xanthan",
        "lot expires before the product: L04",
        "lot expires before the product: L16",
        "lot expires before the product: L14",
        "lot expires before the product: L15",
        "a step is hotter: m-protein",
        "sheet to review: m-preservative",
        "eye hazard: m-preservative",
      ],
    },
    {
      rule: "CHECK-1, CHECK-10, WEIGH-3",
      formula: "f-conditioner",
      found: [
        "balance too coarse: m-citric",
        "balance too coarse: m-water",
        "lot expires before the product: L07",
        "lot expires before the product: L14",
        "lot expires before the product: L24",
        `no limit held for this use: ${BENZOIC}`,
        "sheet to review: m-preservative",
        "eye hazard: m-citric",
        "eye hazard: m-preservative",
        "allergen: m-lavandin",
      ],
    },
    {
      rule: "CHECK-2, CHECK-5, CHECK-7",
      formula: "f-mist",
      found: [
        "balance too coarse: m-limonene",
        "balance too coarse: m-citric",
        "balance too coarse: m-water",
        "no market",
        "phase without a temperature: m-preservative",
        "phase without a temperature: m-limonene",
        "no target pH: m-preservative",
        "sheet to review: m-preservative",
        "flammable: m-ethanol",
        "eye hazard: m-citric",
        "eye hazard: m-preservative",
        "flammable: m-limonene",
        "allergen: m-limonene",
      ],
    },
    { rule: "CHECK-6", formula: "f-acid", found: ["water and no preservative", "eye hazard: m-citric"] },
  ])("[$rule] in $formula", ({ formula, found }) => {
    expect(findingsOf(formula).map(about)).toEqual(found);
  });

  test("[CHECK-6, CHECK-10] that nobody said what apricot stone does, and that its lot is out of date", () => {
    expect(findingsOf("f-scrub").map(about)).toEqual(
      expect.arrayContaining(["nothing marked as water or preservative", "lot is out of date: L27"]),
    );
  });

  test("[VERSION-5] an error in a formula of no product, so that every run of it can be made", () => {
    const withErrors = workshop.formulas.filter(({ id }) => errorsOf(findingsOf(id)).length > 0);
    expect(withErrors.map(({ id }) => id)).toEqual(["f-gel"]);
    expect(workshop.products.some(({ formula }) => formula === "f-gel")).toBe(false);
  });

  test("[CHECK-9] blends by INCI names, and one maximum that was copied by hand with its as-acid factor", () => {
    const blends = workshop.materials.filter(({ composition }) => composition.length > 1);
    expect(blends.map(({ id }) => id)).toEqual([
      "m-btms",
      "m-emulsifier",
      "m-protein",
      "m-preservative",
      "m-calendula",
    ]);
    const [limit] = byId("material", workshop.materials)("m-preservative").limits;
    expect(limit).toMatchObject({
      countsAs: "0.112",
      maximum: 6000n,
      source: "Regulation (EC) 1223/2009, Annex V, entry 4",
    });
  });
});
