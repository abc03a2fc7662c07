/** A store of its own for each test, in a folder of its own that is gone afterwards. Never mocked. */
import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, expect } from "vitest";
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { closeStore, openStore } from "@/lib/store/open-store";

export interface StoreFolder {
  /** The folder of this test. */
  readonly folder: () => string;
  /** The store of this test: migrated and empty. STILLROOM_STORE names it. */
  readonly file: () => string;
}

/** Makes a folder for each test of the file, and takes it away again. */
export function folderForEachTest(): () => string {
  let folder = "";
  beforeEach(() => {
    folder = mkdtempSync(path.join(tmpdir(), "stillroom-test-"));
  });
  afterEach(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  return () => folder;
}

/** The migrations run once for each file of tests; every test begins with a copy, and leaves clean books. @rule LEDGER-23 */
export function storeForEachTest(): StoreFolder {
  const folder = folderForEachTest();
  const file = () => path.join(folder(), "stillroom.db");
  let baseFolder = "";
  const base = () => path.join(baseFolder, "base.db");
  beforeAll(async () => {
    baseFolder = mkdtempSync(path.join(tmpdir(), "stillroom-base-"));
    await openStore(base());
    await closeStore(base());
  });
  afterAll(() => {
    rmSync(baseFolder, { recursive: true, force: true });
  });
  beforeEach(() => {
    copyFileSync(base(), file());
    process.env.STILLROOM_STORE = file();
  });
  afterEach(async () => {
    expect((await checkLedger(file()))?.disagreements ?? []).toEqual([]);
    await closeStore(file());
    delete process.env.STILLROOM_STORE;
  });
  return { folder, file };
}
