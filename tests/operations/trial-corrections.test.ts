/** Trials put right and removed: what a posting that stands forbids, and forms that are sent twice or too late. */
import { beforeEach, describe, expect, test } from "vitest";
import type { Trial } from "@/lib/domain/formula-book/trials";
import { trialSeen, typedSeen } from "@/lib/edge/forms/trial-seen";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { correctTrial, removeTrial, type TrialToCorrect } from "@/lib/operations/correct-trial";
import { addReading, keepTrialAlone, keepTrialFromShelf } from "@/lib/operations/keep-trial";
import { reversePosting } from "@/lib/operations/reverse-posting";
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { readBooksWithPast } from "@/lib/store/ledger/past";
import { storeFile } from "@/lib/store/store-file";
import { books, lots, shop, TODAY } from "../helpers/ledger-shop";
import { day, decimal, g } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

storeForEachTest();

beforeEach(() => openBooks(shop()));

const UNTOUCHED = "late 900 for 18, soon 600 for 6, jars 48 for 24";

const typed = (id: string, weighed: string): Omit<Trial, "posting"> => ({
  id,
  formula: "f",
  name: id,
  day: TODAY,
  notes: null,
  lines: [{ of: { kind: "material", id: "oil" }, weighed: g(weighed), phase: null }],
  readings: [],
});

const day1 = { afterMinutes: 1440, ph: null, viscosity: decimal("9000"), appearance: null };
const asked = { key: "t", day: TODAY, realToday: TODAY, reason: "trial t" };
const keptFromShelf = (weighed = "20") => keepTrialFromShelf({ ...asked, trial: typed("t", weighed) });
const kept = () => keepTrialAlone({ trial: typed("t", "20") });

const trial = async (): Promise<Trial> => {
  const [found] = (await books()).desk.trials;
  if (found === undefined) throw new Error("there is a trial");
  return found;
};

const takeBack = (reverses = "t") =>
  reversePosting({ key: `back ${reverses}`, day: TODAY, realToday: TODAY, reverses, reason: "weighed wrongly" });

/** A correction from a form that was drawn from the trial as it stands, unless it is said otherwise. */
async function correct(given: Partial<Trial>, more: Partial<TrialToCorrect> = {}) {
  const { readings: _readings, posting: _posting, ...was } = await trial();
  return correctTrial({
    ...asked,
    key: "again",
    trial: { ...was, ...given },
    takes: false,
    isAsSeen: () => true,
    ...more,
  });
}
const weighing = (grams: string): Partial<Trial> => ({ lines: typed("t", grams).lines });

const remove = async (seen?: string) => {
  const drawn = seen ?? trialSeen(await trial());
  return removeTrial({ trial: "t", realToday: TODAY, isAsSeen: (found) => trialSeen(found) === drawn });
};

const cleanBooks = async () => expect(await checkLedger(storeFile())).toMatchObject({ disagreements: [] });

describe("a trial that posted nothing", () => {
  test("[TRIAL-6] is put right, keeps what was read of it, and is sent twice without a change", async () => {
    await kept();
    await addReading("t", day1);
    expect(await correct({ ...weighing("22"), name: "with more", notes: "weighed again" })).toEqual({
      kind: "corrected",
    });
    expect(await correct({})).toEqual({ kind: "already kept" });
    expect(await trial()).toMatchObject({ name: "with more", notes: "weighed again", readings: [day1], posting: null });
    expect((await trial()).lines).toEqual(typed("t", "22").lines);
    expect(await lots()).toBe(UNTOUCHED);
  });

  test("[TRIAL-6] is taken off the shelf by its correction, in one posting, once", async () => {
    await kept();
    await addReading("t", day1);
    const send = (grams: string) => correct(weighing(grams), { takes: true });
    expect(await send("30")).toMatchObject({ kind: "posted" });
    expect(await lots()).toBe("late 900 for 18, soon 570 for 5.7, jars 48 for 24");
    expect(await trial()).toMatchObject({ posting: "again", readings: [day1] });
    expect(await send("30"), "pressed twice").toEqual({ kind: "already kept" });
    expect(await send("31"), "back, typed otherwise and sent again").toEqual({ kind: "kept otherwise" });
    expect((await trial()).lines).toEqual(typed("t", "30").lines);
    await cleanBooks();
  });

  test("[TRIAL-6] of which the shelf does not hold enough is refused whole", async () => {
    await kept();
    expect(await correct(weighing("1501"), { takes: true })).toMatchObject({ kind: "short", short: [{ by: g("1") }] });
    expect((await trial()).lines).toEqual(typed("t", "20").lines);
  });
});

describe("a trial whose posting stands", () => {
  test("[TRIAL-6] keeps its day and what was weighed; its name and notes are put right", async () => {
    await keptFromShelf();
    const stands = { kind: "stands on the ledger", posting: "t" };
    expect(await correct(weighing("22"))).toEqual(stands);
    expect(await correct({ day: day("2026-11-24") })).toEqual(stands);
    expect(await correct({ name: "softer", notes: "by a north window" })).toEqual({ kind: "corrected" });
    expect(await trial()).toMatchObject({ name: "softer", notes: "by a north window", posting: "t" });
    expect((await trial()).lines).toEqual(typed("t", "20").lines);
  });

  test("[TRIAL-7] is not removed, until its posting is taken back", async () => {
    await keptFromShelf();
    expect(await remove()).toEqual({ kind: "stands on the ledger", posting: "t" });
    await takeBack();
    expect(await lots()).toBe(UNTOUCHED);
    expect(await remove()).toEqual({ kind: "removed" });
    expect(await remove(""), "pressed twice").toEqual({ kind: "no such trial" });
    expect((await books()).desk.trials).toEqual([]);
    await cleanBooks();
  });

  test("[TRIAL-6] once that was taken back, is put right and taken off the shelf anew", async () => {
    await keptFromShelf();
    await takeBack();
    expect(await correct(weighing("22"))).toEqual({ kind: "corrected" });
    expect(await trial(), "what was taken back is still told").toMatchObject({ posting: "t" });
    expect(await correct({}, { takes: true })).toMatchObject({ kind: "posted" });
    expect(await trial()).toMatchObject({ posting: "again" });
    expect(await lots()).toBe("late 900 for 18, soon 578 for 5.78, jars 48 for 24");
    expect(await remove()).toEqual({ kind: "stands on the ledger", posting: "again" });
    await cleanBooks();
  });
});

describe("a form that is out of date", () => {
  test("[TRIAL-6] corrects nothing where somebody else has; a reading that came meanwhile is nothing to it", async () => {
    await kept();
    const drawn = typedSeen(await trial());
    const isAsSeen = (found: Trial) => typedSeen(found) === drawn;
    await addReading("t", day1);
    expect(await correct({ name: "first" }, { isAsSeen })).toEqual({ kind: "corrected" });
    expect(await correct({ name: "second" }, { isAsSeen })).toEqual({ kind: "stale" });
    expect((await trial()).name).toBe("first");
  });

  test("[TRIAL-7] removes nothing where something was read since", async () => {
    await kept();
    const drawn = trialSeen(await trial());
    await addReading("t", day1);
    expect(await remove(drawn)).toEqual({ kind: "stale" });
    expect(await remove()).toEqual({ kind: "removed" });
  });

  test("[TRIAL-6] of a trial that is gone says so", async () => {
    expect(await correctTrial({ ...asked, trial: typed("t", "20"), takes: false, isAsSeen: () => true })).toEqual({
      kind: "no such trial",
    });
  });

  test("[TRIAL-6] of a new trial, gone back to and typed otherwise, loses nothing unsaid", async () => {
    expect(await keptFromShelf()).toMatchObject({ kind: "posted" });
    expect(await keptFromShelf()).toEqual({ kind: "already kept" });
    expect(await keptFromShelf("21")).toEqual({ kind: "kept otherwise" });
    await takeBack();
    await remove();
    expect(await keptFromShelf(), "sent again after it was removed").toEqual({ kind: "no such trial" });
  });
});

test("[TRIAL-7] of several trials the others stay as they are, their readings included", async () => {
  for (const id of ["s", "t", "u"]) await keepTrialAlone({ trial: typed(id, "20") });
  await addReading("u", day1);
  expect(await removeTrial({ trial: "t", realToday: TODAY, isAsSeen: () => true })).toEqual({ kind: "removed" });
  expect((await books()).desk.trials.map(({ id, readings }) => [id, readings.length])).toEqual([
    ["s", 0],
    ["u", 1],
  ]);
  await cleanBooks();
});

describe("[TRIAL-2, FILE-5] in a file", () => {
  const read = (text: string) => readWorkshopFile(new TextEncoder().encode(text), TODAY);
  const saved = async (): Promise<string> => {
    const stored = await readBooksWithPast();
    if (!stored) throw new Error("the store holds no workshop");
    return writeWorkshopFile(stored.workshop, stored.past);
  };

  test("a trial with its posting is read again, taken back or not", async () => {
    await keptFromShelf();
    expect(read(await saved())).toMatchObject({ kind: "read", past: { trials: [{ posting: "t" }] } });
    await takeBack();
    expect(read(await saved())).toMatchObject({ kind: "read", past: { trials: [{ posting: "t" }] } });
  });

  test.each([
    {
      posting: "elsewhere",
      fault: 'trials[1].posting: no posting "elsewhere"; correct it, or leave it out where nothing was taken',
    },
    {
      posting: "back t",
      fault: 'trials[1].posting: posting "back t" is one of reversal; a trial is written off the shelf',
    },
    { posting: "t", fault: 'trials[1].posting: is the posting of trial "t" already' },
  ])("one of $posting is refused", async ({ posting, fault }) => {
    await keptFromShelf();
    await takeBack();
    await keepTrialAlone({ trial: typed("u", "3") });
    const file = JSON.parse(await saved()) as { trials: { posting?: string }[] };
    Object.assign(file.trials[1] ?? {}, { posting });
    expect(read(JSON.stringify(file))).toEqual({ kind: "refused", faults: [fault] });
  });
});
