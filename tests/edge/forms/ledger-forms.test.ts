/** What the forms that post send, read; figures by the rules of quantities (QTY-2, QTY-3). */
import { describe, expect, test } from "vitest";
import { materialLot } from "@/lib/domain/ledger/posting";
import { drawField, readMaking } from "@/lib/edge/forms/make-form";
import { placedRefusal, readReasonTyped, readTakes, shownIn, takesField } from "@/lib/edge/forms/posting-forms";
import { refusalWords } from "@/lib/edge/forms/refusal-words";
import { readReversal, reversalRefused } from "@/lib/edge/forms/reversal-form";
import { readTypedStock, stockAsTyped } from "@/lib/edge/forms/typed-stock";
import { readUnitsMoved, readWriteOffReason } from "@/lib/edge/forms/units-form";
import { idOfSegment, postingAddress } from "@/lib/edge/ledger-address";
import { day } from "../../helpers/notation";

const sent = (fields: Readonly<Record<string, string>>): FormData => {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  return form;
};

describe("so much of a lot", () => {
  test.each([
    ["250", "mass", 250_000_000n],
    ["0.25 kg", "mass", 250_000_000n],
    ["0.000001", "mass", 1n],
    ["454.166667", "mass", 454_166_667n],
    ["12", "count", 12n],
    ["12 pieces", "count", 12n],
    ["", "mass", null],
    [" ", "count", null],
  ] as const)("[QTY-2] %j of what is measured by %s is %s", (typed, measure, value) => {
    expect(readTypedStock(typed, measure)).toEqual({ value });
  });

  test.each([
    ["1 L", "mass", /is a volume/],
    ["12 each", "mass", /is weighed/],
    ["5 g", "count", /is counted/],
    ["1.5", "count", /not a whole number/],
    ["-5", "mass", /must not be below zero/],
    ["1,500", "mass", /two ways/],
    ["99999999999999 kg", "mass", /too large/],
    ["much", "mass", /must be a number/],
  ] as const)("[QTY-3] %j of what is measured by %s is refused", (typed, measure, fault) => {
    const read = readTypedStock(typed, measure);
    expect("fault" in read && read.fault).toMatch(fault);
  });

  test("is shown so that it reads as itself", () => {
    for (const held of [1n, 600_000_000n, 454_166_667n, 9_007_199_254_740_991n])
      expect(readTypedStock(stockAsTyped(held, "mass"), "mass")).toEqual({ value: held });
    expect(stockAsTyped(10n, "count")).toBe("10");
  });
});

describe("[LEDGER-8] a form that posts", () => {
  test("reads what each lot gives, whatever its id, and leaves out what is empty or nothing", () => {
    const form = sent({
      [takesField("a b=&")]: "1 kg",
      [takesField("c")]: "",
      [takesField("d")]: "0",
      "measure c": "count",
    });
    expect(readTakes(form)).toEqual({ asked: [{ lot: "a b=&", quantity: 1_000_000_000n }] });
  });

  const making = {
    run: "r",
    product: "p",
    from: "2026-11-24",
    units: "10",
    key: "k",
    lot: "f",
    made: "9",
    day: "2026-11-25",
  };

  test("[LEDGER-12] what was spilt of a lot stands beside what the batch took, and a refusal at what is too much", () => {
    const read = readMaking(
      sent({ ...making, "takes L1": "3", "takes L2": "", "spilt L1": "0.5", "spilt L2": "1 kg" }),
    );
    if (read === null || "faults" in read) throw new Error("it was refused");
    expect(read.asked.draws).toEqual([
      { lot: "L1", quantity: 3_000_000n, spilt: 500_000n },
      { lot: "L2", quantity: 0n, spilt: 1_000_000_000n },
    ]);
    expect([3_200_000n, 2_000_000n, null].map((there) => drawField(read.asked, "L1", there))).toEqual([
      "spilt L1",
      "takes L1",
      "takes L1",
    ]);
    const faulty = readMaking(sent({ ...making, "takes L1": "3", "spilt L1": "-1" }));
    expect(faulty !== null && "faults" in faulty && Object.keys(faulty.faults)).toEqual(["spilt L1"]);
  });

  test("of a run reads all of it, and says every fault at its field", () => {
    expect(readMaking(sent({ ...making, minutes: "90.5", note: " spilt ", "takes L1": "3" }))).toMatchObject({
      asked: {
        day: day("2026-11-25"),
        unitsMade: 9n,
        note: "spilt",
        draws: [{ lot: "L1", quantity: 3_000_000n, spilt: 0n }],
        finishedLot: { id: "f", bestBefore: null },
      },
    });
    const read = readMaking(sent({ ...making, made: "x", day: "", minutes: "y", bestBefore: "z", "takes L1": "q" }));
    expect(read !== null && "faults" in read && Object.keys(read.faults).sort()).toEqual([
      "bestBefore",
      "day",
      "made",
      "minutes",
      "takes L1",
    ]);
    expect(readMaking(sent({ ...making, minutes: "9999999" }))).toMatchObject({
      faults: { minutes: expect.stringMatching(/more than a year/) as string },
    });
    expect(readMaking(sent({ ...making, key: "" }))).toBeNull();
  });

  test("of units reads them, and why they are written off", () => {
    const form = { key: "k", lot: "f", units: "4", day: "2026-11-25" };
    expect(readUnitsMoved(sent(form))).toMatchObject({
      asked: { lines: [{ lot: { of: "finished", id: "f" }, quantity: 4n }] },
    });
    expect(readUnitsMoved(sent({ ...form, units: "0", day: "soon" }))).toMatchObject({
      faults: { units: expect.any(String) as string, day: expect.any(String) as string },
    });
    expect(readUnitsMoved(sent({ ...form, lot: "" }))).toBeNull();
    expect(readWriteOffReason("sample")).toEqual({ value: "sample" });
    expect(readWriteOffReason("")).toHaveProperty("fault");
  });

  test("that takes back needs a reason", () => {
    expect(readReasonTyped("  ")).toHaveProperty("fault");
    expect(readReversal(sent({ key: "k", posting: "p", day: "2026-11-25", reason: "twice" }))).toMatchObject({
      asked: { reverses: "p", reason: "twice" },
    });
    expect(readReversal(sent({ key: "k", posting: "p", day: "2026-11-25", reason: "" }))).toMatchObject({
      faults: { reason: expect.any(String) as string },
    });
    expect(readReversal(sent({ key: "k", posting: "" }))).toBeNull();
  });
});

describe("[LEDGER-4] why something was not posted", () => {
  const lot = materialLot("L1");
  const shown = shownIn(sent({ "measure L1": "mass" }));
  const missing = {
    kind: "not there",
    lot,
    place: { kind: "shelf" },
    asked: 5_000_000n,
    there: 2_000_000n,
    on: day("2026-11-20"),
    onTheDay: 2_000_000n,
    now: 2_000_000n,
    held: 0n,
  } as const;

  test("is said at the lot, with what is there and what is on hold", () => {
    const at = placedRefusal(refusalWords({ ...missing, held: 1_000_000n }, shown), ({ id }) => takesField(id));
    expect(at.faults["takes L1"]?.replaceAll("\u00a0", " ")).toBe(
      "asks for 5 g; there is 2 g on the shelf; 1 g more is on hold",
    );
  });

  test("names the day on which it would be missing, where it was dated back", () => {
    const { words } = refusalWords({ ...missing, onTheDay: 9_000_000n, now: 9_000_000n }, shown);
    expect(words.replaceAll("\u00a0", " ")).toContain(
      "missing at the end of Fri 20 Nov 2026: at most 2 g can be spared",
    );
  });

  test("is said at the day, or above the form where no field is about it", () => {
    const today = day("2026-11-25");
    const late = refusalWords({ kind: "future day", day: day("2026-11-26"), today }, shown);
    expect(placedRefusal(late, () => null).faults.day).toMatch(/must not be after today/);
    const outOfDate = refusalWords({ kind: "out of date", lot, expires: day("2026-11-20"), day: today }, shown);
    expect(placedRefusal(outOfDate, () => null).says).toMatch(/^Lot L1 is out of date.*\.$/);
  });

  test("[LEDGER-16] names what was drawn since and what to do instead", () => {
    const posting = {
      id: "s",
      kind: "sold",
      day: day("2026-11-24"),
      reason: null,
      reverses: null,
      entries: [],
      sequence: 2,
    } as const;
    const { says } = reversalRefused(
      { kind: "drawn since", refusal: missing, since: [{ posting, quantity: 3_000_000n }] },
      sent({}),
    );
    expect(says?.replaceAll("\u00a0", " ")).toContain("Since then: 3 g sold on Tue 24 Nov 2026. Take that back first");
  });
});

test("an id that a browser would walk is still an address of its own", () => {
  for (const id of ["..", ".", "a/b", "making 1 of run é?", "~x"]) {
    const part = postingAddress(id).split("/").at(-1) ?? "";
    expect(part).toMatch(/^~/);
    expect(idOfSegment(part)).toBe(id);
  }
  expect(idOfSegment("%E0%A4%A")).toBeNull();
});
