import { describe, expect, test } from "vitest";
import { writeWorkshopFile } from "@/lib/edge/workshop-file";
import { asWritten, changedFile, dayCalled, faultsOf, LEFT_OUT, workshopOf } from "../bad-files/bench-workshop";

describe("what stands at the edge of what is allowed is read", () => {
  test.each([
    ["FILE-3", "a name of 200 characters beyond U+FFFF", { "workshop.name": "🌿".repeat(200) }],
    ["FILE-3", "a name of blanks and format characters", { "workshop.name": " \u200d\u00ad " }],
    ["FILE-3", "the same id in two lists", { "runs[0].id": "balm60", "finished[0].id": "balm60" }],
    ["FILE-3", "a lot whose id is that of a line its order has not", { "lots[0].id": "po1/2" }],
    ["FILE-3", "a lot whose id only looks like a line on order", { "lots[0].id": "po1/01" }],
    ["FILE-3", "an order whose id has a stroke", { "orders[0].id": "po/1", "lots[0].id": "po/1" }],
    [
      "DAY-1",
      "the first and the last day",
      { "finished[0].made": "1900-01-01", "finished[0].bestBefore": "2999-12-31" },
    ],
    ["DAY-1", "a leap day", { "workshop.today": "2028-02-29" }],
    ["FILE-1", "a lot received today", { "lots[0].received": "2026-11-25" }],
    ["FILE-1", "a lot that expired before it came", { "lots[0].expires": "2020-01-01" }],
    ["FILE-1", "an order due before it was placed", { "orders[0].due": "2026-11-19" }],
    ["FILE-1", "a line that expires on the day it is due", { "orders[0].lines[0].expires": "2026-11-27" }],
    ["FILE-1", "no horizon and no lead", { "workshop.horizonDays": 0, "suppliers[0].leadDays": 0 }],
    ["FILE-1", "the longest horizon and lead", { "workshop.horizonDays": 3660, "suppliers[0].leadDays": 3660 }],
    ["FILE-1", "the last place in a day", { "runs[0].sequence": 1_000_000 }],
    ["QTY-6", "2^53 − 1 units", { "runs[0].units": asWritten("9007199254740991") }],
    ["QTY-6", "2^53 − 1 µg", { "lots[0].remaining": "9007199254.740991 g" }],
    ["QTY-6", "2^53 − 1 pieces", { "offers[2].pack": "9007199254740991 each" }],
    ["QTY-6", "2^53 − 1 micro-units", { "offers[0].price": "9007199254.740991" }],
    ["QTY-3", "60 characters", { "offers[1].pack": `0.1${"0".repeat(57)} kg` }],
    ["QTY-3", "zeros behind the point", { "offers[1].pack": "500.000 g", "offers[1].price": "6.100000" }],
    ["QTY-4", "just over half a microgram is one", { "offers[1].pack": "0.00050001 mg" }],
    ["QTY-1", "one microgram, one piece", { "offers[1].pack": "0.001 mg", "offers[2].pack": "1 each" }],
    [
      "QTY-1",
      "a safety stock of nothing",
      { "materials[0].safetyStock": "0 mL", "materials[2].safetyStock": "0 each" },
    ],
    ["QTY-1", "a lot of nothing without a value", { "lots[0].remaining": "0 g", "lots[0].value": "0.00" }],
    ["QTY-1", "overfill and heel of nothing", { "products[0].overfill": "0 g", "products[0].heel": "0 mL" }],
    ["QTY-1", "packaging by weight", { "products[0].packaging[0]": { material: "wax", amount: "0.5 g" } }],
    [
      "QTY-7",
      "useMin 0 and equal to useMax",
      { "materials[0].useMin": "0", "materials[1].useMin": "5", "materials[1].useMax": "5.0000" },
    ],
    [
      "QTY-7",
      "shares at their ends",
      { "workshop.taxPercent": "100", "workshop.paymentFeePercent": "99.9999", "products[0].processLoss": "0" },
    ],
    ["MONEY-1", "an order line that costs nothing", { "orders[0].lines[0].cost": "0" }],
    ["MONEY-1", "more decimals than the currency has", { "workshop.currency": "JPY" }],
    ["MONEY-2", "a code that the standard does not list", { "workshop.currency": "ZZZ" }],
    ["FORMULA-1", "qs of the least part", { "formulas[0].lines[0].percent": "69.9999" }],
    ["FORMULA-1", "a formula that is all qs", { "formulas[1].lines": [{ material: "oil", percent: "qs" }] }],
    ["FORMULA-1", "a material on two lines of a formula", { "formulas[1].lines[1].material": "oil" }],
    [
      "PLAN-7",
      "one preferred offer for each of two materials",
      { "offers[0].preferred": true, "offers[1].preferred": true },
    ],
    ["FILE-1", "a material in packaging and per run", { "products[0].perRun[0].material": "jar" }],
    [
      "FILE-1",
      "breaks in any order",
      {
        "offers[0].breaks": [
          { packs: 9, price: "7" },
          { packs: 2, price: "8" },
        ],
      },
    ],
    [
      "CHECK-9",
      "components that are exactly the whole, in thousandths of a percent",
      {
        version: 4,
        "materials[0].composition": [
          { inci: "Aqua", percent: "66.6667" },
          { inci: "Glycerin", percent: "33.3333" },
        ],
      },
    ],
    [
      "CHECK-11",
      "pH and temperatures at their ends",
      {
        version: 4,
        "materials[0].phFrom": "0",
        "materials[0].phTo": "14.0",
        "formulas[0].phases": [{ name: "A", temperature: "150" }],
      },
    ],
    ["FILE-5", "version 3 without anything of it, and without a past", { version: 3 }],
    [
      "OFFER-1",
      "a shelf life at its ends",
      { version: 3, "offers[0].shelfLifeDays": 0, "offers[1].shelfLifeDays": 3660, "offers[2].shelfLifeDays": null },
    ],
    ["OFFER-2", "a confirmation on any day", { version: 3, "offers[0].confirmedOn": "2999-12-31" }],
    ["FILE-1", "a finished lot that is used up", { "finished[0].units": 0 }],
    ["FILE-1", "the same closed day twice", { "workshop.closedDays": ["2026-12-25", "2026-12-25"] }],
  ] as const)("[%s] %s", (_, __, changes) => {
    expect(faultsOf(changedFile(changes))).toEqual([]);
  });
});

const ODD_IDS = [
  "__proto__",
  "constructor",
  "hasOwnProperty",
  "toString",
  "a b",
  "ä/ö",
  "🌿",
  '"',
  "\\",
  "x".repeat(200),
];

test.each(ODD_IDS)("[FILE-3] %j is an id like others", (id) => {
  const changes = {
    "materials[4]": { id, name: id, kind: "ingredient", measure: "mass", density: "1" },
    "offers[3]": { id, material: id, supplier: "s1", pack: "1 L", price: "1" },
    "lots[1]": { id, material: id, received: "2026-11-01", remaining: "1 L", value: "1" },
    "formulas[2]": { id, name: id, lines: [{ material: id, percent: "100" }] },
    "products[1]": { id, name: id, formula: id, fill: "1 g", usualRun: 1, perRun: [{ material: id, amount: "1 mL" }] },
    "runs[1]": { id, product: id, date: "2026-12-01", units: 1 },
  };
  const workshop = workshopOf(changedFile(changes));
  expect(workshop.lots[1]).toMatchObject({ id, material: id, remaining: 1_000_000_000n });
  expect(workshopOf(writeWorkshopFile(workshop))).toEqual(workshop);
});

const OPTIONAL = {
  workshop: "today horizonDays coverDays closedDays taxPercent paymentFeePercent paymentFeeFixed",
  "suppliers[0]": "closedDays shipping shippingFreeFrom minimumOrder",
  "materials[1]": "density safetyStock safetyDays useMin useMax addBelow",
  "offers[0]": "breaks minPacks preferred",
  "lots[0]": "expires",
  "orders[0].lines[0]": "expires",
  "formulas[1]": "density",
  "formulas[0].lines[0]": "phase",
  "products[0]":
    "overfill processLoss heel packaging perRun labourMinutesPerRun labourMinutesPerUnit priceToShops priceToCustomers",
  "products[0].packaging[0]": "spoilage",
  "runs[0]": "sequence",
  "finished[0]": "bestBefore",
};

const OPTIONAL_KEYS = Object.entries(OPTIONAL).flatMap(([path, keys]) =>
  keys.split(" ").map((key) => ({ path: `${path}.${key}` })),
);

test.each(OPTIONAL_KEYS)("[FILE-1] $path null is the same as left out", ({ path }) => {
  const without = workshopOf(changedFile({ [path]: LEFT_OUT }));
  expect(workshopOf(changedFile({ [path]: null }))).toEqual(without);
});

test("[FILE-1] what is left out stands at its default", () => {
  const changes = Object.fromEntries(OPTIONAL_KEYS.map(({ path }) => [path, LEFT_OUT]));
  // Items must go after what is in them.
  const workshop = workshopOf(changedFile(Object.fromEntries(Object.entries(changes).reverse())));
  expect(workshop.settings).toMatchObject({
    today: null,
    horizonDays: 56,
    coverDays: null,
    closedDays: [],
    tax: 0n,
    paymentFee: 0n,
    paymentFeeFixed: 0n,
  });
  expect(workshop.suppliers[0]).toMatchObject({
    closedDays: [],
    shipping: 0n,
    shippingFreeFrom: null,
    minimumOrder: null,
  });
  expect(workshop.materials[1]).toMatchObject({
    density: null,
    safetyStock: null,
    safetyDays: 0,
    useMin: null,
    useMax: null,
    addBelow: null,
  });
  expect(workshop.offers[0]).toMatchObject({
    breaks: [],
    minPacks: 1n,
    preferred: false,
    shelfLifeDays: null,
    confirmedOn: null,
  });
  expect(workshop.products[0]).toMatchObject({
    overfill: null,
    processLoss: 0n,
    heel: null,
    packaging: [],
    perRun: [],
    labourMinutesPerRun: "0",
    labourMinutesPerUnit: "0",
    priceToShops: null,
    priceToCustomers: null,
    madeInto: null,
  });
  expect(workshop.runs[0]).toMatchObject({ sequence: 0 });
});

test("[FILE-1] a byte order mark is ignored", () => {
  expect(workshopOf(`\ufeff${changedFile({})}`)).toEqual(workshopOf(changedFile({})));
});

test("[QTY-1, QTY-4] amounts are read through their density, and kept as they were typed", () => {
  const workshop = workshopOf(changedFile({ "lots[0].expires": "2028-03-01" }));
  expect(workshop.materials[0]?.safetyStock).toEqual({ typed: { number: "100", unit: "mL" }, quantity: 91_000_000n });
  expect(workshop.offers[0]?.pack).toEqual({ typed: { number: "1", unit: "L" }, quantity: 910_000_000n });
  // A fill goes by the density of the formula, 0.93, not by that of a material.
  expect(workshop.products[0]?.fill).toEqual({ typed: { number: "60", unit: "mL" }, quantity: 55_800_000n });
  expect(workshop.lots[0]).toMatchObject({
    expires: dayCalled("2028-03-01"),
    remaining: 640_000_000n,
    value: 5_600_000n,
  });
});
