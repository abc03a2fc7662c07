import { expect, test } from "vitest";
import { writeWorkshopFile } from "@/lib/edge/workshop-file";
import { asWritten, type Changes, changedFile, dayCalled, LEFT_OUT, workshopOf } from "../bad-files/bench-workshop";

const written = (changes: Changes): string => writeWorkshopFile(workshopOf(changedFile(changes)));

/** The value at a path of the file that is written. */
function writtenAt(path: string, changes: Changes): unknown {
  const steps = path.replace(/\[(\d+)\]/g, ".$1").split(".");
  return steps.reduce<unknown>((node, step) => (node as Record<string, unknown>)[step], JSON.parse(written(changes)));
}

test("[FILE-4] two blanks for every level, and a newline at the end", () => {
  expect(written({})).toMatch(
    /^\{\n {2}"format": "stillroom-workshop",\n {2}"version": 1,\n {2}"workshop": \{\n {4}"name"/,
  );
  expect(written({})).toMatch(/\n\}\n$/);
});

test("[FILE-4] every key that is set, in its order", () => {
  const all = {
    "workshop.horizonDays": 30,
    "workshop.coverDays": 28,
    "workshop.taxPercent": "20.0",
    "workshop.paymentFeePercent": "1.9",
    "workshop.paymentFeeFixed": "0.2",
    "suppliers[0].closedDays": ["2026-12-24"],
    "suppliers[0].shippingFreeFrom": "60",
    "suppliers[0].minimumOrder": "0",
    "materials[0].safetyDays": 3,
    "materials[0].useMin": "0",
    "materials[0].useMax": "5.5000",
    "materials[0].addBelow": "40.0",
    "offers[0].minPacks": 2,
    "offers[0].preferred": true,
    "lots[0].expires": "2028-03-01",
    "orders[0].lines[0].expires": "2028-04-01",
    "products[0].overfill": "0.50 g",
    "products[0].processLoss": "3",
    "products[0].labourMinutesPerRun": "45",
    "products[0].labourMinutesPerUnit": "1.50",
    "products[0].priceToShops": "7.5",
    "products[0].priceToCustomers": "15",
  };
  const keys = [...written(all).matchAll(/^ +"(\w+)":/gm)].map(([, key]) => key).join(" ");
  expect(keys).toBe(
    [
      "format version workshop name currency today horizonDays coverDays labourPerHour overheadPerHour balanceStep",
      "closedDays taxPercent paymentFeePercent paymentFeeFixed",
      "suppliers id name leadDays leadCounts closedDays shipping shippingFreeFrom minimumOrder",
      "materials id name kind measure density safetyStock safetyDays useMin useMax addBelow",
      "id name kind measure id name kind measure id name kind measure",
      "offers id material supplier pack price breaks packs price minPacks preferred",
      "id material supplier pack price id material supplier pack price",
      "lots id material received expires remaining value",
      "orders id supplier placed due lines material quantity cost expires",
      "formulas id name density lines material percent phase formula percent phase material percent phase",
      "id name lines material percent material percent",
      "products id name formula fill overfill processLoss heel usualRun packaging material amount spoilage",
      "perRun material amount labourMinutesPerRun labourMinutesPerUnit priceToShops priceToCustomers",
      "runs id product date sequence units finished id product made bestBefore units sales product date units",
    ].join(" "),
  );
});

test.each<[string, string, Changes, unknown]>([
  ["QTY-1", "offers[0].pack", { "offers[0].pack": "1.00 L" }, "1.00 L"],
  ["QTY-1", "materials[0].safetyStock", {}, "100 mL"],
  ["QTY-1", "lots[0].remaining", { "lots[0].remaining": "1 mL" }, "0.91 g"],
  ["QTY-1", "lots[0].remaining", { "lots[0].remaining": "1.500000 kg" }, "1500 g"],
  ["QTY-1", "lots[0].remaining", { "lots[0].material": "jar", "lots[0].remaining": "7 each" }, "7 each"],
  ["QTY-1", "orders[0].lines[0].quantity", { "orders[0].lines[0].quantity": "1 mg" }, "0.001 g"],
  ["MONEY-1", "offers[0].price", { "offers[0].price": "8" }, "8.00"],
  ["MONEY-1", "offers[0].price", { "offers[0].price": "8.4050" }, "8.405"],
  ["MONEY-1", "offers[0].price", { "offers[0].price": "8.400001" }, "8.400001"],
  ["MONEY-2", "offers[0].price", { "workshop.currency": "JPY", "offers[0].price": "840.0" }, "840"],
  ["MONEY-2", "offers[0].price", { "workshop.currency": "JPY", "offers[0].price": "840.5" }, "840.5"],
  ["MONEY-2", "offers[0].price", { "workshop.currency": "KWD", "offers[0].price": "2.3" }, "2.300"],
  ["QTY-7", "formulas[0].lines[0].percent", { "formulas[0].lines[0].percent": "20.5000" }, "20.5"],
  ["QTY-7", "products[0].packaging[0].spoilage", { "products[0].packaging[0].spoilage": "0.0001" }, "0.0001"],
  ["QTY-1", "materials[0].density", { "materials[0].density": "0.910000" }, "0.91"],
  ["QTY-3", "products[0].labourMinutesPerRun", { "products[0].labourMinutesPerRun": "45.0" }, "45.0"],
  ["QTY-6", "runs[0].units", { "runs[0].units": asWritten("9007199254740991") }, Number.MAX_SAFE_INTEGER],
  ["FILE-1", "workshop.today", { "workshop.today": LEFT_OUT }, undefined],
  ["FILE-1", "workshop.coverDays", { "workshop.coverDays": 56 }, 56],
  ["FILE-1", "suppliers[0].shippingFreeFrom", { "suppliers[0].shippingFreeFrom": "0" }, "0.00"],
  ["FILE-1", "products[0].overfill", { "products[0].overfill": "0 g" }, "0 g"],
])("[%s, FILE-4] %s: %j is written %j", (_, path, changes, value) => {
  expect(writtenAt(path, changes)).toEqual(value);
});

test.each<[string, Changes]>([
  ["workshop.horizonDays", { "workshop.horizonDays": 56 }],
  ["workshop.taxPercent", { "workshop.taxPercent": "0.0000" }],
  ["suppliers[0].shipping", { "suppliers[0].shipping": "0.00" }],
  ["suppliers[0].closedDays", { "suppliers[0].closedDays": [] }],
  ["materials[0].safetyDays", { "materials[0].safetyDays": 0 }],
  ["offers[0].minPacks", { "offers[0].minPacks": 1 }],
  ["offers[0].preferred", { "offers[0].preferred": false }],
  ["products[0].perRun", { "products[0].perRun": [] }],
  ["products[0].packaging[0].spoilage", { "products[0].packaging[0].spoilage": "0" }],
  ["products[0].labourMinutesPerRun", { "products[0].labourMinutesPerRun": "0" }],
  ["runs[0].sequence", { "runs[0].sequence": 0 }],
])("[FILE-4] %s is left out where it stands at its default", (path, changes) => {
  expect(writtenAt(path, changes)).toBeUndefined();
});

const NEWER: Changes = { version: 3, "offers[1].shelfLifeDays": 365, "offers[1].confirmedOn": "2026-11-20" };

test.each<[string, Changes, number]>([
  ["nothing that version 1 does not know", {}, 1],
  ["a file of version 3 that says nothing of it", { version: 3, "offers[1].shelfLifeDays": null }, 1],
  ["a shelf life", { version: 3, "offers[1].shelfLifeDays": 0 }, 3],
  ["a confirmed price", { version: 3, "offers[2].confirmedOn": "2026-11-20" }, 3],
])("[FILE-5] the lowest version that says all of %s", (_, changes, version) => {
  expect(writtenAt("version", changes)).toBe(version);
});

test("[FILE-5, OFFER-1, OFFER-2] what version 3 adds stands behind what was there before", () => {
  expect(JSON.stringify(writtenAt("offers[1]", NEWER))).toBe(
    '{"id":"o2","material":"wax","supplier":"s1","pack":"500 g","price":"6.10","shelfLifeDays":365,"confirmedOn":"2026-11-20"}',
  );
  expect(workshopOf(written(NEWER)).offers[1]).toMatchObject({
    shelfLifeDays: 365,
    confirmedOn: dayCalled("2026-11-20"),
  });
});
