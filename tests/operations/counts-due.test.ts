import { beforeEach, describe, expect, test } from "vitest";
import { countDue } from "@/lib/domain/ledger/counts-due";
import { postCount } from "@/lib/operations/count-shelf";
import { makePlannedRun } from "@/lib/operations/make-run";
import { reversePosting } from "@/lib/operations/reverse-posting";
import { setCountRhythm } from "@/lib/operations/set-count-rhythm";
import { readSinceCounted } from "@/lib/store/ledger/ledger-answers";
import { books, counting, making, shop, TODAY } from "../helpers/ledger-shop";
import { day } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

const on = day("2026-11-01");

describe("when a material falls due", () => {
  test.each([
    { says: "the day before", days: 30, draws: null, since: on, drawn: 0, today: "2026-11-30", due: false },
    { says: "on the day", days: 30, draws: null, since: on, drawn: 0, today: "2026-12-01", due: true },
    { says: "a draw too few", days: null, draws: 3, since: on, drawn: 2, today: "2026-11-02", due: false },
    { says: "so many draws", days: null, draws: 3, since: on, drawn: 3, today: "2026-11-02", due: true },
    { says: "draws first", days: 30, draws: 3, since: on, drawn: 4, today: "2026-11-02", due: true },
    { says: "days first", days: 30, draws: 3, since: on, drawn: 0, today: "2027-01-01", due: true },
    { says: "never there", days: 1, draws: 1, since: null, drawn: 0, today: "2027-01-01", due: false },
  ])("[LEDGER-25] $says: due $due", ({ days, draws, since, drawn, today, due }) => {
    const told = countDue({ material: "oil", days, draws }, { countedOn: null, since, draws: drawn }, day(today));
    expect(told.isDue).toBe(due);
  });
});

describe("what the ledger says since the last count", () => {
  storeForEachTest();
  beforeEach(async () => {
    await openBooks(shop());
  });
  const oil = async () => (await readSinceCounted(["oil"])).get("oil");

  test("[LEDGER-25] runs that drew of it count, and a count that changed nothing begins afresh", async () => {
    const opened = await oil();
    expect(opened).toMatchObject({ countedOn: null, draws: 0 });
    expect(opened?.since).not.toBeNull();
    await makePlannedRun(making("r", { day: day("2026-11-24") }));
    expect(await oil()).toMatchObject({ countedOn: null, draws: 1 });
    expect(await postCount(counting({ late: ["500", "500"] }))).toMatchObject({ kind: "posted" });
    expect(await oil()).toEqual({ countedOn: TODAY, since: TODAY, draws: 0 });
  });

  test("[LEDGER-25] a count or a run that was taken back is none", async () => {
    await postCount(counting({ late: ["900", "890"] }, { key: "counted", day: day("2026-11-23") }));
    await makePlannedRun(making("r"));
    expect(await oil()).toMatchObject({ countedOn: day("2026-11-23"), draws: 1 });
    const back = { day: TODAY, realToday: TODAY, reason: "a slip" };
    await reversePosting({ ...back, key: "back run", reverses: "made r" });
    expect(await oil()).toMatchObject({ draws: 0 });
    await reversePosting({ ...back, key: "back count", reverses: "counted" });
    expect(await oil()).toMatchObject({ countedOn: null });
  });

  test("[LEDGER-25] a material that the ledger never met has nothing to tell", async () => {
    expect(await readSinceCounted(["nowhere"])).toEqual(
      new Map([["nowhere", { countedOn: null, since: null, draws: 0 }]]),
    );
  });
});

describe("how often", () => {
  storeForEachTest();
  const monthly = { days: 30, draws: null };
  const often = { days: 7, draws: 4 };

  test.each([
    { says: "said for the first time", stands: null, from: null, to: monthly, kind: "set", now: monthly },
    { says: "changed", stands: monthly, from: monthly, to: often, kind: "set", now: often },
    { says: "no more", stands: often, from: often, to: null, kind: "set", now: null },
    { says: "sent twice", stands: monthly, from: null, to: monthly, kind: "already so", now: monthly },
    { says: "changed by somebody meanwhile", stands: often, from: null, to: monthly, kind: "stale", now: often },
  ])("[LEDGER-25] $says", async ({ stands, from, to, kind, now }) => {
    const { workshop, desk } = shop();
    const countRhythms = stands === null ? [] : [{ material: "oil", ...stands }];
    await openBooks({ workshop, desk: { ...desk, countRhythms } });
    expect(await setCountRhythm({ material: "oil", from, to })).toMatchObject({ kind });
    expect((await books()).desk.countRhythms).toEqual(now === null ? [] : [{ material: "oil", ...now }]);
  });

  test("[LEDGER-25] of no material is refused", async () => {
    await openBooks(shop());
    expect(await setCountRhythm({ material: "gone", from: null, to: monthly })).toEqual({ kind: "no such material" });
  });
});
