import { beforeEach, describe, expect, test } from "vitest";
import { type Books, forNewWork, RETIRABLE } from "@/lib/domain/desk";
import type { BenchMinutes } from "@/lib/domain/bench-hours";
import { bringBackRecord, retireRecord } from "@/lib/operations/retire-record";
import { setBenchHours } from "@/lib/operations/set-bench-hours";
import { setPrice } from "@/lib/operations/set-price";
import { setToday } from "@/lib/operations/set-today";
import { plan } from "@/lib/domain/plan";
import { readBooks } from "@/lib/store/books";
import { day, money } from "../helpers/notation";
import { auditAfterEachTest } from "../helpers/store-audit";
import { booksOf, openBooks, richBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bytesOf } from "../helpers/store-soundness";
import { bareWorkshop, richWorkshop } from "../helpers/store-workshop";

const { file } = storeForEachTest();
auditAfterEachTest(file);

const books = async (): Promise<Books> => (await readBooks()) ?? richBooks();

test("where no workshop is open, each of them says so", async () => {
  const nothing = { kind: "no workshop" };
  expect(await setToday({ from: null, to: null, realToday: day("2026-11-25") })).toEqual(nothing);
  expect(await setBenchHours({ from: null, to: null })).toEqual(nothing);
  expect(await retireRecord("materials", "jar")).toEqual(nothing);
});

describe("the day that the workshop is set to", () => {
  beforeEach(() => openBooks(richBooks()));
  const [set, other] = [day("2026-11-25"), day("2026-12-24")];
  const [received, realToday] = [day("2026-10-01"), day("2026-11-30")];

  // The lots of the rich workshop were received on 1 October.
  test.each([
    { says: "to another day", from: set, to: other, result: { kind: "set", today: other, was: set }, now: other },
    {
      says: "back to the real date",
      from: set,
      to: null,
      result: { kind: "set", today: realToday, was: set },
      now: null,
    },
    {
      says: "to the day of its lots",
      from: set,
      to: received,
      result: { kind: "set", today: received, was: set },
      now: received,
    },
    { says: "to the day that it is set to", from: set, to: set, result: { kind: "already so", today: set }, now: set },
    { says: "a second time", from: other, to: set, result: { kind: "already so", today: set }, now: set },
    { says: "where somebody has set another", from: other, to: null, result: { kind: "stale", now: set }, now: set },
  ])("set $says", async ({ from, to, result, now }) => {
    await openBooks(richBooks());
    const before = bytesOf(file());
    expect(await setToday({ from, to, realToday })).toStrictEqual(result);
    expect((await books()).workshop.settings.today).toBe(now);
    if (result.kind !== "set") expect(bytesOf(file())).toEqual(before);
  });

  test.each([
    { says: "a day", to: day("2026-09-30"), realToday },
    { says: "the real date", to: null, realToday: day("2026-09-30") },
  ])("$says before its lots came is refused, with the lots", async ({ to, realToday }) => {
    await openBooks(richBooks());
    const before = bytesOf(file());
    expect(await setToday({ from: set, to, realToday })).toStrictEqual({
      kind: "lots come later",
      today: day("2026-09-30"),
      lots: richWorkshop().lots,
    });
    expect(bytesOf(file())).toEqual(before);
  });
});

describe("the maker's hours", () => {
  const [some, others]: BenchMinutes[] = [
    [480, 480, 480, 480, 300, 0, 0],
    [0, 0, 0, 0, 0, 0, 0],
  ];
  const week = { some: some ?? null, none: null, others: others ?? null };
  type Week = keyof typeof week;

  test.each<{ says: string; stands: Week; from: Week; to: Week; kind: string; now: Week }>([
    { says: "said for the first time", stands: "none", from: "none", to: "some", kind: "set", now: "some" },
    { says: "changed", stands: "some", from: "some", to: "others", kind: "set", now: "others" },
    {
      says: "taken back: unknown, which is not zero",
      stands: "others",
      from: "others",
      to: "none",
      kind: "set",
      now: "none",
    },
    { says: "sent twice", stands: "some", from: "none", to: "some", kind: "already so", now: "some" },
    { says: "changed by somebody meanwhile", stands: "others", from: "none", to: "some", kind: "stale", now: "others" },
  ])("[BOOK-6] $says", async ({ stands, from, to, kind, now }) => {
    await openBooks(booksOf(bareWorkshop("Hours"), { benchMinutes: week[stands] }));
    expect(await setBenchHours({ from: week[from], to: week[to] })).toMatchObject({ kind });
    expect((await books()).desk.benchMinutes).toEqual(week[now]);
  });

  test("[BOOK-6] what stood before is told, to take it back", async () => {
    await openBooks(booksOf(bareWorkshop("Hours"), { benchMinutes: week.some }));
    expect(await setBenchHours({ from: week.some, to: week.others })).toStrictEqual({ kind: "set", was: week.some });
    expect(await setBenchHours({ from: null, to: null })).toStrictEqual({ kind: "stale", now: week.others });
  });
});

describe("the prices of a product", () => {
  // p2 has 7.50 to shops and none to customers.
  const prices = (shops: string | null, customers: string | null) => ({
    priceToShops: shops === null ? null : money(shops),
    priceToCustomers: customers === null ? null : money(customers),
  });

  test.each([
    { says: "one is set", from: prices("7.5", null), to: prices("7.5", "12"), kind: "set", now: prices("7.5", "12") },
    { says: "both are changed", from: prices("7.5", null), to: prices("8", "12"), kind: "set", now: prices("8", "12") },
    {
      says: "one is taken away",
      from: prices("7.5", null),
      to: prices(null, null),
      kind: "set",
      now: prices(null, null),
    },
    {
      says: "sent twice",
      from: prices("7", null),
      to: prices("7.5", null),
      kind: "already so",
      now: prices("7.5", null),
    },
    {
      says: "left as it was drawn",
      from: prices("7", null),
      to: prices("7", null),
      kind: "already so",
      now: prices("7.5", null),
    },
    {
      says: "set by somebody meanwhile",
      from: prices("7", null),
      to: prices("8", null),
      kind: "stale",
      now: prices("7.5", null),
    },
    {
      says: "the other price was set meanwhile, and stays",
      from: prices("7", null),
      to: prices("7", "12"),
      kind: "set",
      now: prices("7.5", "12"),
    },
    {
      says: "one of two was set meanwhile: neither is overwritten",
      from: prices("7", null),
      to: prices("8", "12"),
      kind: "stale",
      now: prices("7.5", null),
    },
  ])("[PRICE-1] [PRICE-2] $says", async ({ from, to, kind, now }) => {
    await openBooks(richBooks());
    const before = bytesOf(file());
    expect(await setPrice({ product: "p2", from, to })).toMatchObject({ kind });
    expect((await books()).workshop.products).toStrictEqual([
      { ...richWorkshop().products[0], ...now },
      richWorkshop().products[1],
    ]);
    if (kind !== "set") expect(bytesOf(file())).toEqual(before);
  });

  test("what the prices were is told, to take them back; a product that was removed is not there", async () => {
    await openBooks(richBooks());
    const result = await setPrice({ product: "p2", from: prices("7.5", null), to: prices("8", "9") });
    expect(result).toMatchObject({ kind: "set", was: prices("7.5", null) });
    expect(await setPrice({ product: "p2", from: prices("8", "9"), to: prices("7.5", null) })).toMatchObject({
      kind: "set",
    });
    expect(await books()).toStrictEqual(richBooks());
    expect(await setPrice({ product: "z", from: prices("8", "9"), to: prices("7", null) })).toEqual({
      kind: "no such product",
    });
  });
});

describe("retiring", () => {
  const ids = { suppliers: "s", materials: "glycerol", offers: "a", formulas: "base", products: "p1" } as const;

  test.each(RETIRABLE)("[BOOK-2] one of the %s is hidden from new work, and no figure changes", async (list) => {
    await openBooks(booksOf(richWorkshop()));
    const before = plan(richWorkshop(), day("2026-11-25"));
    expect(await retireRecord(list, ids[list])).toEqual({ kind: "retired" });
    const { workshop, desk } = await books();
    expect(workshop).toStrictEqual(richWorkshop());
    expect(plan(workshop, day("2026-11-25"))).toStrictEqual(before);
    expect(forNewWork<{ readonly id: string }>(desk, list, workshop[list]).map(({ id }) => id)).not.toContain(
      ids[list],
    );

    const bytes = bytesOf(file());
    expect(await retireRecord(list, ids[list])).toEqual({ kind: "already retired" });
    expect(bytesOf(file())).toEqual(bytes);
    expect(await bringBackRecord(list, ids[list])).toEqual({ kind: "brought back" });
    expect(await bringBackRecord(list, ids[list])).toEqual({ kind: "not retired" });
    expect(await books()).toStrictEqual(booksOf(richWorkshop()));
  });

  test.each(RETIRABLE)("[BOOK-2] what is not among the %s is not retired", async (list) => {
    await openBooks(richBooks());
    expect(await retireRecord(list, "gone")).toEqual({ kind: "no such record" });
    expect(await bringBackRecord(list, "gone")).toEqual({ kind: "no such record" });
    expect(await books()).toStrictEqual(richBooks());
  });
});
