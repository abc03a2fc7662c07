import { beforeEach, expect, test } from "vitest";
import { quantity } from "@/lib/domain/quantity";
import { priceFields, pricePressed } from "@/lib/edge/forms/price-pressed";
import { confirmPrice, type PriceConfirmed } from "@/lib/operations/confirm-price";
import { books } from "../helpers/ledger-shop";
import { day, material, money, offer, supplier } from "../helpers/notation";
import { booksOf, openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bareWorkshop } from "../helpers/store-workshop";

storeForEachTest();

const breaks = [
  { packs: quantity<never>(5n), price: money("4") },
  { packs: quantity<never>(10n), price: money("3") },
];
beforeEach(() =>
  openBooks(
    booksOf(
      bareWorkshop("Prices", {
        suppliers: [supplier("s")],
        materials: [material("A")],
        offers: [offer("o", "A", "100", "5", { breaks })],
      }),
    ),
  ),
);

const asked = (given: Partial<PriceConfirmed> = {}): PriceConfirmed => ({
  offer: "o",
  packs: quantity(2n),
  from: money("5"),
  to: money("5.4"),
  on: day("2026-11-25"),
  ...given,
});
const kept = async () => {
  const [only] = (await books()).workshop.offers;
  return [only?.price, ...(only?.breaks.map(({ price }) => price) ?? []), only?.confirmedOn];
};

test("[OFFER-3] what was paid becomes the offer's price, confirmed on that day, once", async () => {
  expect((await confirmPrice(asked())).kind).toBe("changed");
  expect(await kept()).toEqual([money("5.4"), money("4"), money("3"), day("2026-11-25")]);
  expect((await confirmPrice(asked())).kind).toBe("as asked");
});

test("[OFFER-3] with packs that reach a break it is the price of the highest", async () => {
  expect((await confirmPrice(asked({ packs: quantity(12n), from: money("3"), to: money("3.2") }))).kind).toBe(
    "changed",
  );
  expect(await kept()).toEqual([money("5"), money("4"), money("3.2"), day("2026-11-25")]);
});

test("[OFFER-3] a price that another tab changed meanwhile stays, and a later confirmation stays the later", async () => {
  await confirmPrice(asked());
  expect((await confirmPrice(asked({ to: money("6") }))).kind).toBe("price changed");
  expect((await confirmPrice(asked({ offer: "gone" }))).kind).toBe("not there");
  expect((await confirmPrice(asked({ from: money("5.4"), to: money("5.3"), on: day("2026-11-20") }))).kind).toBe(
    "changed",
  );
  expect(await kept()).toEqual([money("5.3"), money("4"), money("3"), day("2026-11-25")]);
});

const form = (fields: Readonly<Record<string, string>>) => ({ get: (name: string) => fields[name] });

test("[OFFER-3] a press carries the price and is read as it again; anything else is not understood", () => {
  expect(pricePressed(form(priceFields(asked())))).toEqual(asked());
  for (const wrong of [
    { packs: "0" },
    { to: "0" },
    { to: "1.5" },
    { on: "soon" },
    { offer: "" },
    { from: "9".repeat(17) },
  ])
    expect(pricePressed(form({ ...priceFields(asked()), ...wrong }))).toBeNull();
});
