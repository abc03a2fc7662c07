/** What HiGHS makes of the model, against costs that others proved: the model means what the rules mean. */
import { describe, expect, test } from "vitest";
import { checkedBasket } from "@/lib/domain/buying/checked-basket";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { proposedBasket } from "@/lib/solver/proposed-basket";
import { cents, PROVEN_BASKETS } from "../helpers/proven-baskets";
import { problemOfInstance, randomInstance } from "../helpers/random-baskets";
import { diceFrom } from "../helpers/random-dice";

const SECONDS = 60;

describe.each(PROVEN_BASKETS)("$file", ({ problem, proven }) => {
  test("[BUY-4, BUY-5] proposes a basket of the least cost that is known", async () => {
    const packs = await proposedBasket(problem, cents(proven.leastCost), SECONDS);
    const checked = packs && checkedBasket(problem, packs);
    expect(checked?.kind === "holds" && checked.basket.total).toBe(cents(proven.leastCost));
  });
});

test("[BUY-5] on invented problems it never finds a cheaper basket than the search proves", async () => {
  let [same, none] = [0, 0];
  for (let seed = 1000; seed < 1100; seed += 1) {
    const size = { materials: 6, suppliers: 3, offersEach: 3, packsEach: 6, withMostPacks: true };
    const problem = problemOfInstance(randomInstance(diceFrom(seed), size));
    const answer = leastBasket(problem, { effort: 3_000_000 });
    const packs = await proposedBasket(problem, answer.kind === "basket" ? answer.basket.total : 0n, SECONDS);
    if (answer.kind === "no basket" || packs === null) {
      none += 1;
      expect(answer.kind === "no basket").toBe(packs === null);
      continue;
    }
    const checked = checkedBasket(problem, packs);
    if (checked.kind === "broken") throw new Error("a proposal broke a rule");
    expect(checked.basket.total >= answer.basket.total).toBe(true);
    if (checked.basket.total === answer.basket.total) same += 1;
  }
  expect(none).toBeGreaterThan(2);
  expect(same).toBeGreaterThan(80 - none);
});
