import { beforeEach, expect, test, vi } from "vitest";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { quantity } from "@/lib/domain/quantity";
import { solvedOnce } from "@/lib/operations/solved-once";
import { type SolvedBasket, solvedBasket } from "@/lib/solver/solved-basket";

// The search itself is tested with the solver; here it is made to fail, which it cannot be by a problem.
vi.mock("@/lib/solver/solved-basket");
const search = vi.mocked(solvedBasket);

const problemFor = (wanted: bigint): BasketProblem => ({
  materials: [{ id: "A", wanted: quantity(wanted) }],
  suppliers: [],
  offers: [],
});
const found: SolvedBasket = { answer: { kind: "no basket", isProven: true }, cutShort: null };

beforeEach(() => {
  search.mockReset();
});

test("[BUY-9] the same problem is searched once, another one anew", async () => {
  search.mockResolvedValue(found);
  expect(await Promise.all([solvedOnce(problemFor(1n), 5), solvedOnce(problemFor(1n), 5)])).toEqual([found, found]);
  await solvedOnce(problemFor(1n), 5);
  expect(search).toHaveBeenCalledTimes(1);
  await solvedOnce(problemFor(2n), 5);
  expect(search).toHaveBeenCalledTimes(2);
});

test("[BUY-9] a search that throws gives no answer, and is tried again", async () => {
  search.mockRejectedValueOnce(new Error("the thread did not start"));
  expect(await solvedOnce(problemFor(3n), 5)).toBeNull();
  search.mockResolvedValue(found);
  expect(await solvedOnce(problemFor(3n), 5)).toEqual(found);
});

test("[BUY-9] what a failed thread left is shown, but not kept", async () => {
  search.mockResolvedValueOnce({ ...found, cutShort: "failed" });
  expect((await solvedOnce(problemFor(4n), 5))?.cutShort).toBe("failed");
  search.mockResolvedValue(found);
  expect((await solvedOnce(problemFor(4n), 5))?.cutShort).toBeNull();
});
