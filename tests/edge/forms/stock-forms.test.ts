import { describe, expect, test } from "vitest";
import { finishedLot, materialLot } from "@/lib/domain/ledger/posting";
import { readCount } from "@/lib/edge/forms/count-form";
import { countRefusal, countShown } from "@/lib/edge/forms/count-words";
import { deliveryFault } from "@/lib/edge/forms/delivery-answers";
import { readDelivery, valuesOfOrder } from "@/lib/edge/forms/delivery-form";
import { sayingIn } from "@/lib/edge/forms/posting-refusals";
import { readLotForm } from "@/lib/edge/forms/lot-forms";
import { quantity } from "@/lib/domain/quantity";
import { day, formula, g, lot, product, material, money, offer, order, supplier } from "../../helpers/notation";
import { bareWorkshop } from "../../helpers/store-workshop";
import { sent } from "./workshop-of-file";

const workshop = bareWorkshop("Shop", {
  suppliers: [supplier("s")],
  materials: [material("oil"), material("jar", { kind: "packaging", measure: "count" })],
  offers: [offer("o", "oil", "1000", "20")],
  lots: [lot("L1", "oil", "600", "6")],
  formulas: [formula("f", { oil: "100" })],
  products: [product("p", "f")],
  finished: [{ id: "F1", product: "p", made: day("2026-11-01"), bestBefore: null, units: quantity(12n) }],
  orders: [order("po", "2026-11-27", [{ material: "oil", quantity: g("500"), cost: money("9"), expires: null }])],
});

const base = { id: "key", day: "2026-11-25", deliveryBy: "value", dutyBy: "value" };
const line = (given: Readonly<Record<string, string>>, at = 0) =>
  Object.fromEntries(Object.entries(given).map(([name, value]) => [`lines.${String(at)}.${name}`, value]));
const told = (read: {
  readonly kind: string;
  readonly faults?: readonly { field: string | null; message: string }[];
}) => (read.faults ?? []).map(({ field, message }) => `${field ?? "-"}: ${message}`);

describe("a delivery as it was typed", () => {
  test("[LEDGER-9] packs of an offer, a month as its last day, money to the coin", () => {
    const typed = line({ offer: "o", packs: "2", lot: "A7", expires: "2028-02", paid: "£38.50" });
    const read = readDelivery(
      workshop,
      sent({ ...base, ...typed, delivery: "4.40", supplier: "s", note: "invoice 9" }),
    );
    expect(read).toMatchObject({
      kind: "read",
      asked: {
        note: "from Supplier s, invoice 9",
        lines: [{ lot: "A7", quantity: g("2000"), expires: day("2028-02-29"), paid: money("38.5"), packs: 2n }],
        extras: [{ what: "delivery", amount: money("4.4"), by: "value" }],
      },
    });
  });

  test("the lines of an order go back to it, by their place in it", () => {
    const [due] = workshop.orders;
    if (due === undefined) throw new Error("the workshop has an order");
    const values = { ...base, ...valuesOfOrder(workshop, due), "lines.0.lot": "A8" };
    expect(readDelivery(workshop, sent(values))).toMatchObject({
      kind: "read",
      asked: { lines: [{ quantity: g("500"), paid: money("9"), order: { id: "po", line: 0 } }] },
    });
  });

  test("what is missing or of the wrong unit is said at its field", () => {
    const typed = {
      ...line({ material: "jar", packs: "1", pack: "1 kg", lot: "J" }),
      ...line({ packs: "0", lot: "" }, 1),
    };
    expect(told(readDelivery(workshop, sent({ ...base, ...typed })))).toEqual([
      "lines[0].paid: is needed; write an amount of money, as 8.40",
      "lines[1].lot: is needed; write it here",
      "lines[1].paid: is needed; write an amount of money, as 8.40",
      "lines[0].pack: 1 kg is a mass, but Material jar is counted; write whole pieces, as 12 each",
      "lines[1].material: is needed; choose an offer or a material",
      "lines[1].packs: must be above zero",
    ]);
    expect(told(readDelivery(workshop, sent(base)))).toContain("lines: needs at least one line; write down what came");
  });
});

describe("a delivery that is shared by weight", () => {
  const jars = { material: "jar", packs: "2", pack: "24 each", paid: "12" };
  const asked = (weight: string) => ({
    ...base,
    deliveryBy: "weight",
    delivery: "4.40",
    ...line({ ...jars, lot: "J1", weight }),
    ...line({ ...jars, lot: "J2" }, 1),
    ...line({ offer: "o", packs: "1", lot: "A1", paid: "20" }, 2),
  });

  test("[LEDGER-9] what is weighed says its own weight, of pieces the line says it", () => {
    expect(readDelivery(workshop, sent(asked("4.2 kg")))).toMatchObject({
      asked: { lines: [{ weight: g("4200") }, { weight: null }, { weight: g("1000") }] },
    });
    expect(told(readDelivery(workshop, sent(asked("12 each"))))).toEqual([
      "lines[0].weight: 12 each counts pieces, but the line is measured by mass; write it by weight, as 250 g",
    ]);
  });

  test("[LEDGER-9] a weight that is lacking is asked for at its line, with the other ways to share", () => {
    const read = readDelivery(workshop, sent(asked("")));
    if (read.kind !== "read") throw new Error("it was refused");
    const extra = { what: "delivery", amount: money("4.4"), by: "weight" } as const;
    const saying = sayingIn(workshop, day("2026-11-25"));
    expect(deliveryFault({ kind: "no weight", extra, lots: ["J1", "J2"] }, read.asked, saying)).toEqual({
      field: "lines[0].weight",
      message:
        "is needed to share the delivery by weight, and of lot J2 as well; write what all pieces of the line weigh together, as 4.2 kg, or share the delivery by what each line cost or by packs",
    });
  });
});

describe("a count as it was typed", () => {
  const row = (gross: string, tare = "") => ({
    id: "key",
    day: "2026-11-25",
    reason: "month's end",
    ...line({ kind: "material", lot: "L1", expected: "600000000", gross, tare }),
  });
  const units = (gross: string, lot = "F1") => ({
    id: "key",
    day: "2026-11-25",
    reason: "month's end",
    ...line({ kind: "finished", lot, expected: "12", gross }),
  });
  const saying = sayingIn(workshop, day("2026-11-25"));

  test.each([
    { gross: "590", tare: "", counted: "590" },
    { gross: "0.85 kg", tare: "260", counted: "590" },
    { gross: "0", tare: "", counted: "0" },
  ])("[LEDGER-13] $gross less $tare is $counted g", ({ gross, tare, counted }) => {
    expect(readCount(workshop, sent(row(gross, tare)))).toMatchObject({
      kind: "read",
      asked: { lines: [{ counted: g(counted), expected: g("600") }] },
    });
  });

  test.each([
    {
      gross: "100",
      tare: "101",
      says: "lines[0].tare: is more than the balance shows; write what the empty vessel weighs",
    },
    {
      gross: "",
      tare: "5",
      says: "lines[0].gross: is needed beside the vessel’s own weight; write what the balance shows",
    },
    {
      gross: "5 each",
      tare: "",
      says: "lines[0].gross: 5 each counts pieces, but Material oil is measured by mass; write it by weight, as 250 g",
    },
    { gross: "", tare: "", says: "-: nothing is written yet; write what the balance shows of one lot at least" },
  ])("'$gross' less '$tare' is refused", ({ gross, tare, says }) => {
    expect(told(readCount(workshop, sent(row(gross, tare))))).toEqual([says]);
  });

  test.each(["10", "10 units", "10 each"])(
    "[LEDGER-26] %s of a finished lot beside a lot of the same name",
    (gross) => {
      const read = readCount({ ...workshop, lots: [lot("F1", "oil", "600", "6")] }, sent(units(gross)));
      expect(read).toMatchObject({ asked: { lines: [{ lot: finishedLot("F1"), counted: 10n, expected: 12n }] } });
      expect(read.kind === "read" && read.fieldOf(finishedLot("F1"))).toBe("lines[0].gross");
      expect(read.kind === "read" && read.fieldOf(materialLot("F1"))).toBeNull();
    },
  );

  test.each([
    { gross: "10.5", says: 'lines[0].gross: must be a whole number, as 24, not "10.5"' },
    { gross: "10 g", says: "lines[0].gross: is counted in units; write a whole number, as 12" },
    { gross: "-1", says: 'lines[0].gross: must not be below zero, as "-1" is' },
    { gross: "9", lot: "F9", says: "lines[0].gross: this lot is on no list any more; load the page again" },
  ])("'$gross' finished units are refused", ({ gross, lot: of, says }) => {
    expect(told(readCount(workshop, sent(units(gross, of))))).toEqual([says]);
  });

  test("[LEDGER-26] a refusal of a past day names the day and what would be missing", () => {
    const on = day("2026-11-20");
    const refused = {
      kind: "not there",
      lot: materialLot("L1"),
      place: { kind: "shelf" },
      asked: g("50"),
      there: g("40"),
      on,
      onTheDay: g("100"),
      now: g("40"),
      held: 0n,
    } as const;
    const lines = [{ lot: materialLot("L1"), expected: g("100"), counted: g("50") }];
    expect(countRefusal(refused, { day: day("2026-11-05"), lines }, saying)).toBe(
      "with only 50\u00a0g at the end of Thu\u00a05\u00a0Nov, what was taken later would be missing: 10\u00a0g at the end of Fri\u00a020\u00a0Nov. Count it for that day or a later one, or take back what was taken too much",
    );
    expect(countRefusal({ kind: "counted since", lot: materialLot("L1"), on }, { day: on, lines }, saying)).toContain(
      "counted for Fri\u00a020\u00a0Nov as well",
    );
  });

  test("the differences are shown with what they are worth", () => {
    const value = { materials: money("-0.1"), labour: money("0"), overhead: money("0") };
    const difference = {
      lot: { of: "material", id: "L1" },
      expected: g("600"),
      counted: g("590"),
      quantity: g("-10"),
      value,
    } as const;
    const { says, rows, total } = countShown(workshop, [difference], saying);
    expect(says).toBe("One lot differs: Material oil, lot L1, −10\u00a0g, £0.10 less. Nothing is kept yet.");
    expect(rows).toEqual([["Material oil, lot L1", "600\u00a0g", "590\u00a0g", "−10\u00a0g", "−£0.10"]]);
    expect(total?.at(-1)).toBe("−£0.10");
  });

  test("what finished units cost that were entered without a cost is not known, and no nothing", () => {
    const nothing = { materials: money("0"), labour: money("0"), overhead: money("0") };
    const of = (id: string, missing: bigint, value: typeof nothing) => ({
      lot: { of: "finished", id } as const,
      expected: 9n as never,
      counted: (9n - missing) as never,
      quantity: -missing as never,
      value,
    });
    const [unknown, known] = [of("F1", 3n, nothing), of("F2", 2n, { ...nothing, materials: money("-4") })];
    const alone = countShown(workshop, [unknown], saying);
    expect(alone.says).toMatch(/, what that is worth is not known\. Nothing is kept yet\.$/);
    expect([alone.rows[0]?.at(-1), alone.total?.at(-1)]).toEqual(["not known", "not known"]);
    const both = countShown(workshop, [unknown, known], saying);
    expect(both.says).toContain("£4.00 less in all, without one finished lot whose cost is not known.");
    expect(both.rows.map((row) => row.at(-1))).toEqual(["not known", "−£4.00"]);
    expect(both.total?.at(-1)).toBe("−£4.00");
  });
});

describe("what is done with a lot, as it was typed", () => {
  const typed = { id: "key", day: "2026-11-25", amount: "50 g", why: "expired", from: "stock" };

  test("[LEDGER-14] out of date is written off as such, anything else as lost", () => {
    expect(readLotForm(workshop, "L1", "off", sent(typed))).toMatchObject({
      asked: { as: "expired", from: "stock", quantity: g("50"), reason: "Out of date" },
    });
    expect(readLotForm(workshop, "L1", "off", sent({ ...typed, why: "spilt", reason: "cat" }))).toMatchObject({
      asked: { as: "lost", reason: "Spilt: cat" },
    });
  });

  test("[LEDGER-10] a credit takes from what the lot cost", () => {
    const credit = { id: "key", day: "2026-11-25", why: "credit", cost: "3", reason: "note 4" };
    expect(readLotForm(workshop, "L1", "cost", sent(credit))).toMatchObject({ asked: { amount: money("-3") } });
  });

  test("[LEDGER-8] nothing, and a lot that is not there, are refused", () => {
    expect(told(readLotForm(workshop, "L1", "hold", sent({ ...typed, why: "doubt", amount: "0 g" })))).toEqual([
      "amount: must be above zero",
    ]);
    expect(told(readLotForm(workshop, "gone", "off", sent(typed)))).toEqual([
      "-: the lot is on no list any more; load the page again",
    ]);
  });
});
