import { describe, expect, test } from "vitest";
import { quantity } from "@/lib/domain/quantity";
import { countsCarried, packsField, readOrdering, readPacks } from "@/lib/edge/forms/order-deeds";
import { readSuggestion, suggestionTyped, type SuggestionTyped } from "@/lib/edge/forms/suggestion-inputs";
import { writtenOrder } from "@/lib/edge/kept-order";
import { orderSays } from "@/lib/edge/order-words";
import { orderCsv, orderText } from "@/lib/edge/order-text";
import { valuesOfOrder } from "@/lib/edge/forms/delivery-form";
import { day, g, material, money, offer, order, settings, supplier } from "../../helpers/notation";
import { bareWorkshop } from "../../helpers/store-workshop";
import { sent } from "./workshop-of-file";

const TODAY = day("2026-11-25");

describe("[ORDER-3] packs of a draft", () => {
  const typed = (first: string, second: string) =>
    sent({ order: "po", from: countsCarried([2n, 3n]), [packsField(0)]: first, [packsField(1)]: second });
  test("are whole numbers, and nothing written takes the line out", () => {
    expect(readPacks(typed(" 4 ", ""))).toEqual({ asked: { id: "po", from: [2n, 3n], packs: [4n, 0n] } });
  });
  test("that are none are told at their line", () => {
    const read = readPacks(typed("-1", "2.5"));
    expect(read !== null && "faults" in read && Object.keys(read.faults)).toEqual(["packs 0", "packs 1"]);
    expect(readPacks(sent({ order: "po" }))).toBeNull();
  });
});

test("[ORDER-2] an order is due today at the earliest", () => {
  const on = (due: string) => readOrdering(sent({ order: "po", due }), TODAY);
  const faultOf = (due: string) => {
    const read = on(due);
    return read !== null && "faults" in read ? read.faults.due : null;
  };
  expect(on("2026-11-25")).toEqual({ asked: { id: "po", due: TODAY } });
  expect(faultOf("2026-11-24")).toContain("before today");
  expect(faultOf("")).toContain("is needed");
});

const kept = order("po", "2026-11-27", [
  {
    material: "A",
    quantity: g("400"),
    cost: money("16"),
    expires: null,
    offer: "a",
    packs: quantity(2n),
    received: g("200"),
  },
  { material: "A", quantity: g("100"), cost: money("3"), expires: null, offer: "gone", packs: quantity(2n) },
  { material: "A", quantity: g("30"), cost: money("1"), expires: null },
]);
const workshop = bareWorkshop("Shop", {
  settings: settings(),
  suppliers: [supplier("s", { name: "+Larch", shipping: money("2"), shippingFreeFrom: money("50") })],
  materials: [material("A", { name: "Oil" })],
  offers: [offer("a", "A", "200", "8", { supplier: "s" })],
  orders: [kept],
});

test("[ORDER-1] a kept order is written in packs, where its offer is gone too, and holds no formula", () => {
  const written = writtenOrder(workshop, kept);
  const text = orderText({ order: written, workshop: "Shop", currency: settings().currency, today: TODAY });
  expect(text).toMatch(/2 × 200 g Oil, \S8\.00 each, \S16\.00\n2 × 50 g Oil, \S1\.50 each, \S3\.00\n1 × 30 g Oil/);
  expect(text).toMatch(/Goods \S20\.00\nDelivery \S2\.00\nIn all \S22\.00\n$/);
  const [, first] = orderCsv({ order: written, currency: settings().currency }).split("\r\n");
  expect(first).toBe(`'+Larch,Oil,a,200 g,2,8.00,16.00,${settings().currency},2026-11-27`);
});

test("[ORDER-2] what is still to come stands in the form of its delivery, in packs of the offer where it is whole packs", () => {
  expect(valuesOfOrder(workshop, kept)).toMatchObject({
    order: "po",
    "lines.0.offer": "a",
    "lines.0.packs": "1",
    "lines.0.pack": "",
    "lines.0.paid": "8.00",
    "lines.1.material": "A",
    "lines.1.pack": "100 g",
    "lines.2.pack": "30 g",
  });
});

test.each([
  { given: { state: "drafted" }, says: /^Drafted .* not ordered yet/ },
  { given: {}, says: /partly received: 0 of three lines came whole\. The rest is due/ },
  { given: { due: day("2026-11-24") }, says: /was due Tue.24.Nov, 1.day ago\.$/ },
  { given: { state: "given up" }, says: /given up: nothing more is expected\.$/ },
] as const)("[ORDER-1] $given is said as $says", ({ given, says }) => {
  expect(orderSays({ ...kept, ...given }, TODAY)).toMatch(says);
});

describe("[BUY-13] [BUY-14] what a suggestion is reckoned from", () => {
  const begins: SuggestionTyped = {
    use: "12.5",
    spread: "3",
    lead: "7",
    leadspread: "0",
    service: "95",
    order: "6.00",
    keeping: "20",
  };
  const { currency } = settings();
  test("is what was typed, else what it begins with", () => {
    expect(suggestionTyped({ use: "9", keeping: ["1", "2"] }, begins)).toEqual({ ...begins, use: "9", keeping: "1" });
    const read = readSuggestion(begins, "mass", currency);
    expect(read).toMatchObject({
      inputs: {
        demand: { lead: { over: 7n, under: 1n }, service: 950_000n },
        orderCost: money("6"),
        keeping: 200_000n,
      },
    });
    expect(
      "inputs" in read && Number(read.inputs.demand.useOfDay.over) / Number(read.inputs.demand.useOfDay.under),
    ).toBe(12_500_000);
  });
  test.each([
    ["use", ""],
    ["use", "many"],
    ["spread", "-1"],
    ["lead", "9999999999"],
    ["service", "100"],
    ["service", "0"],
    ["order", "€5"],
    ["keeping", "101"],
  ] as const)("with %s %j is told there", (field, text) => {
    const read = readSuggestion({ ...begins, [field]: text }, "count", currency);
    expect("faults" in read && Object.keys(read.faults)).toEqual([field]);
  });
});
