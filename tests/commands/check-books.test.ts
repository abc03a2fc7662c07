import { copyFileSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { beforeEach, expect, test } from "vitest";
import { makePlannedRun } from "@/lib/operations/make-run";
import { closeStore } from "@/lib/store/open-store";
import { runChild } from "../helpers/child";
import { making, shop } from "../helpers/ledger-shop";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

const { file, folder } = storeForEachTest();
const check = (store: string) => runChild("lib/commands/check-books.ts", [], { STILLROOM_STORE: store });

beforeEach(async () => {
  await openBooks(shop());
  await makePlannedRun(making("r"));
});

test("[LEDGER-23] clean books end with a line of totals, and exit status 0", async () => {
  expect(await check(file())).toEqual({
    code: 0,
    err: "",
    out: "4 postings, 18 entries, 4 lots, stock worth 57.00 GBP (materials 29.00, in work 0.00, finished 28.00), 0 disagreements\n",
  });
});

test("[LEDGER-23] books that somebody has changed past the triggers are told, each disagreement in a line, and exit status 1", async () => {
  await closeStore(file());
  const changed = path.join(folder(), "changed.db");
  copyFileSync(file(), changed);
  const store = new Database(changed);
  store.exec(
    "DROP TRIGGER balances_follow_entries_changed; UPDATE balances SET quantity = 1 WHERE lot = 'late' AND place = 'shelf'",
  );
  store.close();
  const { code, out, err } = await check(changed);
  expect([code, out]).toEqual([1, ""]);
  expect(err.split("\n")).toMatchObject([
    "material lot late in shelf: kept 1 worth 10000000 + 0 + 0, the entries say 500000000 worth 10000000 + 0 + 0",
    expect.stringMatching(/^4 postings, .+, 1 disagreements$/) as string,
    "",
  ]);
});

test("a store without a workshop has nothing to check", async () => {
  expect(await check(path.join(folder(), "none.db"))).toMatchObject({ code: 1, out: "" });
});
