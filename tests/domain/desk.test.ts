import { expect, test } from "vitest";
import { emptyDesk, forNewWork, RETIRABLE } from "@/lib/domain/desk";
import { material, supplier } from "@/tests/helpers/notation";

test("[BOOK-1] a workshop that has just been opened has retired, drafted and closed nothing, and no hours are known", () => {
  expect(RETIRABLE.flatMap((list) => emptyDesk.retired[list])).toEqual([]);
  expect([emptyDesk.drafts, emptyDesk.closedRuns, emptyDesk.benchMinutes]).toEqual([[], [], null]);
});

test("[BOOK-2] what is retired is not offered for new work; the same id in another list still is", () => {
  const desk = { ...emptyDesk, retired: { ...emptyDesk.retired, materials: ["a", "c", "__proto__"] } };
  const materials = ["a", "b", "c", "__proto__"].map((id) => material(id));
  expect(forNewWork(desk, "materials", materials)).toEqual([materials[1]]);
  expect(forNewWork(desk, "suppliers", [supplier("a")])).toEqual([supplier("a")]);
});
