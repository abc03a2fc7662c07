/** Books that were tampered with, one fault at a time: each is found and named. */
import { describe, expect, test } from "vitest";
import { auditor, type KeptBalance } from "@/lib/domain/ledger/audit";
import { isOpeningsOf, opening, openings } from "@/lib/domain/ledger/opening";
import { at, materialLot, moving, ofMaterials, type Posted } from "@/lib/domain/ledger/posting";
import { withSold, withTakenBack } from "@/lib/domain/ledger/sales-history";
import { latest, movesOf, standingAfter } from "@/lib/domain/ledger/standing";
import { quantity } from "@/lib/domain/quantity";
import { workshopOf } from "@/tests/helpers/bench";
import { day, lot, material } from "@/tests/helpers/notation";

const L = materialLot("L");
const record = { since: day("2026-11-01"), expires: null, item: "m" };
const opened: Posted = {
  sequence: 1,
  ...opening({ lot: L, since: day("2026-11-01"), item: "m", quantity: 10n, value: ofMaterials(5n) }),
};
const lost: Posted = {
  sequence: 2,
  id: "lost",
  kind: "written off",
  day: day("2026-11-05"),
  reason: null,
  reverses: null,
  entries: moving(L, 4n, ofMaterials(2n), at("shelf"), at("lost")),
};
const back: Posted = {
  ...lost,
  sequence: 3,
  id: "back",
  kind: "reversal",
  reverses: "lost",
  entries: moving(L, 4n, ofMaterials(2n), at("lost"), at("shelf")),
};
const keptOf = (postings: readonly Posted[]): readonly KeptBalance[] => {
  const standing = standingAfter(movesOf(postings));
  return standing.placesOf(L).map((place) => ({ ...latest(standing, L, place), lot: L, place }));
};
const audited = (postings: readonly Posted[], kept = keptOf(postings), closed: readonly string[] = [], missing = 0) => {
  const audit = auditor((name) => (name.id === "L" ? record : null));
  postings.forEach(audit.take);
  const dayTotals = postings.flatMap(({ day: on, entries }) =>
    entries.map((entry) => ({ of: entry.lot.of, place: entry.place.kind, day: on, value: entry.value })),
  );
  return audit.finish({ balances: kept, dayTotals: dayTotals.slice(missing) }, closed);
};

test("[LEDGER-23] clean books have no disagreement", () => {
  expect(audited([opened, lost, back])).toEqual({ disagreements: [], postings: 3, entries: 6, lots: 1 });
});

const [first] = lost.entries;
const half = { ...lost, entries: first ? [first] : [] };
const unknown = materialLot("gone");
const batch = { kind: "batch", run: "r" } as const;
test.each<{ says: string; postings: readonly Posted[]; kept?: readonly KeptBalance[]; closed?: readonly string[] }>([
  { says: "posting 2 (lost) does not balance", postings: [opened, half] },
  {
    says: "posting 2 (opening lot L) has a key that was posted before",
    postings: [opened, { ...opened, sequence: 2 }],
  },
  { says: "posting 1 (lost) is out of order", postings: [opened, { ...lost, sequence: 1 }] },
  {
    says: "posting 2 (lost) names material lot gone, which there is not",
    postings: [opened, { ...lost, entries: moving(unknown, 0n, ofMaterials(1n), at("supplier"), at("lost")) }],
  },
  { says: "posting 3 (back) is a reversal of nothing", postings: [opened, lost, { ...back, reverses: null }] },
  {
    says: "posting 3 (back) reverses gone, which was not posted before",
    postings: [opened, lost, { ...back, reverses: "gone" }],
  },
  {
    says: "posting 3 (back) does not say the opposite of posting 2 (lost)",
    postings: [opened, lost, { ...lost, ...{ id: "back", sequence: 3, kind: "reversal", reverses: "lost" } }],
  },
  {
    says: "posting 4 (again) reverses lost a second time",
    postings: [opened, lost, back, { ...back, id: "again", sequence: 4 }],
  },
  {
    says: "material lot L in shelf: kept 7 worth 5 + 0 + 0, the entries say 10 worth 5 + 0 + 0",
    postings: [opened],
    kept: keptOf([opened]).map((each) => (each.place.kind === "shelf" ? { ...each, quantity: 7n } : each)),
  },
  {
    says: "material lot L in shelf: no balance is kept",
    postings: [opened],
    kept: keptOf([opened]).filter(({ place }) => place.kind !== "shelf"),
  },
  {
    says: "material lot L in shelf: -4 worth -2 + 0 + 0 at the end of 2026-10-30",
    postings: [opened, { ...lost, day: day("2026-10-30") }],
  },
  {
    says: "the batch of run r is closed and holds value",
    postings: [opened, { ...lost, entries: moving(L, 4n, ofMaterials(2n), at("shelf"), batch) }],
    closed: ["r"],
  },
])("[LEDGER-23] $says", ({ says, postings, kept, closed }) => {
  expect(audited(postings, kept, closed).disagreements.join("; ")).toContain(says);
});

test("[LEDGER-23] the totals of a day are what its entries come to", () => {
  expect(audited([opened], keptOf([opened]), [], 1).disagreements).toEqual([
    "the total of material lots in supplier on 2026-11-01 is not what the entries come to",
  ]);
});

describe("opening the books", () => {
  const workshop = workshopOf({
    materials: [material("m")],
    lots: [lot("L", "m", "10", "5"), lot("none", "m", "0", "0")],
  });
  test("[LEDGER-21] each lot that is there is opened once, and then the workshop says all of the ledger", () => {
    const postings = openings(workshop);
    expect(postings.map(({ id }) => id)).toEqual(["opening lot L"]);
    expect(isOpeningsOf(workshop, postings)).toBe(true);
    expect(isOpeningsOf(workshop, [...postings, lost])).toBe(false);
    const dearer = workshopOf({ materials: [material("m")], lots: [lot("L", "m", "10", "6")] });
    expect(isOpeningsOf(dearer, postings)).toBe(false);
  });
});

describe("the list of sales", () => {
  const sale = (on: string, units: number, product = "p") => ({
    product,
    date: day(on),
    units: quantity<never>(BigInt(units)),
  });
  const sales = [sale("2026-11-03", 3), sale("2026-11-09", 2), sale("2026-11-05", 4), sale("2026-11-09", 9, "q")];
  test("[LEDGER-15] what comes back comes off the latest sales of its product", () => {
    expect(withSold(sales, day("2026-11-10"), [{ product: "q", units: 1n }]).at(-1)).toEqual(
      sale("2026-11-10", 1, "q"),
    );
    const until = day("2026-11-30");
    expect(withTakenBack(sales, until, [{ product: "p", units: 3n }])).toEqual([
      sale("2026-11-03", 3),
      sale("2026-11-05", 3),
      sale("2026-11-09", 9, "q"),
    ]);
    expect(withTakenBack(sales, day("2026-11-04"), [{ product: "p", units: 1n }])[0]).toEqual(sale("2026-11-03", 2));
    expect(withTakenBack(sales, until, [{ product: "p", units: 99n }])).toEqual([sale("2026-11-09", 9, "q")]);
  });
});
