import { describe, expect, test } from "vitest";
import { fingerprint } from "@/lib/edge/forms/fingerprint";
import { readForm, formFromRecord } from "@/lib/edge/forms/form-reading";
import { keepRecord, keepSettings } from "@/lib/edge/forms/keep-record";
import { writtenRecord, writtenSettings } from "@/lib/edge/forms/written-record";
import { benchFile, sent, TODAY, workshopOfFile } from "./workshop-of-file";

const bench = workshopOfFile(benchFile);
const drawn = writtenRecord(bench, "suppliers", "s1") ?? {};
const seen = fingerprint(drawn);

/** The supplier's form, sent with other values. */
const form = (values: Readonly<Record<string, string>>) =>
  readForm("suppliers", sent({ ...formFromRecord("suppliers", drawn), ...values }), bench.settings.currency);
const meanwhile = workshopOfFile({
  ...benchFile,
  suppliers: [{ ...benchFile.suppliers[0], leadDays: 9 }],
});

describe("a form that was sent", () => {
  test("is kept where nothing changed meanwhile", () => {
    const decision = keepRecord(bench, "suppliers", "s1", { reading: form({ shipping: "£4,95" }), seen }, TODAY);
    expect(decision.kind === "changed" && decision.workshop.suppliers[0]?.shipping).toBe(4_950_000n);
  });

  test("is told that it is stale, before anything that is wrong with it", () => {
    for (const shipping of ["4.95", "1,500"]) {
      expect(keepRecord(meanwhile, "suppliers", "s1", { reading: form({ shipping }), seen }, TODAY)).toEqual({
        kind: "stale",
        changes: [{ field: "leadDays", was: "5", now: "9" }],
      });
    }
  });

  test("is kept where it was changed meanwhile to just what is typed", () => {
    const decision = keepRecord(meanwhile, "suppliers", "s1", { reading: form({ leadDays: "09" }), seen }, TODAY);
    expect(decision.kind).toBe("changed");
  });

  test("of a record that is gone is refused, and a new one needs no mark", () => {
    const gone = { ...bench, suppliers: [], offers: [], orders: [] };
    expect(keepRecord(gone, "suppliers", "s1", { reading: form({}), seen }, TODAY).kind).toBe("refused");
    expect(keepRecord(gone, "suppliers", null, { reading: form({}), seen: "" }, TODAY).kind).toBe("changed");
    expect(keepRecord(bench, "suppliers", null, { reading: form({}), seen: "" }, TODAY).kind).toBe("already kept");
  });

  test("of the settings", () => {
    const settings = writtenSettings(bench);
    const read = (values: Readonly<Record<string, string>>) =>
      readForm("settings", sent({ ...formFromRecord("settings", settings), ...values }), bench.settings.currency);
    const mark = fingerprint(settings);
    const kept = keepSettings(bench, { reading: read({ labourPerHour: "15" }), seen: mark }, TODAY);
    expect(kept.kind === "changed" && kept.workshop.settings.labourPerHour).toBe(15_000_000n);
    if (kept.kind !== "changed") return;
    expect(keepSettings(kept.workshop, { reading: read({ labourPerHour: "16" }), seen: mark }, TODAY)).toEqual({
      kind: "stale",
      changes: [{ field: "labourPerHour", was: "16.00", now: "15.00" }],
    });
  });
});
