/** How syncs are counted; `npm run soak -- syncs 40` counts those of a process. */
import { describe, expect, test } from "vitest";
import { countSyncs, syncsIn } from "../helpers/syncs-counted";
import { storeForEachTest } from "../helpers/store-folder";

const { file } = storeForEachTest();
const WRITE = `7 pwrite64(22</s.db-wal>, "\\0\\0\\0\\1"..., 4096, 32) = 4096`;
const SYNC = "7 fdatasync(22</s.db-wal>) = 0";
const told = (name: string): string => `7 write(1<pipe:[9]>, "told: ${name}\\n", 8) = 8`;
const counted = (...lines: readonly string[]) => syncsIn(`${lines.join("\n")}\n`, "/s.db-wal");

describe("in what strace tells", () => {
  test.each([
    {
      says: "one sync for each posting",
      lines: [WRITE, SYNC, told("0"), WRITE, WRITE, SYNC, told("1")],
      syncs: [1, 1],
    },
    { says: "two where the log is folded back", lines: [WRITE, SYNC, SYNC, told("0")], syncs: [2] },
    { says: "another file is not the log", lines: [WRITE, SYNC, "7 fsync(3</other>) = 0", told("0")], syncs: [1] },
    {
      says: "a call that another thread interrupts counts once it has ended",
      lines: [
        WRITE,
        "7 fdatasync(22</s.db-wal> <unfinished ...>",
        `8 write(4<x>, "told", 4) = 4`,
        "7 <... fdatasync resumed>) = 0",
        told("0"),
      ],
      syncs: [1],
    },
  ])("$says", ({ lines, syncs }) => {
    expect(counted(...lines)).toEqual(syncs);
  });

  test.each([
    { says: "nothing was synced", lines: [told("0")] },
    { says: "something was written after the sync", lines: [WRITE, SYNC, WRITE, told("0")] },
    { says: "the sync comes after", lines: [WRITE, told("0"), SYNC] },
    {
      says: "it had not ended",
      lines: [WRITE, "7 fdatasync(22</s.db-wal> <unfinished ...>", told("0").replace("7", "8")],
    },
  ])("an acknowledgement too early is told: $says", ({ lines }) => {
    expect(() => counted(...lines)).toThrow("posting 0 was acknowledged before it was on the disk");
  });

  test("a sync that failed is no sync", () => {
    expect(() => counted(WRITE, "7 fdatasync(22</s.db-wal>) = -1 EIO (Input/output error)", told("0"))).toThrow(
      "gave -1",
    );
  });
});

test("where there is nothing to count with, it says so", () => {
  expect(countSyncs(file(), 1, "no-such-program")).toEqual({
    kind: "cannot count",
    reason: expect.stringContaining("no-such-program") as string,
  });
});
