/** Order text and rows; the form of rows is RFC 4180's, and what stands before a formula is OWASP's (CSV injection). */
import { expect, test } from "vitest";
import type { PlannedOrder } from "@/lib/domain/buying/basket-of-plan";
import { quantity } from "@/lib/domain/quantity";
import { orderFields, orderIn } from "@/lib/edge/forms/order-form";
import { orderCsv, orderText } from "@/lib/edge/order-text";
import { day, g, material, money, offer, order as keptOrder, settings, supplier } from "@/tests/helpers/notation";

const today = day("2026-11-25");
const { currency } = settings();

/** Two packs of 250 g at 1.2345 and free delivery. */
const order: PlannedOrder = {
  supplier: supplier("s", { name: '=Larch, "the old"' }),
  goods: money("2.469"),
  shipping: money("0"),
  total: money("2.469"),
  lines: [
    {
      offer: offer("o 1", "A", "250", "1.2345", { supplier: "s" }),
      material: material("A", { name: "Oat\u00a0oil" }),
      packs: quantity(2n),
      packPrice: money("1.2345"),
      cost: money("2.469"),
      arrives: day("2026-11-27"),
      late: false,
      expires: null,
    },
  ],
};

test("an order reads as words without no-break spaces", () => {
  const text = orderText({ order, workshop: "Shop", currency, today });
  expect(text).toContain('Order of Shop, to =Larch, "the old"\nWednesday 25 November\n');
  expect(text).toMatch(/\n2 × 250 g Oat oil, \S1\.2345 each, \S2\.47\n/);
  expect(text).not.toContain("\u00a0");
});

test("rows are quoted where they must be, exact in money, and hold no formula", () => {
  const [, line, delivery, end] = orderCsv({ order, currency }).split("\r\n");
  expect(line).toBe(`"'=Larch, ""the old""",Oat\u00a0oil,o 1,250 g,2,1.234500,2.469000,${currency},2026-11-27`);
  expect(delivery).toBe(`"'=Larch, ""the old""",Delivery,,,,,0.00,${currency},`);
  expect(end).toBe("");
});

const form = (fields: Readonly<Record<string, string>>) => ({ get: (name: string) => fields[name] });
const line = { material: "A", quantity: g("1"), cost: money("1"), expires: null };
const kept = (id: string, at: string, given: { readonly state?: "given up" } = {}) =>
  keptOrder(id, "2026-12-01", [line], { supplier: at, ...given });
const orders = [kept("open", "s"), kept("elsewhere", "t"), kept("over", "s", { state: "given up" })];
const fields = orderFields(order, { newId: "n", today, due: day("2026-11-27"), orders });

test("[BUY-15] [ORDER-1] a form carries an order, or a draft of one, and is read as it again", () => {
  expect(orderIn(form({ ...fields, state: "drafted" }))).toMatchObject({ id: "n", state: "drafted" });
  expect(orderIn(form(fields))).toEqual({
    id: "n",
    supplier: "s",
    placed: today,
    due: day("2026-11-27"),
    state: "ordered",
    lines: [{ offer: "o 1", packs: 2n, packPrice: money("1.2345") }],
    known: ["open"],
  });
});

test.each([
  ["no id", { id: "" }],
  ["no such day", { due: "2026-02-30" }],
  ["no lines", { lines: "[]" }],
  ["lines that are no list", { lines: "{" }],
  ["packs of none", { lines: '[["o","0","1"]]' }],
  ["packs beyond what is stored", { lines: '[["o","9999999999999999","1"]]' }],
  ["a price below zero", { lines: '[["o","1","-1"]]' }],
])("[BUY-15] a form with %s carries no order", (_, changed) => {
  expect(orderIn(form({ ...fields, ...changed }))).toBeNull();
});
