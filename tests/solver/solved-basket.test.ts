/** A basket from the thread: the answer, news of it, and what is left where the thread does not get to the end. */
import { describe, expect, test, vi } from "vitest";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { solvedBasket } from "@/lib/solver/solved-basket";
import { largeBasket } from "../helpers/large-baskets";
import { cents, PROVEN_BASKETS } from "../helpers/proven-baskets";
import { problemOfInstance } from "../helpers/random-baskets";

const named = (file: string) => {
  const found = PROVEN_BASKETS.find((each) => each.file === file);
  if (!found) throw new Error(`no file ${file}`);
  return found;
};

/** Too much for an answer at once, and for a few seconds. */
const hard = problemOfInstance(largeBasket({ materials: 40, suppliers: 5, offersEach: 5, seed: 3 }));

describe("[BUY-9] a basket", () => {
  test("that is proven at once needs no thread", async () => {
    const { problem, proven } = named("n10-02.json");
    const { answer, cutShort } = await solvedBasket(problem, { seconds: 0 });
    expect(answer.kind === "basket" && [answer.basket.total, answer.gap]).toEqual([cents(proven.leastCost), null]);
    expect(cutShort).toBeNull();
  });

  test("that takes longer is proven in the thread", async () => {
    const { problem, proven } = named("n40-01.json");
    const atOnce = leastBasket(problem, { effort: 60_000 });
    expect(atOnce.kind === "basket" && atOnce.gap).not.toBeNull();
    const { answer, cutShort } = await solvedBasket(problem, { seconds: 120 });
    expect(answer.kind === "basket" && [answer.basket.total, answer.gap]).toEqual([cents(proven.leastCost), null]);
    expect(cutShort).toBeNull();
  });

  test("that is not proven in time carries its gap", async () => {
    const { answer, cutShort } = await solvedBasket(hard, { seconds: 1 });
    expect(cutShort).toBe("out of time");
    expect(
      answer.kind === "basket" && answer.gap !== null && answer.gap > 0n && answer.gap <= answer.basket.total,
    ).toBe(true);
  });

  test("that the maker stops stands as it was found before", async () => {
    const stop = new AbortController();
    const asked = solvedBasket(hard, { seconds: 120, signal: stop.signal });
    stop.abort();
    const { answer, cutShort } = await asked;
    expect(cutShort).toBe("stopped");
    expect(answer.kind === "basket" && answer.gap !== null).toBe(true);
  });

  test("tells how far it is: the cheapest found, and what none can be below", async () => {
    const news: { readonly total: bigint | null; readonly bound: bigint }[] = [];
    await solvedBasket(hard, { seconds: 4, onProgress: ({ total, bound }) => news.push({ total, bound }) });
    expect(news.length).toBeGreaterThan(0);
    expect(news.every(({ total, bound }) => total !== null && bound <= total)).toBe(true);
  });

  test("stands without the thread where that cannot start", async () => {
    const here = vi.spyOn(process, "cwd").mockReturnValue("/nowhere");
    const { answer, cutShort } = await solvedBasket(hard, { seconds: 10 });
    here.mockRestore();
    expect(cutShort).toBe("failed");
    expect(answer.kind === "basket" && answer.gap !== null).toBe(true);
  });
});
