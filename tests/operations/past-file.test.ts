import path from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { holdLot } from "@/lib/operations/hold-lot";
import { makePlannedRun } from "@/lib/operations/make-run";
import { openWorkshop } from "@/lib/operations/open-workshop";
import { reversePosting } from "@/lib/operations/reverse-posting";
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { readBooksWithPast, readBooksWithPastFrom } from "@/lib/store/ledger/past";
import { closeStore } from "@/lib/store/open-store";
import { replaceWorkshop } from "@/lib/store/replace-workshop";
import { books, making, moving, shop, TODAY, units } from "../helpers/ledger-shop";
import { ledgerSoak } from "../helpers/ledger-soak";
import { g, offer } from "../helpers/notation";
import { diceFrom } from "../helpers/random-dice";
import { keepBooks, openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

const { folder } = storeForEachTest();
beforeEach(() => openBooks(shop()));

async function saved(): Promise<string> {
  const stored = await readBooksWithPast();
  if (!stored) throw new Error("the store holds no workshop");
  return writeWorkshopFile(stored.workshop, stored.past);
}
const read = (text: string) => readWorkshopFile(new TextEncoder().encode(text), TODAY);
const versionOf = (text: string): unknown => (JSON.parse(text) as { version: unknown }).version;

async function throughAnotherStore(text: string): Promise<string> {
  const reading = read(text);
  if (reading.kind === "refused") throw new Error(reading.faults.join("\n"));
  const other = path.join(folder(), "other.db");
  await replaceWorkshop(other, reading.workshop, "anything", reading.past);
  const stored = await readBooksWithPastFrom(other);
  expect(await checkLedger(other)).toMatchObject({ disagreements: [] });
  await closeStore(other);
  if (!stored) throw new Error("the other store holds no workshop");
  return writeWorkshopFile(stored.workshop, stored.past);
}

describe("the file of a workshop with a past", () => {
  test("[LEDGER-24] is of version 1 where the workshop as it stands says all of it", async () => {
    const text = await saved();
    expect(versionOf(text)).toBe(1);
    expect(text).toBe(writeWorkshopFile((await books()).workshop));
    expect(await throughAnotherStore(text)).toBe(text);
  });

  test.each([
    { says: "a hold", version: 2, deed: () => holdLot(moving({ soon: g("1") })) },
    { says: "a run that was made, by which versions", version: 4, deed: () => makePlannedRun(making("r")) },
    { says: "a batch that failed", version: 4, deed: () => makePlannedRun(making("r", { unitsMade: units(0) })) },
    {
      says: "a reversal",
      version: 2,
      deed: async () => {
        await holdLot(moving({ soon: g("1") }));
        const back = { key: "back", day: TODAY, realToday: TODAY, reverses: "move soon", reason: "line one\nline two" };
        await reversePosting(back);
      },
    },
    {
      says: "a lot that was struck off",
      version: 2,
      deed: async () => {
        const before = await books();
        await keepBooks({ ...before, workshop: { ...before.workshop, lots: before.workshop.lots.slice(1) } });
      },
    },
  ])(
    "[LEDGER-24] [FILE-4] with $says is of version $version, and what is saved and loaded saves the same bytes",
    async ({ deed, version }) => {
      await deed();
      const text = await saved();
      expect(versionOf(text)).toBe(version);
      expect(await throughAnotherStore(text)).toBe(text);
    },
  );

  test("[LEDGER-24] [FILE-4] likewise after whatever was posted", async () => {
    const soak = ledgerSoak(diceFrom(5), "past");
    for (let step = 0; step < 80; step += 1) await soak.step();
    const text = await saved();
    expect(await throughAnotherStore(text)).toBe(text);
  });

  test("[FILE-5] [LEDGER-24] is of version 3 where an offer says more, with its past as well", async () => {
    const before = await books();
    const said = offer("o", "oil", "1000", "20", { shelfLifeDays: 90, confirmedOn: TODAY });
    const workshop = { ...before.workshop, offers: [said] };
    await keepBooks({ ...before, workshop });
    expect(versionOf(await saved())).toBe(3);
    expect(Object.keys(JSON.parse(await saved()) as object)).not.toContain("postings");
    await holdLot(moving({ soon: g("1") }));
    const text = await saved();
    expect(versionOf(text)).toBe(3);
    expect(Object.keys(JSON.parse(text) as object)).toContain("postings");
    expect(await throughAnotherStore(text)).toBe(text);
  });

  test("[LEDGER-24] opened in the app, it goes on where it was", async () => {
    await makePlannedRun(making("r"));
    const reading = read(await saved());
    if (reading.kind === "refused") throw new Error(reading.faults.join("\n"));
    await openWorkshop(reading.workshop, reading.past);
    expect(await makePlannedRun(making("r"))).toMatchObject({ kind: "already posted" });
    expect(await makePlannedRun(making("r", { key: "other" }))).toMatchObject({ kind: "already made" });
    const back = { key: "back", day: TODAY, realToday: TODAY, reverses: "made r", reason: "not made after all" };
    expect(await reversePosting(back)).toMatchObject({ kind: "posted" });
  });
});

type Document = Record<string, Record<string, unknown>[]>;
const changed = (text: string, change: (document: Document) => unknown): readonly string[] => {
  const document = JSON.parse(text) as Document;
  change(document);
  const reading = read(JSON.stringify(document));
  return reading.kind === "refused" ? reading.faults : [];
};
const entriesOf = (document: Document, at: number): Record<string, unknown>[] =>
  document.postings?.[at]?.entries as Record<string, unknown>[];

test.each<{ says: string; change: (document: Document) => unknown; fault: string }>([
  {
    says: "without its postings",
    change: (file) => delete file.postings,
    fault: "postings: missing; it must be a list",
  },
  {
    says: "with an unknown key",
    change: (file) => Object.assign(file.postings?.[0] ?? {}, { by: "me" }),
    fault: "postings[0].by: unknown key",
  },
  {
    says: "with an unknown place",
    change: (file) => Object.assign(entriesOf(file, 0)[0] ?? {}, { place: "cellar" }),
    fault: "postings[0].entries[0].place: must be",
  },
  {
    says: "with half a µg",
    change: (file) => Object.assign(entriesOf(file, 0)[0] ?? {}, { quantity: 0.5 }),
    fault: "postings[0].entries[0].quantity: must be a whole number",
  },
  {
    says: "with a posting that does not balance",
    change: (file) => entriesOf(file, 0).pop(),
    fault: "postings: posting 1 (opening lot late) does not balance",
  },
  {
    says: "whose lots say something else",
    change: (file) => Object.assign(file.lots?.[0] ?? {}, { value: "1" }),
    fault: "lots[0]: the postings come to 500000000 worth 10000000 of it",
  },
  {
    says: "with a batch without its run",
    change: (file) => entriesOf(file, 3).map((entry) => delete entry.run),
    fault: "a batch names its run",
  },
  {
    says: "with a run made twice",
    change: (file) => file.closedRuns?.push({ ...file.closedRuns[0] }),
    fault: 'closedRuns[1].id: repeated id "r"',
  },
  {
    says: "with a run made and to be made",
    change: (file) => Object.assign(file.closedRuns?.[0] ?? {}, { id: "s" }),
    fault: "closedRuns[0].id: the run stands among those to be made as well",
  },
  {
    says: "with a lot on a list and struck off",
    change: (file) => file.struckOff?.push({ of: "material", id: "late", since: "2026-10-01" }),
    fault: 'struckOff[0].id: repeated id "late"',
  },
  {
    says: "of a product that there is not",
    change: (file) => Object.assign(file.closedRuns?.[0] ?? {}, { product: "gone" }),
    fault: 'closedRuns[0].product: no product "gone"',
  },
])("[LEDGER-24] a file $says is refused", async ({ change, fault }) => {
  await makePlannedRun(making("r"));
  expect(changed(await saved(), change).join("; ")).toContain(fault);
});
